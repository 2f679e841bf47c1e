"""What the page of evidence is made of: numbers, where they come from, checks, tables, plots."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

MINUS = "\N{MINUS SIGN}"


class Origin(StrEnum):
    """Where a number comes from, in one word; every row of figures on the page carries one."""

    MEASURED = "measured"
    PUBLISHED = "published"
    COMPUTED = "computed"
    FITTED = "fitted"
    ASSUMED = "assumed"
    FROM_MEMORY = "from memory"
    INVENTED = "invented"


@dataclass(frozen=True, slots=True)
class Number:
    """A value, and how many decimals of it mean something."""

    value: float
    decimals: int = 2
    signed: bool = False

    def __str__(self) -> str:
        """Return it as the page prints it, with a true minus and no negative zero."""
        text = f"{self.value:{'+' if self.signed else ''}.{self.decimals}f}"
        if float(text) == 0.0:
            text = text.lstrip("+-")
        return text.replace("-", MINUS)


Cell = str | Number


@dataclass(frozen=True, slots=True)
class Source:
    """The origin of a number and what it is exactly: who, with what, from what, or why."""

    origin: Origin
    detail: str

    def __str__(self) -> str:
        """Return both in one line of Markdown."""
        return f"**{self.origin}**: {self.detail}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One number that a test holds between limits.

    Parameters
    ----------
    key
        Name of the test, and of nothing else.
    what
        What the number is, as the page says it.
    found
        The number, computed now.
    least, most
        What the test asks of it; None for no limit on that side.
    unit
        Unit of the number, or nothing.
    source
        Where the truth it is held against comes from.
    headline
        Whether it also stands in the table at the top of the page.
    """

    key: str
    what: str
    found: Number
    source: Source
    least: float | None = None
    most: float | None = None
    unit: str = ""
    headline: bool = False

    @property
    def holds(self) -> bool:
        """Whether the number lies between its limits."""
        low = -np.inf if self.least is None else self.least
        high = np.inf if self.most is None else self.most
        return bool(low <= self.found.value <= high)

    @property
    def asked(self) -> str:
        """What is asked, in words."""
        if self.least is not None and self.most is not None:
            return f"{_short(self.least)} to {_short(self.most)}"
        if self.most is not None:
            return f"at most {_short(self.most)}"
        return f"at least {_short(self.least)}" if self.least is not None else "reported only"


def _short(value: float | None) -> str:
    return f"{value:.3g}".replace("-", MINUS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows of cells under heads; the last cell of a row is its source.

    Parameters
    ----------
    heads
        Heads of the columns, without that of the source.
    rows
        Cells of each row, and its source.
    """

    heads: tuple[str, ...]
    rows: tuple[tuple[tuple[Cell, ...], Source], ...]


def table(heads: Sequence[str], rows: Sequence[Sequence[Cell]], source: Source) -> Table:
    """Return a table all of whose rows have one source."""
    return Table(heads=tuple(heads), rows=tuple((tuple(row), source) for row in rows))


class Stroke(StrEnum):
    """How a curve is drawn: what it stands for decides."""

    TRUTH = "truth"
    OURS = "ours"
    WITHOUT = "without"
    OTHER = "other"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Curve:
    """One line, or row of points, of a plot; of a row of points some or `every_point`."""

    label: str
    x: np.ndarray
    y: np.ndarray
    stroke: Stroke
    every_point: bool = False


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Panel:
    """One pair of axes; curves of the same label in several panels look alike."""

    title: str
    x_label: str
    y_label: str
    curves: tuple[Curve, ...]
    x_limits: tuple[float, float] | None = None
    y_from_zero: bool = False


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Plot:
    """Panels side by side under one legend, with one upright scale or each its own."""

    key: str
    title: str
    caption: str
    panels: tuple[Panel, ...]
    source: Source
    one_scale: bool = False

    @property
    def file_name(self) -> str:
        """Name of the picture beside the page."""
        return f"evidence_{self.key}.svg"


Block = str | Table | Plot | tuple[Check, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Section:
    """A heading and what stands under it, in order."""

    title: str
    blocks: tuple[Block, ...]

    @property
    def checks(self) -> tuple[Check, ...]:
        """All checks of the section."""
        found = [block for block in self.blocks if isinstance(block, tuple)]
        return tuple(check for checks in found for check in checks)

    @property
    def plots(self) -> tuple[Plot, ...]:
        """All plots of the section."""
        return tuple(block for block in self.blocks if isinstance(block, Plot))
