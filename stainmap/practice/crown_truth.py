"""Where the zones and accents of a made crown are, known from the numbers that made it.

Our own convention, not an expert's: it tests that landmarks are found. Later zones win over
earlier ones: body; cervical, the lowest 0.30 of the wall's local height; cusp, the wall above 0.60
of its local height and the whole table inside the crest; interproximal, the wall from 0.30 to 0.80
within 34 degrees of the mesiodistal axis; fissure, about a quarter of a millimetre to either side
of the main grooves, and the pits. Front teeth: incisal above 0.73, no fissure.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from stainmap.model.zone import Accent, Zone
from stainmap.practice.crown_back_tooth import BackToothSolid
from stainmap.practice.crown_front_tooth import FrontToothSolid
from stainmap.practice.crown_outline import smooth_step
from stainmap.practice.crown_ridges import bent_curve, distance_to_curve
from stainmap.surface.mesh import TriMesh, connected_pieces, largest_piece

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]
ZoneArray = NDArray[np.uint8]
AccentMask = tuple[Accent, NDArray[np.float32]]

CERVICAL_SHARE = 0.30
CUSP_SHARE = 0.60
PROXIMAL_SHARE = 0.80
# What the cusp share is to back teeth; the proposal's slider scales both alike.
INCISAL_SHARE = 0.73
_PROXIMAL_DEG = 34.0
_FISSURE_MM = 0.26
_PIT_MM = 0.40
_SMALLEST_PIECE_MM2 = 0.3
_CREST_BINS = 120


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Truth:
    """What is known of a made crown.

    Parameters
    ----------
    zones
        (V,) uint8 zone numbers.
    accents
        Masks (V,), 0 to 1.
    fissure_lines
        (L, 2, 3) the bottoms of the main grooves as segments, mm; empty on front teeth.
    """

    zones: ZoneArray
    accents: tuple[AccentMask, ...]
    fissure_lines: FloatArray


def truth_of(solid: BackToothSolid | FrontToothSolid, mesh: TriMesh, outer: BoolArray) -> Truth:
    """Return zones and accents of a crown meshed from a solid.

    Parameters
    ----------
    solid
        What the mesh was made from, in the same frame.
    mesh
        The crown, V vertices.
    outer
        (V,) True on the outer surface, margin included.
    """
    lines = np.zeros((0, 2, 3))
    if isinstance(solid, BackToothSolid):
        zones, accents = _back_tooth(solid, mesh, outer)
        lines = _fissure_lines(solid, mesh, outer & (zones == Zone.FISSURE))
    else:
        zones, accents = _front_tooth(solid, mesh, outer)
    zones[~outer] = Zone.INNER
    zones = without_crumbs(mesh, zones)
    zones.flags.writeable = False
    masks = []
    for accent, weight in accents:
        mask = np.where(outer, weight, 0.0).astype(np.float32)
        mask.flags.writeable = False
        masks.append((accent, mask))
    lines.flags.writeable = False
    return Truth(zones=zones, accents=tuple(masks), fissure_lines=lines)


def _fissure_lines(solid: BackToothSolid, mesh: TriMesh, fissure: BoolArray) -> FloatArray:
    """Return where two cusps or ridges are equally high within fissures, (L, 2, 3) mm."""
    field, grid = solid.relief.field, solid.relief.grid
    faces = mesh.faces[fissure[mesh.faces].all(axis=1)]
    x, y = mesh.vertices[:, 0], mesh.vertices[:, 1]
    column, row = (
        np.clip(np.rint((at - grid.x[0, 0]) / grid.step_mm).astype(int), 0, len(grid.x) - 1)
        for at in (x, y)
    )
    owner = field.owner[column, row]
    gap = np.maximum(grid.linear_at(field.gap_to_second, x, y), 1e-6)
    corners = np.stack([np.roll(faces, -k, axis=1)[:, :2] for k in range(3)], axis=1)
    crosses = owner[corners[..., 0]] != owner[corners[..., 1]]
    near, far = gap[corners[..., 0]], gap[corners[..., 1]]
    share = (near / (near + far))[..., None]
    places = mesh.vertices[corners[..., 0]] * (1.0 - share) + mesh.vertices[corners[..., 1]] * share
    ends = crosses.sum(axis=1)
    two = places[ends == 2][crosses[ends == 2]].reshape(-1, 2, 3)
    # Where three meet, a segment runs from each side of the face to its middle.
    three = places[ends == 3]
    middle = np.repeat(three.mean(axis=1, keepdims=True), 3, axis=1)
    return np.concatenate([two, np.stack([three, middle], axis=2).reshape(-1, 2, 3)])


def _back_tooth(
    solid: BackToothSolid, mesh: TriMesh, outer: BoolArray
) -> tuple[ZoneArray, list[tuple[Accent, FloatArray]]]:
    points = mesh.vertices
    x, y, z = points.T
    relief = solid.relief
    middle = float(solid.wall.axis_y(np.array(solid.form.turn_height)))
    azimuth = np.arctan2(y - middle, x)
    radius = np.hypot(x, y - middle)
    far_out = radius > 0.5 * solid.wall.outline_radius(azimuth)
    crest_radius, crest_height = _crest(azimuth, radius, z, outer & far_out)
    margin = solid.margin_height(points)
    share = (z - margin) / (crest_height - margin)
    table = (radius < crest_radius) & (share > CUSP_SHARE)
    off_axis = np.degrees(np.arccos(np.clip(np.abs(np.cos(azimuth)), 0.0, 1.0)))

    zones = np.full(len(points), Zone.BODY, dtype=np.uint8)
    zones[share < CERVICAL_SHARE] = Zone.CERVICAL
    zones[(share > CUSP_SHARE) | table] = Zone.CUSP
    side = (share >= CERVICAL_SHARE) & (share < PROXIMAL_SHARE) & (off_axis < _PROXIMAL_DEG)
    zones[side & ~table] = Zone.INTERPROXIMAL
    grooves = (relief.groove_distance(x, y) < _FISSURE_MM) & (relief.groove_strength(x, y) > 0.25)
    grooves &= table
    for px, py in relief.pits:
        grooves |= (np.hypot(x - px, y - py) < _PIT_MM) & (share > CUSP_SHARE)
    zones[grooves] = Zone.FISSURE

    drawn_x, drawn_y = relief.drawn_place(x, y)
    high = smooth_step(share, 0.65, 0.75)
    ridges = np.zeros(len(points))
    for ridge in solid.form.marginal_ridges:
        away, _ = distance_to_curve(drawn_x, drawn_y, bent_curve(*ridge.points))
        ridges = np.maximum(ridges, high * (1.0 - smooth_step(away, 0.55, 0.85)))
    triangular = np.zeros(len(points))
    for cusp in solid.form.cusps:
        curve = bent_curve(cusp.tip, *cusp.triangular)
        away, _ = distance_to_curve(drawn_x, drawn_y, curve)
        beside = 1.0 - smooth_step(away, 0.25, 0.55)
        mine = smooth_step(relief.owned_by(cusp.name, x, y), 0.3, 0.7)
        triangular = np.maximum(triangular, high * beside * mine)
    triangular[zones == Zone.FISSURE] = 0.0
    corners = _line_angles(mesh, np.where(table, np.inf, share))
    return zones, [
        (Accent.MARGIN_BAND, _margin_band(z - margin)),
        (Accent.MARGINAL_RIDGE, ridges),
        (Accent.TRIANGULAR_RIDGE, triangular),
        (Accent.LINE_ANGLE, corners),
    ]


def _front_tooth(
    solid: FrontToothSolid, mesh: TriMesh, outer: BoolArray
) -> tuple[ZoneArray, list[tuple[Accent, FloatArray]]]:
    points = mesh.vertices
    x, z = points[:, 0], points[:, 2]
    margin = solid.margin_height(points)
    share = (z - margin) / (solid.edge_height(x) - margin)
    normals = mesh.vertex_normals
    # The sides are where the surface looks more mesial or distal than within 44 degrees of it.
    facing = np.abs(normals[:, 0]) / np.maximum(np.hypot(normals[:, 0], normals[:, 1]), 1e-9)
    side = (facing > 0.72) & (np.abs(x) > 0.6 * np.abs(x[outer]).max())
    zones = np.full(len(points), Zone.BODY, dtype=np.uint8)
    zones[share < CERVICAL_SHARE] = Zone.CERVICAL
    zones[(share >= CERVICAL_SHARE) & side] = Zone.INTERPROXIMAL
    zones[share > INCISAL_SHARE] = Zone.CUSP

    mesial, distal = solid.palatal_ridges(points)
    palatal = smooth_step(-normals[:, 1], -0.35, 0.1) * smooth_step(share, 0.15, 0.3)
    palatal *= 1.0 - smooth_step(share, 0.78, 0.88)
    ridges = smooth_step(np.maximum(mesial, distal), 0.35, 0.7) * palatal
    corners = _line_angles(mesh, np.where(normals[:, 1] > 0.0, share, np.inf))
    return zones, [
        (Accent.MARGIN_BAND, _margin_band(z - margin)),
        (Accent.MARGINAL_RIDGE, ridges),
        (Accent.LINE_ANGLE, corners),
    ]


def _crest(
    azimuth: FloatArray, radius: FloatArray, z: FloatArray, candidates: BoolArray
) -> tuple[FloatArray, FloatArray]:
    """Return radius and height of the crest in the direction of every vertex.

    The crest is the highest candidate in each direction, evened out a little around the tooth.
    """
    bins = np.floor(np.mod(azimuth, 2 * np.pi) / (2 * np.pi) * _CREST_BINS).astype(int)
    bins = np.minimum(bins, _CREST_BINS - 1)
    chosen = np.flatnonzero(candidates)
    order = chosen[np.lexsort((z[chosen], bins[chosen]))]
    last = np.flatnonzero(np.append(np.diff(bins[order]) > 0, True))
    highest = order[last]
    middles = (np.arange(_CREST_BINS) + 0.5) / _CREST_BINS * 2 * np.pi
    where = np.mod(azimuth, 2 * np.pi)
    result = []
    for values in (radius[highest], z[highest]):
        # Directions without a candidate (coarse meshes) take their neighbours' value.
        every = np.interp(middles, middles[bins[highest]], values, period=2 * np.pi)
        even = ndimage.median_filter(every, 5, mode="wrap")
        even = ndimage.gaussian_filter1d(even, 2.0, mode="wrap")
        result.append(np.interp(where, middles, even, period=2 * np.pi))
    return result[0], result[1]


def _margin_band(rise_mm: FloatArray) -> FloatArray:
    """Return the band of 0.45 mm above the margin, with a soft edge."""
    return 1.0 - smooth_step(rise_mm, 0.35, 0.55)


def _line_angles(mesh: TriMesh, share: FloatArray) -> FloatArray:
    """Return where the wall turns from its facial or lingual face to a proximal one.

    One strip in each corner of the tooth, from above the margin to below the crest.
    """
    normals = mesh.vertex_normals
    turn = np.degrees(np.arctan2(np.abs(normals[:, 1]), np.abs(normals[:, 0])))
    steep = 1.0 - smooth_step(np.abs(normals[:, 2]), 0.75, 0.9)
    on_wall = smooth_step(share, 0.2, 0.3) * (1.0 - smooth_step(share, 0.85, 0.95))
    strips = (1.0 - smooth_step(np.abs(turn - 45.0), 8.0, 16.0)) * steep * on_wall
    x, y, _ = (mesh.vertices - mesh.centre).T
    kept = np.zeros(len(x), dtype=np.bool_)
    for corner in ((x > 0) & (y > 0), (x <= 0) & (y > 0), (x <= 0) & (y <= 0), (x > 0) & (y <= 0)):
        core = largest_piece(mesh, corner & (strips > 0.5))
        fringe = corner & (strips > 0.0) & (strips <= 0.5)
        kept |= largest_piece(mesh, core | fringe)
    return np.where(kept, strips, 0.0)


def without_crumbs(mesh: TriMesh, zones: ZoneArray) -> ZoneArray:
    """Return the zones with pieces too small to be meant given to what surrounds them."""
    zones = zones.copy()
    i, j = mesh.edges.T
    for zone in Zone:
        count, piece = connected_pieces(mesh, zones == zone)
        for number in range(count):
            inside = piece == number
            if mesh.vertex_areas[inside].sum() >= _SMALLEST_PIECE_MM2:
                continue
            around = np.concatenate(
                [zones[j[inside[i] & ~inside[j]]], zones[i[inside[j] & ~inside[i]]]]
            )
            if len(around):
                zones[inside] = np.bincount(around).argmax()
    return zones
