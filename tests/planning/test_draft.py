"""A plan stays a draft while a thin wall shows what nobody has named."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from stainmap.model.case import Case, ScrewChannel
from stainmap.model.intake import Intake
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.planning.draft import draft_reason, thin_wall, wall_over_stump
from stainmap.predict.shape import crown_shape
from tests.builders import OUTER_RADIUS_MM, dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case()


def wall(case: Case, mm: float) -> NDArray[np.float32]:
    return np.full(len(case.zones), mm, np.float32)


def test_a_thin_wall_without_a_stump_is_a_draft(case: Case) -> None:
    said = draft_reason(case, wall(case, 0.99))
    assert said.startswith("Draft: ")
    assert "thinnest 0.99 mm" in said
    assert "Choose the stump." in said
    assert draft_reason(case, wall(case, 1.0)) == ""
    assert draft_reason(replace(case, intake=Intake(wish="light")), wall(case, 0.99)) == said
    assert draft_reason(replace(case, intake=Intake(stump_known=True)), wall(case, 0.3)) == ""


def test_the_area_is_that_of_the_dome_without_its_lowest_millimetre(case: Case) -> None:
    """A hemisphere's zone above the height that 1 mm of arc reaches: 2 pi R h."""
    thin = thin_wall(case, wall(case, 0.8))
    assert thin is not None
    left_out = OUTER_RADIUS_MM * np.sin(1.0 / OUTER_RADIUS_MM)
    expected = 2.0 * np.pi * OUTER_RADIUS_MM * (OUTER_RADIUS_MM - left_out)
    # Areas belong to vertices, so the border lies within half a ring (0.16 mm) of where it should.
    assert thin.area_mm2 == pytest.approx(expected, rel=0.05)
    assert not (thin.where & ~case.reading.outer).any()


def test_a_thin_margin_alone_is_no_draft(case: Case) -> None:
    height = case.surface.mesh.vertices[:, 2]
    tapering = np.where(height < 0.9, 0.4, 1.2).astype(np.float32)
    assert draft_reason(case, tapering) == ""
    few = wall(case, 1.5)
    few[np.flatnonzero(wall_over_stump(case))[:1]] = 0.5
    assert draft_reason(case, few) == ""


def test_nothing_shows_through_pontics_and_channels(case: Case) -> None:
    pontic = replace(case, units=(Unit(tooth=Tooth(number=36), role=Role.PONTIC),))
    assert draft_reason(pontic, wall(case, 0.5)) == ""
    channel = ScrewChannel(
        unit=0, point_mm=(0.0, 0.0, OUTER_RADIUS_MM), axis=(0.0, 0.0, 1.0), radius_mm=2.0
    )
    screwed = replace(case, screw_channels=(channel,))
    whole, less = thin_wall(case, wall(case, 0.5)), thin_wall(screwed, wall(case, 0.5))
    assert whole is not None
    assert less is not None
    cap = OUTER_RADIUS_MM - np.sqrt(OUTER_RADIUS_MM**2 - 2.0**2)
    expected = 2.0 * np.pi * OUTER_RADIUS_MM * cap
    assert whole.area_mm2 - less.area_mm2 == pytest.approx(expected, rel=0.15)


def test_the_measured_wall_of_the_dome_is_what_is_judged(case: Case) -> None:
    """The dome's wall is 1.0 mm; chords between its points make it a little less, not a draft."""
    shape = crown_shape(case)
    thick = np.nanmedian(shape.wall_mm[case.reading.outer])
    assert thick == pytest.approx(1.0, abs=0.02)
