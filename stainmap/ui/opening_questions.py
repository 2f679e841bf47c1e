"""What is asked about a crown while it is opened or corrected, and the words on the buttons."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.model.crown import BodyKind

OPEN, CANCEL, OTHER = "open a mesh", "cancel", "open another"
THIS_SIDE, CLOSE = "this is the biting side", "close"
SAY_MESIAL = "show where"
SAY_AXIS, IS_RIGHT = "show its biting side", "it is right"
SHOW_PARTS, AS_NAMED = "show where they part", "keep to the teeth named"
CUT = "cut off the crown"
# What is asked; the first two and the last are also where a reading says it is stuck.
MESIAL, AXIS, SCREW = "mesial direction", "occlusal axis", "screw channel"
BUCCAL, PARTS = "buccal direction", "units"
ASKED_ON_THE_CROWN = (MESIAL, AXIS)
NO_CROWN = {
    BodyKind.NOT_A_CROWN: "This is not a crown",
    BodyKind.ROOTED_TOOTH: "This is a tooth with its root",
    BodyKind.JAW: "This is a jaw, not a crown",
    BodyKind.SEVERAL_BODIES: "These are several bodies",
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
        title="Where is mesial?",
        text="Click the side of the crown that faces the midline. The right button turns it.",
    ),
    BUCCAL: Question(
        title="Where is its outer side?",
        text="Click the side that faces cheek or lips. The right button turns the crown.",
    ),
    SCREW: Question(
        title="Where does the screw leave?",
        text="Click the middle of the channel's mouth. It runs along the axis of the bite.",
    ),
    AXIS: Question(
        title="Which way does it bite?",
        text="Turn the crown until you look straight onto its biting side.",
        buttons=(THIS_SIDE, CANCEL),
        picks=False,
    ),
}
