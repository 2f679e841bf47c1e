"""Coats laid onto a surface whose truth is known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.model.case import Case
from stainmap.model.plan import AreaCoats, BrushedCoats, CoatSpan, Fade, Step, Streaks
from stainmap.model.zone import Accent, Zone
from stainmap.planning.coats import CoatLayout, smoothing_length_mm
from stainmap.surface.mesh import TriMesh
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(40, 96)


@pytest.fixture(scope="module")
def layout(case: Case) -> CoatLayout:
    return CoatLayout(case.surface.mesh, case.reading.outer)


def only(case: Case, *entries: AreaCoats, **step: object) -> Case:
    """Return the case with one step and nothing else."""
    one = Step(jar=1, areas=entries, **step)  # type: ignore[arg-type]
    return replace(case, plan=replace(case.plan, steps=(one,)))


def test_shares_cover_every_vertex_once(case: Case, layout: CoatLayout) -> None:
    shares = layout.shares(case.zones, 0.6)
    assert shares.min() >= 0.0
    np.testing.assert_allclose(shares.sum(axis=0), 1.0, atol=1e-5)


def test_nothing_feathers_across_the_rim(case: Case, layout: CoatLayout) -> None:
    inner_only = only(case, AreaCoats(area=Zone.INNER, coats=CoatSpan.exactly(3)))
    coats = layout.coats(inner_only)[0]
    outer = case.reading.outer
    assert (coats[outer] == 0.0).all()
    assert (coats[~outer] == 3.0).all()


def test_a_border_is_as_wide_as_its_softness_says() -> None:
    # Closed form: a screened step edge falls from 90 % to 10 % within 2 s ln 5.
    columns, rows, width = 401, 5, 0.02
    x, y = np.meshgrid(np.arange(columns) * width, np.arange(rows) * width)
    points = np.stack([x.ravel(), y.ravel(), np.zeros(x.size)], axis=1)
    corner = (np.arange(rows - 1)[:, None] * columns + np.arange(columns - 1)).ravel()
    faces = np.concatenate(
        [
            np.stack([corner, corner + 1, corner + columns + 1], axis=1),
            np.stack([corner, corner + columns + 1, corner + columns], axis=1),
        ]
    )
    mesh = TriMesh(points, faces)
    zones = np.where(points[:, 0] < 4.0, 1, 2).astype(np.uint8)
    layout = CoatLayout(mesh, np.ones(len(points), bool))
    share = layout.shares(zones, 0.6)[1][2 * columns : 3 * columns]
    ninety, ten = (np.interp(-level, -share, x[0]) for level in (0.9, 0.1))
    assert ten - ninety == pytest.approx(0.6, abs=0.02)
    assert smoothing_length_mm(0.6) == pytest.approx(0.6 / (2 * np.log(5)))


def test_accents_and_brushed_coats_add_to_the_zone_below(case: Case, layout: CoatLayout) -> None:
    plain = only(case, AreaCoats(area=Zone.CERVICAL, coats=CoatSpan.exactly(2)))
    base = layout.coats(plain)[0]
    accented = only(
        case,
        AreaCoats(area=Zone.CERVICAL, coats=CoatSpan.exactly(2)),
        AreaCoats(area=Accent.MARGIN_BAND, coats=CoatSpan.exactly(1)),
    )
    share = case.accent(Accent.MARGIN_BAND)
    assert share is not None
    np.testing.assert_allclose(layout.coats(accented)[0], base + share, atol=1e-6)
    brushed = BrushedCoats(vertices=np.array([3], np.int32), coats=np.array([1.5], np.float32))
    with_brush = only(
        case, AreaCoats(area=Zone.CERVICAL, coats=CoatSpan.exactly(2)), brushed=brushed
    )
    added = layout.coats(with_brush)[0] - base
    assert added[3] == pytest.approx(1.5)
    assert np.count_nonzero(np.abs(added) > 1e-6) == 1


def test_a_fade_follows_the_depth_below_the_crest(case: Case, layout: CoatLayout) -> None:
    fade = Fade(full_down_to_mm=0.2, zero_at_mm=0.8)
    faded = only(case, AreaCoats(area=Zone.CUSP, coats=CoatSpan.exactly(2), fade=fade))
    full = only(case, AreaCoats(area=Zone.CUSP, coats=CoatSpan.exactly(2)))
    ratio = layout.coats(faded)[0] / np.maximum(layout.coats(full)[0], 1e-6)
    cusp = case.zones == int(Zone.CUSP)
    depth = case.reading.depth_below_crest_mm[cusp]
    expected = np.clip((0.8 - depth) / 0.6, 0.0, 1.0)
    np.testing.assert_allclose(ratio[cusp], expected, atol=1e-3)


def test_both_ends_of_a_span_are_laid_out(case: Case, layout: CoatLayout) -> None:
    spanned = only(case, AreaCoats(area=Zone.INNER, coats=CoatSpan(low=1, high=3)))
    inside = ~case.reading.outer
    assert (layout.coats(spanned, "low")[0][inside] == 1.0).all()
    assert (layout.coats(spanned, "high")[0][inside] == 3.0).all()


@pytest.mark.parametrize("direction", [1, -1])
def test_streaks_leave_their_zone_the_way_they_point(
    case: Case, layout: CoatLayout, direction: int
) -> None:
    streaks = Streaks(area=Zone.BODY, count=5, length_mm=2.0, coats=2, direction=direction)
    coats = layout.coats(only(case, streaks=(streaks,)))[0]
    painted = coats > 0.05
    assert painted.any()
    assert coats.max() <= 2.0
    height = case.surface.mesh.vertices[:, 2]
    beyond = painted & (case.zones != int(Zone.BODY))
    assert beyond.any()
    if direction == 1:
        assert height[beyond].max() < 1.6
    else:
        assert height[beyond].min() > 3.9
    assert not painted[~case.reading.outer].any()


def test_unsoftened_coats_are_those_of_the_label_under_the_brush(
    case: Case, layout: CoatLayout
) -> None:
    here = np.flatnonzero(case.zones == int(Zone.CERVICAL))[:7].astype(np.int32)
    coats = layout.unsoftened(case, case.zones, here)
    share = case.accent(Accent.MARGIN_BAND)
    assert share is not None
    np.testing.assert_allclose(coats[1], 3.0)
    np.testing.assert_allclose(coats[2], 2.0 * share[here])
