"""Programmes: their class, their course, and the work of sintering."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import quad

from stainmap.files.catalogue import starter_catalogue
from stainmap.model.material import Provenance, Segment, SinteringProgramme
from stainmap.predict.sintering import (
    ACTIVATION_ENERGY_J_PER_MOL,
    class_factor,
    duration_text,
    ln_work,
    programme_corners,
    temperature_c,
    time_class,
)


def programme(*segments: tuple[float, float]) -> SinteringProgramme:
    return SinteringProgramme(
        name="test",
        segments=tuple(Segment(target_c=target, minutes=minutes) for target, minutes in segments),
        scattering_factor=1.0,
        provenance=Provenance.INVENTED,
    )


@pytest.mark.parametrize(
    ("minutes", "name", "factor"),
    [
        (600.0, "slow", 1.0),
        (420.0, "slow", 1.0),
        (419.0, "standard", 1.1),
        (121.0, "standard", 1.1),
        (120.0, "fast", 1.35),
        (46.0, "fast", 1.35),
        (45.0, "very fast", 1.5),
        (10.0, "very fast", 1.5),
    ],
)
def test_classes_by_total_time(minutes: float, name: str, factor: float) -> None:
    """Common practice, no published source; the factors are assumed."""
    assert time_class(minutes) == name
    assert class_factor(minutes) == factor


def test_starter_programmes_are_what_their_names_say() -> None:
    programmes = starter_catalogue().programmes
    assert [one.name for one in programmes] == ["slow", "standard", "fast", "very fast"]
    for one in programmes:
        assert time_class(one.minutes) == one.name
        assert one.scattering_factor == class_factor(one.minutes)
        assert 1450.0 <= one.peak_c <= 1600.0


def test_durations_read_as_on_the_bench() -> None:
    assert duration_text(530.0) == "8 h 50 min"
    assert duration_text(120.0) == "2 h"
    assert duration_text(41.6) == "42 min"


def test_course_of_temperature() -> None:
    one = programme((1000.0, 100.0), (1000.0, 30.0), (20.0, 50.0))
    np.testing.assert_allclose(
        temperature_c(one, [-5.0, 0.0, 50.0, 100.0, 115.0, 155.0, 180.0, 999.0]),
        [20.0, 20.0, 510.0, 1000.0, 1000.0, 510.0, 20.0, 20.0],
    )
    times, temperatures = programme_corners(one)
    assert times.tolist() == [0.0, 100.0, 130.0, 180.0]
    assert temperatures.tolist() == [20.0, 1000.0, 1000.0, 20.0]


def test_work_of_a_hold_in_closed_form() -> None:
    """A hold adds t exp(-Q / R T) / T; the ramps around it, within a second, add nothing."""
    hold = programme((1500.0, 1e-6), (1500.0, 120.0), (20.0, 1e-6))
    kelvin = 1773.15
    expected = np.log(120.0 * 60.0 / kelvin) - 485e3 / (8.314462618 * kelvin)
    assert ln_work(hold) == pytest.approx(expected, abs=1e-6)


def test_work_of_ramps_against_adaptive_quadrature() -> None:
    one = starter_catalogue().programme("slow")

    def rate(minute: float) -> float:
        kelvin = float(temperature_c(one, minute)) + 273.15
        # Taken out: the rate at the peak, so that the integral is of order one.
        return (
            np.exp(-ACTIVATION_ENERGY_J_PER_MOL / 8.314462618 * (1 / kelvin - 1 / 1773.15)) / kelvin
        )

    corners = programme_corners(one)[0]
    parts = [
        quad(rate, start, end, epsabs=1e-14, epsrel=1e-10, limit=200)[0] * 60.0
        for start, end in pairwise(corners)
    ]
    expected = np.log(sum(parts)) - ACTIVATION_ENERGY_J_PER_MOL / (8.314462618 * 1773.15)
    assert ln_work(one) == pytest.approx(expected, abs=1e-8)


def test_work_does_not_rank_translucency() -> None:
    """Why work is information only: a short hot cycle does more of it than a long cool one."""
    hot = programme((1600.0, 10.0), (1600.0, 15.0), (300.0, 15.0))
    long = programme((1450.0, 180.0), (1450.0, 120.0), (200.0, 180.0))
    assert ln_work(hot) > ln_work(long)
    assert class_factor(hot.minutes) > class_factor(long.minutes)
