"""From a mesh file to a case: look at the file, ask what it cannot tell, build the case."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.errors import MeshFileError, PlanError
from stainmap.model.case import Backing, Case, Region, ScrewChannel
from stainmap.model.crown import BodyKind, CrownReading, CrownSurface, MeshSource
from stainmap.model.material import Catalogue
from stainmap.model.plan import StainPlan
from stainmap.model.process import JarAmounts, StainProcess
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.planning.progress import Steps
from stainmap.planning.size_check import Size, plausible_sizes
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.loading import LoadedMesh, load_mesh_bytes, read_file
from stainmap.surface.mesh import TriMesh, connected_pieces, largest_piece, submesh
from stainmap.surface.refining import refine
from stainmap.units import LengthUnit, SizeState
from stainmap.words import translate

# What reads a crown is slow to import, and the window is to be there before: see the functions.
if TYPE_CHECKING:
    from stainmap.planning.reading import BridgeSaid
    from stainmap.planning.zone_ground import ZoneProposal

MAX_EDGE_MM = 0.14
# A hollow bridge over a whole arch has about this much surface, mm2.
_FINE_AREA_MM2 = 6000.0
# Far longer than a scanned jaw with its base, which takes some 100 mm; common practice, no
# published source.
LARGEST_BODY_MM = 500.0
ASSUMED_WALL_MM = 1.0
DEFAULT_SLIDERS = ZoneSliders()
DARK_MOUTH = "dark mouth"
SOLID_CERAMIC = "solid ceramic (pontic)"
Vector = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MeshLook:
    """A mesh file as it came in, before anybody has said anything about it.

    Parameters
    ----------
    sizes
        Units in which the body could be a crown, likeliest first; empty if in none.
    """

    path: Path
    content: bytes
    loaded: LoadedMesh
    sizes: tuple[Size, ...]

    @property
    def mesh(self) -> TriMesh:
        """The welded mesh in the file's own units."""
        return self.loaded.mesh


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """What a person says about a mesh, because the shape cannot tell or told it wrongly.

    `occlusal_axis` and `mesial` are vectors in the file's coordinates. `neck_places` are places in
    them, in sintered mm, where the units of a bridge part, and `units_as_given` keeps to the
    number of teeth named even where the shape shows more. Roles of `units` hold if `roles_said`;
    if not, the cavities of a bridge may tell others. `connectors_mm2` are sections as somebody
    else measured them. A new case begins with `programme` (empty: the first of the materials) and
    `amounts`.
    """

    units: tuple[Unit, ...]
    size_state: SizeState
    block: str
    unit: LengthUnit | None = None
    occlusal_axis: Vector | None = None
    mesial: Vector | None = None
    sliders: ZoneSliders = DEFAULT_SLIDERS
    assumed_wall_mm: float = ASSUMED_WALL_MM
    neck_places: tuple[Vector, ...] = ()
    units_as_given: bool = False
    roles_said: bool = False
    connectors_mm2: tuple[float, ...] = ()
    programme: str = ""
    amounts: JarAmounts | None = None

    @property
    def bridge(self) -> BridgeSaid:
        """What was said of the units of a bridge."""
        from stainmap.planning.reading import BridgeSaid  # noqa: PLC0415

        return BridgeSaid(
            units_as_given=self.units_as_given,
            neck_places=self.neck_places,
            roles_said=self.roles_said,
        )


def look_at_mesh(path: Path, progress: Progress | None = None) -> MeshLook:
    """Read and weld a mesh file and say in which units it could be a crown.

    Raises
    ------
    MeshFileError
        If the file holds no usable surface.
    """
    if progress is not None:
        progress(0.05, translate("opening", "reading the file"))
    content = read_file(path)
    loaded = load_mesh_bytes(content, path.name)
    if progress is not None:
        progress(0.9, translate("opening", "checking its size"))
    return MeshLook(
        path=path,
        content=content,
        loaded=loaded,
        sizes=plausible_sizes(loaded.mesh, loaded.declared_unit),
    )


def units_from_numbers(
    numbers: tuple[int, ...], pontics: frozenset[int] = frozenset()
) -> tuple[Unit, ...]:
    """Return the units for tooth numbers: one is a crown, several are retainers and pontics.

    In a bridge the inner units are pontics unless `pontics` names others.

    Raises
    ------
    PlanError
        If a number names no tooth, or none is given.
    """
    if not numbers:
        raise PlanError(
            translate("opening", "No tooth is named."),
            advice=translate("opening", "Give its number by ISO 3950, as in 46."),
        )
    if len(set(numbers)) != len(numbers):
        raise PlanError(translate("opening", "A tooth is named twice."))
    if len(numbers) == 1:
        return (Unit(tooth=Tooth(number=numbers[0])),)
    inner = pontics or frozenset(numbers[1:-1])
    return tuple(
        Unit(tooth=Tooth(number=n), role=Role.PONTIC if n in inner else Role.RETAINER)
        for n in numbers
    )


def scale_to_sintered(look: MeshLook, answers: Answers, enlargement_factor: float) -> float:
    """Return the factor from the file's coordinates to sintered millimetres.

    Raises
    ------
    MeshFileError
        If no unit was given and the size fits none, or it would be larger than any jaw.
    """
    unit = answers.unit or look.loaded.declared_unit or (look.sizes[0].unit if look.sizes else None)
    if unit is None:
        extent = " x ".join(f"{x:.3g}" for x in look.mesh.extent)
        raise MeshFileError(
            translate("opening", "A body of {extent} is no crown in any unit.").format(
                extent=extent
            ),
            where=look.path.name,
            advice=translate("opening", "Say the unit of the file, or export it again."),
        )
    factor = unit.millimetres
    longest_mm = float(look.mesh.extent.max()) * factor
    if longest_mm > LARGEST_BODY_MM:
        raise MeshFileError(
            translate(
                "opening",
                "In the unit {value} it is {longest_mm:,.0f} mm long, larger than any jaw.",
            ).format(value=unit.value, longest_mm=longest_mm),
            where=look.path.name,
            advice=translate("opening", "Say another unit, or export it again."),
        )
    if answers.size_state is SizeState.MILLED:
        factor /= enlargement_factor
    return factor


def edge_for(area_mm2: float) -> float:
    """Return the longest edge to refine to, mm: 0.14, or more on what is larger than a full arch.

    A jaw would have a million points, of which only the crown that is cut off is needed.
    """
    return MAX_EDGE_MM * max(1.0, float(np.sqrt(area_mm2 / _FINE_AREA_MM2)))


def build_case(
    look: MeshLook,
    answers: Answers,
    materials: Catalogue,
    *,
    code: str = "",
    progress: Progress | None = None,
) -> tuple[Case, SurfaceOperator]:
    """Refine the surface, read the crown, propose zones; return the case and its operator.

    Raises
    ------
    ReadingError
        If the shape does not tell what is needed; the advice says what to answer.
    MeshFileError, PlanError, CatalogueError
        If the answers do not fit the file or the materials.
    """
    from stainmap.planning.reading import read_crown  # noqa: PLC0415
    from stainmap.planning.survey import survey_body  # noqa: PLC0415
    from stainmap.planning.zoning import propose_zones  # noqa: PLC0415

    def step(share: float, phrase: str) -> None:
        if progress is not None:
            progress(share, phrase)

    block = materials.block(answers.block)
    factor = scale_to_sintered(look, answers, block.enlargement_factor)
    step(0.02, translate("opening", "refining the surface"))
    body, file_vertex, left_out = _largest_body(look.loaded)
    sized = TriMesh(body.vertices * factor, body.faces)
    refined = refine(sized, edge_for(sized.area))
    step(0.1, translate("opening", "measuring the surface"))
    operator = SurfaceOperator(refined.mesh)
    survey = survey_body(operator, Steps(step, 0.15, 0.35))
    reading = read_crown(
        refined.mesh,
        operator,
        answers.units,
        occlusal_axis=answers.occlusal_axis,
        mesial=answers.mesial,
        bridge=answers.bridge,
        survey=survey,
        progress=lambda share, phrase: step(0.35 + 0.35 * share, phrase),
    )
    reading = _with_what_was_said(reading, answers)
    units = _with_roles(answers.units, reading)
    if _has_no_zones(reading):
        proposal = _without_zones(refined.mesh, reading, answers.assumed_wall_mm)
    else:
        proposal = propose_zones(
            refined.mesh,
            operator,
            reading,
            units,
            sliders=answers.sliders,
            survey=survey,
            progress=lambda share, phrase: step(0.7 + 0.28 * share, phrase),
        )
    refined.mesh.forget_derived()
    warnings = (*look.loaded.repairs, *look.loaded.warnings, *left_out, *proposal.reading.warnings)
    case = Case(
        code=code or look.path.stem,
        units=units,
        source=MeshSource(
            name=look.path.name,
            content=look.content,
            sha256=hashlib.sha256(look.content).hexdigest(),
            unit=answers.unit or look.loaded.declared_unit or look.sizes[0].unit,
            size_state=answers.size_state,
            enlargement_factor=block.enlargement_factor,
        ),
        surface=CrownSurface(
            mesh=refined.mesh,
            parents=refined.parents,
            base_vertex_count=refined.base_vertex_count,
            file_vertex=file_vertex,
        ),
        reading=replace(proposal.reading, warnings=warnings),
        zones=proposal.zones,
        proposal=proposal.zones,
        accents=proposal.accents,
        accent_proposal=proposal.accents,
        plan=StainPlan(block=block.name),
        materials=materials,
        backings=default_backings(materials, units),
        programme=answers.programme or materials.programmes[0].name,
        process=StainProcess(amounts=answers.amounts),
        sliders=proposal.sliders,
    )
    step(1.0, "ready")
    return case, operator


def _with_what_was_said(reading: CrownReading, answers: Answers) -> CrownReading:
    """Return the reading with the wall and the sections that a person has given."""
    if reading.assumed_wall_mm is not None:
        reading = replace(reading, assumed_wall_mm=answers.assumed_wall_mm)
    said = answers.connectors_mm2
    if said and len(said) == len(reading.connectors_mm2):
        reading = replace(
            reading, connectors_mm2=said, set_by_user=reading.set_by_user | {"connectors"}
        )
    return reading


def _still_said(case: Case, answers: Answers) -> frozenset[str]:
    """Return the names of what was said earlier and holds, which no reading can know of."""
    holds = {"cut", "margin"}
    if answers.mesial is not None:
        holds.add("buccal")
    if answers.units_as_given:
        holds.add("units")
    return frozenset(case.reading.set_by_user & holds)


def _with_roles(units: tuple[Unit, ...], reading: CrownReading) -> tuple[Unit, ...]:
    """Return the units with the roles that the shape shows, where it shows some."""
    if len(reading.roles) != len(units):
        return units
    return tuple(replace(unit, role=role) for unit, role in zip(units, reading.roles, strict=True))


def _has_no_zones(reading: CrownReading) -> bool:
    none = reading.kind in (BodyKind.NOT_A_CROWN, BodyKind.JAW)
    return none or not bool(np.isfinite(reading.height).any())


def default_backings(materials: Catalogue, units: tuple[Unit, ...]) -> tuple[Backing, ...]:
    """Return what lies behind each region until somebody says otherwise.

    The first stump and cement of the materials behind crowns and retainers; behind the incisal
    edge of front teeth the dark mouth, and behind pontics solid ceramic, where the materials
    have them.
    """
    if not materials.stumps or not materials.cements:
        raise PlanError(translate("opening", "The materials name no stump or no cement."))
    cement = materials.cements[0].name
    backings = [Backing(region=Region.STUMP, stump=materials.stumps[0].name, cement=cement)]
    known = {stump.name for stump in materials.stumps}
    if any(unit.tooth.is_front for unit in units) and DARK_MOUTH in known:
        backings.append(Backing(region=Region.INCISAL_EDGE, stump=DARK_MOUTH, cement=cement))
    if any(unit.role is Role.PONTIC for unit in units) and SOLID_CERAMIC in known:
        backings.append(Backing(region=Region.PONTIC, stump=SOLID_CERAMIC, cement=cement))
    return tuple(backings)


def reread(
    case: Case, operator: SurfaceOperator, answers: Answers, progress: Progress | None = None
) -> Case:
    """Return the case read again with what the user has set, its zones proposed anew.

    Hand corrections of zones and accents are kept where they differ from the old proposal.
    """
    from stainmap.app.proposing import with_proposal  # noqa: PLC0415
    from stainmap.planning.reading import read_crown  # noqa: PLC0415
    from stainmap.planning.survey import survey_body  # noqa: PLC0415
    from stainmap.planning.zoning import propose_zones  # noqa: PLC0415

    def step(share: float, phrase: str) -> None:
        if progress is not None:
            progress(share, phrase)

    survey = survey_body(operator, Steps(step, 0.0, 0.25))
    reading = read_crown(
        case.surface.mesh,
        operator,
        answers.units,
        occlusal_axis=answers.occlusal_axis,
        mesial=answers.mesial,
        bridge=answers.bridge,
        survey=survey,
        progress=lambda share, phrase: step(0.25 + 0.4 * share, phrase),
    )
    reading = _with_what_was_said(reading, answers)
    if "inner_surface" in case.reading.set_by_user:
        reading = replace(
            reading,
            outer=case.reading.outer,
            rim=case.reading.rim,
            assumed_wall_mm=None
            if case.reading.assumed_wall_mm is None
            else answers.assumed_wall_mm,
            set_by_user=reading.set_by_user | {"inner_surface"},
        )
    reading = replace(reading, set_by_user=reading.set_by_user | _still_said(case, answers))
    units = _with_roles(answers.units, reading)
    if _has_no_zones(reading):
        proposal = _without_zones(case.surface.mesh, reading, answers.assumed_wall_mm)
    else:
        proposal = propose_zones(
            case.surface.mesh,
            operator,
            reading,
            units,
            sliders=answers.sliders,
            survey=survey,
            progress=lambda share, phrase: step(0.65 + 0.35 * share, phrase),
        )
    proposed = with_proposal(case, proposal)
    of_the_file = load_mesh_bytes(case.source.content, case.source.name)
    warnings = (*of_the_file.repairs, *of_the_file.warnings, *proposal.reading.warnings)
    return replace(
        proposed,
        units=units,
        reading=replace(proposal.reading, warnings=warnings),
        screw_channels=_kept_channels(case, proposal.reading),
        backings=_kept_backings(case, units),
    )


def _kept_backings(case: Case, units: tuple[Unit, ...]) -> tuple[Backing, ...]:
    """Return what lies behind, stumps of single units with the teeth they were behind."""
    if len(units) == len(case.units):
        return case.backings
    numbers = [unit.tooth.number for unit in units]
    kept = []
    for one in case.backings:
        if one.of_unit is None:
            kept.append(one)
        elif (number := case.units[one.of_unit].tooth.number) in numbers:
            kept.append(replace(one, of_unit=numbers.index(number)))
    return tuple(kept)


def _kept_channels(case: Case, reading: CrownReading) -> tuple[ScrewChannel, ...]:
    """Return the screw channels with the units that their places belong to now, one each."""
    kept: dict[int, ScrewChannel] = {}
    for channel in case.screw_channels:
        away = case.surface.mesh.vertices - np.array(channel.point_mm)
        unit = int(reading.unit_index[np.einsum("ij,ij->i", away, away).argmin()])
        kept.setdefault(unit, replace(channel, unit=unit))
    return tuple(kept[unit] for unit in sorted(kept))


def _without_zones(mesh: TriMesh, reading: CrownReading, assumed_wall_mm: float) -> ZoneProposal:
    """Return what a body that is no crown opens with: all of it body, to be painted by hand."""
    from stainmap.planning.zone_ground import ZoneProposal  # noqa: PLC0415

    outer = reading.outer if reading.outer.any() else np.ones(mesh.vertex_count, dtype=np.bool_)
    rise = mesh.vertices @ np.asarray(reading.occlusal_axis)
    zones = np.where(outer, int(Zone.BODY), int(Zone.INNER)).astype(np.uint8)
    return ZoneProposal(
        zones=zones,
        accents=(),
        reading=replace(
            reading,
            outer=outer,
            rim=reading.rim & ~outer,
            depth_below_crest_mm=(rise.max() - rise).astype(np.float32),
            assumed_wall_mm=assumed_wall_mm if outer.all() else reading.assumed_wall_mm,
            warnings=(*reading.warnings, "No zones are proposed: all of it is body until painted."),
        ),
    )


def _largest_body(loaded: LoadedMesh) -> tuple[TriMesh, NDArray[np.int32], tuple[str, ...]]:
    """Return the largest body, the map from the file's vertices to it, and what was left out.

    The map is -1 for vertices of other bodies.
    """
    mesh = loaded.mesh
    count, _ = connected_pieces(mesh)
    if count <= 1:
        return mesh, loaded.file_vertex, ()
    inside = largest_piece(mesh, np.ones(mesh.vertex_count, dtype=np.bool_))
    body, kept = submesh(mesh, np.asarray(inside[mesh.faces].all(axis=1)))
    number = np.full(mesh.vertex_count + 1, -1, dtype=np.int32)
    number[kept] = np.arange(len(kept), dtype=np.int32)
    note = translate("opening", "The file holds {count} bodies; only the largest is taken.").format(
        count=count
    )
    return body, number[loaded.file_vertex], (note,)
