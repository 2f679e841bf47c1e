"""Finish of the outer surface: polished, as sintered, glazed."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import quad

from stainmap.model.finishing import AfterSintering, Finish
from stainmap.optics.colorimetry import lab_to_xyz
from stainmap.predict.finish import film_transmittance, rough_radiance_factor, surface_radiance
from stainmap.predict.kernel import LayerKernel
from stainmap.predict.reference import lab_of_reflectance, reference_lab
from stainmap.predict.scene import scene_from_case, with_finish
from tests.predict.crowns import painted_dome
from tests.predict.scenes import scene_of

COATS = [0.0, 1.0, 3.0, 5.0]


def labs(finish: Finish, block: str = "white 3Y") -> np.ndarray:
    """Return plates of 2 mm with some coats of barley, as [Kim2013] had coats of an A2 liquid."""
    scene = with_finish(scene_of(["barley"], block), finish)
    return reference_lab(scene, [COATS], [2.0] * len(COATS))


def test_directions_of_finish_are_the_published_ones() -> None:
    """[Kim2013], abstract: both finishes lower L*; glaze is yellower than polish, and near it.

    Five groups by number of coats; the abstract's limit between the finishes is dEab 3.7.
    """
    rough, polished, glazed = (labs(finish) for finish in Finish)
    assert (polished[:, 0] < rough[:, 0] - 0.3).all()
    assert (glazed[:, 0] < rough[:, 0] - 0.3).all()
    assert (glazed[:, 2] > polished[:, 2] + 0.3).all()
    assert (np.linalg.norm(glazed - polished, axis=1) < 3.7).all()


def test_a_rough_surface_adds_the_same_white_everywhere() -> None:
    scene = scene_of(["barley"])
    rough = with_finish(scene, Finish.AS_SINTERED)
    both = [
        lab_to_xyz(reference_lab(one, [[0.0, 4.0]], [0.8, 2.0]), scene.white_xyz)
        for one in (scene, rough)
    ]
    added = (both[1] - both[0]) / scene.white_xyz
    np.testing.assert_allclose(added, surface_radiance(Finish.AS_SINTERED), atol=1e-9)


def test_facets_cover_the_surface() -> None:
    """Beckmann's distribution, put back out of the radiance at every tilt, projects to one.

    ``int D cos dw = 1`` is what makes it a distribution of facets of a plane.
    """

    def projected(tilt: float, slope: float) -> float:
        spread = np.exp(-((np.tan(tilt) / slope) ** 2)) / (np.pi * slope**2 * np.cos(tilt) ** 4)
        return 2.0 * np.pi * spread * np.cos(tilt) * np.sin(tilt)

    assert quad(projected, 0.0, np.pi / 2 - 1e-9, args=(0.2,))[0] == pytest.approx(1.0, abs=1e-8)


def test_smooth_surfaces_send_nothing_to_the_side() -> None:
    values = [rough_radiance_factor(slope) for slope in (0.02, 0.1, 0.15, 0.2, 0.25)]
    assert values[0] < 1e-30
    assert (np.diff(values) > 0.0).all()
    # By hand for m 0.2: F 0.1336, D 0.1497 at 22.5 degrees, pi F D / 4 cos 45.
    assert rough_radiance_factor(0.2) == pytest.approx(0.0222, abs=2e-4)
    assert surface_radiance(Finish.POLISHED) == surface_radiance(Finish.GLAZED) == 0.0


def test_glaze_takes_away_violet_most_and_adds_nothing() -> None:
    wavelengths = np.arange(400.0, 701.0, 10.0)
    left = film_transmittance(Finish.GLAZED, wavelengths)
    assert (np.diff(left) > 0.0).all()
    assert 0.9 < left[0] < left[-1] < 1.0
    assert (film_transmittance(Finish.POLISHED, wavelengths) == 1.0).all()


@pytest.mark.parametrize("finish", list(Finish))
def test_the_fast_engine_and_the_plain_one_agree_on_every_finish(finish: Finish) -> None:
    scene = with_finish(scene_of(["barley"]), finish)
    reflectance = np.linspace(0.2, 0.9, 40)[:, None] * np.linspace(0.8, 1.0, 31)
    lab, _ = LayerKernel(scene, threads=1).colour(reflectance.astype(np.float32))
    np.testing.assert_allclose(lab, lab_of_reflectance(scene, reflectance), atol=2e-3)


@pytest.mark.parametrize("finish", list(Finish))
def test_the_finish_of_a_case_reaches_screen_and_export(finish: Finish) -> None:
    case = replace(painted_dome(["barley"], rings=8), after_sintering=AfterSintering(finish=finish))
    full, screen = scene_from_case(case), scene_from_case(case, bands="screen")
    coats, wall = np.full((1, len(case.zones)), 2.0), np.full(len(case.zones), 1.2)
    one, other = reference_lab(full, coats, wall)[0], reference_lab(screen, coats, wall)[0]
    np.testing.assert_allclose(one, other, atol=0.1)
    polished = scene_from_case(replace(case, after_sintering=AfterSintering()))
    same = np.allclose(one, reference_lab(polished, coats, wall)[0], atol=0.05)
    assert same is (finish is Finish.POLISHED)
