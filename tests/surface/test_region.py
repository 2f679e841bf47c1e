"""Regions grown, shrunk, smoothed and mirrored, on a plane and on bodies with closed forms."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from stainmap.surface.mirroring import mirror_sources
from stainmap.surface.region import (
    border_distance,
    border_edges,
    dilated,
    eroded,
    grown,
    nearest_labels,
    shrunk,
    smooth_region,
)
from tests.surface import shapes


@pytest.fixture(scope="module")
def plane() -> TriMesh:
    return shapes.plane(8.0, 120)


def disc_radius(mesh: TriMesh, region: np.ndarray) -> float:
    return float(np.sqrt(mesh.vertex_areas[region].sum() / np.pi))


def test_a_disc_grows_and_shrinks_by_the_length_asked_for(plane: TriMesh) -> None:
    """Closed form: radius 2 becomes 2.5 and 1.5, to half an edge (0.033) and 2.5 % of the way."""
    disc = np.hypot(*plane.vertices[:, :2].T) < 2.0
    assert disc_radius(plane, grown(plane, disc, 0.5)) == pytest.approx(2.5, abs=0.046)
    assert disc_radius(plane, shrunk(plane, disc, 0.5)) == pytest.approx(1.5, abs=0.046)
    assert np.array_equal(grown(plane, disc, 0.0), disc)
    assert not grown(plane, np.zeros_like(disc), 0.5).any()
    with pytest.raises(ValueError, match="by a length"):
        grown(plane, disc, -0.1)


def test_a_cap_grows_along_the_sphere_and_not_through_it() -> None:
    """Closed form: the area of a cap of angle t is 2 pi r^2 (1 - cos t)."""
    ball = shapes.sphere(5.0, 6)
    cap = ball.vertices[:, 2] > 5.0 * np.cos(0.4)
    area = ball.vertex_areas[grown(ball, cap, 1.0)].sum()
    assert area == pytest.approx(2.0 * np.pi * 25.0 * (1.0 - np.cos(0.6)), rel=0.04)
    shell, outside = shapes.two_spheres(5.0, 4.8)
    cap = outside & (shell.vertices[:, 2] > 4.0)
    assert outside[grown(shell, cap, 1.0)].all()


def test_growing_keeps_to_the_mask_and_shrinking_stays_at_its_edge(plane: TriMesh) -> None:
    x, y = plane.vertices[:, :2].T
    half = x <= 0.01
    disc = (np.hypot(x, y) < 2.0) & half
    larger = grown(plane, disc, 0.5, within=half)
    assert not larger[~half].any()
    smaller = shrunk(plane, disc, 0.5, within=half)
    assert smaller[disc & (np.hypot(x, y) < 1.4)].all()
    assert not smaller[np.hypot(x, y) > 1.6].any()


def test_a_soft_edge_is_moved_and_keeps_its_width(plane: TriMesh) -> None:
    x = plane.vertices[:, 0]
    ramp = np.clip(0.5 - x / 0.8, 0.0, 1.0).astype(np.float32)
    middle = np.abs(plane.vertices[:, 1]) < 2.0
    for moved, by in ((dilated(plane, ramp, 0.5), 0.5), (eroded(plane, ramp, 0.5), -0.5)):
        expected = np.clip(0.5 - (x - by) / 0.8, 0.0, 1.0)
        assert np.abs(moved - expected)[middle].max() < 0.07
    hard = (x < 0.0).astype(np.float32)
    grew = dilated(plane, hard, 0.5)
    assert set(np.unique(grew)) <= {0.0, 1.0}
    assert (grew[middle] == (x < 0.5)[middle]).mean() > 0.99


def test_freed_places_take_the_label_next_to_them(plane: TriMesh) -> None:
    x = plane.vertices[:, 0]
    labels = np.where(x < 0, 1, 2).astype(np.uint8)
    freed = np.abs(x - 0.5) < 2.0
    filled = nearest_labels(plane, np.where(freed, 9, labels).astype(np.uint8), freed)
    clear = np.abs(x - 0.5) > 0.1
    assert (filled == np.where(x < 0.5, 1, 2))[clear].all()
    everywhere = np.ones_like(freed)
    assert np.array_equal(nearest_labels(plane, labels, everywhere), labels)


def test_the_border_of_a_half_plane_lies_where_it_lies(plane: TriMesh) -> None:
    x = plane.vertices[:, 0]
    distance = border_distance(plane, x > 0.03, 1.0)
    near = np.abs(x - 0.03) < 0.9
    assert np.abs(distance - (x - 0.03))[near].max() < 0.07
    assert distance.max() == 1.0
    assert (border_distance(plane, np.ones(len(x), bool), 1.0) == 1.0).all()


def test_wiggles_go_and_area_and_narrow_bands_stay(plane: TriMesh) -> None:
    x, y = plane.vertices[:, :2].T
    wavy = y < 0.12 * np.sin(2.0 * np.pi * x / 0.5)
    operator = SurfaceOperator(plane)
    smooth = smooth_region(operator, wavy, 0.4)
    area = plane.vertex_areas
    assert area[smooth].sum() == pytest.approx(area[wavy].sum(), rel=2e-3)
    inside = np.abs(x) < 3.0

    def off(region: np.ndarray) -> float:
        wrong = (region != (y < 0.0)) & inside
        return float(area[wrong].sum())

    assert off(smooth) < 0.5 * off(wavy)
    band = np.abs(y) < 0.15
    kept = smooth_region(operator, band, 0.2)
    assert area[band & kept].sum() > 0.9 * area[band].sum()
    whole = np.ones_like(band)
    assert np.array_equal(smooth_region(operator, whole, 0.2), whole)


def test_a_border_is_the_edges_that_cross_it(plane: TriMesh) -> None:
    region = plane.vertices[:, 0] > 0.03
    edges = border_edges(region, plane.edges)
    assert len(edges)
    assert (region[edges[:, 0]] != region[edges[:, 1]]).all()


def test_a_mirrored_vertex_is_found_on_the_side_of_the_wall_it_belongs_to() -> None:
    """An icosphere is symmetric in x: the partner lies exactly at the mirrored place."""
    shell, outside = shapes.two_spheres(5.0, 4.95)
    right = shell.vertices[:, 0] > 0.0
    target, source = mirror_sources(
        shell, (0.0, 0.0, 0.0), (3.0, 0.0, 0.0), targets=right, sources=~right
    )
    assert np.array_equal(target, np.flatnonzero(right))
    assert np.array_equal(outside[target], outside[source])
    image = shell.vertices[target] * [-1.0, 1.0, 1.0]
    assert np.allclose(shell.vertices[source], image, atol=1e-9)
    nobody, none = mirror_sources(
        shell, (0, 0, 0), (1, 0, 0), targets=right, sources=np.zeros_like(right)
    )
    assert len(nobody) == len(none) == 0
