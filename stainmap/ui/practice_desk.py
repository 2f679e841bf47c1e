"""The menu Practice of the user's window: the list, the window of practice, slips of one's plan."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSettings, Signal
from PySide6.QtWidgets import QFileDialog

from stainmap.app.job import JobRunner
from stainmap.errors import StainmapError
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.practising import PracticeBook
    from stainmap.practice.packs import Pack, PackedExercise
    from stainmap.ui.main_window import MainWindow
    from stainmap.ui.practice_window import PracticeWindow

_TRAINEE = "practice/trainee"


class PracticeDesk(QObject):
    """Opens practice and brings the user back. Nothing of it is loaded before it is asked for.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(self, window: MainWindow, settings: QSettings, runner: JobRunner) -> None:
        super().__init__(window)
        self._window, self._settings, self._runner = window, settings, runner
        self._book: PracticeBook | None = None
        # What asks for the list elsewhere: a window of practice has no practice of its own.
        self.relay: Callable[[], None] | None = None
        self.said.connect(window.status.say)
        window.strip.practice_asked.connect(self.new_practice)
        self.practice: PracticeWindow | None = None

    @property
    def book(self) -> PracticeBook:
        """The lab book, opened when it is first needed."""
        from stainmap.app.practising import PracticeBook  # noqa: PLC0415 - see the class

        if self._book is None:
            self._book = PracticeBook()
        return self._book

    def use_book(self, path: Path) -> None:
        """Keep results in another file."""
        from stainmap.app.practising import PracticeBook  # noqa: PLC0415 - see the class

        self._book = PracticeBook(path)

    @property
    def trainee(self) -> str:
        """Who practised last, or empty."""
        return str(self._settings.value(_TRAINEE, "", type=str))

    # --- exercises ---------------------------------------------------------------------------

    def new_practice(self) -> None:
        """Let an exercise be chosen, and open it in a window of its own."""
        if self.relay is not None:
            self.relay()
            return
        from stainmap.ui.practice_list import PracticeList  # noqa: PLC0415 - see the class

        today = datetime.now(UTC).astimezone().date()
        parent = self._window if self.practice is None else self.practice
        choosing = PracticeList(self.book, self.trainee, today, parent)
        choosing.chosen.connect(lambda packed, pack: self._begin(choosing.trainee, packed, pack))
        choosing.sheet_asked.connect(lambda: self._ask_for_sheet(today, choosing.pack))
        choosing.exec()
        choosing.deleteLater()

    def _begin(self, trainee: str, packed: PackedExercise, pack_hash: str) -> None:
        from stainmap.practice.exercise import Kind  # noqa: PLC0415 - see the class

        self._settings.setValue(_TRAINEE, trainee)
        if packed.kind == Kind.VALUE_BY_EYE.value:
            self._test_eye(trainee, packed, pack_hash)
            return
        window = self._open_window(trainee)
        window.start(packed, pack_hash or None)

    def _open_window(self, trainee: str) -> PracticeWindow:
        if self.practice is not None:
            self.practice.trainee = trainee
            return self.practice
        from stainmap.app.session import Session  # noqa: PLC0415 - see the class
        from stainmap.practice.exercise_crown import practice_materials  # noqa: PLC0415
        from stainmap.ui.practice_window import PracticeWindow  # noqa: PLC0415

        own, runner = self._window, self._runner
        session = Session(practice_materials(), post=runner.post, threaded=runner.threaded)
        settings = QSettings(
            str(Path(self._settings.fileName()).with_name("practice.ini")),
            QSettings.Format.IniFormat,
        )
        window = PracticeWindow(
            session,
            settings,
            runner.another(),
            book=self.book,
            trainee=trainee,
            store=own.own_settings.store,
        )
        window.ended.connect(self._come_back)
        window.list_asked.connect(self.new_practice)
        window.setGeometry(own.geometry())
        if own.isMaximized():
            window.showMaximized()
        else:
            window.show()
        own.hide()
        self.practice = window
        return window

    def _come_back(self) -> None:
        """Show the user's window again, as it was."""
        self._window.show()
        self._window.raise_()
        self._window.activateWindow()
        if self.practice is not None:
            self.practice.deleteLater()
            self.practice = None

    # --- by eye ------------------------------------------------------------------------------

    def _test_eye(self, trainee: str, packed: PackedExercise, pack_hash: str) -> None:
        from stainmap.app.practising import attempt_of  # noqa: PLC0415 - see the class
        from stainmap.practice.exercise import Skill  # noqa: PLC0415
        from stainmap.practice.staircase import Threshold  # noqa: PLC0415
        from stainmap.ui.practice_eye import EyeDialog, eye_points  # noqa: PLC0415

        dialog = EyeDialog(packed.seed, self._window if self.practice is None else self.practice)

        def keep(found: Threshold, pairs: int) -> None:
            points = eye_points(found)
            attempt = attempt_of(
                trainee,
                packed,
                points,
                {Skill.EYE.value: points},
                started_at=dialog.began_at,
                details={**found.details, "pairs": pairs},
                pack_hash=pack_hash or None,
            )
            if not self.book.keep(attempt):
                self.said.emit(
                    translate("practice desk", "Not kept for later: {trouble}").format(
                        trouble=self.book.trouble
                    )
                )

        dialog.finished_test.connect(keep)
        dialog.exec()
        dialog.deleteLater()

    # --- slips, and the instructor's sheet ---------------------------------------------------

    def show_slips(self) -> None:
        """Show what slips would do to the plan of the open case."""
        from stainmap.ui.practice_slips import SlipsDialog  # noqa: PLC0415 - see the class

        case = self._window.session.case
        if case is not None:
            SlipsDialog(case, None, self._runner.another(), self._window).show()

    def _ask_for_sheet(self, today: date, pack: Pack | None) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self._window,
            translate("practice desk", "Instructor's sheet"),
            f"practice-{today}.pdf",
            "PDF (*.pdf)",
        )
        if name:
            self.write_sheet(Path(name), today, pack)

    def write_sheet(self, path: Path, today: date, pack: Pack | None = None) -> None:
        """Write the instructor's sheet of everybody who practised here, or say why not.

        Of a pack it shows what belongs to it.
        """
        from stainmap.app.practice_record import practice_sheet  # noqa: PLC0415 - see the class
        from stainmap.paper.practice_sheet import write_practice_sheet  # noqa: PLC0415

        try:
            page = self._window.own_settings.settings.page
            sheet = practice_sheet(self.book.opened(), today=today, pack=pack, page=page)
            write_practice_sheet(path, sheet)
        except StainmapError as error:
            self.said.emit(str(error))
        else:
            self.said.emit(translate("practice desk", "Saved as {path}.").format(path=path))
