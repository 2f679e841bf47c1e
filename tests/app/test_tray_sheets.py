"""The sheets of a tray: one bundle, one mixing list; what cannot be printed is said."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from stainmap.app.prediction import predict_case
from stainmap.app.tray import laid_case, lay_out, lay_tray
from stainmap.app.tray_sheets import tray_sheets
from stainmap.errors import CancelledError, PlanError
from stainmap.files.case_file import write_case
from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.paper.page_size import PageSize
from stainmap.planning.plan_hash import plan_hash, short_hash
from tests.builders import dome_case, with_coats


def planned(code: str) -> Case:
    case = with_coats(dome_case(14, 32), 0, Zone.BODY, 2)
    jars = tuple(replace(jar, dye_drops=(jar.number, 0, 0)) for jar in case.plan.jars)
    return replace(case, code=code, plan=replace(case.plan, jars=jars))


@pytest.fixture
def files(tmp_path: Path) -> list[Path]:
    bare = replace(planned("T-3").plan, steps=())
    cases = [planned("T-0"), planned("T-1"), planned("T-2"), replace(planned("T-3"), plan=bare)]
    paths = []
    for case in cases:
        path = tmp_path / f"{case.code}.stainmap"
        write_case(case, path)
        paths.append(path)
    paths[1].write_bytes(b"no case")
    return paths


def test_what_has_no_sheets_is_said_and_the_rest_is_made(files: list[Path]) -> None:
    heard: list[float] = []
    made = tray_sheets(
        lay_out(files), page=PageSize.LETTER, progress=lambda share, _: heard.append(share)
    )
    assert [one.code for one in made.cases] == ["T-0", "T-2"]
    assert [one.name for one in made.sheets] == [
        "T-0-coat-map",
        "T-0-agreement",
        "T-2-coat-map",
        "T-2-agreement",
        "tray-mixing-list",
    ]
    assert len(made.left_out) == 2
    assert made.left_out[0].startswith("T-1.stainmap could not be read")
    assert made.left_out[1].startswith("T-3: The plan has no step to paint.")
    page = PdfReader(BytesIO(made.sheets[-1].pdf)).pages[0]
    text = page.extract_text()
    assert "T-0" in text
    assert "T-2" in text
    assert "T-3" not in text
    assert float(page.mediabox.width) == pytest.approx(612.0, abs=0.1)
    assert heard == sorted(heard)
    assert 0.0 <= heard[0] < 0.1
    assert 0.5 < heard[-1] <= 1.0


def test_the_open_case_is_printed_as_it_is_on_screen(files: list[Path]) -> None:
    prediction = predict_case(with_coats(planned("T-0"), 0, Zone.BODY, 3))
    own = laid_case(files[0], prediction.case)
    laid = lay_tray(lay_out(files[::2]).tray, known=(own,))
    made = tray_sheets(laid, page=PageSize.A4, open_prediction=prediction)
    assert made.cases[0] is prediction.case
    text = PdfReader(BytesIO(made.sheets[1].pdf)).pages[0].extract_text()
    assert short_hash(plan_hash(prediction.case)) in text
    assert short_hash(plan_hash(planned("T-0"))) not in text


def test_a_tray_can_be_stopped_and_one_without_plans_says_so(files: list[Path]) -> None:
    def stop(_share: float, _what: str) -> None:
        raise CancelledError("stopped")

    with pytest.raises(CancelledError):
        tray_sheets(lay_out(files), page=PageSize.A4, progress=stop)
    with pytest.raises(PlanError, match=r"T-1\.stainmap could not be read.*T-3: The plan has no"):
        tray_sheets(lay_out(files[1::2]), page=PageSize.A4)
