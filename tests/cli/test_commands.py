"""The command line from outside: what it prints, writes and returns."""

from __future__ import annotations

import csv
import json
import os
import struct
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
import trimesh

from stainmap.app import opening
from stainmap.cli import CANNOT, DONE, USAGE, main
from stainmap.cli.commands import commands
from stainmap.files.case_file import read_case
from stainmap.optics.colorimetry import LIGHTS
from stainmap.paths import sample_case

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = sample_case("lower_molar_36.stainmap")
MESH = sample_case("lower_molar_36.stl")


def run_json(capsys: pytest.CaptureFixture[str], *arguments: object) -> tuple[int, dict]:
    """Run a verb with --json; return its exit code and the one object it printed."""
    code = main([*(str(argument) for argument in arguments), "--json"])
    captured = capsys.readouterr()
    assert captured.err == ""
    return code, json.loads(captured.out)


@pytest.fixture(scope="module", autouse=True)
def _coarser() -> Iterator[None]:
    """Refine what is proposed to half as fine edges: what is said of it is the same."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(opening, "MAX_EDGE_MM", 2.0 * opening.MAX_EDGE_MM)
        yield


@pytest.fixture(scope="module")
def light_mesh(light_sample: Path) -> Path:
    """Return the file of a crown like the sample, with a tenth of its facets."""
    return light_sample.with_suffix(".stl")


@pytest.fixture(scope="module")
def proposed(light_mesh: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("case") / "proposed 36.stainmap"
    arguments = ["propose", light_mesh, "--tooth", "36", "--size", "sintered", "--mesial", "1,0,0"]
    assert main([*map(str, arguments), "-o", str(path)]) == DONE
    return path


def test_inspect_reports_the_contract(capsys: pytest.CaptureFixture[str]) -> None:
    code, report = run_json(capsys, "inspect", MESH)
    assert code == DONE
    assert set(report) == {
        "kind", "length_unit", "size_state", "faces", "vertices", "shells", "watertight",
        "extent_mm", "occlusal_axis", "mesial", "units", "roles", "connectors_mm2",
        "outer_area_mm2", "inner_area_mm2", "margin_length_mm", "wall_mm", "confidence",
        "repairs", "warnings",
    }  # fmt: skip
    independent = trimesh.load(MESH)
    assert report["faces"] == len(independent.faces)
    assert report["vertices"] == len(independent.vertices)
    assert report["watertight"] is True
    assert report["kind"] == "crown"
    assert report["length_unit"] == "mm"
    assert report["size_state"] == "unknown"
    np.testing.assert_allclose(report["extent_mm"], independent.extents, atol=0.01)
    # The sample is made with the occlusal direction along z.
    assert report["occlusal_axis"][2] > 0.97
    assert report["units"] == 1
    assert report["outer_area_mm2"] + report["inner_area_mm2"] == pytest.approx(
        independent.area, rel=1e-3
    )
    assert 0.4 < report["wall_mm"]["min"] < report["wall_mm"]["median"] < 2.5
    assert set(report["confidence"]) >= {"occlusal_axis", "inner_surface", "units", "length_unit"}
    # A margin is longer than the circle of its smallest width and shorter than its box.
    assert 20.0 < report["margin_length_mm"] < 45.0


def test_propose_writes_a_case_with_all_zones(proposed: Path, light_mesh: Path) -> None:
    case = read_case(proposed)
    assert set(np.unique(case.zones)) == {1, 2, 3, 4, 5, 6}
    assert case.source.content == light_mesh.read_bytes()
    assert case.units[0].tooth.number == 36


def test_propose_asks_for_what_the_shape_cannot_tell(
    light_mesh: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    output = tmp_path / "c.stainmap"
    code, report = run_json(capsys, "propose", light_mesh, "--tooth", "36", "-o", output)
    assert code == CANNOT
    assert "--size" in report["error"]["advice"]
    assert not output.exists()


def test_an_option_is_named_for_what_the_shape_does_not_tell(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    upper = sample_case("upper_molar_16.stl")
    arguments = ("--tooth", "16", "--size", "sintered", "-o", tmp_path / "c.stainmap")
    code, report = run_json(capsys, "propose", upper, *arguments)
    assert code == CANNOT
    assert "--mesial" in report["error"]["advice"]
    code, report = run_json(capsys, "propose", upper, "--mesial=1,0,0", *arguments)
    assert code == DONE


def scaled(mesh_file: Path, path: Path, factor: float) -> Path:
    mesh = trimesh.load(mesh_file)
    mesh.apply_scale(factor)
    mesh.export(path)
    return path


def test_a_unit_that_is_not_millimetres_is_said(
    light_mesh: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    inches = scaled(light_mesh, tmp_path / "inches.stl", 1 / 25.4)
    assert main(["inspect", str(inches)]) == DONE
    assert "in inches" in capsys.readouterr().out
    assert main(["inspect", str(light_mesh)]) == DONE
    assert "By its size" not in capsys.readouterr().out
    output = tmp_path / "c.stainmap"
    arguments = ["--tooth", "36", "--size", "sintered", "--mesial", "1,0,0", "-o", str(output)]
    assert main(["propose", str(inches), *arguments]) == DONE
    assert "in inches" in capsys.readouterr().out
    expected = trimesh.load(light_mesh).extents
    np.testing.assert_allclose(read_case(output).surface.mesh.extent, expected, atol=0.01)


def test_what_is_no_crown_in_any_unit_is_not_asked_for_its_size(
    light_mesh: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    huge = scaled(light_mesh, tmp_path / "huge.stl", 1e6)
    output = tmp_path / "c.stainmap"
    code, report = run_json(capsys, "propose", huge, "--tooth", "36", "-o", output)
    assert code == CANNOT
    assert "--unit" in report["error"]["advice"]
    code, report = run_json(capsys, "inspect", huge)
    assert code == CANNOT
    assert report["error"]["where"] == "huge.stl"


def test_no_slip_overwrites_a_mesh_or_a_case(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    mesh, case = tmp_path / "crown.stl", tmp_path / "case.stainmap"
    mesh.write_bytes(MESH.read_bytes())
    case.write_bytes(SAMPLE.read_bytes())
    code, report = run_json(
        capsys, "propose", mesh, "--tooth", "36", "--size", "sintered", "-o", mesh
    )
    assert code == CANNOT
    assert ".stainmap" in report["error"]["message"]
    code, report = run_json(capsys, "predict", case, "--vertices", case)
    assert code == CANNOT
    assert ".csv" in report["error"]["message"]
    code, report = run_json(capsys, "export", case, "-o", case)
    assert code == CANNOT
    assert mesh.read_bytes() == MESH.read_bytes()
    assert case.read_bytes() == SAMPLE.read_bytes()


def test_predict_reports_every_area(
    light_sample: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    rows_file = tmp_path / "vertices.csv"
    code, report = run_json(capsys, "predict", light_sample, "--vertices", rows_file)
    assert code == DONE
    assert report["calibrated"] is False
    assert report["statement"] == "direction, not a match"
    assert len(report["plan_hash"]) == 64
    body = report["areas"]["body"]
    assert set(body) == {
        "area_mm2_sintered", "coats", "lab", "lab_high", "measured", "plus_minus", "parameters_sd",
        "lightness_doubt", "wanted_lab", "wanted_measured", "conversions", "offset_from_body",
        "de00", "refused", "verdict", "lights", "largest_light_change",
    }  # fmt: skip
    assert body["coats"][0]["liquid"] == "barley"
    assert body["verdict"] is None
    assert body["refused"] is None
    own = np.maximum(body["parameters_sd"], (2.5, 1.3, 2.5))
    own[0] = np.hypot(own[0], body["lightness_doubt"])
    np.testing.assert_allclose(body["plus_minus"], own, atol=0.002)
    with rows_file.open(encoding="utf-8") as stream:
        rows = list(csv.DictReader(stream))
    assert len(rows) == 3 * len(trimesh.load(light_sample.with_suffix(".stl")).faces)
    found = {row["area"] for row in rows}
    assert found == {"cervical", "body", "interproximal", "cusp", "fissure", "inner surface"}
    assert min(float(row["sd L* (D65, 2 deg)"]) for row in rows) >= 2.5


def test_predict_says_how_every_area_looks_under_other_lights(
    light_sample: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    code, usual = run_json(capsys, "predict", light_sample)
    assert code == DONE
    assert usual["fluorescence"] == "Fluorescence is not modelled."
    code, lamp = run_json(capsys, "predict", light_sample, "--light", "A", "--observer", "10")
    assert code == DONE
    assert (lamp["light"], lamp["observer_degrees"]) == ("A", 10)
    for name, area in usual["areas"].items():
        lights = area["lights"]
        assert set(lights) == {"2", "10"}
        assert set(lights["2"]) == {"D65", "D50", "A", "LED-B3", "FL2", "FL11"}
        # A mean of colours is nearly the colour of the mean; predicted anew it is the same.
        np.testing.assert_allclose(lights["2"]["D65"], area["lab"], atol=0.1)
        np.testing.assert_allclose(lights["10"]["A"], lamp["areas"][name]["lab"], atol=0.1)
        assert area["largest_light_change"]["2"]["de00"] > 0.5
    # What is wanted was given for daylight and 2 degrees: no difference, and a sentence why.
    body = lamp["areas"]["body"]
    assert body["de00"] is None
    assert "differ in illuminant: D65 against A" in body["refused"]
    assert body["measured"]["illuminant"] == "A"
    assert body["wanted_measured"]["illuminant"] == "D65"


def test_predict_in_words(light_sample: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["predict", str(SAMPLE)]) == DONE
    said = capsys.readouterr().out
    assert "between lights" in said
    assert "Fluorescence is not modelled." in said
    assert "Not calibrated: a direction, not a match." in said
    assert "One standard deviation: +-" in said
    assert "Colours: 45/0, D65, 2 degrees, over " in said
    assert main(["predict", str(light_sample), "--observer", "10"]) == DONE
    said = capsys.readouterr().out
    assert "No difference from what is wanted: The two colours differ in observer" in said


def test_the_lights_offered_are_those_there_are() -> None:
    option = next(one for one in commands.commands["predict"].params if one.name == "light")
    assert tuple(option.type.choices) == LIGHTS


def test_sheets_and_exports_are_written(
    light_sample: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    code, report = run_json(capsys, "sheet", light_sample, "-o", tmp_path / "sheets")
    assert code == DONE
    assert len(report["files"]) == 3
    assert all(Path(name).read_bytes().startswith(b"%PDF") for name in report["files"])
    for name in ("crown.glb", "crown.csv"):
        assert main(["export", str(light_sample), "-o", str(tmp_path / name)]) == DONE
    mesh = trimesh.load(tmp_path / "crown.glb", force="mesh", process=False)
    assert set(np.unique(mesh.vertex_attributes["_AREA"])) == {1.0, 2.0, 3.0, 4.0, 5.0, 6.0}
    assert main(["export", str(light_sample), "-o", str(tmp_path / "crown.stl")]) == CANNOT
    assert "STL has no place for colours" in capsys.readouterr().err
    code = main(["export", str(light_sample), "-o", str(tmp_path / "plan.csv"), "--table", "plan"])
    assert code == DONE
    assert "interproximal" in (tmp_path / "plan.csv").read_text(encoding="utf-8")
    assert main(["export", str(light_sample), "-o", str(tmp_path / "crown.xyz")]) == CANNOT


def broken_files(folder: Path) -> dict[str, Path]:
    """Write one file of every bad kind."""
    whole = MESH.read_bytes()
    triangle = struct.pack("<12fH", *([0.0] * 12), 0)
    kinds = {
        "empty": b"",
        "truncated": whole[: len(whole) // 2],
        "enormous": b"\0" * 80 + struct.pack("<I", 0xFFFFFFF0) + triangle,
        "not a number": b"\0" * 80
        + struct.pack("<I", 1)
        + struct.pack("<12fH", *([np.nan] * 12), 0),
        "text": b"the margin is over there\n" * 40,
        "zero area": b"\0" * 80 + struct.pack("<I", 2) + triangle * 2,
    }
    files = {}
    for kind, content in kinds.items():
        files[kind] = folder / f"{kind}.stl"
        files[kind].write_bytes(content)
    files["missing"] = folder / "missing.stl"
    files["folder"] = folder
    return files


def test_bad_meshes_give_one_sentence_and_exit_code_1(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    for kind, path in broken_files(tmp_path).items():
        code, report = run_json(capsys, "inspect", path)
        assert code == CANNOT, kind
        assert set(report) == {"error"}, kind
        assert report["error"]["message"].endswith("."), kind
        assert report["error"]["where"], kind
        assert report["error"]["advice"], kind
        assert main(["inspect", str(path)]) == CANNOT
        said = capsys.readouterr()
        assert said.out == ""
        assert "Traceback" not in said.err
        assert len(said.err.strip().splitlines()) == 1, kind


@pytest.mark.parametrize(
    "arguments",
    [
        ["inspect"],
        ["propose", "x.stl", "-o", "y.stainmap"],
        ["propose", "x.stl", "--tooth", "six", "-o", "y.stainmap"],
        ["inspect", "x.stl", "--axis", "0,0,0"],
        ["inspect", "x.stl", "--axis", "up"],
        ["fly"],
        ["sheet", "x.stainmap", "-o", "y", "--page", "A3"],
    ],
)
def test_wrong_usage_is_exit_code_2(arguments: list[str]) -> None:
    assert main(arguments) == USAGE


def test_a_tooth_that_does_not_exist_is_said(
    light_mesh: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    output = tmp_path / "c.stainmap"
    code, report = run_json(
        capsys, "propose", light_mesh, "--tooth", "99", "--size", "sintered", "-o", output
    )
    assert code == CANNOT
    assert "99" in report["error"]["message"]


def test_an_unwritable_place_is_said(
    light_sample: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("in the way")
    code, report = run_json(capsys, "sheet", light_sample, "-o", blocked)
    assert code == CANNOT
    assert "folder" in report["error"]["message"]
    code, report = run_json(capsys, "export", light_sample, "-o", tmp_path / "no" / "crown.ply")
    assert code == CANNOT
    assert report["error"]["advice"]


@pytest.mark.skipif(
    sys.platform == "win32" or os.geteuid() == 0,
    reason="permissions are not enforced for root, nor set this way outside of POSIX systems",
)
def test_a_file_that_may_not_be_read_is_said(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    closed = tmp_path / "closed.stl"
    closed.write_bytes(MESH.read_bytes())
    closed.chmod(0)
    for arguments in (["inspect", closed], ["predict", closed]):
        code, report = run_json(capsys, *arguments)
        assert code == CANNOT
        assert report["error"]["where"].endswith("closed.stl")


def test_a_case_cut_short_is_said(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    cut = tmp_path / "cut.stainmap"
    cut.write_bytes(SAMPLE.read_bytes()[:50_000])
    code, report = run_json(capsys, "predict", cut)
    assert code == CANNOT
    assert "cut short" in report["error"]["message"]


def test_the_program_runs_as_a_folder_and_as_a_module() -> None:
    for start in (["stainmap"], ["-m", "stainmap"]):
        done = subprocess.run(
            [sys.executable, *start, "--version"],
            cwd=ROOT, capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        assert "stainmap" in done.stdout


def test_of_several_bodies_the_largest_is_planned(
    light_mesh: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    crown = trimesh.load(light_mesh)
    ball = trimesh.creation.icosphere(subdivisions=2, radius=2.0)
    ball.apply_translation((20.0, 0.0, 0.0))
    both = tmp_path / "both.stl"
    trimesh.util.concatenate([ball, crown]).export(both)
    code, seen = run_json(capsys, "inspect", both)
    assert code == DONE
    assert seen["kind"] == "several bodies"
    code, alone = run_json(capsys, "inspect", light_mesh)
    assert seen["inner_area_mm2"] == pytest.approx(alone["inner_area_mm2"], rel=0.02)
    output = tmp_path / "both.stainmap"
    arguments = ("--tooth", "36", "--size", "sintered", "--mesial=1,0,0", "-o", output)
    code, report = run_json(capsys, "propose", both, *arguments)
    assert code == DONE
    assert any("2 bodies" in warning for warning in report["warnings"])
    case = read_case(output)
    assert case.surface.mesh.area == pytest.approx(crown.area, rel=1e-6)
    assert (case.surface.file_vertex < 0).sum() == 3 * len(ball.faces)
    assert main(["predict", str(output), "--vertices", str(tmp_path / "v.csv")]) == DONE
    with (tmp_path / "v.csv").open(encoding="utf-8") as stream:
        rows = list(csv.DictReader(stream))
    assert len(rows) == 3 * len(both_faces(both))
    assert sum(row["area"] == "none" for row in rows) == 3 * len(ball.faces)


def both_faces(path: Path) -> np.ndarray:
    """Return the facets of a file as an independent reader sees them."""
    return trimesh.load(path).faces


def test_a_body_that_is_no_crown_opens_with_a_warning(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    ball, output = tmp_path / "ball.stl", tmp_path / "ball.stainmap"
    trimesh.creation.icosphere(subdivisions=4, radius=4.5).export(ball)
    code, report = run_json(capsys, "inspect", ball)
    assert code == DONE
    assert report["kind"] == "not a crown"
    arguments = ("--tooth", "36", "--size", "sintered", "--mesial=1,0,0", "-o", output)
    code, report = run_json(capsys, "propose", ball, *arguments)
    assert code == DONE
    assert any("No zones" in warning for warning in report["warnings"])
    code, report = run_json(capsys, "predict", output)
    assert code == DONE
    assert set(report["areas"]) == {"body"}
