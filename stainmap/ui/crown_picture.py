"""What is to be seen of a crown, whichever canvas draws it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper.views import CrownDirections
from stainmap.ui.camera import Camera
from stainmap.ui.theme import SURROUND

if TYPE_CHECKING:
    from stainmap.paper.shading import ShadingFields


class Look(StrEnum):
    """What the crown is coloured by."""

    SINTERED = "sintered"
    BENCH = "bench"
    ZONES = "zones"
    COATS = "coats"
    VALUE = "value"
    OFFSET = "offset"
    THICKNESS = "thickness"
    ROW = "in the row"
    GROUND = "ground"


# What the row of teeth stands before: the dark of the mouth; and what is written on it.
ROW_SURROUND, ROW_TEXT = "#404040", "#ffffff"
# Looks that show a colour of every vertex, as the screen can show it.
COLOURED = (Look.SINTERED, Look.BENCH, Look.ROW, Look.GROUND)
# Looks whose colour at every vertex stands for a figure.
SCALED = (Look.VALUE, Look.OFFSET, Look.THICKNESS)
# Shadows would pass for figures: there they are this much fainter than on zones.
SCALED_RELIEF = 0.45
ROW_SURROUND_LINEAR = float(decode_srgb(int(ROW_SURROUND[1:3], 16) / 255.0))


def source_of(look: Look) -> Look:
    """Return the look whose colours the crown has in a look: in the row it is the sintered one."""
    return Look.SINTERED if look is Look.ROW else look


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownPicture:
    """From where, in which look, with or without shading; `grey` takes the colour out of a row."""

    camera: Camera
    directions: CrownDirections
    look: Look = Look.SINTERED
    shading: bool = True
    grey: bool = False

    @property
    def surround(self) -> str:
        """What the crown stands before, as ``#rrggbb``."""
        return ROW_SURROUND if self.look is Look.ROW else SURROUND

    @property
    def sky(self) -> NDArray[np.float64]:
        """(3,) where a part of the sky light comes from; in the mouth it comes from above."""
        return self.camera.axes[1] if self.look is Look.ROW else self.directions.occlusal


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
