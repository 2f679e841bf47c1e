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
from stainmap.words import (
    coat_count_text,
    jars_text,
    listed,
    marked,
    sentence_case,
    translate,
    value_word,
)

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
_ESTIMATED = marked(
    "suggest words",
    "Estimated from the suggested plan, up to 0.8 dE00 off; being predicted on the whole crown.",
)
_FEW_WORDS = {
    1: marked("suggest words", "one jar"),
    2: marked("suggest words", "two jars"),
    3: marked("suggest words", "three jars"),
}


def title_of(kind: PlanKind, *, inside: bool = False) -> str:
    """Return what a kind of plan is called, alone or inside a sentence."""
    return translate("suggested plans", _TITLES[kind][int(inside)])


def coats_text(coats: tuple[tuple[str, int], ...]) -> str:
    """Return "barley 2, umber 1", or "none"."""
    return ", ".join(f"{name} {count}" for name, count in coats) or translate(
        "suggest words", "none"
    )


def plan_line(plan: SuggestedPlan) -> str:
    """Return jars, coats and time in one line."""
    return translate("suggest words", "{jars}, {coats}, {time} of mixing and painting").format(
        jars=jars_text(len(plan.plan.jars)),
        coats=coat_count_text(plan.coats),
        time=duration_text(plan.minutes),
    )


def survival_line(plan: SuggestedPlan) -> str:
    """Return how many simulated days the plan survives, and what fails most."""
    survival = plan.survival
    worst = int(survival.by_area.argmin())
    lost = survival.days - int(survival.by_area[worst])
    if survival.survived == survival.days or not lost:
        text = translate("suggest words", "Survives {survived:,} of {days:,} simulated bench days.")
    else:
        text = translate(
            "suggest words",
            "Survives {survived:,} of {days:,} simulated bench days; on {lost:,} the {area} area"
            " strays.",
        )
    return text.format(
        survived=survival.survived, days=survival.days, lost=lost, area=plan.areas[worst].label
    )


def reasons(plan: SuggestedPlan, found: Suggestions) -> tuple[str, ...]:
    """Return why a plan is what it is, or how it differs from the suggested one."""
    if plan.kind is not PlanKind.SUGGESTED:
        how = "" if plan.on_whole_crown else translate("suggest words", _ESTIMATED)
        return tuple(one for one in (_beside(plan, found.plans[0]), plan.connectors, how) if one)
    says = [_against_before(plan, found)]
    says += [
        translate(
            "suggest words",
            "{liquid} earns its jar: without it the {area} would be about {without:.1f}"
            " off instead of {there:.1f}.",
        ).format(liquid=one.liquid, area=one.label, without=one.without, there=one.there)
        for one in found.worth
        if one.without - one.there > TIE_DE00
    ]
    saving = [one.liquid for one in found.worth if one.without - one.there <= TIE_DE00]
    if saving:
        says.append(
            translate(
                "suggest words", "{liquids}: coats saved, the colours are as near without."
            ).format(liquids=listed(saving))
        )
    if found.plan(PlanKind.FEW_JARS) is None and len(plan.plan.jars) <= FEW_JARS:
        says.append(
            translate("suggest words", "It is the plan of three jars too: it needs {jars}.").format(
                jars=translate("suggest words", _FEW_WORDS[max(len(plan.plan.jars), 1)])
            )
        )
    if found.plan(PlanKind.CLOSEST) is None:
        says.append(translate("suggest words", "No other plan within the limits comes closer."))
    says.append(plan.connectors)
    return tuple(one for one in says if one)


def out_of_reach_line(one: OutOfReach, block: str) -> str:
    """Return why an area cannot get what is wanted of it, with numbers."""
    kind = too_dark(one.wanted, one.bare)
    name = sentence_case(one.label)
    if kind == "L*":
        return translate(
            "suggest words",
            "{name}: not reachable: stain only lowers value and adds chroma. Wanted L* "
            "{wanted:.1f}, {block} without stain L* {bare:.1f}; the nearest is "
            "{nearest:.1f} dE00 away.",
        ).format(
            name=name,
            wanted=one.wanted.lightness,
            block=block,
            bare=one.bare.lightness,
            nearest=one.nearest_de00,
        )
    if kind == "C*":
        return translate(
            "suggest words",
            "{name}: not reachable: stain only lowers value and adds chroma. Wanted C* "
            "{wanted:.1f}, {block} without stain C* {bare:.1f}; the nearest is "
            "{nearest:.1f} dE00 away.",
        ).format(
            name=name,
            wanted=one.wanted.chroma,
            block=block,
            bare=one.bare.chroma,
            nearest=one.nearest_de00,
        )
    return translate(
        "suggest words",
        "{name}: no coats within the limits come nearer than {nearest:.1f} dE00 on {block}.",
    ).format(name=name, nearest=one.nearest_de00, block=block)


def caution(found: Suggestions) -> tuple[str, ...]:
    """Return what all of it is worth."""
    days = translate(
        "suggest words",
        "Days are simulated, {days:,} that took no part in the choice: one coat "
        "more or fewer, hand ±25 %, wall ±0.2 mm, dye too rich, stump a step off. More "
        "of them test the sampling, not the bench.",
    ).format(days=TO_SHOW)
    if found.calibrated:
        return (days,)
    return (
        translate("suggest words", "Not calibrated: a {verdict}.").format(
            verdict=value_word(Verdict.NONE)
        ),
        days,
    )


def _against_before(plan: SuggestedPlan, found: Suggestions) -> str:
    before: dict[Area, float] = dict(found.before)
    if not before:
        return ""
    worst = max(before.values())
    return translate(
        "suggest words",
        "The furthest area is {furthest:.1f} dE00 from what is wanted; it is "
        "{worst:.1f} with the plan as it stands.",
    ).format(furthest=plan.largest_de00, worst=worst)


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
    if jars:
        effort.append(_more_jars(jars))
    if coats:
        effort.append(_more_coats(coats))
    said = []
    if nearer:
        label = max(nearer, key=lambda label: nearer[label])
        said.append(
            translate("suggest words", "{area} {de00:.1f} nearer").format(
                area=label, de00=nearer[label]
            )
        )
    if farther:
        label = max(farther, key=lambda label: farther[label])
        said.append(
            translate("suggest words", "{area} {de00:.1f} further off").format(
                area=label, de00=farther[label]
            )
        )
    text = (
        translate("suggest words", "{effort} than suggested: {what}.")
        if effort
        else translate("suggest words", "As many jars and coats as suggested: {what}.")
    )
    none = translate("suggest words", "no area differs by more than a tie")
    return text.format(effort=sentence_case(listed(effort)), what=", ".join(said) or none)


def _more_jars(count: int) -> str:
    """Return "2 jars more" or "1 jar fewer"."""
    if count > 0:
        text = translate("suggest words", "{jars} more")
    else:
        text = translate("suggest words", "{jars} fewer")
    return text.format(jars=jars_text(abs(count)))


def _more_coats(count: int) -> str:
    """Return "2 coats more" or "1 coat fewer"."""
    if count > 0:
        text = translate("suggest words", "{coats} more")
    else:
        text = translate("suggest words", "{coats} fewer")
    return text.format(coats=coat_count_text(abs(count)))
