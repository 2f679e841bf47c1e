"""Tools that change a whole area at once: larger, smaller, smoother, back to the proposal."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import AccentMask, Case
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.geodesic import Graph
from stainmap.surface.mesh import BoolArray
from stainmap.surface.region import dilated, eroded, grown, nearest_labels, shrunk, smooth_region
from stainmap.words import translate

# Lengths, sintered mm, by which an area may be made larger or smaller in one go.
LEAST_MM, MOST_MM = 0.05, 3.0
# Wiggles of a border shorter than this go; half a fissure is as wide (assumed).
SMOOTHING_MM = 0.25
# Borders are smoothed to a hundredth of a facet; that needs no factorisation.
_RESIDUAL = 1e-3
# A change of an accent's share below this is none.
_TINY = 1e-4


def grown_area(case: Case, area: Area, by_mm: float, *, graph: Graph | None = None) -> Case:
    """Return the case with an area larger by a length along the surface, at its neighbours' cost.

    A soft accent keeps the width of its edge. Nothing goes over the margin.

    Parameters
    ----------
    case
        The case.
    area
        A zone of the outer surface, or an accent.
    by_mm
        0.05 to 3 mm, sintered.
    graph
        `distance_graph` of the surface, if it is at hand.

    Raises
    ------
    PlanError
        If the length is out of range, the crown has nothing of the area, or it is the inner
        surface.
    """
    _check(case, area, by_mm)
    mesh, side = case.surface.mesh, side_of(case, area)
    if isinstance(area, Accent):
        share = dilated(mesh, accent_share(case, area), by_mm, within=side, graph=graph)
        return _with_share(case, area, np.where(side, share, accent_share(case, area)))
    larger = grown(mesh, case.zones == int(area), by_mm, within=side, graph=graph)
    return with_zones(case, np.where(larger & side, np.uint8(area), case.zones))


def shrunk_area(case: Case, area: Area, by_mm: float, *, graph: Graph | None = None) -> Case:
    """Return the case with an area smaller by a length; its neighbours take what it gives up.

    Parameters and errors as for `grown_area`. Where it ends at the margin it stays.
    """
    _check(case, area, by_mm)
    mesh, side = case.surface.mesh, side_of(case, area)
    if isinstance(area, Accent):
        share = eroded(mesh, accent_share(case, area), by_mm, within=side, graph=graph)
        return _with_share(case, area, np.where(side, share, accent_share(case, area)))
    old = case.zones == int(area)
    given_up = old & side & ~shrunk(mesh, old & side, by_mm, within=side, graph=graph)
    return with_zones(case, _filled_from_around(case, area, given_up, side, graph))


def smoothed_area(
    case: Case,
    area: Area,
    length_mm: float = SMOOTHING_MM,
    *,
    graph: Graph | None = None,
) -> Case:
    """Return the case with a smoother edge of one area, which covers as much as before.

    Wiggles shorter than the length go. An accent, which has a soft edge, gets a softer one.

    Raises
    ------
    PlanError
        As for `grown_area`.
    """
    _check(case, area, length_mm)
    mesh, side = case.surface.mesh, side_of(case, area)
    operator = SurfaceOperator(mesh, within=side, iteration_from=0, residual=_RESIDUAL)
    if isinstance(area, Accent):
        share = accent_share(case, area)
        soft = np.clip(operator.smooth(share.astype(np.float64), 0.5 * length_mm), 0.0, 1.0)
        return _with_share(case, area, np.where(side, soft, share).astype(np.float32))
    old = (case.zones == int(area)) & side
    new = smooth_region(operator, old, length_mm, within=side, graph=graph)
    zones = _filled_from_around(case, area, old & ~new, side, graph)
    return with_zones(case, np.where(new, np.uint8(area), zones))


def reset_area(case: Case, area: Area) -> Case:
    """Return the case with one area as it was proposed; other corrections stay.

    A margin that was moved by hand stays where it is.
    """
    if isinstance(area, Accent):
        proposed = next((m.share for m in case.accent_proposal if m.accent == area), None)
        if proposed is None:
            kept = tuple(mask for mask in case.accents if mask.accent != area)
            return case if len(kept) == len(case.accents) else replace(case, accents=kept)
        return _with_share(case, area, proposed)
    touched = (case.zones == int(area)) | (case.proposal == int(area))
    touched &= same_side_as_proposed(case)
    return with_zones(case, np.where(touched, case.proposal, case.zones))


def reset_all(case: Case) -> Case:
    """Return the case with all zones and accents as they were proposed; coats stay.

    A margin that was moved by hand stays where it is.
    """
    zones = np.where(same_side_as_proposed(case), case.proposal, case.zones)
    changed = with_zones(case, zones)
    if _same_masks(case.accents, case.accent_proposal):
        return changed
    return replace(changed, accents=case.accent_proposal)


def same_side_as_proposed(case: Case) -> BoolArray:
    """Return where (V,) the proposal lies on the side of the margin where the vertex is now."""
    return np.asarray((case.proposal == int(Zone.INNER)) == ~case.reading.outer)


def side_of(case: Case, area: Area) -> BoolArray:
    """Return the side (V,) of the margin that an area belongs to."""
    inside = area in (Zone.INNER, Accent.INNER_NECK_BAND)
    outer = case.reading.outer
    return ~outer if inside else np.asarray(outer)


def accent_share(case: Case, accent: Accent) -> NDArray[np.float32]:
    """Return an accent's share (V,); zero where the case has none of it."""
    share = case.accent(accent)
    return np.zeros(len(case.zones), np.float32) if share is None else share


def with_zones(case: Case, zones: NDArray[np.uint8]) -> Case:
    """Return the case with other zones, or the very same case if they are as they were."""
    if np.array_equal(zones, case.zones):
        return case
    return replace(case, zones=np.asarray(zones, dtype=np.uint8))


def _with_share(case: Case, accent: Accent, share: NDArray[np.float32]) -> Case:
    if np.abs(share - accent_share(case, accent)).max(initial=0.0) < _TINY:
        return case
    return case.with_accent(accent, np.array(share, dtype=np.float32))


def _check(case: Case, area: Area, length_mm: float) -> None:
    if area is Zone.INNER:
        raise PlanError(
            translate("zone tools", "The inner surface ends at the margin."),
            advice=translate(
                "zone tools", "Let the brush move the margin (menu Crown), or choose another area."
            ),
        )
    if not LEAST_MM <= length_mm <= MOST_MM:
        raise PlanError(
            translate("zone tools", "A length of {length_mm:g} mm is out of range.").format(
                length_mm=length_mm
            ),
            advice=translate("zone tools", "Give {least_mm:g} to {most_mm:g} mm.").format(
                least_mm=LEAST_MM, most_mm=MOST_MM
            ),
        )
    there = (
        accent_share(case, area).any() if isinstance(area, Accent) else (case.zones == area).any()
    )
    if not there:
        name = area_label(area, front=case.units[0].tooth.is_front)
        raise PlanError(
            translate("zone tools", "This crown has no {name} yet.").format(name=name),
            advice=translate("zone tools", "Paint some of it first."),
        )


def _filled_from_around(
    case: Case, area: Area, given_up: BoolArray, side: BoolArray, graph: Graph | None
) -> NDArray[np.uint8]:
    """Return the zones in which places an area gives up take the nearest other zone."""
    if not given_up.any():
        return case.zones
    # What stays of the area must not hand its own number back.
    asked = side & (case.zones == int(area))
    filled = nearest_labels(case.surface.mesh, case.zones, asked, within=side, graph=graph)
    return np.where(given_up, filled, case.zones)


def _same_masks(one: tuple[AccentMask, ...], other: tuple[AccentMask, ...]) -> bool:
    return len(one) == len(other) and all(
        a.accent == b.accent and np.array_equal(a.share, b.share)
        for a, b in zip(one, other, strict=True)
    )
