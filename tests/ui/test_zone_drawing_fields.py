"""Softened shares, places of numbers, the lighter mesh for turning."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.model.case import Case
from stainmap.surface.clustering import clustered_faces
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.refining import refine
from stainmap.ui.pill_places import pill_places
from stainmap.ui.zone_shares import ZoneShares
from tests.builders import dome, dome_case


def test_shares_are_the_exact_diffusion_to_a_hundredth(planned_case: Case) -> None:
    """Against a sparse direct solve of the same equation, which is another code."""
    mesh = refine(planned_case.surface.mesh, 0.2).mesh
    zones = np.where(mesh.vertices[:, 2] > 2.5, 4, 2).astype(np.uint8)
    shares = ZoneShares(mesh)
    shares.set_zones(zones)
    operator = SurfaceOperator(mesh)
    sharp = (zones[:, None] == np.arange(1, 7)).astype(float)
    exact = operator.smooth(operator.smooth(sharp, 0.1), 0.1)
    assert np.abs(shares.zones - exact).max() < 0.01
    assert shares.zones.sum(axis=1) == pytest.approx(np.ones(len(zones)), abs=0.01)


def test_painting_a_spot_equals_setting_all_zones_anew() -> None:
    mesh = refine(dome_case().surface.mesh, 0.2).mesh
    zones = np.where(mesh.vertices[:, 2] > 2.5, 4, 2).astype(np.uint8)
    live, fresh = ZoneShares(mesh), ZoneShares(mesh)
    live.set_zones(zones)
    spot = np.linalg.norm(mesh.vertices - (3.5, 0.0, 3.5), axis=1) < 0.8
    painted = np.flatnonzero(spot).astype(np.int32)
    zones = zones.copy()
    zones[painted] = 5
    changed = live.change_zones(painted, zones[painted])
    fresh.set_zones(zones)
    assert np.abs(live.zones - fresh.zones).max() < 0.02
    assert set(painted) <= set(changed)
    assert len(changed) < 0.25 * mesh.vertex_count


def test_an_accent_under_the_brush_equals_the_accent_set_anew() -> None:
    mesh = dome_case().surface.mesh
    share = np.zeros(mesh.vertex_count, np.float32)
    live, fresh = ZoneShares(mesh), ZoneShares(mesh)
    live.set_accents({8: share})
    spot = np.flatnonzero(np.linalg.norm(mesh.vertices - (0, 0, 5), axis=1) < 1.2)
    share = share.copy()
    share[spot] = 1.0
    live.change_accent(8, spot.astype(np.int32), share[spot])
    fresh.set_accents({8: share})
    assert np.abs(live.accents - fresh.accents).max() < 0.02
    assert live.accents[:, 1].max() > 0.9
    assert live.accents[:, 0].max() == 0.0


def test_a_number_stands_in_the_middle_of_a_disc() -> None:
    areas = np.zeros((120, 200, 4), np.uint8)
    rows, columns = np.ogrid[:120, :200]
    areas[..., 0] = np.where((rows - 60) ** 2 + (columns - 130) ** 2 < 40**2, 3, 0)
    areas[..., 2] = 128
    (place,) = pill_places(areas, 2.0)
    assert place.number == 3
    assert (place.x, place.y) == pytest.approx((261, 121), abs=4)
    assert place.depth == pytest.approx(128 * 256 / 65535)


def test_numbers_keep_apart_and_small_slivers_get_none() -> None:
    areas = np.zeros((100, 100, 4), np.uint8)
    areas[10:90, 10:50, 0] = 1
    areas[10:90, 50:90, 0] = 2
    areas[10:13, 92:99, 0] = 5  # three pixels high: no room for a number
    areas[20:80, 20:45, 1] = 1  # an accent right under the first number
    places = pill_places(areas, 2.0)
    numbers = [place.number for place in places]
    assert sorted(set(numbers)) == [1, 2, 7]
    spots = np.array([(place.x, place.y) for place in places])
    gaps = np.linalg.norm(spots[:, None] - spots[None], axis=2)[np.triu_indices(len(spots), 1)]
    assert gaps.min() > 20


def test_the_lighter_mesh_is_lighter_and_keeps_its_walls_apart() -> None:
    mesh = refine(dome()[0], 0.12).mesh
    faces = clustered_faces(mesh)
    assert len(faces) < 0.35 * mesh.face_count
    corners = mesh.vertices[faces]
    radius = np.linalg.norm(corners, axis=2)
    # No face may span from the outer (5 mm) to the inner surface (4 mm), but at the rim.
    spanning = np.ptp(radius, axis=1) > 0.5
    assert corners[spanning][:, :, 2].max(initial=0.0) < 0.4
    area = 0.5 * np.linalg.norm(
        np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]), axis=1
    )
    # Closed form: two hemispheres and the ring between them.
    whole = 2 * np.pi * (25 + 16) + np.pi * (25 - 16)
    assert area.sum() == pytest.approx(whole, rel=0.04)
