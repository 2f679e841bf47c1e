"""What lies on the surface while it is painted: state, way back, patches under the brush."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.predict.levels import Patch
from stainmap.predict.sideways import LightPatch
from stainmap.predict.wicking import WickingPatch

if TYPE_CHECKING:
    from stainmap.predict.appearance import Appearance

Floats = NDArray[np.float32]
Indices = NDArray[np.int32]

# What shows through on the other side of the wall is recoloured in pieces of this size.
_BEYOND_AT_ONCE_MM = 2.5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Dab:
    """The vertices (m,) that one dab recoloured, their L*a*b* (m, 3) and encoded sRGB (m, 3)."""

    vertices: Indices
    lab: Floats
    srgb: NDArray[np.uint8]


@dataclass(slots=True, kw_only=True, eq=False)
class PaintedState:
    """What is on the surface, (V, ...) in the compact order.

    `coarse` is the luminance from the coarse mesh level relative to that of the whole solve.
    """

    raw: Floats
    load: Floats
    R1: Floats
    phi: Floats
    coarse: Floats
    appearance: Appearance


class WayBack:
    """What a stroke has overwritten of a state, row by row: a copy of it all would be large."""

    def __init__(self, state: PaintedState) -> None:
        self.state = state
        self._kept = np.zeros(len(state.raw), dtype=np.bool_)
        self._rows: list[tuple[Indices, list[Floats]]] = []

    def keep(self, state: PaintedState, places: Indices) -> None:
        """Keep some rows before they are overwritten, the first time."""
        if state is self.state:
            new = places[~self._kept[places]]
            self._kept[new] = True
            self._rows.append((new, [array[new] for array in self._arrays()]))

    def back(self) -> PaintedState:
        """Return the state as it was."""
        for places, rows in self._rows:
            for array, row in zip(self._arrays(), rows, strict=True):
                array[places] = row
        return self.state

    def _arrays(self) -> list[Floats]:
        """Return the arrays that a dab writes to; phi is empty where light is not spread."""
        state = self.state
        arrays = (state.raw, state.load, state.R1, state.phi)
        return [array for array in arrays if len(array)]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PaintedPatch:
    """A patch of one side of the crown that is being painted, kept while the brush stays on it.

    It is what lies within a ball about `centre`; `painted_at` is the middle of the dab that it was
    cut for.
    """

    patch: Patch
    wicking: WickingPatch
    light: LightPatch | None
    centre: Floats
    radius_mm: float
    painted_at: Floats

    def covers(self, vertex: int, centre: Floats, radius_mm: float) -> bool:
        """Return whether a ball lies within the patch's, and a vertex (compact) in the patch."""
        inside = self.patch.vertices
        place = min(int(np.searchsorted(inside, vertex)), len(inside) - 1)
        apart = float(np.linalg.norm(self.centre - centre))
        return bool(inside[place] == vertex) and apart + radius_mm <= self.radius_mm

    def serves(self, vertices: Indices, margin_mm: float) -> bool:
        """Return whether vertices (ascending) all lie that far inside the patch."""
        inside = self.patch.vertices
        place = np.minimum(np.searchsorted(inside, vertices), len(inside) - 1)
        return np.array_equal(inside[place], vertices) and bool(
            self.patch.rim_distance_mm[place].min() >= margin_mm
        )


class Beyond:
    """Where stain shows through on the other side of the wall, dab by dab, until it is recoloured.

    Of that, each time as much as one patch holds; `ready` is one that has been cut for it.
    """

    def __init__(self) -> None:
        self._dabs: list[Indices] = []
        self.ready: PaintedPatch | None = None

    def add(self, places: Indices) -> None:
        """Note where (ascending) one more dab shows through."""
        if len(places):
            self._dabs.append(places)

    def take(self, positions: Floats) -> Indices:
        """Return where (ascending) the newest dabs show through, none twice; empty if none do.

        positions (3, V) are those of all vertices, mm.
        """
        places = self._dabs.pop() if self._dabs else np.empty(0, dtype=np.int32)
        while self._dabs:
            both = merged(places, self._dabs[-1])
            if float(np.ptp(positions[:, both], axis=1).max()) > _BEYOND_AT_ONCE_MM:
                break
            places = both
            self._dabs.pop()
        return places

    def forget(self) -> None:
        """Drop all that has been noted."""
        self._dabs.clear()
        self.ready = None


def merged(one: Indices, other: Indices) -> Indices:
    """Return what is in either, ascending; numpy's own routine takes a millisecond."""
    both = np.concatenate([one, other])
    both.sort()
    first = np.ones(len(both), dtype=np.bool_)
    np.not_equal(both[1:], both[:-1], out=first[1:])
    merged: Indices = both[first]
    return merged


def without(those: Indices, others: Indices) -> Indices:
    """Return which of `those` are not among `others`, both ascending."""
    place = np.minimum(np.searchsorted(others, those), len(others) - 1)
    found: Indices = those[others[place] != those]
    return found
