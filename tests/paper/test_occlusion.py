"""Ambient occlusion against closed forms."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from stainmap.errors import CancelledError
from stainmap.paper.occlusion import ambient_occlusion
from stainmap.surface.mesh import TriMesh


def bowl(open_share: float) -> TriMesh:
    """Return a spherical bowl of radius 5 mm, seen from inside, with its top cut away."""
    ball = trimesh.creation.icosphere(subdivisions=5)
    brim = 1.0 - 2.0 * open_share
    kept = ball.faces[ball.vertices[ball.faces][:, :, 2].mean(axis=1) < brim]
    used, faces = np.unique(kept, return_inverse=True)
    return TriMesh(5.0 * ball.vertices[used], faces.reshape(-1, 3)[:, ::-1])


@pytest.mark.parametrize("open_share", [0.25, 0.5, 0.75])
def test_in_a_spherical_bowl_openness_is_the_missing_share_of_the_sphere(
    open_share: float,
) -> None:
    # From any point inside a sphere, any part of the sphere has the view factor area / whole
    # area: textbook of radiative transfer, from memory; follows from cos / r = 1 / 2R.
    mesh = bowl(open_share)
    truly_open = 1.0 - mesh.area / (4.0 * np.pi * 25.0)
    openness = ambient_occlusion(mesh)
    below_brim = mesh.vertices[:, 2] < mesh.vertices[:, 2].max() - 0.6
    assert openness[below_brim].mean() == pytest.approx(truly_open, abs=0.012)
    assert openness[below_brim].std() < 0.03
    assert np.abs(openness[below_brim] - truly_open).max() < 0.1


def test_a_ball_sees_the_whole_sky() -> None:
    ball = trimesh.creation.icosphere(subdivisions=4)
    openness = ambient_occlusion(TriMesh(3.0 * ball.vertices, ball.faces))
    assert openness.min() > 0.97
    assert openness.mean() > 0.99


def test_the_inside_of_a_closed_shell_sees_nothing_of_it() -> None:
    ball = trimesh.creation.icosphere(subdivisions=4)
    count = len(ball.vertices)
    shell = TriMesh(
        np.concatenate([3.0 * ball.vertices, 2.0 * ball.vertices]),
        np.concatenate([ball.faces, ball.faces[:, ::-1] + count]),
    )
    openness = ambient_occlusion(shell)
    assert openness[:count].min() > 0.97
    assert openness[count:].max() < 0.02


def test_it_does_not_matter_where_the_body_lies_or_how_large_it_is() -> None:
    mesh = bowl(0.5)
    moved = TriMesh(0.01 * mesh.vertices + [40.0, -3.0, 7.0], mesh.faces)
    np.testing.assert_allclose(ambient_occlusion(moved), ambient_occlusion(mesh), atol=0.03)


def test_it_can_be_stopped() -> None:
    def stop(share: float, what: str) -> None:
        if share > 0.2:
            raise CancelledError("stopped")

    with pytest.raises(CancelledError):
        ambient_occlusion(bowl(0.5), progress=stop)
