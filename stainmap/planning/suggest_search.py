"""The search for coats: every tray of jars, every coats within the limits on every area.

Given what stands beside it, an area is judged by itself, so for each option inside and each set of
liquids the best coats of all areas are found by looking at all of them: the cheapest option that
needs exactly a set of liquids, and from that, liquid by liquid, the cheapest that needs no more
than it. What neighbours do to one another is then let in: the best trays are gone through again
area by area with all differences that a change makes, until nothing changes.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.optics.difference import delta_e_00
from stainmap.planning.plan_score import Prices, area_importance, misfit, plan_score
from stainmap.planning.reach_options import AreaOptions

Array = NDArray[np.float64]
Counts = NDArray[np.int64]
Tick = Callable[[], None]

_PASSES = 2
_SWEEPS = 4
_REFINED = 6
# Options of one area are tried in this order of what they cost alone, all of them up to so many.
_MOST_TRIED = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One plan of the search.

    Parameters
    ----------
    inner
        Row of the options inside.
    picks
        Row of each area's options.
    score
        In the search's own measure, dE00.
    tray
        Bit k is set where liquid k has a jar.
    """

    inner: int
    picks: tuple[int, ...]
    score: float
    tray: int


class CoatSearch:
    """All that is needed to judge any coats on one block.

    Parameters
    ----------
    options
        A areas' options.
    inner
        Options inside.
    tables
        One (I, n, A, 3) per area: what its options add to the colour of every area.
    fixed
        (A, 3) what is added to their sum: a whole prediction's colours less the sum of its own
        plan.
    wanted
        (A, 3) L*a*b*.
    forced
        Liquids whose jar is on the tray in any case: those of locked coats.
    """

    def __init__(
        self,
        options: Sequence[AreaOptions],
        inner: AreaOptions,
        tables: Sequence[Array],
        *,
        fixed: Array,
        wanted: Array,
        forced: int = 0,
    ) -> None:
        self.options, self.inner, self.tables = tuple(options), inner, tuple(tables)
        self.fixed, self.wanted, self.forced = fixed, wanted, forced
        self.areas = tuple(one.area for one in options)
        self.liquid_count = inner.counts.shape[1]
        self._importance = area_importance(self.areas)
        self._liquids = [(one.counts > 0).sum(axis=1) for one in options]
        self._coats = [one.counts.sum(axis=1) for one in options]
        masks = np.arange(1 << self.liquid_count, dtype=np.int64)
        self._jars = np.zeros(len(masks), dtype=np.int64)
        for bit in range(self.liquid_count):
            self._jars += (masks >> bit) & 1

    # --- judging one plan ----------------------------------------------------------------

    def colours(self, inner: int, picks: Sequence[int]) -> Array:
        """Return the colours (A, 3) of a plan."""
        return np.asarray(self.fixed + self.mixed(inner, picks))

    def mixed(self, inner: int, picks: Sequence[int]) -> Array:
        """Return the colours (A, 3) of a plan by the places alone, before `fixed` is added."""
        parts = [table[inner, pick] for table, pick in zip(self.tables, picks, strict=True)]
        return np.asarray(np.sum(parts, axis=0))

    def differences(self, inner: int, picks: Sequence[int]) -> Array:
        """Return dE00 of every area to what is wanted, (A,)."""
        return np.asarray(delta_e_00(self.colours(inner, picks), self.wanted))

    def tray_of(self, inner: int, picks: Sequence[int]) -> int:
        """Return the liquids a plan needs, as bits."""
        mask = self.forced | int(self.inner.mask[inner])
        for one, pick in zip(self.options, picks, strict=True):
            mask |= int(one.mask[pick])
        return mask

    def score(self, inner: int, picks: Sequence[int], prices: Prices) -> float:
        """Return what a plan is worth, dE00; see `plan_score`."""
        coats = sum(int(own[pick]) for own, pick in zip(self._coats, picks, strict=True))
        return plan_score(
            self.differences(inner, picks),
            self.areas,
            jars=self.tray_of(inner, picks).bit_count(),
            liquids=[int(own[pick]) for own, pick in zip(self._liquids, picks, strict=True)],
            coats=coats + int(self.inner.counts[inner].sum()),
            prices=prices,
        )

    def held_to(self, one: Found, colours: Array, prices: Prices) -> Found:
        """Return a plan with its score where its colours are these (A, 3).

        What is added to all plans (`fixed`) is set so that this one has them exactly.
        """
        self.fixed = colours - self.mixed(one.inner, one.picks)
        return replace(one, score=self.score(one.inner, one.picks, prices))

    def nearest(self, beside: Found) -> Array:
        """Return the least dE00 (A,) that each area can have by itself beside a plan's others."""
        least = np.empty(len(self.tables))
        for area, own in enumerate(self.tables):
            # What lies inside differs for all areas at once.
            lab = self.fixed[area] + own[:, :, area]
            for other, (table, pick) in enumerate(zip(self.tables, beside.picks, strict=True)):
                if other != area:
                    lab = lab + table[:, pick, area][:, None]
            least[area] = float(delta_e_00(lab, self.wanted[area]).min())
        return least

    # --- the search ----------------------------------------------------------------------

    def best(
        self,
        prices: Prices,
        *,
        most_jars: int,
        allowed: int = -1,
        insides: Sequence[int] | None = None,
        count: int = 1,
        tick: Tick | None = None,
    ) -> tuple[Found, ...]:
        """Return the best plans of different trays, best first; the bare one is always among them.

        Parameters
        ----------
        most_jars
            On the tray; locked coats may need more, and then nothing is added.
        allowed
            Liquids that may be used, as bits; those of locked coats may in any case.
        insides
            Rows of the options inside; all if None.
        count
            How many to return.
        tick
            Called now and then; may raise to end the search.
        """
        rows = np.arange(len(self.inner.counts)) if insides is None else np.asarray(insides)
        alone = self._alone(rows, prices)
        total = np.zeros((len(rows), 1 << self.liquid_count))
        for area, cost in enumerate(alone):
            total += self._cheapest_within(area, cost)
        inside = self.inner.mask[rows] | self.forced
        masks = np.arange(1 << self.liquid_count, dtype=np.int64)
        total = total + prices.jar * self._jars
        total = total + prices.coat * self.inner.counts[rows].sum(axis=1)[:, None]
        fits = (inside[:, None] & ~masks[None]) == 0
        few = self._jars <= max(most_jars, self.forced.bit_count())
        usable = (masks & ~(allowed | self.forced)) == 0
        total = np.where(fits & (few & usable)[None], total, np.inf)
        found: dict[tuple[int, tuple[int, ...]], Found] = {}
        flat = total.ravel()
        keep = min(max(_REFINED, 3 * count), int(np.isfinite(flat).sum()))
        for place in np.argpartition(flat, keep - 1)[:keep] if keep else ():
            if tick is not None:
                tick()
            row, mask = divmod(int(place), len(masks))
            one = self._refined(int(rows[row]), mask, row, alone, prices)
            found[one.inner, one.picks] = one
        best: dict[int, Found] = {}
        for one in sorted(found.values(), key=lambda each: each.score):
            best.setdefault(one.tray, one)
        return tuple(best.values())[:count]

    def _alone(self, rows: NDArray[np.intp], prices: Prices) -> list[Array]:
        """Return what every option costs with likely neighbours, one (I, n) per area."""
        tables = [table[rows] for table in self.tables]
        beside = [table.mean(axis=1) for table in tables]
        costs: list[Array] = []
        for _ in range(_PASSES):
            costs = []
            for area, table in enumerate(tables):
                rest = np.repeat(self.fixed[area][None], len(rows), axis=0)
                for other, there in enumerate(beside):
                    if other != area:
                        rest = rest + there[:, area]
                lab = rest[:, None] + table[:, :, area]
                apart = delta_e_00(lab, self.wanted[area])
                costs.append(self._importance[area] * misfit(apart) + self._price(area, prices))
            beside = [
                table[np.arange(len(rows)), cost.argmin(axis=1)]
                for table, cost in zip(tables, costs, strict=True)
            ]
        return costs

    def _price(self, area: int, prices: Prices) -> Array:
        """Return what each option of an area costs besides its colour and its jars, (n,)."""
        extra = np.maximum(self._liquids[area] - 1, 0)
        return np.asarray(prices.liquid * extra + prices.coat * self._coats[area])

    def _cheapest_within(self, area: int, cost: Array) -> Array:
        """Return the least cost (I, 2^L) of an area with no liquids but those of each mask."""
        least = np.full((len(cost), 1 << self.liquid_count), np.inf)
        for row, own in enumerate(cost):
            np.minimum.at(least[row], self.options[area].mask, own)
        for bit in range(self.liquid_count):
            split = least.reshape(len(cost), -1, 2, 1 << bit)
            np.minimum(split[:, :, 1], split[:, :, 0], out=split[:, :, 1])
        return least

    def _refined(
        self, inner: int, mask: int, row: int, alone: Sequence[Array], prices: Prices
    ) -> Found:
        """Return the best plan of one tray, all areas gone through until nothing changes."""
        allowed: list[NDArray[np.intp]] = []
        picks: list[int] = []
        for area, cost in enumerate(alone):
            within = np.flatnonzero((self.options[area].mask & ~(mask | self.forced)) == 0)
            within = within[np.argsort(cost[row][within], kind="stable")][:_MOST_TRIED]
            allowed.append(within)
            picks.append(int(within[0]))
        now = self.colours(inner, picks)
        for _ in range(_SWEEPS):
            before = list(picks)
            for area, within in enumerate(allowed):
                change = self.tables[area][inner, within] - self.tables[area][inner, picks[area]]
                apart = misfit(delta_e_00(now + change, self.wanted)) @ self._importance
                best = int((apart + self._price(area, prices)[within]).argmin())
                picks[area] = int(within[best])
                now = now + change[best]
            if picks == before:
                break
        chosen = tuple(picks)
        return Found(
            inner=inner,
            picks=chosen,
            score=self.score(inner, chosen, prices),
            tray=self.tray_of(inner, chosen),
        )
