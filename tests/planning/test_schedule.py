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
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.bench_order import order_remarks
from stainmap.planning.schedule import (
    RunStage,
    coats_to_paint,
    drying,
    drying_minutes,
    mixing_minutes,
    painting_minutes,
    run_strip,
    sintering_minutes,
)
from stainmap.planning.tray_run import tray_run
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
    assert dry[0].minutes == drying_minutes(2, bridge=True) > drying_minutes(2)


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


# --- several units, furnaces that dry, trays --------------------------------------------------


def two_units(case: Case) -> Case:
    """Return the case as a bridge of two, cut through the middle."""
    left = case.surface.mesh.vertices[:, 0] > 0.01
    return replace(
        case,
        units=(Unit(tooth=Tooth(number=36)), Unit(tooth=Tooth(number=37))),
        reading=replace(case.reading, unit_index=left.astype(np.uint8)),
    )


def many_units(case: Case, count: int) -> Case:
    units = tuple(Unit(tooth=Tooth(number=11 + k)) for k in range(count))
    around = np.arange(case.surface.mesh.vertex_count) % count
    reading = replace(case.reading, unit_index=around.astype(np.uint8))
    return replace(case, units=units, reading=reading)


def with_own_drying(case: Case, minutes: float) -> Case:
    own = replace(case.materials.programme(case.programme), own_drying_minutes=minutes)
    return replace(case, materials=replace(case.materials, programmes=(own,)))


def test_one_single_unit_dries_ten_minutes_at_200_fahrenheit(case: Case) -> None:
    # Common practice, no published source.
    dried = drying(case)
    assert dried.minutes == 10.0
    assert dried.temperature_c == pytest.approx(93.3, abs=0.05)
    assert not dried.in_furnace


def test_while_one_unit_soaks_others_are_painted(case: Case) -> None:
    # 7 rounds: two minutes with one unit or two, as many minutes as units beyond.
    assert painting_minutes(case) == 14.0
    assert painting_minutes(two_units(case)) == 14.0
    assert painting_minutes(many_units(case, 4)) == 28.0


def test_a_furnace_with_its_own_drying_stage_dries_as_long_as_it_says(case: Case) -> None:
    dried = drying(with_own_drying(case, 25.0))
    assert (dried.minutes, dried.temperature_c, dried.in_furnace) == (25.0, None, True)
    (part,) = [p for p in run_strip(with_own_drying(case, 25.0), START) if p.stage is RunStage.DRY]
    assert (part.minutes, part.programme) == (25.0, "slow")
    with pytest.raises(CatalogueError, match="dries for 0 minutes"):
        with_own_drying(case, 0.0)


def test_a_tray_of_one_is_the_run_of_its_case(case: Case) -> None:
    tray = tray_run([case], len(case.plan.jars), START)
    assert tray.parts == run_strip(case, START)
    assert tray.remarks == ()
    assert tray.firings[0].ready == tray.parts[-1].end


def test_a_tray_of_three_by_hand(case: Case) -> None:
    # Brush: 7 rounds of a minute for each of 3; drying 10 + 5 + 5; jars 2 + 2 x 2.
    tray = tray_run([replace(case, code=f"T-{k}") for k in range(3)], 2, START)
    assert [part.minutes for part in tray.parts] == [6.0, 21.0, 20.0, 240.0, 180.0]


def test_units_that_need_different_programmes_are_fired_apart_and_said_so(case: Case) -> None:
    quick = replace(programme((1500, 60), (200, 40)), name="quick")
    other = replace(
        case,
        code="T-2",
        programme="quick",
        materials=replace(case.materials, programmes=(quick,)),
    )
    tray = tray_run([case, other], 2, START)
    assert [(firing.programme.name, firing.codes) for firing in tray.firings] == [
        ("slow", ("T-0001",)),
        ("quick", ("T-2",)),
    ]
    assert "2 firings" in tray.remarks[0]
    assert "slow: T-0001; quick: T-2" in tray.remarks[0]
    first, second = tray.firings
    assert (second.ready - first.ready).total_seconds() == 100 * 60
    # The same name for another curve is no less another programme.
    named_alike = replace(
        other,
        programme="slow",
        materials=replace(case.materials, programmes=(replace(quick, name="slow"),)),
    )
    tray = tray_run([case, named_alike], 2, START)
    assert len(tray.firings) == 2
    assert any("are called" in remark for remark in tray.remarks)


def test_forty_units_on_one_tray_are_said_to_be_many_and_still_planned(case: Case) -> None:
    tray = tray_run([replace(case, code=f"T-{k}") for k in range(40)], 2, START)
    assert len(tray.parts) == 5
    assert any(remark.startswith("40 units in one firing") for remark in tray.remarks)
    long_day = tray_run([case] * 80, 2, START)
    assert any("longer than a mixed jar is kept" in remark for remark in long_day.remarks)


# --- order ------------------------------------------------------------------------------------


def in_order(case: Case, *areas: Area) -> Case:
    steps = tuple(
        Step(jar=1, areas=(AreaCoats(area=area, coats=CoatSpan.exactly(1)),)) for area in areas
    )
    return replace(case, plan=replace(case.plan, steps=steps))


def test_the_usual_order_has_no_remark(case: Case) -> None:
    usual = (
        Zone.INNER,
        Zone.CERVICAL,
        Zone.BODY,
        Zone.CUSP,
        Accent.MARGINAL_RIDGE,
        Zone.FISSURE,
        Accent.LINE_ANGLE,
        Accent.MARGIN_BAND,
        Zone.BODY,
    )
    assert order_remarks(in_order(case, *usual)) == ()


def test_an_order_that_differs_is_named_step_by_step(case: Case) -> None:
    remarks = order_remarks(in_order(case, Zone.CUSP, Zone.INNER, Accent.LINE_ANGLE, Zone.CERVICAL))
    assert [remark.split(";")[0] for remark in remarks] == [
        "Step 2 paints 'inner surface' after step 1 painted 'cusp'",
        "Step 4 paints 'cervical' after step 3 painted 'line angle'",
    ]


def test_a_base_over_everything_is_no_accent(case: Case) -> None:
    base = Step(
        jar=1,
        areas=tuple(
            AreaCoats(area=area, coats=CoatSpan.exactly(1)) for area in (Zone.CERVICAL, Zone.CUSP)
        ),
    )
    inside = Step(jar=1, areas=(AreaCoats(area=Zone.INNER, coats=CoatSpan.exactly(1)),))
    assert order_remarks(replace(case, plan=replace(case.plan, steps=(base, inside)))) == ()
