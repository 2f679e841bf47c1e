"""Run the Monte Carlo of light_transport.c and store its tables in tests/data.

A tool of the developer, run from the top of the checkout as README.md says. No test runs it;
tests read its tables.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import numpy as np
import trimesh
from numpy.typing import NDArray
from scipy.ndimage import distance_transform_edt

from stainmap.files.case_file import read_case
from stainmap.predict.shape import crown_shape

HERE = Path(__file__).resolve().parent
DATA = HERE.parent / "data"
Array = NDArray[np.float64]

BATCHES, CONFS, STAINS = 20, 9, 3
# Plate absorption and stump of the combinations that tables keep, and their places among the nine
# (three absorptions, on a light, dark or black stump) of the program.
CONF_MUA = np.array([0.03, 0.003, 0.15, 0.03])
CONF_STUMP = np.array(["light", "light", "light", "dark"])
KEPT = [3, 0, 6, 4]
STAIN_MUA = np.array([0.1, 0.4, 1.2])

# Reduced scattering, thickness, photons. The first is held against the older reference.
PLATES = [
    (8.6, 1.0, 600_000),
    (12.0, 0.6, 600_000),
    (12.0, 1.0, 600_000),
    (12.0, 1.5, 600_000),
    (18.0, 0.6, 600_000),
    (18.0, 1.0, 600_000),
    (18.0, 1.5, 600_000),
    (27.0, 1.0, 400_000),
]
STEPS = [(12.0, 2_400_000), (18.0, 2_000_000)]
# Form, radius, thickness, reduced scattering.
SHELLS = [
    *(("cylinder", r, 1.0, 8.6) for r in (2.0, 3.0, 5.0)),
    *(("ball", r, 1.0, 8.6) for r in (2.0, 3.0, 5.0)),
    *(("groove", r, 1.0, 8.6) for r in (1.0, 2.0)),
    *((form, 3.0, 1.5, 8.6) for form in ("cylinder", "ball")),
    *((form, 3.0, 1.0, musp) for musp in (12.0, 18.0) for form in ("cylinder", "ball")),
    *(("groove", 2.0, 1.0, musp) for musp in (12.0, 18.0)),
]
SHELL_PHOTONS = 140_000


def build(folder: Path) -> Path:
    """Compile the program and return where it is."""
    program = folder / "light_transport"
    flags = ["-O3", "-march=native", "-ffast-math", "-Wall"]
    source = HERE / "light_transport.c"
    subprocess.run(["cc", *flags, "-o", str(program), str(source), "-lm"], check=True)
    return program


def run(program: Path, *words: object) -> Array:
    """Return what one run of the program writes, (BATCHES or places, ...) flat per row."""
    started = time.perf_counter()
    done = subprocess.run([str(program), *map(str, words)], check=True, capture_output=True)
    if done.stderr:
        print(done.stderr.decode(), end="", file=sys.stderr)
    print(*words, f"{time.perf_counter() - started:.1f} s", flush=True)
    return np.frombuffer(done.stdout)


def error_of_ratio(rows: Array, base: Array) -> Array:
    """Return the relative standard error of means of (BATCHES, ...) rows over the same base."""
    ratio = rows.mean(axis=0) / base.mean(axis=0)
    spread = (rows - ratio * base).std(axis=0, ddof=1) / np.sqrt(len(rows))
    return np.asarray(spread / rows.mean(axis=0))


def of_plate(values: Array) -> tuple[Array, Array]:
    """Return the even plate and the strips and edges of a run.

    (BATCHES, CONFS, 1 + STAINS) and (BATCHES, kept, 3 geometries, STAINS, 160).
    """
    even, parts = np.split(values, [BATCHES * CONFS * (1 + STAINS)])
    return (
        even.reshape(BATCHES, CONFS, 1 + STAINS),
        parts.reshape(BATCHES, len(KEPT), 3, STAINS, 160),
    )


def plates(program: Path) -> None:
    """Make the table of strips, edges and evenly stained plates."""
    even, even_error, profiles, profile_error = [], [], [], []
    for seed, (musp, thickness, photons) in enumerate(PLATES, start=11):
        level, shape = of_plate(run(program, "plate", seed, photons, musp, thickness))
        level = level[:, KEPT]
        even.append(level.mean(axis=0))
        even_error.append(level.std(axis=0, ddof=1) / np.sqrt(BATCHES))
        profiles.append(shape.mean(axis=0))
        base = level[:, :, 0, None, None, None]
        profile_error.append(error_of_ratio(shape, base).mean(axis=-1))
    np.savez_compressed(
        DATA / "own_strip_profiles.npz",
        x_mm=(np.arange(160) - 79.5) * 0.05,
        musp=np.array([musp for musp, _, _ in PLATES]),
        thickness_mm=np.array([thickness for _, thickness, _ in PLATES]),
        photons=np.array([photons for _, _, photons in PLATES]),
        conf_mua=CONF_MUA,
        conf_stump=CONF_STUMP,
        stain_mua=STAIN_MUA,
        geometry=np.array(["edge", "strip0.3", "strip0.6"]),
        even_R=np.array(even),
        even_se=np.array(even_error),
        strip_R=np.array(profiles, dtype=np.float32),
        strip_relse=np.array(profile_error),
    )


def steps(program: Path) -> None:
    """Make the table of steps: flat top, 1.5 mm to the left and 0.6 mm to the right."""
    found = [
        run(program, "step", seed, photons, musp).reshape(BATCHES, CONFS, -1)[:, KEPT]
        for seed, (musp, photons) in enumerate(STEPS, start=31)
    ]
    np.savez_compressed(
        DATA / "own_step_profiles.npz",
        x_mm=(np.arange(80) - 39.5) * 0.1,
        musp=np.array([musp for musp, _ in STEPS]),
        photons=np.array([photons for _, photons in STEPS]),
        conf_mua=CONF_MUA,
        conf_stump=CONF_STUMP,
        step_R=np.array([rows.mean(axis=0) for rows in found]),
        step_se=np.array([rows.std(axis=0, ddof=1) / np.sqrt(BATCHES) for rows in found]),
    )


def shells(program: Path) -> None:
    """Make the table of shells with a strip 0.6 mm wide, and of their plates."""
    flat = sorted({(musp, thickness) for _, _, thickness, musp in SHELLS})
    plate_R = []
    for seed, (musp, thickness) in enumerate(flat, start=71):
        level, _ = of_plate(run(program, "plate", seed, 400_000, musp, thickness))
        plate_R.append(level.mean(axis=0))
    level, error, strip = [], [], []
    for seed, (form, radius, thickness, musp) in enumerate(SHELLS, start=51):
        rows = run(program, f"shell-{form}", seed, SHELL_PHOTONS, musp, thickness, radius)
        rows = rows.reshape(BATCHES, 2, CONFS, -1)
        level.append(rows[:, 0, :, 0].mean(axis=0))
        error.append(rows[:, 0, :, 0].std(axis=0, ddof=1) / np.sqrt(BATCHES))
        strip.append(rows[..., 1:].mean(axis=0).reshape(2, CONFS, STAINS, 30))
    places = [flat.index((musp, thickness)) for _, _, thickness, musp in SHELLS]
    np.savez_compressed(
        DATA / "own_shells.npz",
        s_mm=(np.arange(30) + 0.5) * 0.1,
        form=np.array([form for form, *_ in SHELLS]),
        radius_mm=np.array([radius for _, radius, _, _ in SHELLS]),
        thickness_mm=np.array([thickness for _, _, thickness, _ in SHELLS]),
        musp=np.array([musp for *_, musp in SHELLS]),
        conf_mua=np.repeat([0.003, 0.03, 0.15], 3),
        conf_stump=np.tile(["light", "dark", "black"], 3),
        stain_mua=STAIN_MUA,
        direction=np.array(["along the axis", "around"]),
        plate_R=np.array(plate_R)[places],
        level_R=np.array(level),
        level_se=np.array(error),
        strip_R=np.array(strip, dtype=np.float32),
    )


def check(program: Path) -> None:
    """Print the exact check: the mean path of light that is nowhere absorbed is n^2 4 V / S."""
    for form, radius, volume_by_surface in (
        ("ball", 2.0, (8 - 1) / 3 / 4),
        ("ball", 5.0, (125 - 64) / 3 / 25),
        ("cylinder", 2.0, (4 - 1) / 2 / 2),
        ("cylinder", 3.0, (9 - 4) / 2 / 3),
    ):
        rows = run(program, form, 7, 60_000, 8.6, 1, radius, 1e9).reshape(BATCHES, CONFS + 1)
        mean, error = rows[:, -1].mean(), rows[:, -1].std(ddof=1) / np.sqrt(BATCHES)
        exact = 2.15**2 * 4 * volume_by_surface
        print(f"{form} {radius}: mean path {mean:.3f} +- {error:.3f} mm, exactly {exact:.3f}")
    # The tracing of triangles against the sphere's formula.
    ball = trimesh.creation.icosphere(subdivisions=5, radius=3.0)
    outside = ball.triangles
    corners = np.concatenate([outside, outside[:, ::-1] * (2.0 / 3.0)])
    lit = np.arange(len(corners)) < len(outside)
    chosen = np.arange(0, len(outside), len(outside) // 40)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "body"
        write_body(path, corners, lit, outside.mean(axis=1)[chosen], chosen, -9.0)
        rows = run(program, "body", 8, 5000, 8.6, path).reshape(-1, CONFS, 2)[..., 0].mean(axis=0)
    exact = run(program, "ball", 9, 200_000, 8.6, 1, 3).reshape(BATCHES, -1).mean(axis=0)[:CONFS]
    print("ball of triangles less ball:", np.round(rows - exact, 4))


# ------------------------------------------------------------------------------------------------
# A body of triangles

CROWN = HERE.parent.parent / "sample_cases" / "lower_molar_36.stainmap"
CROWN_RUNS = [(8.6, 16_000), (12.0, 9_000)]
PLATE_WALLS_MM = [0.4, 0.6, 0.8, 1.0, 1.3, 1.6, 2.0, 2.5, 3.2, 4.0]
CELL_MM = 0.1


def write_body(
    path: Path,
    corners: Array,
    lit: NDArray[np.bool_],
    places: Array,
    at_facet: NDArray[np.int64],
    floor: float,
) -> None:
    """Write a closed body for the program: what bounds it, and where light enters.

    Parameters
    ----------
    corners
        (F, 3, 3) mm, outward facets of the ceramic.
    lit
        (F,) true where the facet is in air, false where the stump lies behind it.
    places, at_facet
        (N, 3) where light enters, and on which facet.
    floor
        Light in the stump that gets below this z is lost.
    """
    low = corners.min(axis=(0, 1)) - 0.15
    shape = np.ceil((corners.max(axis=(0, 1)) + 0.15 - low) / CELL_MM).astype(np.int64)
    # Facets into all cells that their boxes touch.
    first = np.floor((corners.min(axis=1) - low) / CELL_MM - 1e-6).astype(np.int64)
    last = np.floor((corners.max(axis=1) - low) / CELL_MM + 1e-6).astype(np.int64)
    cells, members = [], []
    for shift in np.ndindex(*((last - first).max(axis=0) + 1)):
        inside = (first + shift <= last).all(axis=1)
        i, j, k = (first[inside] + shift).T
        cells.append((i * shape[1] + j) * shape[2] + k)
        members.append(np.flatnonzero(inside))
    cell, member = np.concatenate(cells), np.concatenate(members)
    order = np.argsort(cell, kind="stable")
    start = np.searchsorted(cell[order], np.arange(shape.prod() + 1))
    # How far every point of a cell is at least from every point of a cell that has facets.
    empty = np.ones(shape, dtype=np.bool_)
    empty.ravel()[cell] = False
    clearance = CELL_MM * (distance_transform_edt(empty) - np.sqrt(3.0))
    with path.open("wb") as file:
        for values, kind in (
            ([len(corners), len(places), *shape, len(member)], np.int32),
            ([*low, CELL_MM, 0.0, 0.0, 1.0, floor], np.float64),
            (corners, np.float64),
            (lit, np.int32),
            (start, np.int32),
            (member[order], np.int32),
            (np.maximum(clearance, 0.0), np.float32),
            (places, np.float64),
            (at_facet, np.int32),
        ):
            file.write(np.ascontiguousarray(values, dtype=kind).tobytes())


def crown(program: Path) -> None:
    """Make the table of places on the sample crown, and of plates as thick as its walls."""
    case = read_case(CROWN)
    mesh, outer = case.surface.mesh, case.reading.outer
    shape = crown_shape(case)
    lit = outer[mesh.faces].sum(axis=1) >= 2
    corners = mesh.vertices[mesh.faces]
    middle = corners.mean(axis=1)
    margin = middle[lit, 2].min()
    bend = shape.curvature_per_mm[mesh.faces].mean(axis=1)
    # Evenly over curvature, so that tips and fissures are there; clear of the margin.
    free = np.flatnonzero(lit & outer[mesh.faces].all(axis=1) & (middle[:, 2] > margin + 2.0))
    rng = np.random.default_rng(5)
    bounds = np.quantile(bend[free], np.linspace(0.002, 0.998, 65))
    groups = [free[(bend[free] >= a) & (bend[free] < b)] for a, b in pairwise(bounds)]
    peaks = free[np.argsort(bend[free])]
    chosen = np.array(
        [
            *(rng.choice(group) for group in groups),
            *rng.choice(peaks[: len(peaks) // 100], 8, replace=False),
            *rng.choice(peaks[-len(peaks) // 100 :], 8, replace=False),
        ]
    )
    found, error, plate_R = [], [], []
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "body"
        write_body(path, corners, lit, middle[chosen], chosen, corners[..., 2].min() - 0.05)
        for seed, (musp, photons) in enumerate(CROWN_RUNS, start=91):
            rows = run(program, "body", seed, photons, musp, path).reshape(-1, CONFS, 2)
            found.append(rows[..., 0])
            error.append(np.sqrt((rows[..., 1] - rows[..., 0] ** 2) / photons))
            plate_R.append(
                [
                    run(program, "level", seed + 10, 100_000, musp, wall)
                    .reshape(BATCHES, -1)
                    .mean(axis=0)[:CONFS]
                    for wall in PLATE_WALLS_MM
                ]
            )
    np.savez_compressed(
        DATA / "own_crown_light.npz",
        places_mm=middle[chosen],
        normals=np.cross(*(corners[chosen, k] - corners[chosen, 0] for k in (1, 2))),
        musp=np.array([musp for musp, _ in CROWN_RUNS]),
        photons=np.array([photons for _, photons in CROWN_RUNS]),
        conf_mua=np.repeat([0.003, 0.03, 0.15], 3),
        conf_stump=np.tile(["light", "dark", "black"], 3),
        R=np.array(found),
        se=np.array(error),
        plate_wall_mm=np.array(PLATE_WALLS_MM),
        plate_R=np.array(plate_R),
    )


RUNS: dict[str, Callable[[Path], None]] = {
    "check": check,
    "plates": plates,
    "steps": steps,
    "shells": shells,
    "crown": crown,
}


def main(names: list[str]) -> None:
    """Compile, and make the tables that are named."""
    with tempfile.TemporaryDirectory() as folder:
        program = build(Path(folder))
        for name in names or list(RUNS):
            RUNS[name](program)


if __name__ == "__main__":
    main(sys.argv[1:])
