"""What an exercise asks, in words that suffice to begin: the task, then what to do step by step."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from stainmap.practice.exercise import Kind


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
    """

    title: str
    ask: str
    steps: tuple[str, ...]


_STEPS_OF_COATS = (
    "Outcome shows every area's predicted colour beside the wanted one. They are to become alike.",
    (
        'In Plan press "+ step" and choose a liquid. Bases go nearly everywhere; what lowers value'
        " goes on the cusps; a dark accent into the fissures."
    ),
    (
        "Click a cell of the table (a row is an area, a column a step) and type how many coats: 1,"
        " 2, 3. Delete empties it. The prediction follows at once."
    ),
    "Hand in when the colours are near enough. Undo (Ctrl+Z) takes anything back.",
)
_FAULT_STEPS = (
    (
        "The crown is shown as it came out of the furnace. Hold it against the plan: the button"
        " below (or the key V) changes between the two."
    ),
    (
        "Point at the crown: both colours of the place are read out. Turn it with the right button;"
        " look at thin and thick walls, grooves, borders."
    ),
    "Say what you see, then say what was done wrong, then hand in.",
)

WORDS: Final[dict[Kind, TaskWords]] = {
    Kind.FIND_AREAS: TaskWords(
        title="Find zones and accents",
        ask="So far the whole outside counts as body. Paint the zones of this crown where they"
        " belong: neck (cervical), sides to the neighbours (interproximal), cusps, fissures.",
        steps=(
            (
                "Click the name of a zone in the table of Plan, then paint it on the crown with the"
                " left button. The right button turns, the wheel zooms."
            ),
            (
                "Cervical: a band along the margin, about the lower third of the wall. Cusp: the"
                " upper third of the wall, and the biting surface inside the ridges."
            ),
            (
                "Interproximal: the middle of the two sides that face the neighbours. Fissure: the"
                " main grooves and pits, half a millimetre wide; take a small brush ([ and ])."
            ),
            (
                "Body is what remains. The eraser (E) makes body of what was painted. Half a"
                " millimetre at a border costs nothing."
            ),
        ),
    ),
    Kind.REACH_SHADE: TaskWords(
        title="Reach a shade on a given block",
        ask="The block is milled, the shade is given. Plan the coats that bring every area of the"
        " crown to what is wanted of it.",
        steps=_STEPS_OF_COATS,
    ),
    Kind.CHOOSE_BLOCK: TaskWords(
        title="Choose the block",
        ask="A shade is wanted, nothing is milled yet. Choose the block on which few coats bring"
        " the body to it. Stain only lowers value and adds chroma: it makes nothing lighter.",
        steps=(
            (
                "Outcome shows the body of the bare block beside what is wanted: L* is value, C* is"
                " chroma, h is hue."
            ),
            (
                "At the top of Plan choose another block behind the word Block. All of strength"
                " class 3Y are asked about; the bare crown is shown at once."
            ),
            (
                "Look for one that is a little lighter and a little paler than what is wanted. No"
                " coats need be planned."
            ),
            "Hand in when the block is chosen.",
        ),
    ),
    Kind.LOWER_CUSPS: TaskWords(
        title="Lower the value of the cusps, not their hue",
        ask="Everything is planned but the cusps. Make them darker, as Outcome wants them, and"
        " keep them from turning green: a* must not fall below what is wanted.",
        steps=(
            "The row 'cusp' of Outcome shows what is predicted and what is wanted there.",
            (
                "Three liquids that lower value stand on the tray, none of them used yet: slate is"
                " cooler, ash neutral, heather rosier."
            ),
            (
                "Press \"+ step\" in Plan, choose one of them, click its cell in the row 'cusp' and"
                " type the coats. Two liquids may share the work."
            ),
            "Point at a cusp to read its a*. Leave the other areas alone, then hand in.",
        ),
    ),
    Kind.FEW_JARS: TaskWords(
        title="As few coats and jars as do it",
        ask="Reach the wanted colours with as few jars and as few rounds of painting as you can."
        " A jar more must be worth mixing it.",
        steps=(
            *_STEPS_OF_COATS[:3],
            (
                "Coats of one step on several areas are one round. The same jar may serve neck,"
                " body and fissure with different numbers of coats. Hand in when nothing can be"
                " left out."
            ),
        ),
    ),
    Kind.BRIDGE_APART: TaskWords(
        title="A bridge whose units look apart",
        ask="Three units in one piece look like one long tooth. Set them apart: darken connectors"
        " and embrasures as Outcome wants them, and leave the units as they are.",
        steps=(
            "The bridge is planned; only the row 'connector and embrasure' has nothing of its own.",
            (
                'A warm dark liquid does it best: take the step of umber, or add one with "+ step".'
                " Click its cell in that row and type the coats."
            ),
            (
                "Outcome shows the row's colour beside the wanted one. Too little joins the units,"
                " too much looks like a stain."
            ),
            "Look at the bridge from buccal (B on the crown), then hand in.",
        ),
    ),
    Kind.DARK_STUMP: TaskWords(
        title="A crown over a dark stump",
        ask="The plan was made for a natural stump, but the one below is dark and shows through."
        " Bring the crown back to what is wanted. The stump cannot be changed.",
        steps=(
            (
                "Outcome shows how far the areas are too dark. Coats can only darken: taking some"
                " away helps, but not enough."
            ),
            "At the top of Plan choose another cement: an opaque one covers the stump.",
            (
                "Choose a lighter block there, too, if the crown is still too dark, and give back"
                " coats where it becomes too pale."
            ),
            "Hand in when body and areas are near what is wanted.",
        ),
    ),
    Kind.PAPER_MAP: TaskWords(
        title="Read a coat map and paint it in order",
        ask="A coat map lies at the bench. Enter it as it is to be painted: the same liquids, on"
        " the same areas, as many coats, in the order of the sheet.",
        steps=(
            (
                "Press Show the coat map. Areas have numbers and hatches; the order of the steps"
                " stands on the sheet, with a stroke for every coat."
            ),
            (
                'Add the steps in that order with "+ step", and type the coats of every area into'
                " the column. Accents add to the zone below them."
            ),
            "A step at the wrong place can be dragged to the right one by its head.",
            "Hand in when the table says what the sheet says.",
        ),
    ),
    Kind.VALUE_BY_EYE: TaskWords(
        title="Judge differences of value by eye",
        ask="Two halves of a disc differ in value alone. Say which one is lighter. The difference"
        " shrinks as you go, until you can only just tell: that is your threshold.",
        steps=(
            "Keep the light in the room as it is, and sit as you do at work.",
            "Left arrow or a click on the left half: the left is lighter. Right arrow: the right.",
            "Where you cannot tell, guess: guesses are part of the method.",
            "It ends by itself after 40 to 120 pairs, some minutes. Esc breaks off.",
        ),
    ),
} | {
    kind: TaskWords(
        title="What went wrong?",
        ask="This crown was planned well and came out otherwise. One thing went wrong on the way."
        " Find out which, from the sintered look alone.",
        steps=_FAULT_STEPS,
    )
    for kind in Kind
    if kind.is_fault
}

ACCENTS_TOO: Final = (
    "Accents lie on top of the zones and are asked for, too. Margin band: half a millimetre along"
    " the margin. Marginal ridge: the two crests that close the biting surface towards the"
    " neighbours. Click the name in the table, then paint."
)
"""A further step of finding areas from the second level on."""
