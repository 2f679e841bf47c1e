"""What every test may ask for, and what no test may do."""

from __future__ import annotations

import gc
import logging
import os
import subprocess
import tempfile
from collections.abc import Callable, Generator, Iterator
from contextlib import ExitStack, contextmanager, nullcontext
from pathlib import Path

import pytest

from stainmap import memory

ROOT = Path(__file__).resolve().parent.parent
FOLDER_VARIABLES = (
    "HOME",
    "USERPROFILE",
    "LOCALAPPDATA",
    "APPDATA",
    "XDG_DATA_HOME",
    "XDG_CONFIG_HOME",
    "XDG_CACHE_HOME",
    "XDG_STATE_HOME",
    "XDG_DOCUMENTS_DIR",
)


@pytest.fixture(scope="session", autouse=True)
def _private_home(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Point every variable that leads to the user's own folders into a temporary one."""
    home = tmp_path_factory.mktemp("home")
    authority = Path.home() / ".Xauthority"
    with pytest.MonkeyPatch.context() as patch:
        if "XAUTHORITY" not in os.environ and authority.is_file():
            # The key to the display lies in the real home by default.
            patch.setenv("XAUTHORITY", str(authority))
        for name in FOLDER_VARIABLES:
            folder = home if name in ("HOME", "USERPROFILE") else home / name.lower()
            folder.mkdir(exist_ok=True)
            patch.setenv(name, str(folder))
        yield


@pytest.fixture(autouse=True)
def _no_unexpected_log(caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """Fail a test that logs a warning or an error which it has not taken out of `caplog`.

    A test that expects such a line looks at it and then calls ``caplog.clear()``.
    """
    yield
    lines = [
        f"{record.name}: {record.getMessage()}"
        for record in caplog.get_records("call")
        if record.levelno >= logging.WARNING
    ]
    if lines:
        pytest.fail("logged unexpectedly: " + "; ".join(lines))


@pytest.fixture
def record_property(
    record_property: Callable[[str, object], None],
) -> Callable[[str, object], None]:
    """Return the recorder of figures, which may be arrays; processes hand on only plain values."""

    def record(name: str, value: object) -> None:
        record_property(name, value if type(value) in (int, float, str) else str(value))

    return record


@pytest.fixture(scope="session")
def shared_meshes() -> Path:
    """Return the folder of meshes that lies beside the checkout, or skip where there is none."""
    folder = ROOT.parent / "shared" / "meshes"
    if not folder.is_dir():
        pytest.skip("the meshes that do not travel with the checkout are not beside it")
    return folder


@pytest.fixture(scope="session")
def gl_context(qapp: object) -> None:
    """Go on only where Qt, with its application started, gets an OpenGL 3.3 context."""
    if not _has_gl():
        if os.environ.get("STAINMAP_REQUIRE_GL"):
            pytest.fail("STAINMAP_REQUIRE_GL is set, but there is no OpenGL 3.3 context")
        pytest.skip("there is no OpenGL 3.3 context on this display")


@pytest.fixture(scope="session")
def light_sample(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the case file of a crown like the sample, with a tenth of its vertices."""
    from stainmap.app import opening
    from stainmap.app.sample import SAMPLE, make_sample
    from stainmap.files.case_file import write_case
    from stainmap.model.tooth import Tooth
    from stainmap.practice.crown_maker import make_crown, stl_bytes

    folder = tmp_path_factory.mktemp("light")
    made = make_crown(Tooth(number=36), resolution=0.4)
    (folder / "light_36.stl").write_bytes(stl_bytes(made.mesh))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(opening, "MAX_EDGE_MM", 0.4)
        case = make_sample(folder / "light_36.stl", SAMPLE)
    path = folder / "light_36.stainmap"
    write_case(case, path)
    return path


# Files that take longest, the longest first. Whatever is begun last is waited for by one process
# while the other is idle: these are not to be that. What measures alone waits for the test that
# the other process is in: beside the longest single test nothing is measured.
LONGEST = (
    "benchmarks/test_window_memory.py",
    "planning/test_zones_of_made_crowns.py",
    "cli/test_commands.py",
    "ui/test_opening.py",
    "evidence/test_evidence.py",
    "planning/test_suggest.py",
    "benchmarks/test_opening.py",
    "planning/test_zoning.py",
    "benchmarks/test_sheets.py",
    "benchmarks/test_prediction.py",
    "benchmarks/test_engine_speed.py",
    "ui/test_corrections.py",
    "ui/test_zone_tools.py",
    "ui/test_every_entry.py",
    "ui/test_whole_job.py",
    "practice/test_bridge.py",
    "test_bootstrap.py",
    "ui/test_compare.py",
    "ui/test_figure_looks.py",
    "benchmarks/test_loading.py",
    "malformed/test_malformed.py",
    "ui/test_random_hands.py",
    "ui/test_manual_window.py",
    "ui/test_suggest_dialog.py",
    "planning/test_block_choice.py",
    "ui/test_nothing_lost.py",
    "app/test_killed.py",
    "predict/test_against_transport.py",
)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Let tests marked `gl` ask for the context before anything else, and long files come first."""
    for item in items:
        if item.get_closest_marker("gl") and isinstance(item, pytest.Function):
            item.fixturenames.insert(0, "gl_context")
    places = {ROOT / "tests" / name: place for place, name in enumerate(LONGEST)}
    items.sort(key=lambda item: places.get(item.path, len(LONGEST)))


def pytest_collection_finish() -> None:
    """Take what has been imported by now out of what is searched for garbage from now on."""
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="module", autouse=True)
def _memory_given_back() -> Iterator[None]:
    """Give what the tests of a module have left to the system, before those of the next."""
    yield
    gc.collect()
    memory.give_back_freed()


# The machine, while a measurement has it.
_HELD = ExitStack()
_holds = False


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_runtest_protocol(
    item: pytest.Item, nextitem: pytest.Item | None
) -> Generator[None, object, object]:
    """Let nothing else run beside a test that takes times.

    The processes share the machine as readers share a page: any number of ordinary tests, or one
    measurement. Who measures waits for the test that the other process is in, so that measurements
    of a file that are ready to begin follow one another.
    """
    if not _is_alone(item):
        with _machine(shared=True):
            return (yield)
    try:
        return (yield)
    finally:
        if nextitem is None or nextitem.path != item.path or not _is_ready(nextitem):
            _let_go()


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> Generator[None, object, object]:
    """Make what is measured beside other tests."""
    with _machine(shared=True) if _is_alone(item) and not _holds else nullcontext():
        return (yield)


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_runtest_call(item: pytest.Item) -> Generator[None, object, object]:
    """Measure alone."""
    global _holds  # noqa: PLW0603 - this process either has the machine or not
    if _is_alone(item) and not _holds:
        _HELD.enter_context(_machine(shared=False))
        _holds = True
    return (yield)


def _let_go() -> None:
    global _holds  # noqa: PLW0603
    _HELD.close()
    _holds = False


def _is_alone(item: pytest.Item) -> bool:
    times = item.path.is_relative_to(ROOT / "tests" / "benchmarks")
    if item.get_closest_marker("alone"):
        return True
    return times and not item.get_closest_marker("memory")


def _is_ready(item: pytest.Item) -> bool:
    """Return True if a measurement could begin: what the benchmarks make for it has been made."""
    if not _is_alone(item) or not isinstance(item, pytest.Function):
        return False
    wanted = item._fixtureinfo.name2fixturedefs.values()
    own = (one for chain in wanted for one in chain if one.baseid.startswith("tests/benchmarks"))
    return all(one.cached_result is not None for one in own)


@contextmanager
def _machine(*, shared: bool) -> Iterator[None]:
    """Hold the machine, where several processes share the tests.

    Whoever waits holds the turnstile, or else the other process would never let go.
    """
    run = os.environ.get("PYTEST_XDIST_TESTRUNUID")
    if run is None:
        yield
        return
    place = Path(tempfile.gettempdir()) / f"stainmap tests {run}"
    with ExitStack() as held:
        with _lock(place.with_suffix(".turnstile"), shared=False):
            held.enter_context(_lock(place.with_suffix(".machine"), shared=shared))
        yield


@contextmanager
def _lock(path: Path, *, shared: bool) -> Iterator[None]:
    import fcntl  # pytest-xdist is asked for on Linux alone

    with path.open("a") as file:
        fcntl.flock(file, fcntl.LOCK_SH if shared else fcntl.LOCK_EX)
        yield


def pytest_configure(config: pytest.Config) -> None:
    """Give each of several processes a screen of its own: there is one keyboard focus on each."""
    screen = os.environ.get("STAINMAP_OWN_SCREENS")
    if screen and "PYTEST_XDIST_WORKER" in os.environ:
        readable, writable = os.pipe()
        server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writable), "-nolisten", "tcp", *screen.split(maxsplit=2)],
            pass_fds=(writable,),
            stderr=subprocess.DEVNULL,
        )
        os.close(writable)
        with os.fdopen(readable) as answer:
            os.environ["DISPLAY"] = f":{answer.readline().strip()}"
        config.add_cleanup(lambda: _stop(server))


def _stop(server: subprocess.Popen[bytes]) -> None:
    server.terminate()
    server.wait(timeout=10)


def _has_gl() -> bool:
    from PySide6.QtGui import QOffscreenSurface, QOpenGLContext, QSurfaceFormat

    wanted = QSurfaceFormat()
    wanted.setVersion(3, 3)
    wanted.setProfile(QSurfaceFormat.OpenGLContextProfile.CoreProfile)
    surface = QOffscreenSurface()
    surface.setFormat(wanted)
    surface.create()
    context = QOpenGLContext()
    context.setFormat(wanted)
    if not (context.create() and context.makeCurrent(surface)):
        return False
    version = context.format().version()
    context.doneCurrent()
    return tuple(version) >= (3, 3)
