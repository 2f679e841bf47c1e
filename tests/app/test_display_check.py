"""What three patches tell of a display, held to closed forms of its curve."""

from __future__ import annotations

import json
from math import log

import pytest

from stainmap.app.display_check import (
    EVEN_GREY,
    STEPS_L,
    TOOTH_LAB,
    DisplayJudgement,
    judgement_from,
)

DAY = "2026-03-14"


def judged(grey: int, dark: int = 5, steps: int = 2) -> DisplayJudgement:
    return DisplayJudgement(grey=grey, dark_seen=dark, steps_seen=steps, day=DAY)


def test_half_the_light_is_the_grey_188() -> None:
    # IEC 61966-2-1: 1.055 0.5^(1/2.4) - 0.055 = 0.7354; times 255 = 187.5.
    assert EVEN_GREY == 188
    assert judged(188).crown_lightness_error == pytest.approx(0.0, abs=1e-9)
    assert judged(188).is_good


@pytest.mark.parametrize("exponent", [1.8, 2.4, 2.6])
def test_a_display_of_another_exponent_is_found_out(exponent: float) -> None:
    grey = round(255.0 * 0.5 ** (1.0 / exponent))
    found = judged(grey)
    assert found.exponent == pytest.approx(exponent, abs=0.03)
    # A colour of L* 74 has 46.7 % of the light of white, encoded 0.713; what such a display makes
    # of it, less what one with the exponent of the right grey does.
    encoded = 1.055 * 0.4670 ** (1 / 2.4) - 0.055
    right = log(0.5) / log(EVEN_GREY / 255.0)
    expected = 116.0 * (encoded ** (exponent / 3.0) - encoded ** (right / 3.0))
    assert found.crown_lightness_error == pytest.approx(expected, abs=0.7)
    assert (found.crown_lightness_error > 0) is (exponent < 2.2)


def test_sentences_say_which_way_and_what_to_do() -> None:
    dark, light = judged(210), judged(160)
    assert "darker" in dark.sentences[0]
    assert "lighter" in light.sentences[0]
    assert not dark.is_good
    assert "decide by the figures" in dark.in_short
    assert "run together" in judged(188, dark=1).sentences[1]
    assert "not even" in judged(188, steps=0).sentences[2].lower()
    assert f"{STEPS_L[1]:g} L*" in judged(188).sentences[2]
    assert DAY in judged(188).in_short


def test_what_was_seen_is_kept_and_nonsense_is_none() -> None:
    one = judged(190, 4, 3)
    assert judgement_from(one.to_text()) == one
    for text in ("", "[]", "{", "7", json.dumps({"grey": 900}), '{"grey": "x", "day": "y"}'):
        assert judgement_from(text) is None
    spoiled = json.loads(one.to_text()) | {"grey": 0}
    assert judgement_from(json.dumps(spoiled)) is None
    with pytest.raises(ValueError, match="out of range"):
        judged(255)


def test_the_tooth_patch_is_tooth_coloured() -> None:
    # Teeth of adults: L* 60 to 85, a* -2 to 6, b* 8 to 30, from memory.
    lightness, a, b = TOOTH_LAB
    assert 60 < lightness < 85
    assert -2 < a < 6
    assert 8 < b < 30
