"""Saving and exporting, and the question before unsaved work is lost."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QEventLoop, QObject, Qt, Signal
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox, QWidget

from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.files.case_file import SUFFIX
from stainmap.words import translate


class SavingFlow(QObject):
    """Writes the open case and its prediction where the user says.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)
    _at_rest = Signal()

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._window = session, window
        self.folder = ""
        self._exporting: Path | None = None
        self._failed = False
        # What was asked for while the file was still being written.
        self._next: list[Path | None] = []

    def save(self) -> bool:
        """Save where the case came from, or ask; return False if that has failed already."""
        if self._session.path is None:
            return self.save_as()
        return self.save_to(None)

    def save_as(self) -> bool:
        """Ask for a name and save."""
        case = self._session.case
        if case is None:
            return False
        start = self._session.path or Path(self.folder) / f"{case.code}{SUFFIX}"
        name, _ = QFileDialog.getSaveFileName(
            self._window,
            translate("saving flow", "Save the case"),
            str(start),
            translate("saving flow", "Cases (*{suffix})").format(suffix=SUFFIX),
        )
        if not name:
            return False
        path = Path(name)
        return self.save_to(path if path.suffix else path.with_suffix(SUFFIX))

    def save_to(self, path: Path | None) -> bool:
        """Save under a name, or where the case came from, while work goes on.

        Returns False if that has failed already. What goes wrong is said, and another place
        offered.
        """
        if self._session.saving is not None:
            self._next = [path]
            return True
        self._failed = False
        self._session.save_in_background(path, on_ended=self._ended)
        return not self._failed

    def _ended(self, error: StainmapError | None) -> None:
        self._failed = error is not None
        if error is None:
            self.said.emit(
                translate("saving flow", "Saved as {path}.").format(path=self._session.path)
            )
        else:
            self._offer_elsewhere(error)
        waiting, self._next = self._next, []
        if waiting and self._session.is_modified and not self._failed:
            self.save_to(waiting[0])
        if self._session.saving is None:
            self._at_rest.emit()

    def _offer_elsewhere(self, error: StainmapError) -> None:
        button = QMessageBox.StandardButton
        said = [translate("saving flow", "Save it under another name now?")]
        if self._session.keeps_unsaved:
            said.insert(
                0,
                translate(
                    "saving flow",
                    "What you have made is kept meanwhile, and is there again after the next"
                    " start.",
                ),
            )
        answer = QMessageBox.warning(
            self._window,
            translate("saving flow", "Not saved"),
            f"{error}\n\n{' '.join(said)}",
            button.Save | button.Cancel,
            button.Save,
        )
        if answer == button.Save:
            self.save_as()

    def wait(self) -> None:
        """Go on when nothing is being written any more; the window takes no input till then."""
        if self._session.saving is None:
            return
        QApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
        try:
            loop = QEventLoop()
            self._at_rest.connect(loop.quit)
            loop.exec(QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents)
        finally:
            QApplication.restoreOverrideCursor()

    def export(self) -> None:
        """Ask for a name and write the predicted crown; the ending chooses the kind."""
        from stainmap.app.exporting import KINDS, check_ending  # noqa: PLC0415

        prediction = self._session.prediction
        if prediction is None or not self._session.is_up_to_date:
            self.said.emit(translate("saving flow", "The prediction is not ready yet."))
            return
        filters = ";;".join(
            f"{translate('exporting', kind)} (*{ending})" for ending, kind in KINDS.items()
        )
        start = Path(self.folder) / f"{prediction.case.code}.ply"
        name, chosen = QFileDialog.getSaveFileName(
            self._window, translate("saving flow", "Export"), str(start), filters
        )
        if not name:
            return
        path = Path(name)
        if not path.suffix:
            path = path.with_suffix(chosen.rpartition("*")[2].rstrip(")"))
        try:
            check_ending(path)
        except StainmapError as error:
            QMessageBox.warning(self._window, translate("saving flow", "Not exported"), str(error))
            return
        self._exporting = path
        self._session.export(path)

    def refresh(self, change: Change) -> None:
        """Say when something has been exported."""
        if change.touches("exported") and self._exporting is not None:
            self.said.emit(
                translate("saving flow", "Exported {exporting}.").format(exporting=self._exporting)
            )
            self._exporting = None

    def may_leave(self) -> bool:
        """Ask what to do with unsaved work; return False if the user wants to stay."""
        self.wait()
        if not self._session.is_modified:
            return True
        button = QMessageBox.StandardButton
        answer = QMessageBox.question(
            self._window,
            translate("saving flow", "Not saved"),
            translate("saving flow", "The case has changes that are not saved."),
            button.Save | button.Discard | button.Cancel,
            button.Save,
        )
        if answer == button.Save:
            if not self.save():
                return False
            self.wait()
            return not self._session.is_modified
        return answer == button.Discard
