"""The translucency parameter of a bare plate, as it leaves a sintering programme."""

from __future__ import annotations

from typing import Final

import numpy as np

from stainmap.model.material import Block, Catalogue
from stainmap.optics.colorimetry import reflectance_to_lab
from stainmap.optics.interface import fitted_interface
from stainmap.optics.spectrum import BANDS_NM
from stainmap.optics.translucency import translucency_parameter
from stainmap.predict.blocks import (
    absorption_per_mm,
    bare_reflectance,
    layer_absorption,
    scattering_per_mm,
)

PLATE_MM: Final = 1.0
"""Thickness that translucency parameters are usually told for."""
_WHITE_TILE, _BLACK_TILE = 0.85, 0.02


def plate_translucency(
    block: Block, materials: Catalogue, programme: str, thickness_mm: float = PLATE_MM
) -> tuple[float, ...]:
    """Return TP_ab [Johnston1995] of a plate of every layer of a block, in their order.

    Unstained, polished, 45/0, D65, 2 degrees, across an air gap over tiles of reflectance 0.85 and
    0.02. Absolute values differ between instruments; differences and directions compare.

    Parameters
    ----------
    programme
        Name of the sintering programme.
    thickness_mm
        Sintered.

    Raises
    ------
    CatalogueError
        If the programme is not among the materials, or the block has an impossible colour.
    """
    factor = materials.programme(programme).effective_scattering_factor
    interface = fitted_interface(len(BANDS_NM))
    found = []
    for layer in block.layers:
        absorption = absorption_per_mm(layer_absorption(layer, materials), BANDS_NM)
        scattering = factor * scattering_per_mm(layer.scattering, BANDS_NM)
        white, black = (
            reflectance_to_lab(
                bare_reflectance(
                    absorption,
                    scattering,
                    thickness_mm,
                    interface.backing(np.full(len(BANDS_NM), tile), coupled=False),
                    interface,
                )
            )
            for tile in (_WHITE_TILE, _BLACK_TILE)
        )
        found.append(float(translucency_parameter(white, black)))
    return tuple(found)


def range_text(values: tuple[float, ...], decimals: int = 1) -> str:
    """Return "8.1" or, of layers that differ, "8.1 to 10.4"."""
    low, high = f"{min(values):.{decimals}f}", f"{max(values):.{decimals}f}"
    return low if low == high else f"{low} to {high}"
