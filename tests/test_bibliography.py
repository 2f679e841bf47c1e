"""Every source cited in the code is in the bibliography, and the other way round."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
BIBLIOGRAPHY = ROOT / "resources" / "bibliography.bib"
CITATION = re.compile(r"\[([A-Z][A-Za-z]+[0-9]{4}[a-z]?)\]")
ENTRY = re.compile(r"^@(\w+)\{(\w+),\n(.*?)^\}", re.MULTILINE | re.DOTALL)
FIELD = re.compile(r"^  (\w+)\s*= \{", re.MULTILINE)
NEEDED = {"title", "year"}
PUBLISHED_IN = {
    "article": {"author", "journal"},
    "inproceedings": {"author", "booktitle"},
    "incollection": {"author", "booktitle", "publisher"},
    "book": {"author", "publisher"},
    "phdthesis": {"author", "school"},
    "techreport": {"author", "institution"},
    "standard": {"organization"},
    "misc": {"howpublished"},
}


def entries() -> list[tuple[str, str, str]]:
    return ENTRY.findall(BIBLIOGRAPHY.read_text(encoding="utf-8"))


def citations() -> dict[str, str]:
    """Return each cited key with one of the places that cite it."""
    found: dict[str, str] = {}
    places = [*ROOT.glob("stainmap/**/*.py"), *ROOT.glob("tests/**/*.py")]
    places += ROOT.glob("resources/**/*.toml")
    for path in places:
        if "_data" not in path.parts:
            for key in CITATION.findall(path.read_text(encoding="utf-8")):
                found.setdefault(key, str(path.relative_to(ROOT)))
    return found


def test_every_citation_has_an_entry() -> None:
    known = {key for _, key, _ in entries()}
    lacking = {key: place for key, place in citations().items() if key not in known}
    assert lacking == {}


def test_every_entry_is_cited() -> None:
    assert {key for _, key, _ in entries()} - set(citations()) == set()


def test_keys_are_unique_and_end_in_the_year() -> None:
    assert [key for key, n in Counter(key for _, key, _ in entries()).items() if n > 1] == []
    for _, key, body in entries():
        year = re.search(r"year\s*= \{(\d{4})\}", body)
        assert year is not None, key
        assert year.group(1) in key


def test_every_entry_is_read_by_the_pattern() -> None:
    """Guard the tests above: an entry written differently would be passed over in silence."""
    text = BIBLIOGRAPHY.read_text(encoding="utf-8")
    assert len(entries()) == len(re.findall(r"^@", text, re.MULTILINE))


@pytest.mark.parametrize(("kind", "key", "body"), entries(), ids=[key for _, key, _ in entries()])
def test_entry_says_where_it_was_published(kind: str, key: str, body: str) -> None:
    assert (NEEDED | PUBLISHED_IN[kind]) - set(FIELD.findall(body)) == set(), key
