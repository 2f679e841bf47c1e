"""What the looks that stand for a figure show of a prediction, vertex by vertex."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.app import edits

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.planning.look_colours import Scale
    from stainmap.predict.appearance import Appearance

Floats = NDArray[np.float32]
Bytes = NDArray[np.uint8]

# The softness of borders that figures of areas are taken at too, so that shares are at hand.
_SOFTNESS_MM = 0.6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Offsets:
    """How far a prediction is from what is wanted.

    Parameters
    ----------
    wanted
        (V, 3) L*a*b*, not a number where nothing is wanted.
    de00
        (V,) CIEDE2000, likewise.
    refused
        Why nothing can be said although something is wanted; empty otherwise.
    """

    wanted: Floats
    de00: Floats
    refused: str = ""

    def srgb(self) -> Bytes:
        """Return the colours (V, 3)."""
        from stainmap.planning.look_colours import OFFSET_SCALE  # noqa: PLC0415

        return OFFSET_SCALE.srgb(self.de00)

    def srgb_at(self, vertices: NDArray[np.int32], lab: Floats) -> Bytes:
        """Return the colours (k, 3) of vertices that look like `lab` (k, 3) now."""
        from stainmap.planning.look_colours import OFFSET_SCALE, offset_de00  # noqa: PLC0415

        return OFFSET_SCALE.srgb(offset_de00(lab, self.wanted[vertices]))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Walls:
    """The wall as it is judged: sintered, after what the case grinds away.

    Parameters
    ----------
    wall_mm
        (V,) wall.
    minimum_mm
        The block's least wall.
    assumed
        True if the crown has no inner surface, so that the wall is a guess.
    """

    wall_mm: Floats
    minimum_mm: float
    assumed: bool

    @property
    def scale(self) -> Scale:
        """The colours of walls about the minimum."""
        from stainmap.planning.look_colours import wall_scale  # noqa: PLC0415

        return wall_scale(self.minimum_mm)

    def srgb(self) -> Bytes:
        """Return the colours (V, 3)."""
        return self.scale.srgb(self.wall_mm)


def value_srgb(lab: Floats) -> Bytes:
    """Return the greys (n, 3) of predicted L*a*b* (n, 3)."""
    from stainmap.planning.look_colours import VALUE_SCALE  # noqa: PLC0415

    return VALUE_SCALE.srgb(lab[:, 0])


def offsets_of(prediction: Prediction) -> Offsets:
    """Return how far every vertex is from what is wanted there."""
    from stainmap.planning.look_colours import offset_de00, wanted_lab  # noqa: PLC0415

    case, outcome = prediction.case, prediction.outcome
    # Those that could be compared, as the prediction is measured.
    wanted = [
        (area.area, area.wanted)
        for area in outcome.areas
        if area.wanted is not None and area.delta_e_00 is not None
    ]
    shares = prediction.layout.shares(case.zones, _SOFTNESS_MM)
    masks = [(mask.accent, mask.share) for mask in case.accents]
    lab = wanted_lab(wanted, shares, masks)
    return Offsets(
        wanted=lab, de00=offset_de00(prediction.appearance.lab, lab), refused=outcome.refused
    )


def walls_of(prediction: Prediction) -> Walls:
    """Return the wall at every vertex beside the least the block allows."""
    case = prediction.case
    return Walls(
        wall_mm=prediction.ground.shape.wall_mm,
        minimum_mm=case.materials.block(case.plan.block).minimum_wall_mm,
        assumed=prediction.shape.assumed_wall,
    )


def ground_look(prediction: Prediction, depth_mm: float) -> Appearance:
    """Return what shows after the whole outer surface was ground by a depth and polished.

    What the case grinds away anyhow stays ground at least as deep. The case is not touched, nor
    is the prediction's engine: this is the same plan in a crown that is thinner.

    Raises
    ------
    PlanError
        If the depth is none that can be set.
    """
    from stainmap.predict.appearance import AppearanceEngine  # noqa: PLC0415
    from stainmap.predict.grinding import ground_crown, ground_depth_mm  # noqa: PLC0415

    case = edits.with_ground(prediction.case, None, depth_mm)
    depth, already = ground_depth_mm(case), ground_depth_mm(prediction.case)
    if depth is not None and already is not None:
        depth = np.maximum(depth, already)
    ground = ground_crown(prediction.shape, case.process, depth)
    scene, seen = prediction.engine.scene, prediction.seen
    engine = AppearanceEngine(ground.shape, scene, curvature_correction=seen.curvature_correction)
    return engine.whole(ground.coats(scene, prediction.coats))
