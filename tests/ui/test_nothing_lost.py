"""Saving, recovering, leaving and bad files in the window: a sentence, a way on, nothing lost."""

from __future__ import annotations

import zipfile
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, QSettings, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QMenu, QMessageBox
from pytestqt.qtbot import QtBot

from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.files.case_file import read_case, write_case
from stainmap.files.case_lock import CaseLock
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.journal import Journal
from stainmap.files.recovery import Recovered, abandoned
from stainmap.model.case import Case
from stainmap.ui.ending import Ending, journal_in
from stainmap.ui.main_window import MainWindow
from stainmap.ui.poster import Poster
from stainmap.ui.recovery_desk import RecoveryDialog
from tests.ui.conftest import new_window

LEFT = Qt.MouseButton.LeftButton
BUTTON = QMessageBox.StandardButton


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL what is the same with it."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


def note(window: MainWindow, text: str) -> None:
    window.session.edit("note", lambda case: replace(case, notes=text))


def card(window: MainWindow) -> str:
    """Return what stands on the message card."""
    message = window.flow.message
    if message.isHidden():
        return ""
    return f"{message.accessibleName()}: {message.accessibleDescription()}"


# --- saving --------------------------------------------------------------------------------


def test_a_place_that_has_gone_is_said_and_another_is_offered(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *a: asked.append(a[2]) or BUTTON.Save)
    other = tmp_path / "elsewhere.stainmap"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(other), ""))
    note(window, "mine")
    with monkeypatch.context() as patch:
        patch.setattr(QMessageBox, "warning", lambda *_: BUTTON.Cancel)
        assert not window.saving.save_to(tmp_path / "gone" / "crown.stainmap")
    assert window.session.is_modified, "who says no keeps the work"
    window.saving.save_to(tmp_path / "gone" / "crown.stainmap")
    assert "The folder does not exist." in asked[0]
    assert asked[0].endswith("Save it under another name now?")
    assert read_case(other).notes == "mine"
    assert not window.session.is_modified


@pytest.fixture
def busy(
    qtbot: QtBot, planned_case: Case, settings: QSettings, tmp_path: Path
) -> Iterator[MainWindow]:
    """Return a window whose session works in threads and keeps a journal."""
    poster = Poster()
    session = Session(starter_catalogue(), post=poster, journal=Journal(tmp_path / "kept"))
    one = MainWindow(session, settings, JobRunner(post=poster))
    qtbot.addWidget(one, before_close_func=lambda _: one.end_unasked())
    one.show()
    qtbot.waitExposed(one)
    session.adopt(planned_case, path=None, saved=True)
    yield one
    one.end_unasked()


def test_leaving_waits_until_the_file_is_written(
    busy: MainWindow, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "crown.stainmap"
    monkeypatch.setattr(QMessageBox, "question", lambda *_: BUTTON.Save)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    note(busy, "last words")
    assert busy.saving.may_leave()
    assert read_case(path).notes == "last words"
    # A save that is asked for while another is under way comes after it.
    note(busy, "one")
    busy.saving.save()
    note(busy, "two")
    busy.saving.save()
    busy.saving.wait()
    qtbot.waitUntil(lambda: not busy.session.is_modified, timeout=10000)
    assert read_case(path).notes == "two"


def test_closing_unasked_keeps_what_was_not_saved(busy: MainWindow, tmp_path: Path) -> None:
    note(busy, "the lights went out")
    busy.end_unasked()
    (left,) = abandoned(tmp_path / "kept")
    assert left.read().notes == "the lights went out"


def test_closing_and_discarding_keeps_nothing(
    busy: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QMessageBox, "question", lambda *_: BUTTON.Discard)
    note(busy, "not worth keeping")
    busy.close()
    assert abandoned(tmp_path / "kept") == ()


class Manager:
    """Stands for the desktop's session manager."""

    def __init__(self, *, asks: bool) -> None:
        self._asks, self.cancelled, self.released = asks, False, False

    def allowsInteraction(self) -> bool:
        return self._asks

    def cancel(self) -> None:
        self.cancelled = True

    def release(self) -> None:
        self.released = True


def test_the_end_of_the_desktop_session_asks_where_it_may(
    busy: MainWindow, qapp: QApplication, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[object] = []
    answers: list[QMessageBox.StandardButton] = []
    monkeypatch.setattr(QMessageBox, "question", lambda *a: asked.append(a) or answers[-1])
    ending = Ending(qapp, busy.session, busy.saving, busy.end_unasked, busy)
    ending.commit(Manager(asks=True))  # type: ignore[arg-type]
    assert asked == [], "nothing was changed"
    note(busy, "unsaved")
    for asks, answer in ((True, BUTTON.Cancel), (True, BUTTON.Discard), (False, BUTTON.Cancel)):
        asked.clear()
        answers.append(answer)
        manager = Manager(asks=asks)
        ending.commit(manager)  # type: ignore[arg-type]
        assert bool(asked) == asks
        assert manager.cancelled == (asks and answer == BUTTON.Cancel)
        assert manager.released == asks
        # Whatever was answered, the desktop may still end it all at once.
        assert list((tmp_path / "kept").glob("*/state-*"))
    qapp.commitDataRequest.disconnect(ending.commit)


# --- recovering ----------------------------------------------------------------------------


def leave_behind(folder: Path, case: Case, *notes: str) -> tuple[Recovered, ...]:
    for text in notes:
        journal = Journal(folder)
        journal.note(replace(case, notes=text))
        journal.close(keep=True)
    return abandoned(folder)


def test_what_was_left_behind_is_chosen_opened_or_thrown_away(
    window: MainWindow, planned_case: Case, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = leave_behind(tmp_path / "kept", planned_case, "older", "newer")
    lines: list[str] = []

    def answer(dialog: RecoveryDialog) -> int:
        lines.extend(dialog.list.item(row).text() for row in range(dialog.list.count()))
        dialog.list.setCurrentRow(1)
        QTest.mouseClick(dialog.throw_away, LEFT)
        assert dialog.list.count() == 1
        return int(RecoveryDialog.DialogCode.Accepted)

    before = window.session.case
    monkeypatch.setattr(RecoveryDialog, "exec", lambda _: 0)
    window.recovery.offer(found)
    assert window.session.case is before
    assert len(abandoned(tmp_path / "kept")) == 2, "what is put off is offered again"
    monkeypatch.setattr(RecoveryDialog, "exec", answer)
    window.recovery.offer(found)
    assert lines == ["T-0001, dome.stl, never saved"] * 2
    assert window.session.case is not None
    assert window.session.case.notes == "newer"
    assert window.isWindowModified()
    assert [one.revision for one in abandoned(tmp_path / "kept")] == [found[0].revision]


# --- read-only, recent files ---------------------------------------------------------------


def test_a_case_open_in_another_window_is_read_only_with_a_sentence(
    window: MainWindow, planned_case: Case, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "crown.stainmap"
    write_case(planned_case, path)
    theirs = CaseLock.take(path)
    assert theirs is not None
    window.open_file(path)
    assert "read-only" in window.top.state.text()
    assert card(window).startswith("Read-only: Somebody else has this case open: ")
    assert "since" in card(window)
    assert card(window).endswith("can only be saved under another name.")
    note(window, "mine")
    asked: list[str] = []
    other = tmp_path / "mine.stainmap"
    monkeypatch.setattr(QMessageBox, "warning", lambda *a: asked.append(a[2]) or BUTTON.Save)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(other), ""))
    window.saving.save()
    assert "Somebody else has this case open" in asked[0]
    assert read_case(other).notes == "mine"
    assert read_case(path).notes == planned_case.notes
    assert "read-only" not in window.top.state.text()
    theirs.release()


def recent_menu(window: MainWindow) -> QMenu:
    file_menu = window.top.menus.actions()[0].menu()
    assert isinstance(file_menu, QMenu)
    (menu,) = [one.menu() for one in file_menu.actions() if "recent" in one.text()]
    assert isinstance(menu, QMenu)
    menu.aboutToShow.emit()
    return menu


def test_recent_files_outlive_the_window_and_open_again(
    window: MainWindow, planned_case: Case, settings: QSettings, tmp_path: Path, qtbot: QtBot
) -> None:
    assert [one.text() for one in recent_menu(window).actions()] == ["Nothing has been opened yet"]
    for name in ("a", "b & c", "a"):
        window.saving.save_to(tmp_path / f"{name}.stainmap")
    window.open_file(tmp_path / "not there.stainmap")
    texts = [one.text() for one in recent_menu(window).actions() if one.text()]
    assert texts == ["&1  a.stainmap", "&2  b && c.stainmap", "&Forget these"]
    second = new_window(settings)
    qtbot.addWidget(second)
    recent_menu(second).actions()[1].trigger()
    assert second.session.path == tmp_path / "b & c.stainmap"
    recent_menu(second).actions()[-1].trigger()
    assert second.recent.paths == []
    second.session.adopt(planned_case, path=None, saved=True)


# --- what is dropped on the window ---------------------------------------------------------


def drop(window: MainWindow, qtbot: QtBot, *urls: QUrl) -> None:
    data = QMimeData()
    data.setUrls(list(urls))
    event = QDropEvent(
        QPointF(200, 200), Qt.DropAction.CopyAction, data, LEFT, Qt.KeyboardModifier.NoModifier
    )
    window.dropEvent(event)
    assert event.isAccepted()
    qtbot.wait(20)


def png(path: Path) -> None:
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(64))


def some_zip(path: Path) -> None:
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("readme.txt", "hello")


DROPPED: dict[str, Callable[[Path], object]] = {
    "picture.png": png,
    "letter.pdf": lambda path: path.write_bytes(b"%PDF-1.4 nothing"),
    "words.txt": lambda path: path.write_text("no mesh"),
    "archive.zip": some_zip,
    "archive.stainmap": some_zip,
    "empty.stl": lambda path: path.write_bytes(b""),
    "tray.staintray": lambda path: path.write_text("{}"),
    "table.csv": lambda path: path.write_text("a,b\n1,2\n"),
    "program": lambda path: path.write_bytes(bytes(range(256)) * 20),
    "a folder.stl": lambda path: path.mkdir(),
    "a folder": lambda path: path.mkdir(),
    "no ending": lambda path: path.write_text("solid"),
}


def test_every_kind_of_file_that_is_dropped_gets_a_sentence(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    before = window.session.case
    for name in (*DROPPED, "is not there.ply"):
        path = tmp_path / name
        if name in DROPPED:
            DROPPED[name](path)
        drop(window, qtbot, QUrl.fromLocalFile(str(path)))
        problem = window.session.problem
        assert isinstance(problem, StainmapError), name
        assert "Please report" not in str(problem)
        assert problem.advice, f"no way on: {problem}"
        assert name.casefold() in card(window).casefold()
        assert window.session.case is before
        QTest.mouseClick(window.flow.message.buttons[0], LEFT)
        assert card(window) == ""


def test_what_cannot_be_opened_or_kept_at_all_is_said_too(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    (tmp_path / "recovery").write_text("in the way")
    journal, problem = journal_in(tmp_path / "recovery")
    assert journal is None
    assert problem is not None
    window.recovery.say_nothing_is_kept(problem)
    assert card(window).startswith("Unsaved work cannot be kept: ")
    assert "not a folder" in card(window)
    urls = [QUrl.fromLocalFile(str(tmp_path / name)) for name in ("a.stl", "b.stl")]
    drop(window, qtbot, *urls)
    assert card(window).startswith("One file at a time: Several files were dropped.")
    drop(window, qtbot, QUrl("https://example.org/a.stl"))
    assert card(window).startswith("Not a file of this computer: ")


# --- poor machines -------------------------------------------------------------------------


def test_without_opengl_the_crown_is_drawn_all_the_same(window: MainWindow, qtbot: QtBot) -> None:
    """The canvas without a driver shows the crown, not the surround (STAINMAP_NO_GL, see above)."""
    qtbot.waitUntil(lambda: window.session.is_up_to_date, timeout=5000)
    qtbot.wait(300)
    picture = window.crown.grab().toImage()
    middle = picture.pixelColor(picture.width() // 2, picture.height() // 2)
    corner = picture.pixelColor(2, picture.height() - 3)
    assert middle != corner


def test_a_tiny_screen_still_shows_all_that_is_needed(window: MainWindow, qtbot: QtBot) -> None:
    """The least size of the window fits a screen of 1024 x 700 with its title bar."""
    window.resize(1024, 660)
    qtbot.wait(50)
    assert (window.width(), window.height()) == (1024, 660)
    assert window.crown.width() > 400
    assert window.crown.height() > 250
