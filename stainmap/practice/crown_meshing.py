"""Triangles on a surface that rays from inside meet once: rings from the margin to the top.

The surface is the zero of a field that is negative inside. Rays start near the crown's middle:
horizontal along the wall, turning upwards above a given height, vertical over the top. Points at
equal steps along these meridians form rings; neighbouring rings are zipped into triangles.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage, sparse

FloatArray = NDArray[np.float64]
IndexArray = NDArray[np.int32]
Field = Callable[[FloatArray], FloatArray]

_TURN = 2.0 * np.pi
# Shares of a meridian: wall up to the first, turning up to the second, the top beyond.
_WALL_END = 0.33
_TURN_END = 0.62
_MARCH_STEPS = 26
_REFINEMENTS = 9
# Samples to measure arc lengths on: this many along a meridian and around, for edges of 1 mm; and
# their smallest and largest numbers.
_SAMPLES_PER_MM = (14.3, 31.2)
_FEWEST_SAMPLES, _MOST_SAMPLES = (50, 110), (110, 240)
_EVENING_DEG = 3.0
_RELAXATIONS = 4
# Rows a little closer than points within a row give nearly equilateral triangles (sin 60 deg).
_ROW_SPACING = 0.88


@dataclass(frozen=True, slots=True, kw_only=True)
class RayFan:
    """Where the rays start.

    Parameters
    ----------
    margin_height
        Height of the lower border over the azimuth.
    turn_height
        Height at which the rays begin to turn upwards.
    axis_y
        y of the middle over the height.
    core
        Half axes (x, y) of the ellipse on which the rays start.
    grows
        Whether that ellipse grows from nothing at the margin to its full size at `turn_height`.
    reach_mm
        Length within which every ray meets the surface.
    """

    margin_height: Callable[[FloatArray], FloatArray]
    turn_height: float
    axis_y: Callable[[FloatArray], FloatArray]
    core: tuple[float, float]
    grows: bool = False
    reach_mm: float = 9.0

    def rays(self, share: FloatArray, azimuth: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Return origins and unit directions (N, 3) at shares 0 to 1 of the meridians."""
        c, s = np.cos(azimuth), np.sin(azimuth)
        climb = np.clip(share / _WALL_END, 0.0, 1.0)
        low = self.margin_height(azimuth)
        z = low + (self.turn_height - low) * climb
        tilt = np.clip((share - _WALL_END) / (_TURN_END - _WALL_END), 0.0, 1.0) * np.pi / 2
        core = np.clip((1.0 - share) / (1.0 - _TURN_END), 0.0, 1.0)
        if self.grows:
            core = core * climb
        a, b = self.core
        origins = np.stack([a * core * c, self.axis_y(z) + b * core * s, z], axis=1)
        directions = np.stack([np.cos(tilt) * c, np.cos(tilt) * s, np.sin(tilt)], axis=1)
        return origins, directions


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Shell:
    """One side of the crown: an open surface whose first `border_count` vertices are its border.

    `border_azimuth` are the azimuths of these. Faces look away from the rays' origins.
    """

    vertices: FloatArray
    faces: IndexArray
    border_azimuth: FloatArray

    @property
    def border_count(self) -> int:
        """Number of vertices on the border."""
        return len(self.border_azimuth)


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeLengths:
    """Wanted edge lengths, mm, on the wall and on the top; blended where the rays turn."""

    wall_mm: float
    top_mm: float

    def at(self, share: FloatArray) -> FloatArray:
        """Return the wanted length at shares of a meridian."""
        blend = np.clip((share - 0.5 * _WALL_END) / (_TURN_END - 0.5 * _WALL_END), 0.0, 1.0)
        return np.asarray(self.wall_mm + (self.top_mm - self.wall_mm) * blend)


def sweep(
    field: Field,
    fan: RayFan,
    lengths: EdgeLengths,
    *,
    border_azimuth: FloatArray | None = None,
) -> Shell:
    """Return the triangulated zero of a field.

    Parameters
    ----------
    field
        (N, 3) points to (N,) values, negative inside.
    fan
        Where the rays start; each must meet the surface once.
    lengths
        Wanted edge lengths.
    border_azimuth
        Azimuths of the border's vertices; chosen by length if None.
    """
    rows = _place_rows(field, fan, lengths, border_azimuth)
    share = np.concatenate([row[0] for row in rows])
    azimuth = np.concatenate([row[1] for row in rows])
    start = np.concatenate([[0], np.cumsum([len(row[0]) for row in rows])])
    vertices = meet_surface(field, *fan.rays(share, azimuth), fan.reach_mm)
    faces = np.concatenate(
        [zipped(start[k], rows[k][1], start[k + 1], rows[k + 1][1]) for k in range(len(rows) - 1)]
    ).astype(np.int32)
    fixed = np.arange(len(vertices)) < start[1]
    vertices = relaxed(field, vertices, faces, fixed)
    return Shell(vertices=vertices, faces=faces, border_azimuth=rows[0][1])


def join(outer: Shell, inner: Shell) -> tuple[FloatArray, IndexArray]:
    """Return vertices and faces of two shells joined along their borders.

    The shells must have the same border azimuths. The outer vertices come first; the inner faces
    are turned so that all look out of the material between the shells.
    """
    offset = len(outer.vertices)
    a = np.arange(outer.border_count)
    b = a + offset
    next_a, next_b = np.roll(a, -1), np.roll(b, -1)
    rim = np.concatenate([np.stack([a, b, next_a], axis=1), np.stack([next_a, b, next_b], axis=1)])
    faces = np.concatenate([outer.faces, inner.faces[:, ::-1] + offset, rim])
    return np.concatenate([outer.vertices, inner.vertices]), faces.astype(np.int32)


def _place_rows(
    field: Field, fan: RayFan, lengths: EdgeLengths, border_azimuth: FloatArray | None
) -> list[tuple[FloatArray, FloatArray]]:
    """Return per ring the shares of the meridians and the azimuths of its points."""
    ns, nt = (
        min(max(round(number / lengths.wall_mm), fewest), most)
        for number, fewest, most in zip(
            _SAMPLES_PER_MM, _FEWEST_SAMPLES, _MOST_SAMPLES, strict=True
        )
    )
    shares = np.linspace(0.0, 1.0, ns)
    azimuths = np.linspace(0.0, _TURN, nt, endpoint=False)
    grid_share, grid_azimuth = np.meshgrid(shares, azimuths, indexing="ij")
    rays = fan.rays(grid_share.ravel(), grid_azimuth.ravel())
    points = meet_surface(field, *rays, fan.reach_mm).reshape(ns, nt, 3)
    step = np.linalg.norm(np.diff(points, axis=0), axis=2)
    middle = (shares[1:] + shares[:-1]) / 2
    step = step / (_ROW_SPACING * lengths.at(middle))[:, None]
    step = ndimage.gaussian_filter1d(step, _EVENING_DEG / 360.0 * nt, axis=1, mode="wrap")
    travelled = np.vstack([np.zeros(nt), np.cumsum(step, axis=0)])
    count = max(4, round(float(travelled[-1].mean())))
    row_share = np.empty((count, nt))
    for j in range(nt):
        row_share[:, j] = np.interp(
            np.arange(count) / count * travelled[-1, j], travelled[:, j], shares
        )
    closed = np.append(azimuths, _TURN)
    rows = []
    for i in range(count):
        ring = _between(points, row_share[i])
        edge = np.linalg.norm(np.roll(ring, -1, axis=0) - ring, axis=1)
        around = np.concatenate([[0.0], np.cumsum(edge)])
        if i == 0 and border_azimuth is not None:
            azimuth = border_azimuth
        else:
            wanted = float(lengths.at(row_share[i]).mean())
            number = max(6, round(float(around[-1]) / wanted))
            place = (np.arange(number) + 0.5 * (i % 2)) / number * around[-1]
            azimuth = np.interp(place, around, closed)
        share = np.interp(azimuth, closed, np.append(row_share[i], row_share[i, 0]))
        rows.append((share, azimuth))
    rows.append((np.array([1.0]), np.array([0.0])))
    return rows


def _between(points: FloatArray, share: FloatArray) -> FloatArray:
    """Return sample points (ns, nt, 3) interpolated along each meridian at its share."""
    ns, nt, _ = points.shape
    place = share * (ns - 1)
    low = np.clip(place.astype(int), 0, ns - 2)
    weight = (place - low)[:, None]
    column = np.arange(nt)
    return np.asarray(points[low, column] * (1 - weight) + points[low + 1, column] * weight)


def meet_surface(
    field: Field, origins: FloatArray, directions: FloatArray, reach_mm: float
) -> FloatArray:
    """Return where rays first leave the field's inside: marching, then false position.

    Raises
    ------
    ValueError
        If a ray stays inside for the whole reach.
    """
    count = len(origins)
    near = np.zeros(count)
    far = np.full(count, reach_mm)
    open_ = np.arange(count)
    for step in range(1, _MARCH_STEPS + 1):
        length = reach_mm * step / _MARCH_STEPS
        outside = field(origins[open_] + directions[open_] * length) > 0.0
        far[open_[outside]] = length
        open_ = open_[~outside]
        near[open_] = length
        if not len(open_):
            break
    if len(open_):
        raise ValueError(f"{len(open_)} rays do not meet the surface within {reach_mm} mm")
    at_near = field(origins + directions * near[:, None])
    at_far = field(origins + directions * far[:, None])
    for step in range(_REFINEMENTS):
        # Every third step halves, so that a flat end cannot hold the search up.
        slope = at_near / np.minimum(at_near - at_far, -1e-12)
        part = np.full(count, 0.5) if step % 3 == 2 else np.clip(slope, 0.02, 0.98)
        middle = near + (far - near) * part
        value = field(origins + directions * middle[:, None])
        out = value > 0.0
        far, at_far = np.where(out, middle, far), np.where(out, value, at_far)
        near, at_near = np.where(out, near, middle), np.where(out, at_near, value)
    return np.asarray(origins + directions * ((near + far) / 2)[:, None])


def zipped(start_a: int, a: FloatArray, start_b: int, b: FloatArray) -> NDArray[np.intp]:
    """Return the triangles between two rings of ascending azimuths, lower ring first.

    Walking round, the ring whose next point comes first advances; each advance is a triangle.
    """
    if len(b) == 1:
        index = np.arange(len(a))
        return np.stack(
            [start_a + index, start_a + np.roll(index, -1), np.full(len(a), start_b)], axis=1
        )
    advance_a = np.append(a[1:], a[0] + _TURN)
    advance_b = np.append(b[1:], b[0] + _TURN)
    order = np.argsort(np.concatenate([advance_a, advance_b]), kind="stable")
    is_a = order < len(a)
    i: NDArray[np.intp] = np.cumsum(is_a) - is_a
    j: NDArray[np.intp] = np.cumsum(~is_a) - ~is_a
    here_a, here_b = start_a + i % len(a), start_b + j % len(b)
    next_a, next_b = start_a + (i + 1) % len(a), start_b + (j + 1) % len(b)
    return np.stack([here_a, np.where(is_a, next_a, next_b), here_b], axis=1)


def mean_of_neighbours(faces: IndexArray, count: int) -> sparse.csr_array[np.float64]:
    """Return the (V, V) matrix that takes values at V vertices to their neighbours' mean."""
    i: IndexArray = faces.ravel()
    j: IndexArray = np.roll(faces, -1, axis=1).ravel()
    pairs = sparse.coo_array(
        (np.ones(2 * len(i)), (np.concatenate([i, j]), np.concatenate([j, i]))),
        shape=(count, count),
    ).tocsr()
    degree = np.diff(pairs.indptr)
    pairs.data[:] = 1.0 / np.repeat(np.maximum(degree, 1), degree)
    return pairs


def relaxed(
    field: Field,
    vertices: FloatArray,
    faces: IndexArray,
    fixed: NDArray[np.bool_],
    *,
    rounds: int = _RELAXATIONS,
) -> FloatArray:
    """Return vertices (V, 3) after sliding along the field's zero towards their neighbours' mean.

    `fixed` (V,) says which stay where they are.
    """
    neighbours = mean_of_neighbours(faces, len(vertices))
    for _ in range(rounds):
        gradient = _gradient(field, vertices)
        steepness = np.linalg.norm(gradient, axis=1)
        normal = gradient / np.maximum(steepness, 1e-9)[:, None]
        shift = neighbours @ vertices - vertices
        shift -= normal * np.einsum("ij,ij->i", shift, normal)[:, None]
        shift[fixed] = 0.0
        vertices = vertices + 0.5 * shift
        back = np.clip(field(vertices) / np.maximum(steepness, 0.3), -0.05, 0.05)
        back[fixed] = 0.0
        vertices = vertices - normal * back[:, None]
    return vertices


def _gradient(field: Field, points: FloatArray) -> FloatArray:
    """Return the forward differences of a field, (N, 3)."""
    step_mm = 1e-3
    here = field(points)
    return np.stack(
        [(field(points + step) - here) / step_mm for step in step_mm * np.eye(3)], axis=1
    )
