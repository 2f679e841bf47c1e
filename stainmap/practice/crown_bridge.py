"""Three-unit bridges made from numbers and a seed: two retainers and a pontic in between."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.practice.crown_connector import Connector
from stainmap.practice.crown_joining import ACCENTS, JoinedUnits, Part, Standing, joined
from stainmap.practice.crown_meshing import join, meet_surface
from stainmap.practice.crown_pontic import close_below
from stainmap.practice.crown_solids import (
    WALL_EDGE_MM,
    cavity_shell,
    check_choices,
    form_of,
    landmarks_of,
    outer_shell,
    solid_of,
)
from stainmap.practice.crown_truth import AccentMask, truth_of, without_crumbs
from stainmap.practice.crown_walls import minimum_walls
from stainmap.surface.mesh import TriMesh, frozen, unit_rows
from stainmap.surface.section import plane_section
from stainmap.words import translate

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]
Progress = Callable[[float, str], None]

_MIRRORED_QUADRANTS = (2, 4)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """Where a unit stands in the bridge: its turn about z, and its shift but for x."""

    position: int
    role: Role
    turn_deg: float
    y: float
    z: float


# From mesial to distal, the pontic in the middle at x = 0; modelled by eye for this project.
_PLACES = (
    _Place(position=4, role=Role.RETAINER, turn_deg=-5.0, y=-0.25, z=-0.95),
    _Place(position=5, role=Role.PONTIC, turn_deg=0.0, y=0.0, z=-0.8),
    _Place(position=6, role=Role.RETAINER, turn_deg=5.0, y=-0.45, z=0.0),
)
_GAPS_MM = (0.08, 0.10)
_WIDER_MM = (0.0, 0.1, 0.2, 0.3, 0.45)
_LEAST_ANGLE_DEG = 10.0
_CONNECTOR_YZ = (0.5, 3.4)
_CONNECTOR_HALF_AXES = ((1.30, 1.57), (1.325, 1.605))

MAKEABLE_BRIDGES = ((14, 15, 16), (24, 25, 26))
"""Units of the bridges that can be made, mesial first (ISO 3950)."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MadeBridge:
    """A bridge and the truth about it. Sintered size, mm; arrays are per vertex, V long.

    Parameters
    ----------
    units
        The units, mesial first.
    seed, variation
        What it was made from.
    mesh
        Closed surface of V vertices; +z is occlusal, +y buccal.
    outer
        (V,) bool. The outer surface, the pontic's tissue side included; the rest is cavities.
    unit_index
        (V,) uint8. Which unit a vertex belongs to; connectors part half-way.
    zones
        (V,) uint8. Numbers of `stainmap.model.zone.Zone`.
    accents
        Accents with (V,) float32 masks, 0 to 1, on the outer surface.
    occlusal_axis, mesial
        Unit vectors.
    tips, tip_names
        (K, 3) places of the cusp tips of all units, and their names with the tooth's number.
    pits
        (P, 3) places of the pits.
    connectors
        (C, 3) middles of the connectors.
    connector_sections_mm2
        (C,) their smallest sections across x.
    minimum_occlusal_walls_mm, minimum_axial_walls_mm
        Per retainer, as of a crown.
    """

    units: tuple[Unit, ...]
    seed: int
    variation: float
    mesh: TriMesh
    outer: BoolArray
    unit_index: NDArray[np.uint8]
    zones: NDArray[np.uint8]
    accents: tuple[AccentMask, ...]
    occlusal_axis: tuple[float, float, float]
    mesial: tuple[float, float, float]
    tips: FloatArray
    tip_names: tuple[str, ...]
    pits: FloatArray
    connectors: FloatArray
    connector_sections_mm2: tuple[float, ...]
    minimum_occlusal_walls_mm: tuple[float, ...]
    minimum_axial_walls_mm: tuple[float, ...]


def make_bridge(
    teeth: tuple[int, ...] = (14, 15, 16),
    *,
    seed: int = 0,
    variation: float = 0.0,
    resolution: float = 1.0,
    progress: Progress | None = None,
) -> MadeBridge:
    """Return a bridge of two retainers and a pontic; the same arguments give the same bridge.

    Parameters
    ----------
    teeth
        One of `MAKEABLE_BRIDGES`.
    seed, variation, resolution, progress
        As for `stainmap.practice.crown_maker.make_crown`.

    Raises
    ------
    PlanError
        If this bridge cannot be made.
    ValueError
        If seed, variation or resolution is out of range.
    """
    if tuple(teeth) not in MAKEABLE_BRIDGES:
        known = ", ".join("-".join(map(str, bridge)) for bridge in MAKEABLE_BRIDGES)
        raise PlanError(
            translate("crown bridge", "The bridge {map} cannot be made.").format(
                map="-".join(map(str, teeth))
            ),
            advice=translate("crown bridge", "Choose one of {known}.").format(known=known),
        )
    check_choices(seed, variation, resolution)
    report = progress or (lambda _share, _phrase: None)
    report(0.0, translate("crown bridge", "carving the surfaces"))
    units = tuple(
        Unit(tooth=Tooth(number=number), role=place.role)
        for number, place in zip(teeth, _PLACES, strict=True)
    )
    stands = _stands(units, seed, variation, resolution)
    whole = []
    for number, (unit, stand) in enumerate(zip(units, stands, strict=True)):
        report(
            0.2 + 0.2 * number,
            translate("crown bridge", "meshing {number}").format(number=unit.tooth.number),
        )
        whole.append(_made_unit(unit, stand, resolution))
    report(0.8, translate("crown bridge", "joining the units"))
    made, connectors, surface = _joined_where_it_can_be(whole, stands, resolution)
    vertices, faces, tips, pits, middles = (
        surface.vertices,
        surface.faces,
        np.concatenate([unit.tips for unit in made]),
        np.concatenate([unit.pits for unit in made]),
        np.array([connector.centre for connector in connectors]),
    )
    mirrored = units[0].tooth.quadrant in _MIRRORED_QUADRANTS
    if mirrored:
        flip = np.array([-1.0, 1.0, 1.0])
        vertices, faces = vertices * flip, faces[:, ::-1]
        tips, pits, middles = tips * flip, pits * flip, middles * flip
    mesh = TriMesh(vertices, faces)
    report(0.9, translate("crown bridge", "noting zones and sections"))
    zones = without_crumbs(mesh, surface.zones)
    walls = [unit.walls for unit in made if unit.walls is not None]
    report(1.0, "done")
    return MadeBridge(
        units=units,
        seed=seed,
        variation=variation,
        mesh=mesh,
        outer=frozen(surface.outer),
        unit_index=frozen(surface.unit_index),
        zones=frozen(zones),
        accents=tuple(
            (accent, frozen(np.ascontiguousarray(surface.masks[:, k])))
            for k, accent in enumerate(ACCENTS)
            if surface.masks[:, k].any()
        ),
        occlusal_axis=(0.0, 0.0, 1.0),
        mesial=(-1.0, 0.0, 0.0) if mirrored else (1.0, 0.0, 0.0),
        tips=tips,
        tip_names=tuple(name for unit in made for name in unit.tip_names),
        pits=pits,
        connectors=middles,
        connector_sections_mm2=tuple(_smallest_section(mesh, middle) for middle in middles),
        minimum_occlusal_walls_mm=tuple(roof for roof, _ in walls),
        minimum_axial_walls_mm=tuple(axial for _, axial in walls),
    )


def _stands(
    units: tuple[Unit, ...], seed: int, variation: float, resolution: float
) -> list[Standing]:
    """Return the solids turned as they stand in the row, all still at x = 0."""
    stands = []
    for unit, place in zip(units, _PLACES, strict=True):
        generator = np.random.default_rng([seed, unit.tooth.position])
        turn = np.radians(place.turn_deg)
        c, s = np.cos(turn), np.sin(turn)
        stands.append(
            Standing(
                solid=solid_of(form_of(unit.tooth), generator, variation, resolution),
                turn=np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]]),
                shift=np.array([0.0, place.y, place.z]),
            )
        )
    return stands


def _joined_where_it_can_be(
    whole: list[_MadeUnit], stands: list[Standing], resolution: float
) -> tuple[list[_MadeUnit], list[Connector], JoinedUnits]:
    """Return the units in their places, the connectors, and all of it as one surface.

    Where two walls run side by side so closely that the crevice between them cannot be meshed
    well, the units stand a little further apart.
    """
    for wider in _WIDER_MM:
        moves, connectors = _in_a_row(stands, wider)
        made = [unit.moved(x) for unit, x in zip(whole, moves, strict=True)]
        placed = [stand.moved(x) for stand, x in zip(stands, moves, strict=True)]
        parts = [unit.part for unit in made]
        try:
            surface = joined(parts, placed, connectors, WALL_EDGE_MM / resolution)
        except ValueError:
            continue
        if _smallest_angle_deg(surface) > _LEAST_ANGLE_DEG:
            return made, connectors, surface
    raise PlanError(
        translate("crown bridge", "These units cannot be joined."),
        advice=translate("crown bridge", "Choose another seed."),
    )


def _smallest_angle_deg(surface: JoinedUnits) -> float:
    """Return the smallest angle of all triangles."""
    corners = surface.vertices[surface.faces]
    smallest = np.pi
    for k in range(3):
        one = unit_rows(corners[:, (k + 1) % 3] - corners[:, k])
        other = unit_rows(corners[:, (k + 2) % 3] - corners[:, k])
        cosine = np.einsum("ij,ij->i", one, other)
        smallest = min(smallest, float(np.arccos(np.clip(cosine.max(), -1.0, 1.0))))
    return float(np.degrees(smallest))


def _in_a_row(
    stands: list[Standing], wider_mm: float
) -> tuple[tuple[float, float, float], list[Connector]]:
    """Return how far each unit moves along x, the middle one not at all, and the connectors."""
    to_mesial = [_walls_x(stand, 1.0) for stand in stands]
    to_distal = [_walls_x(stand, -1.0) for stand in stands]
    # The others come up to the middle unit until the walls are a gap apart somewhere.
    moves = (
        float((to_mesial[1] - to_distal[0]).max()) + _GAPS_MM[0] + wider_mm,
        0.0,
        float((to_distal[1] - to_mesial[2]).min()) - _GAPS_MM[1] - wider_mm,
    )
    connectors = []
    for k in range(len(stands) - 1):
        on_line = to_mesial[0].size // 2
        walls = to_distal[k][on_line] + moves[k], to_mesial[k + 1][on_line] + moves[k + 1]
        centre = (float(sum(walls)) / 2, *_CONNECTOR_YZ)
        connectors.append(Connector(centre=centre, half_axes=_CONNECTOR_HALF_AXES[k]))
    return moves, connectors


def _walls_x(stand: Standing, direction: float) -> FloatArray:
    """Return x of a unit's wall at a grid of places around the line of the connectors.

    To mesial (1) or distal (-1); the place in the middle of the grid is on the line.
    """
    across, up = np.meshgrid(np.linspace(-2.4, 2.4, 17), np.linspace(-1.95, 1.95, 13))
    origin = np.stack(
        [
            np.zeros(across.size),
            _CONNECTOR_YZ[0] + across.ravel(),
            _CONNECTOR_YZ[1] + up.ravel(),
        ],
        axis=1,
    )
    ahead = np.tile([direction, 0.0, 0.0], (across.size, 1))
    return meet_surface(stand.outer, origin, ahead, 8.0)[:, 0]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _MadeUnit:
    """A unit before it is joined: its part, its landmarks in place, its walls if it is hollow."""

    part: Part
    tip_names: tuple[str, ...]
    tips: FloatArray
    pits: FloatArray
    walls: tuple[float, float] | None

    def moved(self, x: float) -> _MadeUnit:
        """Return it moved along x."""
        by = np.array([x, 0.0, 0.0])
        return replace(
            self,
            part=replace(self.part, vertices=self.part.vertices + by),
            tips=self.tips + by,
            pits=self.pits + by,
        )


def _made_unit(unit: Unit, stand: Standing, resolution: float) -> _MadeUnit:
    """Return the mesh of one unit with its zones, in its place, still whole."""
    outside = outer_shell(stand.solid, resolution)
    count = len(outside.vertices)
    pontic = unit.role is Role.PONTIC
    if pontic:
        vertices, faces = close_below(outside, WALL_EDGE_MM / resolution)
    else:
        vertices, faces = join(
            outside, cavity_shell(stand.solid, resolution, outside.border_azimuth)
        )
    mesh = TriMesh(vertices, faces)
    wall_side = np.arange(len(vertices)) < count
    truth = truth_of(stand.solid, mesh, wall_side)
    masks = np.zeros((len(vertices), len(ACCENTS)), dtype=np.float32)
    for accent, mask in truth.accents:
        masks[:, ACCENTS.index(accent)] = mask
    zones = truth.zones.copy()
    walls = None
    if pontic:
        zones[~wall_side] = Zone.CERVICAL
        masks[:, ACCENTS.index(Accent.MARGIN_BAND)] = 0.0
        masks[~wall_side, ACCENTS.index(Accent.PONTIC_TISSUE)] = 1.0
        masks[: outside.border_count, ACCENTS.index(Accent.PONTIC_TISSUE)] = 0.5
    else:
        rise = vertices[:, 2] - stand.solid.margin_height(vertices)
        walls = minimum_walls(mesh, wall_side, rise)
    names, tips, pits = landmarks_of(stand.solid, mesh, wall_side)
    return _MadeUnit(
        part=Part(
            vertices=stand.placed(vertices),
            faces=faces,
            outer=wall_side | pontic,
            zones=zones,
            masks=masks,
        ),
        tip_names=tuple(f"{unit.tooth.number} {name}" for name in names),
        tips=stand.placed(tips),
        pits=stand.placed(pits),
        walls=walls,
    )


def _smallest_section(mesh: TriMesh, middle: FloatArray) -> float:
    """Return the smallest section across x near a connector's middle, mm2."""
    along = np.array([1.0, 0.0, 0.0])
    areas = [
        abs(outline.area_mm2)
        for x in np.linspace(middle[0] - 1.0, middle[0] + 1.0, 21)
        for outline in plane_section(mesh, along, float(x))
        if np.linalg.norm(outline.centre - middle) < 1.5
    ]
    return float(min(areas))
