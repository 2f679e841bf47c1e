"""Winding: turn facets so that they agree, and shells so that they face outward."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.mesh import EdgeTable, FloatArray, IndexArray, edge_table

# An open shell is told inside from outside only if it is cupped at least this much: its volume,
# closed over its border, against that of the sphere of the same area.
_CUPPED = 0.02
# Shells beyond the largest ones are splinters; they are left as they are.
_SHELLS_LOOKED_AT = 64
_SEARCHES = 4


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Winding:
    """Facets that agree with each other.

    Parameters
    ----------
    faces
        (F, 3) in the old order, corners 1 and 2 exchanged where a facet was turned.
    turned
        Single facets that disagreed with the rest of their shell and were turned.
    shells_turned
        Whole shells that were inside out and were turned.
    shells
        Number of shells: pieces that hang together over edges with two facets.
    table
        The edges of the facets (their direction does not matter to it).
    one_sided
        Whether some shell has no two sides (as a Moebius strip); `faces` are then as they came.
    """

    faces: IndexArray
    turned: int
    shells_turned: int
    shells: int
    table: EdgeTable
    one_sided: bool


def repair_winding(vertices: FloatArray, faces: IndexArray, cross: FloatArray) -> Winding:
    """Turn facets until neighbours agree and the outermost shells face outward.

    Within a shell the smaller share of the area is turned. A shell whose signed volume is negative
    is turned, together with everything inside it; but a shell inside another one is left alone
    otherwise, since a cavity rightly faces the other way. Open shells are closed over their border
    for this, and left alone if they are too flat to have an inside.

    Parameters
    ----------
    vertices
        (V, 3) coordinates.
    faces
        (F, 3) vertex indices.
    cross
        (F, 3) cross product of the edges 0-1 and 0-2 of each face.
    """
    table = edge_table(faces, len(vertices))
    shells, label, wrong = _agreement(faces, table)
    if wrong is None:
        return Winding(
            faces=faces, turned=0, shells_turned=0, shells=shells, table=table, one_sided=True
        )
    areas = 0.5 * np.linalg.norm(cross, axis=1)
    whole: FloatArray = np.bincount(label, areas, minlength=shells).astype(np.float64)
    if wrong.any():
        share = np.bincount(label, areas * wrong, minlength=shells)
        wrong = wrong ^ (share > 0.5 * whole)[label]
    agreed = turned_where(faces, wrong)
    signed = np.where(wrong[:, None], -cross, cross) if wrong.any() else cross
    inside_out = _Shells(vertices, agreed, signed, table, label, whole).inside_out()
    wrong = wrong ^ inside_out[label]
    if not wrong.any():
        return Winding(
            faces=faces, turned=0, shells_turned=0, shells=shells, table=table, one_sided=False
        )
    # A shell of which every facet was turned is one repair, not thousands.
    facets = np.bincount(label, minlength=shells)
    count = np.bincount(label, wrong, minlength=shells).astype(np.intp)
    all_of_it = (count == facets) & (facets > 0)
    return Winding(
        faces=turned_where(faces, wrong),
        turned=int(count[~all_of_it].sum()),
        shells_turned=int(all_of_it.sum()),
        shells=shells,
        table=table,
        one_sided=False,
    )


def turned_where(faces: IndexArray, wrong: NDArray[np.bool_]) -> IndexArray:
    """Return the faces with corners 1 and 2 exchanged where the mask says so."""
    if not wrong.any():
        return faces
    turned = faces.copy()
    turned[wrong, 1], turned[wrong, 2] = faces[wrong, 2], faces[wrong, 1]
    return turned


def _agreement(
    faces: IndexArray, table: EdgeTable
) -> tuple[int, NDArray[np.int32], NDArray[np.bool_] | None]:
    """Return the shells, the shell of each face, and which faces disagree with their shell.

    The faces are the nodes of a graph twice over, as they are and turned; neighbours that agree
    link like with like. If a face hangs together with its own turned self there are no two sides,
    and the last value is None.
    """
    count = len(faces)
    two = table.face_count == 2
    at = table.first[two]
    one, other = table.corners[at], table.corners[at + 1]
    first, second = one // 3, other // 3
    flat = faces.ravel()
    # Both faces of an edge agree if they run along it in opposite directions.
    agree = flat[one] != flat[other]
    if agree.all():
        shells, piece = _pieces(count, one, other)
        return shells, piece, np.zeros(count, dtype=np.bool_)
    partner = np.where(agree, second, second + count)
    opposite = np.where(agree, second + count, second)
    graph = sparse.coo_array(
        (
            np.ones(2 * len(first), dtype=np.int8),
            (np.concatenate([first, first + count]), np.concatenate([partner, opposite])),
        ),
        shape=(2 * count, 2 * count),
    )
    _, both = csgraph.connected_components(graph, directed=False)
    as_is, turned = both[:count], both[count:]
    if (as_is == turned).any():
        return 0, np.zeros(count, dtype=np.int32), None
    distinct, label = np.unique(np.minimum(as_is, turned), return_inverse=True)
    return len(distinct), label.astype(np.int32), np.asarray(as_is > turned)


def _pieces(
    count: int, one: NDArray[np.int32], other: NDArray[np.int32]
) -> tuple[int, NDArray[np.int32]]:
    """Count and label the pieces of facets; corners one and other lie on either side of an edge."""
    neighbour = np.repeat(np.arange(count, dtype=np.int32), 3)  # itself at a border
    neighbour[one], neighbour[other] = other // 3, one // 3
    start = np.arange(0, 3 * count + 1, 3, dtype=np.int32)
    graph = sparse.csr_array((np.ones(3 * count), neighbour, start), shape=(count, count))
    # Searching from a facet is many times faster than finding all components, if they are few.
    label = np.full(count, -1, dtype=np.int32)
    for piece in range(min(count, _SEARCHES)):
        first = int(label.argmin())
        reached = csgraph.breadth_first_order(graph, first, return_predecessors=False)
        label[reached] = piece
        if label.min() >= 0:
            return piece + 1, label
    pieces, every_label = csgraph.connected_components(graph, directed=False)
    return int(pieces), np.asarray(every_label, dtype=np.int32)


class _Shells:
    """Shells of agreeing faces, closed over their borders, to find which are inside out."""

    def __init__(
        self,
        vertices: FloatArray,
        faces: IndexArray,
        cross: FloatArray,
        table: EdgeTable,
        label: NDArray[np.int32],
        areas: FloatArray,
    ) -> None:
        self._cross = cross
        self._count = len(areas)
        self._areas = areas
        self._faces, self._label, self._vertices = faces, label, vertices
        # Edges with one face, or more than two, are a border for each shell there.
        lone = table.face_count[table.face_edges.ravel()] != 2
        corner = np.flatnonzero(lone)
        face, k = np.divmod(corner, 3)
        self._border_start = vertices[faces[face, k]]
        self._border_end = vertices[faces[face, (k + 1) % 3]]
        self._border_label = label[face]
        share = np.maximum(np.bincount(self._border_label, minlength=self._count), 1)
        self._is_open = np.bincount(self._border_label, minlength=self._count) > 0
        self._middle = np.stack(
            [
                np.bincount(self._border_label, self._border_start[:, k], minlength=self._count)
                / share
                for k in range(3)
            ],
            axis=1,
        )

    def _volumes(self) -> FloatArray:
        """Return the signed volume of each shell, closed by a fan from its border's middle."""
        origin = self._vertices.mean(axis=0)
        first = (self._vertices - origin)[self._faces[:, 0]]
        inside = np.bincount(
            self._label, np.einsum("ij,ij->i", first, self._cross), minlength=self._count
        )
        start, end = self._border_start - origin, self._border_end - origin
        middle = self._middle[self._border_label] - origin
        cap = np.bincount(
            self._border_label,
            np.einsum("ij,ij->i", end, np.cross(start, middle)),
            minlength=self._count,
        )
        return np.asarray((inside + cap) / 6.0)

    def inside_out(self) -> NDArray[np.bool_]:
        """Return for each shell whether it must be turned."""
        volume = self._volumes()
        sphere = self._areas**1.5 / (6.0 * np.sqrt(np.pi))
        flat = self._is_open & (np.abs(volume) < _CUPPED * sphere)
        negative = (volume < 0) & ~flat
        if not negative.any() or self._count == 1:
            return np.asarray(negative)
        turn = np.zeros(self._count, dtype=np.bool_)
        large = np.argsort(-self._areas)[:_SHELLS_LOOKED_AT]
        large = large[~flat[large]]
        inside = {int(shell): self._containers(int(shell), large) for shell in large}
        for shell in large:
            outermost = [one for one in inside[int(shell)] if not inside[one]]
            turn[shell] = negative[outermost[0] if outermost else shell]
        return turn

    def _containers(self, shell: int, others: NDArray[np.intp]) -> list[int]:
        """Return the shells around one shell, by the winding number of one of its points."""
        mine = self._vertices[self._faces[self._label == shell]]
        low, high = mine.min(axis=(0, 1)), mine.max(axis=(0, 1))
        point = mine[0].mean(axis=0)
        found = []
        for other in others:
            if other == shell or self._areas[other] < self._areas[shell]:
                continue
            theirs = self._vertices[self._faces[self._label == other]]
            if (theirs.min(axis=(0, 1)) > low).any() or (theirs.max(axis=(0, 1)) < high).any():
                continue
            rim = self._border_label == other
            cap = np.stack(
                [
                    self._border_end[rim],
                    self._border_start[rim],
                    np.broadcast_to(self._middle[other], (int(rim.sum()), 3)),
                ],
                axis=1,
            )
            if abs(winding_number(np.concatenate([theirs, cap]), point)) > 0.5:
                found.append(int(other))
        return found


def winding_number(triangles: FloatArray, point: FloatArray) -> float:
    """Return how often a closed surface of triangles (T, 3, 3) goes around a point.

    The solid angles of the triangles are added up [VanOosterom1983] and divided by 4 pi.
    """
    a, b, c = (triangles[:, k] - point for k in range(3))
    la, lb, lc = (np.linalg.norm(side, axis=1) for side in (a, b, c))
    triple = np.einsum("ij,ij->i", a, np.cross(b, c))
    below = (
        la * lb * lc
        + np.einsum("ij,ij->i", a, b) * lc
        + np.einsum("ij,ij->i", b, c) * la
        + np.einsum("ij,ij->i", c, a) * lb
    )
    return float(np.arctan2(triple, below).sum() / (2.0 * np.pi))
