"""What the agreement page says nobody can promise, sentence by sentence, as far as it applies."""

from __future__ import annotations

from stainmap.model.case import Region
from stainmap.model.intake import Intake, Shade, ShadeSource
from stainmap.model.tooth import Role
from stainmap.model.zone import Zone
from stainmap.paper.sheet_data import SheetData


def limits(sheet: SheetData) -> tuple[str, ...]:
    """Return the limits of a prediction in plain words, the weightiest first."""
    parts = [*_of_case(sheet), *_of_wanted(sheet), *_always(sheet)]
    return tuple(parts)


def all_shades(intake: Intake) -> list[Shade]:
    """Return the shades of thirds and neighbours, in their order."""
    return [one.shade for one in intake.shades] + [one.shade for one in intake.neighbours]


def _of_case(sheet: SheetData) -> list[str]:
    """Return what this case leaves open: draft, materials, calibration."""
    parts = []
    if sheet.draft:
        parts.append(sheet.draft)
    elif sheet.case.intake is None or not sheet.case.intake.stump_known:
        backing = sheet.case.backing(Region.STUMP)
        parts.append(
            f"Nobody has said what lies behind the crown; {backing.stump} was taken. Where the"
            " wall is thin, a darker stump makes the result darker."
        )
    if not sheet.outcome.calibrated:
        parts.append(
            "The materials are not calibrated in this laboratory: the colours say in which"
            " direction a coat leads, not where it ends."
        )
    if sheet.is_invented:
        parts.append("Some of the materials are invented examples; nothing is fired by this page.")
    return parts


def _of_wanted(sheet: SheetData) -> list[str]:
    """Return what stands between the wanted shade and any result."""
    parts = []
    intake = sheet.case.intake
    sources = set() if intake is None else {shade.source for shade in all_shades(intake)}
    if ShadeSource.TAB in sources:
        parts.append(
            "A shade tab is a word for a colour: two guides, two eyes and two lights differ. Its"
            " figures and their doubt are those of the table named above."
        )
    if ShadeSource.PHOTOGRAPH in sources:
        parts.append("A colour from a photograph holds as well as its grey patch and its light.")
    if sheet.outcome.refused:
        parts.append(f"No difference to the wanted shade is stated: {sheet.outcome.refused}")
    too_light = _body_too_dark(sheet)
    if too_light is not None:
        names, gap = too_light
        parts.append(
            f"The body{names} is predicted up to {gap:.1f} L* darker than wanted. Stain only lowers"
            " value and adds chroma: no further coat makes it lighter."
        )
    return parts


def _body_too_dark(sheet: SheetData) -> tuple[str, float] | None:
    """Return which bodies are predicted darker than wanted beyond the uncertainty, and how far."""
    gaps = {}
    for unit, one in enumerate(sheet.case.units):
        body = sheet.outcome_of(unit).area(Zone.BODY)
        if body is None or body.wanted is None or body.delta_e_00 is None:
            continue
        gap = body.wanted.lightness - body.predicted.lightness
        if gap > (body.plus_minus[0] ** 2 + body.difference_sd[0] ** 2) ** 0.5:
            gaps[str(one.tooth.number)] = gap
    if not gaps:
        return None
    single = len(sheet.case.units) == 1
    return "" if single else f" of {', '.join(gaps)}", max(gaps.values())


def _always(sheet: SheetData) -> list[str]:
    parts = [
        (
            "The figures are predictions with one standard deviation beside them: about one result"
            " in three lies further away."
        ),
        (
            "Colours change with the light; they were worked out for daylight (D65). What is ground"
            " away after sintering shows the lighter ceramic below the stain."
        ),
    ]
    if any(unit.role is Role.PONTIC for unit in sheet.case.units):
        parts.append("Pontics have no stump behind them and may look unlike the retainers.")
    parts.append(
        "This page is a planning aid, no shade guarantee and no medical advice; the decision is"
        " the dentist's."
    )
    return parts
