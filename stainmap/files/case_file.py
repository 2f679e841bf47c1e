"""Case files: one zip with a readable description, the mesh as it came, and plain arrays.

The archive holds ``case.json``, ``mesh/original`` (the bytes of the file that came in),
``arrays/NAME.npy`` and, if there was a prediction, ``preview.png`` and ``look/HASH.npy``: the
colours that were seen, to be shown at once until they are predicted anew; ``measured/KEY.npy``:
wall and curvature, not to be measured again; and ``figures/KEY.json``: what was predicted of each
area, not to be computed again for paper. Nothing in it is trusted: names are looked up, never
followed; sizes are checked before unpacking; arrays are never pickled.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.atomic import write_atomically
from stainmap.files.case_content import (
    DAMAGE,
    DOCUMENT,
    CaseReader,
    entries_of,
    measured_entry,
    npy_bytes,
)
from stainmap.files.figures_file import FIGURES, MOST_BYTES, figures_entry, figures_from
from stainmap.model.case import Case
from stainmap.model.crown import MeasuredShape
from stainmap.planning.area_figures import KeptFigures
from stainmap.planning.plan_hash import plan_hash
from stainmap.words import translate

SUFFIX = ".stainmap"
_PREVIEW = "preview.png"
_MOST_PREVIEW_BYTES = 16 << 20
_CHOOSE = "Choose a file that ends in .stainmap."
_LOOK = "look/"
# One date for all entries, so that the same case gives the same bytes.
_ENTRY_DATE = (2020, 1, 1, 0, 0, 0)

Progress = Callable[[float, str], None]


def write_case(
    case: Case,
    path: Path,
    *,
    preview_png: bytes | None = None,
    look: NDArray[np.uint8] | None = None,
    measured: MeasuredShape | None = None,
    figures: KeptFigures | None = None,
) -> None:
    """Write a case atomically.

    Parameters
    ----------
    preview_png
        Small picture of the crown for file managers.
    look
        (V, 3) predicted sRGB, shown when the case is opened until it is predicted anew.
    measured
        What was measured of its shape, not to be measured again; what its own file said if None.
    figures
        What was predicted of its areas, to be printed without predicting it again.

    Raises
    ------
    StainmapError
        If it cannot be written; the file that was there before is untouched.
    """
    kept = case.surface.measured if measured is None else measured

    def write(stream: BinaryIO) -> None:
        with zipfile.ZipFile(stream, "w") as archive:
            for name, content in entries_of(case):
                _put(archive, name, content())
            if preview_png is not None:
                _put(archive, _PREVIEW, preview_png)
            if look is not None:
                _put(archive, f"{_LOOK}{plan_hash(case)}.npy", npy_bytes(look))
            if kept is not None:
                _put(archive, *measured_entry(kept))
            if figures is not None:
                _put(archive, *figures_entry(figures))

    write_atomically(path, write)


def read_case(path: Path, progress: Progress | None = None) -> Case:
    """Read a case file of this or any older version.

    Raises
    ------
    CaseFileError
        If it is missing, cut short, damaged, not a case, or from a newer version.
    """
    if progress is not None:
        progress(0.1, translate("case file", "reading the case"))
    try:
        if path.exists() and not (path.is_file() or path.is_dir()):
            raise CaseFileError(
                translate("case file", "It is not an ordinary file."),
                where=path.name,
                advice=_CHOOSE,
            )
        with path.open("rb") as stream, zipfile.ZipFile(stream) as archive:
            entries = {entry.filename: entry.file_size for entry in archive.infolist()}
            return CaseReader(entries, archive.read, path.name).case()
    except StainmapError:
        raise
    except FileNotFoundError as error:
        raise CaseFileError(
            translate("case file", "There is no such file."),
            where=str(path),
            advice=translate("case file", "Choose another."),
        ) from error
    except IsADirectoryError as error:
        raise CaseFileError(
            translate("case file", "It is a folder."),
            where=str(path),
            advice=translate("case file", "Choose a file inside it."),
        ) from error
    except PermissionError as error:
        raise CaseFileError(
            translate("case file", "You may not read it."),
            where=str(path),
            advice=translate("case file", "Ask its owner."),
        ) from error
    except zipfile.BadZipFile as error:
        raise CaseFileError(
            translate("case file", "It is cut short or is not a case file."),
            where=path.name,
            advice=translate(
                "case file", "Open an older copy, or look for it among the recovered cases."
            ),
        ) from error
    except DAMAGE as error:
        raise CaseFileError(
            translate("case file", "It is damaged ({error}).").format(error=error),
            where=path.name,
            advice=translate("case file", "Open an older copy of the case."),
        ) from error


def read_look(path: Path, case: Case) -> NDArray[np.uint8] | None:
    """Return the colours (V, 3) a case file was last seen in, or None if they are not of `case`.

    They only bridge the seconds until the prediction is there, so whatever is wrong with them is
    no error.
    """
    try:
        with path.open("rb") as stream, zipfile.ZipFile(stream) as archive:
            name = f"{_LOOK}{plan_hash(case)}.npy"
            if archive.getinfo(name).file_size > 4 * len(case.zones) + 1024:
                return None
            look = np.lib.format.read_array(io.BytesIO(archive.read(name)), allow_pickle=False)
    except (*DAMAGE, zipfile.BadZipFile, StainmapError):
        return None
    if look.dtype != np.uint8 or look.shape != (len(case.zones), 3):
        return None
    return np.asarray(look)


def read_figures(path: Path) -> KeptFigures | None:
    """Return what a case file says was predicted of its areas, or None.

    Whatever is wrong with it is no error: it is predicted anew. Whether it holds for the case is
    for `figures_key.fits` to say.
    """
    try:
        with path.open("rb") as stream, zipfile.ZipFile(stream) as archive:
            for entry in archive.infolist():
                if entry.filename.startswith(FIGURES) and entry.file_size <= MOST_BYTES:
                    return figures_from(entry.filename, archive.read(entry))
    except DAMAGE:
        return None
    return None


def read_preview(path: Path) -> bytes | None:
    """Return the small picture in a case file, or None; whatever is wrong with it is no error."""
    try:
        with path.open("rb") as stream, zipfile.ZipFile(stream) as archive:
            if archive.getinfo(_PREVIEW).file_size > _MOST_PREVIEW_BYTES:
                return None
            return archive.read(_PREVIEW)
    except DAMAGE:
        return None


def is_case_file(path: Path) -> bool:
    """Return True if the file's content, not its name, is that of a case archive."""
    try:
        if not path.is_file():
            return False
        with zipfile.ZipFile(path) as archive:
            return DOCUMENT in archive.namelist()
    except (OSError, zipfile.BadZipFile):
        return False


def _put(archive: zipfile.ZipFile, name: str, content: bytes) -> None:
    entry = zipfile.ZipInfo(name, date_time=_ENTRY_DATE)
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.external_attr = 0o644 << 16
    archive.writestr(entry, content, compresslevel=1)
