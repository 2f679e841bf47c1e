"""Where files lie: the program's own, in a wheel or a checkout, and the user's lab book."""

from __future__ import annotations

import os
from pathlib import Path

from platformdirs import user_data_path

from stainmap.errors import StainmapError

DATA_OVERRIDE = "STAINMAP_DATA"


def data_folder(name: str) -> Path:
    """Return the folder of shipped files called `name` ("resources" or "sample_cases").

    Looks in the folder named by the environment variable STAINMAP_DATA, then inside the
    installed package, then at the top of the checkout.

    Raises
    ------
    StainmapError
        If none of them holds the folder.
    """
    package = Path(__file__).resolve().parent
    override = os.environ.get(DATA_OVERRIDE)
    candidates = [package / "_data" / name, package.parent / name]
    if override:
        candidates.insert(0, Path(override) / name)
    for candidate in candidates:
        if candidate.is_dir():
            return candidate
    raise StainmapError(
        f"The program's own folder '{name}' is missing.",
        where=str(candidates[-1]),
        advice="Install stainmap again.",
    )


def resource(*parts: str) -> Path:
    """Return the path of a shipped resource, for instance ``resource("materials")``."""
    return data_folder("resources").joinpath(*parts)


def sample_case(name: str) -> Path:
    """Return the path of a file among the sample cases."""
    return data_folder("sample_cases") / name


def labbook_file() -> Path:
    """Return where the lab book is kept: in the user's data folder, which may not be there yet."""
    return user_data_path("stainmap", appauthor=False) / "labbook.sqlite"
