"""Curves of materials, and spectra as CSV: written, read again, refused with value and place."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from stainmap.app.materials import MaterialKind, entries
from stainmap.app.materials_curves import plots_of
from stainmap.app.materials_spectra import (
    HEAD,
    SpectrumOf,
    read_into,
    readable,
    spectrum,
    write_spectrum,
    written,
)
from stainmap.errors import CatalogueError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.material import Absorption, Block, Liquid, Stump
from stainmap.optics.measured_spectrum import SpectrumError
from stainmap.predict.blocks import nearest_to_nominal

STARTER = starter_catalogue()


@pytest.mark.parametrize("kind", list(MaterialKind))
def test_every_starter_entry_can_be_plotted(kind: MaterialKind) -> None:
    for one in entries(STARTER, kind):
        for plot in plots_of(one, STARTER):
            assert plot.curves or plot.swatches
            for curve in plot.curves:
                assert curve.across.shape == curve.up.shape
                assert np.isfinite(curve.up).all()
                assert (curve.up >= 0.0).all()


def test_a_stump_written_and_read_is_the_same(tmp_path: Path) -> None:
    for stump in STARTER.stumps[:6]:
        path = tmp_path / "stump.csv"
        write_spectrum(path, stump, SpectrumOf.REFLECTANCE, STARTER)
        assert path.read_text(encoding="utf-8").splitlines()[0] == HEAD
        start = replace(stump, floor=0.5, rise=0.0, centre_nm=600.0, width_nm=10.0)
        found = read_into(path, start, SpectrumOf.REFLECTANCE, STARTER)
        assert isinstance(found.material, Stump)
        away = spectrum(found.material, SpectrumOf.REFLECTANCE, STARTER) - spectrum(
            stump, SpectrumOf.REFLECTANCE, STARTER
        )
        assert np.abs(away).max() < 1e-3
        assert "described to within" in found.said


def test_a_falling_stump_is_fitted_as_well(tmp_path: Path) -> None:
    blue = replace(STARTER.stumps[0], floor=0.6, rise=-0.4, centre_nm=560.0, width_nm=30.0)
    path = tmp_path / "blue.csv"
    write_spectrum(path, blue, SpectrumOf.REFLECTANCE, STARTER)
    found = read_into(path, STARTER.stumps[0], SpectrumOf.REFLECTANCE, STARTER).material
    assert isinstance(found, Stump)
    assert (found.floor, found.rise) == (
        pytest.approx(0.6, abs=0.01),
        pytest.approx(-0.4, abs=0.02),
    )


def test_absorption_of_a_block_and_its_colour_come_back(tmp_path: Path) -> None:
    block, path = STARTER.block("medium 3Y"), tmp_path / "block.csv"
    write_spectrum(path, block, SpectrumOf.ABSORPTION, STARTER)
    found = read_into(path, block, SpectrumOf.ABSORPTION, STARTER).material
    assert isinstance(found, Block)
    own = found.layers[0].absorption
    layer = block.layers[0]
    stump = STARTER.stump(layer.nominal.measurement.backing)
    truth = nearest_to_nominal(layer, stump).absorption
    assert own is not None
    assert own.decay_nm == pytest.approx(truth.decay_nm, rel=1e-2)
    assert own.c0_per_mm == pytest.approx(truth.c0_per_mm, rel=1e-2)
    write_spectrum(path, block, SpectrumOf.REFLECTANCE, STARTER)
    found = read_into(path, block, SpectrumOf.REFLECTANCE, STARTER).material
    assert isinstance(found, Block)
    # What was solved from a colour has that colour again.
    assert np.allclose(found.layers[0].nominal.lab, layer.nominal.lab, atol=0.3)
    assert found.layers[0].absorption is None


def test_ions_of_a_liquid_are_found_again(tmp_path: Path) -> None:
    liquid, path = STARTER.liquid("umber"), tmp_path / "umber.csv"
    write_spectrum(path, liquid, SpectrumOf.ABSORPTION, STARTER)
    bare = replace(STARTER.liquid("ash"), amplitudes_per_mm=())
    found = read_into(path, bare, SpectrumOf.ABSORPTION, STARTER).material
    assert isinstance(found, Liquid)
    truth = dict(liquid.amplitudes_per_mm)
    amounts = dict(found.amplitudes_per_mm)
    for ion, amount in truth.items():
        assert amounts[ion] == pytest.approx(amount, abs=2e-3)


def test_what_no_ions_describe_is_said(tmp_path: Path) -> None:
    path = tmp_path / "odd.csv"
    spike = [f"{nm},{1.0 if nm == 600 else 0.0}" for nm in range(400, 701, 10)]
    path.write_text("\n".join([HEAD, *spike]), encoding="utf-8")
    said = read_into(path, STARTER.liquid("ash"), SpectrumOf.ABSORPTION, STARTER).said
    assert "furthest at 600 nm" in said


def test_values_out_of_range_are_refused_with_their_place(tmp_path: Path) -> None:
    path, stump = tmp_path / "bad.csv", STARTER.stumps[0]
    percent = [f"{nm},{55.0}" for nm in range(400, 701, 10)]
    path.write_text("\n".join([HEAD, *percent]), encoding="utf-8")
    with pytest.raises(SpectrumError, match="at 400 nm is 55, which looks like percent"):
        read_into(path, stump, SpectrumOf.REFLECTANCE, STARTER)
    one = [f"{nm},{1.2 if nm == 530 else 0.4}" for nm in range(400, 701, 10)]
    path.write_text("\n".join([HEAD, *one]), encoding="utf-8")
    with pytest.raises(SpectrumError, match=r"at 530 nm is 1\.2\. Expected are 0 to 1"):
        read_into(path, stump, SpectrumOf.REFLECTANCE, STARTER)


def test_kinds_without_spectra_say_so(tmp_path: Path) -> None:
    path = tmp_path / "stump.csv"
    write_spectrum(path, STARTER.stumps[0], SpectrumOf.REFLECTANCE, STARTER)
    programme = STARTER.programmes[0]
    assert written(programme) == readable(programme) == ()
    assert readable(STARTER.blocks[0]) == (SpectrumOf.REFLECTANCE, SpectrumOf.ABSORPTION)
    with pytest.raises(CatalogueError, match="No such spectrum"):
        read_into(path, programme, SpectrumOf.REFLECTANCE, STARTER)


def test_a_given_absorption_is_plotted_as_given() -> None:
    block = STARTER.block("medium 3Y")
    flat = Absorption(c0_per_mm=0.0, decay_nm=60.0, c1_per_mm=0.2)
    block = replace(block, layers=(replace(block.layers[0], absorption=flat),))
    assert np.allclose(spectrum(block, SpectrumOf.ABSORPTION, STARTER), 0.2)
