"""Trays on disk: a small JSON file that names the case files, and what was planned in them.

``{"format": "stainmap tray", "version": 1, "cases": [{"file", "code", "plan_hash"}, ...]}``. A file
is named from the folder of the tray file, with slashes, so that the whole folder can be moved; one
on another drive is named in full. Nothing of a case is copied: the case file stays the truth.
"""

from __future__ import annotations

import os
from pathlib import Path, PurePosixPath
from typing import Final

import msgspec

from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.model.tray import Tray, TrayEntry
from stainmap.words import translate

SUFFIX: Final = ".staintray"
FORMAT: Final = "stainmap tray"
VERSION: Final = 1
_MOST_BYTES = 1 << 20


class _EntryDoc(msgspec.Struct, frozen=True):
    file: str
    code: str
    plan_hash: str


class _TrayDoc(msgspec.Struct, frozen=True):
    format: str
    version: int
    cases: tuple[_EntryDoc, ...] = ()


def write_tray(tray: Tray, path: Path) -> None:
    """Write a tray; what was there before is untouched if it cannot be written.

    Raises
    ------
    StainmapError
        If the file cannot be written.
    """
    folder = path.resolve().parent
    document = _TrayDoc(
        format=FORMAT,
        version=VERSION,
        cases=tuple(
            _EntryDoc(file=_named(entry.path, folder), code=entry.code, plan_hash=entry.plan_hash)
            for entry in tray.entries
        ),
    )
    write_bytes(path, msgspec.json.format(msgspec.json.encode(document), indent=1) + b"\n")


def read_tray(path: Path) -> Tray:
    """Return a tray, its files named in full; whether they are there is not looked at.

    Raises
    ------
    CaseFileError
        If it cannot be read, or is no tray.
    """
    try:
        size = path.stat().st_size
        content = path.read_bytes() if size <= _MOST_BYTES else b""
    except OSError as error:
        raise CaseFileError(
            translate("tray file", "The file cannot be read."),
            where=path.name,
            advice=translate("tray file", "Look whether it is still there."),
        ) from error
    try:
        document = msgspec.json.decode(content, type=_TrayDoc)
    except (msgspec.DecodeError, UnicodeDecodeError) as error:
        raise CaseFileError(
            translate("tray file", "This is no tray."),
            where=path.name,
            advice=translate("tray file", "Trays end in {suffix}.").format(suffix=SUFFIX),
        ) from error
    if document.format != FORMAT:
        raise CaseFileError(
            translate("tray file", "This is no tray."),
            where=path.name,
            advice=translate("tray file", "Trays end in {suffix}.").format(suffix=SUFFIX),
        )
    if document.version > VERSION:
        raise CaseFileError(
            translate(
                "tray file",
                "A newer version wrote it (version {version}; this one reads up to {version_2}).",
            ).format(version=document.version, version_2=VERSION),
            where=path.name,
            advice=translate("tray file", "Open it with that version."),
        )
    folder = path.resolve().parent
    try:
        return Tray(
            entries=tuple(
                TrayEntry(
                    path=_in_full(entry.file, folder), code=entry.code, plan_hash=entry.plan_hash
                )
                for entry in document.cases
            )
        )
    except StainmapError as error:
        raise CaseFileError(error.message, where=path.name, advice=error.advice) from error


def _named(path: Path, folder: Path) -> str:
    full = path.resolve()
    try:
        return Path(os.path.relpath(full, folder)).as_posix()
    except ValueError:  # on another drive
        return full.as_posix()


def _in_full(name: str, folder: Path) -> Path:
    if "\0" in name or not name.strip():
        raise CaseFileError(
            translate("tray file", "{name!r} is no name of a file.").format(name=name),
            advice=translate("tray file", "Lay the tray anew."),
        )
    return Path(os.path.normpath(folder / PurePosixPath(name)))
