"""Limits of coats per area, and what they say when a plan goes beyond."""

from __future__ import annotations

import pytest

from stainmap.errors import CatalogueError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.zone import Accent, Zone
from stainmap.planning.coat_limits import LIMITS, Use, excesses, use_of


def test_every_starter_liquid_has_a_use_and_every_use_a_liquid() -> None:
    uses = {liquid.name: use_of(liquid) for liquid in starter_catalogue().liquids}
    assert None not in uses.values()
    assert set(uses.values()) == set(Use)
    assert uses["clay"] is Use.BASE
    assert uses["heather"] is Use.LOWERS_VALUE
    assert uses["umber"] is Use.DARK_ACCENT


def test_every_area_has_limits_for_every_use() -> None:
    assert set(LIMITS) == {*Zone, *Accent}
    for limits in LIMITS.values():
        assert frozenset[Use]().union(*(limit.uses for limit in limits)) == frozenset(Use)


def test_coats_of_one_use_count_together() -> None:
    materials = starter_catalogue()
    assert not excesses(Zone.BODY, {"barley": 1, "stone": 1}, materials)
    (over,) = excesses(Zone.BODY, {"barley": 1, "stone": 2}, materials)
    assert str(over) == "Body: 3 coats, at most 2 coats of base."
    assert not excesses(Zone.CERVICAL, {"tan": 1, "amber": 2}, materials)
    said = [str(one) for one in excesses(Zone.CERVICAL, {"amber": 3}, materials)]
    assert said == [
        "Cervical: 3 coats, at most 2 coats of bright accent.",
        "Cervical: 3 coats, at most 2 coats of dark accent and bright accent together.",
    ]
    (none_there,) = excesses(Zone.CUSP, {"umber": 0.5}, materials)
    assert str(none_there) == "Cusp: 0.5 coats, no coats of dark accent or bright accent."


def test_liquids_nobody_knows() -> None:
    with pytest.raises(CatalogueError, match="ochre"):
        excesses(Zone.BODY, {"ochre": 1}, starter_catalogue())
