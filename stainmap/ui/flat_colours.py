"""The colours of a flat view in the look of the crown; the shaders' arithmetic on pixels.

What the graphics driver does for the crown is done here with arrays: flat views are small, and
under the brush only the box around it is coloured anew.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.optics.colorimetry import decode_srgb, encode_srgb
from stainmap.surface.mesh import FloatArray, IndexArray
from stainmap.ui import zone_look
from stainmap.ui.crown_picture import COLOURED, SCALED, SCALED_RELIEF, Look, SeenValues
from stainmap.ui.flat_picture import FlatLight, FlatPicture

Field = NDArray[np.float32]
Box = tuple[int, int, int, int]

_LINEAR = decode_srgb(np.arange(256) / 255.0).astype(np.float32)
_ENCODED_STEPS = 4096
_ENCODED = np.asarray(
    encode_srgb(np.linspace(0.0, 1.0, _ENCODED_STEPS + 1) ** 2) * 255.0 + 0.5
).astype(np.uint8)
_SURROUND = float(decode_srgb(np.array(0x77 / 255.0)))
# Hatch planes of the zones in mesial, buccal, occlusal over their spacing, as in zones.frag.
_PLANES: dict[int, tuple[tuple[float, float, float], ...]] = {
    1: ((0.0, 0.0, 1.0 / 0.52),),
    3: ((0.0, 0.9 / 0.62, 1.0 / 0.62),),
    4: ((0.86 / 0.62, 0.5 / 0.62, 0.0),),
    5: ((1.0 / 0.46, 1.0 / 0.46, 0.0), (1.0 / 0.46, -1.0 / 0.46, 0.0)),
}
# Pixels per mm from which lines have their full width, and share of it from which accents are
# outlined.
_FULL_LINES_FROM, _ACCENTS_FROM = 15.0, 0.8
# Places drawn at a false size: slanted lines this many pixels apart, this strong.
_FALSE_SIZE_PX, _FALSE_SIZE_INK = 9, 0.20


def coloured(
    picture: FlatPicture, light: FlatLight, values: SeenValues, box: Box, pixel_ratio: float = 1.0
) -> NDArray[np.uint8]:
    """Return (h, w, 3) sRGB of the pixels in a box: left, top, right, bottom.

    Parameters
    ----------
    picture, light
        The pixels and the light on them.
    values
        What the crown shows.
    box
        Part of the picture.
    pixel_ratio
        Device pixels per logical pixel, for the width of lines.
    """
    left, top, right, bottom = box
    index = picture.rows[top:bottom, left:right]
    mask = index >= 0
    out = np.full((*index.shape, 3), np.float32(_SURROUND), dtype=np.float32)
    rows = index[mask]
    if len(rows):
        # Small pictures get finer lines, and no outlines of accents: they would cover everything.
        fine = picture.pixels_per_mm / pixel_ratio / _FULL_LINES_FROM
        window = _Window(picture, mask, rows, left, top, pixel_ratio * min(max(fine, 0.6), 1.0))
        colour = _in_look(window, light, values)
        colour *= window.false_size_ink()[:, None]
        cover = picture.coverage[top:bottom, left:right][mask][:, None]
        out[mask] = _SURROUND + (colour - _SURROUND) * cover
    steps = np.sqrt(np.clip(out, 0.0, 1.0)) * np.float32(_ENCODED_STEPS) + np.float32(0.5)
    return np.asarray(_ENCODED[steps.astype(np.int32)])


def _in_look(window: _Window, light: FlatLight, values: SeenValues) -> Field:
    from stainmap.paper.shading import LEVEL, bounced, shoulder  # noqa: PLC0415

    rows, picture = window.rows, window.picture
    relief = light.relief[rows] if values.shading else np.ones(len(rows), np.float32)
    if values.look is Look.ZONES and values.zones is not None and values.accents is not None:
        return window.zones(values.zones, values.accents, values.rows, relief)
    if values.look is Look.COATS and values.coats is not None:
        return window.coats(values.coats, relief)
    if values.look not in (*COLOURED, *SCALED) or values.srgb is None:
        return np.full((len(rows), 3), 0.5, np.float32) * relief[:, None]
    albedo = np.einsum(
        "nij,ni->nj", _LINEAR[values.srgb[picture.vertices[rows]]], picture.weights[rows]
    )
    if not values.shading:
        return np.asarray(albedo)
    if values.look in SCALED:
        return np.asarray(albedo * (1.0 - SCALED_RELIEF * (1.0 - relief))[:, None])
    lit = albedo * light.diffuse[rows] * bounced(light.openness[rows], albedo)
    return shoulder(np.asarray(lit * np.float32(LEVEL) + light.gloss[rows]))


class _Window:
    """The pixels of a box that show the crown, and slopes across them."""

    def __init__(
        self,
        picture: FlatPicture,
        mask: NDArray[np.bool_],
        rows: IndexArray,
        left: int,
        top: int,
        pixel_ratio: float,
    ) -> None:
        self.picture, self.rows, self._mask = picture, rows, mask
        self._ratio = np.float32(pixel_ratio)
        y, x = np.nonzero(mask)
        self._sum_xy = (x + left + y + top).astype(np.int32)
        number = np.full((mask.shape[0] + 2, mask.shape[1] + 2), -1, dtype=np.int32)
        number[1:-1, 1:-1][mask] = np.arange(len(rows), dtype=np.int32)
        own = np.arange(len(rows), dtype=np.int32)
        # The neighbour to the right and below; where there is none, to the left and above.
        self._beside = [
            _neighbour(number[y + 1, x + 2], number[y + 1, x], own),
            _neighbour(number[y + 2, x + 1], number[y, x + 1], own),
        ]

    def slopes(self, field: Field) -> tuple[Field, Field]:
        """Return the change of values (n,) or (n, k) by one pixel to the right and downwards."""
        across, down = ((field[other] - field) for other in self._beside)
        return across, down

    def steepness(self, field: Field) -> Field:
        across, down = self.slopes(field)
        return np.maximum(np.hypot(across, down), np.float32(1e-5))

    def false_size_ink(self) -> Field:
        """Return (n,) the light that is left under lines where sizes are false by more than 2."""
        notable = self.picture.sheet.notable
        ink = np.ones(len(self.rows), np.float32)
        if notable.any():
            there = notable[self.picture.corners[self.rows]].sum(axis=1) >= 2
            period = max(round(_FALSE_SIZE_PX * float(self._ratio)), 2)
            line = self._sum_xy % period < max(round(float(self._ratio)), 1)
            ink[there & line] = 1.0 - _FALSE_SIZE_INK
        return ink

    def zones(self, zones: Field, accents: Field, frame: FloatArray, relief: Field) -> Field:
        """Return (n, 3) linear patches with hatch, borders and the outlines of accents."""
        shares = self.picture.take(zones, self.rows)
        across, down = self.slopes(shares)
        own = np.arange(len(shares))
        zone = shares.argmax(axis=1)
        number = np.where(shares[own, zone] > 0.02, zone + 1, 0)
        tone = zone_look.shader_hatch_tones()[number][:, None]
        ink = np.float32(0.62) * self._hatches(number, frame)[:, None]
        colour = zone_look.shader_zone_colours()[number]
        colour = (colour + (tone - colour) * ink) * relief[:, None]
        slope = np.hypot(across[own, zone][:, None] - across, down[own, zone][:, None] - down)
        border = (shares[own, zone][:, None] - shares) / np.maximum(slope, np.float32(1e-5))
        border[own, zone] = 1e6
        nearest = np.where(number == 0, np.float32(1e6), border.min(axis=1))
        colour = self._line(colour, nearest, white=(2.0, 0.9), black=0.95)
        if self._ratio < _ACCENTS_FROM:
            return colour
        masks = self.picture.take(accents, self.rows)
        if masks.any():
            outline = (np.abs(masks - 0.5) / self.steepness(masks)).min(axis=1)
            dash = self._sum_xy % round(10.0 * float(self._ratio)) >= round(5.0 * self._ratio)
            colour = self._line(colour, outline, white=(1.5, 0.8), black=0.8, where=dash)
        return colour

    def _hatches(self, number: NDArray[np.int64], frame: FloatArray) -> Field:
        ink = np.zeros(len(number), np.float32)
        planes = [zone for zone in _PLANES if (number == zone).any()]
        if not planes:
            return ink
        vertices = self.picture.mesh.vertices
        place = self.picture.take(vertices, self.rows) @ frame.T.astype(np.float32)
        for zone in planes:
            own = number == zone
            for plane in _PLANES[zone]:
                level = place @ np.array(plane, np.float32)
                slope = self.steepness(level)
                away = np.abs(level - np.rint(level)) / slope
                room = np.clip(1.4 - slope * self._ratio * 2.6, 0.0, 1.0)
                drawn = np.clip(0.5 * self._ratio - away + 0.5, 0.0, 1.0) * room
                ink[own] = np.maximum(ink[own], drawn[own])
        return ink

    def _line(
        self,
        colour: Field,
        away: Field,
        *,
        white: tuple[float, float],
        black: float,
        where: NDArray[np.bool_] | None = None,
    ) -> Field:
        """Lay a dark line in a white halo where a distance in pixels is about zero."""
        halo = white[1] * np.clip(white[0] * self._ratio - away + 0.5, 0.0, 1.0)
        colour = colour + (1.0 - colour) * halo[:, None].astype(np.float32)
        cover = np.clip(black * self._ratio - away + 0.5, 0.0, 1.0)
        if where is not None:
            cover = cover * where
        left = (1.0 - 0.97 * cover) ** 2.2
        return np.asarray(colour * left[:, None].astype(np.float32))

    def coats(self, coats: Field, relief: Field) -> Field:
        """Return (n, 3) linear tones of whole coats, with lines where their number changes."""
        value = self.picture.take(coats, self.rows)
        whole = np.clip(np.floor(value + 0.5), 0, zone_look.MOST_COATS).astype(np.intp)
        tones = zone_look.shader_coat_tones()[whole]
        slope = self.steepness(value)
        past = value + 0.5
        line = np.clip(0.5 * self._ratio - np.abs(past - np.rint(past)) / slope + 0.5, 0.0, 1.0)
        room = np.clip(1.4 - slope * self._ratio * 2.6, 0.0, 1.0)
        ink = (0.75 * line * (np.rint(past) >= 1) * room)[:, None]
        light = tones @ np.array([0.2126, 0.7152, 0.0722], np.float32)
        on_it = np.where(light > 0.18, 0.01, 0.9)[:, None]
        colour = tones * relief[:, None]
        return np.asarray(colour + (on_it - colour) * ink, dtype=np.float32)


def _neighbour(first: IndexArray, second: IndexArray, own: IndexArray) -> IndexArray:
    return np.where(first >= 0, first, np.where(second >= 0, second, own))
