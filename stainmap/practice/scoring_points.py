"""What the measures of a plan are worth: points for what was reached, points off for faults.

None of the measures gives more points as it gets worse, and every area has its own: so a plan that
gets worse never scores more (see `Measures` for what worse is). Weights are assumed: they say what
matters more in an exercise, and are no measure of skill at the bench.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from stainmap.model.zone import Zone
from stainmap.practice.exercise import Kind, Skill
from stainmap.practice.exercise_task import Task
from stainmap.practice.score import ScorePart, fault, reached
from stainmap.practice.scoring_measures import Measures
from stainmap.practice.scoring_plan import Bare
from stainmap.practice.scoring_reach import AreaReach
from stainmap.practice.scoring_words import (
    area_name,
    cover_text,
    economy_text,
    hue_text,
    needed_text,
    reach_text,
    turn_text,
    work_text,
)
from stainmap.words import translate

_TURN_COST = 4.0
_JAR_COST, _JAR_CAP = 4.0, 12.0
_COAT_COST, _COAT_CAP = 1.0, 8.0
_COATS_SPARE: Final = 1
"""Coats of an area beyond those of the true answer that cost nothing."""
_MIX_COST, _MIX_CAP = 3.0, 9.0
_LIMIT_COST, _LIMIT_CAP = 3.0, 12.0
_KEPT_CAP = 20.0
_LEFT_OUT_COST, _LEFT_OUT_CAP = 8.0, 40.0
"""What it costs to leave out coats that are given: as much as an order that is twice wrong, so that
nothing is won by leaving out what stands in the wrong place."""
_SEEN_COST = 0.05
_GREEN_FREE, _GREEN_LOST = 0.5, 2.0
"""a* below what is wanted that costs nothing, and at which all of it is lost; assumed."""
_FEW_JAR, _FEW_COAT = 0.35, 0.08
"""Shares of the points for few jars and coats: a jar more, a coat more on every area; assumed."""


def planned_parts(task: Task, measures: Measures) -> list[ScorePart]:
    """Return the parts of a planned crown, a bridge or a crown over a dark stump."""
    few, apart = task.kind is Kind.FEW_JARS, task.kind is Kind.BRIDGE_APART
    body, offsets, cover, economy = 35.0, 45.0, 20.0, 0.0
    if few:
        body, offsets, cover, economy = 25.0, 35.0, 15.0, 25.0
    elif apart:
        body, offsets, cover = 0.0, 60.0, 40.0
    elif task.kind is Kind.DARK_STUMP:
        body, offsets, cover = 60.0, 40.0, 0.0
    asked = [one for one in measures.reaches if one.is_asked]
    points = _points(asked, body=body, offsets=offsets, whole=100.0 - cover - economy)
    parts = [
        reached(
            Skill.SHADE if one.area is Zone.BODY else _skill_of(task),
            area_name(task, one.area),
            most,
            one.share,
            reach_text(task, one),
        )
        for one, most in zip(asked, points, strict=True)
    ]
    if apart:
        parts.append(_connectors(measures, cover))
    elif cover:
        parts.append(_cover(measures.bare, cover))
    if economy:
        parts.append(_economy(measures, asked, points, economy))
    return parts + _kept_parts(task, measures) + _faults(task, measures, few=few)


def cusp_parts(task: Task, measures: Measures) -> list[ScorePart]:
    """Return the parts of cusps that were to be lowered."""
    cusp = next(one for one in measures.reaches if one.area is Zone.CUSP)
    green = max(measures.wanted_cusp_a - measures.cusp_a, 0.0)
    hue = 1.0 - min(max(green - _GREEN_FREE, 0.0) / (_GREEN_LOST - _GREEN_FREE), 1.0)
    text = hue_text(measures.cusp_a, measures.wanted_cusp_a, kept=hue >= 1.0)
    return [
        reached(
            Skill.VALUE, translate("scoring", "value"), 65.0, cusp.share, reach_text(task, cusp)
        ),
        reached(Skill.SHADE, translate("scoring", "not green"), 35.0, hue * cusp.share, text),
        *_kept_parts(task, measures),
        *_faults(task, measures),
    ]


def mixing_part(mixing: tuple[str, ...]) -> ScorePart:
    """Return the part for jars that are mixed wrongly."""
    return fault(
        Skill.MIXING,
        translate("scoring", "mixing"),
        _MIX_COST * len(mixing),
        _MIX_CAP,
        mixing[-1] if mixing else translate("scoring", "The jars are mixed as is usual."),
    )


def _points(asked: list[AreaReach], *, body: float, offsets: float, whole: float) -> list[float]:
    """Return the points there are for every area that had to be changed, `whole` together."""
    others = sum(one.area is not Zone.BODY for one in asked)
    weights = [body if one.area is Zone.BODY else offsets / max(others, 1) for one in asked]
    scale = whole / sum(weights) if sum(weights) > 0.0 else 0.0
    return [scale * weight for weight in weights]


def _skill_of(task: Task) -> Skill:
    return Skill.VALUE if task.kind in (Kind.BRIDGE_APART, Kind.LOWER_CUSPS) else Skill.SHADE


def _cover(bare: Bare, most: float) -> ScorePart:
    return reached(
        Skill.COVERAGE, translate("scoring", "nothing bare"), most, bare.share, cover_text(bare)
    )


def _connectors(measures: Measures, most: float) -> ScorePart:
    name, shares = translate("scoring", "all connectors"), measures.connectors
    if not shares:
        text = translate("scoring", "There is no connector.")
        return reached(Skill.COVERAGE, name, most, 0.0, text)
    text = translate(
        "scoring", "{count} of {all} connectors are painted over their whole surface."
    ).format(count=sum(share > 0.8 for share in shares), all=len(shares))
    return reached(Skill.COVERAGE, name, most, float(np.mean(shares)), text)


def _economy(
    measures: Measures, asked: list[AreaReach], points: list[float], most: float
) -> ScorePart:
    """Return the part for few jars and coats; every area counts as far as its colour is reached.

    So nothing is won by leaving out what is needed.
    """
    jars = max(1.0 - _FEW_JAR * max(measures.jars - measures.enough_jars, 0), 0.0)
    share = sum(
        weight * one.share * max(jars - _FEW_COAT * measures.more_coats(one.area), 0.0)
        for one, weight in zip(asked, points, strict=True)
    ) / max(sum(points), 1e-9)
    text = economy_text(*_work(measures))
    return reached(Skill.ECONOMY, translate("scoring", "few jars and coats"), most, share, text)


def _work(measures: Measures) -> tuple[str, str]:
    """Return what was used, and what the true answer takes, in words."""
    return (
        work_text(measures.jars, sum(measures.coats.values())),
        work_text(measures.enough_jars, sum(measures.enough_coats.values())),
    )


def _kept_parts(task: Task, measures: Measures) -> list[ScorePart]:
    """Return what it costs that areas which were right from the start are so no more."""
    kept = [one for one in measures.reaches if not one.is_asked]
    if not kept:
        return []
    each = _KEPT_CAP / len(kept)
    cost, cap = sum(each * (1.0 - one.share) for one in kept), _KEPT_CAP
    if task.kind in (Kind.BRIDGE_APART, Kind.LOWER_CUSPS):
        # All but one area is planned, and is to stay as it is planned.
        cost += min(_LEFT_OUT_COST * measures.left_out, _LEFT_OUT_CAP)
        cap += _LEFT_OUT_CAP
    worst = max(kept, key=lambda one: one.bands)
    text = (
        translate("scoring", "What was right from the start is so still.")
        if cost < _SEEN_COST
        else translate("scoring", "It was right before. {how}").format(how=reach_text(task, worst))
    )
    name = translate("scoring", "what was right")
    return [fault(_skill_of(task), name, cost, cap, text)]


def _faults(task: Task, measures: Measures, *, few: bool = False) -> list[ScorePart]:
    """Return the parts for order, jars, mixing and usual limits."""
    turn, limits = measures.turn, measures.limits
    parts = [
        fault(
            Skill.ORDER,
            translate("scoring", "order"),
            _TURN_COST * turn.count,
            _TURN_COST * max(len(measures.reaches), turn.count),
            turn_text(task, turn),
        ),
        mixing_part(measures.mixing),
        fault(
            Skill.ECONOMY,
            translate("scoring", "usual limits"),
            _LIMIT_COST * len(limits),
            _LIMIT_CAP,
            str(limits[0])
            if limits
            else translate("scoring", "No area has more coats than is usual."),
        ),
    ]
    if not few:
        parts.append(_needed_part(measures))
    return parts


def _needed_part(measures: Measures) -> ScorePart:
    """Return the part for jars and coats beyond need, where few of them are not what is asked."""
    jars = min(_JAR_COST * max(measures.jars - measures.enough_jars, 0), _JAR_CAP)
    more = sum(max(measures.more_coats(area) - _COATS_SPARE, 0) for area in measures.coats)
    coats = min(_COAT_COST * more, _COAT_CAP)
    text = needed_text(*_work(measures), costs=jars + coats > 0.0)
    name = translate("scoring", "jars and coats")
    return fault(Skill.ECONOMY, name, jars + coats, _JAR_CAP + _COAT_CAP, text)
