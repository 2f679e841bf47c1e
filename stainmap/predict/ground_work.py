"""What an engine sets up for a shape, and another engine of the same shape may share."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.predict.scene import OpticalScene
from stainmap.predict.shape import CrownShape
from stainmap.predict.sideways import Membrane, direct_share, loss_exponent, spread_mm
from stainmap.predict.wicking import Wicking

Floats = NDArray[np.float32]
Indices = NDArray[np.int32]


class SeenThrough:
    """For every vertex, those vertices on the other side of the wall that look at it."""

    def __init__(self, partner: Indices, has_partner: NDArray[np.bool_]) -> None:
        looking = np.flatnonzero(has_partner).astype(np.int32)
        self._looking = looking[np.argsort(partner[looking], kind="stable")]
        at = partner[self._looking]
        self._starts = np.searchsorted(at, np.arange(len(partner) + 1)).astype(np.int32)

    def of(self, vertices: Indices) -> Indices:
        """Return all vertices (m,) that look at any of these (n,)."""
        begin = self._starts[vertices]
        length = self._starts[vertices + 1] - begin
        ends = np.cumsum(length)
        step = np.arange(int(length.sum())) - np.repeat(ends - length, length)
        found: Indices = self._looking[np.repeat(begin, length) + step]
        return found


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class GroundWork:
    """What an engine sets up for a shape, in the compact order, and another one may share.

    It depends on the shape, and on nothing of the scene but wicking length and scattering.
    """

    shape: CrownShape
    wicking: Wicking
    membrane: Membrane
    curvature_per_mm: Floats
    partner: Indices
    has_partner: NDArray[np.bool_]
    seen_through: SeenThrough


def lay_ground_work(
    shape: CrownShape,
    scene: OpticalScene,
    scattering: NDArray[np.float64],
    threads: int,
    known: GroundWork | None,
) -> GroundWork:
    """Return the ground work for a shape, sharing what it can with one that is known."""
    levels = shape.levels
    order = levels.order
    membrane = Membrane(
        levels,
        spread_mm(scattering),
        direct_share(scattering),
        loss_exponent(scattering),
        threads=threads,
        reuse=None if known is None else known.membrane,
    )
    wicking_mm = scene.process.wicking_mm
    if known is not None and known.wicking.length_mm == wicking_mm:
        return replace(known, membrane=membrane)
    wicking = Wicking(levels, shape.outer[order], wicking_mm, threads=threads)
    if known is not None:
        return replace(known, membrane=membrane, wicking=wicking)
    opposite = shape.partner[order]
    has_partner = opposite >= 0
    partner = np.where(has_partner, levels.rank[opposite], 0).astype(np.int32)
    return GroundWork(
        shape=shape,
        wicking=wicking,
        membrane=membrane,
        curvature_per_mm=shape.curvature_per_mm[order],
        partner=partner,
        has_partner=has_partner,
        seen_through=SeenThrough(partner, has_partner),
    )


def mean_scattering(scene: OpticalScene, area: Floats) -> NDArray[np.float64]:
    """Return the reduced scattering (B,) for light that spreads sideways, 1/mm.

    In a block of several layers the mean over the crown: the membrane has one length per band.
    """
    layers = scene.reduced_scattering_per_mm
    share = np.ones(1) if scene.layer_share is None else scene.layer_share @ np.float64(area)
    return np.asarray(share / share.sum() @ layers)
