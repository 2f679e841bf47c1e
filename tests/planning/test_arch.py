"""The textbook arch, and teeth stood beside a crown in it."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.planning.arch import arch_depth_mm, arch_stand, edge_below_row_mm, textbook_size
from stainmap.planning.row_placing import (
    CONTACT_GAP_MM,
    ToothBody,
    facial_edge,
    mouth_size,
    moved,
    room_between,
    stood_beside,
    teeth_beside,
)
from stainmap.surface.mesh import TriMesh
from tests.surface.shapes import sphere

JAWS = ((11, 21, 18), (41, 31, 48))


def units(*numbers: int) -> tuple[Unit, ...]:
    if len(numbers) == 1:
        return (Unit(tooth=Tooth(number=numbers[0])),)
    return tuple(Unit(tooth=Tooth(number=n), role=Role.RETAINER) for n in numbers)


def ball(radius: float, middle: tuple[float, float, float], tooth: int) -> ToothBody:
    mesh = sphere(1.0, 4)
    mirrored = Tooth(number=tooth).quadrant in (2, 4)
    rows = np.diag([-1.0 if mirrored else 1.0, 1.0, 1.0])
    return ToothBody(
        tooth=Tooth(number=tooth),
        mesh=TriMesh(mesh.vertices * radius + np.array(middle), mesh.faces),
        rows=rows,
    )


@pytest.mark.parametrize("upper", [True, False])
def test_seven_teeth_of_textbook_width_stand_in_the_arch_without_gap(upper: bool) -> None:
    quadrant = 20 if upper else 30
    stands = [arch_stand(Tooth(number=quadrant + k)) for k in range(1, 8)]
    widths = [textbook_size(Tooth(number=quadrant + k)).mesiodistal for k in range(1, 8)]
    for (one, other), (first, second) in zip(pairwise(stands), pairwise(widths), strict=True):
        # A chord of a curve is a little shorter than the curve.
        apart = float(np.linalg.norm(one.place - other.place))
        assert 0.96 * (first + second) / 2 < apart <= (first + second) / 2 + 1e-6
    assert stands[0].place[1] == pytest.approx(0.0, abs=1.0)


def test_arch_is_the_beta_function_of_its_source() -> None:
    # [Braun1998]: Y = 3.0314 D (1/2 + X/W)^0.8 (1/2 - X/W)^0.8; 3.0314 is 4^0.8 to five figures.
    depth = arch_depth_mm(Tooth(number=26))
    width = depth / 0.70
    for number in range(21, 28):
        x, y = arch_stand(Tooth(number=number)).place
        expected = 3.0314 * depth * (0.5 + x / width) ** 0.8 * (0.5 - x / width) ** 0.8
        assert y + depth == pytest.approx(expected, abs=0.03)


def test_canines_and_molars_are_as_far_apart_as_in_adults() -> None:
    # Between canines and between first molars: means of adults from memory, 33 and 52 mm above,
    # 26 and 46 mm below, with standard deviations of 2 to 3 mm.
    for upper, canine, molar in ((True, 33.0, 52.0), (False, 26.0, 46.0)):
        quadrant = 20 if upper else 30
        for position, wide in ((3, canine), (6, molar)):
            across = 2 * arch_stand(Tooth(number=quadrant + position)).place[0]
            assert across == pytest.approx(wide, abs=3.0)


@pytest.mark.parametrize(("right", "left", "_last"), JAWS)
def test_arch_is_mirrored_at_the_midline(right: int, left: int, _last: int) -> None:
    flip = np.array([-1.0, 1.0])
    for position in range(8):
        one = arch_stand(Tooth(number=right + position))
        other = arch_stand(Tooth(number=left + position))
        assert np.allclose(one.place, other.place * flip)
        assert np.allclose(one.mesial, other.mesial * flip)
        assert np.allclose(one.facial, other.facial * flip)
        assert one.mesial @ one.facial == pytest.approx(0.0)
        # Facial is away from the middle of the mouth, mesial along the curve to the front.
        assert one.facial @ (one.place - np.array([0.0, -25.0])) > 0.0


@pytest.mark.parametrize(
    ("numbers", "expected"),
    [
        ((36,), [37, 35]),
        ((46,), [47, 45]),
        ((11,), [13, 12, 21, 22]),
        ((23,), [21, 22, 24, 25]),
        ((17,), [16]),
        ((14, 15, 16), [17, 13]),
        ((12, 11, 21, 22), [14, 13, 23, 24]),
        ((31,), [42, 41, 32, 33]),
    ],
)
def test_neighbours_follow_from_the_numbers(numbers: tuple[int, ...], expected: list[int]) -> None:
    found = teeth_beside(units(*numbers))
    assert sorted(one.tooth.number for one in found) == sorted(expected)
    # Those next to the restoration stand beside its outermost units.
    ends = {units(*numbers)[one.unit].tooth.number for one in found if one.away == 1}
    assert ends <= set(numbers)
    assert [one.away for one in found].count(1) == (1 if numbers == (17,) else 2)


def test_two_balls_nearly_touch() -> None:
    # Closed form: their middles are the sum of the radii and the gap apart, along the way.
    ahead = np.array([1.0, 0.0, 0.0])
    one, other = ball(4.0, (0, 0, 0), 36), ball(3.0, (12.0, 0, 0), 35)
    assert room_between(one.mesh, other.mesh, ahead) == pytest.approx(5.0, abs=0.03)
    deeper = ball(3.0, (6.0, 0, 0), 35)
    assert room_between(one.mesh, deeper.mesh, ahead) == pytest.approx(-1.0, abs=0.03)
    # 5 mm aside they meet later, sqrt(7^2 - 5^2) = 4.9 mm apart; there both surfaces slope by
    # one in one, and a cell of 0.3 mm hides as much.
    aside = ball(3.0, (12.0, 5.0, 0), 35)
    apart = 12.0 - np.sqrt(49.0 - 25.0)
    assert room_between(one.mesh, aside.mesh, ahead) == pytest.approx(apart, abs=0.3)
    # Those that miss each other are held to their ends.
    missing = ball(3.0, (12.0, 9.0, 0), 35)
    assert room_between(one.mesh, missing.mesh, ahead) == pytest.approx(5.0, abs=0.03)


@pytest.mark.parametrize(("here", "there"), [(36, 35), (36, 37), (46, 45), (13, 12), (11, 21)])
def test_a_neighbour_touches_and_stands_as_the_arch_has_it(here: int, there: int) -> None:
    crown, body = ball(5.0, (1.0, 2.0, 3.0), here), ball(1.0, (7.0, -4.0, 0.5), there)
    placed = stood_beside(body, crown, size=1.0)
    stood = moved(body, placed)
    # It has its textbook size, along the directions it stands in.
    size = textbook_size(body.tooth)
    extent = np.ptp(stood.mesh.vertices @ placed.axes.T, axis=0)
    assert extent == pytest.approx((size.mesiodistal, size.buccolingual, size.height), rel=1e-6)
    # Its directions are right-angled, and its occlusal is the crown's.
    assert placed.axes @ placed.axes.T == pytest.approx(np.eye(3))
    assert placed.axes[2] == pytest.approx(crown.rows[2])
    # Handed as its own quadrant is.
    assert np.linalg.det(placed.axes) == pytest.approx(np.linalg.det(body.rows))
    # Nearly touching: the nearest vertices of both are the gap apart, as closely as they lie.
    nearest = np.min(
        np.linalg.norm(crown.mesh.vertices[:, None] - stood.mesh.vertices[None], axis=2)
    )
    assert nearest < 0.5
    ahead = stood.mesh.centre - crown.mesh.centre
    ahead -= (ahead @ crown.rows[2]) * crown.rows[2]
    way = arch_stand(body.tooth).place - arch_stand(crown.tooth).place
    stand = arch_stand(crown.tooth)
    expected = (way @ stand.mesial) * crown.rows[0] + (way @ stand.facial) * crown.rows[1]
    assert room_between(
        crown.mesh, stood.mesh, expected / np.linalg.norm(expected)
    ) == pytest.approx(CONTACT_GAP_MM, abs=0.05)
    # Edges are level, but for a lateral incisor.
    tops = [facial_edge(one.mesh.vertices, one.rows)[1] for one in (crown, stood)]
    assert tops[1] - tops[0] == pytest.approx(-edge_below_row_mm(body.tooth), abs=0.05)


def test_mirrored_quadrants_stand_mirrored() -> None:
    flip = np.array([-1.0, 1.0, 1.0])
    left = stood_beside(ball(1.0, (0, 0, 0), 35), ball(5.0, (0, 0, 0), 36))
    right = stood_beside(ball(1.0, (0, 0, 0), 45), ball(5.0, (0, 0, 0), 46))
    assert right.shift == pytest.approx(left.shift * flip, abs=0.05)
    assert right.axes[0] == pytest.approx(left.axes[0] * flip)
    assert right.axes[1] == pytest.approx(left.axes[1] * flip)
    # The premolar of a lower left molar stands to mesial of it.
    assert left.shift[0] > 5.0


def test_own_size_is_kept_and_a_wide_crown_has_wide_neighbours() -> None:
    body = ball(3.3, (0, 0, 0), 35)
    kept = moved(body, stood_beside(body, ball(5.0, (0, 0, 0), 36), size=None))
    assert kept.mesh.volume == pytest.approx(body.mesh.volume)
    assert mouth_size(ball(5.5, (0, 0, 0), 36)) == pytest.approx(1.0, rel=1e-3)
    assert mouth_size(ball(6.05, (0, 0, 0), 36)) == pytest.approx(1.1, rel=1e-3)
    assert mouth_size(ball(9.0, (0, 0, 0), 36)) == pytest.approx(1.2)
