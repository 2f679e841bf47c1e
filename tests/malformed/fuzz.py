"""Good files of every format, changed at random, and what the loader makes of them.

`python -m tests.malformed.fuzz SEED COUNT` says which case it is at and what went wrong; started by
the test, so that a death of the process is told apart.
"""

from __future__ import annotations

import json
import sys
import time
import warnings
import zipfile
from io import BytesIO

import numpy as np

from stainmap.errors import MeshFileError
from stainmap.surface.loading import load_mesh_bytes
from tests.malformed.files import model_text, packed
from tests.surface import shapes
from tests.surface.test_loading import (
    FORMATS,
    QUAD_OBJ,
    box_object,
    exported,
    file_name,
    quad_ply,
)

# What numbers and words are likely to be mistaken for.
WORDS = (
    b"nan",
    b"-inf",
    b"1e999",
    b"-1",
    b"0",
    b"4294967295",
    b"9999999999999999999999",
    b"0,5",
    b"1_0",
    b"\xff\xfe",
    b"\0",
    b"\n",
    b" ",
    b'"',
    b"<a>",
    b"\x00\x00\xc0\x7f",
    b"\xff\xff\xff\xff",
    b"\x00\x00\x80\x7f",
)
PART = "3D/3dmodel.model"


def good_files() -> dict[str, tuple[str, bytes]]:
    """Return a name and the bytes of a good file of every kind."""
    made = {
        kind: (file_name(kind), exported(shapes.sphere(subdivisions=1), kind))
        for kind in FORMATS
        if kind != "3mf"
    }
    for how in ("ascii", "binary_little_endian", "binary_big_endian"):
        made[f"quads {how}"] = ("crown.ply", quad_ply(how))
    made["quads obj"] = ("crown.obj", QUAD_OBJ.encode())
    # The text inside a 3MF; it is packed after it was changed.
    item = '<item objectid="1" transform="1 0 0 0 1 0 0 0 1 5 0 0"/>'
    made["model"] = ("crown.3mf", model_text(box_object(1), item))
    made["archive"] = ("crown.3mf", packed({PART: model_text(box_object(1), item)}))
    return made


def changed(content: bytes, others: list[bytes], rng: np.random.Generator) -> bytes:
    """Return the bytes after one to six random changes."""
    data = bytearray(content)
    for _ in range(int(rng.integers(1, 7))):
        at = int(rng.integers(0, len(data) + 1))
        length = int(min(1 + rng.exponential(12), 400))
        way = int(rng.integers(0, 7))
        if way == 0:
            data[at : at + length] = rng.bytes(length)
        elif way == 1:
            del data[at : at + length]
        elif way == 2:
            data[at:at] = data[at : at + length] * int(rng.integers(1, 4))
        elif way == 3:
            word = WORDS[int(rng.integers(len(WORDS)))]
            data[at : at + int(rng.integers(0, len(word) + 1))] = word
        elif way == 4 and data:
            data[min(at, len(data) - 1)] ^= 1 << int(rng.integers(0, 8))
        elif way == 5:
            other = others[int(rng.integers(len(others)))]
            start = int(rng.integers(0, len(other)))
            data[at : at + length] = other[start : start + length]
        elif rng.random() < 0.3:
            del data[at:]
    return bytes(data)


def wrong_with(content: bytes, name: str) -> str:
    """Return what the loader did that it must not do, or nothing."""
    start = time.process_time()
    try:
        loaded = load_mesh_bytes(content, name)
    except MeshFileError as error:
        said = str(error)
        fine = error.where == name and error.message.endswith(".") and bool(error.advice)
        if not fine or "\n" in said or len(said) > 300:
            return f"said {said!r}"
    except BaseException as error:  # noqa: BLE001 - that is what is looked for
        return f"let out {type(error).__name__}: {error}"
    else:
        mesh = loaded.mesh
        if not (mesh.face_count and np.isfinite(mesh.vertices).all()):
            return "read a mesh without faces, or points that are not finite"
        if loaded.file_vertex.max() >= mesh.vertex_count or loaded.file_vertex.min() < -1:
            return "mapped points to vertices that are not there"
    seconds = time.process_time() - start
    return f"took {seconds:.1f} s" if seconds > 5.0 else ""


def case(seed: int, number: int) -> tuple[str, bytes]:
    """Return name and bytes of one case; the same for the same seed and number."""
    rng = np.random.default_rng((seed, number))
    files = GOOD
    kinds = sorted(files)
    kind = kinds[number % len(kinds)]
    name, content = files[kind]
    made = changed(content, [one for _, one in files.values()], rng)
    if kind == "model":
        made = packed({PART: made}, zipfile.ZIP_STORED)
    return name, made


GOOD = good_files()


if __name__ == "__main__":
    seed, count = int(sys.argv[1]), int(sys.argv[2])
    warnings.simplefilter("error")
    for name, content in GOOD.values():
        # What is changed must be good to begin with.
        whole = packed({PART: content}) if content.startswith(b"<?xml") else content
        assert zipfile.is_zipfile(BytesIO(whole)) == name.endswith("3mf")
        load_mesh_bytes(whole, name)
    for number in range(count):
        name, content = case(seed, number)
        if number % 50 == 0:
            print(json.dumps({"at": number}), flush=True)
        wrong = wrong_with(content, name)
        if wrong:
            print(json.dumps({"number": number, "name": name, "wrong": wrong}), flush=True)
    print(json.dumps({"done": count}), flush=True)
