"""Files that cannot be read give one sentence: what is wrong, where, and what to do."""

from __future__ import annotations

import io
import os
import struct
import sys
import tracemalloc
import zipfile
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from stainmap.errors import MeshFileError
from stainmap.surface.loading import load_mesh, load_mesh_bytes
from tests.surface import shapes
from tests.surface.test_loading import (
    FORMATS,
    QUAD_OBJ,
    ascii_stl,
    binary_stl,
    box_corners,
    box_object,
    exported,
    file_name,
    quad_ply,
    three_mf,
)


def refused(content: bytes, name: str = "crown.stl") -> str:
    """Return the sentence with which a file is refused."""
    with pytest.raises(MeshFileError) as caught:
        load_mesh_bytes(content, name)
    return checked(caught.value, name)


def checked(error: MeshFileError, name: str) -> str:
    assert error.where == name
    assert error.message.endswith(".")
    assert error.advice
    assert error.advice.endswith(".")
    assert "\n" not in str(error)
    assert "Traceback" not in str(error)
    assert len(str(error)) < 300
    assert error.__cause__ is None
    return error.message


# ---- paths


def test_missing_folder_and_empty(tmp_path: Path) -> None:
    (tmp_path / "empty.stl").touch()
    (tmp_path / "folder.stl").mkdir()
    for name, what in (
        ("none.stl", "There is no such file."),
        ("folder.stl", "It is a folder."),
        ("empty.stl", "It is empty."),
    ):
        with pytest.raises(MeshFileError) as caught:
            load_mesh(tmp_path / name)
        assert checked(caught.value, name) == what


def test_impossible_name() -> None:
    with pytest.raises(MeshFileError):
        load_mesh("crown\0.stl")


def test_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "crown.stl"
    path.write_bytes(exported(shapes.box(), "stl"))

    def denied(self: Path) -> bytes:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "read_bytes", denied)
    with pytest.raises(MeshFileError) as caught:
        load_mesh(path)
    assert checked(caught.value, "crown.stl") == "It may not be read."


def test_disk_that_fails(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "crown.stl"
    path.write_bytes(b"x")

    def broken(self: Path) -> bytes:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(Path, "read_bytes", broken)
    with pytest.raises(MeshFileError) as caught:
        load_mesh(path)
    assert checked(caught.value, "crown.stl") == "It could not be read (Input/output error)."


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0,
    reason="permissions are not enforced for root, nor set this way outside of POSIX systems",
)
def test_file_without_permission(tmp_path: Path) -> None:
    path = tmp_path / "crown.stl"
    path.write_bytes(exported(shapes.box(), "stl"))
    path.chmod(0)
    with pytest.raises(MeshFileError, match="may not be read"):
        load_mesh(path)


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no named pipes in folders")
def test_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "crown.stl")
    with pytest.raises(MeshFileError, match="not an ordinary file"):
        load_mesh(tmp_path / "crown.stl")


def test_file_over_a_gigabyte(tmp_path: Path) -> None:
    path = tmp_path / "crown.stl"
    with path.open("wb") as file:
        file.truncate((1 << 30) + (1 << 28))
    with pytest.raises(MeshFileError) as caught:
        load_mesh(path)
    assert checked(caught.value, "crown.stl") == "It has 1.2 GB; at most 1 GB is read."


# ---- what is no mesh


@pytest.mark.parametrize(
    ("content", "what"),
    [
        (b"Dear colleague,\nplease find attached\n", "It is a text file, but not a mesh."),
        (b"\x89PNG\r\n\x1a\n" + bytes(200), "It is a PNG picture, not a mesh."),
        (b"%PDF-1.7\n" + bytes(200), "It is a PDF document, not a mesh."),
        (b"glTF" + bytes(200), "It is a glTF model, not a mesh."),
        (bytes(300), "It is empty."),
        (b" \r\n", "It is empty."),
    ],
)
def test_other_files(content: bytes, what: str) -> None:
    assert refused(content) == what


def test_noise_is_no_mesh() -> None:
    noise = np.random.default_rng(0).bytes(5000)
    assert refused(noise, "crown.bin") == "It is not a mesh."


def test_archive_is_no_mesh() -> None:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        archive.writestr("crown.stl", b"x")
    assert refused(target.getvalue(), "crown.zip") == "It is a ZIP archive, not a mesh."
    assert "damaged or incomplete" in refused(target.getvalue()[:40], "crown.3mf")


# ---- STL


def test_truncated_binary_stl() -> None:
    corners = np.tile(box_corners(), (100, 1, 1))
    content = binary_stl(corners)
    assert refused(content[: 84 + 50 * 777 + 3]) == "It promises 1,200 triangles and holds 777."
    assert refused(content[:84]) == "It promises 1,200 triangles and holds 0."
    with_solid = binary_stl(corners, header=b"solid crown")
    assert refused(with_solid[:5000]) == "It promises 1,200 triangles and holds 98."
    assert refused(content[:5000], "crown.bin") == "It promises 1,200 triangles and holds 98."


def test_more_triangles_than_promised() -> None:
    content = binary_stl(box_corners(), count=5)
    assert refused(content) == "It promises 5 triangles and holds 12."
    assert refused(binary_stl(box_corners(), count=0)) == "It promises 0 triangles and holds 12."


def test_header_only() -> None:
    assert refused(b"x" * 80 + bytes(4)) == "It holds no triangles."
    assert "within the header" in refused(b"\x01" + bytes(30) + b"x")


def test_enormous_promise_takes_no_memory() -> None:
    content = binary_stl(box_corners(), count=4_294_967_295)
    tracemalloc.start()
    try:
        message = refused(content)
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert message == "It promises 4,294,967,295 triangles and holds 12."
    assert peak < 1_000_000


@pytest.mark.parametrize("bad", [np.nan, np.inf, -np.inf])
def test_coordinate_that_is_no_number(bad: float) -> None:
    corners = box_corners()
    corners[3, 1, 2] = bad
    message = refused(binary_stl(corners))
    assert message == f"Point 11 has a coordinate that is not a number ({bad})."


def test_coordinate_beyond_all_crowns() -> None:
    corners = box_corners()
    corners[3, 1, 2] = 3e38
    assert refused(binary_stl(corners)).startswith("A coordinate is 3e+38")


def test_no_area() -> None:
    line = np.zeros((5, 3, 3))
    line[..., 0] = np.random.default_rng(0).random((5, 3))
    assert refused(binary_stl(line)).startswith("Its surface has no area")
    assert refused(binary_stl(np.ones((5, 3, 3)))) == "All of its triangles are without area."
    tiny = 1e-40 * box_corners()
    assert "far below any workpiece" in refused(binary_stl(tiny))


@pytest.mark.parametrize(
    ("change", "what"),
    [
        (lambda text: text[:560], "It ends too early: after 3 triangles"),
        (lambda text: text.replace("endsolid crown\n", ""), "It ends too early: after 12"),
        (lambda text: text.replace("endloop", "endlop", 1), "Line 7 has 'endlop' where 'endloop'"),
        (lambda text: text.replace("vertex -1", "vertex -1,5", 1), "Line 4 has '-1,5' where a"),
        (lambda text: text.replace("facet normal", "facet", 1), "Line 2 has '0' where 'normal'"),
        (
            lambda text: text.replace("endfacet\nendsolid", "endsolid"),
            "in the middle of a triangle",
        ),
        (lambda text: text.replace("endsolid crown", "endsolid crown\nmore"), "Line 87 lies out"),
        (lambda text: text + "endsolid\n", "ends a solid that did not begin"),
        (lambda text: "solid x\n" + text, "begins a solid within a solid"),
        (lambda text: text[:12] + text[-15:], "It holds no triangles."),
    ],
)
def test_ascii_stl_is_read_strictly(change: object, what: str) -> None:
    assert what in refused(change(ascii_stl()).encode())


# ---- other formats


@pytest.mark.parametrize(
    ("content", "what"),
    [
        (b"v 0 0 0\nv 1 0 0\n", "It holds points but no triangles."),
        (b"v 0 0 0\nv 1 x 0\nv 0 1 0\nf 1 2 3\n", "Point 2 is '1 x 0' instead of three numbers."),
        (b"v 0 0 0\nv 1 0\nv 0 1 0\nf 1 2 3\n", "Point 2 is '1 0' instead of three numbers."),
        (b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2\n", "Face 1 has fewer than three corners."),
        (b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n", "Face 1 has a corner that does not exist"),
        (b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 0\n", "Face 1 has a corner that does not exist"),
        (b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 -4\n", "Face 1 has a corner that does not exist"),
        (b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 x\n", "A face has the corner 'x', which is no number."),
        (b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 " + b"9" * 30, "A face has the corner '999"),
    ],
)
def test_bad_obj(content: bytes, what: str) -> None:
    assert what in refused(content, "crown.obj")


@pytest.mark.parametrize(
    ("content", "what"),
    [
        (b"OFF\n3 1 0\n0 0 0\n1 0 0\n", "It promises 3 points and holds 2."),
        (b"OFF\n3 2 0\n0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n", "It promises 2 faces and holds 1."),
        (b"OFF\n3 1 0\n0 0 0\n1 0 0\n0 1 0\n3 0 1\n", "Face 1 is incomplete: '3 0 1'."),
        (b"OFF\n3 1 0\n0 0 0\n1 0 0\n0 1 0\n3 0 1 7\n", "Face 1 has a corner that does not exist"),
        (b"OFF\nx y\n", "the numbers of points and faces are missing"),
        (b"OFF\n999999999 999999999 0\n0 0 0\n", "It ends too early for the 999,999,999 points"),
        (b"OFF\n3 0 0\n0 0 0\n1 0 0\n0 1 0\n", "It holds points but no triangles."),
        (b"OFF\n3 1 0\n0 0 0\n1 b 0\n0 1 0\n3 0 1 2\n", "Point 2 is '1 b 0' instead"),
    ],
)
def test_bad_off(content: bytes, what: str) -> None:
    assert what in refused(content, "crown.off")


def test_bad_ply() -> None:
    for how in ("ascii", "binary_little_endian"):
        good = quad_ply(how)
        assert "'end_header' is missing" in refused(good[:60], "crown.ply")
        assert "no points with x, y and z" in refused(
            good.replace(b"property float z", b"property float q"), "crown.ply"
        )
        huge = good.replace(b"element vertex 8", b"element vertex 4000000000")
        assert "It ends too early for the 4,000,000,000 points" in refused(huge, "crown.ply")
        assert "no triangles" in refused(
            good.replace(b"element face 6", b"element face 0")[
                : -6 * 17 if how[0] == "b" else None
            ],
            "crown.ply",
        )
    text = quad_ply("ascii")
    assert refused(text[:-30], "crown.ply").startswith(("It promises", "Face"))
    assert "Point 1 is '0 zero 0'" in refused(
        text.replace(b"0 0 0 200", b"0 zero 0 200"), "crown.ply"
    )
    for corner in (b"77", b"-1"):
        assert "Face 1 has a corner that does not exist among 8 points" in refused(
            text.replace(b"4 3 2 1 0", b"4 " + corner + b" 2 1 0"), "crown.ply"
        )
    binary = quad_ply("binary_little_endian")
    assert "It ends too early" in refused(binary[:-80], "crown.ply")
    assert "within face 6" in refused(binary[:-3], "crown.ply")


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        (b"uchar int vertex", b"float int vertex", "Line 10 of its header counts in fractions"),
        (b"uchar int vertex", b"uchar float vertex", "without a list of corners"),
        (b"vertex_indices", b"corners", "without a list of corners"),
        (b"float x", b"quaternion x", "Line 5 of its header is 'property quaternion x'"),
        (b"element face 6", b"element face six", "Line 9 of its header"),
        (b"element face 6", b"element face " + b"6" * 5000, "Line 9 of its header"),
        (b"format ascii", b"format roman", "Line 2 of its header"),
        (b"format ascii 1.0\n", b"", "whether it is text or binary"),
        (b"4 3 2 1 0", b"2 3 2", "Face 1 is incomplete"),
        (b"4 3 2 1 0", b"9" * 5000, "Face 1 is incomplete"),
        (b"2 0 0 200", b"2,5 0,0 0,0 200", "Point 2 is '2,5 0,0 0,0'"),
        (b"2 0 0 200", b"2_5 0 0 200", "Point 2 is '2_5 0 0'"),
    ],
)
def test_bad_rows_of_a_text_ply(old: bytes, new: bytes, what: str) -> None:
    content = quad_ply("ascii")
    assert old in content
    assert what in refused(content.replace(old, new, 1), "crown.ply")


def test_bad_3mf() -> None:
    item = '<item objectid="1"/>'
    assert "unit is 'furlong'" in refused(three_mf(box_object(1), item, "furlong"), "crown.3mf")
    box = box_object(1)
    for resources, build, what in (
        (box, "", "Its build list is empty"),
        ("<object", item, "Line 1 of its model is no proper XML"),
        (box.replace('x="', 'q="'), item, "A point has no x."),
        (box.replace('x="1', 'x="one'), item, "has 'one.0' where a number must stand"),
        (box.replace('v1="1', 'v1="1,0'), item, "has '1,0' where a number must stand"),
        (box.replace('v1="7"', 'v1="70"'), item, "has a corner that does not exist"),
        (box + box, item, "Two of its objects have the number '1'"),
        (box, '<item objectid="2"/>', "places object '2', which it does not hold"),
        (box, '<item objectid="1" transform="1 0 0"/>', "something else than 12 numbers"),
        (box, '<item objectid="1" path="/../../etc/passwd"/>', "a part '../../etc/passwd'"),
    ):
        assert what in refused(three_mf(resources, build), "crown.3mf")
    bomb = three_mf(box_object(1), item)
    target = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(bomb)) as archive, zipfile.ZipFile(target, "w") as changed:
        model = archive.read("3D/3dmodel.model").decode()
        definition = '<!DOCTYPE m [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]><model'
        changed.writestr("3D/3dmodel.model", model.replace("<model", definition, 1))
    assert "XML definitions" in refused(target.getvalue(), "crown.3mf")


def test_3mf_that_would_fill_the_memory() -> None:
    """The sizes in the archive's directory are looked at before anything is unpacked."""
    content = bytearray(three_mf(box_object(1), '<item objectid="1"/>'))
    directory = content.index(b"PK\x01\x02")
    struct.pack_into("<I", content, directory + 24, 3_000_000_000)
    assert refused(bytes(content), "crown.3mf").startswith("Unpacked it would take 2.8 GB")


# ---- damage at random

GOOD = {kind: exported(shapes.box(), kind) for kind in FORMATS} | {
    "obj_rich": QUAD_OBJ.encode(),
    "ply_quads": quad_ply("binary_big_endian"),
    "stl_cavity": exported(shapes.sphere(subdivisions=1), "stl"),
}


def survives(content: bytes, name: str) -> None:
    try:
        loaded = load_mesh_bytes(content, name)
    except MeshFileError as error:
        checked(error, name)
    else:
        assert loaded.mesh.face_count > 0
        assert np.isfinite(loaded.mesh.vertices).all()
        assert loaded.file_vertex.max() < loaded.mesh.vertex_count


@pytest.mark.parametrize("kind", sorted(GOOD))
@settings(deadline=None, max_examples=80, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_damaged_files_are_read_or_refused(kind: str, data: st.DataObject) -> None:
    content = bytearray(GOOD[kind])
    for _ in range(data.draw(st.integers(0, 4))):
        at = data.draw(st.integers(0, len(content) - 1))
        new = data.draw(st.binary(min_size=1, max_size=6))
        if data.draw(st.booleans()):
            content[at : at + len(new)] = new
        else:
            content[at : at + data.draw(st.integers(0, 5))] = new
    end = data.draw(st.integers(0, len(content)))
    survives(bytes(content[:end] if data.draw(st.booleans()) else content), file_name(kind))


@settings(deadline=None, max_examples=150)
@given(content=st.binary(max_size=600), start=st.sampled_from([b"", b"solid ", b"OFF\n", b"ply\n"]))
def test_noise_is_read_or_refused(content: bytes, start: bytes) -> None:
    survives(start + content, "crown.stl")


@settings(deadline=None, max_examples=60)
@given(
    st.lists(
        st.lists(st.floats(width=32, allow_nan=True), min_size=9, max_size=9),
        min_size=1,
        max_size=8,
    )
)
def test_any_numbers_are_read_or_refused(rows: list[list[float]]) -> None:
    survives(binary_stl(np.array(rows, dtype=np.float32)), "crown.stl")
