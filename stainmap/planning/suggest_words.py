"""Why a suggested plan is what it is, in sentences."""

from __future__ import annotations

from stainmap.model.zone import Area
from stainmap.planning.bench_days import TO_SHOW
from stainmap.planning.reach import too_dark
from stainmap.planning.suggest_result import (
    FEW_JARS,
    OutOfReach,
    PlanKind,
    SuggestedPlan,
    Suggestions,
)
from stainmap.predict.sintering import duration_text
from stainmap.predict.uncertainty import TIE_DE00, Verdict
from stainmap.words import marked, translate

_TITLES = {
    PlanKind.SUGGESTED: (
        marked("suggested plans", "Suggested"),
        marked("suggested plans", "suggested"),
    ),
    PlanKind.FEW_JARS: (
        marked("suggested plans", "Three jars"),
        marked("suggested plans", "three jars"),
    ),
    PlanKind.CLOSEST: (
        marked("suggested plans", "Closest there is"),
        marked("suggested plans", "closest there is"),
    ),
    PlanKind.OTHER_TRAY: (
        marked("suggested plans", "Other liquids"),
        marked("suggested plans", "other liquids"),
    ),
    PlanKind.NOTHING_INSIDE: (
        marked("suggested plans", "Nothing inside"),
        marked("suggested plans", "nothing inside"),
    ),
}
_ESTIMATED = (
    "Estimated from the suggested plan, up to 0.8 dE00 off; being predicted on the whole crown."
)
_FEW_WORDS = {1: "one jar", 2: "two jars", 3: "three jars"}


def title_of(kind: PlanKind, *, inside: bool = False) -> str:
    """Return what a kind of plan is called, alone or inside a sentence."""
    return translate("suggested plans", _TITLES[kind][int(inside)])


def coats_text(coats: tuple[tuple[str, int], ...]) -> str:
    """Return "barley 2, umber 1", or "none"."""
    return ", ".join(f"{name} {count}" for name, count in coats) or "none"


def plan_line(plan: SuggestedPlan) -> str:
    """Return jars, coats and time in one line."""
    jars = len(plan.plan.jars)
    return (
        f"{jars} jar{'s' if jars != 1 else ''}, {plan.coats} coat{'s' if plan.coats != 1 else ''}, "
        f"{duration_text(plan.minutes)} of mixing and painting"
    )


def survival_line(plan: SuggestedPlan) -> str:
    """Return how many simulated days the plan survives, and what fails most."""
    survival = plan.survival
    text = f"Survives {survival.survived:,} of {survival.days:,} simulated bench days"
    worst = int(survival.by_area.argmin())
    lost = survival.days - int(survival.by_area[worst])
    if survival.survived == survival.days or not lost:
        return f"{text}."
    return f"{text}; on {lost:,} the {plan.areas[worst].label} area strays."


def reasons(plan: SuggestedPlan, found: Suggestions) -> tuple[str, ...]:
    """Return why a plan is what it is, or how it differs from the suggested one."""
    if plan.kind is not PlanKind.SUGGESTED:
        how = "" if plan.on_whole_crown else _ESTIMATED
        return tuple(one for one in (_beside(plan, found.plans[0]), plan.connectors, how) if one)
    says = [_against_before(plan, found)]
    says += [
        f"{one.liquid} earns its jar: without it the {one.label} would be about {one.without:.1f} "
        f"off instead of {one.there:.1f}."
        for one in found.worth
        if one.without - one.there > TIE_DE00
    ]
    saving = [one.liquid for one in found.worth if one.without - one.there <= TIE_DE00]
    if saving:
        says.append(f"{' and '.join(saving)}: coats saved, the colours are as near without.")
    if found.plan(PlanKind.FEW_JARS) is None and len(plan.plan.jars) <= FEW_JARS:
        says.append(
            f"It is the plan of three jars too: it needs {_FEW_WORDS[max(len(plan.plan.jars), 1)]}."
        )
    if found.plan(PlanKind.CLOSEST) is None:
        says.append("No other plan within the limits comes closer.")
    says.append(plan.connectors)
    return tuple(one for one in says if one)


def out_of_reach_line(one: OutOfReach, block: str) -> str:
    """Return why an area cannot get what is wanted of it, with numbers."""
    kind = too_dark(one.wanted, one.bare)
    name = one.label.capitalize()
    if kind == "L*":
        return (
            f"{name}: not reachable: stain only lowers value and adds chroma. Wanted L* "
            f"{one.wanted.lightness:.1f}, {block} without stain L* {one.bare.lightness:.1f}; the "
            f"nearest is {one.nearest_de00:.1f} dE00 away."
        )
    if kind == "C*":
        return (
            f"{name}: not reachable: stain only lowers value and adds chroma. Wanted C* "
            f"{one.wanted.chroma:.1f}, {block} without stain C* {one.bare.chroma:.1f}; the nearest "
            f"is {one.nearest_de00:.1f} dE00 away."
        )
    return (
        f"{name}: no coats within the limits come nearer than {one.nearest_de00:.1f} dE00 on "
        f"{block}."
    )


def caution(found: Suggestions) -> tuple[str, ...]:
    """Return what all of it is worth."""
    days = (
        f"Days are simulated, {TO_SHOW:,} that took no part in the choice: one coat more or fewer, "
        "hand \N{PLUS-MINUS SIGN}25 %, wall \N{PLUS-MINUS SIGN}0.2 mm, dye too rich, stump a step "
        "off. More of them test the sampling, not the bench."
    )
    if found.calibrated:
        return (days,)
    return (f"Not calibrated: a {Verdict.NONE}.", days)


def _against_before(plan: SuggestedPlan, found: Suggestions) -> str:
    before: dict[Area, float] = dict(found.before)
    if not before:
        return ""
    worst = max(before.values())
    return (
        f"The furthest area is {plan.largest_de00:.1f} dE00 from what is wanted; it is {worst:.1f} "
        "with the plan as it stands."
    )


def _beside(plan: SuggestedPlan, best: SuggestedPlan) -> str:
    """Return how a plan differs from the suggested one."""
    jars = len(plan.plan.jars) - len(best.plan.jars)
    coats = plan.coats - best.coats
    gains = {
        one.label: one.de00 - other.de00
        for one in plan.areas
        if (other := best.area(one.area)) is not None
    }
    nearer = {label: -change for label, change in gains.items() if change < -TIE_DE00}
    farther = {label: change for label, change in gains.items() if change > TIE_DE00}
    effort = []
    for change, word in ((jars, "jar"), (coats, "coat")):
        if change:
            more = "more" if change > 0 else "fewer"
            effort.append(f"{abs(change)} {word}{'s' if abs(change) > 1 else ''} {more}")
    text = f"{' and '.join(effort)} than" if effort else "As many jars and coats as"
    said = []
    if nearer:
        best_label = max(nearer, key=lambda label: nearer[label])
        said.append(f"{best_label} {nearer[best_label]:.1f} nearer")
    if farther:
        worst_label = max(farther, key=lambda label: farther[label])
        said.append(f"{worst_label} {farther[worst_label]:.1f} further off")
    what = ", ".join(said) if said else "no area differs by more than a tie"
    return f"{text[0].upper()}{text[1:]} suggested: {what}."
