"""What grinding the sintered crown exposes: paler ceramic, for stain is graded with depth.

The step layer of depth d that predictions work with stands for a profile that falls off as
``exp(-z / l)``. With l = 0.7 d both look alike while they hold the same amount of stain: matched on
the starter liquids, 1 to 5 coats, walls of 0.8 to 2 mm, the median difference is 0.2 dE00, the
largest 0.9 (of the darkest liquid). An exponential keeps its form when its top is taken off, so
that a crown ground by g looks like one whose wall is thinner by g and whose outer load is smaller
by ``exp(-g / l)``. So nothing behind this module need know of grinding: it hands on a thinner shape
and coats that leave that load.

That stain is graded and grinding therefore pales is published; the form of the profile is assumed.
The surface is taken to be polished again. Coats spread by wicking before light is worked out, which
blurs the border of a ground place by the wicking length.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.process import StainProcess
from stainmap.model.zone import Zone
from stainmap.predict.scene import OpticalScene
from stainmap.predict.shape import CrownShape
from stainmap.predict.uptake import coats_for_share

Floats = NDArray[np.float32]


FALL_IN_DEPTHS: Final = 0.7
"""Length within which stain falls to 1/e, in effective depths of the stained layer."""

_THINNEST_MM = 0.05


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class GroundCrown:
    """A crown with some of its outer surface ground away.

    Parameters
    ----------
    shape
        The crown, its walls thinner by what was taken off.
    remaining
        (V,) share of the load that is left, 0 to 1; None where nothing was ground.
    """

    shape: CrownShape
    remaining: NDArray[np.float64] | None

    def coats(
        self, scene: OpticalScene, coats: Floats, vertices: NDArray[np.integer] | None = None
    ) -> Floats:
        """Return the coats (S, V) whose load is what grinding leaves of that of `coats` (S, V).

        `vertices` names those that the columns belong to; all in order if None.
        """
        if self.remaining is None:
            return coats
        share = self.remaining if vertices is None else self.remaining[vertices]
        left = coats_for_share(
            coats,
            share,
            scene.step_liquid,
            scene.step_dilution,
            liquid_count=len(scene.liquids),
            rule=scene.process.uptake,
        )
        return np.asarray(left, dtype=np.float32)


def ground_depth_mm(case: Case) -> Floats | None:
    """Return how much the case has ground off each vertex, (V,) mm; None if nothing anywhere.

    Only the outer surface is ground. An accent's depth fades with its mask.
    """
    depth = np.zeros(len(case.zones), dtype=np.float32)
    for entry in case.after_sintering.ground:
        if entry.area is None:
            share = np.ones(len(depth), dtype=np.float32)
        elif isinstance(entry.area, Zone):
            share = (case.zones == int(entry.area)).astype(np.float32)
        else:
            mask = case.accent(entry.area)
            share = np.zeros_like(depth) if mask is None else mask
        np.maximum(depth, np.float32(entry.depth_mm) * share, out=depth)
    depth[~case.reading.outer] = 0.0
    return depth if depth.any() else None


def ground_crown(shape: CrownShape, process: StainProcess, depth_mm: Floats | None) -> GroundCrown:
    """Return a crown ground by a depth per vertex (V,), or as it is if that is None.

    Walls never get thinner than 0.05 mm, where a burr would long have gone through.
    """
    if depth_mm is None:
        return GroundCrown(shape=shape, remaining=None)
    opposite = np.where(shape.partner >= 0, depth_mm[shape.partner], 0.0)
    wall = np.maximum(shape.wall_mm - depth_mm - opposite, _THINNEST_MM).astype(np.float32)
    return GroundCrown(
        shape=replace(shape, wall_mm=wall),
        remaining=remaining_share(depth_mm, shape.wall_mm, process),
    )


def remaining_share(
    depth_mm: Floats, wall_mm: Floats, process: StainProcess
) -> NDArray[np.float64]:
    """Return the share of the outer load left after grinding by (V,) mm, 0 to 1.

    In walls too thin for both stained layers these had shrunk; so had the profile.
    """
    both = process.outer_depth_mm + process.inner_depth_mm
    shrink = np.minimum(1.0, np.asarray(wall_mm, dtype=np.float64) / both)
    return np.asarray(np.exp(-depth_mm / (FALL_IN_DEPTHS * process.outer_depth_mm * shrink)))
