"""Moving steps in the painting order, and what another order changes, worked out aside."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from stainmap.app import edits
from stainmap.app.change import Change
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.ui.coat_table import CoatTable
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.planning.order_effect import AreaChange, OrderEffect
    from stainmap.planning.outcome import Outcome

# Smaller changes read 0.0.
_NOTHING = 0.05


class OrderDesk(QObject):
    """Moves steps by one undo step each, and says what dE00 the new order makes.

    While a step is dragged the figure for its place of the moment is worked out in a thread of its
    own; after a move it is told from the two predictions.

    Signals
    -------
    said
        A sentence for the status line.
    problem
        A StainmapError from an edit.
    """

    said = Signal(str)
    problem = Signal(object)

    def __init__(
        self, session: Session, table: CoatTable, runner: JobRunner, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._session, self._table, self._runner = session, table, runner
        self._job: Job[OrderEffect] | None = None
        self._asked: tuple[int, int] | None = None
        self._known: dict[tuple[int, int], OrderEffect] = {}
        self._known_of: Prediction | None = None
        self._before: tuple[Outcome, Case, str] | None = None
        table.step_dragged.connect(self._dragged)
        table.step_move_requested.connect(self._move)

    def refresh(self, change: Change) -> None:
        """Say what a move has changed, once it has been predicted."""
        if self._before is None or not change.touches("outcome", "plan", "opened"):
            return
        from stainmap.planning.order_effect import changes  # noqa: PLC0415

        outcome, case, words = self._before
        if self._session.case is not case:
            self._before = None
        elif self._session.is_up_to_date and self._session.outcome is not None:
            self._before = None
            self.said.emit(_sentence(words, changes(outcome, self._session.outcome)))

    # --- moving --------------------------------------------------------------------------

    def _move(self, step: int, to: int) -> None:
        session, case = self._session, self._session.case
        if case is None:
            return
        known = session.outcome if session.is_up_to_date else None
        try:
            moved = edits.with_moved_step(case, step, to)
        except StainmapError as error:
            self.problem.emit(error)
            return
        if moved is case:
            return
        liquid = case.plan.liquid_of(case.plan.steps[step])
        if known is not None:
            self._before = (
                known,
                moved,
                translate("order desk", "Step {step}, {liquid}, is step {to} now").format(
                    step=step + 1, liquid=liquid, to=to + 1
                ),
            )
        session.edit(translate("order desk", "move a step"), lambda _case: moved)

    # --- while it is dragged -------------------------------------------------------------

    def _dragged(self, step: int, to: int) -> None:
        if self._job is not None:
            self._job.cancel()
            self._job = None
        prediction = self._session.prediction
        if step < 0 or to == step or prediction is None or not self._session.is_up_to_date:
            self._asked = None
            self._table.show_order(None if step < 0 else step, to, "")
            return
        self._asked = (step, to)
        if self._known_of is not prediction:
            self._known, self._known_of = {}, prediction
        found = self._known.get((step, to))
        self._table.show_order(step, to, "" if found is None else _short(found))
        if found is not None:
            return
        job = self._runner.start(
            translate("order desk", "Another order"),
            lambda progress: _effect(prediction, step, to, progress),
            on_done=lambda effect: self._found(prediction, effect),
            on_failed=lambda _error: None,
        )
        self._job = None if job.is_finished else job

    def _found(self, prediction: Prediction, effect: OrderEffect) -> None:
        if self._known_of is prediction:
            self._known[effect.step, effect.to] = effect
            if self._asked == (effect.step, effect.to):
                self._table.show_order(effect.step, effect.to, _short(effect))


def _effect(prediction: Prediction, step: int, to: int, progress: Progress) -> OrderEffect:
    # One that is no longer asked for is not worked out.
    from stainmap.planning.order_effect import order_effect  # noqa: PLC0415

    progress(0.0, translate("order desk", "another order"))
    return order_effect(
        prediction.case,
        step,
        to,
        prediction.ground,
        prediction.layout,
        seen=prediction.seen,
        here=prediction.outcome,
        like=prediction.engine,
    )


def _short(effect: OrderEffect) -> str:
    """Return what stands beside a step that is dragged."""
    largest = effect.largest
    if largest is None or largest.de00 < _NOTHING:
        return "dE00 0.0"
    return f"dE00 {largest.de00:.1f}, {largest.label}"


def _sentence(moved: str, areas: tuple[AreaChange, ...]) -> str:
    """Return what a move has changed; `moved` says what was moved where."""
    if not areas or areas[0].de00 < _NOTHING:
        return translate("order desk", "{moved}: no colour changes (dE00 0.0).").format(moved=moved)
    first = areas[0]
    if len(areas) == 1 or areas[1].de00 < _NOTHING:
        return translate(
            "order desk", "{moved}: {label} changes by dE00 {de00:.1f}, nothing else does."
        ).format(moved=moved, label=first.label, de00=first.de00)
    second = areas[1]
    return translate(
        "order desk",
        "{moved}: {first} changes by dE00 {most:.1f}, {second} by {less:.1f}, others by no more.",
    ).format(moved=moved, first=first.label, most=first.de00, second=second.label, less=second.de00)
