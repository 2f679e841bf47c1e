"""One line of the intake page: a shade as tab, as measured L*a*b* or from a photograph."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QHBoxLayout, QLabel, QStackedWidget, QWidget

from stainmap.errors import PlanError
from stainmap.model.colour import IN_PLACE, Colour, Conversion, Measurement
from stainmap.model.intake import Shade, ShadeSource
from stainmap.model.shade_table import ShadeTable
from stainmap.planning.shade_tabs import tab_shade
from stainmap.planning.targets import shade_in
from stainmap.ui.form_dialog import choice_box, number_box
from stainmap.ui.outcome_panel import screen_colour
from stainmap.ui.section import SoftLabel
from stainmap.words import marked, translate

# Told by these words which source is chosen; in the list they stand in the language spoken.
NOT_READ = marked("shade row", "not read")
_TAB, _MEASURED = marked("shade row", "tab"), marked("shade row", "measured")
_PHOTOGRAPH = marked("shade row", "photograph")
_SOURCES = (NOT_READ, _TAB, _MEASURED, _PHOTOGRAPH)
_NAMES = {
    ShadeSource.TAB: _TAB,
    ShadeSource.MEASURED: _MEASURED,
    ShadeSource.PHOTOGRAPH: _PHOTOGRAPH,
}
# Repeatability of an instrument on one tooth; assumed, and editable in its field.
_MEASURED_DOUBT = 0.7
_START = (75.0, 1.0, 17.0)


class ShadeRow(QObject):
    """The fields of one shade; they stand in a grid of the page.

    Signals
    -------
    changed
        Something in the row is different.
    photograph_asked
        The shade is to come from a photograph that is not there yet.
    """

    changed = Signal()
    photograph_asked = Signal()

    def __init__(
        self, name: str, shade: Shade | None, table: ShadeTable, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.name = name
        self._table = table
        self._photographed = shade if _is(shade, ShadeSource.PHOTOGRAPH) else None
        # A tab keeps the colour it was chosen with, whatever the table says today.
        self._kept_tab = shade if _is(shade, ShadeSource.TAB) else None
        self._measured = shade if _is(shade, ShadeSource.MEASURED) else None
        self.measurement = Measurement(backing=IN_PLACE)
        self.conversions: tuple[Conversion, ...] = ()
        self.source = choice_box(
            translate("shade row", "{name}: how it was read").format(name=name),
            _SOURCES,
            NOT_READ if shade is None else _NAMES[shade.source],
            lambda one: translate("shade row", one),
        )
        self.tab = _tab_box(name, table, shade)
        lab = _START if self._measured is None else self._measured.colour.lab
        doubt = _MEASURED_DOUBT if self._measured is None else self._measured.doubt[0]
        ranges = (("L*", 0.0, 100.0), ("a*", -40.0, 60.0), ("b*", -40.0, 80.0))
        self.lab = [
            number_box(f"{name}: {axis}", value, low, high, decimals=1, step=0.5)
            for (axis, low, high), value in zip(ranges, lab, strict=True)
        ]
        self.doubt = number_box(
            translate("shade row", "{name}: plus or minus").format(name=name),
            doubt,
            0.0,
            10.0,
            decimals=1,
        )
        self.doubt.setPrefix("\N{PLUS-MINUS SIGN} ")
        for box in self.lab:
            box.setMinimumWidth(72)
        self.photograph = SoftLabel(px=13)
        self._stack = QStackedWidget()
        for page in (QWidget(), _side_by_side(self.tab), _side_by_side(*self.lab, self.doubt)):
            self._stack.addWidget(page)
        self._stack.addWidget(_side_by_side(self.photograph))
        self.swatch = QLabel()
        self.swatch.setFixedSize(44, 24)
        self.result = SoftLabel(px=12)
        self.result.setMinimumWidth(178)
        self.source.activated.connect(self._choose_source)
        self.tab.currentTextChanged.connect(self._show)
        for box in (*self.lab, self.doubt):
            box.valueChanged.connect(self._show)
        self._show()

    def add_to(self, grid: QGridLayout, row: int, head: QWidget) -> None:
        """Put the row into a grid behind its head."""
        grid.addWidget(head, row, 0)
        grid.addWidget(self.source, row, 1)
        grid.addWidget(self._stack, row, 2)
        grid.addWidget(self.swatch, row, 3)
        grid.addWidget(self.result, row, 4)

    @property
    def is_measured(self) -> bool:
        """True if L*a*b* were typed in."""
        return bool(self.source.currentData() == _MEASURED)

    @property
    def shade(self) -> Shade | None:
        """The shade as it is set now, or None if none was read."""
        chosen = self.source.currentData()
        if chosen == _TAB:
            return self._tab_shade()
        if chosen == _MEASURED:
            lightness, a, b = (box.value() for box in self.lab)
            return Shade(
                source=ShadeSource.MEASURED,
                colour=Colour(lightness=lightness, a=a, b=b, measurement=self.measurement),
                doubt=(self.doubt.value(), self.doubt.value(), self.doubt.value()),
                conversions=self.conversions,
            )
        return self._photographed if chosen == _PHOTOGRAPH else None

    def set_measured_by(self, how: Measurement, conversions: tuple[Conversion, ...]) -> None:
        """Take it that L*a*b* were measured in a way, and which conversions somebody chose."""
        self.measurement, self.conversions = how, conversions
        self._show()

    def set_photographed(self, shade: Shade) -> None:
        """Take a shade from a photograph."""
        self._photographed = shade
        self.source.setCurrentIndex(self.source.findData(_PHOTOGRAPH))
        self._show()

    def set_table(self, table: ShadeTable) -> None:
        """Choose from another table of tabs; a tab that is chosen now takes its new value."""
        self._table, self._kept_tab = table, None
        chosen = self.tab.currentText()
        self.tab.blockSignals(True)
        self.tab.clear()
        self.tab.addItems([tab.name for tab in table.tabs])
        self.tab.setCurrentText(chosen)
        self.tab.blockSignals(False)
        self._show()

    def _tab_shade(self) -> Shade | None:
        kept, name = self._kept_tab, self.tab.currentText()
        if kept is not None and kept.name == name:
            return kept
        return tab_shade(self._table.tab(name)) if name else None

    def _choose_source(self) -> None:
        if self.source.currentData() == _PHOTOGRAPH and self._photographed is None:
            self.photograph_asked.emit()
            if self._photographed is None:
                self.source.setCurrentIndex(self.source.findData(NOT_READ))
        self._show()

    def _show(self) -> None:
        self._stack.setCurrentIndex(self.source.currentIndex())
        shade = self.shade
        self.swatch.setVisible(shade is not None)
        self.result.setText("")
        if shade is not None:
            self.swatch.setStyleSheet(f"background: {screen_colour(shade.colour)};")
            self.swatch.setAccessibleName(
                translate("shade row", "{name}: colour on this screen").format(name=self.name)
            )
            self._show_result(shade)
        self.changed.emit()

    def _show_result(self, shade: Shade) -> None:
        """Say what the shade comes to in the way of a prediction, with all of its doubt."""
        try:
            seen = shade_in(shade)
        except PlanError as error:
            self.result.setText(translate("shade row", "cannot be compared"))
            self.result.setToolTip(str(error))
            return
        colour = " ".join(f"{value:.1f}" for value in seen.colour.lab)
        sd = " ".join(f"{value:.1f}" for value in seen.sd)
        self.result.setText(f"{colour}  \N{PLUS-MINUS SIGN} {sd}".replace("-", "\N{MINUS SIGN}"))
        said = [str(one) for one in seen.conversions]
        self.result.setToolTip("\n".join([*said, *([shade.note] if shade.note else [])]))
        if shade.source is ShadeSource.PHOTOGRAPH:
            self.photograph.setText(translate("shade row", "from the picture"))
            self.photograph.setToolTip(shade.note)


def _is(shade: Shade | None, source: ShadeSource) -> bool:
    return shade is not None and shade.source is source


def _tab_box(name: str, table: ShadeTable, shade: Shade | None) -> QComboBox:
    names = [tab.name for tab in table.tabs]
    chosen = shade.name if shade is not None and shade.source is ShadeSource.TAB else "A3"
    if chosen not in names and shade is not None and shade.source is ShadeSource.TAB:
        names.append(chosen)
    box = choice_box(translate("shade row", "{name}: tab").format(name=name), names, chosen)
    box.setMaxVisibleItems(20)
    return box


def _side_by_side(*widgets: QWidget) -> QWidget:
    page = QWidget()
    row = QHBoxLayout(page)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(6)
    for widget in widgets:
        row.addWidget(widget)
    row.addStretch(1)
    return page
