"""What a material looks like as curves: spectra, a furnace curve, a dye on chalk."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.app.materials import Material
from stainmap.model.material import (
    Block,
    BlockLayer,
    Catalogue,
    Cement,
    Dye,
    Ion,
    Liquid,
    SinteringProgramme,
    Stump,
)
from stainmap.optics.interface import fitted_interface
from stainmap.optics.spectrum import BANDS_NM, gaussian_band
from stainmap.predict.bench_look import chalk_linear_srgb
from stainmap.predict.blocks import (
    absorption_per_mm,
    bare_reflectance,
    nearest_to_nominal,
    scattering_per_mm,
    stump_reflectance,
)
from stainmap.predict.sintering import programme_corners
from stainmap.words import marked, translate

FloatArray = NDArray[np.float64]

_NM = marked("materials curves", "wavelength, nm")
_MOST_DROPS: Final = 6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Curve:
    """One line of a plot: name, and (N,) places across and up."""

    name: str
    across: FloatArray
    up: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Plot:
    """One plot of a material.

    Parameters
    ----------
    title
        What it shows, in a word or two.
    across, up
        Names of the axes, with their units.
    curves
        Lines; none where it is a row of colours.
    swatches
        Words and linear sRGB (3,) of a row of colours.
    """

    title: str
    across: str = ""
    up: str = ""
    curves: tuple[Curve, ...] = ()
    swatches: tuple[tuple[str, FloatArray], ...] = ()


def plots_of(material: Material, catalogue: Catalogue) -> tuple[Plot, ...]:
    """Return the plots of a material, the most telling first.

    Raises
    ------
    CatalogueError
        If it refers to an ion or stump that the catalogue does not have.
    """
    if isinstance(material, Block):
        return _of_block(material, catalogue)
    if isinstance(material, Liquid):
        return (_of_liquid(material, catalogue),)
    if isinstance(material, Ion):
        curve = Curve(name=material.name, across=BANDS_NM, up=ion_absorption(material))
        return (
            Plot(
                title=translate("materials curves", "Absorption"),
                across=translate("materials curves", _NM),
                up=translate("materials curves", "relative to its amount"),
                curves=(curve,),
            ),
        )
    if isinstance(material, Dye):
        return (_of_dye(material),)
    if isinstance(material, SinteringProgramme):
        minutes, celsius = programme_corners(material)
        curve = Curve(name=material.name, across=minutes / 60.0, up=celsius)
        return (
            Plot(
                title=translate("materials curves", "Furnace"),
                across="hours",
                up="\N{DEGREE SIGN}C",
                curves=(curve,),
            ),
        )
    if isinstance(material, Stump):
        curve = Curve(name="reflectance", across=BANDS_NM, up=stump_reflectance(material, BANDS_NM))
        return (
            Plot(
                title=translate("materials curves", "Reflectance"),
                across=translate("materials curves", _NM),
                up=translate("materials curves", "share of light"),
                curves=(curve,),
            ),
        )
    return (_of_cement(material),)


def ion_absorption(ion: Ion) -> FloatArray:
    """Return what an amount of 1/mm of an ion absorbs, (31,) 1/mm."""
    total = np.zeros(len(BANDS_NM))
    for band in ion.bands:
        total += band.strength * gaussian_band(BANDS_NM, band.centre_nm, band.width_nm)
    return total


def liquid_absorption(liquid: Liquid, catalogue: Catalogue) -> FloatArray:
    """Return what a liquid absorbs at full load, (31,) 1/mm."""
    total = np.zeros(len(BANDS_NM))
    for name, amount in liquid.amplitudes_per_mm:
        total += amount * ion_absorption(catalogue.ion(name))
    return total


def block_spectra(
    layer: BlockLayer, catalogue: Catalogue
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return absorption, reduced scattering (1/mm) and 45/0 reflectance of a layer, (31,) each.

    The reflectance is that of the plate its nominal colour was read on, over the same backing.
    """
    stump = catalogue.stump(layer.nominal.measurement.backing)
    own = layer.absorption
    absorption = nearest_to_nominal(layer, stump).absorption if own is None else own
    absorbs = absorption_per_mm(absorption, BANDS_NM)
    scatters = scattering_per_mm(layer.scattering, BANDS_NM)
    interface = fitted_interface(len(BANDS_NM))
    behind = interface.backing(stump_reflectance(stump, BANDS_NM), coupled=True)
    reflects = bare_reflectance(absorbs, scatters, layer.nominal_thickness_mm, behind, interface)
    return absorbs, scatters, reflects


def _of_block(block: Block, catalogue: Catalogue) -> tuple[Plot, ...]:
    spectra = [block_spectra(layer, catalogue) for layer in block.layers]
    names = [
        translate("materials curves", "layer {at}").format(at=at)
        for at in range(1, len(spectra) + 1)
    ]
    wanted = (
        (
            translate("materials curves", "Reflectance"),
            translate("materials curves", "share of light, 45/0"),
            2,
        ),
        (translate("materials curves", "Absorption"), "1/mm", 0),
        (
            translate("materials curves", "Scattering"),
            translate("materials curves", "1/mm, reduced, slow programme"),
            1,
        ),
    )
    return tuple(
        Plot(
            title=title,
            across=translate("materials curves", _NM),
            up=up,
            curves=tuple(
                Curve(name=name, across=BANDS_NM, up=own[at])
                for name, own in zip(names, spectra, strict=True)
            ),
        )
        for title, up, at in wanted
    )


def _of_liquid(liquid: Liquid, catalogue: Catalogue) -> Plot:
    curves = [Curve(name="liquid", across=BANDS_NM, up=liquid_absorption(liquid, catalogue))]
    curves += [
        Curve(name=name, across=BANDS_NM, up=amount * ion_absorption(catalogue.ion(name)))
        for name, amount in liquid.amplitudes_per_mm
        if amount > 0.0
    ]
    return Plot(
        title=translate("materials curves", "Absorption"),
        across=translate("materials curves", _NM),
        up=translate("materials curves", "1/mm, at full load"),
        curves=tuple(curves),
    )


def _of_dye(dye: Dye) -> Plot:
    # Lambert and Beer, as on the bench: a drop on 25, fully loaded.
    swatches = [
        (
            translate("materials curves", "chalk")
            if drops == 0
            else translate("materials curves", "1 drop")
            if drops == 1
            else translate("materials curves", "{drops} drops").format(drops=drops),
            chalk_linear_srgb() * np.exp(-drops * np.array(dye.absorption_rgb)),
        )
        for drops in range(_MOST_DROPS + 1)
    ]
    return Plot(
        title=translate("materials curves", "On chalk"),
        across=translate("materials curves", "drops on 25 of liquid, fully loaded"),
        swatches=tuple(swatches),
    )


def _of_cement(cement: Cement) -> Plot:
    flat = np.ones(len(BANDS_NM))
    return Plot(
        title=translate("materials curves", "Absorption and scattering"),
        across=translate("materials curves", _NM),
        up="1/mm",
        curves=(
            Curve(name="absorption", across=BANDS_NM, up=cement.absorption_per_mm * flat),
            Curve(name="scattering", across=BANDS_NM, up=cement.scattering_per_mm * flat),
        ),
    )
