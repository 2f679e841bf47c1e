"""The sheets of a tray: one bundle, one mixing list; what cannot be printed is said."""

from __future__ import annotations

import os
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from pypdf import PdfReader

from stainmap.app import side_processes
from stainmap.app.prediction import predict_case
from stainmap.app.printed_note import note_printed
from stainmap.app.tray import laid_case, lay_out, lay_tray
from stainmap.app.tray_sheets import tray_sheets
from stainmap.errors import CancelledError, PlanError
from stainmap.files.case_file import read_case, read_look, read_preview, write_case
from stainmap.files.case_lock import CaseLock
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
    assert made.left_out[0].startswith("T-1.stainmap: ")
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
    with pytest.raises(PlanError, match=r"T-1\.stainmap: .*T-3: The plan has no"):
        tray_sheets(lay_out(files[1::2]), page=PageSize.A4)


def test_without_a_mixing_list_the_sheets_of_the_cases_are_kept(tmp_path: Path) -> None:
    """Jars with a dye that no materials have: nothing can be mixed, the coat maps are good."""
    path = tmp_path / "T-0.stainmap"
    case = with_coats(dome_case(14, 32), 0, Zone.BODY, 2)
    jars = tuple(replace(jar, dye_drops=(0, 0, 1)) for jar in case.plan.jars)
    no_dyes = replace(case.materials, dyes=())
    write_case(
        replace(case, plan=replace(case.plan, jars=jars), materials=no_dyes, code="T-0"), path
    )
    made = tray_sheets(lay_out([path]), page=PageSize.A4)
    assert [one.name for one in made.sheets] == ["T-0-coat-map", "T-0-agreement"]
    (said,) = made.left_out
    assert said.startswith("There is no mixing list: T-0: Jar ")


def test_processes_give_the_same_sheets(files: list[Path]) -> None:
    """Two processes and none: the same bytes; the crowns are small, so two cases are enough."""
    laid = lay_out(files[::2])
    here = tray_sheets(laid, page=PageSize.A4, processes=1)
    heard: list[str] = []
    apart = tray_sheets(
        laid, page=PageSize.A4, processes=2, progress=lambda _, what: heard.append(what)
    )
    assert apart.sheets == here.sheets
    assert [one.entry.path for one in apart.printed] == [files[0].resolve(), files[2].resolve()]
    assert "2 of 2 are ready" in heard


def test_processes_that_cannot_be_started_are_done_without(
    files: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    def no_pool(*_arguments: object, **_options: object) -> None:
        raise OSError("no semaphores here")

    monkeypatch.setattr(side_processes, "ProcessPoolExecutor", no_pool)
    made = tray_sheets(lay_out(files[::2]), page=PageSize.A4, processes=2)
    assert [one.code for one in made.cases] == ["T-0", "T-2"]


def test_a_process_that_dies_costs_nothing_but_time(tmp_path: Path) -> None:
    """The first item kills the process it is worked on; all are done in the end, here."""
    marks = [tmp_path / name for name in ("a", "b", "c")]
    made = side_processes.each_of(
        die_elsewhere, [(os.getpid(), mark) for mark in marks], processes=2
    )
    assert made == [mark.name for mark in marks]


def die_elsewhere(item: tuple[int, Path], _say: object) -> str:
    home, mark = item
    if os.getpid() != home and mark.name == "a":
        os._exit(3)
    return mark.name


def test_stopping_reaches_the_processes(files: list[Path]) -> None:
    def stop(share: float, _what: str) -> None:
        raise CancelledError("stopped")

    with pytest.raises(CancelledError):
        tray_sheets(lay_out(files[::2]), page=PageSize.A4, processes=2, progress=stop)


def test_cases_of_one_code_have_sheets_of_their_own(tmp_path: Path) -> None:
    for name, coats in (("molar", 2), ("premolar", 3)):
        write_case(with_coats(planned("T-0"), 0, Zone.BODY, coats), tmp_path / f"{name}.stainmap")
    laid = lay_out(sorted(tmp_path.glob("*.stainmap")))
    made = tray_sheets(laid, page=PageSize.A4)
    assert [one.name for one in made.sheets] == [
        "T-0 (molar)-coat-map",
        "T-0 (molar)-agreement",
        "T-0 (premolar)-coat-map",
        "T-0 (premolar)-agreement",
        "tray-mixing-list",
    ]
    for sheet in made.sheets[2:]:
        assert "T-0 (premolar)" in PdfReader(BytesIO(sheet.pdf)).pages[0].extract_text()


def test_what_was_printed_is_noted_in_the_files(files: list[Path]) -> None:
    """Printed, planned anew, printed again: the file knows the revision and what it replaces."""
    look = np.full((planned("T-0").surface.mesh.vertex_count, 3), 7, dtype=np.uint8)
    write_case(planned("T-0"), files[0], preview_png=b"a picture", look=look)
    first = tray_sheets(lay_out(files[::2]), page=PageSize.A4)
    assert note_printed(first.printed) == ()
    once = read_case(files[0])
    assert (once.revision, once.replaces, once.printed) == (1, "", plan_hash(once))
    assert read_preview(files[0]) == b"a picture"
    kept = read_look(files[0], once)
    assert kept is not None
    assert np.array_equal(kept, look)
    # Printed again as it is: nothing to note, and the file is not even touched.
    before = files[0].stat()
    assert note_printed(tray_sheets(lay_out(files[::2]), page=PageSize.A4).printed) == ()
    assert files[0].stat().st_mtime_ns == before.st_mtime_ns
    write_case(with_coats(once, 0, Zone.BODY, 4), files[0])
    second = tray_sheets(lay_out(files[::2]), page=PageSize.A4)
    assert note_printed(second.printed) == ()
    twice = read_case(files[0])
    assert (twice.revision, twice.replaces) == (2, plan_hash(once))
    page = PdfReader(BytesIO(second.sheets[0].pdf)).pages[0].extract_text()
    assert short_hash(plan_hash(once)) in page


def test_a_case_open_elsewhere_or_changed_since_is_left_alone(files: list[Path]) -> None:
    made = tray_sheets(lay_out(files[::2]), page=PageSize.A4)
    lock = CaseLock.take(files[0])
    assert lock is not None
    changed = with_coats(planned("T-2"), 0, Zone.BODY, 5)
    write_case(changed, files[2])
    held = files[0].read_bytes()
    try:
        open_, other = note_printed(made.printed)
    finally:
        lock.release()
    assert open_.startswith("T-0.stainmap is open elsewhere")
    assert other.startswith("T-2.stainmap was changed since its sheets were made")
    assert files[0].read_bytes() == held
    assert read_case(files[2]).printed == ""
