"""Where compiled modules are kept when none may appear beside the sources."""

from __future__ import annotations

import os
import sys
from pathlib import Path


def keep_in(folder: Path) -> None:
    """Keep what this process and its children compile in a folder of the program's own.

    Only where Python has been told to write no bytecode, as containers tell it so that nothing
    appears among the sources (PYTHONDONTWRITEBYTECODE). Hundreds of modules would be compiled at
    every start then, half a second of waiting. Whoever has named a place for it keeps that place.
    """
    if not sys.dont_write_bytecode or sys.pycache_prefix is not None:
        return
    sys.pycache_prefix = os.environ["PYTHONPYCACHEPREFIX"] = str(folder)
    sys.dont_write_bytecode = False
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
