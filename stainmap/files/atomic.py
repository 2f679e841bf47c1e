"""Writing a file so that a reader sees the old or the new one, never half of it."""

from __future__ import annotations

import contextlib
import errno
import os
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

from stainmap.errors import StainmapError
from stainmap.words import marked, translate

_LONGEST_PREFIX = 40
_GONE = (
    marked("atomic", "The disk does not answer, or is no longer there."),
    marked("atomic", "Choose another folder."),
)
_REASONS = {
    errno.EIO: _GONE,
    errno.ENODEV: _GONE,
    errno.ENXIO: _GONE,
    errno.ESTALE: _GONE,
    errno.ETIMEDOUT: _GONE,
    errno.ENOSPC: (
        marked("atomic", "The disk is full."),
        marked("atomic", "Free some space, or choose another disk."),
    ),
    errno.EDQUOT: (
        marked("atomic", "Your share of the disk is used up."),
        marked("atomic", "Free some space, or choose another disk."),
    ),
    errno.EROFS: (
        marked("atomic", "The disk is read-only."),
        marked("atomic", "Choose another folder."),
    ),
    errno.EACCES: (
        marked("atomic", "You may not write here."),
        marked("atomic", "Choose another folder."),
    ),
    errno.EPERM: (
        marked("atomic", "You may not write here."),
        marked("atomic", "Choose another folder."),
    ),
    errno.ENOENT: (
        marked("atomic", "The folder does not exist."),
        marked("atomic", "Choose another folder, or make it first."),
    ),
    errno.ENOTDIR: (
        marked("atomic", "Part of the path is a file, not a folder."),
        marked("atomic", "Choose another folder."),
    ),
    errno.EISDIR: (
        marked("atomic", "There is a folder of that name."),
        marked("atomic", "Choose another name."),
    ),
    errno.ENAMETOOLONG: (
        marked("atomic", "The name is too long."),
        marked("atomic", "Choose a shorter name."),
    ),
}


def write_atomically(
    path: Path, write: Callable[[BinaryIO], None], *, settled: bool = True
) -> None:
    """Write beside `path`, bring it to the disk, then put it in place.

    Parameters
    ----------
    settled
        False leaves it to the system when the disk itself has it. What is written then outlives
        this program, but not the machine; see `settle`.

    Raises
    ------
    StainmapError
        If it cannot be written; whatever was there before is untouched.
    """
    try:
        if path.is_dir():
            raise IsADirectoryError(errno.EISDIR, translate("atomic", "is a folder"))
        handle, name = tempfile.mkstemp(
            prefix=f".{path.name[:_LONGEST_PREFIX]}.", suffix=".part", dir=path.parent
        )
        beside = Path(name)
        try:
            with os.fdopen(handle, "wb") as stream:
                write(stream)
                stream.flush()
                if settled:
                    os.fsync(stream.fileno())
            _keep_mode(path, beside)
            beside.replace(path)
        except BaseException:
            beside.unlink(missing_ok=True)
            raise
        if settled:
            _sync_folder(path.parent)
    except OSError as error:
        raise writing_error(path, error) from error


def write_bytes(path: Path, content: bytes, *, settled: bool = True) -> None:
    """Write `content` atomically; parameters and errors as `write_atomically`."""

    def write(stream: BinaryIO) -> None:
        stream.write(content)

    write_atomically(path, write, settled=settled)


def settle(path: Path) -> None:
    """Bring a file that is in place to the disk itself; raise StainmapError if that fails."""
    try:
        # Some systems want a handle that may write.
        with path.open("r+b") as stream:
            os.fsync(stream.fileno())
        _sync_folder(path.parent)
    except OSError as error:
        raise writing_error(path, error) from error


def sweep(path: Path) -> None:
    """Remove what a program that was killed while writing `path` left beside it.

    Only for whoever holds the lock of `path`: nobody else may be writing it now.
    """
    name = path.name
    if len(name) > _LONGEST_PREFIX:
        return  # part of the name is missing, so that it could be another file's
    begin = f".{name}."
    with contextlib.suppress(OSError):
        for left in path.parent.iterdir():
            if left.name.startswith(begin) and left.suffix == ".part":
                left.unlink(missing_ok=True)


def writing_error(path: Path, error: OSError) -> StainmapError:
    """Return the sentence for a failed write."""
    if error.errno in _REASONS:
        message, advice = (translate("atomic", text) for text in _REASONS[error.errno])
    else:
        message = translate("atomic", "It cannot be written ({why}).")
        message = message.format(why=error.strerror or error)
        advice = translate("atomic", "Choose another folder.")
    return StainmapError(message, where=str(path), advice=advice)


def make_folder(folder: Path) -> None:
    """Make a folder and its parents; raise StainmapError with a sentence if that fails."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except FileExistsError as error:
        raise StainmapError(
            translate("atomic", "There is a file of that name, not a folder."),
            where=str(folder),
            advice=translate("atomic", "Choose another folder."),
        ) from error
    except OSError as error:
        raise writing_error(folder, error) from error


def _keep_mode(old: Path, new: Path) -> None:
    """Give the new file the old one's permissions, or those a plain new file would have."""
    try:
        mode = old.stat().st_mode & 0o777
    except OSError:
        mask = os.umask(0)
        os.umask(mask)
        mode = 0o666 & ~mask
    with contextlib.suppress(OSError):
        new.chmod(mode)


def _sync_folder(folder: Path) -> None:
    """Bring the renamed entry itself to the disk; not every system can."""
    if os.name != "posix":
        return
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
