"""Printing: the sheets of the open case as PDF, made in the background."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QUrl, Signal
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog, QWidget

from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.prediction import for_record
from stainmap.app.session import Session
from stainmap.errors import CancelledError, StainmapError
from stainmap.paper.page_size import PageSize
from stainmap.ui.plate import ProgressCard

_MAP_SHARE = 0.9  # of the whole time, the coat map with its pictures


class PrintingFlow(QObject):
    """Writes coat map and mixing list, and shows how far it is.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(self, session: Session, runner: JobRunner, view: QWidget, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._runner, self._view, self._window = session, runner, view, window
        self._job: Job[tuple[Path, Path]] | None = None
        self.progress = ProgressCard(view)
        self.progress.hide()
        self.progress.cancelled.connect(self._cancel)
        view.installEventFilter(self)

    def ask_and_write(self, page: PageSize, folder: str) -> None:
        """Ask for a folder and write the sheets into it."""
        if self._job is not None:
            self.said.emit("The sheets are being written already.")
            return
        if self._session.prediction is None or not self._session.is_up_to_date:
            self.said.emit("The prediction is not ready yet.")
            return
        chosen = QFileDialog.getExistingDirectory(self._window, "Folder for the sheets", folder)
        if chosen:
            self.write(page, Path(chosen))

    def write(self, page: PageSize, folder: Path) -> None:
        """Write the sheets of the newest prediction into a folder."""
        prediction = self._session.prediction
        if prediction is None:
            return
        shading = self._session.shading

        def work(progress: Progress) -> tuple[Path, Path]:
            # What draws PDF is slow to import; the window must not wait for it.
            from stainmap.app.sheets import sheet_data, sheet_names  # noqa: PLC0415
            from stainmap.paper.coat_map import write_coat_map  # noqa: PLC0415
            from stainmap.paper.mixing_sheet import write_mixing_list  # noqa: PLC0415

            sheet = sheet_data(for_record(prediction, progress), page=page, shading=shading)
            names = sheet_names(prediction.case.code)
            coat_map, mixing = folder / names[0], folder / names[1]
            write_coat_map(
                coat_map, sheet, progress=lambda share, what: progress(_MAP_SHARE * share, what)
            )
            progress(_MAP_SHARE, "mixing list")
            write_mixing_list(mixing, sheet)
            return coat_map, mixing

        self.progress.set_progress("Writing the sheets", 0.0, "coat map")
        self.progress.show()
        self._place()
        job = self._runner.start(
            "Writing the sheets",
            work,
            on_done=self._done,
            on_failed=self._failed,
            on_progress=self._show,
        )
        self._job = None if job.is_finished else job

    def _show(self, job: Job[tuple[Path, Path]]) -> None:
        self.progress.set_progress(job.title, job.share, job.phrase)

    def _done(self, paths: tuple[Path, Path]) -> None:
        self._job = None
        self.progress.hide()
        coat_map, mixing = paths
        self.said.emit(f"Wrote {coat_map.name} and {mixing.name} into {coat_map.parent}.")
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(coat_map)))

    def _failed(self, error: StainmapError) -> None:
        self._job = None
        self.progress.hide()
        stopped = isinstance(error, CancelledError)
        self.said.emit("No sheets were written." if stopped else str(error))

    def _cancel(self) -> None:
        if self._job is not None:
            self._job.cancel()

    def _place(self) -> None:
        self.progress.adjustSize()
        x = (self._view.width() - self.progress.width()) // 2
        self.progress.move(max(x, 8), max(self._view.height() - self.progress.height() - 20, 8))
        self.progress.raise_()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the card in its place when the view changes its size."""
        if watched is self._view and event.type() == QEvent.Type.Resize:
            self._place()
        return super().eventFilter(watched, event)
