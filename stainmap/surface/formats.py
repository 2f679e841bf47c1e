"""Telling mesh formats apart by what a file holds, not by its name."""

from __future__ import annotations

import io
import re
import zipfile
from enum import StrEnum

import numpy as np

from stainmap.errors import MeshFileError
from stainmap.surface.loading_rows import EXPORT_AGAIN
from stainmap.surface.loading_stl import FACET_BYTES, HEADER_BYTES, has_binary_length


class MeshFormat(StrEnum):
    """The formats that can be read."""

    BINARY_STL = "binary STL"
    ASCII_STL = "ASCII STL"
    PLY = "PLY"
    OBJ = "OBJ"
    OFF = "OFF"
    THREE_MF = "3MF"

    @property
    def extension(self) -> str:
        """The usual end of a name, in lower case with its dot."""
        return ".stl" if self.name.endswith("STL") else f".{self.value.lower()}"


EXTENSIONS = tuple(dict.fromkeys(one.extension for one in MeshFormat))
CHOOSE_A_MESH = "Choose an STL, PLY, OBJ, OFF or 3MF file."

# Files that people drop by mistake, by how they begin.
_OTHER_FILES = {
    b"\x89PNG": "a PNG picture",
    b"\xff\xd8\xff": "a JPEG picture",
    b"GIF8": "a GIF picture",
    b"%PDF": "a PDF document",
    b"\x1f\x8b": "a compressed file",
    b"7z\xbc\xaf": "a compressed file",
    b"Rar!": "a compressed file",
    b"glTF": "a glTF model",
    b"ISO-10303-21": "a STEP model",
    b"SQLite format 3": "a database",
}
_OFF_START = re.compile(rb"\A(?:\s*#[^\n]*\n)*\s*(?:ST)?C?N?(?:OFF|off)(?=\s)")
_OBJ_POINT = re.compile(rb"^[ \t]*v[ \t]+[-+.\d]", re.MULTILINE)
_LOOKED_AT = 1 << 20
# The directory of an archive is read as a whole; a 3MF has a dozen parts.
_DIRECTORY_ENTRY = b"PK\x01\x02"
_MOST_ENTRIES = 2_000


def detect_format(content: bytes, name: str) -> MeshFormat:
    """Return the format of a file.

    Parameters
    ----------
    content, name
        The bytes (not empty), and the file's name for error messages.

    Raises
    ------
    MeshFileError
        If it is none of the formats that can be read.
    """
    if has_binary_length(content):
        return MeshFormat.BINARY_STL
    if re.match(rb"ply\s", content):
        return MeshFormat.PLY
    if content.startswith(b"PK\x03\x04"):
        return _zipped(content, name)
    for start, what in _OTHER_FILES.items():
        if content.startswith(start):
            raise MeshFileError(f"It is {what}, not a mesh.", where=name, advice=CHOOSE_A_MESH)
    head = content[:_LOOKED_AT]
    if _is_text(head):
        found = _text_format(head)
        if found is not None:
            return found
        raise MeshFileError("It is a text file, but not a mesh.", where=name, advice=CHOOSE_A_MESH)
    if name.lower().endswith(".stl") or _looks_like_facets(content):
        return MeshFormat.BINARY_STL
    raise MeshFileError("It is not a mesh.", where=name, advice=CHOOSE_A_MESH)


def _is_text(head: bytes) -> bool:
    """Return whether there is no zero byte and hardly any control character but white space."""
    printable = head.translate(None, delete=bytes(range(9)) + bytes(range(14, 32)) + b"\x7f")
    return b"\0" not in head.rstrip(b"\0") and len(printable) >= 0.99 * len(head.rstrip(b"\0"))


def _text_format(head: bytes) -> MeshFormat | None:
    if re.match(rb"\s*solid(?![^\s])", head, re.IGNORECASE):
        return MeshFormat.ASCII_STL
    if _OFF_START.match(head):
        return MeshFormat.OFF
    if _OBJ_POINT.search(head.replace(b"\r", b"\n")):
        return MeshFormat.OBJ
    return None


def _zipped(content: bytes, name: str) -> MeshFormat:
    if content.count(_DIRECTORY_ENTRY) > _MOST_ENTRIES:
        raise MeshFileError(
            f"It is an archive of more than {_MOST_ENTRIES:,} files, not a mesh.",
            where=name,
            advice=CHOOSE_A_MESH,
        )
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            names = archive.namelist()
    except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError):
        raise MeshFileError(
            "It is a damaged or incomplete 3MF or ZIP file.",
            where=name,
            advice=EXPORT_AGAIN,
        ) from None
    if any(one.lower().endswith(".model") for one in names):
        return MeshFormat.THREE_MF
    raise MeshFileError(
        "It is a ZIP archive, not a mesh.", where=name, advice="Unpack it and choose the mesh."
    )


def _looks_like_facets(content: bytes) -> bool:
    """Return whether the first whole triangles after an STL header have sensible numbers."""
    whole = min(1000, (len(content) - HEADER_BYTES) // FACET_BYTES)
    if whole < 1:
        return False
    rows = np.frombuffer(content, np.uint8, whole * FACET_BYTES, HEADER_BYTES)
    numbers = np.ascontiguousarray(rows.reshape(whole, FACET_BYTES)[:, :48]).view("<f4")
    size = np.abs(numbers[:, 3:])
    return bool(((size < 1e6) & ((size > 1e-12) | (size == 0))).mean() > 0.99)
