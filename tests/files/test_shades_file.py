"""Tables of shades: the shipped one against the notes it was made from, bad ones refused."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.errors import CatalogueError, PlanError
from stainmap.files.shades_file import starter_shades, with_shades, write_shades
from stainmap.model.colour import TAB_TABLE_SPHERE
from stainmap.model.shade_table import ClassOffsets, HueFamily, OffsetClass
from stainmap.model.target import DEFAULT_OFFSETS, Offset
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Zone

HEAD = 'format = "stainmap shades"\nversion = 1\n'


def written(folder: Path, text: str) -> Path:
    path = folder / "shades.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_the_sixteen_classical_tabs_are_there_and_say_where_they_come_from() -> None:
    table = starter_shades()
    names = [tab.name for tab in table.tabs]
    assert names == [
        "A1",
        "A2",
        "A3",
        "A3.5",
        "A4",
        "B1",
        "B2",
        "B3",
        "B4",
        "C1",
        "C2",
        "C3",
        "C4",
        "D2",
        "D3",
        "D4",
    ]
    for tab in table.tabs:
        assert "memory" in tab.provenance
        assert tab.colour.measurement.illuminant == "C"
        assert tab.colour.measurement.geometry == TAB_TABLE_SPHERE
        assert min(tab.doubt) > 0.0
        assert tab.family is not None
    families = {tab.name[0]: tab.family for tab in table.tabs}
    assert families == dict(zip("ABCD", HueFamily, strict=True))
    # Both published orders of value begin with B1 and A1 and end with C4.
    by_value = sorted(table.tabs, key=lambda tab: -tab.colour.lightness)
    assert {by_value[0].name, by_value[1].name} == {"A1", "B1"}
    assert by_value[-1].name == "C4"


def test_the_doubtful_tab_is_doubted() -> None:
    doubtful = starter_shades().tab("a2")
    assert doubtful.doubt[2] >= 1.8
    assert "doubtful" in doubtful.note
    assert doubtful.doubt[2] > max(t.doubt[2] for t in starter_shades().tabs if t.name != "A2")


def test_chroma_rises_with_the_digit_within_the_reddish_brown_family() -> None:
    chroma = [starter_shades().tab(name).colour.chroma for name in ("A1", "A2", "A3", "A3.5")]
    assert chroma == sorted(chroma)


def test_offsets_are_the_usual_ones_for_every_class_to_begin_with() -> None:
    for tooth_class in OffsetClass:
        assert starter_shades().offsets(tooth_class) == DEFAULT_OFFSETS
    assert OffsetClass.of(Tooth(number=13)) is OffsetClass.FRONT
    assert OffsetClass.of(Tooth(number=44)) is OffsetClass.PREMOLAR
    assert OffsetClass.of(Tooth(number=36)) is OffsetClass.MOLAR


def test_an_own_table_replaces_what_it_names_and_keeps_the_rest(tmp_path: Path) -> None:
    text = HEAD + (
        '[[tab]]\nname = "A3"\nlab = [74.0, 1.0, 20.0]\ndoubt = [0.2, 0.1, 0.2]\n'
        'provenance = "read here"\n[[tab]]\nname = "house"\nlab = [70, 1, 18]\n'
        '[[offset]]\ntooth_class = "molar"\ncervical = [-1, 3]\ninterproximal = [-1, 1]\n'
        "cusp = [-2, -1]\nfissure = [-3, 4]\n"
    )
    table = with_shades(starter_shades(), written(tmp_path, text))
    assert table.tab("A3").colour.lab == (74.0, 1.0, 20.0)
    assert table.tab("house").family is None
    assert table.tab("A1") == starter_shades().tab("A1")
    assert len(table.tabs) == 17
    assert table.offsets(OffsetClass.MOLAR)[0] == Offset(
        area=Zone.CERVICAL, lightness=-1.0, chroma=3.0
    )
    assert table.offsets(OffsetClass.FRONT) == DEFAULT_OFFSETS


def test_what_is_written_is_read_back_and_holds_only_what_differs(tmp_path: Path) -> None:
    base = starter_shades()
    tab = base.tab("B3")
    own = replace(tab, colour=replace(tab.colour, b=21.5), provenance="read at the bench")
    offsets = tuple(replace(one, chroma=one.chroma + 1.0) for one in DEFAULT_OFFSETS)
    table = replace(
        base,
        tabs=tuple(own if one.name == "B3" else one for one in base.tabs),
        usual_offsets=tuple(
            ClassOffsets(tooth_class=one, offsets=offsets if one is OffsetClass.FRONT else old)
            for one, old in ((c, base.offsets(c)) for c in OffsetClass)
        ),
    )
    path = tmp_path / "own.toml"
    write_shades(path, table, base)
    assert with_shades(base, path) == table
    text = path.read_text(encoding="utf-8")
    assert text.count("[[tab]]") == 1
    assert text.count("[[offset]]") == 1


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("nonsense", "not valid TOML"),
        ('format = "stainmap materials"\nversion = 1\n', "not a table of shades"),
        ('format = "stainmap shades"\nversion = 9\n', "version 9"),
        (HEAD + 'illuminant = "D65"\n', "measured under D65"),
        (HEAD + '[[tab]]\nname = "A9"\nlab = [170, 1, 18]\n', "tab 1: L"),
        (HEAD + '[[tab]]\nname = "A9"\nlab = [70, 1]\n', "does not fit"),
        (HEAD + '[[tab]]\nname = " "\nlab = [70, 1, 18]\n', "no name"),
        (HEAD + '[[tab]]\nname = "A9"\nlab = [70, 1, 18]\nfamily = "blue"\n', "blue"),
        (HEAD + '[[tab]]\nname = "A9"\nlab = [70, 1, 18]\ndoubt = [1, 1, -1]\n', "doubt"),
        (HEAD + '[[tab]]\nname = "A9"\nlab = [70, 1, nan]\n', "tab 1"),
        (HEAD + '[[tab]]\nname = "A9"\nlab = [70, 1, 8]\ncolour = 3\n', "colour"),
        (
            HEAD + '[[offset]]\ntooth_class = "king"\ncervical = [0, 0]\ninterproximal = [0, 0]\n'
            "cusp = [0, 0]\nfissure = [0, 0]\n",
            "king",
        ),
        (
            HEAD + '[[offset]]\ntooth_class = "molar"\ncervical = [0, 99]\n'
            "interproximal = [0, 0]\ncusp = [0, 0]\nfissure = [0, 0]\n",
            "'cervical' is out of range",
        ),
    ],
)
def test_bad_tables_are_refused_with_a_sentence(tmp_path: Path, text: str, says: str) -> None:
    with pytest.raises(CatalogueError) as caught:
        with_shades(starter_shades(), written(tmp_path, text))
    assert says in str(caught.value)
    assert "shades.toml" in str(caught.value)


def test_a_missing_table_and_an_unknown_tab_are_said(tmp_path: Path) -> None:
    with pytest.raises(CatalogueError, match="cannot be read"):
        with_shades(starter_shades(), tmp_path / "none.toml")
    with pytest.raises((CatalogueError, PlanError), match="no tab 'Z9'"):
        starter_shades().tab("Z9")
