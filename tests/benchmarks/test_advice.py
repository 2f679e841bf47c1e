"""All rules of advice take less than a tenth of a second: they run after every stroke."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from stainmap.model.zone import Zone
from stainmap.planning.advice import advise
from tests.benchmarks.measuring import milliseconds
from tests.planning.advice_grounds import base_case, ground_of, painted

pytestmark = pytest.mark.benchmark


def test_advice_on_a_hundred_thousand_vertices(
    record_property: Callable[[str, object], None],
) -> None:
    case = painted(
        base_case(rings=130, around=390),
        ("barley", Zone.BODY, 1),
        ("slate", Zone.CUSP, 2),
        ("amber", Zone.CERVICAL, 2),
        ("barley", Zone.CERVICAL, 2),
        ("ash", Zone.CUSP, 1),
        ("umber", Zone.CERVICAL, 1),
    )
    # Thin on top and with a stump that shows, so that the rules have something to work out.
    backing = replace(case.backings[0], stump="metal")
    case = replace(case, backings=(backing,))
    wall = 0.4 + 0.2 * np.abs(5.0 - case.surface.mesh.vertices[:, 2])
    ground = ground_of(case, wall_mm=wall)
    assert ground.mesh.vertex_count > 100_000
    assert len(advise(ground)) >= 4
    # A copy has worked nothing out yet, but has the places that are kept between predictions.
    taken = milliseconds(lambda: advise(replace(ground)), 100.0, repeats=2)
    record_property("advice_ms", taken)
    assert taken <= 100.0
