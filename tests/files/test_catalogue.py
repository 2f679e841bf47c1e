"""Catalogue files: round trips, and one clear sentence for everything that can be wrong."""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stainmap.errors import CatalogueError, StainmapError
from stainmap.files.catalogue import (
    check_references,
    merged,
    read_catalogue,
    starter_catalogue,
    with_file,
    write_catalogue,
)
from stainmap.files.catalogue_tables import catalogue_from_dict, catalogue_to_dict
from stainmap.files.toml_text import toml_text
from stainmap.model.colour import Colour, Measurement
from stainmap.model.material import (
    Absorption,
    BlankCoupon,
    Block,
    BlockLayer,
    Catalogue,
    Ion,
    IonBand,
    Liquid,
    Provenance,
    ScatteringClass,
)
from stainmap.paths import resource

HEAD = 'format = "stainmap materials"\nversion = 1\n'
LIQUID = HEAD + (
    "[[liquid]]\n"
    'name = "rye"\n'
    'purpose = "base"\n'
    'provenance = "measured"\n'
    "dye_drops = [1, 0, 1]\n"
    "amplitudes_per_mm = { Fe3 = 0.1 }\n"
)


def written(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "mine.toml"
    path.write_text(text, encoding="utf-8")
    return path


def own_block(**layer_fields: object) -> Block:
    fields = {
        "bottom_mm": 0.0,
        "scattering": ScatteringClass.Y4,
        "nominal": Colour(
            lightness=76.0,
            a=0.0,
            b=14.0,
            measurement=Measurement(illuminant="D50", observer_degrees=10),
        ),
        "nominal_thickness_mm": 1.5,
        **layer_fields,
    }
    return Block(
        name="mine \N{EN DASH} 4Y",
        layers=(BlockLayer(**fields),),
        enlargement_factor=1.23,
        minimum_wall_mm=0.7,
        provenance=Provenance.MEASURED,
        lot='7"\\8',
    )


def test_starter_materials() -> None:
    catalogue = starter_catalogue()
    assert len(catalogue.blocks) == 16
    assert [liquid.name for liquid in catalogue.liquids] == [
        "flax", "barley", "tan", "stone", "clay", "slate", "ash", "heather", "umber", "amber",
    ]  # fmt: skip
    assert [dye.name for dye in catalogue.dyes] == ["cyan", "magenta", "yellow"]
    assert catalogue.stumps[0].name == "natural dentine, medium"
    assert catalogue.programmes[0].name == "slow"
    assert catalogue.cements[0].name == "clear"
    assert starter_catalogue() is catalogue


def test_every_shipped_file_says_it_is_invented() -> None:
    files = sorted(resource("materials").glob("*.toml"))
    assert len(files) == 7
    for path in files:
        head = path.read_text(encoding="utf-8").split("format =")[0]
        assert "invented" in head.lower()
        assert all(line.startswith("#") or not line for line in head.splitlines())


def test_dicts_come_back_through_json() -> None:
    catalogue = replace(
        starter_catalogue(),
        blocks=(
            *starter_catalogue().blocks,
            own_block(absorption=Absorption(c0_per_mm=0.3, decay_nm=60.0, c1_per_mm=0.01)),
        ),
    )
    plain = json.loads(json.dumps(catalogue_to_dict(catalogue)))
    assert catalogue_from_dict(plain, "case.json") == catalogue
    assert catalogue_from_dict({}, "case.json") == Catalogue()


def test_files_come_back(tmp_path: Path) -> None:
    catalogue = replace(starter_catalogue(), blocks=(own_block(),))
    path = tmp_path / "out.toml"
    write_catalogue(path, catalogue, comment="Two lines\nof comment")
    assert read_catalogue(path) == catalogue
    assert path.read_text(encoding="utf-8").startswith("# Two lines\n# of comment\nformat")


def test_writing_fails_with_a_sentence(tmp_path: Path) -> None:
    with pytest.raises(StainmapError, match="folder does not exist"):
        write_catalogue(tmp_path / "nowhere" / "out.toml", Catalogue())


# Text of a file, what is wrong, which entry.
WRONG = [
    ("", "not a materials file", ""),
    ('format = "something"', "not a materials file", ""),
    ('format = "stainmap materials"\nversion = 2', "version 2", ""),
    (HEAD + "[[liquids]]\nname = 'x'", "no kind of material called 'liquids'", ""),
    (HEAD + "liquid = 3", "'liquid' is not a list of tables", ""),
    (HEAD + "liquid = [3]", "'' is a whole number where a table belongs", "liquid 1"),
    (HEAD + "[[liquid", "not valid TOML", ""),
    (LIQUID.replace('"base"', "7"), "'purpose' is a whole number where text belongs", "'rye'"),
    (LIQUID.replace('purpose = "base"\n', ""), "'purpose' is missing", "'rye'"),
    (LIQUID.replace('name = "rye"\n', ""), "'name' is missing", "liquid 1"),
    (LIQUID.replace('"rye"', '" "'), "'name' is empty", "' '"),
    (LIQUID.replace('"measured"', '"guessed"'), "'provenance' cannot be 'guessed'", "'rye'"),
    (LIQUID.replace("Fe3 = 0.1", "Fe3 = -0.1"), "negative amount", "'rye'"),
    (LIQUID.replace("Fe3 = 0.1", "Fe3 = nan"), "'Fe3' is not a finite number", "'rye'"),
    (LIQUID.replace("Fe3 = 0.1", "Fe3 = inf"), "'Fe3' is not a finite number", "'rye'"),
    (LIQUID.replace("Fe3 = 0.1", 'Fe3 = "much"'), "is text where a number belongs", "'rye'"),
    (LIQUID.replace("[1, 0, 1]", "[1, 0]"), "'dye_drops'", "'rye'"),
    (LIQUID.replace("[1, 0, 1]", "[1, 0, 1.5]"), "a number where a whole number belongs", "'rye'"),
    (LIQUID + "scater_change = 0.1", "no field 'scater_change'", "'rye'"),
    (LIQUID + "scatter_change = 0.9", "changes scattering by 0.9", "'rye'"),
    (LIQUID + LIQUID.removeprefix(HEAD), "name is there twice", "'rye'"),
]


@pytest.mark.parametrize(("text", "what", "entry"), WRONG, ids=[row[1] for row in WRONG])
def test_what_is_wrong_is_said_in_a_sentence(
    tmp_path: Path, text: str, what: str, entry: str
) -> None:
    with pytest.raises(CatalogueError, match=re.escape(what)) as caught:
        read_catalogue(written(tmp_path, text))
    assert caught.value.where is not None
    assert caught.value.where.startswith("mine.toml")
    assert entry in caught.value.where
    assert caught.value.message.endswith(".")
    assert "\n" not in str(caught.value)


def test_slips_in_nested_tables_are_found(tmp_path: Path) -> None:
    text = resource("materials", "blocks.toml").read_text(encoding="utf-8")
    with pytest.raises(CatalogueError, match="no field 'lightnes'") as caught:
        read_catalogue(written(tmp_path, text.replace("b = 7.0 }", "b = 7.0, lightnes = 1.0 }")))
    assert caught.value.advice == "Did you mean 'lightness'?"
    assert caught.value.where == "mine.toml, line 18, block 'white 3Y'"
    with pytest.raises(CatalogueError, match=r"'lightness' is missing in 'layers\[0\]\.nominal'"):
        read_catalogue(written(tmp_path, text.replace("lightness = 79.4, ", "")))
    with pytest.raises(CatalogueError, match=r"L\*a\*b\* 179\.4"):
        read_catalogue(written(tmp_path, text.replace("lightness = 79.4", "lightness = 179.4")))
    with pytest.raises(CatalogueError, match=r"enlargement factor 12\.45"):
        read_catalogue(written(tmp_path, text.replace("1.245", "12.45")))


def test_unreadable_files(tmp_path: Path) -> None:
    with pytest.raises(CatalogueError, match="cannot be read"):
        read_catalogue(tmp_path / "absent.toml")
    binary = tmp_path / "binary.toml"
    binary.write_bytes(b"\xff\xfe\x00mesh")
    with pytest.raises(CatalogueError, match="not valid TOML"):
        read_catalogue(binary)
    huge = tmp_path / "huge.toml"
    huge.write_bytes(b"#" * (5 << 20))
    with pytest.raises(CatalogueError, match="too large"):
        read_catalogue(huge)
    deep = written(tmp_path, "x = " + "[" * 5000 + "]" * 5000)
    with pytest.raises(CatalogueError, match="not valid TOML"):
        read_catalogue(deep)


@settings(max_examples=60, deadline=None)
@given(cut=st.integers(0, 2000), junk=st.binary(max_size=6))
def test_damaged_files_never_crash(
    tmp_path_factory: pytest.TempPathFactory, cut: int, junk: bytes
) -> None:
    """A file cut off or with bytes thrown in is read, or refused with a sentence."""
    content = resource("materials", "liquids.toml").read_bytes()
    path = tmp_path_factory.mktemp("damaged") / "mine.toml"
    path.write_bytes(content[:cut] + junk + content[cut + len(junk) :])
    problem = _refusal(lambda: read_catalogue(path))
    assert problem is None or (problem.where or "").startswith("mine.toml")


@given(
    data=st.dictionaries(
        st.sampled_from(["block", "ion", "liquid", "dye", "programme", "stump", "cement"]),
        st.recursive(
            st.none() | st.booleans() | st.integers() | st.text("ab ", max_size=4),
            lambda inside: (
                st.lists(inside, max_size=3)
                | st.dictionaries(st.sampled_from(["name", "layers", "bands"]), inside, max_size=3)
            ),
            max_leaves=6,
        ),
        max_size=2,
    )
)
def test_nonsense_in_a_case_file_is_refused_politely(data: dict[str, object]) -> None:
    problem = _refusal(lambda: catalogue_from_dict(data, "case.json"))
    assert problem is None or (problem.where or "").startswith("case.json")


def _refusal(read: Callable[[], Catalogue]) -> CatalogueError | None:
    """Return the error of reading, or None; anything but a CatalogueError fails the test."""
    try:
        read()
    except CatalogueError as error:
        return error
    return None


def test_merging_replaces_by_name_and_checks() -> None:
    starter = starter_catalogue()
    mine = replace(starter.liquid("ash"), purpose="mine")
    both = merged(starter, Catalogue(liquids=(mine,), blocks=(own_block(),)), where="mine.toml")
    assert both.liquid("ash").purpose == "mine"
    assert len(both.liquids) == len(starter.liquids)
    assert len(both.blocks) == len(starter.blocks) + 1

    strange = replace(mine, name="strange", amplitudes_per_mm=(("Fe4", 0.1),))
    with pytest.raises(CatalogueError, match="the ion 'Fe4'") as caught:
        merged(starter, Catalogue(liquids=(strange,)), where="mine.toml")
    assert caught.value.advice == "Did you mean 'Fe3'?"

    white = own_block(nominal=Colour(lightness=96.0, a=0.0, b=2.0))
    with pytest.raises(CatalogueError, match="the nearest it can have is") as caught:
        merged(starter, Catalogue(blocks=(white,)), where="mine.toml")
    assert (caught.value.where or "").startswith("mine.toml, block 'mine")

    over = own_block(
        nominal=Colour(lightness=76.0, a=0.0, b=14.0, measurement=Measurement(backing="a plate"))
    )
    with pytest.raises(CatalogueError, match="measured over 'a plate'"):
        check_references(Catalogue(blocks=(over,)), where="mine.toml")


def test_a_file_may_hold_only_what_is_new(tmp_path: Path) -> None:
    own = read_catalogue(written(tmp_path, LIQUID))
    assert own.liquids[0].amplitudes_per_mm == (("Fe3", 0.1),)
    assert own.blocks == ()
    assert merged(starter_catalogue(), own, where="mine.toml").liquid("rye").dye_drops == (1, 0, 1)


any_text = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
plain_values = st.recursive(
    st.booleans() | st.integers(-(2**62), 2**62) | st.floats(allow_nan=False) | any_text,
    lambda inside: st.lists(inside, max_size=3) | st.dictionaries(any_text, inside, max_size=3),
    max_leaves=10,
)


@given(document=st.dictionaries(any_text, plain_values, max_size=4))
def test_toml_text_is_read_back_by_the_standard_library(document: dict[str, object]) -> None:
    assert tomllib.loads(toml_text(document, comment="any\nthing")) == document


def test_toml_has_no_null() -> None:
    with pytest.raises(TypeError, match="None"):
        toml_text({"x": None})


def test_names_with_odd_characters_survive(tmp_path: Path) -> None:
    ion = Ion(name='q"\\\x7f\t', bands=(IonBand(centre_nm=500.0, width_nm=20.0, strength=1.0),))
    liquid = Liquid(
        name="\N{LATIN SMALL LETTER O WITH STROKE}",
        purpose="line\nbreak",
        amplitudes_per_mm=((ion.name, 0.25),),
        provenance=Provenance.CALIBRATED,
    )
    path = tmp_path / "odd.toml"
    write_catalogue(path, Catalogue(ions=(ion,), liquids=(liquid,)))
    assert read_catalogue(path) == Catalogue(ions=(ion,), liquids=(liquid,))


# ------------------------------------------------------------------------------------------------
# A laboratory's own file beside the starter set

GOOD = """
[[liquid]]
name = "rye"
purpose = "base"
provenance = "measured"
amplitudes_per_mm = { Fe3 = 0.1 }

[[cement]]
name = "ours"
absorption_per_mm = 0.1
scattering_per_mm = 2.0
coupled = true
provenance = "measured"
"""


def one_block(name: str, second: str = "b = 12.0", backing: str = "") -> str:
    """Return a block of two layers on lines of their own; what can be wrong is in the second."""
    how = f', measurement = {{ backing = "{backing}" }}' if backing else ""
    return f"""
[[block]]
name = "{name}"
enlargement_factor = 1.24
minimum_wall_mm = 0.5
provenance = "measured"
layers = [
  {{ bottom_mm = 0.0, scattering = "3Y", nominal = {{ lightness = 75.5, a = 0.4, b = 16.0 }}, nominal_thickness_mm = 1.2 }},
  {{ bottom_mm = 8.0, scattering = "3Y", nominal = {{ lightness = 78.0, a = -0.9, {second}{how} }}, nominal_thickness_mm = 1.2 }},
]
"""  # noqa: E501


OAT = """[[liquid]]
name = "oat"
purpose = "x"
provenance = "measured"
amplitudes_per_mm = { Fe3 = 0.1 }
"""


@pytest.mark.parametrize(
    ("bad", "says", "line"),
    [
        (OAT + "scater_change = 0.1\n", "scater_change", 6),
        (OAT.replace('"x"', "7"), "'purpose' is a whole number", 3),
        (OAT.replace("0.1", "nan"), "not a finite number", 5),
        (OAT.replace("Fe3", "Fe9"), "the ion 'Fe9'", 1),
        (OAT.replace('name = "oat"\n', ""), "'name' is missing", 1),
        ("# a remark\n[[liquids]]\nname = 'x'\n", "no kind of material called 'liquids'", 2),
        (one_block("ours", "bb = 12.0"), "'b' is missing", 9),
        (one_block("ours", "b = 12.0, c = 1.0"), "no field 'c'", 9),
        (one_block("ours", "b = 90.0"), "the nearest it can have is", 2),
        (one_block("ours", backing="cork"), "measured over 'cork'", 2),
    ],
)
def test_the_line_is_named_and_the_rest_is_loaded(
    tmp_path: Path, bad: str, says: str, line: int
) -> None:
    before = (HEAD + GOOD).count("\n")
    for text, shift in ((HEAD + GOOD + bad, before), (HEAD + bad + GOOD, HEAD.count("\n"))):
        read = with_file(starter_catalogue(), written(tmp_path, text))
        (problem,) = read.problems
        assert says in problem.message
        assert f"line {shift + line}" in (problem.where or "")
        assert read.catalogue.liquid("rye").purpose == "base"
        assert read.catalogue.cement("ours").scattering_per_mm == 2.0
        assert len(read.catalogue.liquids) == len(starter_catalogue().liquids) + 1
        assert read.catalogue.blocks == starter_catalogue().blocks
        problem_refused = _refusal(lambda text=text: merged_strictly(tmp_path, text))
        assert problem_refused is not None
        assert says in problem_refused.message


def merged_strictly(tmp_path: Path, text: str) -> Catalogue:
    own = read_catalogue(written(tmp_path, text))
    return merged(starter_catalogue(), own, where="mine.toml")


def test_of_two_entries_of_one_name_the_first_holds(tmp_path: Path) -> None:
    again = GOOD.split("[[cement]]", maxsplit=1)[0].replace("0.1", "0.7")
    read = with_file(starter_catalogue(), written(tmp_path, HEAD + GOOD + again))
    (problem,) = read.problems
    assert problem.where == f"mine.toml, line {(HEAD + GOOD).count(chr(10)) + 2}, liquid 'rye'"
    assert "there twice" in problem.message
    assert read.catalogue.liquid("rye").amplitudes_per_mm == (("Fe3", 0.1),)


def test_a_broken_entry_does_not_cost_the_one_it_was_to_replace(tmp_path: Path) -> None:
    text = HEAD + GOOD + '[[liquid]]\nname = "ash"\npurpose = 3\n'
    read = with_file(starter_catalogue(), written(tmp_path, text))
    assert read.catalogue.liquid("ash") == starter_catalogue().liquid("ash")
    assert len(read.problems) == 1


def test_a_file_without_anything_to_use_is_refused(tmp_path: Path) -> None:
    with pytest.raises(CatalogueError, match="'purpose' is a whole number"):
        with_file(
            starter_catalogue(), written(tmp_path, HEAD + '[[liquid]]\nname = "x"\npurpose = 3\n')
        )
    with pytest.raises(CatalogueError, match="line 2"):
        with_file(
            starter_catalogue(), written(tmp_path, HEAD.replace("version = 1", "version = = 1"))
        )
    with pytest.raises(CatalogueError, match="not a materials file"):
        with_file(starter_catalogue(), written(tmp_path, GOOD))


def test_lines_of_entries_written_inline(tmp_path: Path) -> None:
    text = HEAD + GOOD + "[[ion]]\nname = 'Z'\nbands = []\n"
    text = text.replace("[[cement]]", "[[ cement ]]  # ours")
    assert with_file(starter_catalogue(), written(tmp_path, text)).problems == ()
    inline = HEAD + "stump = [\n  { name = 'cork', floor = 0.2 },\n]\n" + GOOD
    (problem,) = with_file(starter_catalogue(), written(tmp_path, inline)).problems
    assert problem.where == "mine.toml, line 3, stump 'cork'"


def test_the_coupon_of_a_programme_comes_back(tmp_path: Path) -> None:
    coupon = BlankCoupon(
        scattering_factor=1.21, read_by="bench 2", read_on="2026-05-04", note="two plates"
    )
    fast = replace(starter_catalogue().programme("fast"), coupon=coupon)
    path = tmp_path / "oven.toml"
    write_catalogue(path, Catalogue(programmes=(fast,)))
    read = with_file(starter_catalogue(), path)
    assert read.problems == ()
    assert read.catalogue.programme("fast") == fast
    assert "coupon" not in catalogue_to_dict(starter_catalogue())["programme"][0]
    path.write_text(path.read_text(encoding="utf-8").replace("1.21", "2.9"), encoding="utf-8")
    with pytest.raises(CatalogueError, match=r"multiplies scattering by 2\.9"):
        read_catalogue(path)
