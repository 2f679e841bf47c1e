"""Patches between creases and lines along them, on bodies whose creases are known."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from stainmap.surface.crease_field import CreaseField, crease_field
from stainmap.surface.crease_fill import crease_patches, patch_at
from stainmap.surface.crease_path import CreasePaths, line_band, smooth_line
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from tests.surface import shapes


def fine_box(extents: tuple[float, float, float], edge_mm: float) -> TriMesh:
    """Return a box by the library trimesh, cut until no edge is longer."""
    box = trimesh.creation.box(extents=extents)
    vertices, faces = trimesh.remesh.subdivide_to_size(  # type: ignore[no-untyped-call]
        box.vertices, box.faces, edge_mm
    )
    mesh = trimesh.Trimesh(vertices, faces)
    mesh.merge_vertices()
    return shapes.of(mesh)


def folded_sheet(angle_deg: float, size: float = 6.0, count: int = 60) -> TriMesh:
    """Return a square sheet, folded along x = 0 into a valley whose flanks rise at an angle."""
    parameters, faces = shapes.sheet(count, count, wide=size, high=size)
    x, y = parameters.T - size / 2.0
    rise = np.radians(angle_deg)
    return TriMesh(np.stack([x * np.cos(rise), y, np.abs(x) * np.sin(rise)], axis=1), faces)


def creases_of(mesh: TriMesh, scale_mm: float = 0.15) -> CreaseField:
    return crease_field(SurfaceOperator(mesh), scale_mm)


@pytest.fixture(scope="module")
def box() -> tuple[TriMesh, CreaseField]:
    mesh = fine_box((4.0, 5.0, 6.0), 0.25)
    return mesh, creases_of(mesh)


@pytest.fixture(scope="module")
def sheet() -> tuple[TriMesh, CreaseField]:
    mesh = folded_sheet(40.0)
    return mesh, creases_of(mesh)


def test_the_ridge_of_a_cylinder_is_one_over_its_radius() -> None:
    mesh, _ = shapes.tube(2.0, 8.0, 120, 80)
    field = creases_of(mesh, 0.1)
    middle = np.abs(mesh.vertices[:, 2] - mesh.vertices[:, 2].mean()) < 2.0
    assert np.allclose(field.ridge[middle], 0.5, rtol=0.02)
    assert (field.groove[middle] < 0.01).all()
    assert np.array_equal(field.bend, np.maximum(field.groove, field.ridge))


def test_a_box_falls_into_its_six_sides(box: tuple[TriMesh, CreaseField]) -> None:
    """Closed form: six patches of 20, 24 and 30 mm2 twice each, each on one side only."""
    mesh, field = box
    label = crease_patches(mesh, field.bend, 0.7)
    numbers = np.unique(label)
    assert len(numbers) == 6
    areas = np.sort([mesh.vertex_areas[label == one].sum() for one in numbers])
    # Edge vertices go to one side or the other: off by half an edge all round at most.
    assert areas == pytest.approx([20.0, 20.0, 24.0, 24.0, 30.0, 30.0], rel=0.09)
    sides = np.abs(mesh.vertices) / np.array([2.0, 2.5, 3.0])
    inner = (sides > 0.999).sum(axis=1) == 1
    side = sides.argmax(axis=1) * 2 + (mesh.vertices[np.arange(len(label)), sides.argmax(1)] > 0)
    for one in numbers:
        assert len(np.unique(side[inner & (label == one)])) == 1


def test_a_flood_stops_at_the_fold_and_nowhere_else(sheet: tuple[TriMesh, CreaseField]) -> None:
    mesh, field = sheet
    label = crease_patches(mesh, field.bend, 1.0)
    assert len(np.unique(label)) == 2
    left, right = mesh.vertices[:, 0] < -0.15, mesh.vertices[:, 0] > 0.15
    assert len(np.unique(label[left])) == len(np.unique(label[right])) == 1
    seed = int(np.argmin(np.linalg.norm(mesh.vertices - [2.0, 0.0, 1.5], axis=1)))
    filled = patch_at(label, seed)
    assert (mesh.vertices[filled, 0] > -0.11).all()
    # With a gentler fold than is asked for there is nothing to stop at.
    assert len(np.unique(crease_patches(mesh, field.bend, 20.0))) == 1


def test_a_short_gap_in_a_crease_does_not_leak(sheet: tuple[TriMesh, CreaseField]) -> None:
    mesh, field = sheet
    gap = np.abs(mesh.vertices[:, 1]) < 0.16
    bend = np.where(gap, 0.0, field.bend)
    assert len(np.unique(crease_patches(mesh, bend, 1.0, clearance_mm=0.3))) == 2
    wide = np.abs(mesh.vertices[:, 1]) < 0.8
    bend = np.where(wide, 0.0, field.bend)
    assert len(np.unique(crease_patches(mesh, bend, 1.0, clearance_mm=0.3))) == 1


def test_patches_keep_to_a_mask(box: tuple[TriMesh, CreaseField]) -> None:
    mesh, field = box
    within = mesh.vertices[:, 2] > 0.0
    label = crease_patches(mesh, field.bend, 0.7, within=within)
    assert ((label >= 0) == within).all()
    assert len(np.unique(label[within])) == 5
    assert len(patch_at(label, int(np.flatnonzero(~within)[0]))) == 0
    nobody = crease_patches(mesh, field.bend, 0.7, within=np.zeros_like(within))
    assert (nobody == -1).all()


def nearest(mesh: TriMesh, point: tuple[float, float, float]) -> int:
    return int(np.argmin(np.linalg.norm(mesh.vertices - point, axis=1)))


def test_a_line_follows_the_edges_of_a_box(box: tuple[TriMesh, CreaseField]) -> None:
    """The straight way over the top is shorter, and is not taken."""
    mesh, field = box
    start, end = nearest(mesh, (-2.0, -2.5, 3.0)), nearest(mesh, (2.0, 2.5, 3.0))
    way = CreasePaths(mesh, field, start).to(end)
    assert way[0] == start
    assert way[-1] == end
    sides = (np.abs(mesh.vertices[way]) / np.array([2.0, 2.5, 3.0]) > 0.999).sum(axis=1)
    assert (sides >= 2).mean() > 0.9
    length = np.linalg.norm(np.diff(mesh.vertices[way], axis=0), axis=1).sum()
    assert length == pytest.approx(9.0, rel=0.03)


def test_a_line_follows_a_groove_though_its_ends_lie_beside_it(
    sheet: tuple[TriMesh, CreaseField],
) -> None:
    mesh, field = sheet
    lift = 0.5 * np.tan(np.radians(40.0))
    start, end = nearest(mesh, (0.5, -2.5, lift)), nearest(mesh, (0.5, 2.5, lift))
    way = mesh.vertices[CreasePaths(mesh, field, start).to(end)]
    middle = np.abs(way[:, 1]) < 1.5
    assert middle.any()
    assert (np.abs(way[middle, 0]) < 0.11).all()


def test_without_a_crease_a_line_is_the_shortest_way() -> None:
    """Closed form: on a cylinder it is the helix, of length hypot(rise, radius times angle)."""
    mesh, parameters = shapes.tube(2.0, 8.0, 120, 80)
    flat = CreaseField(
        scale_mm=0.1, groove=np.zeros(mesh.vertex_count), ridge=np.zeros(mesh.vertex_count)
    )
    start, end = nearest(mesh, (2.0, 0.0, mesh.vertices[:, 2].min())), 0
    far = np.abs(parameters[:, 0] - np.pi / 2) + np.abs(mesh.vertices[:, 2] - mesh.centre[2])
    end = int(np.argmin(far))
    way = mesh.vertices[CreasePaths(mesh, flat, start).to(end)]
    length = np.linalg.norm(np.diff(smooth_line(way), axis=0), axis=1).sum()
    rise = abs(mesh.vertices[end, 2] - mesh.vertices[start, 2])
    assert length == pytest.approx(np.hypot(rise, np.pi), rel=0.04)


def test_no_way_leads_to_another_piece_or_out_of_the_mask() -> None:
    mesh, outside = shapes.two_spheres()
    flat = CreaseField(
        scale_mm=0.1, groove=np.zeros(mesh.vertex_count), ridge=np.zeros(mesh.vertex_count)
    )
    paths = CreasePaths(mesh, flat, 0, within=outside)
    assert len(paths.to(int(np.flatnonzero(~outside)[0]))) == 0
    assert list(paths.to(0)) == [0]
    with pytest.raises(ValueError, match="no vertex"):
        CreasePaths(mesh, flat, mesh.vertex_count)


def test_a_band_is_as_wide_as_the_brush_and_does_not_reach_through_a_wall() -> None:
    """Closed form: a band of radius r along length l on a plane covers 2 r l + pi r^2."""
    mesh = shapes.plane(8.0, 160)
    row = np.flatnonzero(np.abs(mesh.vertices[:, 1]) < 1e-9)
    row = row[np.argsort(mesh.vertices[row, 0])]
    way = row[(mesh.vertices[row, 0] > -2.01) & (mesh.vertices[row, 0] < 2.01)].astype(np.int32)
    vertices, weight = line_band(mesh, way, 0.5, 0.0)
    assert (weight == 1.0).all()
    assert mesh.vertex_areas[vertices].sum() == pytest.approx(4.0 + np.pi / 4, rel=0.03)
    soft, weight = line_band(mesh, way, 0.5, 1.0)
    away = np.abs(mesh.vertices[soft, 1])
    middle = np.abs(mesh.vertices[soft, 0]) < 1.5
    half = middle & (np.abs(away - 0.25) < 1e-6)
    assert weight[half] == pytest.approx(0.5, abs=0.02)
    shell, outside = shapes.two_spheres(5.0, 4.8)
    band, _ = line_band(shell, np.array([0], np.int32), 0.6, 0.0)
    assert outside[band].all()
    with pytest.raises(ValueError, match="radius"):
        line_band(mesh, way, 0.0, 0.0)
    with pytest.raises(ValueError, match="at least one"):
        line_band(mesh, way[:0], 0.5, 0.0)
