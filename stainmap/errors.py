"""The one family of errors that a user may see."""

from __future__ import annotations


class StainmapError(Exception):
    """Something cannot be done, said in one sentence a technician understands.

    Parameters
    ----------
    message
        What is wrong, naming the offending value.
    where
        The file, field or place it concerns, or None.
    advice
        What to do about it, or None.
    """

    def __init__(
        self, message: str, *, where: str | None = None, advice: str | None = None
    ) -> None:
        super().__init__(message)
        self.message = message
        self.where = where
        self.advice = advice

    def __str__(self) -> str:
        """Return place, message and advice as running text."""
        text = f"{self.where}: {self.message}" if self.where else self.message
        return f"{text} {self.advice}" if self.advice else text


class MeshFileError(StainmapError):
    """A mesh file cannot be read as a surface."""


class CaseFileError(StainmapError):
    """A case file cannot be read or written."""


class CatalogueError(StainmapError):
    """A materials file holds something that cannot be used."""


class ReadingError(StainmapError):
    """The shape does not tell what must be known; a person has to say it."""


class PlanError(StainmapError):
    """A plan refers to something that does not exist or is out of range."""


class PhotographError(StainmapError):
    """A photograph, or a spot in it, tells no shade."""


class LabbookError(StainmapError):
    """The lab book cannot be opened, or cannot keep what it was given."""


class PackError(StainmapError):
    """A pack of exercises cannot be read or used."""


class CancelledError(StainmapError):
    """The user stopped a long task; nothing was changed."""
