"""What is wrong with a surface: facets twice, flat or collapsed, bad edges and points, holes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.mesh import FloatArray, IndexArray, TriMesh, frozen

# A facet less high than this share of its longest edge is flat: what rounding leaves of three
# points on one line, in double precision and in coordinates a million edges from the origin.
FLAT_SHARE = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Hole:
    """A chain of edges with a facet on one side only.

    Parameters
    ----------
    vertices
        (K,) in order, along the winding of the facets beside them where they agree.
    length_mm
        Length all along.
    is_closed
        Whether the last vertex joins the first again. A chain that does not ends at a crowded
        edge.
    """

    vertices: IndexArray
    length_mm: float
    is_closed: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Shell:
    """Facets that hang together over edges with two facets.

    Parameters
    ----------
    faces
        (K,) ascending.
    area_mm2
        Of all its facets.
    volume_mm3
        Signed: positive with normals outward, negative for a cavity or a shell inside out. NaN
        if it is not closed, or its facets disagree in winding.
    euler
        Vertices less edges plus facets: 2 for a closed ball, 0 for a ring, 1 for a disc.
    is_closed
        Whether every edge has two facets.
    """

    faces: IndexArray
    area_mm2: float
    volume_mm3: float
    euler: int
    is_closed: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceReport:
    """What is wrong with a surface.

    Edges, points, holes and shells leave out collapsed facets and doubles.

    Parameters
    ----------
    vertex_count, face_count
        Of all that was given.
    unused_vertices
        Points no facet uses.
    collapsed_faces
        Facets that use a point twice.
    duplicate_faces
        Facets with the three corners of an earlier one, whichever way they are wound.
    flat_faces
        Facets with three different corners, but next to no area.
    crowded_edges
        (K, 2) edges where more than two facets meet.
    disagreeing_edges
        (K, 2) edges whose two facets are wound against each other.
    pinched_vertices
        Points whose facets make more than one fan, and ends of crowded edges.
    holes
        Longest first; the outer border of an open sheet is one of them.
    shells
        Largest area first.
    """

    vertex_count: int
    face_count: int
    unused_vertices: IndexArray
    collapsed_faces: IndexArray
    duplicate_faces: IndexArray
    flat_faces: IndexArray
    crowded_edges: IndexArray
    disagreeing_edges: IndexArray
    pinched_vertices: IndexArray
    holes: tuple[Hole, ...]
    shells: tuple[Shell, ...]

    @property
    def is_manifold(self) -> bool:
        """Whether every point has a disc, or at a border half a disc, around it."""
        return not len(self.crowded_edges) and not len(self.pinched_vertices)

    @property
    def is_closed(self) -> bool:
        """Whether it has facets, and every edge has two of them."""
        return bool(self.shells) and all(shell.is_closed for shell in self.shells)

    @property
    def is_sound(self) -> bool:
        """Whether it bounds a volume and nothing at all is wrong with it."""
        faults = (
            self.unused_vertices,
            self.collapsed_faces,
            self.duplicate_faces,
            self.flat_faces,
            self.disagreeing_edges,
        )
        return self.is_manifold and self.is_closed and not any(len(fault) for fault in faults)


def surface_report(
    vertices: ArrayLike, faces: ArrayLike, *, flat_share: float = FLAT_SHARE
) -> SurfaceReport:
    """Return what is wrong with a surface; nothing is repaired.

    Parameters
    ----------
    vertices
        (V, 3) coordinates, mm.
    faces
        (F, 3) vertex indices. Facets that use a point twice are allowed, other than in a
        `TriMesh`, so that a file can be looked at before it is repaired.
    flat_share
        A facet less high than this share of its longest edge counts as flat.

    Raises
    ------
    ValueError
        If shapes are wrong, a coordinate is not finite, or an index is out of range.
    """
    corners = np.asarray(faces, dtype=np.int32)
    if corners.ndim != 2 or corners.shape[1] != 3:
        raise ValueError(f"faces must have shape (F, 3), not {corners.shape}")
    a, b, c = corners.T
    collapsed = (a == b) | (b == c) | (c == a)
    duplicate = _duplicates(corners, ~collapsed)
    kept = np.flatnonzero(~collapsed & ~duplicate).astype(np.int32)
    mesh = TriMesh(vertices, corners[kept])
    if len(corners) and (corners.min() < 0 or corners.max() >= mesh.vertex_count):
        raise ValueError("faces refer to a vertex that does not exist")
    unused = np.ones(mesh.vertex_count, dtype=np.bool_)
    unused[corners] = False
    crowded = mesh.edge_face_count > 2
    disagreeing = _disagreeing(mesh)
    return SurfaceReport(
        vertex_count=mesh.vertex_count,
        face_count=len(corners),
        unused_vertices=_where(unused),
        collapsed_faces=_where(collapsed),
        duplicate_faces=_where(duplicate),
        flat_faces=frozen(kept[_flat(mesh, flat_share)]),
        crowded_edges=frozen(mesh.edges[crowded]),
        disagreeing_edges=frozen(mesh.edges[disagreeing]),
        pinched_vertices=_pinched(mesh),
        holes=_holes(mesh),
        shells=_shells(mesh, kept, disagreeing),
    )


def _where(mask: NDArray[np.bool_]) -> IndexArray:
    return frozen(np.flatnonzero(mask).astype(np.int32))


def _duplicates(corners: IndexArray, usable: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Return which usable facets have the corners of an earlier usable one."""
    chosen = np.flatnonzero(usable)
    low, middle, high = np.sort(corners[chosen], axis=1).T
    order = np.lexsort((chosen, high, middle, low))
    same = np.zeros(len(chosen), dtype=np.bool_)
    for column in (low, middle, high):
        same[1:] |= column[order][1:] != column[order][:-1]
    duplicate = np.zeros(len(corners), dtype=np.bool_)
    duplicate[chosen[order[1:]]] = ~same[1:]
    return duplicate


def _flat(mesh: TriMesh, share: float) -> NDArray[np.bool_]:
    if not mesh.face_count:
        return np.zeros(0, dtype=np.bool_)
    longest = mesh.edge_lengths[mesh.face_edges].max(axis=1)
    return np.asarray(2.0 * mesh.face_areas <= share * longest**2)


def _disagreeing(mesh: TriMesh) -> NDArray[np.bool_]:
    """Return (E,) whether both facets of an edge run along it in the same direction."""
    forward = mesh.faces < mesh.faces[:, [1, 2, 0]]
    sense = np.where(forward, 1, -1).ravel()
    total = np.bincount(mesh.face_edges.ravel(), sense, minlength=len(mesh.edges))
    return np.asarray((mesh.edge_face_count == 2) & (total != 0))


def _pinched(mesh: TriMesh) -> IndexArray:
    """Return the vertices whose facets, joined over edges there, fall into several fans."""
    corner_count = 3 * mesh.face_count
    if not corner_count:
        return frozen(np.empty(0, dtype=np.int32))
    # Nodes are corners of facets. The facets of an edge, in the order of edges, are linked one to
    # the next at both ends of the edge.
    edge = mesh.face_edges.ravel()
    order = np.argsort(edge, kind="stable")
    one, other = order[:-1], order[1:]
    together = edge[one] == edge[other]
    one, other = one[together], other[together]
    links = []
    for end in (0, 1):
        vertex = mesh.edges[edge[one], end]
        links.append(np.stack([_corner_at(mesh, one, vertex), _corner_at(mesh, other, vertex)]))
    start, stop = np.concatenate(links, axis=1)
    graph = sparse.coo_array(
        (np.ones(len(start), dtype=np.int8), (start, stop)), shape=(corner_count,) * 2
    )
    count, fan = csgraph.connected_components(graph, directed=False)
    at_vertex = np.empty(count, dtype=np.int64)
    at_vertex[fan] = mesh.faces.ravel()
    bad = np.bincount(at_vertex, minlength=mesh.vertex_count) > 1
    bad[mesh.edges[mesh.edge_face_count > 2]] = True
    return _where(bad)


def _corner_at(mesh: TriMesh, beside: NDArray[np.intp], vertex: IndexArray) -> NDArray[np.intp]:
    """Return the corner, of the facet a corner belongs to, that lies at a vertex."""
    face = beside // 3
    return np.asarray(3 * face + (mesh.faces[face] == vertex[:, None]).argmax(axis=1))


def _holes(mesh: TriMesh) -> tuple[Hole, ...]:
    """Return the chains along edges with one facet, longest first; each edge lies in one chain."""
    corner = np.flatnonzero(mesh.edge_face_count[mesh.face_edges.ravel()] == 1)
    face, k = np.divmod(corner, 3)
    ways: dict[int, list[tuple[int, int]]] = {}
    start, end = mesh.faces[face, k].tolist(), mesh.faces[face, (k + 1) % 3].tolist()
    for number, (a, b) in enumerate(zip(start, end, strict=True)):
        # Ways along the winding are taken first, from the end of the list.
        ways.setdefault(b, []).insert(0, (a, number))
        ways.setdefault(a, []).append((b, number))
    odd = [vertex for vertex, leading in ways.items() if len(leading) % 2]
    unused = set(range(len(start)))
    holes: list[Hole] = []
    for first in odd + start:
        while any(number in unused for _, number in ways[first]):
            for chain, is_closed in _walk(first, ways, unused):
                span = mesh.vertices[chain + chain[:1] if is_closed else chain]
                length = float(np.linalg.norm(np.diff(span, axis=0), axis=1).sum())
                vertices = frozen(np.array(chain, dtype=np.int32))
                holes.append(Hole(vertices=vertices, length_mm=length, is_closed=is_closed))
    return tuple(sorted(holes, key=lambda hole: -hole.length_mm))


def _walk(
    first: int, ways: dict[int, list[tuple[int, int]]], unused: set[int]
) -> list[tuple[list[int], bool]]:
    """Follow unused edges from a vertex until stuck; cut off each loop as it closes."""
    chain, place = [first], {first: 0}
    found: list[tuple[list[int], bool]] = []
    while True:
        left = ways[chain[-1]]
        while left and left[-1][1] not in unused:
            left.pop()
        if not left:
            break
        step, number = left.pop()
        unused.discard(number)
        if step not in place:
            place[step] = len(chain)
            chain.append(step)
            continue
        begin = place[step]
        found.append((chain[begin:], True))
        for vertex in chain[begin + 1 :]:
            del place[vertex]
        del chain[begin + 1 :]
    if len(chain) > 1:
        found.append((chain, False))
    return found


def _shells(mesh: TriMesh, kept: IndexArray, disagreeing: NDArray[np.bool_]) -> tuple[Shell, ...]:
    if not mesh.face_count:
        return ()
    inner = mesh.edge_face_count == 2
    one, other = mesh.edge_faces[inner].T
    graph = sparse.coo_array(
        (np.ones(len(one), dtype=np.int8), (one, other)), shape=(mesh.face_count,) * 2
    )
    count, label = csgraph.connected_components(graph, directed=False)
    area = np.bincount(label, mesh.face_areas, minlength=count)
    first = (mesh.vertices - mesh.centre)[mesh.faces[:, 0]]
    cross = 2.0 * mesh.face_areas[:, None] * mesh.face_normals
    volume = np.bincount(label, np.einsum("ij,ij->i", first, cross), minlength=count) / 6.0
    facets = np.bincount(label, minlength=count)
    points = _distinct(label, mesh.faces, count, mesh.vertex_count)
    edges = _distinct(label, mesh.face_edges, count, len(mesh.edges))
    is_open = np.zeros(count, dtype=np.bool_)
    is_open[label[(~inner)[mesh.face_edges].any(axis=1)]] = True
    is_odd = np.zeros(count, dtype=np.bool_)
    is_odd[label[disagreeing[mesh.face_edges].any(axis=1)]] = True
    order = np.argsort(label, kind="stable")
    ends = np.cumsum(facets)
    return tuple(
        Shell(
            faces=frozen(kept[order[ends[k] - facets[k] : ends[k]]]),
            area_mm2=float(area[k]),
            volume_mm3=_volume(volume[k], is_known=not (is_open[k] or is_odd[k])),
            euler=int(points[k] - edges[k] + facets[k]),
            is_closed=not is_open[k],
        )
        for k in np.argsort(-area, kind="stable")
    )


def _volume(volume: float, *, is_known: bool) -> float:
    return float(volume) if is_known else float("nan")


def _distinct(
    label: NDArray[np.int32], parts: IndexArray, count: int, part_count: int
) -> FloatArray:
    """Return for each label how many different parts (F, 3) its facets have."""
    pair = np.unique(label.astype(np.int64)[:, None] * part_count + parts)
    return np.bincount(pair // part_count, minlength=count).astype(np.float64)
