"""Triangle meshes against closed forms, and against trimesh."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from stainmap.surface.mesh import (
    TriMesh,
    boundary_loops,
    connected_pieces,
    largest_piece,
    loop_length,
    row_lengths,
    submesh,
)
from tests.surface import shapes


def test_sphere_has_its_area_and_volume() -> None:
    mesh = shapes.sphere(radius=5.0, subdivisions=5)
    assert mesh.area == pytest.approx(4.0 * np.pi * 25.0, rel=1e-3)
    assert mesh.volume == pytest.approx(4.0 / 3.0 * np.pi * 125.0, rel=2e-3)
    assert mesh.is_watertight
    assert np.allclose(mesh.extent, 10.0, rtol=1e-3)


def test_torus_has_its_area_and_volume() -> None:
    mesh = shapes.torus(5.0, 2.0)
    assert mesh.area == pytest.approx(4.0 * np.pi**2 * 10.0, rel=2e-3)
    assert mesh.volume == pytest.approx(2.0 * np.pi**2 * 5.0 * 4.0, rel=2e-3)
    assert mesh.vertex_count - len(mesh.edges) + mesh.face_count == 0


def test_cylinder_has_its_area_and_volume() -> None:
    mesh = shapes.of(trimesh.creation.cylinder(radius=1.6, height=3.0, sections=400))
    assert mesh.area == pytest.approx(2.0 * np.pi * 1.6 * (3.0 + 1.6), rel=1e-4)
    assert mesh.volume == pytest.approx(np.pi * 1.6**2 * 3.0, rel=1e-4)


def test_volume_does_not_depend_on_where_the_mesh_lies() -> None:
    box = shapes.box()
    far = TriMesh(box.vertices + 1e5, box.faces)
    assert far.volume == pytest.approx(24.0, rel=1e-9)


def test_derived_arrays_agree_with_trimesh() -> None:
    mesh = shapes.torus()
    other = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False)
    assert np.allclose(mesh.face_normals, other.face_normals)
    assert np.allclose(mesh.face_areas, other.area_faces)
    assert np.array_equal(mesh.edges, other.edges_unique[np.lexsort(other.edges_unique.T[::-1])])
    assert (mesh.edge_face_count == 2).all()
    assert mesh.vertex_areas.sum() == pytest.approx(other.area)
    pairs = {tuple(sorted(pair)) for pair in other.face_adjacency.tolist()}
    assert {tuple(pair) for pair in mesh.edge_faces.tolist()} == pairs


def test_lengths_and_centres_are_numpys_to_the_bit() -> None:
    rows = np.random.default_rng(0).normal(size=(5000, 3)) * np.logspace(-9, 9, 5000)[:, None]
    assert np.array_equal(row_lengths(rows), np.linalg.norm(rows, axis=1))
    mesh = shapes.torus()
    assert np.array_equal(mesh.face_centres, mesh.vertices[mesh.faces].mean(axis=1))
    assert row_lengths(np.empty((0, 3))).shape == (0,)


def test_edges_of_a_face_are_its_edges() -> None:
    mesh = shapes.sphere(subdivisions=2)
    for k in range(3):
        ends = np.sort(mesh.faces[:, [k, (k + 1) % 3]], axis=1)
        assert np.array_equal(mesh.edges[mesh.face_edges[:, k]], ends)


def test_vertex_normals_of_a_sphere_point_outward() -> None:
    mesh = shapes.sphere(radius=3.0)
    assert np.abs(mesh.vertex_normals - mesh.vertices / 3.0).max() < 6e-3


def test_adjacency_holds_edge_lengths() -> None:
    mesh = shapes.box()
    graph = mesh.adjacency.tocoo()
    span = np.linalg.norm(mesh.vertices[graph.row] - mesh.vertices[graph.col], axis=1)
    assert graph.nnz == 2 * len(mesh.edges)
    assert np.allclose(graph.data, span)


def test_open_tube_has_two_borders() -> None:
    mesh, parameters = shapes.tube(2.0, 5.0, 60, 20)
    loops = boundary_loops(mesh)
    assert [len(loop) for loop in loops] == [60, 60]
    assert not mesh.is_watertight
    ring = 2.0 * 60 * 2.0 * np.sin(np.pi / 60)
    assert [loop_length(mesh, loop) for loop in loops] == pytest.approx([ring, ring])
    assert set(np.concatenate(loops)) == set(np.flatnonzero(mesh.boundary_vertices))
    assert {float(np.ptp(parameters[loop, 1])) for loop in loops} == {0.0}


def test_borders_that_touch_in_a_point_are_told_apart() -> None:
    """Two triangles that share one vertex have two borders of three edges."""
    mesh = TriMesh(
        [[0, 0, 0], [1, 0, 0], [0, 1, 0], [-1, 0, 0], [0, -1, 0]], [[0, 1, 2], [0, 3, 4]]
    )
    assert sorted(len(loop) for loop in boundary_loops(mesh)) == [3, 3]


def test_closed_surface_has_no_border() -> None:
    assert boundary_loops(shapes.box()) == ()


def test_pieces_are_counted_with_and_without_a_mask() -> None:
    mesh, outer = shapes.two_spheres()
    count, labels = connected_pieces(mesh)
    assert count == 2
    assert len(set(labels[outer])) == len(set(labels[~outer])) == 1
    caps = np.abs(mesh.vertices[:, 2]) > 4.5
    count, labels = connected_pieces(mesh, caps)
    assert count == 2
    assert np.array_equal(labels < 0, ~caps)
    assert np.array_equal(largest_piece(mesh, np.ones(len(outer), bool)), outer)
    assert not largest_piece(mesh, np.zeros(len(outer), bool)).any()


def test_submesh_remembers_its_vertices() -> None:
    mesh = shapes.sphere()
    upper = (mesh.vertices[mesh.faces][:, :, 2] > 0).all(axis=1)
    part, vertices = submesh(mesh, upper)
    assert part.face_count == upper.sum()
    assert np.array_equal(part.vertices, mesh.vertices[vertices])
    assert np.array_equal(vertices[part.faces], mesh.faces[upper])


def test_arrays_cannot_be_changed() -> None:
    mesh = shapes.box()
    for array in (mesh.vertices, mesh.faces, mesh.face_normals, mesh.edges, mesh.vertex_areas):
        with pytest.raises(ValueError, match="read-only"):
            array[0] = 0


def test_input_arrays_are_copied() -> None:
    vertices = np.eye(3)
    mesh = TriMesh(vertices, [[0, 1, 2]])
    vertices[:] = 9.0
    assert mesh.vertices.max() == 1.0


def test_scaling_scales() -> None:
    assert shapes.box().scaled(2.0).volume == pytest.approx(8 * 24.0)
    with pytest.raises(ValueError, match="positive"):
        shapes.box().scaled(0.0)


@pytest.mark.parametrize(
    ("vertices", "faces", "what"),
    [
        (np.zeros((3, 2)), [[0, 1, 2]], "shape"),
        (np.zeros((3, 3)), [[0, 1]], "shape"),
        ([[0, 0, np.nan], [1, 0, 0], [0, 1, 0]], [[0, 1, 2]], "finite"),
        (np.eye(3), [[0, 1, 3]], "does not exist"),
        (np.eye(3), [[0, 1, -1]], "does not exist"),
        (np.eye(3), [[0, 1, 1]], "twice"),
    ],
)
def test_wrong_input_is_refused(vertices: object, faces: object, what: str) -> None:
    with pytest.raises(ValueError, match=what):
        TriMesh(vertices, faces)


def test_empty_mesh_is_harmless() -> None:
    mesh = TriMesh(np.empty((0, 3)), np.empty((0, 3), int))
    assert mesh.area == 0.0
    assert mesh.volume == 0.0
    assert not mesh.is_watertight
    assert len(mesh.edges) == 0
    assert connected_pieces(mesh)[0] == 0


def test_what_was_derived_can_be_forgotten_and_derived_again() -> None:
    mesh = shapes.sphere(3)
    edges, normals = mesh.edges.copy(), mesh.vertex_normals
    mesh.forget_derived(keep=("vertex_normals",))
    assert "_edge_table" not in vars(mesh)
    assert mesh.vertex_normals is normals
    assert np.array_equal(mesh.edges, edges)
