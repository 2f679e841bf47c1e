"""The window at 200 %, as the settings ask for it, on a screen of 2048 x 1400."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from stainmap.app.settings import Settings
from stainmap.app.settings_file import NAME, write_settings

ROOT = Path(__file__).resolve().parents[2]
SCREEN = ("xvfb-run", "-a", "-s", "-screen 0 2048x1400x24")

# The real start; a window of it that tells what it has become, and closes.
PROGRAM = """
import json, os, sys
sys.path.insert(0, sys.argv[1])
from PySide6.QtCore import QTimer
from stainmap.ui import start
from tests.ui.window_tour import cut, settle

class Telling(start.MainWindow):
    def __init__(self, *arguments):
        super().__init__(*arguments)
        self.resize(1024, 700)
        QTimer.singleShot(4000, self.tell)

    def tell(self):
        found = []
        for dock in (self.outcome_dock, self.plan_dock):
            dock.raise_()
            settle()
            found += cut(self)
        room = self.screen().availableSize()
        picture = self.plan.grab()
        print("TOLD" + json.dumps({
            "ratio": self.devicePixelRatioF(),
            "screen": [room.width(), room.height()],
            "window": [self.width(), self.height()],
            "pixels": picture.width() / self.plan.width(),
            "cut": found,
            "case": self.session.case is not None,
        }), flush=True)
        self.close()

start.MainWindow = Telling
sys.exit(start.run([]))
"""


@pytest.mark.skipif(shutil.which("xvfb-run") is None, reason="needs a screen of its own")
def test_everything_has_room_at_twice_the_size(tmp_path: Path) -> None:
    config = tmp_path / "config"
    write_settings(config / "stainmap" / NAME, Settings(size_percent=200))
    environment = os.environ | {
        "HOME": str(tmp_path),
        "XDG_CONFIG_HOME": str(config),
        "XDG_DATA_HOME": str(tmp_path / "data"),
        "OPENBLAS_NUM_THREADS": "1",
    }
    for name in ("QT_SCALE_FACTOR", "QT_QPA_PLATFORM", "DISPLAY"):
        environment.pop(name, None)
    done = subprocess.run(
        [*SCREEN, sys.executable, "-c", PROGRAM, str(ROOT)],
        capture_output=True,
        text=True,
        env=environment,
        timeout=240,
        check=False,
        cwd=ROOT,
    )
    lines = [line for line in done.stdout.splitlines() if line.startswith("TOLD")]
    assert lines, done.stderr
    told = json.loads(lines[0].removeprefix("TOLD"))
    assert told["case"]
    assert told["ratio"] == 2.0
    assert told["screen"] == [1024, 700]
    assert told["window"] == [1024, 700]
    assert told["pixels"] == pytest.approx(2.0, abs=0.01)
    assert told["cut"] == []
