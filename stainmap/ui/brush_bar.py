"""The brush: tool, size, soft edge, strength, and a line that says what it does."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt, Signal
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

_TOOLS = (
    (Tool.BRUSH, "Brush", "P"),
    (Tool.ERASER, "Eraser", "E"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class BrushSettings:
    """Tool, radius and width of the soft edge in sintered mm, strength in coats."""

    tool: Tool = Tool.BRUSH
    radius_mm: float = 0.6
    soft_edge_mm: float = 0.3
    strength_coats: float = 1.0

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
        self.slider.setAccessibleName(f"{name} in {unit}")
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
        number = f"{self.value:.2f}".rstrip("0").rstrip(".") if self._unit == "coats" else ""
        text = f"{self.value:.2f} mm" if self._unit == "mm" else number
        if self._unit == "coats":
            text += " coat" if number == "1" else " coats"
        self._figure.setText(text)


class BrushBar(QWidget):
    """Tools and their settings.

    Signals
    -------
    settings_changed
        The new `BrushSettings`.
    """

    settings_changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Brush")
        start = BrushSettings()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.head = SectionHead("Brush")
        column.addWidget(self.head)
        row = QHBoxLayout()
        row.setSpacing(6)
        self._group = QButtonGroup(self)
        self.tools: dict[Tool, QToolButton] = {}
        for tool, name, key in _TOOLS:
            button = QToolButton()
            button.setIcon(icon(tool.value))
            button.setIconSize(QSize(20, 20))
            button.setFixedSize(36, 36)
            button.setCheckable(True)
            button.setAccessibleName(name)
            button.setToolTip(f"{name} ({key})")
            button.setShortcut(key)
            button.setProperty("framed", True)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.clicked.connect(self._emit)
            self._group.addButton(button)
            self.tools[tool] = button
            row.addWidget(button)
        self.tools[start.tool].setChecked(True)
        row.addSpacing(8)
        self.radius = _Setting("size", "mm", 0.2, 2.0, 0.05, start.radius_mm)
        self.soft_edge = _Setting("soft edge", "mm", 0.0, 1.0, 0.05, start.soft_edge_mm)
        self.strength = _Setting("strength", "coats", 0.25, 3.0, 0.25, start.strength_coats)
        for setting in (self.radius, self.soft_edge, self.strength):
            setting.changed.connect(self._emit)
            row.addWidget(setting, 1)
            row.addSpacing(6)
        column.addLayout(row)

    @property
    def settings(self) -> BrushSettings:
        """What is set now."""
        tool = next(tool for tool, button in self.tools.items() if button.isChecked())
        return BrushSettings(
            tool=tool,
            radius_mm=self.radius.value,
            soft_edge_mm=self.soft_edge.value,
            strength_coats=self.strength.value,
        )

    def set_purpose(self, text: str, *, coats: bool) -> None:
        """Say what the brush does now; strength counts only where it adds coats."""
        self.head.set_remark(text)
        self.strength.setEnabled(coats)

    def resize_brush(self, steps: int) -> None:
        """Make the brush larger or smaller by some steps."""
        self.radius.nudge(steps)

    def _emit(self) -> None:
        self.settings_changed.emit(self.settings)
