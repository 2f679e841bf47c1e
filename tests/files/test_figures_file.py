"""What was predicted lies in a case file, is printed if it holds for the case, is not trusted."""

from __future__ import annotations

import zipfile
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from stainmap.app import sheets as sheets_module
from stainmap.app.case_place import CasePlace
from stainmap.app.kept_figures import figures_to_keep
from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.sheets import case_sheets, sheet_data, sheet_data_from_file
from stainmap.app.tray_bench import edit_file
from stainmap.files.case_file import read_case, read_figures, write_case
from stainmap.files.figures_file import figures_entry, figures_from
from stainmap.model.case import Case
from stainmap.model.colour import Colour
from stainmap.model.target import Target
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.planning.area_figures import KeptFigures
from stainmap.planning.figures_key import figures_key, fits
from stainmap.predict.measured_shape import measured_shape
from stainmap.predict.seen import Seen
from tests.builders import dome_case, with_coats

DAY = date(2026, 1, 5)


@pytest.fixture(scope="module")
def case() -> Case:
    """Return a planned crown of which something is wanted."""
    case = with_coats(dome_case(14, 32), 0, Zone.BODY, 2)
    # Of the dyes that its materials have.
    jars = tuple(replace(jar, dye_drops=(jar.number, 0, 0)) for jar in case.plan.jars)
    case = replace(case, plan=replace(case.plan, jars=jars))
    return replace(case, target=Target(body=Colour(lightness=72.0, a=1.5, b=19.0)))


@pytest.fixture(scope="module")
def prediction(case: Case) -> Prediction:
    return predict_case(case)


@pytest.fixture
def saved(case: Case, prediction: Prediction, tmp_path: Path) -> Path:
    """Return the file of the case, as the window saves it."""
    path = tmp_path / "dome.stainmap"
    place = CasePlace()
    place.settle(place.write(case, path, prediction))
    place.leave()
    return path


@pytest.fixture
def never_predicted(monkeypatch: pytest.MonkeyPatch) -> None:
    def predicting(*_arguments: object, **_options: object) -> Prediction:
        raise AssertionError("predicted again")

    monkeypatch.setattr(sheets_module, "predict_case", predicting)


@pytest.mark.usefixtures("never_predicted")
def test_what_a_file_keeps_is_printed_without_predicting_it(
    prediction: Prediction, saved: Path
) -> None:
    """The very outcome, and the very pages."""
    now = read_case(saved)
    printed = sheet_data_from_file(now, read_figures(saved), day=DAY)
    expected = sheet_data(replace(prediction, case=now), day=DAY)
    assert printed.outcome == expected.outcome
    assert printed.draft == expected.draft
    assert (printed.coats == expected.coats).all()
    assert [one.pdf for one in case_sheets(printed)] == [one.pdf for one in case_sheets(expected)]


def changed_plan(case: Case) -> Case:
    return with_coats(case, 0, Zone.BODY, 3)


def changed_wish(case: Case) -> Case:
    return replace(case, target=Target(body=Colour(lightness=71.0, a=1.5, b=19.0)))


def changed_tooth(case: Case) -> Case:
    return replace(case, units=(Unit(tooth=Tooth(number=11)),))


def changed_reading(case: Case) -> Case:
    return replace(case, reading=replace(case.reading, rim=~case.reading.rim))


@pytest.mark.parametrize("change", [changed_plan, changed_wish, changed_tooth, changed_reading])
def test_it_holds_for_the_very_plan_and_crown_only(
    saved: Path, change: Callable[[Case], Case]
) -> None:
    case, kept = read_case(saved), read_figures(saved)
    assert fits(kept, case)
    assert not fits(kept, change(case))


def test_a_changed_plan_is_predicted_anew(saved: Path) -> None:
    changed = changed_plan(read_case(saved))
    printed = sheet_data_from_file(changed, read_figures(saved), day=DAY)
    assert printed.outcome == predict_case(changed).outcome


def test_code_notes_and_revision_do_not_count(saved: Path) -> None:
    case = replace(read_case(saved), code="other", notes="Other words.", revision=3)
    assert fits(read_figures(saved), case)


def test_a_mark_at_the_bench_keeps_it(saved: Path) -> None:
    edit_file(saved, lambda case: replace(case, notes="Painted."))
    assert fits(read_figures(saved), read_case(saved))


def test_another_light_is_not_kept_for_paper(case: Case) -> None:
    assert figures_to_keep(predict_case(case, seen=Seen(light="A"))) is None


def test_there_and_back(prediction: Prediction) -> None:
    kept = figures_to_keep(prediction)
    assert kept is not None
    assert figures_from(*figures_entry(kept)) == kept


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{",
        b"[]",
        b'{"whole": [{"area": 2}]}',
        b'{"whole": [{"area": 99, "area_mm2": 1, "lab": [70, 1, 18], "wall_mm": 1}]}',
        b'{"whole": [{"area": 2, "area_mm2": 1, "lab": [1e999, 1, 18], "wall_mm": 1}]}',
        b'{"whole": [{"area": 2, "area_mm2": 1, "lab": [70, 1], "wall_mm": 1}]}',
    ],
)
def test_damage_is_predicted_over(
    case: Case, prediction: Prediction, tmp_path: Path, content: bytes
) -> None:
    path = tmp_path / "dome.stainmap"
    write_case(case, path, measured=measured_shape(case, prediction.shape))
    with zipfile.ZipFile(path, "a") as archive:
        archive.writestr(f"figures/{figures_key(case)}.json", content)
    assert read_figures(path) is None
    again = read_case(path)
    assert sheet_data_from_file(again, read_figures(path)).outcome == prediction.outcome


def test_figures_without_an_area_are_none(case: Case) -> None:
    assert not fits(KeptFigures(key=figures_key(case), whole=()), case)
