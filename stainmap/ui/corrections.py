"""What a person corrects of the reading of the open crown, as the menu "Crown" offers it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from stainmap.app import edits
from stainmap.app.session import Session
from stainmap.model.case import Case
from stainmap.model.tooth import Unit
from stainmap.ui.answers import answers_of
from stainmap.ui.asking import ask
from stainmap.ui.form_dialog import ask_number
from stainmap.ui.manual_places import READ
from stainmap.ui.opening_flow import OpeningFlow
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.ui.reading_rows import Correction

_WALL_MM = (0.3, 4.0)


class Corrections(QObject):
    """Asks, and has the open crown read again or edited.

    Signals
    -------
    margin_wanted
        The margin is to be moved with the brush.
    """

    margin_wanted = Signal()

    def __init__(self, session: Session, flow: OpeningFlow, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._flow, self._window = session, flow, window

    def show_reading(self) -> None:
        """Show how the crown was read, and do about it what is chosen there."""
        from stainmap.app.cutting import is_to_be_cut  # noqa: PLC0415
        from stainmap.app.said import confirmed  # noqa: PLC0415
        from stainmap.ui.reading_dialog import ReadingDialog  # noqa: PLC0415
        from stainmap.ui.reading_rows import body_in_words, reading_rows  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        dialog = ReadingDialog(
            body_in_words(case),
            reading_rows(case),
            case.reading.warnings,
            may_cut=is_to_be_cut(case),
            was_cut="cut" in case.reading.set_by_user,
            parent=self._window,
        )
        if not ask(dialog):
            return
        if dialog.confirmed:
            key = dialog.confirmed
            self._session.edit(
                translate("corrections", "the reading is right"), lambda c: confirmed(c, key)
            )
            self.show_reading()
        elif dialog.wants_cut:
            self._flow.cut_off_the_crown()
        elif dialog.wants_whole:
            self._session.take_whole_file()
        elif dialog.chosen is not None:
            self._correct(dialog.chosen)

    def _correct(self, correction: Correction) -> None:
        from stainmap.ui.reading_rows import Correction  # noqa: PLC0415

        ways = {
            Correction.BITE: self._flow.ask_for_bite,
            Correction.MARGIN: self.margin_wanted.emit,
            Correction.WALL: self.ask_for_wall,
            Correction.PARTS: self._flow.ask_for_parts,
            Correction.TEETH: self.ask_for_teeth,
            Correction.ROLES: self.ask_for_teeth,
            Correction.SECTIONS: self.ask_for_sections,
            Correction.MESIAL: self._flow.ask_for_mesial,
            Correction.BUCCAL: self._flow.ask_for_buccal,
        }
        ways[correction]()

    def ask_for_sections(self) -> None:
        """Ask for the sections of the connectors, as the design or somebody's calliper has them."""
        from stainmap.app.said import CONNECTOR_MM2, with_connectors  # noqa: PLC0415
        from stainmap.ui.reading_rows import connector_names  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        said = []
        for name, section in zip(connector_names(case), case.reading.connectors_mm2, strict=True):
            value = ask_number(
                self._window,
                translate("corrections", "Connectors"),
                translate("corrections", "Section of the connector {name}, mm²:").format(name=name),
                section,
                *CONNECTOR_MM2,
                1,
                place="bridge.md#bridge",
            )
            if value is None:
                return
            said.append(value)
        sections = tuple(said)
        if sections and sections != case.reading.connectors_mm2:
            self._session.edit(
                translate("corrections", "set the sections of the connectors"),
                lambda c: with_connectors(c, sections),
            )

    def ask_for_teeth(self) -> None:
        """Ask which teeth the units are, and read the crown again if that has changed."""
        from stainmap.ui.teeth_dialog import TeethDialog  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        dialog = TeethDialog(case.units, self._window)
        if ask(dialog) and dialog.units != case.units:
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
                neck_places=(),
                units_as_given=False,
                roles_said=len(units) > 1,
            )
        )

    def ask_for_wall(self) -> None:
        """Ask which wall to assume where there is no inner surface."""
        case = self._session.case
        if case is None or case.reading.assumed_wall_mm is None:
            return
        wall_mm = ask_number(
            self._window,
            translate("corrections", "Wall"),
            translate("corrections", "There is no inner surface. Wall to assume, mm:"),
            case.reading.assumed_wall_mm,
            *_WALL_MM,
            2,
            place=READ,
        )
        if wall_mm is not None and wall_mm != case.reading.assumed_wall_mm:
            self._session.edit(
                translate("corrections", "assume a wall of {wall_mm:g} mm").format(wall_mm=wall_mm),
                lambda c: edits.with_assumed_wall(c, wall_mm),
            )

    def propose_again(self) -> None:
        """Propose zones and accents anew from what has been said."""
        if self._session.case is not None:
            self._flow.reread(answers_of(self._session))
