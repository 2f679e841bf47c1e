"""Reading PLY and 3MF files with trimesh."""

from __future__ import annotations

import io
import logging
import re
import warnings
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import MeshFileError
from stainmap.surface.formats import MeshFormat
from stainmap.surface.loading_rows import EXPORT_AGAIN, check_rows, rows_of, too_short
from stainmap.surface.soup import Soup
from stainmap.units import LengthUnit

_MAX_UNPACKED_BYTES = 1 << 30

# Units of 3MF [ThreeMF2018]; the millimetre is the default.
_UNITS = {
    "micron": LengthUnit.MICROMETRE,
    "millimeter": LengthUnit.MILLIMETRE,
    "centimeter": LengthUnit.CENTIMETRE,
    "inch": LengthUnit.INCH,
    "meter": LengthUnit.METRE,
}
_INCHES_PER_FOOT = 12.0

_PLY_SIZES = {"char": 1, "short": 2, "int": 4, "float": 4, "double": 8}
_PLY_SIZES |= {"uchar": 1, "ushort": 2, "uint": 4, "int8": 1, "uint8": 1, "int16": 2, "uint16": 2}
_PLY_SIZES |= {"int32": 4, "uint32": 4, "int64": 8, "uint64": 8, "float32": 4, "float64": 8}


def read_with_library(content: bytes, mesh_format: MeshFormat, name: str) -> Soup:
    """Read a PLY or 3MF file; polygons are cut into triangles.

    Parameters
    ----------
    content, name
        The bytes, and the file's name for error messages.
    mesh_format
        One of these two.

    Raises
    ------
    MeshFileError
        If it cannot be read, is incomplete, or holds no triangles.
    """
    unit: LengthUnit | None = None
    factor = 1.0
    points_expected: int | None = None
    if mesh_format is MeshFormat.PLY:
        points_expected = _check_ply(content, name)
    else:
        unit, factor = _check_3mf(content, name)
    points, triangles = _loaded(content, mesh_format, name)
    if not len(triangles):
        what = "points but no triangles" if len(points) else "no triangles"
        raise MeshFileError(f"It holds {what}.", where=name, advice="Export it as a surface.")
    if points_expected is not None and len(points) != points_expected:
        raise MeshFileError(
            f"It promises {points_expected:,} points and holds {len(points):,}.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    low, high = int(triangles.min()), int(triangles.max())
    if low < 0 or high >= len(points):
        raise MeshFileError(
            f"A triangle refers to point {high if low >= 0 else low:,}; there are"
            f" {len(points):,} points.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    return Soup(points=points * factor, triangles=triangles, declared_unit=unit)


def _loaded(
    content: bytes, mesh_format: MeshFormat, name: str
) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Return points and triangles of everything in the file, placed as the file says."""
    try:
        with warnings.catch_warnings(), _silenced():
            warnings.simplefilter("ignore")
            # numpy only warns when a number could not be read, and goes on without the rest.
            warnings.filterwarnings("error", message="string or file could not be read")
            scene = _trimesh_scene(content, mesh_format)
            points, triangles, before = [np.empty((0, 3))], [np.empty((0, 3), np.int64)], 0
            for node in scene.graph.nodes_geometry:
                matrix, key = scene.graph[node]
                geometry = scene.geometry[key]
                placed = np.asarray(geometry.vertices, dtype=np.float64).reshape(-1, 3)
                faces = np.asarray(getattr(geometry, "faces", ()), dtype=np.int64).reshape(-1, 3)
                if not np.array_equal(matrix, np.eye(4)):
                    placed = placed @ matrix[:3, :3].T + matrix[:3, 3]
                if np.linalg.det(matrix[:3, :3]) < 0:  # mirrored
                    faces = faces[:, ::-1]
                points.append(placed)
                triangles.append(np.where(faces < 0, faces, faces + before))
                before += len(placed)
            return np.concatenate(points), np.concatenate(triangles)
    except Exception:  # noqa: BLE001 - a damaged file may fail anywhere inside the library
        raise MeshFileError(
            f"It looks like {mesh_format.value}, but is damaged or written in a way that cannot"
            " be read.",
            where=name,
            advice="Export it again, best as binary STL.",
        ) from None


@contextmanager
def _silenced() -> Iterator[None]:
    """Keep the library from logging to the terminal what is said in one sentence anyway."""
    logger = logging.getLogger("trimesh")
    logger.addFilter(_nothing)
    try:
        yield
    finally:
        logger.removeFilter(_nothing)


def _nothing(record: logging.LogRecord) -> bool:  # noqa: ARG001 - the signature of a filter
    return False


def _trimesh_scene(content: bytes, mesh_format: MeshFormat) -> Any:
    import trimesh  # noqa: PLC0415 - half a second, which STL files need not wait for

    options: dict[str, Any] = {}
    if mesh_format is MeshFormat.PLY:
        options = {"skip_materials": True, "fix_texture": False}
    return trimesh.load(
        io.BytesIO(content),
        file_type=mesh_format.extension[1:],
        force="scene",
        process=False,
        maintain_order=True,
        **options,
    )


def _check_ply(content: bytes, name: str) -> int:
    """Check a PLY header against the rest of the file; return the number of points."""
    mark = re.search(rb"^end_header[ \t]*\r?\n", content, re.MULTILINE)
    if mark is None:
        raise MeshFileError(
            "Its header is incomplete: 'end_header' is missing.", where=name, advice=EXPORT_AGAIN
        )
    is_ascii = re.search(rb"^format[ \t]+ascii", content[: mark.start()], re.MULTILINE) is not None
    counts: dict[str, int] = {}
    row_bytes: dict[str, int] = {}
    first_is_list = False
    element = ""
    for line in content[: mark.start()].decode("ascii", "replace").split("\n"):
        words = line.split()
        if words[:1] == ["element"] and len(words) == 3 and words[2].isdigit():
            element = words[1]
            counts[element] = int(words[2])
            row_bytes[element] = 0
        elif words[:1] == ["property"] and element and len(words) >= 3:
            if element == "face" and row_bytes[element] == 0:
                first_is_list = words[1] == "list"
            row_bytes[element] += _property_bytes(words[1:], is_polygon=element == "face")
    points, faces = counts.get("vertex", 0), counts.get("face", 0)
    least = sum(count * (2 if is_ascii else row_bytes[one]) for one, count in counts.items())
    if least > len(content) - mark.end() + 2:
        raise too_short(points, faces, name)
    if is_ascii:
        plain = list(counts) == ["vertex", "face"] and first_is_list
        check_rows(rows_of(content[mark.end() :]), points, faces if plain else 0, name)
    return points


def _property_bytes(words: list[str], *, is_polygon: bool) -> int:
    """Return how many bytes a property of a PLY element takes at least."""
    if words[0] != "list":
        return _PLY_SIZES.get(words[0], 1)
    corners = 3 if is_polygon and "vertex_ind" in words[-1] else 0
    return _PLY_SIZES.get(words[1], 1) + corners * _PLY_SIZES.get(words[min(2, len(words) - 1)], 1)


def _check_3mf(content: bytes, name: str) -> tuple[LengthUnit, float]:
    """Check a 3MF archive; return its unit and the factor that brings points to that unit."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            unpacked = sum(entry.file_size for entry in archive.infolist())
            if unpacked > _MAX_UNPACKED_BYTES:
                raise MeshFileError(
                    f"Unpacked it would take {unpacked / 2**30:.1f} GB; at most 1 GB is read.",
                    where=name,
                    advice="Export a single crown or bridge.",
                )
            models = [one for one in archive.namelist() if one.lower().endswith("3dmodel.model")]
            head = b""
            if models:
                with archive.open(models[0]) as model:
                    head = model.read(1 << 16)
    except MeshFileError:
        raise
    except Exception:  # noqa: BLE001 - zipfile fails in many ways on damaged archives
        raise MeshFileError(
            "It is a damaged or incomplete 3MF file.", where=name, advice=EXPORT_AGAIN
        ) from None
    if b"<!DOCTYPE" in head or b"<!ENTITY" in head:
        raise MeshFileError(
            "It holds XML definitions that do not belong in 3MF.", where=name, advice=EXPORT_AGAIN
        )
    tag = re.search(rb"<(?:\w+:)?model\b[^>]*?\bunit\s*=\s*[\"']([^\"']*)[\"']", head)
    unit = tag.group(1).decode("utf-8", "replace").strip().lower() if tag else "millimeter"
    if unit == "foot":
        return LengthUnit.INCH, _INCHES_PER_FOOT
    if unit not in _UNITS:
        raise MeshFileError(
            f"Its unit is '{unit[:20]}', which 3MF does not know.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    return _UNITS[unit], 1.0
