"""The script entry and the sample files."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
import trimesh

from stainmap.errors import CancelledError, PlanError
from stainmap.model.tooth import Tooth
from stainmap.practice.crown_maker import main, make_crown, stl_bytes
from stainmap.surface.loading import load_mesh

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = ROOT / "sample_cases"
COMMAND = re.compile(r"^python -m stainmap\.practice\.crown_maker (.+)$", re.MULTILINE)


def commands() -> list[list[str]]:
    return [line.split() for line in COMMAND.findall((SAMPLES / "README.md").read_text("utf-8"))]


def test_script_writes_the_same_bytes_every_time(tmp_path: Path) -> None:
    """Two fresh interpreters, so that nothing kept in memory can make them agree."""
    arguments = ["--tooth", "46", "--seed", "3", "--resolution", "0.25", "--variation", "0.5"]
    files = [tmp_path / "one.stl", tmp_path / "two.stl"]
    for file in files:
        command = [sys.executable, "-W", "error", "-m", "stainmap.practice.crown_maker"]
        subprocess.run([*command, str(file), *arguments], check=True, cwd=ROOT)
    assert files[0].read_bytes() == files[1].read_bytes()


def test_stl_is_read_back_by_others(tmp_path: Path) -> None:
    path = tmp_path / "crown.stl"
    main([str(path), "--tooth", "14", "--resolution", "0.25"])
    crown = make_crown(Tooth(number=14), resolution=0.25)
    theirs = trimesh.load(path)
    assert theirs.is_watertight
    assert len(theirs.faces) == crown.mesh.face_count
    assert theirs.volume == pytest.approx(crown.mesh.volume, rel=1e-5)
    ours = load_mesh(path)
    assert ours.mesh.vertex_count == crown.mesh.vertex_count
    assert ours.shells == 1
    assert ours.repairs == ()


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--tooth", "37"], "cannot be made"),
        (["--tooth", "91"], "not a tooth number"),
        (["--variation", "2"], "variation 0 to 1"),
    ],
)
def test_script_says_what_is_wrong(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], words: str
) -> None:
    with pytest.raises(SystemExit) as stopped:
        main([str(tmp_path / "x.stl"), *arguments])
    assert stopped.value.code == 2
    assert words in capsys.readouterr().err
    assert not (tmp_path / "x.stl").exists()


def test_refusals_name_the_tooth() -> None:
    with pytest.raises(PlanError, match="33 cannot be made"):
        make_crown(Tooth(number=33))
    for wrong in ({"seed": -1}, {"variation": 1.5}, {"resolution": 0.1}):
        with pytest.raises(ValueError, match="seed must be 0 or more"):
            make_crown(Tooth(number=36), **wrong)


def test_can_be_stopped_on_the_way() -> None:
    def stop(share: float, phrase: str) -> None:
        if share > 0.2:
            raise CancelledError(f"stopped while {phrase}")

    with pytest.raises(CancelledError, match="meshing"):
        make_crown(Tooth(number=11), resolution=0.25, progress=stop)


def test_every_sample_crown_has_its_command() -> None:
    assert {Path(arguments[0]).name for arguments in commands()} == {
        path.name for path in SAMPLES.glob("*.stl")
    }


@pytest.mark.parametrize("arguments", commands(), ids=lambda arguments: arguments[2])
def test_sample_files_are_what_their_commands_make(tmp_path: Path, arguments: list[str]) -> None:
    """Within a thousandth of a millimetre, since other processors may round otherwise."""
    again = tmp_path / "again.stl"
    main([str(again), *arguments[1:]])
    kept = SAMPLES / Path(arguments[0]).name
    one, other = (trimesh.load(path, process=False) for path in (again, kept))
    assert one.vertices.shape == other.vertices.shape
    np.testing.assert_allclose(one.vertices, other.vertices, atol=1e-3)


def test_stl_note_says_invented() -> None:
    content = stl_bytes(make_crown(Tooth(number=11), resolution=0.25).mesh)
    assert b"invented, for demonstration" in content[:80]
    assert not content.startswith(b"solid")
