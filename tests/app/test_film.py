"""The film of a plan: coat after coat, its figures held to other ways to the same numbers."""

from __future__ import annotations

import io
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import colour
import numpy as np
import pytest
from PIL import Image

from stainmap.app.compare import without_stain
from stainmap.app.film import Film, make_film, up_to
from stainmap.app.film_pictures import FilmLook, animated_bytes, film_pictures, write_film
from stainmap.app.film_words import lines_of, title_of
from stainmap.app.pictures import picture_camera
from stainmap.app.prediction import Prediction, predict_case
from stainmap.errors import CancelledError, PlanError, StainmapError
from stainmap.model.plan import BrushedCoats, CoatSpan, Streaks
from stainmap.model.zone import Zone
from stainmap.planning.batch_size import jar_needs
from tests.app.test_compare import painted_dome


@pytest.fixture(scope="module")
def prediction() -> Prediction:
    """Return a plan with two coats of one step, and brushed and whole coats in the next one."""
    case = painted_dome()
    body = np.flatnonzero(case.zones == int(Zone.BODY)).astype(np.int32)[::5]
    brushed = BrushedCoats(vertices=body, coats=np.full(len(body), 1.5, np.float32))
    step = replace(case.plan.steps[1], brushed=brushed)
    return predict_case(replace(case, plan=case.plan.with_step(1, step)))


@pytest.fixture(scope="module")
def film(prediction: Prediction) -> Film:
    return make_film(prediction)


def test_moments_follow_the_rounds_of_painting(film: Film) -> None:
    told = [(one.step, one.coat, one.coats, one.liquid) for one in film.moments]
    # 1.5 brushed coats take two rounds.
    assert told == [
        (0, 0, 0, ""),
        (1, 1, 2, "barley"),
        (1, 2, 2, "barley"),
        (2, 1, 2, "slate"),
        (2, 2, 2, "slate"),
    ]
    assert film.moments[3].areas == ("cusp", "brushed by hand")
    assert film.moments[4].areas == ("brushed by hand",)


def test_it_begins_bare_and_ends_with_the_plan(film: Film, prediction: Prediction) -> None:
    bare = predict_case(without_stain(prediction.case))
    np.testing.assert_allclose(film.moments[0].lab, bare.appearance.lab, atol=2e-3)
    np.testing.assert_allclose(film.moments[-1].lab, prediction.appearance.lab, atol=2e-3)
    assert not film.coats_at(0).any()
    np.testing.assert_array_equal(film.coats_at(4), prediction.coats)


def test_coats_only_grow_and_never_run_ahead_of_their_order(film: Film) -> None:
    for before in range(len(film.moments) - 1):
        one, two = film.coats_at(before), film.coats_at(before + 1)
        assert (two >= one).all()
        assert two.max() <= film.moments[before + 1].coats + 1e-6
        assert not two[film.moments[before + 1].step :].any()


def test_the_engine_of_the_plan_is_left_alone(prediction: Prediction) -> None:
    weights = np.where(prediction.case.reading.outer, 1.0, 0.0)
    before = prediction.engine.mean_radiance_factor(weights)
    make_film(prediction)
    assert np.array_equal(prediction.engine.mean_radiance_factor(weights), before)


def test_its_liquid_is_what_the_jars_give(film: Film, prediction: Prediction) -> None:
    """Coat by coat, or jar by jar: two ways to add up the same liquid."""
    needs = jar_needs(prediction.case, prediction.coats)
    for need in needs:
        mine = [one for one in film.moments if one.jar == need.jar.number]
        assert sum(one.ml for one in mine) == pytest.approx(need.ml, rel=1e-5)
        assert sum(one.drops for one in mine) == pytest.approx(need.drops, rel=1e-5)


def test_a_coat_on_the_whole_body_covers_the_body(film: Film) -> None:
    """Softened at its border, it gains on one side what it loses on the other, but for the rim."""
    body = film.prediction.outcome.area(Zone.BODY)
    assert body is not None
    assert film.moments[1].covered_mm2 == pytest.approx(body.area_mm2, rel=0.05)


def test_changes_are_those_of_colour_science(film: Film) -> None:
    """Means over what was painted, and dE00 by a library that this project did not write."""
    mesh = film.prediction.case.surface.mesh
    for number in range(1, len(film.moments)):
        added = (film.coats_at(number) - film.coats_at(number - 1)).sum(axis=0)
        weights = mesh.vertex_areas * added
        before, after = (
            np.average(film.moments[at].lab.astype(float), axis=0, weights=weights)
            for at in (number - 1, number)
        )
        change = film.moments[number].painted
        assert change is not None
        assert change.lightness == pytest.approx(after[0] - before[0], abs=1e-4)
        chroma = np.hypot(after[1], after[2]) - np.hypot(before[1], before[2])
        assert change.chroma == pytest.approx(chroma, abs=1e-4)
        expected = float(colour.delta_E(before, after, method="CIE 2000"))
        assert change.de00 == pytest.approx(expected, abs=1e-4)
        assert change.lightness < 0.0


def test_a_moment_is_a_prediction_that_every_look_can_show(film: Film) -> None:
    shown = film.prediction_at(1)
    assert shown.case is film.prediction.case
    assert shown.coats.shape == film.prediction.coats.shape
    assert shown.appearance.srgb is film.moments[1].srgb
    body = shown.outcome.area(Zone.BODY)
    assert body is not None
    assert body.predicted.lightness > 0.0
    assert shown.sd_at(0)[0] > 0.0


def test_a_round_cuts_spans_streaks_and_brushed_coats() -> None:
    case = painted_dome()
    step = case.plan.steps[0].with_coats(Zone.CERVICAL, CoatSpan(low=2, high=3))
    streaks = Streaks(area=Zone.BODY, count=3, length_mm=2.0, coats=2)
    brushed = BrushedCoats(
        vertices=np.array([3, 9], np.int32), coats=np.array([0.4, 2.2], np.float32)
    )
    step = replace(step, streaks=(streaks,), brushed=brushed)
    first, second = up_to(step, 1), up_to(step, 2)
    assert [str(entry.coats) for entry in first.areas] == ["1", "1"]
    assert [str(entry.coats) for entry in second.areas] == ["2", "2"]
    assert (first.streaks[0].coats, second.streaks[0].coats) == (1, 2)
    assert first.brushed is not None
    np.testing.assert_allclose(first.brushed.coats, [0.4, 1.0])


def test_a_plan_that_paints_nothing_has_no_film(prediction: Prediction) -> None:
    bare = predict_case(without_stain(prediction.case))
    with pytest.raises(PlanError, match="paints nothing"):
        make_film(bare)


def test_making_it_can_be_stopped(prediction: Prediction) -> None:
    def stop(share: float, _phrase: str) -> None:
        if share > 0.3:
            raise CancelledError("Stopped.")

    with pytest.raises(CancelledError):
        make_film(prediction, stop)


def test_words_name_step_jar_area_liquid_and_change(film: Film) -> None:
    assert "bare block" in title_of(film, 0)
    assert lines_of(film, 0)[1] == "In the order they are painted, 4 coats follow."
    assert title_of(film, 2) == "Step 1, coat 2 of 2: barley from jar 1"
    where, what = lines_of(film, 2)
    moment = film.moments[2]
    assert where.startswith("On body: ")
    assert f"{1000 * moment.ml:.1f} \N{MICRO SIGN}L" in where
    assert "dL* \N{MINUS SIGN}" in what
    assert "Body L*" in what


# --- pictures --------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def pictures(film: Film) -> tuple[np.ndarray, ...]:
    camera = picture_camera(film.prediction.case, 210, 140)
    return film_pictures(film, FilmLook(camera=camera, width=210, height=140))


def test_every_moment_is_a_picture_and_they_differ(pictures: tuple[np.ndarray, ...]) -> None:
    assert len(pictures) == 5
    assert {one.shape for one in pictures} == {(244, 210, 3)}
    crowns = [one[:140].astype(int) for one in pictures]
    assert all((a != b).any() for a, b in pairwise(crowns))
    # Barley makes it darker and warmer.
    inside = (crowns[0] != crowns[0][0, 0]).any(axis=2)
    assert crowns[2][inside].mean() < crowns[0][inside].mean()


def test_the_bench_look_is_chalk_and_dyes(film: Film, pictures: tuple[np.ndarray, ...]) -> None:
    camera = picture_camera(film.prediction.case, 210, 140)
    bench = film_pictures(film, FilmLook(camera=camera, width=210, height=140, bench=True))
    chalk = bench[0][:140].astype(int)
    assert np.ptp(chalk, axis=2).max() < 16
    assert np.ptp(bench[-1][:140].astype(int), axis=2).max() > 20


@pytest.mark.parametrize("gif", [True, False])
def test_animations_are_read_back_with_all_pictures_and_times(
    pictures: tuple[np.ndarray, ...], gif: bool
) -> None:
    with Image.open(io.BytesIO(animated_bytes(pictures, 0.8, gif=gif))) as read:
        assert read.n_frames == len(pictures)
        assert read.info["loop"] == 0
        times = []
        for at in range(read.n_frames):
            read.seek(at)
            read.load()
            times.append(read.info["duration"])
            shown = np.asarray(read.convert("RGB")).astype(int)
            off = np.abs(shown - pictures[at])
            assert off.max() == 0 if not gif else np.percentile(off, 99) <= 12
    assert times == [800, 800, 800, 800, 2000]


def test_the_ending_chooses_the_kind_and_nothing_is_written_over(
    pictures: tuple[np.ndarray, ...], tmp_path: Path
) -> None:
    assert write_film(tmp_path / "a.gif", pictures, 1.0) == (tmp_path / "a.gif",)
    assert (tmp_path / "a.gif").read_bytes()[:6] == b"GIF89a"
    write_film(tmp_path / "a.apng", pictures, 1.0)
    assert b"acTL" in (tmp_path / "a.apng").read_bytes()[:200]
    (tmp_path / "b-02.png").write_bytes(b"somebody's")
    with pytest.raises(StainmapError, match="none is written over"):
        write_film(tmp_path / "b.png", pictures, 1.0)
    assert sorted(one.name for one in tmp_path.glob("b-*")) == ["b-02.png"]
    assert (tmp_path / "b-02.png").read_bytes() == b"somebody's"
    written = write_film(tmp_path / "c.png", pictures, 1.0)
    assert [one.name for one in written] == [f"c-{at:02}.png" for at in range(5)]
    assert np.array_equal(np.asarray(Image.open(written[3])), pictures[3])
    with pytest.raises(StainmapError, match="bmp"):
        write_film(tmp_path / "a.bmp", pictures, 1.0)
