"""The open case with its history, prediction and background work. Knows no window system.

Both clients use it: the window with a poster that carries notices into its own thread, the
command line without threads. Everything here is called from one thread (the poster's).
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from stainmap.app.case_place import Written, file_digest
from stainmap.app.change import Change, Listener
from stainmap.app.foreground import Foreground
from stainmap.app.job import Job, JobRunner, Post, Progress, call_now
from stainmap.app.keeping import Keeping
from stainmap.app.painting import Painting, StrokeUpdate
from stainmap.app.predicting import PREDICTED_FROM, Predicting
from stainmap.app.session_predicted import PredictedSession
from stainmap.app.shading_work import ShadingWork
from stainmap.errors import StainmapError
from stainmap.files.case_file import read_case, read_look
from stainmap.files.journal import Journal
from stainmap.model.case import Case, changed_fields
from stainmap.model.history import History
from stainmap.model.material import Catalogue
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.seen import Seen
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.brush import Brush, Stroke
    from stainmap.app.cutting import NeckCut
    from stainmap.app.opening import Answers, MeshLook
    from stainmap.app.prediction import Prediction
    from stainmap.files.recovery import Recovered
    from stainmap.surface.diffusion import SurfaceOperator


class Session(PredictedSession):
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
        self._foreground = Foreground(JobRunner(post=post, threaded=threaded), self._notify)
        self._predicting = Predicting(
            JobRunner(post=post, threaded=threaded),
            case=lambda: self.case,
            on_ready=self._predicted,
            on_problem=self._not_predicted,
        )
        self._shading = ShadingWork(
            JobRunner(post=post, threaded=threaded), lambda: self._notify(frozenset({"shading"}))
        )
        self._keeping = Keeping(
            journal,
            JobRunner(post=post, threaded=threaded),
            post,
            case=lambda: self.case,
            on_journal_problem=lambda: self._notify(frozenset({"journal"})),
        )
        self._history: History | None = None
        self._painting = Painting()
        self.look: MeshLook | None = None

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
    def job(self) -> Job[Any] | None:
        """The long task under way that the user waits for, or None."""
        return self._foreground.job

    @property
    def problem(self) -> StainmapError | None:
        """What went wrong last, until something else is begun."""
        return self._foreground.problem

    @property
    def path(self) -> Path | None:
        """File of the open case, or None if it has none yet."""
        return self._keeping.place.path

    @property
    def read_only(self) -> bool:
        """True if the case can only be saved elsewhere; `read_only_because` says why."""
        return self._keeping.place.read_only

    @property
    def read_only_because(self) -> str:
        """A sentence: who has the case open, or why its place cannot be written to."""
        return self._keeping.place.why_read_only

    @property
    def saving(self) -> Job[Written] | None:
        """The saving under way in the background, or None."""
        return self._keeping.saving

    @property
    def journal_problem(self) -> StainmapError | None:
        """Why unsaved work cannot be kept against a crash, or None while it is kept."""
        return self._keeping.journal_problem

    @property
    def keeps_unsaved(self) -> bool:
        """True if unsaved work would be there again after a crash."""
        return self._keeping.keeps_unsaved

    @property
    def is_modified(self) -> bool:
        """True if the current case is not the one on disk."""
        return self.case is not None and not self._keeping.place.holds(self.case)

    @property
    def plan_hash(self) -> str:
        """Hash of everything printed on the sheets, or an empty string."""
        return "" if self.case is None else plan_hash(self.case)

    @property
    def is_painting(self) -> bool:
        """True while a stroke is on its way."""
        return self._painting.stroke is not None

    @property
    def stroke(self) -> Stroke | None:
        """The stroke on its way, for those who show its drafts; None between strokes."""
        return self._painting.stroke

    def subscribe(self, listener: Listener) -> Callable[[], None]:
        """Call `listener` at every change; return the function that ends it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener)

    # --- opening and saving --------------------------------------------------------------

    def look_at(self, path: Path) -> Job[MeshLook]:
        """Read a mesh file; `look` holds it afterwards. The open case stays as it is."""
        from stainmap.app.opening import look_at_mesh  # noqa: PLC0415

        def done(look: MeshLook) -> None:
            self.look = look
            self._foreground.ended("look")

        return self._foreground.start(
            translate("session", "Opening the mesh"),
            lambda progress: look_at_mesh(path, progress),
            done,
        )

    def open_mesh(self, look: MeshLook, answers: Answers) -> Job[tuple[Case, SurfaceOperator]]:
        """Build a case from a mesh that was looked at, and make it the open one."""
        from stainmap.app.opening import build_case  # noqa: PLC0415

        def work(progress: Progress) -> tuple[Case, SurfaceOperator]:
            built = build_case(look, answers, self.materials, progress=progress)
            built[0].surface.mesh.make_ready_to_draw()
            return built

        def done(result: tuple[Case, SurfaceOperator]) -> None:
            case, operator = result
            self.look = None
            self.adopt(case, path=None, operator=operator)
            self._foreground.ended("opened")

        return self._foreground.start(translate("session", "Reading the crown"), work, done)

    def reread(self, answers: Answers) -> Job[Case]:
        """Read the open crown again with what the user has set; one undo step."""
        from stainmap.app.opening import reread  # noqa: PLC0415
        from stainmap.surface.diffusion import SurfaceOperator  # noqa: PLC0415

        case, shape = self._require_case(), self.shape

        def work(progress: Progress) -> Case:
            operator = SurfaceOperator(case.surface.mesh) if shape is None else shape.operator
            return reread(case, operator, answers, progress)

        def done(result: Case) -> None:
            self._foreground.ended("job")
            if self.case is case:
                self._adopt_edit(result, translate("session", "read the crown again"))

        return self._foreground.start(translate("session", "Reading the crown again"), work, done)

    def cut_off(self, plane: NeckCut) -> Job[tuple[Case, SurfaceOperator]]:
        """Keep of the open crown only what a plane cuts off, and read that; one undo step."""
        from stainmap.app.cutting import cut_off  # noqa: PLC0415

        return self._resurface(
            translate("session", "Cutting off the crown"),
            translate("session", "cut off the crown"),
            lambda case, progress: cut_off(case, plane, progress),
        )

    def take_whole_file(self) -> Job[tuple[Case, SurfaceOperator]]:
        """Take all that the file holds again, after something was cut off; one undo step."""
        from stainmap.app.cutting import with_whole_file  # noqa: PLC0415

        return self._resurface(
            translate("session", "Reading the whole file"),
            translate("session", "take the whole file"),
            with_whole_file,
        )

    def _resurface(
        self,
        title: str,
        label: str,
        change: Callable[[Case, Progress], tuple[Case, SurfaceOperator]],
    ) -> Job[tuple[Case, SurfaceOperator]]:
        case = self._require_case()

        def done(result: tuple[Case, SurfaceOperator]) -> None:
            self._foreground.ended("job")
            if self.case is case:
                self._adopt_edit(result[0], label, result[1])

        return self._foreground.start(title, lambda progress: change(case, progress), done)

    def open_case(self, path: Path) -> Job[tuple[Case, NDArray[np.uint8] | None, str]]:
        """Read a case file and make it the open one; take its lock, or open it read-only."""

        def work(progress: Progress) -> tuple[Case, NDArray[np.uint8] | None, str]:
            digest = file_digest(path)
            case = read_case(path, progress)
            case.surface.mesh.make_ready_to_draw()
            return case, read_look(path, case), digest

        def done(result: tuple[Case, NDArray[np.uint8] | None, str]) -> None:
            case, look, digest = result
            self.adopt(case, path=path, saved=True, first_look=look, digest=digest)
            self._foreground.ended("opened")

        return self._foreground.start(translate("session", "Opening the case"), work, done)

    def recover(self, found: Recovered) -> Job[tuple[Case, Path | None]]:
        """Open what a killed program left behind, as a case with unsaved changes.

        It goes back into its file if that still is what it was; else it has none yet.
        """

        def work(progress: Progress) -> tuple[Case, Path | None]:
            case, file = found.read(progress), found.file
            case.surface.mesh.make_ready_to_draw()
            same = file is not None and file_digest(file) == found.file_digest != ""
            return case, file if same else None

        def done(result: tuple[Case, Path | None]) -> None:
            case, file = result
            self.adopt(case, path=file, digest=found.file_digest, recovered=found)
            self._foreground.ended("opened")

        return self._foreground.start(translate("session", "Recovering"), work, done)

    def adopt(
        self,
        case: Case,
        *,
        path: Path | None,
        saved: bool = False,
        operator: SurfaceOperator | None = None,
        first_look: NDArray[np.uint8] | None = None,
        digest: str = "",
        recovered: Recovered | None = None,
    ) -> None:
        """Make `case` the open one with a fresh history.

        Parameters
        ----------
        path, digest
            Its file and the checksum of that; None and empty if it has none.
        saved
            True if the file holds just this state, or nothing has been made of it yet.
        first_look
            (V, 3) sRGB, what it was last seen in, shown until it is predicted.
        recovered
            Where it was recovered from; let go as soon as it is kept here.
        """
        self._history = History.begun_with(case)
        self._keeping.occupy(case, path, saved=saved, digest=digest, recovered=recovered)
        self._painting.end()
        self._foreground.problem = None
        self._predicting.forget(operator, first_look)
        everything = changed_fields(None, case) | {"file", "history", "appearance", "outcome"}
        self._notify(everything | {"opened"})
        self._predicting.go_on()

    def save(self, path: Path | None = None) -> None:
        """Write the open case, under `path` or where it came from.

        Raises
        ------
        CaseFileError
            If there is no place to write to, it cannot be written, somebody else has it open, or
            something else has changed the file.
        """
        self._keeping.save(self._require_case(), path, self._usual_prediction())
        self._notify(frozenset({"file"}))

    def save_in_background(
        self, path: Path | None = None, *, on_ended: Callable[[StainmapError | None], None]
    ) -> Job[Written]:
        """Write the open case as it is now; `on_ended` is told what went wrong, or None."""

        def ended(error: StainmapError | None) -> None:
            self._notify(frozenset({"file"}))
            on_ended(error)

        return self._keeping.save_in_background(
            self._require_case(), path, self._usual_prediction(), ended
        )

    def _usual_prediction(self) -> Prediction | None:
        """Return what gives a file its look: the crown as it is, under the usual light."""
        return self.prediction if self.is_up_to_date and self.seen == Seen() else None

    def keep_now(self) -> None:
        """Wait until unsaved work is kept against what is about to happen, some seconds at most."""
        self._keeping.keep_now()

    def close(self, *, keep_unsaved: bool = True) -> None:
        """Let go of the lock and the threads. Unsaved work stays in the journal, or is dropped."""
        self._keeping.close(keep_unsaved=keep_unsaved)
        self._foreground.close()
        self._predicting.close()
        self._shading.close()

    def export(self, path: Path) -> Job[None]:
        """Write the predicted crown on all bands under D65; the ending chooses the kind."""
        from stainmap.app.exporting import check_ending, export_prediction  # noqa: PLC0415
        from stainmap.app.prediction import for_record  # noqa: PLC0415

        prediction = self.prediction
        if prediction is None:
            raise StainmapError(
                translate("session", "There is no prediction yet."),
                advice=translate("session", "Wait a moment."),
            )

        def work(progress: Progress) -> None:
            check_ending(path)
            export_prediction(for_record(prediction, progress), path)

        return self._foreground.start(
            translate("session", "Exporting"),
            work,
            lambda _none: self._foreground.ended("exported"),
        )

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

    def go_to(self, position: int) -> None:
        """Go to one of the states of the history, from 0, back or forward; none is dropped."""
        history = self._history
        if history is not None and not self.is_painting and history.at(position) is not history:
            self._move(history.at(position))

    # --- the brush -----------------------------------------------------------------------

    def expect_stroke(self, vertex: int, radius_mm: float) -> None:
        """Prepare for the brush at a vertex, so that the first dab there is as quick as the next.

        For the pointer on its way: costs nothing where that has been done, or while busy.
        """
        prediction = self.prediction
        if prediction is not None and self.is_up_to_date and not self.is_painting:
            prediction.engine.prepare_dab(vertex, radius_mm, through=False)

    def begin_stroke(self, brush: Brush) -> None:
        """Put the brush down; raise PlanError if it has nothing to paint."""
        self._painting.begin(self._require_case(), brush, self.prediction)

    def stroke_to(
        self,
        position: NDArray[np.float64],
        vertex: int,
        *,
        more: bool = False,
        in_turns: bool = False,
    ) -> StrokeUpdate:
        """Press the brush at a point of the surface (mm) near `vertex`; see `Painting.move`."""
        seen = self.prediction
        return self._painting.move(position, vertex, seen, more=more, in_turns=in_turns)

    def show_stroke(self) -> StrokeUpdate:
        """Recolour what `stroke_to` has left for a turn of its own; see `Painting.show`."""
        return self._painting.show(self.prediction)

    def catch_up(self) -> StrokeUpdate:
        """Let the stroke show through the wall while the brush rests; see `Painting.catch_up`."""
        return self._painting.catch_up(self.prediction)

    def end_stroke(self) -> None:
        """Lift the brush: the draft becomes one new case."""
        stroke = self._painting.end()
        if stroke is not None:
            self._adopt_edit(stroke.result(), stroke.label)

    def cancel_stroke(self) -> None:
        """Drop the stroke; everything is as before it."""
        if self._painting.cancel(self.prediction):
            self._notify(frozenset({"zones", "accents", "appearance"}))

    # --- inside --------------------------------------------------------------------------

    def _require_case(self) -> Case:
        if self._history is None:
            raise StainmapError(
                translate("session", "No crown is open."),
                advice=translate("session", "Open a mesh or a case first."),
            )
        return self._history.case

    def _adopt_edit(self, case: Case, label: str, operator: SurfaceOperator | None = None) -> None:
        history = self._history
        if history is None or case is history.case:
            return
        self._move(history.edited(case, label), operator)

    def _move(self, history: History, operator: SurfaceOperator | None = None) -> None:
        before = self.case
        self._history = history
        counts = {one.surface.mesh.vertex_count for one in (before, history.case) if one}
        if len(counts) > 1:
            # Colours per vertex fit no other surface.
            self._predicting.forget(operator)
        self._foreground.problem = None
        fields = changed_fields(before, history.case)
        needless = fields.isdisjoint(PREDICTED_FROM)
        if needless:
            self._predicting.carry_over(before)
        self._keeping.note(history.case)
        self._notify(fields | {"history", "file"})
        if not needless:
            self._predicting.go_on()

    def _predicted(self, prediction: Prediction) -> None:
        self._painting.follow(prediction)
        self._notify(frozenset({"appearance", "outcome"}))

    def _not_predicted(self, error: StainmapError) -> None:
        self._foreground.problem = error
        self._notify(frozenset({"appearance", "outcome", "problem"}))

    def _notify(self, fields: frozenset[str]) -> None:
        change = Change(fields=fields)
        for listener in tuple(self._listeners):
            listener(change)
