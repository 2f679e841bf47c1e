"""CIEDE2000 against its published pairs and against colour-science."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.optics.difference import delta_e_00, delta_e_76

PAIRS = Path(__file__).resolve().parent.parent / "data" / "ciede2000_pairs.csv"
# The hues of this pair lie exactly opposite; rounding decides the mean hue and so the difference.
TIE, TIE_VALUES = 14, (4.8045, 4.7461)

lab = st.tuples(st.floats(0.0, 100.0), st.floats(-80.0, 80.0), st.floats(-80.0, 80.0))


def published() -> list[tuple[int, list[float], list[float], float]]:
    with PAIRS.open(encoding="utf-8", newline="") as file:
        rows = [list(map(float, row)) for row in list(csv.reader(file))[1:]]
    return [(int(row[0]), row[1:4], row[4:7], row[7]) for row in rows]


@pytest.mark.parametrize(("pair", "one", "other", "expected"), published())
def test_published_pairs(pair: int, one: list[float], other: list[float], expected: float) -> None:
    """All 34 pairs of [Sharma2005], right after rounding to four decimals, both ways round."""
    for difference in (delta_e_00(one, other), delta_e_00(other, one)):
        rounded = round(float(difference), 4)
        if pair == TIE:
            assert rounded in TIE_VALUES
        else:
            assert rounded == expected


def test_there_are_34_pairs() -> None:
    assert [pair for pair, *_ in published()] == list(range(1, 35))


def test_against_colour_science() -> None:
    import colour

    rng = np.random.default_rng(5)
    low, high = [0.0, -60.0, -60.0], [100.0, 60.0, 60.0]
    one, other = rng.uniform(low, high, (4000, 3)), rng.uniform(low, high, (4000, 3))
    near = one + rng.normal(0.0, 1.0, one.shape)
    for second in (other, near):
        np.testing.assert_allclose(
            delta_e_00(one, second), colour.delta_E(one, second, method="CIE 2000"), atol=1e-9
        )
        np.testing.assert_allclose(
            delta_e_76(one, second), colour.delta_E(one, second, method="CIE 1976"), atol=1e-9
        )


@given(one=lab, other=lab)
def test_symmetric_and_not_negative(one: tuple[float, ...], other: tuple[float, ...]) -> None:
    assert delta_e_00(one, one) == 0.0
    assert delta_e_76(one, one) == 0.0
    there, back = delta_e_00(one, other), delta_e_00(other, one)
    assert there >= 0.0
    hues = [np.degrees(np.arctan2(b, a)) for _, a, b in (one, other)]
    if (
        abs(abs(hues[0] - hues[1]) - 180.0) > 5.0
        or min(np.hypot(*one[1:]), np.hypot(*other[1:])) == 0
    ):
        assert there == pytest.approx(back, rel=1e-9, abs=1e-9)


def test_broadcasts() -> None:
    many = np.broadcast_to([70.0, 1.0, 16.0], (5, 4, 3))
    assert delta_e_00(many, [70.0, 1.0, 16.0]).shape == (5, 4)
