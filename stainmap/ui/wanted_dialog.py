"""What is wanted: the body's colour, and how far the other areas are to lie from it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QValidator
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QDoubleSpinBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from stainmap.errors import PlanError
from stainmap.model.colour import (
    IN_PLACE,
    SPHERE_WITH_GLOSS,
    SPHERE_WITHOUT_GLOSS,
    WITHOUT_GLOSS,
    Colour,
    Conversion,
    Measurement,
)
from stainmap.model.target import DEFAULT_OFFSETS, Offset, Target
from stainmap.model.zone import Area
from stainmap.optics.colorimetry import LIGHTS
from stainmap.planning.targets import outside_ceramic
from stainmap.predict.colour_conversion import conversions_for
from stainmap.ui.form_dialog import choice_box
from stainmap.ui.marks import signed
from stainmap.ui.outcome_panel import screen_colour
from stainmap.ui.plate import link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.words import listed, translate, value_word

_GEOMETRIES = (WITHOUT_GLOSS, SPHERE_WITHOUT_GLOSS, SPHERE_WITH_GLOSS)
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
    """Body colour in L*a*b*, and offsets or own shades of the other areas.

    Parameters
    ----------
    target
        What is wanted now, or None.
    names
        Areas with an offset and their names on this tooth.
    usual
        Offsets that are usual for this class of teeth.
    class_word
        The class in words, such as "molars"; without, nothing can be kept as usual.

    Signals
    -------
    usual_asked
        Offsets that are to be the usual ones of the class from now on.
    intake_asked
        The intake page is wanted instead; this dialog closes.
    """

    usual_asked = Signal(object)
    intake_asked = Signal()

    def __init__(
        self,
        target: Target | None,
        names: dict[Area, str],
        parent: QWidget | None = None,
        *,
        usual: tuple[Offset, ...] = DEFAULT_OFFSETS,
        class_word: str = "",
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("wanted dialog", "What is wanted"))
        body = _START if target is None else target.body
        offsets = usual if target is None else target.offsets
        self._usual = usual
        self._held = () if target is None else target.held
        self._doubt = None if target is None else target.body_doubt
        self._body = body
        # What is wanted is wanted as seen in the mouth, whatever stump is chosen later.
        self._measurement = replace(body.measurement, backing=IN_PLACE)
        self._conversions = () if target is None else target.conversions
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        column.addWidget(
            SoftLabel(
                translate("wanted dialog", "The body as seen in place; the other areas follow it.")
            )
        )
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(8)
        column.addLayout(grid)
        self.name = QLineEdit("" if target is None else target.name)
        self.name.setAccessibleName(translate("wanted dialog", "Name of the shade"))
        self.name.setPlaceholderText(
            translate("wanted dialog", "name, for instance a shade designation")
        )
        grid.addWidget(QLabel(translate("wanted dialog", "Shade")), 0, 0)
        grid.addWidget(self.name, 0, 1, 1, 4)
        self._head(grid, 1, ("", "L*", "a*", "b*", ""))
        label = QLabel(translate("wanted dialog", "body"))
        label.setFont(font(13, 600))
        grid.addWidget(label, 2, 0)
        self.body = [
            self._box(translate("wanted dialog", "body {axis}").format(axis=axis), low, high, value)
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
        self.swatch.setAccessibleName(
            translate("wanted dialog", "The body's colour on this screen")
        )
        grid.addWidget(self.swatch, 2, 4)
        self._ask_how_measured(grid, body.measurement)
        self._ask_for_offsets(grid, names, offsets)
        column.addLayout(self._about_offsets(class_word))
        self.outside = SoftLabel()
        self.outside.setWordWrap(True)
        column.addWidget(self.outside)
        buttons = QDialogButtonBox(
            QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel
        )
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)
        self._show()

    def _ask_for_offsets(
        self, grid: QGridLayout, names: dict[Area, str], offsets: tuple[Offset, ...]
    ) -> None:
        """Add a line for every area that follows the body, or is held to a shade of its own."""
        self._head(
            grid,
            6,
            (
                translate("wanted dialog", "from the body"),
                "\N{GREEK CAPITAL LETTER DELTA}L*",
                "",
                "",
                "",
            ),
        )
        grid.addWidget(SoftLabel("\N{GREEK CAPITAL LETTER DELTA}C*", 11), 6, 2)
        self.offsets: dict[Area, tuple[SignedBox, SignedBox]] = {}
        self.own_shades: dict[Area, QCheckBox] = {}
        for row, (area, name) in enumerate(names.items(), start=7):
            old = next((one for one in offsets if one.area == area), None)
            light = self._signed(
                translate("wanted dialog", "{name} lightness from body").format(name=name),
                old.lightness if old else 0.0,
            )
            chroma = self._signed(
                translate("wanted dialog", "{name} chroma from body").format(name=name),
                old.chroma if old else 0.0,
            )
            grid.addWidget(QLabel(name), row, 0)
            grid.addWidget(light, row, 1)
            grid.addWidget(chroma, row, 2)
            self.offsets[area] = (light, chroma)
            self._add_own_shade(grid, row, area, name)

    def _add_own_shade(self, grid: QGridLayout, row: int, area: Area, name: str) -> None:
        """Add the switch of an area that a third of the intake page gave a shade of its own."""
        own = next((one for one in self._held if one.area == area), None)
        if own is None:
            return
        lab = " ".join(f"{value:.1f}" for value in own.colour.lab).replace("-", "\N{MINUS SIGN}")
        box = QCheckBox(translate("wanted dialog", "own shade {lab}").format(lab=lab))
        box.setAccessibleName(
            translate("wanted dialog", "{name}: keep to its own shade").format(name=name)
        )
        box.setToolTip(
            translate(
                "wanted dialog", "As it was read: {measurement}. Untick to follow the body."
            ).format(measurement=own.colour.measurement)
        )
        for offset in self.offsets[area]:
            box.toggled.connect(offset.setHidden)
        box.setChecked(True)
        grid.addWidget(box, row, 3, 1, 2)
        self.own_shades[area] = box

    def _about_offsets(self, class_word: str) -> QHBoxLayout:
        """Return the line of what can be done with all offsets, and the way to the intake page."""
        line = QHBoxLayout()
        line.setSpacing(16)
        line.addWidget(
            SoftLabel(translate("wanted dialog", "Common practice; change any of them."))
        )
        line.addStretch(1)
        take = link_button(translate("wanted dialog", "take the usual"))
        take.clicked.connect(self._take_usual)
        line.addWidget(take)
        if class_word:
            keep = link_button(
                translate("wanted dialog", "keep as usual for {class_word}").format(
                    class_word=class_word
                )
            )
            keep.clicked.connect(lambda: self.usual_asked.emit(self._offsets_set))
            line.addWidget(keep)
        intake = link_button(translate("wanted dialog", "intake page..."))
        intake.clicked.connect(self._leave_for_intake)
        line.addWidget(intake)
        return line

    def _take_usual(self) -> None:
        for offset in self._usual:
            if offset.area in self.offsets:
                light, chroma = self.offsets[offset.area]
                light.setValue(offset.lightness)
                chroma.setValue(offset.chroma)

    def _leave_for_intake(self) -> None:
        self.reject()
        self.intake_asked.emit()

    @property
    def _offsets_set(self) -> tuple[Offset, ...]:
        return tuple(
            Offset(area=area, lightness=light.value(), chroma=chroma.value())
            for area, (light, chroma) in self.offsets.items()
        )

    def _ask_how_measured(self, grid: QGridLayout, how: Measurement) -> None:
        """Add the lines about how the wanted colour was read."""
        # A tab's or a photograph's way stays choosable where the body was read so.
        geometries = tuple(dict.fromkeys((*_GEOMETRIES, how.geometry)))
        self.read_geometry = choice_box(
            translate("wanted dialog", "Geometry of the reading"),
            geometries,
            how.geometry,
            value_word,
        )
        self.read_light = choice_box(
            translate("wanted dialog", "Light of the reading"), LIGHTS, how.illuminant
        )
        grid.addWidget(QLabel(translate("wanted dialog", "measured")), 3, 0)
        grid.addWidget(self.read_geometry, 3, 1, 1, 2)
        grid.addWidget(self.read_light, 3, 3)
        grid.addWidget(
            SoftLabel(
                translate("wanted dialog", "{degrees}° observer").format(
                    degrees=how.observer_degrees
                )
            ),
            3,
            4,
        )
        self.converts = QCheckBox()
        self.converts.setChecked(bool(self._conversions))
        self.told = SoftLabel()
        self.told.setWordWrap(True)
        grid.addWidget(self.converts, 4, 1, 1, 4)
        grid.addWidget(self.told, 5, 1, 1, 4)
        for choice in (self.read_geometry, self.read_light):
            choice.currentTextChanged.connect(self._show)
        self.converts.toggled.connect(self._show)

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
    def measurement(self) -> Measurement:
        """How the wanted colour was measured, as it is set now."""
        return replace(
            self._measurement,
            geometry=str(self.read_geometry.currentData()),
            illuminant=str(self.read_light.currentData()),
        )

    @property
    def conversions(self) -> tuple[Conversion, ...]:
        """What it takes to compare with a prediction; raises PlanError if nothing does."""
        return conversions_for(self.measurement, Measurement(backing=IN_PLACE))

    @property
    def target(self) -> Target:
        """What is wanted as it is set now."""
        body = self._colour
        same = body == replace(self._body, measurement=self._measurement)
        return Target(
            body=body,
            name=self.name.text().strip(),
            offsets=self._offsets_set,
            conversions=self.conversions if self.converts.isChecked() else (),
            held=tuple(
                one
                for one in self._held
                if one.area not in self.own_shades or self.own_shades[one.area].isChecked()
            ),
            # A colour that was typed over is no longer the reading that the doubt belongs to.
            body_doubt=self._doubt if same else None,
        )

    @property
    def _colour(self) -> Colour:
        """The body's colour; fields that were left alone keep every digit of the reading."""
        values = [
            old if round(old, 1) == box.value() else box.value()
            for old, box in zip(self._body.lab, self.body, strict=True)
        ]
        return Colour(lightness=values[0], a=values[1], b=values[2], measurement=self.measurement)

    def _show(self) -> None:
        self._show_conversions()
        self.swatch.setStyleSheet(f"background: {screen_colour(self._colour)};")
        outside = outside_ceramic(self._colour)
        self.outside.setText(outside)
        self.outside.setVisible(bool(outside))

    def _show_conversions(self) -> None:
        """Offer what makes the reading comparable, by name, or say that nothing does."""
        try:
            needed = self.conversions
        except PlanError as error:
            self.converts.setChecked(False)
            self.converts.hide()
            self.told.setText(str(error))
            self.told.show()
            return
        self.converts.setVisible(bool(needed))
        self.converts.setText(
            translate("wanted dialog", "convert by {ways}").format(
                ways=listed([value_word(one) for one in needed])
            )
        )
        refused = bool(needed) and not self.converts.isChecked()
        self.told.setVisible(refused)
        self.told.setText(
            translate(
                "wanted dialog", "Without it, no difference to a prediction at 45/0, D65 is shown."
            )
        )
