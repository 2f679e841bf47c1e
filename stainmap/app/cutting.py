"""Cutting a crown off what it hangs on: the roots of a tooth, the jaw it stands in."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.app.opening import MeshLook, build_case, reread
from stainmap.app.said import answers_of
from stainmap.errors import ReadingError
from stainmap.model.case import AccentMask, Case
from stainmap.model.crown import BodyKind, CrownSurface
from stainmap.model.plan import BrushedCoats, StainPlan
from stainmap.planning.size_check import plausible_sizes
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.loading import load_mesh_bytes
from stainmap.surface.mesh import AnyArray, TriMesh
from stainmap.surface.refining import MAX_EDGE_MM, Refinement, refine

if TYPE_CHECKING:
    from stainmap.surface.cutting import Cut

CUT = "cut"
Vector = tuple[float, float, float]
# Heights of crowns from neck to tip, mm, positions 1 to 8: common textbook dimensions, from
# memory. They only say where a cut is proposed.
_UPPER_MM = (10.5, 9.0, 10.0, 8.5, 8.5, 7.5, 7.0, 6.5)
_LOWER_MM = (9.0, 9.5, 11.0, 8.5, 8.0, 7.5, 7.0, 7.0)
_BITES = "occlusal axis"


@dataclass(frozen=True, slots=True, kw_only=True)
class NeckCut:
    """A plane at the neck of a crown.

    Parameters
    ----------
    point_mm
        A point of the plane, in the mesh's coordinates (sintered).
    normal
        Toward the crown; of any length but zero.
    close
        Whether to close the cut, which makes a solid crown of a closed body.
    keep_mm
        A place on the crown that is meant, where more than one piece lies on that side; None to
        keep all of them.
    """

    point_mm: Vector
    normal: Vector
    close: bool
    keep_mm: Vector | None = None


def is_to_be_cut(case: Case) -> bool:
    """Return whether a case holds a crown with something that is none of it."""
    return case.reading.kind in (BodyKind.ROOTED_TOOTH, BodyKind.JAW)


def proposed_cut(case: Case) -> NeckCut:
    """Return where a cut is proposed: across the axis, a usual crown's height below the top."""
    axis = np.asarray(case.reading.occlusal_axis)
    points = case.surface.mesh.vertices
    along = points @ axis
    tooth = case.units[0].tooth
    usual = (_UPPER_MM if tooth.is_upper else _LOWER_MM)[tooth.position - 1]
    top, low = float(along.max()), float(along.min())
    at = max(top - usual, low + 0.1 * (top - low))
    crown = points[along > at]
    middle = 0.5 * (crown.min(axis=0) + crown.max(axis=0))
    point = middle + (at - middle @ axis) * axis
    return NeckCut(
        point_mm=_vector(point),
        normal=_vector(axis),
        close=case.surface.mesh.is_watertight,
    )


def cut_off(
    case: Case, plane: NeckCut, progress: Progress | None = None
) -> tuple[Case, SurfaceOperator]:
    """Return the case with only the crown that a plane cuts off, read again, and its operator.

    What was painted on it stays. The file in the case stays whole, see `with_whole_file`.

    Raises
    ------
    MeshFileError
        If nothing lies above the plane, or the cut cannot be closed.
    ReadingError
        If what is left does not tell what is needed.
    """
    from stainmap.surface.cutting import cut_by_plane  # noqa: PLC0415 - slow to import

    if progress is not None:
        progress(0.02, "cutting")
    normal = np.asarray(plane.normal) / np.linalg.norm(plane.normal)
    cut = cut_by_plane(
        case.surface.mesh,
        normal,
        float(normal @ plane.point_mm),
        close=plane.close,
        near=plane.keep_mm,
    )
    refined = refine(cut.mesh, MAX_EDGE_MM)
    carried = _carried(case, cut, refined)
    operator = SurfaceOperator(refined.mesh)

    def step(share: float, phrase: str) -> None:
        if progress is not None:
            progress(0.1 + 0.9 * share, phrase)

    answers = answers_of(case)
    try:
        result = reread(carried, operator, answers, step)
    except ReadingError as error:
        if error.where != _BITES or answers.occlusal_axis is not None:
            raise
        # A front tooth does not show how it bites; whoever laid the plane has shown it.
        result = reread(carried, operator, replace(answers, occlusal_axis=plane.normal), step)
    said = result.reading.set_by_user | {CUT}
    refined.mesh.forget_derived()
    return replace(result, reading=replace(result.reading, set_by_user=said)), operator


def with_whole_file(case: Case, progress: Progress | None = None) -> tuple[Case, SurfaceOperator]:
    """Return the case with all that its file holds, read anew, and the operator of that.

    Plan, materials and what is wanted stay; what was painted by hand on the cut crown does not.
    """
    source = case.source
    loaded = load_mesh_bytes(source.content, source.name)
    sizes = plausible_sizes(loaded.mesh, loaded.declared_unit)
    look = MeshLook(path=Path(source.name), content=source.content, loaded=loaded, sizes=sizes)
    answers = replace(answers_of(case), occlusal_axis=None, mesial=None)
    try:
        fresh, operator = build_case(look, answers, case.materials, progress=progress)
    except ReadingError as error:
        if error.where != _BITES:
            raise
        answers = replace(answers, occlusal_axis=case.reading.occlusal_axis)
        fresh, operator = build_case(look, answers, case.materials, progress=progress)
    whole = replace(
        case,
        surface=fresh.surface,
        reading=fresh.reading,
        zones=fresh.zones,
        proposal=fresh.proposal,
        accents=fresh.accents,
        accent_proposal=fresh.accent_proposal,
        plan=_without_brushed(case.plan),
        screw_channels=(),
    )
    return whole, operator


def _carried(case: Case, cut: Cut, refined: Refinement) -> Case:
    """Return the case on the surface that was left, with all that lay on its vertices."""
    old, count = case.surface, refined.mesh.vertex_count
    # (V,) the vertex that each one was; new ones have none.
    origin = np.full(count, -1, dtype=np.int32)
    origin[: cut.mesh.vertex_count] = cut.original
    kept = origin >= 0
    # (V_old,) the vertex that each has become.
    became = np.full(old.mesh.vertex_count, -1, dtype=np.int32)
    became[origin[kept]] = np.flatnonzero(kept)
    file_vertex = np.where(old.file_vertex >= 0, became[old.file_vertex], -1).astype(np.int32)
    reading = case.reading

    def moved(values: AnyArray, elsewhere: float) -> AnyArray:
        fresh = np.full(count, elsewhere, dtype=values.dtype)
        fresh[kept] = values[origin[kept]]
        return fresh  # type: ignore[return-value]

    def masks(old_masks: tuple[AccentMask, ...]) -> tuple[AccentMask, ...]:
        return tuple(
            AccentMask(accent=mask.accent, share=moved(mask.share, 0.0)) for mask in old_masks
        )

    return replace(
        case,
        surface=CrownSurface(
            mesh=refined.mesh,
            parents=refined.parents,
            base_vertex_count=refined.base_vertex_count,
            file_vertex=file_vertex,
        ),
        reading=replace(
            reading,
            outer=moved(reading.outer, True),
            rim=moved(reading.rim, False),
            unit_index=moved(reading.unit_index, 0),
            height=moved(reading.height, np.nan),
            depth_below_crest_mm=moved(reading.depth_below_crest_mm, np.nan),
            # Where it ends now is where it was cut.
            set_by_user=reading.set_by_user - {"inner_surface"},
        ),
        zones=moved(case.zones, 0),
        proposal=moved(case.proposal, 0),
        accents=masks(case.accents),
        accent_proposal=masks(case.accent_proposal),
        plan=_moved_plan(case.plan, became),
    )


def _moved_plan(plan: StainPlan, became: NDArray[np.int32]) -> StainPlan:
    """Return the plan with what was brushed on vertices that are left."""
    steps = []
    for step in plan.steps:
        brushed = step.brushed
        if brushed is not None:
            at = became[brushed.vertices]
            order = np.argsort(at[at >= 0])
            left, coats = at[at >= 0][order], brushed.coats[at >= 0][order]
            brushed = BrushedCoats(vertices=left, coats=coats) if len(left) else None
        steps.append(replace(step, brushed=brushed))
    return replace(plan, steps=tuple(steps))


def _without_brushed(plan: StainPlan) -> StainPlan:
    return replace(plan, steps=tuple(replace(step, brushed=None) for step in plan.steps))


def _vector(values: NDArray[np.float64]) -> Vector:
    x, y, z = (float(value) for value in values)
    return (x, y, z)


def section_lines(mesh: TriMesh, plane: NeckCut) -> NDArray[np.float64]:
    """Return (S, 2, 3) the pieces of line, mm, in which a plane meets the surface, to be drawn."""
    normal = np.asarray(plane.normal) / np.linalg.norm(plane.normal)
    height = mesh.vertices @ normal - float(normal @ plane.point_mm)
    above = height > 0.0
    corners = above[mesh.faces]
    faces = mesh.faces[corners.any(axis=1) & ~corners.all(axis=1)]
    if not len(faces):
        return np.zeros((0, 2, 3))
    # The corner that is alone on its side comes first.
    up = above[faces]
    alone = np.where(up.sum(axis=1) == 1, up.argmax(axis=1), (~up).argmax(axis=1))
    rows = np.arange(len(faces))
    first = faces[rows, alone]
    ends = []
    for turn in (1, 2):
        other = faces[rows, (alone + turn) % 3]
        share = (height[first] / (height[first] - height[other]))[:, None]
        ends.append(mesh.vertices[first] + share * (mesh.vertices[other] - mesh.vertices[first]))
    return np.stack(ends, axis=1)
