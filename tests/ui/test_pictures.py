"""The pictures of the manual: made by the script, shown by its pages, as wide as there is room.

With STAINMAP_MORE=1 the stable ones are taken again and held against those that are there.
"""

from __future__ import annotations

import os
import re
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import QUrl
from PySide6.QtGui import QImage, QTextDocument
from pytestqt.qtbot import QtBot

from stainmap.paths import resource
from stainmap.ui.manual_text import framed
from stainmap.ui.manual_window import ManualWindow
from stainmap.ui.theme import LIGHT
from tests.tools import golden, pictures

FOLDER = resource("manual")
README = Path(__file__).resolve().parents[2] / "README.md"
PICTURE = re.compile(r"!\[([^\]]*)\]\(([^)]+\.png)\)")
# What the manual has to have, each with a picture.
PAGES = (
    "first_plan",
    "zones_and_accents",
    "plan",
    "bridge",
    "calibration",
    "practice",
    "cautions",
    "glossary",
)


def shown() -> dict[str, list[tuple[str, str]]]:
    """Return words and file of the pictures of every page."""
    return {
        page.stem: PICTURE.findall(page.read_text(encoding="utf-8"))
        for page in sorted(FOLDER.glob("*.md"))
    }


def test_every_page_that_has_to_be_there_has_a_picture() -> None:
    found = shown()
    assert [name for name in PAGES if not found.get(name)] == []


def test_every_picture_is_made_by_the_script_and_shown_by_a_page() -> None:
    made = {f"pictures/{one.name}.png" for one in pictures.PICTURES}
    assert {file for page in shown().values() for _, file in page} == made
    assert {f"pictures/{path.name}" for path in pictures.FOLDER.iterdir()} == made


def test_every_picture_is_told_in_words() -> None:
    words = [words for page in shown().values() for words, _ in page]
    assert all(len(one) > 30 and one.endswith(".") for one in words)
    assert len(set(words)) == len(words)


def test_pictures_are_light_enough_to_travel() -> None:
    sizes = [path.stat().st_size for path in pictures.FOLDER.iterdir()]
    assert sum(sizes) < 4_000_000


def test_the_readme_shows_five_of_them() -> None:
    files = [file for _, file in PICTURE.findall(README.read_text(encoding="utf-8"))]
    assert len(files) == 5
    for file in files:
        assert (README.parent / file).is_file(), file
        assert Path(file).parts[:3] == ("resources", "manual", "pictures")


def test_the_manual_shows_them_no_wider_than_its_column(qtbot: QtBot) -> None:
    one = ManualWindow(FOLDER / "first_plan.md")
    qtbot.addWidget(one)
    one.show()
    qtbot.waitExposed(one)
    kind = QTextDocument.ResourceType.ImageResource.value
    for width in (1300, 760):
        one.resize(width, 800)
        qtbot.waitUntil(lambda width=width: one.width() == width)
        name = QUrl("pictures/first_start.png")
        picture = one.text.document().resource(kind, name)
        assert isinstance(picture, QImage)
        assert picture.width() / picture.devicePixelRatio() == one.text.column_px
        wide = one.text.document().size().width()
        assert wide <= one.text.viewport().width() + 1
    assert one.text.loadResource(kind, QUrl("pictures/none.png")).isNull()
    outside = one.text.loadResource(kind, QUrl("../../pyproject.toml.png"))
    assert not isinstance(outside, QImage) or outside.isNull()


def test_a_picture_is_framed_and_never_made_larger() -> None:
    small = QImage(40, 20, QImage.Format.Format_RGB32)
    small.fill(0)
    there = framed(small, LIGHT, 1.0, 860)
    assert (there.width(), there.height()) == (40, 20)
    assert there.pixelColor(0, 5).name() == LIGHT.line
    half = framed(small, LIGHT, 2.0, 20)
    assert (half.width(), half.height(), half.devicePixelRatio()) == (40, 20, 2.0)


@pytest.mark.gl
@pytest.mark.skipif(not os.environ.get("STAINMAP_MORE"), reason="takes minutes: STAINMAP_MORE=1")
def test_the_script_makes_the_stable_ones_again() -> None:
    far: dict[str, float] = {}

    def hold(one: pictures.Picture, image: QImage) -> None:
        with Image.open(pictures.FOLDER / f"{one.name}.png") as kept:
            now = pictures.as_kept(golden.as_pil(image)).convert("RGB")
            far[one.name] = golden.unlike(now, kept)

    pictures.take_all(tuple(one for one in pictures.PICTURES if one.stable), hold)
    assert {name: share for name, share in far.items() if share > golden.SAME} == {}
