"""Programmes: their class, their course, and the work of sintering."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import quad

from stainmap.errors import CatalogueError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.colour import Colour, Measurement
from stainmap.model.material import BlankCoupon, Provenance, Segment, SinteringProgramme
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import build_scene
from stainmap.predict.sintering import (
    ACTIVATION_ENERGY_J_PER_MOL,
    class_factor,
    duration_text,
    factor_from_coupon,
    ln_work,
    programme_corners,
    temperature_c,
    time_class,
)
from tests.predict.scenes import (
    BLACK_TILE,
    DENTINE,
    WHITE_TILE,
    materials,
    plan_of,
    plate_lab,
)

COUPON = BlankCoupon(scattering_factor=1.22, read_by="bench 2", read_on="2026-05-04")


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


def with_coupon(name: str, coupon: BlankCoupon):
    """Return the starter materials, one programme of which has been read."""
    catalogue = materials()
    programmes = tuple(
        replace(one, coupon=coupon) if one.name == name else one for one in catalogue.programmes
    )
    return replace(catalogue, programmes=programmes)


def test_a_coupon_replaces_the_factor_of_the_class() -> None:
    plan = plan_of(["barley"])
    read = build_scene(with_coupon("fast", COUPON), plan, programme="fast", backings=[DENTINE])
    slow = build_scene(materials(), plan, programme="slow", backings=[DENTINE])
    np.testing.assert_allclose(
        read.reduced_scattering_per_mm, 1.22 * slow.reduced_scattering_per_mm
    )
    np.testing.assert_array_equal(read.liquid_absorption_per_mm, slow.liquid_absorption_per_mm)
    assert materials().programme("fast").effective_scattering_factor == 1.35


@pytest.mark.parametrize(
    ("values", "says"),
    [
        ({"scattering_factor": 0.6}, "0.6"),
        ({"scattering_factor": float("nan")}, "nan"),
        ({"read_by": " "}, "nobody"),
        ({"read_on": ""}, "no day"),
    ],
)
def test_coupons_nobody_could_have_read_are_refused(values: dict[str, object], says: str) -> None:
    with pytest.raises(CatalogueError, match=says):
        replace(COUPON, **values)


def plate_readings(factor: float, *tiles: str) -> list[Colour]:
    """Return what a plate of 1.0 mm, sintered with that factor, looks like dry on tiles."""
    catalogue = with_coupon("fast", replace(COUPON, scattering_factor=factor))
    readings = []
    for tile in tiles:
        backing = replace(WHITE_TILE, stump=tile)
        scene = build_scene(catalogue, plan_of([]), programme="fast", backings=[backing])
        lightness, a, b = reference_lab(scene, np.zeros((0, 1)), [1.0])[0]
        readings.append(
            Colour(lightness=lightness, a=a, b=b, measurement=Measurement(backing=tile))
        )
    return readings


@pytest.mark.parametrize("factor", [0.75, 1.0, 1.22, 1.6])
@pytest.mark.parametrize("tiles", [("black tile",), ("black tile", "white tile")])
def test_the_factor_of_a_coupon_comes_back_from_its_colours(
    factor: float, tiles: tuple[str, ...]
) -> None:
    layer = materials().block("medium 3Y").layers[0]
    found = factor_from_coupon(layer, materials(), plate_readings(factor, *tiles), 1.0)
    assert found.scattering_factor == pytest.approx(factor, abs=0.003)
    assert found.remaining_de00 < 0.01


def test_a_coupon_no_cycle_makes_is_refused_and_a_slip_shows() -> None:
    layer = materials().block("medium 3Y").layers[0]
    grey = [Colour(lightness=50.0, a=0.0, b=8.0, measurement=Measurement(backing="black tile"))]
    with pytest.raises(CatalogueError, match=r"multiplies scattering by \d\.\d\d, which no cycle"):
        factor_from_coupon(layer, materials(), grey, 1.0)
    with pytest.raises(CatalogueError, match="at least one reading"):
        factor_from_coupon(layer, materials(), [], 1.0)
    other = materials().block("deep 3Y").layers[0]
    slip = factor_from_coupon(other, materials(), plate_readings(1.1, "black tile"), 1.0)
    assert slip.remaining_de00 > 1.0


def test_slow_programmes_are_more_translucent_than_fast_ones() -> None:
    """Common practice; agrees with published translucency of slow against microwave cycles."""
    labs = [
        [
            plate_lab(wall_mm=1.0, programme=one.name, backings=[tile])
            for tile in (WHITE_TILE, BLACK_TILE)
        ]
        for one in materials().programmes
    ]
    tp = [float(np.linalg.norm(white - black)) for white, black in labs]
    assert (np.diff(tp) < -0.1).all()
