"""Random work on a session: every kind of edit a person can make, drawn from a seed."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

import numpy as np

from stainmap.app import edits, said
from stainmap.app.brush import Brush, Tool
from stainmap.app.intake import with_intake
from stainmap.app.job import Job, JobRunner, call_now
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.files.case_content import entries_of
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case, Region
from stainmap.model.colour import Colour
from stainmap.model.finishing import Finish
from stainmap.model.intake import Intake, Shade, ShadeSource, Third
from stainmap.model.plan import CoatSpan, StainPlan, Streaks
from stainmap.model.process import StainProcess, UptakeRule
from stainmap.model.target import DEFAULT_OFFSETS, Offset, Target
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.mirrored import Half, mirrored_corrections
from stainmap.planning.zone_tools import (
    grown_area,
    reset_all,
    reset_area,
    shrunk_area,
    smoothed_area,
)
from stainmap.predict.lights import OBSERVERS, SHOWN_LIGHTS
from stainmap.predict.measured_shape import measured_shape
from stainmap.units import LengthUnit, SizeState
from tests.builders import dome_case
from tests.files.test_case_file import assert_same

T = TypeVar("T")
OUTSIDE = (Zone.BODY, Zone.CERVICAL, Zone.CUSP, Zone.FISSURE, Zone.INTERPROXIMAL)


class HeldRunner(JobRunner):
    """Keeps predictions until they are let go, as a slow machine does while a person goes on."""

    def __init__(self) -> None:
        super().__init__(threaded=False)
        self.held: list[Job[Any]] = []

    def start(self, title: str, work: Any, **notices: Any) -> Job[Any]:
        job = Job(title, work, post=call_now, **notices)
        self.held.append(job)
        return job

    def let_go(self) -> None:
        while self.held:
            self.held.pop(0).run()


def planned(rings: int = 8, around: int = 16) -> Case:
    """Return a light dome with a plan of two steps in the starter materials."""
    materials = starter_catalogue()
    case = dome_case(rings, around)
    backing = replace(
        case.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    case = replace(
        case,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
    )
    for at, liquid in enumerate(("barley", "umber")):
        case = edits.with_added_liquid(case, at, liquid)
    return edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(1))


def digest(case: Case) -> str:
    """Return a checksum of everything in a case, so that a change in place is noticed."""
    whole = hashlib.sha256(repr(case.reading.roles).encode())
    for name, content in entries_of(case):
        whole.update(name.encode())
        whole.update(content())
    return whole.hexdigest()


class Mover:
    """Makes random moves on a session; what a move refuses must be a sentence and no change.

    Parameters
    ----------
    seed
        Of the moves.
    folder
        Where cases are saved.
    """

    def __init__(self, session: Session, seed: int, folder: Path) -> None:
        self.session, self.folder = session, folder
        self.rng = np.random.default_rng(seed)
        self.predictions = HeldRunner()
        session._predicting._jobs = self.predictions
        self.digests: dict[int, tuple[Case, str]] = {}
        self.done: list[str] = []
        self.files = 0
        self.edits: tuple[Callable[[Case], Case], ...] = (
            self._coats,
            self._coats,
            self._no_coats,
            self._lock,
            self._liquid,
            self._step,
            self._no_step,
            self._moved_step,
            self._step_jar,
            self._jar,
            self._streaks,
            self._block,
            self._height,
            self._size,
            self._programme,
            self._backing,
            self._cement,
            self._no_backing,
            self._screw,
            self._no_screw,
            self._painter,
            self._process,
            self._finish,
            self._ground,
            self._target,
            self._intake,
            self._note,
            self._wall,
            self._confirmed,
            self._area_tool,
            self._area_tool,
            self._mirror,
            self._reset,
        )
        self.moves: tuple[Callable[[], None], ...] = (
            *(self.edit,) * 10,
            *(self.stroke,) * 5,
            self.dropped_stroke,
            *(self.undo,) * 3,
            *(self.redo,) * 2,
            self.see,
            *(self.wait,) * 3,
            self.save,
            self.reopen,
        )

    # --- drawing -------------------------------------------------------------------------

    @property
    def case(self) -> Case:
        case = self.session.case
        assert case is not None
        return case

    def whole(self, count: int) -> int:
        """Return a number below `count`, now and then one just beyond."""
        return int(self.rng.integers(0, max(count, 1) + (self.rng.random() < 0.03)))

    def one(self, *choices: T) -> T:
        return choices[int(self.rng.integers(len(choices)))]

    def area(self) -> Area:
        return self.one(*Zone, *Accent)

    def share(self) -> float:
        return float(self.rng.random())

    # --- moves ---------------------------------------------------------------------------

    def move(self) -> str:
        """Make one move; return what it was."""
        move = self.one(*self.moves)
        self.done.append(move.__name__)
        move()
        assert self.session.problem is None, f"{self.done[-1]}: {self.session.problem}"
        self.digests.setdefault(id(self.case), (self.case, digest(self.case)))
        return self.done[-1]

    def wait(self) -> None:
        """Let the predictions come; then they are those of the open case."""
        self.predictions.let_go()
        assert self.session.is_up_to_date

    def reopen(self) -> None:
        """Save, open the file, and find what was saved."""
        self.files += 1
        path = self.folder / f"{self.files % 3}.stainmap"
        self.session.save(path)
        before, prediction = self.case, self.session._usual_prediction()
        self.session.open_case(path)
        assert self.session.case is not before
        kept = before.surface.measured
        if prediction is not None and prediction.case.surface is before.surface:
            # What was measured of the shape meanwhile comes along in the file.
            kept = measured_shape(prediction.case, prediction.shape)
        assert_same(replace(before, surface=replace(before.surface, measured=kept)), self.case)
        assert not self.session.is_modified
        self.digests.clear()

    def walk(self) -> None:
        """Undo to the start and redo to the end; every state is what it was when it was made."""
        session, last = self.session, self.case
        history = session.history
        assert history is not None
        ahead = len(history.entries) - 1 - history.position
        for _ in range(history.position):
            session.undo()
            self._check()
        assert self.case is history.entries[0].case
        before = self.case
        session.undo()
        assert self.case is before
        for _ in range(len(history.entries) - 1):
            session.redo()
            self._check()
        assert self.case is history.entries[-1].case
        session.redo()
        assert self.case is history.entries[-1].case
        if ahead == 0:
            assert self.case is last

    def _check(self) -> None:
        case, known = self.digests.get(id(self.case), (None, ""))
        if case is self.case:
            assert digest(self.case) == known, "an edit has changed a case that lay behind it"

    def edit(self) -> None:
        change = self.one(*self.edits)
        self.done[-1] = change.__name__
        before, history = self.session.case, self.session.history
        try:
            self.session.edit(change.__name__, change)
        except StainmapError as error:
            if not str(error).endswith((".", "?", ")")):
                raise AssertionError(f"no sentence: {error}") from error
            self.done[-1] += " refused"
            if self.session.case is not before or self.session.history is not history:
                raise AssertionError("refused, and yet something has changed") from error

    def stroke(self, *, dropped: bool = False) -> None:
        session, mesh = self.session, self.case.surface.mesh
        step = self.whole(len(self.case.plan.steps)) if self.share() < 0.5 else None
        try:
            brush = Brush(
                tool=self.one(Tool.BRUSH, Tool.BRUSH, Tool.ERASER, Tool.FILL, Tool.LINE),
                area=self.area(),
                step=step,
                radius_mm=0.1 + 2.0 * self.share(),
                softness=self.share(),
                strength_coats=0.25 + 3.0 * self.share(),
                moves_margin=self.share() < 0.2,
            )
            session.begin_stroke(brush)
        except StainmapError:
            assert not session.is_painting
            return
        vertex = int(self.rng.integers(mesh.vertex_count))
        for _ in range(1 + self.whole(4)):
            session.stroke_to(mesh.vertices[vertex], vertex)
            assert session.is_painting
            near = mesh.faces[(mesh.faces == vertex).any(axis=1)].ravel()
            vertex = int(self.rng.choice(near)) if len(near) else vertex
        if dropped:
            session.cancel_stroke()
        else:
            session.end_stroke()

    def dropped_stroke(self) -> None:
        before = self.session.case
        self.stroke(dropped=True)
        assert self.session.case is before

    def undo(self) -> None:
        for _ in range(1 + self.whole(4)):
            self.session.undo()

    def redo(self) -> None:
        for _ in range(1 + self.whole(4)):
            self.session.redo()

    def see(self) -> None:
        seen = replace(
            self.session.seen,
            light=self.one(*SHOWN_LIGHTS),
            observer=self.one(*OBSERVERS),
            curvature_correction=self.share() < 0.5,
        )
        self.session.see(seen)

    def save(self) -> None:
        if self.session.path is not None and self.share() < 0.6:
            self.session.save()
        else:
            self.files += 1
            self.session.save(self.folder / f"{self.files % 3}.stainmap")
        assert not self.session.is_modified

    # --- edits ---------------------------------------------------------------------------

    def _a_step(self) -> int:
        return self.whole(len(self.case.plan.steps))

    def _coats(self, case: Case) -> Case:
        low = self.whole(7)
        span = CoatSpan(low=low, high=low + self.one(0, 0, 1, 2))
        return edits.with_coats(case, self._a_step(), self.area(), span)

    def _no_coats(self, case: Case) -> Case:
        return edits.with_coats(case, self._a_step(), self.area(), None)

    def _lock(self, case: Case) -> Case:
        return edits.with_lock(case, self._a_step(), self.area(), locked=self.share() < 0.5)

    def _liquid(self, case: Case) -> Case:
        if len(case.plan.steps) > 6:
            return self._no_step(case)
        name = self.one(*(liquid.name for liquid in case.materials.liquids))
        return edits.with_added_liquid(case, self.whole(len(case.plan.steps) + 1), name)

    def _step(self, case: Case) -> Case:
        if len(case.plan.steps) > 6:
            return self._no_step(case)
        return edits.with_added_step(case, self._a_step(), 1 + self.whole(4))

    def _no_step(self, case: Case) -> Case:
        return edits.without_step(case, self._a_step())

    def _moved_step(self, case: Case) -> Case:
        return edits.with_moved_step(case, self._a_step(), self._a_step())

    def _step_jar(self, case: Case) -> Case:
        return edits.with_step_jar(case, self._a_step(), 1 + self.whole(4))

    def _jar(self, case: Case) -> Case:
        jar = case.plan.jar(1 + self.whole(4))
        drops = (self.whole(3), self.whole(3), self.whole(3))
        return edits.with_jar(
            case, replace(jar, dye_drops=drops, liquid_drops=10 + self.whole(30), lot=self._word())
        )

    def _streaks(self, case: Case) -> Case:
        streaks = Streaks(
            area=self.one(*OUTSIDE),
            count=3 + self.whole(5),
            length_mm=2.0 + 2.0 * self.share(),
            coats=1 + self.whole(3),
            direction=self.one(1, -1),
        )
        return edits.with_streaks(case, self._a_step(), self.one((), (streaks,)))

    def _block(self, case: Case) -> Case:
        return edits.with_block(case, self.one(*(block.name for block in case.materials.blocks)))

    def _height(self, case: Case) -> Case:
        return edits.with_nesting_height(case, 42.0 * self.share())

    def _size(self, case: Case) -> Case:
        return edits.with_size(
            case, self.one(SizeState.MILLED, SizeState.SINTERED), LengthUnit.MILLIMETRE
        )

    def _programme(self, case: Case) -> Case:
        return edits.with_programme(case, self.one(*(p.name for p in case.materials.programmes)))

    def _backing(self, case: Case) -> Case:
        return edits.with_backing(
            case,
            self.one(*Region),
            stump=self.one(*(stump.name for stump in case.materials.stumps)),
            cement=self.one(*(cement.name for cement in case.materials.cements)),
        )

    def _cement(self, case: Case) -> Case:
        return edits.with_cement_thickness(case, self.one(*Region), 0.2 * self.share())

    def _no_backing(self, case: Case) -> Case:
        return edits.without_backing(case, self.one(*Region))

    def _screw(self, case: Case) -> Case:
        vertex = int(self.rng.integers(case.surface.mesh.vertex_count))
        x, y, z = (float(v) for v in case.surface.mesh.vertices[vertex])
        return edits.with_screw_channel(case, (x, y, z), vertex, radius_mm=0.6 + 2 * self.share())

    def _no_screw(self, case: Case) -> Case:
        return edits.without_screw_channel(case, 0)

    def _painter(self, case: Case) -> Case:
        return edits.with_painter(case, self._word(), 0.5 + 1.2 * self.share())

    def _process(self, case: Case) -> Case:
        rule = UptakeRule(coats_to_saturation=2.0 + 4.0 * self.share(), competition=self.share())
        return edits.with_process(
            case, StainProcess(uptake=rule, wicking_mm=0.3 * self.share(), painter=self._word())
        )

    def _finish(self, case: Case) -> Case:
        return edits.with_finish(case, self.one(*Finish))

    def _ground(self, case: Case) -> Case:
        return edits.with_ground(case, self.one(None, self.area()), 0.3 * self.share())

    def _target(self, case: Case) -> Case:
        colour = Colour(lightness=68.0 + 10.0 * self.share(), a=1.0, b=18.0)
        offset = Offset(area=self.one(*OUTSIDE[1:]), lightness=-self.share(), chroma=self.share())
        return edits.with_target(case, self.one(None, Target(body=colour, offsets=(offset,))))

    def _intake(self, case: Case) -> Case:
        shade = Shade(
            source=ShadeSource.MEASURED,
            colour=Colour(lightness=66.0 + 12.0 * self.share(), a=2.0, b=20.0),
        )
        intake = (case.intake or Intake()).with_shade(self.one(*Third), self.one(None, shade))
        backing = case.backing(Region.STUMP)
        return with_intake(
            case,
            replace(intake, wish=self._word()),
            stump=backing.stump,
            cement=backing.cement,
            usual=DEFAULT_OFFSETS,
        )

    def _note(self, case: Case) -> Case:
        return replace(case, notes=self._word())

    def _wall(self, case: Case) -> Case:
        return edits.with_assumed_wall(case, 4.2 * self.share())

    def _confirmed(self, case: Case) -> Case:
        return said.confirmed(case, self.one("margin", "mesial", "buccal", "occlusal_axis"))

    def _area_tool(self, case: Case) -> Case:
        tool = self.one(grown_area, shrunk_area, smoothed_area)
        return tool(case, self.area(), 0.1 + self.share())

    def _mirror(self, case: Case) -> Case:
        return mirrored_corrections(case, self.one(*Half))

    def _reset(self, case: Case) -> Case:
        return reset_all(case) if self.share() < 0.3 else reset_area(case, self.area())

    def _word(self) -> str:
        letters = "abc \N{GREEK SMALL LETTER DELTA}\N{EM DASH}\"'<&\n"
        return "".join(self.rng.choice(list(letters), self.whole(12)))
