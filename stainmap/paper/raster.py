"""A z-buffer in numpy: which triangle each sample of a picture shows, and where on it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike, NDArray

if TYPE_CHECKING:
    from scipy import sparse

FloatArray = NDArray[np.float64]
IndexArray = NDArray[np.int32]

_FACES_AT_ONCE = 8192  # keeps the temporary arrays in the processor's cache
_NEAR_SHARE = 0.05  # nothing nearer to a perspective camera than this share of its distance


@dataclass(frozen=True, slots=True, kw_only=True)
class Camera:
    """Where a picture is taken from.

    Parameters
    ----------
    eye
        Direction from the subject to the viewer; any length but zero.
    up
        Direction that points up in the picture; must not be parallel to `eye`.
    centre
        The point, mm, that lands in the middle of the picture.
    height_mm
        Height of what the picture shows, in the plane through `centre`.
    distance_mm
        Distance of the viewer from `centre`, or None for parallel rays (for measuring).
    """

    eye: tuple[float, float, float]
    up: tuple[float, float, float]
    centre: tuple[float, float, float]
    height_mm: float
    distance_mm: float | None = None

    def __post_init__(self) -> None:
        """Refuse a camera without a direction, a height or a distance."""
        if np.linalg.norm(np.cross(self.up, self.eye)) <= 1e-9 * np.linalg.norm(self.eye):
            raise ValueError("eye and up must be two different directions")
        if not self.height_mm > 0.0:
            raise ValueError(f"height_mm must be above zero, not {self.height_mm}")
        if self.distance_mm is not None and not self.distance_mm > 0.0:
            raise ValueError(f"distance_mm must be above zero, not {self.distance_mm}")

    @property
    def axes(self) -> FloatArray:
        """(3, 3) rows right, up and towards the viewer, unit vectors."""
        return _camera_axes(tuple(self.eye), tuple(self.up))

    def project(self, points: ArrayLike, width: int, height: int) -> FloatArray:
        """Return (N, 3): x and y in pixels from the upper left corner, and nearness.

        Nearness is linear in the picture along a straight line in space: millimetres towards
        the viewer for parallel rays, and ``distance² / (distance - z) - distance`` with a
        perspective, which is millimetres near the centre. Larger is nearer.

        Raises
        ------
        ValueError
            If a point lies beside or behind a perspective viewer.
        """
        local = (np.atleast_2d(np.asarray(points, dtype=np.float64)) - self.centre) @ self.axes.T
        pixel_mm = self.height_mm / height
        out = np.empty_like(local)
        if self.distance_mm is None:
            shrink: FloatArray | float = 1.0
            out[:, 2] = local[:, 2]
        else:
            gap = self.distance_mm - local[:, 2]
            if len(gap) and gap.min() <= _NEAR_SHARE * self.distance_mm:
                raise ValueError("a point lies beside or behind the camera")
            shrink = self.distance_mm / gap
            out[:, 2] = self.distance_mm * shrink - self.distance_mm
        out[:, 0] = 0.5 * width + local[:, 0] * shrink / pixel_mm
        out[:, 1] = 0.5 * height - local[:, 1] * shrink / pixel_mm
        return out


@lru_cache(maxsize=64)
def _camera_axes(eye: tuple[float, float, float], up: tuple[float, float, float]) -> FloatArray:
    """Return the axes of a camera; every line of a map asks for those of its view."""
    towards = np.asarray(eye, dtype=np.float64)
    towards = towards / np.linalg.norm(towards)
    right = np.cross(np.asarray(up, dtype=np.float64), towards)
    right = right / np.linalg.norm(right)
    axes: FloatArray = np.stack([right, np.cross(towards, right), towards])
    axes.flags.writeable = False
    return axes


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FrameBuffer:
    """What each sample of a picture shows.

    Parameters
    ----------
    camera
        Where the picture is taken from.
    width, height, samples
        Size in pixels, and samples per pixel along each side.
    face
        (height x samples, width x samples) int32. Index of the face shown; -1 for none.
    hits
        (n,) positions, in the flattened `face`, of the samples that show a face.
    corners
        (n, 3) int32. The three vertices of the face shown.
    barycentric
        (n, 3) float32. Where on the face, corrected for perspective; rows sum to 1.
    front
        (n,) whether the face is seen from its front.
    nearness
        (height x samples, width x samples) float32, as `Camera.project`; -inf where no face is.
    weights
        (n, V) sparse matrix that holds `barycentric` at `corners`.
    """

    camera: Camera
    width: int
    height: int
    samples: int
    face: IndexArray
    hits: NDArray[np.intp]
    corners: IndexArray
    barycentric: NDArray[np.float32]
    front: NDArray[np.bool_]
    nearness: NDArray[np.float32]
    weights: sparse.csr_array[np.float32]

    @property
    def pixel_mm(self) -> float:
        """Millimetres per pixel in the plane through the camera's centre."""
        return self.camera.height_mm / self.height

    def take(self, per_vertex: ArrayLike) -> NDArray[np.float32]:
        """Return the values of vertices, (V,) or (V, k), at the samples hit, (n,) or (n, k)."""
        values = np.asarray(per_vertex, dtype=np.float32)
        return np.asarray(self.weights @ values)

    def take_faces(self, per_face: NDArray[np.float32]) -> NDArray[np.float32]:
        """Return the values of faces, (F,) or (F, k), at the samples hit."""
        return np.asarray(per_face[self.face.ravel()[self.hits]])

    def spread(self, at_hits: NDArray[np.float32], empty: float = 0.0) -> NDArray[np.float32]:
        """Return values at the samples hit, (n,), as an image of samples."""
        image = np.full(self.face.size, empty, dtype=np.float32)
        image[self.hits] = at_hits
        return image.reshape(self.face.shape)

    def average(self, at_hits: NDArray[np.float32], background: ArrayLike) -> NDArray[np.float32]:
        """Return the (height, width, k) mean over each pixel's samples of (n, k) values."""
        channels = at_hits.shape[1]
        image = np.empty((self.face.size, channels), dtype=np.float32)
        image[:] = np.asarray(background, dtype=np.float32)
        image[self.hits] = at_hits
        side = self.samples
        grid = image.reshape(self.height, side, self.width, side, channels)
        total = grid[:, 0, :, 0].copy()
        for row in range(side):
            for column in range(side):
                if row or column:
                    total += grid[:, row, :, column]
        return total * np.float32(1.0 / side**2)

    @property
    def coverage(self) -> NDArray[np.float32]:
        """(height, width) share of each pixel's samples that show a face."""
        ones = np.ones((len(self.hits), 1), dtype=np.float32)
        return self.average(ones, 0.0)[:, :, 0]


def rasterise(
    vertices: ArrayLike,
    faces: IndexArray,
    camera: Camera,
    width: int,
    height: int,
    *,
    samples: int = 2,
    both_sides: bool = False,
) -> FrameBuffer:
    """Find the nearest face at every sample of a picture.

    Neighbouring faces leave no gap and share no sample: a face owns the samples on its left and
    upper edges, and a shared edge is computed alike from both sides.

    Parameters
    ----------
    vertices, faces
        (V, 3) mm and (F, 3), counter-clockwise seen from outside.
    camera
        Where the picture is taken from.
    width, height, samples
        Size in pixels; samples per pixel along each side.
    both_sides
        Whether faces seen from behind are drawn too; a closed surface needs only the front ones.
    """
    from scipy import sparse  # noqa: PLC0415

    if width < 1 or height < 1 or samples < 1:
        raise ValueError("width, height and samples must be at least 1")
    columns, rows = width * samples, height * samples
    points = camera.project(vertices, columns, rows)
    triangles = np.asarray(faces, dtype=np.int32)
    drawn = _drawn_faces(points, triangles, both_sides)
    face, nearness = _nearest_faces(points, triangles, drawn, columns, rows)
    hits = np.flatnonzero(face.ravel() >= 0)
    corners = triangles[face.ravel()[hits]]
    barycentric, front = _barycentric(points, corners, hits, columns, camera)
    starts = np.arange(0, 3 * len(hits) + 1, 3, dtype=np.int32)
    return FrameBuffer(
        camera=camera,
        width=width,
        height=height,
        samples=samples,
        face=face,
        hits=hits,
        corners=corners,
        barycentric=barycentric,
        front=front,
        nearness=nearness,
        weights=sparse.csr_array(
            (barycentric.ravel(), corners.ravel(), starts), shape=(len(hits), len(points))
        ),
    )


def nearest_depths(
    points: FloatArray, faces: IndexArray, columns: int, rows: int, *, both_sides: bool
) -> NDArray[np.float32]:
    """Return (rows, columns) nearness of the nearest face, -inf where there is none.

    `points` are as `Camera.project` returns them.
    """
    drawn = _drawn_faces(points, faces, both_sides)
    return _nearest_faces(points, faces, drawn, columns, rows)[1]


def _drawn_faces(points: FloatArray, faces: IndexArray, both_sides: bool) -> NDArray[np.intp]:
    """Return the faces that have an area in the picture and are to be drawn."""
    x, y = points[:, 0], points[:, 1]
    a, b, c = faces.T
    # y runs downwards in a picture, so counter-clockwise from the front is negative here.
    twice_area = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])
    keep = twice_area < -1e-12
    if both_sides:
        keep |= twice_area > 1e-12
    return np.flatnonzero(keep)


def _nearest_faces(
    points: FloatArray, faces: IndexArray, drawn: NDArray[np.intp], columns: int, rows: int
) -> tuple[IndexArray, NDArray[np.float32]]:
    """Return which face is nearest at each sample, and how near."""
    best = np.full(columns * rows, -1, dtype=np.int64)
    low = float(points[:, 2].min()) if len(points) else 0.0
    span = max(float(points[:, 2].max()) - low, 1e-9) if len(points) else 1.0
    to_steps = (2.0**31 - 2.0) / span
    for begin in range(0, len(drawn), _FACES_AT_ONCE):
        chosen = drawn[begin : begin + _FACES_AT_ONCE]
        sample, near, face = _fragments(points, faces[chosen], columns, rows)
        steps = np.clip((near - low) * to_steps, 0.0, 2.0**31 - 2.0).astype(np.int64)
        # Nearness above, face below in one number: its maximum is the nearest face.
        np.maximum.at(best, sample, (steps << 32) | chosen[face])
    face_of = np.where(best < 0, -1, best & 0xFFFFFFFF).astype(np.int32)
    nearness = np.where(best < 0, -np.inf, low + (best >> 32) / to_steps).astype(np.float32)
    return face_of.reshape(rows, columns), nearness.reshape(rows, columns)


def _fragments(
    points: FloatArray, triangles: IndexArray, columns: int, rows: int
) -> tuple[NDArray[np.intp], FloatArray, NDArray[np.intp]]:
    """Return sample, nearness and triangle of every sample that a triangle covers."""
    by_y = np.take_along_axis(triangles, np.argsort(points[triangles, 1], axis=1), axis=1)
    top, middle, bottom = points[by_y[:, 0]], points[by_y[:, 1]], points[by_y[:, 2]]
    first = np.clip(np.ceil(top[:, 1] - 0.5), 0, rows).astype(np.intp)
    last = np.clip(np.ceil(bottom[:, 1] - 0.5), 0, rows).astype(np.intp)
    triangle, step = _repeat(last - first)
    row = first[triangle] + step
    y = row.astype(np.float64) + 0.5
    one = _crossing(top, bottom, triangle, y)
    high, low = _crossing(top, middle, triangle, y), _crossing(middle, bottom, triangle, y)
    upper = y < middle[triangle, 1]
    other = np.where(upper, high[0], low[0]), np.where(upper, high[1], low[1])
    swapped = one[0] > other[0]
    left_x, right_x = np.where(swapped, other[0], one[0]), np.where(swapped, one[0], other[0])
    left_z, right_z = np.where(swapped, other[1], one[1]), np.where(swapped, one[1], other[1])
    begin = np.clip(np.ceil(left_x - 0.5), 0, columns).astype(np.intp)
    stop = np.clip(np.ceil(right_x - 0.5), 0, columns).astype(np.intp)
    slope = (right_z - left_z) / np.maximum(right_x - left_x, 1e-12)
    run, step = _repeat(np.maximum(stop - begin, 0))
    near = (left_z + slope * (begin + 0.5 - left_x))[run] + slope[run] * step
    return (row * columns + begin)[run] + step, near, triangle[run]


def _crossing(
    upper: FloatArray, lower: FloatArray, edge: NDArray[np.intp], y: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Return x and nearness where edges, or the lines through them, cross rows."""
    # A level edge is never asked for; its slope only has to be a number.
    rise = lower[:, 1] - upper[:, 1]
    rise = np.where(rise > 0.0, rise, 1.0)
    x, z = (lower[:, k] - upper[:, k] for k in (0, 2))
    along = y - upper[edge, 1]
    return upper[edge, 0] + along * (x / rise)[edge], upper[edge, 2] + along * (z / rise)[edge]


def _repeat(counts: NDArray[np.intp]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return each index as often as counted, and a running number within each index."""
    index = np.repeat(np.arange(len(counts)), counts)
    return index, np.arange(len(index)) - np.repeat(np.cumsum(counts) - counts, counts)


def _barycentric(
    points: FloatArray,
    corners: IndexArray,
    hits: NDArray[np.intp],
    columns: int,
    camera: Camera,
) -> tuple[NDArray[np.float32], NDArray[np.bool_]]:
    """Return (n, 3) weights of the corners at the samples hit, and whether from the front."""
    y, x = np.divmod(hits, columns)
    px, py = x + 0.5, y + 0.5
    a, b, c = (points[corners[:, k]] for k in range(3))
    whole = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (c[:, 0] - a[:, 0]) * (b[:, 1] - a[:, 1])
    second = (px - a[:, 0]) * (c[:, 1] - a[:, 1]) - (c[:, 0] - a[:, 0]) * (py - a[:, 1])
    third = (b[:, 0] - a[:, 0]) * (py - a[:, 1]) - (px - a[:, 0]) * (b[:, 1] - a[:, 1])
    weights = np.empty((len(hits), 3))
    weights[:, 1] = second / whole
    weights[:, 2] = third / whole
    weights[:, 0] = 1.0 - weights[:, 1] - weights[:, 2]
    np.clip(weights, 0.0, 1.0, out=weights)
    if camera.distance_mm is not None:
        # nearness + distance is proportional to 1 / (distance to the viewer).
        weights *= np.stack([a[:, 2], b[:, 2], c[:, 2]], axis=1) + camera.distance_mm
    weights /= weights.sum(axis=1, keepdims=True)
    return weights.astype(np.float32), whole < 0.0
