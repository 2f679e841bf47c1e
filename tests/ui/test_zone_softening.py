"""Borders of areas on a large mesh: hard at once, soft as soon as that has been worked out."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from stainmap.surface.mesh import TriMesh
from stainmap.ui import zone_softening
from stainmap.ui.zone_shares import ZoneShares, hard_shares
from stainmap.ui.zone_softening import ZoneSoftening
from tests.builders import dome


@pytest.fixture(scope="module")
def mesh() -> TriMesh:
    return dome(24, 64)[0]


@pytest.fixture
def softening(qapp: object, mesh: TriMesh) -> Iterator[ZoneSoftening]:
    softening = ZoneSoftening()
    softening.take(mesh)
    yield softening
    softening.take(None)


def zones_of(mesh: TriMesh, border_mm: float) -> np.ndarray:
    return np.where(mesh.vertices[:, 2] > border_mm, 4, 2).astype(np.uint8)


def soft(mesh: TriMesh, zones: np.ndarray, accents: dict) -> ZoneShares:
    shares = ZoneShares(mesh)
    shares.set_zones(zones)
    shares.set_accents(accents)
    return shares


def test_a_light_mesh_is_softened_at_once(softening: ZoneSoftening, mesh: TriMesh) -> None:
    zones = zones_of(mesh, 2.5)
    softening.set_areas(zones, {})
    assert softening.drawn is None
    assert softening.look()
    assert softening.drawn is not None
    assert np.array_equal(softening.drawn[0], soft(mesh, zones, {}).zones)
    assert not softening.look(), "nothing new to see"


def test_a_large_mesh_is_softened_beside_the_window(
    softening: ZoneSoftening, mesh: TriMesh, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Hard first; then soft, with what was painted meanwhile in it."""
    monkeypatch.setattr(zone_softening, "_AT_ONCE", 100)
    zones = zones_of(mesh, 2.5)
    share = np.zeros(mesh.vertex_count, np.float32)
    softening.set_areas(zones, {8: share})
    spot = np.flatnonzero(np.linalg.norm(mesh.vertices - (0, 0, 5), axis=1) < 0.9).astype(np.int32)
    with qtbot.waitSignal(softening.softened, timeout=20_000):
        assert softening.look()
        assert softening.drawn is not None
        hard = hard_shares(zones, {8: share})
        assert all(np.array_equal(*pair) for pair in zip(softening.drawn, hard, strict=True))
        # The brush goes on: on the hard borders nothing is drawn of it, but nothing is lost.
        assert softening.change_zones(spot, np.full(len(spot), 5, np.uint8)) is None
        assert softening.change_accent(8, spot, np.ones(len(spot), np.float32)) is None
    painted, accent = zones.copy(), share.copy()
    painted[spot], accent[spot] = 5, 1.0
    expected = soft(mesh, painted, {8: accent})
    assert softening.drawn is not None
    assert np.abs(softening.drawn[0] - expected.zones).max() < 0.02
    assert np.abs(softening.drawn[1] - expected.accents).max() < 0.02
    assert (zones != 5).all(), "what was told stays as it is"
    # From now on a stroke is seen as it goes.
    rows = softening.change_zones(spot, np.full(len(spot), 4, np.uint8))
    assert rows is not None
    assert set(spot) <= set(rows)


def test_other_borders_are_waited_for_behind_those_that_are_drawn(
    softening: ZoneSoftening, mesh: TriMesh, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    softening.set_areas(zones_of(mesh, 2.5), {})
    assert softening.look()
    monkeypatch.setattr(zone_softening, "_AT_ONCE", 100)
    before = softening.drawn
    softening.set_areas(zones_of(mesh, 0.5), {})
    with qtbot.waitSignal(softening.softened, timeout=20_000):
        assert not softening.look()
        assert softening.drawn is before
    assert softening.drawn is not None
    expected = soft(mesh, zones_of(mesh, 0.5), {})
    assert np.abs(softening.drawn[0] - expected.zones).max() < 0.01


def test_a_mesh_that_is_gone_is_not_told_of(
    softening: ZoneSoftening, mesh: TriMesh, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(zone_softening, "_AT_ONCE", 100)
    softening.set_areas(zones_of(mesh, 2.5), {})
    assert softening.look()
    other = dome(8, 16)[0]
    softening.take(other)
    with qtbot.assertNotEmitted(softening.softened, wait=600):
        pass
    assert softening.drawn is None
