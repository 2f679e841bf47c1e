"""In which length unit, and at which of its two sizes, a body could be a crown."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.surface.frame import principal_extents
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState

# Principal extents of sintered crowns, mm: longest and shortest. From textbook dimensions of
# human crowns (from memory) with room to spare; ten real crowns measured 8.9 to 12.2 and 4.6 to
# 10.0.
LONGEST_MM = (7.0, 14.0)
SHORTEST_MM = (4.0, 11.5)
# A bridge is no longer than a whole arch laid straight. It grows in length and, with the arch,
# in depth; its thinnest extent stays about that of a crown.
BRIDGE_LONGEST_MM = 130.0
BRIDGE_SHORTEST_MM = (4.0, 12.5)
# Largest enlargement of presintered blanks; it differs by block and batch.
LARGEST_ENLARGEMENT = 1.30
_SIZES_IN_ORDER = (
    LengthUnit.MILLIMETRE,
    LengthUnit.CENTIMETRE,
    LengthUnit.INCH,
    LengthUnit.METRE,
    LengthUnit.MICROMETRE,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """A unit in which a body could be a crown or bridge, and at which of its two sizes.

    `state` is MILLED where a crown would be too long for a sintered one. Else it is UNKNOWN: a
    quarter more or less lies within the range of crowns, so the shape cannot tell.
    """

    unit: LengthUnit
    state: SizeState


def plausible_sizes(mesh: TriMesh, declared: LengthUnit | None = None) -> tuple[Size, ...]:
    """Return the sizes at which a mesh in file units could be a crown or bridge, likeliest first.

    Parameters
    ----------
    mesh
        The mesh in the file's own units.
    declared
        The unit the file says it has, if it says so; it comes first if it fits.
    """
    longest, _, shortest = principal_extents(mesh)
    order = list(_SIZES_IN_ORDER)
    if declared is not None:
        order.sort(key=lambda unit: unit is not declared)
    crowns, bridges = [], []
    for unit in order:
        factor = unit.millimetres
        state = _crown_state(longest * factor, shortest * factor)
        if state is not None:
            crowns.append(Size(unit=unit, state=state))
        elif _could_be_bridge(longest * factor, shortest * factor):
            bridges.append(Size(unit=unit, state=SizeState.UNKNOWN))
    return (*crowns, *bridges)


def _crown_state(longest_mm: float, shortest_mm: float) -> SizeState | None:
    if _is_crown(longest_mm, shortest_mm):
        return SizeState.UNKNOWN
    milled = _is_crown(longest_mm / LARGEST_ENLARGEMENT, shortest_mm / LARGEST_ENLARGEMENT)
    return SizeState.MILLED if milled and longest_mm > LONGEST_MM[1] else None


def _is_crown(longest_mm: float, shortest_mm: float) -> bool:
    fits = LONGEST_MM[0] <= longest_mm <= LONGEST_MM[1]
    return fits and SHORTEST_MM[0] <= shortest_mm <= SHORTEST_MM[1]


def _could_be_bridge(longest_mm: float, shortest_mm: float) -> bool:
    fits = LONGEST_MM[1] < longest_mm <= BRIDGE_LONGEST_MM
    return fits and BRIDGE_SHORTEST_MM[0] <= shortest_mm <= BRIDGE_SHORTEST_MM[1]
