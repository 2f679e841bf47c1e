"""An exercise ready to be done: what it starts from, what is wanted, and one right answer."""

from __future__ import annotations

import zlib
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from stainmap.errors import PackError, PlanError
from stainmap.model.case import AccentMask, Case, Region
from stainmap.model.zone import Accent, Area, Zone
from stainmap.practice.exercise import FACTS, FAULTS, Kind, check_exercise, kind_of, level_of
from stainmap.practice.exercise_blocks import BlockFit, block_fits, shade_of_block
from stainmap.practice.exercise_crown import Progress, practice_crown, zones_asked
from stainmap.practice.exercise_faults import choices, went_wrong
from stainmap.practice.exercise_plans import (
    COOL,
    DARK,
    LOWERING,
    Row,
    base_of,
    composed,
    few_rows,
    sound_rows,
    wanting,
)
from stainmap.practice.exercise_words import (
    ACCENTS_LATER,
    ACCENTS_TOO,
    WORDS,
    TaskWords,
    front_steps,
)
from stainmap.practice.looking import Looked, Looker
from stainmap.practice.packs import PackedExercise
from stainmap.words import translate

ASKED_ACCENTS: Final = (Accent.MARGIN_BAND, Accent.MARGINAL_RIDGE)
"""Accents that are asked for from level 2 on."""
OPAQUE, CLEAR = "opaque", "clear"
PALE = "light 3Y"
"""A block with a* below zero, on which a cool liquid greens at once."""
SEE_THROUGH, DEEPER = "light 5Y", "medium 5Y"
"""Translucent blocks, behind which a stump shows."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Task:
    """An exercise on a crown.

    Parameters
    ----------
    start
        What the trainee begins with; of a fault, the crown as it went wrong.
    true
        One right answer, never the only one; of a fault, the crown as it was planned.
    looker
        Predicts plans on this crown.
    start_look, true_look
        What both give.
    areas
        Those that count.
    choices
        Of a fault, what it may have been, in the order it is offered in.
    blocks
        Of the choice of a block, how near every block comes to what is wanted.
    """

    packed: PackedExercise
    kind: Kind
    words: TaskWords
    start: Case
    true: Case
    looker: Looker
    start_look: Looked
    true_look: Looked
    areas: tuple[Area, ...]
    choices: tuple[Kind, ...] = ()
    blocks: tuple[BlockFit, ...] = ()

    @property
    def may_choose_block(self) -> bool:
        """True where the block is part of the answer; elsewhere it is milled already."""
        return self.kind in (Kind.CHOOSE_BLOCK, Kind.DARK_STUMP)

    @property
    def may_choose_cement(self) -> bool:
        """True where the cement is part of the answer."""
        return self.kind is Kind.DARK_STUMP

    def judged(self, case: Case) -> Case:
        """Return an answer with what the exercise has given and nobody may change.

        Those are the crown, its stump, furnace, hand and finish; block and cement, too, where they
        are not asked for. Zones, accents and plan are the answer's.

        Raises
        ------
        PlanError
            If the answer is on another crown.
        """
        if case.surface is not self.start.surface:
            raise PlanError(
                translate(
                    "exercise task", "The crown of this exercise was changed or another one opened."
                ),
                advice=translate(
                    "exercise task", "Undo what was done to the crown itself, then hand in."
                ),
            )
        plan, backings = case.plan, self.start.backings
        if not self.may_choose_block:
            plan = replace(plan, block=self.start.plan.block)
        if self.may_choose_cement:
            cement = case.backing(Region.STUMP).cement
            backings = tuple(
                replace(one, cement=cement) if one.region is Region.STUMP else one
                for one in backings
            )
        return replace(
            self.start, zones=case.zones, accents=case.accents, plan=plan, backings=backings
        )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Draft:
    """Start and true answer before anything is looked at."""

    start: Case
    true: Case
    areas: tuple[Area, ...]
    choices: tuple[Kind, ...] = ()
    blocks: tuple[BlockFit, ...] = ()
    true_look: Looked | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Stuff:
    """What every maker of an exercise works with."""

    kind: Kind
    crown: Case
    looker: Looker
    chance: np.random.Generator
    level: int

    @property
    def zones(self) -> tuple[Area, ...]:
        return zones_asked(self.crown)

    def painted(self, rows: Sequence[Row]) -> tuple[Area, ...]:
        """Return the zones, and the accents that these steps paint."""
        there = {mask.accent for mask in self.crown.accents}
        named = {area for _, coats in rows for area, count in coats.items() if count}
        return (*self.zones, *sorted(named & there, key=int))


def make_task(packed: PackedExercise, progress: Progress | None = None) -> Task:
    """Return an exercise ready to be done; the same exercise gives the same task.

    Raises
    ------
    PackError
        If this version cannot make it, or it needs no crown (`Kind.VALUE_BY_EYE`).
    PlanError
        If its seed gives a crown that nothing can be asked of.
    """
    check_exercise(packed)
    kind = kind_of(packed)
    if kind is Kind.VALUE_BY_EYE:
        raise PackError(
            translate("exercise task", "'{title}' is done with patches, not on a crown.").format(
                title=FACTS[kind].title
            )
        )
    crown = practice_crown(packed.teeth, packed.seed, packed.variation, progress)
    stuff = _Stuff(
        kind=kind,
        crown=crown,
        looker=Looker(crown),
        chance=np.random.default_rng([packed.seed, zlib.crc32(kind.value.encode())]),
        level=level_of(packed),
    )
    draft = _MAKERS[kind](stuff)
    look = stuff.looker.look
    true_look = look(draft.true) if draft.true_look is None else draft.true_look
    return Task(
        packed=packed,
        kind=kind,
        words=_words(kind, crown, draft, true_look),
        start=draft.start,
        true=draft.true,
        looker=stuff.looker,
        start_look=look(draft.start),
        true_look=true_look,
        areas=draft.areas,
        choices=draft.choices,
        blocks=draft.blocks,
    )


def _words(kind: Kind, crown: Case, draft: _Draft, true_look: Looked) -> TaskWords:
    """Return the words of a kind, fitted to the crown and with figures of what is wanted."""
    words = WORDS[kind]
    accents = any(isinstance(area, Accent) for area in draft.areas)
    if kind is Kind.FIND_AREAS:
        return replace(words, steps=(*words.steps, ACCENTS_TOO if accents else ACCENTS_LATER))
    if kind in (Kind.REACH_SHADE, Kind.FEW_JARS):
        front = all(unit.tooth.is_front for unit in crown.units)
        return replace(words, steps=front_steps(words.steps)) if front else words
    if kind is Kind.LOWER_CUSPS:
        lightness, a, b = true_look.areas[Zone.CUSP]
        hue = float(np.degrees(np.arctan2(b, a)))
        figures = (("value", f"{lightness:.1f}"), ("hue", f"{hue:.0f}"), ("a", f"{a:+.1f}"))
        return replace(words, figures=figures)
    return words


def _find_areas(stuff: _Stuff) -> _Draft:
    crown = stuff.crown
    there = {mask.accent for mask in crown.accents}
    accents = tuple(one for one in ASKED_ACCENTS if stuff.level >= 2 and one in there)
    blank = np.where(crown.reading.outer, np.uint8(Zone.BODY), np.uint8(Zone.INNER))
    nothing = np.zeros(len(blank), np.float32)
    empty = tuple(AccentMask(accent=one, share=nothing) for one in accents)
    # A plan that knows of all zones gives each of them its row in the table, and its coats as soon
    # as it is painted.
    plan = composed(crown, sound_rows(stuff.chance, 1)).plan
    start = replace(
        crown, zones=blank, proposal=blank, accents=empty, accent_proposal=empty, plan=plan
    )
    asked = tuple(mask for mask in crown.accents if mask.accent in accents)
    true = replace(crown, accents=asked, plan=plan)
    return _Draft(start=start, true=true, areas=(*stuff.zones, *accents))


def _planned(stuff: _Stuff, rows: list[Row]) -> _Draft:
    """Return an exercise that starts bare and wants what these steps give."""
    areas = stuff.painted(rows)
    done = composed(stuff.crown, rows)
    look = stuff.looker.look(done)
    true = wanting(done, look, areas)
    start = replace(true, plan=replace(true.plan, jars=(), steps=()))
    return _Draft(start=start, true=true, areas=areas, true_look=look)


def _reach_shade(stuff: _Stuff) -> _Draft:
    return _planned(stuff, sound_rows(stuff.chance, stuff.level))


def _few_jars(stuff: _Stuff) -> _Draft:
    return _planned(stuff, few_rows(stuff.chance, stuff.level))


def _paper_map(stuff: _Stuff) -> _Draft:
    rows = sound_rows(stuff.chance, stuff.level)
    inside: Row = (rows[0][0], {Zone.INNER: int(stuff.chance.integers(1, 3))})
    return _planned(stuff, [inside, *rows])


def _choose_block(stuff: _Stuff) -> _Draft:
    block, rows = shade_of_block(stuff.crown, stuff.chance)
    done = composed(stuff.crown, rows, block=block)
    look = stuff.looker.look(done)
    true = wanting(done, look, (Zone.BODY,))
    fits = block_fits(true, look, stuff.looker)
    worst = max(fits, key=lambda fit: fit.de00).block
    start = replace(true, plan=replace(true.plan, block=worst, jars=(), steps=()))
    return _Draft(start=start, true=true, areas=(Zone.BODY,), blocks=fits, true_look=look)


def _lower_cusps(stuff: _Stuff) -> _Draft:
    base, on_body = base_of(stuff.chance)
    others: list[Row] = [
        (base, {Zone.CERVICAL: 2, Zone.BODY: on_body, Zone.INTERPROXIMAL: 2, Zone.FISSURE: 1}),
        (DARK, {Zone.FISSURE: 1}),
    ]
    neutral, rosier = (int(stuff.chance.integers(1, 3)) for _ in LOWERING)
    cusps: list[Row] = [
        (LOWERING[0], {Zone.CUSP: neutral}),
        (LOWERING[1], {Zone.CUSP: rosier}),
    ]
    rows = [others[0], *cusps, others[1]]
    done = composed(stuff.crown, rows, block=PALE, more_jars=(COOL,))
    look = stuff.looker.look(done)
    true = wanting(done, look, stuff.zones)
    steps = tuple(step for step in true.plan.steps if step.entry(Zone.CUSP) is None)
    start = replace(true, plan=replace(true.plan, steps=steps))
    return _Draft(start=start, true=true, areas=stuff.zones, true_look=look)


def _bridge_apart(stuff: _Stuff) -> _Draft:
    rows = sound_rows(stuff.chance, 1)
    before = composed(stuff.crown, rows)
    liquid, coats = rows[-1]
    after = composed(stuff.crown, [*rows[:-1], (liquid, {**coats, Accent.CONNECTOR: 1})])
    look = stuff.looker.look(after)
    areas = (*stuff.zones, Accent.CONNECTOR)
    true = wanting(after, look, areas)
    return _Draft(start=replace(before, target=true.target), true=true, areas=areas, true_look=look)


def _dark_stump(stuff: _Stuff) -> _Draft:
    stump = ("discoloured", "titanium base")[int(stuff.chance.integers(2))]
    over = replace(
        stuff.crown,
        backings=tuple(
            replace(one, stump=stump, cement=OPAQUE) if one.region is Region.STUMP else one
            for one in stuff.crown.backings
        ),
    )
    rows = sound_rows(stuff.chance, 1)
    done = composed(over, rows, block=SEE_THROUGH)
    look = stuff.looker.look(done)
    true = wanting(done, look, stuff.zones)
    start = replace(
        true,
        plan=replace(true.plan, block=DEEPER),
        backings=tuple(
            replace(one, cement=CLEAR) if one.region is Region.STUMP else one
            for one in true.backings
        ),
    )
    return _Draft(start=start, true=true, areas=stuff.zones, true_look=look)


def _fault(stuff: _Stuff) -> _Draft:
    # The same block and kind of plan for all faults: neither must tell which one it is.
    rows = sound_rows(stuff.chance, 1, lowering=LOWERING[1])
    done = composed(stuff.crown, rows, block=SEE_THROUGH)
    look = stuff.looker.look(done)
    true = wanting(done, look, stuff.zones)
    return _Draft(
        start=went_wrong(true, stuff.kind, stuff.chance),
        true=true,
        areas=stuff.zones,
        choices=choices(stuff.chance),
        true_look=look,
    )


_MAKERS: Final[dict[Kind, Callable[[_Stuff], _Draft]]] = {
    Kind.FIND_AREAS: _find_areas,
    Kind.REACH_SHADE: _reach_shade,
    Kind.CHOOSE_BLOCK: _choose_block,
    Kind.LOWER_CUSPS: _lower_cusps,
    Kind.FEW_JARS: _few_jars,
    Kind.BRIDGE_APART: _bridge_apart,
    Kind.DARK_STUMP: _dark_stump,
    Kind.PAPER_MAP: _paper_map,
    **dict.fromkeys(FAULTS, _fault),
}
