"""What is asked about a crown while it is opened or corrected, and the words on the buttons."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.model.crown import BodyKind
from stainmap.words import marked

# Told by these words which button was pressed; on it they stand in the language that is spoken.
OPEN = marked("opening questions", "open a mesh")
CANCEL = marked("opening questions", "cancel")
OTHER = marked("opening questions", "open another")
THIS_SIDE = marked("opening questions", "this is the biting side")
CLOSE = marked("opening questions", "close")
DETAILS = marked("opening questions", "details")
SAY_MESIAL = marked("opening questions", "show where")
SAY_AXIS = marked("opening questions", "show its biting side")
IS_RIGHT = marked("opening questions", "it is right")
SHOW_PARTS = marked("opening questions", "show where they part")
AS_NAMED = marked("opening questions", "keep to the teeth named")
CUT = marked("opening questions", "cut off the crown")
# What is asked; the first two and the last are also where a reading says it is stuck.
MESIAL, AXIS, SCREW = "mesial direction", "occlusal axis", "screw channel"
BUCCAL, PARTS = "buccal direction", "units"
ASKED_ON_THE_CROWN = (MESIAL, AXIS)
NO_CROWN = {
    BodyKind.NOT_A_CROWN: marked("opening questions", "This is not a crown"),
    BodyKind.ROOTED_TOOTH: marked("opening questions", "This is a tooth with its root"),
    BodyKind.JAW: marked("opening questions", "This is a jaw, not a crown"),
    BodyKind.SEVERAL_BODIES: marked("opening questions", "These are several bodies"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A question that is answered on the crown; `picks` if by a click on it."""

    title: str
    text: str
    buttons: tuple[str, ...] = (CANCEL,)
    picks: bool = True


QUESTIONS = {
    MESIAL: Question(
        title=marked("opening questions", "Where is mesial?"),
        text=marked(
            "opening questions",
            "Click the side of the crown that faces the midline. The right button turns it.",
        ),
    ),
    BUCCAL: Question(
        title=marked("opening questions", "Where is its outer side?"),
        text=marked(
            "opening questions",
            "Click the side that faces cheek or lips. The right button turns the crown.",
        ),
    ),
    SCREW: Question(
        title=marked("opening questions", "Where does the screw leave?"),
        text=marked(
            "opening questions",
            "Click the middle of the channel's mouth. It runs along the axis of the bite.",
        ),
    ),
    AXIS: Question(
        title=marked("opening questions", "Which way does it bite?"),
        text=marked(
            "opening questions", "Turn the crown until you look straight onto its biting side."
        ),
        buttons=(THIS_SIDE, CANCEL),
        picks=False,
    ),
}
