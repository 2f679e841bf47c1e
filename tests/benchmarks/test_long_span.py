"""A span of 14 units, from the mesh to the mixing list; on demand, by STAINMAP_MORE=1.

The arch is a closed form: beads along a circle, half a million vertices. It is solid; what
matters here is its size and the number of its units.
"""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
from stainmap.app.prediction import predict_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from stainmap.planning.tray_mixing import PaintedCase, tray_mixing
from stainmap.planning.unit_values import unit_values
from stainmap.units import SizeState
from tests.benchmarks.measuring import seconds
from tests.planning.bodies import beads, bent

NUMBERS = (17, 16, 15, 14, 13, 12, 11, 21, 22, 23, 24, 25, 26, 27)

pytestmark = pytest.mark.skipif(
    not os.environ.get("STAINMAP_MORE"), reason="a minute or two of processor time"
)


def write_stl(path: Path) -> None:
    mesh = bent(beads(14, pitch=7.5), 26.0)
    facets = np.zeros(len(mesh.faces), dtype=[("n", "<f4", 3), ("v", "<f4", (3, 3)), ("a", "<u2")])
    facets["v"] = mesh.vertices[mesh.faces]
    path.write_bytes(bytes(80) + np.uint32(len(facets)).tobytes() + facets.tobytes())


def test_fourteen_units_stay_usable(tmp_path: Path) -> None:
    path = tmp_path / "arch.stl"
    write_stl(path)
    answers = Answers(
        units=units_from_numbers(NUMBERS),
        size_state=SizeState.SINTERED,
        block="medium 3Y",
        occlusal_axis=(0.0, 0.0, 1.0),
    )
    case, _ = build_case(look_at_mesh(path), answers, starter_catalogue(), code="A-14")
    assert len(case.units) == 14
    assert len(case.reading.connectors_mm2) == 13
    assert set(np.unique(case.reading.unit_index)) == set(range(14))
    # Equal beads but for the ends.
    size = np.bincount(case.reading.unit_index)
    assert np.ptp(size[1:-1]) < 0.1 * size.mean()
    case = edits.with_added_liquid(case, 0, "barley")
    case = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(1))
    prediction = predict_case(case)
    changed = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(2))
    again = predict_case(changed, previous=prediction)
    values = unit_values(changed, again.unit_outcomes())
    assert len(values) == 14
    inner = [one.lightness for one in values[1:-1]]
    assert np.ptp(inner) < 0.5
    painted = PaintedCase(case=changed, coats=again.coats)
    (jar,) = tray_mixing([painted]).jars
    assert jar.units == 14
    assert jar.need_drops == pytest.approx(2.0 * _need(replace(painted, case=case), prediction))
    assert seconds(lambda: tray_mixing([painted]), 3) < 1.0


def _need(painted: PaintedCase, prediction) -> float:
    one = replace(painted, coats=prediction.coats)
    return tray_mixing([one]).jars[0].need_drops
