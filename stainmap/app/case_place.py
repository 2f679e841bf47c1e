"""Where the open case lies on disk: its path, its lock, and which state of it is saved there."""

from __future__ import annotations

import hashlib
import os
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from stainmap.errors import CaseFileError
from stainmap.files.atomic import sweep
from stainmap.files.case_file import write_case
from stainmap.files.case_lock import CaseLock, holder_of
from stainmap.model.case import Case
from stainmap.model.crown import MeasuredShape
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.planning.area_figures import KeptFigures

_ELSEWHERE = marked("case place", "Save it under another name.")
_PROTECTED = marked("case place", "The file of this case is write-protected.")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Written:
    """A case that has just been written, and the lock that was taken for it."""

    path: Path
    case: Case
    digest: str
    lock: CaseLock


class CasePlace:
    """The place of one open case; holds its lock until it is left."""

    def __init__(self) -> None:
        self.path: Path | None = None
        self.read_only = False
        self.why_read_only = ""
        self.digest = ""
        self._saved: Case | None = None
        self._lock: CaseLock | None = None

    def occupy(self, path: Path | None, saved: Case | None, digest: str = "") -> None:
        """Take the place of a case just opened; without the lock it is read-only.

        Parameters
        ----------
        path
            Its file, or None for a case that has none yet.
        saved
            The state that is on disk, or None.
        digest
            Checksum of the file as it was read; empty if it was not.
        """
        self.leave()
        self.path, self._saved, self.digest = path, saved, digest
        self._lock = None if path is None else CaseLock.take(path)
        self.why_read_only = "" if path is None else _why_read_only(path, self._lock)
        self.read_only = bool(self.why_read_only)

    def holds(self, case: Case) -> bool:
        """Return True if just this state of the case is on disk."""
        return case is self._saved

    def write(self, case: Case, path: Path | None, prediction: Prediction | None) -> Written:
        """Write the case, under `path` or where it lies, with a look at what is predicted.

        May be called in any thread; what is written counts once it is settled.

        Raises
        ------
        StainmapError
            If there is no place to write to, it cannot be written, somebody else has it open, or
            the file is no longer the one that was opened.
        """
        target = path or self.path
        if target is None:
            raise CaseFileError(
                translate("case place", "The case has no file yet."),
                advice=translate("case place", "Choose where to save it."),
            )
        own = self._lock if _is_same(target, self.path) else None
        lock = own or CaseLock.take(target)
        if lock is None:
            raise CaseFileError(
                _open_elsewhere(target),
                where=target.name,
                advice=translate("case place", _ELSEWHERE),
            )
        try:
            _refuse_protected(target)
            if path is None:
                # Whoever names a file knows that it is replaced.
                self._refuse_changed(target)
            write_case(
                case,
                target,
                preview_png=None if prediction is None else _preview(prediction),
                look=None if prediction is None else prediction.appearance.srgb,
                measured=None if prediction is None else _measured(case, prediction),
                figures=None if prediction is None else _figures(prediction),
            )
            sweep(target)
            digest = file_digest(target)
        except BaseException:
            if lock is not own:
                lock.release()
            raise
        return Written(path=target, case=case, digest=digest, lock=lock)

    def settle(self, written: Written) -> None:
        """Let the case lie from now on where it was written."""
        if written.lock is not self._lock:
            self.leave()
        self._lock, self.path, self._saved = written.lock, written.path, written.case
        self.digest, self.read_only, self.why_read_only = written.digest, False, ""

    def leave(self) -> None:
        """Let others open the case for writing."""
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def _refuse_changed(self, target: Path) -> None:
        if self.digest and file_digest(target) not in ("", self.digest):
            raise CaseFileError(
                translate(
                    "case place", "Something else has changed this file since it was opened here."
                ),
                where=target.name,
                advice=translate("case place", "Save under another name, then compare the two."),
            )


def _measured(case: Case, prediction: Prediction) -> MeasuredShape | None:
    """Return what was measured for a prediction, if that was of the surface of the case."""
    from stainmap.predict.measured_shape import measured_shape  # noqa: PLC0415

    if prediction.case.surface is not case.surface:
        return None
    return measured_shape(prediction.case, prediction.shape)


def _figures(prediction: Prediction) -> KeptFigures | None:
    """Return what is printed of a prediction, if it is seen as paper shows it."""
    from stainmap.app.kept_figures import figures_to_keep  # noqa: PLC0415

    return figures_to_keep(prediction)


def file_digest(path: Path) -> str:
    """Return the SHA-256 of a file, or an empty string if it cannot be read."""
    try:
        with path.open("rb") as stream:
            return hashlib.file_digest(stream, "sha256").hexdigest()
    except OSError:
        return ""


def _is_same(one: Path, other: Path | None) -> bool:
    # Without a look at the disk: a drive that has gone must not be waited for.
    return other is not None and os.path.normcase(os.path.abspath(one)) == os.path.normcase(  # noqa: PTH100
        os.path.abspath(other)  # noqa: PTH100
    )


def _open_elsewhere(path: Path) -> str:
    holder = holder_of(path)
    if holder:
        return translate("case place", "Somebody else has this case open: {holder}.").format(
            holder=holder
        )
    return translate("case place", "Somebody else has this case open.")


def _why_read_only(path: Path, lock: CaseLock | None) -> str:
    """Return why a case cannot be saved where it lies, as a sentence; empty if it can."""
    if lock is None:
        return _open_elsewhere(path)
    if _is_protected(path):
        return translate("case place", _PROTECTED)
    if not os.access(path.parent, os.W_OK):
        return translate("case place", "The folder of this case cannot be written to.")
    return ""


def _is_protected(path: Path) -> bool:
    """Return True for a file that somebody has protected; replacing it would not ask."""
    try:
        return not path.stat().st_mode & 0o222
    except OSError:
        return False


def _refuse_protected(target: Path) -> None:
    if _is_protected(target):
        raise CaseFileError(
            translate("case place", _PROTECTED),
            where=target.name,
            advice=translate("case place", _ELSEWHERE),
        )


def _preview(prediction: Prediction) -> bytes:
    # What draws it is slow to import, and the window is to be there before.
    from stainmap.app.pictures import preview_png  # noqa: PLC0415

    return preview_png(prediction)
