"""The typeface: there, whole, with figures of one width."""

from __future__ import annotations

from pathlib import Path

import pytest
from reportlab.pdfbase import pdfmetrics

from stainmap.errors import StainmapError
from stainmap.paper import typeface
from stainmap.paper.typeface import FontWeight, font_path, image_font, text_width_pt

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize("weight", list(FontWeight))
def test_all_figures_are_equally_wide(weight: FontWeight) -> None:
    widths = {text_width_pt(figure, weight, 10.0) for figure in "0123456789"}
    assert len(widths) == 1
    assert widths.pop() > 5.0


@pytest.mark.parametrize("weight", list(FontWeight))
def test_the_characters_of_the_sheets_are_there(weight: FontWeight) -> None:
    font = image_font(weight, 40)
    absent = bytes(font.getmask("\N{SNOWMAN}"))
    signs = "\N{PLUS-MINUS SIGN}\N{MINUS SIGN}\N{EN DASH}\N{HORIZONTAL ELLIPSIS}\N{DEGREE SIGN}"
    for character in f"{signs}²µ€ΔL*ÄÖÜäöüßéçñøŁčşő":
        assert bytes(font.getmask(character)) != absent, character


def test_heavier_weights_are_wider() -> None:
    widths = [text_width_pt("Coat map", weight, 10.0) for weight in FontWeight]
    assert widths == sorted(widths)
    assert len(set(widths)) == 4


def test_the_names_are_ours_and_the_licence_lies_beside() -> None:
    for weight in FontWeight:
        family, _ = image_font(weight, 12).getname()
        assert family is not None
        assert family.startswith("Stainmap Sans")
        assert font_path(weight).stat().st_size < 300_000
    licence = (font_path(FontWeight.REGULAR).parent / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    assert "The Inter Project Authors" in licence
    assert "Reserved Font Name" in (ROOT / "resources" / "fonts" / "README.md").read_text(
        encoding="utf-8"
    )


@pytest.mark.parametrize("content", [None, b"this is no typeface"])
def test_a_missing_or_damaged_typeface_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, content: bytes | None
) -> None:
    fonts = tmp_path / "resources" / "fonts"
    fonts.mkdir(parents=True)
    if content is not None:
        for weight in FontWeight:
            (fonts / f"StainmapSans-{weight}.ttf").write_bytes(content)
    monkeypatch.setenv("STAINMAP_DATA", str(tmp_path))
    monkeypatch.setattr(pdfmetrics, "getRegisteredFontNames", list)
    with pytest.raises(StainmapError, match="typeface is missing or damaged"):
        typeface.register_fonts()
    with pytest.raises(StainmapError, match="typeface is missing or damaged"):
        typeface.image_font.__wrapped__(FontWeight.LIGHT, 12)
