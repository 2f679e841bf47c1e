"""What an answer to an exercise is worth, without one ideal plan: many plans score in full.

Points are given for what was reached and taken off for faults; together they are the score, not
below the floor. Every area is judged by itself, as if all others were as wanted: a fault counts
once, where it was made, and no score rises as an answer gets worse (see `Measures`). Weights are
assumed: they say what matters more in an exercise, and are no measure of skill at the bench.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Zone
from stainmap.practice.exercise import FAULTS, Kind, Skill
from stainmap.practice.exercise_faults import WORDS as FAULT_WORDS
from stainmap.practice.exercise_task import Task
from stainmap.practice.score import Score, ScorePart, fault, reached, total
from stainmap.practice.scoring_areas import AreaOverlap, accent_overlaps, zone_overlaps
from stainmap.practice.scoring_map import map_followed
from stainmap.practice.scoring_measures import plan_measures
from stainmap.practice.scoring_overlay import areas_overlay, coats_overlay, colour_overlay
from stainmap.practice.scoring_plan import mixing_faults
from stainmap.practice.scoring_points import cusp_parts, mixing_part, planned_parts
from stainmap.practice.scoring_reach import AreaReach
from stainmap.practice.scoring_words import area_name, coats_text, overlap_text, with_coats
from stainmap.surface.geodesic import distance_graph
from stainmap.words import in_english, speaks_english, translate

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
    return _map(task, case) if task.kind is Kind.PAPER_MAP else _planned(task, case)


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


def _planned(task: Task, case: Case) -> Score:
    measures = plan_measures(task, case)
    parts = (cusp_parts if task.kind is Kind.LOWER_CUSPS else planned_parts)(task, measures)
    # What is drawn is the whole crown as it looks, each area among its neighbours as they are.
    overlay = colour_overlay(task, task.looker.look(case))
    return total(parts, overlay, details=_figures(measures.reaches), rule=_rule(task))


def _rule(task: Task) -> str:
    alone = translate(
        "scoring",
        "Every area is judged as if all others were as wanted: a fault counts once, where it was"
        " made.",
    )
    if Zone.BODY not in task.areas or task.kind is Kind.LOWER_CUSPS:
        return alone
    body = translate(
        "scoring",
        "Only a body that is off counts against all of them, as every step starts from it.",
    )
    return f"{alone} {body}"


def _map(task: Task, case: Case) -> Score:
    followed = map_followed(task, case)
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
        mixing_part(mixing_faults(case)[len(mixing_faults(task.true)) :]),
    ]
    return total(parts, coats_overlay(task, task.looker.look(case)))


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
