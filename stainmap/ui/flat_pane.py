"""The pane of flat views: which of them are shown, of which unit, and how they share the room."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QVBoxLayout, QWidget

from stainmap.app.job import JobRunner
from stainmap.paper.views import Side
from stainmap.surface.picking import Hit
from stainmap.ui.flat_view import FlatContent, FlatView
from stainmap.ui.marks import paint_text, text_width
from stainmap.ui.theme import SURROUND, tones
from stainmap.words import translate, value_word

HEADER_PX = 30
_GAP = 6
# Wider than so many times its height: all views stand in one row.
_ROW_FROM, _COLUMN_BELOW = 2.6, 0.75


class FlatChoice(StrEnum):
    """What the pane shows: one flat view, or all six."""

    ALL = "all"
    ROSETTE = "rosette"
    OCCLUSAL = "occlusal"
    BUCCAL = "buccal"
    LINGUAL = "lingual"
    MESIAL = "mesial"
    DISTAL = "distal"

    @property
    def side(self) -> Side | None:
        """The side of a view from a side."""
        return None if self in (FlatChoice.ALL, FlatChoice.ROSETTE) else Side(self.value)


ONE_BY_ONE: tuple[FlatChoice, ...] = tuple(
    choice for choice in FlatChoice if choice is not FlatChoice.ALL
)
_KEYS = {
    Qt.Key.Key_A: FlatChoice.ALL,
    Qt.Key.Key_W: FlatChoice.ROSETTE,
    Qt.Key.Key_O: FlatChoice.OCCLUSAL,
    Qt.Key.Key_B: FlatChoice.BUCCAL,
    Qt.Key.Key_L: FlatChoice.LINGUAL,
    Qt.Key.Key_M: FlatChoice.MESIAL,
    Qt.Key.Key_D: FlatChoice.DISTAL,
}
_LETTERS = {choice: key.name.removeprefix("Key_") for key, choice in _KEYS.items()}


class WordButton(QAbstractButton):
    """A word of the pane's bar, underlined while it is chosen."""

    def __init__(self, text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setText(text)
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def set_word(self, text: str) -> None:
        """Show another word."""
        self.setText(text)
        self.setAccessibleName(translate("flat pane", "Flat view {text}").format(text=text))
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        """Return room for the word."""
        return QSize(round(text_width(self.text(), 13, 600)) + 14, HEADER_PX)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the word, the line under it, and the focus."""
        painter = QPainter(self)
        t = tones(self)
        if self.underMouse() and not self.isChecked():
            painter.fillRect(self.rect().adjusted(1, 4, -1, -4), QColor(t.panel))
        ink = t.ink if self.isEnabled() else t.faint
        paint_text(painter, (7, 20), self.text(), ink, weight=600 if self.isChecked() else 400)
        if self.isChecked():
            painter.fillRect(5, HEADER_PX - 3, self.width() - 10, 3, QColor(t.accent))
        if self.hasFocus():
            painter.setPen(QColor(t.accent))
            painter.drawRect(self.rect().adjusted(1, 3, -2, -5))
        painter.end()


class _Bar(QWidget):
    """The bar over the flat views, with a remark at its right."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(HEADER_PX)
        self.remark = ""

    def set_remark(self, text: str) -> None:
        """Say something about what is shown."""
        self.remark = text
        self.setToolTip(text)
        self.setAccessibleDescription(text)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the bar; the remark stands in what room there is."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.raised))
        painter.fillRect(0, 0, self.width(), 1, QColor(t.line))
        taken = max(
            (child.geometry().right() for child in self.findChildren(WordButton)), default=0
        )
        room = self.width() - taken - 24.0
        if self.remark and room > 80.0:
            width = min(text_width(self.remark, 12), room)
            at = (self.width() - 10.0 - width, 20.0)
            paint_text(painter, at, self.remark, t.soft, px=12, width=room)
        painter.end()


class FlatPane(QWidget):
    """All flat views of one unit, or one of them.

    With the focus here W O B L M D choose a view, A all of them, Page up and Page down the unit.

    Signals
    -------
    chosen
        Another `FlatChoice`.
    unit_chosen
        Another unit, from 0.
    place_asked
        Stand below the crown instead of beside it, or the other way round.
    brush_resized
        +1 or -1: the ] or [ key.
    """

    chosen = Signal(object)
    unit_chosen = Signal(int)
    place_asked = Signal()
    brush_resized = Signal(int)

    def __init__(self, runner: JobRunner, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("flat pane", "Flat views"))
        self.setMinimumSize(180, 110)
        self._choice, self._unit = FlatChoice.ALL, 0
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self.bar = _Bar()
        self._row = QHBoxLayout(self.bar)
        self._row.setContentsMargins(4, 0, 8, 0)
        self._row.setSpacing(0)
        self._choices, self._units = QButtonGroup(self), QButtonGroup(self)
        self.buttons: dict[FlatChoice, WordButton] = {}
        self.unit_buttons: list[WordButton] = []
        for choice in FlatChoice:
            word = value_word(choice)
            button = WordButton(word)
            button.set_word(word)
            button.setToolTip(
                translate("flat pane", "{word} ({letter} on the flat views)").format(
                    word=word, letter=_LETTERS[choice]
                )
            )
            self._choices.addButton(button)
            self._row.addWidget(button)
            button.clicked.connect(lambda _on, choice=choice: self.choose(choice))
            self.buttons[choice] = button
        self._row.addStretch(1)
        self.place = WordButton("")
        self.place.setCheckable(False)
        self.place.clicked.connect(self.place_asked)
        self._row.addWidget(self.place)
        self.set_beside(False)
        column.addWidget(self.bar)
        self.field = QWidget()
        column.addWidget(self.field, 1)
        self.views = {
            choice: FlatView(value_word(choice), runner, self.field) for choice in ONE_BY_ONE
        }
        for choice, view in self.views.items():
            view.caption_clicked.connect(lambda choice=choice: self._caption_clicked(choice))
        self.buttons[FlatChoice.ALL].setChecked(True)

    # --- what is shown -------------------------------------------------------------------

    @property
    def choice(self) -> FlatChoice:
        """What is shown."""
        return self._choice

    @property
    def unit(self) -> int:
        """The unit that is shown, from 0."""
        return self._unit

    def choose(self, choice: FlatChoice) -> None:
        """Show one view, or all."""
        if choice is not self._choice:
            self._choice = choice
            self.buttons[choice].setChecked(True)
            self._share_room()
            self.chosen.emit(choice)

    def choose_unit(self, unit: int) -> None:
        """Show another unit."""
        if unit != self._unit and 0 <= unit < max(len(self.unit_buttons), 1):
            self._unit = unit
            if self.unit_buttons:
                self.unit_buttons[unit].setChecked(True)
            self.unit_chosen.emit(unit)

    def set_units(self, teeth: Sequence[int]) -> None:
        """Offer units by the numbers of their teeth; a single one needs no choice."""
        for button in self.unit_buttons:
            self._units.removeButton(button)
            self._row.removeWidget(button)
            button.deleteLater()
        self.unit_buttons = []
        if self._unit >= len(teeth):
            self._unit = 0
        if len(teeth) < 2:
            return
        for unit, number in enumerate(teeth):
            button = WordButton(str(number))
            button.setAccessibleName(translate("flat pane", "Unit {number}").format(number=number))
            button.setToolTip(
                translate(
                    "flat pane", "Unit {number} (Page up, Page down on the flat views)"
                ).format(number=number)
            )
            button.setChecked(unit == self._unit)
            self._units.addButton(button)
            self._row.insertWidget(unit, button)
            button.clicked.connect(lambda _on, unit=unit: self.choose_unit(unit))
            self.unit_buttons.append(button)

    def set_beside(self, beside: bool) -> None:
        """Say where the pane stands, so that the button offers the other place."""
        self.place.setText(
            translate("flat pane", "below") if beside else translate("flat pane", "beside")
        )
        words = (
            translate("flat pane", "Flat views below the crown")
            if beside
            else translate("flat pane", "Flat views beside the crown")
        )
        self.place.setAccessibleName(words)
        self.place.setToolTip(words)
        self.place.updateGeometry()

    def set_words(self, words: dict[FlatChoice, str]) -> None:
        """Name the views as on this tooth."""
        for choice, word in words.items():
            self.buttons[choice].set_word(word)
            self.buttons[choice].setToolTip(
                translate("flat pane", "{word} ({letter} on the flat views)").format(
                    word=word, letter=_LETTERS[choice]
                )
            )
            if choice in self.views:
                self.views[choice].set_caption(word)

    def set_content(
        self, choice: FlatChoice, content: FlatContent | None, message: str = ""
    ) -> None:
        """Give a view what it shows, or a sentence."""
        self.views[choice].set_content(content, message)

    def share_scale(self) -> None:
        """Give the views from the sides one scale, if all are shown."""
        sides = [view for choice, view in self.views.items() if choice.side is not None]
        together = self._choice is FlatChoice.ALL
        limit = min((view.fitted_scale() for view in sides), default=float("inf"))
        for view in sides:
            view.scale_limit = limit if together else float("inf")

    def show_pointer(self, hit: Hit | None) -> None:
        """Draw the brush's outline in all views in which a place of the crown is seen."""
        for view in self.shown_views:
            view.show_pointer(hit)

    @property
    def shown_views(self) -> tuple[FlatView, ...]:
        """The views that are shown."""
        return tuple(view for view in self.views.values() if not view.isHidden())

    # --- room ----------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the room anew."""
        super().resizeEvent(event)
        self._share_room()

    def _share_room(self) -> None:
        width, height = self.width(), max(self.height() - HEADER_PX, 1)
        places = _places(self._choice, width, height)
        for choice, view in self.views.items():
            view.setVisible(choice in places)
            if choice in places:
                view.setGeometry(places[choice])
        self.share_scale()
        for choice in places:
            self.views[choice].build_soon()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the surround."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(SURROUND))
        painter.end()

    # --- keys ----------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Choose a view or a unit, size the brush."""
        key = Qt.Key(event.key())
        plain = event.modifiers() in (
            Qt.KeyboardModifier.NoModifier,
            Qt.KeyboardModifier.KeypadModifier,
        )
        if plain and key in _KEYS:
            self.choose(_KEYS[key])
        elif plain and key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self.choose_unit(self._unit + (1 if key == Qt.Key.Key_PageDown else -1))
        elif key in (Qt.Key.Key_BracketLeft, Qt.Key.Key_BracketRight):
            self.brush_resized.emit(1 if key == Qt.Key.Key_BracketRight else -1)
        else:
            super().keyPressEvent(event)

    def _caption_clicked(self, choice: FlatChoice) -> None:
        self.choose(choice if self._choice is FlatChoice.ALL else FlatChoice.ALL)


def _places(choice: FlatChoice, width: int, height: int) -> dict[FlatChoice, QRect]:
    """Return where each view that is shown stands."""
    if choice is not FlatChoice.ALL:
        return {choice: QRect(0, 0, width, height)}
    shape = width / height
    if shape >= _ROW_FROM:
        # The rosette holds everything, so it gets more room than a side.
        first = min(round(width * 0.24), height)
        rest = (width - first - _GAP) // 5
        places = {FlatChoice.ROSETTE: QRect(0, 0, first, height)}
        for k, one in enumerate(ONE_BY_ONE[1:]):
            places[one] = QRect(first + _GAP + k * rest, 0, rest, height)
        return places
    columns = 2 if shape < _COLUMN_BELOW else 3
    rows = 6 // columns
    wide, high = width // columns, height // rows
    return {
        one: QRect(k % columns * wide, k // columns * high, wide, high)
        for k, one in enumerate(ONE_BY_ONE)
    }
