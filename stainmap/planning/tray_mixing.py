"""The mixing list of a tray: the jars of several cases put together, amounts conserved.

Jars are put together where liquid, dyes and their ratio are the same, for then every coat counts
as it was predicted. What differs in any of these stays a jar of its own, and is spoken of.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.material import Dye, Liquid
from stainmap.model.plan import Jar
from stainmap.model.process import JarAmounts
from stainmap.model.tooth import Unit
from stainmap.planning.batch_size import (
    USUAL_JAR_DROPS,
    JarNeed,
    holds_enough,
    jar_needs,
    smallest_for,
    smallest_jar,
    units_served,
)
from stainmap.planning.dyes import colour_word, least_differences
from stainmap.planning.mixing import MOST_DYE_SHARE, alike_remarks, dye_share_remark
from stainmap.predict.bench_look import jar_linear_srgb
from stainmap.words import listed, sentence_case, translate


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PaintedCase:
    """A case and the coats (S, V) of its steps, at the upper end of spans."""

    case: Case
    coats: NDArray[np.float32]


@dataclass(frozen=True, slots=True, kw_only=True)
class Serving:
    """What one case takes out of a jar of the tray.

    Parameters
    ----------
    code
        The case's code.
    need
        What it takes; `need.jar.number` is the number on the case's own sheets.
    units
        Units that are painted with it.
    steps
        Numbers of the case's steps, from 1.
    """

    code: str
    need: JarNeed
    units: tuple[Unit, ...]
    steps: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayJar:
    """One jar of the tray.

    Parameters
    ----------
    jar
        What is mixed: as many whole batches of the planned jar as the tray takes. Its number is
        the tray's; its lot is the cases', if they name one.
    planned
        The largest jar that a case has planned of it.
    smallest
        The smallest jar of the same ratios that holds enough.
    dyes
        Names and drops of the dyes in `jar`.
    servings
        Cases that take of it, in the order of the tray.
    look_linear, look_word
        What it looks like on chalk, linear sRGB and in a word.
    serves
        Units such as these that `jar` serves, estimated; None if nothing is painted with it.
    """

    jar: Jar
    planned: Jar
    smallest: Jar
    dyes: tuple[tuple[str, int], ...]
    servings: tuple[Serving, ...]
    look_linear: tuple[float, float, float]
    look_word: str
    serves: int | None

    @property
    def need_drops(self) -> float:
        """What all cases take, in drops; not whole."""
        return math.fsum(serving.need.drops for serving in self.servings)

    @property
    def units(self) -> int:
        """Units that are painted with it."""
        return sum(len(serving.units) for serving in self.servings)


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayMixing:
    """All jars of a tray.

    Parameters
    ----------
    jars
        Numbered from 1.
    left_out
        A sentence for every case that could not be mixed for, with its code.
    remarks
        What should be looked at before mixing, each one sentence.
    least_difference, least_colour_blind
        Smallest dE00 between the looks of two jars; None with fewer than two.
    """

    jars: tuple[TrayJar, ...]
    left_out: tuple[str, ...]
    remarks: tuple[str, ...]
    least_difference: float | None
    least_colour_blind: float | None


_Recipe = tuple[Liquid, tuple[tuple[Dye, Fraction], ...]]


@dataclass(slots=True)
class _Pool:
    """Jars that can be put together."""

    dyes: tuple[Dye, ...]
    planned: Jar
    servings: list[Serving]


def tray_mixing(painted: Sequence[PaintedCase]) -> TrayMixing:
    """Return what is mixed for the cases of a tray; one alone makes a tray of one.

    A case that cannot be mixed for, such as one whose block the materials do not have, is left
    out with a sentence, and the rest goes on.
    """
    pools: dict[_Recipe, _Pool] = {}
    left_out = []
    for one in painted:
        try:
            needs = jar_needs(one.case, one.coats)
            recipes = [_recipe(one.case, need.jar) for need in needs]
        except StainmapError as error:
            left_out.append(f"{one.case.code}: {error}")
            continue
        for need, recipe in zip(needs, recipes, strict=True):
            _add(pools, recipe, one.case, need)
    numbers = _numbers(list(pools.values()))
    jars = tuple(
        sorted(
            (_tray_jar(pool, number) for pool, number in zip(pools.values(), numbers, strict=True)),
            key=lambda jar: jar.jar.number,
        )
    )
    looks = np.array([jar.look_linear for jar in jars]).reshape(-1, 3)
    normal, blind = least_differences(looks)
    return TrayMixing(
        jars=jars,
        left_out=tuple(left_out),
        remarks=_remarks(jars) + alike_remarks([jar.jar.number for jar in jars], looks),
        least_difference=normal,
        least_colour_blind=blind,
    )


def _recipe(case: Case, jar: Jar) -> _Recipe:
    """Return what must be equal for two jars to be one: liquid, and dyes with their ratio."""
    liquid = case.materials.liquid(jar.liquid)
    jar_linear_srgb(jar, case.materials.dyes)  # a sentence if a dye does not exist
    ratios = tuple(
        (dye, Fraction(drops, jar.liquid_drops))
        for dye, drops in zip(case.materials.dyes, jar.dye_drops, strict=False)
        if drops
    )
    return liquid, ratios


def _add(pools: dict[_Recipe, _Pool], recipe: _Recipe, case: Case, need: JarNeed) -> None:
    serving = Serving(
        code=case.code,
        need=need,
        units=need.painted_units,
        steps=tuple(number for number, ml in need.step_ml if ml > 0.0),
    )
    pool = pools.get(recipe)
    if pool is None:
        pools[recipe] = _Pool(dyes=case.materials.dyes, planned=need.jar, servings=[serving])
        return
    pool.servings.append(serving)
    if need.jar.liquid_drops > pool.planned.liquid_drops:
        pool.planned = need.jar


def _numbers(pools: Sequence[_Pool]) -> list[int]:
    """Return a number for every pool: the one its cases have given it, if none has it already."""
    taken: set[int] = set()
    numbers = [0] * len(pools)
    for index, pool in enumerate(pools):
        own = [serving.need.jar.number for serving in pool.servings]
        wanted = max(sorted(set(own)), key=own.count)
        if wanted not in taken:
            numbers[index] = wanted
            taken.add(wanted)
    free = (number for number in range(1, len(pools) + len(taken) + 1) if number not in taken)
    return [number or next(free) for number in numbers]


def _tray_jar(pool: _Pool, number: int) -> TrayJar:
    needs = [serving.need for serving in pool.servings]
    amounts = _amounts(needs)
    drops = math.fsum(need.drops for need in needs)
    planned = pool.planned
    mixed = _batches(planned, drops, amounts)
    lots = {need.jar.lot for need in needs} - {""}
    mixed = _named(mixed, number, lots.pop() if len(lots) == 1 else "")
    look = jar_linear_srgb(mixed, pool.dyes)
    names = [dye.name for dye in pool.dyes]
    return TrayJar(
        jar=mixed,
        planned=planned,
        smallest=_named(smallest_for(planned, drops, amounts), number, mixed.lot),
        dyes=tuple((n, d) for n, d in zip(names, mixed.dye_drops, strict=False) if d),
        servings=tuple(pool.servings),
        look_linear=(float(look[0]), float(look[1]), float(look[2])),
        look_word=colour_word(look),
        serves=units_served(mixed, needs),
    )


def _amounts(needs: Sequence[JarNeed]) -> JarAmounts:
    """Return what stays behind in a jar that several cases use: once, the most of them."""
    return max((need.amounts for need in needs), key=lambda one: one.left_in_jar_drops)


def _batches(planned: Jar, need_drops: float, amounts: JarAmounts) -> Jar:
    """Return as many whole batches of the planned jar as are needed, one at least."""
    count = 1
    while not holds_enough(_multiple(planned, count), need_drops, amounts):
        count += 1
    return _multiple(planned, count)


def _multiple(jar: Jar, count: int) -> Jar:
    cyan, magenta, yellow = (count * drops for drops in jar.dye_drops)
    return Jar(
        number=jar.number,
        liquid=jar.liquid,
        liquid_drops=count * jar.liquid_drops,
        dye_drops=(cyan, magenta, yellow),
        lot=jar.lot,
    )


def _named(jar: Jar, number: int, lot: str) -> Jar:
    return Jar(
        number=number,
        liquid=jar.liquid,
        liquid_drops=jar.liquid_drops,
        dye_drops=jar.dye_drops,
        lot=lot,
    )


def _remarks(jars: Sequence[TrayJar]) -> tuple[str, ...]:
    remarks = []
    for one in jars:
        jar = one.jar
        if one.serves is None:
            remarks.append(
                translate(
                    "tray mixing",
                    "Jar {number}, {liquid}: nothing is painted with it; leave it out.",
                ).format(number=jar.number, liquid=jar.liquid)
            )
        if sum(jar.dye_drops) > MOST_DYE_SHARE * jar.liquid_drops + 1e-9:
            remarks.append(dye_share_remark(jar))
        batches = jar.liquid_drops // one.planned.liquid_drops
        if batches > 1:
            remarks.append(
                translate(
                    "tray mixing",
                    "Jar {number}, {liquid}: {batches} batches of {drops} drops, one would "
                    "run dry.",
                ).format(
                    number=jar.number,
                    liquid=jar.liquid,
                    batches=batches,
                    drops=one.planned.liquid_drops,
                )
            )
        other = [s for s in one.servings if s.need.jar.number != jar.number]
        if other:
            named = ", ".join(
                translate("tray mixing", "{number} in {code}").format(
                    number=s.need.jar.number, code=s.code
                )
                for s in other
            )
            remarks.append(
                translate("tray mixing", "Jar {number} of the tray is jar {others}.").format(
                    number=jar.number, others=named
                )
            )
        lots = sorted({s.need.jar.lot for s in one.servings} - {""})
        if len(lots) > 1:
            remarks.append(
                translate(
                    "tray mixing",
                    "Jar {number}, {liquid}: the cases name the lots {lots}; take one of them and "
                    "note it in all.",
                ).format(number=jar.number, liquid=jar.liquid, lots=", ".join(lots))
            )
    names = [one.jar.liquid for one in jars]
    for name in dict.fromkeys(names):
        same = [one for one in jars if one.jar.liquid == name]
        if len(same) > 1:
            told = listed([f"{one.jar.number} ({recipe_text(one)})" for one in same])
            remarks.append(
                translate(
                    "tray mixing",
                    "{name} is mixed in more than one way: jars {jars}. With one recipe in all "
                    "cases one jar would do.",
                ).format(name=sentence_case(name), jars=told)
            )
    return tuple(remarks)


def recipe_text(jar: TrayJar) -> str:
    """Return "25 drops, cyan 1, yellow 1", in the fewest whole drops of the ratio."""
    one = smallest_jar(jar.jar)
    divisor = jar.jar.liquid_drops // one.liquid_drops
    dyes = [f"{name} {drops // divisor}" for name, drops in jar.dyes]
    drops = one.liquid_drops if dyes else USUAL_JAR_DROPS
    return ", ".join(
        [
            translate("tray mixing", "{drops} drops").format(drops=drops),
            *(dyes or [translate("tray mixing", "no dye")]),
        ]
    )
