"""A laboratory's own materials: kept in a file of their own, checked, used by the open case."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.app import edits
from stainmap.app.materials import MaterialKind, entries, entry, name_and_origin, only
from stainmap.app.materials_case import (
    standing_in_case,
    use_in_case,
    with_material,
    without_material,
)
from stainmap.app.materials_fields import NODES, NUMBERS
from stainmap.app.materials_form import (
    check_numbers,
    new_entry,
    node_texts,
    number_text,
    renamed_copy,
    with_added_node,
    with_node,
    with_number,
    with_origin,
    without_node,
)
from stainmap.app.materials_set import OwnMaterials, export_entries
from stainmap.errors import CatalogueError, StainmapError
from stainmap.files.catalogue import read_catalogue, starter_catalogue
from stainmap.model.case import Case
from stainmap.model.material import Block, Catalogue, Liquid, Provenance, SinteringProgramme
from stainmap.model.plan import StainPlan
from tests.builders import dome_case

STARTER = starter_catalogue()
KIND = MaterialKind


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "settings" / "materials.toml"


@pytest.fixture
def own(path: Path) -> OwnMaterials:
    return OwnMaterials(path, STARTER)


@pytest.fixture(scope="module")
def case() -> Case:
    one = dome_case(8, 16)
    backing = replace(one.backings[0], stump=STARTER.stumps[0].name, cement=STARTER.cements[0].name)
    one = replace(
        one,
        materials=STARTER,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
    )
    return edits.with_added_liquid(one, 0, "barley")


def rye() -> Liquid:
    return replace(STARTER.liquid("barley"), name="rye", provenance=Provenance.MEASURED)


# --- the file --------------------------------------------------------------------------------


def test_what_is_kept_is_there_at_the_next_start(own: OwnMaterials, path: Path) -> None:
    own.keep(rye())
    block = renamed_copy(STARTER.block("medium 3Y"), "block of mine")
    own.keep(block)
    again = OwnMaterials(path, STARTER)
    assert again.problem == ""
    assert again.own == Catalogue(liquids=(rye(),), blocks=(block,))  # type: ignore[arg-type]
    assert again.all.liquids == (*STARTER.liquids, rye())
    assert STARTER.liquids == starter_catalogue().liquids


def test_the_starter_set_stays_as_it_is(own: OwnMaterials, path: Path) -> None:
    darker = with_number(STARTER.liquid("barley"), NUMBERS[KIND.LIQUID][1], "0.1")
    with pytest.raises(CatalogueError, match="comes with the program"):
        own.keep(darker)
    with pytest.raises(CatalogueError, match="none of the laboratory's set"):
        own.remove(KIND.LIQUID, "barley")
    with pytest.raises(CatalogueError, match="none of the laboratory's set"):
        own.rename(KIND.LIQUID, "barley", "rye")
    assert not path.exists()


def test_a_dye_takes_the_place_of_its_namesake(own: OwnMaterials) -> None:
    mine = with_number(STARTER.dyes[1], NUMBERS[KIND.DYE][0], "0.5")
    own.keep(mine)
    assert [one.name for one in own.all.dyes] == ["cyan", "magenta", "yellow"]
    assert own.all.dyes[1].absorption_rgb[0] == 0.5
    own.remove(KIND.DYE, "magenta")
    assert own.all.dyes == STARTER.dyes
    with pytest.raises(CatalogueError, match="three dyes"):
        own.keep(renamed_copy(mine, "rose"))
    with pytest.raises(CatalogueError, match="three dyes"):
        new_entry(KIND.DYE, "rose", STARTER)


def test_renaming_refuses_names_that_are_taken_or_needed(own: OwnMaterials) -> None:
    own.keep(rye())
    with pytest.raises(CatalogueError, match="already is a liquid called 'barley'"):
        own.rename(KIND.LIQUID, "rye", "barley")
    with pytest.raises(CatalogueError, match="no name"):
        own.rename(KIND.LIQUID, "rye", "   ")
    assert own.rename(KIND.LIQUID, "rye", " oat ").name == "oat"
    assert [one.name for one in own.own.liquids] == ["oat"]
    ion = renamed_copy(STARTER.ions[0], "Xx")
    own.keep(ion)
    own.keep(replace(rye(), amplitudes_per_mm=(("Xx", 0.1),)))
    for refused in (lambda: own.rename(KIND.ION, "Xx", "Yy"), lambda: own.remove(KIND.ION, "Xx")):
        with pytest.raises(CatalogueError, match=r"ion 'Xx' is needed.*liquid 'rye'"):
            refused()


def test_a_colour_no_ceramic_has_is_refused_with_the_nearest(own: OwnMaterials) -> None:
    white = renamed_copy(STARTER.block("medium 3Y"), "chalk")
    white = with_node(white, 0, 2, "99", STARTER)
    with pytest.raises(CatalogueError, match=r"99\.0 .* nearest it can have is 8\d"):
        own.keep(white)
    assert own.own == Catalogue()


def test_a_damaged_file_is_kept_aside_with_a_sentence(path: Path) -> None:
    path.parent.mkdir()
    path.write_text("format = [[[", encoding="utf-8")
    own = OwnMaterials(path, STARTER)
    assert "not valid TOML" in own.problem
    assert "materials.kept-1.toml" in own.problem
    assert path.with_name("materials.kept-1.toml").read_text(encoding="utf-8") == "format = [[["
    own.keep(rye())
    text = path.read_text(encoding="utf-8")
    path.write_text(text + '\n[[liquid]]\nname = "bad"\npurpos = "x"\n', encoding="utf-8")
    own = OwnMaterials(path, STARTER)
    assert "line 14" in own.problem
    assert own.own.liquids == (rye(),)
    assert path.with_name("materials.kept-2.toml").is_file()
    assert read_catalogue(path).liquids == (rye(),)


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is closed to the administrator")
def test_a_file_that_cannot_be_written_changes_nothing(own: OwnMaterials, path: Path) -> None:
    path.parent.mkdir(mode=0o500)
    with pytest.raises(StainmapError, match="may not write"):
        own.keep(rye())
    assert own.own == Catalogue()


def test_a_folder_in_the_way_changes_nothing(path: Path) -> None:
    own = OwnMaterials(path, STARTER)
    path.mkdir(parents=True)
    with pytest.raises(StainmapError):
        own.keep(rye())
    assert own.own == Catalogue()


# --- import and export -----------------------------------------------------------------------


def test_export_carries_what_is_referred_to_and_comes_in_again(
    own: OwnMaterials, tmp_path: Path
) -> None:
    ion = renamed_copy(STARTER.ions[0], "Xx")
    own.keep(ion)
    liquid = replace(rye(), amplitudes_per_mm=(("Xx", 0.1),))
    own.keep(liquid)
    out = tmp_path / "out.toml"
    export_entries(out, (liquid,), own.all)
    other = OwnMaterials(tmp_path / "other.toml", STARTER)
    added, said = other.take_file(out)
    assert {one.name for one in added} == {"Xx", "rye"}
    assert said == ()
    assert other.take_file(out) == ((), ())
    other.keep(replace(liquid, scatter_change=0.2))
    added, (sentence,) = other.take_file(out)
    assert added == ()
    assert "already is a liquid called 'rye'" in sentence
    assert "line" in sentence
    assert entry(other.own, KIND.LIQUID, "rye") != liquid


def test_import_says_what_is_wrong_by_its_line(own: OwnMaterials, tmp_path: Path) -> None:
    text = (
        'format = "stainmap materials"\nversion = 1\n'
        '[[stump]]\nname = "good"\nfloor = 0.2\nrise = 0.3\ncentre_nm = 520.0\nwidth_nm = 50.0\n'
        'provenance = "measured"\n'
        '[[stump]]\nname = "good"\nfloor = 0.1\nrise = 0.3\ncentre_nm = 520.0\nwidth_nm = 50.0\n'
        'provenance = "measured"\n'
        '[[cement]]\nname = "odd"\nabsorption_per_mm = -3.0\nscattering_per_mm = 1.0\n'
        'coupled = true\nprovenance = "measured"\n'
        '[[cement]]\nname = "key"\nabsorbtion_per_mm = 3.0\nscattering_per_mm = 1.0\n'
        'coupled = true\nprovenance = "measured"\n'
    )
    path = tmp_path / "mine.toml"
    path.write_text(text, encoding="utf-8")
    added, said = own.take_file(path)
    assert [one.name for one in added] == ["good"]
    assert getattr(added[0], "floor") == 0.2  # noqa: B009 - one of a union
    twice, missing, below = sorted(said, key=lambda one: ("twice" not in one, "-3" in one))
    assert "line 10" in twice
    assert "line 23" in missing
    assert "absorption_per_mm" in missing
    assert "line 17" in below
    assert "Expected is 0 to 1000" in below


# --- forms -----------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", list(KIND))
def test_every_starter_entry_is_in_range_and_survives_its_form(kind: MaterialKind) -> None:
    for one in entries(STARTER, kind):
        check_numbers(one)
        assert renamed_copy(one, one.name) == one
        for quantity in NUMBERS[kind]:
            same = with_number(one, quantity, number_text(one, quantity))
            assert number_text(same, quantity) == number_text(one, quantity)
        for at, row in enumerate(node_texts(one)):
            assert len(row) == len(NODES[kind].columns)
            again = with_node(one, at, 0, row[0], STARTER)
            assert node_texts(again) == node_texts(one)


def test_a_number_out_of_range_is_said_with_value_place_and_range() -> None:
    slow = STARTER.programme("slow")
    for row, column, text, sentence in (
        (1, 1, "-5", "programme 'slow', piece 2: within, min is -5. Expected is 0.1 to 3000."),
        (0, 0, "hot", "piece 1: To, °C is 'hot', which is no number"),
        (0, 0, "nan", "To, °C is nan"),
        (0, 0, "2700", "Expected is 0 to 1700"),
    ):
        with pytest.raises(CatalogueError) as caught:
            with_node(slow, row, column, text, STARTER)
        assert sentence in str(caught.value)
    with pytest.raises(CatalogueError, match=r"Factor on scattering is 9\. Expected is 0\.7"):
        with_number(slow, NUMBERS[KIND.PROGRAMME][1], "9")
    changed = with_node(slow, 0, 0, "950,5", STARTER)
    assert isinstance(changed, SinteringProgramme)
    assert changed.segments[0].target_c == 950.5
    assert with_number(changed, NUMBERS[KIND.PROGRAMME][2], "20") != changed


def test_rows_come_and_go() -> None:
    liquid = with_added_node(STARTER.liquid("barley"), 0, STARTER)
    assert isinstance(liquid, Liquid)
    assert len(liquid.amplitudes_per_mm) == 6
    held = [name for name, _ in liquid.amplitudes_per_mm]
    with pytest.raises(CatalogueError, match=f"'{held[0]}' is there twice"):
        with_node(liquid, 5, 0, held[0], STARTER)
    block = with_added_node(STARTER.block("medium 3Y"), 0, STARTER)
    block = with_added_node(block, 0, STARTER)
    assert isinstance(block, Block)
    assert [layer.bottom_mm for layer in block.layers] == [0.0, 4.0, 8.0]
    block = without_node(without_node(block, 0), 0)
    assert isinstance(block, Block)
    assert [layer.bottom_mm for layer in block.layers] == [0.0]
    with pytest.raises(CatalogueError, match="at least 1 layer"):
        without_node(block, 0)


def test_absorption_of_a_layer_is_solved_or_given_as_a_whole() -> None:
    block = with_node(STARTER.block("medium 3Y"), 0, 7, "0.5", STARTER)
    assert isinstance(block, Block)
    given = block.layers[0].absorption
    assert given is not None
    assert given.c0_per_mm == 0.5
    assert given.decay_nm > 25.0
    assert with_node(block, 0, 8, "", STARTER) == STARTER.block("medium 3Y")


def test_a_new_entry_is_marked_invented_until_somebody_says_otherwise() -> None:
    for kind in KIND:
        if kind in (KIND.DYE, KIND.ION):
            continue
        one = new_entry(kind, "fresh", STARTER)
        assert name_and_origin(one) == "fresh (invented)"
        assert name_and_origin(with_origin(one, Provenance.CALIBRATED)) == "fresh (calibrated)"
    assert name_and_origin(STARTER.ions[0]) == STARTER.ions[0].name


# --- the open case ---------------------------------------------------------------------------


def test_the_case_says_where_it_uses_what(case: Case) -> None:
    uses = {
        (KIND.BLOCK, "medium 3Y"): "as its block",
        (KIND.LIQUID, "barley"): "in jar 1",
        (KIND.PROGRAMME, "slow"): "as its sintering programme",
        (KIND.STUMP, STARTER.stumps[0].name): "behind its stump",
        (KIND.CEMENT, STARTER.cements[0].name): "behind its stump",
        (KIND.LIQUID, "slate"): "",
        (KIND.STUMP, "metal"): "",
    }
    for (kind, name), where in uses.items():
        assert use_in_case(case, kind, name) == where
    assert "in its liquid" in use_in_case(case, KIND.ION, "Fe3")
    for kind, name in ((KIND.LIQUID, "barley"), (KIND.BLOCK, "medium 3Y"), (KIND.ION, "Fe3")):
        with pytest.raises(CatalogueError, match=rf"The open case uses the {kind} '{name}'"):
            without_material(case, kind, name, None)
    assert (
        entry(without_material(case, KIND.LIQUID, "slate", None).materials, KIND.LIQUID, "slate")
        is None
    )


def test_a_material_comes_into_the_case_with_what_it_refers_to(case: Case) -> None:
    ion = renamed_copy(STARTER.ions[0], "Xx")
    liquid = replace(rye(), amplitudes_per_mm=(("Xx", 0.1),))
    everything = replace(STARTER, ions=(*STARTER.ions, ion), liquids=(*STARTER.liquids, liquid))
    assert standing_in_case(case, liquid) == "not in the case"
    changed = with_material(case, liquid, everything)
    assert changed.materials.ion("Xx") == ion
    assert standing_in_case(changed, liquid) == "in the case"
    planned = edits.with_added_liquid(changed, 1, "rye")
    assert standing_in_case(planned, liquid) == "used in jar 2"
    assert standing_in_case(planned, replace(liquid, scatter_change=0.1)) == (
        "the case has other numbers"
    )
    assert with_material(planned, liquid, everything) is planned


def test_another_enlargement_of_the_block_in_use_reaches_the_mesh(case: Case) -> None:
    block = replace(STARTER.block("medium 3Y"), enlargement_factor=1.3)
    changed = with_material(case, block, STARTER)
    assert changed.source.enlargement_factor == 1.3
    assert changed.materials.block("medium 3Y") == block


def test_only_one_entry_makes_a_catalogue() -> None:
    assert only(rye()) == Catalogue(liquids=(rye(),))
