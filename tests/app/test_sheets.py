"""The sheets of one case and of a tray, as files."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from pypdf import PdfReader

from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.sheets import revised, sheet_data, write_sheets
from stainmap.model.zone import Zone
from stainmap.planning.plan_hash import plan_hash
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
    written = write_sheets(prediction, tmp_path)
    assert names(written) == [
        "T-0001-agreement.pdf",
        "T-0001-coat-map.pdf",
        "T-0001-mixing-list.pdf",
    ]
    for path in written:
        assert "T-0001" in PdfReader(path).pages[0].extract_text()


def test_pictures_are_the_pages_in_their_size(prediction: Prediction, tmp_path: Path) -> None:
    written = write_sheets(prediction, tmp_path, kind="png", page="Letter")
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
