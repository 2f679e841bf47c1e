"""From shades to what every area is held to, in the way a prediction is measured."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot
from typing import Final

from stainmap.model.colour import IN_PLACE, Colour, Measurement
from stainmap.model.intake import Intake, Shade, Third, Triple
from stainmap.model.shade_table import OffsetClass
from stainmap.model.target import CERTAIN, AreaShade, Offset, Target
from stainmap.model.tooth import Unit
from stainmap.model.zone import Area, Zone
from stainmap.predict.colour_conversion import AppliedConversion, convert
from stainmap.words import translate

AS_PREDICTED: Final = Measurement(backing=IN_PLACE)
"""The way every prediction is measured: 45/0, D65, 2 degrees."""

# The zone that a third is read in. The middle third is the body, to which all else is relative.
_ZONE_OF: Final = {Third.CERVICAL: Zone.CERVICAL, Third.INCISAL: Zone.CUSP}

# What tooth-coloured ceramic may look like, generously: teeth of adults lie in L* 60 to 85, a* -2
# to 6, b* 8 to 30 (from memory), bleached ones and stained grooves beyond.
_CERAMIC: Final = (("L*", 35.0, 97.0), ("a*", -8.0, 16.0), ("b*", -4.0, 48.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class WantedColour:
    """What is wanted of an area, measured as its prediction is.

    Parameters
    ----------
    colour
        After the conversions.
    conversions
        Those it took, in their order; their names belong beside any difference.
    sd
        Standard deviation of L*, a*, b*: doubt of the reading and what conversions add.
    own
        True if the area has a shade of its own; False if it follows the body.
    """

    colour: Colour
    conversions: tuple[AppliedConversion, ...]
    sd: Triple
    own: bool


def offset_class(units: Sequence[Unit]) -> OffsetClass:
    """Return the class whose usual offsets hold: that of most units, of the first among equals."""
    classes = [OffsetClass.of(unit.tooth) for unit in units]
    counts = Counter(classes)
    return max(classes, key=lambda one: (counts[one], -classes.index(one)))


def target_from_intake(intake: Intake, offsets: tuple[Offset, ...]) -> Target | None:
    """Return what is wanted after an intake, or None where it has no shade at all.

    The middle third is what the body is held to. The cervical third, if there is one, is what the
    neck is held to, the incisal third cusps or the incisal edge; every other area keeps to its
    offset from the body, and so do neck and cusps without a third of their own: a single shade
    gives a gradient. Without a middle third the body lies between the other two; with one of them
    alone it lies where that one's offset comes from.

    Parameters
    ----------
    offsets
        Of areas without a third of their own.

    Raises
    ------
    PlanError
        If the body must be told from shades that cannot be made comparable.
    """
    if not intake.shades:
        return None
    held = tuple(
        AreaShade(
            area=_ZONE_OF[one.third],
            colour=one.shade.colour,
            conversions=one.shade.conversions,
            doubt=one.shade.doubt,
        )
        for one in intake.shades
        if one.third in _ZONE_OF
    )
    name = ", ".join(dict.fromkeys(one.shade.name for one in intake.shades if one.shade.name))
    middle = intake.shade(Third.MIDDLE)
    if middle is not None:
        return Target(
            body=middle.colour,
            name=middle.name or name,
            offsets=offsets,
            conversions=middle.conversions,
            held=held,
            body_doubt=middle.doubt,
        )
    body, doubt = _body_without_middle(held, offsets)
    return Target(body=body, name=name, offsets=offsets, held=held, body_doubt=doubt)


def wanted_in(
    target: Target, area: Area, measurement: Measurement = AS_PREDICTED
) -> WantedColour | None:
    """Return what is wanted of an area as it would be measured in one way, or None.

    Offsets are steps as seen, so the body is converted and they follow from it.

    Raises
    ------
    PlanError
        If the shade was measured otherwise and no conversion the target allows helps.
    """
    own = target.own_shade(area)
    shade = own or target.own_shade(Zone.BODY)
    if shade is None:
        return None
    converted = convert(shade.colour, measurement, shade.conversions)
    colour: Colour | None = converted.colour
    if own is None:
        colour = replace(target, body=converted.colour).wanted(area)
    if colour is None:
        return None
    return WantedColour(
        colour=colour,
        conversions=converted.conversions,
        sd=_together(shade.doubt or CERTAIN, converted.added_sd),
        own=own is not None,
    )


def shade_in(shade: Shade, measurement: Measurement = AS_PREDICTED) -> WantedColour:
    """Return a shade, such as a neighbour's, as it would be measured in one way.

    Raises
    ------
    PlanError
        If it was measured otherwise and no conversion it allows helps.
    """
    converted = convert(shade.colour, measurement, shade.conversions)
    return WantedColour(
        colour=converted.colour,
        conversions=converted.conversions,
        sd=_together(shade.doubt, converted.added_sd),
        own=True,
    )


def outside_ceramic(colour: Colour) -> str:
    """Return a sentence if no tooth-coloured ceramic can look so, or an empty string."""
    for (axis, low, high), value in zip(_CERAMIC, colour.lab, strict=True):
        if not low <= value <= high:
            return translate(
                "targets",
                "{axis} {value:.1f} is outside what tooth-coloured ceramic can look like "
                "({low:g} to {high:g}). Check that L*, a*, b* stand in their places; no plan "
                "will reach it.",
            ).format(axis=axis, value=value, low=low, high=high)
    return ""


def _body_without_middle(
    held: tuple[AreaShade, ...], offsets: tuple[Offset, ...]
) -> tuple[Colour, Triple]:
    """Return body and doubt from one or both of the other thirds, as a prediction is measured."""
    found = []
    for one in held:
        converted = convert(one.colour, AS_PREDICTED, one.conversions)
        found.append((converted.colour, _together(one.doubt or CERTAIN, converted.added_sd)))
    if len(found) == 1:
        colour, doubt = found[0]
        steps = {one.area: (one.lightness, one.chroma) for one in offsets}
        lightness, chroma = steps.get(held[0].area, (0.0, 0.0))
        return colour.shifted(-lightness, -chroma), doubt
    (first, one_sd), (second, other_sd) = found
    lightness, a, b = (0.5 * (x + y) for x, y in zip(first.lab, second.lab, strict=True))
    # Tabs and conversions are off alike for both: the mean is as doubtful as the worse of them.
    doubt_l, doubt_a, doubt_b = (max(x, y) for x, y in zip(one_sd, other_sd, strict=True))
    return (
        Colour(lightness=lightness, a=a, b=b, measurement=AS_PREDICTED),
        (doubt_l, doubt_a, doubt_b),
    )


def _together(one: Triple, other: Triple) -> Triple:
    lightness, a, b = (hypot(x, y) for x, y in zip(one, other, strict=True))
    return lightness, a, b
