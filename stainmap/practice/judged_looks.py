"""How the areas of an answer look for judging: each by itself, all around it as wanted.

Light spreads sideways and brushed borders are soft, so coats on one area change the look of its
neighbours: too dark a cusp can bring a fissure that is too light nearer to what is wanted. Judged
by the whole crown, such an answer would gain by getting worse. Here every area carries the coats
that the answer puts on it, and everything beside it those of the true answer: what is wrong counts
once, where it was done, and nothing done elsewhere can make it good.

For the same reason liquids are taken up in the order of the true answer, whatever the order of the
steps: that one is judged by itself.

What belongs to which area:

- coats on a zone, to that zone; where an answer has drawn its zones otherwise, what it paints on
  the place where the zone truly is;
- accents, streaks and brushed coats, to the accent that is asked for at their place, else to the
  zone there; an accent that is asked for and reaches beyond its place, to the zone there;
- coats inside the crown, block and cement, to all areas: they show through everywhere.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.plan import Jar, Step
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.streaks import streak_shares
from stainmap.practice.exercise_task import Task
from stainmap.practice.looking import Lab

Floats = NDArray[np.float64]
Mask = NDArray[np.bool_]

_LEAST_COATS = 1e-4
"""Less than that is what rounding leaves of coats that were taken away."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AreaLook:
    """One area of an answer among wanted neighbours.

    Parameters
    ----------
    lab
        Mean L*a*b* over the area as it truly is.
    own
        (V,) coats that belong to it, all liquids together; none of its neighbours.
    """

    lab: Lab
    own: Floats


def judged_looks(task: Task, case: Case) -> dict[Area, AreaLook]:
    """Return how every area that counts looks by itself.

    Parameters
    ----------
    case
        An answer as `Task.judged` returns it.
    """
    wanted, answer = _Coats(task, task.true), _Coats(task, case)
    inside = ~task.true.reading.outer
    liquids = _liquids(task.true, case)
    theirs, ours = wanted.everywhere(), answer.everywhere()
    ground = _Ground(
        case=case,
        liquids=liquids,
        coats={
            liquid: np.where(inside, own, there)
            for liquid, (there, own) in _paired(wanted.mixed(theirs), answer.mixed(ours)).items()
        },
    )
    return {
        area: _look(task, area, ground, wanted, answer)
        for area in task.areas
        if area in task.looker.weights
    }


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Ground:
    """What lies where an area is not: (V,) coats by liquid, undiluted."""

    case: Case
    liquids: tuple[str, ...]
    coats: dict[str, Floats]


def _look(task: Task, area: Area, ground: _Ground, wanted: _Coats, answer: _Coats) -> AreaLook:
    size = len(task.true.zones)
    theirs, ours = wanted.of(area), answer.of(area)
    coats = dict(ground.coats)
    for liquid, (there, own) in _paired(wanted.mixed(theirs), answer.mixed(ours)).items():
        # What is alike stays as it is to the last digit: it must not look different.
        if not np.array_equal(there, own):
            coats[liquid] = np.maximum(coats.get(liquid, 0.0) - there + own, 0.0)
    laid = tuple(
        one for one in ground.liquids if one in coats and (coats[one] > _LEAST_COATS).any()
    )
    field = np.array([coats[liquid] for liquid in laid], np.float32).reshape(len(laid), size)
    return AreaLook(
        lab=task.looker.means(_plain(ground.case, laid), field)[area],
        own=sum(ours, np.zeros(size)),
    )


def _plain(case: Case, liquids: tuple[str, ...]) -> Case:
    """Return the case with an undiluted step for each liquid: dilution is in the coats."""
    jars = tuple(Jar(number=number, liquid=one) for number, one in enumerate(liquids, start=1))
    steps = tuple(Step(jar=jar.number) for jar in jars)
    return replace(case, plan=replace(case.plan, jars=jars, steps=steps))


def _liquids(true: Case, answer: Case) -> tuple[str, ...]:
    """Return all liquids: those of the true answer as it takes them, then any others by name."""
    first = list(dict.fromkeys(true.plan.liquid_of(step) for step in true.plan.steps))
    others = {answer.plan.liquid_of(step) for step in answer.plan.steps} - set(first)
    return (*first, *sorted(others))


def _paired(theirs: dict[str, Floats], ours: dict[str, Floats]) -> dict[str, tuple[Floats, Floats]]:
    """Return true and own coats (V,) of every liquid that either of them has."""
    found = {}
    for liquid in dict.fromkeys([*theirs, *ours]):
        one, other = theirs.get(liquid), ours.get(liquid)
        if one is None and other is not None:
            found[liquid] = (np.zeros_like(other), other)
        elif one is not None:
            found[liquid] = (one, np.zeros_like(one) if other is None else other)
    return found


class _Coats:
    """The coats of a plan, undiluted, by liquid and by the area that they belong to."""

    def __init__(self, task: Task, case: Case) -> None:
        self._case, self._true = case, task.true
        self._layout = task.looker.layout
        self._outer = task.true.reading.outer
        accents = [area for area in task.areas if isinstance(area, Accent)]
        self._places = {one: _place(task.true, one) for one in accents}
        self._as_drawn: dict[Zone, NDArray[np.uint8]] = {}
        self._on_top = {
            step: self._top(step, tuple(accents)) for step in range(len(case.plan.steps))
        }

    def everywhere(self) -> list[Floats]:
        """Return all coats of every step, (V,) each."""
        return list(self._layout.coats(self._case).astype(np.float64))

    def of(self, area: Area) -> list[Floats]:
        """Return the coats of every step that belong to an area, (V,) each, never below zero."""
        if isinstance(area, Zone):
            return self._of_zone(area)
        place = self._places[area]
        return [
            np.where(place, np.maximum(self._on_top[step] + self._accent(step, area), 0.0), 0.0)
            for step in range(len(self._case.plan.steps))
        ]

    def mixed(self, coats: list[Floats]) -> dict[str, Floats]:
        """Return coats of every step summed by liquid, each counted as its jar is diluted."""
        plan = self._case.plan
        found: dict[str, Floats] = {}
        for step, one in zip(plan.steps, coats, strict=True):
            liquid, share = plan.liquid_of(step), plan.jar(step.jar).dilution
            found[liquid] = found.get(liquid, 0.0) + share * one
        return found

    def _of_zone(self, zone: Zone) -> list[Floats]:
        here = self._outer & (self._true.zones == int(zone))
        claimed = np.zeros(len(here), bool)
        for place in self._places.values():
            claimed |= place
        zones = self._drawn(zone, here)
        found = []
        for index, step in enumerate(self._case.plan.steps):
            coats = np.zeros(len(here))
            shares = self._layout.shares(zones, step.edge_softness_mm)
            for entry in step.areas:
                its_own = zones is not self._true.zones or entry.area is zone
                if isinstance(entry.area, Zone) and entry.area is not Zone.INNER and its_own:
                    coats += self._layout.entry_coats(self._case, entry, shares)
            coats += np.where(here & ~claimed, self._on_top[index], 0.0)
            for accent, place in self._places.items():
                coats += np.where(here & ~place, self._accent(index, accent), 0.0)
            found.append(np.maximum(coats, 0.0))
        return found

    def _drawn(self, zone: Zone, here: Mask) -> NDArray[np.uint8]:
        """Return the zones that say what lies on a zone's true place: the true ones, mostly."""
        if (self._case.zones[here] == int(zone)).all():
            return self._true.zones
        if zone not in self._as_drawn:
            self._as_drawn[zone] = np.where(here, self._case.zones, 0).astype(np.uint8)
        return self._as_drawn[zone]

    def _top(self, index: int, asked: tuple[Accent, ...]) -> Floats:
        """Return what a step puts on top of zones, but for accents that are asked for."""
        case, step = self._case, self._case.plan.steps[index]
        coats = np.zeros(len(case.zones))
        for entry in step.areas:
            if isinstance(entry.area, Accent) and entry.area not in asked:
                coats += self._accent(index, entry.area)
        for streaks in step.streaks:
            coats += streaks.coats * streak_shares(
                case.surface.mesh, case.zones, case.reading, streaks
            )
        if step.brushed is not None:
            coats[step.brushed.vertices] += step.brushed.coats
        return np.where(self._outer, coats, 0.0)

    def _accent(self, index: int, accent: Accent) -> Floats:
        step = self._case.plan.steps[index]
        entry = step.entry(accent)
        if entry is None:
            return np.zeros(len(self._case.zones))
        shares = np.zeros((7, 0), np.float32)
        coats = self._layout.entry_coats(self._case, entry, shares).astype(np.float64)
        return np.where(self._outer, coats, 0.0)


def _place(true: Case, accent: Accent) -> Mask:
    share = true.accent(accent)
    return np.zeros(len(true.zones), bool) if share is None else np.asarray(share > 0.0)
