"""The coat map of an exercise, to lie beside the window while it is entered."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QDialog, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from stainmap.app.job import Progress
from stainmap.app.prediction import predict_case
from stainmap.app.sheets import sheet_data
from stainmap.model.case import Case
from stainmap.ui.screen_room import resize_within_screen
from stainmap.ui.sheet_preview import qt_image
from stainmap.words import translate

MAP_DPI = 110.0
_PLAN_PX, _LEAST_PX = 450, 520


def map_pages(case: Case, progress: Progress) -> list[Image.Image]:
    """Return the pages of the coat map of a case as pictures.

    Raises
    ------
    StainmapError
        If there is nothing to print.
    """
    # What draws sheets is slow to import, and not every sitting needs it.
    from stainmap.paper.coat_map import coat_map_bytes  # noqa: PLC0415
    from stainmap.paper.page_pictures import page_pictures  # noqa: PLC0415

    progress(0.0, translate("practice map", "predicting the plan"))
    data = sheet_data(predict_case(case))
    pdf = coat_map_bytes(data, progress=lambda share, phrase: progress(0.2 + 0.7 * share, phrase))
    return list(page_pictures(pdf, MAP_DPI))


class MapDialog(QDialog):
    """Shows the pages; the window can be worked on meanwhile."""

    def __init__(self, pages: Sequence[Image.Image], parent: QWidget | None) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("practice map", "Coat map of the exercise"))
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        paper = QWidget()
        lines = QVBoxLayout(paper)
        for number, page in enumerate(pages, start=1):
            sheet = QLabel()
            sheet.setPixmap(QPixmap.fromImage(qt_image(page)))
            sheet.setAccessibleName(
                translate("practice map", "Page {number} of the coat map").format(number=number)
            )
            lines.addWidget(sheet)
        self.paper = QScrollArea()
        self.paper.setWidget(paper)
        self.paper.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 12, 12, 12)
        column.addWidget(self.paper)
        resize_within_screen(self, 980, 860)
        if parent is not None:
            self._stand_beside_the_plan(parent.window())

    def _stand_beside_the_plan(self, window: QWidget) -> None:
        """Leave the left of the window free: that is where the map is entered."""
        room = window.frameGeometry()
        self.resize(max(min(self.width(), room.width() - _PLAN_PX), _LEAST_PX), self.height())
        self.move(room.right() - self.width(), max(room.top(), room.bottom() - self.height()))


class MapDesk:
    """The coat map of the exercise that is open: shown beside the plan, put away in time.

    Parameters
    ----------
    window
        The window of practice.
    button
        Asks for the map.
    say
        Says something on the status line.
    """

    def __init__(self, window: QWidget, button: QPushButton, say: Callable[[str], None]) -> None:
        self._window, self._button, self._say = window, button, say

    def begin(self) -> None:
        """Say that it is being drawn."""
        self._button.setEnabled(False)
        self._say(translate("practice window", "The coat map is being drawn."))

    def end(self, pages: Sequence[Image.Image], trouble: str = "") -> None:
        """Show the pages, if there are any, or say what went wrong."""
        self._button.setEnabled(True)
        self._say(trouble)
        if pages:
            MapDialog(pages, self._window).show()

    def put_away(self) -> None:
        """Close it: it would lie over the score, or beside another crown."""
        for sheet in self._window.findChildren(MapDialog):
            sheet.close()
