"""Text can be read: contrast by the formula of WCAG 2.2, from the palettes that are worn."""

from __future__ import annotations

import itertools

import pytest
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication

from stainmap.ui.theme import DARK, LIGHT, SURROUND, SURROUND_TEXT, Tones, _palette

# WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (what shows the focus).
TEXT, MARK = 4.5, 3.0
ROLE = QPalette.ColorRole


def luminance(colour: QColor) -> float:
    """Return the relative luminance of WCAG 2.2."""
    channels = (colour.redF(), colour.greenF(), colour.blueF())
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: QColor, other: QColor) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_formula_gives_what_is_published() -> None:
    """21:1 for black on white; grey 767676 is the darkest known to just reach 4.5 on white."""
    white = QColor("#ffffff")
    assert contrast(QColor("#000000"), white) == pytest.approx(21.0)
    assert contrast(QColor("#767676"), white) == pytest.approx(4.54, abs=0.01)
    assert contrast(QColor("#777777"), white) < 4.5


@pytest.mark.parametrize("tones", [LIGHT, DARK], ids=["light", "dark"])
def test_every_text_on_every_ground(tones: Tones) -> None:
    grounds = ("panel", "raised", "bar", "field", "accent_fill")
    for ink, ground in itertools.product(("ink", "soft"), grounds):
        found = contrast(tones.colour(ink), tones.colour(ground))
        assert found >= TEXT, (ink, ground, found)
    for ink, ground in itertools.product(("accent", "caution"), ("panel", "raised", "field")):
        found = contrast(tones.colour(ink), tones.colour(ground))
        assert found >= TEXT, (ink, ground, found)
    assert contrast(tones.colour("on_accent"), tones.colour("accent")) >= TEXT


@pytest.mark.parametrize("tones", [LIGHT, DARK], ids=["light", "dark"])
def test_every_role_of_the_palette(qapp: QApplication, tones: Tones) -> None:
    palette = _palette(tones)
    pairs = (
        (ROLE.WindowText, ROLE.Window),
        (ROLE.Text, ROLE.Base),
        (ROLE.Text, ROLE.AlternateBase),
        (ROLE.ButtonText, ROLE.Button),
        (ROLE.HighlightedText, ROLE.Highlight),
        (ROLE.ToolTipText, ROLE.ToolTipBase),
        (ROLE.PlaceholderText, ROLE.Base),
        (ROLE.PlaceholderText, ROLE.Window),
        (ROLE.Link, ROLE.Base),
        (ROLE.Link, ROLE.Window),
    )
    for text, ground in pairs:
        for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
            found = contrast(palette.color(group, text), palette.color(group, ground))
            assert found >= TEXT, (text, ground, group, found)


@pytest.mark.parametrize("tones", [LIGHT, DARK], ids=["light", "dark"])
def test_the_focus_is_marked_strongly(tones: Tones) -> None:
    for ground in ("panel", "raised", "bar", "field"):
        assert contrast(tones.colour("accent"), tones.colour(ground)) >= MARK


def test_the_surround_of_the_crown_carries_black_only() -> None:
    assert contrast(QColor(SURROUND_TEXT), QColor(SURROUND)) >= TEXT
    assert QColor(SURROUND).saturation() == 0
