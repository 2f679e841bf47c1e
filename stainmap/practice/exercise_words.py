"""What an exercise asks, in words that suffice to begin: the task, then what to do step by step."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from stainmap.practice.exercise import Kind
from stainmap.words import marked, translate


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskWords:
    """The text of an exercise.

    Parameters
    ----------
    title
        A few words.
    ask
        What is to be reached, one or two sentences.
    steps
        What to do in the window, one after another.
    figures
        Names in braces and what stands for them, where an exercise has figures of its own.
    """

    title: str
    ask: str
    steps: tuple[str, ...]
    figures: tuple[tuple[str, str], ...] = ()

    def spoken(self) -> TaskWords:
        """Return the text in the language that is spoken, its figures filled in."""

        def said(text: str) -> str:
            own = exercise_text(text)
            return own.format(**dict(self.figures)) if self.figures else own

        return replace(
            self,
            title=said(self.title),
            ask=said(self.ask),
            steps=tuple(said(step) for step in self.steps),
            figures=(),
        )


def exercise_text(text: str) -> str:
    """Return a text of an exercise, a fault or a lesson in the language that is spoken."""
    return translate("practice", text)


_BASES_AND_CUSPS = marked(
    "practice",
    'In Plan press "+ step" and choose a liquid. Bases go nearly everywhere; what lowers value'
    " goes on the cusps; a dark accent into the fissures.",
)
_BASES_AND_INCISAL = marked(
    "practice",
    'In Plan press "+ step" and choose a liquid. Bases go nearly everywhere; what lowers value'
    " goes on the incisal edge. A front tooth has no fissures.",
)
_STEPS_OF_COATS = (
    marked(
        "practice",
        "Outcome shows every area's predicted colour beside the wanted one. They are to become"
        " alike.",
    ),
    _BASES_AND_CUSPS,
    (
        marked(
            "practice",
            "Click a cell of the table (a row is an area, a column a step) and type how many"
            " coats: 1,"
            " 2, 3. Delete empties it. The prediction follows at once.",
        )
    ),
    (
        marked(
            "practice",
            "Near enough is 1.0 dE00 and, from the body, 1.0 L* and 1.5 C*. Undo (Ctrl+Z) takes"
            " anything back. Then hand in.",
        )
    ),
)
_FAULT_STEPS = (
    (
        marked(
            "practice",
            "The crown is shown as it came out of the furnace. Hold it against the plan: the button"
            " below (or the key V) changes between the two.",
        )
    ),
    (
        marked(
            "practice",
            "Point at the crown: both colours of the place are read out. Turn it with the right"
            " button;"
            " look at thin and thick walls, grooves, borders.",
        )
    ),
    marked("practice", "Say what you see, then say what was done wrong, then hand in."),
)

WORDS: Final[dict[Kind, TaskWords]] = {
    Kind.FIND_AREAS: TaskWords(
        title=marked("practice", "Find zones and accents"),
        ask=marked(
            "practice",
            "So far the whole outside counts as body. Paint the zones of this crown where they"
            " belong: neck (cervical), sides to the neighbours (interproximal), cusps, fissures.",
        ),
        steps=(
            (
                marked(
                    "practice",
                    "Click the name of a zone in the table of Plan, then paint it on the crown"
                    " with the"
                    " left button. The right button turns, the wheel zooms.",
                )
            ),
            (
                marked(
                    "practice",
                    "Cervical: a band along the margin, about the lower third of the wall. Cusp:"
                    " the"
                    " upper third of the wall, and the biting surface inside the ridges.",
                )
            ),
            (
                marked(
                    "practice",
                    "Interproximal: the middle of the two sides that face the neighbours."
                    " Fissure: the"
                    " main grooves and pits, half a millimetre wide; set the size of the brush"
                    " small.",
                )
            ),
            (
                marked(
                    "practice",
                    "Body is what remains. The eraser (E) makes body of what was painted. Half a"
                    " millimetre at a border costs nothing.",
                )
            ),
        ),
    ),
    Kind.REACH_SHADE: TaskWords(
        title=marked("practice", "Reach a shade on a given block"),
        ask=marked(
            "practice",
            "The block is milled, the shade is given. Plan the coats that bring every area of the"
            " crown to what is wanted of it.",
        ),
        steps=_STEPS_OF_COATS,
    ),
    Kind.CHOOSE_BLOCK: TaskWords(
        title=marked("practice", "Choose the block"),
        ask=marked(
            "practice",
            "A shade is wanted, nothing is milled yet. Choose the block on which few coats bring"
            " the body to it. Stain only lowers value and adds chroma: it makes nothing lighter.",
        ),
        steps=(
            (
                marked(
                    "practice",
                    "Outcome shows the body of the bare block beside what is wanted: L* is"
                    " value, C* is"
                    " chroma, h is hue.",
                )
            ),
            (
                marked(
                    "practice",
                    "At the top of Plan choose another block behind the word Block. All of strength"
                    " class 3Y are asked about; the bare crown is shown at once.",
                )
            ),
            (
                marked(
                    "practice",
                    "Look for one that is a little lighter and a little paler than what is"
                    " wanted. No"
                    " coats need be planned.",
                )
            ),
            marked("practice", "Hand in when the block is chosen."),
        ),
    ),
    Kind.LOWER_CUSPS: TaskWords(
        title=marked("practice", "Lower the value of the cusps, not their hue"),
        ask=marked(
            "practice",
            "Everything is planned but the cusps. Make them darker, as Outcome wants them, and"
            " keep them from turning green: a* must not fall below what is wanted of it.",
        ),
        steps=(
            (
                marked(
                    "practice",
                    "The row 'cusp' of Outcome shows what is predicted there; L* {value} and h"
                    " {hue}"
                    " are wanted. A larger h is greener (a* {a} is wanted; below zero is green).",
                )
            ),
            (
                marked(
                    "practice",
                    "Three liquids that lower value stand on the tray, none of them used yet:"
                    " slate is"
                    " cooler, ash neutral, heather rosier.",
                )
            ),
            (
                marked(
                    "practice",
                    'Press "+ step" in Plan, choose one of them, click its cell in the row'
                    " 'cusp' and"
                    " type the coats. Two liquids may share the work.",
                )
            ),
            (
                marked(
                    "practice",
                    "Leave the other areas alone; the fissures follow by themselves, as light"
                    " spreads."
                    " Hand in when L* and h of the cusps are near enough.",
                )
            ),
        ),
    ),
    Kind.FEW_JARS: TaskWords(
        title=marked("practice", "As few coats and jars as do it"),
        ask=marked(
            "practice",
            "Reach the wanted colours with as few jars and as few coats as you can."
            " A jar more must be worth mixing it.",
        ),
        steps=(
            *_STEPS_OF_COATS[:3],
            (
                marked(
                    "practice",
                    "Coats are counted area by area. The same jar may serve neck, body and fissure"
                    " with different numbers of coats. Hand in when nothing can be left out.",
                )
            ),
        ),
    ),
    Kind.BRIDGE_APART: TaskWords(
        title=marked("practice", "A bridge whose units look apart"),
        ask=marked(
            "practice",
            "Three units in one piece look like one long tooth. Set them apart: darken connectors"
            " and embrasures as Outcome wants them, and leave the units as they are.",
        ),
        steps=(
            marked(
                "practice",
                "The bridge is planned; only the row 'connector and embrasure' has nothing of"
                " its own.",
            ),
            (
                marked(
                    "practice",
                    'A warm dark liquid does it best: take the step of umber, or add one with "+'
                    ' step".'
                    " Click its cell in that row and type the coats.",
                )
            ),
            (
                marked(
                    "practice",
                    "Outcome shows the row's colour beside the wanted one. Too little joins the"
                    " units,"
                    " too much looks like a stain.",
                )
            ),
            marked("practice", "Look at the bridge from buccal (B on the crown), then hand in."),
        ),
    ),
    Kind.DARK_STUMP: TaskWords(
        title=marked("practice", "A crown over a dark stump"),
        ask=marked(
            "practice",
            "The plan was made for a natural stump, but the one below is dark and shows through."
            " Bring the crown back to what is wanted. The stump cannot be changed.",
        ),
        steps=(
            (
                marked(
                    "practice",
                    "Outcome shows how far the areas are too dark. Coats can only darken: taking"
                    " some"
                    " away helps, but not enough.",
                )
            ),
            marked(
                "practice",
                "At the top of Plan choose another cement: an opaque one covers the stump.",
            ),
            (
                marked(
                    "practice",
                    "Choose a lighter block there, too, if the crown is still too dark, and give"
                    " back"
                    " coats where it becomes too pale.",
                )
            ),
            marked(
                "practice",
                "Hand in when body and areas are near what is wanted: 1.0 dE00 is near enough.",
            ),
        ),
    ),
    Kind.PAPER_MAP: TaskWords(
        title=marked("practice", "Read a coat map and paint it in order"),
        ask=marked(
            "practice",
            "A coat map lies at the bench. Enter it as it is to be painted: the same liquids, on"
            " the same areas, as many coats, in the order of the sheet.",
        ),
        steps=(
            (
                marked(
                    "practice",
                    "Press Show the coat map. Areas have numbers and hatches; the order of the"
                    " steps"
                    " stands on the sheet, with a stroke for every coat.",
                )
            ),
            (
                marked(
                    "practice",
                    'Add the steps in that order with "+ step", and type the coats of every area'
                    " into"
                    " the column. Accents add to the zone below them.",
                )
            ),
            marked(
                "practice", "A step at the wrong place can be dragged to the right one by its head."
            ),
            marked("practice", "Hand in when the table says what the sheet says."),
        ),
    ),
    Kind.VALUE_BY_EYE: TaskWords(
        title=marked("practice", "Judge differences of value by eye"),
        ask=marked(
            "practice",
            "Two halves of a disc differ in value alone. Say which one is lighter. The difference"
            " shrinks as you go, until you can only just tell: that is your threshold.",
        ),
        steps=(
            marked("practice", "Keep the light in the room as it is, and sit as you do at work."),
            marked(
                "practice",
                "Left arrow or a click on the left half: the left is lighter. Right arrow: the"
                " right.",
            ),
            (
                marked(
                    "practice",
                    "Where you cannot tell, guess: guesses are part of the method. A finger"
                    " slipped?"
                    " Backspace takes the last answer back.",
                )
            ),
            (
                marked(
                    "practice",
                    "It ends by itself when your threshold is known to a fifth: mostly after 200"
                    " to 500"
                    " pairs, 4 to 8 minutes. You may stop before; it is then less certain.",
                )
            ),
        ),
    ),
} | {
    kind: TaskWords(
        title=marked("practice", "What went wrong?"),
        ask=marked(
            "practice",
            "This crown was planned well and came out otherwise. One thing went wrong on the way."
            " Find out which, from the sintered look alone.",
        ),
        steps=_FAULT_STEPS,
    )
    for kind in Kind
    if kind.is_fault
}

ACCENTS_TOO: Final = marked(
    "practice",
    "Accents lie on top of the zones and are asked for, too. Margin band: half a millimetre along"
    " the margin. Marginal ridge: the two crests that close the biting surface towards the"
    " neighbours. Click the name in the table, then paint.",
)
"""A further step of finding areas from the second level on."""

ACCENTS_LATER: Final = marked(
    "practice", "Accents (margin band, marginal ridges) are asked for from the middle level on."
)
"""The same of the first level."""


def front_steps(steps: tuple[str, ...]) -> tuple[str, ...]:
    """Return the steps of planning coats for a front tooth, which has no cusps and fissures."""
    return tuple(
        translate("practice", _BASES_AND_INCISAL)
        if step == translate("practice", _BASES_AND_CUSPS)
        else step
        for step in steps
    )
