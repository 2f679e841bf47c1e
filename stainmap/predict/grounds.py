"""Where the brush is at work: a patch on its side of the wall and one beyond, kept over dabs."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.predict.levels import SurfaceLevels
from stainmap.predict.painted_state import PaintedPatch
from stainmap.predict.sideways import Membrane
from stainmap.predict.wicking import Wicking

Floats = NDArray[np.float32]
Indices = NDArray[np.int32]

HERE, BEYOND = 0, 1

# A patch reaches this many lengths beyond what was painted, and a little more to serve the next
# dabs too. Beyond the largest one the whole surface is solved instead.
_LIGHT_LENGTHS = 2.0
_LIQUID_LENGTHS = 2.0
_WET_LENGTHS = 4.0
_PATCH_SPARE_MM = 0.3
_HOVER_SPARE_MM = 0.4
_AHEAD_MM = 0.9 * _PATCH_SPARE_MM
_LARGEST_PATCH_MM = 6.0


class Grounds:
    """The two patches of an engine. Vertices are in the compact order of its levels.

    Parameters
    ----------
    levels, wicking, membrane
        Of the whole surface; the last is None where light does not spread.
    wicking_mm
        How far liquid wicks.
    """

    def __init__(
        self,
        levels: SurfaceLevels,
        wicking: Wicking,
        membrane: Membrane | None,
        wicking_mm: float,
    ) -> None:
        self._levels = levels
        self._wicking = wicking
        self._membrane = membrane
        reach = membrane.reach_mm if membrane else 0.0
        self._margin_mm = _LIGHT_LENGTHS * reach + _LIQUID_LENGTHS * wicking_mm
        # Farther than this from a dab its liquid is not looked for.
        self._wet_mm = _WET_LENGTHS * wicking_mm
        self._beyond_mm = _LIQUID_LENGTHS * wicking_mm
        self._held: list[PaintedPatch | None] = [None, None]

    def serves(self, which: int, places: Indices) -> bool:
        """Return whether the patch that is kept holds all that a dab on vertices changes."""
        held = self._held[which]
        return held is not None and held.serves(places, self._margin_mm)

    def around(self, which: int, places: Indices) -> PaintedPatch | None:
        """Return a patch around vertices, the last one if it still serves; None if too large."""
        held = self._held[which]
        if self.serves(which, places):
            return held
        positions = self._levels.positions[:, places]
        centre = (positions.min(axis=1) + positions.max(axis=1)) / 2
        painted = float(self._levels.distance_mm(places, centre).max())
        radius = painted + self._margin_mm + _PATCH_SPARE_MM
        # A brush that moves goes on: as much more room before it as there is less behind.
        ahead = centre - (centre if held is None else held.painted_at)
        far = float(np.linalg.norm(ahead))
        before = ahead * np.float32(_AHEAD_MM / far) if _AHEAD_MM < far < radius else ahead * 0
        return self._cut(which, centre + before, radius, places, centre)

    def prepare(self, which: int, vertex: int, radius_mm: float) -> bool:
        """Have a patch around a vertex ready for a brush; return whether there is one."""
        centre = self._levels.positions[:, vertex]
        needed = radius_mm + self._margin_mm + (self._beyond_mm if which == BEYOND else 0.0)
        held = self._held[which]
        if held is not None and held.covers(vertex, centre, needed):
            return True
        seed = np.array([vertex], dtype=np.int32)
        return self._cut(which, centre, needed + _HOVER_SPARE_MM, seed) is not None

    def _cut(
        self,
        which: int,
        centre: Floats,
        radius_mm: float,
        seeds: Indices,
        painted_at: Floats | None = None,
    ) -> PaintedPatch | None:
        """Return, and keep, the patch within a ball; None if that is too large."""
        if radius_mm > _LARGEST_PATCH_MM:
            return None
        patch = self._levels.patch(centre, radius_mm, seeds)
        made = PaintedPatch(
            patch=patch,
            wicking=self._wicking.patch(patch, self._margin_mm - self._wet_mm),
            light=None if self._membrane is None else self._membrane.patch(patch),
            centre=centre,
            radius_mm=radius_mm,
            painted_at=centre if painted_at is None else painted_at,
        )
        self._held[which] = made
        return made
