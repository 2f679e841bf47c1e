"""The predicted crown as binary glTF 2.0 [Khronos2021]: colours linear, lengths in metres.

The standard multiplies vertex colours into the material as they are, without decoding, so they
must be linear. Sixteen bits keep dark colours apart that eight linear bits would throw together.
"""

from __future__ import annotations

import json
import struct
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stainmap.files.mesh_areas import area_names, vertex_accents
from stainmap.model.case import Case
from stainmap.optics.colorimetry import decode_srgb
from stainmap.surface.mesh import TriMesh

COLOUR_NOTE = (
    "COLOR_0 is linear light with the primaries of sRGB (IEC 61966-2-1), as glTF 2.0 asks;"
    " predicted after sintering, not a match"
)
_METRES_PER_MM = 0.001
_MAGIC, _JSON_CHUNK, _BINARY_CHUNK = 0x46546C67, 0x4E4F534A, 0x004E4942
_FLOAT, _UNSIGNED_SHORT, _UNSIGNED_INT = 5126, 5123, 5125
_VERTICES, _INDICES = 34962, 34963
_OPAQUE = 65535


def glb_bytes(case: Case, srgb: NDArray[np.uint8]) -> bytes:
    """Return the refined surface as GLB.

    Parameters
    ----------
    srgb
        (V, 3) predicted sRGB.

    Positions are sintered millimetres along the file's own axes; the node scales them to metres.
    The attributes `_AREA` (zone) and `_ACCENT` (accent or 0) hold numbers, which `asset.extras`
    names.
    """
    mesh = case.surface.mesh
    colour = np.full((len(srgb), 4), _OPAQUE, dtype="<u2")
    colour[:, :3] = np.rint(decode_srgb(srgb / 255.0) * _OPAQUE)
    pieces = _Pieces()
    attributes = {
        "POSITION": pieces.add(mesh.vertices.astype("<f4"), _FLOAT, bounds=True),
        "NORMAL": pieces.add(_normals(mesh), _FLOAT),
        "COLOR_0": pieces.add(colour, _UNSIGNED_SHORT, normalized=True),
        "_AREA": pieces.add(case.zones.astype("<f4"), _FLOAT),
        "_ACCENT": pieces.add(vertex_accents(case).astype("<f4"), _FLOAT),
    }
    indices = pieces.add(mesh.faces.astype("<u4").reshape(-1), _UNSIGNED_INT, target=_INDICES)
    binary = pieces.binary()
    document = {
        "asset": {
            "version": "2.0",
            "generator": "stainmap",
            "extras": {
                "colour_space": COLOUR_NOTE,
                "lengths": "positions in millimetres, sintered size; the node scales to metres",
                "areas": {str(number): name for number, name in area_names(case).items()},
            },
        },
        "scene": 0,
        "scenes": [{"nodes": [0]}],
        "nodes": [{"mesh": 0, "name": case.code, "scale": [_METRES_PER_MM] * 3}],
        "meshes": [
            {
                "primitives": [
                    {"attributes": attributes, "indices": indices, "material": 0, "mode": 4}
                ]
            }
        ],
        "materials": [
            {
                "name": "sintered ceramic",
                "pbrMetallicRoughness": {"metallicFactor": 0.0, "roughnessFactor": 0.4},
                # Open sheets are looked at from both sides.
                "doubleSided": not mesh.is_watertight,
            }
        ],
        "buffers": [{"byteLength": len(binary)}],
        "bufferViews": pieces.views,
        "accessors": pieces.accessors,
    }
    text = json.dumps(document, separators=(",", ":"), ensure_ascii=True).encode("ascii")
    text += b" " * (-len(text) % 4)
    whole = 12 + 8 + len(text) + 8 + len(binary)
    return b"".join(
        (
            struct.pack("<III", _MAGIC, 2, whole),
            struct.pack("<II", len(text), _JSON_CHUNK),
            text,
            struct.pack("<II", len(binary), _BINARY_CHUNK),
            binary,
        )
    )


def _normals(mesh: TriMesh) -> NDArray[np.float32]:
    """Return unit normals (V, 3); the standard knows no zero ones, so those point up."""
    normals = mesh.vertex_normals.astype("<f4")
    normals[np.linalg.norm(normals, axis=1) < 0.5] = (0.0, 0.0, 1.0)
    return normals


class _Pieces:
    """The binary buffer, one view and one accessor after another."""

    def __init__(self) -> None:
        self._parts: list[bytes] = []
        self._length = 0
        self.views: list[dict[str, Any]] = []
        self.accessors: list[dict[str, Any]] = []

    def add(
        self,
        values: NDArray[Any],
        component: int,
        *,
        normalized: bool = False,
        bounds: bool = False,
        target: int = _VERTICES,
    ) -> int:
        """Append values (N,) or (N, k); return the number of their accessor."""
        part = values.tobytes()
        width = 1 if values.ndim == 1 else values.shape[1]
        accessor: dict[str, Any] = {
            "bufferView": len(self.views),
            "componentType": component,
            "count": len(values),
            "type": "SCALAR" if width == 1 else f"VEC{width}",
        }
        if normalized:
            accessor["normalized"] = True
        if bounds:
            accessor["min"] = values.min(axis=0).astype(float).tolist()
            accessor["max"] = values.max(axis=0).astype(float).tolist()
        self.views.append(
            {
                "buffer": 0,
                "byteOffset": self._length,
                "byteLength": len(part),
                "target": target,
            }
        )
        self.accessors.append(accessor)
        # All values are of four or eight bytes, so that every view begins at a multiple of four.
        self._parts.append(part)
        self._length += len(part)
        return len(self.accessors) - 1

    def binary(self) -> bytes:
        """Return the whole buffer."""
        return b"".join(self._parts)
