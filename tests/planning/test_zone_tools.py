"""The tools that change areas, on the dome: its zones are bands of known height."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.model.plan import BrushedCoats, Streaks
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.mirrored import Half, mirrored_area, mirrored_corrections, unit_mesials
from stainmap.planning.streaks import streak_shares, streak_starts
from stainmap.planning.zone_tools import (
    accent_share,
    grown_area,
    reset_all,
    reset_area,
    shrunk_area,
    smoothed_area,
)
from tests.builders import OUTER_RADIUS_MM, dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(60, 160)


def edge_mm(case: Case, zone: Zone) -> float:
    """Return how far a cap around the top reaches down, mm along the outer sphere."""
    area = case.surface.mesh.vertex_areas[case.zones == zone].sum()
    return float(OUTER_RADIUS_MM * np.arccos(1.0 - area / (2.0 * np.pi * OUTER_RADIUS_MM**2)))


def test_a_zone_grows_and_shrinks_along_the_surface(case: Case) -> None:
    """Closed form: area of a cap. Rings are 0.13 mm apart, so an edge is known to half of that."""
    before = edge_mm(case, Zone.CUSP)
    for by in (0.4, 1.0):
        larger, smaller = grown_area(case, Zone.CUSP, by), shrunk_area(case, Zone.CUSP, by)
        assert edge_mm(larger, Zone.CUSP) - before == pytest.approx(by, abs=0.09)
        assert before - edge_mm(smaller, Zone.CUSP) == pytest.approx(by, abs=0.09)
        assert (smaller.zones[case.zones == Zone.CUSP] != 0).all()
        gone = (case.zones == Zone.CUSP) & (smaller.zones != Zone.CUSP)
        assert (smaller.zones[gone] == Zone.BODY).all()
        for other in (larger, smaller):
            assert np.array_equal(other.zones == Zone.INNER, case.zones == Zone.INNER)
    assert case.zones is not larger.zones


def test_growing_stops_at_the_margin_and_shrinking_leaves_the_margin_alone(case: Case) -> None:
    wide = grown_area(case, Zone.CERVICAL, 2.0)
    assert np.array_equal(wide.zones == Zone.INNER, ~case.reading.outer)
    narrow = shrunk_area(case, Zone.CERVICAL, 0.5)
    foot = case.reading.outer & (case.surface.mesh.vertices[:, 2] < 0.3)
    assert (narrow.zones[foot] == Zone.CERVICAL).all()


def test_an_accent_grows_with_its_edge(case: Case) -> None:
    larger = grown_area(case, Accent.MARGIN_BAND, 0.5)
    height = case.surface.mesh.vertices[:, 2]
    share = accent_share(larger, Accent.MARGIN_BAND)
    assert (share[case.reading.outer & (height < 0.9)] == 1.0).all()
    assert not share[(height > 1.4) | ~case.reading.outer].any()
    assert larger.zones is case.zones
    back = shrunk_area(larger, Accent.MARGIN_BAND, 0.5)
    assert (
        np.abs(
            accent_share(back, Accent.MARGIN_BAND) - accent_share(case, Accent.MARGIN_BAND)
        ).mean()
        < 0.02
    )


def test_a_jagged_edge_becomes_smooth_and_the_area_stays(case: Case) -> None:
    mesh = case.surface.mesh
    angle = np.arctan2(mesh.vertices[:, 1], mesh.vertices[:, 0])
    wavy = mesh.vertices[:, 2] > 3.6 + 0.18 * np.sin(20.0 * angle)
    zones = np.where(case.reading.outer & wavy, np.uint8(Zone.CUSP), case.zones)
    zones = np.where((zones == Zone.CUSP) & ~wavy, np.uint8(Zone.BODY), zones).astype(np.uint8)
    jagged = replace(case, zones=zones)
    smooth = smoothed_area(jagged, Zone.CUSP, 0.5)
    area = mesh.vertex_areas

    def edges(one: Case) -> int:
        inside = one.zones == Zone.CUSP
        return int((inside[mesh.edges[:, 0]] != inside[mesh.edges[:, 1]]).sum())

    assert area[smooth.zones == Zone.CUSP].sum() == pytest.approx(
        area[zones == Zone.CUSP].sum(), rel=0.01
    )
    assert edges(smooth) < 0.75 * edges(jagged)
    soft = smoothed_area(case, Accent.MARGIN_BAND, 0.4)
    share = accent_share(soft, Accent.MARGIN_BAND)
    assert ((share > 0.1) & (share < 0.9)).sum() > 100
    assert not share[~case.reading.outer].any()


def test_a_tool_that_has_nothing_to_do_says_so(case: Case) -> None:
    with pytest.raises(PlanError, match="ends at the margin"):
        grown_area(case, Zone.INNER, 0.3)
    with pytest.raises(PlanError, match="no fissure yet"):
        shrunk_area(case, Zone.FISSURE, 0.3)
    with pytest.raises(PlanError, match="out of range"):
        grown_area(case, Zone.CUSP, 9.0)
    with pytest.raises(PlanError, match="no line angle yet"):
        smoothed_area(case, Accent.LINE_ANGLE)


def corrected(case: Case, where: np.ndarray, zone: Zone) -> Case:
    zones = np.where(where & case.reading.outer, np.uint8(zone), case.zones).astype(np.uint8)
    return replace(case, zones=zones)


def test_reset_takes_back_one_area_or_all_and_leaves_coats(case: Case) -> None:
    x, _, z = case.surface.mesh.vertices.T
    changed = corrected(case, (x > 3.0) & (z > 2.0), Zone.FISSURE)
    changed = corrected(changed, (x < -3.0) & (z > 2.0), Zone.CERVICAL)
    changed = changed.with_accent(Accent.LINE_ANGLE, (x > 4.0).astype(np.float32))
    one = reset_area(changed, Zone.FISSURE)
    assert not (one.zones == Zone.FISSURE).any()
    assert np.array_equal(one.zones == Zone.CERVICAL, changed.zones == Zone.CERVICAL)
    assert reset_area(changed, Accent.LINE_ANGLE).accent(Accent.LINE_ANGLE) is None
    larger = grown_area(case, Accent.MARGIN_BAND, 0.5)
    back = reset_area(larger, Accent.MARGIN_BAND)
    assert np.array_equal(
        accent_share(back, Accent.MARGIN_BAND), accent_share(case, Accent.MARGIN_BAND)
    )
    everything = reset_all(changed)
    assert np.array_equal(everything.zones, case.proposal)
    assert everything.accents == case.accent_proposal
    assert everything.plan is changed.plan
    assert reset_all(case) is case
    assert reset_area(case, Zone.CUSP) is case


def test_reset_leaves_a_margin_that_was_moved_where_it_is(case: Case) -> None:
    moved = case.reading.outer & (case.surface.mesh.vertices[:, 2] > 0.4)
    zones = np.where(moved, case.zones, np.uint8(Zone.INNER)).astype(np.uint8)
    changed = replace(case, zones=zones, reading=replace(case.reading, outer=moved))
    for back in (reset_all(changed), reset_area(changed, Zone.CERVICAL)):
        assert np.array_equal(back.zones == Zone.INNER, ~moved)


def test_a_half_is_mirrored_onto_the_other(case: Case) -> None:
    """The dome is symmetric about x = 0, and mesial is +x: truth is the reflected patch."""
    x, y, z = case.surface.mesh.vertices.T
    right = (np.hypot(x - 3.0, y - 1.0) < 0.8) & (z > 2.0)
    left = (np.hypot(x + 3.0, y - 1.0) < 0.8) & (z > 2.0)
    changed = corrected(case, right, Zone.FISSURE)
    both = corrected(changed, left, Zone.FISSURE)
    for mirrored in (
        mirrored_area(changed, Zone.FISSURE, Half.MESIAL),
        mirrored_corrections(changed, Half.MESIAL),
    ):
        assert (mirrored.zones != both.zones).sum() <= 2
    # The other way round the patch is taken away, and where it was stands what its image has.
    away = mirrored_area(changed, Zone.FISSURE, Half.DISTAL)
    assert np.array_equal(away.zones, case.zones)
    # Nothing was corrected on the distal half, so nothing is done.
    assert mirrored_corrections(changed, Half.DISTAL) is changed


def test_accents_and_brushed_coats_are_mirrored_too(case: Case) -> None:
    x, _, z = case.surface.mesh.vertices.T
    spot = case.reading.outer & (x > 3.5) & (z > 1.0)
    coats = np.where(spot, 2.0, 0.0).astype(np.float32)
    step = replace(case.plan.steps[1], brushed=BrushedCoats.from_dense(coats))
    changed = replace(case, plan=case.plan.with_step(1, step))
    changed = changed.with_accent(Accent.LINE_ANGLE, spot.astype(np.float32))
    mirrored = mirrored_corrections(changed, Half.MESIAL)
    twin = case.reading.outer & (x < -3.5) & (z > 1.0)
    brushed = mirrored.plan.steps[1].brushed
    assert brushed is not None
    assert np.array_equal(brushed.vertices, np.flatnonzero(spot | twin))
    share = accent_share(mirrored, Accent.LINE_ANGLE)
    assert np.array_equal(share > 0.5, spot | twin)
    alone = mirrored_area(changed, Accent.LINE_ANGLE, Half.MESIAL)
    assert np.array_equal(accent_share(alone, Accent.LINE_ANGLE), share)


def test_without_mesial_nothing_is_mirrored(case: Case) -> None:
    unknown = replace(case, reading=replace(case.reading, mesial=None))
    with pytest.raises(PlanError, match="mesial is not known"):
        mirrored_area(unknown, Zone.CUSP, Half.MESIAL)


def two_domes() -> Case:
    """Return two domes side by side along x as a bridge of two lower left molars."""
    one = dome_case(24, 64)
    mesh = one.surface.mesh
    count = mesh.vertex_count
    both = type(mesh)(
        np.concatenate([mesh.vertices, mesh.vertices + np.array([11.0, 0.0, 0.0])]),
        np.concatenate([mesh.faces, mesh.faces + count]),
    )
    indices = np.arange(2 * count, dtype=np.int32)

    def twice(values: np.ndarray) -> np.ndarray:
        return np.concatenate([values, values])

    reading = replace(
        one.reading,
        kind=BodyKind.BRIDGE,
        mesial=None,
        outer=twice(one.reading.outer),
        rim=twice(one.reading.rim),
        unit_index=np.repeat(np.array([0, 1], np.uint8), count),
        height=twice(one.reading.height),
        depth_below_crest_mm=twice(one.reading.depth_below_crest_mm),
    )
    return replace(
        one,
        units=(Unit(tooth=Tooth(number=36)), Unit(tooth=Tooth(number=37))),
        surface=replace(
            one.surface,
            mesh=both,
            parents=np.stack([indices, indices], axis=1),
            base_vertex_count=2 * count,
            file_vertex=both.faces.ravel().copy(),
        ),
        reading=reading,
        zones=twice(one.zones),
        proposal=twice(one.proposal),
        accents=(),
        accent_proposal=(),
    )


def test_in_a_bridge_every_unit_is_mirrored_in_itself() -> None:
    bridge = two_domes()
    # From 36 back to 37 the row runs to +x, so mesial is -x at both.
    assert np.allclose(unit_mesials(bridge), [[-1.0, 0.0, 0.0]] * 2)
    x, y, z = bridge.surface.mesh.vertices.T
    outer = bridge.reading.outer
    spot = outer & (np.hypot(x - 14.0, y) < 0.9) & (z > 2.0)
    twin = outer & (np.hypot(x - 8.0, y) < 0.9) & (z > 2.0)
    changed = corrected(bridge, spot, Zone.FISSURE)
    mirrored = mirrored_corrections(changed, Half.DISTAL)
    assert np.array_equal(mirrored.zones == Zone.FISSURE, spot | twin)


def test_streaks_towards_the_margin_do_not_run_into_a_fissure(case: Case) -> None:
    x, y, _ = case.surface.mesh.vertices.T
    streaks = Streaks(area=Zone.CUSP, count=5, length_mm=2.0, coats=1)
    # Fissures within the cap, buccal and lingual: their upper edges lie above them.
    pit = (np.abs(x) < 2.0) & (np.abs(y) > 1.2) & (np.hypot(x, y) < 2.3)
    grooved = corrected(case, pit, Zone.FISSURE)
    mesh = grooved.surface.mesh
    starts = streak_starts(mesh, grooved.zones, grooved.reading, streaks)
    assert starts == streak_starts(mesh, case.zones, case.reading, streaks)
    assert (np.hypot(x, y)[starts] > 2.5).all()


def test_streaks_of_a_bridge_are_spread_over_each_unit() -> None:
    bridge = two_domes()
    streaks = Streaks(area=Zone.CUSP, count=4, length_mm=2.0, coats=1)
    starts = streak_starts(bridge.surface.mesh, bridge.zones, bridge.reading, streaks)
    # Four on the facial and four on the lingual side of both units.
    units = bridge.reading.unit_index[starts]
    assert np.bincount(units).tolist() == [8, 8]
    share = streak_shares(bridge.surface.mesh, bridge.zones, bridge.reading, streaks)
    assert share[starts] == pytest.approx(1.0)
    assert not share[~bridge.reading.outer].any()
    x, y, _ = bridge.surface.mesh.vertices[starts].T
    off_row = np.abs(np.arctan2(np.abs(y), np.abs(x - np.where(units == 1, 11.0, 0.0))))
    assert (off_row > np.radians(45)).all()
