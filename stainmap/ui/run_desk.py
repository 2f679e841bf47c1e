"""The run at work: its stages open their pages, and a tray can be laid out."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.app.settings import Settings
from stainmap.errors import StainmapError
from stainmap.paper.page_size import PageSize
from stainmap.planning.schedule import RunStage
from stainmap.ui.asking import ask
from stainmap.ui.printing_flow import PrintingFlow
from stainmap.ui.run_strip import RunStrip
from stainmap.ui.tray_desk import TrayDesk
from stainmap.words import marked, translate

_NOT_READY = marked("run desk", "The prediction is not ready yet.")


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
        self.tray = TrayDesk(session, runner, window, self._prepare)
        strip.stage_asked.connect(self.open_page)

    def open_page(self, stage: RunStage) -> None:
        """Open the page of a stage of the open case."""
        from stainmap.ui.stage_dialogs import DryingDialog, FurnaceDialog, OrderDialog  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        try:
            if stage is RunStage.MIX:
                self.open_mixing()
            elif stage is RunStage.COATS:
                ask(OrderDialog(case, self._window))
            elif stage is RunStage.DRY:
                ask(DryingDialog(case, self._window, degrees=self.settings.degrees))
            else:
                page = FurnaceDialog(case, self._window, degrees=self.settings.degrees)
                page.compare_asked.connect(self.compare_asked)
                ask(page)
        except StainmapError as error:
            self.said.emit(str(error))

    def open_mixing(self) -> None:
        """Show what is mixed, and take over what was changed."""
        from stainmap.ui.mixing_dialog import MixingDialog  # noqa: PLC0415

        prediction = self._session.prediction
        if prediction is None or not self._session.is_up_to_date:
            self.said.emit(translate("run desk", _NOT_READY))
            return
        case = prediction.case
        dialog = MixingDialog(
            case, prediction.coats, self._window, usual_drops_per_ml=self.settings.drops_per_ml
        )
        if not ask(dialog) or dialog.case is case:
            return
        changed = dialog.case
        if (changed.plan, changed.process) != (case.plan, case.process):
            self._session.edit(translate("run desk", "change what is mixed"), lambda _case: changed)

    def paint_connectors(self) -> None:
        """Put the usual dark accent over the connectors of a bridge."""
        from stainmap.planning.bridge_accents import has_connector_accent, with_connector_accent  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        if has_connector_accent(case):
            self.said.emit(
                translate("run desk", "The plan paints connectors and embrasures already.")
            )
            return
        try:
            self._session.edit(
                translate("run desk", "accent over the connectors"), with_connector_accent
            )
        except StainmapError as error:
            self.said.emit(str(error))

    def open_tray(self) -> None:
        """Show the tray, the open case on it if it has been saved."""
        self.tray.open()

    def _prepare(self, printing: PrintingFlow) -> PageSize:
        """Let the sheets of a tray go by the settings; return their size."""
        printing.settings = self.settings
        return self.settings.page

    def ask_for_state(self) -> None:
        """Ask what has been done of the open case at the bench."""
        from stainmap.app.tray_bench import with_stage  # noqa: PLC0415
        from stainmap.ui.bench_dialog import NOTHING, BenchDialog, stage_words  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        asked = BenchDialog((case.code,), case.bench, datetime.now().astimezone(), self._window)
        if not ask(asked):
            return
        try:
            changed = with_stage(case, asked.chosen, asked.at)
        except StainmapError as error:
            self.said.emit(str(error))
            return
        if changed is not case:
            self._session.edit(translate("run desk", "state on the bench"), lambda _case: changed)
            done = stage_words(asked.chosen or NOTHING)
            self.said.emit(translate("run desk", "State on the bench: {done}.").format(done=done))
