"""Classical tabs as shades: what a tab stands for, and which tab a colour is nearest to."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.model.colour import IN_PLACE, Colour, Conversion, Measurement
from stainmap.model.intake import Shade, ShadeSource, Triple
from stainmap.model.shade_table import ShadeTable, Tab
from stainmap.optics.difference import delta_e_00
from stainmap.predict.colour_conversion import convert

_AS_PREDICTED = Measurement(backing=IN_PLACE)


@dataclass(frozen=True, slots=True, kw_only=True)
class NearTab:
    """A tab near a colour, and how far it is from it, CIEDE2000."""

    tab: Tab
    de00: float


def tab_shade(tab: Tab, *, doubt: Triple | None = None) -> Shade:
    """Return a tab as the shade of a tooth.

    Its colour stays as it stands in the table; the conversion that makes it comparable with a
    prediction goes along by name.

    Parameters
    ----------
    doubt
        Standard deviation of L*, a*, b*; that of the table's entry if None.
    """
    said = [part for part in (tab.note, tab.provenance) if part]
    return Shade(
        source=ShadeSource.TAB,
        colour=tab.colour,
        doubt=tab.doubt if doubt is None else doubt,
        name=tab.name,
        conversions=(Conversion.TAB_TABLE,),
        note="; ".join(said),
    )


def tab_colour(tab: Tab) -> Colour:
    """Return a tab's colour as a prediction is measured: 45/0, D65, by the named conversion."""
    return convert(tab.colour, _AS_PREDICTED, (Conversion.TAB_TABLE,)).colour


def nearest_tabs(table: ShadeTable, colour: Colour, *, within: float = 1.8) -> tuple[NearTab, ...]:
    """Return the nearest tab to a colour, and others no further from it by more than `within`.

    Several are the rule: eight of the 120 pairs of tabs lie closer together than 1.8, so the
    nearest alone says more than is known.

    Parameters
    ----------
    colour
        Measured as a prediction is.
    within
        How much further, CIEDE2000, another tab may be; 1.8 is the published limit of what half of
        observers accept [Paravina2015].
    """
    near = [
        NearTab(tab=tab, de00=float(delta_e_00(tab_colour(tab).lab, colour.lab)))
        for tab in table.tabs
    ]
    near.sort(key=lambda one: (one.de00, one.tab.name))
    return tuple(one for one in near if one.de00 <= near[0].de00 + within)
