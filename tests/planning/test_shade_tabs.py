"""Tabs against chromatic adaptations of colour-science; which tabs cannot be told apart."""

from __future__ import annotations

from itertools import combinations

import colour
import numpy as np
import pytest

from stainmap.files.shades_file import starter_shades
from stainmap.model.colour import IN_PLACE, Conversion, Measurement
from stainmap.model.intake import ShadeSource
from stainmap.model.shade_table import Tab
from stainmap.planning.shade_tabs import nearest_tabs, tab_colour, tab_shade
from stainmap.planning.targets import shade_in
from stainmap.predict.colour_conversion import conversions_for, convert

TABS = starter_shades().tabs
CIE = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]


def adapted(tab: Tab, transform: str) -> np.ndarray:
    """Return L*a*b* under D65 of a tab under C, by colour-science alone."""
    white_c, white_d65 = (colour.xy_to_XYZ(CIE[name]) for name in ("C", "D65"))
    xyz = colour.Lab_to_XYZ(np.array(tab.colour.lab), CIE["C"])
    there = colour.adaptation.chromatic_adaptation_VonKries(
        xyz, white_c, white_d65, transform=transform
    )
    return np.asarray(colour.XYZ_to_Lab(there, CIE["D65"]))


@pytest.mark.parametrize("tab", TABS, ids=lambda tab: tab.name)
def test_a_tab_under_d65_is_what_the_colour_library_makes_of_it(tab: Tab) -> None:
    """Linear Bradford, the one the program uses, to rounding of white points; CAT02 close by."""
    ours = np.array(tab_colour(tab).lab)
    assert ours == pytest.approx(adapted(tab, "Bradford"), abs=0.02)
    # Another published adaptation differs by far less than the 1.5 that is stated.
    assert np.abs(ours - adapted(tab, "CAT02")).max() < 0.35


def test_the_conversion_says_its_name_and_its_doubt() -> None:
    tab = starter_shades().tab("A3")
    assert conversions_for(tab.colour.measurement, Measurement(backing=IN_PLACE)) == (
        Conversion.TAB_TABLE,
    )
    found = convert(tab.colour, Measurement(backing="anything"), (Conversion.TAB_TABLE,))
    assert [str(one.conversion) for one in found.conversions] == [
        "tab table, illuminant C to D65, geometry unchanged, \N{PLUS-MINUS SIGN}1.5"
    ]
    assert found.added_sd == (1.5, 1.5, 1.5)
    assert found.colour.measurement.geometry == "45/0"


def test_a_tab_on_to_another_geometry_takes_both_conversions() -> None:
    tab = starter_shades().tab("A3")
    wanted = Measurement(geometry="d/8 SCE", backing=IN_PLACE)
    needed = (Conversion.TAB_TABLE, Conversion.FIRST_SURFACE)
    assert conversions_for(tab.colour.measurement, wanted) == needed
    found = convert(tab.colour, wanted, needed)
    assert tuple(one.conversion for one in found.conversions) == needed
    assert found.added_sd == pytest.approx(np.hypot((1.5, 1.5, 1.5), (1.0, 0.2, 0.6)))


def test_a_tab_as_a_shade_keeps_its_value_and_its_doubt() -> None:
    tab = starter_shades().tab("A2")
    shade = tab_shade(tab)
    assert shade.source is ShadeSource.TAB
    assert shade.colour == tab.colour
    assert "doubtful" in shade.note
    assert "memory" in shade.note
    assert shade_in(shade).sd == pytest.approx(np.hypot(tab.doubt, 1.5))
    assert shade_in(tab_shade(tab, doubt=(2.0, 1.0, 2.0))).sd == pytest.approx(
        np.hypot((2.0, 1.0, 2.0), 1.5)
    )


def test_the_nearest_tab_is_shown_with_those_that_cannot_be_told_from_it() -> None:
    table = starter_shades()
    for tab in TABS:
        near = nearest_tabs(table, tab_colour(tab))
        assert near[0].tab == tab
        assert near[0].de00 == pytest.approx(0.0, abs=1e-9)
        apart = {
            other.name
            for other in TABS
            if float(
                colour.delta_E(
                    np.array(tab_colour(tab).lab), np.array(tab_colour(other).lab), "CIE 2000"
                )
            )
            <= 1.8
        }
        assert {one.tab.name for one in near} == apart
    close = {frozenset((a.name, b.name)) for a, b in combinations(TABS, 2) if _near(a, b)}
    assert {frozenset(("A1", "B1")), frozenset(("A3.5", "B4")), frozenset(("C2", "D4"))} <= close
    assert len(close) == 8


def _near(one: Tab, other: Tab) -> bool:
    lab, other_lab = np.array(one.colour.lab), np.array(other.colour.lab)
    return float(colour.delta_E(lab, other_lab, "CIE 2000")) < 1.8
