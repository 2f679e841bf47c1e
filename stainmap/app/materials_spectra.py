"""Spectra of materials as CSV: written from what is described, and read by fitting that to it.

A catalogue describes spectra by few numbers. What is read is fitted by least squares, never kept
point by point, and how far the fit stays away is always said.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from stainmap.app.materials import Material
from stainmap.app.materials_curves import block_spectra, ion_absorption, liquid_absorption
from stainmap.errors import CatalogueError
from stainmap.files.atomic import write_bytes
from stainmap.model.colour import WITHOUT_GLOSS, Colour
from stainmap.model.material import Absorption, Block, Catalogue, Liquid, Stump
from stainmap.optics.colorimetry import reflectance_to_lab
from stainmap.optics.measured_spectrum import SpectrumKind, read_spectrum
from stainmap.optics.spectrum import BANDS_NM, decaying_absorption, sigmoid_reflectance
from stainmap.predict.blocks import stump_reflectance
from stainmap.words import translate

FloatArray = NDArray[np.float64]

HEAD = "wavelength_nm,value"


class SpectrumOf(StrEnum):
    """What a file of a spectrum can hold for a material."""

    REFLECTANCE = "reflectance"
    ABSORPTION = "absorption"
    SCATTERING = "scattering"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """A material that describes a measured spectrum, and how well, in a sentence."""

    material: Material
    said: str


def written(material: Material) -> tuple[SpectrumOf, ...]:
    """Return what can be written of a material."""
    if isinstance(material, Block):
        return tuple(SpectrumOf)
    if isinstance(material, Liquid):
        return (SpectrumOf.ABSORPTION,)
    return (SpectrumOf.REFLECTANCE,) if isinstance(material, Stump) else ()


def readable(material: Material) -> tuple[SpectrumOf, ...]:
    """Return what can be read into a material; scattering goes by the class of zirconia."""
    return tuple(one for one in written(material) if one is not SpectrumOf.SCATTERING)


def spectrum(
    material: Material, of: SpectrumOf, catalogue: Catalogue, layer: int = 0
) -> FloatArray:
    """Return a spectrum of a material, (31,) at 400 to 700 nm: share of light, or 1/mm."""
    if isinstance(material, Block):
        absorbs, scatters, reflects = block_spectra(material.layers[layer], catalogue)
        return {
            SpectrumOf.ABSORPTION: absorbs,
            SpectrumOf.SCATTERING: scatters,
            SpectrumOf.REFLECTANCE: reflects,
        }[of]
    if isinstance(material, Liquid):
        return liquid_absorption(material, catalogue)
    if isinstance(material, Stump):
        return stump_reflectance(material, BANDS_NM)
    raise _no_spectrum(material)


def write_spectrum(
    path: Path, material: Material, of: SpectrumOf, catalogue: Catalogue, layer: int = 0
) -> None:
    """Write a spectrum as CSV with two columns, wavelength_nm and value.

    Raises
    ------
    StainmapError
        If it cannot be written.
    """
    values = spectrum(material, of, catalogue, layer)
    lines = [HEAD, *(f"{nm:g},{value:.7g}" for nm, value in zip(BANDS_NM, values, strict=True))]
    write_bytes(path, ("\n".join(lines) + "\n").encode("utf-8"))


def read_into(
    path: Path, material: Material, of: SpectrumOf, catalogue: Catalogue, layer: int = 0
) -> Fitted:
    """Return a material that describes the spectrum of a CSV file as nearly as it can.

    Reflectance of a block is that of a plate as its nominal colour is described, and becomes that
    colour; reflectance of a stump becomes its sigmoid. Absorption, in 1/mm, becomes that of a
    layer, or the ions of a fully loaded liquid.

    Raises
    ------
    SpectrumError
        If the file holds no spectrum, or values out of range; the value and its place are named.
    CatalogueError
        If a material of this kind has no such spectrum.
    """
    kind = (
        SpectrumKind.REFLECTANCE if of is SpectrumOf.REFLECTANCE else SpectrumKind.ABSORPTION_PER_MM
    )
    values = read_spectrum(path, kind=kind).on_bands()
    if of not in readable(material):
        raise _no_spectrum(material)
    if isinstance(material, Block):
        if of is SpectrumOf.REFLECTANCE:
            return _nominal(material, layer, values)
        return _block_absorption(material, layer, values)
    if isinstance(material, Liquid):
        return _ions(material, values, catalogue)
    if isinstance(material, Stump):
        return _sigmoid(material, values)
    raise _no_spectrum(material)


def _nominal(block: Block, layer: int, values: FloatArray) -> Fitted:
    old = block.layers[layer]
    way = old.nominal.measurement
    if way.geometry != WITHOUT_GLOSS:
        raise CatalogueError(
            translate("materials spectra", "Its colour is for {geometry}.").format(
                geometry=way.geometry
            ),
            where=f"block '{block.name}'",
        )
    lab = reflectance_to_lab(values, way.illuminant, way.observer_degrees)
    lightness, a, b = (round(float(value), 2) for value in lab)
    colour = Colour(lightness=lightness, a=a, b=b, measurement=way)
    layers = list(block.layers)
    layers[layer] = replace(old, nominal=colour, absorption=None)
    said = translate(
        "materials spectra",
        "Layer {layer} has the colour L* {lightness:.1f}, a* {a:.1f}, b* {b:.1f} of "
        "the spectrum ({way}), as of a plate of {nominal_thickness_mm:g} mm.",
    ).format(
        layer=layer + 1,
        lightness=lightness,
        a=a,
        b=b,
        way=way,
        nominal_thickness_mm=old.nominal_thickness_mm,
    )
    return Fitted(material=replace(block, layers=tuple(layers)), said=said)


def _block_absorption(block: Block, layer: int, values: FloatArray) -> Fitted:
    from scipy.optimize import nnls  # noqa: PLC0415 - takes a third of a second

    def best(decay_nm: float) -> tuple[float, float, float]:
        basis = np.stack([decaying_absorption(BANDS_NM, 1.0, decay_nm, 0.0), np.ones_like(values)])
        (c0, c1), away = nnls(basis.T, values)
        return float(away), float(c0), float(c1)

    decay = _lowest(lambda one: best(one)[0], 10.0, 400.0)
    _, c0, c1 = best(decay)
    found = Absorption(c0_per_mm=c0, decay_nm=decay, c1_per_mm=c1)
    layers = list(block.layers)
    layers[layer] = replace(layers[layer], absorption=found)
    fit = decaying_absorption(BANDS_NM, c0, decay, c1)
    return Fitted(
        material=replace(block, layers=tuple(layers)),
        said=_said(values, fit, translate("materials spectra", "1/mm of absorption")),
    )


def _ions(liquid: Liquid, values: FloatArray, catalogue: Catalogue) -> Fitted:
    from scipy.optimize import nnls  # noqa: PLC0415 - takes a third of a second

    ions = catalogue.ions
    if not ions:
        raise CatalogueError(
            translate("materials spectra", "There are no ions to describe it by."),
            advice=translate("materials spectra", "Import some."),
        )
    basis = np.stack([ion_absorption(ion) for ion in ions])
    amounts, _ = nnls(basis.T, values)
    pairs = tuple(
        (ion.name, float(f"{amount:.5g}"))
        for ion, amount in zip(ions, amounts, strict=True)
        if amount > 1e-4 * max(float(amounts.max()), 1e-12)
    )
    changed = replace(liquid, amplitudes_per_mm=pairs)
    return Fitted(
        material=changed,
        said=_said(
            values,
            liquid_absorption(changed, catalogue),
            translate("materials spectra", "1/mm of absorption"),
        ),
    )


def _sigmoid(stump: Stump, values: FloatArray) -> Fitted:
    from scipy.optimize import nnls  # noqa: PLC0415 - takes a third of a second

    def best(centre_nm: float, width_nm: float) -> tuple[float, float, float]:
        shape = sigmoid_reflectance(BANDS_NM, 0.0, 1.0, centre_nm, width_nm)
        # A falling spectrum is a rising one read backwards: both columns keep amounts positive.
        (floor, rise, fall), away = nnls(
            np.stack([np.ones_like(values), shape, 1.0 - shape]).T, values
        )
        return float(away), float(floor + fall), float(rise - fall)

    widths = np.geomspace(5.0, 200.0, 25)
    centres = np.linspace(350.0, 750.0, 81)
    _, centre, width = min((best(c, w)[0], c, w) for c in centres for w in widths)
    centre = _lowest(lambda one: best(one, width)[0], centre - 5.0, centre + 5.0)
    width = _lowest(lambda one: best(centre, one)[0], 0.85 * width, 1.17 * width)
    _, floor, rise = best(centre, width)
    fit = sigmoid_reflectance(BANDS_NM, floor, rise, centre, width)
    changed = replace(
        stump,
        floor=round(min(max(floor, 0.0), 1.0), 5),
        rise=round(min(max(rise, -floor), 1.0 - floor), 5),
        centre_nm=round(centre, 2),
        width_nm=round(width, 2),
    )
    return Fitted(
        material=changed, said=_said(values, fit, translate("materials spectra", "of reflectance"))
    )


def _said(measured: FloatArray, fit: FloatArray, unit: str) -> str:
    away = np.abs(fit - measured)
    at = int(np.argmax(away))
    return translate(
        "materials spectra",
        "The spectrum is described to within {away:.2g} {unit}, furthest at "
        "{bands_nm:.0f} nm; look at the plot before you keep it.",
    ).format(away=away[at], unit=unit, bands_nm=BANDS_NM[at])


def _lowest(away: Callable[[float], float], low: float, high: float) -> float:
    from scipy.optimize import minimize_scalar  # noqa: PLC0415 - takes a third of a second

    found = minimize_scalar(away, bounds=(low, high), method="bounded", options={"xatol": 1e-4})
    return float(found.x)


def _no_spectrum(material: Material) -> CatalogueError:
    return CatalogueError(
        translate("materials spectra", "No such spectrum belongs to it."),
        where=material.name,
        advice=translate(
            "materials spectra",
            "Blocks and stumps have reflectance, blocks and liquids absorption.",
        ),
    )
