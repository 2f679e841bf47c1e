"""Opening: from a file on the disk to a crown on the screen, with every question on the way."""

from __future__ import annotations

import time
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.app.settings import Settings
from stainmap.errors import ReadingError, StainmapError
from stainmap.files.case_file import SUFFIX, is_case_file
from stainmap.files.recovery import Recovered
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_questions import CrownQuestions
from stainmap.ui.crown_view import CrownView
from stainmap.ui.opening_questions import (
    AS_NAMED,
    ASKED_ON_THE_CROWN,
    CLOSE,
    CUT,
    IS_RIGHT,
    NO_CROWN,
    OPEN,
    OTHER,
    PARTS,
    SAY_AXIS,
    SAY_MESIAL,
    SHOW_PARTS,
    THIS_SIDE,
)
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.opening import MeshLook

MESH_ENDINGS = (".stl", ".ply", ".obj", ".off", ".3mf")
_SHOW_AFTER_S = 0.3
_DOUBTFUL = 0.5


class OpeningFlow(CrownQuestions):
    """Opens meshes and cases, shows progress and problems, and asks what has to be known.

    Signals
    -------
    opened_file
        Path of the mesh or case that was chosen, so that its folder is remembered.
    block_named
        Name of the block a mesh is read with.
    set_aside
        True while a mesh that has not been read is shown in place of the open case.
    """

    opened_file = Signal(object)
    block_named = Signal(str)
    set_aside = Signal(bool)

    def __init__(self, session: Session, view: CrownView, desk: CrownDesk, window: QWidget) -> None:
        super().__init__(session, view, desk, window)
        self._window = window
        self.folder = ""
        self.last_block = ""
        # What new cases begin with; the window tells when it changes.
        self.settings = Settings()
        self.questions.accepted.connect(self._take_answers)
        self.questions.cancelled.connect(self.go_back)
        self.questions.unit_chosen.connect(lambda _unit: self._show_look())
        self.progress.cancelled.connect(self._cancel_job)
        self.message.chosen.connect(self._choose)

    # --- asked from outside --------------------------------------------------------------

    def ask_for_file(self) -> None:
        """Let a mesh or a case be chosen, and open it."""
        endings = " ".join(f"*{ending}" for ending in (SUFFIX, *MESH_ENDINGS))
        name, _ = QFileDialog.getOpenFileName(
            self._window,
            translate("opening flow", "Open a mesh or a case"),
            self.folder,
            translate("opening flow", "Meshes and cases ({endings});;All files (*)").format(
                endings=endings
            ),
        )
        if name:
            self.open_path(Path(name))

    def open_path(self, path: Path) -> None:
        """Open a case file, or look at a mesh."""
        self.go_back()
        self.message.hide()
        self.opened_file.emit(path)
        if path.suffix.lower() == SUFFIX or (path.is_file() and is_case_file(path)):
            self._session.open_case(path)
        else:
            self._session.look_at(path)

    def recover(self, found: Recovered) -> None:
        """Open what a killed program left behind, as unsaved work."""
        self._stop_asking()
        self._session.recover(found)

    def refuse_dropped(self, count: int) -> None:
        """Say why nothing was opened of what was dropped."""
        if count > 1:
            text = translate(
                "opening flow",
                "Several files were dropped. Drop one, or put cases onto a tray with Ctrl+T.",
            )
            self.tell(translate("opening flow", "One file at a time"), text)
        else:
            text = translate(
                "opening flow",
                "What was dropped does not lie on this computer. Copy it here, then drop it.",
            )
            self.tell(translate("opening flow", "Not a file of this computer"), text)

    def cut_off_the_crown(self) -> None:
        """Show a plane on the open crown, below which all is cut away."""
        if self._session.case is not None and not self._aside:
            self.go_back()
            self.cut_tool.start()

    def tell(self, title: str, text: str, details: str = "") -> None:
        """Show a message beside the crown, unless a question stands there."""
        if not self._aside and not self._asking:
            self._say(title, text, (CLOSE,), details)

    def show_notes(self) -> None:
        """Show what was noticed when the open crown was read."""
        from stainmap.app.cutting import is_to_be_cut  # noqa: PLC0415

        case = self._session.case
        if case is not None and not self._aside and not self._asking:
            title = translate("opening flow", "Noticed when the crown was read")
            if case.reading.kind in NO_CROWN:
                title = translate("opening questions", NO_CROWN[case.reading.kind])
            buttons = (CUT, CLOSE) if is_to_be_cut(case) else (CLOSE,)
            self._say(title, "\n".join(case.reading.warnings), buttons)

    # --- the session speaks --------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Show progress and problems, and go on where a step has ended."""
        if change.touches("job"):
            self._show_progress()
        if change.touches("look") and self._session.look is not None:
            self._ask_about(self._session.look)
        if change.touches("opened"):
            self._session.look = None
            self._hide_questions()
            self._set_aside(False)
            self._answers = self._again = None
            self._stop_asking()
            self.message.hide()
            self._say_what_is_missing()
        if change.touches("problem") and self._session.problem is not None:
            self._show_problem(self._session.problem)
        elif change.touches("job") and self._may_ask_again():
            self._show_questions()
        self.show_nothing_yet()

    def _say_what_is_missing(self) -> None:
        """Say at once of a crown that was opened what keeps it from being planned well."""
        case = self._session.case
        if case is None:
            return
        if self._session.read_only:
            self._say(
                translate("opening flow", "Read-only"),
                translate(
                    "opening flow",
                    "{why} What you change here can only be saved under another name.",
                ).format(why=self._session.read_only_because),
                (CLOSE,),
            )
        elif case.reading.kind in NO_CROWN:
            self.show_notes()
        elif case.reading.sure("occlusal_axis") < _DOUBTFUL:
            self._say(
                translate("opening flow", "Which way does it bite?"),
                translate("opening flow", "The shape hardly tells. It is shown as it was guessed."),
                (SAY_AXIS, IS_RIGHT),
            )
        elif case.reading.mesial is None:
            self._say(
                translate("opening flow", "Where is mesial?"),
                translate(
                    "opening flow", "The shape does not tell, and zones on the sides go by it."
                ),
                (SAY_MESIAL, CLOSE),
            )

    def _may_ask_again(self) -> bool:
        """Return True where the reading of a mesh was stopped: its questions are open again."""
        idle = self._session.job is None and not self._asking and self.message.isHidden()
        return idle and self._aside and self.questions.isHidden()

    def show_nothing_yet(self) -> None:
        """Say what to do while no crown is open and nothing is under way."""
        idle = self._session.case is None and self._session.job is None
        idle = idle and not (self._asking or self._aside)
        if idle and not self.message.isVisible():
            formats = ", ".join(one[1:].upper() for one in MESH_ENDINGS)
            self._say(
                translate("opening flow", "No crown yet"),
                translate(
                    "opening flow",
                    "Drop a file here ({formats} or a case), or open one with Ctrl+O.",
                ).format(formats=formats),
                (OPEN,),
            )
        self._keep_clear()
        self._view.empty_mark.set_solid(self._session.job is not None)

    def _show_progress(self) -> None:
        job = self._session.job
        if job is None:
            self.progress.hide()
            return
        gone = time.monotonic() - job.started_s
        left = gone / job.share - gone if job.share > 0.05 else 0.0
        self.progress.set_progress(job.title, job.share, job.phrase, left)
        if gone >= _SHOW_AFTER_S or job.share > 0.0:
            self.message.hide()
            self.progress.show()
            self._place(self.progress)

    def _cancel_job(self) -> None:
        if self._session.job is not None:
            self._session.job.cancel()

    # --- questions -----------------------------------------------------------------------

    def _ask_about(self, look: MeshLook) -> None:
        """Show a mesh that was looked at, and beside it what has to be known before it is read."""
        self.questions.ask(
            look.path.name,
            look.mesh.extent.tolist(),
            look.sizes,
            [block.name for block in self._session.materials.blocks],
            remarks=[*look.loaded.warnings, *look.loaded.repairs],
            last_block=self.last_block,
        )
        self.message.hide()
        self._show_look()
        self._show_questions()

    def _show_look(self) -> None:
        look = self._session.look
        if look is None:
            return
        axis = (0.0, 0.0, 1.0)
        if self._answers is not None and self._answers.occlusal_axis is not None:
            axis = self._answers.occlusal_axis
        millimetres = self.questions.chosen_unit.millimetres
        self._desk.show_bare(look.mesh, millimetres, np.array(axis, dtype=np.float64))
        self._set_aside(True)

    def _set_aside(self, aside: bool) -> None:
        if aside != self._aside:
            self._aside = aside
            self.set_aside.emit(aside)

    @property
    def is_aside(self) -> bool:
        """True while a mesh that has not been read is shown in place of the open case."""
        return self._aside

    def go_back(self) -> None:
        """Drop the mesh that was looked at and show the open case again, as it was left."""
        self._stop_asking()
        self._hide_questions()
        self.message.hide()
        if self._aside:
            # A reading that is still under way must not open its crown later.
            self._cancel_job()
            self._session.look = self._answers = None
            self._desk.show_again()
            self._set_aside(False)
        self.show_nothing_yet()

    def step_back(self) -> bool:
        """Do what Esc means now: stop, or go back; return False if it means nothing here."""
        if self._aside and self._session.job is not None:
            self._session.job.cancel()
        elif self.cut_tool.is_active:
            self.cut_tool.stop()
        elif (
            self._aside
            or self._asking
            or (self.message.isVisible() and self._session.case is not None)
        ):
            self.go_back()
        else:
            return False
        return True

    def _take_answers(self) -> None:
        from stainmap.app.opening import Answers, units_from_numbers  # noqa: PLC0415

        look, said = self._session.look, self.questions.answers
        if look is None or said is None:
            return
        self._hide_questions()
        self.questions.set_note("")
        self.block_named.emit(said.block)
        self._answers = Answers(
            units=units_from_numbers(said.numbers),
            size_state=said.size_state,
            block=said.block,
            unit=said.unit,
            programme=self.settings.programme_of(self._session.materials),
            amounts=self.settings.amounts,
        )
        self._session.open_mesh(look, self._answers)

    def _show_problem(self, problem: StainmapError) -> None:
        look = self._session.look
        if look is not None and self._answers is not None and problem.__cause__ is None:
            if isinstance(problem, ReadingError) and problem.where in ASKED_ON_THE_CROWN:
                self._ask(problem.where)
            else:
                self.questions.set_note(" ".join(p for p in (problem.message, problem.advice) if p))
                self._show_questions()
                if isinstance(problem, ReadingError) and problem.where == PARTS:
                    self._offer_ways(len(self._answers.units))
            return
        question = problem.where if isinstance(problem, ReadingError) else None
        if question in ASKED_ON_THE_CROWN and self._again is not None:
            self._ask(question)
            return
        buttons = (OTHER,) if self._session.case is None else (CLOSE, OTHER)
        cause = problem.__cause__
        details = f"{type(cause).__name__}: {cause}" if cause is not None else ""
        title = problem.where or translate("opening flow", "This did not work")
        text = " ".join(part for part in (problem.message, problem.advice) if part)
        if "." not in title:  # a file keeps its name as it is
            title = title[0].upper() + title[1:]
        self._say(title, text, buttons, details)

    def _offer_ways(self, count: int) -> None:
        """Say what can be done besides naming other teeth."""
        ways = (SHOW_PARTS, AS_NAMED) if count > 1 else (AS_NAMED,)
        self._say(
            translate("opening flow", "Are these the teeth?"),
            translate("opening flow", "If they are, the shape can be read by them."),
            ways,
        )

    def _choose(self, button: str) -> None:
        from stainmap.app.said import confirmed  # noqa: PLC0415

        if button in (OPEN, OTHER):
            self.go_back()
            self.ask_for_file()
            self.show_nothing_yet()
        elif button == SAY_MESIAL:
            self.ask_for_mesial()
        elif button == SAY_AXIS:
            self.ask_for_bite()
        elif button == IS_RIGHT:
            self.message.hide()
            self._session.edit(
                translate("opening flow", "the biting side is right"),
                lambda c: confirmed(c, "occlusal_axis"),
            )
        elif button == CUT:
            self.cut_off_the_crown()
        elif button == SHOW_PARTS:
            self._hide_questions()
            self._ask(PARTS)
        elif button == AS_NAMED:
            self._hide_questions()
            self._answer(as_given=True)
        elif button == THIS_SIDE:
            x, y, z = (float(v) for v in self._view.camera.axes[2])
            self._answer(axis=(x, y, z))
        else:
            self.go_back()
