"""Two plans of one crown beside one another: what the other one gives, and what sets them apart."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from pathlib import Path
from typing import Any

import numpy as np

from stainmap.app import edits
from stainmap.app.brush import Brush
from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.session import Session
from stainmap.app.suggesting import with_suggested
from stainmap.errors import PlanError, StainmapError
from stainmap.files.case_file import read_case
from stainmap.model.case import Case
from stainmap.model.crown import CrownReading
from stainmap.model.history import History
from stainmap.model.plan import StainPlan
from stainmap.paper.shading import ShadingFields
from stainmap.planning.schedule import coats_to_paint, mixing_minutes, painting_minutes
from stainmap.planning.what_if import (
    AreaWhatIf,
    ProgrammeWhatIf,
    changes_by_area,
    programme_what_if,
)
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

# Case files keep single precision; points that lie closer than this are the same.
_SAME_POINT_MM = 2e-4


@dataclass(frozen=True, slots=True, kw_only=True)
class Against:
    """What the open plan is held against.

    Parameters
    ----------
    title
        What it is, for the head over its crown.
    case
        Makes it from the open case.
    follows
        True if it changes with the open case, so that it has to be predicted again.
    programme
        Name of another sintering programme, if that is what sets it apart; empty otherwise.
    take
        Makes the open case what this is, or None where that makes no sense.
    """

    title: str
    case: Callable[[Case], Case]
    follows: bool = False
    programme: str = ""
    take: Callable[[Case], Case] | None = None


def another_case(title: str, case: Case) -> Against:
    """Return a case that stays what it is: one of the history, or of a file."""
    return Against(title=title, case=lambda _open: case, take=lambda open_: taken(open_, case.plan))


def another_plan(title: str, plan: StainPlan) -> Against:
    """Return the open case with another plan, such as a suggested one."""
    return Against(
        title=title,
        case=lambda open_: with_suggested(open_, plan),
        take=lambda open_: taken(open_, plan),
    )


def another_programme(name: str) -> Against:
    """Return the open plan, sintered in another programme."""
    return Against(
        title=translate("compare", "The same plan in {name}").format(name=name),
        case=lambda case: edits.with_programme(case, name),
        follows=True,
        programme=name,
        take=lambda case: edits.with_programme(case, name),
    )


def taken(case: Case, plan: StainPlan) -> Case:
    """Return the case with another one's plan, on its block.

    Raises
    ------
    CatalogueError
        If the plan needs materials that the case does not have.
    """
    edits.with_plan(case, plan)
    return with_suggested(case, plan)


def bare_block() -> Against:
    """Return the open crown without any stain."""
    return Against(title=translate("compare", "The bare block"), case=without_stain, follows=True)


def without_stain(case: Case) -> Case:
    """Return the case with a plan that paints nothing, on the same block."""
    return replace(case, plan=replace(case.plan, jars=(), steps=()))


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """What a plan takes: rounds of painting, jars, and minutes of mixing and painting."""

    coats: int
    jars: int
    minutes: float


def effort_of(case: Case) -> Effort:
    """Return what painting a case takes; its times are assumed (see `planning.schedule`)."""
    plan = case.plan
    return Effort(
        coats=sum(coats_to_paint(step) for step in plan.steps),
        jars=len(plan.jars),
        minutes=mixing_minutes(len(plan.jars)) + painting_minutes(case),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Compared:
    """The open plan and another one, both predicted in the same light.

    Parameters
    ----------
    areas
        Areas that both have, the change from the open plan to the other one.
    efforts
        What each of them takes.
    programmes
        What the furnaces make of it, if another programme is what sets them apart.
    """

    here: Prediction
    there: Prediction
    areas: tuple[AreaWhatIf, ...]
    efforts: tuple[Effort, Effort]
    programmes: ProgrammeWhatIf | None = None


def compared(here: Prediction, there: Prediction, programme: str = "") -> Compared:
    """Return what sets two predictions apart; `programme` names the other one's, if that does."""
    return Compared(
        here=here,
        there=there,
        areas=changes_by_area(here.outcome, there.outcome),
        efforts=(effort_of(here.case), effort_of(there.case)),
        programmes=programme_what_if(here.case, programme, here.outcome, there.outcome)
        if programme
        else None,
    )


def predict_beside(here: Prediction, case: Case, progress: Progress | None = None) -> Prediction:
    """Return the prediction of another case in the light of `here`, and leave that one alone.

    What was measured of the crown is taken from `here` wherever both have the same surface.
    """
    if progress is not None:
        progress(0.1, translate("compare", "predicting the other plan"))
    return predict_case(
        on_surface_of(case, here.case),
        previous=here,
        seen=here.seen,
        apart=True,
        progress=progress,
    )


def is_same_crown(one: Case, other: Case) -> bool:
    """Return True if both have the same mesh, whatever size their blocks have given it."""
    here, there = one.surface.mesh, other.surface.mesh
    if here is there:
        return True
    if here.vertex_count != there.vertex_count or not np.array_equal(here.faces, there.faces):
        return False
    sizes = [float(np.sqrt((mesh.vertices**2).sum())) for mesh in (here, there)]
    if min(sizes) <= 0.0:
        return False
    scaled = here.vertices * (sizes[1] / sizes[0])
    return bool(np.abs(scaled - there.vertices).max() < _SAME_POINT_MM)


def on_surface_of(case: Case, other: Case) -> Case:
    """Return the case on the other one's surface and reading where these say the same.

    A case that was read from a file has arrays of its own; with those of the open case nothing of
    the crown is measured twice.
    """
    if case.surface is not other.surface:
        if not _same_points(case.surface.mesh, other.surface.mesh):
            return case
        case = replace(case, surface=other.surface)
    if case.reading is not other.reading and _same_reading(case.reading, other.reading):
        case = replace(case, reading=other.reading)
    return case


def _same_points(one: TriMesh, other: TriMesh) -> bool:
    return one is other or (
        one.vertex_count == other.vertex_count
        and np.array_equal(one.faces, other.faces)
        and bool(np.abs(one.vertices - other.vertices).max() < _SAME_POINT_MM)
    )


def _same_reading(one: CrownReading, other: CrownReading) -> bool:
    return all(
        _same_value(getattr(one, name), getattr(other, name))
        for name in (field.name for field in fields(CrownReading))
        # How sure it was, and what was remarked on, changes nothing that is predicted.
        if name not in {"confidence", "set_by_user", "warnings"}
    )


def _same_value(one: Any, other: Any) -> bool:
    if isinstance(one, np.ndarray):
        nan = np.issubdtype(one.dtype, np.floating)
        return np.array_equal(one, other, equal_nan=bool(nan))
    return bool(one == other)


def read_beside(path: Path, here: Case, progress: Progress | None = None) -> Case:
    """Return the case of a file, to be compared with the open one; the file stays as it is.

    Raises
    ------
    CaseFileError
        If it cannot be read.
    StainmapError
        If it is of another crown.
    """
    case = read_case(path, progress)
    if not is_same_crown(case, here):
        raise StainmapError(
            translate(
                "compare",
                "This case is of another mesh, so that the two plans cannot stand side by side.",
            ),
            where=str(path),
            advice=translate("compare", "Choose a case that was made from the same file."),
        )
    return case


class ShownPlan(Session):
    """A session that holds one finished prediction, to be looked at and not changed.

    Parameters
    ----------
    prediction
        What is shown.
    shading
        What light needs to know of its surface, if that has been worked out.
    """

    def __init__(self, prediction: Prediction, shading: ShadingFields | None = None) -> None:
        super().__init__(prediction.case.materials, threaded=False)
        self._light = shading
        self.show(prediction, shading)

    def show(self, prediction: Prediction, shading: ShadingFields | None = None) -> None:
        """Hold another prediction; tells nobody."""
        self._history = History.begun_with(prediction.case)
        self._predicting.newest, self._predicting.seen = prediction, prediction.seen
        self._light = shading

    @property
    def shading(self) -> ShadingFields | None:
        """Smoothed normals and occlusion of the surface, as they were handed over."""
        return self._light

    def need_shading(self) -> None:
        """Do nothing: light is as it was handed over."""

    def expect_stroke(self, _vertex: int, _radius_mm: float) -> None:
        """Do nothing: nobody paints here."""

    def begin_stroke(self, _brush: Brush) -> None:
        """Refuse."""
        raise PlanError(translate("compare", "What is shown beside the plan is not painted on."))
