"""How much memory the window takes with a large crown open."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from stainmap.practice.crown_maker import stl_bytes
from stainmap.surface.loading import load_mesh
from stainmap.surface.refining import refine

pytestmark = pytest.mark.benchmark
ROOT = Path(__file__).resolve().parents[2]

MEMORY = """
import json, sys, time
from pathlib import Path
from stainmap import memory
memory.settle()
from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from stainmap.ui.poster import Poster
from stainmap.ui.theme import Scheme, apply_theme

mesh, settings = Path(sys.argv[1]), QSettings(sys.argv[2], QSettings.Format.IniFormat)
peaks = {}

def mark(name):
    # Not getrusage: its peak is at first that of the process this one was started from.
    lines = Path("/proc/self/status").read_text().splitlines()
    peaks[name] = int(next(line for line in lines if line.startswith("VmHWM")).split()[1]) / 1024

def until(ready):
    ends = time.monotonic() + 240
    while not ready():
        assert time.monotonic() < ends, peaks
        app.processEvents()
        time.sleep(0.005)
    still = time.monotonic() + 1.5
    while time.monotonic() < still:
        app.processEvents()
        time.sleep(0.005)

app = QApplication(["stainmap"])
apply_theme(app, Scheme.LIGHT)
poster = Poster()
session = Session(starter_catalogue(), post=poster)
window = MainWindow(session, settings, JobRunner(post=poster))
window.resize(1600, 960)
window.show()
window.open_sample()
until(lambda: session.shading is not None)
mark("sample")
window.flow.open_path(mesh)
until(window.flow.questions.isVisible)
window.flow.questions.teeth.setText("36")
window.flow.questions.sintered.click()
window.flow.questions.read.click()
until(lambda: session.outcome is not None
      and session.case.source.name == mesh.name and session.shading is not None)
mark("read and predicted")
window.plan_desk.add_liquid("barley")
until(lambda: session.is_up_to_date)
for look in (Look.ZONES, Look.COATS, Look.SINTERED):
    window.set_look(look)
    until(lambda: True)
mark("all looks")
peaks["vertices"] = session.case.surface.mesh.vertex_count
print(json.dumps(peaks), flush=True)
session.close()
import os
os._exit(0)
"""


@pytest.mark.gl
@pytest.mark.memory
@pytest.mark.skipif(
    not Path("/proc/self/status").exists(), reason="only Linux tells a process its own peak"
)
def test_memory_of_the_window_with_a_large_crown_open(
    tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    """The sample, then 250,000 vertices read, planned and looked at: under 1 GB at any time."""
    sample = load_mesh(ROOT / "sample_cases" / "lower_molar_36.stl").mesh
    fine = refine(sample, 0.069).mesh
    path = tmp_path / "fine_36.stl"
    path.write_bytes(stl_bytes(fine))
    done = subprocess.run(
        [sys.executable, "-c", MEMORY, str(path), str(tmp_path / "window.ini")],
        cwd=ROOT,
        env=os.environ | {"OPENBLAS_NUM_THREADS": "1"},
        check=False,
        capture_output=True,
        text=True,
        timeout=480,
    )
    assert done.returncode == 0, done.stderr
    peaks = json.loads(done.stdout.splitlines()[-1])
    vertices = peaks.pop("vertices")
    for name, megabytes in peaks.items():
        record_property(f"peak MB, {name}", round(megabytes))
    print(vertices, {name: round(megabytes) for name, megabytes in peaks.items()})
    assert vertices > 240_000
    # 991 MB was measured; what threads leave behind at one moment varies by some 30 MB.
    assert max(peaks.values()) < 1024
