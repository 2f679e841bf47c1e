"""The zones follow the sliders while they move; where a slider comes to rest is one undo step."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QTimer, Signal

from stainmap.app.change import Change
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import CrownView
from stainmap.ui.plate import Plate, link_button
from stainmap.ui.zone_sliders import ZoneSlidersCard
from stainmap.words import listed, translate

if TYPE_CHECKING:
    from stainmap.app.proposing import Sliding
    from stainmap.planning.zoning import ZoneGround

# Keys and wheel move a slider in steps; this long after the last one it has come to rest.
_RESTS_MS = 600
_EDGE_PX, _GAP_PX = 16, 8


@dataclass(slots=True)
class _Work:
    """What is on its way: landmarks, or zones at one position of the sliders."""

    wanted: ZoneSliders | None = None
    running: bool = False
    settling: bool = False


class ZoneSlidersDesk(QObject):
    """Offers the sliders beside the legend of zones and keeps the crown in step with them.

    Parameters
    ----------
    session, view
        The open case, and where it is shown.
    runner
        Runs what takes longer than a frame.
    show_look
        Colours the crown by something else.
    parent
        The window.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(
        self,
        session: Session,
        view: CrownView,
        runner: JobRunner,
        show_look: Callable[[Look], None],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._session, self._view, self._runner = session, view, runner
        self._show_look = show_look
        self._ground: ZoneGround | None = None
        self._sliding: Sliding | None = None
        self._draft: Case | None = None
        self._is_offered = True
        self._work = _Work()
        self._round = 0
        self.card = ZoneSlidersCard(view)
        self.card.hide()
        self.button = link_button(translate("zone sliders desk", "how far they reach..."))
        self.button.setToolTip(
            translate(
                "zone sliders desk",
                "Sliders: how high the neck climbs, how far the cusps come down",
            )
        )
        # On a plate of its own: a link on the crown's grey would hardly be read.
        self._plate = Plate(view)
        self._plate.body.setContentsMargins(12, 4, 12, 4)
        self._plate.body.addWidget(self.button)
        self._plate.hide()
        self._rest = QTimer(self, singleShot=True, interval=_RESTS_MS)
        self._rest.timeout.connect(self._settle)
        self.button.clicked.connect(self.open)
        self.card.moved.connect(self._move)
        self.card.let_go.connect(self._settle)
        self.card.closed.connect(self.close)
        view.installEventFilter(self)
        view.zone_legend.installEventFilter(self)

    # --- opening and closing -------------------------------------------------------------

    def open(self) -> None:
        """Show the sliders, and the zones they move."""
        case = self._session.case
        if case is None or self._view.is_bare:
            return
        self._show_look(Look.ZONES)
        fronts = [unit.tooth.is_front for unit in case.units]
        self.card.set_kind(front=all(fronts), fissures=not all(fronts))
        self.card.set_sliders(case.sliders)
        self.card.show()
        self._place()
        self._view.keep_clear_of(self.card)
        self.card.neck.slider.setFocus()
        self._begin(case)

    def close(self) -> None:
        """Put the sliders away; where they stand is kept."""
        self._settle()
        self._put_away()
        self._view.setFocus()
        if not self._work.running:
            self._forget()
        self._place()

    def _put_away(self) -> None:
        self.card.hide()
        if self._view.evaded is self.card:
            self._view.keep_clear_of(None)

    @property
    def is_open(self) -> bool:
        """True while the sliders are shown."""
        return not self.card.isHidden()

    def step_back(self) -> bool:
        """Put the sliders away if they are shown; return whether they were."""
        was_open = self.is_open
        if was_open:
            self.close()
        return was_open

    def _forget(self) -> None:
        """Let go of landmarks, which hold as much memory as the crown itself."""
        self._round += 1
        self._ground = self._sliding = self._draft = None
        self._work = _Work()
        self._rest.stop()

    def _begin(self, case: Case) -> None:
        """Find the landmarks of the case, unless they are at hand."""
        from stainmap.app.proposing import Sliding, zone_ground_of  # noqa: PLC0415

        if self._ground is not None and self._ground.reading is case.reading:
            self._sliding = Sliding(case, self._ground)
            self.card.set_ready(True)
            return
        self._forget()
        this, shape = self._round, self._session.shape
        operator = None if shape is None or shape.mesh is not case.surface.mesh else shape.operator
        self.card.set_ready(
            False, translate("zone sliders desk", "finding grooves, ridges and walls")
        )

        def done(ground: ZoneGround) -> None:
            if this != self._round:
                return
            self._ground = ground
            self._work.running = False
            now = self._session.case
            if not self.is_open or now is None:
                self._forget()
            elif now.reading is ground.reading:
                self._sliding = Sliding(now, ground)
                self.card.set_ready(True)

        def failed(error: StainmapError) -> None:
            if this == self._round:
                self._work.running = False
                self.card.set_ready(False, error.message)
                self.said.emit(str(error))

        self._work.running = True
        self._runner.start(
            translate("zone sliders desk", "Finding landmarks"),
            lambda progress: zone_ground_of(case, operator, progress),
            on_done=done,
            on_failed=failed,
        )

    # --- the hand speaks -----------------------------------------------------------------

    def _move(self, sliders: ZoneSliders) -> None:
        """Show the zones at these sliders as soon as they are worked out."""
        self._work.wanted = sliders
        self._rest.start()
        self._draw_next()

    def _settle(self) -> None:
        """Make what the sliders show one step of history."""
        if self.card.is_held:
            return
        self._rest.stop()
        if self._work.running or self._work.wanted is not None:
            self._work.settling = True
            return
        draft, sliding = self._draft, self._sliding
        self._work.settling = False
        self._draft = None
        if draft is None or sliding is None or draft is sliding.case:
            return
        if self._session.case is sliding.case:
            self._session.edit(_label(sliding.case, draft), lambda _case: draft)

    def _draw_next(self) -> None:
        sliding, wanted, work = self._sliding, self._work.wanted, self._work
        if sliding is None or wanted is None or work.running:
            return
        this = self._round
        work.wanted, work.running = None, True

        def done(draft: Case) -> None:
            if this != self._round:
                return
            work.running = False
            if self._sliding is sliding and self._session.case is sliding.case:
                self._draft = draft
                self._show(draft)
            self._carry_on()

        def failed(error: StainmapError) -> None:
            if this == self._round:
                work.running = False
                self.said.emit(str(error))

        self._runner.start(
            translate("zone sliders desk", "Moving borders"),
            lambda progress: sliding.at(wanted, progress),
            on_done=done,
            on_failed=failed,
        )

    def _carry_on(self) -> None:
        """Go on to where the sliders are by now, or come to rest there."""
        if self._work.wanted is not None:
            self._draw_next()
        elif self._work.settling:
            self._settle()
        if not self.is_open and not self._work.running:
            self._forget()

    def _show(self, case: Case) -> None:
        self._view.set_zones(case.zones, {int(mask.accent): mask.share for mask in case.accents})

    # --- the session speaks --------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Follow what else is done to the case: sliders go back with undo, painting is kept."""
        case = self._session.case
        if change.touches("opened", "surface"):
            self._forget()
            self._put_away()
        self._place()
        if case is None or not self.is_open:
            return
        if self._sliding is None or self._sliding.case is case:
            return
        self._work.wanted, self._draft = None, None
        self.card.set_sliders(case.sliders)
        self._begin(case)

    def offer(self, offered: bool) -> None:
        """Show the button beside the legend, or keep it away where zones are to be found."""
        self._is_offered = offered
        self._place()

    # --- places --------------------------------------------------------------------------

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep card and button in their places when view or legend change."""
        if event.type() in (
            QEvent.Type.Resize,
            QEvent.Type.Move,
            QEvent.Type.Show,
            QEvent.Type.Hide,
        ):
            self._place()
        return super().eventFilter(watched, event)

    def _place(self) -> None:
        legend = self._view.zone_legend
        shown = self._is_offered and not legend.isHidden() and self._session.case is not None
        self._plate.setVisible(shown and not self.is_open)
        below = legend.y() + legend.height() + _GAP_PX if shown else _EDGE_PX
        self._plate.setFixedWidth(legend.width())
        self._plate.fit()
        self._plate.move(legend.x(), below)
        self._plate.raise_()
        if self.is_open:
            self.card.fit()
            fits = below + self.card.height() + _EDGE_PX <= self._view.height()
            x = self._view.width() - _EDGE_PX - self.card.width() if fits else _EDGE_PX
            foot = self._view.height() - self.card.height() - _EDGE_PX
            self.card.move(max(x, 0), below if fits else max(foot, 0))
            self.card.raise_()


def _label(before: Case, after: Case) -> str:
    """Say in the words of the trade which border has moved."""
    old, new = before.sliders, after.sliders
    moved = []
    if new.neck_climb != old.neck_climb:
        moved.append(
            translate("zone sliders desk", "let the neck climb {share:.0%}").format(
                share=new.neck_climb
            )
        )
    if new.cusp_descent != old.cusp_descent:
        moved.append(
            translate("zone sliders desk", "let the cusps come down {share:.0%}").format(
                share=new.cusp_descent
            )
        )
    if new.fissure_width != old.fissure_width:
        moved.append(
            translate("zone sliders desk", "make fissures {share:.0%} wide").format(
                share=new.fissure_width
            )
        )
    return listed(moved)
