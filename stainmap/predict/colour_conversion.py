"""Differences between colours that were measured alike, and what makes unlike ones alike.

A conversion is used only where somebody chose it, says its name wherever its result is shown,
and adds to the uncertainty. What has no honest conversion is refused: another observer (that
takes the spectrum, so the prediction is made for that observer instead), another backing, and
lamps whose spectrum has lines.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from math import cos, radians
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.colour import (
    PHOTOGRAPHED,
    SPHERE_WITH_GLOSS,
    SPHERE_WITHOUT_GLOSS,
    TAB_TABLE_SPHERE,
    WITHOUT_GLOSS,
    Colour,
    Conversion,
    Measurement,
)
from stainmap.optics.colorimetry import LIGHTS, adapt_lab, lab_to_xyz, white_point, xyz_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import CERAMIC_INDEX, diffuse_fresnel, fresnel_reflectance
from stainmap.words import translate

Triple = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class AppliedConversion:
    """A conversion that was used: from what, to what, and the sd of L*, a*, b* it adds."""

    conversion: Conversion
    origin: str
    result: str
    added_sd: Triple

    def __str__(self) -> str:
        """Return it as it is printed beside a result."""
        sd = " ".join(f"{value:.1f}" for value in self.added_sd)
        return f"{self.conversion}: {self.origin} to {self.result} (adds sd {sd} in L* a* b*)"


@dataclass(frozen=True, slots=True, kw_only=True)
class ConvertedColour:
    """A colour after the conversions it took, in their order."""

    colour: Colour
    conversions: tuple[AppliedConversion, ...]

    @property
    def added_sd(self) -> Triple:
        """Standard deviation of L*, a*, b* that the conversions add."""
        return _root_of_squares(tuple(one.added_sd for one in self.conversions))


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourDifference:
    """CIEDE2000 between two colours, with what was done to make them alike."""

    de00: float
    conversions: tuple[AppliedConversion, ...]
    added_sd: Triple


# Standard deviation of L*, a*, b* by which adapting to D65 misses the colour the same ceramic has
# there: the root mean square, rounded up, over 1,600 random stained walls of the starter set
# (`tests/predict/test_colour_conversion.py` measures it anew), the larger of both observers.
_ADAPTATION_SD: Final[dict[str, Triple]] = {
    "D65": (0.0, 0.0, 0.0),
    "D50": (0.2, 0.6, 0.2),
    "A": (0.8, 1.1, 0.9),
    "C": (0.1, 0.4, 0.3),
}
# For an index off by 0.05 and a trap that lets through, or a polish that loses, a tenth of the
# gloss; assumed.
_FIRST_SURFACE_SD: Final[Triple] = (1.0, 0.2, 0.6)
_GEOMETRIES: Final = (WITHOUT_GLOSS, SPHERE_WITHOUT_GLOSS, SPHERE_WITH_GLOSS)


@dataclass(frozen=True, slots=True, kw_only=True)
class _TakenFor:
    """A way of reading that is taken for 45/0 under D65, and what that is thought to add."""

    conversion: Conversion
    added_sd: Triple


# Readings whose geometry is not known are taken for ours, their light adapted. What that adds: for
# tabs the 1.5 that stands in the name (assumed). For photographs what colours of cameras and lamps
# leave once a grey patch has taken out the rest: a* and b* from synthetic pictures under five
# lights (`tests/planning/test_photograph.py` measures it anew; fluorescent lamps are the worst), L*
# for light from anywhere (assumed).
_TAKEN_FOR: Final = {
    TAB_TABLE_SPHERE: _TakenFor(conversion=Conversion.TAB_TABLE, added_sd=(1.5, 1.5, 1.5)),
    PHOTOGRAPHED: _TakenFor(conversion=Conversion.PHOTOGRAPH, added_sd=(1.5, 2.5, 2.5)),
}


def colour_difference(
    one: Colour, other: Colour, chosen: Collection[Conversion] = ()
) -> ColourDifference:
    """Return the CIEDE2000 difference of two colours, `one` first converted to `other`'s ways.

    Parameters
    ----------
    chosen
        Conversions that may be used; those not needed are not.

    Raises
    ------
    PlanError
        If the colours were measured unlike and no chosen conversion helps.
    """
    converted = convert(one, other.measurement, chosen)
    return ColourDifference(
        de00=float(delta_e_00(converted.colour.lab, other.lab)),
        conversions=converted.conversions,
        added_sd=converted.added_sd,
    )


def convert(
    colour: Colour, wanted: Measurement, chosen: Collection[Conversion] = ()
) -> ConvertedColour:
    """Return a colour as it would be measured in another way.

    Readings of no known geometry are first taken for 45/0, D65. Gloss comes next, in the colour's
    own light, then the light. Both need XYZ alone: the first surface reflects all wavelengths
    alike, and adaptation is defined on XYZ.

    Raises
    ------
    PlanError
        If something differs that no chosen conversion covers; says what, and what to do.
    """
    applied: list[AppliedConversion] = []
    while unlike := colour.measurement.unlike(wanted):
        name = _conversion_for(unlike[0], colour.measurement, wanted)
        if name is None or name not in chosen:
            raise _refusal(unlike[0], colour.measurement, wanted, name)
        colour, step = _converted(colour, wanted, name)
        applied.append(step)
    at_wanted = replace(colour, measurement=wanted)
    return ConvertedColour(colour=at_wanted, conversions=tuple(applied))


def _converted(
    colour: Colour, wanted: Measurement, name: Conversion
) -> tuple[Colour, AppliedConversion]:
    """Return a colour after one conversion, and what that did."""
    here = colour.measurement
    there = _after(name, here, wanted)
    lab: Triple | NDArray[np.float64] = colour.lab
    if name is Conversion.FIRST_SURFACE:
        lab = _other_geometry(colour, wanted.geometry)
        origin, result, sd = here.geometry, wanted.geometry, _FIRST_SURFACE_SD
    elif name is Conversion.ADAPTED_WHITE:
        origin, result = here.illuminant, wanted.illuminant
        sd = _root_of_squares((_ADAPTATION_SD[origin], _ADAPTATION_SD[result]))
    else:
        origin = f"{here.geometry}, {here.illuminant}"
        result = f"{there.geometry}, {there.illuminant}"
        sd = _TAKEN_FOR[here.geometry].added_sd
    if there.illuminant != here.illuminant:
        observer = here.observer_degrees
        whites = (white_point(one.illuminant, observer) for one in (here, there))
        lab = adapt_lab(lab, *whites)
    applied = AppliedConversion(conversion=name, origin=origin, result=result, added_sd=sd)
    return _colour(np.asarray(lab), there), applied


def _after(name: Conversion, here: Measurement, wanted: Measurement) -> Measurement:
    """Return what a conversion makes of a way of measuring."""
    if name is Conversion.FIRST_SURFACE:
        return replace(here, geometry=wanted.geometry)
    if name is Conversion.ADAPTED_WHITE:
        return replace(here, illuminant=wanted.illuminant)
    return replace(here, geometry=WITHOUT_GLOSS, illuminant="D65")


def conversions_for(here: Measurement, wanted: Measurement) -> tuple[Conversion, ...]:
    """Return the conversions it takes from one way of measuring to another, to offer them.

    Raises
    ------
    PlanError
        If there is none for something that differs.
    """
    needed: list[Conversion] = []
    while unlike := here.unlike(wanted):
        name = _conversion_for(unlike[0], here, wanted)
        if name is None:
            raise _refusal(unlike[0], here, wanted, None)
        needed.append(name)
        here = _after(name, here, wanted)
    return tuple(needed)


def _conversion_for(what: str, here: Measurement, wanted: Measurement) -> Conversion | None:
    taken = _TAKEN_FOR.get(here.geometry)
    if what == "geometry" and taken is not None and here.illuminant in _ADAPTATION_SD:
        return taken.conversion
    if what == "geometry" and {here.geometry, wanted.geometry} <= set(_GEOMETRIES):
        return Conversion.FIRST_SURFACE
    lights = {here.illuminant, wanted.illuminant}
    if what == "illuminant" and lights <= set(_ADAPTATION_SD):
        return Conversion.ADAPTED_WHITE
    return None


def _refusal(
    what: str, here: Measurement, wanted: Measurement, name: Conversion | None
) -> PlanError:
    """Return what is said of two unlike colours: what differs, and what to do."""
    values = {
        "geometry": (here.geometry, wanted.geometry),
        "illuminant": (here.illuminant, wanted.illuminant),
        "observer": (f"{here.observer_degrees} degrees", f"{wanted.observer_degrees} degrees"),
        "backing": (f"'{here.backing}'", f"'{wanted.backing}'"),
    }
    one, other = values[what]
    predictable = here.illuminant in LIGHTS and here.observer_degrees in (2, 10)
    if name is not None:
        advice = translate(
            "colour conversion", "Choose the conversion '{name}', or give a reading in {other}."
        ).format(name=name, other=other)
    elif what == "backing":
        advice = translate(
            "colour conversion",
            "Read the colour over the same backing, or say that it is wanted in place.",
        )
    elif what in ("illuminant", "observer") and predictable:
        advice = translate(
            "colour conversion",
            "Predict for {light} and {degrees} degrees, or give a reading for {other}.",
        ).format(light=here.illuminant, degrees=here.observer_degrees, other=other)
    else:
        advice = translate(
            "colour conversion", "Give a reading in {other}; there is no conversion for this."
        ).format(other=other)
    return PlanError(
        translate(
            "colour conversion", "The two colours differ in {what}: {one} against {other}."
        ).format(what=what, one=one, other=other),
        advice=advice,
    )


def _other_geometry(colour: Colour, wanted: str) -> NDArray[np.float64]:
    """Return L*a*b* in another geometry, for light that is diffuse below a polished surface.

    With F the Fresnel reflectance at an angle and r that for diffuse light [Saunderson1942]: a
    sphere at 8 degrees sees ``F(8)`` of gloss; of the light within, it lets in 1 - r and out
    1 - F(8), where 45/0 lets in 1 - F(45) and out 1 - F(0).
    """
    n = CERAMIC_INDEX
    at_0, at_8, at_45 = (
        float(fresnel_reflectance(1.0, n, cos(radians(angle)))) for angle in (0.0, 8.0, 45.0)
    )
    ratio = (1.0 - at_45) * (1.0 - at_0) / ((1.0 - float(diffuse_fresnel(1.0, n))) * (1.0 - at_8))
    here = colour.measurement
    white = white_point(here.illuminant, here.observer_degrees)
    gloss = at_8 * white
    xyz = lab_to_xyz(colour.lab, white)
    if here.geometry == SPHERE_WITH_GLOSS:
        xyz = xyz - gloss
    elif here.geometry == WITHOUT_GLOSS:
        xyz = xyz / ratio
    if (xyz < 0.0).any():
        raise PlanError(
            translate(
                "colour conversion",
                "The colour reflects less than the first surface of polished zirconia does.",
            ),
            advice=translate(
                "colour conversion",
                "Check its geometry; it cannot have been measured with the gloss.",
            ),
        )
    if wanted == SPHERE_WITH_GLOSS:
        xyz = xyz + gloss
    elif wanted == WITHOUT_GLOSS:
        xyz = xyz * ratio
    return xyz_to_lab(xyz, white)


def _colour(lab: NDArray[np.float64], measurement: Measurement) -> Colour:
    lightness, a, b = (float(value) for value in lab)
    return Colour(lightness=min(max(lightness, 0.0), 100.0), a=a, b=b, measurement=measurement)


def _root_of_squares(parts: tuple[Triple, ...]) -> Triple:
    if not parts:
        return (0.0, 0.0, 0.0)
    L, a, b = (float(value) for value in np.sqrt((np.array(parts) ** 2).sum(0)))
    return L, a, b
