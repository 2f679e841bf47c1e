"""Lines that show on the crown what a tool would do."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import BoolArray, IndexArray, TriMesh
from stainmap.ui.crown_overlay import Preview

FloatArray = NDArray[np.float64]
_ROUNDS = 3


def outline_of(mesh: TriMesh, share: BoolArray | NDArray[np.float32]) -> Preview:
    """Return the border of a region (V,) or of a soft mask at one half."""
    from stainmap.paper.isolines import isolines  # noqa: PLC0415

    lines = isolines(mesh, np.asarray(share, dtype=np.float64), 0.5)
    points, normals = lines.take(mesh.vertices), lines.take(mesh.vertex_normals)
    return _preview(
        [
            (_rounded(points[a:b]), normals[a:b])
            for a, b in zip(lines.starts[:-1], lines.starts[1:], strict=True)
        ]
    )


def line_of(mesh: TriMesh, way: IndexArray, start: int) -> Preview:
    """Return the smoothed line over the vertices of a way, and the place it begins at."""
    from stainmap.surface.crease_path import smooth_line  # noqa: PLC0415

    chain = [(smooth_line(mesh.vertices[way]), mesh.vertex_normals[way])] if len(way) > 1 else []
    found = _preview(chain)
    return Preview(pieces=found.pieces, normals=found.normals, start=mesh.vertices[start])


def arrows_of(ends: list[tuple[FloatArray, FloatArray]]) -> Preview:
    """Return strokes, each from (2, 3) its beginning to its end with (2, 3) normals."""
    return _preview(ends)


def _rounded(points: FloatArray) -> FloatArray:
    """Return a line without the corners of the facets; a closed one stays closed."""
    from stainmap.surface.crease_path import smooth_line  # noqa: PLC0415

    if len(points) < 4 or not np.allclose(points[0], points[-1]):
        return smooth_line(points, _ROUNDS)
    line = points[:-1]
    for _ in range(_ROUNDS):
        line = 0.5 * line + 0.25 * (np.roll(line, 1, axis=0) + np.roll(line, -1, axis=0))
    return np.concatenate([line, line[:1]])


def _preview(chains: list[tuple[FloatArray, FloatArray]]) -> Preview:
    pieces = [np.stack([points[:-1], points[1:]], axis=1) for points, _ in chains]
    normals = [0.5 * (along[:-1] + along[1:]) for _, along in chains]
    nothing = not pieces
    return Preview(
        pieces=np.empty((0, 2, 3)) if nothing else np.concatenate(pieces),
        normals=np.empty((0, 3)) if nothing else np.concatenate(normals),
    )
