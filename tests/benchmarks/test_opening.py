"""How long a person waits: until a real crown has its zones, until the window is there."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from stainmap.app.opening import Answers, units_from_numbers
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.zone import OUTER_ZONES
from stainmap.units import SizeState

pytestmark = pytest.mark.benchmark
ROOT = Path(__file__).resolve().parents[2]

# Seconds on two shared cores.
ZONES_WITHIN_S = 8.0
VISIBLE_WITHIN_S = 2.5

WINDOW = """
import os, sys, time
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
app = QApplication(["stainmap"])

def look():
    for widget in app.topLevelWidgets():
        handle = widget.windowHandle()
        if isinstance(widget, QMainWindow) and handle is not None and handle.isExposed():
            print(time.time() - float(os.environ["STAINMAP_TEST_STARTED"]), flush=True)
            os._exit(0)

timer = QTimer()
timer.timeout.connect(look)
timer.start(10)
from stainmap.ui.main_window import run
run([])
"""


def test_a_real_crown_has_its_zones_in_time(shared_meshes: Path) -> None:
    """From the file to a case with zones and its first predicted colours."""
    started = time.perf_counter()
    session = Session(starter_catalogue(), threaded=False)
    session.look_at(shared_meshes / "hollow_46.stl")
    assert session.look is not None
    looked = time.perf_counter() - started
    answers = Answers(
        units=units_from_numbers((46,)), size_state=SizeState.SINTERED, block="medium 3Y"
    )
    session.open_mesh(session.look, answers)
    waited = time.perf_counter() - started
    print(f"looked at within {looked:.2f} s, zones and colours within {waited:.2f} s")
    assert session.case is not None
    assert {int(zone) for zone in OUTER_ZONES} <= set(session.case.zones.tolist())
    assert session.appearance is not None
    # The crown itself must be there within 2 s: what is read by then is all the view needs.
    assert looked < 2.0
    assert waited < ZONES_WITHIN_S
    session.close()


@pytest.mark.gl
def test_the_window_is_there_in_time(tmp_path: Path) -> None:
    """From the start of a fresh interpreter to the exposed window, the best of three starts."""
    times = []
    for _ in range(3):
        environment = os.environ | {
            "STAINMAP_TEST_STARTED": repr(time.time()),
            "XDG_CONFIG_HOME": str(tmp_path),
            "XDG_DATA_HOME": str(tmp_path),
            "OPENBLAS_NUM_THREADS": "1",
        }
        done = subprocess.run(
            [sys.executable, "-c", WINDOW],
            cwd=ROOT, env=environment, capture_output=True, text=True, check=False, timeout=60,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        times.append(float(done.stdout.split()[0]))
    print("window visible after", [round(t, 2) for t in times], "s")
    assert min(times) < VISIBLE_WITHIN_S
