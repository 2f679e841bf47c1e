"""What is to be seen of a crown, whichever canvas draws it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from stainmap.paper.views import CrownDirections
from stainmap.ui.camera import Camera


class Look(StrEnum):
    """What the crown is coloured by."""

    SINTERED = "sintered"
    BENCH = "bench"
    ZONES = "zones"
    COATS = "coats"


# Looks that show a colour of every vertex, as the screen can show it.
COLOURED = (Look.SINTERED, Look.BENCH)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownPicture:
    """From where, in which look, with or without shading."""

    camera: Camera
    directions: CrownDirections
    look: Look = Look.SINTERED
    shading: bool = True
