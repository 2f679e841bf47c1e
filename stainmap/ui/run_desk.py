"""The run at work: its stages open their pages, and a tray can be laid out."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QDialog, QFileDialog, QWidget

from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.app.settings import Settings
from stainmap.app.tray import LaidCase, LaidTray, laid_case, lay_tray
from stainmap.errors import StainmapError
from stainmap.files.case_file import SUFFIX as CASE_SUFFIX
from stainmap.files.tray_file import SUFFIX as TRAY_SUFFIX
from stainmap.files.tray_file import read_tray, write_tray
from stainmap.model.tray import Tray
from stainmap.planning.bridge_accents import has_connector_accent, with_connector_accent
from stainmap.planning.schedule import RunStage
from stainmap.planning.tray_mixing import PaintedCase
from stainmap.ui.mixing_dialog import MixingDialog
from stainmap.ui.printing_flow import PrintingFlow
from stainmap.ui.run_strip import RunStrip
from stainmap.ui.stage_dialogs import DryingDialog, FurnaceDialog, OrderDialog
from stainmap.ui.tray_dialog import TrayDialog, entries_of

_NOT_READY = "The prediction is not ready yet."


class RunDesk(QObject):
    """Opens the pages of the run, and makes what was changed there one undo step.

    Signals
    -------
    said
        A sentence for the status line.
    compare_asked
        The plan is to be seen in another programme.
    """

    said = Signal(str)
    compare_asked = Signal()

    def __init__(
        self, session: Session, runner: JobRunner, strip: RunStrip, window: QWidget
    ) -> None:
        super().__init__(window)
        self._session, self._runner, self._window = session, runner, window
        # What is set for this computer; the window tells when it changes.
        self.settings = Settings()
        strip.stage_asked.connect(self.open_page)

    def open_page(self, stage: RunStage) -> None:
        """Open the page of a stage of the open case."""
        case = self._session.case
        if case is None:
            return
        try:
            if stage is RunStage.MIX:
                self.open_mixing()
            elif stage is RunStage.COATS:
                OrderDialog(case, self._window).exec()
            elif stage is RunStage.DRY:
                DryingDialog(case, self._window, degrees=self.settings.degrees).exec()
            else:
                page = FurnaceDialog(case, self._window, degrees=self.settings.degrees)
                page.compare_asked.connect(self.compare_asked)
                page.exec()
        except StainmapError as error:
            self.said.emit(str(error))

    def open_mixing(self) -> None:
        """Show what is mixed, and take over what was changed."""
        prediction = self._session.prediction
        if prediction is None or not self._session.is_up_to_date:
            self.said.emit(_NOT_READY)
            return
        case = prediction.case
        dialog = MixingDialog(
            case, prediction.coats, self._window, usual_drops_per_ml=self.settings.drops_per_ml
        )
        if dialog.exec() != QDialog.DialogCode.Accepted or dialog.case is case:
            return
        changed = dialog.case
        if (changed.plan, changed.process) != (case.plan, case.process):
            self._session.edit("change what is mixed", lambda _case: changed)

    def paint_connectors(self) -> None:
        """Put the usual dark accent over the connectors of a bridge."""
        case = self._session.case
        if case is None:
            return
        if has_connector_accent(case):
            self.said.emit("The plan paints connectors and embrasures already.")
            return
        try:
            self._session.edit("accent over the connectors", with_connector_accent)
        except StainmapError as error:
            self.said.emit(str(error))

    def open_tray(self) -> None:
        """Show a tray, the open case on it if it has been saved."""
        dialog = TrayDialog(self._window)
        dialog.laid.connect(lambda tray: self._lay(dialog, tray))
        dialog.add_asked.connect(lambda: self._add(dialog))
        dialog.open_asked.connect(lambda: self._open(dialog))
        dialog.keep_asked.connect(lambda: self._keep(dialog))
        printing = PrintingFlow(self._session, self._runner, dialog, dialog)
        printing.said.connect(dialog.say)
        printing.settings = self.settings
        dialog.sheets_asked.connect(
            lambda laid: printing.show_tray(laid, self.settings.page, self._folder())
        )
        dialog.finished.connect(printing.close)
        own = self._open_case()
        if own is not None:
            dialog.add_entries((own.entry,))
        dialog.exec()

    def _open_case(self) -> LaidCase | None:
        """Return the open case as it lies on a tray; None if it has no file or no coats yet."""
        path, prediction = self._session.path, self._session.prediction
        if path is None or prediction is None or not self._session.is_up_to_date:
            return None
        case = prediction.case
        return laid_case(path, case, PaintedCase(case=case, coats=prediction.coats))

    def _lay(self, dialog: TrayDialog, tray: Tray) -> None:
        own = self._open_case()

        def done(laid: LaidTray) -> None:
            if [one.path for one in laid.tray.entries] == [one.path for one in dialog.tray.entries]:
                dialog.set_laid(laid)

        self._runner.start(
            "Reading the tray",
            lambda progress: lay_tray(tray, progress, known=() if own is None else (own,)),
            on_done=done,
            on_failed=lambda error: dialog.set_problem(str(error)),
        )

    def _folder(self) -> str:
        path = self._session.path
        return "" if path is None else str(path.parent)

    def _add(self, dialog: TrayDialog) -> None:
        names, _ = QFileDialog.getOpenFileNames(
            dialog, "Add cases", self._folder(), f"Cases (*{CASE_SUFFIX})"
        )
        if names:
            dialog.add_entries(entries_of(names))

    def _open(self, dialog: TrayDialog) -> None:
        name, _ = QFileDialog.getOpenFileName(
            dialog, "Open a tray", self._folder(), f"Trays (*{TRAY_SUFFIX})"
        )
        if not name:
            return
        try:
            dialog.lay(read_tray(Path(name)))
        except StainmapError as error:
            dialog.set_problem(str(error))

    def _keep(self, dialog: TrayDialog) -> None:
        name, _ = QFileDialog.getSaveFileName(
            dialog, "Keep the tray", self._folder(), f"Trays (*{TRAY_SUFFIX})"
        )
        if not name:
            return
        path = Path(name) if name.endswith(TRAY_SUFFIX) else Path(name + TRAY_SUFFIX)
        try:
            write_tray(dialog.tray, path)
        except StainmapError as error:
            dialog.set_problem(str(error))
            return
        self.said.emit(f"Kept as {path}.")
