"""Wicking of the liquid against closed forms, and what it must never do."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import linalg

from stainmap.predict.wicking import Wicking, _conducting
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.builders import dome
from tests.predict.crowns import levels_of, strip
from tests.surface.shapes import of, plane

LENGTH_MM = 0.15


def spread(mesh: TriMesh, outer: NDArray, raw: NDArray, length_mm: float = LENGTH_MM) -> NDArray:
    """Return the load (V, L) after wicking, in the mesh's order."""
    levels = levels_of(mesh)
    wicking = Wicking(levels, outer[levels.order], length_mm)
    return wicking.spread(raw[levels.order].astype(np.float32))[levels.rank]


def everywhere(mesh: TriMesh) -> NDArray:
    return np.ones(mesh.vertex_count, bool)


def test_edge_of_a_stain_against_its_closed_form() -> None:
    """A step spread by 1 / (1 - s^2 d2/dx2) is 1 - exp(-x/s)/2 on its full side."""
    mesh = strip(6.0, 0.02, rows=2)
    x = mesh.vertices[:, 0]
    edge = x[x < 0].max() / 2.0
    exact = np.where(
        x > edge, 1 - np.exp((edge - x) / LENGTH_MM) / 2, np.exp((x - edge) / LENGTH_MM) / 2
    )
    found = spread(mesh, everywhere(mesh), (x > edge)[:, None])
    assert np.abs(found[:, 0] - exact).max() < 0.005


def test_a_drop_widens_by_its_second_moment() -> None:
    """The kernel K0(r/s) / (2 pi s^2) has the second moment 4 s^2, whatever the mesh."""
    mesh = plane(3.0, 120)
    radius = np.linalg.norm(mesh.vertices[:, :2], axis=1)
    # The equation is linear; much liquid, so that what the solver may leave is nothing beside it.
    raw = 1000.0 * (radius < 0.06)[:, None]
    weight = mesh.vertex_areas
    found = spread(mesh, everywhere(mesh), raw)[:, 0]
    before = (weight * raw[:, 0] * radius**2).sum() / (weight * raw[:, 0]).sum()
    after = (weight * found * radius**2).sum() / (weight * found).sum()
    assert after - before == pytest.approx(4 * LENGTH_MM**2, rel=0.02)


def test_even_load_stays_even_and_the_amount_is_kept() -> None:
    mesh, outer = dome()
    rng = np.random.default_rng(1)
    raw = np.c_[np.full(mesh.vertex_count, 0.4), rng.random(mesh.vertex_count)]
    found = spread(mesh, outer, raw)
    assert found[:, 0] == pytest.approx(0.4, abs=1e-5)
    for side in (outer, ~outer):
        area = mesh.vertex_areas[side]
        assert area @ found[side, 1] == pytest.approx(area @ raw[side, 1], rel=1e-3)


def test_nothing_wicks_across_the_rim() -> None:
    """All of the outer surface is soaked, down to the edge; and the other way round."""
    mesh, outer = dome()
    found = spread(mesh, outer, np.c_[outer, ~outer].astype(float), length_mm=0.5)
    assert (found[~outer, 0] == 0.0).all()
    assert (found[outer, 1] == 0.0).all()
    assert found[outer, 0] == pytest.approx(1.0, abs=1e-4)
    assert found[~outer, 1] == pytest.approx(1.0, abs=1e-4)


def test_what_is_painted_on_the_rim_soaks_both_sides() -> None:
    mesh, outer = dome()
    at_rim = mesh.vertices[:, 2] < 0.35
    found = spread(mesh, outer, at_rim[:, None].astype(float), length_mm=0.5)
    above = (mesh.vertices[:, 2] > 0.35) & (mesh.vertices[:, 2] < 0.9)
    assert (found[above & outer] > 0.01).all()
    assert (found[above & ~outer] > 0.01).all()


def test_more_in_one_place_is_never_less_in_another(shared_meshes: Path) -> None:
    """Even where a scan left obtuse slivers, whose cotangent matrix has entries above zero."""
    mesh = refine(of(trimesh.load(shared_meshes / "solid_11.stl")), 0.3).mesh
    rng = np.random.default_rng(2)
    raw = rng.random((mesh.vertex_count, 1)) * (rng.random((mesh.vertex_count, 1)) < 0.3)
    more = raw + 0.5 * (rng.random(raw.shape) < 0.1)
    before, after = (spread(mesh, everywhere(mesh), each) for each in (raw, more))
    assert (after - before).min() > -5e-4
    assert before.min() >= 0.0
    assert before.max() <= raw.max() + 5e-4


def test_without_a_length_nothing_moves() -> None:
    mesh, outer = dome()
    raw = np.random.default_rng(3).random((mesh.vertex_count, 2))
    assert np.array_equal(spread(mesh, outer, raw, length_mm=0.0), raw.astype(np.float32))


def test_a_change_on_a_patch_is_that_of_the_whole() -> None:
    mesh = plane(6.0, 100)
    levels = levels_of(mesh)
    wicking = Wicking(levels, everywhere(mesh), LENGTH_MM)
    rng = np.random.default_rng(4)
    before = rng.random((mesh.vertex_count, 2)).astype(np.float32)
    centre = np.zeros(3, np.float32)
    dabbed = levels.near(centre, 0.8)
    after = before.copy()
    after[dabbed] += 0.5
    patch = levels.patch(centre, 0.8 + 8 * LENGTH_MM, dabbed)
    change = wicking.change(wicking.patch(patch), (after - before)[patch.vertices])
    expected = wicking.spread(after) - wicking.spread(before)
    assert np.abs(change - expected[patch.vertices]).max() < 2e-3
    outside = np.setdiff1d(np.arange(mesh.vertex_count), patch.vertices)
    assert np.abs(expected[outside]).max() < 2e-3


@pytest.mark.parametrize("max_edge_mm", [0.14, 0.4])
def test_load_is_within_two_thousandths_of_a_converged_solve(
    shared_meshes: Path, max_edge_mm: float
) -> None:
    """Against scipy's conjugate gradients in double precision, half of all places painted."""
    mesh = refine(of(trimesh.load(shared_meshes / "hollow_46.stl")), max_edge_mm).mesh
    outer = ((mesh.vertices - mesh.centre) * mesh.vertex_normals).sum(axis=1) > 0.0
    levels = levels_of(mesh)
    fine = levels.hierarchy.fine
    rng = np.random.default_rng(6)
    waves = np.sin(mesh.vertices @ rng.normal(0.0, 2.0, (3, 3)))[levels.order]
    raw = (0.6 * (waves > 0.0)).astype(np.float32)
    raw[:, 2] = 0.0
    found = Wicking(levels, outer[levels.order], LENGTH_MM).spread(raw)
    loss = fine.mass[:, 0].astype(float) / LENGTH_MM**2
    system = _conducting(fine.stiffness, outer[levels.order]).astype(float)
    system = sparse.csr_array(system + sparse.diags_array(loss))
    jacobi = sparse.diags_array(1.0 / system.diagonal())
    for liquid in range(2):
        exact, failed = linalg.cg(system, loss * raw[:, liquid], rtol=1e-9, M=jacobi)
        assert failed == 0
        assert np.abs(raw[:, liquid] - exact).max() > 0.2
        assert np.abs(found[:, liquid] - exact).max() < 2e-3
    assert (found[:, 2] == 0.0).all()
