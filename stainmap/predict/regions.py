"""What lies behind the wall, region by region: stump, pontic, dark mouth, plug of a channel."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Backing, Case, Region, ScrewChannel
from stainmap.model.material import Catalogue
from stainmap.model.tooth import Role
from stainmap.optics.interface import Interface
from stainmap.optics.slab import km_layer_over
from stainmap.optics.spectrum import BANDS_NM
from stainmap.predict.blocks import stump_reflectance

INCISAL_EDGE_MM: Final = 1.5
"""How far below the edge of a front tooth no stump lies behind; assumed."""

CHANNEL_REACH_MM: Final = 4.0
"""How far along its axis a screw channel's mouth extends from the point that was set; assumed."""


def backing_within(
    backing: Backing, materials: Catalogue, interface: Interface
) -> NDArray[np.float64]:
    """Return the internal reflectance at the back of the wall, (31,): stump, cement, surface."""
    cement = materials.cement(backing.cement)
    stump = stump_reflectance(materials.stump(backing.stump), BANDS_NM)
    covered = km_layer_over(
        cement.absorption_per_mm, cement.scattering_per_mm, backing.cement_thickness_mm, stump
    )
    return interface.backing(covered, coupled=cement.coupled)


def region_of_vertices(case: Case) -> NDArray[np.uint8]:
    """Return the position in ``case.backings`` of what lies behind each vertex, (V,) uint8.

    Pontics have their own; on front teeth so has the outer surface down to 1.5 mm below the
    edge, and so has the mouth of a screw channel where somebody has said that there is one. What
    lies nearer wins: a channel over an edge. Everything else, and every region without an entry
    of its own, has the stump behind it: that of its unit, if the unit has one of its own.

    Raises
    ------
    PlanError
        If the case does not say what lies behind the crown.
    """
    reading = case.reading
    pontic = np.array([unit.role is Role.PONTIC for unit in case.units])[reading.unit_index]
    front = np.array([unit.tooth.is_front for unit in case.units])[reading.unit_index]
    edge = front & reading.outer & (reading.depth_below_crest_mm < INCISAL_EDGE_MM)
    regions = _position(case, Region.STUMP)[reading.unit_index]
    regions[edge] = _position(case, Region.INCISAL_EDGE)[reading.unit_index[edge]]
    regions[pontic] = _position(case, Region.PONTIC)[reading.unit_index[pontic]]
    for channel in case.screw_channels:
        own = _position(case, Region.SCREW_CHANNEL)[channel.unit]
        regions[mouth_of(case, channel)] = own
    return regions


def mouth_of(case: Case, channel: ScrewChannel) -> NDArray[np.bool_]:
    """Return the vertices (V,) that a screw channel leaves by: its plug lies behind them.

    The outer surface of its unit within the radius of the axis, and within 4 mm along it of the
    point that was set, so that the opposite side of the tooth has no part in it.
    """
    axis = np.array(channel.axis) / np.linalg.norm(channel.axis)
    away = case.surface.mesh.vertices - np.array(channel.point_mm)
    along = away @ axis
    squared = np.einsum("ij,ij->i", away, away) - along**2
    of_unit = case.reading.outer & (case.reading.unit_index == channel.unit)
    return np.asarray(
        of_unit & (squared <= channel.radius_mm**2) & (np.abs(along) <= CHANNEL_REACH_MM)
    )


def _position(case: Case, region: Region) -> NDArray[np.uint8]:
    """Return where the backing of a region stands among the case's, for every unit."""
    count = max(len(case.units), 1)
    return np.array(
        [case.backings.index(case.backing(region, unit)) for unit in range(count)], dtype=np.uint8
    )
