"""What unknown parameters amount to: against drawing them, and against closed forms."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.optics.colorimetry import xyz_to_lab
from stainmap.predict.parameter_spread import (
    PARAMETERS,
    UNCALIBRATED,
    CrownState,
    Parameter,
    ParameterPrior,
    VertexSpread,
    area_sd,
    lab_jacobian,
    lab_sd,
    with_parameters,
)
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import OpticalScene
from stainmap.predict.uncertainty import UNCALIBRATED_SD, shown_sd
from tests.predict.scenes import DENTINE, scene_of

STEPS = ("barley", "tan", "umber", "slate", "heather")


def random_plates(count: int, seed: int = 5) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return coats outside and inside (S, V), and walls (V,): what zones of plans look like."""
    rng = np.random.default_rng(seed)
    coats = rng.integers(0, 4, (len(STEPS), count)) * (rng.random((len(STEPS), count)) < 0.4)
    partner = rng.integers(0, 3, (len(STEPS), count)) * (rng.random((len(STEPS), count)) < 0.2)
    return coats.astype(float), partner.astype(float), rng.uniform(0.5, 2.0, count)


# ---- derivatives


def test_a_wall_too_thick_to_see_through_has_a_closed_form() -> None:
    """Nothing but K/S counts then: a factor on K does what its inverse does on S.

    And by how much follows from K/S = (1 - R)^2 / 2R: with R = 1 + q - sqrt(q^2 + 2q),
    dR/dlnq = q (1 - (q + 1) / sqrt(q^2 + 2q)) [KubelkaMunk1931].
    """
    scene = scene_of(["barley"])
    J = lab_jacobian(scene, np.zeros((1, 1)), [60.0])[0]
    index = {parameter: place for place, parameter in enumerate(PARAMETERS)}
    absorption, scattering = (
        J[:, index[Parameter.BLOCK_ABSORPTION]],
        J[:, index[Parameter.SCATTERING]],
    )
    np.testing.assert_allclose(absorption, -scattering, atol=1e-6)
    np.testing.assert_allclose(J[:, index[Parameter.WALL]], 0.0, atol=1e-6)
    q = scene.block_absorption_per_mm[0] / scene.block_scattering_per_mm[0]
    root = np.sqrt(q**2 + 2.0 * q)
    R = 1.0 + q - root
    dR = q * (1.0 - (q + 1.0) / root)
    k, g = scene.front_internal, scene.radiance_factor
    outside, slope = g * R / (1.0 - k * R), g * dR / (1.0 - k * R) ** 2
    step = 1e-5
    ends = [
        xyz_to_lab((outside + sign * step * slope) @ scene.xyz_weights, scene.white_xyz)
        for sign in (1, -1)
    ]
    np.testing.assert_allclose(absorption, (ends[0] - ends[1]) / (2 * step), atol=2e-3)


def test_what_is_not_there_does_not_count() -> None:
    J = lab_jacobian(scene_of(["barley"]), np.zeros((1, 3)), [0.6, 1.2, 2.0])
    unstained = [
        place
        for place, parameter in enumerate(PARAMETERS)
        if parameter in (Parameter.LIQUID_ABSORPTION, Parameter.STAIN_DEPTH, Parameter.COATS)
    ]
    np.testing.assert_allclose(J[:, :, unstained], 0.0, atol=1e-9)


def test_more_coats_to_saturation_are_the_rule_s_own() -> None:
    """A step of the derivative by dilution is n0 itself, without its limits getting in the way."""
    coats, partner, wall = random_plates(20)
    scene = scene_of(STEPS)
    change = np.zeros(6)
    change[4] = np.log(1.5)
    changed, walls = with_parameters(scene, wall, change)
    rule = replace(scene.process.uptake, coats_to_saturation=6.0)
    other = replace(scene, process=replace(scene.process, uptake=rule))
    np.testing.assert_allclose(
        reference_lab(changed, coats, walls, partner),
        reference_lab(other, coats, wall, partner),
        atol=1e-9,
    )


# ---- covariance


def test_linearisation_against_drawing_the_parameters() -> None:
    """Small deviations, where a linear model must hold: 4 % of a standard deviation itself."""
    small = np.diag((UNCALIBRATED.sd / 10.0) ** 2)
    coats, partner, wall = random_plates(40)
    scene = scene_of(STEPS)
    found = lab_sd(lab_jacobian(scene, coats, wall, partner), small)
    rng = np.random.default_rng(1)
    drawn = []
    for _ in range(400):
        changed, walls = with_parameters(
            scene, wall, rng.standard_normal(6) * UNCALIBRATED.sd / 10.0
        )
        drawn.append(reference_lab(changed, coats, walls, partner))
    np.testing.assert_allclose(np.std(drawn, axis=0), found, rtol=0.16, atol=0.003)
    assert np.std(drawn, axis=0).mean() == pytest.approx(found.mean(), rel=0.04)


def test_the_prior_amounts_to_the_prior_in_lab() -> None:
    """20 to 35 % in the parameters is the 2.5 L* that is shown; a* and b* are left wider.

    Six factors common to all bands cannot express a wrong shape of a spectrum, which moves hue.
    """
    medians = []
    for block in ("white 3Y", "medium 3Y", "deep 5Y"):
        coats, partner, wall = random_plates(100)
        J = lab_jacobian(scene_of(STEPS, block), coats, wall, partner)
        medians.append(np.median(lab_sd(J, UNCALIBRATED.covariance), axis=0))
    lightness, a, b = np.mean(medians, axis=0)
    assert lightness == pytest.approx(UNCALIBRATED_SD[0], rel=0.15)
    assert 0.4 * UNCALIBRATED_SD[1] < a < UNCALIBRATED_SD[1]
    assert 0.6 * UNCALIBRATED_SD[2] < b < UNCALIBRATED_SD[2]
    assert (UNCALIBRATED.sd[:5] >= 0.2).all()
    assert (UNCALIBRATED.sd[:5] <= 0.35).all()


def coverage(block: str, draws: int = 160) -> tuple[np.ndarray, np.ndarray]:
    """Return how often a truth drawn from the prior lies within 2 sd, per axis of L*a*b*.

    First with the linearised deviation alone, then with the one that is shown. Truth is the full
    calculation, not its linearisation. Draws come in opposite pairs.
    """
    coats, partner, wall = random_plates(100, seed=9)
    scene = scene_of(STEPS, block)
    nominal = reference_lab(scene, coats, wall, partner)
    linear = lab_sd(lab_jacobian(scene, coats, wall, partner), UNCALIBRATED.covariance)
    half = np.random.default_rng(17).standard_normal((draws // 2, 6))
    inside: list[list[np.ndarray]] = [[], []]
    for draw in np.concatenate([half, -half]):
        changed, walls = with_parameters(scene, wall, draw * UNCALIBRATED.sd)
        off = np.abs(reference_lab(changed, coats, walls, partner) - nominal)
        for kind, sd in zip(inside, (linear, shown_sd(linear)), strict=True):
            kind.append(off <= 2.0 * sd)
    alone, shown = (np.mean(kind, axis=(0, 1)) for kind in inside)
    return alone, shown


@pytest.mark.parametrize("block", ["white 3Y", "medium 3Y", "deep 5Y", "greyish 4Y"])
def test_truth_lies_within_two_deviations_as_often_as_it_should(block: str) -> None:
    """95.4 % of a normal spread; 160 draws leave 1.7 %, bends of the model some more.

    What is shown before calibration must reach that in every axis, on synthetic truth whose
    parameters are drawn from the prior. The linearised deviation alone does not in a* and b* of
    the translucent blocks, which is one more reason to show the greater of the two.
    """
    alone, shown = coverage(block)
    assert (shown >= alone).all()
    assert (shown >= 0.92).all(), shown
    assert shown.mean() >= 0.95, shown
    assert (alone >= 0.87).all(), alone


# ---- what is shown


def test_the_greater_of_both_before_calibration() -> None:
    sd = shown_sd([[3.0, 0.2, 2.6], [1.0, 1.0, 1.0]])
    np.testing.assert_allclose(sd, [[3.0, 1.3, 2.6], [2.5, 1.3, 2.5]])


def test_after_calibration_both_add_up_and_never_vanish() -> None:
    np.testing.assert_allclose(shown_sd([0.4, 0.0, 0.0], (0.3, 0.1, 0.5)), [0.5, 0.3, 0.5])
    assert (shown_sd(np.zeros((5, 3)), (0.0, 0.0, 0.0)) >= 0.3).all()


def test_what_the_calculation_leaves_out_adds_to_lightness() -> None:
    sd = shown_sd(np.zeros((2, 3)), (0.3, 0.3, 0.3), np.array([0.4, 0.0]))
    np.testing.assert_allclose(sd, [[0.5, 0.3, 0.3], [0.3, 0.3, 0.3]])
    np.testing.assert_allclose(shown_sd([0.0, 0.0, 0.0], None, 6.0), [6.5, 1.3, 2.5])


# ---- areas and vertices


def crown_state(count: int = 3000) -> CrownState:
    """Return vertices as a crown has them: feathered coats, walls, two regions, an inside."""
    rng = np.random.default_rng(3)
    dark = replace(DENTINE, region=DENTINE.region.INCISAL_EDGE, stump=_another_stump())
    scene: OpticalScene = scene_of(STEPS, backings=[DENTINE, dark])
    inside = np.arange(count) % 3 == 0
    scene = replace(scene, region_index=(rng.random(count) < 0.2).astype(np.uint8))
    zone = rng.integers(0, 4, count)
    plan = np.array([[3, 1, 0, 0], [0, 0, 2, 0], [0, 0, 1, 0], [0, 0, 0, 2], [0, 0, 0, 1]])
    feather = rng.random(count)
    coats = plan[:, zone] * np.where(feather < 0.3, feather / 0.3, 1.0)
    return CrownState(
        scene=scene,
        coats=coats.astype(np.float32),
        wall_mm=rng.uniform(0.5, 2.2, count).astype(np.float32),
        partner=np.where(rng.random(count) < 0.9, rng.integers(0, count, count), -1).astype(
            np.int32
        ),
        inside=inside,
    )


def _another_stump() -> str:
    from tests.predict.scenes import materials

    return next(one.name for one in materials().stumps if one.name != DENTINE.stump)


def plain_lab(state: CrownState) -> np.ndarray:
    opposite = np.where(state.partner >= 0, state.coats[:, state.partner], 0.0)
    return reference_lab(
        state.scene, state.coats, state.wall_mm, opposite, inside=state.inside
    ).astype(np.float32)


def test_every_vertex_by_the_linear_model() -> None:
    state = crown_state()
    vertices = np.arange(len(state.wall_mm))
    exact = lab_sd(state.jacobian(vertices), UNCALIBRATED.covariance)
    found = VertexSpread(state, plain_lab(state)).at(vertices, UNCALIBRATED.covariance)
    off = np.abs(found - exact)
    assert np.percentile(off, 95, axis=0).max() < 0.1
    assert off.max() < 0.35
    assert exact.std(0).min() > 0.1  # There is something to explain.


def test_an_area_is_spoken_for_by_a_few_of_its_vertices() -> None:
    """Against the mean derivative of all its vertices."""
    state = crown_state()
    rng = np.random.default_rng(4)
    weights = [
        rng.random(len(state.wall_mm)) * (~state.inside & (state.scene.region_index == region))
        for region in (0, 1)
    ]
    found = area_sd(state, weights, UNCALIBRATED.covariance)
    J = state.jacobian(np.arange(len(state.wall_mm)))
    exact = [
        lab_sd(np.average(J, axis=0, weights=weight), UNCALIBRATED.covariance) for weight in weights
    ]
    np.testing.assert_allclose(found, exact, atol=0.15)
    assert area_sd(state, [], UNCALIBRATED.covariance).shape == (0, 3)


def test_a_surer_parameter_makes_a_surer_colour() -> None:
    state = crown_state(300)
    weights = [(~state.inside).astype(float)]
    before = area_sd(state, weights, UNCALIBRATED.covariance)
    after = area_sd(state, weights, ParameterPrior(scattering=0.05).covariance)
    assert (after < before).all()
    assert after[0, 0] < 0.75 * before[0, 0]
