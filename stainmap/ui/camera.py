"""The camera before the crown. Plain mathematics, no Qt.

Screen points are logical pixels from the top left corner; lengths are sintered millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]

DISTANCE_MM = 120.0
SPEAKING_MM = 600.0
# What lies nearer to the target than this, or farther behind it, is seen.
_REACH_MM = 80.0
_NEAREST_MM, _WIDEST_MM = 0.8, 120.0


def unit(vector: ArrayLike) -> FloatArray:
    """Return the vector at length 1."""
    array = np.asarray(vector, dtype=np.float64)
    return np.asarray(array / np.linalg.norm(array))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Camera:
    """A perspective camera at a distance before its target.

    Parameters
    ----------
    target
        (3,) the point in the middle of the picture.
    axes
        (3, 3) rows: right, up and towards the eye; right-angled, unit length.
    height_mm
        What the full height of the picture shows at the target's depth.
    distance_mm
        From the eye to the target.
    """

    target: FloatArray = field(default_factory=lambda: np.zeros(3))
    axes: FloatArray = field(default_factory=lambda: np.eye(3))
    height_mm: float = 12.7
    distance_mm: float = DISTANCE_MM

    @property
    def eye(self) -> FloatArray:
        """(3,) position of the eye."""
        return np.asarray(self.target + self.distance_mm * self.axes[2])

    @classmethod
    def looking_from(
        cls, toward_eye: ArrayLike, up: ArrayLike, target: ArrayLike, height_mm: float
    ) -> Camera:
        """Return the camera on the side `toward_eye` of the target, `up` as upright as can be."""
        back = unit(toward_eye)
        right = unit(np.cross(np.asarray(up, dtype=np.float64), back))
        axes = np.stack([right, np.cross(back, right), back])
        return cls(target=np.asarray(target, dtype=np.float64), axes=axes, height_mm=height_mm)

    def at_distance(self, distance_mm: float) -> Camera:
        """Return the camera that shows as much from another distance."""
        return replace(self, distance_mm=distance_mm)

    def matrix(self, width: float, height: float) -> FloatArray:
        """Return the (4, 4) matrix from mesh coordinates to OpenGL clip coordinates."""
        near, far = self.distance_mm - _REACH_MM, self.distance_mm + _REACH_MM
        view = np.eye(4)
        view[:3, :3] = self.axes
        view[:3, 3] = -self.axes @ self.eye
        focal = 2.0 * self.distance_mm / self.height_mm
        lens = np.zeros((4, 4))
        lens[0, 0] = focal * height / width
        lens[1, 1] = focal
        lens[2, 2] = -(far + near) / (far - near)
        lens[2, 3] = -2.0 * far * near / (far - near)
        lens[3, 2] = -1.0
        return lens @ view

    def project(self, points: ArrayLike, width: float, height: float) -> FloatArray:
        """Return (n, 3): screen x, y in pixels and the depth before the target plane in mm."""
        # In columns: rows of three numbers are slow, and there are as many as vertices.
        right, up, depth = self.axes @ (np.atleast_2d(np.asarray(points, dtype=np.float64)).T)
        from_right, from_up, from_depth = self.axes @ self.target
        depth -= from_depth
        scale = height / self.height_mm * self.distance_mm / (self.distance_mm - depth)
        places = np.empty((3, len(depth)))
        np.multiply(right - from_right, scale, out=places[0])
        places[0] += width / 2
        np.multiply(from_up - up, scale, out=places[1])
        places[1] += height / 2
        places[2] = depth
        return places.T

    def ray(self, x: float, y: float, width: float, height: float) -> tuple[FloatArray, FloatArray]:
        """Return origin (3,) and unit direction (3,) of the line of sight through a pixel."""
        through = self.point_at(x, y, width, height)
        return self.eye, unit(through - self.eye)

    def point_at(
        self, x: float, y: float, width: float, height: float, depth_mm: float = 0.0
    ) -> FloatArray:
        """Return the point seen at a pixel, `depth_mm` before the target plane."""
        size = self.height_mm / height * (self.distance_mm - depth_mm) / self.distance_mm
        local = np.array([(x - width / 2) * size, (height / 2 - y) * size, depth_mm])
        return np.asarray(self.target + local @ self.axes)

    def turned(
        self, dx: float, dy: float, axis: ArrayLike, degrees_per_pixel: float = 0.5
    ) -> Camera:
        """Return the camera after a drag: sideways about `axis`, up and down about its own right.

        A crown that stands on its head turns the other way round, so that the surface always
        follows the pointer.
        """
        axis = np.asarray(axis, dtype=np.float64)
        sense = 1.0 if self.axes[1] @ axis >= 0.0 else -1.0
        about_axis = rotation(axis, np.radians(-sense * dx * degrees_per_pixel))
        about_right = rotation(self.axes[0], np.radians(-dy * degrees_per_pixel))
        axes = self.axes @ about_right.T @ about_axis.T
        return replace(self, axes=_orthonormal(axes))

    def shifted(self, dx: float, dy: float, height: float) -> Camera:
        """Return the camera after the picture was pulled by (dx, dy) pixels."""
        size = self.height_mm / height
        return replace(self, target=self.target + (-dx * self.axes[0] + dy * self.axes[1]) * size)

    def zoomed(self, factor: float, x: float, y: float, width: float, height: float) -> Camera:
        """Return the camera `factor` times closer; what lies under the pixel stays there."""
        height_mm = float(np.clip(self.height_mm / factor, _NEAREST_MM, _WIDEST_MM))
        before = self.point_at(x, y, width, height)
        after = replace(self, height_mm=height_mm)
        return replace(after, target=self.target + before - after.point_at(x, y, width, height))

    def fitted(
        self,
        vertices: NDArray[np.float64],
        width: float,
        height: float,
        free: tuple[float, float, float, float] | None = None,
    ) -> Camera:
        """Return the camera with the same direction that just shows all vertices, with a rim.

        `free` is the part of the picture to show them in: left, top, right, bottom in pixels.
        """
        left, top, right, bottom = free or (0.0, 0.0, width, height)
        local = self.axes @ vertices.T
        low, high = local.min(axis=1), local.max(axis=1)
        extent = np.maximum(high - low, 1e-6)
        target = (low + high) / 2 @ self.axes
        pixel_mm = max(extent[1] / max(bottom - top, 1.0), extent[0] / max(right - left, 1.0))
        height_mm = float(np.clip(pixel_mm * 1.14 * height, _NEAREST_MM, _WIDEST_MM))
        centred = replace(self, target=np.asarray(target), height_mm=height_mm)
        return centred.shifted((left + right - width) / 2, (top + bottom - height) / 2, height)

    def between(self, other: Camera, share: float) -> Camera:
        """Return the camera part of the way (0 to 1) to another one, turning the short way."""
        turn = other.axes.T @ self.axes
        angle = float(np.arccos(np.clip((np.trace(turn) - 1.0) / 2.0, -1.0, 1.0)))
        if angle < 1e-6:
            axes = other.axes
        else:
            axes = self.axes @ rotation(_rotation_axis(turn, angle), share * angle).T
        return Camera(
            target=self.target + share * (other.target - self.target),
            axes=_orthonormal(axes),
            height_mm=self.height_mm * (other.height_mm / self.height_mm) ** share,
            distance_mm=self.distance_mm * (other.distance_mm / self.distance_mm) ** share,
        )


def depth_from_buffer(value: float) -> float:
    """Return the depth before the target plane, mm, of a depth-buffer value 0 to 1.

    Of a camera `DISTANCE_MM` away.
    """
    clip = 2.0 * value - 1.0
    near, far = DISTANCE_MM - _REACH_MM, DISTANCE_MM + _REACH_MM
    away = 2.0 * far * near / (far + near - clip * (far - near))
    return DISTANCE_MM - away


def rotation(axis: ArrayLike, angle: float) -> FloatArray:
    """Return the (3, 3) rotation about a unit axis by an angle in radians (Rodrigues' formula)."""
    x, y, z = np.asarray(axis, dtype=np.float64)
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    return np.asarray(np.eye(3) + np.sin(angle) * cross + (1.0 - np.cos(angle)) * cross @ cross)


def _rotation_axis(turn: FloatArray, angle: float) -> FloatArray:
    if angle < np.pi - 1e-4:
        skew = np.array([turn[2, 1] - turn[1, 2], turn[0, 2] - turn[2, 0], turn[1, 0] - turn[0, 1]])
        return np.asarray(skew / (2.0 * np.sin(angle)))
    # Half a turn: (turn + 1) / 2 is the axis times itself.
    square = (turn + np.eye(3)) / 2.0
    return unit(square[:, int(np.argmax(np.diag(square)))])


def _orthonormal(axes: FloatArray) -> FloatArray:
    back = unit(axes[2])
    right = unit(np.cross(axes[1], back))
    return np.stack([right, np.cross(back, right), back])
