"""Every setting does what it says, everywhere; the window of the settings works by keys."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt, QTimer
from PySide6.QtGui import QKeySequence, QPalette
from PySide6.QtWidgets import QApplication, QDialogButtonBox, QWidget
from pytestqt.qtbot import QtBot

from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.app.settings import Language, Motion, Settings, Typeface
from stainmap.app.settings_file import SettingsStore, read_settings
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.process import JarAmounts
from stainmap.paper.page_size import PageSize
from stainmap.planning.schedule import RunStage
from stainmap.ui.main_window import MainWindow
from stainmap.ui.mixing_dialog import MixingDialog
from stainmap.ui.motion import apply_motion, moves
from stainmap.ui.settings_dialog import SettingsDialog, SettingsPage
from stainmap.ui.stage_dialogs import DryingDialog, FurnaceDialog
from stainmap.ui.theme import DARK, FAMILY, LIGHT, Scheme, apply_theme, is_worn
from stainmap.units import TemperatureUnit

DEGREE = "\N{DEGREE SIGN}"


@pytest.fixture(autouse=True)
def _undressed(qapp: QApplication) -> Iterator[None]:
    """Give the next test the application as this one got it."""
    yield
    if not is_worn(qapp, Scheme.LIGHT, Typeface.OWN):
        apply_theme(qapp, Scheme.LIGHT)
    apply_motion(qapp, Motion.SYSTEM)


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("settings") / "settings.toml"


@pytest.fixture(scope="module")
def shared_window(qapp: QApplication, planned_case: Case, file: Path) -> Iterator[MainWindow]:
    """Return a window on the planned dome whose settings are kept in a file."""
    session = Session(starter_catalogue(), threaded=False)
    settings = QSettings(str(file.with_name("window.ini")), QSettings.Format.IniFormat)
    apply_theme(qapp, Scheme.LIGHT)
    one = MainWindow(session, settings, JobRunner(threaded=False), SettingsStore(file))
    one.resize(1400, 900)
    one.show()
    session.adopt(planned_case, path=None, saved=True)
    yield one
    session.adopt(planned_case, path=None, saved=True)
    one.close()


@pytest.fixture
def window(qtbot: QtBot, shared_window: MainWindow, planned_case: Case) -> Iterator[MainWindow]:
    """Return the window with the settings as they come, on the dome as it was planned."""
    qtbot.waitExposed(shared_window)
    yield shared_window
    shared_window.own_settings.change(Settings())
    if shared_window.session.case is not planned_case:
        shared_window.session.adopt(planned_case, path=None, saved=True)


def change(window: MainWindow, **values: object) -> None:
    desk = window.own_settings
    desk.change(replace(desk.settings, **values))  # type: ignore[arg-type]


def in_dialog(window: MainWindow, act: Callable[[SettingsDialog], None]) -> None:
    """Open the settings by their menu entry and do something in them."""
    seen: list[AssertionError] = []

    def meet() -> None:
        dialog = QApplication.activeModalWidget()
        try:
            assert isinstance(dialog, SettingsDialog)
            act(dialog)
        except AssertionError as error:
            seen.append(error)
        finally:
            if isinstance(dialog, SettingsDialog) and dialog.isVisible():
                dialog.reject()

    QTimer.singleShot(0, meet)
    window.own_settings.open()
    if seen:
        raise seen[0]


def accept(dialog: SettingsDialog) -> None:
    dialog.buttons.button(QDialogButtonBox.StandardButton.Ok).click()


# --- temperatures ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("degrees", "signs", "others"),
    [
        (TemperatureUnit.CELSIUS, ["93 °C", "1500 °C"], ["°F"]),
        (TemperatureUnit.FAHRENHEIT, ["200 °F", "2732 °F"], ["°C"]),
        (TemperatureUnit.BOTH, ["93 °C (200 °F)", "1500 °C (2732 °F)"], []),
    ],
)
def test_temperatures_of_the_run_and_its_pages(
    qtbot: QtBot,
    window: MainWindow,
    degrees: TemperatureUnit,
    signs: list[str],
    others: list[str],
) -> None:
    change(window, degrees=degrees)
    case = window.session.case
    assert case is not None
    peak = case.materials.programme(case.programme).peak_c
    assert round(peak) == 1500
    assert window.run._detail.degrees is degrees
    pages: list[str] = []

    def look() -> None:
        page = QApplication.activeModalWidget()
        assert isinstance(page, (DryingDialog, FurnaceDialog))
        said = " ".join(label.text() for label in page.findChildren(type(page.soft(""))))
        curve = page.curve.accessibleDescription() if isinstance(page, FurnaceDialog) else ""
        pages.append(f"{' '.join(page.table.texts)} {said} {curve}")
        qtbot.keyClick(page, Qt.Key.Key_Escape)

    for stage in (RunStage.DRY, RunStage.SINTER):
        QTimer.singleShot(0, look)
        window.run_desk.open_page(stage)
    assert len(pages) == 2
    for page, sign in zip(pages, signs, strict=True):
        assert sign in page
        assert not [other for other in others if other in page]


def test_the_run_strip_and_the_curve_are_drawn_in_the_chosen_degrees(
    qtbot: QtBot, window: MainWindow
) -> None:
    pictures = []
    for degrees in TemperatureUnit:
        change(window, degrees=degrees)
        pictures.append(window.run.grab().toImage())
    assert pictures[0] != pictures[1] != pictures[2] != pictures[0]


# --- paper -----------------------------------------------------------------------------------


def test_paper_of_sheets_that_are_shown_and_of_the_tray(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[PageSize] = []
    monkeypatch.setattr(window.printing, "show_preview", lambda page, _folder: asked.append(page))
    for page in PageSize:
        change(window, page=page)
        window.commands.sheets.trigger()
    assert asked == list(PageSize)


def test_sheets_are_written_in_the_chosen_degrees(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from pypdf import PdfReader
    from PySide6.QtGui import QDesktopServices

    monkeypatch.setattr(QDesktopServices, "openUrl", lambda _url: True)
    change(window, degrees=TemperatureUnit.FAHRENHEIT)
    window.printing.write(PageSize.A4, tmp_path)
    texts = {
        path.name: " ".join(page.extract_text() for page in PdfReader(path).pages)
        for path in tmp_path.glob("*.pdf")
    }
    assert len(texts) == 3
    for name, text in texts.items():
        assert "2732 °F" in text, name
        assert "°C" not in text, name
    assert "200 °F, 10 min" in next(text for name, text in texts.items() if "mixing" in name)


# --- the look of the window ------------------------------------------------------------------


def test_colours_switch_live_and_are_kept(
    qapp: QApplication, window: MainWindow, file: Path
) -> None:
    for scheme, tones in ((Scheme.DARK, DARK), (Scheme.LIGHT, LIGHT)):
        change(window, scheme=scheme)
        assert qapp.palette().color(QPalette.ColorRole.Window).name() == tones.panel
        assert window.palette().color(QPalette.ColorRole.Window).name() == tones.panel
        assert read_settings(file).settings.scheme is scheme
        assert window.commands._schemes[scheme].isChecked()


def test_the_menu_of_colours_is_the_same_setting(window: MainWindow, file: Path) -> None:
    window.commands._schemes[Scheme.DARK].trigger()
    assert window.own_settings.settings.scheme is Scheme.DARK
    assert read_settings(file).settings.scheme is Scheme.DARK


def test_colours_follow_the_desktop_while_they_are_the_desktops(
    qapp: QApplication, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    worn: list[Settings] = []
    monkeypatch.setattr(window.own_settings, "_wear", worn.append)
    qapp.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Dark)
    assert len(worn) == 1
    change(window, scheme=Scheme.LIGHT)
    worn.clear()
    qapp.styleHints().colorSchemeChanged.emit(Qt.ColorScheme.Dark)
    assert worn == []


def test_another_typeface_reaches_every_part_of_the_window(
    qapp: QApplication, window: MainWindow
) -> None:
    def families() -> set[str]:
        return {one.font().family() for one in window.findChildren(QWidget)}

    assert families() == {FAMILY}
    change(window, typeface=Typeface.SYSTEM)
    assert FAMILY not in families()
    sizes = {one.font().pixelSize() for one in window.findChildren(QWidget)}
    assert len(sizes - {-1}) > 3, "sizes stay what they are"
    change(window, typeface=Typeface.OWN)
    assert families() == {FAMILY}


def test_reduced_motion_turns_the_crown_at_once(qtbot: QtBot, window: MainWindow) -> None:
    from stainmap.paper.views import Side

    crown = window.crown
    change(window, motion=Motion.FULL)
    assert moves()
    assert window.isAnimated()
    crown.look_from(Side.BUCCAL)
    assert crown._turning is not None
    qtbot.waitUntil(lambda: crown._turning is None)
    change(window, motion=Motion.REDUCED)
    assert not moves()
    assert not window.isAnimated()
    before = crown._camera
    crown.look_from(Side.LINGUAL)
    assert crown._turning is None
    assert crown._camera != before


def test_less_motion_is_what_the_desktop_asks(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    from stainmap.ui import motion

    monkeypatch.setattr(motion, "system_wants_less", lambda _app: True)
    assert not apply_motion(qapp, Motion.SYSTEM)
    assert apply_motion(qapp, Motion.FULL)
    monkeypatch.setattr(motion, "system_wants_less", lambda _app: False)
    assert apply_motion(qapp, Motion.SYSTEM)


def test_size_is_told_to_qt_before_there_is_an_application(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    import os

    from stainmap.ui.start import _set_size

    monkeypatch.delenv("QT_SCALE_FACTOR", raising=False)
    _set_size(100)
    assert "QT_SCALE_FACTOR" not in os.environ
    monkeypatch.setenv("QT_SCALE_FACTOR", "1.5")
    _set_size(200)
    assert os.environ["QT_SCALE_FACTOR"] == "3"


# --- what the laboratory uses ----------------------------------------------------------------


def test_the_open_case_follows_the_volume_of_a_drop(window: MainWindow) -> None:
    session = window.session
    change(window, drop_volume_ml=0.04)
    assert session.case is not None
    assert session.case.process.jar_amounts.drops_per_ml == 25.0
    session.undo()
    assert session.case.process.amounts is None
    session.redo()
    change(window, drop_volume_ml=0.05)
    assert session.case.process.amounts is None


def test_a_case_with_its_own_drop_keeps_it_and_is_offered_the_other(
    qtbot: QtBot, window: MainWindow
) -> None:
    session = window.session
    own = JarAmounts(drops_per_ml=30.0)
    session.edit("own drop", lambda case: replace(case, process=replace(case.process, amounts=own)))
    change(window, drop_volume_ml=0.04)
    assert session.case is not None
    assert session.case.process.amounts == own
    assert "keeps" in window.status.message.text()

    def take() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, MixingDialog)
        dialog.take_usual.click()
        dialog.accept()

    qtbot.waitUntil(lambda: session.is_up_to_date)
    QTimer.singleShot(0, take)
    window.run_desk.open_mixing()
    assert session.case.process.jar_amounts.drops_per_ml == 25.0


def test_new_cases_begin_with_drop_and_programme(window: MainWindow) -> None:
    change(window, drop_volume_ml=0.04, programme="fast")
    flow = window.flow
    assert flow.settings.programme_of(window.session.materials) == "fast"
    assert flow.settings.amounts == JarAmounts(drops_per_ml=25.0)


# --- keys ------------------------------------------------------------------------------------


def test_a_key_is_changed_a_clash_is_said_and_all_come_back(
    qtbot: QtBot, window: MainWindow, file: Path
) -> None:
    def act(dialog: SettingsDialog) -> None:
        dialog.open_at(SettingsPage.KEYS)
        page = dialog.keys_page
        page.choose("plan/mix")
        page.edit.setFocus()
        page.edit.setKeySequence(QKeySequence("Ctrl+S"))
        page.take.click()
        assert "File > Save" in page.said.text()
        assert page.keys == {}
        page.edit.setKeySequence(QKeySequence("O"))
        page.take.click()
        assert "occlusal" in page.said.text()
        page.edit.setKeySequence(QKeySequence("Alt+F"))
        page.take.click()
        assert "menu File" in page.said.text()
        page.edit.setKeySequence(QKeySequence("Ctrl+Alt+M"))
        page.take.click()
        assert page.keys == {"plan/mix": "Ctrl+Alt+M"}
        page.choose("tools/brush")
        page.free.click()
        assert page.keys == {"plan/mix": "Ctrl+Alt+M", "tools/brush": ""}
        page.reset.click()
        assert page.keys == {"plan/mix": "Ctrl+Alt+M"}
        page.choose("file/save")
        page.edit.setKeySequence(QKeySequence("Ctrl+Alt+S"))
        page.take.click()
        accept(dialog)

    in_dialog(window, act)
    commands = {one.name: one for one in window.own_settings.keys.commands()}
    assert commands["plan/mix"].key == "Ctrl+Alt+M"
    assert window.commands.save.shortcut() == QKeySequence("Ctrl+Alt+S")
    assert "Ctrl+Alt+S" in window.commands.save.toolTip()
    assert "Ctrl+S" not in window.commands.save.toolTip()
    kept = read_settings(file).settings.keys
    assert kept == {"plan/mix": "Ctrl+Alt+M", "file/save": "Ctrl+Alt+S"}

    def all_back(dialog: SettingsDialog) -> None:
        dialog.keys_page.reset_all.click()
        accept(dialog)

    in_dialog(window, all_back)
    assert window.commands.save.shortcut() == QKeySequence("Ctrl+S")
    assert read_settings(file).settings.keys == {}


def test_a_changed_key_works_and_the_old_one_does_not(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    bar = window.plan.brush
    from stainmap.app.brush import Tool

    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.crown.setFocus()
    change(window, keys={"tools/fill": "Y"})
    qtbot.keyClick(window.crown, Qt.Key.Key_F)
    # The key of a button shows it pressed for a tenth of a second before it acts.
    qtbot.wait(150)
    assert not bar.tools[Tool.FILL].isChecked()
    qtbot.keyClick(window.crown, Qt.Key.Key_Y)
    qtbot.waitUntil(bar.tools[Tool.FILL].isChecked)
    assert "(Y)" in bar.tools[Tool.FILL].toolTip()


def test_no_two_commands_have_a_key_and_none_takes_one_of_the_views(window: MainWindow) -> None:
    keys = window.own_settings.keys
    given = [one for one in keys.commands() if one.key]
    assert len({one.key for one in given}) == len(given)
    assert len(given) > 30
    for one in given:
        assert keys.why_not(one.name, one.key, {}) == ""


def test_keys_of_views_are_known_as_taken() -> None:
    from stainmap.ui.crown_view import _ARROWS, _SIDE_KEYS
    from stainmap.ui.flat_pane import _KEYS
    from stainmap.ui.key_map import OF_THE_VIEWS, portable

    for key in (*_SIDE_KEYS, *_KEYS, *_ARROWS):
        assert portable(QKeySequence(key)) in OF_THE_VIEWS


def test_a_file_with_a_clash_gives_the_key_once(qtbot: QtBot, window: MainWindow) -> None:
    change(window, keys={"plan/mix": "Ctrl+S", "of an older version": "Ctrl+Alt+M"})
    given = [one.key for one in window.own_settings.keys.commands() if one.key]
    assert len(set(given)) == len(given)
    assert window.own_settings.settings.keys["of an older version"] == "Ctrl+Alt+M"


# --- the window of the settings ----------------------------------------------------------------


def test_cancel_takes_back_what_was_tried(qapp: QApplication, window: MainWindow) -> None:
    def act(dialog: SettingsDialog) -> None:
        box = dialog.window_page.scheme
        box.setCurrentIndex(box.findData(Scheme.DARK))
        box.activated.emit(box.currentIndex())
        assert qapp.palette().color(QPalette.ColorRole.Window).name() == DARK.panel
        dialog.reject()

    change(window, scheme=Scheme.LIGHT)
    in_dialog(window, act)
    assert qapp.palette().color(QPalette.ColorRole.Window).name() == LIGHT.panel
    assert window.own_settings.settings.scheme is Scheme.LIGHT


def test_everything_set_in_the_window_is_kept(window: MainWindow, file: Path) -> None:
    wanted = Settings(
        degrees=TemperatureUnit.CELSIUS,
        page=PageSize.LETTER,
        scheme=Scheme.DARK,
        typeface=Typeface.SYSTEM,
        motion=Motion.REDUCED,
        size_percent=125,
        drop_volume_ml=0.04,
        programme="fast",
        language=Language.GERMAN,
    )

    def act(dialog: SettingsDialog) -> None:
        pages = dialog.window_page, dialog.laboratory_page
        for box, value in (
            (pages[0].scheme, wanted.scheme),
            (pages[0].typeface, wanted.typeface),
            (pages[0].percent, wanted.size_percent),
            (pages[0].motion, wanted.motion),
            (pages[0].language, wanted.language),
            (pages[1].degrees, wanted.degrees),
            (pages[1].page, wanted.page),
            (pages[1].programme, wanted.programme),
        ):
            index = box.findData(value)
            assert index >= 0
            box.setCurrentIndex(index)
        pages[1].drops.setValue(25)
        pages[1].take_count.click()
        accept(dialog)

    in_dialog(window, act)
    assert window.own_settings.settings == wanted
    assert read_settings(file).settings == wanted
    assert "language" in window.status.message.text()


def test_another_size_is_told(window: MainWindow) -> None:
    change(window, size_percent=125)
    assert "125" in window.status.message.text()


def test_a_page_goes_back_to_how_it_came(window: MainWindow) -> None:
    change(window, degrees=TemperatureUnit.CELSIUS, size_percent=150)

    def act(dialog: SettingsDialog) -> None:
        dialog.open_at(SettingsPage.LABORATORY)
        dialog.buttons.button(QDialogButtonBox.StandardButton.RestoreDefaults).click()
        accept(dialog)

    in_dialog(window, act)
    assert window.own_settings.settings == replace(Settings(), size_percent=150)


def test_a_count_that_cannot_be_is_said(window: MainWindow) -> None:
    def act(dialog: SettingsDialog) -> None:
        page = dialog.laboratory_page
        page.drops.setValue(1)
        page.take_count.click()
        assert "out of range" in page.counted.text()
        assert page.volume.value() == 0.05

    in_dialog(window, act)


def test_a_damaged_file_is_said_in_the_window(
    qtbot: QtBot, settings: QSettings, tmp_path: Path, planned_case: Case
) -> None:
    path = tmp_path / "settings.toml"
    path.write_text("= broken", encoding="utf-8")
    session = Session(starter_catalogue(), threaded=False)
    window = MainWindow(session, settings, JobRunner(threaded=False), SettingsStore(path))
    qtbot.addWidget(window)
    assert "kept as" in window.status.message.text()
