"""What has been said about the open crown so far, to read it again with."""

from __future__ import annotations

from stainmap.app.opening import ASSUMED_WALL_MM, Answers
from stainmap.app.session import Session
from stainmap.errors import StainmapError


def answers_of(session: Session) -> Answers:
    """Return what has been said about the open crown so far.

    Raises
    ------
    StainmapError
        If none is open.
    """
    case = session.case
    if case is None:
        raise StainmapError("No crown is open.", advice="Open a mesh or a case first.")
    reading, said = case.reading, case.reading.set_by_user
    return Answers(
        units=case.units,
        size_state=case.source.size_state,
        block=case.plan.block,
        unit=case.source.unit,
        occlusal_axis=reading.occlusal_axis if "occlusal_axis" in said else None,
        mesial=reading.mesial if "mesial" in said else None,
        sliders=case.sliders,
        assumed_wall_mm=reading.assumed_wall_mm or ASSUMED_WALL_MM,
    )
