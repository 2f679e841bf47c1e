"""What a person corrects of the reading of the open crown, as the menu "Crown" offers it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QInputDialog, QWidget

from stainmap.app import edits
from stainmap.app.session import Session
from stainmap.model.case import Case
from stainmap.model.tooth import Unit
from stainmap.ui.answers import answers_of
from stainmap.ui.opening_flow import OpeningFlow
from stainmap.ui.teeth_dialog import TeethDialog

_WALL_MM = (0.3, 4.0)


class Corrections(QObject):
    """Asks, and has the open crown read again or edited."""

    def __init__(self, session: Session, flow: OpeningFlow, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._flow, self._window = session, flow, window

    def ask_for_teeth(self) -> None:
        """Ask which teeth the units are, and read the crown again if that has changed."""
        case = self._session.case
        if case is None:
            return
        dialog = TeethDialog(case.units, self._window)
        if dialog.exec() == TeethDialog.DialogCode.Accepted and dialog.units != case.units:
            self._read_as(case, dialog.units)

    def _read_as(self, case: Case, units: tuple[Unit, ...]) -> None:
        """Read the crown again as other teeth, the way it stands being known."""
        if not units:
            return
        old, new = case.units[0].tooth, units[0].tooth
        # Mesial is that of the first unit; on the other side of the mouth it points elsewhere.
        same_side = old.quadrant % 2 == new.quadrant % 2 and len(units) == len(case.units)
        self._flow.reread(
            replace(
                answers_of(self._session),
                units=units,
                occlusal_axis=case.reading.occlusal_axis,
                mesial=case.reading.mesial if same_side else None,
            )
        )

    def ask_for_wall(self) -> None:
        """Ask which wall to assume where there is no inner surface."""
        case = self._session.case
        if case is None or case.reading.assumed_wall_mm is None:
            return
        wall_mm, said = QInputDialog.getDouble(
            self._window,
            "Wall",
            "There is no inner surface. Wall to assume, mm:",
            case.reading.assumed_wall_mm,
            *_WALL_MM,
            2,
        )
        if said and wall_mm != case.reading.assumed_wall_mm:
            self._session.edit(
                f"assume a wall of {wall_mm:g} mm", lambda c: edits.with_assumed_wall(c, wall_mm)
            )

    def propose_again(self) -> None:
        """Propose zones and accents anew from what has been said."""
        if self._session.case is not None:
            self._flow.reread(answers_of(self._session))
