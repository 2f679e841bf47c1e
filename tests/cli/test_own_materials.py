"""A laboratory's own materials, and another programme, on the command line."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.cli import CANNOT, DONE, main
from stainmap.files.case_file import read_case, write_case
from stainmap.files.catalogue import starter_catalogue
from tests.builders import dome_case
from tests.predict.scenes import DENTINE

OWN = """format = "stainmap materials"
version = 1

[[liquid]]
name = "barley"
purpose = "base, ours"
provenance = "measured"
amplitudes_per_mm = { Fe3 = 0.7, Tb4 = 0.9 }

[[liquid]]
name = "rye"
purpose = "base"
provenance = "measured"
amplitudes_per_mm = { Fe3 = 0.1 }
scater_change = 0.1

[[programme]]
name = "fast"
scattering_factor = 1.35
provenance = "measured"
segments = [{ target_c = 1500.0, minutes = 60.0 }, { target_c = 200.0, minutes = 45.0 }]
coupon = { scattering_factor = 0.9, read_by = "bench 2", read_on = "2026-05-04" }
"""


@pytest.fixture
def case_path(tmp_path: Path) -> Path:
    base = dome_case(12, 36)
    jars = tuple(replace(jar, liquid="barley") for jar in base.plan.jars)
    case = replace(
        base,
        materials=starter_catalogue(),
        plan=replace(base.plan, block="medium 3Y", jars=jars),
        backings=(DENTINE,),
    )
    path = tmp_path / "dome.stainmap"
    write_case(case, path)
    return path


def own_file(tmp_path: Path, text: str = OWN) -> Path:
    path = tmp_path / "ours.toml"
    path.write_text(text, encoding="utf-8")
    return path


def report(capsys: pytest.CaptureFixture[str], *arguments: object) -> tuple[int, dict]:
    code = main([*(str(argument) for argument in arguments), "--json"])
    return code, json.loads(capsys.readouterr().out)


def test_predict_takes_own_materials_and_says_what_was_left_out(
    capsys: pytest.CaptureFixture[str], case_path: Path, tmp_path: Path
) -> None:
    code, plain = report(capsys, "predict", case_path)
    assert code == DONE
    assert plain["materials_left_out"] == []
    assert plain["what_if"] is None
    code, own = report(capsys, "predict", case_path, "--materials", own_file(tmp_path))
    assert code == DONE
    (left_out,) = own["materials_left_out"]
    assert "ours.toml, line 15, liquid 'rye'" in left_out
    assert "scater_change" in left_out
    assert own["plan_hash"] != plain["plan_hash"]
    assert own["areas"]["cervical"]["lab"][2] > plain["areas"]["cervical"]["lab"][2] + 2.0
    # The case itself is as it was.
    assert read_case(case_path).materials == starter_catalogue()


def test_the_sentences_are_printed_without_json(
    capsys: pytest.CaptureFixture[str], case_path: Path, tmp_path: Path
) -> None:
    arguments = ["predict", str(case_path), "--materials", str(own_file(tmp_path))]
    assert main([*arguments, "--what-if", "fast"]) == DONE
    out = capsys.readouterr().out
    assert "left out: ours.toml, line 15" in out
    assert "What if: slow (8 h 50 min) against fast (1 h 45 min)" in out
    assert "A direction" in out


def test_what_if_reports_both_programmes(
    capsys: pytest.CaptureFixture[str], case_path: Path, tmp_path: Path
) -> None:
    _, found = report(capsys, "predict", case_path, "--what-if", "very fast")
    here, there = found["what_if"]["programmes"]
    assert (here["name"], there["name"]) == ("slow", "very fast")
    assert there["factor_from"] == "class, assumed"
    body = found["what_if"]["areas"]["body"]
    assert body["lab"][0] == pytest.approx(found["areas"]["body"]["lab_high"], abs=0.01)
    assert body["change"][0] == pytest.approx(body["lab"][1][0] - body["lab"][0][0], abs=0.002)
    assert body["change_de00"] > 0.3
    own = own_file(tmp_path)
    _, read = report(capsys, "predict", case_path, "--what-if", "fast", "--materials", own)
    assert read["what_if"]["programmes"][1]["factor_from"] == "blank coupon"
    assert read["what_if"]["areas"]["body"]["change"][0] < 0.0
    code, refused = report(capsys, "predict", case_path, "--what-if", "microwave")
    assert code == CANNOT
    assert "very fast" in refused["error"]["advice"]


def test_a_file_nothing_can_be_used_of_is_refused(
    capsys: pytest.CaptureFixture[str], case_path: Path, tmp_path: Path
) -> None:
    bad = own_file(tmp_path, 'format = "stainmap materials"\nversion = 1\nliquid = 3\n')
    code, refused = report(capsys, "predict", case_path, "--materials", bad)
    assert code == CANNOT
    assert refused["error"]["where"] == "ours.toml, line 3"
    code, refused = report(capsys, "predict", case_path, "--materials", tmp_path / "none.toml")
    assert code == CANNOT
    assert "cannot be read" in refused["error"]["message"]
