"""What is to be seen of a crown, whichever canvas draws it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.paper.shading import ShadingFields
from stainmap.paper.views import CrownDirections
from stainmap.ui.camera import Camera


class Look(StrEnum):
    """What the crown is coloured by."""

    SINTERED = "sintered"
    BENCH = "bench"
    ZONES = "zones"
    COATS = "coats"
    VALUE = "value"
    OFFSET = "offset"
    THICKNESS = "thickness"
    GROUND = "ground"


# Looks that show a colour of every vertex, as the screen can show it.
COLOURED = (Look.SINTERED, Look.BENCH, Look.GROUND)
# Looks whose colour at every vertex stands for a figure.
SCALED = (Look.VALUE, Look.OFFSET, Look.THICKNESS)
# Shadows would pass for figures: there they are this much fainter than on zones.
SCALED_RELIEF = 0.45


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownPicture:
    """From where, in which look, with or without shading."""

    camera: Camera
    directions: CrownDirections
    look: Look = Look.SINTERED
    shading: bool = True


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SeenValues:
    """What a crown shows in the look that is on, vertex by vertex, for those who draw it again.

    The arrays are the stage's own: they change as the brush moves, and are not to be kept.

    Parameters
    ----------
    look, shading
        What it is coloured by, and whether light falls on it.
    srgb
        (V, 3) uint8, for looks that show colours.
    zones, accents
        (V, 6) and (V, 7) softened shares, once somebody looks at zones.
    coats
        (V,) coats of the chosen step, or of all.
    fields
        What the light needs to know, once it has been worked out.
    rows
        (3, 3) mesial, buccal, occlusal, to which hatches are fixed.
    """

    look: Look
    shading: bool
    srgb: NDArray[np.uint8] | None
    zones: NDArray[np.float32] | None
    accents: NDArray[np.float32] | None
    coats: NDArray[np.float32] | None
    fields: ShadingFields | None
    rows: NDArray[np.float64]
