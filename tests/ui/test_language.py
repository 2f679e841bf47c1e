"""Other languages: the texts are found in the code, translated, loaded and shown."""

from __future__ import annotations

import re
import shutil
import string
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QDialogButtonBox
from pytestqt.qtbot import QtBot

from stainmap.app.settings import Settings
from stainmap.ui.key_map import KeyMap
from stainmap.ui.language import Language, set_language
from stainmap.ui.settings_dialog import SettingsDialog
from stainmap.words import speak, translate
from tests.tools import translations

needs_tools = pytest.mark.skipif(
    translations.tool("lupdate") is None, reason="Qt's tools for translators are not there"
)


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
    def places(text: str) -> set[str | None]:
        return {name for _, name, _, _ in string.Formatter().parse(text) if name is not None}

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
    set_language(qapp, Language.ENGLISH)
    again = SettingsDialog(Settings(), ["slow"], KeyMap())
    qtbot.addWidget(again)
    assert again.windowTitle() == "Settings"
