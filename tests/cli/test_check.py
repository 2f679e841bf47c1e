"""The verb `check` from outside."""

from __future__ import annotations

import csv
import json

import numpy as np
import pytest

from stainmap.cli import CANNOT, DONE, USAGE, VERBS, main
from stainmap.files.case_file import read_case
from stainmap.files.mesh_export import vertex_table
from stainmap.paths import sample_case

SAMPLE = sample_case("lower_molar_36.stainmap")


def run_json(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, dict]:
    code = main(["check", str(SAMPLE), *arguments, "--json"])
    captured = capsys.readouterr()
    assert captured.err == ""
    return code, json.loads(captured.out)


def test_a_row_and_a_point_on_it_are_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    case = read_case(SAMPLE)
    x, y, z = (
        case.surface.mesh.vertices[case.surface.file_vertex[4999]]
        / case.source.sintered_mm_per_unit
    )
    code, by_row = run_json(capsys, "--vertex", "5000")
    assert code == DONE
    code, by_point = run_json(capsys, f"--at={x},{y},{z}")
    assert code == DONE
    assert by_point == by_row
    assert set(by_row) == {
        "vertex", "wall_mm", "region", "light", "observer_degrees", "fast", "plain", "textbook",
        "transport", "transport_with_dispersion", "fast_de00", "plain_de00", "textbook_de00",
        "verdict",
    }  # fmt: skip
    assert by_row["fast_de00"] < 0.8
    assert 0.3 < by_row["wall_mm"] < 3.0


def test_sentences_for_a_person(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(SAMPLE), "--vertex", "5000"]) == DONE
    said = capsys.readouterr().out
    assert "exact transport" in said
    assert "The fast answer is" in said


def test_the_rows_are_those_of_the_table(capsys: pytest.CaptureFixture[str]) -> None:
    """The table itself, with colours of no meaning."""
    case = read_case(SAMPLE)
    code, report = run_json(capsys, "--vertex", str(len(case.surface.file_vertex)))
    assert code == DONE
    lab = np.zeros((len(case.zones), 3), np.float32)
    text = vertex_table(case, lab, lab.astype(np.uint8))
    last = list(csv.DictReader(text.splitlines()))[-1]
    point = [
        value / case.source.sintered_mm_per_unit
        for value in case.surface.mesh.vertices[report["vertex"]]
    ]
    assert [float(last[axis]) for axis in "xyz"] == pytest.approx(point, rel=1e-4, abs=1e-4)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--vertex", "99999999"], "no row 99999999"),
        (["--at", "100,100,100"], "mm from the crown"),
    ],
)
def test_what_is_not_there_is_said(
    capsys: pytest.CaptureFixture[str], arguments: list[str], said: str
) -> None:
    code, report = run_json(capsys, *arguments)
    assert code == CANNOT
    assert said in report["error"]["message"]
    assert report["error"]["advice"]
    assert report["error"]["where"] == SAMPLE.name


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        ["--vertex", "1", "--at", "0,0,0"],
        ["--vertex", "0"],
        ["--at", "1,2"],
        ["--at", "nan,0,0"],
    ],
)
def test_wrong_usage(arguments: list[str]) -> None:
    assert main(["check", str(SAMPLE), *arguments]) == USAGE
    assert "check" in VERBS
