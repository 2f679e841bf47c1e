"""Other languages: the texts are found in the code, translated, loaded and shown."""

from __future__ import annotations

import re
import shutil
import string
import tomllib
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QAbstractButton, QApplication, QDialogButtonBox, QMenu, QWidget
from pytestqt.qtbot import QtBot

from stainmap.app.materials import MaterialKind
from stainmap.app.materials_spectra import SpectrumOf
from stainmap.app.section import SectionWay
from stainmap.app.settings import Scheme, Settings
from stainmap.model.advice_limits import Mark
from stainmap.model.bench_record import BenchStage
from stainmap.model.case import Case, Region
from stainmap.model.colour import Conversion
from stainmap.model.crown import BodyKind
from stainmap.model.finishing import Finish
from stainmap.model.intake import Third
from stainmap.model.shade_table import HueFamily
from stainmap.model.tooth import Role
from stainmap.model.zone import Zone
from stainmap.paper.views import Side
from stainmap.paths import resource
from stainmap.planning.advice_value import Severity
from stainmap.planning.flat_views import Towards
from stainmap.planning.mirrored import Half
from stainmap.planning.schedule import RunStage
from stainmap.planning.unit_state import SheetStanding, UnitStage
from stainmap.practice.exercise import Skill
from stainmap.practice.slips import SlipKind
from stainmap.predict.uncertainty import Verdict
from stainmap.ui.crown_picture import Look
from stainmap.ui.flat_pane import FlatChoice
from stainmap.ui.key_map import KeyMap
from stainmap.ui.language import Language, set_language
from stainmap.ui.main_window import MainWindow
from stainmap.ui.settings_dialog import SettingsDialog
from stainmap.ui.value_words import LIMITS, VALUES
from stainmap.words import in_english, listed, speak, speaks_english, translate, value_word
from tests.tools import translations
from tests.ui.conftest import new_window

needs_tools = pytest.mark.skipif(
    translations.tool("lupdate") is None, reason="Qt's tools for translators are not there"
)

# Entries of menus that German has too.
SAME_IN_GERMAN = frozenset({"&Plan", "Plan", "mesial", "distal", "lingual"})


@pytest.fixture(autouse=True)
def _english_afterwards(qapp: QApplication) -> Iterator[None]:
    yield
    set_language(qapp, Language.ENGLISH)


@pytest.fixture(params=translations.LANGUAGES)
def file(request: pytest.FixtureRequest) -> Path:
    return translations.FOLDER / f"stainmap_{request.param}.ts"


def test_english_is_what_stands_in_the_code() -> None:
    assert translate("settings", "Colours") == "Colours"


def test_a_lookup_is_asked_with_context_and_text() -> None:
    speak(lambda context, text: f"{context}/{text}")
    assert translate("settings", "Colours") == "settings/Colours"
    speak(None)
    assert translate("settings", "Colours") == "Colours"


@needs_tools
def test_no_text_of_the_code_is_missing_in_the_files(file: Path, tmp_path: Path) -> None:
    """The files of the translators are those that Qt's own tool makes of the code."""
    fresh = tmp_path / file.name
    shutil.copy(file, fresh)
    translations.extract(fresh)
    now = {(one.context, one.text) for one in translations.messages(fresh)}
    kept = {(one.context, one.text) for one in translations.messages(file)}
    assert now == kept, "run: python -m tests.tools.translations --write"
    assert len(now) > 50


def test_no_text_of_the_window_stands_outside_translate() -> None:
    modules = sorted((translations.ROOT / "stainmap" / "ui").glob("*.py"))
    left = {one.name: list(translations.not_in_translate(one)) for one in modules}
    assert {name: texts for name, texts in left.items() if texts} == {}


def test_no_error_is_raised_in_english_alone() -> None:
    """What the mesh reader says stays English: it knows nothing of the rest of the program."""
    rooms = ("ui", "app", "planning", "model", "files", "labbook", "practice", "predict", "optics")
    left = {
        f"{room}/{one.name}": list(translations.errors_not_in_translate(one))
        for room in rooms
        for one in sorted((translations.ROOT / "stainmap" / room).glob("*.py"))
    }
    assert {name: texts for name, texts in left.items() if texts} == {}


def test_values_of_files_are_listed_for_the_translators() -> None:
    shown: tuple[type[StrEnum], ...] = (
        MaterialKind, SpectrumOf, SectionWay, Scheme, Mark, BenchStage, Region, Conversion,
        BodyKind, Finish, Third, HueFamily, Role, Side, Severity, Towards, Half, RunStage,
        SheetStanding, UnitStage, Skill, SlipKind, Verdict, Look, FlatChoice,
    )  # fmt: skip
    missing = [one.value for kind in shown for one in kind if one.value not in VALUES]
    assert missing == []
    kept = tomllib.loads(resource("advice", "limits.toml").read_text(encoding="utf-8"))["limit"]
    limits = {one[key] for one in kept for key in ("source", "unit")} - {""}
    assert limits == set(LIMITS)
    assert {one["mark"] for one in kept} <= set(VALUES)


def test_a_value_is_said_in_the_language_and_files_keep_theirs(qapp: QApplication) -> None:
    set_language(qapp, Language.GERMAN)
    assert value_word(UnitStage.PLANNED) == "geplant"
    assert listed(["a", "b", "c"]) == "a, b und c"
    assert not speaks_english()
    with in_english():
        assert speaks_english()
        assert value_word(UnitStage.PLANNED) == "planned"
        assert Zone.CERVICAL.label == "cervical"
    assert Zone.CERVICAL.label == "Zahnhals"


@needs_tools
def test_what_is_loaded_is_made_of_the_files(file: Path, tmp_path: Path) -> None:
    fresh = tmp_path / "fresh.qm"
    translations.release(file, fresh)
    made = file.with_suffix(".qm").read_bytes()
    assert fresh.read_bytes() == made, "run: python -m tests.tools.translations --write"


def test_none_is_untranslated(file: Path) -> None:
    missing = [f"{one.context}: {one.text}" for one in translations.messages(file) if not one.words]
    assert not missing, "\n".join(missing)


def test_places_for_values_are_the_same_in_every_language(file: Path) -> None:
    def places(text: str) -> set[tuple[str, str, str | None]]:
        # German has no mark between thousands that could not be read as a decimal point.
        found = string.Formatter().parse(text)
        return {(name, (form or "").strip(","), how) for _, name, form, how in found if name}

    for one in translations.messages(file):
        assert places(one.words) == places(one.text), one.text
        keys = re.findall(r"&\w", one.text)
        assert len(re.findall(r"&\w", one.words)) == len(keys), one.text


def test_the_settings_speak_german(qtbot: QtBot, qapp: QApplication) -> None:
    set_language(qapp, Language.GERMAN)
    dialog = SettingsDialog(Settings(), ["slow"], KeyMap())
    qtbot.addWidget(dialog)
    assert dialog.windowTitle() == "Einstellungen"
    assert [dialog.pages.tabText(k) for k in range(3)] == ["Fenster", "Labor", "Tasten"]
    assert dialog.window_page.scheme.itemText(0) == "wie der Desktop"
    assert dialog.laboratory_page.volume.accessibleName() == "Volumen eines Tropfens"
    dialog.laboratory_page.take_count.click()
    assert dialog.laboratory_page.counted.text() == "Ein Tropfen hat 0.0500 mL."
    assert dialog.settings == Settings(), "values are the same in every language"
    cancel = dialog.buttons.button(QDialogButtonBox.StandardButton.Cancel)
    assert cancel.text().replace("&", "") == "Abbrechen", "Qt's own words as well"
    dialog.show()
    for page in range(3):
        dialog.pages.setCurrentIndex(page)
        qapp.processEvents()
        buttons = [one for one in dialog.findChildren(QAbstractButton) if one.isVisible()]
        narrow = [one.text() for one in buttons if one.minimumSizeHint().width() > one.width()]
        assert narrow == []
    set_language(qapp, Language.ENGLISH)
    again = SettingsDialog(Settings(), ["slow"], KeyMap())
    qtbot.addWidget(again)
    assert again.windowTitle() == "Settings"


@pytest.fixture
def german(qapp: QApplication, qtbot: QtBot, planned_case: Case, settings: QSettings) -> MainWindow:
    """Return a visible German window on the planned dome, as small as one may be."""
    set_language(qapp, Language.GERMAN)
    one = new_window(settings)
    one.resize(1024, 700)
    qtbot.addWidget(one)
    one.show()
    qtbot.waitExposed(one)
    one.session.adopt(planned_case, path=None, saved=True)
    qapp.processEvents()
    return one


def _menus(above: QWidget) -> Iterator[QMenu]:
    for action in above.actions():
        menu = action.menu()
        if isinstance(menu, QMenu):
            yield menu
            yield from _menus(menu)


def test_the_window_speaks_german(german: MainWindow) -> None:
    all_ = translations.messages(translations.FOLDER / "stainmap_de.ts")
    words = {one.words for one in all_}
    alike = {one.words for one in all_ if one.words == one.text}
    entries = [action.text() for menu in _menus(german.top.menus) for action in menu.actions()] + [
        action.text() for action in german.top.menus.actions()
    ]
    said = {text for text in entries if text}
    assert len(said) > 60
    # Sides of the crown are put together of words of their own.
    assert {text for text in said if text not in words and not text.islower()} == set()
    assert said & alike <= SAME_IN_GERMAN

    # Keys of letters are of one command in each menu.
    for menu in (german.top.menus, *_menus(german.top.menus)):
        keys = re.findall(r"&(\w)", " ".join(a.text() for a in menu.actions()))
        assert len({key.lower() for key in keys}) == len(keys), [a.text() for a in menu.actions()]

    # All menus are in sight, and nothing is wider than its place.
    assert german.width() == 1024
    bar = german.top.menus
    for action in bar.actions():
        place = bar.actionGeometry(action)
        assert place.isValid(), action.text()
        assert place.right() < bar.width(), action.text()
    cut = [
        one.text()
        for one in german.findChildren(QAbstractButton)
        if one.isVisible() and one.text() and one.sizeHint().width() > one.width() + 1
    ]
    assert cut == []
