"""From coats per area and liquid to a plan with jars and steps, with what must stay."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import CUSP_FADE, AreaCoats, CoatSpan, Jar, StainPlan, Step
from stainmap.model.zone import Area, Zone
from stainmap.planning.coat_limits import excesses
from stainmap.planning.dyes import recommended_dyes
from stainmap.planning.outcome import coat_entries
from stainmap.planning.reach_options import paintable_liquids
from stainmap.words import translate

Coats = Mapping[str, int]

# Liquids beyond this many would make the table of trays too long.
_MOST_LIQUIDS = 13


@dataclass(frozen=True, slots=True, kw_only=True)
class PaintedArea:
    """Coats by liquid that an area gets, in painting order."""

    area: Area
    coats: Coats


def locked_coats(plan: StainPlan, area: Area) -> dict[str, int]:
    """Return the coats by liquid that are locked on an area."""
    found: dict[str, int] = {}
    for step in plan.steps:
        entry = step.entry(area)
        if entry is not None and entry.locked:
            name = plan.liquid_of(step)
            found[name] = found.get(name, 0) + entry.coats.high
    return found


def kept_liquids(plan: StainPlan) -> tuple[str, ...]:
    """Return the liquids that stay on the tray: of locked coats, streaks and brushed coats."""
    kept = [plan.liquid_of(step) for step in plan.steps if _kept(step) is not None]
    return tuple(dict.fromkeys(kept))


def searched_liquids(case: Case, stock: Sequence[str] | None) -> tuple[str, ...]:
    """Return the liquids to search among; those of the plan first where there are too many."""
    names = paintable_liquids(case.materials, stock)
    kept = [name for name in kept_liquids(case.plan) if name not in names]
    known = paintable_liquids(case.materials, (*names, *kept))
    if not known:
        raise PlanError(
            translate("suggest plan", "There is no liquid that coats could be suggested of."),
            advice=translate(
                "suggest plan", "Say which liquids are in stock, and what each is for."
            ),
        )
    if len(known) <= _MOST_LIQUIDS:
        return known
    planned = {jar.liquid for jar in case.plan.jars}
    first = sorted(known, key=lambda name: name not in planned)[:_MOST_LIQUIDS]
    return tuple(name for name in known if name in first)


def compose(
    case: Case,
    liquids: Sequence[str],
    painted: Sequence[PaintedArea],
    *,
    block: str = "",
    dyes: bool = True,
) -> StainPlan:
    """Return a plan that gives areas these coats and keeps what is not the search's to change.

    Locked coats, streaks and brushed coats stay as they are. Areas that nothing was sought for
    keep their coats as far as their jars are on the tray, and the limits allow them over what now
    lies below. Inside comes first, then liquids in painting order; jars are numbered in that order
    and get dye recipes of their own.

    Parameters
    ----------
    liquids
        All that may be painted, in painting order.
    painted
        Every area that was sought for, the inner surface among them.
    block
        Name of the block; the plan's own if empty.
    dyes
        False leaves dyes out where nobody will mix the plan.
    """
    plan = case.plan
    sought = {one.area for one in painted}
    order = {name: index for index, name in enumerate(liquids)}
    used = {name for one in painted for name, count in one.coats.items() if count}
    used |= set(kept_liquids(plan))
    steps: list[tuple[str, Step]] = []
    for old in plan.steps:
        name = plan.liquid_of(old)
        kept = _kept(old)
        areas = tuple(
            entry
            for entry in old.areas
            if entry.locked or (entry.area not in sought and name in used)
        )
        if kept is not None or areas:
            base = replace(old, areas=()) if kept is not None else _bare(old)
            steps.append((name, replace(base, areas=areas)))
    for one in painted:
        locked = locked_coats(plan, one.area)
        for name, count in one.coats.items():
            if count > locked.get(name, 0):
                _add(steps, name, one.area, count - locked.get(name, 0))

    def key(entry: tuple[str, Step]) -> tuple[bool, int]:
        name, step = entry
        inside = bool(step.areas) and all(own.area is Zone.INNER for own in step.areas)
        return not inside, order.get(name, len(order))

    steps.sort(key=key)
    made = replace(plan, block=block or plan.block)
    full = _crowded(case, _numbered(made, steps), sought)
    if full:
        free = [(name, _without(step, full)) for name, step in steps]
        steps = [one for one in free if one[1].areas or _kept(one[1]) is not None]
    made = _numbered(made, steps)
    if not dyes:
        return made
    recipes = recommended_dyes(replace(case, plan=made))
    dyed = tuple(
        replace(jar, dye_drops=drops) for jar, drops in zip(made.jars, recipes, strict=True)
    )
    return replace(made, jars=dyed)


def _numbered(plan: StainPlan, steps: Sequence[tuple[str, Step]]) -> StainPlan:
    """Return the plan with these steps, its jars numbered in their order."""
    names = list(dict.fromkeys(name for name, _ in steps))
    had = {jar.liquid: jar for jar in plan.jars}
    jars = tuple(
        replace(had[name], number=number) if name in had else Jar(number=number, liquid=name)
        for number, name in enumerate(names, start=1)
    )
    numbered = tuple(replace(step, jar=names.index(name) + 1) for name, step in steps)
    return replace(plan, jars=jars, steps=numbered)


def _crowded(case: Case, plan: StainPlan, sought: Collection[Area]) -> set[Area]:
    """Return the areas nothing was sought for whose own coats are too many over what lies below."""
    there = replace(case, plan=plan)
    own = {entry.area for step in plan.steps for entry in step.areas} - set(sought)
    full: set[Area] = set()
    for area in own:
        coats: dict[str, float] = {}
        for entry in coat_entries(there, area):
            coats[entry.liquid] = coats.get(entry.liquid, 0.0) + max(s.high for s in entry.coats)
        if excesses(area, coats, case.materials):
            full.add(area)
    return full


def _without(step: Step, areas: Collection[Area]) -> Step:
    """Return a step without its coats on some areas, but for locked ones."""
    kept = tuple(entry for entry in step.areas if entry.locked or entry.area not in areas)
    return replace(step, areas=kept)


def _kept(step: Step) -> Step | None:
    """Return a step that has something which stays, or None."""
    stays = any(entry.locked for entry in step.areas) or step.streaks or step.brushed is not None
    return step if stays else None


def _bare(step: Step) -> Step:
    return Step(jar=step.jar, edge_softness_mm=step.edge_softness_mm)


def _add(steps: list[tuple[str, Step]], name: str, area: Area, count: int) -> None:
    """Put coats into a step of that liquid which has room for the area, or into a new one."""
    inside = area is Zone.INNER
    entry = AreaCoats(
        area=area,
        coats=CoatSpan.exactly(count),
        fade=CUSP_FADE if area is Zone.CUSP else None,
    )
    for index, (own, step) in enumerate(steps):
        other = {one.area for one in step.areas}
        same_side = not other or inside == (Zone.INNER in other)
        if own == name and same_side and area not in other:
            areas = tuple(sorted((*step.areas, entry), key=lambda one: int(one.area)))
            steps[index] = (name, replace(step, areas=areas))
            return
    steps.append((name, Step(jar=1, areas=(entry,))))
