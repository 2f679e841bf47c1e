"""What reading and zones both begin with: the body, its coarser copy and its relief."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.planning.body import Body, find_body
from stainmap.planning.progress import Steps
from stainmap.planning.relief import Reliefs, find_reliefs
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.words import translate


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Survey:
    """A body and the reliefs of its copy; half of the time until zones are there."""

    body: Body
    reliefs: Reliefs


def survey_body(operator: SurfaceOperator, steps: Steps) -> Survey:
    """Return the survey of the operator's mesh."""
    body = steps.during(
        0.0, translate("survey", "looking at the body"), lambda: find_body(operator)
    )
    return Survey(body=body, reliefs=find_reliefs(body.operator, steps.part(0.4, 1.0)))


def survey_at_hand(operator: SurfaceOperator, at_hand: Survey | None, steps: Steps) -> Survey:
    """Return the survey at hand, or make one.

    Raises
    ------
    ValueError
        If the one at hand is of another mesh.
    """
    if at_hand is None:
        return survey_body(operator, steps)
    if at_hand.body.whole is not operator.mesh:
        raise ValueError("the survey belongs to another mesh")
    return at_hand
