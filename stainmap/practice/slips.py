"""Slips of the hand: what one of them does to a crown, and how wide one's own slips spread it.

A slip is a coat miscounted, a brush half a millimetre too far, a jar mixed wrong, a furnace run
too fast. `slip_effect` predicts one of them on the whole crown. `spread_of_slips` throws dice for
many days at the bench on which slips happen as often as somebody says they do, with the quick
model and the days of `bench_days`; what slips of the brush over a border do is not in it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import BrushedCoats, CoatSpan
from stainmap.model.zone import Area, Zone, area_label
from stainmap.optics.difference import delta_e_00
from stainmap.planning.bench_days import BenchDays, Survival, colours_on, survive
from stainmap.planning.outcome import coat_entries
from stainmap.planning.reach_model import ReachModel
from stainmap.planning.reach_options import paintable_liquids
from stainmap.planning.reach_places import representative_places
from stainmap.planning.zone_tools import grown_area
from stainmap.practice.looking import Looked, Looker
from stainmap.words import translate, value_word

Array = NDArray[np.float64]

BRUSH_TOO_FAR_MM: Final = 0.5
DAYS: Final = 500
_MOST_DYE_SLIP = 6
_SLIP_SEED = 41_117


class SlipKind(StrEnum):
    """What goes wrong at the bench."""

    COAT_MORE = "a coat too many"
    COAT_LESS = "a coat too few"
    BRUSH_TOO_FAR = "brushed half a millimetre too far"
    JAR_TOO_THIN = "twice the dye in the jar"
    JAR_WITHOUT_DYE = "no dye in the jar"
    FIRED_FAST = "fired in the fastest programme"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """One slip.

    Parameters
    ----------
    step
        Which step of the plan, from 0; of no matter for the furnace.
    area
        Which of its areas; of no matter for jar and furnace.
    """

    kind: SlipKind
    step: int = 0
    area: Area = Zone.BODY


def possible_slips(case: Case) -> tuple[Slip, ...]:
    """Return every slip that can happen with a plan: of every painted cell, jar and the furnace."""
    found: list[Slip] = []
    for index, step in enumerate(case.plan.steps):
        painted = [entry for entry in step.areas if entry.coats.high > 0]
        for entry in painted:
            kinds = [SlipKind.COAT_MORE, SlipKind.COAT_LESS]
            if entry.area is not Zone.INNER:
                kinds.append(SlipKind.BRUSH_TOO_FAR)
            found += [Slip(kind=kind, step=index, area=entry.area) for kind in kinds]
        first_of_jar = all(other.jar != step.jar for other in case.plan.steps[:index])
        if painted and first_of_jar:
            found.append(Slip(kind=SlipKind.JAR_TOO_THIN, step=index))
            found.append(Slip(kind=SlipKind.JAR_WITHOUT_DYE, step=index))
    if found and fastest_programme(case) != case.programme:
        found.append(Slip(kind=SlipKind.FIRED_FAST))
    return tuple(found)


def fastest_programme(case: Case) -> str:
    """Return the name of the shortest programme of the materials."""
    return min(case.materials.programmes, key=lambda one: one.minutes).name


def with_slip(case: Case, slip: Slip) -> Case:
    """Return the case as it is really done, with one slip.

    Raises
    ------
    PlanError
        If the plan has no such step or cell.
    """
    if slip.kind is SlipKind.FIRED_FAST:
        return replace(case, programme=fastest_programme(case))
    if not 0 <= slip.step < len(case.plan.steps):
        raise PlanError(
            translate("slips", "There is no step {step} in the plan.").format(step=slip.step + 1)
        )
    step = case.plan.steps[slip.step]
    if slip.kind in (SlipKind.JAR_TOO_THIN, SlipKind.JAR_WITHOUT_DYE):
        jar = case.plan.jar(step.jar)
        times = 2 if slip.kind is SlipKind.JAR_TOO_THIN else 0
        cyan, magenta, yellow = (times * drops for drops in jar.dye_drops)
        mixed = replace(jar, dye_drops=(cyan, magenta, yellow))
        jars = tuple(mixed if one.number == jar.number else one for one in case.plan.jars)
        return replace(case, plan=replace(case.plan, jars=jars))
    entry = step.entry(slip.area)
    if entry is None:
        raise PlanError(
            translate("slips", "Step {step} has no coats on {area}.").format(
                step=slip.step + 1, area=area_label(slip.area)
            ),
            advice=translate("slips", "Choose a cell that is painted."),
        )
    if slip.kind is SlipKind.BRUSH_TOO_FAR:
        return _brushed_too_far(case, slip)
    count = entry.coats.high + (1 if slip.kind is SlipKind.COAT_MORE else -1)
    changed = step.with_coats(slip.area, CoatSpan.exactly(max(count, 0)))
    return replace(case, plan=case.plan.with_step(slip.step, changed))


def _brushed_too_far(case: Case, slip: Slip) -> Case:
    """Return the case with one area of one step painted over its border.

    Other steps keep to their areas, so what lies beyond the border is extra: brushed coats.
    """
    step = case.plan.steps[slip.step]
    entry = step.entry(slip.area)
    coats = 0 if entry is None else entry.coats.high
    larger = grown_area(case, slip.area, BRUSH_TOO_FAR_MM)
    before, after = _share(case, slip.area), _share(larger, slip.area)
    extra = np.maximum(after - before, 0.0).astype(np.float32) * np.float32(coats)
    if step.brushed is not None:
        extra[step.brushed.vertices] += step.brushed.coats
    brushed = BrushedCoats.from_dense(extra)
    return replace(case, plan=case.plan.with_step(slip.step, replace(step, brushed=brushed)))


def _share(case: Case, area: Area) -> NDArray[np.float32]:
    if isinstance(area, Zone):
        return np.asarray(case.zones == int(area), dtype=np.float32)
    mask = case.accent(area)
    return np.zeros(len(case.zones), np.float32) if mask is None else mask


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaSlip:
    """What a slip does to one area: dL*, dC* and CIEDE2000 from what was planned."""

    area: Area
    value: float
    chroma: float
    de00: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SlipEffect:
    """What a slip does.

    Parameters
    ----------
    areas
        By how much, the area that is changed most first.
    largest_de00
        The largest difference at any place of the outside: what is seen if it is small and sharp.
    looked
        The crown with the slip.
    """

    slip: Slip
    areas: tuple[AreaSlip, ...]
    largest_de00: float
    looked: Looked


def slip_effect(looker: Looker, planned: Looked, slip: Slip) -> SlipEffect:
    """Return what one slip does to a plan, predicted on the whole crown.

    Parameters
    ----------
    planned
        The plan as it was meant, looked at.

    Raises
    ------
    PlanError
        If the plan has no such step or cell.
    """
    done = looker.look(with_slip(planned.case, slip))
    areas = []
    for area, lab in done.areas.items():
        meant = planned.areas[area]
        chroma = float(np.hypot(lab[1], lab[2]) - np.hypot(meant[1], meant[2]))
        apart = float(delta_e_00(np.array(lab), np.array(meant)))
        areas.append(AreaSlip(area=area, value=lab[0] - meant[0], chroma=chroma, de00=apart))
    outer = planned.case.reading.outer
    places = delta_e_00(done.lab[outer].astype(float), planned.lab[outer].astype(float))
    return SlipEffect(
        slip=slip,
        areas=tuple(sorted(areas, key=lambda one: -one.de00)),
        largest_de00=float(np.max(places, initial=0.0)),
        looked=done,
    )


# --- one's own slips ---------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnSlips:
    """How often and how far somebody's hand slips; what it starts with is assumed.

    Parameters
    ----------
    miscounts_in_ten
        Of ten crowns, on how many one cell gets a coat more or fewer, 0 to 10.
    wrong_jars_in_ten
        Of ten crowns, for how many one jar has some drops of dye too many, 0 to 10.
    hand_share
        Standard deviation of how wet a coat is, as a share, 0 to 0.5.
    """

    miscounts_in_ten: float = 2.0
    wrong_jars_in_ten: float = 1.0
    hand_share: float = 0.10

    def __post_init__(self) -> None:
        """Refuse what no hand does."""
        for value in (self.miscounts_in_ten, self.wrong_jars_in_ten):
            if not 0.0 <= value <= 10.0:
                raise PlanError(
                    translate("slips", "{value:g} crowns of ten make no sense.").format(
                        value=value
                    ),
                    advice=translate("slips", "Give 0 to 10."),
                )
        if not 0.0 <= self.hand_share <= 0.5:
            raise PlanError(
                translate(
                    "slips",
                    "A hand that differs by {share:.0%} from coat to coat is out of range.",
                ).format(share=self.hand_share),
                advice=translate("slips", "Give 0 to 50 %."),
            )


def days_of(own: OwnSlips, count: int = DAYS, seed: int = _SLIP_SEED) -> BenchDays:
    """Return days by chance on which only the hand slips: walls and stumps are as they were said.

    The same seed gives the same days, so that two plans are tried on the same ones.
    """
    chance = np.random.default_rng(seed)
    slipped = chance.random(count) < own.miscounts_in_ten / 10.0
    rich = chance.random(count) < own.wrong_jars_in_ten / 10.0
    direction = 2 * chance.integers(0, 2, count) - 1
    return BenchDays(
        hand=np.maximum(1.0 + own.hand_share * chance.standard_normal(count), 0.0),
        wall_mm=np.zeros(count),
        stump_step=np.zeros(count, dtype=np.int64),
        cell=chance.random(count),
        coat_step=np.where(slipped, direction, 0),
        jar=chance.random(count),
        extra_dye=np.where(rich, chance.integers(1, _MOST_DYE_SLIP + 1, count), 0),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Spread:
    """How a plan fares under somebody's own slips.

    Parameters
    ----------
    survival
        On how many days every area kept near what was planned; see `bench_days.survive`.
    areas
        The areas that were looked at, in the order of `survival.by_area`.
    usual_de00, bad_de00
        (A,) how far each area is from what is wanted on half of the days, and on one day of
        twenty, CIEDE2000.
    """

    survival: Survival
    areas: tuple[Area, ...]
    usual_de00: Array
    bad_de00: Array

    @property
    def weakest(self) -> Area:
        """The area that is lost on most days."""
        return self.areas[int(np.argmin(self.survival.by_area))]


def spread_of_slips(
    looker: Looker,
    planned: Looked,
    own: OwnSlips,
    areas: Sequence[Area],
    *,
    wanted: Looked | None = None,
    count: int = DAYS,
    seed: int = _SLIP_SEED,
) -> Spread:
    """Return on how many of the days of `own` a plan keeps its areas near what is wanted.

    Parameters
    ----------
    planned
        The plan, looked at.
    areas
        Areas that count; those the crown lacks are left out.
    wanted
        What is wanted; what the plan itself gives if None.
    """
    case = planned.case
    liquids = paintable_liquids(case.materials, None)
    chosen = [area for area in areas if area in planned.areas]
    places = representative_places(case, looker.ground, looker.layout, chosen)
    # Stumps thrice, as `survive` counts rows; here none of them changes.
    model = ReachModel(case, places, liquids, backings=case.backings * 3)
    near = [_coats(case, area, liquids) for area in places.areas]
    inner = _coats(case, Zone.INNER, liquids)
    dilution = np.ones(len(liquids))
    for jar in case.plan.jars:
        if jar.liquid in liquids:
            dilution[liquids.index(jar.liquid)] = jar.dilution
    whole = np.array([planned.areas[area] for area in places.areas])
    aim = planned if wanted is None else wanted
    at_plan = model.days(
        np.stack(near).astype(np.float64)[None],
        inner[None].astype(np.float64),
        dilution[None],
        np.zeros(1),
        np.full(1, model.backing_rows, dtype=np.int64),
    )[0]
    days, fixed = days_of(own, count, seed), whole - at_plan
    goal = np.array([aim.areas[area] for area in places.areas])
    survival = survive(model, days, near, inner, dilution, fixed=fixed, wanted=goal)
    apart = delta_e_00(fixed + colours_on(model, days, near, inner, dilution), goal[None])
    usual, bad = np.percentile(apart, (50.0, 95.0), axis=0)
    return Spread(survival=survival, areas=places.areas, usual_de00=usual, bad_de00=bad)


def _coats(case: Case, area: Area, liquids: Sequence[str]) -> NDArray[np.int64]:
    """Return the coats of every liquid that lie on an area, what an accent inherits with them."""
    counts = np.zeros(len(liquids), dtype=np.int64)
    for entry in coat_entries(case, area):
        if entry.liquid in liquids:
            most = max(span.high for span in entry.coats)
            counts[liquids.index(entry.liquid)] += most
    return counts


def slip_words(case: Case, slip: Slip) -> str:
    """Return a slip in words, as "Step 2, slate: a coat too many on the cusp"."""
    if slip.kind is SlipKind.FIRED_FAST:
        return translate("slips", "Fired in '{fastest}' instead of '{programme}'").format(
            fastest=fastest_programme(case), programme=case.programme
        )
    liquid = case.plan.liquid_of(case.plan.steps[slip.step])
    head = translate("slips", "Step {step}, {liquid}").format(step=slip.step + 1, liquid=liquid)
    if slip.kind in (SlipKind.JAR_TOO_THIN, SlipKind.JAR_WITHOUT_DYE):
        return f"{head}: {slip.kind.value}"
    name = area_label(slip.area, front=case.units[0].tooth.is_front)
    if slip.kind is SlipKind.BRUSH_TOO_FAR:
        return f"{head}: {name} {slip.kind.value}"
    return translate("slips", "{step}: {slip} on {area}").format(
        step=head, slip=value_word(slip.kind), area=name
    )
