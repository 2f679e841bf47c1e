"""The tray: cases laid on it, how far they are, opened from it, mixed for and printed together."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QDesktopServices
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog, QFileDialog, QLabel, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.app.tray_bench import with_stage
from stainmap.files.case_file import read_case, write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.bench_record import BenchRecord, BenchStage
from stainmap.model.case import Case
from stainmap.model.intake import Intake
from stainmap.model.plan import StainPlan
from stainmap.planning.plan_hash import plan_hash
from stainmap.planning.unit_state import UnitStage, UnitState, unit_state
from stainmap.ui.bench_dialog import NOTHING, BenchDialog
from stainmap.ui.intake_dialog import IntakeDialog
from stainmap.ui.main_window import MainWindow
from stainmap.ui.plate import ProgressCard
from stainmap.ui.poster import Poster
from stainmap.ui.sheet_preview import SheetPreview
from stainmap.ui.tray_dialog import TrayDialog
from stainmap.ui.tray_units import TrayUnits, UnitRow

NINE = datetime(2026, 5, 4, 9, 30, tzinfo=UTC)


@pytest.fixture
def saved(planned_case: Case, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """Return three cases in files; they are what is chosen when cases are to be added."""
    paths = []
    known = replace(planned_case, intake=Intake(stump_known=True))
    for number in range(3):
        path = tmp_path / f"case_{number}.stainmap"
        write_case(replace(known, code=f"T-{number}"), path)
        paths.append(path)
    monkeypatch.setattr(
        QFileDialog, "getOpenFileNames", lambda *_: ([str(path) for path in paths], "")
    )
    return paths


def opened_tray(window: MainWindow) -> TrayDialog:
    window.run_desk.open_tray()
    dialog = window.run_desk.tray.dialog
    assert dialog is not None
    assert dialog.isVisible()
    return dialog


def column(dialog: TrayDialog, name: str) -> list[str]:
    place = ("state", "case", "units", "block", "programme", "sheet", "file").index(name)
    return [row.cells[place] for row in dialog.units.rows]


def choose(units: TrayUnits, *rows: int) -> None:
    units.clearSelection()
    for row in rows:
        item = units.topLevelItem(row)
        assert item is not None
        item.setSelected(True)


def answer_with(monkeypatch: pytest.MonkeyPatch, stage: str, at: datetime | None = None) -> None:
    """Let the dialog of states be answered in this way."""

    def answered(dialog: QDialog) -> int:
        assert isinstance(dialog, BenchDialog)
        dialog.stage.setCurrentText(stage)
        if at is not None:
            dialog.when.setDateTime(at)
        return int(QDialog.DialogCode.Accepted)

    monkeypatch.setattr(QDialog, "exec", answered)


def test_a_tray_is_laid_taken_off_put_back_kept_and_opened_again(
    qtbot: QtBot,
    window: MainWindow,
    saved: list[Path],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    kept = tmp_path / "monday.staintray"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(kept)[:-10], ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(kept), ""))
    QTest.keySequence(window, "Ctrl+T")
    dialog = opened_tray(window)
    assert not dialog.keep_button.isEnabled()
    assert not dialog.undo_button.isEnabled()
    dialog.add_button.click()
    assert column(dialog, "case") == ["T-0", "T-1", "T-2"]
    assert dialog.day.text().startswith("3 units.")
    assert dialog.summary.text() == "3 cases: 3 planned."
    dialog.keep_button.click()
    assert kept.exists()
    choose(dialog.units, 0)
    QTest.keyClick(dialog.units, Qt.Key.Key_Delete)
    assert column(dialog, "case") == ["T-1", "T-2"]
    qtbot.waitUntil(dialog.isActiveWindow)
    QTest.keySequence(dialog, "Ctrl+Z")
    # A button is seen to go down before it does its work.
    qtbot.waitUntil(lambda: column(dialog, "case") == ["T-0", "T-1", "T-2"])
    dialog.undo_button.click()
    assert dialog.units.rows == ()
    assert not dialog.undo_button.isEnabled()
    dialog.open_button.click()
    assert column(dialog, "case") == ["T-0", "T-1", "T-2"]
    assert not dialog.grab().isNull()

    # What cannot be read is said, and the rest goes on.
    saved[1].write_bytes(b"no case")
    dialog.lay(dialog.tray)
    assert column(dialog, "state") == ["planned", "left out", "planned"]
    assert dialog.day.text().startswith("2 units.")
    assert "case_1.stainmap" in dialog.remarks.text()
    # A second call brings the same tray to the front.
    assert opened_tray(window) is dialog


def test_a_state_is_marked_in_files_and_taken_back_as_one_step(
    window: MainWindow, saved: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = opened_tray(window)
    dialog.add_button.click()
    choose(dialog.units, 0, 2)
    answer_with(monkeypatch, "painted", NINE)
    dialog.state_button.click()
    at = NINE.astimezone()
    words = f"painted, {at.day} {at:%b %H:%M}"
    assert column(dialog, "state") == [words, "planned", words]
    assert dialog.summary.text() == "3 cases: 1 planned, 2 painted."
    assert dialog.remarks.text().startswith("Marked as painted: 2 cases.")
    latest = read_case(saved[2]).bench.latest
    assert latest is not None
    assert (latest.stage, latest.at) == (BenchStage.PAINTED, NINE)
    assert dialog.units.chosen == (saved[0], saved[2]), "what was chosen stays chosen"

    # A time before it is refused for both, in a sentence, and nothing changes.
    answer_with(monkeypatch, "dried", NINE - timedelta(hours=1))
    dialog.state_button.click()
    assert "would lie before 'painted'" in dialog.remarks.text()
    assert column(dialog, "state") == [words, "planned", words]

    # A plan that is changed in its file is told from what was painted, and from its sheet.
    case = read_case(saved[0])
    write_case(
        replace(case, printed=plan_hash(case), plan=replace(case.plan, nesting_height_mm=2.0)),
        saved[0],
    )
    dialog.lay(dialog.tray)
    assert column(dialog, "state")[0] == f"{words}; changed since"
    assert column(dialog, "sheet") == ["newer than revision 1", "no sheet", "no sheet"]
    item = dialog.units.topLevelItem(0)
    assert item is not None
    assert "print the sheets again" in item.toolTip(0)

    dialog.undo_button.click()
    assert column(dialog, "state") == ["planned", "planned", "planned"]
    assert read_case(saved[2]).bench == BenchRecord()


def test_the_tray_and_the_window_follow_one_another(
    qtbot: QtBot, window: MainWindow, saved: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    session = window.session
    dialog = opened_tray(window)
    dialog.add_button.click()
    choose(dialog.units, 1)
    dialog.units.setFocus()
    dialog.units.setCurrentItem(dialog.units.topLevelItem(1))
    QTest.keyClick(dialog.units, Qt.Key.Key_Return)
    assert session.path == saved[1]
    qtbot.waitUntil(lambda: column(dialog, "file")[1] == "case_1.stainmap (open)")

    # Its state is an edit like any other, marked in the window or on the tray.
    answer_with(monkeypatch, "mixed", NINE)
    window.run_desk.ask_for_state()
    qtbot.waitUntil(lambda: column(dialog, "state")[1].startswith("mixed, "))
    assert session.is_modified
    history = session.history
    assert history is not None
    assert history.undo_label == "state on the bench"
    session.undo()
    qtbot.waitUntil(lambda: column(dialog, "state")[1] == "planned")
    choose(dialog.units, 0, 1)
    answer_with(monkeypatch, "sintered", NINE)
    dialog.state_button.click()
    assert session.case is not None
    assert session.case.bench.latest is not None
    assert read_case(saved[1]).bench == BenchRecord(), "unsaved, as every edit"
    assert read_case(saved[0]).bench.latest is not None
    dialog.undo_button.click()
    assert session.case.bench == BenchRecord()
    assert read_case(saved[0]).bench == BenchRecord()

    # A draft says why.
    session.edit("clear", lambda c: replace(c, plan=StainPlan(block=c.plan.block)))
    qtbot.waitUntil(lambda: column(dialog, "state")[1] == "draft")
    assert dialog.units.rows[1].remark == "Nothing is painted in this plan yet."
    session.undo()

    # Sheets of all of them.
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda _: True)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(saved[0].parent))
    session.save()
    qtbot.waitUntil(lambda: not session.is_modified)
    qtbot.waitUntil(lambda: column(dialog, "state")[1] == "planned")
    dialog.sheets_button.click()
    (preview,) = dialog.findChildren(SheetPreview)
    assert preview.left_out.isHidden()
    names = [one.accessibleName() for one in preview.paper.findChildren(QLabel)]
    assert {name.rpartition(", ")[0] for name in names if name} == {
        *(f"T-{k}-{kind}" for k in range(3) for kind in ("coat-map", "agreement")),
        "tray-mixing-list",
    }
    preview.buttons["Save as PDF..."].click()
    assert "Wrote " in dialog.remarks.text()
    # What went to the bench is noted in the open case, and in the files of the others.
    assert session.case.printed == session.plan_hash
    qtbot.waitUntil(lambda: column(dialog, "sheet") == ["revision 1"] * 3)


def test_making_the_sheets_of_a_tray_can_be_stopped(
    qtbot: QtBot, settings: QSettings, saved: list[Path]
) -> None:
    poster = Poster()
    runner = JobRunner(post=poster)
    window = MainWindow(Session(starter_catalogue(), threaded=False), settings, runner)
    qtbot.addWidget(window)
    dialog = opened_tray(window)
    dialog.add_button.click()
    qtbot.waitUntil(dialog.sheets_button.isEnabled)
    dialog.sheets_button.click()
    (card,) = dialog.findChildren(ProgressCard)
    assert card.isVisible()
    (stop,) = card.findChildren(QPushButton)
    stop.click()
    qtbot.waitUntil(card.isHidden)
    assert dialog.remarks.text().startswith("No sheets were made.")
    assert not dialog.findChildren(SheetPreview)


def test_the_tray_opens_with_its_key(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[QDialog] = []
    monkeypatch.setattr(QDialog, "exec", lambda dialog: opened.append(dialog) or 0)
    QTest.keySequence(window, "Ctrl+I")
    assert [type(one) for one in opened] == [IntakeDialog]
    QTest.keySequence(window, "Ctrl+T")
    dialog = window.run_desk.tray.dialog
    assert dialog is not None
    assert dialog.isVisible()
    # The open case has no file yet: nothing lies on the tray.
    assert dialog.units.rows == ()


# --- parts ------------------------------------------------------------------------------------


def state_of(case: Case, stage: BenchStage | None = None) -> UnitState:
    case = case if stage is None else with_stage(case, stage, NINE)
    return unit_state(case, plan_hash(case))


def test_the_marks_of_states_differ_without_colour(qtbot: QtBot, planned_case: Case) -> None:
    """All pairs of marks differ where the window is grey throughout: in how much is filled."""
    units = TrayUnits()
    qtbot.addWidget(units)
    units.resize(900, 400)
    units.show()
    pictures = []
    for state in (
        replace(state_of(planned_case), stage=UnitStage.DRAFT),
        state_of(planned_case),
        *(state_of(planned_case, stage) for stage in BenchStage),
    ):
        units.set_rows([UnitRow(path=Path("a.stainmap"), code="T-1", state=state)])
        assert units.chosen == (Path("a.stainmap"),), "the buttons are for the current row"
        units.clearSelection()
        place = units.visualItemRect(units.topLevelItem(0))
        mark = units.viewport().grab(place.adjusted(0, 0, 60 - place.width(), 0)).toImage()
        assert mark.allGray()
        pictures.append(mark)
    assert all(one != other for k, one in enumerate(pictures) for other in pictures[k + 1 :])


def test_the_state_offered_is_the_next_one_and_no_time_lies_ahead(
    qtbot: QtBot, planned_case: Case
) -> None:
    frame = QWidget()
    qtbot.addWidget(frame)
    record = with_stage(planned_case, BenchStage.PAINTED, NINE).bench
    dialog = BenchDialog(("T-1",), record, NINE + timedelta(hours=1), frame)
    assert dialog.chosen is BenchStage.DRIED
    dialog.when.setDateTime(NINE + timedelta(days=2))
    assert dialog.at == NINE + timedelta(hours=1)
    dialog.stage.setCurrentText(NOTHING)
    assert dialog.chosen is None
    assert not dialog.when.isEnabled()
    assert BenchDialog(("T-1",), BenchRecord(), NINE, frame).chosen is BenchStage.MIXED
