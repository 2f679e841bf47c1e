"""Shades in a case file: the intake page, and what is wanted of the crown."""

from __future__ import annotations

from stainmap.files.case_entries import (
    AreaShadeDoc,
    CaseDoc,
    ColourDoc,
    IntakeDoc,
    NeighbourDoc,
    OffsetDoc,
    ShadeDoc,
    TargetDoc,
    ThirdDoc,
)
from stainmap.model.colour import Colour, Conversion, Measurement
from stainmap.model.intake import Intake, Neighbour, Shade, ShadeSource, Third, ThirdShade
from stainmap.model.target import AreaShade, Offset, Target
from stainmap.model.tooth import Tooth
from stainmap.model.zone import area_from_number


def target_doc(target: Target | None) -> TargetDoc | None:
    """Return the entry of what is wanted."""
    if target is None:
        return None
    return TargetDoc(
        name=target.name,
        body=_colour_doc(target.body),
        offsets=tuple(
            OffsetDoc(area=int(o.area), lightness=o.lightness, chroma=o.chroma)
            for o in target.offsets
        ),
        conversions=tuple(str(one) for one in target.conversions),
        held=tuple(
            AreaShadeDoc(
                area=int(one.area),
                colour=_colour_doc(one.colour),
                conversions=tuple(str(name) for name in one.conversions),
                doubt=one.doubt,
            )
            for one in target.held
        ),
        body_doubt=target.body_doubt,
    )


def target_of(document: CaseDoc) -> Target | None:
    """Return what is wanted, or None; raise PlanError or ValueError for impossible values."""
    target = document.target
    if target is None:
        return None
    return Target(
        name=target.name,
        body=_colour_of(target.body),
        offsets=tuple(
            Offset(area=area_from_number(o.area), lightness=o.lightness, chroma=o.chroma)
            for o in target.offsets
        ),
        conversions=_conversions_of(target.conversions),
        held=tuple(
            AreaShade(
                area=area_from_number(one.area),
                colour=_colour_of(one.colour),
                conversions=_conversions_of(one.conversions),
                doubt=one.doubt,
            )
            for one in target.held
        ),
        body_doubt=target.body_doubt,
    )


def intake_doc(intake: Intake | None) -> IntakeDoc | None:
    """Return the entry of the intake page."""
    if intake is None:
        return None
    return IntakeDoc(
        shades=tuple(
            ThirdDoc(third=one.third.value, shade=_shade_doc(one.shade)) for one in intake.shades
        ),
        stump_known=intake.stump_known,
        implant_base=intake.implant_base,
        neighbours=tuple(
            NeighbourDoc(tooth=one.tooth.number, shade=_shade_doc(one.shade))
            for one in intake.neighbours
        ),
        wish=intake.wish,
    )


def intake_of(document: CaseDoc) -> Intake | None:
    """Return the intake page, or None; raise PlanError or ValueError for impossible values."""
    intake = document.intake
    if intake is None:
        return None
    return Intake(
        shades=tuple(
            ThirdShade(third=Third(one.third), shade=_shade_of(one.shade)) for one in intake.shades
        ),
        stump_known=intake.stump_known,
        implant_base=intake.implant_base,
        neighbours=tuple(
            Neighbour(tooth=Tooth(number=one.tooth), shade=_shade_of(one.shade))
            for one in intake.neighbours
        ),
        wish=intake.wish,
    )


def _shade_doc(shade: Shade) -> ShadeDoc:
    return ShadeDoc(
        source=shade.source.value,
        colour=_colour_doc(shade.colour),
        doubt=shade.doubt,
        name=shade.name,
        conversions=tuple(str(one) for one in shade.conversions),
        note=shade.note,
    )


def _shade_of(shade: ShadeDoc) -> Shade:
    return Shade(
        source=ShadeSource(shade.source),
        colour=_colour_of(shade.colour),
        doubt=shade.doubt,
        name=shade.name,
        conversions=_conversions_of(shade.conversions),
        note=shade.note,
    )


def _colour_doc(colour: Colour) -> ColourDoc:
    how = colour.measurement
    return ColourDoc(
        lab=colour.lab,
        geometry=how.geometry,
        illuminant=how.illuminant,
        observer_degrees=how.observer_degrees,
        backing=how.backing,
    )


def _colour_of(colour: ColourDoc) -> Colour:
    return Colour(
        lightness=colour.lab[0],
        a=colour.lab[1],
        b=colour.lab[2],
        measurement=Measurement(
            geometry=colour.geometry,
            illuminant=colour.illuminant,
            observer_degrees=colour.observer_degrees,
            backing=colour.backing,
        ),
    )


def _conversions_of(names: tuple[str, ...]) -> tuple[Conversion, ...]:
    return tuple(Conversion(name) for name in names)
