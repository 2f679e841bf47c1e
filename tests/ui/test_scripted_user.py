"""A whole plan by mouse and keys, from the first start to printed sheets, in few steps.

With STAINMAP_MORE=1: on a light crown made here, and on a scanned one where there is one beside the
checkout. `test_whole_job.py` goes the same way in every run, with its hands inside the program.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from unittest import mock

import pypdf
import pytest

from stainmap.app import opening
from stainmap.app.session import Session
from stainmap.files.case_file import read_case
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.tooth import Tooth
from stainmap.practice.crown_maker import make_crown, stl_bytes
from stainmap.ui import main_window
from tests.tools.scripted_user import COATS, MOST_STEPS, Made, make_a_plan

pytestmark = [
    pytest.mark.gl,
    pytest.mark.skipif(
        not os.environ.get("STAINMAP_MORE"), reason="takes minutes: STAINMAP_MORE=1"
    ),
]


def judge(made: Made, record_property: Callable[[str, object], None]) -> None:
    """Hold what was made against what was asked for."""
    record_property("steps", len(made.said))
    print(f"{len(made.said)} steps")
    assert len(made.said) < MOST_STEPS
    case = read_case(made.case)
    assert case.units[0].tooth.number == 46
    assert [jar.liquid for jar in case.plan.jars] == list(dict.fromkeys(c[0] for c in COATS))
    liquid_of = {jar.number: jar.liquid for jar in case.plan.jars}
    for liquid, area, coats in COATS:
        (step,) = [one for one in case.plan.steps if liquid_of[one.jar] == liquid]
        entry = step.entry(area)
        assert entry is not None, (liquid, area)
        assert entry.coats == CoatSpan.parse(coats)
    assert case.intake.stump_known
    text = " ".join(
        page.extract_text() for sheet in made.sheets for page in pypdf.PdfReader(sheet).pages
    )
    assert len(made.sheets) == 3
    for words in ("Coat map", "Mixing list", "46 lower right first molar", *liquid_of.values()):
        assert words in text
    # The body was told to be darker than the block, and a coat went onto it.
    assert made.body.lightness < 75.0


def test_from_first_start_to_sheets(
    tmp_path: Path,
    planned_case: Case,
    monkeypatch: pytest.MonkeyPatch,
    record_property: Callable[[str, object], None],
) -> None:
    mesh = tmp_path / "crown_46.stl"
    mesh.write_bytes(stl_bytes(make_crown(Tooth(number=46), resolution=0.6).mesh))
    monkeypatch.setattr(opening, "MAX_EDGE_MM", 0.6)
    monkeypatch.setattr(Session, "need_shading", lambda _self: None)
    # A dome in place of the sample that the program opens on.
    monkeypatch.setattr(main_window, "open_sample", lambda: planned_case)
    monkeypatch.setattr(main_window, "sample_look", lambda _case: None)
    folder = tmp_path / "made"
    folder.mkdir()
    judge(make_a_plan(mesh, tmp_path / "home", folder), record_property)


def test_from_first_start_to_sheets_on_a_scanned_crown(
    tmp_path: Path, shared_meshes: Path, record_property: Callable[[str, object], None]
) -> None:
    with mock.patch.object(opening, "MAX_EDGE_MM", 0.2):
        judge(make_a_plan(shared_meshes / "hollow_46.stl", tmp_path, tmp_path), record_property)
