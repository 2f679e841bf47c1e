"""Paper formats, apart from all that draws on them: naming one costs nothing."""

from __future__ import annotations

from enum import StrEnum


class PageSize(StrEnum):
    """Paper formats."""

    A4 = "A4"
    LETTER = "Letter"

    @property
    def size_mm(self) -> tuple[float, float]:
        """Width and height."""
        return (210.0, 297.0) if self is PageSize.A4 else (215.9, 279.4)
