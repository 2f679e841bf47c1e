"""Exercises: a seed gives the same one, what is asked can be reached, bad ones say so."""

from __future__ import annotations

import os
from dataclasses import replace

import numpy as np
import pytest

from stainmap.errors import PackError, PlanError
from stainmap.model.zone import Zone
from stainmap.planning.bench_order import order_faults
from stainmap.practice import exercise_crown
from stainmap.practice.crown_maker import make_crown
from stainmap.practice.exercise import FACTS, FAULTS, KINDS, Kind, check_exercise, exercise
from stainmap.practice.exercise_crown import practice_crown
from stainmap.practice.exercise_faults import WORDS as FAULT_WORDS
from stainmap.practice.exercise_task import make_task
from stainmap.practice.exercise_words import WORDS
from stainmap.practice.packs import Pack, PackedExercise, pack_bytes, pack_from_bytes
from stainmap.practice.scoring_plan import limit_faults
from tests.practice.practice_tasks import ON_ONE_CROWN, PLANNED, packed, task_of

MORE = bool(os.environ.get("STAINMAP_MORE"))
# One of every way an exercise is made.
SOME = (Kind.FIND_AREAS, Kind.CHOOSE_BLOCK, Kind.PAPER_MAP, Kind.FAULT_WHITE_RING)


def test_every_kind_has_words_and_facts() -> None:
    assert set(FACTS) == set(WORDS) == set(Kind)
    assert set(FAULT_WORDS) == set(FAULTS)
    assert len(FAULTS) == 6
    for words in WORDS.values():
        assert len(words.steps) >= 3
        assert all(text.rstrip().endswith(".") for text in (words.ask, *words.steps))


def test_faults_do_not_give_themselves_away() -> None:
    told = {(WORDS[kind], FACTS[kind].title, FACTS[kind].teeth) for kind in FAULTS}
    assert len(told) == 1
    blocks = {task_of(kind).true.plan.block for kind in FAULTS}
    assert len(blocks) == 1


@pytest.mark.parametrize("kind", ON_ONE_CROWN if MORE else SOME)
def test_an_exercise_is_the_same_every_time(kind: Kind) -> None:
    one, other = task_of(kind), make_task(packed(kind))
    assert one.start.plan == other.start.plan
    assert one.true.plan == other.true.plan
    assert one.choices == other.choices
    assert np.array_equal(one.start.zones, other.start.zones)
    assert np.array_equal(one.start_look.lab, other.start_look.lab)


def test_the_crown_is_made_from_the_seed_alone() -> None:
    case = practice_crown((36,), 3, 0.0)
    made = exercise_crown._made((36,), 3, 0.0, None)
    assert np.array_equal(case.surface.mesh.vertices, made.surface.mesh.vertices)
    assert np.array_equal(case.zones, made.zones)
    assert case.source.sha256 == made.source.sha256


def test_zones_are_those_the_crown_was_made_with() -> None:
    case = practice_crown((36,), 3, 0.0)
    made = make_crown(case.units[0].tooth, seed=3, resolution=exercise_crown.RESOLUTION)
    sizes = case.surface.mesh.vertex_areas
    same = case.zones == made.zones
    assert sizes[same].sum() > 0.99 * sizes.sum()


@pytest.mark.parametrize("kind", PLANNED)
def test_the_true_answer_keeps_to_what_is_usual(kind: Kind) -> None:
    true = task_of(kind).true
    assert limit_faults(true) == ()
    assert order_faults(true) == ()


@pytest.mark.parametrize("seed", range(30 if MORE else 4))
@pytest.mark.parametrize("kind", [Kind.REACH_SHADE, Kind.FEW_JARS, Kind.PAPER_MAP])
def test_drawn_plans_keep_to_what_is_usual_at_every_level(kind: Kind, seed: int) -> None:
    # On the one crown: plans do not depend on it.
    for level in (1, 3):
        made = replace(packed(kind, level), seed=seed, teeth=(36,))
        rows = make_task_on_one_crown(made)
        assert limit_faults(rows) == ()
        assert order_faults(rows) == ()


def make_task_on_one_crown(made: PackedExercise):  # type: ignore[no-untyped-def]
    """Return the true plan of an exercise, laid on the crown there is."""
    import zlib

    from stainmap.practice.exercise_plans import composed, few_rows, sound_rows

    rows_of = few_rows if made.kind == Kind.FEW_JARS.value else sound_rows
    chance = np.random.default_rng([made.seed, zlib.crc32(made.kind.encode())])
    return composed(practice_crown((36,), 3, 0.0), rows_of(chance, int(made.settings["level"])))


def test_faults_are_seen_where_their_words_say() -> None:
    def step(kind: Kind, zone: Zone) -> np.ndarray:
        task = task_of(kind)
        return np.array(task.start_look.areas[zone]) - np.array(task.true_look.areas[zone])

    every = [Zone.CERVICAL, Zone.BODY, Zone.CUSP]
    block = [step(Kind.FAULT_WRONG_BLOCK, zone)[0] for zone in every]
    assert max(block) < -2.0
    fissure = Kind.FAULT_OVERSTAINED_FISSURE
    assert step(fissure, Zone.FISSURE)[0] < -1.5
    assert abs(step(fissure, Zone.BODY)[0]) < 0.1
    ring = task_of(Kind.FAULT_WHITE_RING)
    lighter = ring.start_look.lab[:, 0] - ring.true_look.lab[:, 0] > 1.5
    assert ring.start.surface.mesh.vertex_areas[lighter].sum() > 3.0
    assert step(Kind.FAULT_GREEN_CUSP, Zone.CUSP)[1] < -1.0
    assert abs(step(Kind.FAULT_GREEN_CUSP, Zone.CERVICAL)[1]) < 0.2
    assert min(step(Kind.FAULT_FAST_CYCLE, zone)[0] for zone in every) > 2.0
    stump = [step(Kind.FAULT_DARK_STUMP, zone)[0] for zone in every]
    assert max(stump) < -0.4
    assert stump[0] < 1.3 * stump[1], "the thin wall at the neck shows it most"


def test_accents_are_asked_for_in_words_where_they_count() -> None:
    with_accents, without = task_of(Kind.FIND_AREAS), task_of(Kind.FIND_AREAS, 1)
    assert any("Margin band" in step for step in with_accents.words.steps)
    assert not any("Margin band" in step for step in without.words.steps)
    assert len(with_accents.areas) > len(without.areas)


def test_an_exercise_travels_in_a_pack() -> None:
    made = tuple(exercise(kind, 11, level) for kind in Kind for level in (1, 3))
    pack = Pack(title="all kinds", exercises=made)
    again = pack_from_bytes(pack_bytes(pack), "p", kinds=KINDS, check=check_exercise)
    assert again == pack
    assert len({one.sha256 for one in made}) == len(made)


def test_what_cannot_be_made_is_a_sentence() -> None:
    good = packed(Kind.BRIDGE_APART)
    with pytest.raises(PackError, match="cannot be asked of tooth 36"):
        check_exercise(good)
    with pytest.raises(PackError, match="setting 'colour'"):
        check_exercise(replace(packed(Kind.FEW_JARS), settings={"colour": 3}))
    with pytest.raises(PackError, match="level 7"):
        check_exercise(replace(packed(Kind.FEW_JARS), settings={"level": 7}))
    with pytest.raises(PackError, match="no kind of exercise"):
        check_exercise(replace(packed(Kind.FEW_JARS), kind="juggling"))
    with pytest.raises(PackError, match="seed"):
        exercise(Kind.FEW_JARS, -1)
    with pytest.raises(PackError, match="patches"):
        make_task(exercise(Kind.VALUE_BY_EYE, 1))


def test_a_degenerate_crown_is_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    made = make_crown(task_of(Kind.REACH_SHADE).start.units[0].tooth, seed=3, resolution=0.4)

    def without_fissures(*_all: object, **_named: object) -> object:
        zones = made.zones.copy()
        zones[zones == int(Zone.FISSURE)] = int(Zone.CUSP)
        return replace(made, zones=zones)

    monkeypatch.setattr(exercise_crown, "make_crown", without_fissures)
    with pytest.raises(PlanError, match=r"Seed 99 .* fissure zone has only 0\.0 mm2"):
        practice_crown((36,), 99, 0.0)

    def impossible(*_all: object, **_named: object) -> object:
        raise ValueError("the cavity leaves the crown")

    monkeypatch.setattr(exercise_crown, "make_crown", impossible)
    with pytest.raises(PlanError, match="Take another seed") as told:
        practice_crown((36,), 98, 0.0)
    assert "the cavity leaves the crown" in str(told.value)
