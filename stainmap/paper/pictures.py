"""Finished pictures of a crown: its predicted colour in soft light, and its zones as a map."""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike, NDArray
from PIL import Image, ImageDraw

from stainmap.files.atomic import write_bytes
from stainmap.model.zone import Zone
from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper.area_lines import AreaFields, Mark, WorldLines
from stainmap.paper.raster import FrameBuffer
from stainmap.paper.shading import (
    LEVEL,
    SURROUND_SRGB,
    ShadingFields,
    develop,
    encoded,
    light_frame,
    shade,
)
from stainmap.paper.typeface import FontWeight, image_font
from stainmap.paper.zone_colours import WHITE_HATCH

if TYPE_CHECKING:
    from stainmap.paper.zone_drawing import ZoneDrawing

FloatArray = NDArray[np.float64]

_FINER = 3  # lines are drawn this much finer and averaged
_INK, _WHITE = (16, 16, 16), (255, 255, 255)
_PILL = (244, 244, 244)
_HATCH_STRENGTH = 0.62
_PILL_ZONE_PX, _PILL_ACCENT_PX = 21.0, 18.0


def crown_picture(
    frame: FrameBuffer,
    colours: ArrayLike,
    *,
    shading: ShadingFields,
    occlusal: ArrayLike,
    gloss: float = 1.0,
    relief: float = 1.0,
    chalk: bool = False,
    surround_srgb: float = SURROUND_SRGB,
) -> NDArray[np.uint8]:
    """Return a (height, width, 3) sRGB picture of the crown in soft light.

    Parameters
    ----------
    frame
        The crown rasterised from where it is looked at.
    colours
        (V, 3) predicted colours: encoded sRGB if uint8, linear sRGB from 0 to 1 if floating.
    shading
        `shading_fields` of the mesh.
    occlusal
        (3,) occlusal direction, from where a part of the sky light comes.
    gloss
        Share of the polished surface's reflections; flat views take 0.35.
    relief
        Share of the shading; 0 shows the colours exactly.
    chalk
        Milled, not sintered.
    surround_srgb
        Neutral grey around the crown, encoded, 0 to 1.
    """
    values = np.asarray(colours)
    linear = decode_srgb(values / 255.0) if values.dtype == np.uint8 else values
    lighting = light_frame(frame, shading, occlusal=occlusal, gloss=gloss, chalk=chalk)
    if relief == 0.0:
        # Shading switched off: every pixel inside the crown is its colour, to the digit.
        mean = frame.average(frame.take(linear), float(decode_srgb(surround_srgb)))
        return encoded(mean)
    light = shade(lighting, linear, relief=relief, level=1.0 if chalk else LEVEL)
    return develop(frame, light, surround_srgb=surround_srgb)


def zone_map(
    frame: FrameBuffer,
    fields: AreaFields,
    lines: tuple[WorldLines, ...],
    *,
    shading: ShadingFields,
    scale: float = 1.0,
) -> NDArray[np.uint8]:
    """Return a (height, width, 3) sRGB picture of the zones: colour, hatch, borders, numbers.

    Parameters
    ----------
    frame
        The crown rasterised from where it is looked at.
    fields, lines, shading
        `area_fields`, `area_lines` and `shading_fields` of its mesh.
    scale
        Pixels per logical pixel: 2 on a screen of double density.
    """
    from stainmap.paper.zone_drawing import draw_zones  # noqa: PLC0415 - slow to import

    drawing = draw_zones(
        frame,
        shading,
        fields,
        lines,
        paper=False,
        number_px=_PILL_ZONE_PX * scale,
        shortest_px=6.0 * scale,
    )
    return painted(drawing, scale=scale)


def painted(drawing: ZoneDrawing, *, scale: float = 1.0) -> NDArray[np.uint8]:
    """Return a zone drawing as one (H, W, 3) picture with its lines and numbers on it."""
    height, width = drawing.picture.shape[:2]
    fine = (width * _FINER, height * _FINER)
    picture = Image.fromarray(drawing.picture).resize(fine, Image.Resampling.NEAREST)
    unit = scale * _FINER
    _paint_lines(picture, drawing, unit)
    picture = picture.resize((width, height), Image.Resampling.BOX)
    _paint_numbers(picture, drawing, scale)
    return np.asarray(picture)


def png_bytes(picture: NDArray[np.uint8]) -> bytes:
    """Return an (H, W) or (H, W, 3) picture as a PNG file, always the same for the same picture."""
    stream = io.BytesIO()
    Image.fromarray(picture).save(stream, "PNG", optimize=False, compress_level=6)
    return stream.getvalue()


def write_png(path: Path, picture: NDArray[np.uint8]) -> None:
    """Write an (H, W) or (H, W, 3) picture; raise StainmapError if that cannot be done."""
    write_bytes(path, png_bytes(picture))


def _paint_lines(picture: Image.Image, drawing: ZoneDrawing, unit: float) -> None:
    """Draw hatches, then white halos of borders and accents, then these themselves."""
    thin, border, halo, dash = (round(px * unit) for px in (1.0, 1.5, 3.0, 5.0))
    ink = Image.new("L", picture.size, 0)
    for white in (True, False):
        pen = ImageDraw.Draw(ink)
        pen.rectangle((0, 0, *picture.size), fill=0)
        for line in drawing.lines:
            dark_zone = line.mark is Mark.HATCH and Zone(line.area) in WHITE_HATCH
            if line.mark is Mark.HATCH and dark_zone == white:
                _stroke(pen, line.points * _FINER, thin, round(255 * _HATCH_STRENGTH))
        picture.paste(_WHITE if white else _INK, mask=ink)
    pen = ImageDraw.Draw(picture)
    over = [line for line in drawing.lines if line.mark in (Mark.BORDER, Mark.ACCENT)]
    for line in over:
        _stroke(pen, line.points * _FINER, halo, _WHITE)
    for line in over:
        if line.mark is Mark.BORDER:
            _stroke(pen, line.points * _FINER, border, _INK)
        else:
            for part in dashed(line.points * _FINER, dash, dash):
                _stroke(pen, part, border, _INK)


def _paint_numbers(picture: Image.Image, drawing: ZoneDrawing, scale: float) -> None:
    """Draw the number pills on top, at four times the size for smooth edges."""
    finer = 4
    for spot in drawing.numbers:
        size = (_PILL_ZONE_PX if spot.area <= max(Zone) else _PILL_ACCENT_PX) * scale
        font = image_font(FontWeight.SEMIBOLD, round(0.58 * size * finer))
        text = str(spot.area)
        box = font.getbbox(text)
        wide = max(size, (box[2] - box[0]) / finer + 0.45 * size)
        pill = Image.new("RGBA", (round(wide * finer), round(size * finer)), (0, 0, 0, 0))
        pen = ImageDraw.Draw(pill)
        edge = (0, 0, pill.width - 1, pill.height - 1)
        pen.rounded_rectangle(
            edge, radius=pill.height / 2, fill=_PILL, outline=_INK, width=round(1.1 * scale * finer)
        )
        middle = (pill.width / 2, pill.height / 2)
        pen.text(middle, text, fill=_INK, font=font, anchor="mm")
        small = pill.resize((round(wide), round(size)), Image.Resampling.LANCZOS)
        corner = (round(spot.x - small.width / 2), round(spot.y - small.height / 2))
        picture.paste(small, corner, mask=small)


def dashed(points: FloatArray, on: float, off: float) -> Iterator[FloatArray]:
    """Yield the dashes of a line (k, 2), `on` long with gaps of `off`."""
    step = np.hypot(*np.diff(points, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(step)])
    for begin in np.arange(0.0, along[-1], on + off):
        end = min(begin + on, along[-1])
        inside = (along > begin) & (along < end)
        ends = np.array([begin, end])
        at_ends = np.stack([np.interp(ends, along, points[:, k]) for k in range(2)], axis=1)
        yield np.concatenate([at_ends[:1], points[inside], at_ends[1:]])


def _stroke(
    pen: ImageDraw.ImageDraw, points: FloatArray, width: int, fill: int | tuple[int, int, int]
) -> None:
    pen.line([(float(x), float(y)) for x, y in points], fill=fill, width=width, joint="curve")
