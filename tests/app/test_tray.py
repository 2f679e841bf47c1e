"""Trays: kept in a file, opened again, laid out, and what is wrong with a case is said."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from datetime import datetime
from pathlib import Path

import pytest

from stainmap.app.tray import laid_case, lay_out, lay_tray
from stainmap.cli.commands import main
from stainmap.cli.reporting import CANNOT, DONE
from stainmap.errors import CaseFileError, PlanError
from stainmap.files.case_file import write_case
from stainmap.files.tray_file import read_tray, write_tray
from stainmap.model.case import Case
from stainmap.model.tray import Tray, TrayEntry
from stainmap.model.zone import Zone
from stainmap.planning.plan_hash import plan_hash
from tests.builders import dome_case, with_coats

START = datetime(2026, 11, 25, 8, 30)  # noqa: DTZ001 - the bench's own clock


def planned(code: str) -> Case:
    """Return the dome, its second jar with a dye that its materials have."""
    case = dome_case(6, 12)
    first, second = case.plan.jars
    jars = (first, replace(second, dye_drops=(2, 0, 0)))
    return replace(case, code=code, plan=replace(case.plan, jars=jars))


def case_files(folder: Path, count: int = 3) -> list[Path]:
    paths = []
    for number in range(count):
        path = folder / f"case_{number}.stainmap"
        write_case(planned(f"T-{number}"), path)
        paths.append(path)
    return paths


def test_a_tray_is_kept_and_opened_again_also_after_the_folder_has_moved(tmp_path: Path) -> None:
    folder = tmp_path / "monday"
    (folder / "cases").mkdir(parents=True)
    laid = lay_out(case_files(folder / "cases"))
    write_tray(laid.tray, folder / "one.staintray")
    assert read_tray(folder / "one.staintray") == laid.tray
    text = (folder / "one.staintray").read_text(encoding="utf-8")
    assert json.loads(text)["cases"][0]["file"] == "cases/case_0.stainmap"
    shutil.move(folder, tmp_path / "tuesday")
    again = lay_out([tmp_path / "tuesday" / "one.staintray"])
    assert [one.case.code for one in again.cases] == ["T-0", "T-1", "T-2"]
    assert again.problems == ()
    assert [jar.need_drops for jar in again.mixing().jars] == pytest.approx(
        [jar.need_drops for jar in laid.mixing().jars]
    )


def test_every_case_once_however_often_it_is_named(tmp_path: Path) -> None:
    paths = case_files(tmp_path, 2)
    write_tray(lay_out(paths).tray, tmp_path / "t.staintray")
    assert len(lay_out([*paths, tmp_path / "t.staintray", paths[0]]).cases) == 2
    entry = TrayEntry(path=paths[0], code="T-0", plan_hash="")
    with pytest.raises(PlanError, match="twice"):
        Tray(entries=(entry, entry))


def test_what_is_gone_or_broken_is_said_stays_on_the_tray_and_the_rest_goes_on(
    tmp_path: Path,
) -> None:
    paths = case_files(tmp_path)
    tray = lay_out(paths).tray
    paths[0].unlink()
    paths[1].write_bytes(b"no case")
    laid = lay_tray(tray)
    assert [one.case.code for one in laid.cases] == ["T-2"]
    assert len(laid.problems) == 2
    assert "case_0.stainmap" in laid.problems[0]
    assert "case_1.stainmap" in laid.problems[1]
    assert laid.tray == tray
    assert len(laid.mixing().jars) == 2


def test_a_case_that_was_planned_anew_says_so(tmp_path: Path) -> None:
    paths = case_files(tmp_path, 1)
    tray = lay_out(paths).tray
    changed = with_coats(planned("T-0"), 1, Zone.BODY, 2)
    write_case(changed, paths[0])
    laid = lay_tray(tray)
    assert "T-0 was planned anew" in laid.problems[0]
    assert laid.tray.entries[0].plan_hash == plan_hash(laid.cases[0].case)
    assert lay_tray(laid.tray).problems == ()


def test_a_copy_is_left_out_with_a_sentence_that_names_both_files(tmp_path: Path) -> None:
    one, other = case_files(tmp_path, 2)
    shutil.copy(one, other)
    laid = lay_out([one, other])
    assert [kept.entry.path for kept in laid.cases] == [one.resolve()]
    assert laid.not_laid == laid.problems
    (said,) = laid.problems
    assert said.startswith("case_1.stainmap is a copy of case_0.stainmap, both T-0")
    assert len(laid.tray.entries) == 2


def test_cases_of_one_code_are_told_apart_by_their_files(tmp_path: Path) -> None:
    """Two crowns of one patient: other coats, the same code; a third in another folder."""
    (tmp_path / "b").mkdir()
    plans = {"molar": 1, "premolar": 3, "b/molar": 4}
    paths = []
    for name, coats in plans.items():
        paths.append(tmp_path / f"{name}.stainmap")
        write_case(with_coats(planned("T-0"), 1, Zone.BODY, coats), paths[-1])
    laid = lay_out(paths)
    folder = tmp_path.name
    assert [one.labelled.code for one in laid.cases] == [
        f"T-0 ({folder}/molar)",
        f"T-0 ({folder}/premolar)",
        "T-0 (b/molar)",
    ]
    assert [one.case.code for one in laid.cases] == ["T-0"] * 3
    assert [entry.code for entry in laid.tray.entries] == ["T-0"] * 3
    assert (
        "molar.stainmap, premolar.stainmap and molar.stainmap have the code T-0"
        in (laid.problems[0])
    )
    assert {serving.code for jar in laid.mixing().jars for serving in jar.servings} == {
        one.labelled.code for one in laid.cases
    }
    assert [one.labelled.code for one in lay_out(paths[:2]).cases] == [
        "T-0 (molar)",
        "T-0 (premolar)",
    ]


def test_the_open_case_is_not_read_again(tmp_path: Path) -> None:
    (path,) = case_files(tmp_path, 1)
    tray = lay_out([path]).tray
    unsaved = with_coats(planned("T-0"), 1, Zone.BODY, 4)
    laid = lay_tray(tray, known=[laid_case(path, unsaved)])
    assert laid.cases[0].case is unsaved
    assert "planned anew" in laid.problems[0]


def tray_of(*names: str) -> str:
    cases = [{"file": name, "code": "", "plan_hash": ""} for name in names]
    return json.dumps({"format": "stainmap tray", "version": 1, "cases": cases})


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "no tray"),
        (b"\xff\xfe", "no tray"),
        (b"[]", "no tray"),
        (b'{"format": "other", "version": 1}', "no tray"),
        (b'{"format": "stainmap tray", "version": 9}', "newer version"),
        (
            tray_of("").encode(),
            "no name of a file",
        ),
        (
            tray_of("a", "./a").encode(),
            "twice",
        ),
    ],
)
def test_what_is_no_tray_is_refused_in_a_sentence(
    tmp_path: Path, content: bytes, said: str
) -> None:
    path = tmp_path / "t.staintray"
    path.write_bytes(content)
    with pytest.raises(CaseFileError, match=said) as caught:
        read_tray(path)
    assert "t.staintray" in str(caught.value) or said == "no name of a file"


def test_a_tray_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(CaseFileError, match="cannot be read"):
        read_tray(tmp_path / "t.staintray")


def test_the_command_says_what_is_mixed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    paths = [str(path) for path in case_files(tmp_path)]
    kept = tmp_path / "t.staintray"
    assert main(["mix", *paths, "-o", str(kept), "--json"]) == DONE
    found = json.loads(capsys.readouterr().out)
    assert found["units"] == 3
    assert [jar["liquid"] for jar in found["jars"]] == ["first", "second"]
    first = found["jars"][0]
    assert first["need_drops"] == pytest.approx(
        sum(c["need_drops"] for c in first["cases"]), abs=2e-3
    )
    assert [part["stage"] for part in found["run"]] == ["mix", "coats", "dry", "sinter", "cool"]
    assert main(["mix", str(kept)]) == DONE
    text = capsys.readouterr().out
    assert "jar 1  first" in text
    assert "Estimate" in text
    (tmp_path / "case_0.stainmap").unlink()
    assert main(["mix", str(kept)]) == DONE
    assert "case_0.stainmap" in capsys.readouterr().out
    assert main(["mix", str(tmp_path / "nothing.stainmap")]) == CANNOT
