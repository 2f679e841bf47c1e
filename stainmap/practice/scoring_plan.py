"""What a plan did beside colours: what it left bare, order, jars, mixing, usual limits, coats.

Every measure here only grows as a plan gets worse, so that a score made of them never rises then.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import csgraph

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.planning.bench_order import OrderFault, order_faults
from stainmap.planning.coat_limits import Excess, excesses
from stainmap.planning.dyes import dye_drop_limits
from stainmap.planning.outcome import coat_entries
from stainmap.practice.exercise_task import Task
from stainmap.practice.judged_looks import AreaLook
from stainmap.practice.scoring_map import painted_cells
from stainmap.practice.scoring_reach import BARE_COATS, DUE_COATS, is_right_bare
from stainmap.surface.region import border_distance
from stainmap.words import translate

Mask = NDArray[np.bool_]

_RING_MM = 1.6
_RING_LENGTHS = 3.0
_LEAST_PIECE_MM2 = 0.3
_SOFTNESS_MM = 0.6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bare:
    """What was left without coats where some are due.

    Parameters
    ----------
    mask
        (V,) where.
    due_mm2, bare_mm2
        Where coats are due, and how much of it has none; sintered.
    rings
        How many of its pieces are narrow and long.
    widest_ring_mm
        Width of the widest of these.
    beside
        The areas that the largest piece lies in, in words; empty without any.
    """

    mask: Mask
    due_mm2: float
    bare_mm2: float
    rings: int
    widest_ring_mm: float
    beside: str

    @property
    def share(self) -> float:
        """Painted share of what is to be painted, 0 to 1."""
        return 1.0 if self.due_mm2 <= 0.0 else 1.0 - self.bare_mm2 / self.due_mm2


def bare_places(task: Task, looks: dict[Area, AreaLook], true: dict[Area, AreaLook]) -> Bare:
    """Return where coats are due and none lie.

    They are due in a zone wherever the true answer puts half a coat of its own and more, unless
    its bare block is already what is wanted. What is feathered over from a neighbour does not
    count: more coats beside it make no bare place good.

    Parameters
    ----------
    looks, true
        The areas of the answer, and of the true answer, by themselves.
    """
    case, mesh = task.true, task.true.surface.mesh
    outer = case.reading.outer
    due, mask = np.zeros(len(outer), bool), np.zeros(len(outer), bool)
    for area, look in looks.items():
        if isinstance(area, Zone) and not is_right_bare(task, area):
            here = outer & (case.zones == int(area)) & (true[area].own >= DUE_COATS)
            due |= here
            mask |= here & (look.own < BARE_COATS)
    sizes = mesh.vertex_areas
    rings, widest, beside = _rings(task, mask)
    return Bare(
        mask=mask,
        due_mm2=float(sizes[due].sum()),
        bare_mm2=float(sizes[mask].sum()),
        rings=rings,
        widest_ring_mm=widest,
        beside=beside,
    )


def _rings(task: Task, mask: Mask) -> tuple[int, float, str]:
    """Return how many bare pieces are rings, the width of the widest, and where most is bare."""
    if not mask.any():
        return 0, 0.0, ""
    mesh, zones = task.true.surface.mesh, task.true.zones
    at = np.flatnonzero(mask)
    _, piece = csgraph.connected_components(mesh.adjacency[at][:, at], directed=False)
    sizes = np.bincount(piece, mesh.vertex_areas[at])
    inside = border_distance(mesh, mask, _RING_MM, within=task.true.reading.outer)
    rings, widest = 0, 0.0
    for number in np.flatnonzero(sizes >= _LEAST_PIECE_MM2):
        own = at[piece == number]
        width = 2.0 * float(inside[own].max())
        if width < _RING_MM and sizes[number] / width > _RING_LENGTHS * width:
            rings, widest = rings + 1, max(widest, width)
    own = at[piece == int(sizes.argmax())]
    counted = np.bincount(zones[own], mesh.vertex_areas[own], minlength=7)
    front = task.true.units[0].tooth.is_front
    names = [
        area_label(Zone(int(k)), front=front) for k in np.argsort(-counted)[:2] if counted[k] > 0.2
    ]
    return rings, widest, " and ".join(names)


@dataclass(frozen=True, slots=True, kw_only=True)
class OutOfTurn:
    """What is painted out of its turn.

    Parameters
    ----------
    early
        Areas that are painted before one that usually comes first.
    missing
        Areas that are due and have no coats: they have no turn at all. Were they not counted,
        order could be won by leaving out.
    faults
        Every step that comes too late.
    """

    early: tuple[Area, ...]
    missing: tuple[Area, ...]
    faults: tuple[OrderFault, ...]

    @property
    def count(self) -> int:
        """How many areas."""
        return len({*self.early, *self.missing})


def out_of_turn(
    task: Task, case: Case, looks: dict[Area, AreaLook], true: dict[Area, AreaLook]
) -> OutOfTurn:
    """Return what an answer paints before its turn, or not at all though it is due.

    Parameters
    ----------
    looks, true
        The areas of the answer, and of the true answer, by themselves.
    """
    faults = order_faults(case)

    def has_coats(area: Area, look: AreaLook) -> bool:
        weight = task.looker.weights[area]
        return bool((look.own[weight > 0.0] >= BARE_COATS).any())

    return OutOfTurn(
        early=tuple(dict.fromkeys(fault.early for fault in faults)),
        missing=tuple(
            area
            for area, look in looks.items()
            if has_coats(area, true[area]) and not has_coats(area, look)
        ),
        faults=faults,
    )


def coats_of(task: Task, area: Area, look: AreaLook) -> int:
    """Return how many coats an area has, where it is fully covered; streaks and brush included."""
    weight = task.looker.weights[area]
    whole = float(weight @ look.own / weight.sum())
    shares = (
        task.looker.layout.shares(task.true.zones, _SOFTNESS_MM)[int(area)]
        if isinstance(area, Zone)
        else task.true.accent(area)
    )
    covered = 1.0 if shares is None else float(weight @ shares / weight.sum())
    return round(whole / max(covered, 1e-6))


def limit_faults(case: Case) -> tuple[Excess, ...]:
    """Return the usual limits that the plan goes beyond, area by area."""
    found: list[Excess] = []
    areas: list[Area] = [zone for zone in Zone if (case.zones == int(zone)).any()]
    areas += [mask.accent for mask in case.accents if _is_painted(case, mask.accent)]
    for area in areas:
        coats: dict[str, float] = {}
        for entry in coat_entries(case, area):
            most = max(span.high for span in entry.coats)
            coats[entry.liquid] = coats.get(entry.liquid, 0.0) + most
        found += excesses(area, coats, case.materials)
    return tuple(found)


def _is_painted(case: Case, accent: Accent) -> bool:
    return any(
        entry is not None and entry.coats.high > 0
        for entry in (step.entry(accent) for step in case.plan.steps)
    )


def mixing_faults(case: Case) -> tuple[str, ...]:
    """Return a sentence for every jar that is mixed wrongly: too much dye, too little, or twice.

    That two jars look alike is not counted: the program chooses the dyes of a jar by itself.
    """
    found = []
    for jar in case.plan.jars:
        low, high = dye_drop_limits(jar.liquid_drops)
        drops = sum(jar.dye_drops)
        if not low <= drops <= high:
            found.append(
                translate(
                    "scoring plan",
                    "Jar {number} has {drops} drops of dye on {liquid_drops} of liquid; usual are "
                    "{low} to {high}. Too much thins the coat, too little is not seen.",
                ).format(
                    number=jar.number,
                    drops=drops,
                    liquid_drops=jar.liquid_drops,
                    low=low,
                    high=high,
                )
            )
    liquids = [jar.liquid for jar in case.plan.jars]
    twice = sorted({one for one in liquids if liquids.count(one) > 1})
    found += [
        translate("scoring plan", "{liquid} stands in two jars: it is mixed twice.").format(
            liquid=liquid.capitalize()
        )
        for liquid in twice
    ]
    return tuple(found)


def left_out(given: Case, answer: Case) -> int:
    """Return how many painted cells of a given plan, by liquid and area, an answer lacks."""
    own = {cell for _, _, cell in painted_cells(answer)}
    return sum(cell not in own for _, _, cell in painted_cells(given))
