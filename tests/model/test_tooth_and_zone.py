"""ISO 3950 tooth numbers and the numbers of areas."""

from __future__ import annotations

import pytest

from stainmap.errors import PlanError
from stainmap.model.tooth import Tooth, ToothClass
from stainmap.model.zone import Accent, Zone, area_from_number, area_label


@pytest.mark.parametrize(
    ("number", "name", "tooth_class"),
    # ISO 3950:2016, two-digit system: quadrant, then position from the midline.
    [
        (11, "upper right central incisor", ToothClass.INCISOR),
        (23, "upper left canine", ToothClass.CANINE),
        (36, "lower left first molar", ToothClass.MOLAR),
        (44, "lower right first premolar", ToothClass.PREMOLAR),
        (48, "lower right third molar", ToothClass.MOLAR),
    ],
)
def test_numbers_name_teeth(number: int, name: str, tooth_class: ToothClass) -> None:
    tooth = Tooth(number=number)
    assert tooth.name == name
    assert tooth.tooth_class is tooth_class


@pytest.mark.parametrize("number", [0, 9, 10, 19, 51, 85, 99, -11, 110])
def test_other_numbers_are_refused(number: int) -> None:
    with pytest.raises(PlanError, match=str(number)):
        Tooth(number=number)


def test_words_for_directions_follow_the_tooth() -> None:
    assert Tooth(number=11).buccal_word == "labial"
    assert Tooth(number=16).lingual_word == "palatal"
    assert Tooth(number=46).lingual_word == "lingual"
    assert Tooth(number=13).occlusal_word == "incisal"


def test_every_area_is_found_by_its_number_and_has_a_name_of_its_own() -> None:
    areas = [*Zone, *Accent]
    assert [area_from_number(int(area)) for area in areas] == areas
    assert len({area.label for area in areas}) == len(areas) == 13
    assert area_label(Zone.CUSP, front=True) == "incisal"
    with pytest.raises(PlanError):
        area_from_number(14)
