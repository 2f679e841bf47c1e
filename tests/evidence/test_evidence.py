"""What the page of evidence says holds, and the page that is shipped says it."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

import numpy as np
import pytest

from tests.evidence import contents, page
from tests.evidence.__main__ import FOLDER, PAGE
from tests.evidence.drawing import COLOURS, ticks
from tests.evidence.figures import Check, Number, Origin, Section, Source

WORDS = tuple(str(word) for word in Origin)
DRAWN = re.compile(r"!\[[^\]]+\]\(([^)]+)\)")


@cache
def shipped() -> str:
    return PAGE.read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def sections() -> tuple[Section, ...]:
    return contents.sections()


@pytest.fixture(scope="module")
def checks(sections: tuple[Section, ...]) -> list[Check]:
    return [check for section in sections for check in section.checks]


def test_every_number_is_within_its_limits(checks: list[Check]) -> None:
    assert [f"{one.key}: {one.found}, {one.asked}" for one in checks if not one.holds] == []


def test_every_check_has_a_key_and_a_limit(checks: list[Check]) -> None:
    """A number without a limit is not held by anything, however it looks in the table."""
    keys = [one.key for one in checks]
    assert len(keys) == len(set(keys)) > 25
    assert [one.key for one in checks if one.least is None and one.most is None] == []
    assert sum(one.headline for one in checks) >= 8


def test_shipped_page_says_what_is_computed_now(sections: tuple[Section, ...]) -> None:
    """Word for word, and every figure within one unit of its last digit.

    After a change of the engine or of the page: python3 tests --evidence.
    """
    now = page.markdown(contents.TITLE, contents.OPENING, sections)
    assert page.differences(shipped(), now) == []


def test_shipped_drawings_are_those_of_the_page(sections: tuple[Section, ...]) -> None:
    """Same words and shapes; every point within half a pixel."""
    drawn = page.pictures(sections)
    assert {path.name for path in FOLDER.glob("evidence_*.svg")} == set(drawn)
    assert sorted(DRAWN.findall(shipped())) == sorted(drawn)
    for name, now in drawn.items():
        old = (FOLDER / name).read_text(encoding="utf-8")
        assert page.differences(old, now, units=5.0) == [], name


def rows(text: str) -> list[list[str]]:
    """Return the cells of all rows of all tables, without their heads."""
    lines = text.splitlines()
    found = []
    for at, line in enumerate(lines):
        is_head = at + 1 < len(lines) and lines[at + 1].startswith(("| :--", "| --:"))
        if line.startswith("| ") and not is_head and not line.startswith(("| :--", "| --:")):
            found.append([cell.strip() for cell in line.strip("|").split(" | ")])
    return found


def test_every_row_says_where_its_numbers_come_from() -> None:
    found = rows(shipped())
    assert len(found) > 120
    assert [cells for cells in found if not cells[-1].strip("*").startswith(WORDS)] == []


def test_every_plot_says_where_it_comes_from() -> None:
    captions = re.findall(r"^!\[.*\n\n(.*)$", shipped(), re.MULTILINE)
    assert len(captions) == len(DRAWN.findall(shipped()))
    assert [
        one for one in captions if not re.search(rf"Origin: \*\*({'|'.join(WORDS)})\*\*", one)
    ] == []


def test_page_says_what_it_does_not_prove() -> None:
    """The sentences without which the page would promise too much."""
    text = shipped()
    assert "The starter materials are invented." in text
    assert "it is not agreement with real ceramics" in text
    assert "No fired crown has been compared with a prediction." in text
    assert "**Fluorescence** is not modelled" in text
    assert "assumption, not a measurement" in text


def test_page_has_a_section_for_every_claim() -> None:
    titles = re.findall(r"^## (.+)$", shipped(), re.MULTILINE)
    assert titles == ["In short", *(section.title for section in contents.sections())]


@pytest.mark.parametrize("path", sorted(FOLDER.glob("evidence_*.svg")), ids=lambda path: path.stem)
def test_drawings_are_sound(path: Path) -> None:
    """Well-formed, in the program's greys only, all within the frame."""
    text = path.read_text(encoding="utf-8")
    root = ET.fromstring(text)  # noqa: S314  (our own file)
    assert set(re.findall(r"#[0-9a-f]{6}", text)) <= set(COLOURS)
    width, height = float(root.attrib["width"]), float(root.attrib["height"])
    for line in root.iter("{http://www.w3.org/2000/svg}polyline"):
        points = np.array([pair.split(",") for pair in line.attrib["points"].split()], float)
        assert np.isfinite(points).all()
        assert (points >= 0).all()
        assert (points <= [width, height]).all()
    words = [element for element in root.iter() if element.tag.endswith("text")]
    assert len(words) > 10


def test_a_changed_figure_is_seen() -> None:
    old = "| RMS | 0.43 L* | at most 0.6 |\n| slabs | 54 |"
    assert page.differences(old, old) == []
    assert page.differences(old, old.replace("0.43", "0.44")) == []
    assert page.differences(old, old.replace("0.43", "0.45")) != []
    assert page.differences(old, old.replace("0.43", "0.430")) != []
    assert page.differences(old, old.replace("54", "55")) != []
    assert page.differences(old, old.replace("RMS", "worst")) != []
    assert page.differences(old, old + "\n| more | 1 |") != []
    minus = "\N{MINUS SIGN}"
    assert page.differences("a* 0.2", f"a* {minus}0.2") != []


def test_a_check_beyond_its_limit_does_not_hold() -> None:
    source = Source(Origin.COMPUTED, "nothing")
    for value, holds in ((0.9, False), (1.0, True), (2.0, True), (2.1, False), (np.nan, False)):
        one = Check(key="k", what="w", found=Number(value), least=1.0, most=2.0, source=source)
        assert one.holds is holds


def test_stars_of_colour_names_are_no_emphasis() -> None:
    section = Section(title="T", blocks=("L*a*b* and *this*, **that**: b* rises, 5 L*.",))
    text = page.markdown("P", (), (section,))
    assert r"L\*a\*b\* and *this*, **that**: b\* rises, 5 L\*." in text


def test_numbers_are_printed_as_people_read_them() -> None:
    assert str(Number(-0.004)) == "0.00"
    assert str(Number(-1.26, 1)) == "\N{MINUS SIGN}1.3"
    assert str(Number(1.0, 1, signed=True)) == "+1.0"


@pytest.mark.parametrize(("low", "high"), [(0.0, 100.0), (47.3, 70.9), (-1.0, 1.0), (0.001, 0.002)])
def test_ticks_are_round_and_within(low: float, high: float) -> None:
    found = ticks(low, high, 6)
    assert 3 <= len(found) <= 6
    assert (found >= low - 1e-9).all()
    assert (found <= high + 1e-9).all()
    assert np.ptp(np.diff(found)) < 1e-9
