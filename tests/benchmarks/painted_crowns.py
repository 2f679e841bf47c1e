"""Crowns of closed form in the sizes that are asked, coats on them, and a brush in one place."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.shape import CrownShape
from stainmap.surface.mesh import TriMesh
from tests.predict.crowns import on_mesh, painted_dome
from tests.surface.shapes import tube

LIQUIDS = ("barley", "tan", "stone", "clay", "slate", "ash", "heather", "umber")
EDGE_MM = 0.1


def painted(shape: CrownShape) -> NDArray[np.float32]:
    """Return coats (8, V), every step in half of all places, outside and inside."""
    rng = np.random.default_rng(0)
    vertices = shape.mesh.vertices
    waves = vertices @ rng.normal(0.0, 2.0, (3, len(LIQUIDS))) + rng.uniform(0.0, 6.0, 8)
    return (2.0 * (np.sin(waves) > 0.0)).T.astype(np.float32)


def long_tube(vertex_count: int) -> Case:
    """Return a hollow bar of closed form: as many vertices as wanted, all at the same spacing.

    A dab does not see how long it is. Outer radius 4 mm, wall 1 mm.
    """
    around = round(2.0 * np.pi * 4.0 / EDGE_MM)
    along = vertex_count // (2 * around)
    outside, _ = tube(4.0, along * EDGE_MM, around, along)
    inside, _ = tube(3.0, along * EDGE_MM, around, along)
    count = outside.vertex_count
    mesh = TriMesh(
        np.concatenate([outside.vertices, inside.vertices]),
        np.concatenate([outside.faces, inside.faces[:, ::-1] + count]),
    )
    return on_mesh(painted_dome(LIQUIDS), mesh, np.arange(2 * count) < count)


class Brushed:
    """A crown with a brush of 0.8 mm that stays in one place, its patch cut on hover."""

    def __init__(self, shape: CrownShape, engine: AppearanceEngine, at: NDArray) -> None:
        self.engine = engine
        self.coats = painted(shape)
        engine.whole(self.coats)
        distance = np.linalg.norm(shape.mesh.vertices - at, axis=1)
        self.touched = np.flatnonzero(shape.outer & (distance < 0.8)).astype(np.int32)
        self.pointed = int(np.where(shape.outer, distance, np.inf).argmin())
        assert engine.prepare_dab(self.pointed, 0.8)

    def dab(self) -> int:
        """Dab; return how many vertices were recoloured."""
        self.coats[7, self.touched] += 0.1
        return len(self.engine.dab(self.touched, self.coats[:, self.touched]).vertices)
