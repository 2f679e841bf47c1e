"""The pages of the manual: what they name exists, and the way through them works."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt, QUrl
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QLineEdit, QMenu
from pytestqt.qtbot import QtBot

from stainmap.paths import resource
from stainmap.ui.crown_view import _SIDE_KEYS
from stainmap.ui.flat_pane import _KEYS
from stainmap.ui.look_bar import LOOKS
from stainmap.ui.main_window import MainWindow
from stainmap.ui.manual_places import _DIALOGS, place_for
from stainmap.ui.manual_search import CONTENTS, ManualIndex, anchor_of, blocks_of
from stainmap.ui.manual_window import ManualWindow

FOLDER = resource("manual")
PAGES = sorted(FOLDER.glob("*.md"))
# Those two are about numbers and files, not about the window; one is made by a program.
OURS = [page for page in PAGES if page.name not in {"evidence.md", "data.md"}]
MENUS = "File|Edit|Crown|Plan|View|Practice|Help"


def text_of(page: Path) -> str:
    return page.read_text(encoding="utf-8")


def plain(text: str) -> str:
    return text.replace("&", "").rstrip(".")


def entries(menu: QMenu, path: str) -> Iterator[tuple[str, QAction]]:
    """Yield all entries of a menu by their way there, as "View > Look from > occlusal"."""
    for action in menu.actions():
        if action.isSeparator():
            continue
        name = f"{path} > {plain(action.text())}"
        below = action.menu()
        if isinstance(below, QMenu):
            yield from entries(below, name)
        else:
            yield name, action


@pytest.fixture
def commands(window: MainWindow) -> dict[str, QAction]:
    found: dict[str, QAction] = {}
    for top in window.top.menus.actions():
        below = top.menu()
        assert isinstance(below, QMenu)
        found |= dict(entries(below, plain(top.text())))
    return found


@pytest.fixture
def manual(qtbot: QtBot) -> ManualWindow:
    one = ManualWindow(FOLDER / CONTENTS)
    qtbot.addWidget(one)
    one.resize(1200, 800)
    one.show()
    qtbot.waitExposed(one)
    one.activateWindow()
    qtbot.waitUntil(one.isActiveWindow)
    return one


def rows(heading: str) -> list[list[str]]:
    """Return what and key of the rows below a heading of the page of keys."""
    part = text_of(FOLDER / "keys.md").split(f"## {heading}\n")[1].split("\n## ")[0]
    lines = [line for line in part.splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in line.strip("|").split("|")][::-1] for line in lines[2:]]


def top_line(manual: ManualWindow, y: int = 24) -> str:
    place = QPoint(manual.text.viewport().width() // 2, y)
    return manual.text.cursorForPosition(place).block().text()


# --- what the pages name ---------------------------------------------------------------------


def test_every_menu_entry_named_exists_and_every_one_is_named(
    commands: dict[str, QAction],
) -> None:
    named: set[str] = set()
    for page in OURS:
        text = text_of(page)
        found = re.findall(rf"\*\*((?:{MENUS}) > [^*]+)\*\*", text)
        assert len(found) == len(re.findall(rf"\b(?:{MENUS}) > ", text)), page.name
        named |= set(found)
    assert named - set(commands) == set(), "the menus have no such entry"
    unnamed = set(commands) - named
    assert unnamed == set(), "say in resources/manual what it does"


def test_keys_of_commands_are_those_of_the_actions(commands: dict[str, QAction]) -> None:
    portable = QKeySequence.SequenceFormat.PortableText
    told = {name.strip("*"): key for name, key in rows("Commands")}
    assert told.pop("looks, by their numbers on the bar") == "Alt+1 to Alt+9"
    real = {name: action.shortcut().toString(portable) for name, action in commands.items()}
    for entry in LOOKS:
        assert real.pop(f"View > {entry.name}") == f"Alt+{entry.number}"
    real = {name: key for name, key in real.items() if key}
    assert told == real, "the table in resources/manual/keys.md is to be the keys there are"


def test_keys_of_tools_are_those_of_the_buttons(window: MainWindow) -> None:
    portable = QKeySequence.SequenceFormat.PortableText
    bar = window.plan.brush
    buttons = [*bar.tools.values(), *bar.commands.values()]
    real = {one.accessibleName(): one.shortcut().toString(portable) for one in buttons}
    assert dict(rows("Tools")) == real


def test_letters_of_sides_are_those_of_the_views() -> None:
    told = {key: what for what, key in rows("On the crown") if what.startswith("look ")}
    assert set(told) == {key.name.removeprefix("Key_") for key in _SIDE_KEYS}
    for key, side in _SIDE_KEYS.items():
        assert str(side) in told[key.name.removeprefix("Key_")]
    flat = {what: key for what, key in rows("On the flat views") if len(key) == 1}
    assert flat == {choice.value: key.name.removeprefix("Key_") for key, choice in _KEYS.items()}


def test_words_in_italics_stand_in_the_program() -> None:
    code = "\n".join(text_of(path) for path in Path("stainmap").rglob("*.py"))
    for page in OURS:
        text = re.sub(r"\*\*[^*]+\*\*", "", text_of(page).replace("\\*", ""))
        for words in re.findall(r"\*([^*\n]+)\*", text):
            assert words in code, f"{page.name}: {words}"


# --- pages and the links between them --------------------------------------------------------


def test_links_lead_somewhere_and_no_picture_is_missing() -> None:
    anchors = {
        page.name: {anchor_of(h) for h in re.findall(r"^#+ (.+)$", text_of(page), re.MULTILINE)}
        for page in PAGES
    }
    count = 0
    for page in PAGES:
        for mark, target in re.findall(r"(!?)\[[^\]]+\]\(([^)]+)\)", text_of(page)):
            name, _, anchor = target.partition("#")
            if mark:
                assert (FOLDER / name).is_file(), f"{page.name}: {target}"
                continue
            count += 1
            assert (name or page.name) in anchors, f"{page.name}: {target}"
            assert not anchor or anchor in anchors[name or page.name], f"{page.name}: {target}"
    assert count > 20


def test_the_contents_list_every_page() -> None:
    listed = set(re.findall(r"\]\((\w+\.md)\)", text_of(FOLDER / CONTENTS)))
    assert listed == {page.name for page in PAGES} - {CONTENTS}
    assert [page.name for page in ManualIndex(FOLDER).pages()][:2] == [CONTENTS, "first_plan.md"]


def test_every_part_of_the_window_has_its_page(window: MainWindow) -> None:
    parts = (
        window.plan.table,
        window.plan.unit.block,
        window.plan.brush.radius.slider,
        window.crown,
        window.flat_pane,
        window.looks.flat,
        window.outcome.outcome.change,
        window.outcome.advice,
        window.run,
    )
    assert place_for(None, window) == place_for(window.top, window) == CONTENTS
    places = [place_for(part, window) for part in parts]
    assert CONTENTS not in places
    for place in places:
        assert exists(place), place


def exists(place: str) -> bool:
    name, _, anchor = place.partition("#")
    found = re.findall(r"^#+ (.+)$", text_of(FOLDER / name), re.MULTILINE)
    return not anchor or anchor in {anchor_of(heading) for heading in found}


def test_every_dialog_has_its_page() -> None:
    """Where F1 leads from each; one that is used for many things is told by whoever opens it."""
    code = "\n".join(text_of(path) for path in Path("stainmap/ui").glob("*.py"))
    kinds = set(re.findall(r"^class (\w+)\((?:QDialog|FormDialog)\)", code, re.MULTILINE))
    assert len(kinds) > 25
    assert kinds - set(_DIALOGS) == {"FormDialog", "ToldDialog"}
    for name in set(_DIALOGS) - kinds:
        assert re.search(rf"^class {name}\(QWidget\)", code, re.MULTILINE), name
    said = re.findall(r'place="([^"]+)"', code)
    assert said
    for place in (*_DIALOGS.values(), *said):
        assert exists(place), place


# --- the window ------------------------------------------------------------------------------


def test_f1_opens_the_page_of_what_has_the_keyboard(qtbot: QtBot, window: MainWindow) -> None:
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.run.setFocus()
    qtbot.waitUntil(window.run.hasFocus)
    qtbot.keyClick(window.run, Qt.Key.Key_F1)
    (manual,) = window.findChildren(ManualWindow)
    qtbot.waitExposed(manual)
    assert manual.windowTitle() == "The plan"
    qtbot.waitUntil(lambda: manual.text.verticalScrollBar().value() > 0)
    qtbot.mouseClick(manual.bar.keys, Qt.MouseButton.LeftButton)
    assert manual.windowTitle() == "Keys and mouse"
    manual.close()


def test_f1_opens_the_page_of_a_window_that_stands_beside(qtbot: QtBot, window: MainWindow) -> None:
    desk = window.run_desk
    for opens, opened, title in (
        (window.materials.open, lambda: window.materials.view, "Materials"),
        (desk.open_tray, lambda: desk.tray.dialog, "Bridge and tray"),
    ):
        opens()
        beside = opened()
        assert beside is not None
        qtbot.waitExposed(beside)
        qtbot.waitUntil(
            lambda beside=beside: bool(beside.activateWindow() or beside.isActiveWindow())
        )
        qtbot.keyClick(beside, Qt.Key.Key_F1)
        (manual,) = window.findChildren(ManualWindow)
        qtbot.waitExposed(manual)
        assert manual.windowTitle() == title
        manual.close()
        beside.close()


def test_links_are_followed_and_gone_back_from(qtbot: QtBot, manual: ManualWindow) -> None:
    assert not manual.bar.back.isEnabled()
    assert not manual.bar.forward.isEnabled()
    manual.text.anchorClicked.emit(QUrl("plan.md#locks"))
    assert manual.windowTitle() == "The plan"
    assert top_line(manual) == "Locks"
    place = manual.text.verticalScrollBar().value()
    manual.text.anchorClicked.emit(QUrl("#advice"))
    assert manual.windowTitle() == "The plan"
    assert manual.text.verticalScrollBar().value() > place
    qtbot.keyClick(manual.text, Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert manual.text.verticalScrollBar().value() == place
    qtbot.mouseClick(manual.bar.back, Qt.MouseButton.LeftButton)
    assert manual.windowTitle() == "Manual"
    assert not manual.bar.back.isEnabled()
    qtbot.mouseClick(manual.bar.forward, Qt.MouseButton.LeftButton)
    assert manual.windowTitle() == "The plan"
    assert manual.text.verticalScrollBar().value() == place
    qtbot.mouseClick(manual.bar.contents, Qt.MouseButton.LeftButton)
    assert manual.windowTitle() == "Manual"
    assert not manual.bar.forward.isEnabled()


def test_a_click_on_a_link_turns_the_page(qtbot: QtBot, manual: ManualWindow) -> None:
    block = next(b for b in blocks_of(manual.text.document()) if b.text().startswith("Glossary"))
    rect = manual.text.document().documentLayout().blockBoundingRect(block)
    cursor = manual.text.textCursor()
    cursor.setPosition(block.position() + 3)
    at = manual.text.cursorRect(cursor).center()
    assert rect.isValid()
    qtbot.mouseClick(manual.text.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert manual.windowTitle() == "Glossary"


def test_search_lists_lines_of_all_pages_and_return_jumps(
    qtbot: QtBot, manual: ManualWindow
) -> None:
    qtbot.keyClick(manual.text, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(manual.bar.words.hasFocus)
    qtbot.keyClicks(manual.bar.words, "LOCKED streaks")
    assert manual.hits.isVisible()
    assert not manual.contents.isVisible()
    hits = [manual.hits.item(at).text() for at in range(manual.hits.count())]
    assert len(hits) == 1
    assert hits[0].startswith("The plan\n")
    assert "Locked coats" in hits[0]
    assert manual.bar.count.text() == "1 line"
    qtbot.keyClick(manual.bar.words, Qt.Key.Key_Return)
    assert manual.windowTitle() == "The plan"
    cursor = manual.text.textCursor()
    assert cursor.selectedText() == "Locked"
    assert cursor.block().text().startswith("L locks the coats")
    assert manual.text.viewport().rect().contains(manual.text.cursorRect().center())


def test_search_goes_down_into_the_list_and_esc_leaves_it(
    qtbot: QtBot, manual: ManualWindow
) -> None:
    words: QLineEdit = manual.bar.words
    words.setFocus()
    qtbot.keyClicks(words, "connector")
    assert manual.hits.count() > 5
    assert manual.hits.item(0).text().split("\n")[0] == "Cautions"
    assert "Walls and connectors" in manual.hits.item(0).text()
    qtbot.keyClick(words, Qt.Key.Key_Down)
    qtbot.waitUntil(manual.hits.hasFocus)
    qtbot.keyClick(manual.hits, Qt.Key.Key_Down)
    qtbot.keyClick(manual.hits, Qt.Key.Key_Return)
    chosen = manual.hits.currentItem().text().split("\n")[0]
    assert manual.windowTitle() == chosen
    qtbot.keyClick(manual.hits, Qt.Key.Key_Escape)
    assert manual.isVisible()
    assert words.text() == ""
    assert manual.contents.isVisible()
    qtbot.keyClicks(words, "xylophone")
    assert manual.hits.count() == 0
    assert manual.bar.count.text() == "nothing found"
    qtbot.keyClick(words, Qt.Key.Key_Return)
    assert manual.windowTitle() == chosen
    manual.resize(720, 600)
    qtbot.waitUntil(lambda: manual.width() == 720)
    assert manual.hits.isVisible()
    qtbot.keyClick(words, Qt.Key.Key_Escape)
    assert not manual.contents.isVisible()
    qtbot.keyClick(manual.text, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not manual.isVisible())


def test_a_row_of_a_table_is_found_as_one_line() -> None:
    (line, *_) = ManualIndex(FOLDER).find("shrink the chosen area shift+g")
    assert line.title in {"Zones and accents", "Keys and mouse"}
    found = ManualIndex(FOLDER).find("Shrink Shift+G")
    assert {one.title for one in found} == {"Zones and accents", "Keys and mouse"}
    assert ManualIndex(FOLDER).find("   ") == ()
