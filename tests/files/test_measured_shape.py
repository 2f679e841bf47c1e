"""What was measured of a shape lies in its case file, holds for it only, and is not trusted."""

from __future__ import annotations

import io
import zipfile
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from stainmap.app.case_place import CasePlace
from stainmap.app.prediction import predict_case
from stainmap.app.tray_bench import edit_file
from stainmap.files.case_file import read_case, write_case
from stainmap.model.case import Case
from stainmap.model.tooth import Tooth, Unit
from stainmap.predict import shape as shape_module
from stainmap.predict.measured_shape import known_shape, measured_shape
from stainmap.predict.shape import crown_shape
from tests.predict.crowns import painted_dome


@pytest.fixture(scope="module")
def case() -> Case:
    return painted_dome(["barley"], wall_mm=0.7)


@pytest.fixture
def kept(case: Case, tmp_path: Path) -> Path:
    """Return a file of the case that holds what was measured of it."""
    path = tmp_path / "dome.stainmap"
    write_case(case, path, measured=measured_shape(case, crown_shape(case)))
    return path


def test_what_a_file_holds_is_not_measured_again(
    case: Case, kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The same figures to the last bit, without measuring anything."""
    afresh = predict_case(case)

    def measuring(*_arguments: object) -> None:
        raise AssertionError("measured again")

    monkeypatch.setattr(shape_module, "_measured_wall", measuring)
    monkeypatch.setattr(shape_module, "_curvature", measuring)
    again = predict_case(read_case(kept))
    for name in ("wall_mm", "partner", "curvature_per_mm"):
        assert np.array_equal(getattr(again.shape, name), getattr(afresh.shape, name))
    assert np.array_equal(again.appearance.lab, afresh.appearance.lab)
    assert again.outcome == afresh.outcome


def test_it_holds_for_the_very_surface_and_reading_only(kept: Path) -> None:
    case = read_case(kept)
    assert known_shape(case) is not None
    reading = case.reading
    turned = replace(reading, rim=~reading.rim)
    front = (Unit(tooth=Tooth(number=11)),)
    for other in (
        replace(case, reading=turned),
        replace(case, reading=replace(reading, assumed_wall_mm=1.2)),
        replace(case, units=front),
    ):
        assert known_shape(other) is None
        crown_shape(other)


def test_it_is_kept_when_the_file_is_changed_and_told_when_it_is_saved(
    case: Case, kept: Path, tmp_path: Path
) -> None:
    edit_file(kept, lambda before: replace(before, notes="another"))
    assert known_shape(read_case(kept)) is not None
    place = CasePlace()
    place.settle(place.write(case, tmp_path / "saved.stainmap", predict_case(case)))
    place.leave()
    assert known_shape(read_case(tmp_path / "saved.stainmap")) is not None


def damaged(values: np.ndarray) -> dict[str, bytes]:
    """Return contents that no program of ours has written, by what is wrong with them."""

    def npy(array: np.ndarray) -> bytes:
        stream = io.BytesIO()
        np.lib.format.write_array(stream, array, allow_pickle=False)
        return stream.getvalue()

    def with_value(name: str, value: float) -> bytes:
        other = values.copy()
        other[name][3] = value
        return npy(other)

    return {
        "no array": b"nothing",
        "short": npy(values[:-1]),
        "plain": npy(np.zeros(len(values), np.float32)),
        "no wall": with_value("wall_mm", np.nan),
        "a wall below nothing": with_value("wall_mm", -1.0),
        "a partner beyond": with_value("partner", len(values)),
        "no curvature": with_value("curvature_per_mm", np.inf),
    }


def test_whatever_is_wrong_with_it_is_measured_again(kept: Path) -> None:
    """The case itself opens as if nothing had been measured."""
    sound = read_case(kept)
    with zipfile.ZipFile(kept) as archive:
        entries = {name: archive.read(name) for name in archive.namelist()}
    (name,) = [name for name in entries if name.startswith("measured/")]
    values = np.lib.format.read_array(io.BytesIO(entries[name]), allow_pickle=False)
    for what, content in damaged(values).items():
        with zipfile.ZipFile(kept, "w") as archive:
            for entry, held in entries.items():
                archive.writestr(entry, content if entry == name else held)
        case = read_case(kept)
        assert case.surface.measured is None, what
        assert np.array_equal(case.surface.mesh.vertices, sound.surface.mesh.vertices)
