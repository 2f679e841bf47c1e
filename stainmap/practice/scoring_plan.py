"""What a plan reached and what it did wrong, measured on the crown; points come later.

Every measure here only grows as a plan gets worse, so that a score made of them never rises then.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import csgraph

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.optics.difference import delta_e_00
from stainmap.planning.bench_order import order_remarks
from stainmap.planning.coat_limits import Excess, excesses
from stainmap.planning.dyes import dye_drop_limits
from stainmap.planning.outcome import coat_entries
from stainmap.planning.schedule import coats_to_paint
from stainmap.practice.exercise_task import Task
from stainmap.practice.looking import Looked
from stainmap.predict.uncertainty import PERCEPTIBLE_DE00
from stainmap.surface.region import border_distance
from stainmap.words import translate

Mask = NDArray[np.bool_]

VALUE_BAND: Final = 1.0
CHROMA_BAND: Final = 1.5
"""Bands about a wanted offset, dL* and dC*, within which it is reached; assumed."""
ACCENT_BANDS: Final = 0.5
"""Bands of accents are this much of those of zones: they are narrow, and light evens them out."""
BODY_BAND_DE00: Final = 1.0
"""The body is reached within this; assumed, between what half of observers see and accept."""
ASKED_FROM: Final = 1.5
"""Bands off from which there is something to do; assumed."""
LOST_AT: Final = 4.0
"""Bands away from what is wanted at which nothing is reached any more; assumed."""
BARE_COATS: Final = 0.25
DUE_COATS: Final = 0.5
_RING_MM = 1.6
_RING_LENGTHS = 3.0
_LEAST_PIECE_MM2 = 0.3


class Ruled(StrEnum):
    """What it is about an area that is furthest from what is wanted."""

    STEP = "its step from the body"
    OWN = "its own colour"
    BODY = "the body it stands beside"


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaReach:
    """How an area stands to what is wanted of it.

    Of an area other than the body its step from the body counts, its own colour, and the body
    beside it, whichever is furthest off. Steps alone would forgive too much: where all areas are
    off alike, a body that goes wrong as well would bring the steps back.

    Parameters
    ----------
    bands
        How far it is off, in bands: 1 and less is reached.
    before
        The same of what the exercise starts from.
    off
        dL* and dC* from what is wanted: of the body itself, of other areas as offset from it.
    own
        dL* and dC* of the area itself from what is wanted.
    de00
        CIEDE2000 of the area itself to what is wanted.
    ruled
        What `bands` comes from.
    painted
        Where the exercise starts without coats: the share of the area that has some now. An area
        that was not touched is not reached, even if it happens to look right. None elsewhere.
    """

    area: Area
    bands: float
    before: float
    off: tuple[float, float]
    own: tuple[float, float]
    de00: float
    ruled: Ruled
    painted: float | None

    @property
    def is_asked(self) -> bool:
        """True if there was something to do here; otherwise it is only to stay as it is."""
        return self.painted is not None or self.before > ASKED_FROM

    @property
    def share(self) -> float:
        """How much of it is reached, 0 to 1, beyond what was there to begin with."""
        if self.painted is not None:
            return quality(self.bands) * self.painted
        if not self.is_asked:
            return min(quality(self.bands) / quality(self.before), 1.0)
        begun = quality(self.before)
        return max(quality(self.bands) - begun, 0.0) / (1.0 - begun)


def quality(bands: float) -> float:
    """Return how much of an area is reached at so many bands off: 1 to 1 band, 0 from 4 on."""
    return float(np.clip((LOST_AT - bands) / (LOST_AT - 1.0), 0.0, 1.0))


def area_reaches(task: Task, looked: Looked) -> tuple[AreaReach, ...]:
    """Return how every area that counts stands to what is wanted."""
    return tuple(_reach(task, looked, area) for area in task.areas if area in task.true_look.areas)


def _reach(task: Task, looked: Looked, area: Area) -> AreaReach:
    bands, ruled = _bands(task, looked, area)
    return AreaReach(
        area=area,
        bands=bands,
        before=_bands(task, task.start_look, area)[0],
        off=_off(task, looked, area),
        own=_own(task, looked, area),
        de00=_de00(task, looked, area),
        ruled=ruled,
        painted=_painted_share(task, looked, area),
    )


def _painted_share(task: Task, looked: Looked, area: Area) -> float | None:
    """Return the painted share of an area that is bare at the start and has to be painted."""
    weight = task.looker.weights[area]
    if float(weight @ task.start_look.painted) > 0.0 or _is_right_bare(task, area):
        return None
    due = np.where(task.true_look.painted >= DUE_COATS, weight, 0.0)
    if due.sum() <= 0.0:
        return None
    return float(due @ (looked.painted >= BARE_COATS) / due.sum())


def _is_right_bare(task: Task, area: Area) -> bool:
    """Return True if nobody would see what coats are to change in an area."""
    bare, wanted = task.start_look.areas[area], task.true_look.areas[area]
    return float(delta_e_00(np.array(bare), np.array(wanted))) <= PERCEPTIBLE_DE00


def _own(task: Task, looked: Looked, area: Area) -> tuple[float, float]:
    own, wanted = looked.areas[area], task.true_look.areas[area]
    chromas = [float(np.hypot(lab[1], lab[2])) for lab in (own, wanted)]
    return own[0] - wanted[0], chromas[0] - chromas[1]


def _de00(task: Task, looked: Looked, area: Area) -> float:
    return float(delta_e_00(np.array(looked.areas[area]), np.array(task.true_look.areas[area])))


def _off(task: Task, looked: Looked, area: Area) -> tuple[float, float]:
    own = _own(task, looked, area)
    if area is Zone.BODY:
        return own
    body = _own(task, looked, Zone.BODY)
    return own[0] - body[0], own[1] - body[1]


def _in_bands(off: tuple[float, float]) -> float:
    return max(abs(off[0]) / VALUE_BAND, abs(off[1]) / CHROMA_BAND)


def _bands(task: Task, looked: Looked, area: Area) -> tuple[float, Ruled]:
    """Return how far an area is off, in bands, and by what.

    Steps, colours and the body's colour are measured alike: of three such figures none gets
    better in sum where area and body both go further the same way.
    """
    if area is Zone.BODY:
        return _de00(task, looked, area) / BODY_BAND_DE00, Ruled.OWN
    own = max(_in_bands(_own(task, looked, area)), _de00(task, looked, area) / BODY_BAND_DE00)
    found = (
        (_in_bands(_off(task, looked, area)), Ruled.STEP),
        (own, Ruled.OWN),
        (_in_bands(_own(task, looked, Zone.BODY)), Ruled.BODY),
    )
    bands, ruled = max(found, key=lambda one: one[0])
    return (bands / ACCENT_BANDS if isinstance(area, Accent) else bands), ruled


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


def bare_places(task: Task, looked: Looked) -> Bare:
    """Return where coats are due and none lie.

    They are due on the outside wherever the true answer has half a coat and more, in areas whose
    bare block is not already what is wanted.
    """
    case, mesh = task.true, task.true.surface.mesh
    outer = case.reading.outer
    needed = np.zeros(len(outer), bool)
    for area in task.areas:
        there = isinstance(area, Zone) and area in task.true_look.areas
        if there and not _is_right_bare(task, area):
            needed |= case.zones == int(area)
    due = outer & needed & (task.true_look.painted >= DUE_COATS)
    mask = due & (looked.painted < BARE_COATS)
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


def jars_used(case: Case) -> tuple[int, int]:
    """Return how many jars stand on the tray, and how many rounds of painting the plan takes."""
    return len(case.plan.jars), sum(coats_to_paint(step) for step in case.plan.steps)


def order_faults(case: Case) -> tuple[str, ...]:
    """Return a sentence for every step that comes later than usual."""
    return order_remarks(case)


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


@dataclass(frozen=True, slots=True, kw_only=True)
class MapFollowed:
    """How closely a coat map was followed.

    Parameters
    ----------
    coats
        Overlap of the coats of every liquid at every place, 0 to 1.
    order
        Share of pairs of cells that are painted in the order of the map, 0 to 1.
    wrong
        The liquid that is furthest from the map; empty if none is.
    """

    coats: float
    order: float
    wrong: str


def map_followed(task: Task, looked: Looked) -> MapFollowed:
    """Return how closely the map was followed: coats place by place, and order cell by cell."""
    sizes = task.true.surface.mesh.vertex_areas
    true, own = _by_liquid(task.true_look), _by_liquid(looked)
    common = total = 0.0
    worst, wrong = 0.0, ""
    for liquid in dict.fromkeys([*true, *own]):
        nothing = np.zeros(len(sizes))
        one, other = true.get(liquid, nothing), own.get(liquid, nothing)
        shared = float(sizes @ np.minimum(one, other))
        all_ = float(sizes @ np.maximum(one, other))
        common, total = common + shared, total + all_
        if all_ - shared > worst:
            worst, wrong = all_ - shared, liquid
    return MapFollowed(
        coats=common / total if total > 0.0 else 0.0,
        order=_order_kept(_cells(task.true), _cells(looked.case)),
        wrong=wrong,
    )


def _by_liquid(looked: Looked) -> dict[str, NDArray[np.float64]]:
    found: dict[str, NDArray[np.float64]] = {}
    plan = looked.case.plan
    for step, coats in zip(plan.steps, looked.coats, strict=True):
        liquid = plan.liquid_of(step)
        found[liquid] = found.get(liquid, np.zeros(coats.shape[0])) + coats
    return found


def _cells(case: Case) -> list[tuple[int, tuple[str, Area]]]:
    """Return (step, (liquid, area)) of every painted cell, its first step if it has several."""
    first: dict[tuple[str, Area], int] = {}
    for index, step in enumerate(case.plan.steps):
        for entry in step.areas:
            if entry.coats.high > 0:
                first.setdefault((case.plan.liquid_of(step), entry.area), index)
    return [(index, cell) for cell, index in first.items()]


def left_out(given: Case, answer: Case) -> int:
    """Return how many painted cells of a given plan, by liquid and area, an answer lacks."""
    own = {cell for _, cell in _cells(answer)}
    return sum(cell not in own for _, cell in _cells(given))


def _order_kept(
    true: Sequence[tuple[int, tuple[str, Area]]], own: Sequence[tuple[int, tuple[str, Area]]]
) -> float:
    """Return the share of pairs of cells in different steps whose order is that of the map."""
    place = {cell: index for index, cell in own}
    kept = pairs = 0
    for (one, cell), (other, later) in combinations(true, 2):
        if one == other:
            continue
        pairs += 1
        first, second = (cell, later) if one < other else (later, cell)
        if first in place and second in place and place[first] < place[second]:
            kept += 1
    return 1.0 if pairs == 0 else kept / pairs
