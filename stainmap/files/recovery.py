"""What programs that were killed left behind, and how it is read again.

Of several states the one with the highest revision is taken whose checksums hold: a state cut short
or damaged gives way to the one before it. Dates of files say nothing here.
"""

from __future__ import annotations

import contextlib
import shutil
from dataclasses import dataclass
from pathlib import Path

import filelock

from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.case_content import DAMAGE, CaseReader
from stainmap.files.case_file import Progress
from stainmap.files.journal_state import (
    State,
    digest_of,
    entry_path,
    read_state,
    state_paths,
)
from stainmap.model.case import Case
from stainmap.words import translate


@dataclass(frozen=True, slots=True, kw_only=True)
class Recovered:
    """A case left behind by a program that did not end in order; newest of its states first."""

    folder: Path
    states: tuple[State, ...]

    @property
    def revision(self) -> int:
        """Of two pieces of work on a case, the one with the higher revision is the later."""
        return self.states[0].revision

    @property
    def label(self) -> str:
        """What to call it where one of several is chosen."""
        state = self.states[0]
        return f"{state.code}, {state.name}"

    @property
    def file(self) -> Path | None:
        """Where the case was last saved, or None."""
        return Path(self.states[0].file) if self.states[0].file else None

    @property
    def file_digest(self) -> str:
        """Checksum of what lay there then."""
        return self.states[0].file_digest

    def read(self, progress: Progress | None = None) -> Case:
        """Return the newest state that is whole.

        Raises
        ------
        CaseFileError
            If none is.
        """
        if progress is not None:
            progress(0.1, translate("recovery", "reading what was kept"))
        for state in self.states:
            with contextlib.suppress(StainmapError, *DAMAGE):
                return self._case_of(state)
        raise CaseFileError(
            translate("recovery", "What was kept of it is damaged."),
            where=self.label,
            advice=translate("recovery", "Open the case as it was last saved."),
        )

    def discard(self) -> None:
        """Delete it."""
        shutil.rmtree(self.folder, ignore_errors=True)
        with contextlib.suppress(OSError):
            _lock_of(self.folder).unlink()

    def _case_of(self, state: State) -> Case:
        def read(name: str) -> bytes:
            digest, _ = state.entries[name]
            content = entry_path(self.folder, digest).read_bytes()
            if digest_of(content) != digest:
                raise CaseFileError(
                    translate("recovery", "{name} is not what was kept.").format(name=name),
                    where=state.name,
                )
            return content

        sizes = {name: size for name, (_, size) in state.entries.items()}
        return CaseReader(sizes, read, state.name).case()


def abandoned(folder: Path) -> tuple[Recovered, ...]:
    """Return what killed programs left behind, highest revision first."""
    found = []
    for place in sorted(folder.iterdir()) if folder.is_dir() else ():
        if not place.is_dir() or not _is_nobodys(place):
            continue
        paths = state_paths(place)
        states = tuple(filter(None, map(read_state, paths)))
        whole = tuple(state for state in states if _is_there(place, state))
        if whole:
            found.append(Recovered(folder=place, states=whole))
        elif not paths:
            # Killed before it had anything to keep.
            Recovered(folder=place, states=()).discard()
    return tuple(sorted(found, key=lambda one: -one.revision))


def _lock_of(place: Path) -> Path:
    return place.with_name(f"{place.name}.lock")


def _is_nobodys(place: Path) -> bool:
    lock = filelock.FileLock(_lock_of(place), timeout=0)
    try:
        lock.acquire()
    except (filelock.Timeout, OSError):
        return False
    lock.release()
    return True


def _is_there(place: Path, state: State) -> bool:
    """Return True if every entry is there in its size; its checksum is held when it is read."""
    try:
        return all(
            entry_path(place, digest).stat().st_size == size
            for digest, size in state.entries.values()
        )
    except OSError:
        return False
