"""Advice at work: the newest prediction's is listed, its place is shown on the crown."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QObject, Signal

from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.model.case import Case
from stainmap.planning.advice_value import Advice, Place
from stainmap.ui import case_figures as figures
from stainmap.ui.advice_panel import AdvicePanel
from stainmap.ui.crown_overlay import Preview
from stainmap.ui.crown_view import CrownView
from stainmap.ui.tool_preview import outline_of
from stainmap.words import translate

# Looked at as steeply as this, "up" is no direction on the screen any more.
_ALONG_THE_AXIS = 0.96


class AdviceDesk(QObject):
    """Keeps the list in step with a session, and marks on the crown what is asked for.

    Signals
    -------
    marked
        `Place` that is marked now, or None.
    """

    marked = Signal(object)

    def __init__(
        self, session: Session, panel: AdvicePanel, view: CrownView, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._session, self._panel, self._view = session, panel, view
        self._shown: Advice | None = None
        panel.show_asked.connect(self.show_or_hide)
        panel.hide_asked.connect(self._put_aside)
        panel.all_asked.connect(self._bring_back)
        self._list()

    @property
    def shown(self) -> Advice | None:
        """Whose place is marked."""
        return self._shown

    def refresh(self, change: Change) -> None:
        """Show what has changed."""
        if change.touches("opened", "surface"):
            self.hide()
        if change.touches("opened", "outcome", "surface", "hidden_advice"):
            self._follow()
            self._list()

    def show_or_hide(self, advice: Advice) -> None:
        """Turn the crown to the place and mark it; take the mark away if it is there already."""
        if advice is self._shown:
            self.hide()
            self._list()
            return
        case = self._session.case
        if case is None or advice.place is None or not self._fits(case, advice.place):
            return
        self._shown = advice
        self._mark(case, advice.place)
        self._turn_to(case, advice.place)
        self._list()

    def hide(self) -> None:
        """Take the mark away."""
        self._shown = None
        self._view.overlay.found = None
        self._view.overlay.update()
        self.marked.emit(None)

    def _all(self) -> tuple[Advice, ...]:
        prediction, case = self._session.prediction, self._session.case
        if prediction is None or case is None or prediction.case.surface is not case.surface:
            return ()
        return prediction.advice

    def _said(self) -> tuple[Advice, ...]:
        """Return what is not hidden in the open case."""
        case = self._session.case
        hidden = () if case is None else case.hidden_advice
        return tuple(one for one in self._all() if one.key not in hidden)

    def _put_aside(self, advice: Advice) -> None:
        """Hide a piece of advice in this case; one undo step."""
        from stainmap.app.advising import with_hidden_advice  # noqa: PLC0415

        self._session.edit(
            translate("advice desk", "hide advice"),
            lambda case: with_hidden_advice(case, advice.key),
        )

    def _bring_back(self) -> None:
        """Show all advice again; one undo step."""
        from stainmap.app.advising import with_all_advice  # noqa: PLC0415

        self._session.edit(translate("advice desk", "show hidden advice"), with_all_advice)

    def _list(self) -> None:
        self._panel.setVisible(self._session.prediction is not None)
        said = self._said()
        self._panel.set_advice(said, self._shown, hidden=len(self._all()) - len(said))

    def _follow(self) -> None:
        """Keep the mark on the same advice of a newer prediction, or take it away with it."""
        old, case = self._shown, self._session.case
        if old is None or case is None:
            return
        same = (one for one in self._said() if one.key == old.key)
        new = next(same, None)
        if new is None or new.place is None:
            self.hide()
            return
        self._shown = new
        self._mark(case, new.place)

    def _mark(self, case: Case, place: Place) -> None:
        inside = np.zeros(case.surface.mesh.vertex_count, dtype=np.bool_)
        inside[place.vertices] = True
        outline = outline_of(case.surface.mesh, inside)
        self._view.overlay.found = Preview(
            pieces=outline.pieces, normals=outline.normals, start=np.array(place.point_mm)
        )
        self._view.overlay.update()
        self.marked.emit(place)

    def _turn_to(self, case: Case, place: Place) -> None:
        directions = figures.directions_of(case)
        toward, up = np.array(place.toward_eye), directions.occlusal
        if abs(toward @ up) > _ALONG_THE_AXIS:
            up = -directions.buccal
        self._view.look_along(toward, up)

    def _fits(self, case: Case, place: Place) -> bool:
        return int(place.vertices[-1]) < case.surface.mesh.vertex_count
