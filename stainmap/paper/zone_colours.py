"""The colours of zones on screen, and which of them carry a white hatch."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.model.zone import Zone
from stainmap.optics.colorimetry import decode_srgb

FloatArray = NDArray[np.float64]

# The published "muted" colour-blind-safe set [Tol2021], with some light grey mixed in (linear)
# so that black stays readable on it. Which zone has which colour is ours.
_LIGHT_GREY = 0.62
_ZONE_COLOURS: dict[Zone, tuple[tuple[int, int, int], float]] = {
    Zone.CERVICAL: ((0x33, 0x22, 0x88), 0.03),
    Zone.BODY: ((0x44, 0xAA, 0x99), 0.16),
    Zone.INTERPROXIMAL: ((0xAA, 0x44, 0x99), 0.12),
    Zone.CUSP: ((0x99, 0x99, 0x33), 0.16),
    Zone.FISSURE: ((0x11, 0x77, 0x33), 0.0),
    Zone.INNER: ((0xDD, 0xDD, 0xDD), 0.0),
}
# White hatch on dark colours, black on light ones.
WHITE_HATCH = frozenset({Zone.CERVICAL, Zone.INTERPROXIMAL, Zone.FISSURE})


def zone_colour_linear(zone: Zone) -> FloatArray:
    """Return the (3,) linear colour of a zone on screen."""
    code, grey = _ZONE_COLOURS[zone]
    base = decode_srgb(np.array(code) / 255.0)
    return np.asarray(base + (_LIGHT_GREY - base) * grey)
