"""The light on the crown: soft and even, so that shading does not pass for colour.

All values are linear; the picture is encoded once, after the samples of a pixel are averaged.
Directions are given in the camera's own right, up and towards-the-viewer, so the light stays
where it is while the crown turns.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.optics.colorimetry import decode_srgb, encode_srgb
from stainmap.paper.raster import FrameBuffer
from stainmap.surface.mesh import frozen, unit_rows

if TYPE_CHECKING:
    from stainmap.surface.diffusion import SurfaceOperator

FloatField = NDArray[np.float32]
FloatArray = NDArray[np.float64]

SURROUND_SRGB = 0x77 / 255.0
# +0.25 EV, in pictures only: the surround is darker than what a crown is usually seen against.
LEVEL = 1.19

# How far light wanders sideways inside the ceramic before it comes out again, in mm (assumed).
_WANDER_RED_MM, _WANDER_GREEN_MM, _WANDER_BLUE_MM = 0.34, 0.22, 0.10
_OCCLUSION_MM = 0.06
_LEAST_OPEN = 0.02

_AMBIENT, _KEY, _FILL, _SKY = 0.38, 0.27, 0.17, 0.18
_KEY_FROM, _KEY_WRAP = (-0.50, 0.62, 0.60), 0.5
_FILL_FROM, _FILL_WRAP = (0.85, 0.05, 0.55), 0.6
_SKY_OCCLUSAL, _SKY_UP = 0.55, 0.45
_REFERENCE_TILT = 0.28

_SHARP_SHARE = 0.55
# Schlick's form of the Fresnel reflectance [Schlick1994]; the rise is held below 1 so that rims
# do not shine like glass.
_FRESNEL_FACING, _FRESNEL_RISE = 0.045, 0.525
_SHOULDER_FROM = 0.82


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _SoftBox:
    """A rectangular light: direction, half sides as tangents, and how bright it is."""

    towards: tuple[float, float, float]
    upright: tuple[float, float, float]
    half_width: float
    half_height: float
    brightness: float


_ENVIRONMENT = 0.10
_BOX_EDGE = 0.15
_BOXES = (
    _SoftBox(
        towards=(-0.42, 0.80, 0.42),
        upright=(0.0, 0.0, 1.0),
        half_width=0.27,
        half_height=0.20,
        brightness=2.7,
    ),
    _SoftBox(
        towards=(0.95, 0.25, 0.35),
        upright=(0.0, 1.0, 0.0),
        half_width=0.12,
        half_height=0.55,
        brightness=1.0,
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ShadingFields:
    """What the light needs to know of a surface; computed once for a mesh.

    Parameters
    ----------
    normals
        (V, 3) float32 unit normals.
    normals_red, normals_green, normals_blue
        (V, 3) float32. Normals smoothed over as far as light of that colour wanders sideways.
    openness
        (V,) float32. Ambient occlusion: 1 where the whole hemisphere is open.
    """

    normals: FloatField
    normals_red: FloatField
    normals_green: FloatField
    normals_blue: FloatField
    openness: FloatField


def shading_fields(
    operator: SurfaceOperator, *, progress: Callable[[float, str], None] | None = None
) -> ShadingFields:
    """Return smoothed normals and occlusion of the operator's mesh: 2 to 3 s at 50k vertices.

    Callers keep the result as long as they keep the mesh.
    """
    from stainmap.paper.occlusion import ambient_occlusion  # noqa: PLC0415

    mesh = operator.mesh
    normals = mesh.vertex_normals

    def smoothed(length_mm: float) -> FloatField:
        return frozen(unit_rows(operator.smooth(normals, length_mm)).astype(np.float32))

    openness = operator.smooth(ambient_occlusion(mesh, progress=progress), _OCCLUSION_MM)
    return ShadingFields(
        normals=frozen(normals.astype(np.float32)),
        normals_red=smoothed(_WANDER_RED_MM),
        normals_green=smoothed(_WANDER_GREEN_MM),
        normals_blue=smoothed(_WANDER_BLUE_MM),
        openness=frozen(np.clip(openness, 0.0, 1.0).astype(np.float32)),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Lighting:
    """The light on every sample of a frame, before any colour: recolouring is then quick.

    Parameters
    ----------
    frame
        The frame the light falls on.
    diffuse
        (n, 3) float32. Light that comes back from a white surface, 1 facing the viewer; or (n, 1).
    openness
        (n, 1) float32.
    gloss
        (n, 1) float32. What the polished surface mirrors, added on top of the colour.
    """

    frame: FrameBuffer
    diffuse: FloatField
    openness: FloatField
    gloss: FloatField


def light_frame(
    frame: FrameBuffer,
    fields: ShadingFields,
    *,
    occlusal: ArrayLike,
    gloss: float = 1.0,
    chalk: bool = False,
) -> Lighting:
    """Return the light on a frame.

    Parameters
    ----------
    frame, fields
        The frame, and the shading fields of its mesh.
    occlusal
        (3,) occlusal direction, from where a part of the sky light comes.
    gloss
        Share of the polished surface's reflections; 0 for a matt one.
    chalk
        Milled, not sintered: light does not wander, and nothing shines.
    """
    axes = frame.camera.axes
    sky = _unit(_SKY_OCCLUSAL * _unit(np.asarray(occlusal)) + _SKY_UP * axes[1])
    reference = float(_light_on(_unit(axes[2] + _REFERENCE_TILT * axes[1])[None], axes, sky)[0])
    blue = _unit_rows(frame.take(fields.normals_blue))
    channels = [blue]
    if not chalk:
        wide = (fields.normals_red, fields.normals_green)
        channels = [*(_unit_rows(frame.take(normals)) for normals in wide), blue]
    diffuse = np.stack([_light_on(normals, axes, sky) for normals in channels], axis=1)
    openness = np.clip(frame.take(fields.openness), _LEAST_OPEN, 1.0)
    shine = np.zeros(len(frame.hits), dtype=np.float32)
    if gloss > 0.0 and not chalk:
        sharp = frame.take(fields.normals)
        normals = _unit_rows(_SHARP_SHARE * sharp + (1.0 - _SHARP_SHARE) * blue)
        shine = np.float32(gloss) * _mirrored(frame, normals, openness, axes, sky)
    return Lighting(
        frame=frame,
        diffuse=diffuse / np.float32(reference),
        openness=openness[:, None],
        gloss=shine[:, None],
    )


def shade(
    lighting: Lighting, linear_rgb: ArrayLike, *, relief: float = 1.0, level: float = LEVEL
) -> FloatField:
    """Return the (n, 3) linear light of every sample hit.

    Parameters
    ----------
    lighting
        The light on the frame.
    linear_rgb
        (V, 3) linear sRGB of the vertices, 0 to 1.
    relief
        Share of the shading; 0 gives back the colours times `level`.
    level
        Exposure.
    """
    albedo = lighting.frame.take(linear_rgb)
    share = np.float32(relief)
    light = 1.0 + (lighting.diffuse - 1.0) * share
    open_share = 1.0 - (1.0 - bounced(lighting.openness, albedo)) * share
    return np.asarray(albedo * light * open_share * np.float32(level) + lighting.gloss * share)


def bounced(openness: FloatField, albedo: FloatField) -> FloatField:
    """Return the share of light in a hollow, with the light that bounces inside it.

    A cubic in the openness whose coefficients are linear in the albedo, fitted to path-traced
    scenes [Jimenez2016]: grooves get deeper in colour, never black. (n, 1) and (n, 3) give (n, 3).
    """
    a = 2.0404 * albedo - 0.3324
    b = 0.6417 - 4.7951 * albedo
    d = 2.7552 * albedo + 0.6903
    return np.asarray(np.maximum(openness, ((openness * a + b) * openness + d) * openness))


def shoulder(linear: FloatField) -> FloatField:
    """Return linear light with everything above 0.82 bent below 1, so that no light clips."""
    over = np.maximum(linear - np.float32(_SHOULDER_FROM), 0.0)
    room = np.float32(1.0 - _SHOULDER_FROM)
    return np.asarray(
        np.where(over > 0.0, _SHOULDER_FROM + room * (1.0 - np.exp(-over / room)), linear)
    )


def develop(
    frame: FrameBuffer, linear: FloatField, *, surround_srgb: float = SURROUND_SRGB
) -> NDArray[np.uint8]:
    """Return the (height, width, 3) sRGB picture of linear light (n, 3) at the samples hit."""
    mean = frame.average(shoulder(linear), float(decode_srgb(surround_srgb)))
    return encoded(mean)


def encoded(linear: ArrayLike) -> NDArray[np.uint8]:
    """Return linear values as sRGB from 0 to 255."""
    return np.asarray(encode_srgb(linear) * 255.0 + 0.5).astype(np.uint8)


def form_relief(frame: FrameBuffer, fields: ShadingFields, amount: float) -> FloatField:
    """Return (n,) a quiet darkening that keeps the form readable under flat colours."""
    axes = frame.camera.axes
    normals = _unit_rows(frame.take(fields.normals_blue))
    key = _unit(np.asarray(_KEY_FROM) @ axes).astype(np.float32)
    form = (0.55 + 0.45 * np.clip((normals @ key + 0.4) / 1.4, 0.0, 1.0)) / 0.95
    hollow = np.clip(frame.take(fields.openness), 0.1, 1.0) ** np.float32(0.8)
    return np.asarray(1.0 + (form * hollow - 1.0) * np.float32(amount))


def _light_on(normals: FloatField | FloatArray, axes: FloatArray, sky: FloatArray) -> FloatField:
    """Return (n,) the diffuse light on surfaces with these normals."""

    def wrapped(towards: tuple[float, float, float], wrap: float) -> FloatField:
        direction = _unit(np.asarray(towards) @ axes).astype(np.float32)
        return np.asarray(np.maximum(normals @ direction + wrap, 0.0) / (1.0 + wrap))

    key, fill = wrapped(_KEY_FROM, _KEY_WRAP), wrapped(_FILL_FROM, _FILL_WRAP)
    above = 0.5 + 0.5 * (normals @ sky.astype(np.float32))
    return np.asarray(_AMBIENT + _KEY * key + _FILL * fill + _SKY * above, dtype=np.float32)


def _mirrored(
    frame: FrameBuffer,
    normals: FloatField,
    openness: FloatField,
    axes: FloatArray,
    sky: FloatArray,
) -> FloatField:
    """Return (n,) what the polished surface mirrors towards the viewer."""
    view = _towards_viewer(frame, axes)
    facing = np.clip((normals * view).sum(axis=1), 0.0, 1.0)
    mirror = 2.0 * facing[:, None] * normals - view
    fresnel = _FRESNEL_FACING + _FRESNEL_RISE * (1.0 - facing) ** 5
    around = _ENVIRONMENT * (0.5 + 0.5 * mirror @ sky.astype(np.float32))
    for box in _BOXES:
        around += np.float32(box.brightness) * _seen_in(mirror, box, axes)
    unhidden = np.clip(1.25 * openness ** np.float32(0.6) - 0.22, 0.0, 1.0)
    return np.asarray(fresnel * around * unhidden, dtype=np.float32)


def _seen_in(mirror: FloatField, box: _SoftBox, axes: FloatArray) -> FloatField:
    """Return (n,) how much of a soft box lies in the directions (n, 3): 0 to 1, soft edges."""
    towards = _unit(np.asarray(box.towards) @ axes)
    across = _unit(np.cross(np.asarray(box.upright) @ axes, towards))
    along = np.cross(towards, across)
    ahead = mirror @ towards.astype(np.float32)
    reach = np.maximum(ahead, 1e-3)

    def within(direction: FloatArray, half: float) -> FloatField:
        tangent = np.abs(mirror @ direction.astype(np.float32)) / reach
        share = np.clip((half + _BOX_EDGE - tangent) / (2.0 * _BOX_EDGE), 0.0, 1.0)
        return np.asarray(share * share * (3.0 - 2.0 * share))

    seen = within(across, box.half_width) * within(along, box.half_height)
    return np.asarray(np.where(ahead > 0.0, seen, 0.0), dtype=np.float32)


def _towards_viewer(frame: FrameBuffer, axes: FloatArray) -> FloatField:
    """Return (n, 3) or (1, 3) unit vectors from what is seen to the viewer."""
    camera = frame.camera
    if camera.distance_mm is None:
        return np.asarray(axes[2][None], dtype=np.float32)
    row, column = np.divmod(frame.hits, frame.width * frame.samples)
    step = frame.pixel_mm / frame.samples
    x = (column + 0.5) * step - 0.5 * frame.pixel_mm * frame.width
    y = 0.5 * camera.height_mm - (row + 0.5) * step
    ray = axes[2] * camera.distance_mm - x[:, None] * axes[0] - y[:, None] * axes[1]
    return _unit_rows(ray.astype(np.float32))


def _unit(vector: FloatArray) -> FloatArray:
    return np.asarray(vector / np.linalg.norm(vector))


def _unit_rows(rows: FloatField) -> FloatField:
    length = np.sqrt(np.einsum("ij,ij->i", rows, rows))
    return np.asarray(rows / np.maximum(length, 1e-12)[:, None], dtype=np.float32)
