"""The brush and the tools beside it: what they are, their sizes, a line that says what they do."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QLabel,
    QSlider,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.brush import Tool
from stainmap.ui.icons import icon
from stainmap.ui.section import SectionHead, SoftLabel
from stainmap.ui.theme import font
from stainmap.words import marked, translate

_BUTTON_PX = 34


class Command(StrEnum):
    """What is done to a whole area at once."""

    GROW = "grow"
    SHRINK = "shrink"
    SMOOTH = "smooth"
    MIRROR = "mirror"
    STREAKS = "streaks"
    RESET = "reset"


_TOOLS = (
    (
        Tool.BRUSH,
        marked("brush bar", "Brush"),
        "P",
        marked("brush bar", "paint with the left button"),
    ),
    (
        Tool.ERASER,
        marked("brush bar", "Eraser"),
        "E",
        marked("brush bar", "gives back, takes away"),
    ),
    (
        Tool.FILL,
        marked("brush bar", "Fill up to creases"),
        "F",
        marked("brush bar", "click a place; with Shift it takes away"),
    ),
    (
        Tool.LINE,
        marked("brush bar", "Line along a crease or line angle"),
        "C",
        marked("brush bar", "click where it starts and where it ends; with Shift it takes away"),
    ),
)
_COMMANDS = (
    (Command.GROW, marked("brush bar", "Grow the chosen area"), "G"),
    (Command.SHRINK, marked("brush bar", "Shrink the chosen area"), "Shift+G"),
    (Command.SMOOTH, marked("brush bar", "Smooth the edge of the chosen area"), "S"),
    (Command.MIRROR, marked("brush bar", "Mirror mesial-distal..."), "X"),
    (Command.STREAKS, marked("brush bar", "Streaks..."), "T"),
    (Command.RESET, marked("brush bar", "Reset to the proposal..."), "R"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class BrushSettings:
    """Tool, and the sizes that are set; lengths in sintered mm, strength in coats.

    `crease_mm` is the radius of the bend that the fill stops at, `grow_mm` the length by which
    areas grow and shrink.
    """

    tool: Tool = Tool.BRUSH
    radius_mm: float = 0.6
    soft_edge_mm: float = 0.3
    strength_coats: float = 1.0
    crease_mm: float = 2.0
    grow_mm: float = 0.3

    @property
    def softness(self) -> float:
        """Share of the radius that is soft, 0 to 1."""
        return min(self.soft_edge_mm / self.radius_mm, 1.0)


class _Setting(QWidget):
    """A name, a figure and a slider for it."""

    changed = Signal()

    def __init__(
        self, name: str, unit: str, low: float, high: float, step: float, value: float
    ) -> None:
        super().__init__()
        self._unit, self._step, self._decimals = unit, step, 2
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        head = QHBoxLayout()
        self._figure = QLabel()
        self._figure.setFont(font(12, 500))
        head.addWidget(SoftLabel(name))
        head.addStretch(1)
        head.addWidget(self._figure)
        column.addLayout(head)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(round(low / step), round(high / step))
        self.slider.setAccessibleName(
            translate("brush bar", "{name} in coats").format(name=name)
            if unit == "coats"
            else translate("brush bar", "{name} in mm").format(name=name)
        )
        self.slider.setFixedHeight(16)
        column.addWidget(self.slider)
        self.slider.setValue(round(value / step))
        self.slider.valueChanged.connect(self._moved)
        self._show()

    @property
    def value(self) -> float:
        """The figure that is set."""
        return round(self.slider.value() * self._step, 2)

    def set_value(self, value: float) -> None:
        """Set the figure, to the nearest step of the slider."""
        self.slider.setValue(round(value / self._step))

    def nudge(self, steps: int) -> None:
        """Move the slider by some of its steps."""
        self.slider.setValue(self.slider.value() + steps)

    def _moved(self) -> None:
        self._show()
        self.changed.emit()

    def _show(self) -> None:
        if self._unit == "mm":
            text = "{value:.2f} mm"
        elif self.value == 1.0:
            text = translate("brush bar", "{value:g} coat")
        else:
            text = translate("brush bar", "{value:g} coats")
        self._figure.setText(text.format(value=self.value))


class BrushBar(QWidget):
    """Tools, commands and their settings.

    Signals
    -------
    settings_changed
        The new `BrushSettings`.
    command_asked
        A `Command` to carry out.
    command_pointed
        The `Command` whose button is pointed at or has the focus, or None.
    """

    settings_changed = Signal(object)
    command_asked = Signal(object)
    command_pointed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("brush bar", "Brush"))
        start = BrushSettings()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.head = SectionHead(translate("brush bar", "Brush"))
        column.addWidget(self.head)
        row = QHBoxLayout()
        row.setSpacing(4)
        self._group = QButtonGroup(self)
        self.tools: dict[Tool, QToolButton] = {}
        self.commands: dict[Command, QToolButton] = {}
        for tool, text, key, use in _TOOLS:
            name = translate("brush bar", text)
            tip = f"{name} ({key}): {translate('brush bar', use)}"
            button = _button(tool.value, name, key, tip)
            button.setCheckable(True)
            button.clicked.connect(self._choose)
            self._group.addButton(button)
            self.tools[tool] = button
            row.addWidget(button)
        row.addStretch(1)
        for command, text, key in _COMMANDS:
            name = translate("brush bar", text)
            button = _button(command.value, name.rstrip("."), key, f"{name} ({key})")
            button.clicked.connect(lambda _on, asked=command: self.command_asked.emit(asked))
            button.installEventFilter(self)
            self.commands[command] = button
            row.addWidget(button)
        self.tools[start.tool].setChecked(True)
        column.addLayout(row)
        self.radius = _Setting(
            translate("brush bar", "size"), "mm", 0.2, 2.0, 0.05, start.radius_mm
        )
        self.soft_edge = _Setting(
            translate("brush bar", "soft edge"), "mm", 0.0, 1.0, 0.05, start.soft_edge_mm
        )
        self.strength = _Setting(
            translate("brush bar", "strength"), "coats", 0.25, 3.0, 0.25, start.strength_coats
        )
        self.crease = _Setting(translate("brush bar", "bend"), "mm", 0.5, 5.0, 0.1, start.crease_mm)
        self.crease.setToolTip(
            translate(
                "brush bar",
                "The fill stops where the surface bends more sharply than a circle of this radius",
            )
        )
        self.grow = _Setting(
            translate("brush bar", "grow by"), "mm", 0.05, 2.0, 0.05, start.grow_mm
        )
        self.grow.setToolTip(
            translate("brush bar", "How far Grow and Shrink move an edge, along the surface")
        )
        settings = QHBoxLayout()
        settings.setSpacing(7)
        for setting in (self.radius, self.crease, self.soft_edge, self.strength, self.grow):
            setting.changed.connect(self._emit)
            settings.addWidget(setting, 1)
        column.addLayout(settings)
        self._suit(start.tool)

    @property
    def buttons(self) -> dict[str, QToolButton]:
        """All buttons by the name of what they do."""
        named: dict[str, QToolButton] = {tool.value: one for tool, one in self.tools.items()}
        return named | {command.value: one for command, one in self.commands.items()}

    @property
    def settings(self) -> BrushSettings:
        """What is set now."""
        tool = next(tool for tool, button in self.tools.items() if button.isChecked())
        return BrushSettings(
            tool=tool,
            radius_mm=self.radius.value,
            soft_edge_mm=self.soft_edge.value,
            strength_coats=self.strength.value,
            crease_mm=self.crease.value,
            grow_mm=self.grow.value,
        )

    def set_purpose(self, text: str, *, coats: bool) -> None:
        """Say what the tool does now; strength counts only where it adds coats."""
        self.head.set_remark(text)
        self.strength.setEnabled(coats)

    def set_tool(self, tool: Tool) -> None:
        """Take another tool in hand."""
        if not self.tools[tool].isChecked():
            self.tools[tool].setChecked(True)
            self._choose()

    def resize_brush(self, steps: int) -> None:
        """Make the brush larger or smaller by some steps."""
        self.radius.nudge(steps)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Tell which command is pointed at, so that what it would do can be shown."""
        kind = event.type()
        if kind in (QEvent.Type.Enter, QEvent.Type.FocusIn):
            found = next((c for c, button in self.commands.items() if button is watched), None)
            self.command_pointed.emit(found)
        elif kind in (QEvent.Type.Leave, QEvent.Type.FocusOut):
            self.command_pointed.emit(None)
        return super().eventFilter(watched, event)

    def _choose(self) -> None:
        self._suit(self.settings.tool)
        self._emit()

    def _suit(self, tool: Tool) -> None:
        """Show the settings that the tool has."""
        self.crease.setVisible(tool is Tool.FILL)
        self.radius.setVisible(tool is not Tool.FILL)

    def _emit(self) -> None:
        self.settings_changed.emit(self.settings)


def _button(drawing: str, name: str, key: str, tip: str) -> QToolButton:
    button = QToolButton()
    button.setIcon(icon(drawing))
    button.setIconSize(QSize(20, 20))
    button.setFixedSize(_BUTTON_PX, _BUTTON_PX)
    button.setAccessibleName(name)
    button.setToolTip(tip)
    button.setShortcut(key)
    button.setProperty("framed", True)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return button
