"""The rosette on paper, from copies of the surface of different fineness."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.app.prediction import predict_case
from stainmap.app.sheets import sheet_data
from stainmap.errors import ReadingError
from stainmap.files.case_file import read_case
from stainmap.paper import rosette_map
from stainmap.paper.paper_copy import PaperCopy
from stainmap.paper.paper_light import paper_operator, paper_shading
from stainmap.paper.unit_map import UnitMap, whole_map
from stainmap.paths import sample_case
from stainmap.planning.flat_views import flat_unit


def test_a_coarser_rosette_shows_the_same_and_stands_in_for_none(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    case = read_case(sample_case("lower_molar_36.stainmap"))
    sheet = sheet_data(predict_case(case))
    copy = PaperCopy.of(case)
    sizes = [mesh.vertex_count for mesh in (copy.coarse.mesh, copy.mesh, case.surface.mesh)]
    assert sizes[0] < 0.7 * sizes[1] < 0.3 * sizes[2]
    operator = paper_operator(copy.mesh)
    whole = whole_map(sheet, copy, paper_shading(operator, copy.coarse), operator)
    refused: list[int] = []

    def only(least: int) -> UnitMap:
        def flat(mesh, *rest):  # type: ignore[no-untyped-def]
            if mesh.vertex_count < least:
                refused.append(mesh.vertex_count)
                raise ReadingError("no disc", advice="")
            return flat_unit(mesh, *rest)

        monkeypatch.setattr(rosette_map, "flat_unit", flat)
        found = rosette_map.Rosettes(whole, copy, case).of(0)
        assert found is not None
        return found

    shares = []
    for least in sizes:
        one = only(least)
        area = one.mesh.vertex_areas
        shares.append(area @ one.fields.zones / area.sum())
    assert refused == [sizes[0], sizes[0], sizes[1]]
    # The zones take the same share of the disc on all three, to two hundredths.
    np.testing.assert_allclose(shares[0], shares[2], atol=0.02)
    np.testing.assert_allclose(shares[1], shares[2], atol=0.02)
