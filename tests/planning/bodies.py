"""Bodies of revolution and other shapes whose truths are known, and ways to turn them."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray
from scipy.spatial.transform import Rotation

from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.surface.mesh import TriMesh

FloatArray = NDArray[np.float64]


def units(*numbers: int) -> tuple[Unit, ...]:
    """Return a crown, or a bridge whose inner teeth are pontics."""
    if len(numbers) == 1:
        return (Unit(tooth=Tooth(number=numbers[0])),)
    last = len(numbers) - 1
    return tuple(
        Unit(tooth=Tooth(number=number), role=Role.RETAINER if k in (0, last) else Role.PONTIC)
        for k, number in enumerate(numbers)
    )


def revolved(
    length: float,
    radius: Callable[[FloatArray], FloatArray],
    *,
    flat: float = 1.0,
    step: float = 0.25,
    around: int = 96,
) -> TriMesh:
    """Return a closed body about x; at x its section is an ellipse of half axes r and flat * r."""
    x = np.linspace(0.0, length, max(int(length / step), 8) + 1)
    r = radius(x)
    turn = np.arange(around) * 2.0 * np.pi / around
    ring = np.stack(
        [
            np.repeat(x[:, None], around, axis=1),
            r[:, None] * np.cos(turn),
            flat * r[:, None] * np.sin(turn),
        ],
        axis=2,
    ).reshape(-1, 3)
    points = np.concatenate([ring, [[0.0, 0.0, 0.0], [length, 0.0, 0.0]]])
    near, far = len(ring), len(ring) + 1
    k = np.arange(around)
    after = (k + 1) % around
    faces = [np.c_[np.full(around, near), after, k]]
    for row in range(len(x) - 1):
        a, b = row * around, (row + 1) * around
        faces += [np.c_[a + k, a + after, b + after], np.c_[a + k, b + after, b + k]]
    last = (len(x) - 1) * around
    faces.append(np.c_[np.full(around, far), last + k, last + after])
    return TriMesh(points, np.concatenate(faces))


def beads(count: int, *, neck: float = 1.6, bead: float = 4.0, pitch: float = 8.0) -> TriMesh:
    """Return beads in a row, joined by necks that are cylinders for 1.2 mm."""
    length = count * pitch

    def radius(x: FloatArray) -> FloatArray:
        from_middle = np.abs((x / pitch) % 1.0 - 0.5) * pitch
        wave = np.clip((from_middle - 1.0) / (0.5 * pitch - 1.6), 0.0, 1.0)
        swell = neck + (bead - neck) * 0.5 * (1.0 + np.cos(np.pi * wave))
        # The free ends are as blunt as the ends of teeth.
        at_end = (x < 0.5 * pitch) | (x > length - 0.5 * pitch)
        blunt = bead * np.sqrt(np.clip(1.0 - (from_middle / (0.5 * pitch + 0.05)) ** 4, 0.01, 1.0))
        return np.where(at_end, blunt, swell)

    return revolved(length, radius, flat=1.2)


def bent(mesh: TriMesh, radius: float) -> TriMesh:
    """Return a body about x laid along a circle about z; sections across it keep their form."""
    x, y, z = mesh.vertices.T
    turn = (x - 0.5 * (x.min() + x.max())) / radius
    reach = radius + y
    return TriMesh(np.c_[reach * np.sin(turn), reach * np.cos(turn), z], mesh.faces)


def turned(mesh: TriMesh, seed: int, *, mirrored: bool = False) -> tuple[TriMesh, FloatArray]:
    """Return the mesh turned at random and moved, and the (3, 3) matrix that turned it."""
    matrix = Rotation.random(random_state=seed).as_matrix()
    if mirrored:
        matrix = matrix @ np.diag([-1.0, 1.0, 1.0])
    shift = np.random.default_rng(seed).uniform(-40.0, 40.0, 3)
    faces = mesh.faces[:, ::-1] if mirrored else mesh.faces
    return TriMesh(mesh.vertices @ matrix.T + shift, faces), matrix


def angle_deg(one: object, other: object) -> float:
    """Return the angle between two vectors, degrees."""
    a, b = np.asarray(one, dtype=float), np.asarray(other, dtype=float)
    cosine = a @ b / (np.linalg.norm(a) * np.linalg.norm(b))
    return float(np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))))


def dice(one: NDArray[np.bool_], other: NDArray[np.bool_], weight: FloatArray) -> float:
    """Return twice the common area over the sum of both; 1 if both are empty."""
    both = float(weight[one].sum() + weight[other].sum())
    return 2.0 * float(weight[one & other].sum()) / both if both > 0 else 1.0
