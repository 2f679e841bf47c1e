"""A dome between made neighbours: where they are, what they look like, how far it is off them."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.row import (
    LIGHT_AT_THE_BACK,
    Row,
    build_row,
    gradient_of,
    light_along,
    neighbours_srgb,
    row_steps,
)
from stainmap.app.row_teeth import made_tooth, read_tooth, shape_of, stands_beside
from stainmap.errors import CancelledError, PlanError
from stainmap.model.colour import Colour
from stainmap.model.intake import Intake, Neighbour, Shade, ShadeSource
from stainmap.model.target import DEFAULT_OFFSETS, Target
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper.shading import ShadingFields, shading_fields
from stainmap.practice.crown_maker import stl_bytes
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from tests.builders import dome_case

COARSE = 0.25
BODY = Colour(lightness=72.0, a=2.0, b=18.0)


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("teeth") / "row"


@pytest.fixture(scope="module")
def predicted() -> Prediction:
    return predict_case(replace(dome_case(), target=Target(body=BODY)))


@pytest.fixture(scope="module")
def fields(predicted: Prediction) -> ShadingFields:
    return shading_fields(SurfaceOperator(predicted.case.surface.mesh))


@pytest.fixture(scope="module")
def row(predicted: Prediction, fields: ShadingFields, kept: Path) -> Row:
    return build_row(predicted.case, fields, kept_in=kept, resolution=COARSE)


def test_the_crown_keeps_its_vertices_and_faces(row: Row, predicted: Prediction) -> None:
    mesh = predicted.case.surface.mesh
    assert np.array_equal(row.mesh.vertices[: row.crown_vertices], mesh.vertices)
    assert np.array_equal(row.mesh.faces[: row.crown_faces], mesh.faces)
    assert row.mesh.faces[row.crown_faces :].min() >= row.crown_vertices
    assert [one.beside.tooth.number for one in row.neighbours] == [35, 37]
    assert row.neighbours[0].first == row.crown_vertices
    assert row.neighbours[-1].last == row.mesh.vertex_count


def test_the_premolar_stands_to_mesial_and_the_molar_to_distal(row: Row) -> None:
    middles = [row.mesh.vertices[one.first : one.last].mean(axis=0) for one in row.neighbours]
    assert middles[0] @ row.mesial > 6.0
    assert middles[1] @ row.mesial < -6.0


def test_light_falls_off_to_the_back_and_necks_are_hidden(row: Row, predicted: Prediction) -> None:
    means = [row.light[one.first : one.last].mean() for one in row.neighbours]
    crown = row.light[: row.crown_vertices].mean()
    assert means[0] > crown > means[1] >= LIGHT_AT_THE_BACK - 1e-6
    assert row.light.max() <= 1.0
    reading = predicted.case.reading
    sunk = row.above_gum[: row.crown_vertices]
    assert sunk[~reading.outer & np.isnan(reading.height)].max(initial=0.0) < 0.5
    assert sunk[reading.height > 0.5].min() > 0.95
    for one in row.neighbours:
        rise = row.mesh.vertices[one.first : one.last] @ row.occlusal
        above = row.above_gum[one.first : one.last]
        assert above[rise < np.quantile(rise, 0.02)].max() < 0.5
        assert above[rise > np.quantile(rise, 0.6)].min() == 1.0


def test_light_in_front_is_full_and_half_behind_the_second_molars(row: Row) -> None:
    made = row.neighbours[0].tooth.body
    front = replace(made, tooth=Tooth(number=31))
    assert light_along(made.mesh.vertices, front).min() > 0.99
    far_back = made.mesh.vertices - 80.0 * made.rows[0]
    assert light_along(far_back, made) == pytest.approx(LIGHT_AT_THE_BACK)


def test_neighbours_shade_each_other_where_they_nearly_touch(
    row: Row, fields: ShadingFields
) -> None:
    share = row.fields.openness[: row.crown_vertices] / np.maximum(fields.openness, 1e-6)
    assert share.max() <= 1.0 + 1e-5
    crown = row.mesh.vertices[: row.crown_vertices]
    outside = row.above_gum[: row.crown_vertices] > 0.9
    for side in (crown @ row.mesial, -(crown @ row.mesial)):
        assert share[outside & (side > 0.8 * side.max())].min() < 0.6
    facial = crown @ row.outward
    assert share[outside & (facial > 0.9 * facial.max())].mean() > 0.85


def test_neighbours_have_the_gradient_that_is_wanted(row: Row, predicted: Prediction) -> None:
    colours = gradient_of(row, predicted.case)
    assert colours is not None
    wanted = {zone: BODY.shifted(0.0, 0.0) for zone in (Zone.BODY,)}
    wanted |= {one.area: BODY.shifted(one.lightness, one.chroma) for one in DEFAULT_OFFSETS}  # type: ignore[misc]
    for one, colour in zip(row.neighbours, colours, strict=True):
        assert not colour.own_shade
        assert {Zone.BODY, Zone.CERVICAL, Zone.CUSP, Zone.FISSURE} <= set(colour.means)
        for zone, share in ((zone, one.tooth.blended[int(zone)]) for zone in wanted):
            there = share > 0.999
            if there.any():
                assert colour.lab[there] == pytest.approx(
                    np.tile(wanted[zone].lab, (there.sum(), 1)), abs=0.05
                )
        # Means are taken where a zone has more than half, so borders pull them a little.
        for zone, mean in colour.means.items():
            assert mean == pytest.approx(wanted[zone].lab, abs=2.0)
    srgb = neighbours_srgb(row, colours)
    assert len(srgb) == row.mesh.vertex_count - row.crown_vertices
    # L* from the luminance of what is shown (IEC 61966-2-1, CIE 1976).
    luminance = decode_srgb(srgb / 255.0) @ np.array([0.2126, 0.7152, 0.0722])
    shown = 116.0 * np.cbrt(luminance) - 16.0
    told = np.concatenate([one.lab for one in colours])[:, 0]
    assert shown == pytest.approx(told, abs=0.4)


def test_a_shade_given_of_a_neighbour_goes_before_what_is_wanted(
    row: Row, predicted: Prediction
) -> None:
    own = Shade(source=ShadeSource.MEASURED, colour=Colour(lightness=66.0, a=3.0, b=22.0))
    neighbour = Neighbour(tooth=Tooth(number=35), shade=own)
    case = replace(predicted.case, intake=Intake(neighbours=(neighbour,)))
    colours = gradient_of(row, case)
    assert colours is not None
    assert [one.own_shade for one in colours] == [True, False]
    before = gradient_of(row, predicted.case)
    assert before is not None
    step = colours[0].means[Zone.BODY] - before[0].means[Zone.BODY]
    assert step[0] == pytest.approx(-6.0, abs=0.1)


def test_steps_are_differences_of_the_areas_means(row: Row, predicted: Prediction) -> None:
    colours = gradient_of(row, predicted.case)
    assert colours is not None
    steps = row_steps(row, predicted, colours)
    assert [one.tooth.number for one in steps] == [35, 37]
    for step, colour in zip(steps, colours, strict=True):
        assert [one.zone for one in step.steps] == [Zone.BODY, Zone.CERVICAL, Zone.CUSP]
        for one in step.steps:
            area = predicted.outcome.area(one.zone)
            assert area is not None
            mean = colour.means[one.zone]
            assert one.lightness == pytest.approx(area.predicted.lightness - mean[0])
            chroma = np.hypot(mean[1], mean[2])
            assert one.chroma == pytest.approx(area.predicted.chroma - chroma)


def test_nothing_wanted_leaves_neighbours_grey(row: Row, predicted: Prediction) -> None:
    case = replace(predicted.case, target=None)
    assert gradient_of(row, case) is None
    grey = neighbours_srgb(row, None)
    assert (grey == grey[:, :1]).all()


def test_made_teeth_are_kept_and_damaged_ones_made_again(kept: Path, row: Row) -> None:
    files = sorted(kept.iterdir())
    assert len(files) == len(row.neighbours)
    before = made_tooth(Tooth(number=35), kept_in=kept, resolution=COARSE)
    file = next(one for one in files if one.name.startswith("15-"))
    whole = file.read_bytes()
    file.write_bytes(whole[: len(whole) // 2])
    after = made_tooth(Tooth(number=35), kept_in=kept, resolution=COARSE)
    assert np.array_equal(after.body.mesh.vertices, before.body.mesh.vertices)
    assert file.read_bytes() == whole or len(file.read_bytes()) > len(whole) // 2


def test_what_cannot_be_made_has_the_shape_of_the_most_similar_tooth() -> None:
    assert {n: shape_of(Tooth(number=n)).number for n in (36, 46, 11, 12, 22, 17, 27)} == {
        36: 36,
        46: 46,
        11: 11,
        12: 11,
        22: 21,
        17: 16,
        27: 26,
    }
    # Handed alike: lower right is as upper left.
    assert [shape_of(Tooth(number=n)).number for n in (35, 45, 33, 43, 37, 47)] == [
        15,
        25,
        13,
        23,
        36,
        46,
    ]


def test_mirrored_cases_have_mirrored_rows(
    row: Row, predicted: Prediction, fields: ShadingFields, kept: Path
) -> None:
    case = predicted.case
    flip = np.array([-1.0, 1.0, 1.0])
    mesh = TriMesh(case.surface.mesh.vertices * flip, case.surface.mesh.faces[:, ::-1])
    other = replace(
        case,
        units=(Unit(tooth=Tooth(number=46)),),
        surface=replace(case.surface, mesh=mesh),
        reading=replace(case.reading, mesial=(-1.0, 0.0, 0.0)),
    )
    assert case.reading.mesial == (1.0, 0.0, 0.0)
    mirrored = build_row(other, fields, kept_in=kept, resolution=COARSE)
    assert [one.beside.tooth.number for one in mirrored.neighbours] == [47, 45]
    for one, twin in zip(row.neighbours, reversed(mirrored.neighbours), strict=True):
        here = row.mesh.vertices[one.first : one.last]
        there = mirrored.mesh.vertices[twin.first : twin.last] * flip
        assert there.mean(axis=0) == pytest.approx(here.mean(axis=0), abs=0.1)
        assert np.ptp(there, axis=0) == pytest.approx(np.ptp(here, axis=0), abs=0.1)


def test_a_mesh_beside_the_crown_stays_where_it_stands(
    row: Row, predicted: Prediction, tmp_path: Path
) -> None:
    one = row.neighbours[0]
    own = (row.mesh.faces >= one.first).all(axis=1) & (row.mesh.faces < one.last).all(axis=1)
    mesh = TriMesh(row.mesh.vertices[one.first : one.last], row.mesh.faces[own] - one.first)
    path = tmp_path / "beside.stl"
    path.write_bytes(stl_bytes(mesh))
    read = read_tooth(path, Tooth(number=35), predicted.case)
    assert read.in_place
    assert read.name == "beside.stl"
    assert read.body.mesh.bounds == pytest.approx(mesh.bounds, abs=0.3)
    assert read.body.rows[2] == pytest.approx(row.occlusal)
    assert read.shares[int(Zone.BODY)].max() > 0.9


def test_what_stands_beside_is_told_from_what_does_not() -> None:
    crown = np.array([[-5.0, -5.0, 0.0], [5.0, 5.0, 7.0]])
    assert stands_beside(crown + np.array([10.0, 0.5, 0.0]), crown)
    assert not stands_beside(crown, crown)
    assert not stands_beside(crown + np.array([30.0, 0.0, 0.0]), crown)
    assert not stands_beside(crown + np.array([0.0, 0.0, 40.0]), crown)


def test_without_mesial_there_is_no_row(predicted: Prediction, fields: ShadingFields) -> None:
    case = replace(predicted.case, reading=replace(predicted.case.reading, mesial=None))
    with pytest.raises(PlanError, match="mesial is not known") as refused:
        build_row(case, fields)
    assert "menu Crown" in str(refused.value)


def test_making_can_be_stopped(predicted: Prediction, fields: ShadingFields) -> None:
    def stop(share: float, _phrase: str) -> None:
        if share > 0.1:
            raise CancelledError("stopped")

    with pytest.raises(CancelledError):
        build_row(predicted.case, fields, resolution=COARSE, progress=stop)
