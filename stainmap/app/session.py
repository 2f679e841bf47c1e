"""The open case with its history, prediction and background work. Knows no window system.

Both clients use it: the window with a poster that carries notices into its own thread, the
command line without threads. Everything here is called from one thread (the poster's).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from stainmap.app.brush import Brush, Stroke
from stainmap.app.job import Job, JobRunner, Post, Progress, call_now
from stainmap.app.opening import Answers, MeshLook, build_case, look_at_mesh, reread
from stainmap.errors import CancelledError, CaseFileError, StainmapError
from stainmap.files.case_file import CaseLock, read_case, write_case
from stainmap.files.recovery import Journal
from stainmap.model.case import Case, changed_fields
from stainmap.model.crown import BodyKind
from stainmap.model.history import History
from stainmap.model.material import Catalogue
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import Outcome, judge
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.appearance import Appearance, AppearanceEngine
from stainmap.predict.scene import scene_from_case
from stainmap.predict.shape import CrownShape, crown_shape
from stainmap.surface.brush import brush_vertices
from stainmap.surface.diffusion import SurfaceOperator

# Case fields that change what a vertex looks like; others (notes, code) cause no prediction.
_SHAPE_FIELDS = frozenset({"surface", "reading", "units"})
_SCENE_FIELDS = frozenset({"materials", "backings", "programme"})
_COAT_FIELDS = frozenset({"zones", "accents", "plan"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What a notice is about: names of case fields, and "appearance", "outcome", "file",
    "history", "job", "look", "opened", "problem"."""

    fields: frozenset[str]

    def touches(self, *names: str) -> bool:
        """Return True if any of `names` changed."""
        return not self.fields.isdisjoint(names)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class StrokeUpdate:
    """What one movement of the brush changed: vertices (m,), their sRGB (m, 3) and coats (S, m)."""

    vertices: NDArray[np.int32]
    srgb: NDArray[np.uint8]


Listener = Callable[[Change], None]


class Session:
    """One open case.

    Parameters
    ----------
    materials
        Catalogue that new cases take their materials from.
    post
        Carries a notice into the client's own thread. The default runs it at once.
    threaded
        False does all work in the calling thread, as the command line wants it.
    journal
        Where unsaved work is kept against a crash; None keeps none.
    """

    def __init__(
        self,
        materials: Catalogue,
        *,
        post: Post = call_now,
        threaded: bool = True,
        journal: Journal | None = None,
    ) -> None:
        self.materials = materials
        self._listeners: list[Listener] = []
        self._jobs = JobRunner(post=post, threaded=threaded)
        self._predictions = JobRunner(post=post, threaded=threaded)
        self._journal = journal
        self._history: History | None = None
        self._lock: CaseLock | None = None
        self._shape: CrownShape | None = None
        self._layout: CoatLayout | None = None
        self._engine: AppearanceEngine | None = None
        self._stroke: Stroke | None = None
        self._pending: frozenset[str] = frozenset()
        self._predicting = False
        self._revision = 0
        self.path: Path | None = None
        self._saved_case: Case | None = None
        self.read_only = False
        self.look: MeshLook | None = None
        self.job: Job[object] | None = None
        self.problem: StainmapError | None = None
        self.coats: NDArray[np.float32] | None = None
        self.appearance: Appearance | None = None
        self.outcome: Outcome | None = None

    # --- reading the state ---------------------------------------------------------------

    @property
    def case(self) -> Case | None:
        """The current case, or None before anything was opened."""
        return None if self._history is None else self._history.case

    @property
    def history(self) -> History | None:
        """All states of the open case."""
        return self._history

    @property
    def shape(self) -> CrownShape | None:
        """Wall, partner vertices and operators of the current surface, once measured."""
        return self._shape

    @property
    def is_modified(self) -> bool:
        """True if the current case is not the one on disk."""
        return self.case is not None and self.case is not self._saved_case

    @property
    def is_up_to_date(self) -> bool:
        """True if the prediction belongs to the current case."""
        return not self._predicting and not self._pending

    @property
    def plan_hash(self) -> str:
        """Hash of everything printed on the sheets, or an empty string."""
        return "" if self.case is None else plan_hash(self.case)

    @property
    def is_painting(self) -> bool:
        """True while a stroke is on its way."""
        return self._stroke is not None

    def subscribe(self, listener: Listener) -> Callable[[], None]:
        """Call `listener` at every change; return the function that ends it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener)

    # --- opening and saving --------------------------------------------------------------

    def look_at(self, path: Path) -> Job[MeshLook]:
        """Read a mesh file; `look` holds it afterwards. The open case stays as it is."""

        def done(look: MeshLook) -> None:
            self.look = look
            self._job_ended("look")

        return self._start("Opening the mesh", lambda progress: look_at_mesh(path, progress), done)

    def open_mesh(self, look: MeshLook, answers: Answers) -> Job[tuple[Case, SurfaceOperator]]:
        """Build a case from a mesh that was looked at, and make it the open one."""

        def work(progress: Progress) -> tuple[Case, SurfaceOperator]:
            return build_case(look, answers, self.materials, progress=progress)

        def done(result: tuple[Case, SurfaceOperator]) -> None:
            case, operator = result
            self.look = None
            self.adopt(case, path=None, operator=operator)
            self._job_ended("opened")

        return self._start("Reading the crown", work, done)

    def reread(self, answers: Answers) -> Job[Case]:
        """Read the open crown again with what the user has set; one undo step."""
        case, shape = self._require_case(), self._shape

        def work(progress: Progress) -> Case:
            operator = shape.operator if shape is not None else SurfaceOperator(case.surface.mesh)
            return reread(case, operator, answers, progress)

        def done(result: Case) -> None:
            self._job_ended("job")
            if self.case is case:
                self._adopt_edit(result, "read the crown again")

        return self._start("Reading the crown again", work, done)

    def open_case(self, path: Path) -> Job[Case]:
        """Read a case file and make it the open one; take its lock, or open it read-only."""

        def done(case: Case) -> None:
            self.adopt(case, path=path, saved=True)
            self._job_ended("opened")

        return self._start("Opening the case", lambda progress: read_case(path, progress), done)

    def adopt(
        self,
        case: Case,
        *,
        path: Path | None,
        saved: bool = False,
        operator: SurfaceOperator | None = None,
    ) -> None:
        """Make `case` the open one with a fresh history."""
        self._release()
        self._history = History.begun_with(case)
        self.path = path
        self._saved_case = case if saved else None
        self._lock = CaseLock.take(path) if path is not None else None
        self.read_only = path is not None and self._lock is None
        self._shape = self._layout = self._engine = None
        self._operator = operator
        self._revision += 1
        self.coats = self.appearance = self.outcome = self.problem = None
        everything = changed_fields(None, case) | {"file", "history", "appearance", "outcome", "opened"}
        self._notify(everything)
        self._predict(everything)

    def save(self, path: Path | None = None) -> None:
        """Write the open case, under `path` or where it came from.

        Raises
        ------
        CaseFileError
            If there is no place to write to, it cannot be written, or somebody else has it open.
        """
        case = self._require_case()
        target = path or self.path
        if target is None:
            raise CaseFileError("The case has no file yet.", advice="Choose where to save it.")
        if target == self.path and self.read_only:
            raise CaseFileError(
                "Somebody else has this case open.", where=target.name, advice="Save it under another name."
            )
        lock = self._lock
        if target != self.path or lock is None:
            lock = CaseLock.take(target)
            if lock is None:
                raise CaseFileError(
                    "Somebody else has this case open.",
                    where=target.name,
                    advice="Choose another name.",
                )
        write_case(case, target, preview=self.preview())
        if self._lock is not None and self._lock is not lock:
            self._lock.release()
        self._lock, self.path, self.read_only = lock, target, False
        self._saved_case = case
        if self._journal is not None:
            self._journal.clear()
        self._notify(frozenset({"file"}))

    def preview(self) -> NDArray[np.uint8] | None:
        """Return sRGB per vertex for the preview picture, if there is a prediction."""
        return None if self.appearance is None else self.appearance.srgb

    def close(self) -> None:
        """Let go of the lock and the threads. Unsaved work stays in the journal."""
        self._release()
        self._jobs.close()
        self._predictions.close()

    # --- editing -------------------------------------------------------------------------

    def edit(self, label: str, change: Callable[[Case], Case]) -> None:
        """Make one undo step: `change` returns a new case from the current one."""
        case = self._require_case()
        self._adopt_edit(change(case), label)

    def undo(self) -> None:
        """Go back one step."""
        if self._history is not None and not self.is_painting:
            self._move(self._history.undone())

    def redo(self) -> None:
        """Go forward one step."""
        if self._history is not None and not self.is_painting:
            self._move(self._history.redone())

    # --- the brush -----------------------------------------------------------------------

    def begin_stroke(self, brush: Brush) -> None:
        """Put the brush down; raise PlanError if it has nothing to paint."""
        case = self._require_case()
        self._stroke = Stroke.begun(case, brush)
        if self._engine is not None and self.is_up_to_date:
            self._engine.begin_stroke()

    def stroke_to(self, position: NDArray[np.float64], vertex: int) -> StrokeUpdate:
        """Press the brush at a point of the surface (mm) near `vertex`; return what changed."""
        stroke = self._stroke
        if stroke is None:
            return _NOTHING
        brush = stroke.brush
        mesh = stroke.case.surface.mesh
        vertices, weight = brush_vertices(mesh, position, vertex, brush.radius_mm, brush.softness)
        changed = stroke.dab(vertices, weight)
        if len(changed) == 0 or self._engine is None or self.coats is None or self._layout is None:
            return StrokeUpdate(vertices=changed, srgb=np.empty((0, 3), np.uint8))
        coats = self._layout.under_the_brush(stroke, self.coats, changed)
        dab = self._engine.dab(changed, coats)
        return StrokeUpdate(vertices=dab.vertices, srgb=dab.srgb)

    def end_stroke(self) -> None:
        """Lift the brush: the draft becomes one new case."""
        stroke, self._stroke = self._stroke, None
        if stroke is None:
            return
        result = stroke.result()
        if result is stroke.case:
            return
        self._adopt_edit(result, stroke.label)

    def cancel_stroke(self) -> None:
        """Drop the stroke; everything is as before it."""
        stroke, self._stroke = self._stroke, None
        if stroke is None:
            return
        if stroke.touched.any():
            self._predict(frozenset(_COAT_FIELDS))
        self._notify(frozenset({"zones", "accents", "appearance"}))

    @property
    def draft_zones(self) -> NDArray[np.uint8] | None:
        """Zones as they are under a stroke on its way, else those of the case."""
        if self._stroke is not None:
            return self._stroke.zones
        return None if self.case is None else self.case.zones

    # --- inside --------------------------------------------------------------------------

    def _require_case(self) -> Case:
        if self._history is None:
            raise StainmapError("No crown is open.", advice="Open a mesh or a case first.")
        return self._history.case

    def _adopt_edit(self, case: Case, label: str) -> None:
        history = self._history
        if history is None or case is history.case:
            return
        self._move(history.edited(case, label))

    def _move(self, history: History) -> None:
        before = self.case
        self._history = history
        fields = changed_fields(before, history.case)
        self._revision += 1
        if self._journal is not None:
            self._journal.note(history.case)
        self._notify(fields | {"history", "file"})
        self._predict(fields)

    def _predict(self, fields: frozenset[str]) -> None:
        wanted = fields & (_SHAPE_FIELDS | _SCENE_FIELDS | _COAT_FIELDS | {"target"})
        if not wanted:
            return
        self._pending |= wanted
        if not self._predicting:
            self._start_prediction()

    def _start_prediction(self) -> None:
        case, fields, revision = self._require_case(), self._pending, self._revision
        self._pending = frozenset()
        self._predicting = True
        shape = None if fields & _SHAPE_FIELDS else self._shape
        layout = None if shape is None else self._layout
        engine = None if shape is None or fields & (_SCENE_FIELDS | {"plan"}) else self._engine
        operator = getattr(self, "_operator", None) if shape is None else None
        old_scene = self._engine.scene if self._engine is not None and shape is not None else None

        def work(progress: Progress) -> _Prediction:
            new_shape = shape or crown_shape(case, operator=operator, progress=progress)
            new_layout = layout or CoatLayout(new_shape)
            scene = scene_from_case(case, bands="screen") if engine is None else engine.scene
            if engine is not None:
                new_engine = engine
            elif old_scene is not None and self._engine is not None and scene == old_scene:
                new_engine = self._engine
            else:
                new_engine = AppearanceEngine(new_shape, scene)
            coats = new_layout.coats(case)
            appearance = new_engine.whole(coats)
            outcome = judge(case, new_shape, new_layout, coats, appearance)
            return _Prediction(new_shape, new_layout, new_engine, coats, appearance, outcome)

        def done(result: _Prediction) -> None:
            self._predicting = False
            if revision == self._revision:
                self._take(result)
            if self._pending or revision != self._revision:
                self._pending = self._pending or frozenset(_COAT_FIELDS)
                # A stale result may still carry the measured shape of the same surface.
                if self.case is not None and self.case.surface is case.surface and not (
                    self._pending & _SHAPE_FIELDS
                ):
                    self._shape, self._layout = result.shape, result.layout
                    self._engine = result.engine if not self._pending & _SCENE_FIELDS else None
                else:
                    self._pending |= _SHAPE_FIELDS
                self._pending |= {"plan"}
                self._start_prediction()

        def failed(error: StainmapError) -> None:
            self._predicting = False
            if revision != self._revision:
                self._pending |= fields
                self._start_prediction()
                return
            self.appearance = self.outcome = None
            self.problem = error
            self._notify(frozenset({"appearance", "outcome", "problem"}))

        self._predictions.start("Predicting", work, on_done=done, on_failed=failed)

    def _take(self, result: _Prediction) -> None:
        self._shape, self._layout, self._engine = result.shape, result.layout, result.engine
        self.coats, self.appearance, self.outcome = result.coats, result.appearance, result.outcome
        self.problem = None
        if self._stroke is not None:
            self._engine.begin_stroke()
        self._notify(frozenset({"appearance", "outcome"}))

    def _start(self, title: str, work: Callable[[Progress], object], done: Callable[..., None]) -> Job:
        def failed(error: StainmapError) -> None:
            self.job = None
            self.problem = None if isinstance(error, CancelledError) else error
            self._notify(frozenset({"job", "problem"}))

        self.problem = None
        job = self._jobs.start(
            title,
            work,
            on_done=done,
            on_failed=failed,
            on_progress=lambda _job: self._notify(frozenset({"job"})),
        )
        if not job.is_finished:
            self.job = job
            self._notify(frozenset({"job"}))
        return job

    def _job_ended(self, what: str) -> None:
        self.job = None
        self._notify(frozenset({"job", what}))

    def _release(self) -> None:
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def _notify(self, fields: frozenset[str]) -> None:
        change = Change(fields=fields)
        for listener in tuple(self._listeners):
            listener(change)


@dataclass(frozen=True, slots=True)
class _Prediction:
    shape: CrownShape
    layout: CoatLayout
    engine: AppearanceEngine
    coats: NDArray[np.float32]
    appearance: Appearance
    outcome: Outcome


_NOTHING = StrokeUpdate(vertices=np.empty(0, np.int32), srgb=np.empty((0, 3), np.uint8))

__all__ = ["Answers", "BodyKind", "Brush", "Change", "MeshLook", "Session", "StrokeUpdate", "replace"]
