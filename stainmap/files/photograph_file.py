"""Photographs: from a picture file to sRGB pixels, with everything that is no picture refused."""

from __future__ import annotations

import io
import logging
import warnings
from pathlib import Path
from typing import Final

import numpy as np
from PIL import Image, ImageCms, ImageOps, UnidentifiedImageError

from stainmap.errors import PhotographError
from stainmap.planning.photograph import Photograph
from stainmap.words import translate

FORMATS: Final = ("JPEG", "PNG", "TIFF", "WEBP", "BMP")
SUFFIXES: Final = (".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".bmp")

LEAST_SIDE_PX: Final = 100
MOST_PIXELS: Final = 64_000_000
_MOST_BYTES: Final = 200 << 20
# Longest side that is kept: a spot still has thousands of points.
_KEPT_SIDE_PX: Final = 2400

# Pillow tells of damage in its log as well; here it becomes a sentence.
logging.getLogger("PIL").setLevel(logging.CRITICAL)
_BROKEN = (
    OSError, ValueError, TypeError, SyntaxError, IndexError, KeyError, AttributeError, EOFError,
    OverflowError, MemoryError, RuntimeError, ZeroDivisionError,
)  # fmt: skip


def read_photograph(path: Path) -> Photograph:
    """Return a picture upright, in sRGB, at most 2,400 pixels on its longer side.

    Size is checked before anything is unpacked. A colour profile in the file is used; without one
    sRGB is taken for granted, as cameras write it.

    Raises
    ------
    PhotographError
        If the file cannot be read, is no picture, is tiny or huge, has no colours, or is damaged.
    """
    where = path.name
    try:
        if path.exists() and not path.is_file():
            raise PhotographError(
                translate(
                    "photograph file", "The photograph cannot be read: it is not an ordinary file."
                ),
                where=where,
            )
        if path.stat().st_size > _MOST_BYTES:
            raise _huge(where)
        content = path.read_bytes()
    except OSError as error:
        raise PhotographError(
            translate("photograph file", "The photograph cannot be read ({value}).").format(
                value=error.strerror or error
            ),
            where=where,
        ) from error
    with warnings.catch_warnings():
        # Pillow warns of large pictures and odd metadata; what is too large is refused below.
        warnings.simplefilter("ignore")
        try:
            with Image.open(io.BytesIO(content), formats=FORMATS) as picture:
                _check_size(picture.size, where)
                return _photograph(picture, where)
        except PhotographError:
            raise
        except Image.DecompressionBombError as error:
            raise _huge(where) from error
        except UnidentifiedImageError as error:
            raise PhotographError(
                translate("photograph file", "It is not a picture that can be read here."),
                where=where,
                advice=translate("photograph file", "Give a JPEG, PNG, TIFF, WebP or BMP file."),
            ) from error
        except _BROKEN as error:
            raise PhotographError(
                translate(
                    "photograph file", "The picture is damaged or cut short ({error})."
                ).format(error=error),
                where=where,
                advice=translate("photograph file", "Copy it from the camera again."),
            ) from error


def _check_size(size: tuple[int, int], where: str) -> None:
    width, height = size
    if width * height > MOST_PIXELS:
        raise _huge(where)
    if min(width, height) < LEAST_SIDE_PX:
        raise PhotographError(
            translate("photograph file", "The picture has only {width} by {height} points.").format(
                width=width, height=height
            ),
            where=where,
            advice=translate(
                "photograph file",
                "Take one with at least {least_side_px} points on its shorter side.",
            ).format(least_side_px=LEAST_SIDE_PX),
        )


def _huge(where: str) -> PhotographError:
    return PhotographError(
        translate(
            "photograph file",
            "The picture is larger than {most_pixels} million points or {most_bytes} megabytes.",
        ).format(most_pixels=MOST_PIXELS // 1000000, most_bytes=_MOST_BYTES >> 20),
        where=where,
        advice=translate(
            "photograph file", "Save it smaller, or cut out the teeth and the grey patch."
        ),
    )


def _photograph(picture: Image.Image, where: str) -> Photograph:
    profile = picture.info.get("icc_profile")
    if picture.format == "JPEG":
        # Lets the decoder halve the picture as often as nothing is lost by it.
        picture.draft(None, (_KEPT_SIDE_PX, _KEPT_SIDE_PX))
    if picture.mode in ("1", "L", "LA", "I", "F") or picture.mode.startswith("I;"):
        raise PhotographError(
            translate("photograph file", "The picture has no colours."),
            where=where,
            advice=translate("photograph file", "Take one in colour."),
        )
    if picture.mode == "CMYK":
        raise PhotographError(
            translate("photograph file", "The picture was made for printing inks."),
            where=where,
            advice=translate("photograph file", "Give it as the camera wrote it."),
        )
    upright = ImageOps.exif_transpose(picture)
    rgb = _in_srgb(upright.convert("RGB"), profile)
    factor = -(-max(rgb.size) // _KEPT_SIDE_PX)
    if factor > 1:
        rgb = rgb.reduce(factor)
    pixels = np.array(rgb, dtype=np.uint8)
    pixels.flags.writeable = False
    return Photograph(name=where, pixels=pixels)


def _in_srgb(picture: Image.Image, profile: bytes | None) -> Image.Image:
    """Return the picture in sRGB; a profile that cannot be used is as good as none."""
    if not profile:
        return picture
    try:
        given = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        converted = ImageCms.profileToProfile(
            picture,
            given,
            ImageCms.createProfile("sRGB"),
            renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
            outputMode="RGB",
        )
    except (ImageCms.PyCMSError, *_BROKEN):
        return picture
    return picture if converted is None else converted
