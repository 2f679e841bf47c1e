"""Starts stainmap: `python3 stainmap` from a checkout, `stainmap` where it is installed.

The top of this module must be readable by an old Python, so that it can say which one is needed.
"""

import gc
import os
import sys

if sys.version_info < (3, 11):
    sys.exit(
        "stainmap needs Python 3.11 or newer, and this is Python {}.{}; "
        "start it with a newer one.".format(*sys.version_info[:2])
    )

if not __package__:
    # Started as a folder, Python puts the inside of the package first on the module path; what
    # belongs there is the folder around it.
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))  # noqa: PTH100, PTH120

# The program divides its work among its own threads; threads of the matrix library on top of
# them make small solves five times slower on a busy machine. Read when numpy is imported.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

from collections.abc import Sequence
from pathlib import Path

from stainmap import bootstrap
from stainmap.startup import system_packages


def main() -> int:
    """Set up what is missing, start the program, and return its exit code."""
    arguments = sys.argv[1:]
    try:
        bootstrap.enter(Path(__file__).resolve(), arguments)
        return start(arguments)
    except (bootstrap.SetupError, system_packages.PackagesError) as error:
        print(f"stainmap: {error}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("stainmap: stopped.", file=sys.stderr)
        return 130


def start(arguments: Sequence[str]) -> int:
    """Start one of the two clients and return its exit code.

    A verb or an option goes to the command line. A file, or nothing, opens the window. Where
    there is no display, nothing plans the sample crown and writes its papers instead.
    """
    first = arguments[0] if arguments else None
    # No verb has an ending: on the way to the window nothing of the command line is imported.
    for_window = first is None or (_names_file(first) and bool(Path(first).suffix))
    if for_window and _window_can_open():
        return _window(arguments)
    from stainmap import cli  # noqa: PLC0415 - its libraries may have been installed just now

    if first is not None and (first in cli.VERBS or not _names_file(first)):
        return cli.main(arguments)
    if not for_window and _window_can_open():
        return _window(arguments)
    if first is None:
        return cli.headless_sample()
    print(
        f"stainmap: there is no display to show {first} on; the verbs "
        f"{', '.join(sorted(cli.VERBS))} work without one (see --help).",
        file=sys.stderr,
    )
    return 1


def _names_file(argument: str) -> bool:
    path = Path(argument)
    return not argument.startswith("-") and (bool(path.suffix) or path.is_file())


def _window_can_open() -> bool:
    if not system_packages.has_display():
        return False
    system_packages.ensure(system_packages.window_libraries(), say=bootstrap.Progress().say)
    if system_packages.display_answers():
        return True
    print(f"stainmap: the display {os.environ['DISPLAY']} does not answer.", file=sys.stderr)
    return False


def _window(arguments: Sequence[str]) -> int:
    bootstrap.refuse_unsound_qt()
    from stainmap import memory  # noqa: PLC0415 - only here is it needed

    # Before Qt and numpy begin to ask for memory, and before there are threads.
    memory.settle()
    # Little of what a start makes is thrown away again: `run` looks for that once, after it.
    gc.disable()
    first = None
    if not arguments:
        from stainmap.app.first_crown import FirstCrown  # noqa: PLC0415 - its libraries, too

        first = FirstCrown()
    from stainmap.ui.start import run  # noqa: PLC0415 - brings Qt, which only a window needs

    return run(arguments, first)


if __name__ == "__main__":
    sys.exit(main())
