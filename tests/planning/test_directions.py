"""Mesial, buccal and the order of a bridge's units, by the rules of the jaws."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from stainmap.model.tooth import Tooth
from stainmap.planning.directions import (
    SideGuess,
    across,
    buccal_from_mesial,
    mesial_from_buccal,
    patients_left,
)
from stainmap.planning.row import (
    mesial_along,
    row_directions,
    row_order,
    row_place,
    vote_by_sides,
    vote_by_size,
)
from stainmap.practice.crown_maker import MadeCrown
from tests.planning.bodies import units

# A patient looks along +y and z points up, so the left hand is at -x. Upper teeth bite down.
LEFT, FRONT, UP = np.diag([-1.0, 1.0, 1.0])
ROW = (18, 16, 14, 13, 11, 21, 24, 27)
LOWER_ROW = (48, 45, 42, 41, 31, 33, 36)


def place_in_jaw(tooth: Tooth) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return axis, mesial and buccal of a tooth on a half circle open to the back."""
    side = 1.0 if tooth.quadrant in (2, 3) else -1.0
    turn = np.radians(10.0 * tooth.position) * side
    outward = np.sin(turn) * LEFT + np.cos(turn) * FRONT
    toward_left = np.cos(turn) * LEFT - np.sin(turn) * FRONT
    return (-UP if tooth.is_upper else UP), -side * toward_left, outward


@pytest.mark.parametrize("number", [*ROW, *LOWER_ROW])
def test_buccal_follows_from_mesial(number: int) -> None:
    tooth = Tooth(number=number)
    axis, mesial, buccal = place_in_jaw(tooth)
    assert np.allclose(buccal_from_mesial(mesial, axis, tooth), buccal)
    assert np.allclose(mesial_from_buccal(buccal, axis, tooth), mesial)
    left = patients_left(buccal, axis, upper=tooth.is_upper)
    assert left @ LEFT > 0
    assert np.allclose(mesial_along(left, tooth), mesial)


def test_made_crowns_agree(made: Callable[..., MadeCrown]) -> None:
    for number in (36, 46, 14, 24, 11):
        crown = made(number)
        buccal = buccal_from_mesial(crown.mesial, crown.occlusal_axis, Tooth(number=number))
        assert np.allclose(buccal, [0.0, 1.0, 0.0])


def test_row_runs_from_right_to_left() -> None:
    for row in (ROW, LOWER_ROW):
        places = [row_place(Tooth(number=number)) for number in row]
        assert places == sorted(places)
    assert row_order(units(21, 13, 11, 12)) == [1, 3, 2, 0]


@pytest.mark.parametrize("numbers", [(16, 15, 14), (14, 15, 16), (24, 25, 26), (45, 46, 47)])
def test_sizes_tell_the_order(numbers: tuple[int, ...]) -> None:
    teeth = units(*numbers)
    # Outer areas as of made crowns: molars 250 and more, premolars 160.
    area = {4: 160.0, 5: 155.0, 6: 265.0, 7: 245.0}
    along = [area[numbers[k] % 10] for k in row_order(teeth)]
    assert vote_by_size(along, teeth) > 0.25
    assert vote_by_size(along[::-1], teeth) < -0.25


def test_equal_sizes_tell_nothing() -> None:
    assert abs(vote_by_size([180.0, 180.0], units(11, 21))) < 1e-6
    assert abs(vote_by_size([181.0, 120.0, 119.0, 180.0], units(12, 11, 21, 22))) < 0.15


@pytest.mark.parametrize("numbers", [(11, 21), (31, 41), (13, 12, 11), (36, 37)])
def test_sides_tell_the_order(numbers: tuple[int, ...]) -> None:
    teeth = units(*numbers)
    order = row_order(teeth)
    places = [place_in_jaw(teeth[k].tooth) for k in order]
    axis = places[0][0]
    sides = [SideGuess(direction=buccal, confidence=0.8) for _, _, buccal in places]
    positions = np.array([30.0 * buccal for _, _, buccal in places])
    upper = teeth[0].tooth.is_upper
    ahead = row_directions(positions, axis)
    assert vote_by_sides(sides, ahead, axis, upper=upper) > 0.5
    backward = row_directions(positions[::-1], axis)
    assert vote_by_sides(sides[::-1], backward, axis, upper=upper) < -0.5
    assert vote_by_sides([None] * len(sides), ahead, axis, upper=upper) == 0.0


def test_across_an_axis() -> None:
    assert np.allclose(across(np.array([-3.0, 0.0, 4.0]), UP), LEFT)
    assert across(np.array([0.01, 0.0, 4.0]), UP) is None
