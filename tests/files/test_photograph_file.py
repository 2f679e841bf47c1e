"""Pictures from files: read upright and in sRGB, refused with a sentence when they are none."""

from __future__ import annotations

import io
import struct
import tracemalloc
import zlib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms

from stainmap.errors import PhotographError
from stainmap.files.photograph_file import read_photograph


def scene(width: int = 200, height: int = 120) -> Image.Image:
    x = np.linspace(60, 200, width)[None, :, None]
    y = np.linspace(0.6, 1.0, height)[:, None, None]
    return Image.fromarray(np.round(x * y * (1.0, 0.9, 0.7)).astype(np.uint8))


def saved(path: Path, picture: Image.Image, **how: object) -> Path:
    picture.save(path, **how)
    return path


@pytest.mark.parametrize("suffix", ["png", "jpg", "tif", "webp", "bmp"])
def test_common_pictures_are_read(tmp_path: Path, suffix: str) -> None:
    how = {"jpg": {"quality": 95}, "webp": {"lossless": True}}.get(suffix, {})
    photograph = read_photograph(saved(tmp_path / f"a.{suffix}", scene(), **how))
    assert photograph.pixels.shape == (120, 200, 3)
    difference = np.abs(photograph.pixels.astype(int) - np.array(scene(), int))
    assert difference.max() <= (12 if suffix == "jpg" else 0)
    assert not photograph.pixels.flags.writeable


def test_a_camera_held_sideways_is_turned_upright(tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[0x0112] = 6
    photograph = read_photograph(saved(tmp_path / "a.png", scene(), exif=exif))
    assert photograph.pixels.shape == (200, 120, 3)
    np.testing.assert_array_equal(photograph.pixels, np.rot90(np.array(scene()), -1))


def test_a_large_picture_keeps_its_colours_at_a_smaller_size(tmp_path: Path) -> None:
    large = scene(3200, 1900)
    for suffix in ("png", "jpg"):
        photograph = read_photograph(saved(tmp_path / f"a.{suffix}", large))
        assert max(photograph.pixels.shape) <= 2500
        means = photograph.pixels.mean((0, 1)), np.array(large).mean((0, 1))
        assert means[0] == pytest.approx(means[1], abs=1.0)


def test_a_profile_is_used_and_a_broken_one_is_not(tmp_path: Path) -> None:
    """A profile that says the values are linear lightens mid-grey, as sRGB's curve says."""
    plain = Image.new("RGB", (200, 120), (128, 128, 128))
    lab = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    same = read_photograph(saved(tmp_path / "a.png", plain, icc_profile=lab))
    assert np.abs(same.pixels.astype(int) - 128).max() <= 1
    broken = read_photograph(saved(tmp_path / "b.png", plain, icc_profile=b"nonsense"))
    assert (broken.pixels == 128).all()


def bomb(width: int, height: int) -> bytes:
    """Return a PNG of a few bytes that claims to be huge."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    packed = zlib.compress(bytes(1 << 20), 9)
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", packed) + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "not a picture"),
        (b"solid crown\nfacet normal 0 0 1\n", "not a picture"),
        (b"%PDF-1.7 and more", "not a picture"),
        (b"GIF89a" + bytes(40), "not a picture"),
        (bomb(60_000, 60_000), "larger than 64 million points"),
        (bomb(9_000, 9_000), "larger than 64 million points"),
        (bomb(2_000, 2_000), "damaged or cut short"),
        (bomb(60, 2_000), "only 60 by 2000 points"),
    ],
)
def test_what_is_no_picture_is_refused(tmp_path: Path, content: bytes, says: str) -> None:
    path = tmp_path / "picture.png"
    path.write_bytes(content)
    with pytest.raises(PhotographError, match=says) as caught:
        read_photograph(path)
    assert "picture.png" in str(caught.value)


def test_a_picture_that_claims_to_be_huge_takes_no_memory(tmp_path: Path) -> None:
    path = tmp_path / "bomb.png"
    path.write_bytes(bomb(30_000, 30_000))
    tracemalloc.start()
    with pytest.raises(PhotographError):
        read_photograph(path)
    assert tracemalloc.get_traced_memory()[1] < 30 << 20
    tracemalloc.stop()


@pytest.mark.parametrize("mode", ["1", "L", "LA", "I;16", "F"])
def test_a_picture_without_colours_is_refused(tmp_path: Path, mode: str) -> None:
    suffix = "tif" if mode == "F" else "png"
    path = saved(tmp_path / f"grey.{suffix}", Image.new(mode, (200, 200)))
    with pytest.raises(PhotographError, match="no colours"):
        read_photograph(path)


def test_inks_and_missing_files_are_refused(tmp_path: Path) -> None:
    path = saved(tmp_path / "ink.jpg", Image.new("CMYK", (200, 200)))
    with pytest.raises(PhotographError, match="printing inks"):
        read_photograph(path)
    with pytest.raises(PhotographError, match="cannot be read"):
        read_photograph(tmp_path / "none.png")
    with pytest.raises(PhotographError, match="cannot be read"):
        read_photograph(tmp_path)


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.integers(0, 400),
    st.integers(0, 255),
    st.floats(0.05, 1.0),
    st.sampled_from(["png", "jpg", "tif"]),
)
def test_damage_anywhere_gives_a_sentence_or_a_picture(
    tmp_path: Path, place: int, byte: int, kept: float, suffix: str
) -> None:
    buffer = io.BytesIO()
    scene().save(buffer, {"png": "PNG", "jpg": "JPEG", "tif": "TIFF"}[suffix])
    content = bytearray(buffer.getvalue())
    content[place % len(content)] = byte
    path = tmp_path / f"damaged.{suffix}"
    path.write_bytes(bytes(content[: int(kept * len(content))]))
    said = ""
    try:
        read_photograph(path)
    except PhotographError as error:
        said = str(error)
    assert said == "" or said.startswith("damaged.")
