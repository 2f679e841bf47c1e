"""How much of a surface has less than some value, and how long the border of that part is.

Values are linear within a facet, so both follow in closed form, facet by facet.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.surface.mesh import TriMesh

Faces = NDArray[np.intp]


def area_below(mesh: TriMesh, values: ArrayLike, level: float, faces: Faces | None = None) -> float:
    """Return the area, mm2, where values (V,) lie below a level.

    A facet with sorted corner values a, b, c has the share ``(t - a)^2 / ((b - a)(c - a))`` below
    a level t up to b, and one less ``(c - t)^2 / ((c - a)(c - b))`` above it.

    Parameters
    ----------
    faces
        Indices of the facets that count; all if None.
    """
    field = np.asarray(values, dtype=np.float64)
    corners = np.sort(_of_faces(mesh, field, faces), axis=1)
    touched = corners[:, 0] < level
    a, b, c = corners[touched].T
    share = np.ones(len(a))
    rising = level <= b
    falling = ~rising & (level < c)
    share[rising] = (level - a[rising]) ** 2 / ((b - a) * (c - a))[rising]
    share[falling] = 1.0 - (c[falling] - level) ** 2 / ((c - a) * (c - b))[falling]
    areas = mesh.face_areas if faces is None else mesh.face_areas[faces]
    return float(share @ areas[touched])


def level_length(
    mesh: TriMesh, values: ArrayLike, level: float, faces: Faces | None = None
) -> float:
    """Return the length, mm, of the line along which values (V,) equal a level.

    Parameters
    ----------
    faces
        Indices of the facets that count; all if None.
    """
    field = np.asarray(values, dtype=np.float64)
    triangles = np.asarray(mesh.faces if faces is None else mesh.faces[faces], dtype=np.intp)
    below = field[triangles] < level
    count = below.sum(axis=1)
    mixed = (count == 1) | (count == 2)
    triangles, below, count = triangles[mixed], below[mixed], count[mixed]
    # The corner that stands alone on its side of the line.
    alone = np.argmax(below == (count == 1)[:, None], axis=1)
    rows = np.arange(len(triangles))
    apex = triangles[rows, alone]
    ends = []
    for step in (1, 2):
        other = triangles[rows, (alone + step) % 3]
        part = (level - field[apex]) / (field[other] - field[apex])
        start = mesh.vertices[apex]
        ends.append(start + part[:, None] * (mesh.vertices[other] - start))
    return float(np.linalg.norm(ends[0] - ends[1], axis=1).sum())


def faces_within(mesh: TriMesh, mask: NDArray[np.bool_]) -> Faces:
    """Return the facets whose corners all belong to a mask (V,)."""
    one, two, three = mesh.faces.T
    return np.flatnonzero(mask[one] & mask[two] & mask[three])


def faces_touching(mesh: TriMesh, mask: NDArray[np.bool_], among: Faces | None = None) -> Faces:
    """Return the facets with a corner in a mask (V,).

    Parameters
    ----------
    among
        Facets to look at; all if None.
    """
    one, two, three = (mesh.faces if among is None else mesh.faces[among]).T
    found = np.flatnonzero(mask[one] | mask[two] | mask[three])
    return found if among is None else among[found]


def _of_faces(
    mesh: TriMesh, field: NDArray[np.float64], faces: Faces | None
) -> NDArray[np.float64]:
    return np.asarray(field[mesh.faces if faces is None else mesh.faces[faces]])
