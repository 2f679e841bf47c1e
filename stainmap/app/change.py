"""What a session tells its listeners: which of its fields have changed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What a notice is about.

    Names of case fields, and "appearance", "outcome", "file", "history", "job", "journal", "look",
    "opened", "problem", "seen", "shading".
    """

    fields: frozenset[str]

    def touches(self, *names: str) -> bool:
        """Return True if any of `names` changed."""
        return not self.fields.isdisjoint(names)


Listener = Callable[[Change], None]
