"""The card of the look "In the row": steps to the neighbours, value alone, other neighbours."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QHBoxLayout, QToolButton, QVBoxLayout, QWidget

from stainmap.model.tooth import Unit
from stainmap.model.zone import Zone, area_label
from stainmap.ui.crown_cards import Card
from stainmap.ui.marks import Align, paint_text, signed, wrapped
from stainmap.ui.theme import font, tones
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.row import RowStep

_WIDTH_PX, _LINE_PX, _TOP_PX, _BUTTONS_PX = 268, 18, 20, 44
_COLUMN_PX, _HALF_PX, _FIGURE_PX = 80, 38, 34


class RowCard(Card):
    """How far the crown is off its neighbours, as figures.

    Signals
    -------
    grey_switched
        True to take the colour out.
    neighbours_asked
        Other neighbours are to be chosen.
    stop_asked
        What is being made is no longer wanted.
    resized
        The card is larger or smaller than it was.
    """

    grey_switched = Signal(bool)
    neighbours_asked = Signal()
    stop_asked = Signal()
    resized = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents, False)
        self.setAccessibleName(translate("row card", "Steps to the neighbours"))
        self._steps: tuple[RowStep, ...] = ()
        self._units: tuple[Unit, ...] = ()
        self._notes: tuple[str, ...] = ()
        self._lines: list[str] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 0, 12, 10)
        column.addStretch(1)
        row = QHBoxLayout()
        row.setSpacing(4)
        column.addLayout(row)
        self.grey = self._button(
            translate("row card", "Value alone"), translate("row card", "Without colour (V)")
        )
        self.grey.setCheckable(True)
        self.grey.toggled.connect(self.grey_switched)
        self.choose = self._button(
            translate("row card", "Neighbours..."),
            translate("row card", "Meshes of the neighbours"),
        )
        self.choose.clicked.connect(self.neighbours_asked)
        self.stop = self._button(
            translate("row card", "Stop"), translate("row card", "Stop making the neighbours")
        )
        self.stop.clicked.connect(self.stop_asked)
        for button in (self.grey, self.choose, self.stop):
            row.addWidget(button)
        row.addStretch(1)
        self.say_working("", None)
        self.hide()

    @staticmethod
    def _button(text: str, hint: str) -> QToolButton:
        button = QToolButton()
        button.setText(text)
        button.setFont(font(13, 500))
        button.setMinimumHeight(28)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.setAccessibleName(text.rstrip("."))
        button.setToolTip(hint)
        return button

    @property
    def note(self) -> str:
        """What stands below the figures."""
        return " ".join(self._notes)

    def show_steps(
        self, steps: Sequence[RowStep], units: tuple[Unit, ...], notes: Sequence[str]
    ) -> None:
        """Show the steps to the neighbours, and what has to be said of them."""
        self._steps, self._units, self._notes = tuple(steps), units, tuple(notes)
        self.stop.hide()
        self.choose.show()
        self._resize()

    def say_working(self, words: str, share: float | None, phrase: str = "") -> None:
        """Say how far what is being made has come; None where nothing can be stopped."""
        self._steps = ()
        self._notes = (words,) if share is None else (f"{words}: {100.0 * share:.0f} %", phrase)
        self.stop.setVisible(share is not None)
        self.choose.setVisible(share is None)
        self._resize()

    def _zones(self) -> tuple[Zone, ...]:
        found = {one.zone: None for step in self._steps for one in step.steps}
        return tuple(found)

    def _resize(self) -> None:
        zones = self._zones()
        lines = (2 + len(zones)) if zones else 0
        self._lines = [line for note in self._notes for line in wrapped(note, _WIDTH_PX - 24.0, 11)]
        height = _TOP_PX + _LINE_PX * (lines + len(self._lines)) + _BUTTONS_PX
        if height != self.height():
            self.setFixedSize(_WIDTH_PX, height)
            self.resized.emit()
        self.setAccessibleDescription(self._spoken())
        self.update()

    def _spoken(self) -> str:
        said = []
        front = self._front
        for step in self._steps:
            for one in step.steps:
                area = area_label(one.zone, front=front)
                said.append(
                    translate(
                        "row card", "{area} less that of {number}: L* {lightness}, C* {chroma}"
                    ).format(
                        area=area,
                        number=step.tooth.number,
                        lightness=signed(one.lightness),
                        chroma=signed(one.chroma),
                    )
                )
        return "; ".join([*said, *self._notes])

    @property
    def _front(self) -> bool:
        return bool(self._units) and self._units[0].tooth.is_front

    def paint_contents(self, painter: QPainter) -> None:
        """Draw title, table and notes."""
        t = tones(self)
        wide = self.width() - 24.0
        zones = self._zones()
        y = 21.0
        if zones:
            title = translate("row card", "crown less neighbour")
            paint_text(painter, (12, y), title, t.ink, px=12, weight=550, width=wide)
            right = self.width() - 12.0
            shown = self._steps[:2]
            heads = [right - _COLUMN_PX * (len(shown) - 1 - k) for k in range(len(shown))]
            for step, x in zip(shown, heads, strict=True):
                number = f"{step.tooth.number}"
                paint_text(
                    painter, (x, y), number, t.ink, px=12, weight=600, align=Align.AlignRight
                )
            y += _LINE_PX
            for x in heads:
                for name, at in (("dL*", x - _HALF_PX), ("dC*", x)):
                    paint_text(painter, (at, y), name, t.soft, px=11, align=Align.AlignRight)
            for zone in zones:
                y += _LINE_PX
                name = area_label(zone, front=self._front)
                strong = zone is Zone.BODY
                room = heads[0] - _HALF_PX - _FIGURE_PX - 14.0
                paint_text(
                    painter, (12, y), name, t.ink, px=12, weight=600 if strong else 400, width=room
                )
                self._paint_figures(painter, zone, heads, y, strong=strong)
            y += _LINE_PX
        for line in self._lines:
            paint_text(painter, (12, y), line, t.soft, px=11, width=wide)
            y += _LINE_PX

    def _paint_figures(
        self, painter: QPainter, zone: Zone, heads: Sequence[float], y: float, *, strong: bool
    ) -> None:
        t = tones(self)
        for step, x in zip(self._steps, heads, strict=False):
            one = next((found for found in step.steps if found.zone is zone), None)
            if one is None:
                continue
            for value, at in ((one.lightness, x - _HALF_PX), (one.chroma, x)):
                paint_text(
                    painter,
                    (at, y),
                    signed(value),
                    t.ink,
                    px=12,
                    weight=600 if strong else 450,
                    align=Align.AlignRight,
                )
