"""What each block can reach on a crown, with the best coats for it, side by side."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.colour import Colour
from stainmap.model.material import Block, ScatteringClass
from stainmap.model.plan import StainPlan
from stainmap.model.zone import Zone
from stainmap.planning.reach_model import ReachModel
from stainmap.planning.suggest import Suggester
from stainmap.planning.suggest_result import WITHIN_REACH_DE00, SuggestedArea
from stainmap.planning.suggest_search import CoatSearch, Found
from stainmap.predict.uncertainty import TIE_DE00
from stainmap.words import coat_count_text, listed, translate

Array = NDArray[np.float64]

HEIGHT_STEP_MM: Final = 1.5
"""By how much a crown is tried higher in a block of several layers, milled."""
_ROUNDS: Final = 2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Nesting:
    """Where in a block of several layers a crown is best, beside where it is.

    Parameters
    ----------
    here_mm, best_mm
        Height of the lowest point above the bottom of the blank, milled.
    coats_saved
        Coats fewer at the best height; negative for more.
    gain
        By how much the score, dE00, is better there.
    """

    here_mm: float
    best_mm: float
    coats_saved: int
    gain: float

    @property
    def sentence(self) -> str:
        """What to do with the height, or an empty string where it is as good as any."""
        rise = self.best_mm - self.here_mm
        if not rise or (self.gain < TIE_DE00 and self.coats_saved < 1):
            return ""
        says = []
        if self.coats_saved > 0:
            says.append(
                translate("reach", "save {coats}").format(coats=coat_count_text(self.coats_saved))
            )
        if self.gain >= TIE_DE00:
            says.append(
                translate("reach", "come {gain:.1f} dE00 nearer in all").format(gain=self.gain)
            )
        text = (
            translate(
                "reach",
                "Raise it {by:.1f} mm in the block and {does} (estimated at single places).",
            )
            if rise > 0
            else translate(
                "reach",
                "Lower it {by:.1f} mm in the block and {does} (estimated at single places).",
            )
        )
        return text.format(by=abs(rise), does=listed(says))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BlockReach:
    """One block: how far it goes on this crown, and its best plan.

    Parameters
    ----------
    bare_body
        Predicted colour of the body without any coat; of the first area where there is no body.
    areas
        With the block's best coats, as the whole crown is predicted with them.
    inside
        Coats by liquid on the inner surface.
    out_of_reach
        Labels of areas that no coats bring within 1.0 dE00.
    too_dark
        Labels of those among them that are wanted lighter, or less chromatic, than the bare block.
    nesting
        For a block of several layers.
    """

    block: str
    scattering: ScatteringClass
    bare_body: Colour
    areas: tuple[SuggestedArea, ...]
    inside: tuple[tuple[str, int], ...]
    plan: StainPlan
    score: float
    coats: int
    out_of_reach: tuple[str, ...]
    too_dark: tuple[str, ...]
    nesting: Nesting | None = None

    @property
    def body(self) -> SuggestedArea:
        """The body, or the first area where there is none."""
        return next((one for one in self.areas if one.area is Zone.BODY), self.areas[0])

    @property
    def largest_de00(self) -> float:
        """The difference of the area that is furthest off."""
        return max(one.de00 for one in self.areas)

    @property
    def reads(self) -> str:
        """What is said of the block in a few words."""
        if self.body.label in self.too_dark:
            return translate("reach", "not reachable: stain only lowers value and adds chroma")
        if self.too_dark:
            return translate("reach", "not reachable in {areas}").format(
                areas=", ".join(self.too_dark)
            )
        if self.out_of_reach:
            return translate("reach", "short of what is wanted in {areas}").format(
                areas=", ".join(self.out_of_reach)
            )
        return translate("reach", "within reach")


def block_reach(suggester: Suggester, block: Block) -> BlockReach:
    """Return what one block can do on a crown.

    Parameters
    ----------
    suggester
        Prepared for the crown; where a search on this block begins is carried over from its own.
    block
        One of the case's materials.
    """
    case = suggester.case
    home = suggester.model()
    fixed = suggester.fixed(home)
    own = block.name == case.plan.block
    here_mm = case.plan.nesting_height_mm if own else 0.0
    nesting: Nesting | None = None
    height_mm = here_mm
    if len(block.layers) > 1:
        nesting = _nesting(suggester, block, fixed, here_mm)
        height_mm = here_mm if own else nesting.best_mm
    model = suggester.model(block=block.name, height_mm=height_mm)
    search = suggester.search(model, fixed)
    return reach_of(suggester, block, model, search, nesting=nesting, height_mm=height_mm)


def reach_of(
    suggester: Suggester,
    block: Block,
    model: ReachModel,
    search: CoatSearch,
    *,
    nesting: Nesting | None = None,
    height_mm: float = 0.0,
) -> BlockReach:
    """Return what a block can do, from its model and its search.

    Parameters
    ----------
    nesting, height_mm
        Where in a block of several layers the crown lies.
    """
    best, plan = _held(suggester, search, block.name, height_mm)
    bare = search.fixed + model.bare
    areas = suggester.areas_of(search, best)
    nearest = search.nearest(best)
    out = [int(k) for k in np.flatnonzero(nearest > WITHIN_REACH_DE00)]
    dark = [k for k in out if too_dark(areas[k].wanted, suggester.colour(bare[k]))]
    labels = [one.label for one in areas]
    body = next((k for k, one in enumerate(areas) if one.area is Zone.BODY), 0)
    return BlockReach(
        block=block.name,
        scattering=block.layers[0].scattering,
        bare_body=suggester.colour(bare[body]),
        areas=areas,
        inside=suggester.named(suggester.inner.counts[best.inner]),
        plan=plan,
        score=best.score,
        coats=suggester.rounds(plan),
        out_of_reach=tuple(labels[k] for k in out),
        too_dark=tuple(labels[k] for k in dark),
        nesting=nesting,
    )


def _held(
    suggester: Suggester, search: CoatSearch, block: str, height_mm: float
) -> tuple[Found, StainPlan]:
    """Return a block's best plan, found once more after the whole crown has been predicted with it.

    Its colours, and those that the search carries over from it, are then the whole crown's.
    """

    def best() -> Found:
        most = suggester.stock.most_jars
        return search.best(suggester.prices, most_jars=most, tick=suggester.tick)[0]

    tried: list[tuple[Found, StainPlan, Array]] = []
    found = best()
    for _ in range(_ROUNDS):
        plan = replace(
            suggester.composed(search, found, block=block)[0], nesting_height_mm=height_mm
        )
        colours = suggester.whole_crown(plan)
        tried.append((search.held_to(found, colours, suggester.prices), plan, colours))
        found = best()
        if any((found.inner, found.picks) == (one.inner, one.picks) for one, _, _ in tried):
            break
    chosen, plan, colours = min(tried, key=lambda one: one[0].score)
    return search.held_to(chosen, colours, suggester.prices), plan


def too_dark(wanted: Colour, bare: Colour) -> str:
    """Return "L*" or "C*" if a colour is lighter, or duller, than the bare block; else nothing.

    By more than 1 in L* or 2 in C*, about what makes a dE00 of 1 there: stain only lowers value
    and adds chroma.
    """
    if wanted.lightness - bare.lightness > WITHIN_REACH_DE00:
        return "L*"
    return "C*" if bare.chroma - wanted.chroma > 2.0 * WITHIN_REACH_DE00 else ""


def _nesting(suggester: Suggester, block: Block, fixed: Array, here_mm: float) -> Nesting:
    """Return the best height of a crown in a block of several layers, nothing painted inside."""
    top = block.layers[-1].bottom_mm
    heights = sorted({here_mm, *np.arange(0.0, top + 1e-9, HEIGHT_STEP_MM).tolist()})
    found: dict[float, tuple[float, int]] = {}
    for height in heights:
        model = suggester.model(block=block.name, height_mm=height)
        search = suggester.search(model, fixed, inside=False)
        best = search.best(suggester.prices, most_jars=suggester.stock.most_jars)[0]
        plan, _ = suggester.composed(search, best, block=block.name, dyes=False)
        found[height] = best.score, suggester.rounds(plan)
    best_mm = min(heights, key=lambda height: (round(found[height][0], 3), abs(height - here_mm)))
    return Nesting(
        here_mm=here_mm,
        best_mm=best_mm,
        coats_saved=found[here_mm][1] - found[best_mm][1],
        gain=found[here_mm][0] - found[best_mm][0],
    )


def reach_of_blocks(
    suggester: Suggester, blocks: Sequence[Block] | None = None
) -> tuple[BlockReach, ...]:
    """Return what each block can do, in the order of the catalogue.

    Raises
    ------
    CancelledError
        If the suggester's progress says so.
    """
    chosen = suggester.case.materials.blocks if blocks is None else blocks
    found = []
    for number, block in enumerate(chosen):
        suggester.report(
            number / max(len(chosen), 1),
            translate("reach", "trying {name}").format(name=block.name),
        )
        found.append(block_reach(suggester, block))
    return tuple(found)
