"""Unlike colours are refused; conversions against transport, colour-science and spectra."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import colour
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.errors import PlanError
from stainmap.model.case import Backing, Region
from stainmap.model.colour import (
    IN_PLACE,
    SPHERE_WITH_GLOSS,
    SPHERE_WITHOUT_GLOSS,
    WITHOUT_GLOSS,
    Colour,
    Conversion,
    Measurement,
)
from stainmap.optics.colorimetry import (
    adapt_lab,
    lab_to_xyz,
    reflectance_to_lab,
    white_point,
    xyz_to_lab,
)
from stainmap.predict.colour_conversion import colour_difference, conversions_for, convert
from stainmap.predict.quadrature import Materials, sample_reflectances
from stainmap.predict.scene import build_scene
from tests.optics.adding_doubling import CERAMIC, Slabs, fresnel
from tests.predict.scenes import materials, plan_of

OURS = Measurement()


def measured(lab: tuple[float, float, float] = (76.0, 1.0, 16.0), **how: Any) -> Colour:
    lightness, a, b = lab
    return Colour(lightness=lightness, a=a, b=b, measurement=replace(OURS, **how))


# ---- what differs, and what is said


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ({"geometry": SPHERE_WITH_GLOSS}, "geometry: d/8 SCI against 45/0. Choose the conversion"),
        ({"geometry": "0/45 home made"}, "Give a reading in 45/0; there is no conversion"),
        ({"illuminant": "C"}, "illuminant: C against D65. Choose the conversion 'linear Bradford"),
        ({"illuminant": "FL2"}, "Predict for FL2 and 2 degrees, or give a reading for D65."),
        ({"illuminant": "daylight"}, "Give a reading in D65; there is no conversion"),
        ({"observer_degrees": 10}, "Predict for D65 and 10 degrees, or give a reading for 2"),
        ({"backing": "black tile"}, "'black tile' against 'natural dentine, medium'. Read the"),
    ],
)
def test_unlike_colours_are_refused_with_what_to_do(how: dict[str, Any], said: str) -> None:
    with pytest.raises(PlanError) as caught:
        colour_difference(measured(**how), measured())
    assert said in str(caught.value)
    assert str(caught.value).startswith("The two colours differ in ")


@pytest.mark.parametrize(
    "how", [{"observer_degrees": 10}, {"backing": "black"}, {"illuminant": "FL11"}]
)
def test_some_things_have_no_conversion_whatever_is_chosen(how: dict[str, Any]) -> None:
    with pytest.raises(PlanError, match="differ in"):
        colour_difference(measured(**how), measured(), tuple(Conversion))
    with pytest.raises(PlanError, match="differ in"):
        conversions_for(measured(**how).measurement, OURS)


def test_like_colours_need_nothing_and_get_nothing() -> None:
    one, other = measured(), measured((75.0, 1.5, 17.0))
    found = colour_difference(one, other, tuple(Conversion))
    assert found.conversions == ()
    assert found.added_sd == (0.0, 0.0, 0.0)
    expected = colour.delta_E(np.array(one.lab), np.array(other.lab), method="CIE 2000")
    assert found.de00 == pytest.approx(float(expected), abs=1e-9)


def test_wanted_in_place_is_like_over_anything() -> None:
    assert colour_difference(measured(backing=IN_PLACE), measured()).de00 == 0.0
    assert OURS.unlike(replace(OURS, backing=IN_PLACE)) == ()
    assert OURS.unlike(Measurement(geometry="x", illuminant="y", observer_degrees=10)) == (
        "geometry", "illuminant", "observer",
    )  # fmt: skip


def test_a_conversion_names_itself_and_adds_its_uncertainty() -> None:
    reading = measured(geometry=SPHERE_WITH_GLOSS, illuminant="A")
    needed = (Conversion.FIRST_SURFACE, Conversion.ADAPTED_WHITE)
    assert conversions_for(reading.measurement, OURS) == needed
    found = convert(reading, OURS, tuple(Conversion))
    assert found.colour.measurement == OURS
    assert tuple(one.conversion for one in found.conversions) == needed
    assert str(found.conversions[0]).startswith("first-surface reflection, polished, n 2.15: d/8")
    assert "A to D65" in str(found.conversions[1])
    assert found.added_sd == pytest.approx(np.hypot((1.0, 0.2, 0.6), (0.8, 1.1, 0.9)))
    with pytest.raises(PlanError, match="differ in illuminant"):
        convert(reading, OURS, (Conversion.FIRST_SURFACE,))


# ---- gloss


def through_transport(absorption: float, scattering: float, wall: float) -> tuple[float, float]:
    """Return the d/8 and the 45/0 radiance factor without gloss, by adding-doubling.

    By the reflection matrix of the slab within its front surface; between streams by cubics.
    """
    slabs = Slabs(12)
    R, T = slabs.layer(absorption, scattering, wall)
    stump = slabs._stump(0.5)
    below = R + T @ stump @ np.linalg.solve(slabs.one - R @ stump, T)
    up = below @ np.linalg.inv(slabs.one - np.diag(slabs.front) @ below)
    seen = slabs.mu > np.sqrt(1.0 - 1.0 / CERAMIC**2)

    def within(degrees: float) -> float:
        return float(np.sqrt(1.0 - (np.sin(np.radians(degrees)) / CERAMIC) ** 2))

    def at(values: np.ndarray, degrees: float) -> float:
        return float(np.polyval(np.polyfit(slabs.mu[seen], values, 3), within(degrees)))

    def enters(degrees: float) -> float:
        return float(1.0 - fresnel(1.0, CERAMIC, np.cos(np.radians(degrees))))

    sphere = up @ (CERAMIC**2 * (1.0 - slabs.front))
    d_8 = enters(8.0) / CERAMIC**2 * at(sphere[seen], 8.0)
    beam = [at(column, 0.0) for column in (up / slabs.flux)[np.ix_(seen, seen)].T]
    return d_8, enters(0.0) * enters(45.0) / CERAMIC**2 * at(np.array(beam), 45.0)


@pytest.mark.parametrize(
    ("absorption", "scattering", "wall"),
    [(0.01, 12.0, 1.2), (0.1, 12.0, 1.2), (0.4, 12.0, 0.6), (0.05, 7.5, 0.8), (0.05, 4.0, 2.0)],
)
def test_gloss_against_radiative_transport(
    absorption: float, scattering: float, wall: float
) -> None:
    """A grey slab with exact Fresnel surfaces, solved in 36 streams; 0.02 L* is its own error."""
    d_8, flat = through_transport(absorption, scattering, wall)
    gloss = float(fresnel(1.0, CERAMIC, np.cos(np.radians(8.0))))

    def grey(factor: float, geometry: str) -> Colour:
        lightness = float(xyz_to_lab(factor * white_point(), white_point())[0])
        return measured((lightness, 0.0, 0.0), geometry=geometry)

    wanted = grey(flat, WITHOUT_GLOSS)
    for reading in (grey(d_8, SPHERE_WITHOUT_GLOSS), grey(d_8 + gloss, SPHERE_WITH_GLOSS)):
        found = convert(reading, OURS, (Conversion.FIRST_SURFACE,)).colour
        assert found.lightness == pytest.approx(wanted.lightness, abs=0.02)
        back = convert(found, reading.measurement, (Conversion.FIRST_SURFACE,)).colour
        assert back.lab == pytest.approx(reading.lab, abs=1e-9)


def test_gloss_lifts_lightness_as_the_first_surface_must() -> None:
    """((n - 1) / (n + 1))^2 = 0.133 on Y takes L* 78 to 85, less what a sphere lets in less."""
    flat = measured((78.0, 0.0, 12.0))
    with_gloss = convert(flat, replace(OURS, geometry=SPHERE_WITH_GLOSS), tuple(Conversion)).colour
    assert with_gloss.lightness == pytest.approx(84.4, abs=0.6)
    assert with_gloss.chroma < flat.chroma


def test_what_is_darker_than_its_gloss_is_refused() -> None:
    with pytest.raises(PlanError, match="less than the first surface"):
        convert(measured((30.0, 0.0, 0.0), geometry=SPHERE_WITH_GLOSS), OURS, tuple(Conversion))


# ---- lights


@pytest.mark.parametrize("light", ["D50", "A", "C"])
def test_adaptation_against_colour_science(light: str) -> None:
    white, ours = white_point(light), white_point()
    lab = np.random.default_rng(2).uniform([40, -5, 0], [90, 12, 35], (200, 3))
    adapted = colour.adaptation.chromatic_adaptation_VonKries(
        lab_to_xyz(lab, white), white, ours, transform="Bradford"
    )
    np.testing.assert_allclose(adapt_lab(lab, white, ours), xyz_to_lab(adapted, ours), atol=1e-6)
    one = measured(tuple(lab[0]), illuminant=light)
    found = convert(one, OURS, (Conversion.ADAPTED_WHITE,)).colour
    assert found.lab == pytest.approx(tuple(xyz_to_lab(adapted, ours)[0]), abs=1e-6)


@pytest.mark.parametrize("observer", [2, 10])
@pytest.mark.parametrize("light", ["D50", "A", "C"])
def test_adaptation_misses_real_spectra_by_no_more_than_it_says(light: str, observer: int) -> None:
    """Random walls and stains of a pale and a dark block, with the colour computed under both."""
    here = Measurement(illuminant=light, observer_degrees=observer)
    wanted = replace(here, illuminant="D65")
    states = random_reflectances()
    truth = reflectance_to_lab(states, "D65", observer)
    adapted, stated = [], (0.0, 0.0, 0.0)
    for lab in reflectance_to_lab(states, light, observer):
        lightness, a, b = lab
        converted = convert(
            Colour(lightness=lightness, a=a, b=b, measurement=here), wanted, tuple(Conversion)
        )
        adapted.append(converted.colour.lab)
        stated = converted.added_sd
    missed = np.sqrt(((np.array(adapted) - truth) ** 2).mean(0))
    assert (missed <= stated).all(), (missed, stated)
    assert (missed > 0.3 * np.array(stated)).any()


def test_lamps_with_lines_have_no_conversion_because_it_would_be_off() -> None:
    """Adapting from FL2 misses a* by more than two units where D50 misses it by half of one."""
    states = random_reflectances()
    truth = reflectance_to_lab(states)
    for light, least in (("FL2", 2.0), ("FL11", 1.0)):
        adapted = adapt_lab(reflectance_to_lab(states, light), white_point(light), white_point())
        assert np.sqrt(((adapted - truth)[:, 1] ** 2).mean()) > least


def random_reflectances() -> np.ndarray:
    starter = materials()
    liquids = [liquid.name for liquid in starter.liquids]
    backings = [
        Backing(region=Region.STUMP, stump=stump.name, cement="clear") for stump in starter.stumps
    ]
    states = []
    for block in ("white 3Y", "deep 5Y"):
        scene = build_scene(starter, plan_of(liquids, block), programme="slow", backings=backings)
        states.append(
            sample_reflectances(
                Materials(
                    block_absorption_per_mm=scene.block_absorption_per_mm,
                    block_scattering_per_mm=scene.block_scattering_per_mm,
                    liquid_absorption_per_mm=scene.liquid_absorption_per_mm,
                    scatter_change=scene.scatter_change,
                    backing_reflectance=scene.backing_reflectance,
                    factor=scene.radiance_factor,
                    front_internal=scene.front_internal,
                ),
                150,
                random_state=31,
            )
        )
    return np.concatenate(states)


@given(
    lightness=st.floats(60.0, 90.0),
    a=st.floats(-3.0, 6.0),
    b=st.floats(2.0, 30.0),
    light=st.sampled_from(["D50", "A", "C"]),
    geometry=st.sampled_from([SPHERE_WITH_GLOSS, SPHERE_WITHOUT_GLOSS]),
)
def test_conversions_go_there_and_back(
    lightness: float, a: float, b: float, light: str, geometry: str
) -> None:
    start = measured((lightness, a, b))
    other = replace(OURS, illuminant=light, geometry=geometry)
    there = convert(start, other, tuple(Conversion)).colour
    back = convert(there, OURS, tuple(Conversion)).colour
    # Gloss is taken off in the light it was read in, and comes back in the other.
    assert back.lab == pytest.approx(start.lab, abs=0.01)
