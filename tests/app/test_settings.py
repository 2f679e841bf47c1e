"""Settings: what may be set, and a file that is read without trusting it."""

from __future__ import annotations

import dataclasses
import math
import os
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.app.settings import (
    Language,
    Motion,
    Scheme,
    Settings,
    Typeface,
    counted_drop_volume_ml,
    follows_drop_volume,
    with_drop_volume,
)
from stainmap.app.settings_file import (
    NAME,
    SettingsStore,
    read_settings,
    settings_path,
    write_settings,
)
from stainmap.errors import PlanError, StainmapError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.process import JarAmounts
from stainmap.paper.page_size import PageSize
from stainmap.units import TemperatureUnit
from tests.builders import dome_case

OTHERS = Settings(
    degrees=TemperatureUnit.FAHRENHEIT,
    page=PageSize.LETTER,
    scheme=Scheme.DARK,
    typeface=Typeface.SYSTEM,
    motion=Motion.REDUCED,
    size_percent=125,
    drop_volume_ml=0.047,
    programme="fast",
    language=Language.GERMAN,
    keys={"file/open": "Ctrl+Shift+O", "tools/brush": ""},
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "config" / NAME


def kept(path: Path) -> list[Path]:
    return sorted(path.parent.glob("settings.kept-*.toml"))


# --- values ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("celsius", "degrees", "text"),
    [
        # Boiling and freezing water, and where both scales meet: fixed points of the definition.
        (100.0, TemperatureUnit.CELSIUS, "100 °C"),
        (100.0, TemperatureUnit.FAHRENHEIT, "212 °F"),
        (0.0, TemperatureUnit.BOTH, "0 °C (32 °F)"),
        (-40.0, TemperatureUnit.BOTH, "-40 °C (-40 °F)"),
    ],
)
def test_temperatures(celsius: float, degrees: TemperatureUnit, text: str) -> None:
    assert degrees.text(celsius) == text


def test_a_difference_of_temperatures_has_no_offset() -> None:
    both = TemperatureUnit.BOTH
    assert both.text_of_difference(10.0, "min") == "10 °C/min (18 °F/min)"
    assert TemperatureUnit.FAHRENHEIT.text_of_difference(-100.0) == "180 °F"


@pytest.mark.parametrize(
    "change",
    [
        {"drop_volume_ml": 0.0},
        {"drop_volume_ml": math.nan},
        {"drop_volume_ml": 0.3},
        {"size_percent": 137},
        {"programme": "x" * 201},
    ],
)
def test_what_cannot_be_set_is_refused(change: dict[str, float]) -> None:
    with pytest.raises(StainmapError):
        Settings(**change)  # type: ignore[arg-type]


def test_keys_cannot_be_changed_in_place() -> None:
    with pytest.raises(TypeError):
        OTHERS.keys["file/open"] = ""  # type: ignore[index]


def test_a_pipette_is_calibrated_by_counting() -> None:
    assert counted_drop_volume_ml(20, 1.0) == pytest.approx(0.05)
    assert counted_drop_volume_ml(85, 4.0) == pytest.approx(4.0 / 85)
    for drops, filled in ((1, 1.0), (2000, 1.0), (0, 1.0), (20, 0.0)):
        with pytest.raises(PlanError):
            counted_drop_volume_ml(drops, filled)


def test_the_assumed_drop_leaves_a_case_without_amounts_of_its_own() -> None:
    assert Settings().amounts is None
    own = replace(Settings(), drop_volume_ml=0.04).amounts
    assert own == replace(JarAmounts(), drops_per_ml=25.0)


def test_a_case_follows_the_drop_until_it_has_its_own() -> None:
    case, usual, other = dome_case(), Settings(), replace(Settings(), drop_volume_ml=0.04)
    assert follows_drop_volume(case, usual)
    assert not follows_drop_volume(case, other)
    there = with_drop_volume(case, other)
    assert there.process.jar_amounts.drops_per_ml == 25.0
    assert follows_drop_volume(there, other)
    assert with_drop_volume(there, usual).process.amounts is None


def test_a_programme_that_is_not_there_gives_way_to_the_first() -> None:
    materials = starter_catalogue()
    names = [one.name for one in materials.programmes]
    assert len(names) > 1
    assert Settings(programme=names[1]).programme_of(materials) == names[1]
    assert Settings(programme="of another laboratory").programme_of(materials) == names[0]
    assert Settings().programme_of(materials) == names[0]


# --- the file --------------------------------------------------------------------------------


def test_no_file_means_defaults_and_no_words(path: Path) -> None:
    read = read_settings(path)
    assert (read.settings, read.problem, read.may_write) == (Settings(), "", True)
    assert not path.exists()


def test_every_field_comes_back_from_the_file(path: Path) -> None:
    default = Settings()
    for one in dataclasses.fields(Settings):
        assert getattr(OTHERS, one.name) != getattr(default, one.name), one.name
    write_settings(path, OTHERS)
    read = read_settings(path)
    assert read.settings == OTHERS
    assert read.problem == ""
    assert len(tomllib.loads(path.read_text(encoding="utf-8"))) == len(dataclasses.fields(Settings))


@pytest.mark.parametrize(
    "content",
    [
        b"degrees = ",
        b"\xff\xfe\x00broken",
        b"a = " + b"[" * 5000,
        b"# " + b"x" * 1_000_001,
        b"\x00" * 200,
    ],
    ids=["cut off", "no text", "deep", "large", "zeros"],
)
def test_a_damaged_file_is_kept_aside_and_defaults_are_used(path: Path, content: bytes) -> None:
    path.parent.mkdir()
    path.write_bytes(content)
    read = read_settings(path)
    assert read.settings == Settings()
    assert read.may_write
    (aside,) = kept(path)
    assert aside.read_bytes() == content
    assert str(aside) in read.problem
    assert read_settings(path).problem == "", "it is said once"


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ('paper = "A5"', "paper"),
        ("degrees = 4", "degrees"),
        ("drop_volume_ml = true", "drop_volume_ml"),
        ("drop_volume_ml = nan", "drop_volume_ml"),
        ("size_percent = 100.0", "size_percent"),
        ("size_percent = 99", "size_percent"),
        ("programme = 3", "programme"),
        ('keys = { "file/open" = 3 }', "keys"),
        ("keys = []", "keys"),
        ('motion = "never"', "motion"),
        ('colour = "dark"', "colour"),
    ],
)
def test_one_wrong_line_leaves_the_others(path: Path, line: str, name: str) -> None:
    path.parent.mkdir()
    path.write_text(f'typeface = "system"\n{line}\n', encoding="utf-8")
    read = read_settings(path)
    assert read.settings == replace(Settings(), typeface=Typeface.SYSTEM)
    assert f"'{name}'" in read.problem
    (aside,) = kept(path)
    assert line in aside.read_text(encoding="utf-8")
    again = read_settings(path)
    assert (again.settings.typeface, again.problem) == (Typeface.SYSTEM, "")


def test_what_was_kept_aside_before_is_not_written_over(path: Path) -> None:
    path.parent.mkdir()
    for text in ("[", "[[", "[[["):
        path.write_text(text, encoding="utf-8")
        read_settings(path)
    assert [one.read_text(encoding="utf-8") for one in kept(path)] == ["[", "[[", "[[["]


def test_a_folder_in_the_place_of_the_file_is_moved_aside(path: Path) -> None:
    (path / "inside").mkdir(parents=True)
    read = read_settings(path)
    assert read.settings == Settings()
    assert read.problem
    assert (kept(path)[0] / "inside").is_dir()


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may read everything")
def test_a_file_that_may_not_be_read_is_left_alone_if_it_cannot_be_moved(path: Path) -> None:
    path.parent.mkdir()
    path.write_text('paper = "Letter"', encoding="utf-8")
    path.chmod(0)
    path.parent.chmod(0o500)
    try:
        store = SettingsStore(path)
        assert "until the program ends" in store.problem
        store.keep(OTHERS)
        assert store.settings == OTHERS
    finally:
        path.parent.chmod(0o700)
        path.chmod(0o600)
    assert path.read_text(encoding="utf-8") == 'paper = "Letter"'


def test_nothing_is_written_over_what_could_not_be_kept_aside(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path.parent.mkdir()
    path.write_text("[", encoding="utf-8")

    def refuse(_self: Path, _target: Path) -> None:
        raise PermissionError(13, "not yours")

    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", refuse)
        store = SettingsStore(path)
    assert "until the program ends" in store.problem
    store.keep(OTHERS)
    assert store.settings == OTHERS
    assert path.read_text(encoding="utf-8") == "["


def test_a_store_keeps_what_is_changed(path: Path) -> None:
    store = SettingsStore(path)
    store.keep(store.settings)
    assert not path.exists(), "nothing was changed"
    store.keep(OTHERS)
    assert SettingsStore(path).settings == OTHERS


def test_settings_hold_where_they_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    store = SettingsStore(tmp_path / "file" / NAME)
    with pytest.raises(StainmapError):
        store.keep(OTHERS)
    assert store.settings == OTHERS


def test_a_store_without_a_file_forgets_in_the_end() -> None:
    store = SettingsStore()
    store.keep(OTHERS)
    assert store.settings == OTHERS
    assert SettingsStore().settings == Settings()


def test_the_file_lies_where_the_system_keeps_settings() -> None:
    path = settings_path()
    assert path.name == NAME
    assert "stainmap" in path.parts[-2]
