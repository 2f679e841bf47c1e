"""The run strip against sums done by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from itertools import pairwise

import numpy as np
import pytest

from stainmap.errors import CatalogueError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.material import Provenance, Segment, SinteringProgramme
from stainmap.model.plan import AreaCoats, BrushedCoats, CoatSpan, Step, Streaks
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.planning.schedule import (
    RunStage,
    coats_to_paint,
    drying_minutes,
    mixing_minutes,
    run_strip,
    sintering_minutes,
)
from tests.builders import dome_case

START = datetime(2026, 11, 25, 8, 30)  # noqa: DTZ001 - the bench's own clock


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(6, 12)


def programme(*segments: tuple[float, float]) -> SinteringProgramme:
    return SinteringProgramme(
        name="made for this test",
        segments=tuple(Segment(target_c=target, minutes=minutes) for target, minutes in segments),
        scattering_factor=1.0,
        provenance=Provenance.INVENTED,
    )


def test_the_day_of_the_dome_adds_up(case: Case) -> None:
    # Two jars; rounds 2 + 3 + 2 (the upper end of 1-2) at 2 min; one unit; 240 up, 180 down.
    parts = run_strip(case, START)
    assert [(str(part.stage), part.minutes) for part in parts] == [
        ("mix", 6.0),
        ("coats", 14.0),
        ("dry", 10.0),
        ("sinter", 240.0),
        ("cool", 180.0),
    ]
    assert parts[0].start == START
    assert parts[-1].end == datetime(2026, 11, 25, 16, 0)  # noqa: DTZ001


def test_stages_follow_one_another_without_gap(case: Case) -> None:
    parts = run_strip(case, START)
    for one, after in pairwise(parts):
        assert one.end == after.start
        assert (one.end - one.start).total_seconds() == 60 * one.minutes


def test_a_step_takes_as_many_rounds_as_its_busiest_area() -> None:
    step = Step(
        jar=1,
        areas=(
            AreaCoats(area=Zone.BODY, coats=CoatSpan.exactly(1)),
            AreaCoats(area=Zone.CERVICAL, coats=CoatSpan(low=2, high=3)),
        ),
    )
    assert coats_to_paint(step) == 3
    streaked = replace(step, streaks=(Streaks(area=Zone.CUSP, count=3, length_mm=3.0, coats=4),))
    assert coats_to_paint(streaked) == 4
    brushed = BrushedCoats(vertices=np.array([1], np.int32), coats=np.array([4.3], np.float32))
    assert coats_to_paint(replace(streaked, brushed=brushed)) == 5
    assert coats_to_paint(Step(jar=1)) == 0


def test_more_units_dry_longer_and_more_jars_take_longer_to_mix(case: Case) -> None:
    assert drying_minutes(3) > drying_minutes(1)
    assert mixing_minutes(5) > mixing_minutes(2)
    assert mixing_minutes(0) == 0.0
    two = replace(case, units=(*case.units, Unit(tooth=Tooth(number=37))))
    dry = [part for part in run_strip(two, START) if part.stage is RunStage.DRY]
    assert dry[0].minutes == drying_minutes(2)


def test_cooling_is_everything_after_the_last_hold_or_rise() -> None:
    made = programme((900, 100), (900, 30), (1500, 90), (1500, 120), (1100, 50), (200, 80))
    assert sintering_minutes(made) == (340.0, 130.0)
    assert sintering_minutes(programme((1500, 100), (1500, 60))) == (160.0, 0.0)
    # A dip before the peak is no cooling.
    assert sintering_minutes(programme((900, 60), (700, 10), (1500, 90))) == (160.0, 0.0)


@pytest.mark.parametrize("name", [one.name for one in starter_catalogue().programmes])
def test_no_minute_of_a_programme_is_lost(name: str) -> None:
    one = starter_catalogue().programme(name)
    assert sum(sintering_minutes(one)) == pytest.approx(one.minutes)


def test_an_unknown_programme_says_so(case: Case) -> None:
    with pytest.raises(CatalogueError, match="no programme called"):
        run_strip(replace(case, programme="lunch"), START)
