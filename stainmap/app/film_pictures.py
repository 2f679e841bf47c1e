"""The film as pictures with their words: a series of PNG, an animated PNG or GIF."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

from stainmap.app.film import Film
from stainmap.app.film_words import lines_of, title_of
from stainmap.app.job import Progress
from stainmap.app.pictures import plain_light
from stainmap.errors import StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.model.material import Provenance
from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper.pictures import png_bytes
from stainmap.paper.raster import Camera, rasterise
from stainmap.paper.shading import LEVEL, ShadingFields, develop, light_frame, shade
from stainmap.paper.typeface import FontWeight, image_font
from stainmap.predict.bench_look import bench_linear_srgb
from stainmap.words import marked, translate

Bytes = NDArray[np.uint8]

KINDS: Final = {
    ".gif": "Animated GIF, 256 colours",
    ".apng": "Animated PNG",
    ".png": "Series of PNG pictures, numbered",
}
_CAPTION_PX, _MARGIN_PX, _TALLY_PX = 104, 16, 5
_PAPER, _INK, _SOFT, _LINE = (217, 217, 217), (22, 22, 22), (71, 71, 71), (180, 180, 180)
_LAST_FACTOR = 2.5
_CALIBRATE = marked("film", "Predicted: a direction, not a match; a planning aid.")
_INVENTED = marked("film", "Invented materials: do not fire by them. A planning aid.")


@dataclass(frozen=True, slots=True, kw_only=True)
class FilmLook:
    """How a film is drawn.

    Parameters
    ----------
    camera
        From where.
    width, height
        Size of the crown's picture, pixels; its words stand below.
    shading
        What light needs to know of the surface, if it has been worked out.
    bench
        True for the chalky block with the dyes of the jars, False for the sintered crown.
    """

    camera: Camera
    width: int = 900
    height: int = 700
    shading: ShadingFields | None = None
    bench: bool = False


def film_pictures(
    film: Film, look: FilmLook, progress: Progress | None = None
) -> tuple[Bytes, ...]:
    """Return every moment as a picture (H, W, 3) with its words below the crown."""
    case = film.prediction.case
    mesh = case.surface.mesh
    frame = rasterise(mesh.vertices, mesh.faces, look.camera, look.width, look.height)
    fields = plain_light(mesh) if look.shading is None else look.shading
    lighting = light_frame(frame, fields, occlusal=case.reading.occlusal_axis, chalk=look.bench)
    pictures = []
    for number in range(len(film.moments)):
        if progress is not None:
            said = translate("film", "picture {number} of {all}")
            progress(
                number / len(film.moments), said.format(number=number + 1, all=len(film.moments))
            )
        linear = _colours(film, number, bench=look.bench)
        light = shade(lighting, linear, level=1.0 if look.bench else LEVEL)
        crown = develop(frame, light)
        pictures.append(_captioned(film, number, crown))
    return tuple(pictures)


def _colours(film: Film, number: int, *, bench: bool) -> NDArray[np.floating]:
    """Return linear sRGB (V, 3) at a moment."""
    if not bench:
        return np.asarray(decode_srgb(film.moments[number].srgb / 255.0))
    case = film.prediction.case
    return np.asarray(
        bench_linear_srgb(
            case.plan, film.coats_at(number), case.materials.dyes, rule=case.process.uptake
        )
    )


def _captioned(film: Film, number: int, crown: Bytes) -> Bytes:
    height, width = crown.shape[:2]
    sheet = Image.new("RGB", (width, height + _CAPTION_PX), _PAPER)
    sheet.paste(Image.fromarray(crown), (0, 0))
    pen = ImageDraw.Draw(sheet)
    left, y = _MARGIN_PX, height + 10
    pen.text((left, y), title_of(film, number), fill=_INK, font=image_font(FontWeight.SEMIBOLD, 17))
    small = image_font(FontWeight.REGULAR, 13)
    y += 8
    for line in lines_of(film, number):
        y += 19
        pen.text((left, y), _fitting(line, small, width - 2 * left), fill=_INK, font=small)
    case = film.prediction.case
    invented = case.materials.block(case.plan.block).provenance is Provenance.INVENTED
    word = translate("film", _INVENTED if invented else _CALIBRATE)
    tiny = image_font(FontWeight.REGULAR, 11)
    pen.text((left, y + 20), word, fill=_SOFT, font=tiny)
    _draw_tally(pen, film, number, (width, height + _CAPTION_PX))
    return np.asarray(sheet)


def _draw_tally(pen: ImageDraw.ImageDraw, film: Film, number: int, size: tuple[int, int]) -> None:
    """Draw one short stroke per coat along the foot, those that are painted dark."""
    count = len(film.moments) - 1
    wide = (size[0] - 2 * _MARGIN_PX) / count
    for at in range(1, count + 1):
        begin = _MARGIN_PX + (at - 1) * wide
        box = (begin, size[1] - _TALLY_PX - 4, begin + max(wide - 3.0, 1.0), size[1] - 4)
        pen.rectangle(box, fill=_INK if at <= number else _LINE)


def _fitting(text: str, font: ImageFont.FreeTypeFont, width: int) -> str:
    """Return a text, cut with an ellipsis where it is wider than there is room."""
    measure = font.getlength
    if measure(text) <= width:
        return text
    while text and measure(f"{text}\N{HORIZONTAL ELLIPSIS}") > width:
        text = text[:-1]
    return f"{text.rstrip()}\N{HORIZONTAL ELLIPSIS}"


def write_film(path: Path, pictures: Sequence[Bytes], seconds_each: float) -> tuple[Path, ...]:
    """Write pictures as the kind that the ending says; return what was written.

    Parameters
    ----------
    seconds_each
        How long each moment stays; the last one stays longer. Of no meaning for a series.

    Raises
    ------
    StainmapError
        If the ending is unknown, a file of a series exists already, or it cannot be written.
    """
    kind = path.suffix.lower()
    if kind == ".png":
        return _write_series(path, pictures)
    if kind not in KINDS:
        raise StainmapError(
            translate("film", "A film is not written as '{suffix}'.").format(suffix=path.suffix),
            where=str(path),
            advice=translate("film", "Choose one of {kinds}.").format(kinds=", ".join(KINDS)),
        )
    write_bytes(path, animated_bytes(pictures, seconds_each, gif=kind == ".gif"))
    return (path,)


def animated_bytes(pictures: Sequence[Bytes], seconds_each: float, *, gif: bool) -> bytes:
    """Return pictures as one animated file, played for ever; GIF has 256 colours a picture."""
    each = round(1000.0 * seconds_each)
    lasting = [each] * (len(pictures) - 1) + [round(_LAST_FACTOR * each)]
    images = [Image.fromarray(picture) for picture in pictures]
    if gif:
        images = [image.quantize(256, method=Image.Quantize.MEDIANCUT) for image in images]
    stream = io.BytesIO()
    images[0].save(
        stream,
        "GIF" if gif else "PNG",
        save_all=True,
        append_images=images[1:],
        duration=lasting,
        loop=0,
        # Every picture stands by itself.
        disposal=1 if gif else 0,
    )
    return stream.getvalue()


def _write_series(path: Path, pictures: Sequence[Bytes]) -> tuple[Path, ...]:
    names = [path.with_name(f"{path.stem}-{at:02}{path.suffix}") for at in range(len(pictures))]
    there = next((name for name in names if name.exists()), None)
    if there is not None:
        raise StainmapError(
            translate("film", "A picture of this name is there already, and none is written over."),
            where=str(there),
            advice=translate("film", "Choose another name."),
        )
    for name, picture in zip(names, pictures, strict=True):
        write_bytes(name, png_bytes(picture))
    return tuple(names)
