"""The wall, what lies opposite, and curvature, on shapes of which they are known."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import trimesh

from stainmap.errors import CancelledError
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.predict.shape import crown_shape
from stainmap.surface.diffusion import SurfaceOperator
from tests.predict.crowns import hollow_molar, on_mesh, painted_dome
from tests.surface.shapes import of


def test_wall_of_concentric_hemispheres() -> None:
    case = painted_dome(["barley"], wall_mm=0.7)
    shape = crown_shape(case)
    assert not shape.assumed_wall
    # At the rim itself the nearest vertex of the other side is as far away as anywhere.
    assert shape.wall_mm == pytest.approx(0.7, abs=0.01)
    assert np.array_equal(shape.inner, ~shape.outer)
    vertices = shape.mesh.vertices
    direction = vertices / np.linalg.norm(vertices, axis=1)[:, None]
    assert (shape.outer[shape.partner] != shape.outer).all()
    assert (direction * direction[shape.partner]).sum(axis=1).min() > 0.999


def test_curvature_of_the_hemispheres_is_two_over_the_radius() -> None:
    """Convex outside, concave within [Meyer2003]; the smoothing takes a little off."""
    shape = crown_shape(painted_dome(["barley"]))
    away = shape.mesh.vertices[:, 2] > 1.5
    outside = shape.curvature_per_mm[away & shape.outer]
    inside = shape.curvature_per_mm[away & shape.inner]
    assert np.median(outside) == pytest.approx(2 / 5.0, rel=0.05)
    assert np.median(inside) == pytest.approx(-2 / 4.0, rel=0.05)


def test_solid_crown_has_an_assumed_wall_that_tapers_to_the_margin() -> None:
    ball = of(trimesh.creation.icosphere(subdivisions=5, radius=5.0))
    outer = ball.vertices[:, 2] > -2.0
    case = on_mesh(painted_dome(["barley"]), ball, outer, assumed_wall_mm=1.2)
    shape = crown_shape(case)
    assert shape.assumed_wall
    assert (shape.partner == -1).all()
    # Distance along the sphere from the margin, a circle of latitude; edges make it 3 % too long.
    height = 5.0 * (np.arcsin(ball.vertices[:, 2] / 5.0) - np.arcsin(-2.0 / 5.0))
    far, at, middle = (
        outer & (height > 1.7),
        outer & (height < 0.05),
        outer & (np.abs(height - 0.75) < 0.03),
    )
    assert shape.wall_mm[far] == pytest.approx(1.2)
    assert shape.wall_mm[at] == pytest.approx(0.5, abs=0.03)
    assert shape.wall_mm[middle] == pytest.approx((0.5 + 1.2) / 2, abs=0.1)


def test_the_rim_has_the_wall_of_what_is_beside_it() -> None:
    case = painted_dome(["barley"], wall_mm=0.8)
    reading = case.reading
    rim = ~reading.outer & (case.surface.mesh.vertices[:, 2] < 0.2)
    shape = crown_shape(replace(case, reading=replace(reading, rim=rim)))
    assert rim.any()
    assert shape.wall_mm[rim] == pytest.approx(0.8, abs=0.1)
    assert shape.outer[shape.partner[rim]].all()


def test_a_pontic_has_no_cavity_of_its_own() -> None:
    """Its wall is the way to the cavity next door; its underside is not the inside of a wall."""
    case = painted_dome(["barley"])
    along = case.surface.mesh.vertices[:, 0]
    pontic = (along > 0).astype(np.uint8)
    units = (
        Unit(tooth=Tooth(number=36), role=Role.RETAINER),
        Unit(tooth=Tooth(number=37), role=Role.PONTIC),
    )
    shape = crown_shape(
        replace(case, units=units, reading=replace(case.reading, unit_index=pontic))
    )
    far = shape.outer & (along > 3.5)
    assert (shape.wall_mm[far] > 3.0).all()
    assert shape.wall_mm[shape.outer & (along < -0.5)] == pytest.approx(1.0, abs=0.02)


def test_a_solid_pontic_is_as_thick_as_it_looks() -> None:
    ball = of(trimesh.creation.icosphere(subdivisions=4, radius=5.0))
    along = ball.vertices[:, 0]
    case = on_mesh(
        painted_dome(["barley"]),
        ball,
        ball.vertices[:, 2] > -3.0,
        assumed_wall_mm=1.0,
        unit_index=(along > 0).astype(np.uint8),
    )
    units = (
        Unit(tooth=Tooth(number=36), role=Role.RETAINER),
        Unit(tooth=Tooth(number=37), role=Role.PONTIC),
    )
    wall = crown_shape(replace(case, units=units)).wall_mm
    assert wall[along > 4.0].min() > 4.0
    beside = (along > 0) & (along < 0.5)
    assert wall[beside] == pytest.approx(1.0 + along[beside], abs=0.4)
    assert wall[along <= 0].max() == pytest.approx(1.0)


def blade(number: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return vertices, wall and outer of a solid blade, thin across y, standing in z."""
    ball = trimesh.creation.icosphere(subdivisions=5)
    mesh = of(trimesh.Trimesh(ball.vertices * [4.0, 1.0, 6.0], ball.faces, process=False))
    outer = mesh.vertices[:, 2] > -4.0
    case = on_mesh(
        replace(painted_dome(["barley"]), units=(Unit(tooth=Tooth(number=number)),)),
        mesh,
        outer,
        assumed_wall_mm=1.0,
        depth_below_crest_mm=(6.0 - mesh.vertices[:, 2]).astype(np.float32),
    )
    return mesh.vertices, crown_shape(case).wall_mm, outer


def test_light_leaves_a_front_tooth_by_the_other_face_of_its_edge() -> None:
    vertices, wall, _ = blade(11)
    x, y, z = vertices.T
    # On the flanks 0.3 to 1 mm below the edge the way across is shorter than the assumed wall;
    # the faces run together, so the nearest point of the other one lies a little higher.
    flank = (np.abs(x) < 1.0) & (z > 5.0) & (z < 5.7)
    across = np.minimum(2.0 * np.abs(y[flank]), 1.0)
    assert across.min() < 0.6
    assert (wall[flank] <= across + 1e-6).all()
    assert (wall[flank] >= 0.65 * across).all()
    assert wall[(np.abs(x) < 1.0) & (z < 4.3) & (z > 0.0)] == pytest.approx(1.0)


def test_a_back_tooth_has_no_such_edge() -> None:
    vertices, wall, _ = blade(46)
    assert wall[vertices[:, 2] > 0.0] == pytest.approx(1.0)


def test_real_hollow_molar_has_the_wall_it_was_given(shared_meshes: Path) -> None:
    """It was hollowed to about 0.9 mm."""
    case = hollow_molar(shared_meshes, ["barley"], max_edge_mm=0.3)
    operator = SurfaceOperator(case.surface.mesh)
    shape = crown_shape(case, operator)
    assert shape.operator is operator
    assert np.median(shape.wall_mm[shape.outer]) == pytest.approx(0.9, abs=0.05)


def test_progress_can_stop_it() -> None:
    said = []

    def stop(share: float, phrase: str) -> None:
        said.append((share, phrase))
        if share > 0.3:
            raise CancelledError("stopped")

    with pytest.raises(CancelledError):
        crown_shape(painted_dome(["barley"]), progress=stop)
    assert [share for share, _ in said] == sorted(share for share, _ in said)
    assert all(phrase for _, phrase in said)
