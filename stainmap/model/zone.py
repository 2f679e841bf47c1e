"""Areas of a crown: zones that share the surface, accents that lie on top of them."""

from __future__ import annotations

from enum import IntEnum

from stainmap.errors import PlanError
from stainmap.words import marked, translate


class Zone(IntEnum):
    """Zones share the outer surface without gap or overlap; the inner surface is the sixth.

    The number is the one shown on screen and on paper.
    """

    CERVICAL = 1
    BODY = 2
    INTERPROXIMAL = 3
    CUSP = 4
    FISSURE = 5
    INNER = 6

    @property
    def label(self) -> str:
        """Name in the trade's words."""
        return translate("areas", _LABELS[int(self)])


class Accent(IntEnum):
    """Accents lie on top of the zones, inherit the coats below and add their own."""

    MARGIN_BAND = 7
    MARGINAL_RIDGE = 8
    TRIANGULAR_RIDGE = 9
    LINE_ANGLE = 10
    CONNECTOR = 11
    INNER_NECK_BAND = 12
    PONTIC_TISSUE = 13

    @property
    def label(self) -> str:
        """Name in the trade's words."""
        return translate("areas", _LABELS[int(self)])


Area = Zone | Accent

OUTER_ZONES = (Zone.CERVICAL, Zone.BODY, Zone.INTERPROXIMAL, Zone.CUSP, Zone.FISSURE)

_LABELS = {
    1: marked("areas", "cervical"),
    2: marked("areas", "body"),
    3: marked("areas", "interproximal"),
    4: marked("areas", "cusp"),
    5: marked("areas", "fissure"),
    6: marked("areas", "inner surface"),
    7: marked("areas", "margin band"),
    8: marked("areas", "marginal ridge"),
    9: marked("areas", "triangular ridge"),
    10: marked("areas", "line angle"),
    11: marked("areas", "connector and embrasure"),
    12: marked("areas", "neck band inside"),
    13: marked("areas", "tissue side"),
}


def area_from_number(number: int) -> Area:
    """Return the zone (1 to 6) or accent (7 to 13) with this number.

    Raises
    ------
    PlanError
        If no area has the number.
    """
    if 1 <= number <= 6:
        return Zone(number)
    if 7 <= number <= 13:
        return Accent(number)
    raise PlanError(
        translate("zone", "{number} is not the number of an area.").format(number=number),
        advice=translate("zone", "Areas run from 1 to 13."),
    )


def area_label(area: Area, *, front: bool = False) -> str:
    """Return the area's name; on front teeth the cusp zone is called incisal."""
    if front and area is Zone.CUSP:
        return translate("areas", "incisal")
    return area.label
