"""How long a person waits: until a real crown has its zones, until the window is there."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from stainmap.app.opening import Answers, units_from_numbers
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.zone import OUTER_ZONES
from stainmap.planning.progress import Steps
from stainmap.planning.reading import read_crown
from stainmap.planning.survey import survey_body
from stainmap.planning.zoning import ZoneSliders, find_zone_ground
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from stainmap.units import SizeState
from tests.benchmarks.measuring import YARDSTICK_MS, seconds, yardstick

pytestmark = pytest.mark.benchmark
ROOT = Path(__file__).resolve().parents[2]

# Seconds on two shared cores.
ZONES_WITHIN_S = 8.0
VISIBLE_WITHIN_S = 2.5

WINDOW = """
import os, runpy, sys, time
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
app = QApplication(["stainmap"])
since = lambda: round(time.time() - float(os.environ["STAINMAP_TEST_STARTED"]), 3)
exposed = []

def look():
    for widget in app.topLevelWidgets():
        handle = widget.windowHandle()
        if not isinstance(widget, QMainWindow) or handle is None or not handle.isExposed():
            continue
        exposed[:] = exposed or [since()]
        case = widget.session.case
        if case is not None and widget.crown.shows(case.surface.mesh):
            # In the colours it was last seen in.
            assert widget.session.shown_srgb is not None
            widget.crown.repaint()
            print(exposed[0], since(), round(time.process_time(), 3), flush=True)
            os._exit(0)

timer = QTimer()
timer.timeout.connect(look)
timer.start(10)
sys.argv = ["stainmap"]
runpy.run_path("stainmap", run_name="__main__")
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


def test_zones_in_processor_time(
    shared_meshes: Path, record_property: Callable[[str, object], None]
) -> None:
    """Refined to 100,000 points, read and zoned in 5 s; the zones follow a slider in 0.5 s.

    Asked for are 2 s until the first zones and 5 s for everything, on a desktop. All zones and
    accents come at once, so both bounds meet the same time, given here as processor time beside
    that of the yardstick, since others may have the cores.
    """
    loaded = load_mesh(shared_meshes / "hollow_46.stl").mesh
    units = units_from_numbers((46,))
    slowness = max(1.0, 1000.0 * seconds(yardstick, 5) / YARDSTICK_MS)
    started = time.process_time()
    mesh = refine(loaded, 0.11).mesh
    operator = SurfaceOperator(mesh)
    survey = survey_body(operator, Steps(None))
    reading = read_crown(mesh, operator, units, survey=survey)
    ground = find_zone_ground(mesh, operator, reading, units, survey=survey)
    proposal = ground.propose(ZoneSliders())
    waited = time.process_time() - started
    moves = []
    for sliders in (
        ZoneSliders(neck_climb=0.4),
        ZoneSliders(cusp_descent=0.5),
        ZoneSliders(fissure_width=0.8),
    ):
        started = time.process_time()
        moved = ground.propose(sliders)
        moves.append(time.process_time() - started)
        assert (moved.zones != proposal.zones).sum() > 500
    record_property("vertices", mesh.vertex_count)
    record_property("processor time s, until zones are there", round(waited, 2))
    record_property("processor time s, a slider's move", round(max(moves), 3))
    record_property("yardstick over the undisturbed machine's", round(slowness, 2))
    print(mesh.vertex_count, round(waited, 2), [round(one, 3) for one in moves], slowness)
    assert mesh.vertex_count > 95_000
    assert waited / slowness < 4.0
    assert max(moves) / slowness < 0.3


LARGE = """
import json, sys, time
from pathlib import Path
from stainmap import memory
memory.settle()
from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
from stainmap.files.catalogue import starter_catalogue
from stainmap.units import SizeState
started = time.process_time()
answers = Answers(
    units=units_from_numbers((46,)), size_state=SizeState.SINTERED, block="medium 3Y"
)
case, _ = build_case(look_at_mesh(Path(sys.argv[1])), answers, starter_catalogue())
lines = Path("/proc/self/status").read_text().splitlines()
peak = int(next(line for line in lines if line.startswith("VmHWM")).split()[1]) / 1024
print(json.dumps({
    "seconds": time.process_time() - started,
    "faces": case.surface.mesh.face_count,
    "zones": len(set(case.zones.tolist())),
    "MB": peak,
}))
"""


@pytest.mark.skipif(
    not Path("/proc/self/status").exists(), reason="only Linux tells a process its own peak"
)
def test_a_file_of_700_000_faces(
    shared_meshes: Path, tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    """Opened, read and zoned in 20 s of processor time and 1.5 GB."""
    fine = refine(load_mesh(shared_meshes / "hollow_46.stl").mesh, 0.055).mesh
    path = tmp_path / "fine_46.stl"
    write_stl(path, fine)
    slowness = max(1.0, 1000.0 * seconds(yardstick, 5) / YARDSTICK_MS)
    done = subprocess.run(
        [sys.executable, "-c", LARGE, str(path)],
        cwd=ROOT,
        env=os.environ | {"OPENBLAS_NUM_THREADS": "1"},
        check=False,
        capture_output=True,
        text=True,
        timeout=480,
    )
    assert done.returncode == 0, done.stderr
    found = json.loads(done.stdout.splitlines()[-1])
    for name, value in found.items():
        record_property(f"large file: {name}", round(value, 1))
    record_property("yardstick over the undisturbed machine's", round(slowness, 2))
    print(found, slowness)
    assert found["faces"] > 650_000
    assert found["zones"] == 6
    assert found["seconds"] / slowness < 20.0
    assert found["MB"] < 1536


def write_stl(path: Path, mesh: TriMesh) -> None:
    """Write a binary STL."""
    content = np.zeros(mesh.face_count, dtype=[("facet", "<f4", (4, 3)), ("spare", "<u2")])
    content["facet"][:, 1:] = mesh.vertices[mesh.faces]
    path.write_bytes(bytes(80) + np.uint32(mesh.face_count).tobytes() + content.tobytes())


@pytest.mark.gl
def test_the_window_is_there_in_time(
    tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    """From `python3 stainmap` to the window with the sample in it, the best of three starts.

    One start more comes before them: the environment exists, and what is compiled is kept there.
    """
    folders = ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME")
    starts: list[list[float]] = []
    for _ in range(4):
        environment = os.environ | dict.fromkeys(folders, str(tmp_path))
        environment["STAINMAP_TEST_STARTED"] = repr(time.time())
        done = subprocess.run(
            [sys.executable, "-c", WINDOW],
            cwd=ROOT, env=environment, capture_output=True, text=True, check=False, timeout=60,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        starts.append([float(word) for word in done.stdout.split()])
    exposed, sample, processor = (min(times) for times in zip(*starts[1:], strict=True))
    record_property("window s", exposed)
    record_property("window with the sample s", sample)
    record_property("the same, processor time s", processor)
    print(starts)
    assert sample < VISIBLE_WITHIN_S


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
    write_stl(path, fine)
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
