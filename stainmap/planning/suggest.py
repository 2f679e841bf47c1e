"""Suggested coats: what to paint so that a crown on its block comes near what is wanted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.colour import Colour
from stainmap.model.plan import StainPlan
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.planning.bench_days import (
    TO_RANK,
    TO_SHOW,
    BenchDays,
    Survival,
    bench_days,
    stump_steps,
    survive,
)
from stainmap.planning.bridge_accents import has_connectors, with_usual_accent
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import Outcome, area_weights
from stainmap.planning.plan_score import FREE, Prices, usual_prices
from stainmap.planning.reach_model import USUAL_DILUTION, ReachModel
from stainmap.planning.reach_options import area_options
from stainmap.planning.reach_places import Places, representative_places
from stainmap.planning.schedule import MINUTES_PER_COAT, coats_to_paint, mixing_minutes
from stainmap.planning.suggest_plan import (
    PaintedArea,
    compose,
    kept_liquids,
    locked_coats,
    searched_liquids,
)
from stainmap.planning.suggest_result import (
    FEW_JARS,
    WITHIN_REACH_DE00,
    JarWorth,
    OutOfReach,
    PlanKind,
    Stock,
    SuggestedArea,
    SuggestedPlan,
    Suggestions,
)
from stainmap.planning.suggest_search import CoatSearch, Found
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.grinding import GroundCrown
from stainmap.predict.scene import scene_from_case
from stainmap.predict.uncertainty import is_calibrated
from stainmap.words import translate

Array = NDArray[np.float64]
Progress = Callable[[float, str], None] | None

RISK: Final = 2.0
"""dE00 that failing on all days counts as much as; assumed."""

_RANKED = 6
_RANK_SEED, _SHOW_SEED = 20_250, 71_003
_ROUNDS = 2


class Suggester:
    """Everything that is prepared once for one crown, and its answers.

    Parameters
    ----------
    case
        What is to be stained; its plan is where the search starts from.
    ground, layout, engine, outcome
        Of the prediction of that case, as on screen under D65.

    Raises
    ------
    PlanError
        If nothing is wanted of the crown, or there is nothing to paint it with.
    """

    def __init__(
        self,
        case: Case,
        ground: GroundCrown,
        layout: CoatLayout,
        engine: AppearanceEngine,
        outcome: Outcome,
        *,
        stock: Stock | None = None,
        progress: Progress = None,
    ) -> None:
        self.case, self._ground, self._layout, self._engine = case, ground, layout, engine
        self.stock = Stock() if stock is None else stock
        self._progress = progress
        self._said = 0.0, ""
        if outcome.refused:
            raise PlanError(
                translate("suggest", "Nothing can be suggested: {refused}").format(
                    refused=outcome.refused
                )
            )
        wanted = {one.area: one.wanted for one in outcome.areas if one.wanted is not None}
        predicted = {one.area: one.predicted for one in outcome.areas}
        self.report(0.02, translate("suggest", "looking at the areas"))
        self.places: Places = representative_places(case, ground, layout, list(wanted))
        if not self.places.areas:
            raise PlanError(
                translate("suggest", "Nothing is wanted of this crown yet."),
                advice=translate("suggest", "Say what is wanted, then coats can be suggested."),
            )
        self.wanted_colours = tuple(wanted[area] for area in self.places.areas)
        self.wanted = np.array([colour.lab for colour in self.wanted_colours])
        self.whole = np.array([predicted[area].lab for area in self.places.areas])
        self.before = {
            one.area: one.delta_e_00 for one in outcome.areas if one.delta_e_00 is not None
        }
        self._measurement = outcome.areas[0].predicted.measurement
        self.liquids = searched_liquids(case, self.stock.liquids)
        self.calibrated = is_calibrated(case.materials, case.plan)
        self.prices = usual_prices(calibrated=self.calibrated)
        plan = case.plan
        self.options = [
            area_options(
                area, self.liquids, case.materials, _known(locked_coats(plan, area), self.liquids)
            )
            for area in self.places.areas
        ]
        self.inner = area_options(
            Zone.INNER,
            self.liquids,
            case.materials,
            _known(locked_coats(plan, Zone.INNER), self.liquids),
            most=1,
        )
        self._seen: dict[tuple[int, tuple[int, ...], int], tuple[StainPlan, str, Array]] = {}
        self.forced = sum(
            1 << self.liquids.index(name) for name in kept_liquids(plan) if name in self.liquids
        )

    def report(self, share: float, phrase: str) -> None:
        """Tell how far it is; raises CancelledError where the work is to stop."""
        self._said = share, phrase
        if self._progress is not None:
            self._progress(share, phrase)

    # --- one block -----------------------------------------------------------------------

    def model(self, *, block: str = "", height_mm: float | None = None) -> ReachModel:
        """Return the quick prediction on a block."""
        return ReachModel(
            self.case, self.places, self.liquids, block=block, nesting_height_mm=height_mm
        )

    def search(self, model: ReachModel, fixed: Array, *, inside: bool = True) -> CoatSearch:
        """Return the search on a block; `fixed` as in `CoatSearch`.

        Without `inside` nothing is painted there but what is locked.
        """
        inner = self.inner
        if not inside:
            inner = replace(inner, counts=inner.counts[:1], mask=inner.mask[:1])
        tables = []
        for area, one in enumerate(self.options):
            tables.append(model.table(area, one.counts, inner.counts))
            self.tick()
        return CoatSearch(
            self.options,
            inner,
            tables,
            fixed=fixed,
            wanted=self.wanted,
            forced=self.forced,
        )

    def fixed(self, model: ReachModel) -> Array:
        """Return what the whole prediction adds to mixed colours, (A, 3), on the case's block."""
        return np.asarray(self.whole - model.plan_colours(self.case.plan))

    def tick(self) -> None:
        """Let the work be stopped."""
        self.report(*self._said)

    # --- the answer ----------------------------------------------------------------------

    def suggest(self, on_first: Callable[[Suggestions], None] | None = None) -> Suggestions:
        """Return several plans, the suggested one first; see `Suggestions`.

        Parameters
        ----------
        on_first
            Is told a first answer, whose other plans are estimated from the suggested one, before
            these too are predicted on the whole crown.
        """
        self.report(0.15, translate("suggest", "trying all coats"))
        model = self.model()
        search = self.search(model, self.fixed(model))
        self.report(0.3, translate("suggest", "comparing trays"))
        days_model = ReachModel(
            self.case, self.places, self.liquids, backings=stump_steps(self.case)
        )
        ranking = bench_days(TO_RANK, _RANK_SEED)
        tried: dict[tuple[int, tuple[int, ...]], Found] = {}
        again = self._ranked(search, days_model, ranking)
        for number in range(_ROUNDS):
            self.report(0.5 + 0.1 * number, translate("suggest", "predicting the whole crown"))
            tried[again.inner, again.picks] = self._held(search, again)
            again = self._ranked(search, days_model, ranking)
            if (again.inner, again.picks) in tried:
                break
        best = min(tried.values(), key=lambda one: one.score)
        showing = bench_days(TO_SHOW, _SHOW_SEED)

        def answer(found: list[tuple[PlanKind, Found]], *, held: bool) -> Suggestions:
            plans = [
                self._plan(kind, search, one, days_model, showing, held=held or one is best)
                for kind, one in found
            ]
            self._held(search, best)
            return Suggestions(
                plans=tuple(plans),
                worth=self._worth(search, best),
                out_of_reach=self._out_of_reach(search, model, best),
                before=tuple((area, self.before[area]) for area in self.places.areas),
                block=self.case.plan.block,
                calibrated=self.calibrated,
            )

        if on_first is not None:
            best = self._held(search, best)
            on_first(answer(self._several(search, best), held=False))
        found: list[tuple[PlanKind, Found]] = []
        for number in range(_ROUNDS):
            self.report(0.7 + 0.1 * number, translate("suggest", "other ways"))
            best = self._held(search, best)
            found = [
                (kind, self._held(search, one, kind)) for kind, one in self._several(search, best)
            ]
            # Carried over, another way may have looked worse than it is.
            better = min((one for _, one in found), key=lambda one: one.score)
            if better.score >= best.score:
                break
            best = better
        self.report(0.9, translate("suggest", "simulating bench days"))
        return answer(found, held=True)

    def _ranked(self, search: CoatSearch, model: ReachModel, days: BenchDays) -> Found:
        """Return the best plan by its score and by how many days it survives."""
        found = search.best(
            self.prices, most_jars=self.stock.most_jars, count=_RANKED, tick=self.tick
        )

        def rank(one: Found) -> float:
            share = self._survival(search, one, model, days, None).share
            return one.score + RISK * (1.0 - share)

        return min(found, key=rank)

    def _several(self, search: CoatSearch, best: Found) -> list[tuple[PlanKind, Found]]:
        """Return the plans to show, each of another composition, the suggested one first."""
        most = self.stock.most_jars
        others: list[tuple[PlanKind, Found]] = []

        def add(kind: PlanKind, prices: Prices, **limits: int | Sequence[int]) -> None:
            terms = {"most_jars": most} | limits
            found = search.best(prices, tick=self.tick, **terms)  # type: ignore[arg-type]
            others.extend((kind, one) for one in found)

        add(PlanKind.FEW_JARS, self.prices, most_jars=min(FEW_JARS, most))
        add(PlanKind.CLOSEST, FREE)
        bare_inside = [row for row, mask in enumerate(self.inner.mask) if mask == 0]
        if self.inner.mask[best.inner] and bare_inside:
            add(PlanKind.NOTHING_INSIDE, self.prices, insides=bare_inside)
        free = [bit for bit in range(len(self.liquids)) if best.tray & ~self.forced & (1 << bit)]
        ways = [
            search.best(self.prices, most_jars=most, allowed=~(1 << bit), tick=self.tick)[0]
            for bit in free
        ]
        if ways:
            others.append((PlanKind.OTHER_TRAY, min(ways, key=lambda one: one.score)))
        shown = [(PlanKind.SUGGESTED, best)]
        plans = [self._undyed(search, PlanKind.SUGGESTED, best)]
        for kind, one in others:
            plan = self._undyed(search, kind, one)
            if plan not in plans:
                shown.append((kind, one))
                plans.append(plan)
        return shown

    def _undyed(self, search: CoatSearch, kind: PlanKind, one: Found) -> StainPlan:
        """Return a plan to tell it from others: they may differ by what lies over connectors."""
        return self.composed(search, one, dyes=False, most_jars=self._most_jars(kind))[0]

    def _plan(
        self,
        kind: PlanKind,
        search: CoatSearch,
        one: Found,
        model: ReachModel,
        days: BenchDays,
        *,
        held: bool,
    ) -> SuggestedPlan:
        self.tick()
        if held:
            one = self._held(search, one, kind)
            plan, connectors, _ = self._seen[self._key(one, kind)]
        else:
            plan, connectors = self.composed(search, one, most_jars=self._most_jars(kind))
        coats = self.rounds(plan)
        return SuggestedPlan(
            kind=kind,
            plan=plan,
            areas=self.areas_of(search, one),
            inside=self.named(self.inner.counts[one.inner]),
            score=one.score,
            survival=self._survival(search, one, model, days, plan),
            coats=coats,
            minutes=mixing_minutes(len(plan.jars)) + MINUTES_PER_COAT * coats,
            connectors=connectors,
            on_whole_crown=held,
        )

    def _most_jars(self, kind: PlanKind) -> int:
        most = self.stock.most_jars
        return min(FEW_JARS, most) if kind is PlanKind.FEW_JARS else most

    def _held(self, search: CoatSearch, one: Found, kind: PlanKind = PlanKind.SUGGESTED) -> Found:
        """Return a plan with its score by the prediction of the whole crown.

        From then on the search carries over from this plan: its own colours are exactly those.
        """
        key = self._key(one, kind)
        if key not in self._seen:
            plan, connectors = self.composed(search, one, most_jars=self._most_jars(kind))
            self._seen[key] = plan, connectors, self.whole_crown(plan)
            self.tick()
        return search.held_to(one, self._seen[key][2], self.prices)

    def _key(self, one: Found, kind: PlanKind) -> tuple[int, tuple[int, ...], int]:
        # How many jars there may be matters to what lies over connectors alone.
        most = self._most_jars(kind) if has_connectors(self.case) else self.stock.most_jars
        return one.inner, one.picks, most

    def areas_of(self, search: CoatSearch, one: Found) -> tuple[SuggestedArea, ...]:
        """Return what a found plan gives every area."""
        colours = search.colours(one.inner, one.picks)
        apart = search.differences(one.inner, one.picks)
        areas = []
        for position, area in enumerate(self.places.areas):
            counts = self.options[position].counts[one.picks[position]]
            areas.append(
                SuggestedArea(
                    area=area,
                    label=self._label(area),
                    coats=self.named(counts),
                    predicted=self.colour(colours[position]),
                    wanted=self.wanted_colours[position],
                    de00=float(apart[position]),
                )
            )
        return tuple(areas)

    @staticmethod
    def rounds(plan: StainPlan) -> int:
        """Return how many rounds of painting a plan takes."""
        return sum(coats_to_paint(step) for step in plan.steps)

    def _survival(
        self,
        search: CoatSearch,
        one: Found,
        model: ReachModel,
        days: BenchDays,
        plan: StainPlan | None,
    ) -> Survival:
        dilution = np.full(len(self.liquids), USUAL_DILUTION)
        for jar in () if plan is None else plan.jars:
            if jar.liquid in self.liquids:
                dilution[self.liquids.index(jar.liquid)] = jar.dilution
        near = [own.counts[pick] for own, pick in zip(self.options, one.picks, strict=True)]
        return survive(
            model,
            days,
            near,
            self.inner.counts[one.inner],
            dilution,
            fixed=search.fixed,
            wanted=self.wanted,
        )

    def composed(
        self,
        search: CoatSearch,
        one: Found,
        *,
        block: str = "",
        dyes: bool = True,
        most_jars: int | None = None,
    ) -> tuple[StainPlan, str]:
        """Return a found plan as jars and steps, and what is to be said of connectors.

        Dye recipes are left out where they do not matter. Over the connectors of a bridge comes
        the usual accent, if a jar for it is there or fits on a tray of `most_jars`, by default
        those of the stock.
        """
        painted = [
            PaintedArea(area=own.area, coats=dict(self.named(own.counts[pick])))
            for own, pick in zip(search.options, one.picks, strict=True)
        ]
        inside = PaintedArea(
            area=Zone.INNER, coats=dict(self.named(search.inner.counts[one.inner]))
        )
        plan = compose(self.case, self.liquids, (inside, *painted), block=block, dyes=dyes)
        if Accent.CONNECTOR in self.places.areas:
            return plan, ""
        most = self.stock.most_jars if most_jars is None else most_jars
        return with_usual_accent(self.case, plan, liquids=self.liquids, most_jars=most, dyes=dyes)

    def whole_crown(self, plan: StainPlan) -> Array:
        """Return the areas' colours (A, 3) by the prediction of the whole crown."""
        case = replace(self.case, plan=plan)
        scene = scene_from_case(case, bands="screen")
        engine = AppearanceEngine(self._ground.shape, scene, reuse=self._engine)
        lab = engine.whole(self._ground.coats(scene, self._layout.coats(case))).lab
        weights = area_weights(case, self._layout)
        return np.stack(
            [
                weights[area] @ lab.astype(np.float64) / weights[area].sum()
                for area in self.places.areas
            ]
        )

    def _worth(self, search: CoatSearch, best: Found) -> tuple[JarWorth, ...]:
        """Return what each jar is there for."""
        there = search.differences(best.inner, best.picks)
        worth = []
        for bit, liquid in enumerate(self.liquids):
            if not best.tray & ~self.forced & (1 << bit):
                continue
            other = search.best(
                self.prices, most_jars=self.stock.most_jars, allowed=best.tray & ~(1 << bit)
            )[0]
            without = search.differences(other.inner, other.picks)
            area = int((without - there).argmax())
            worth.append(
                JarWorth(
                    liquid=liquid,
                    label=self._label(self.places.areas[area]),
                    there=float(there[area]),
                    without=float(without[area]),
                )
            )
        return tuple(worth)

    def _out_of_reach(
        self, search: CoatSearch, model: ReachModel, best: Found
    ) -> tuple[OutOfReach, ...]:
        nearest = search.nearest(best)
        bare = search.fixed + model.bare
        return tuple(
            OutOfReach(
                area=area,
                label=self._label(area),
                wanted=self.wanted_colours[position],
                bare=self.colour(bare[position]),
                nearest_de00=float(nearest[position]),
            )
            for position, area in enumerate(self.places.areas)
            if nearest[position] > WITHIN_REACH_DE00
        )

    def named(self, counts: NDArray[np.int64]) -> tuple[tuple[str, int], ...]:
        """Return coats (L,) by the names of their liquids."""
        return tuple(
            (name, int(count)) for name, count in zip(self.liquids, counts, strict=True) if count
        )

    def colour(self, lab: Array) -> Colour:
        """Return predicted L*a*b* (3,) as a colour."""
        lightness, a, b = (float(value) for value in lab)
        return Colour(
            lightness=min(max(lightness, 0.0), 100.0), a=a, b=b, measurement=self._measurement
        )

    def _label(self, area: Area) -> str:
        return area_label(area, front=self.case.units[0].tooth.is_front)


def _known(locked: dict[str, int], liquids: Sequence[str]) -> dict[str, int]:
    return {name: count for name, count in locked.items() if name in liquids}
