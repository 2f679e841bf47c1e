"""What is asked on the crown itself: where mesial is, which side bites, where units part."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from stainmap.app import edits
from stainmap.app.session import Session
from stainmap.errors import PlanError
from stainmap.surface.picking import Hit
from stainmap.ui.answers import answers_of
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_view import CrownView, PointerTask
from stainmap.ui.cut_tool import CutTool
from stainmap.ui.flow_cards import FlowCards
from stainmap.ui.opening_questions import (
    AXIS,
    BUCCAL,
    CANCEL,
    MESIAL,
    PARTS,
    QUESTIONS,
    SCREW,
)
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.opening import Answers


class CrownQuestions(FlowCards):
    """Asks for places and directions on the crown, and reads it again with what was said.

    The crown is the open one, or a mesh on its way to being one: then `_answers` holds what has
    been said about it.
    """

    def __init__(self, session: Session, view: CrownView, desk: CrownDesk, window: QWidget) -> None:
        super().__init__(view, window)
        self._session, self._desk = session, desk
        self._answers: Answers | None = None
        # What the open crown is being read again with.
        self._again: Answers | None = None
        self._places: list[tuple[float, float, float]] = []
        self.cut_tool = CutTool(session, view, desk)
        view.place_chosen.connect(self._take_place)

    @property
    def is_asking(self) -> bool:
        """True while a question waits for its answer on the crown."""
        return bool(self._asking)

    def ask_for_mesial(self) -> None:
        """Ask where mesial is on the open crown, to read it again."""
        self._ask_again(MESIAL)

    def ask_for_bite(self) -> None:
        """Ask which way the open crown bites, to read it again."""
        self._ask_again(AXIS)

    def ask_for_buccal(self) -> None:
        """Ask where the outer side is on the open crown, to read it again."""
        self._ask_again(BUCCAL)

    def ask_for_parts(self) -> None:
        """Ask where the units of the open bridge part, to read it again."""
        if self._session.case is not None and len(self._session.case.units) > 1:
            self._ask_again(PARTS)

    def ask_for_screw_channel(self) -> None:
        """Ask where the channel of a screw leaves the open crown."""
        self._ask_again(SCREW)

    def _ask_again(self, what: str) -> None:
        if self._session.case is not None and not self._aside:
            self._again = None
            self._ask(what)

    def reread(self, answers: Answers) -> None:
        """Read the open crown again; what the shape does not tell is asked on it."""
        self._stop_asking()
        self.message.hide()
        self._again = answers
        self._session.reread(answers)

    def _ask(self, what: str) -> None:
        self.cut_tool.stop()
        self._asking = what
        self._places = []
        self._desk.allow_painting(False)
        if what == PARTS:
            self._view.set_task(PointerTask.ASK)
            self._say_which_part()
            return
        question = QUESTIONS[what]
        if question.picks:
            self._view.set_task(PointerTask.ASK)
        self._say(
            translate("opening questions", question.title),
            translate("opening questions", question.text),
            question.buttons,
        )

    def _say_which_part(self) -> None:
        number, count = len(self._places) + 1, self._count_of_units() - 1
        text = (
            translate(
                "crown questions",
                "Click the connector, where it is narrowest. The right button turns the crown.",
            )
            if count == 1
            else translate(
                "crown questions",
                "Click connector {number} of {count}, where it is narrowest. The right button"
                " turns the crown.",
            ).format(number=number, count=count)
        )
        self._say(
            translate("crown questions", "Where do the units part?"),
            text,
            (CANCEL,),
        )

    def _count_of_units(self) -> int:
        case = self._session.case
        if self._aside and self._answers is not None:
            return len(self._answers.units)
        return 0 if case is None else len(case.units)

    def _take_place(self, hit: Hit) -> None:
        from stainmap.app.said import mesial_of_buccal  # noqa: PLC0415

        if self._asking == SCREW:
            self._put_screw_channel(hit)
        mesh = self._view.mesh
        if mesh is None or self._asking not in (MESIAL, BUCCAL, PARTS):
            return
        if self._asking == PARTS:
            self._take_part(hit)
            return
        low, high = mesh.vertices.min(axis=0), mesh.vertices.max(axis=0)
        x, y, z = (float(v) for v in hit.position - 0.5 * (low + high))
        case = self._session.case
        if self._asking == MESIAL:
            self._answer(mesial=(x, y, z))
        elif case is not None:
            try:
                self._answer(mesial=mesial_of_buccal(case, (x, y, z)))
            except PlanError:
                self._say(
                    translate("crown questions", "Where is its outer side?"),
                    translate("crown questions", "That is its biting side."),
                    (CANCEL,),
                )

    def _take_part(self, hit: Hit) -> None:
        """Note where two units part; with the last of the places, read on."""
        from stainmap.app.said import sintered_per_shown  # noqa: PLC0415

        look, answers, mesh = self._session.look, self._answers, self._view.mesh
        place = hit.position
        if self._aside and look is not None and answers is not None and mesh is not None:
            place = place * sintered_per_shown(look, answers, self._session.materials, mesh)
        self._places.append((float(place[0]), float(place[1]), float(place[2])))
        if len(self._places) < self._count_of_units() - 1:
            self._say_which_part()
        else:
            self._answer(parts=tuple(self._places))

    def _put_screw_channel(self, hit: Hit) -> None:
        self._stop_asking()
        self.message.hide()
        x, y, z = (float(v) for v in hit.position)
        self._session.edit(
            translate("crown questions", "place the screw channel"),
            lambda case: edits.with_screw_channel(case, (x, y, z), hit.vertex),
        )

    def _answer(
        self,
        *,
        mesial: tuple[float, float, float] | None = None,
        axis: tuple[float, float, float] | None = None,
        parts: tuple[tuple[float, float, float], ...] = (),
        as_given: bool = False,
    ) -> None:
        """Go on with what was said: read the mesh, or read the open crown again."""

        def said(before: Answers) -> Answers:
            return replace(
                before,
                mesial=mesial or before.mesial,
                occlusal_axis=axis or before.occlusal_axis,
                neck_places=parts or before.neck_places,
                units_as_given=as_given or bool(parts) or before.units_as_given,
            )

        self._stop_asking()
        self.message.hide()
        look, answers = self._session.look, self._answers
        if look is not None and answers is not None:
            self._answers = said(answers)
            self._session.open_mesh(look, self._answers)
        elif self._session.case is not None:
            self.reread(said(self._again or answers_of(self._session)))

    def _stop_asking(self) -> None:
        if self._asking:
            self._asking = ""
            self._keep_clear()
            self._desk.allow_painting(True)
