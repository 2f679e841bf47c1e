"""What has been said about the open crown so far, to read it again with."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.opening import Answers


def answers_of(session: Session) -> Answers:
    """Return what has been said about the open crown so far.

    Raises
    ------
    StainmapError
        If none is open.
    """
    from stainmap.app import said  # noqa: PLC0415

    if session.case is None:
        raise StainmapError(
            translate("answers", "No crown is open."),
            advice=translate("answers", "Open a mesh or a case first."),
        )
    return said.answers_of(session.case)
