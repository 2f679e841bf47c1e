"""Printing: the sheets of the open case looked at, printed and saved, made in the background."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QEvent, QObject, QUrl, Signal
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog, QWidget

from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.app.settings import Settings
from stainmap.errors import CancelledError, StainmapError
from stainmap.model.case import Case
from stainmap.paper.page_size import PageSize
from stainmap.ui.plate import ProgressCard
from stainmap.units import TemperatureUnit
from stainmap.words import listed, translate

if TYPE_CHECKING:
    from PIL import Image

    from stainmap.app.prediction import Prediction
    from stainmap.app.sheets import Sheet
    from stainmap.app.tray import LaidCase, LaidTray
    from stainmap.paper.shading import ShadingFields
    from stainmap.ui.sheet_preview import SheetPreview

_MOST_NAMED = 6  # files that are named one by one
_MAP_SHARE = 0.9  # of the whole time, the coat map with its pictures

Page = tuple[str, "Image.Image"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Bundle:
    """Sheets that are shown together, and whose they are.

    Parameters
    ----------
    open_case
        The open case, if it is among them.
    others
        Cases that are not open; what was printed of them is noted in their files.
    left_out
        A sentence for every case that there are no sheets of.
    """

    sheets: tuple[Sheet, ...]
    open_case: Case | None
    others: tuple[LaidCase, ...] = ()
    left_out: tuple[str, ...] = ()


_Make = Callable[[PageSize, Progress], _Bundle]


class PrintingFlow(QObject):
    """Makes the sheets of the open case, or of a tray, and shows on `view` how far it is.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(self, session: Session, runner: JobRunner, view: QWidget, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._runner, self._view, self._window = session, runner, view, window
        self._job: Job[Any] | None = None
        self._folder = ""
        # What is set for this computer; whoever made this tells when it changes.
        self.settings = Settings()
        self.preview: SheetPreview | None = None
        self.progress = ProgressCard(view)
        self.progress.hide()
        self.progress.cancelled.connect(self._cancel)
        view.installEventFilter(self)

    def ask_and_write(self, page: PageSize, folder: str) -> None:
        """Ask for a folder and write the sheets into it."""
        if not self._is_ready():
            return
        chosen = QFileDialog.getExistingDirectory(
            self._window, translate("printing flow", "Folder for the sheets"), folder
        )
        if chosen:
            self.write(page, Path(chosen))

    def show_preview(self, page: PageSize, folder: str) -> None:
        """Make the sheets of the newest prediction and show them; they are saved into `folder`."""
        prediction = self._session.prediction
        if not self._is_ready() or prediction is None:
            return
        shading, degrees = self._session.shading, self.settings.degrees

        def make(page: PageSize, progress: Progress) -> _Bundle:
            sheets = _made(prediction, page, shading, degrees, progress)
            return _Bundle(sheets=sheets, open_case=prediction.case)

        self._folder = folder
        self._preview_of(make, page)

    def show_tray(self, laid: LaidTray, page: PageSize, folder: str) -> None:
        """Make the sheets of a tray and show them, with a sentence for what was left out."""
        if not self._is_free():
            return
        session = self._session
        known = session.prediction if session.is_up_to_date else None
        shading, degrees = session.shading, self.settings.degrees

        def make(page: PageSize, progress: Progress) -> _Bundle:
            from stainmap.app.tray_sheets import tray_sheets  # noqa: PLC0415

            made = tray_sheets(
                laid,
                page=page,
                degrees=degrees,
                open_prediction=known,
                shading=shading,
                progress=lambda share, what: progress(_MAP_SHARE * share, what),
            )
            own = None if known is None else known.case
            return _Bundle(
                sheets=made.sheets,
                open_case=own if any(one is own for one in made.cases) else None,
                others=tuple(one for one in made.printed if one.case is not own),
                left_out=made.left_out,
            )

        self._folder = folder
        self._preview_of(make, page)

    def _preview_of(self, make: _Make, page: PageSize) -> None:
        from stainmap.ui.sheet_preview import PREVIEW_DPI  # noqa: PLC0415 - slow to import

        def work(progress: Progress) -> tuple[_Bundle, list[Page]]:
            from stainmap.paper.page_pictures import page_pictures  # noqa: PLC0415

            bundle = make(page, progress)
            pages: list[Page] = []
            for index, one in enumerate(bundle.sheets):
                done = index / len(bundle.sheets)
                progress(
                    _MAP_SHARE + (1.0 - _MAP_SHARE) * done,
                    translate("printing flow", "pictures of {name}").format(name=one.name),
                )
                pages += [
                    (
                        translate("printing flow", "{name}, page {number}").format(
                            name=one.name, number=number
                        ),
                        picture,
                    )
                    for number, picture in enumerate(page_pictures(one.pdf, PREVIEW_DPI), start=1)
                ]
            return bundle, pages

        self._start(
            translate("printing flow", "Making the sheets"),
            work,
            lambda made: self._shown(made[0], made[1], page, make),
        )

    def write(self, page: PageSize, folder: Path) -> None:
        """Write the sheets of the newest prediction into a folder."""
        prediction = self._session.prediction
        if prediction is None:
            return
        shading, degrees = self._session.shading, self.settings.degrees

        def work(progress: Progress) -> list[Path]:
            from stainmap.app.sheets import write_sheet  # noqa: PLC0415

            sheets = _made(prediction, page, shading, degrees, progress)
            return [path for one in sheets for path in write_sheet(one, folder)]

        made = _Bundle(sheets=(), open_case=prediction.case)
        self._start(
            translate("printing flow", "Writing the sheets"),
            work,
            lambda paths: self._written(paths, made),
        )

    def close(self) -> None:
        """Stop what is being made, and close what is shown."""
        self._cancel()
        if self.preview is not None:
            self.preview.close()

    def _is_free(self) -> bool:
        if self._job is not None:
            self.said.emit(translate("printing flow", "The sheets are being made already."))
            return False
        return True

    def _is_ready(self) -> bool:
        if not self._is_free():
            return False
        if self._session.prediction is None or not self._session.is_up_to_date:
            self.said.emit(translate("printing flow", "The prediction is not ready yet."))
            return False
        return True

    def _start(
        self, title: str, work: Callable[[Progress], Any], on_done: Callable[[Any], None]
    ) -> None:
        def done(result: Any) -> None:
            stopped = self._job is not None and self._job.is_cancelled
            self._job = None
            self.progress.hide()
            if not stopped:  # too late for the work, but not for what would be shown
                on_done(result)

        self.progress.set_progress(title, 0.0, "")
        self.progress.show()
        self._place()
        job = self._runner.start(
            title, work, on_done=done, on_failed=self._failed, on_progress=self._show
        )
        self._job = None if job.is_finished else job

    def _show(self, job: Job[Any]) -> None:
        self.progress.set_progress(job.title, job.share, job.phrase)

    def _written(self, paths: list[Path], bundle: _Bundle) -> None:
        names = [path.name for path in paths]
        said = listed(names)
        if len(names) > _MOST_NAMED:
            said = translate("printing flow", "{count} files").format(count=len(names))
        self._note(
            bundle,
            translate("printing flow", "Wrote {files} into {folder}.").format(
                files=said, folder=paths[0].parent
            ),
        )
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(paths[0])))

    def _note(self, bundle: _Bundle, said: str) -> None:
        """Keep in all cases which plan went to the bench, and say what became of the sheets."""
        self._note_printed(bundle.open_case)
        if not bundle.others:
            self.said.emit(said)
            return

        def work(progress: Progress) -> tuple[str, ...]:
            from stainmap.app.printed_note import note_printed  # noqa: PLC0415

            return note_printed(bundle.others, progress)

        self._start(
            translate("printing flow", "Noting what was printed"),
            work,
            lambda missed: self.said.emit("\n".join((said, *missed))),
        )

    def _note_printed(self, case: Case | None) -> None:
        """Keep in the open case which plan went to the bench, for what replaces it."""
        from stainmap.app.sheets import revised  # noqa: PLC0415

        now_open = self._session.case
        if case is None or now_open is None or now_open.code != case.code:
            return
        noted = revised(case)
        self._session.edit(
            translate("printing flow", "sheets printed"),
            lambda now: (
                now
                if now.printed == noted.printed
                else replace(
                    now, revision=noted.revision, replaces=noted.replaces, printed=noted.printed
                )
            ),
        )

    def _shown(self, bundle: _Bundle, pages: Sequence[Page], page: PageSize, make: _Make) -> None:
        from stainmap.ui.sheet_preview import SheetPreview  # noqa: PLC0415 - slow to import

        if self.preview is not None:
            self.preview.close()
        preview = SheetPreview(pages, page, self._window, left_out=bundle.left_out)
        preview.print_wanted.connect(lambda: self._print(bundle, page))
        preview.pdf_wanted.connect(lambda: self._save(bundle, "pdf"))
        preview.pictures_wanted.connect(lambda: self._save(bundle, "png"))
        preview.page_wanted.connect(lambda other: self._other_page(make, other))
        preview.destroyed.connect(lambda: self._preview_closed(preview))
        self.preview = preview
        preview.show()

    def _other_page(self, make: _Make, page: PageSize) -> None:
        if self._is_free():
            self._preview_of(make, page)

    def _preview_closed(self, closed: SheetPreview) -> None:
        if self.preview is closed:
            self.preview = None

    def _print(self, bundle: _Bundle, page: PageSize) -> None:
        """Ask for a printer, draw the pages finely, and print them."""
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter  # noqa: PLC0415 - slow to import

        from stainmap.ui.sheet_preview import PRINT_DPI, print_pages, set_up_printer  # noqa: PLC0415 - slow to import

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        set_up_printer(printer, page)
        if QPrintDialog(printer, self.preview).exec() != QPrintDialog.DialogCode.Accepted:
            return
        first, last = printer.fromPage(), printer.toPage()

        def work(progress: Progress) -> list[Image.Image]:
            from stainmap.paper.page_pictures import page_pictures  # noqa: PLC0415

            pictures = []
            for index, one in enumerate(bundle.sheets):
                progress(index / len(bundle.sheets), one.name)
                pictures += list(page_pictures(one.pdf, PRINT_DPI))
            return pictures[max(first - 1, 0) : last or None]

        def done(pictures: list[Image.Image]) -> None:
            if print_pages(printer, pictures, page):
                text = (
                    translate("printing flow", "Sent 1 page to the printer.")
                    if len(pictures) == 1
                    else translate("printing flow", "Sent {count} pages to the printer.")
                )
                self._note(
                    bundle,
                    text.format(count=len(pictures)),
                )
            else:
                self.said.emit(
                    translate(
                        "printing flow",
                        "The printer cannot be reached. Choose another, or save as PDF.",
                    )
                )

        self._start(translate("printing flow", "Printing the sheets"), work, done)

    def _save(self, bundle: _Bundle, kind: str) -> None:
        chosen = QFileDialog.getExistingDirectory(
            self.preview, translate("printing flow", "Folder for the sheets"), self._folder
        )
        if not chosen:
            return

        def work(progress: Progress) -> list[Path]:
            from stainmap.app.sheets import write_sheet  # noqa: PLC0415

            written: list[Path] = []
            for index, one in enumerate(bundle.sheets):
                progress(index / len(bundle.sheets), one.name)
                written += write_sheet(one, Path(chosen), kind)
            return written

        self._start(
            translate("printing flow", "Writing the sheets"),
            work,
            lambda paths: self._written(paths, bundle),
        )

    def _failed(self, error: StainmapError) -> None:
        self._job = None
        self.progress.hide()
        stopped = isinstance(error, CancelledError)
        self.said.emit(
            translate("printing flow", "No sheets were made.") if stopped else str(error)
        )

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


def _made(
    prediction: Prediction,
    page: PageSize,
    shading: ShadingFields | None,
    degrees: TemperatureUnit,
    progress: Progress,
) -> tuple[Sheet, ...]:
    """Return the sheets of a prediction, as it is recorded: on all bands, in daylight."""
    from stainmap.app.prediction import for_sheets  # noqa: PLC0415

    # What draws PDF is slow to import; the window must not wait for it.
    from stainmap.app.sheets import sheet_data, sheets_of  # noqa: PLC0415

    recorded = for_sheets(prediction, progress)
    data = sheet_data(recorded, page=page, shading=shading, degrees=degrees)
    return sheets_of(data, progress=lambda share, what: progress(_MAP_SHARE * share, what))
