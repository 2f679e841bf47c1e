"""The whole job in one window, with mouse and keys: from a mesh to sheets and exports."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pypdf
import pytest
import trimesh
from PySide6.QtCore import QMimeData, QPoint, QPointF, QSettings, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QLineEdit
from pytestqt.qtbot import QtBot

from stainmap.files.case_file import read_case
from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.planning.plan_hash import plan_hash, short_hash
from stainmap.ui.main_window import MainWindow
from tests.ui.conftest import new_window

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
MESH = Path(__file__).parents[2] / "sample_cases" / "lower_molar_36.stl"


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def leave_nothing_unsaved(window: MainWindow) -> None:
    """Let the window close without a question."""
    if window.session.case is not None:
        window.session.adopt(window.session.case, path=None, saved=True)


def drop(window: MainWindow, path: Path) -> None:
    """Let go of a file over the window."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    place = QPointF(window.width() / 2, window.height() / 2)
    action = Qt.DropAction.CopyAction
    window.dropEvent(QDropEvent(place, action, data, LEFT, NONE))


def type_coats(window: MainWindow, step: int, area: Zone, text: str) -> None:
    table = window.plan.table
    table.setFocus()
    table.select_cell(step, area)
    QTest.keyClick(table, text[0])
    (line,) = (one for one in table.findChildren(QLineEdit) if one.isVisible())
    for key in text[1:]:
        QTest.keyClick(line, key)
    QTest.keyClick(line, Qt.Key.Key_Return)


@pytest.mark.gl
def test_from_a_mesh_to_sheets_and_exports(  # noqa: PLR0915 - one job, one test
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    window = new_window(settings)
    window.resize(1400, 900)
    # Light in the grooves takes seconds and plays no part here.
    monkeypatch.setattr(window.session, "need_shading", lambda: None)
    qtbot.addWidget(window, before_close_func=leave_nothing_unsaved)
    saved = tmp_path / "the crown.stainmap"
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()

    # Open, answer, read: zones are proposed.
    drop(window, MESH)
    card = window.flow.questions
    qtbot.waitUntil(card.isVisible, timeout=10_000)
    assert card.teeth.text() == "36"
    QTest.mouseClick(card.sintered, LEFT, NONE, QPoint(8, card.sintered.height() // 2))
    QTest.mouseClick(card.read, LEFT)
    assert set(np.unique(case_of(window).zones)) == {1, 2, 3, 4, 5, 6}
    bare = window.session.outcome
    assert bare is not None

    # Two liquids, coats typed into the table; the prediction follows.
    window.plan_desk.add_liquid("barley")
    window.plan_desk.add_liquid("slate")
    type_coats(window, 0, Zone.BODY, "2")
    type_coats(window, 1, Zone.CUSP, "1-2")
    stained = window.session.outcome
    assert stained is not None
    for zone in (Zone.BODY, Zone.CUSP):
        before, after = bare.area(zone), stained.area(zone)
        assert before is not None
        assert after is not None
        assert after.predicted.lightness < before.predicted.lightness - 0.5

    # A stroke over the middle of the crown paints a zone; undo and redo bring it and take it.
    window.plan.table.select_row(Zone.FISSURE)
    untouched = case_of(window)
    middle = QPoint(window.crown.width() // 2, window.crown.height() // 2)
    QTest.mousePress(window.crown, LEFT, NONE, middle)
    for step in range(1, 6):
        QTest.mouseMove(window.crown, middle + QPoint(8 * step, 0))
        QApplication.processEvents()
    QTest.mouseRelease(window.crown, LEFT, NONE, middle + QPoint(40, 0))
    painted = case_of(window)
    assert (painted.zones != untouched.zones).any()
    QTest.keySequence(window, "Ctrl+Z")
    assert case_of(window) is untouched
    QTest.keySequence(window, "Ctrl+Shift+Z")
    assert case_of(window) is painted

    # Save, export, print: every file is read back by somebody else.
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(saved), ""))
    QTest.keySequence(window, "Ctrl+S")
    assert plan_hash(read_case(saved)) == plan_hash(painted)
    coloured = tmp_path / "crown.ply"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(coloured), ""))
    QTest.keySequence(window, "Ctrl+E")
    mesh = trimesh.load(coloured, process=False)
    assert len(mesh.vertices) == len(painted.zones)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda _: True)
    QTest.keySequence(window, "Ctrl+P")
    preview = window.printing.preview
    assert preview is not None
    preview.buttons["Save as PDF..."].click()
    preview.close()
    sheets = sorted(tmp_path.glob("*.pdf"))
    assert len(sheets) == 3
    text = " ".join(
        page.extract_text() for sheet in sheets for page in pypdf.PdfReader(sheet).pages
    )
    for words in (
        "Coat map",
        "Mixing list",
        "barley",
        "slate",
        "cusp",
        "36 lower left first molar",
    ):
        assert words in text
    assert short_hash(plan_hash(painted)) in text
