"""What the graphics card holds of a crown: one buffer per attribute, and the triangle lists."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray
from PySide6.QtOpenGL import QOpenGLBuffer, QOpenGLFunctions_3_3_Core
from shiboken6 import VoidPtr

from stainmap.surface.mesh import TriMesh
from stainmap.ui import crown_shaders as shaders

if TYPE_CHECKING:
    from stainmap.paper.shading import ShadingFields

# Names of triangle lists: all of them, a lighter list for turning, what the brush has touched.
WHOLE, TURNING, PART = "whole", "turning", "part"
# Takes addresses and arrays alike; the stubs know of addresses only.
POINTER: Any = VoidPtr
_GL_FLOAT, _GL_SHORT, _GL_UNSIGNED_SHORT, _GL_UNSIGNED_BYTE = 0x1406, 0x1402, 0x1403, 0x1401
_GL_TYPES: dict[str, int] = {
    "float32": _GL_FLOAT,
    "int16": _GL_SHORT,
    "uint16": _GL_UNSIGNED_SHORT,
    "uint8": _GL_UNSIGNED_BYTE,
}
_NORMALS = (
    shaders.SHARP_NORMAL,
    shaders.NORMAL_BLUE,
    shaders.NORMAL_GREEN,
    shaders.NORMAL_RED,
)
_SHARES = (
    shaders.ZONE_SHARE_A,
    shaders.ZONE_SHARE_B,
    shaders.ACCENT_SHARE_A,
    shaders.ACCENT_SHARE_B,
)
AnyArray = NDArray[np.float32] | NDArray[np.int16] | NDArray[np.uint16] | NDArray[np.uint8]


class CrownBuffers:
    """Arrays on this side, their copies on the card, and which of them are out of date.

    The arrays may be set at any time; `upload` needs a current context.
    """

    def __init__(self) -> None:
        self._mesh: TriMesh | None = None
        self._arrays: dict[int, AnyArray] = {}
        self._stale: set[int] = set()
        self._buffers: dict[int, QOpenGLBuffer] = {}
        self._faces: dict[str, NDArray[np.int32]] = {}
        self._stale_faces: set[str] = set()
        self._face_buffers: dict[str, QOpenGLBuffer] = {}

    # --- this side -----------------------------------------------------------------------

    def set_mesh(self, mesh: TriMesh) -> None:
        """Take a mesh; normals are its own, openness full, colour white, until told otherwise."""
        count = mesh.vertex_count
        self._mesh = mesh
        self._put(shaders.POSITION, mesh.vertices.astype(np.float32))
        plain = _packed_normals(mesh.vertex_normals, np.ones(count))
        for place in _NORMALS:
            self._put(place, plain)
        self._put(shaders.COLOUR, np.full((count, 4), 255, np.uint8))
        for place in _SHARES:
            self._put(place, np.zeros((count, 4), np.uint16))
        self.set_coats(np.zeros(count, np.float32))
        self.set_faces(WHOLE, mesh.faces)
        self.set_faces(TURNING, mesh.light_faces)

    def set_shading(self, shading: ShadingFields) -> None:
        """Take normals as they are and smoothed, and openness."""
        normals = (
            shading.normals,
            shading.normals_blue,
            shading.normals_green,
            shading.normals_red,
        )
        for place, directions in zip(_NORMALS, normals, strict=True):
            self._put(place, _packed_normals(directions, shading.openness))

    def set_colours(self, srgb: NDArray[np.uint8]) -> None:
        """Take encoded colours (V, 3)."""
        colours = np.full((len(srgb), 4), 255, np.uint8)
        colours[:, :3] = srgb
        self._put(shaders.COLOUR, colours)

    def change_colours(self, vertices: NDArray[np.int32], srgb: NDArray[np.uint8]) -> None:
        """Take encoded colours (k, 3) of some vertices."""
        self._arrays[shaders.COLOUR][vertices, :3] = srgb
        self._stale.add(shaders.COLOUR)

    def set_shares(self, zones: NDArray[np.float32], accents: NDArray[np.float32]) -> None:
        """Take softened shares of zones (V, 6) and accents (V, 7)."""
        for place, packed in zip(_SHARES, _packed_shares(zones, accents), strict=True):
            self._put(place, packed)

    def change_shares(
        self,
        vertices: NDArray[np.int32],
        zones: NDArray[np.float32],
        accents: NDArray[np.float32],
    ) -> None:
        """Take softened shares of zones (k, 6) and accents (k, 7) of some vertices."""
        for place, packed in zip(_SHARES, _packed_shares(zones, accents), strict=True):
            self._arrays[place][vertices] = packed
            self._stale.add(place)

    def set_coats(self, coats: NDArray[np.float32]) -> None:
        """Take a number of coats (V,)."""
        self._put(shaders.COATS, np.ascontiguousarray(coats[:, None], dtype=np.float32).copy())

    def change_coats(self, vertices: NDArray[np.int32], coats: NDArray[np.float32]) -> None:
        """Take the coats (k,) of some vertices."""
        self._arrays[shaders.COATS][vertices, 0] = coats
        self._stale.add(shaders.COATS)

    def set_row_light(self, light: NDArray[np.float32], above_gum: NDArray[np.float32]) -> None:
        """Take the light (V,) on a row of teeth and how far it stands out of the gum (V,)."""
        packed = np.rint(np.clip(np.stack([light, above_gum], axis=1), 0.0, 1.0) * 65535.0)
        self._put(shaders.ROW_LIGHT, np.ascontiguousarray(packed.astype(np.uint16)))

    def set_faces(self, name: str, faces: NDArray[np.int32]) -> None:
        """Take a list of triangles (F, 3) under a name."""
        self._faces[name] = np.ascontiguousarray(faces, dtype=np.int32)
        self._stale_faces.add(name)

    @property
    def is_closed(self) -> bool:
        """True if nothing behind a face can be seen; asked only where that has been worked out."""
        return self._mesh is not None and bool(vars(self._mesh).get("is_watertight", False))

    @property
    def has_row_light(self) -> bool:
        """True for a row of teeth, whose light falls off to the back of the mouth."""
        return shaders.ROW_LIGHT in self._arrays

    def clear(self) -> None:
        """Hold no crown any more; the context must be current if any was drawn."""
        self.release()
        self._mesh = None
        self._arrays, self._faces = {}, {}
        self._stale, self._stale_faces = set(), set()

    def face_count(self, name: str) -> int:
        """Return how many triangles a list has; 0 if there is none of the name."""
        return len(self._faces[name]) if name in self._faces else 0

    def _put(self, place: int, array: AnyArray) -> None:
        self._arrays[place] = array
        self._stale.add(place)

    # --- the card ------------------------------------------------------------------------

    def forget_card(self) -> None:
        """Upload everything again: the context is another one."""
        self._buffers.clear()
        self._face_buffers.clear()
        self._stale = set(self._arrays)
        self._stale_faces = set(self._faces)

    def release(self) -> None:
        """Give the card's memory back; the context must be current."""
        for buffer in (*self._buffers.values(), *self._face_buffers.values()):
            buffer.destroy()
        self.forget_card()

    def bind(self, functions: QOpenGLFunctions_3_3_Core, places: tuple[int, ...]) -> None:
        """Upload what is stale of these attributes and point the vertex array at them."""
        for place in places:
            array = self._arrays[place]
            buffer = self._buffers.get(place)
            if buffer is None:
                buffer = self._buffers[place] = _new_buffer(QOpenGLBuffer.Type.VertexBuffer)
            buffer.bind()
            if place in self._stale:
                _fill(buffer, array)
                self._stale.discard(place)
            kind = _GL_TYPES[array.dtype.name]
            functions.glEnableVertexAttribArray(place)
            functions.glVertexAttribPointer(
                place, array.shape[1], kind, kind != _GL_FLOAT, array.strides[0], POINTER(0)
            )
            buffer.release()

    def bind_faces(self, name: str) -> int:
        """Upload a list of triangles if it is stale, bind it, and return its number of corners."""
        buffer = self._face_buffers.get(name)
        if buffer is None:
            buffer = self._face_buffers[name] = _new_buffer(QOpenGLBuffer.Type.IndexBuffer)
        buffer.bind()
        if name in self._stale_faces:
            _fill(buffer, self._faces[name])
            self._stale_faces.discard(name)
        return 3 * len(self._faces[name])


def plain_shading(mesh: TriMesh) -> ShadingFields:
    """Return what is known of a mesh before its light has been worked out."""
    from stainmap.paper.shading import ShadingFields  # noqa: PLC0415

    normals = mesh.vertex_normals.astype(np.float32)
    return ShadingFields(
        normals=normals,
        normals_red=normals,
        normals_green=normals,
        normals_blue=normals,
        openness=np.ones(len(normals), np.float32),
    )


def _packed_normals(
    normals: NDArray[np.floating], openness: NDArray[np.floating]
) -> NDArray[np.int16]:
    """Return four shorts each: openness rides along, and attributes begin at four bytes."""
    packed = np.empty((len(normals), 4), np.int16)
    for place, column in enumerate((*normals.T, openness)):
        _pack(column, -1.0 if place < 3 else 0.0, 32767, packed[:, place])
    return packed


def _new_buffer(kind: QOpenGLBuffer.Type) -> QOpenGLBuffer:
    buffer = QOpenGLBuffer(kind)
    buffer.create()
    return buffer


def _fill(buffer: QOpenGLBuffer, array: AnyArray | NDArray[np.int32]) -> None:
    if buffer.size() != array.nbytes:
        buffer.allocate(POINTER(array, array.nbytes), array.nbytes)
    else:
        buffer.write(0, POINTER(array, array.nbytes), array.nbytes)


def _packed_shares(
    zones: NDArray[np.float32], accents: NDArray[np.float32]
) -> list[NDArray[np.uint16]]:
    packed = [np.zeros((len(zones), 4), np.uint16) for _ in range(4)]
    for first, shares in ((0, zones), (8, accents)):
        for place, column in enumerate(shares.T, start=first):
            _pack(column, 0.0, 65535, packed[place // 4][:, place % 4])
    return packed


def _pack(values: NDArray[np.floating], least: float, most: int, out: AnyArray) -> None:
    """Write values from `least` to 1 as whole numbers, 1 being `most`.

    A column at a time: that takes a fifth of the time of rows of three or four.
    """
    wide = np.clip(values, least, 1.0, dtype=np.float32)
    wide *= np.float32(most)
    np.copyto(out, np.rint(wide, out=wide), casting="unsafe")
