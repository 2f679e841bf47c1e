"""In which order areas are painted: what lies deep first, accents last.

Inner surface and neck first, then cusps and marginal ridges, accents last: common practice, no
published source. Body, interproximal and fissure zones are not named by the rule, and a margin
band is neck as well as accent; they may come at any time.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from stainmap.model.case import Case
from stainmap.model.plan import Step
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.words import marked, translate

USUAL_ORDER: Final = marked(
    "bench order",
    "Usual order: inner surface and neck, then cusps and marginal ridges, accents last"
    " (common practice, no published source).",
)
_FIRST, _THEN, _LAST = range(3)
_TURN: Final[dict[Area, int]] = {
    Zone.INNER: _FIRST,
    Accent.INNER_NECK_BAND: _FIRST,
    Zone.CERVICAL: _FIRST,
    Zone.CUSP: _THEN,
    Accent.MARGINAL_RIDGE: _THEN,
    Accent.TRIANGULAR_RIDGE: _LAST,
    Accent.LINE_ANGLE: _LAST,
    Accent.CONNECTOR: _LAST,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderFault:
    """A step that comes later than usual.

    Parameters
    ----------
    late
        The area it paints.
    early
        The one that was painted before its turn.
    sentence
        Both, for the user.
    """

    late: Area
    early: Area
    sentence: str


def order_remarks(case: Case) -> tuple[str, ...]:
    """Return a sentence for every step that comes later than usual; see `order_faults`."""
    return tuple(fault.sentence for fault in order_faults(case))


def order_faults(case: Case) -> tuple[OrderFault, ...]:
    """Return every step that comes later than usual.

    A step that paints several areas counts as the earliest of them: a base over everything is no
    accent. What the same jar goes on with is not split.
    """
    found = []
    front = bool(case.units) and case.units[0].tooth.is_front
    latest: tuple[int, int, Area] | None = None
    for number, step in enumerate(case.plan.steps, start=1):
        here = _earliest(step)
        if here is None:
            continue
        turn, area = here
        if latest is not None and turn < latest[0]:
            before, after = (area_label(one, front=front) for one in (area, latest[2]))
            sentence = translate(
                "bench order",
                "Step {number} paints '{before}' after step {latest} painted '{after}'; "
                "usually it comes before.",
            ).format(number=number, before=before, latest=latest[1], after=after)
            found.append(OrderFault(late=area, early=latest[2], sentence=sentence))
        if latest is None or turn >= latest[0]:
            latest = (turn, number, area)
    return tuple(found)


def _earliest(step: Step) -> tuple[int, Area] | None:
    turns = [
        (_TURN[entry.area], int(entry.area), entry.area)
        for entry in step.areas
        if entry.area in _TURN and entry.coats.high
    ]
    if not turns:
        return None
    turn, _, area = min(turns)
    return turn, area
