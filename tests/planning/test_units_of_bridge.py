"""Connectors against bodies whose necks are known, and the real bridge of 3.2 mm connectors."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from stainmap.errors import ReadingError
from stainmap.planning.progress import Steps
from stainmap.planning.span import necks_at
from stainmap.planning.units_of_bridge import find_necks, label_units
from stainmap.surface.frame import principal_frame
from stainmap.surface.mesh import TriMesh
from tests.planning.bodies import beads, bent, revolved, turned

SILENT = Steps(None)


@pytest.mark.parametrize("count", [2, 3, 4])
@pytest.mark.parametrize("neck", [1.2, 1.6, 2.0])
def test_necks_of_beads(count: int, neck: float) -> None:
    body, _ = turned(beads(count, neck=neck), seed=count)
    necks = find_necks(body, principal_frame(body), SILENT)
    assert len(necks) == count - 1
    truth = 1.2 * np.pi * neck**2  # an ellipse
    for found in necks:
        # A polygon of 96 corners is 0.07 % smaller.
        assert found.section_mm2 == pytest.approx(truth, rel=0.015)
    label = label_units(body, necks)
    share = np.bincount(label, body.vertex_areas) / body.area
    assert len(share) == count
    assert share == pytest.approx(np.full(count, 1.0 / count), abs=0.06)


def test_slanted_neck_is_measured_across() -> None:
    """A sheared body has necks that slices across its longest direction overrate."""
    body = beads(3, neck=1.6)
    shear = np.tan(np.radians(20.0))
    slanted = TriMesh(body.vertices + np.outer(body.vertices[:, 1], [shear, 0, 0]), body.faces)
    necks = find_necks(slanted, principal_frame(slanted), SILENT)
    assert len(necks) == 2
    # Shearing along x keeps sections at constant x; the smallest one of the slanted cylinder
    # cannot be larger.
    for found in necks:
        assert found.section_mm2 < 1.2 * np.pi * 1.6**2 * 1.01


def test_single_bodies_have_no_neck() -> None:
    for radius in (lambda x: 4.0 + 0.0 * x, lambda x: 3.0 + 1.5 * np.sin(np.pi * x / 12.0)):
        body = revolved(12.0, radius)
        assert find_necks(body, principal_frame(body), SILENT) == ()


@pytest.mark.parametrize("name", ["hollow_46", "solid_46", "solid_14", "solid_11"])
def test_real_crowns_have_no_neck(real: Callable[..., TriMesh], name: str) -> None:
    body = real(name)
    assert find_necks(body, principal_frame(body), SILENT) == ()


@pytest.mark.parametrize("seed", [0, 1])
def test_real_bridge(real: Callable[..., TriMesh], seed: int) -> None:
    body, _ = turned(real("bridge_14_15_16", 0.4), seed)
    necks = find_necks(body, principal_frame(body), SILENT)
    # Round connectors of 3.2 mm, drawn as polygons.
    assert [neck.section_mm2 for neck in necks] == pytest.approx([8.04, 8.04], rel=0.015)
    # The three teeth: a molar and two premolars.
    areas = np.bincount(label_units(body, necks), body.vertex_areas)
    assert min(areas) > 150.0
    assert areas[1] < max(areas), "the molar is at an end"


def test_no_neck_gives_one_unit() -> None:
    body = revolved(12.0, lambda x: 4.0 + 0.0 * x)
    assert not label_units(body, ()).any()


@pytest.mark.parametrize(("count", "radius_mm"), [(4, 24.0), (10, 30.0)])
def test_span_along_an_arch(count: int, radius_mm: float) -> None:
    """Beads on a circle: bending leaves the section at a neck as it is."""
    body, _ = turned(bent(beads(count), radius_mm), seed=count)
    necks = find_necks(body, principal_frame(body), SILENT)
    assert [neck.section_mm2 for neck in necks] == pytest.approx(
        [1.2 * np.pi * 1.6**2] * (count - 1), rel=0.02
    )
    label = label_units(body, necks)
    share = np.bincount(label, body.vertex_areas) / body.area
    assert share == pytest.approx(np.full(count, 1.0 / count), abs=0.05)
    # In order along the arch: what follows each other lies beside each other.
    centres = np.stack([body.vertices[label == k].mean(axis=0) for k in range(count)])
    steps = np.linalg.norm(np.diff(centres, axis=0), axis=1)
    assert steps == pytest.approx(np.full(count - 1, steps.mean()), rel=0.15)


def test_necks_where_a_person_points() -> None:
    """Thick necks that the program takes for none, pointed at on the surface, in any order."""
    straight = beads(3, neck=3.7)
    body, turn = turned(straight, seed=4)
    frame = principal_frame(body)
    assert find_necks(body, frame, SILENT) == ()
    marks = [np.abs(straight.vertices - [x, 3.7, 0.0]).sum(axis=1).argmin() for x in (16.0, 8.0)]
    places = [body.vertices[k] for k in marks]
    necks = necks_at(body, frame, places, measured_on=body)
    truth = 1.2 * np.pi * 3.7**2
    assert [neck.section_mm2 for neck in necks] == pytest.approx([truth, truth], rel=0.02)
    share = np.bincount(label_units(body, necks), body.vertex_areas) / body.area
    assert share == pytest.approx(np.full(3, 1.0 / 3.0), abs=0.06)
    assert abs(float(necks[0].normal @ turn[:, 0])) > 0.99
    with pytest.raises(ReadingError, match="Nothing can be cut"):
        necks_at(body, frame, [places[0] + 30.0 * turn[:, 0]], measured_on=body)
