"""The plan laid onto the surface: how many coats of each step lie at each vertex."""

from __future__ import annotations

from collections import OrderedDict
from threading import RLock
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.plan import AreaCoats
from stainmap.model.zone import OUTER_ZONES, Zone
from stainmap.planning.streaks import streak_shares
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh

FloatField = NDArray[np.float32]
End = Literal["low", "high"]

# A step edge smoothed by screened diffusion over s falls from 90 % to 10 % within 2 ln 5 s.
_WIDTH_IN_LENGTHS = 2.0 * np.log(5.0)
_SHARES_KEPT = 6
# A factor of the outer surface alone would hold more than all the rest of a plan.
_ITERATION_FROM = 20_000
# Shares of large surfaces then err by 0.002 or less, a hundredth of a coat.
_RESIDUAL = 1e-3


def smoothing_length_mm(edge_softness_mm: float) -> float:
    """Return the screened-diffusion length whose step edge has this 10-90 % width.

    Closed form: the step response of (1 - s^2 d2/dx2)^-1 is 1 - exp(-x/s)/2 on the full side,
    which passes 90 % at s ln 5 and 10 % at -s ln 5.
    """
    return edge_softness_mm / float(_WIDTH_IN_LENGTHS)


class CoatLayout:
    """Lays plans onto one surface and remembers the softened shares of its zones.

    Parameters
    ----------
    mesh
        The refined surface.
    outer
        (V,) bool, the outer surface. Nothing feathers from one side of the rim to the other.
    """

    def __init__(self, mesh: TriMesh, outer: NDArray[np.bool_]) -> None:
        self._mesh = mesh
        self._outer = outer
        self._operator = SurfaceOperator(
            mesh, within=outer, iteration_from=_ITERATION_FROM, residual=_RESIDUAL
        )
        self._shares: OrderedDict[tuple[int, float], tuple[NDArray[np.uint8], FloatField]] = (
            OrderedDict()
        )
        # Several predictions of one surface may be under way, each in a thread of its own.
        self._lock = RLock()

    def shares(self, zones: NDArray[np.uint8], edge_softness_mm: float) -> FloatField:
        """Return each zone's softened share, (7, V) float32; row = zone number, row 0 = no zone.

        Shares lie in 0 to 1 and sum to 1 at every vertex.
        """
        key = (id(zones), edge_softness_mm)
        with self._lock:
            kept = self._shares.get(key)
            if kept is not None and kept[0] is zones:
                self._shares.move_to_end(key)
                return kept[1]
            shares = self._soften(zones, edge_softness_mm)
            self._shares[key] = (zones, shares)
            while len(self._shares) > _SHARES_KEPT:
                self._shares.popitem(last=False)
        return shares

    def coats(self, case: Case, end: End = "high") -> FloatField:
        """Return the coats of every step at every vertex, (S, V) float32, never below zero.

        A zone's count is feathered across its borders; accents, streaks and brushed coats add.
        `end` chooses the lower or the upper end of spans such as 2-3.
        """
        result = np.zeros((len(case.plan.steps), len(case.zones)), np.float32)
        for index, step in enumerate(case.plan.steps):
            shares = self.shares(case.zones, step.edge_softness_mm)
            for entry in step.areas:
                result[index] += self.entry_coats(case, entry, shares, end)
            for streaks in step.streaks:
                result[index] += streaks.coats * streak_shares(
                    self._mesh, case.zones, case.reading, streaks
                )
            if step.brushed is not None:
                result[index, step.brushed.vertices] += step.brushed.coats
        np.maximum(result, 0.0, out=result)
        return result

    def unsoftened(
        self, case: Case, zones: NDArray[np.uint8], vertices: NDArray[np.int32]
    ) -> FloatField:
        """Return every step's coats at some vertices without feathering or brushed coats, (S, k).

        What lies under a moving brush is shown at once by this.
        """
        here = zones[vertices]
        result = np.zeros((len(case.plan.steps), len(vertices)), np.float32)
        for index, step in enumerate(case.plan.steps):
            for entry in step.areas:
                if isinstance(entry.area, Zone):
                    share = here == int(entry.area)
                else:
                    mask = case.accent(entry.area)
                    if mask is None:
                        continue
                    share = mask[vertices]
                result[index] += np.float32(entry.coats.high) * share * _fade(case, entry, vertices)
        return result

    def entry_coats(
        self, case: Case, entry: AreaCoats, shares: FloatField, end: End = "high"
    ) -> FloatField:
        """Return the coats (V,) of one entry of a step; `shares` as `shares` returns them."""
        count = entry.coats.low if end == "low" else entry.coats.high
        if isinstance(entry.area, Zone):
            share = shares[int(entry.area)]
        else:
            mask = case.accent(entry.area)
            share = np.zeros(len(case.zones), np.float32) if mask is None else mask
        coats: FloatField = np.float32(count) * share * _fade(case, entry, slice(None))
        return coats

    def _soften(self, zones: NDArray[np.uint8], edge_softness_mm: float) -> FloatField:
        shares = np.zeros((7, len(zones)), np.float32)
        numbers = [int(zone) for zone in OUTER_ZONES if (zones == int(zone)).any()]
        if numbers:
            hard = np.stack([zones == number for number in numbers], axis=1)
            soft = self._operator.smooth(
                hard.astype(np.float64), smoothing_length_mm(edge_softness_mm)
            )
            soft = np.clip(soft, 0.0, 1.0)
            total = soft.sum(axis=1)
            covered = total > 1e-6
            soft[covered] /= np.maximum(total[covered], 1.0)[:, None]
            shares[numbers] = soft.T
        inside = ~self._outer
        shares[:, inside] = 0.0
        shares[int(Zone.INNER), inside & (zones == int(Zone.INNER))] = 1.0
        shares[0] = np.maximum(1.0 - shares[1:].sum(axis=0), 0.0)
        return shares


def _fade(case: Case, entry: AreaCoats, vertices: NDArray[np.int32] | slice) -> FloatField:
    """Return the share of an entry's coats left by its fade with height."""
    depth = case.reading.depth_below_crest_mm[vertices]
    if entry.fade is None:
        return np.ones(len(depth), np.float32)
    span = entry.fade.zero_at_mm - entry.fade.full_down_to_mm
    left = (entry.fade.zero_at_mm - np.nan_to_num(depth, nan=np.inf)) / span
    share: FloatField = np.clip(left, 0.0, 1.0).astype(np.float32)
    return share
