"""What an answer to an exercise is worth, without one ideal plan: many plans score in full.

Points are given for what was reached and taken off for faults; together they are the score, not
below the floor. No share and no cost here gets better as a plan gets worse. Weights are assumed:
they say what matters more in an exercise, and are no measure of skill at the bench.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import Final

import numpy as np

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Zone
from stainmap.practice.exercise import FAULTS, Kind, Skill
from stainmap.practice.exercise_faults import WORDS as FAULT_WORDS
from stainmap.practice.exercise_task import Task
from stainmap.practice.looking import Looked
from stainmap.practice.score import Score, ScorePart, fault, reached, total
from stainmap.practice.scoring_areas import AreaOverlap, accent_overlaps, zone_overlaps
from stainmap.practice.scoring_overlay import areas_overlay, coats_overlay, colour_overlay
from stainmap.practice.scoring_plan import (
    AreaReach,
    Bare,
    area_reaches,
    bare_places,
    jars_used,
    left_out,
    limit_faults,
    map_followed,
    mixing_faults,
    order_faults,
)
from stainmap.practice.scoring_words import (
    area_name,
    coats_text,
    cover_text,
    economy_text,
    hue_text,
    overlap_text,
    reach_text,
    rounds_text,
    with_coats,
    work_text,
)
from stainmap.surface.geodesic import distance_graph
from stainmap.words import in_english, speaks_english, translate

_ORDER_COST, _ORDER_CAP = 4.0, 12.0
_JAR_COST, _JAR_CAP = 4.0, 12.0
_ROUND_COST, _ROUND_CAP = 1.0, 8.0
_MIX_COST, _MIX_CAP = 3.0, 9.0
_LIMIT_COST, _LIMIT_CAP = 3.0, 12.0
_KEPT_CAP = 20.0
_LEFT_OUT_COST, _LEFT_OUT_CAP = 8.0, 40.0
"""What it costs to leave out coats that are given: as much as an order that is twice wrong, so that
nothing is won by leaving out what stands in the wrong place."""
_SEEN_COST = 0.05
_ROUNDS_SPARE: Final = 2
"""Rounds of painting beyond those of the true answer that cost nothing."""
_GREEN_FREE, _GREEN_LOST = 0.5, 2.0
"""a* below what is wanted that costs nothing, and at which all of it is lost; assumed."""
_BLOCK_FREE, _BLOCK_LOST = 0.8, 4.0
"""dE00 beyond the best block that costs nothing, and at which all is lost; assumed."""
_BLOCK_COAT_COST = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultAnswer:
    """What a trainee says went wrong: the cause, and what is to be seen of it; None if unsaid."""

    cause: Kind | None = None
    sign: Kind | None = None

    def __post_init__(self) -> None:
        """Refuse what is no fault."""
        for one in (self.cause, self.sign):
            if one is not None and one not in FAULTS:
                raise ValueError(f"{one} is no fault")


def score_plan(task: Task, answer: Case) -> Score:
    """Return what a planned or painted answer is worth.

    Raises
    ------
    PlanError
        If the answer is on another crown.
    ValueError
        If the exercise asks for a choice, not for a plan.
    """
    if not task.kind.is_planned:
        raise ValueError("what went wrong is answered by a choice")
    case = task.judged(answer)
    if task.kind is Kind.FIND_AREAS:
        return _areas(task, case)
    if task.kind is Kind.CHOOSE_BLOCK:
        return _block(task, case)
    looked = task.looker.look(case)
    if task.kind is Kind.PAPER_MAP:
        return _map(task, looked)
    if task.kind is Kind.LOWER_CUSPS:
        return _cusps(task, looked)
    return _planned(task, looked)


# --- areas -------------------------------------------------------------------------------------


def _areas(task: Task, case: Case) -> Score:
    zones = tuple(area for area in task.areas if isinstance(area, Zone))
    accents = tuple(area for area in task.areas if isinstance(area, Accent))
    graph = distance_graph(task.true.surface.mesh)
    found = (
        *zone_overlaps(task.true, case, zones, graph),
        *accent_overlaps(task.true, case, accents, graph),
    )
    begun = (
        *zone_overlaps(task.true, task.start, zones, graph),
        *accent_overlaps(task.true, task.start, accents, graph),
    )
    # Accents weigh half as much as zones: they are fewer square millimetres and softer.
    weights = np.array([1.0] * len(zones) + [0.5] * len(accents))
    points = 100.0 * weights / weights.sum()
    parts = [
        _overlap_part(task, one, before, float(most))
        for one, before, most in zip(found, begun, points, strict=True)
    ]
    overlay = areas_overlay(task, case)
    mean = float(np.mean([one.overlap for one in found]))
    return total(parts, overlay, details={"mean overlap": round(mean, 3)})


def _overlap_part(task: Task, one: AreaOverlap, before: AreaOverlap, most: float) -> ScorePart:
    name = area_name(task, one.area)
    gained = max(one.overlap - before.overlap, 0.0) / max(1.0 - before.overlap, 1e-9)
    return reached(Skill.AREAS, name, most, gained, overlap_text(name, one))


# --- the block ---------------------------------------------------------------------------------


def _block(task: Task, case: Case) -> Score:
    chosen = next((fit for fit in task.blocks if fit.block == case.plan.block), None)
    best = min(task.blocks, key=lambda fit: (max(fit.de00, _BLOCK_FREE), fit.coats))
    block = translate("scoring", "block")
    if chosen is None or chosen.block == task.start.plan.block:
        text = (
            translate("scoring", "The block is the one that was there, and it does not do.")
            if chosen is not None
            else translate(
                "scoring", "{block} is of another strength class than was asked about."
            ).format(block=case.plan.block)
        )
        part = reached(Skill.BLOCK, block, 100.0, 0.0, text)
        return total([part], empty=True, details={"block": case.plan.block})
    beyond = max(chosen.de00 - best.de00, 0.0)
    share = 1.0 - max(beyond - _BLOCK_FREE, 0.0) / (_BLOCK_LOST - _BLOCK_FREE)
    text = translate(
        "scoring",
        "On {block} the body comes within {de00:.1f} dE00 of what is wanted {coats}; bare it is L*"
        " {bare:.1f}.",
    ).format(
        block=chosen.block,
        de00=chosen.de00,
        coats=with_coats(chosen.coats),
        bare=chosen.bare[0],
    )
    if chosen.block != best.block:
        other = translate("scoring", "On {block} it comes within {de00:.1f} {coats}.").format(
            block=best.block, de00=best.de00, coats=with_coats(best.coats)
        )
        text = f"{text} {other}"
    enough = max(
        best.coats, sum(step.entry(Zone.BODY) is not None for step in task.true.plan.steps)
    )
    more = max(chosen.coats - enough, 0)
    parts = [
        reached(Skill.BLOCK, block, 100.0, share, text),
        fault(
            Skill.ECONOMY,
            translate("scoring", "coats it takes"),
            _BLOCK_COAT_COST * more,
            4 * _BLOCK_COAT_COST,
            coats_text(more, best.block),
        ),
    ]
    return total(parts, details={"block": chosen.block})


# --- plans -------------------------------------------------------------------------------------


def _planned(task: Task, looked: Looked) -> Score:
    reaches = area_reaches(task, looked)
    bare = bare_places(task, looked)
    few, apart = task.kind is Kind.FEW_JARS, task.kind is Kind.BRIDGE_APART
    stump = task.kind is Kind.DARK_STUMP
    body, offsets, cover, economy = 35.0, 45.0, 20.0, 0.0
    if few:
        body, offsets, cover, economy = 25.0, 35.0, 15.0, 25.0
    elif apart:
        body, offsets, cover = 0.0, 60.0, 40.0
    elif stump:
        body, offsets, cover = 60.0, 40.0, 0.0
    parts = _reached_parts(task, reaches, body=body, offsets=offsets, whole=100.0 - cover - economy)
    gained = sum(part.points for part in parts) / max(sum(part.most for part in parts), 1e-9)
    if apart:
        parts.append(_connectors(task, looked, cover))
    elif cover:
        parts.append(_cover(bare, cover))
    if economy:
        parts.append(_economy(task, looked, economy, gained))
    parts += _kept_parts(task, reaches, looked.case)
    parts += _faults(task, looked, few=few)
    return total(parts, colour_overlay(task, looked), details=_figures(reaches))


def _reached_parts(
    task: Task, reaches: tuple[AreaReach, ...], *, body: float, offsets: float, whole: float
) -> list[ScorePart]:
    """Return a part for every area that had to be changed; their points are `whole` together."""
    asked = [one for one in reaches if one.is_asked]
    others = [one for one in asked if one.area is not Zone.BODY]
    weights = [body if one.area is Zone.BODY else offsets / max(len(others), 1) for one in asked]
    scale = whole / sum(weights) if sum(weights) > 0.0 else 0.0
    return [
        reached(
            Skill.SHADE if one.area is Zone.BODY else _skill_of(task),
            area_name(task, one.area),
            scale * weight,
            one.share,
            reach_text(task, one),
        )
        for one, weight in zip(asked, weights, strict=True)
    ]


def _skill_of(task: Task) -> Skill:
    return Skill.VALUE if task.kind in (Kind.BRIDGE_APART, Kind.LOWER_CUSPS) else Skill.SHADE


def _cover(bare: Bare, most: float) -> ScorePart:
    return reached(
        Skill.COVERAGE, translate("scoring", "nothing bare"), most, bare.share, cover_text(bare)
    )


def _connectors(task: Task, looked: Looked, most: float) -> ScorePart:
    """Return the part for connectors that were painted, each of them by itself."""
    name = translate("scoring", "all connectors")
    mask = task.true.accent(Accent.CONNECTOR)
    case = task.true
    if mask is None:
        text = translate("scoring", "There is no connector.")
        return reached(Skill.COVERAGE, name, most, 0.0, text)
    more = looked.painted - task.start_look.painted
    sizes = case.surface.mesh.vertex_areas * (mask > 0.5)
    along = case.surface.mesh.vertices @ np.array(case.reading.mesial)
    middles = [
        float(along[case.reading.unit_index == unit].mean()) for unit in range(len(case.units))
    ]
    borders = [0.5 * (one + other) for one, other in itertools.pairwise(middles)]
    nearest = np.abs(along[:, None] - np.array(borders)).argmin(axis=1)
    shares = []
    for number in range(len(borders)):
        own = np.where(nearest == number, sizes, 0.0)
        shares.append(float(own @ (more >= 0.4)) / max(float(own.sum()), 1e-9))
    count = sum(share > 0.8 for share in shares)
    text = translate(
        "scoring", "{count} of {all} connectors are painted over their whole surface."
    ).format(count=count, all=len(borders))
    return reached(Skill.COVERAGE, name, most, float(np.mean(shares)), text)


def _economy(task: Task, looked: Looked, most: float, gained: float) -> ScorePart:
    """Return the part for few jars and coats; it counts as far as the colours are reached."""
    jars, rounds = jars_used(looked.case)
    enough_jars, enough_rounds = jars_used(task.true)
    more_jars = max(jars - enough_jars, 0)
    more_rounds = max(rounds - enough_rounds, 0)
    share = max(1.0 - 0.35 * more_jars - 0.08 * more_rounds, 0.0)
    text = economy_text(work_text(jars, rounds), work_text(enough_jars, enough_rounds))
    name = translate("scoring", "few jars and coats")
    return reached(Skill.ECONOMY, name, most, share * gained, text)


def _kept_parts(task: Task, reaches: tuple[AreaReach, ...], answer: Case) -> list[ScorePart]:
    """Return what it costs that areas which were right from the start are so no more."""
    kept = [one for one in reaches if not one.is_asked]
    if not kept:
        return []
    each = _KEPT_CAP / len(kept)
    cost, cap = sum(each * (1.0 - one.share) for one in kept), _KEPT_CAP
    if task.kind in (Kind.BRIDGE_APART, Kind.LOWER_CUSPS):
        # All but one area is planned, and is to stay as it is planned.
        cost += min(_LEFT_OUT_COST * left_out(task.start, answer), _LEFT_OUT_CAP)
        cap += _LEFT_OUT_CAP
    worst = max(kept, key=lambda one: one.bands)
    text = (
        translate("scoring", "What was right from the start is so still.")
        if cost < _SEEN_COST
        else translate("scoring", "It was right before. {how}").format(how=reach_text(task, worst))
    )
    name = translate("scoring", "what was right")
    return [fault(_skill_of(task), name, cost, cap, text)]


def _faults(task: Task, looked: Looked, *, few: bool = False) -> list[ScorePart]:
    """Return the parts for order, jars, mixing and usual limits."""
    case, true = looked.case, task.true
    order = order_faults(case)
    limits = limit_faults(case)
    mixing = mixing_faults(case)
    allowed = len(mixing_faults(true))
    parts = [
        fault(
            Skill.ORDER,
            translate("scoring", "order"),
            _ORDER_COST * len(order),
            _ORDER_CAP,
            order[0]
            if order
            else translate("scoring", "The order is the usual one: deep first, accents last."),
        ),
        fault(
            Skill.MIXING,
            translate("scoring", "mixing"),
            _MIX_COST * max(len(mixing) - allowed, 0),
            _MIX_CAP,
            mixing[-1]
            if len(mixing) > allowed
            else translate("scoring", "The jars are mixed as is usual."),
        ),
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
        parts.append(_jars_part(case, true))
    return parts


def _jars_part(case: Case, true: Case) -> ScorePart:
    jars, rounds = jars_used(case)
    enough_jars, enough_rounds = jars_used(true)
    more_jars = max(jars - enough_jars, 0)
    more_rounds = max(rounds - enough_rounds - _ROUNDS_SPARE, 0)
    cost = min(_JAR_COST * more_jars, _JAR_CAP) + min(_ROUND_COST * more_rounds, _ROUND_CAP)
    work, enough = work_text(jars, rounds), work_text(enough_jars, enough_rounds)
    text = rounds_text(work, enough, costs=cost > 0.0)
    return fault(
        Skill.ECONOMY, translate("scoring", "jars and rounds"), cost, _JAR_CAP + _ROUND_CAP, text
    )


def _cusps(task: Task, looked: Looked) -> Score:
    reaches = area_reaches(task, looked)
    cusp = next(one for one in reaches if one.area is Zone.CUSP)
    own, wanted = looked.areas[Zone.CUSP], task.true_look.areas[Zone.CUSP]
    green = max(wanted[1] - own[1], 0.0)
    hue = 1.0 - min(max(green - _GREEN_FREE, 0.0) / (_GREEN_LOST - _GREEN_FREE), 1.0)
    text = hue_text(own[1], wanted[1], kept=hue >= 1.0)
    parts = [
        reached(
            Skill.VALUE, translate("scoring", "value"), 65.0, cusp.share, reach_text(task, cusp)
        ),
        reached(Skill.SHADE, translate("scoring", "not green"), 35.0, hue * cusp.share, text),
        *_kept_parts(task, reaches, looked.case),
        *_faults(task, looked),
    ]
    return total(parts, colour_overlay(task, looked), details=_figures(reaches))


def _map(task: Task, looked: Looked) -> Score:
    followed = map_followed(task, looked)
    coats = (
        translate("scoring", "Every coat lies where the map wants it.")
        if followed.coats > 0.995
        else translate(
            "scoring",
            "The coats agree with the map by {percent:.0f} %; {area} is furthest from it.",
        ).format(percent=100 * followed.coats, area=followed.wrong)
    )
    order_text = (
        translate("scoring", "The order is that of the sheet.")
        if followed.order > 0.995
        else translate(
            "scoring",
            "{percent:.0f} % of the cells stand in the order of the sheet: what is painted early is"
            " taken up first.",
        ).format(percent=100 * followed.order)
    )
    parts = [
        reached(
            Skill.COVERAGE, translate("scoring", "coats as on the map"), 70.0, followed.coats, coats
        ),
        reached(
            Skill.ORDER,
            translate("scoring", "order of the sheet"),
            30.0,
            followed.order,
            order_text,
        ),
        *[part for part in _faults(task, looked, few=True) if part.skill is Skill.MIXING],
    ]
    return total(parts, coats_overlay(task, looked))


# --- what went wrong ---------------------------------------------------------------------------


def score_fault(task: Task, answer: FaultAnswer) -> Score:
    """Return what an answer to "what went wrong?" is worth: 70 for the cause, 30 for the sign.

    Raises
    ------
    ValueError
        If the exercise asks for something else.
    """
    if not task.kind.is_fault:
        raise ValueError("this exercise is answered by a plan")
    right = FAULT_WORDS[task.kind]
    true_cause, seen = translate("practice", right.cause), translate("practice", right.sign)
    cause, sign = answer.cause is task.kind, answer.sign is task.kind
    cause_text = translate("scoring", "{cause}.").format(cause=true_cause)
    if answer.cause is None:
        cause_text = translate(
            "scoring", "Nothing was said of the cause. In truth: {cause}."
        ).format(cause=true_cause)
    elif not cause:
        said = translate("practice", FAULT_WORDS[answer.cause].cause)
        cause_text = translate("scoring", "Your answer was: {said}. In truth: {cause}.").format(
            said=said, cause=true_cause
        )
    sign_text = translate("scoring", "To be seen: {sign}.").format(
        sign=seen[0].lower() + seen[1:] if speaks_english() else seen
    )
    parts = [
        reached(
            Skill.FAULTS, translate("scoring", "cause"), 70.0, 1.0 if cause else 0.0, cause_text
        ),
        reached(
            Skill.FAULTS,
            translate("scoring", "what is seen"),
            30.0,
            1.0 if sign else 0.0,
            sign_text,
        ),
    ]
    empty = answer.cause is None and answer.sign is None
    overlay = colour_overlay(task, task.start_look)
    return total(parts, overlay, empty=empty, lesson=right.lesson)


def _figures(reaches: tuple[AreaReach, ...]) -> dict[str, float | str]:
    # They are kept with the attempt: in English, whatever is spoken.
    with in_english():
        return {f"bands off, {one.area.label}": round(one.bands, 2) for one in reaches}
