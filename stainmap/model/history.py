"""Undo as a list of values: the previous case is still there."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.model.case import Case


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Entry:
    """One state of the case, and the label of the edit that led to it."""

    label: str
    case: Case


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class History:
    """All states of a case since it was opened. `position` is the one that is current."""

    entries: tuple[Entry, ...]
    position: int = 0

    @classmethod
    def begun_with(cls, case: Case, label: str = "opened") -> History:
        """Return a history that holds only `case`."""
        return cls(entries=(Entry(label=label, case=case),))

    @property
    def case(self) -> Case:
        """The current case."""
        return self.entries[self.position].case

    @property
    def undo_label(self) -> str | None:
        """Label of the edit that undo would take back, or None."""
        return self.entries[self.position].label if self.position > 0 else None

    @property
    def redo_label(self) -> str | None:
        """Label of the edit that redo would bring back, or None."""
        after = self.position + 1
        return self.entries[after].label if after < len(self.entries) else None

    def edited(self, case: Case, label: str) -> History:
        """Return the history with `case` as the newest state; what was undone is dropped."""
        kept = self.entries[: self.position + 1]
        return History(entries=(*kept, Entry(label=label, case=case)), position=self.position + 1)

    def undone(self) -> History:
        """Return the history one step back, or itself at the beginning."""
        return (
            self
            if self.position == 0
            else History(entries=self.entries, position=self.position - 1)
        )

    def redone(self) -> History:
        """Return the history one step on, or itself at the end."""
        last = self.position == len(self.entries) - 1
        return self if last else History(entries=self.entries, position=self.position + 1)

    def at(self, position: int) -> History:
        """Return the history at one of its states, from 0; itself if there is no such state."""
        if position == self.position or not 0 <= position < len(self.entries):
            return self
        return History(entries=self.entries, position=position)
