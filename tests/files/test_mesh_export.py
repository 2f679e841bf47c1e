"""Exports, read back by a library that did not write them."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import numpy as np
import pytest
import trimesh

from stainmap.errors import StainmapError
from stainmap.files.mesh_export import export_mesh, plan_table, ply_bytes, vertex_table
from tests.builders import dome_case


def colours(count: int) -> np.ndarray:
    return np.random.default_rng(3).integers(0, 256, (count, 3), dtype=np.uint8)


def test_an_independent_reader_finds_surface_and_colours(tmp_path: Path) -> None:
    case = dome_case(8, 16)
    srgb = colours(len(case.zones))
    path = tmp_path / "crown.ply"
    export_mesh(case, srgb, path)
    again = trimesh.load(path, process=False)
    np.testing.assert_allclose(again.vertices, case.surface.mesh.vertices, atol=1e-6)
    np.testing.assert_array_equal(again.faces, case.surface.mesh.faces)
    np.testing.assert_array_equal(again.visual.vertex_colors[:, :3], srgb)
    assert again.is_watertight


def test_the_header_states_colour_space_and_size() -> None:
    case = dome_case(4, 8)
    header = ply_bytes(case, colours(len(case.zones))).split(b"end_header")[0].decode()
    assert "sRGB" in header
    assert "millimetres, sintered" in header


def test_one_row_per_vertex_of_the_file() -> None:
    case = dome_case(4, 8)
    count = len(case.zones)
    lab = np.random.default_rng(5).uniform(0, 80, (count, 3)).astype(np.float32)
    rows = list(csv.DictReader(io.StringIO(vertex_table(case, lab, colours(count)))))
    assert len(rows) == len(case.surface.file_vertex)
    corner = case.surface.file_vertex[5]
    point = [float(rows[5][axis]) for axis in "xyz"]
    np.testing.assert_allclose(point, case.surface.mesh.vertices[corner], atol=1e-4)
    assert float(rows[5]["L*"]) == pytest.approx(float(lab[corner, 0]), abs=1e-3)
    assert {row["area"] for row in rows} <= {"cervical", "body", "cusp", "inner surface"}


def test_the_coat_table_is_the_plan() -> None:
    rows = list(csv.reader(io.StringIO(plan_table(dome_case(4, 8)))))
    assert rows[0] == ["area", "step 1", "step 2", "step 3"]
    assert ["cervical", "", "3", ""] in rows
    assert ["margin band", "", "", "1-2"] in rows


def test_another_ending_is_refused(tmp_path: Path) -> None:
    case = dome_case(4, 8)
    with pytest.raises(StainmapError, match="abc"):
        export_mesh(case, colours(len(case.zones)), tmp_path / "crown.abc")
