"""Where the open case lies on disk: its path, its lock, and which state of it is saved there."""

from __future__ import annotations

from pathlib import Path

from stainmap.app.prediction import Prediction
from stainmap.errors import CaseFileError
from stainmap.files.case_file import write_case
from stainmap.files.case_lock import CaseLock
from stainmap.model.case import Case


class CasePlace:
    """The place of one open case; holds its lock until it is left."""

    def __init__(self) -> None:
        self.path: Path | None = None
        self.read_only = False
        self._saved: Case | None = None
        self._lock: CaseLock | None = None

    def occupy(self, path: Path | None, saved: Case | None) -> None:
        """Take the place of a case just opened; without the lock it is read-only.

        Parameters
        ----------
        path
            Its file, or None for a case that has none yet.
        saved
            The state that is on disk, or None.
        """
        self.leave()
        self.path, self._saved = path, saved
        self._lock = None if path is None else CaseLock.take(path)
        self.read_only = path is not None and self._lock is None

    def holds(self, case: Case) -> bool:
        """Return True if just this state of the case is on disk."""
        return case is self._saved

    def write(self, case: Case, path: Path | None, prediction: Prediction | None) -> None:
        """Write the case, under `path` or where it lies, with a look at what is predicted.

        Raises
        ------
        StainmapError
            If there is no place to write to, it cannot be written, or somebody else has it open.
        """
        target = path or self.path
        if target is None:
            raise CaseFileError("The case has no file yet.", advice="Choose where to save it.")
        lock = self._lock if target == self.path else CaseLock.take(target)
        if lock is None:
            raise CaseFileError(
                "Somebody else has this case open.",
                where=target.name,
                advice="Save it under another name.",
            )
        try:
            write_case(
                case,
                target,
                preview_png=None if prediction is None else _preview(prediction),
                look=None if prediction is None else prediction.appearance.srgb,
            )
        except BaseException:
            if lock is not self._lock:
                lock.release()
            raise
        if lock is not self._lock:
            self.leave()
        self._lock, self.path, self.read_only, self._saved = lock, target, False, case

    def leave(self) -> None:
        """Let others open the case for writing."""
        if self._lock is not None:
            self._lock.release()
            self._lock = None


def _preview(prediction: Prediction) -> bytes:
    # What draws it is slow to import, and the window is to be there before.
    from stainmap.app.pictures import preview_png  # noqa: PLC0415

    return preview_png(prediction)
