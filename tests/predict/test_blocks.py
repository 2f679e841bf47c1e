"""Blocks solved from their sintered colour."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stainmap.errors import CatalogueError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.colour import Colour, Measurement
from stainmap.model.material import Absorption, BlockLayer, Catalogue, ScatteringClass
from stainmap.optics.colorimetry import reflectance_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.optics.spectrum import BANDS_NM
from stainmap.predict.blocks import (
    absorption_per_mm,
    check_block,
    layer_absorption,
    scattering_per_mm,
    solve_layer,
    stump_reflectance,
)
from tests.predict.scenes import plate_lab

# Nominal colours of 3Y, 1.2 mm, and the c0 and c1 in 1/mm and decay in nm that another program
# found for them. Some of the starter blocks have other colours by now.
DESIGNED = {
    (80.5, -1.2, 5.0): (0.073, 64, 0.0028),
    (78.0, -0.9, 12.0): (0.208, 62, 0.0031),
    (75.5, 0.4, 16.0): (0.359, 63, 0.0029),
    (73.0, 1.6, 19.0): (0.561, 62, 0.0041),
    (71.5, 0.3, 15.5): (0.484, 63, 0.0193),
}


def layer(
    lab: tuple[float, float, float],
    *,
    kind: ScatteringClass = ScatteringClass.Y3,
    thickness_mm: float = 1.2,
    **measured: object,
) -> BlockLayer:
    lightness, a, b = lab
    measurement = Measurement(**measured)
    return BlockLayer(
        bottom_mm=0.0,
        scattering=kind,
        nominal=Colour(lightness=lightness, a=a, b=b, measurement=measurement),
        nominal_thickness_mm=thickness_mm,
    )


def dentine():
    return starter_catalogue().stump("natural dentine, medium")


@pytest.mark.parametrize("nominal", DESIGNED)
def test_solutions_are_those_of_another_program(nominal: tuple[float, float, float]) -> None:
    c0, decay, c1 = DESIGNED[nominal]
    solved = solve_layer(layer(nominal), dentine())
    assert solved.absorption.c0_per_mm == pytest.approx(c0, abs=0.001)
    assert solved.absorption.decay_nm == pytest.approx(decay, abs=0.6)
    assert solved.absorption.c1_per_mm == pytest.approx(c1, abs=0.0001)
    assert solved.remaining_de00 < 0.01


def test_every_starter_block_can_be_reached() -> None:
    catalogue = starter_catalogue()
    remaining = {
        block.name: max(one.remaining_de00 for one in check_block(block, catalogue))
        for block in catalogue.blocks
    }
    assert max(remaining.values()) < 0.1
    assert all(value < 0.01 for name, value in remaining.items() if name.endswith("3Y"))


@settings(max_examples=15, deadline=None)
@given(
    c0=st.floats(0.05, 0.6),
    decay=st.floats(50.0, 75.0),
    c1=st.floats(0.001, 0.02),
    kind=st.sampled_from(ScatteringClass),
)
def test_colours_of_known_blocks_come_back(
    c0: float, decay: float, c1: float, kind: ScatteringClass
) -> None:
    """Predict a plate of known absorption, take its colour as nominal, solve, predict again.

    Three numbers for three unknowns; what comes back is the colour at other walls too.
    """
    truth = Absorption(c0_per_mm=c0, decay_nm=decay, c1_per_mm=c1)
    nominal = _lab_of(truth, kind, 1.2)
    solved = solve_layer(layer(tuple(nominal), kind=kind), dentine())
    assert solved.remaining_de00 < 0.02
    for wall_mm in (0.7, 2.0):
        np.testing.assert_allclose(
            _lab_of(solved.absorption, kind, wall_mm), _lab_of(truth, kind, wall_mm), atol=0.15
        )


def _lab_of(absorption: Absorption, kind: ScatteringClass, wall_mm: float) -> np.ndarray:
    from stainmap.optics.interface import fitted_interface, reflectance_outside
    from stainmap.optics.slab import km_layer_over

    interface = fitted_interface(31)
    internal = km_layer_over(
        interface.absorption_factor * absorption_per_mm(absorption, BANDS_NM),
        interface.scattering_factor * scattering_per_mm(kind, BANDS_NM),
        wall_mm,
        interface.backing(stump_reflectance(dentine(), BANDS_NM), coupled=True),
    )
    outside = reflectance_outside(
        internal, factor=interface.radiance_factor, front_internal=interface.front_internal
    )
    return reflectance_to_lab(outside)


def test_other_light_and_observer_are_solved_as_measured() -> None:
    """The same plate read under A and by 10 degrees gives the same absorption."""
    truth = solve_layer(layer((75.5, 0.4, 16.0)), dentine())
    for measured in ({"illuminant": "A"}, {"observer_degrees": 10}):
        lab = plate_lab(
            light=measured.get("illuminant", "D65"), observer=measured.get("observer_degrees", 2)
        )
        solved = solve_layer(layer(tuple(lab), **measured), dentine())
        assert solved.remaining_de00 < 0.02
        assert solved.absorption.c0_per_mm == pytest.approx(truth.absorption.c0_per_mm, rel=0.03)
        assert solved.reached.measurement.illuminant == measured.get("illuminant", "D65")


def test_impossible_colours_are_refused_with_the_nearest_that_can_be_had() -> None:
    with pytest.raises(CatalogueError, match=r"No 5Y zirconia of 1\.2 mm.*dE00 \d+\.\d away"):
        solve_layer(layer((88.0, -1.0, 4.0), kind=ScatteringClass.Y5), dentine())
    with pytest.raises(CatalogueError) as caught:
        solve_layer(layer((60.0, 25.0, -20.0)), dentine())
    assert "thickness and backing" in (caught.value.advice or "")


@pytest.mark.parametrize("wanted", [(88.0, -1.0, 4.0), (62.0, -6.0, 30.0), (70.0, 9.0, 8.0)])
def test_no_other_block_comes_nearer_than_the_one_that_is_said(
    wanted: tuple[float, float, float],
) -> None:
    """Against every block on a grid of the three unknowns, by brute force."""
    with pytest.raises(CatalogueError) as caught:
        solve_layer(layer(wanted), dentine())
    said = re.search(r"it can have is (\S+) / (\S+) / (\S+), dE00 (\S+) away", str(caught.value))
    assert said is not None
    *nearest, away = (float(text) for text in said.groups())
    assert delta_e_00(np.array(nearest), np.array(wanted)) == pytest.approx(away, abs=0.1)
    grid = [
        _lab_of(Absorption(c0_per_mm=c0, decay_nm=decay, c1_per_mm=c1), ScatteringClass.Y3, 1.2)
        for c0 in np.geomspace(1e-3, 2.7, 15)
        for decay in np.geomspace(25.0, 160.0, 9)
        for c1 in np.geomspace(7.5e-5, 0.14, 15)
    ]
    by_force = float(delta_e_00(np.array(grid), np.array(wanted)).min())
    assert away <= by_force + 0.05
    # The colour that is said can be had: as a nominal colour it is taken.
    assert solve_layer(layer(tuple(nearest)), dentine()).remaining_de00 < 0.2


def test_unlike_geometries_are_refused() -> None:
    with pytest.raises(CatalogueError, match="d/8 geometry"):
        solve_layer(layer((75.5, 0.4, 16.0), geometry="d/8"), dentine())
    with pytest.raises(CatalogueError, match="D93"):
        solve_layer(layer((75.5, 0.4, 16.0), illuminant="D93"), dentine())


def test_a_given_absorption_is_taken_as_it_is() -> None:
    own = Absorption(c0_per_mm=0.3, decay_nm=60.0, c1_per_mm=0.01)
    given_layer = replace(layer((75.5, 0.4, 16.0)), absorption=own)
    assert layer_absorption(given_layer, Catalogue()) is own


def test_refusals_name_the_block() -> None:
    catalogue = starter_catalogue()
    block = replace(catalogue.block("medium 3Y"), name="mine", layers=(layer((90.0, 0.0, 30.0)),))
    with pytest.raises(CatalogueError, match="block 'mine'"):
        check_block(block, catalogue)


def test_scattering_rises_to_the_violet_and_falls_with_yttria() -> None:
    by_class = [scattering_per_mm(kind, BANDS_NM) for kind in ScatteringClass]
    assert all((np.diff(values) < 0.0).all() for values in by_class)
    assert (by_class[0] > by_class[1]).all()
    assert (by_class[1] > by_class[2]).all()
    assert by_class[0][0] == pytest.approx(18.15, abs=0.01)


def test_the_starter_dentine_has_its_colour() -> None:
    lab = reflectance_to_lab(stump_reflectance(dentine(), BANDS_NM))
    np.testing.assert_allclose(lab, [72.5, 3.2, 20.5], atol=0.15)
