"""The kinds of exercises there are, what they train, and how one of them is written down."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from stainmap.errors import PackError
from stainmap.practice.crown_bridge import MAKEABLE_BRIDGES
from stainmap.practice.crown_solids import MAKEABLE_TEETH
from stainmap.practice.packs import PackedExercise
from stainmap.words import marked, translate

SITTING_MINUTES: Final = 15
"""Length of a sitting; nothing happens when it is over."""
LEVELS: Final = (1, 2, 3)
"""How hard an exercise is: an average crown, half of the spread of individuals, all of it."""


class Kind(StrEnum):
    """What is asked. The word is kept in packs and the lab book; it never changes its meaning."""

    FIND_AREAS = "find areas"
    REACH_SHADE = "reach shade"
    CHOOSE_BLOCK = "choose block"
    LOWER_CUSPS = "lower cusps"
    FEW_JARS = "few jars"
    BRIDGE_APART = "bridge apart"
    DARK_STUMP = "dark stump"
    PAPER_MAP = "paper map"
    FAULT_WRONG_BLOCK = "fault: wrong block"
    FAULT_OVERSTAINED_FISSURE = "fault: overstained fissure"
    FAULT_WHITE_RING = "fault: white ring"
    FAULT_GREEN_CUSP = "fault: green cusp"
    FAULT_FAST_CYCLE = "fault: fast cycle"
    FAULT_DARK_STUMP = "fault: dark stump"
    VALUE_BY_EYE = "value by eye"

    @property
    def is_fault(self) -> bool:
        """True where something went wrong and the trainee says what."""
        return self.value.startswith("fault: ")

    @property
    def is_planned(self) -> bool:
        """True where the answer is a plan or areas on the crown, not a choice."""
        return not self.is_fault and self is not Kind.VALUE_BY_EYE


class Skill(StrEnum):
    """What a trainee gets better at; the word is kept in the lab book."""

    AREAS = "finding areas"
    SHADE = "reaching a shade"
    BLOCK = "choosing the block"
    VALUE = "leading value"
    ECONOMY = "few coats and jars"
    ORDER = "order at the bench"
    COVERAGE = "leaving nothing bare"
    MIXING = "mixing jars"
    FAULTS = "finding faults"
    EYE = "seeing value"


FAULTS: Final = tuple(kind for kind in Kind if kind.is_fault)
KINDS: Final = tuple(kind.value for kind in Kind)

_BACK_TEETH = tuple(number for number in MAKEABLE_TEETH if number % 10 > 3)
_MOLARS = tuple(number for number in MAKEABLE_TEETH if number % 10 > 5)


@dataclass(frozen=True, slots=True, kw_only=True)
class KindFacts:
    """What is known of a kind before any crown is made.

    Parameters
    ----------
    title
        On lists and on paper.
    minutes
        How long it takes somebody who has done it once; assumed.
    skills
        What it trains, most important first.
    teeth
        Units it may be asked of.
    """

    title: str
    minutes: int
    skills: tuple[Skill, ...]
    teeth: tuple[tuple[int, ...], ...]


def _single(numbers: tuple[int, ...]) -> tuple[tuple[int, ...], ...]:
    return tuple((number,) for number in numbers)


_PLANNING = (Skill.SHADE, Skill.COVERAGE, Skill.ORDER, Skill.ECONOMY, Skill.MIXING)

FACTS: Final[dict[Kind, KindFacts]] = {
    Kind.FIND_AREAS: KindFacts(
        title=marked("practice", "Find zones and accents"),
        minutes=12,
        skills=(Skill.AREAS,),
        teeth=_single(_BACK_TEETH),
    ),
    Kind.REACH_SHADE: KindFacts(
        title=marked("practice", "Reach a shade on a given block"),
        minutes=10,
        skills=_PLANNING,
        teeth=_single(MAKEABLE_TEETH),
    ),
    Kind.CHOOSE_BLOCK: KindFacts(
        title=marked("practice", "Choose the block"),
        minutes=4,
        skills=(Skill.BLOCK,),
        teeth=_single(_BACK_TEETH),
    ),
    Kind.LOWER_CUSPS: KindFacts(
        title=marked("practice", "Lower the value of the cusps, not their hue"),
        minutes=6,
        skills=(Skill.VALUE, Skill.SHADE),
        teeth=_single(_BACK_TEETH),
    ),
    Kind.FEW_JARS: KindFacts(
        title=marked("practice", "As few coats and jars as do it"),
        minutes=12,
        skills=(Skill.ECONOMY, Skill.SHADE, Skill.COVERAGE),
        teeth=_single(_BACK_TEETH),
    ),
    Kind.BRIDGE_APART: KindFacts(
        title=marked("practice", "A bridge whose units look apart"),
        minutes=8,
        skills=(Skill.VALUE, Skill.COVERAGE, Skill.SHADE),
        teeth=MAKEABLE_BRIDGES,
    ),
    Kind.DARK_STUMP: KindFacts(
        title=marked("practice", "A crown over a dark stump"),
        minutes=8,
        skills=(Skill.BLOCK, Skill.SHADE),
        teeth=_single(_BACK_TEETH),
    ),
    Kind.PAPER_MAP: KindFacts(
        title=marked("practice", "Read a coat map and paint it in order"),
        minutes=12,
        skills=(Skill.ORDER, Skill.COVERAGE),
        teeth=_single(_BACK_TEETH),
    ),
    Kind.VALUE_BY_EYE: KindFacts(
        title=marked("practice", "Judge differences of value by eye"),
        minutes=8,
        skills=(Skill.EYE,),
        teeth=_single(_MOLARS),
    ),
} | {
    # One title for all of them: it must not tell what went wrong.
    kind: KindFacts(
        title=marked("practice", "What went wrong?"),
        minutes=4,
        skills=(Skill.FAULTS,),
        teeth=_single(_BACK_TEETH),
    )
    for kind in FAULTS
}


def exercise(kind: Kind, seed: int, level: int = 1) -> PackedExercise:
    """Return an exercise of a kind; the seed chooses tooth, individual, shade and plan.

    Parameters
    ----------
    seed
        0 to 2^31 - 1.
    level
        1 to 3, see `LEVELS`.

    Raises
    ------
    PackError
        If seed or level is out of range.
    """
    facts = FACTS[kind]
    made = PackedExercise(
        name=facts.title,
        kind=kind.value,
        seed=seed,
        teeth=facts.teeth[seed % len(facts.teeth)],
        variation=0.5 * (level - 1) if level in LEVELS else 0.0,
        settings={"level": level},
    )
    check_exercise(made)
    return made


def kind_of(packed: PackedExercise) -> Kind:
    """Return the kind of an exercise; raise PackError if this version knows none of that name."""
    try:
        return Kind(packed.kind)
    except ValueError:
        raise PackError(
            translate("practice", "There is no kind of exercise called {kind!r}.").format(
                kind=packed.kind
            ),
            advice=translate(
                "practice", "The pack may be made for another version of the program."
            ),
        ) from None


def level_of(packed: PackedExercise) -> int:
    """Return how hard an exercise is; 1 where nothing is said."""
    level = packed.settings.get("level", 1)
    if isinstance(level, bool) or not isinstance(level, int) or level not in LEVELS:
        raise PackError(
            translate("practice", "The level {level!r} of the exercise '{name}' is none.").format(
                level=level, name=packed.name
            ),
            advice=translate("practice", "Levels are 1, 2 and 3."),
        )
    return level


def check_exercise(packed: PackedExercise) -> None:
    """Refuse, in a sentence, an exercise that this version cannot make.

    Raises
    ------
    PackError
        If its kind or a setting is not known, or the kind is not asked of its teeth.
    """
    facts = FACTS[kind_of(packed)]
    unknown = sorted(set(packed.settings) - {"level"})
    if unknown:
        raise PackError(
            translate(
                "practice",
                "The exercise '{name}' has a setting '{unknown}' that is not known here.",
            ).format(name=packed.name, unknown=unknown[0]),
            advice=translate(
                "practice", "The pack may be made for another version of the program."
            ),
        )
    level_of(packed)
    if packed.teeth not in facts.teeth:
        able = ", ".join("-".join(map(str, teeth)) for teeth in facts.teeth)
        given = "-".join(map(str, packed.teeth))
        raise PackError(
            translate("practice", "'{title}' cannot be asked of tooth {given}.").format(
                title=facts.title, given=given
            ),
            advice=translate("practice", "Choose one of {able}.").format(able=able),
        )
