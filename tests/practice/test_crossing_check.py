"""The check for crossings that other tests rely on finds a crossing where there is one."""

from __future__ import annotations

import numpy as np
import trimesh
from igl.copyleft.cgal import remesh_self_intersections


def test_two_balls_that_overlap_are_found_to_cross() -> None:
    ball = trimesh.creation.icosphere(subdivisions=2)
    counts = []
    for shift in (0.7, 2.5):
        vertices = np.concatenate([ball.vertices, ball.vertices + np.array([shift, 0.0, 0.0])])
        faces = np.concatenate([ball.faces, ball.faces + len(ball.vertices)]).astype(np.int64)
        counts.append(len(remesh_self_intersections(vertices, faces, detect_only=True)[2]))
    assert counts[0] > 10
    assert counts[1] == 0
