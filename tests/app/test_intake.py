"""The intake page put into a case; the shades of a computer kept in their own file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.app.intake import (
    OwnShades,
    teeth_beside,
    unit_stumps,
    with_intake,
    with_stump_known,
)
from stainmap.errors import CatalogueError, StainmapError
from stainmap.files.case_file import read_case, write_case
from stainmap.files.shades_file import starter_shades
from stainmap.model.case import Case, Region
from stainmap.model.intake import Intake, Third, ThirdShade
from stainmap.model.shade_table import OffsetClass
from stainmap.model.target import DEFAULT_OFFSETS
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.planning.shade_tabs import tab_shade
from stainmap.planning.targets import wanted_in
from tests.builders import dome_case

USUAL = tuple(replace(one, lightness=one.lightness - 1.0) for one in DEFAULT_OFFSETS)


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(8, 16)


def page(*names: str) -> Intake:
    thirds = (Third.MIDDLE, Third.CERVICAL, Third.INCISAL)
    return Intake(
        shades=tuple(
            ThirdShade(third=third, shade=tab_shade(starter_shades().tab(name)))
            for third, name in zip(thirds, names, strict=False)
        )
    )


def put(case: Case, intake: Intake) -> Case:
    return with_intake(case, intake, stump="stump", cement="clear", usual=USUAL)


def test_shades_become_what_is_wanted_and_survive_the_file(case: Case, tmp_path: Path) -> None:
    filled = put(replace(case, target=None), page("A3", "A4"))
    assert filled.target is not None
    assert filled.target.offsets == USUAL
    assert [one.area for one in filled.target.held] == [Zone.CERVICAL]
    write_case(filled, tmp_path / "a.stainmap")
    again = read_case(tmp_path / "a.stainmap")
    assert again.intake == filled.intake
    assert again.target == filled.target
    one, other = (wanted_in(c.target, Zone.CERVICAL) for c in (filled, again) if c.target)
    assert one == other


def test_what_was_wanted_by_hand_stays_while_the_shades_stay(case: Case) -> None:
    filled = put(case, page("A3"))
    assert filled.target is not None
    assert case.target is not None
    assert filled.target.offsets == case.target.offsets
    by_hand = replace(filled, target=replace(filled.target, name="by hand"))
    wished = put(by_hand, replace(page("A3"), wish="older"))
    assert wished.target == by_hand.target
    assert wished.intake is not None
    assert wished.intake.wish == "older"
    assert put(by_hand, page("A2")).target != by_hand.target
    # Nothing read any more: what is wanted is not taken away with it.
    assert put(by_hand, Intake()).target == by_hand.target


def test_the_stump_is_behind_the_crown_and_known_once_it_is_said(case: Case) -> None:
    with pytest.raises(CatalogueError):
        with_intake(case, Intake(), stump="cheese", cement="clear", usual=USUAL)
    known = with_stump_known(case)
    assert known.intake == Intake(stump_known=True)
    assert known.backing(Region.STUMP) == case.backing(Region.STUMP)
    assert with_stump_known(known) is known
    wish = with_stump_known(replace(case, intake=Intake(wish="older")))
    assert wish.intake == Intake(wish="older", stump_known=True)


@pytest.mark.parametrize(
    ("numbers", "beside"),
    [
        ((36,), [37, 35]),
        ((46,), [47, 45]),
        ((11,), [12, 21]),
        ((31,), [41, 32]),
        ((18,), [17]),
        ((28,), [27]),
        ((14, 15, 16), [17, 13]),
        ((12, 11, 21), [13, 22]),
    ],
)
def test_neighbours_stand_at_both_ends(numbers: tuple[int, ...], beside: list[int]) -> None:
    units = tuple(Unit(tooth=Tooth(number=n), role=Role.RETAINER) for n in numbers)
    assert sorted(one.number for one in teeth_beside(units)) == sorted(beside)


def test_own_offsets_and_tabs_are_there_the_next_time(tmp_path: Path) -> None:
    path = tmp_path / "settings" / "shades.toml"
    shades = OwnShades.read(path)
    assert shades.table == starter_shades()
    assert not path.exists()
    shades.keep_offsets(OffsetClass.MOLAR, USUAL)
    tabs = tuple(
        replace(tab, doubt=(0.1, 0.1, 0.1)) if tab.name == "C2" else tab
        for tab in shades.table.tabs
    )
    shades.keep_tabs(tabs)
    again = OwnShades.read(path)
    assert again.problem is None
    assert again.table.tab("C2").doubt == (0.1, 0.1, 0.1)
    assert again.usual((Unit(tooth=Tooth(number=36)),)) == USUAL
    assert again.usual((Unit(tooth=Tooth(number=35)),)) == DEFAULT_OFFSETS


def test_a_damaged_own_file_is_said_and_never_written_over(tmp_path: Path) -> None:
    path = tmp_path / "shades.toml"
    path.write_text("tab = [", encoding="utf-8")
    shades = OwnShades.read(path)
    assert shades.table == starter_shades()
    assert "not valid TOML" in str(shades.problem)
    with pytest.raises(StainmapError, match="damaged"):
        shades.keep_offsets(OffsetClass.FRONT, USUAL)
    assert path.read_text(encoding="utf-8") == "tab = ["


def test_stumps_of_single_units_are_part_of_the_page(case: Case) -> None:
    """Named, changed and taken back; whoever does not ask for them leaves them alone."""
    units = (Unit(tooth=Tooth(number=15)), Unit(tooth=Tooth(number=16)))
    other = "dark"
    stumps = case.materials.stumps
    materials = replace(case.materials, stumps=(*stumps, replace(stumps[0], name=other)))
    bridge = replace(case, units=units, materials=materials)

    def asked(before: Case, stumps: dict[int, str] | None) -> Case:
        return with_intake(
            before, Intake(), stump="stump", cement="clear", usual=USUAL, unit_stumps=stumps
        )

    one = asked(bridge, {1: other})
    assert unit_stumps(one) == {1: other}
    assert one.backing(Region.STUMP, 1).stump == other
    assert one.backing(Region.STUMP, 0).stump == "stump"
    assert unit_stumps(asked(one, None)) == {1: other}
    assert unit_stumps(asked(one, {0: other})) == {0: other}
    assert unit_stumps(asked(one, {})) == {}
