"""Runs the whole test suite: `python3 tests [arguments of pytest]`, on a fresh machine too.

`python3 tests --evidence` writes the page of evidence anew instead.
"""

import os
import sys

if sys.version_info < (3, 11):
    sys.exit(
        "The tests need Python 3.11 or newer, and this is Python {}.{}; "
        "start them with a newer one.".format(*sys.version_info[:2])
    )

sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))  # noqa: PTH100, PTH120

from pathlib import Path

from stainmap import bootstrap
from stainmap.startup import system_packages

ROOT = Path(__file__).resolve().parent.parent
SCREEN = "-screen 0 1600x1200x24"


def main() -> int:
    """Set up what is missing, then become pytest."""
    arguments = sys.argv[1:]
    try:
        bootstrap.enter(Path(__file__).resolve(), arguments, extras=("test",))
        if arguments == ["--evidence"]:
            os.chdir(ROOT)
            bootstrap.run_in_place([sys.executable, "-m", "tests.evidence"])
        bootstrap.refuse_unsound_qt()
        run_pytest([absolute(argument) for argument in arguments])
    except (bootstrap.SetupError, system_packages.PackagesError) as error:
        print(f"tests: {error}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("tests: stopped.", file=sys.stderr)
        return 130
    return 0


def absolute(argument: str) -> str:
    """Return an argument that names an existing file of the current folder as a full path."""
    path, separator, test = argument.partition("::")
    if path.startswith("-") or not Path(path).exists():
        return argument
    return f"{Path(path).resolve()}{separator}{test}"


def outside_options() -> list[str]:
    """Return pytest's options where it may not keep its records in the checkout.

    They go into the Python environment then. A record that cannot be written is a warning, and
    warnings are errors.
    """
    records = [ROOT, ROOT / ".pytest_cache", ROOT / ".hypothesis"]
    if all(os.access(folder, os.W_OK) for folder in records if folder.exists()):
        return []
    place = Path(sys.prefix) / "records of tests"
    os.environ.setdefault("HYPOTHESIS_STORAGE_DIRECTORY", str(place / "hypothesis"))
    return ["-o", f"cache_dir={place / 'pytest'}"]


def run_pytest(arguments: list[str]) -> None:
    """Replace this process by pytest, under a virtual screen where there is no display."""
    command = [sys.executable, "-m", "pytest", *outside_options(), *arguments]
    if sys.platform.startswith("linux"):
        libraries = system_packages.QT_LIBRARIES + system_packages.X11_LIBRARIES
        programs = () if system_packages.has_display() else system_packages.VIRTUAL_SCREEN
        system_packages.ensure(libraries, programs, say=bootstrap.Progress().say)
        if programs:
            # The virtual screen draws OpenGL in software, so no test may be skipped for want of it.
            os.environ["STAINMAP_REQUIRE_GL"] = "1"
            if not arguments and (os.cpu_count() or 1) > 1:
                # The whole suite in two processes, each with a screen: tests/conftest.py.
                os.environ["STAINMAP_OWN_SCREENS"] = SCREEN
                # One that dies ends the run: the other would wait for its share for ever.
                command += ["-n", "2", "--dist", "loadfile", "--no-loadscope-reorder"]
                command += ["--max-worker-restart", "0"]
            command = ["xvfb-run", "-a", "-s", SCREEN, *command]
    # One thread for linear algebra: times and last digits do not depend on the machine's cores.
    for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
        os.environ.setdefault(name, "1")
    os.chdir(ROOT)
    bootstrap.run_in_place(command)


if __name__ == "__main__":
    sys.exit(main())
