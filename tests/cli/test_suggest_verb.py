"""The verb `suggest`: what it prints, writes, and refuses."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from stainmap.cli import CANNOT, DONE, USAGE, main
from stainmap.files.case_file import read_case


def test_it_reports_plans_and_writes_the_suggested_one(
    light_sample: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    output = tmp_path / "suggested.stainmap"
    assert (
        main(["suggest", str(light_sample), "--json", "--without", "umber", "-o", str(output)])
        == DONE
    )
    report = json.loads(capsys.readouterr().out)
    best = report["plans"][0]
    assert best["kind"] == "suggested"
    assert best["days"] == 1000
    assert 0 < best["days_survived"] <= 1000
    assert all("umber" not in plan["jars"] for plan in report["plans"])
    assert all(plan["reasons"] for plan in report["plans"])
    assert report["case"] == str(output)
    assert "direction" in report["caution"][0]
    written = read_case(output)
    assert [jar.liquid for jar in written.plan.jars] == best["jars"]
    for label, area in best["areas"].items():
        coats = {}
        for step in written.plan.steps:
            for entry in step.areas:
                if entry.area.label == label:
                    coats[written.plan.liquid_of(step)] = entry.coats.high
        assert coats == area["coats"], label


def test_it_is_read_by_people_too(light_sample: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["suggest", str(light_sample), "--jars", "3"]) == DONE
    text = capsys.readouterr().out
    assert text.startswith("Suggested: ")
    assert "simulated bench days" in text
    assert "Not calibrated" in text


def test_what_cannot_be_done_is_said(
    light_sample: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert main(["suggest", str(light_sample), "--without", "ochre"]) == CANNOT
    assert "no liquid called 'ochre'" in capsys.readouterr().err
    assert main(["suggest", str(light_sample), "-o", str(tmp_path / "a.stl")]) == CANNOT
    assert ".stainmap" in capsys.readouterr().err
    assert main(["suggest", str(light_sample), "--jars", "0"]) == USAGE
