"""Which vertex lies where another would be in a mirror."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from stainmap.surface.mesh import BoolArray, IndexArray, TriMesh

# Among this many nearest vertices one that faces the same way is looked for.
_LOOKED_AT = 8


def mirror_sources(
    mesh: TriMesh,
    point_mm: ArrayLike,
    normal: ArrayLike,
    *,
    targets: BoolArray,
    sources: BoolArray,
) -> tuple[IndexArray, IndexArray]:
    """Return, for each target, the source nearest to its mirror image and facing the same way.

    Parameters
    ----------
    mesh
        The surface.
    point_mm, normal
        (3,) a point of the mirror and a direction across it.
    targets, sources
        (V,) bool. Whom to find a partner for, and who may be one.

    Returns
    -------
    target, source
        (k,) int32 vertices, in pairs. Both are empty if there is no source.
    """
    from scipy.spatial import KDTree  # noqa: PLC0415 - slow to import

    across = np.asarray(normal, dtype=np.float64)
    across = across / np.linalg.norm(across)
    target, source = np.flatnonzero(targets), np.flatnonzero(sources)
    if not len(target) or not len(source):
        nothing = np.empty(0, np.int32)
        return nothing, nothing
    offset = (mesh.vertices[target] - np.asarray(point_mm, dtype=np.float64)) @ across
    image = mesh.vertices[target] - 2.0 * offset[:, None] * across
    facing = mesh.vertex_normals[target]
    facing = facing - 2.0 * (facing @ across)[:, None] * across
    count = min(_LOOKED_AT, len(source))
    away, near = KDTree(mesh.vertices[source]).query(image, k=count)
    away = np.asarray(away).reshape(-1, count)
    near = np.asarray(near).reshape(-1, count)
    turned = np.einsum("nki,ni->nk", mesh.vertex_normals[source[near]], facing) <= 0.0
    best = np.where(turned, away + away.max(), away).argmin(axis=1)
    found = source[near[np.arange(len(target)), best]]
    return target.astype(np.int32), found.astype(np.int32)
