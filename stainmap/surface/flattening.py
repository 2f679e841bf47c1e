"""Laying an open piece of surface flat on the unit disc, without a fold and near its true areas."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.dissection import nested_dissection
from stainmap.surface.factoring import Factor
from stainmap.surface.mesh import (
    BoolArray,
    FloatArray,
    IndexArray,
    TriMesh,
    boundary_loops,
    frozen,
    submesh,
)

# Knots of the curve that spaces the radius anew.
_KNOTS = 200
# Weights are kept within this factor of their median, so that slivers do not spoil the system.
_WEIGHT_SPAN = 1e5
# From so many unknowns on nested dissection is quicker than minimum degree (measured here).
_DISSECTION_FROM = 5_000
# How often the weights of the usual map answer to its areas.
_ANSWERS = 1
# Rounds of the map of last resort, and how strongly each answers to the one before.
_ROUNDS, _ANSWER = 6, 0.7
_LARGEST_ANSWER = 20.0
# Rounds of averaging around folded faces, each reaching two rings farther; not where many fold.
_MENDING_ROUNDS = 5
_MOST_FOLDED = 0.02
_TINY = 1e-300

Matrix = sparse.csr_array[np.float64]


class FlatMethod(StrEnum):
    """How a map was made."""

    MEAN_VALUE = "mean value, radius by area"
    RELAXED = "areas relaxed"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatMap:
    """A surface on the unit disc.

    Parameters
    ----------
    points
        (V, 2) where each vertex lies; the rim on the unit circle, counter-clockwise along the
        winding of the faces, so that nothing is mirrored. Vertices of no face lie at 0, 0.
    rim
        (n,) int32 vertices on the circle, in order.
    method
        How it was made.
    flipped
        Faces whose area on the disc is not positive; 0 but on a surface too degenerate to flatten.
    """

    points: FloatArray
    rim: IndexArray
    method: FlatMethod
    flipped: int


def disc_faces(mesh: TriMesh, faces: BoolArray) -> BoolArray:
    """Return the largest piece of some faces, without edges that more than two of them share.

    Nor has it vertices at which only corners touch.

    Parameters
    ----------
    mesh
        The surface.
    faces
        (F,) bool.
    """
    chosen: BoolArray = np.array(faces, dtype=np.bool_)
    while chosen.any():
        chosen = _largest_by_edges(mesh, chosen)
        triangles = mesh.faces[chosen]
        start, end = triangles.ravel(), triangles[:, [1, 2, 0]].ravel()
        directed = start.astype(np.int64) * mesh.vertex_count + end
        back = end.astype(np.int64) * mesh.vertex_count + start
        leaving = np.bincount(start[~np.isin(back, directed)], minlength=mesh.vertex_count)
        pinched = leaving > 1
        sharing = np.bincount(mesh.face_edges[chosen].ravel(), minlength=len(mesh.edges))
        crowded = sharing > 2
        if not pinched.any() and not crowded.any():
            break
        chosen = chosen & ~pinched[mesh.faces].any(axis=1)
        chosen = chosen & ~crowded[mesh.face_edges].any(axis=1)
    return frozen(chosen)


def _largest_by_edges(mesh: TriMesh, faces: BoolArray) -> BoolArray:
    """Return the piece of some faces (F,), hanging together along edges, of the largest area."""
    pair = mesh.edge_faces[(mesh.edge_faces >= 0).all(axis=1)]
    i, j = pair[faces[pair].all(axis=1)].T
    graph = sparse.coo_array((np.ones(len(i), dtype=np.int8), (i, j)), shape=(mesh.face_count,) * 2)
    count, label = csgraph.connected_components(graph, directed=False)
    area = np.bincount(label[faces], mesh.face_areas[faces], minlength=count)
    return np.asarray(faces & (label == int(area.argmax())))


def flatten_disc(mesh: TriMesh, *, right: ArrayLike, up: ArrayLike) -> FlatMap:
    """Lay a surface with a border on the unit disc.

    The longest border goes onto the circle by its length; other borders are closed by a fan and
    lie inside. Each vertex stands at the mean of its neighbours with mean value weights, which
    are positive, so that no face folds over [Floater2003], [Tutte1963]. Then the radius is spaced
    anew, r' = sqrt(share of the area inside r), which brings areas near their true share. Once
    more with weights multiplied by the root of what is drawn too large: that halves the spread
    of areas and leaves shapes alone (measured on real bodies).

    Spacing the radius is not proven free of folds: slivers may fold. Around those the vertices
    are put at means again with the rest held where it is. If a fold remains, all vertices stand
    at means with weights that answer to the areas for some rounds, and the radius stays as it
    is: positive weights again, so without folds whatever the surface.

    Parameters
    ----------
    mesh
        One piece of surface like a sheet, perhaps with holes.
    right, up
        (3,) directions that lie to the right and upwards on the disc, as well as the border
        allows.

    Raises
    ------
    ValueError
        If the surface has no border, is in several pieces, or has a handle.
    """
    closed, rim = _closed_but_rim(mesh)
    angle = _rim_angles(mesh, rim, np.asarray(right, float), np.asarray(up, float))
    circle = np.stack([np.cos(angle), np.sin(angle)], axis=1)
    layout = _Layout(closed, rim, circle)
    tail, head, weight = mean_value_weights(closed)
    points, flipped = layout.spaced(tail, head, weight, mesh.face_count)
    for _ in range(_ANSWERS):
        ratio = smooth_ratios(closed, points)
        both = np.clip(0.5 * (ratio[tail] + ratio[head]), 1.0 / _LARGEST_ANSWER, _LARGEST_ANSWER)
        weight = weight * np.sqrt(both)
        nearer, folded = layout.spaced(tail, head, weight, mesh.face_count)
        if folded > flipped:
            break
        points, flipped = nearer, folded
    method = FlatMethod.MEAN_VALUE
    if flipped:
        relaxed = layout.relaxed()
        still = flipped_faces(relaxed, mesh.faces)
        if still < flipped:
            points, method, flipped = relaxed, FlatMethod.RELAXED, still
    points = points[: mesh.vertex_count]
    return FlatMap(points=frozen(points), rim=frozen(rim), method=method, flipped=flipped)


def flat_areas(points: FloatArray, faces: IndexArray) -> FloatArray:
    """Return (F,) signed areas on the plane, positive if counter-clockwise."""
    a, b, c = points[faces[:, 0]], points[faces[:, 1]], points[faces[:, 2]]
    ab, ac = b - a, c - a
    return np.asarray(0.5 * (ab[:, 0] * ac[:, 1] - ab[:, 1] * ac[:, 0]))


def flipped_faces(points: FloatArray, faces: IndexArray) -> int:
    """Return how many faces have no positive area on the plane."""
    return int((flat_areas(points, faces) <= 0.0).sum())


def area_ratios(mesh: TriMesh, points: FloatArray) -> FloatArray:
    """Return (F,) the share of each face on the map over its share of the surface; 1 is true.

    Faces without area get 1.
    """
    flat = flat_areas(points, mesh.faces)
    flat = flat / max(float(flat.sum()), _TINY)
    true = mesh.face_areas / max(mesh.area, _TINY)
    has_area = true > 1e-9 / max(mesh.face_count, 1)
    return np.where(has_area, flat / np.where(has_area, true, 1.0), 1.0)


def area_spread(mesh: TriMesh, points: FloatArray) -> float:
    """Return the 95th over the 5th percentile (by surface area) of `area_ratios`."""
    ratio = area_ratios(mesh, points)
    order = np.argsort(ratio)
    share = np.cumsum(mesh.face_areas[order]) / mesh.area
    low, high = ratio[order[np.searchsorted(share, [0.05, 0.95])]]
    return float(high / max(low, _TINY))


def stretches(mesh: TriMesh, points: FloatArray) -> FloatArray:
    """Return (F,) how unequally lengths are drawn: largest over smallest, 1 where shape is kept."""
    corner = mesh.vertices[mesh.faces]
    first, second = corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0]
    length = np.maximum(np.linalg.norm(first, axis=1), _TINY)
    along = (first * second).sum(axis=1) / length
    height = np.maximum(np.linalg.norm(np.cross(first, second), axis=1) / length, _TINY)
    flat = points[mesh.faces]
    u, v = flat[:, 1] - flat[:, 0], flat[:, 2] - flat[:, 0]
    # The linear map of the plane of the face, in a frame along its first edge.
    across = (v - u * (along / length)[:, None]) / height[:, None]
    u = u / length[:, None]
    squares = (u**2).sum(axis=1) + (across**2).sum(axis=1)
    area = np.abs(u[:, 0] * across[:, 1] - u[:, 1] * across[:, 0])
    root = np.sqrt(np.maximum(squares**2 - 4.0 * area**2, 0.0))
    smallest = np.maximum(squares - root, _TINY)
    return np.asarray(np.sqrt((squares + root) / smallest))


def mean_value_weights(mesh: TriMesh) -> tuple[IndexArray, IndexArray, FloatArray]:
    """Return tail, head and weight of every directed edge within a face, two entries an edge.

    w_ij = (tan(a/2) + tan(b/2)) / |ij| with the angles a, b beside the edge at i [Floater2003].
    """
    tails, heads, weights = [], [], []
    floor = 1e-6 * max(float(mesh.edge_lengths.mean()), _TINY)
    for corner in range(3):
        i, j, k = (mesh.faces[:, (corner + turn) % 3] for turn in range(3))
        to_j, to_k = mesh.vertices[j] - mesh.vertices[i], mesh.vertices[k] - mesh.vertices[i]
        length_j = np.maximum(np.linalg.norm(to_j, axis=1), floor)
        length_k = np.maximum(np.linalg.norm(to_k, axis=1), floor)
        doubled = np.linalg.norm(np.cross(to_j, to_k), axis=1)
        below = length_j * length_k + (to_j * to_k).sum(axis=1)
        tangent = doubled / np.maximum(below, 1e-9 * length_j * length_k)
        for head, length in ((j, length_j), (k, length_k)):
            tails.append(i)
            heads.append(head)
            weights.append(tangent / length)
    weight = np.concatenate(weights)
    middle = max(float(np.median(weight)), _TINY)
    weight = np.clip(weight, middle / _WEIGHT_SPAN, middle * _WEIGHT_SPAN)
    return np.concatenate(tails), np.concatenate(heads), weight


def spaced_by_area(points: FloatArray, mesh: TriMesh) -> FloatArray:
    """Return a map on the unit disc with radii such that area and share of the surface agree.

    On a surface of revolution the result is its equal-area map: for a sphere the azimuthal one
    that cartography knows [Snyder1987].

    Parameters
    ----------
    points
        (V, 2) within the unit circle.
    mesh
        The surface.
    """
    radius = np.linalg.norm(points, axis=1)
    knots = np.linspace(0.0, 1.0, _KNOTS + 1)
    spaced = np.sqrt(_area_within(mesh, radius, knots) / max(mesh.area, _TINY))
    spaced[-1] = 1.0
    wanted = np.interp(radius, knots, spaced)
    return np.asarray(points * (wanted / np.maximum(radius, _TINY))[:, None])


def _area_within(mesh: TriMesh, radius: FloatArray, knots: FloatArray) -> FloatArray:
    """Return (k,) the area of the surface at which a value of the vertices is below each knot.

    The value is linear on every face, so the area below a level is quadratic between its corners.
    """
    low, middle, high = np.sort(radius[mesh.faces], axis=1).T
    area = mesh.face_areas
    by_high = np.argsort(high)
    below = np.concatenate([[0.0], np.cumsum(area[by_high])])
    whole = below[np.searchsorted(high[by_high], knots, side="right")]
    for k, level in enumerate(knots):
        cut = np.flatnonzero((low < level) & (high > level))
        a, b, c = low[cut], middle[cut], high[cut]
        first = (level - a) ** 2 / np.maximum((b - a) * (c - a), _TINY)
        last = 1.0 - (c - level) ** 2 / np.maximum((c - b) * (c - a), _TINY)
        whole[k] += area[cut] @ np.where(level < b, first, last)
    return np.asarray(whole)


def _closed_but_rim(mesh: TriMesh) -> tuple[TriMesh, IndexArray]:
    """Return the mesh with a fan over every border but the longest, and that one's vertices."""
    loops = boundary_loops(mesh)
    if not loops:
        raise ValueError("a closed surface cannot be laid flat")
    rim, holes = loops[0], loops[1:]
    points, faces = [mesh.vertices], [mesh.faces]
    middle = mesh.vertex_count
    for loop in holes:
        points.append(mesh.vertices[loop].mean(axis=0)[None])
        centre = np.full(len(loop), middle, dtype=np.int32)
        faces.append(np.stack([np.roll(loop, -1), loop, centre], axis=1))
        middle += 1
    closed = TriMesh(np.concatenate(points), np.concatenate(faces)) if holes else mesh
    used = len(np.unique(closed.faces))
    if used - len(closed.edges) + closed.face_count != 1 or len(rim) < 3:
        raise ValueError("the surface is not a disc: it is in pieces or has a handle")
    return closed, rim


def _rim_angles(mesh: TriMesh, rim: IndexArray, right: FloatArray, up: FloatArray) -> FloatArray:
    """Return (n,) angles of the rim, by its length, turned to lie as it does in space."""
    points = mesh.vertices[rim]
    step = np.linalg.norm(np.roll(points, -1, axis=0) - points, axis=1)
    # Two vertices at one place must not share a place on the circle.
    step = np.maximum(step, 1e-4 * max(float(step.mean()), _TINY))
    angle = 2.0 * np.pi * np.concatenate([[0.0], np.cumsum(step)[:-1]]) / step.sum()
    weight = 0.5 * (step + np.roll(step, 1))
    away = points - weight @ points / weight.sum()
    towards = away @ right + 1j * (away @ up)
    turn = complex((weight * towards * np.exp(-1j * angle)).sum())
    return np.asarray(angle + np.angle(turn))


class _Layout:
    """Places of the inner vertices of a disc whose rim is given."""

    def __init__(self, mesh: TriMesh, rim: IndexArray, circle: FloatArray) -> None:
        self._mesh = mesh
        self._fixed: FloatArray = np.zeros((mesh.vertex_count, 2))
        self._fixed[rim] = circle
        inner = np.zeros(mesh.vertex_count, dtype=np.bool_)
        inner[mesh.faces] = True
        inner[rim] = False
        self._inner = np.flatnonzero(inner)
        self._order: IndexArray | None = None

    def _means(self, matrix: Matrix) -> FloatArray:
        """Return (V, 2) places at which every inner vertex is the mean of its neighbours."""
        large = len(self._inner) >= _DISSECTION_FROM
        if large and self._order is None:
            places = self._mesh.vertices[self._inner]
            self._order = nested_dissection(places, matrix[self._inner][:, self._inner])
            self._inner = self._inner[self._order]
        return _averaged(matrix, self._fixed, self._inner, ordered=large)

    def spaced(
        self, tail: IndexArray, head: IndexArray, weight: FloatArray, face_count: int
    ) -> tuple[FloatArray, int]:
        """Return means with the radius spaced by area, and how many of the first faces fold.

        The faces after those are fans over holes, which may fold.
        """
        matrix = self._averaging(tail, head, weight)
        points = spaced_by_area(self._means(matrix), self._mesh)
        points = self._unfolded(points, matrix, face_count)
        return points, flipped_faces(points, self._mesh.faces[:face_count])

    def _unfolded(self, points: FloatArray, matrix: Matrix, face_count: int) -> FloatArray:
        """Return places (V, 2) averaged anew around those of the first faces that fold."""
        faces = self._mesh.faces
        movable = np.zeros(self._mesh.vertex_count, dtype=np.bool_)
        movable[self._inner] = True
        for rings in range(1, _MENDING_ROUNDS + 1):
            folded = flat_areas(points, faces[:face_count]) <= 0.0
            if not folded.any() or folded.sum() > _MOST_FOLDED * face_count:
                break
            near: BoolArray = np.zeros(len(movable), dtype=np.bool_)
            near[faces[:face_count][folded]] = True
            for _ in range(2 * rings):
                near[faces[near[faces].any(axis=1)]] = True
            points = _averaged(matrix, points, np.flatnonzero(near & movable))
        return points

    def _averaging(self, tail: IndexArray, head: IndexArray, weight: FloatArray) -> Matrix:
        """Return (V, V) with rows of sum 1: a factor of a row does not move its vertex."""
        count = self._mesh.vertex_count
        matrix = sparse.coo_array((weight, (tail, head)), shape=(count, count)).tocsr()
        total = np.maximum(np.asarray(matrix.sum(axis=1)), _TINY)
        return sparse.csr_array(sparse.diags_array(1.0 / total) @ matrix)

    def relaxed(self) -> FloatArray:
        """Return (V, 2) a map whose weights have answered to its areas for some rounds."""
        mesh = self._mesh
        i, j = mesh.edges.T
        tail, head = np.concatenate([i, j]), np.concatenate([j, i])
        weight = np.ones(len(i))
        points = self._means(self._averaging(tail, head, np.concatenate([weight, weight])))
        true = mesh.vertex_areas / mesh.area
        for _ in range(_ROUNDS):
            flat = np.abs(flat_areas(points, mesh.faces))
            drawn = mesh.sum_at_vertices(flat / flat.sum()) / 3.0
            ratio = drawn / np.maximum(true, _TINY)
            both = np.clip(0.5 * (ratio[i] + ratio[j]), 1.0 / _LARGEST_ANSWER, _LARGEST_ANSWER)
            weight = weight * both**_ANSWER
            weight /= weight.mean()
            points = self._means(self._averaging(tail, head, np.concatenate([weight, weight])))
        return points


def _averaged(
    matrix: Matrix, points: FloatArray, free: NDArray[np.intp], *, ordered: bool = False
) -> FloatArray:
    """Return points (V, 2) with the free ones at the means of their neighbours."""
    out = points.copy()
    if not len(free):
        return out
    out[free] = 0.0
    rows = matrix[free]
    system = sparse.csc_array(sparse.eye_array(len(free)) - rows[:, free])
    # Diagonally dominant by rows: it needs no pivoting, like a definite one.
    out[free] = Factor(system, ordered=ordered).solve(np.asfortranarray(rows @ out))
    return out


def flat_piece(mesh: TriMesh, faces: BoolArray) -> tuple[TriMesh, NDArray[np.int32]]:
    """Return the largest clean piece of some faces as a mesh, and the vertex each vertex was.

    Raises
    ------
    ValueError
        If nothing is left.
    """
    chosen = disc_faces(mesh, faces)
    if not chosen.any():
        raise ValueError("there is no surface to lay flat")
    return submesh(mesh, chosen)


def smooth_ratios(mesh: TriMesh, points: FloatArray) -> FloatArray:
    """Return (V,) `area_ratios` at the vertices: of all faces around each together."""
    flat = mesh.sum_at_vertices(np.maximum(flat_areas(points, mesh.faces), 0.0))
    true = mesh.sum_at_vertices(mesh.face_areas)
    whole = max(float(flat.sum()), _TINY) / max(float(true.sum()), _TINY)
    return np.asarray(flat / np.maximum(true, _TINY) / whole)
