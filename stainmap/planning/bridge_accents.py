"""The usual accents of a bridge: a dark warm coat over connectors and in the embrasures.

It sets the units apart: umber or the like on the facing surfaces of both units, where the accent
"connector and embrasure" lies; common practice, no published source. The tissue side of a pontic
gets nothing of its own: it takes what the zones below it take.
"""

from __future__ import annotations

from dataclasses import replace

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, Jar, Step
from stainmap.model.zone import Accent
from stainmap.planning.coat_limits import Use, use_of
from stainmap.planning.dyes import recommended_dyes


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
            "There is no connector to paint.",
            advice="A bridge has connectors once its zones are proposed.",
        )
    if has_connector_accent(case):
        return case
    dark = [one.name for one in case.materials.liquids if use_of(one) is Use.DARK_ACCENT]
    if not dark:
        raise PlanError(
            "No liquid is a warm dark accent.",
            advice="Give one a purpose that begins with 'warm dark accent'.",
        )
    on_tray = [jar for jar in case.plan.jars if jar.liquid in dark]
    if not on_tray:
        case = _with_jar(case, dark[0])
        on_tray = [case.plan.jars[-1]]
    plan, number = case.plan, on_tray[0].number
    last = max((i for i, step in enumerate(plan.steps) if step.jar == number), default=None)
    one = CoatSpan.exactly(1)
    if last is None:
        step = Step(jar=number).with_coats(Accent.CONNECTOR, one)
        return replace(case, plan=replace(plan, steps=(*plan.steps, step)))
    changed = plan.steps[last].with_coats(Accent.CONNECTOR, one)
    return replace(case, plan=plan.with_step(last, changed))


def _with_jar(case: Case, liquid: str) -> Case:
    """Return the case with a further jar, its dyes told apart from those of the others."""
    plan = case.plan
    number = next(n for n in range(1, 100) if all(jar.number != n for jar in plan.jars))
    jar = Jar(number=number, liquid=liquid)
    jars = (*plan.jars, jar)
    dyes = recommended_dyes(replace(case, plan=replace(plan, jars=jars)))[-1]
    return replace(case, plan=replace(plan, jars=(*plan.jars, replace(jar, dye_drops=dyes))))
