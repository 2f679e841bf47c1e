"""What rules of advice look at: the case, what was predicted for it, and what follows from that."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from stainmap.model.advice_limits import AdviceLimits
from stainmap.model.case import Backing, Case, Region
from stainmap.model.tooth import Role
from stainmap.model.zone import Area, Zone, area_label
from stainmap.planning.advice_value import Mask, Place, place_of
from stainmap.planning.draft import wall_over_stump
from stainmap.planning.outcome import Outcome
from stainmap.predict.reference import lab_of_reflectance, load_of_coats, reflectance_of_load
from stainmap.predict.scene import OpticalScene, build_scene
from stainmap.surface.geodesic import surface_distance
from stainmap.surface.mesh import TriMesh

Floats = NDArray[np.float32]


@dataclass(slots=True, eq=False)
class MeasuredPlaces:
    """Masks that take a while and depend on few things: kept from one prediction to the next."""

    over_stump: Mask | None = None
    over_stump_of: tuple[object, ...] = ()
    fissure_mm: NDArray[np.float64] | None = None
    fissure_of: object = None

    def over(self, case: Case) -> Mask:
        """Return (V,) where a stump may show behind the wall of a case; see `wall_over_stump`."""
        key = (case.reading, case.units, case.screw_channels)
        fresh = len(self.over_stump_of) == len(key) and all(
            one is other for one, other in zip(self.over_stump_of, key, strict=True)
        )
        if self.over_stump is None or not fresh:
            self.over_stump, self.over_stump_of = wall_over_stump(case), key
        return self.over_stump


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatSample:
    """An area as one flat piece of wall, by weighted means.

    Parameters
    ----------
    coats, partner_coats
        (S,) on the surface looked at and opposite.
    layers
        (H,) share of the block's layers; None for a block of one layer.
    region
        Which of the scene's regions lies behind most of it.
    """

    coats: NDArray[np.float64]
    partner_coats: NDArray[np.float64]
    wall_mm: float
    layers: NDArray[np.float64] | None
    region: int


@dataclass(frozen=True, kw_only=True, eq=False)
class AdviceGround:
    """Everything a rule may look at.

    Parameters
    ----------
    wall_mm
        (V,) walls after grinding, sintered.
    partner
        (V,) vertex opposite, -1 for none.
    assumed_wall
        True where the body has no inner surface, so that walls are a guess.
    coats
        (S, V) as painted, at the upper end of spans.
    lightness
        (V,) predicted L*.
    weights
        Of each area, (V,) weight of each vertex in its mean.
    scene
        The scene that was predicted with.
    limits
        What is held against.
    kept
        Carried from the ground before, on the same surface.
    """

    case: Case
    outcome: Outcome
    wall_mm: Floats
    partner: NDArray[np.int32]
    assumed_wall: bool
    coats: Floats
    lightness: Floats
    weights: Mapping[Area, NDArray[np.float64]]
    scene: OpticalScene
    limits: AdviceLimits
    kept: MeasuredPlaces = field(default_factory=MeasuredPlaces)

    @property
    def mesh(self) -> TriMesh:
        """The refined surface."""
        return self.case.surface.mesh

    @cached_property
    def buccal(self) -> NDArray[np.float64]:
        """(3,) towards the cheek as far as known: across the occlusal axis."""
        axis = np.array(self.case.reading.occlusal_axis)
        mesial = self.case.reading.mesial
        side = np.eye(3)[int(np.argmin(np.abs(axis)))] if mesial is None else np.array(mesial)
        return np.cross(axis, side)

    def name(self, area: Area) -> str:
        """Return the name of an area in the words of this tooth."""
        return area_label(area, front=self.case.units[0].tooth.is_front)

    def place(self, mask: Mask) -> Place | None:
        """Return the place a mask (V,) marks; seen from the buccal where it goes all round."""
        return place_of(self.mesh, mask, self.buccal)

    def area_mask(self, area: Area) -> Mask:
        """Return the vertices (V,) of an area."""
        if isinstance(area, Zone):
            return np.asarray(self.case.zones == int(area))
        share = self.case.accent(area)
        return np.zeros(len(self.case.zones), bool) if share is None else share > 0.5

    def area_place(self, area: Area) -> Place | None:
        """Return where an area is."""
        return self.place(self.area_mask(area))

    @cached_property
    def over_stump(self) -> Mask:
        """(V,) outer surface behind whose wall a stump may show; see `wall_over_stump`."""
        return self.kept.over(self.case)

    @cached_property
    def fissure_mm(self) -> NDArray[np.float64]:
        """(V,) width of the fissure: twice the way to its border, 0 outside of it."""
        zones, kept = self.case.zones, self.kept
        if kept.fissure_mm is None or kept.fissure_of is not zones:
            kept.fissure_mm, kept.fissure_of = _fissure_width(self.mesh, zones), zones
        return kept.fissure_mm

    # --- colour of flat pieces -----------------------------------------------------------

    @cached_property
    def samples(self) -> dict[Area, FlatSample]:
        """Every area as a flat piece."""
        return dict(zip(self.weights, self.flat_samples(*self.weights.values()), strict=True))

    def flat_samples(self, *weights: NDArray[np.float64]) -> list[FlatSample]:
        """Return the flat piece of wall that each weight (V,) stands for."""
        if not weights:
            return []
        share = np.stack([one / one.sum() for one in weights]).astype(np.float32)
        coats = self.coats @ share.T
        partner_coats = self._partner_coats @ share.T
        walls = share @ self.wall_mm
        regions, layers = self.scene.region_index, self.scene.layer_share
        blends = None if layers is None else layers @ share.T
        return [
            FlatSample(
                coats=coats[:, k].astype(np.float64),
                partner_coats=partner_coats[:, k].astype(np.float64),
                wall_mm=float(walls[k]),
                layers=None if blends is None else blends[:, k].astype(np.float64),
                region=0 if regions is None else int(np.argmax(np.bincount(regions, share[k]))),
            )
            for k in range(len(weights))
        ]

    @cached_property
    def _partner_coats(self) -> Floats:
        """(S, V) coats opposite each vertex, 0 where nothing is."""
        opposite: Floats = self.coats[:, np.maximum(self.partner, 0)]
        opposite[:, self.partner < 0] = 0.0
        return opposite

    @cached_property
    def plain_scene(self) -> OpticalScene:
        """The scene on all bands under D65 by the 2 degree observer, for any surface."""
        return self.scene_over(self.case.backings)

    def scene_over(self, backings: tuple[Backing, ...]) -> OpticalScene:
        """Return the same with other backings."""
        case = self.case
        return build_scene(
            case.materials,
            case.plan,
            programme=case.programme,
            backings=backings,
            process=case.process,
        )

    def flat_lab(
        self, pieces: list[FlatSample], scene: OpticalScene | None = None
    ) -> NDArray[np.float64]:
        """Return L*a*b* (n, 3) of flat pieces, without light that spreads sideways.

        Parameters
        ----------
        scene
            Scene for any surface; `plain_scene` if None.
        """
        plain = self.plain_scene if scene is None else scene
        layers = None
        if pieces[0].layers is not None:
            blends = [one.layers for one in pieces if one.layers is not None]
            layers = np.stack(blends, axis=1).astype(np.float32)
        flat = replace(
            plain,
            region_index=np.array([one.region for one in pieces], dtype=np.uint8),
            layer_share=layers,
        )
        load = load_of_coats(flat, np.stack([one.coats for one in pieces], axis=1))
        behind = load_of_coats(flat, np.stack([one.partner_coats for one in pieces], axis=1))
        walls = np.array([one.wall_mm for one in pieces])
        return lab_of_reflectance(flat, reflectance_of_load(flat, load, walls, behind))

    def stump_backings(self) -> dict[Backing, list[int]]:
        """Return the stumps behind the units that stand on one, and which units these are."""
        found: dict[Backing, list[int]] = {}
        for number, unit in enumerate(self.case.units):
            if unit.role is not Role.PONTIC:
                found.setdefault(self.case.backing(Region.STUMP, number), []).append(number)
        return found


def touching(mesh: TriMesh, mask: Mask) -> Mask:
    """Return the vertices (V,) outside of a mask that an edge joins to it."""
    return np.asarray((mesh.adjacency @ mask.astype(np.float64) > 0.0) & ~mask)


def _fissure_width(mesh: TriMesh, zones: NDArray[np.uint8]) -> NDArray[np.float64]:
    inside = zones == int(Zone.FISSURE)
    width = np.zeros(len(zones))
    if not inside.any():
        return width
    border = touching(mesh, inside)
    ways = mesh.adjacency[np.flatnonzero(border)][:, np.flatnonzero(inside)]
    # The border runs half way along the edges that cross it.
    half = 0.5 * float(np.median(ways.data)) if ways.nnz else 0.0
    away = surface_distance(mesh, border, graph=mesh.adjacency, within=inside | border)
    width[inside] = 2.0 * np.maximum(np.nan_to_num(away[inside], posinf=0.0) - half, 0.0)
    return width
