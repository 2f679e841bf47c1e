"""Makes files that no mesh reader likes, the same at every run.

`python -m tests.malformed.files FOLDER` writes them for other uses.
"""

from __future__ import annotations

import io
import json
import struct
import sys
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

import numpy as np

from tests.surface import shapes
from tests.surface.test_loading import (
    FORMATS,
    binary_stl,
    box_corners,
    box_object,
    exported,
    file_name,
    quad_ply,
    three_mf,
)

CUTS_PER_FORMAT = 8
A_MILLION = 1_000_000
ITEM = '<item objectid="1"/>'
CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"


class Malformed(NamedTuple):
    """A file, and words that the sentence about it, or one of the notes, must hold."""

    name: str
    content: bytes
    says: str = ""


def all_files() -> Iterator[Malformed]:
    """Yield every file; file names begin with a number, so that they are unique."""
    families: tuple[Callable[[], Iterator[Malformed]], ...] = (
        cut_files,
        lying_counts,
        odd_numbers,
        few_faces,
        very_many_faces,
        decimal_commas,
        wrong_kinds,
        odd_text,
        odd_ply,
        odd_obj_and_off,
        odd_archives,
        odd_xml,
        odd_places,
    )
    number = 0
    for family in families:
        for one in family():
            number += 1
            yield one._replace(name=f"{number:03d}_{one.name}")


def cut_files() -> Iterator[Malformed]:
    """Every format cut at random places."""
    rng = np.random.default_rng(20_261)
    for kind in FORMATS:
        content = exported(shapes.sphere(subdivisions=1), kind)
        if kind == "3mf":  # the library puts random names into its own
            content = packed({"3D/3dmodel.model": model_text(box_object(1))})
        for end in sorted(rng.integers(1, len(content) - 20, CUTS_PER_FORMAT).tolist()):
            yield Malformed(f"cut_{kind}_{end}.{file_name(kind)[6:]}", content[:end])


def lying_counts() -> Iterator[Malformed]:
    for count in (0, 1, 11, 13, 24, 65_536, 1 << 31, (1 << 32) - 1):
        said = f"It promises {count:,} triangles and holds 12."
        yield Malformed(f"count_{count}.stl", binary_stl(box_corners(), count=count), said)
    for how in ("ascii", "binary_little_endian", "binary_big_endian"):
        good = quad_ply(how)
        for word, lies in ((b"vertex 8", (0, 9, 4_000_000_000)), (b"face 6", (7, 1 << 40))):
            for lie in lies:
                changed = good.replace(word, word.split()[0] + b" %d" % lie)
                yield Malformed(f"{word.split()[0].decode()}_{lie}_{how}.ply", changed)
    for head in (b"8 13 0", b"9 12 0", b"0 0 0", b"8 0 0", b"-8 12 0", b"8 999999999999 0", b"8"):
        content = b"OFF\n" + head + b"\n" + exported(shapes.box(), "off").split(b"\n", 2)[2]
        yield Malformed(f"count_{head.decode().replace(' ', '_')}.off", content)


def odd_numbers() -> Iterator[Malformed]:
    """NaN, infinities and coordinates beyond everything, in every format."""
    for value in (np.nan, np.inf, -np.inf, 3e38, -1e30):
        corners = box_corners()
        corners[5, 1, 2] = value
        yield Malformed(f"number_{value}.stl", binary_stl(corners), "coordinate")
    for kind in ("stl_ascii", "obj", "off", "ply_ascii", "3mf"):
        for word in (b"nan", b"-inf", b"1e300", b"1e999", b"0x1F", b"1_0"):
            content = with_a_coordinate(kind, word)
            yield Malformed(f"number_{kind}_{word.decode()}.{file_name(kind)[6:]}", content)
    for offset in (1e7, 3e9):
        yield Malformed(f"offset_{offset:g}.stl", binary_stl(box_corners() + offset))


def with_a_coordinate(kind: str, word: bytes) -> bytes:
    """Return a box in which one coordinate is written as a word."""
    if kind == "3mf":
        return three_mf(box_object(1).replace('x="1.0"', f'x="{word.decode()}"', 1), ITEM)
    content = exported(shapes.box(), kind)
    start = {"stl_ascii": b"vertex ", "obj": b"\nv ", "off": b"\n", "ply_ascii": b"end_header\n"}
    at = content.index(start[kind]) + len(start[kind])
    if kind == "off":
        at = content.index(b"\n", at) + 1
    end = min(content.index(gap, at) for gap in (b" ", b"\n"))
    return content[:at] + word + content[end:]


def few_faces() -> Iterator[Malformed]:
    """No face, and a single one."""
    points = [(0, 0, 0), (5, 0, 0), (0, 5, 0)]
    rows = "".join(f"{x} {y} {z}\n" for x, y, z in points)
    ply = (
        "ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\n"
        "property float z\nelement face {}\nproperty list uchar int vertex_indices\nend_header\n"
    )
    vertices = "".join(f'<vertex x="{x}" y="{y}" z="{z}"/>' for x, y, z in points)
    body = '<object id="1"><mesh><vertices>{}</vertices><triangles>{}</triangles></mesh></object>'
    facet = "facet normal 0 0 1\nouter loop\n" + "".join(
        f"vertex {row}\n" for row in rows.splitlines()
    )
    none, one = "no triangles", "The surface is open"
    yield Malformed("no_face.stl", bytes(80) + bytes(4) + bytes(1), "")
    yield Malformed("zeros_84.stl", bytes(84), "It is empty")
    yield Malformed("zeros_134.stl", bytes(134), "It is empty")
    yield Malformed("header_only.stl", b"x" * 80 + bytes(4), none)
    yield Malformed("no_face_ascii.stl", b"solid a\nendsolid a\n", none)
    yield Malformed("no_face.obj", "".join(f"v {r}\n" for r in rows.splitlines()).encode(), none)
    yield Malformed("no_face.off", f"OFF\n3 0 0\n{rows}".encode(), none)
    yield Malformed("no_face.ply", (ply.format(0) + rows).encode(), none)
    yield Malformed("no_face.3mf", three_mf(body.format(vertices, ""), ITEM), none)
    yield Malformed("no_point.3mf", three_mf(body.format("", ""), ITEM), none)
    yield Malformed("one_face.stl", binary_stl(np.array([points], float)), one)
    yield Malformed(
        "one_face_ascii.stl", f"solid\n{facet}endloop\nendfacet\nendsolid\n".encode(), one
    )
    yield Malformed(
        "one_face.obj",
        ("".join(f"v {r}\n" for r in rows.splitlines()) + "f 1 2 3\n").encode(),
        one,
    )
    yield Malformed("one_face.off", f"OFF\n3 1 0\n{rows}3 0 1 2\n".encode(), one)
    yield Malformed("one_face.ply", (ply.format(1) + rows + "3 0 1 2\n").encode(), one)
    face = '<triangle v1="0" v2="1" v3="2"/>'
    yield Malformed("one_face.3mf", three_mf(body.format(vertices, face), ITEM), one)


def very_many_faces() -> Iterator[Malformed]:
    rng = np.random.default_rng(7)
    point = np.broadcast_to(rng.normal(0, 5, (1, 1, 3)), (A_MILLION, 3, 3))
    yield Malformed("million_in_a_point.stl", binary_stl(point), "without area")
    same = np.broadcast_to(rng.normal(0, 5, (1, 3, 3)), (A_MILLION, 3, 3))
    yield Malformed("million_the_same.stl", binary_stl(same), "999,999 facets were there already")
    thin = rng.normal(0, 5, (300_000, 1, 3)) + np.zeros((1, 3, 1))
    yield Malformed("points_for_faces.stl", binary_stl(thin), "without area")
    line = np.zeros((50_000, 3, 3))
    line[..., 0] = rng.random((50_000, 3))
    yield Malformed("all_in_a_line.stl", binary_stl(line), "no area")
    crowd = np.array([[0, 0, 0], [9, 0, 0], [0, 9, 0]]) + rng.normal(0, 1e-6, (30_000, 3, 3))
    yield Malformed("crowds_of_points.stl", binary_stl(crowd), "lay almost on another one")
    fan = np.zeros((100_000, 3, 3))
    fan[:, 1, 2] = 5
    fan[:, 2] = rng.normal(0, 5, (100_000, 3))
    yield Malformed("one_edge_for_all.stl", binary_stl(fan), "more than two facets meet")
    loose = rng.normal(0, 5, (100_000, 3, 3))
    yield Malformed("loose_facets.stl", binary_stl(loose), "100,000 separate surfaces")
    huge = b"x" * 80 + struct.pack("<I", 4_000_001)
    yield Malformed("four_million.stl", huge + bytes(50 * 4_000_001), "at most 4,000,000")


def decimal_commas() -> Iterator[Malformed]:
    says = "decimal points instead of commas"
    for kind in ("stl_ascii", "obj", "off", "ply_ascii", "3mf"):
        content = with_a_coordinate(kind, b"1,25")
        yield Malformed(f"comma_{kind}.{file_name(kind)[6:]}", content, says)


def wrong_kinds() -> Iterator[Malformed]:
    """Other files under the name of a mesh."""
    good = exported(shapes.box(), "ply")
    yield Malformed("magic.ply", b"pyl" + good[3:], "not a mesh")
    yield Malformed("magic.off", b"OFX\n8 12 0\n", "not a mesh")
    yield Malformed("picture.stl", b"\x89PNG\r\n\x1a\n" + bytes(300), "a PNG picture")
    yield Malformed("paper.obj", b"%PDF-1.7\n" + bytes(300), "a PDF document")
    yield Malformed("packed.stl", b"\x1f\x8b\x08" + bytes(300), "a compressed file")
    yield Malformed("program.3mf", b"MZ\x90\0" + bytes(range(256)) * 3, "not a mesh")
    yield Malformed("letter.stl", b"Dear colleague,\n" * 40, "not a mesh")
    length = struct.pack("<II", 2, (1 << 32) - 1)
    yield Malformed("crown.glb", b"glTF" + length + bytes(90), "a glTF model")
    deep = b'{"asset":' + b"[" * 200_000 + b"]" * 200_000 + b"}"
    yield Malformed("deep.gltf", deep, "not a mesh")
    gltf = json.dumps({"asset": {"version": "2.0"}, "buffers": [{"uri": "file:///etc/passwd"}]})
    yield Malformed("outside.gltf", gltf.encode(), "not a mesh")
    wide = "solid crown\nfacet normal 0 0 1\n".encode("utf-16")
    yield Malformed("wide_letters.stl", wide, "")
    noise = np.random.default_rng(3).bytes(50_000)
    yield Malformed("noise.bin", noise, "not a mesh")
    yield Malformed("noise.stl", noise, "It promises")


def odd_text() -> Iterator[Malformed]:
    good = exported(shapes.box(), "stl_ascii")
    yield Malformed("only_solid.stl", b"solid", "")
    yield Malformed("solids_in_solids.stl", b"solid a\n" * 50_000, "a solid within a solid")
    yield Malformed("many_solids.stl", b"solid x\nendsolid x\n" * 100_000, "no triangles")
    words = b"solid x\n" + b"a " * 5_000_000 + b"\nendsolid x\n"
    yield Malformed("words.stl", words, "where 'facet' must stand")
    yield Malformed("zeros_inside.stl", good[:300] + bytes(40) + good[300:], "")
    yield Malformed("without_end.stl", good.replace(b"endsolid", b"end"), "")
    yield Malformed("four_corners.stl", good.replace(b"endloop", b"vertex 1 1 1\nendloop"), "")
    yield Malformed("long_word.stl", good.replace(b"facet", b"f" * 3_000_000, 1), "must stand")
    mixed = b"solid binary in disguise".ljust(80) + struct.pack("<I", 99) + bytes(50 * 12)
    yield Malformed("solid_but_binary.stl", mixed, "")


def odd_ply() -> Iterator[Malformed]:
    good = quad_ply("ascii")
    for name, old, new, says in (
        ("fraction_of_list", b"uchar int vertex", b"float int vertex", "counts in fractions"),
        ("fraction_of_corner", b"uchar int vertex", b"uchar float vertex", "without a list"),
        ("unknown_type", b"float x", b"quaternion x", "Line 5 of its header"),
        ("no_format", b"format ascii 1.0\n", b"", "text or binary"),
        ("roman", b"format ascii", b"format roman", "Line 2 of its header"),
        ("digits", b"element face 6", b"element face " + b"6" * 5000, "Line 9 of its header"),
        ("no_axis", b"float y", b"float why", "no points with x, y and z"),
        ("twice", b"element face 6", b"element vertex 6", "names an element twice"),
        ("corners_elsewhere", b"vertex_indices", b"corners", "without a list"),
        ("far_corner", b"4 3 2 1 0", b"4 3 2 1 4000000000", "does not exist"),
        ("minus_corner", b"4 3 2 1 0", b"4 -3 2 1 0", "does not exist"),
        ("long_face", b"4 3 2 1 0", b"999999999 3 2 1 0", "Face 1 is incomplete"),
        ("endless_digits", b"4 3 2 1 0", b"9" * 5000, "Face 1 is incomplete"),
        ("long_header", b"comment by hand", b"comment " + b"x" * 400_000, "'end_header'"),
        ("nothing_many", b"element face", b"element air 4000000000\nelement face", "too early"),
    ):
        yield Malformed(f"{name}.ply", good.replace(old, new, 1), says)
    binary = quad_ply("binary_little_endian").replace(b"list uchar", b"list uint")
    yield Malformed("list_lies.ply", binary, "It ends too early")
    nothing = quad_ply("binary_little_endian").replace(
        b"element face", b"element air 4000000000\nelement face"
    )
    yield Malformed("nothing_many_binary.ply", nothing[:-20], "It ends too early")


def odd_obj_and_off() -> Iterator[Malformed]:
    points = b"v 0 0 0\nv 5 0 0\nv 0 5 0\n"
    for name, rows, says in (
        ("corner_zero", b"f 0 1 2\n", "does not exist"),
        ("corner_far", b"f 1 2 " + b"9" * 5000 + b"\n", "which is no number"),
        ("backwards", b"f -1 -2 -9\n", "does not exist"),
        ("slashes", b"f 1// // 3\n", "fewer than three corners"),
        ("fraction", b"f 1 2 2.5\n", "no number"),
        ("polygon", b"f" + b" 1 2 3" * 30_000 + b"\n", "had no width"),
        ("points_without_end", b"v 1 1 1\n" * 200_000, "no triangles"),
        ("same_faces", b"f 1 2 3\n" * 200_000, "there already"),
        ("two_numbers", b"v 1 2\nv 3 4\nv 5 6\nf 1 2 3\n", "Point 4 is '1 2'"),
        ("continued", b"f 1 2 \\\n\\\n\\\n", "fewer than three corners"),
    ):
        yield Malformed(f"{name}.obj", points + rows, says)
    triangle = b"0 0 0\n5 0 0\n0 5 0\n"
    for name, content, says in (
        ("endless_digits", b"OFF\n3 1 0\n" + triangle + b"9" * 5000 + b" 0 1 2\n", "incomplete"),
        ("binary", b"OFF BINARY\n" + bytes(200), ""),
        ("two_corners", b"OFF\n3 1 0\n" + triangle + b"2 0 1\n", "incomplete"),
        ("comments", b"OFF\n" + b"# x\n" * 100_000, "are missing"),
        ("corner_far", b"OFF\n3 1 0\n" + triangle + b"3 0 1 3\n", "does not exist"),
    ):
        yield Malformed(f"{name}.off", content, says)


def packed(entries: dict[str, bytes], kind: int = zipfile.ZIP_DEFLATED) -> bytes:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", kind) as archive:
        for name, content in entries.items():
            entry = zipfile.ZipInfo(name)  # of 1980, so that all runs make the same bytes
            entry.compress_type = kind
            archive.writestr(entry, content)
    return target.getvalue()


def model_text(resources: str, build: str = ITEM) -> bytes:
    with zipfile.ZipFile(io.BytesIO(three_mf(resources, build))) as archive:
        return archive.read("3D/3dmodel.model")


def odd_archives() -> Iterator[Malformed]:
    """Bombs, lies and path tricks of the archive around a 3MF."""
    good = model_text(box_object(1))
    part = "3D/3dmodel.model"
    bomb = good.replace(b"<resources>", b" " * 40_000_000 + b"<resources>")
    bomb = bomb.replace(b"vertex x", b"vertex q")
    yield Malformed("bomb_of_blanks.3mf", packed({part: bomb}), "A point has no x")
    beside = packed({part: good.replace(b"vertex x", b"vertex q"), "x": bytes(60_000_000)})
    yield Malformed("bomb_beside.3mf", beside, "A point has no x")
    content = bytearray(packed({part: good}))
    directory = content.index(b"PK\x01\x02")
    for name, offset, form, lie, says in (
        ("size_huge", 24, "<I", 3_000_000_000, "Unpacked it would take 2.8 GB"),
        ("size_small", 24, "<I", 10, ""),
        ("packed_huge", 20, "<I", 4_000_000_000, ""),
        ("checksum", 16, "<I", 1, ""),
        ("encrypted", 8, "<H", 1, ""),
        ("method", 10, "<H", 77, ""),
        ("elsewhere", 42, "<I", 0xFFFFFF00, ""),
    ):
        changed = bytearray(content)
        struct.pack_into(form, changed, directory + offset, lie)
        yield Malformed(f"{name}.3mf", bytes(changed), says)
    yield Malformed("no_model.3mf", packed({"readme.txt": b"x"}), "a ZIP archive, not a mesh")
    yield Malformed("in_itself.3mf", packed({"a.zip": packed({part: good})}), "not a mesh")
    many = packed({f"{number}.txt": b"" for number in range(2500)} | {part: good})
    yield Malformed("many_parts.3mf", many, "more than 2,000 files")
    yield Malformed("climbing.3mf", packed({"../../../3dmodel.model": b"<x/>"}), "instead of")
    yield Malformed("absolute.3mf", packed({"/etc/3dmodel.model": b"<x/>"}), "instead of")
    relation = (
        b'<Relationships><Relationship Target="/../../../../etc/passwd"'
        b' Type="http://x/3dmodel"/></Relationships>'
    )
    lost = packed({"_rels/.rels": relation, part: good.replace(b'v1="', b'v9="')})
    yield Malformed("relation_climbs.3mf", lost, "A triangle has no v1")
    link = zipfile.ZipInfo(part)
    link.external_attr = 0o120777 << 16
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        archive.writestr(link, b"/etc/passwd")
    yield Malformed("link.3mf", target.getvalue(), "no proper XML")


def odd_xml() -> Iterator[Malformed]:
    head = f'<?xml version="1.0"?><model unit="millimeter" xmlns="{CORE}">'.encode()
    part = "3D/3dmodel.model"
    deep = head + b"<a>" * 300_000 + b"</a>" * 300_000 + b"</model>"
    laughs = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 12))
    entities = f'<!DOCTYPE m [<!ENTITY l0 "lol">{laughs}]><model>&l11;</model>'.encode()
    outside = b'<!DOCTYPE m [<!ENTITY x SYSTEM "file:///etc/passwd">]><model>&x;</model>'
    late = b"<?xml version='1.0'?><!--" + b"x" * 200_000 + b"-->" + entities
    for name, content, says in (
        ("deep", deep, "nested more than 100 deep"),
        ("entities", entities, "XML definitions"),
        ("outside", outside, "XML definitions"),
        ("late_definitions", late, "XML definitions"),
        ("small_elements", head + b"<a/>" * 1_000_000 + b"</model>", "build list is empty"),
        ("long_value", head[:-1] + b' x="' + b"y" * 12_000_000 + b'">', "many megabytes"),
        ("long_text", head + b"<a b='1'" + b" " * 12_000_000 + b"/></model>", "many megabytes"),
        ("no_xml", b"solid crown", "no proper XML"),
        ("nothing", b"", "no proper XML"),
        ("wide", head.decode().encode("utf-16") + b"\xff", "no proper XML"),
        ("other_root", b"<html/>", "instead of 'model'"),
        ("unclosed", head + b"<resources>", "no proper XML"),
    ):
        yield Malformed(f"{name}.3mf", packed({part: content}), says)


def odd_places() -> Iterator[Malformed]:
    """Objects of a 3MF that are missing, made of each other, or placed nowhere."""
    box = box_object(1)
    whole = '<object id="{}"><components>{}</components></object>'
    circle = whole.format(2, '<component objectid="3"/>') + whole.format(
        3, '<component objectid="2"/>'
    )
    doubled = "".join(whole.format(n, f'<component objectid="{n - 1}"/>' * 2) for n in range(2, 30))
    for name, resources, build, says in (
        ("circle", circle, '<item objectid="2"/>', "without end"),
        ("doubled", box + doubled, '<item objectid="29"/>', "far too many copies"),
        ("missing", box, '<item objectid="9"/>', "which it does not hold"),
        ("unnamed", box, "<item/>", "without saying which"),
        ("unplaced", box, "", "build list is empty"),
        ("twice", box + box, ITEM, "have the number '1'"),
        ("unit", box, ITEM, "unit is 'parsec'"),
        ("short_place", box, '<item objectid="1" transform="1 0 0"/>', "12 numbers"),
        ("nan_place", box, f'<item objectid="1" transform="nan {"0 " * 11}"/>', "12 numbers"),
        ("flat_place", box, f'<item objectid="1" transform="{"0 " * 12}"/>', "without area"),
        ("far_place", box, f'<item objectid="1" transform="{"1e200 " * 12}"/>', "coordinate"),
        ("climbing", box, '<item objectid="1" path="/../../etc/passwd"/>', "does not hold"),
        ("far_corner", box.replace('v1="0"', 'v1="800"'), ITEM, "does not exist"),
        ("minus_corner", box.replace('v1="0"', 'v1="-1"'), ITEM, "does not exist"),
        ("endless_corner", box.replace('v1="0"', f'v1="{"9" * 5000}"'), ITEM, "must stand"),
    ):
        unit = "parsec" if name == "unit" else "millimeter"
        yield Malformed(f"place_{name}.3mf", three_mf(resources, build, unit), says)


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for one in all_files():
        (folder / one.name).write_bytes(one.content)
