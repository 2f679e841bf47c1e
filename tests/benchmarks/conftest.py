"""Crowns that several measurements share."""

from __future__ import annotations

import pytest

from stainmap.model.case import Case
from stainmap.predict.shape import CrownShape, crown_shape
from tests.benchmarks.painted_crowns import LIQUIDS
from tests.predict.crowns import painted_dome


@pytest.fixture(scope="session")
def crown() -> tuple[Case, CrownShape]:
    """Return a crown of 100,000 vertices."""
    case = painted_dome(LIQUIDS, rings=129)
    shape = crown_shape(case)
    assert shape.mesh.vertex_count > 99_000
    return case, shape
