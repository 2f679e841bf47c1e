"""The sheets of one case and of a tray, as files."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from pypdf import PdfReader

from stainmap.app.prediction import Prediction, for_record, for_sheets, predict_case
from stainmap.app.sheets import revised, sheet_data, write_sheets
from stainmap.files.case_file import read_case
from stainmap.model.zone import Zone
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.seen import Seen
from tests.builders import dome_case, with_coats


@pytest.fixture(scope="module")
def prediction() -> Prediction:
    case = with_coats(dome_case(14, 32), 0, Zone.BODY, 2)
    # Of the dyes that its materials have.
    jars = tuple(replace(jar, dye_drops=(jar.number, 0, 0)) for jar in case.plan.jars)
    return predict_case(replace(case, plan=replace(case.plan, jars=jars)))


def names(paths: tuple[Path, ...]) -> list[str]:
    return sorted(path.name for path in paths)


def test_one_case_has_three_sheets(prediction: Prediction, tmp_path: Path) -> None:
    written = write_sheets(sheet_data(prediction), tmp_path)
    assert names(written) == [
        "T-0001-agreement.pdf",
        "T-0001-coat-map.pdf",
        "T-0001-mixing-list.pdf",
    ]
    for path in written:
        assert "T-0001" in PdfReader(path).pages[0].extract_text()


def test_pictures_are_the_pages_in_their_size(prediction: Prediction, tmp_path: Path) -> None:
    written = write_sheets(sheet_data(prediction, page="Letter"), tmp_path, kind="png")
    assert names(written) == [
        "T-0001-agreement-1.png",
        "T-0001-coat-map-1.png",
        "T-0001-mixing-list-1.png",
    ]
    for path in written:
        picture = Image.open(BytesIO(path.read_bytes()))
        inches = np.array(picture.size) / picture.info["dpi"]
        assert inches == pytest.approx([8.5, 11.0], abs=0.01)
        assert np.asarray(picture).std() > 10


def test_a_plan_printed_again_keeps_its_revision_and_a_changed_one_replaces_it(
    prediction: Prediction,
) -> None:
    case = prediction.case
    first = revised(case)
    assert (first.revision, first.replaces, first.printed) == (1, "", plan_hash(case))
    assert revised(first) == first or revised(first).revision == 1
    changed = with_coats(first, 0, Zone.BODY, 3)
    second = revised(changed)
    assert (second.revision, second.replaces) == (2, plan_hash(case))
    assert second.printed == plan_hash(changed) == plan_hash(second)
    sheet = sheet_data(replace(prediction, case=first))
    assert sheet.replaces_text == "none"


def test_sheets_take_the_figures_of_the_screen(light_sample: Path) -> None:
    """What is printed is what was seen, and all bands say the same to a fifth of the last digit."""
    on_screen = predict_case(read_case(light_sample))
    assert for_sheets(on_screen) is on_screen
    every_band = for_record(on_screen)
    assert every_band.engine.scene.wavelengths_nm.size == 31
    assert len(on_screen.outcome.areas) > 5
    for few, all_ in zip(on_screen.outcome.areas, every_band.outcome.areas, strict=True):
        assert few.area is all_.area
        apart = np.subtract(few.predicted.lab, all_.predicted.lab)
        assert np.abs(apart).max() < 0.02
        assert np.allclose(few.plus_minus, all_.plus_minus, atol=0.02)


def test_sheets_are_under_daylight_whatever_is_on_screen(light_sample: Path) -> None:
    case = read_case(light_sample)
    by_lamp = predict_case(case, seen=Seen(light="A", observer=10))
    printed = for_sheets(by_lamp)
    assert printed.outcome == predict_case(case).outcome
    assert printed.outcome != by_lamp.outcome


def test_figures_alone_are_those_of_the_whole_prediction(light_sample: Path) -> None:
    """No advice and one thread change no figure."""
    case = read_case(light_sample)
    alone = predict_case(case, figures_only=True, threads=1)
    assert alone.outcome == predict_case(case).outcome
    assert alone.advice == ()
