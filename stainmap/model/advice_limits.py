"""The limits that advice is held to, each with where it comes from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import isfinite

from stainmap.errors import CatalogueError
from stainmap.words import translate, value_word


class Mark(StrEnum):
    """How a limit was obtained."""

    PUBLISHED = "published"
    FROM_MEMORY = "from memory"
    COMMON_PRACTICE = "common practice"
    ASSUMED = "assumed"

    @property
    def words(self) -> str:
        """What stands beside the limit."""
        return "common practice, no published source" if self is Mark.COMMON_PRACTICE else self


@dataclass(frozen=True, slots=True, kw_only=True)
class AdviceLimit:
    """One limit.

    Parameters
    ----------
    name
        What rules call it.
    value, unit
        Never negative.
    source
        A sentence: what it stands for, or who published it.
    """

    name: str
    value: float
    unit: str
    mark: Mark
    source: str

    def __post_init__(self) -> None:
        """Refuse what is no limit, and one that says nothing of its origin."""
        if not (isfinite(self.value) and self.value >= 0.0):
            raise CatalogueError(
                translate("advice limits", "The limit '{name}' is {value}.").format(
                    name=self.name, value=self.value
                ),
                advice=translate("advice limits", "Give 0 or more."),
            )
        if not self.source.strip():
            raise CatalogueError(
                translate("advice limits", "The limit '{name}' has no source.").format(
                    name=self.name
                ),
                advice=translate(
                    "advice limits", "Say where it comes from, if only 'my own experience'."
                ),
            )

    @property
    def said(self) -> str:
        """Value and unit."""
        unit = translate("limits", self.unit) if self.unit else ""
        return f"{self.value:g} {unit.replace('mm2', 'mm²')}".strip()

    @property
    def origin(self) -> str:
        """Source and mark in one line."""
        source = translate("limits", self.source)
        return f"{source.rstrip('.')} ({value_word(self.mark.words)})."


@dataclass(frozen=True, slots=True, kw_only=True)
class AdviceLimits:
    """All limits, by name."""

    limits: tuple[AdviceLimit, ...]

    def __getitem__(self, name: str) -> AdviceLimit:
        """Return a limit; raise CatalogueError if there is none of this name."""
        for one in self.limits:
            if one.name == name:
                return one
        raise CatalogueError(
            translate("advice limits", "There is no limit called '{name}' for advice.").format(
                name=name
            ),
            advice=translate(
                "advice limits",
                "The shipped table of limits has been damaged: install the program again.",
            ),
        )

    def __contains__(self, name: object) -> bool:
        """Tell whether there is a limit of this name."""
        return any(one.name == name for one in self.limits)

    def changed(self, limit: AdviceLimit) -> AdviceLimits:
        """Return the same with one limit replaced."""
        return AdviceLimits(
            limits=tuple(limit if one.name == limit.name else one for one in self.limits)
        )
