"""What is wanted: the body's colour, and how far the other areas are to lie from it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtGui import QValidator
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QDoubleSpinBox,
    QGridLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from stainmap.model.colour import IN_PLACE, Colour, Measurement
from stainmap.model.target import DEFAULT_OFFSETS, Offset, Target
from stainmap.model.zone import Area
from stainmap.ui.marks import signed
from stainmap.ui.outcome_panel import screen_colour
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font

_START = Colour(lightness=75.5, a=0.8, b=17.0, measurement=Measurement(backing=IN_PLACE))


class SignedBox(QDoubleSpinBox):
    """A difference that always shows its sign."""

    def textFromValue(self, value: float) -> str:
        """Return the value with its sign and a true minus."""
        return signed(value)

    def valueFromText(self, text: str) -> float:
        """Read a value with either kind of minus."""
        try:
            return float(text.replace("\N{MINUS SIGN}", "-").replace(",", "."))
        except ValueError:
            return self.value()

    def validate(self, text: str, position: int) -> tuple[QValidator.State, str, int]:
        """Let the ordinary minus stand for the true one."""
        plain = text.replace("\N{MINUS SIGN}", "-").lstrip("+")
        return super().validate(plain, min(position, len(plain)))[0], text, position


class WantedDialog(QDialog):
    """Body colour in L*a*b* and offsets of the other areas.

    Parameters
    ----------
    target
        What is wanted now, or None.
    names
        Areas with an offset and their names on this tooth.
    """

    def __init__(
        self, target: Target | None, names: dict[Area, str], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("What is wanted")
        body = _START if target is None else target.body
        offsets = DEFAULT_OFFSETS if target is None else target.offsets
        # What is wanted is wanted as seen in the mouth, whatever stump is chosen later.
        self._measurement = replace(body.measurement, backing=IN_PLACE)
        self._conversions = () if target is None else target.conversions
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        column.addWidget(
            SoftLabel(
                f"The body in place, {body.measurement.geometry}, {body.measurement.illuminant}, "
                f"{body.measurement.observer_degrees}\N{DEGREE SIGN}; the rest follows it."
            )
        )
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(8)
        column.addLayout(grid)
        self.name = QLineEdit("" if target is None else target.name)
        self.name.setAccessibleName("Name of the shade")
        self.name.setPlaceholderText("name, for instance a shade designation")
        grid.addWidget(QLabel("Shade"), 0, 0)
        grid.addWidget(self.name, 0, 1, 1, 4)
        self._head(grid, 1, ("", "L*", "a*", "b*", ""))
        label = QLabel("body")
        label.setFont(font(13, 600))
        grid.addWidget(label, 2, 0)
        self.body = [
            self._box(f"body {axis}", low, high, value)
            for axis, low, high, value in (
                ("L*", 0.0, 100.0, body.lightness),
                ("a*", -30.0, 30.0, body.a),
                ("b*", -20.0, 60.0, body.b),
            )
        ]
        for k, box in enumerate(self.body, start=1):
            grid.addWidget(box, 2, k)
            box.valueChanged.connect(self._show)
        self.swatch = QLabel()
        self.swatch.setFixedSize(64, 26)
        self.swatch.setAccessibleName("The body's colour on this screen")
        grid.addWidget(self.swatch, 2, 4)
        self._head(grid, 3, ("from the body", "\N{GREEK CAPITAL LETTER DELTA}L*", "", "", ""))
        grid.addWidget(SoftLabel("\N{GREEK CAPITAL LETTER DELTA}C*", 11), 3, 2)
        self.offsets: dict[Area, tuple[SignedBox, SignedBox]] = {}
        for row, (area, name) in enumerate(names.items(), start=4):
            old = next((one for one in offsets if one.area == area), None)
            light = self._signed(f"{name} lightness from body", old.lightness if old else 0.0)
            chroma = self._signed(f"{name} chroma from body", old.chroma if old else 0.0)
            grid.addWidget(QLabel(name), row, 0)
            grid.addWidget(light, row, 1)
            grid.addWidget(chroma, row, 2)
            self.offsets[area] = (light, chroma)
        column.addWidget(SoftLabel("These offsets are common practice; change any of them."))
        buttons = QDialogButtonBox(
            QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel
        )
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)
        self._show()

    @staticmethod
    def _head(grid: QGridLayout, row: int, words: tuple[str, ...]) -> None:
        for column, word in enumerate(words):
            if word:
                grid.addWidget(SoftLabel(word, 11), row, column)

    @staticmethod
    def _box(name: str, low: float, high: float, value: float) -> QDoubleSpinBox:
        box = QDoubleSpinBox()
        box.setRange(low, high)
        box.setDecimals(1)
        box.setSingleStep(0.5)
        box.setValue(value)
        box.setAccessibleName(name)
        box.setAlignment(Qt.AlignmentFlag.AlignRight)
        box.lineEdit().setTextMargins(4, 0, 4, 0)
        return box

    @staticmethod
    def _signed(name: str, value: float) -> SignedBox:
        box = SignedBox()
        box.setRange(-20.0, 20.0)
        box.setDecimals(1)
        box.setSingleStep(0.5)
        box.setValue(value)
        box.setAccessibleName(name)
        box.setAlignment(Qt.AlignmentFlag.AlignRight)
        box.lineEdit().setTextMargins(4, 0, 4, 0)
        return box

    @property
    def target(self) -> Target:
        """What is wanted as it is set now."""
        light, a, b = (box.value() for box in self.body)
        return Target(
            body=Colour(lightness=light, a=a, b=b, measurement=self._measurement),
            name=self.name.text().strip(),
            offsets=tuple(
                Offset(area=area, lightness=light.value(), chroma=chroma.value())
                for area, (light, chroma) in self.offsets.items()
            ),
            conversions=self._conversions,
        )

    def _show(self) -> None:
        self.swatch.setStyleSheet(f"background: {screen_colour(self.target.body)};")
