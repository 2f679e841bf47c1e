"""Where a plane cuts a surface, piece by piece, with what the surface knows at both ends."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import FloatArray, IndexArray, TriMesh


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CutLines:
    """The pieces in which a plane cuts the faces of a mesh, n of them.

    Parameters
    ----------
    faces
        (n,) the face each lies in.
    ends
        (n, 2, 3) its two ends, mm. Seen from where the plane's normal points, a body wound outward
        lies to the left of the way from the first to the second.
    vertices, share
        (n, 2, 2) the vertices of the edge each end lies on, the lower number first, and (n, 2)
        how far along it lies, 0 to 1.
    """

    faces: IndexArray
    ends: FloatArray
    vertices: IndexArray
    share: FloatArray

    def at(self, values: NDArray[np.floating]) -> FloatArray:
        """Return values (V,) or (V, k) of vertices at both ends: (n, 2) or (n, 2, k)."""
        first, second = values[self.vertices[..., 0]], values[self.vertices[..., 1]]
        share = self.share if values.ndim == 1 else self.share[..., None]
        return np.asarray(first + share * (second - first), dtype=np.float64)

    def chains(self) -> list[IndexArray]:
        """Return the pieces in the order of their outlines: one array of indices per outline."""
        numbers = self.vertices.astype(np.int64)
        key = numbers[..., 0] * (int(numbers.max(initial=0)) + 1) + numbers[..., 1]
        starts: dict[int, list[int]] = {}
        for piece, edge in enumerate(key[:, 0].tolist()):
            starts.setdefault(edge, []).append(piece)
        ended = set(key[:, 1].tolist())
        # Open outlines begin where nothing ends; closed ones anywhere.
        order = sorted(range(len(key)), key=lambda piece: int(key[piece, 0]) in ended)
        left = set(range(len(key)))
        chains = []
        for first in order:
            if first not in left:
                continue
            chain = [first]
            left.discard(first)
            while True:
                after = [one for one in starts.get(int(key[chain[-1], 1]), ()) if one in left]
                if not after:
                    break
                chain.append(after[0])
                left.discard(after[0])
            chains.append(np.array(chain, dtype=np.int32))
        return chains


def cut_lines(mesh: TriMesh, normal: FloatArray, offset_mm: float) -> CutLines:
    """Return the pieces in which the plane ``x . normal = offset`` cuts a mesh.

    Vertices in the plane count as lying above it, so that nothing is cut twice.
    """
    above = mesh.vertices @ normal - offset_mm
    side = above >= 0.0
    inside = side[mesh.faces].sum(axis=1)
    faces = np.flatnonzero((inside > 0) & (inside < 3))
    corners = mesh.faces[faces]
    up = side[corners]
    # The corner that is alone on its side; both edges at it are cut.
    alone = np.where(up.sum(axis=1) == 1, up.argmax(axis=1), (~up).argmax(axis=1))
    row = np.arange(len(faces))
    pairs, shares = [], []
    for turn in (1, 2):
        pair = np.stack([corners[row, alone], corners[row, (alone + turn) % 3]], axis=1)
        pair = np.sort(pair, axis=1)
        low, high = above[pair[:, 0]], above[pair[:, 1]]
        pairs.append(pair)
        shares.append(low / (low - high))
    vertices, share = np.stack(pairs, axis=1), np.stack(shares, axis=1)
    first, second = mesh.vertices[vertices[..., 0]], mesh.vertices[vertices[..., 1]]
    ends = first + share[..., None] * (second - first)
    a, b, c = (mesh.vertices[corners[:, k]] for k in range(3))
    forward = np.cross(normal, np.cross(b - a, c - a))
    back = np.einsum("ni,ni->n", ends[:, 1] - ends[:, 0], forward) < 0.0
    for one in (ends, vertices, share):
        one[back] = one[back][:, ::-1]
    return CutLines(
        faces=faces.astype(np.int32), ends=ends, vertices=vertices.astype(np.int32), share=share
    )
