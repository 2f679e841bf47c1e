"""The bar of looks over the crown: what it is coloured by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QActionGroup, QColor, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QHBoxLayout,
    QMenu,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from stainmap.predict.lights import OBSERVERS, SHOWN_LIGHTS, light_name
from stainmap.ui.crown_picture import Look
from stainmap.ui.icons import icon
from stainmap.ui.marks import Align, paint_text, text_width
from stainmap.ui.theme import font, tones
from stainmap.words import marked, translate

HEIGHT_PX = 39
# A tool without its word, margins and gaps of the bar, what stands beside the name of a light.
_ICON_PX, _SPARE_PX, _ARROW_PX = 34, 34, 28


@dataclass(frozen=True, slots=True, kw_only=True)
class LookEntry:
    """A look with the number of its key and its name on the bar."""

    look: Look
    number: int
    name: str
    hint: str


LOOKS = (
    LookEntry(
        look=Look.SINTERED,
        number=1,
        name=marked("look bar", "Sintered"),
        hint=marked("look bar", "Predicted colour after sintering"),
    ),
    LookEntry(
        look=Look.BENCH,
        number=2,
        name=marked("look bar", "Bench"),
        hint=marked("look bar", "Chalky ceramic with the dyes of the jars"),
    ),
    LookEntry(
        look=Look.ZONES,
        number=3,
        name=marked("look bar", "Zones"),
        hint=marked("look bar", "Zones and accents, colour and hatch"),
    ),
    LookEntry(
        look=Look.COATS,
        number=4,
        name=marked("look bar", "Coats"),
        hint=marked("look bar", "Number of coats of the chosen step"),
    ),
    LookEntry(
        look=Look.VALUE,
        number=5,
        name=marked("look bar", "Value"),
        hint=marked("look bar", "L* only, in greys"),
    ),
    LookEntry(
        look=Look.OFFSET,
        number=6,
        name=marked("look bar", "Offset"),
        hint=marked("look bar", "Difference to what is wanted"),
    ),
    LookEntry(
        look=Look.THICKNESS,
        number=7,
        name=marked("look bar", "Thickness"),
        hint=marked("look bar", "Wall, about the block's minimum"),
    ),
    LookEntry(
        look=Look.ROW,
        number=8,
        name=marked("look bar", "In the row"),
        hint=marked("look bar", "Between its neighbours in the arch"),
    ),
    LookEntry(
        look=Look.GROUND,
        number=9,
        name=marked("look bar", "Ground"),
        hint=marked("look bar", "What shows after occlusal adjustment"),
    ),
)


def look_name(entry: LookEntry) -> str:
    """Return what a look is called."""
    return translate("look bar", entry.name)


def _px(dense: bool) -> int:
    return 12 if dense else 13


class LookButton(QAbstractButton):
    """Number and name of a look, underlined while it is on."""

    def __init__(self, entry: LookEntry, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.entry = entry
        self._short = self._dense = False
        self.setCheckable(True)
        self.setText(look_name(entry))
        self.setAccessibleName(translate("look bar", "Look {name}").format(name=look_name(entry)))
        self.setToolTip(
            translate("look bar", "{hint} (Alt+{number})").format(
                hint=translate("look bar", entry.hint), number=entry.number
            )
        )
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Return room for number and name."""
        return QSize(self.width_px(short=self._short, dense=self._dense), HEIGHT_PX)

    def width_px(self, *, short: bool, dense: bool = False) -> int:
        """Return the room for number and name; short ones have the number alone."""
        number = text_width(str(self.entry.number), 11)
        if short:
            return round(number + 20)
        return round(number + (12 if dense else 19) + text_width(self.text(), _px(dense), 600))

    def shorten(self, short: bool, *, dense: bool = False) -> None:
        """Show the number alone, or the name as well; a dense one stands closer."""
        if (short, dense) != (self._short, self._dense):
            self._short, self._dense = short, dense
            self.updateGeometry()
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw number, name, underline and focus."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        on = self.isChecked()
        if self.underMouse() and not on:
            painter.fillRect(self.rect().adjusted(2, 5, -2, -5), QColor(t.panel))
        x = 4.0 if self._dense else 7.0
        enabled = self.isEnabled()
        soft, ink = (t.soft, t.ink) if enabled else (t.faint, t.faint)
        weight = 600 if on else 400
        if self._short:
            middle = (self.width() / 2.0, 24)
            number = str(self.entry.number)
            paint_text(painter, middle, number, ink, weight=weight, align=Align.AlignHCenter)
        else:
            x += paint_text(painter, (x, 24), str(self.entry.number), soft, px=11)
            x += 4 if self._dense else 5
            paint_text(painter, (x, 24), self.text(), ink, px=_px(self._dense), weight=weight)
        if on and enabled:
            painter.fillRect(QRectF(6, HEIGHT_PX - 3, self.width() - 12, 3), QColor(t.accent))
        if self.hasFocus():
            painter.setPen(QPen(QColor(t.accent), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(3, 6, -3, -7), 3, 3)
        painter.end()


class LookBar(QWidget):
    """All looks that exist, and the switch of the shading.

    Signals
    -------
    look_chosen
        The `Look` that was clicked.
    shading_switched
        True for on.
    flat_switched
        True to show the flat views.
    fit_asked
        Show the whole crown.
    light_chosen
        A light of `SHOWN_LIGHTS`, and 2 or 10 degrees.
    check_asked
        The display is to be judged.
    """

    look_chosen = Signal(object)
    shading_switched = Signal(bool)
    flat_switched = Signal(bool)
    fit_asked = Signal()
    light_chosen = Signal(str, int)
    check_asked = Signal()

    def __init__(self, parent: QWidget | None = None, looks: Sequence[LookEntry] = LOOKS) -> None:
        super().__init__(parent)
        self.setFixedHeight(HEIGHT_PX)
        self.setAccessibleName(translate("look bar", "Looks"))
        row = QHBoxLayout(self)
        row.setContentsMargins(6, 0, 10, 0)
        row.setSpacing(2)
        self._tight = False
        self._group = QButtonGroup(self)
        self.buttons: dict[Look, LookButton] = {}
        for entry in looks:
            button = LookButton(entry)
            self._group.addButton(button)
            self.buttons[entry.look] = button
            row.addWidget(button)
            button.clicked.connect(lambda _on, look=entry.look: self.look_chosen.emit(look))
        row.addStretch(1)
        self.shading = self._tool(
            "shading",
            translate("look bar", "Shading"),
            translate("look bar", "Light and shadow on the crown"),
        )
        self.shading.setCheckable(True)
        self.shading.setChecked(True)
        self.shading.toggled.connect(self.shading_switched)
        self.flat = self._tool(
            "flat",
            translate("look bar", "Flat"),
            translate("look bar", "Flat views beside the crown (Ctrl+F)"),
        )
        self.flat.setCheckable(True)
        self.flat.toggled.connect(self.flat_switched)
        fit = self._tool(
            "frame",
            translate("look bar", "Fit"),
            translate("look bar", "Show the whole crown (Home)"),
        )
        fit.clicked.connect(self.fit_asked)
        self._tools = (self.flat, self.shading, fit)
        for tool in self._tools:
            row.addWidget(tool)
        row.addSpacing(8)
        self.light = self._light_button()
        self.set_light(SHOWN_LIGHTS[0], OBSERVERS[0])
        row.addWidget(self.light)
        self._fit_names()

    def minimumSizeHint(self) -> QSize:
        """Return the width at which only the look that is on has its name."""
        least = self.least_px if self._tight else self._needed_px(words=False, names=False)
        return QSize(least, HEIGHT_PX)

    def squeeze(self, tight: bool) -> None:
        """Let it become as narrow as it can, in a window smaller than it should be."""
        if tight != self._tight:
            self._tight = tight
            self._fit_names()
            self.updateGeometry()

    @property
    def least_px(self) -> int:
        """The width at which looks have nothing but their numbers."""
        looks = [one.width_px(short=True) + 2 for one in self.buttons.values()]
        light = self.light.fontMetrics().horizontalAdvance(self._light_words[1]) + _ARROW_PX
        return sum(looks) + len(self._tools) * _ICON_PX + light + _SPARE_PX

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave names out where they have no room."""
        super().resizeEvent(event)
        self._fit_names()

    def _needed_px(self, *, words: bool, names: bool, dense: bool = False) -> int:
        """Return the width with or without the words of the tools and the names of looks."""
        full = [one.width_px(short=False, dense=dense) for one in self.buttons.values()]
        looks = full
        if not names:
            # One has its name, and whichever is on: the widest must fit.
            short = [one.width_px(short=True) for one in self.buttons.values()]
            looks = [*short[1:], max(full)]
        tools = [tool.fontMetrics().horizontalAdvance(tool.text()) + 8 for tool in self._tools]
        light = self.light.fontMetrics().horizontalAdvance(self._light_words[0]) + _ARROW_PX
        plain = len(tools) * _ICON_PX + light + _SPARE_PX
        return sum(looks) + 2 * len(looks) + plain + (sum(tools) if words else 0)

    def _fit_names(self) -> None:
        """Show all words that have room: first the tools lose theirs, then looks their names."""
        words = self.width() >= self._needed_px(words=True, names=True)
        names = self.width() >= self._needed_px(words=False, names=True)
        # Rather smaller names than none.
        dense = not names and self.width() >= self._needed_px(words=False, names=True, dense=True)
        # On a screen that is too small, not even that of the look that is on.
        bare = self._tight and self.width() < self._needed_px(words=False, names=False)
        style = Qt.ToolButtonStyle
        for tool in self._tools:
            tool.setToolButtonStyle(
                style.ToolButtonTextBesideIcon if words else style.ToolButtonIconOnly
            )
        for button in self.buttons.values():
            on = button.isChecked() and not bare
            button.shorten(not (names or dense or on), dense=dense)
        self.light.setText(self._light_words[1 if bare else 0])

    def _light_button(self) -> QToolButton:
        """Return the button with the menu of lights and observers."""
        button = QToolButton()
        button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        button.setFont(font(13, 500))
        # The small arrow stands right of the words.
        button.setStyleSheet("QToolButton { padding-right: 14px; }")
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        menu = QMenu(button)
        self._lights, self._observers = QActionGroup(menu), QActionGroup(menu)
        for light in SHOWN_LIGHTS:
            self._choice(menu, self._lights, f"{light}  {light_name(light)}", light)
        menu.addSeparator()
        for degrees in OBSERVERS:
            text = translate("look bar", "{degrees}° observer").format(degrees=degrees)
            self._choice(menu, self._observers, text, degrees)
        menu.addSeparator()
        menu.addAction(translate("look bar", "Check the display...")).triggered.connect(
            lambda _on: self.check_asked.emit()
        )
        self._display = menu.addAction("")
        self._display.setEnabled(False)
        button.setMenu(menu)
        return button

    def _choice(self, menu: QMenu, group: QActionGroup, text: str, value: str | int) -> None:
        action = menu.addAction(text)
        action.setCheckable(True)
        action.setData(value)
        group.addAction(action)
        action.triggered.connect(lambda _on: self._emit_light())

    def _emit_light(self) -> None:
        light, observer = self._lights.checkedAction(), self._observers.checkedAction()
        self.light_chosen.emit(str(light.data()), int(observer.data()))

    def set_light(self, light: str, observer_degrees: int) -> None:
        """Show under which light the crown is seen, and by which observer."""
        for group, value in ((self._lights, light), (self._observers, observer_degrees)):
            for action in group.actions():
                action.setChecked(action.data() == value)
        text = (
            translate("look bar", "Light {light}")
            if observer_degrees == OBSERVERS[0]
            else translate("look bar", "Light {light}, {degrees}°")
        )
        self._light_words = (text.format(light=light, degrees=observer_degrees), light)
        self._fit_names()
        self.light.setAccessibleName(
            translate("look bar", "Light {light}, {degrees} degrees").format(
                light=light, degrees=observer_degrees
            )
        )
        self.light.setToolTip(
            translate(
                "look bar",
                "The light the crown is seen under: {name}. Figures stay those of D65, 2°.",
            ).format(name=light_name(light))
        )

    def set_display(self, words: str) -> None:
        """Say what is known of the display, in the menu of lights."""
        self._display.setText(words)

    def _tool(self, drawing: str, name: str, hint: str) -> QToolButton:
        button = QToolButton()
        button.setIcon(icon(drawing))
        button.setIconSize(QSize(20, 20))
        button.setText(name)
        button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        button.setAccessibleName(name)
        button.setToolTip(hint)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        return button

    def set_look(self, look: Look) -> None:
        """Mark a look as the one that is on."""
        self.buttons[look].setChecked(True)
        self._fit_names()

    def allow_looks(self, allowed: bool) -> None:
        """Switch the looks off while there is nothing they could show."""
        for button in self.buttons.values():
            button.setEnabled(allowed)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the bar and draw its lower line."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.raised))
        painter.fillRect(0, self.height() - 1, self.width(), 1, QColor(t.line))
        painter.end()
