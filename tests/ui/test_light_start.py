"""What the window does not wait for: large libraries that its first picture does not need."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]

START = """
import json, sys
from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication
from stainmap.app.predicting import Predicting
from stainmap.files.catalogue import starter_catalogue
from stainmap.ui import start
app = QApplication(["stainmap"])
window = start.MainWindow(
    start.Session(starter_catalogue()),
    QSettings(sys.argv[1], QSettings.Format.IniFormat),
    start.JobRunner(),
)
window.show()
app.processEvents()
shown = sorted(sys.modules)
# What predicts comes beside the first picture, in a thread of its own.
Predicting.go_on = lambda self: None
window.open_sample()
app.processEvents()
window.crown.repaint()
assert window.crown.shows(window.session.case.surface.mesh)
print(json.dumps([shown, sorted(sys.modules)]), flush=True)
import os
os._exit(0)
"""

NEVER = {
    "scipy", "PIL", "reportlab", "pypdfium2", "colour", "sqlalchemy", "alembic", "click",
    "numpy.ma", "numpy.testing", "unittest", "email", "http", "importlib.metadata",
}  # fmt: skip
# Rooms or parts of them that the window itself has no use for.
NOT_FOR_THE_WINDOW = (
    "stainmap.app.prediction", "stainmap.app.opening", "stainmap.app.exporting",
    "stainmap.app.advising", "stainmap.app.sheets", "stainmap.app.practising",
    "stainmap.planning.advice", "stainmap.planning.outcome", "stainmap.planning.reach",
    "stainmap.planning.suggest", "stainmap.planning.zoning", "stainmap.predict.appearance",
    "stainmap.practice", "stainmap.labbook", "stainmap.surface.diffusion",
    "stainmap.surface.loading", "stainmap.ui.manual_window", "stainmap.ui.materials_window",
    "stainmap.ui.practice_window", "stainmap.ui.settings_dialog", "stainmap.ui.suggest_dialog",
    "stainmap.ui.tray_dialog",
)  # fmt: skip


@pytest.mark.gl
def test_the_window_and_the_sample_in_it_need_no_large_library(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", START, str(tmp_path / "window.ini")],
        cwd=ROOT,
        env=os.environ | {"QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr
    shown, opened = (set(names) for names in json.loads(done.stdout.splitlines()[-1]))
    assert NEVER & opened == set()
    heavy = [name for name in shown if name.startswith(NOT_FOR_THE_WINDOW)]
    assert [name for name in heavy if name != "stainmap.planning.advice_value"] == []
