"""The window of the settings: how the window looks, what the laboratory uses, keys."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from enum import StrEnum
from typing import TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QLabel,
    QPushButton,
    QSpinBox,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.settings import (
    SIZES_PERCENT,
    Language,
    Motion,
    Scheme,
    Settings,
    Typeface,
    counted_drop_volume_ml,
)
from stainmap.errors import PlanError
from stainmap.paper.page_size import PageSize
from stainmap.ui.form_dialog import number_box
from stainmap.ui.key_map import KeyMap
from stainmap.ui.section import SoftLabel
from stainmap.ui.settings_keys import KeysPage
from stainmap.units import TemperatureUnit
from stainmap.words import translate

_Value = TypeVar("_Value", bound=str | int)


class SettingsPage(StrEnum):
    """The pages of the settings."""

    WINDOW = "window"
    LABORATORY = "laboratory"
    KEYS = "keys"


class SettingsDialog(QDialog):
    """Lets settings be changed; what concerns the look of the window is seen at once.

    Parameters
    ----------
    settings
        What is set now; `settings` of the dialog is what becomes of it.
    programmes
        Names of the sintering programmes there are.
    keys
        The commands that a key can be given to.

    Signals
    -------
    tried
        `Settings` whose look is to be shown while the dialog is open.
    """

    tried = Signal(object)

    def __init__(
        self,
        settings: Settings,
        programmes: Sequence[str],
        keys: KeyMap,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("settings", "Settings"))
        self.setMinimumSize(620, 460)
        self._start = settings
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        self.pages = QTabWidget()
        self.pages.setAccessibleName(translate("settings", "Pages of the settings"))
        self.window_page = _WindowPage()
        self.laboratory_page = _LaboratoryPage(programmes)
        self.keys_page = KeysPage(keys)
        # In the order of `SettingsPage`.
        self.pages.addTab(self.window_page, translate("settings", "Window"))
        self.pages.addTab(self.laboratory_page, translate("settings", "Laboratory"))
        self.pages.addTab(self.keys_page, translate("settings", "Keys"))
        column.addWidget(self.pages, 1)
        kinds = QDialogButtonBox.StandardButton
        self.buttons = QDialogButtonBox(kinds.Ok | kinds.Cancel | kinds.RestoreDefaults)
        restore = self.buttons.button(kinds.RestoreDefaults)
        restore.setText(translate("settings", "This page as it came"))
        restore.clicked.connect(self._restore_page)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        column.addWidget(self.buttons)
        self._show(settings)
        self.window_page.changed.connect(lambda: self.tried.emit(self.settings))

    @property
    def settings(self) -> Settings:
        """The settings as they stand."""
        of_window = self.window_page.put_into(self._start)
        return replace(self.laboratory_page.put_into(of_window), keys=self.keys_page.keys)

    def open_at(self, page: SettingsPage) -> None:
        """Turn to a page."""
        self.pages.setCurrentIndex(list(SettingsPage).index(page))

    def _show(self, settings: Settings) -> None:
        self.window_page.show_settings(settings)
        self.laboratory_page.show_settings(settings)
        self.keys_page.set_keys(settings.keys)

    def _restore_page(self) -> None:
        usual, page = Settings(), self.pages.currentWidget()
        if page is self.keys_page:
            self.keys_page.set_keys(usual.keys)
        elif page is self.laboratory_page:
            self.laboratory_page.show_settings(usual)
        else:
            self.window_page.show_settings(usual)
            self.tried.emit(self.settings)


class _Page(QWidget):
    """Names and fields below one another, each with a quiet sentence under it."""

    def __init__(self) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 16, 16, 16)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(16)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(1, 1)
        column.addLayout(self._grid)
        column.addStretch(1)
        self._rows = 0

    def _row(self, name: str, field: QWidget, sentence: str) -> None:
        label = QLabel(name)
        label.setBuddy(field)
        field.setAccessibleName(name)
        field.setAccessibleDescription(sentence)
        said = SoftLabel(sentence)
        said.setWordWrap(True)
        self._grid.addWidget(label, self._rows, 0)
        self._grid.addWidget(field, self._rows, 1)
        self._grid.addWidget(said, self._rows + 1, 1)
        self._grid.setRowMinimumHeight(self._rows + 2, 8)
        self._rows += 3


class _WindowPage(_Page):
    """Colours, face, size and motion of the window."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.scheme = _choice(
            {
                Scheme.SYSTEM: translate("settings", "as the desktop has it"),
                Scheme.LIGHT: translate("settings", "light"),
                Scheme.DARK: translate("settings", "dark"),
            }
        )
        self.typeface = _choice(
            {
                Typeface.OWN: translate("settings", "the program's own"),
                Typeface.SYSTEM: translate("settings", "the desktop's"),
            }
        )
        self.percent = _choice({size: f"{size} %" for size in SIZES_PERCENT})
        self.motion = _choice(
            {
                Motion.SYSTEM: translate("settings", "as the desktop asks, where it tells"),
                Motion.FULL: translate("settings", "everything turns and folds"),
                Motion.REDUCED: translate("settings", "everything is in its place at once"),
            }
        )
        self._row(
            translate("settings", "Colours"),
            self.scheme,
            translate("settings", "The surround of the crown stays neutral in all."),
        )
        self._row(
            translate("settings", "Typeface"),
            self.typeface,
            translate(
                "settings",
                "Figures of the program's own stand below one another in tables.",
            ),
        )
        self._row(
            translate("settings", "Size of text and window"),
            self.percent,
            translate(
                "settings",
                "Text, fields and drawings alike, from the next start on. The window needs a"
                " screen of 1024 x 700 times this.",
            ),
        )
        self._row(
            translate("settings", "Motion"),
            self.motion,
            translate(
                "settings",
                "The crown turns to a place within 150 ms, so that the eye can follow, or is"
                " there at once.",
            ),
        )
        # Each is called by its own name, so that it is found by whoever cannot read the others.
        self.language = _choice({Language.ENGLISH: "English", Language.GERMAN: "Deutsch"})
        self._row(
            translate("settings", "Language"),
            self.language,
            translate(
                "settings",
                "From the next start on. Paper, exported files, names of materials, the manual and"
                " the evidence stay English; numbers keep the point.",
            ),
        )
        for box in (self.scheme, self.typeface, self.motion):
            box.activated.connect(self.changed)

    def put_into(self, settings: Settings) -> Settings:
        # Qt gives plain text back where one of several words was put in.
        return replace(
            settings,
            scheme=Scheme(self.scheme.currentData()),
            typeface=Typeface(self.typeface.currentData()),
            size_percent=int(self.percent.currentData()),
            motion=Motion(self.motion.currentData()),
            language=Language(self.language.currentData()),
        )

    def show_settings(self, settings: Settings) -> None:
        _choose(self.scheme, settings.scheme)
        _choose(self.typeface, settings.typeface)
        _choose(self.percent, settings.size_percent)
        _choose(self.motion, settings.motion)
        _choose(self.language, settings.language)


class _LaboratoryPage(_Page):
    """Temperatures, paper, pipettes and furnace."""

    def __init__(self, programmes: Sequence[str]) -> None:
        super().__init__()
        self.degrees = _choice(
            {
                TemperatureUnit.BOTH: translate("settings", "°C and °F"),
                TemperatureUnit.CELSIUS: translate("settings", "°C only"),
                TemperatureUnit.FAHRENHEIT: translate("settings", "°F only"),
            }
        )
        self.page = _choice({page: str(page) for page in PageSize})
        self.programme = _choice(
            {
                "": translate("settings", "the first of the materials"),
                **{name: name for name in programmes},
            }
        )
        self.volume = number_box("", 0.05, 0.01, 0.2, decimals=4, step=0.001)
        self.volume.setSuffix(" mL")
        self._row(
            translate("settings", "Temperatures"),
            self.degrees,
            translate("settings", "In the run, on its pages, and on all sheets."),
        )
        self._row(
            translate("settings", "Paper"),
            self.page,
            translate("settings", "What sheets are shown and saved on, until another is asked."),
        )
        self._row(
            translate("settings", "Volume of a drop"),
            self.volume,
            translate(
                "settings",
                "How many drops a jar needs goes by it. 0.05 mL is usual, with 15 % of error (USP"
                " <1101>). New cases begin with it, and the open one follows unless it has its"
                " own.",
            ),
        )
        self._add_counting()
        self._row(
            translate("settings", "Sintering programme"),
            self.programme,
            translate(
                "settings",
                "What new cases begin with. A case keeps its own; change that beside its block.",
            ),
        )

    def _add_counting(self) -> None:
        """Add the count by which a pipette is calibrated."""
        self.drops, self.filled = QSpinBox(), number_box("", 1.0, 0.1, 20.0, step=0.5)
        self.drops.setRange(1, 2000)
        self.drops.setValue(20)
        self.drops.setAccessibleName(translate("settings", "Drops counted"))
        self.filled.setAccessibleName(translate("settings", "Millilitres they fill"))
        self.filled.setSuffix(" mL")
        self.drops.setSuffix(translate("settings", " drops fill"))
        self.take_count = QPushButton(translate("settings", "Take the count"))
        self.take_count.setAutoDefault(False)
        self.take_count.clicked.connect(self._take_count)
        self.counted = SoftLabel(
            translate("settings", "Count the drops of your own pipette into a measure.")
        )
        self.counted.setWordWrap(True)
        line = QGridLayout()
        line.addWidget(self.drops, 0, 0)
        line.addWidget(self.filled, 0, 1)
        line.addWidget(self.take_count, 0, 2)
        line.setColumnStretch(0, 1)
        line.setColumnStretch(1, 1)
        self._grid.addLayout(line, self._rows, 1)
        self._grid.addWidget(self.counted, self._rows + 1, 1)
        self._grid.setRowMinimumHeight(self._rows + 2, 8)
        self._rows += 3

    def _take_count(self) -> None:
        try:
            volume = counted_drop_volume_ml(self.drops.value(), self.filled.value())
        except PlanError as error:
            self.counted.setText(str(error))
            return
        self.volume.setValue(volume)
        said = translate("settings", "One drop has {volume} mL.")
        self.counted.setText(said.format(volume=f"{volume:.4f}"))

    def put_into(self, settings: Settings) -> Settings:
        return replace(
            settings,
            degrees=TemperatureUnit(self.degrees.currentData()),
            page=PageSize(self.page.currentData()),
            drop_volume_ml=round(self.volume.value(), 4),
            programme=str(self.programme.currentData()),
        )

    def show_settings(self, settings: Settings) -> None:
        _choose(self.degrees, settings.degrees)
        _choose(self.page, settings.page)
        self.volume.setValue(settings.drop_volume_ml)
        if self.programme.findData(settings.programme) < 0:
            # Kept: it may be among the materials that are opened next.
            said = translate("settings", "{programme} (not among the materials at hand)")
            words = said.format(programme=settings.programme)
            self.programme.addItem(words, settings.programme)
        _choose(self.programme, settings.programme)


def _choice(choices: Mapping[_Value, str]) -> QComboBox:
    box = QComboBox()
    for value, words in choices.items():
        box.addItem(words, value)
    box.setMinimumWidth(220)
    box.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    return box


def _choose(box: QComboBox, value: object) -> None:
    box.setCurrentIndex(max(box.findData(value), 0))
