"""Dye recipes: drops of the indicator dyes in each jar, and how far jars differ on chalk.

The dyes only show where a liquid has been painted; they burn off. Two rules choose them: no dye
looks like what its liquid does after sintering, for a tint must never pass for a result; and the
jars of a tray differ on chalky ceramic as much as they can, for colour-blind eyes too.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.model.case import Case
from stainmap.model.material import Dye
from stainmap.model.plan import AreaCoats, CoatSpan, Jar, StainPlan, Step
from stainmap.model.zone import Zone
from stainmap.optics.colorimetry import srgb_matrix, white_point, xyz_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.predict.bench_look import chalk_linear_srgb, jar_linear_srgb
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import build_scene

FloatArray = NDArray[np.float64]
Recipe = tuple[int, int, int]

# 25 drops of liquid take 2 to 3 drops of dye: common practice, no published source.
_DYE_SHARE_LOW, _DYE_SHARE_HIGH = 2.0 / 25.0, 3.0 / 25.0

AIM_DIFFERENCE: Final = 12.0
"""dE00 between the looks of two jars that the recipes aim at."""
AIM_COLOUR_BLIND: Final = 8.0
"""The same for simulated colour-blind eyes."""

# Full dichromacy, in linear sRGB, as tabulated by [Machado2009] for severity 1.0: protanopia,
# deuteranopia, tritanopia.
COLOUR_BLIND: Final = (
    (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
)

_MOST_CHOICES = 20_000

# What a liquid does is judged at this many coats on this wall.
_JUDGED_COATS, _JUDGED_WALL_MM = 3.0, 1.2
# A tint must be this many degrees of hue away from what its liquid does, unless one of the two
# has next to no hue.
_HUE_APART, _LEAST_EFFECT, _LEAST_TINT = 60.0, 1.0, 8.0

_WORDS: Final = (
    (25.0, "pink"),
    (45.0, "red"),
    (78.0, "orange"),
    (110.0, "yellow"),
    (190.0, "green"),
    (290.0, "blue"),
    (335.0, "violet"),
    (360.0, "pink"),
)


def dye_drop_limits(liquid_drops: int) -> tuple[int, int]:
    """Return the fewest and the most drops of dye in a jar: 2 to 3 on 25 drops of liquid.

    Common practice, no published source.
    """
    low = max(round(_DYE_SHARE_LOW * liquid_drops), 1)
    return low, max(round(_DYE_SHARE_HIGH * liquid_drops), low)


def least_differences(looks_linear: ArrayLike) -> tuple[float | None, float | None]:
    """Return the smallest dE00 among colours, for normal and for simulated colour-blind eyes.

    Parameters
    ----------
    looks_linear
        (n, 3) linear sRGB.
    """
    looks = np.asarray(looks_linear, dtype=np.float64).reshape(-1, 3)
    if len(looks) < 2:
        return None, None
    normal, colour_blind = pair_differences(looks)
    return float(normal.min()), float(colour_blind.min())


def pair_differences(looks: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return dE00 of every pair, in the order of `combinations`, for both kinds of eyes."""
    one, other = np.array(list(combinations(range(len(looks)), 2)), dtype=np.intp).reshape(-1, 2).T
    seen = [lab_of_linear(looks)] + [
        lab_of_linear(_colour_blind(looks, kind)) for kind in range(len(COLOUR_BLIND))
    ]
    differences = np.array([delta_e_00(lab[one], lab[other]) for lab in seen])
    return differences[0], differences[1:].min(axis=0)


def sintered_effects(case: Case) -> FloatArray:
    """Return what each jar's liquid does after sintering, (jars, 3) dL*, da*, db*.

    Three undiluted coats on the case's own block at 1.2 mm over its own stump, without light
    that spreads sideways.
    """
    jars = tuple(replace(jar, dye_drops=(0, 0, 0)) for jar in case.plan.jars)
    if not jars:
        return np.zeros((0, 3))
    coats = CoatSpan.exactly(int(_JUDGED_COATS))
    plan = StainPlan(
        block=case.plan.block,
        jars=jars,
        steps=tuple(
            Step(jar=jar.number, areas=(AreaCoats(area=Zone.BODY, coats=coats),)) for jar in jars
        ),
    )
    scene = build_scene(case.materials, plan, programme=case.programme, backings=case.backings[:1])
    each = np.hstack([np.zeros((len(jars), 1)), _JUDGED_COATS * np.eye(len(jars))])
    lab = reference_lab(scene, each, np.full(len(jars) + 1, _JUDGED_WALL_MM))
    return np.asarray(lab[1:] - lab[0])


def passes_for_result(effect: ArrayLike, tint: ArrayLike) -> bool:
    """Return True if a dye looks like what its liquid does after sintering.

    The rules are ours: the tint's hue must lie 60 degrees or more from the effect's; and no blue,
    cyan or grey for what lowers value without warming, no purple for what is neutral, no green or
    brown for a dark warm accent.

    Parameters
    ----------
    effect
        (3,) dL*, da*, db* of the liquid after sintering, at three coats.
    tint
        (3,) dL*, da*, db* of the jar's look from untouched chalk.
    """
    lightness, a, b = (float(value) for value in np.asarray(effect))
    chroma, hue = np.hypot(a, b), _hue(a, b)
    tint_a, tint_b = (float(value) for value in np.asarray(tint)[1:])
    tint_chroma, tint_hue = np.hypot(tint_a, tint_b), _hue(tint_a, tint_b)
    has_hue = tint_chroma >= _LEAST_TINT
    apart = abs((tint_hue - hue + 180.0) % 360.0 - 180.0)
    if chroma >= _LEAST_EFFECT and has_hue and apart < _HUE_APART:
        return True
    if lightness <= -2.0 and b < 1.0:
        blue = has_hue and 190.0 <= tint_hue < 290.0
        purple = has_hue and chroma < _LEAST_EFFECT and 290.0 <= tint_hue < 335.0
        return blue or purple or not has_hue
    if lightness <= -6.0:
        green = has_hue and 110.0 <= tint_hue < 190.0
        return green or not has_hue
    return False


def recommended_dyes(case: Case) -> tuple[Recipe, ...]:
    """Return a dye recipe for every jar of the tray, in their order.

    Among all recipes within the usual number of drops that do not pass for their liquid's
    result, the set is taken whose two most similar jars differ most, counting dE00 12 for normal
    and 8 for colour-blind eyes as equally good. Where no recipe keeps the rules, all are allowed.
    """
    jars, dyes = case.plan.jars, case.materials.dyes
    if not jars or len(dyes) < 3:
        return tuple(jar.dye_drops for jar in jars)
    options: list[list[tuple[Recipe, FloatArray]]] = []
    for jar, effect in zip(jars, sintered_effects(case), strict=True):
        recipes = [(recipe, _look(jar, recipe, dyes)) for recipe in _recipes(jar.liquid_drops)]
        tints = lab_of_linear(np.array([look for _, look in recipes])) - lab_of_linear(
            chalk_linear_srgb()
        )
        allowed = [
            recipe
            for recipe, tint in zip(recipes, tints, strict=True)
            if not passes_for_result(effect, tint)
        ]
        options.append(allowed or recipes)
    return _most_different(options)


def _recipes(liquid_drops: int) -> list[Recipe]:
    """Return all recipes of whole drops within the limits, fewest drops first."""
    low, high = dye_drop_limits(liquid_drops)
    return [
        (cyan, magenta, total - cyan - magenta)
        for total in range(low, high + 1)
        for cyan in range(total, -1, -1)
        for magenta in range(total - cyan, -1, -1)
    ]


def _most_different(options: Sequence[Sequence[tuple[Recipe, FloatArray]]]) -> tuple[Recipe, ...]:
    """Return one recipe per jar so that the two most similar looks differ most."""
    flat = [(jar, recipe) for jar, choices in enumerate(options) for recipe, _ in choices]
    looks = np.array([look for choices in options for _, look in choices])
    score = _pair_scores(looks)
    of_jar = np.array([jar for jar, _ in flat])
    places = [np.flatnonzero(of_jar == jar) for jar in range(len(options))]
    # Binary search for the highest level at which every pair can still be kept apart.
    levels = np.unique(score)
    low, high, best = 0, len(levels), {jar: int(place[0]) for jar, place in enumerate(places)}
    while low < high:
        middle = (low + high) // 2
        found = _assignment(dict(enumerate(places)), score >= levels[middle])
        if found is None:
            high = middle
        else:
            low, best = middle + 1, found
    return tuple(flat[best[jar]][1] for jar in range(len(options)))


def _assignment(
    places: dict[int, NDArray[np.intp]], apart: NDArray[np.bool_]
) -> dict[int, int] | None:
    """Return one place per jar, all pairs of them `apart`, or None if none was found.

    The tightest jar goes first, and a choice that leaves another jar without any is dropped. The
    search gives up after so many choices, which no tray of up to seven jars needs.
    """
    choices_left = [_MOST_CHOICES]

    def extend(open_places: dict[int, NDArray[np.intp]]) -> dict[int, int] | None:
        if not open_places:
            return {}
        jar = min(open_places, key=lambda one: (len(open_places[one]), one))
        for place in open_places[jar]:
            choices_left[0] -= 1
            if choices_left[0] < 0:
                return None
            left = {
                other: choices[apart[place, choices]]
                for other, choices in open_places.items()
                if other != jar
            }
            found = extend(left) if all(map(len, left.values())) else None
            if found is not None:
                return {**found, jar: int(place)}
        return None

    return extend(places)


def _pair_scores(looks: FloatArray) -> FloatArray:
    """Return (n, n) how far apart looks are, in units of what is aimed at."""
    seen = [(lab_of_linear(looks), AIM_DIFFERENCE)]
    seen += [
        (lab_of_linear(_colour_blind(looks, k)), AIM_COLOUR_BLIND) for k in range(len(COLOUR_BLIND))
    ]
    return np.asarray(
        np.min([delta_e_00(lab[:, None], lab[None, :]) / aim for lab, aim in seen], axis=0)
    )


def colour_word(linear: ArrayLike) -> str:
    """Return a plain word for a colour of linear sRGB (3,)."""
    _, a, b = lab_of_linear(np.asarray(linear, dtype=np.float64))
    if np.hypot(a, b) < _LEAST_TINT:
        return "grey"
    hue = _hue(float(a), float(b))
    return next(word for end, word in _WORDS if hue < end)


def _look(jar: Jar, recipe: Recipe, dyes: Sequence[Dye]) -> FloatArray:
    return jar_linear_srgb(replace(jar, dye_drops=recipe), dyes)


def _colour_blind(linear: FloatArray, kind: int) -> FloatArray:
    return np.asarray(np.clip(linear @ np.array(COLOUR_BLIND[kind]).T, 0.0, 1.0))


def lab_of_linear(linear: FloatArray) -> FloatArray:
    """Return L*a*b* (D65) of linear sRGB, (..., 3)."""
    white = white_point()
    xyz = np.linalg.solve(srgb_matrix(white), linear.reshape(-1, 3).T).T
    return np.asarray(xyz_to_lab(xyz, white).reshape(linear.shape))


def _hue(a: float, b: float) -> float:
    return float(np.degrees(np.arctan2(b, a)) % 360.0)
