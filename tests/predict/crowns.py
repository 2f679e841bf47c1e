"""Crowns of closed form, painted with the starter liquids."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import numpy as np
import trimesh

from stainmap.model.case import Backing, Case
from stainmap.predict.levels import SurfaceLevels, even_stiffness
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.builders import dome_case
from tests.predict.scenes import DENTINE, materials, plan_of
from tests.surface.shapes import of, sheet


def levels_of(mesh: TriMesh) -> SurfaceLevels:
    return SurfaceLevels(mesh.vertices, even_stiffness(mesh), SurfaceOperator(mesh).mass)


def strip(length: float, step: float, rows: int = 1) -> TriMesh:
    """Return a flat strip along x, centred, with columns of vertices every `step`."""
    columns = round(length / step)
    parameters, faces = sheet(columns, rows, wide=length, high=rows * step)
    return TriMesh(np.c_[parameters - [length / 2.0, 0.0], np.zeros(len(parameters))], faces)


def half_sphere(radius: float, rings: int) -> tuple[np.ndarray, np.ndarray]:
    """Return vertices and outward faces of a hemisphere, even facets, the last ring at z = 0.

    Ring k has 6 k vertices, so that nothing gets narrow at the pole.
    """
    points = [np.zeros((1, 2))]
    for ring in range(1, rings + 1):
        angle = 2.0 * np.pi * np.arange(6 * ring) / (6 * ring)
        points.append(np.c_[np.full(6 * ring, 0.5 * np.pi * ring / rings), angle])
    polar, angle = np.concatenate(points).T
    unit = np.c_[np.sin(polar) * np.cos(angle), np.sin(polar) * np.sin(angle), np.cos(polar)]
    faces = []
    for ring in range(rings):
        first = 1 + 3 * ring * (ring - 1) if ring else 0
        after = 1 + 3 * ring * (ring + 1)
        for sector in range(6):
            for step in range(ring + 1):
                here = first + (sector * ring + step) % max(6 * ring, 1)
                beside = first + (sector * ring + step + 1) % max(6 * ring, 1)
                out = after + sector * (ring + 1) + step
                out_beside = after + (sector * (ring + 1) + step + 1) % (6 * ring + 6)
                faces.append((here, out, out_beside))
                if step < ring:
                    faces.append((here, out_beside, beside))
    return radius * unit, np.array(faces)


def painted_dome(
    liquids: Sequence[str],
    *,
    wall_mm: float = 1.0,
    rings: int = 48,
    block: str = "medium 3Y",
    backings: Sequence[Backing] = (DENTINE,),
) -> Case:
    """Return a hollow hemisphere of 5 mm outer radius, to be painted with liquids in order."""
    outside, faces = half_sphere(5.0, rings)
    count = len(outside)
    ring = np.arange(count - 6 * rings, count)
    after = np.roll(ring, -1)
    rim = np.concatenate(
        [np.c_[ring, ring + count, after + count], np.c_[ring, after + count, after]]
    )
    mesh = TriMesh(
        np.concatenate([outside, outside * (5.0 - wall_mm) / 5.0]),
        np.concatenate([faces, faces[:, ::-1] + count, rim]),
    )
    case = replace(
        dome_case(),
        plan=plan_of(liquids, block),
        materials=materials(),
        backings=tuple(backings),
    )
    return on_mesh(case, mesh, np.arange(2 * count) < count)


def on_mesh(case: Case, mesh: TriMesh, outer: np.ndarray, **reading: Any) -> Case:
    """Return a case with another surface, nothing read of it but its outside."""
    count = mesh.vertex_count
    indices = np.arange(count, dtype=np.int32)
    nothing = np.zeros(count, np.float32)
    known = {
        "outer": outer,
        "rim": np.zeros(count, bool),
        "unit_index": np.zeros(count, np.uint8),
        "height": nothing,
        "depth_below_crest_mm": nothing + 9.0,
    }
    return replace(
        case,
        surface=replace(
            case.surface, mesh=mesh, parents=np.c_[indices, indices], base_vertex_count=count
        ),
        reading=replace(case.reading, **(known | reading)),
        zones=np.zeros(count, np.uint8),
        proposal=np.zeros(count, np.uint8),
        accents=(),
        accent_proposal=(),
    )


def hollow_molar(folder: Any, liquids: Sequence[str], max_edge_mm: float = 0.14) -> Case:
    """Return the real hollow molar, its outside being what faces away from its middle."""
    mesh = refine(of(trimesh.load(folder / "hollow_46.stl")), max_edge_mm).mesh
    outer = ((mesh.vertices - mesh.centre) * mesh.vertex_normals).sum(axis=1) > 0.0
    return on_mesh(painted_dome(liquids), mesh, outer, occlusal_axis=(0.0, 1.0, 0.0))
