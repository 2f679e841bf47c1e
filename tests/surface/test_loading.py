"""Loading of every format, and what is repaired on the way."""

from __future__ import annotations

import io
import struct
import zipfile
from pathlib import Path

import numpy as np
import pytest
import trimesh

from stainmap.errors import CancelledError, MeshFileError
from stainmap.surface.loading import LoadedMesh, load_mesh, load_mesh_bytes
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit
from tests.surface import shapes

FORMATS = ("stl", "stl_ascii", "ply", "ply_ascii", "obj", "off", "3mf")


def exported(mesh: TriMesh, kind: str) -> bytes:
    """Return a file as trimesh writes it."""
    source = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False)
    if kind == "ply_ascii":
        content = source.export(file_type="ply", encoding="ascii")
    elif kind in ("obj", "off"):
        content = source.export(file_type=kind, digits=12)
    else:
        content = source.export(file_type=kind)
    return content.encode() if isinstance(content, str) else content


def file_name(kind: str) -> str:
    return f"crown.{kind.partition('_')[0]}"


def binary_stl(
    corners: np.ndarray, *, header: bytes = b"", attribute: int = 0, count: int | None = None
) -> bytes:
    """Return a binary STL of corners (F, 3, 3), written by hand."""
    facets = np.zeros(len(corners), dtype="(12,)<f4, <u2")
    facets["f0"][:, 3:] = np.reshape(corners, (-1, 9))
    facets["f1"] = attribute
    promised = len(corners) if count is None else count
    return header.ljust(80, b"\0") + struct.pack("<I", promised) + facets.tobytes()


def box_corners() -> np.ndarray:
    box = shapes.box()
    return box.vertices[box.faces]


@pytest.mark.parametrize("kind", FORMATS)
def test_every_format_as_trimesh_writes_it(kind: str) -> None:
    mesh = shapes.torus()
    loaded = load_mesh_bytes(exported(mesh, kind), file_name(kind))
    expected = {"stl": "binary STL", "stl_ascii": "ASCII STL"}.get(kind, kind[:3].upper())
    assert loaded.format == expected
    assert loaded.repairs == ()
    assert loaded.warnings == ()
    assert loaded.shells == 1
    assert loaded.mesh.is_watertight
    assert loaded.mesh.volume == pytest.approx(mesh.volume, rel=1e-6)
    assert loaded.declared_unit == (LengthUnit.MILLIMETRE if kind == "3mf" else None)
    # The way back to the points of the file.
    points = mesh.vertices
    if kind.startswith("stl"):
        points = points[mesh.faces.ravel()]
    assert loaded.file_vertex.dtype == np.int32
    assert np.abs(loaded.mesh.vertices[loaded.file_vertex] - points).max() < 1e-6
    if not kind.startswith("stl"):
        assert np.array_equal(loaded.file_vertex, np.arange(mesh.vertex_count))
        assert np.array_equal(loaded.mesh.faces, mesh.faces)


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_real_meshes(shared_meshes: Path, name: str) -> None:
    loaded = load_mesh(shared_meshes / name)
    raw = trimesh.load(shared_meshes / name, process=False)
    assert loaded.mesh.is_watertight
    assert loaded.shells == 1
    assert loaded.mesh.volume == pytest.approx(abs(raw.volume), rel=1e-5)
    back = loaded.mesh.vertices[loaded.file_vertex].reshape(-1, 3, 3)
    assert np.abs(back - raw.triangles).max() < 1e-4
    assert loaded.warnings == ()


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
@pytest.mark.parametrize("kind", ["stl_ascii", "ply", "obj"])
def test_real_meshes_in_other_formats(shared_meshes: Path, name: str, kind: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    loaded = load_mesh_bytes(exported(mesh, kind), file_name(kind))
    assert loaded.mesh.face_count == mesh.face_count
    assert loaded.mesh.volume == pytest.approx(mesh.volume, rel=1e-6)


# ---- STL


def test_binary_stl_whose_header_begins_with_solid() -> None:
    content = binary_stl(box_corners(), header=b"solid crown facet normal", attribute=0xFFFF)
    loaded = load_mesh_bytes(content, "crown.stl")
    assert loaded.format == "binary STL"
    assert loaded.mesh.volume == pytest.approx(24.0)
    assert loaded.mesh.vertex_count == 8
    assert len(loaded.file_vertex) == 36


@pytest.mark.parametrize("padding", [b"\0" * 7, b"abc", b"\0" * 500])
def test_some_bytes_behind_the_last_triangle_are_tolerated(padding: bytes) -> None:
    loaded = load_mesh_bytes(binary_stl(box_corners()) + padding, "crown.stl")
    assert loaded.mesh.face_count == 12
    assert "ignored" in loaded.warnings[0]


def ascii_stl(name: str = "crown") -> str:
    lines = [f"solid {name}"]
    for triangle in box_corners():
        lines += ["facet normal 0 0 0", " outer loop"]
        lines += [f"  vertex {x:g} {y:e} {z:.3f}" for x, y, z in triangle]
        lines += [" endloop", "endfacet"]
    return "\n".join([*lines, f"endsolid {name}", ""])


@pytest.mark.parametrize(
    "content",
    [
        ascii_stl().encode(),
        ascii_stl().replace("\n", "\r\n").encode(),
        ascii_stl().replace("\n", "\r").encode(),
        ascii_stl().upper().encode(),
        ascii_stl("facet solid \N{LATIN SMALL LETTER U WITH DIAERESIS}").encode(),
        ascii_stl("").encode(),
        b"\xef\xbb\xbf" + ascii_stl().encode(),
        b"\n \n" + ascii_stl().replace(" ", "\t").replace("solid\t", "solid ").encode() + b"\x1a",
        ascii_stl().replace("normal 0 0 0", "normal nan nan nan").encode(),
        ascii_stl().replace("\n vertex", " vertex").encode(),
    ],
    ids=["plain", "crlf", "cr", "upper", "odd name", "no name", "bom", "tabs", "nan", "joined"],
)
def test_ways_to_write_ascii_stl(content: bytes) -> None:
    loaded = load_mesh_bytes(content, "crown.stl")
    assert loaded.format == "ASCII STL"
    assert loaded.mesh.volume == pytest.approx(24.0)


def test_ascii_stl_of_several_solids(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("stainmap.surface.loading_stl._CHUNK_BYTES", 1000)
    content = ascii_stl("one")
    content += (
        ascii_stl("two").replace("vertex 1 ", "vertex 11 ").replace("vertex -1 ", "vertex 9 ")
    )
    loaded = load_mesh_bytes(content.encode(), "crown.stl")
    assert loaded.mesh.face_count == 24
    assert loaded.mesh.volume == pytest.approx(48.0)
    assert len(loaded.file_vertex) == 72


# ---- formats with polygons, and other oddities

QUAD_OBJ = """# a box of quadrilaterals, with everything that can stand in such a file
mtllib none.mtl
o box
v 0 0 0 1.0 0.5 0.5
v 2 0 0
v 2 3 0
v 0 3 0
v 0 0 4
v 2 0 4
v 2 3 4 # comment
v 0 3 4
vt 0 0
vt 1 1
vn 0 0 1
vn 1 0 0
usemtl red
f 4/1/1 3/2/1 2/1/1 1/2/1
f 5//2 6//2 7//1 8//2
g sides
usemtl blue
f 1/1 2/1 6/2 5/1
s 1
f -7 -6 \\
 -2 -3
f 3 4 8 7
f 4 1 5 8
"""


def test_obj_with_quads_materials_and_backward_indices() -> None:
    content = QUAD_OBJ
    loaded = load_mesh_bytes(content.encode(), "crown.obj")
    assert loaded.mesh.face_count == 12
    assert loaded.mesh.volume == pytest.approx(24.0)
    assert np.array_equal(loaded.file_vertex, np.arange(8))
    assert loaded.repairs == ()
    crlf = load_mesh_bytes(content.replace("\n", "\r\n").encode(), "crown.obj")
    assert np.array_equal(crlf.mesh.faces, loaded.mesh.faces)


def test_obj_agrees_with_trimesh() -> None:
    content = QUAD_OBJ.replace("f -7 -6 \\\n -2 -3", "f 2 3 7 6").replace("1.0 0.5 0.5\n", "\n")
    content = content.replace(" # comment", "")
    reference = trimesh.load(io.BytesIO(content.encode()), file_type="obj", process=True)
    loaded = load_mesh_bytes(content.encode(), "crown.obj")
    assert loaded.mesh.area == pytest.approx(reference.area)
    assert loaded.mesh.bounds == pytest.approx(reference.bounds)


def test_obj_backward_indices_count_from_where_they_stand() -> None:
    content = b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf -3 -2 -1\nv 0 0 5\nv 1 0 5\nv 0 1 5\nf -3 -2 -1\n"
    loaded = load_mesh_bytes(content, "crown.obj")
    assert loaded.mesh.faces.tolist() == [[0, 1, 2], [3, 4, 5]]


def test_obj_polygon_becomes_a_fan() -> None:
    angle = np.arange(6) * np.pi / 3
    points = "".join(f"v {np.cos(a)} {np.sin(a)} 0\n" for a in angle)
    loaded = load_mesh_bytes((points + "f 1 2 3 4 5 6\n").encode(), "crown.obj")
    assert loaded.mesh.face_count == 4
    assert loaded.mesh.area == pytest.approx(1.5 * np.sqrt(3.0))
    assert (loaded.mesh.face_normals[:, 2] > 0.99).all()


QUADS = [(3, 2, 1, 0), (4, 5, 6, 7), (0, 1, 5, 4), (1, 2, 6, 5), (2, 3, 7, 6), (3, 0, 4, 7)]
POINTS = [(x, y, z) for z in (0, 4) for x, y in ((0, 0), (2, 0), (2, 3), (0, 3))]


@pytest.mark.parametrize("start", ["OFF\n8 6 12\n", "# first\nOFF 8 6 0\n", "COFF\n\n8 6 12\n"])
def test_off_with_quads_comments_and_colours(start: str) -> None:
    colour = " 255 0 0 255" if start[0] == "C" else ""
    rows = [" ".join(map(str, point)) + colour for point in POINTS]
    rows += ["4 " + " ".join(map(str, quad)) + " 0.5 0.5 0.5 # colour" for quad in QUADS]
    loaded = load_mesh_bytes((start + "\n".join(rows)).encode(), "crown.off")
    assert loaded.mesh.volume == pytest.approx(24.0)
    assert loaded.mesh.face_count == 12
    assert np.array_equal(loaded.file_vertex, np.arange(8))


def quad_ply(how: str) -> bytes:
    order = {"ascii": "=", "binary_little_endian": "<", "binary_big_endian": ">"}[how]
    head = (
        f"ply\nformat {how} 1.0\ncomment by hand\nelement vertex 8\n"
        "property float x\nproperty float y\nproperty float z\nproperty uchar red\n"
        "element face 6\nproperty list uchar int vertex_indices\nend_header\n"
    ).encode()
    if how == "ascii":
        rows = [f"{x} {y} {z} 200" for x, y, z in POINTS]
        rows += ["4 " + " ".join(map(str, quad)) for quad in QUADS]
        return head + "\n".join(rows).encode()
    body = b"".join(struct.pack(order + "3fB", *point, 200) for point in POINTS)
    return head + body + b"".join(struct.pack(order + "B4i", 4, *quad) for quad in QUADS)


@pytest.mark.parametrize("how", ["ascii", "binary_little_endian", "binary_big_endian"])
def test_ply_with_quads_and_colours(how: str) -> None:
    loaded = load_mesh_bytes(quad_ply(how), "crown.ply")
    assert loaded.mesh.volume == pytest.approx(24.0)
    assert np.array_equal(loaded.file_vertex, np.arange(8))


# ---- 3MF


def three_mf(resources: str, build: str, unit: str | None = "millimeter") -> bytes:
    declared = "" if unit is None else f'unit="{unit}"'
    model = (
        f'<?xml version="1.0" encoding="UTF-8"?><model {declared} xml:lang="en-US" '
        'xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">'
        f"<resources>{resources}</resources><build>{build}</build></model>"
    )
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        archive.writestr("3D/3dmodel.model", model)
    return target.getvalue()


def box_object(number: int) -> str:
    box = shapes.box()
    points = "".join(f'<vertex x="{x}" y="{y}" z="{z}"/>' for x, y, z in box.vertices)
    facets = "".join(f'<triangle v1="{a}" v2="{b}" v3="{c}"/>' for a, b, c in box.faces)
    return (
        f'<object id="{number}" type="model"><mesh><vertices>{points}</vertices>'
        f"<triangles>{facets}</triangles></mesh></object>"
    )


@pytest.mark.parametrize(
    ("unit", "expected"),
    [
        (None, LengthUnit.MILLIMETRE),
        ("millimeter", LengthUnit.MILLIMETRE),
        ("micron", LengthUnit.MICROMETRE),
        ("centimeter", LengthUnit.CENTIMETRE),
        ("meter", LengthUnit.METRE),
        ("inch", LengthUnit.INCH),
    ],
)
def test_3mf_says_its_unit(unit: str | None, expected: LengthUnit) -> None:
    loaded = load_mesh_bytes(three_mf(box_object(1), '<item objectid="1"/>', unit), "crown.3mf")
    assert loaded.declared_unit is expected
    assert loaded.mesh.volume == pytest.approx(24.0)


def test_3mf_in_feet_is_given_in_inches() -> None:
    loaded = load_mesh_bytes(three_mf(box_object(1), '<item objectid="1"/>', "foot"), "crown.3mf")
    assert loaded.declared_unit is LengthUnit.INCH
    assert loaded.mesh.volume == pytest.approx(24.0 * 12**3)


def test_3mf_places_and_mirrors_its_objects() -> None:
    """One object twice, moved and mirrored, and once as a component of another."""
    resources = box_object(1) + (
        '<object id="2" type="model"><components>'
        '<component objectid="1" transform="2 0 0 0 1 0 0 0 1 0 50 0"/></components></object>'
    )
    build = (
        '<item objectid="1" transform="1 0 0 0 1 0 0 0 1 20 0 0"/>'
        '<item objectid="1" transform="-1 0 0 0 1 0 0 0 1 -20 0 0"/>'
        '<item objectid="2" transform="1 0 0 0 1 0 0 0 1 0 0 7"/>'
    )
    loaded = load_mesh_bytes(three_mf(resources, build), "crown.3mf")
    assert loaded.shells == 3
    assert loaded.repairs == ()
    assert loaded.mesh.volume == pytest.approx(24.0 + 24.0 + 48.0)
    assert loaded.mesh.bounds[:, 0] == pytest.approx([-21.0, 21.0])
    assert loaded.mesh.bounds[1, 1:] == pytest.approx([51.5, 9.0])
    assert "3 separate surfaces" in loaded.warnings[0]
    assert len(loaded.file_vertex) == 24


# ---- told apart by content


@pytest.mark.parametrize("kind", FORMATS)
def test_wrong_ending_is_accepted_with_a_warning(kind: str) -> None:
    ending = "obj" if kind != "obj" else "stl"
    loaded = load_mesh_bytes(exported(shapes.box(), kind), f"crown.{ending}")
    assert loaded.mesh.volume == pytest.approx(24.0)
    assert loaded.warnings == (
        f"The name says {ending.upper()}, but the file is {loaded.format}; it was read as that.",
    )


def test_no_ending_is_accepted_with_a_warning() -> None:
    loaded = load_mesh_bytes(exported(shapes.box(), "stl"), "crown")
    assert loaded.warnings == (
        "The name does not end in .stl, but the file is binary STL; it was read as that.",
    )


# ---- repairs and warnings


def as_obj(vertices: np.ndarray, faces: np.ndarray) -> LoadedMesh:
    content = exported(TriMesh(vertices, faces), "obj")
    return load_mesh_bytes(content, "crown.obj")


def test_wrong_windings_are_said() -> None:
    mesh = shapes.sphere()
    faces = mesh.faces.copy()
    faces[:1234] = faces[:1234, ::-1]
    loaded = as_obj(mesh.vertices, faces)
    assert loaded.repairs == ("1,234 facets had the wrong winding and were turned.",)
    one = mesh.faces.copy()
    one[7] = one[7, ::-1]
    assert as_obj(mesh.vertices, one).repairs == ("1 facet had the wrong winding and was turned.",)


def test_inside_out_is_said() -> None:
    mesh = shapes.sphere()
    loaded = as_obj(mesh.vertices, mesh.faces[:, ::-1])
    assert loaded.repairs == ("The surface was inside out and was turned.",)
    assert loaded.mesh.volume > 0


def test_joined_points_are_said() -> None:
    corners = box_corners()
    corners[3, 1, 0] += 3e-6
    loaded = load_mesh_bytes(binary_stl(corners), "crown.stl")
    assert loaded.mesh.is_watertight
    assert loaded.repairs == ("1 point lay almost on another one and was joined.",)


def test_facets_without_width_or_twice_are_said() -> None:
    corners = box_corners()
    flat = np.stack([corners[0, [0, 1, 1]], corners[1, [2, 2, 2]]])
    twice = np.stack([corners[4], corners[5][[1, 2, 0]], corners[5][::-1]])
    loaded = load_mesh_bytes(binary_stl(np.concatenate([corners, flat, twice])), "crown.stl")
    assert loaded.mesh.face_count == 12
    assert loaded.mesh.is_watertight
    assert loaded.repairs == (
        "2 facets had no width and were left out.",
        "3 facets were there already and were left out.",
    )
    back = loaded.mesh.vertices[loaded.file_vertex].reshape(-1, 3, 3)
    assert np.array_equal(back, np.concatenate([corners, flat, twice]))


def test_needles_are_kept() -> None:
    """Three corners in a line have no area, but hold their neighbours together."""
    vertices = np.array([[0, 0, 0], [2, 0, 0], [1, 0, 0], [1, 2, 0], [1, -2, 0], [1, 0, 3]], float)
    faces = [[0, 2, 1], [0, 1, 3], [0, 4, 2], [2, 4, 1], [0, 3, 5], [3, 1, 5], [1, 4, 5], [4, 0, 5]]
    loaded = as_obj(vertices, np.array(faces))
    assert loaded.mesh.face_count == 8
    assert loaded.mesh.is_watertight
    assert "1 facet has no area." in loaded.warnings


def test_open_surface_is_said() -> None:
    tube, _ = shapes.tube(2.0, 5.0, 30, 10)
    loaded = as_obj(tube.vertices, tube.faces)
    assert loaded.warnings == ("The surface is open: it has 2 borders of 60 edges.",)
    box = shapes.box()
    assert as_obj(box.vertices, box.faces[1:]).warnings == (
        "The surface is open: it has a border of 3 edges.",
    )


def test_edges_where_many_facets_meet_are_said() -> None:
    box = shapes.box()
    vertices = np.r_[box.vertices, [[5, 5, 5]]]
    fin = [*box.edges[0], 8]
    loaded = as_obj(vertices, np.r_[box.faces, [fin]])
    assert "At 1 edge more than two facets meet." in loaded.warnings
    assert loaded.shells == 1


def test_separate_bodies_are_counted() -> None:
    mesh, _ = shapes.two_spheres()
    loaded = as_obj(mesh.vertices, mesh.faces)
    assert loaded.shells == 2
    assert loaded.warnings == ("It holds 2 separate surfaces.",)


def test_points_without_facets_are_dropped() -> None:
    content = (
        b"v 99 99 99\nv 0 0 0\nv 2 0 0\nv 0 2 0\nv 0 0 2\nf 2 4 3\nf 2 3 5\nf 3 4 5\nf 4 2 5\n"
    )
    loaded = load_mesh_bytes(content, "crown.obj")
    assert loaded.file_vertex.tolist() == [-1, 0, 1, 2, 3]
    assert loaded.mesh.extent == pytest.approx([2.0, 2.0, 2.0])


def test_file_in_metres_is_welded_alike() -> None:
    """The tolerance follows the size, so nothing collapses in metres or micrometres."""
    for factor in (1e-3, 1.0, 1e3):
        mesh = shapes.sphere(radius=5.0).scaled(factor)
        loaded = load_mesh_bytes(exported(mesh, "stl"), "crown.stl")
        assert loaded.mesh.vertex_count == mesh.vertex_count
        assert loaded.mesh.is_watertight


def test_rounding_far_from_the_origin_is_said() -> None:
    mesh = shapes.sphere(radius=5.0)
    near = load_mesh_bytes(binary_stl(mesh.vertices[mesh.faces] + 1000.0), "crown.stl")
    assert near.warnings == ()
    far = load_mesh_bytes(binary_stl(mesh.vertices[mesh.faces] + 50_000.0), "crown.stl")
    assert far.warnings[0].endswith("its points are rounded to steps of 0.004.")


def test_moebius_strip_is_refused() -> None:
    strip = shapes.moebius()
    with pytest.raises(MeshFileError, match="only one side"):
        as_obj(strip.vertices, strip.faces)


# ---- from a path


def test_from_a_path_with_progress(tmp_path: Path) -> None:
    path = tmp_path / "crown.stl"
    path.write_bytes(exported(shapes.box(), "stl"))
    said: list[tuple[float, str]] = []
    loaded = load_mesh(path, progress=lambda share, what: said.append((share, what)))
    assert loaded.mesh.volume == pytest.approx(24.0)
    shares = [share for share, _ in said]
    assert shares == sorted(shares)
    assert (shares[0], shares[-1]) == (0.0, 1.0)
    assert all(what for _, what in said)
    assert np.array_equal(load_mesh(str(path)).mesh.faces, loaded.mesh.faces)


def test_loading_can_be_stopped(tmp_path: Path) -> None:
    path = tmp_path / "crown.stl"
    path.write_bytes(exported(shapes.box(), "stl"))

    def stop(share: float, what: str) -> None:
        if share > 0.3:
            raise CancelledError("stopped")

    with pytest.raises(CancelledError):
        load_mesh(path, progress=stop)
