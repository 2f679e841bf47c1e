"""The brush: which vertices a dab touches, and how strongly."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.sparse import csgraph

from stainmap.surface.mesh import IndexArray, TriMesh
from stainmap.surface.sparse_rows import square

# The way along the edges may be this much longer than the radius: paths along edges are longer
# than straight ones, and a groove is brushed to its bottom, but not the far side of a wall.
GATE = 1.25


def brush_vertices(
    mesh: TriMesh,
    position: ArrayLike,
    seed_vertex: int,
    radius_mm: float,
    softness: float,
) -> tuple[IndexArray, NDArray[np.float32]]:
    """Return the vertices under a round brush and the strength at each.

    Vertices within the ball count if they can be reached inside it, from the vertex under the
    pointer, by a way along edges of at most 1.25 radii. So the brush does not reach through a
    thin wall or across a gap.

    Parameters
    ----------
    mesh
        The surface.
    position
        (3,) middle of the brush on the surface, mm.
    seed_vertex
        The vertex nearest to it; always among the result.
    radius_mm
        Positive.
    softness
        0 for full strength up to the edge; 1 for strength falling off from the middle.

    Returns
    -------
    vertices, weight
        (k,) int32 ascending, and (k,) float32 above 0 up to 1.

    Raises
    ------
    ValueError
        If the radius is not positive, softness is outside 0 to 1, or there is no such vertex.
    """
    if not (np.isfinite(radius_mm) and radius_mm > 0):
        raise ValueError(f"radius_mm must be a positive number, not {radius_mm}")
    if not 0.0 <= softness <= 1.0:
        raise ValueError(f"softness must lie between 0 and 1, not {softness}")
    if not 0 <= seed_vertex < mesh.vertex_count:
        raise ValueError(f"there is no vertex {seed_vertex}")
    middle = np.asarray(position, dtype=np.float64)
    ball = _ball(mesh, middle, seed_vertex, radius_mm)
    # Symmetric, so no need to have every edge looked at from both ends.
    way = csgraph.dijkstra(
        square(mesh.adjacency, ball),
        directed=True,
        indices=np.searchsorted(ball, [seed_vertex]),
        limit=GATE * radius_mm,
    )
    vertices = ball[np.isfinite(way[0])]
    distance = np.linalg.norm(mesh.vertices[vertices] - middle, axis=1)
    weight = falloff(distance / radius_mm, softness)
    # A brush smaller than the mesh's edges still touches the vertex it points at.
    at_seed = np.searchsorted(vertices, seed_vertex)
    weight[at_seed] = max(weight[at_seed], np.float32(1.0 - min(softness, 0.5)))
    touched = weight > 0
    return vertices[touched].astype(np.int32), weight[touched]


def falloff(share: NDArray[np.float64], softness: float) -> NDArray[np.float32]:
    """Return the strength at a share of the radius: 1 inside, falling smoothly to 0 at the edge.

    Parameters
    ----------
    share
        Distance from the middle in radii.
    softness
        Share of the radius over which the strength falls.
    """
    if softness == 0:
        return (share <= 1.0).astype(np.float32)
    fall = np.clip((share - (1.0 - softness)) / softness, 0.0, 1.0)
    return np.asarray(1.0 - fall * fall * (3.0 - 2.0 * fall), dtype=np.float32)


def _ball(
    mesh: TriMesh, middle: NDArray[np.float64], seed_vertex: int, radius_mm: float
) -> NDArray[np.intp]:
    """Return the vertices (ascending) within a radius, and the seed."""
    ball = mesh.vertex_blocks.within(middle, radius_mm).astype(np.intp)
    place = int(np.searchsorted(ball, seed_vertex))
    if place == len(ball) or ball[place] != seed_vertex:
        ball = np.insert(ball, place, seed_vertex)
    return ball
