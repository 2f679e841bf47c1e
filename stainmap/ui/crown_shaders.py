"""The shader programs of the crown, built from ``resources/shaders``."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray
from PySide6.QtGui import QMatrix3x3, QMatrix4x4, QVector3D
from PySide6.QtOpenGL import QOpenGLFunctions_3_3_Core, QOpenGLShader, QOpenGLShaderProgram

from stainmap.errors import StainmapError
from stainmap.paths import resource
from stainmap.ui.crown_picture import SCALED, Look
from stainmap.words import translate

_HEAD = "#version 330 core\n"
# Attribute locations of crown.vert.
POSITION, SHARP_NORMAL, NORMAL_BLUE, NORMAL_GREEN, NORMAL_RED, COLOUR = range(6)
ZONE_SHARE_A, ZONE_SHARE_B, ACCENT_SHARE_A, ACCENT_SHARE_B, COATS, ROW_LIGHT = range(6, 12)


class Pass(StrEnum):
    """The kinds of picture that are drawn: the looks, and one that is only read back."""

    SINTERED = Look.SINTERED.value
    BENCH = Look.BENCH.value
    ZONES = Look.ZONES.value
    COATS = Look.COATS.value
    VALUE = Look.VALUE.value
    OFFSET = Look.OFFSET.value
    THICKNESS = Look.THICKNESS.value
    ROW = Look.ROW.value
    GROUND = Look.GROUND.value
    AREAS = "areas"


# Which attributes a pass reads, and the switch it sets in crown.vert.
_LIT_ATTRIBUTES = (POSITION, SHARP_NORMAL, NORMAL_BLUE, NORMAL_GREEN, NORMAL_RED, COLOUR)
_ZONE_ATTRIBUTES = (ZONE_SHARE_A, ZONE_SHARE_B, ACCENT_SHARE_A, ACCENT_SHARE_B)
ATTRIBUTES: dict[Pass, tuple[int, ...]] = {
    Pass.SINTERED: _LIT_ATTRIBUTES,
    Pass.GROUND: _LIT_ATTRIBUTES,
    Pass.ROW: (*_LIT_ATTRIBUTES, ROW_LIGHT),
    **{Pass(look.value): (POSITION, SHARP_NORMAL, NORMAL_BLUE, COLOUR) for look in SCALED},
    Pass.BENCH: (POSITION, SHARP_NORMAL, NORMAL_BLUE, COLOUR),
    Pass.ZONES: (POSITION, SHARP_NORMAL, NORMAL_BLUE, *_ZONE_ATTRIBUTES),
    Pass.COATS: (POSITION, SHARP_NORMAL, NORMAL_BLUE, COATS),
    Pass.AREAS: (POSITION, SHARP_NORMAL, NORMAL_BLUE, *_ZONE_ATTRIBUTES),
}
_SWITCH = {
    Pass.SINTERED: "SINTERED",
    Pass.GROUND: "SINTERED",
    Pass.ROW: "SINTERED\n#define ROW",
    **{Pass(look.value): "SCALED" for look in SCALED},
    Pass.BENCH: "SINTERED\n#define CHALK",
    Pass.ZONES: "ZONES",
    Pass.COATS: "COATS",
    Pass.AREAS: "ZONES",
}


# Passes drawn by another one's fragment shader than that of their own name.
_FRAGMENT = {
    Pass.GROUND: "sintered.frag",
    Pass.ROW: "sintered.frag",
    **{Pass(look.value): "scaled.frag" for look in SCALED},
}


class ShaderError(StainmapError):
    """The graphics driver does not accept a shader."""


class Program:
    """One linked program and its uniforms by name."""

    def __init__(
        self, functions: QOpenGLFunctions_3_3_Core, vertex: str, fragment: str, where: str
    ) -> None:
        self._functions = functions
        self._program = QOpenGLShaderProgram()
        kind = QOpenGLShader.ShaderTypeBit
        built = (
            self._program.addShaderFromSourceCode(kind.Vertex, vertex)
            and self._program.addShaderFromSourceCode(kind.Fragment, fragment)
            and self._program.link()
        )
        if not built:
            raise ShaderError(
                translate("crown shaders", "The graphics driver refuses a shader: {why}").format(
                    why=self._program.log().strip()
                ),
                where=where,
                advice=translate(
                    "crown shaders",
                    "Start with STAINMAP_NO_GL=1 to draw without the graphics driver.",
                ),
            )
        self._locations: dict[str, int] = {}

    def bind(self) -> None:
        """Make this the program in use."""
        self._program.bind()

    def _location(self, name: str) -> int:
        if name not in self._locations:
            self._locations[name] = self._program.uniformLocation(name)
        return self._locations[name]

    def set_number(self, name: str, value: float) -> None:
        """Set a float; a uniform the driver has optimised away is passed over."""
        self._functions.glUniform1f(self._location(name), float(value))

    def set_sampler(self, name: str, unit: int) -> None:
        """Point a sampler at a texture unit."""
        self._functions.glUniform1i(self._location(name), unit)

    def set_pair(self, name: str, x: float, y: float) -> None:
        """Set a vec2."""
        self._functions.glUniform2f(self._location(name), float(x), float(y))

    def set_vector(self, name: str, vector: NDArray[np.float64]) -> None:
        """Set a vec3."""
        x, y, z = (float(v) for v in vector)
        self._program.setUniformValue(self._location(name), QVector3D(x, y, z))

    def set_matrix(self, name: str, matrix: NDArray[np.float64]) -> None:
        """Set a mat3 or mat4 from rows."""
        values = [float(v) for v in np.ravel(matrix)]
        square = QMatrix4x4(values) if len(values) == 16 else QMatrix3x3(values)
        self._program.setUniformValue(self._location(name), square)

    def set_list(self, name: str, values: NDArray[np.float32]) -> None:
        """Set an array of float (n,) or vec3 (n, 3)."""
        flat: Sequence[float] = [float(v) for v in np.ravel(values)]
        if values.ndim == 2:
            self._functions.glUniform3fv(self._location(name), len(values), flat)
        else:
            self._functions.glUniform1fv(self._location(name), len(values), flat)


def crown_program(functions: QOpenGLFunctions_3_3_Core, which: Pass) -> Program:
    """Build the program of a pass; a context must be current."""
    vertex = f"{_HEAD}#define {_SWITCH[which]}\n{_source('crown.vert')}"
    name = _FRAGMENT.get(which, f"{which}.frag")
    switched = f"{_HEAD}#define {_SWITCH[which]}\n"
    fragment = f"{switched}{_source('encode.glsl')}{_source(name)}"
    return Program(functions, vertex, fragment, name)


def resolve_program(functions: QOpenGLFunctions_3_3_Core) -> Program:
    """Build the program that averages four shifted pictures."""
    fragment = f"{_HEAD}{_source('encode.glsl')}{_source('resolve.frag')}"
    return Program(functions, _HEAD + _source("resolve.vert"), fragment, "resolve.frag")


def _source(name: str) -> str:
    return resource("shaders", name).read_text(encoding="utf-8") + "\n"
