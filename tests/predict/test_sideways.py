"""Sideways light against Monte Carlo, closed forms and converged solves."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import linalg
from scipy.spatial import Delaunay, cKDTree

from stainmap.optics.difference import delta_e_00
from stainmap.predict.kernel import LayerKernel
from stainmap.predict.levels import SurfaceLevels, even_stiffness
from stainmap.predict.scene import OpticalScene, screen_quadrature
from stainmap.predict.sideways import Membrane, direct_share, loss_exponent, spread_mm
from stainmap.predict.wicking import Wicking
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.predict.crowns import levels_of, strip
from tests.predict.scenes import materials, scene_of
from tests.surface.shapes import of, plane, sphere

PROFILES = Path(__file__).resolve().parent.parent / "data" / "strip_profiles.npz"
STEP_MM = 0.05


def lightness(reflectance: NDArray) -> NDArray:
    return 116.0 * np.cbrt(reflectance) - 16.0


def along(values: NDArray, levels: SurfaceLevels) -> NDArray:
    """Return values (V, k) of a strip of two rows as profiles (columns, k)."""
    return values[levels.rank].reshape(-1, 2, values.shape[1]).mean(axis=1)


def membrane_of(levels: SurfaceLevels, scattering: NDArray) -> Membrane:
    rule = spread_mm(scattering), direct_share(scattering), loss_exponent(scattering)
    return Membrane(levels, *rule)


def spread_along(profiles: NDArray, scattering: NDArray) -> NDArray:
    """Return what the membrane makes of one-dimensional profiles (k, columns), on a mesh."""
    mesh = strip(STEP_MM * (profiles.shape[1] - 1), STEP_MM)
    levels = levels_of(mesh)
    membrane = membrane_of(levels, scattering)
    R1 = np.repeat(profiles.T, 2, axis=0)[levels.order].astype(np.float32)
    phi = membrane.solve(R1, cycles=12).phi
    return along(membrane.reflectance(phi, R1), levels).T


@pytest.fixture(scope="module")
def profiles() -> dict[str, NDArray]:
    with np.load(PROFILES) as file:
        return dict(file)


def padded(inside: NDArray) -> NDArray:
    """Continue profiles of |x| <= 4 mm to 12 mm with their end values."""
    return np.pad(inside, ((0, 0), (160, 160)), mode="edge")


def test_narrow_stains_against_monte_carlo(profiles: dict[str, NDArray]) -> None:
    """All 420 profiles, pmcx Monte Carlo; none, 0.97 with a constant kernel, 0.23 with ours.

    The one-dimensional reflectances are the Monte Carlo's own: the unstained plate, and the end
    of the stained side of the edge profile.
    """
    measured = profiles["strip_R"]
    edge = list(profiles["strip_geometry"]).index("edge")
    stained = measured[:, :, edge, :, profiles["x_mm"] > 3.5].mean(axis=0)
    plain, scattering, truth, flat = [], [], [], []
    for case, conf, geometry, stain in np.ndindex(*measured.shape[:4]):
        name = str(profiles["strip_geometry"][geometry])
        half = np.inf if name == "edge" else float(name[5:]) / 2.0
        covered = (profiles["x_mm"] > 0) if name == "edge" else abs(profiles["x_mm"]) < half
        low, high = stained[case, conf, stain], profiles["strip_unstained_R"][case, conf]
        plain.append(np.where(covered, low, high))
        scattering.append(profiles["strip_musp"][case])
        truth.append(measured[case, conf, geometry, stain])
        flat.append(plain[-1])
    one_dimensional = padded(np.array(plain))
    predicted = spread_along(one_dimensional, np.array(scattering))[:, 160:320]
    error = lightness(predicted) - lightness(np.array(truth))
    unspread = lightness(np.array(flat)) - lightness(np.array(truth))
    assert np.sqrt((unspread**2).mean()) > 3.0
    assert np.sqrt((error**2).mean()) <= 0.5
    assert np.abs(error).max() <= 4.0


def test_step_of_the_wall_against_monte_carlo(profiles: dict[str, NDArray]) -> None:
    """No constant was fitted to these: 0.33 to 0.42 L* RMS over a dark stump, 1.0 without."""
    measured = profiles["step_R"].reshape(-1, 160)
    dark = np.tile(np.repeat(profiles["step_stump"] == "dark", 3), 3)
    scattering = np.repeat(profiles["step_musp"], 6)
    left, right = measured[:, :10].mean(axis=1), measured[:, -10:].mean(axis=1)
    plain = np.where(profiles["x_mm"] < 0, left[:, None], right[:, None])
    predicted = spread_along(padded(plain), scattering)[:, 160:320]
    error = (lightness(predicted) - lightness(measured))[dark]
    unspread = (lightness(plain) - lightness(measured))[dark]
    assert np.sqrt((error**2).mean()) <= 0.5
    assert np.sqrt((unspread**2).mean()) >= 0.9


def test_edge_against_its_closed_form() -> None:
    """Between two losses g and h, phi is 1/g + A exp(x sqrt(g)/s) to the left, and so on."""
    s, c, p = 0.5, 0.1, 1.5
    mesh = strip(16.0, 0.05)
    levels = levels_of(mesh)
    x = mesh.vertices[:, 0]
    R = np.where(x < 0, 0.5, 0.3)
    g, h = (0.4 / 0.5) ** p, (0.4 / 0.3) ** p
    # The value changes between two columns; the closed form's edge lies midway.
    edge = x[x < 0].max() / 2.0
    jump = 1.0 / h - 1.0 / g
    share = np.sqrt(h) / (np.sqrt(g) + np.sqrt(h))
    exact = np.where(
        x < edge,
        1.0 / g + jump * share * np.exp((x - edge) * np.sqrt(g) / s),
        1.0 / h - jump * (1.0 - share) * np.exp((edge - x) * np.sqrt(h) / s),
    )
    membrane = Membrane(levels, [s], [c], [p])
    R1 = R[levels.order, None].astype(np.float32)
    phi = membrane.solve(R1, cycles=12).phi
    assert np.abs(phi[levels.rank, 0] - exact).max() < 3e-3
    expected = (1 - c) * 0.4 * exact ** (1 / p) + c * R
    assert np.abs(membrane.reflectance(phi, R1)[levels.rank, 0] - expected).max() < 1e-3


@pytest.mark.parametrize("mesh", [sphere(subdivisions=5), plane(6.0, 40)], ids=["ball", "sheet"])
def test_uniform_reflectance_is_left_alone(mesh: TriMesh) -> None:
    levels = levels_of(mesh)
    R1 = np.tile(np.array([0.05, 0.2, 0.4, 0.7], np.float32), (mesh.vertex_count, 1))
    membrane = Membrane(levels, [0.2, 0.4, 0.5, 1.1], [0.03, 0.05, 0.1, 0.14], [2.3, 1.6, 1.3, 1.0])
    solution = membrane.solve(R1)
    assert membrane.reflectance(solution.phi, R1) == pytest.approx(R1, rel=2e-5)
    assert np.abs(solution.coarse_gap).max() < 2e-5


def test_phi_stays_between_its_one_dimensional_values() -> None:
    mesh = sphere(subdivisions=5)
    levels = levels_of(mesh)
    rng = np.random.default_rng(3)
    R1 = rng.uniform(0.05, 0.6, (mesh.vertex_count, 3)).astype(np.float32)
    exponent = np.array([2.0, 1.6, 1.2])
    phi = Membrane(levels, [0.3, 0.5, 0.8], [0.1, 0.05, 0.05], exponent).solve(R1, cycles=6).phi
    one_dimensional = (R1 / 0.4) ** exponent
    assert (phi >= one_dimensional.min(axis=0) * 0.999).all()
    assert (phi <= one_dimensional.max(axis=0) * 1.001).all()


def test_light_spreads_farther_where_the_ceramic_scatters_less() -> None:
    profile = np.where(np.abs(np.arange(481) - 240) < 5, 0.2, 0.5)
    found = spread_along(np.tile(profile, (3, 1)), np.array([4.2, 8.6, 12.0]))
    assert found[0, 240] > found[1, 240] > found[2, 240] > 0.2
    assert found[0, 260] < found[1, 260] < found[2, 260] < 0.5


# ---- the solver


@pytest.fixture(scope="module")
def scene() -> OpticalScene:
    """Return twelve bands of the starter block, with two liquids."""
    full = scene_of(["barley", "umber"])
    nodes = screen_quadrature(materials(), "medium 3Y", "slow", "D65", 2)
    return full.on_bands(nodes.indices, nodes.xyz_weights)


def painted(mesh: TriMesh, scene: OpticalScene) -> NDArray[np.float32]:
    """Return R1 (V, B) with streaks of 0.3 mm and a cap: sharp edges everywhere."""
    kernel = LayerKernel(scene)
    x, _, z = (mesh.vertices - mesh.centre).T
    load = np.zeros((mesh.vertex_count, 2), np.float32)
    load[:, 0] = 0.3 * (z > 0.2 * np.ptp(z))
    load[:, 1] = 0.55 * (np.abs((x + 0.4 * np.sin(1.5 * z)) % 1.6 - 0.8) < 0.15)
    wall = np.full(mesh.vertex_count, 0.9, np.float32)
    walls = kernel.walls(wall, np.zeros(mesh.vertex_count, bool))
    return kernel.reflectance(walls, load, np.zeros_like(load))


def converged(
    mesh: TriMesh, stiffness: sparse.csr_array, R1: NDArray, scattering: NDArray
) -> NDArray:
    """Return the reflectance by scipy's conjugate gradients in double precision, all bands."""
    mass = SurfaceOperator(mesh).mass[:, None]
    spread = spread_mm(scattering) ** 2
    exponent = loss_exponent(scattering)
    loss = mass * (0.4 / R1.astype(np.float64)) ** exponent
    scale = 1.0 / (loss + spread * stiffness.diagonal()[:, None])

    def image(field: NDArray) -> NDArray:
        phi = field.reshape(R1.shape)
        return (loss * phi + spread * (stiffness @ phi)).ravel()

    size = (R1.size, R1.size)
    system = linalg.LinearOperator(size, matvec=image, dtype=np.float64)
    jacobi = linalg.LinearOperator(size, matvec=lambda r: scale.ravel() * r, dtype=np.float64)
    supply = np.broadcast_to(mass, R1.shape).ravel()
    phi, failed = linalg.cg(system, supply, x0=(mass / loss).ravel(), M=jacobi, rtol=1e-6)
    assert failed == 0
    c = direct_share(scattering)
    return (1 - c) * 0.4 * phi.reshape(R1.shape) ** (1 / exponent) + c * R1


def errors(
    mesh: TriMesh, scene: OpticalScene, stiffness: sparse.csr_array | None = None
) -> tuple[NDArray, NDArray]:
    """Return dE00 of two cycles, and of no spreading, from the converged solve, per vertex."""
    scattering = scene.reduced_scattering_per_mm[0]
    R1 = painted(mesh, scene)
    exact = converged(
        mesh, even_stiffness(mesh) if stiffness is None else stiffness, R1, scattering
    )
    levels = levels_of(mesh)
    membrane = membrane_of(levels, scattering)
    there = R1[levels.order]
    ours = membrane.reflectance(membrane.solve(there).phi, there)[levels.rank]
    kernel = LayerKernel(scene)
    truth = kernel.colour(exact.astype(np.float32))[0]
    return delta_e_00(kernel.colour(ours)[0], truth), delta_e_00(kernel.colour(R1)[0], truth)


def test_two_cycles_are_within_a_tenth_of_a_converged_solve(scene: OpticalScene) -> None:
    """On a mesh that was fine from the start, where no parent mesh is known."""
    error, without = errors(sphere(radius=2.5, subdivisions=5), scene)
    assert without.max() > 3.0
    assert error.max() < 0.1


def test_two_cycles_on_a_real_crown(scene: OpticalScene, shared_meshes: Path) -> None:
    mesh = refine(of(trimesh.load(shared_meshes / "hollow_46.stl")), 0.14).mesh
    error, without = errors(mesh, scene)
    assert without.max() > 3.0
    assert error.max() < 0.1


def test_two_cycles_where_a_scan_left_slivers(scene: OpticalScene, shared_meshes: Path) -> None:
    """The evened matrix is solved well, and is hardly another problem than the plain one."""
    mesh = refine(of(trimesh.load(shared_meshes / "solid_11.stl")), 0.3).mesh
    error, without = errors(mesh, scene)
    assert without.max() > 3.0
    assert error.max() < 0.1
    from_plain, _ = errors(mesh, scene, SurfaceOperator(mesh).stiffness.tocsr())
    assert np.quantile(from_plain, 0.999) < 0.15
    assert from_plain.max() < 0.3


def test_even_stiffness_leaves_good_facets_alone() -> None:
    mesh = sphere(subdivisions=4)
    plain = SurfaceOperator(mesh).stiffness
    assert np.abs((even_stiffness(mesh) - plain).data).max(initial=0.0) < 1e-12


def test_even_stiffness_tames_slivers_and_stays_a_laplacian() -> None:
    """Rows sum to zero and no energy is negative, while the largest weight falls a lot."""
    points = np.array([[0, 0, 0], [1, 0, 0], [0.5, 1e-3, 0], [0.5, 1, 0], [0.5, -1, 0]], float)
    mesh = TriMesh(points, [[0, 2, 3], [2, 1, 3], [0, 1, 2], [0, 4, 1]])
    even, plain = even_stiffness(mesh).toarray(), SurfaceOperator(mesh).stiffness.toarray()
    assert even.sum(axis=1) == pytest.approx(0.0, abs=1e-9)
    assert np.linalg.eigvalsh(even).min() > -1e-9
    assert np.abs(even).max() < 0.2 * np.abs(plain).max()


# ---- patches


def test_a_change_on_a_patch_is_nearly_that_of_the_whole(scene: OpticalScene) -> None:
    mesh = sphere(radius=4.0, subdivisions=6)
    levels = levels_of(mesh)
    scattering = scene.reduced_scattering_per_mm[0]
    membrane = membrane_of(levels, scattering)
    kernel = LayerKernel(scene)
    before = painted(mesh, scene)[levels.order]
    phi = membrane.solve(before).phi
    centre = levels.positions[:, 5000]
    dabbed = levels.near(centre, 0.8)
    after = before.copy()
    after[dabbed] *= 0.8
    patch = levels.patch(centre, 0.8 + 2.0 * membrane.reach_mm, dabbed)
    kept = phi.copy()
    patched = phi.copy()
    patched[patch.vertices] = membrane.change(membrane.patch(patch), after, phi)
    assert np.array_equal(phi, kept)
    whole = membrane.solve(after, cycles=6).phi
    shown, truth, old = (
        kernel.colour(membrane.reflectance(each, after))[0] for each in (patched, whole, phi)
    )
    assert delta_e_00(old, truth).max() > 1.0
    assert delta_e_00(shown, truth).max() < 0.25
    resolved = kernel.colour(membrane.reflectance(membrane.resolve(after, patched), after))[0]
    assert delta_e_00(resolved, truth).max() < 0.05


def test_a_patch_keeps_to_the_side_of_the_wall_it_starts_on() -> None:
    outer, inner = sphere(radius=4.0, subdivisions=5), sphere(radius=3.6, subdivisions=5)
    count = outer.vertex_count
    both = TriMesh(
        np.concatenate([outer.vertices, inner.vertices]),
        np.concatenate([outer.faces, inner.faces[:, ::-1] + count]),
    )
    levels = levels_of(both)
    centre = np.array([0.0, 0.0, 4.0], np.float32)
    inside = levels.near(centre, 1.5)
    assert (levels.order[inside] >= count).any()
    seeds = inside[levels.order[inside] < count][:5]
    patch = levels.patch(centre, 1.5, seeds)
    assert (levels.order[patch.vertices] < count).all()
    assert len(patch.vertices) == (levels.order[inside] < count).sum()
    assert np.all(patch.rim_distance_mm > 0)


def test_a_straight_border_shows_nothing_of_the_mesh(scene: OpticalScene) -> None:
    """A grid and an irregular triangulation of the same spacing, painted to a straight line.

    Facets make the border jagged by half an edge; liquid and light smooth that until no vertex is
    0.15 dE00 away from the grid's profile, while the border itself is worth more than 5.
    """
    rng = np.random.default_rng(8)
    grid = plane(6.0, 86)
    inner = rng.uniform(-3.0, 3.0, (7000, 2))
    for _ in range(12):
        # Lloyd's relaxation by nearest points of a dense sample: even spacing, no order.
        sample = rng.uniform(-3.0, 3.0, (120_000, 2))
        owner = cKDTree(inner).query(sample)[1]
        weight = np.bincount(owner, minlength=len(inner))
        middle = [np.bincount(owner, x, len(inner)) / np.maximum(weight, 1) for x in sample.T]
        inner = np.where(weight[:, None] > 0, np.stack(middle, axis=1), inner)
    faces = Delaunay(inner).simplices
    irregular = TriMesh(np.c_[inner, np.zeros(len(inner))], faces)
    kernel = LayerKernel(scene)
    # Midway between two columns of the grid, which draws it elsewhere by up to half an edge.
    border = 3.0 / 86
    shown = []
    for mesh in (grid, irregular):
        levels = levels_of(mesh)
        x, y = mesh.vertices[:, 0], mesh.vertices[:, 1]
        raw = np.zeros((mesh.vertex_count, 2), np.float32)
        raw[:, 1] = 0.5 * (x > border)
        load = Wicking(levels, np.ones(mesh.vertex_count, bool), 0.15).spread(raw[levels.order])
        wall = np.full(mesh.vertex_count, 1.0, np.float32)
        walls = kernel.walls(wall, np.zeros(mesh.vertex_count, bool))
        R1 = kernel.reflectance(walls, load, np.zeros_like(load))
        membrane = membrane_of(levels, scene.reduced_scattering_per_mm[0])
        lab = kernel.colour(membrane.reflectance(membrane.solve(R1).phi, R1))[0][levels.rank]
        seen = (np.abs(y) < 1.5) & (np.abs(x) < 1.0)
        shown.append((x[seen], lab[seen]))
    (grid_x, grid_lab), (x, lab) = shown
    columns, of_column = np.unique(grid_x.round(4), return_inverse=True)
    count = np.bincount(of_column)
    profile = np.stack([np.bincount(of_column, values) / count for values in grid_lab.T], axis=1)
    assert delta_e_00(profile[:1], profile[-1:])[0] > 5.0
    assert delta_e_00(grid_lab, profile[of_column]).max() < 0.05
    expected = np.stack([np.interp(x, columns, values) for values in profile.T], axis=1)
    away = delta_e_00(lab, expected)
    assert away.max() < 0.15
