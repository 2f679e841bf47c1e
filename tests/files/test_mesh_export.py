"""Exports, read back by a library that did not write them."""

from __future__ import annotations

import csv
import io
import json
import struct
import zipfile
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import colour
import numpy as np
import pytest
import trimesh
from lxml import etree

from stainmap.app.exporting import check_ending
from stainmap.errors import StainmapError
from stainmap.files.mesh_3mf import three_mf_bytes
from stainmap.files.mesh_areas import triangle_areas, vertex_accents
from stainmap.files.mesh_export import export_mesh, plan_table, ply_bytes, vertex_table
from stainmap.files.mesh_glb import glb_bytes
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.surface.loading import load_mesh
from stainmap.units import LengthUnit
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


def test_ply_carries_areas() -> None:
    case = dome_case(8, 16)
    raw = trimesh.load(
        io.BytesIO(ply_bytes(case, colours(len(case.zones)))), file_type="ply", process=False
    ).metadata["_ply_raw"]["vertex"]["data"]
    np.testing.assert_array_equal(raw["zone"].ravel(), case.zones)
    margin = case.accent(Accent.MARGIN_BAND)
    np.testing.assert_array_equal(raw["accent"].ravel() == int(Accent.MARGIN_BAND), margin >= 0.5)


# ---- GLB

# Component types and sizes of glTF 2.0, section 5.1.3.
COMPONENTS = {5121: "u1", 5123: "<u2", 5125: "<u4", 5126: "<f4"}
WIDTHS = {"SCALAR": 1, "VEC2": 2, "VEC3": 3, "VEC4": 4}


class Glb:
    """Reads a GLB by the published layout of glTF 2.0 and checks what its sections 3 and 4 ask."""

    def __init__(self, content: bytes) -> None:
        magic, version, length = struct.unpack_from("<4sII", content)
        assert (magic, version, length) == (b"glTF", 2, len(content))
        size, kind = struct.unpack_from("<I4s", content, 12)
        assert kind == b"JSON"
        assert size % 4 == 0
        self.document = json.loads(content[20 : 20 + size])
        more, kind = struct.unpack_from("<I4s", content, 20 + size)
        assert kind == b"BIN\0"
        assert more % 4 == 0
        assert 28 + size + more == len(content)
        self.binary = content[28 + size :]
        (buffer,) = self.document["buffers"]
        assert "uri" not in buffer
        assert more - 3 <= buffer["byteLength"] <= more
        (self.primitive,) = self.document["meshes"][0]["primitives"]

    def values(self, accessor_number: int) -> np.ndarray:
        accessor = self.document["accessors"][accessor_number]
        view = self.document["bufferViews"][accessor["bufferView"]]
        kind = np.dtype(COMPONENTS[accessor["componentType"]])
        width = WIDTHS[accessor["type"]]
        start = view["byteOffset"] + accessor.get("byteOffset", 0)
        assert start % kind.itemsize == 0
        step = view.get("byteStride", kind.itemsize * width)
        if view["target"] == 34962:
            assert start % 4 == 0
            assert step % 4 == 0, "vertex attributes are aligned to four bytes (3.6.2.4)"
        assert accessor["count"] * step <= view["byteLength"]
        assert view["byteOffset"] + view["byteLength"] <= len(self.binary)
        found = np.frombuffer(self.binary, kind, accessor["count"] * width, start)
        return found.reshape(-1, width)

    def attribute(self, name: str) -> np.ndarray:
        return self.values(self.primitive["attributes"][name])


def encoded(linear: np.ndarray) -> np.ndarray:
    """Return sRGB, 0 to 1, of linear light: IEC 61966-2-1, by colour-science."""
    return colour.cctf_encoding(linear, function="sRGB")


def all_greys_and_more(count: int) -> np.ndarray:
    srgb = colours(count)
    srgb[:256] = np.arange(256)[: len(srgb), None]
    return srgb


def test_glb_is_as_the_standard_asks() -> None:
    case = dome_case(12, 24)
    srgb = all_greys_and_more(len(case.zones))
    glb = Glb(glb_bytes(case, srgb))
    points = glb.attribute("POSITION")
    np.testing.assert_array_equal(points, case.surface.mesh.vertices.astype(np.float32))
    accessor = glb.document["accessors"][glb.primitive["attributes"]["POSITION"]]
    np.testing.assert_array_equal(accessor["min"], points.min(axis=0))
    np.testing.assert_array_equal(accessor["max"], points.max(axis=0))
    np.testing.assert_allclose(np.linalg.norm(glb.attribute("NORMAL"), axis=1), 1.0, atol=1e-5)
    indices = glb.values(glb.primitive["indices"])
    np.testing.assert_array_equal(indices.reshape(-1, 3), case.surface.mesh.faces)
    (node,) = glb.document["nodes"]
    assert node["scale"] == [0.001] * 3, "millimetres to metres"
    assert glb.primitive["mode"] == 4
    assert {name for name in glb.primitive["attributes"] if name.isupper()} >= {"_AREA"}


def test_glb_colours_are_linear_and_come_back_within_one_of_255(
    record_property: Callable[[str, object], None],
) -> None:
    case = dome_case(12, 24)
    srgb = all_greys_and_more(len(case.zones))
    glb = Glb(glb_bytes(case, srgb))
    stored = glb.attribute("COLOR_0")
    accessor = glb.document["accessors"][glb.primitive["attributes"]["COLOR_0"]]
    assert accessor["normalized"] is True
    assert (stored[:, 3] == 65535).all()
    back = 255.0 * encoded(stored[:, :3] / 65535.0)
    worst = float(np.abs(back - srgb).max())
    record_property("largest difference of colours from GLB, of 255", worst)
    assert worst < 1.0
    # Not sRGB by mistake: middle grey reflects about a fifth.
    assert stored[128, 0] / 65535.0 == pytest.approx(0.2159, abs=1e-3)
    extras = glb.document["asset"]["extras"]
    assert "linear" in extras["colour_space"]
    assert extras["areas"]["6"] == "inner surface"


def test_glb_is_read_by_an_independent_library(tmp_path: Path) -> None:
    case = dome_case(12, 24)
    srgb = colours(len(case.zones))
    path = tmp_path / "crown.glb"
    export_mesh(case, srgb, path)
    scene = trimesh.load(path, process=False)
    (mesh,) = scene.geometry.values()
    np.testing.assert_array_equal(mesh.faces, case.surface.mesh.faces)
    np.testing.assert_allclose(scene.extents, 0.001 * case.surface.mesh.extent, rtol=1e-5)
    np.testing.assert_array_equal(mesh.vertex_attributes["_AREA"].ravel(), case.zones)
    np.testing.assert_array_equal(
        mesh.vertex_attributes["_ACCENT"].ravel(), vertex_accents(case).astype(float)
    )
    # Beside a material the library keeps the sixteen bits as they are stored.
    linear = np.asarray(mesh.visual.vertex_attributes["color"])[:, :3] / 65535.0
    assert np.abs(255.0 * encoded(linear) - srgb).max() < 1.0


# ---- 3MF

CORE = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"
MATERIAL = "{http://schemas.microsoft.com/3dmanufacturing/material/2015/02}"
SETS = "{http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07}"


def model_of(content: bytes) -> etree._Element:
    """Return the model of a 3MF, found as the packaging conventions say."""
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        assert archive.testzip() is None
        relations = etree.fromstring(archive.read("_rels/.rels"))
        (target,) = (one.get("Target") for one in relations if one.get("Type").endswith("3dmodel"))
        types = archive.read("[Content_Types].xml").decode()
        assert 'Extension="model"' in types
        return etree.fromstring(archive.read(target.lstrip("/")))


def test_3mf_colours_are_read_by_the_published_rules() -> None:
    """A colour group and its sRGB values, an index for each corner [materials extension]."""
    case = dome_case(12, 24)
    srgb = all_greys_and_more(len(case.zones))
    model = model_of(three_mf_bytes(case, srgb))
    assert model.get("unit") == "millimeter"
    (item,) = model.find(f"{CORE}build")
    resources = model.find(f"{CORE}resources")
    (body,) = (o for o in resources.iter(f"{CORE}object") if o.get("id") == item.get("objectid"))
    (group,) = (
        g for g in resources.iter(f"{MATERIAL}colorgroup") if g.get("id") == body.get("pid")
    )
    palette = np.array([list(bytes.fromhex(one.get("color")[1:])) for one in group])
    assert (palette[:, 3] == 255).all()
    points = np.array([[float(v.get(axis)) for axis in "xyz"] for v in body.iter(f"{CORE}vertex")])
    np.testing.assert_allclose(points, case.surface.mesh.vertices, atol=1e-6)
    faces = list(body.iter(f"{CORE}triangle"))
    corners = np.array([[int(f.get(k)) for k in ("v1", "v2", "v3")] for f in faces])
    np.testing.assert_array_equal(corners, case.surface.mesh.faces)
    assert {f.get("pid") for f in faces} == {group.get("id")}
    picked = np.array([[int(f.get(k)) for k in ("p1", "p2", "p3")] for f in faces])
    assert np.abs(palette[picked][..., :3].astype(int) - srgb[corners].astype(int)).max() == 0
    described = {m.get("name"): m.text for m in model.iter(f"{CORE}metadata")}
    assert "sRGB" in described["Description"]


def test_3mf_areas_are_triangle_sets() -> None:
    case = dome_case(24, 32)
    model = model_of(three_mf_bytes(case, colours(len(case.zones))))
    faces = case.surface.mesh.faces
    found: dict[str, set[int]] = {}
    for one in model.iter(f"{SETS}triangleset"):
        members: set[int] = set()
        for part in one:
            if part.tag == f"{SETS}ref":
                members.add(int(part.get("index")))
            else:
                assert part.tag == f"{SETS}refrange"
                members.update(range(int(part.get("startindex")), int(part.get("endindex")) + 1))
        found[one.get("identifier")] = members
    zones = triangle_areas(case.zones, faces)
    assert sum(len(found.get(f"area-{int(z)}", ())) for z in Zone) == len(faces)
    for zone in Zone:
        expected = set(np.flatnonzero(zones == int(zone)).tolist())
        assert found.get(f"area-{int(zone)}", set()) == expected
    whole = (case.zones[faces] == int(Zone.CUSP)).all(axis=1)
    assert set(np.flatnonzero(whole).tolist()) <= found["area-4"]
    margin = (case.accent(Accent.MARGIN_BAND)[faces] == 1.0).all(axis=1)
    assert margin.any()
    assert set(np.flatnonzero(margin).tolist()) <= found["area-7"]


def test_3mf_is_read_by_an_independent_library_and_by_ours(tmp_path: Path) -> None:
    case = dome_case(12, 24)
    path = tmp_path / "crown.3mf"
    export_mesh(case, colours(len(case.zones)), path)
    again = trimesh.load(path, force="mesh", process=False)
    np.testing.assert_allclose(again.vertices, case.surface.mesh.vertices, atol=1e-6)
    np.testing.assert_array_equal(again.faces, case.surface.mesh.faces)
    assert again.is_watertight
    ours = load_mesh(path)
    assert ours.repairs == ()
    assert ours.declared_unit is LengthUnit.MILLIMETRE
    assert ours.mesh.volume == pytest.approx(case.surface.mesh.volume, rel=1e-6)


def test_the_same_crown_gives_the_same_bytes() -> None:
    case = dome_case(8, 16)
    srgb = colours(len(case.zones))
    for write in (ply_bytes, glb_bytes, three_mf_bytes):
        assert write(case, srgb) == write(case, srgb)


def test_a_front_tooth_has_an_incisal_area() -> None:
    case = replace(dome_case(8, 16), units=(Unit(tooth=Tooth(number=11)),))
    extras = Glb(glb_bytes(case, colours(len(case.zones)))).document["asset"]["extras"]
    assert extras["areas"]["4"] == "incisal"
    assert (
        'name="incisal"'
        in etree.tostring(model_of(three_mf_bytes(case, colours(len(case.zones))))).decode()
    )


def test_stl_is_refused_with_the_reason(tmp_path: Path) -> None:
    case = dome_case(4, 8)
    with pytest.raises(StainmapError, match="STL has no place for colours"):
        export_mesh(case, colours(len(case.zones)), tmp_path / "crown.stl")
    with pytest.raises(StainmapError, match="STL has no place for colours"):
        check_ending(tmp_path / "crown.STL")


def test_one_row_per_vertex_of_the_file() -> None:
    case = dome_case(4, 8)
    count = len(case.zones)
    lab = np.random.default_rng(5).uniform(0, 80, (count, 3)).astype(np.float32)
    rows = list(csv.DictReader(io.StringIO(vertex_table(case, lab, colours(count)))))
    assert len(rows) == len(case.surface.file_vertex)
    corner = case.surface.file_vertex[5]
    point = [float(rows[5][axis]) for axis in "xyz"]
    np.testing.assert_allclose(point, case.surface.mesh.vertices[corner], atol=1e-4)
    assert float(rows[5]["L* (D65, 2 deg)"]) == pytest.approx(float(lab[corner, 0]), abs=1e-3)
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
