"""The usual accents of a bridge: a dark warm coat over connectors and in the embrasures.

It sets the units apart: umber or the like on the facing surfaces of both units, where the accent
"connector and embrasure" lies; common practice, no published source. The tissue side of a pontic
gets nothing of its own: it takes what the zones below it take.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step
from stainmap.model.zone import Accent
from stainmap.planning.coat_limits import Use, excesses, use_of
from stainmap.planning.dyes import recommended_dyes
from stainmap.planning.outcome import coat_entries
from stainmap.words import listed, marked, translate

_PAINTED: Final = marked(
    "bridge accents",
    "Over connectors and in embrasures: {liquids}, which sets the units apart (common practice).",
)
_PLAIN: Final = marked("bridge accents", "Connectors and embrasures stay plain: {why}.")


def has_connectors(case: Case) -> bool:
    """Return True if the case has a connector or an embrasure that can be painted."""
    mask = case.accent(Accent.CONNECTOR)
    return len(case.units) > 1 and mask is not None and float(mask.max(initial=0.0)) > 0.5


def has_connector_accent(case: Case) -> bool:
    """Return True if some step paints connectors and embrasures."""
    return any(
        entry is not None and entry.coats.high > 0
        for entry in (step.entry(Accent.CONNECTOR) for step in case.plan.steps)
    )


def with_connector_accent(case: Case) -> Case:
    """Return the case with one coat of the warm dark accent over connectors, as the last step.

    The last step of that liquid takes it along; without one there is a new step, and a new jar if
    the liquid is not on the tray. A plan that paints connectors already stays as it is.

    Raises
    ------
    PlanError
        If the case has no connector, or no liquid of the materials is a warm dark accent.
    """
    if not has_connectors(case):
        raise PlanError(
            translate("bridge accents", "There is no connector to paint."),
            advice=translate(
                "bridge accents", "A bridge has connectors once its zones are proposed."
            ),
        )
    if has_connector_accent(case):
        return case
    dark = _dark_accents(case)
    if not dark:
        raise PlanError(
            translate("bridge accents", "No liquid is a warm dark accent."),
            advice=translate(
                "bridge accents", "Give one a purpose that begins with 'warm dark accent'."
            ),
        )
    on_tray = [jar for jar in case.plan.jars if jar.liquid in dark]
    if not on_tray:
        case = _with_jar(case, dark[0], dyes=True)
        on_tray = [case.plan.jars[-1]]
    return replace(case, plan=_with_coat(case.plan, on_tray[0].number))


def with_usual_accent(
    case: Case, plan: StainPlan, *, liquids: Sequence[str], most_jars: int, dyes: bool = True
) -> tuple[StainPlan, str]:
    """Return a plan for a case with the accent over its connectors where it has room, and a word.

    Unlike `with_connector_accent` it never refuses: it says in a sentence why connectors stay
    plain. A crown without connectors gets no sentence.

    Parameters
    ----------
    liquids
        What may be used.
    most_jars
        On the tray.
    dyes
        False leaves the dyes of a further jar out.
    """
    there = replace(case, plan=plan)
    if not has_connectors(case):
        return plan, ""
    if has_connector_accent(there):
        return plan, translate("bridge accents", _PAINTED).format(
            liquids=listed(_over_connectors(plan))
        )
    dark = [name for name in _dark_accents(case) if name in liquids]
    if not dark:
        return plan, translate("bridge accents", _PLAIN).format(
            why=translate("bridge accents", "no warm dark accent is at hand")
        )
    on_tray = [jar for jar in plan.jars if jar.liquid in dark]
    if not on_tray:
        if len(plan.jars) >= most_jars:
            return plan, translate("bridge accents", _PLAIN).format(
                why=translate("bridge accents", "{liquid} would need a further jar").format(
                    liquid=dark[0]
                )
            )
        there = _with_jar(there, dark[0], dyes=dyes)
        on_tray = [there.plan.jars[-1]]
    painted = _with_coat(there.plan, on_tray[0].number)
    coats: dict[str, float] = {}
    for entry in coat_entries(replace(case, plan=painted), Accent.CONNECTOR):
        coats[entry.liquid] = coats.get(entry.liquid, 0.0) + max(s.high for s in entry.coats)
    over = [
        one
        for one in excesses(Accent.CONNECTOR, coats, case.materials)
        if Use.DARK_ACCENT in one.limit.uses
    ]
    if over:
        return plan, translate("bridge accents", _PLAIN).format(
            why=translate(
                "bridge accents", "what lies below takes the usual limit ({limit})"
            ).format(limit=over[0].limit.label)
        )
    return painted, translate("bridge accents", _PAINTED).format(
        liquids=listed(_over_connectors(painted))
    )


def _over_connectors(plan: StainPlan) -> list[str]:
    """Return the liquids that a plan paints over connectors."""
    names = [
        plan.liquid_of(step)
        for step in plan.steps
        if (entry := step.entry(Accent.CONNECTOR)) is not None and entry.coats.high > 0
    ]
    return list(dict.fromkeys(names))


def _dark_accents(case: Case) -> list[str]:
    return [one.name for one in case.materials.liquids if use_of(one) is Use.DARK_ACCENT]


def _with_coat(plan: StainPlan, number: int) -> StainPlan:
    """Return a plan with one coat of a jar over connectors, in its last step or a new one."""
    last = max((i for i, step in enumerate(plan.steps) if step.jar == number), default=None)
    one = CoatSpan.exactly(1)
    if last is None:
        step = Step(jar=number).with_coats(Accent.CONNECTOR, one)
        return replace(plan, steps=(*plan.steps, step))
    return plan.with_step(last, plan.steps[last].with_coats(Accent.CONNECTOR, one))


def _with_jar(case: Case, liquid: str, *, dyes: bool) -> Case:
    """Return the case with a further jar; with `dyes` told apart from those of the others."""
    plan = case.plan
    number = next(n for n in range(1, 100) if all(jar.number != n for jar in plan.jars))
    jar = Jar(number=number, liquid=liquid)
    jars = (*plan.jars, jar)
    if dyes:
        own = recommended_dyes(replace(case, plan=replace(plan, jars=jars)))[-1]
        jars = (*plan.jars, replace(jar, dye_drops=own))
    return replace(case, plan=replace(plan, jars=jars))
