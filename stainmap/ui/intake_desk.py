"""The intake page and what is wanted, at work: asked for, put into the case, draft or not."""

from __future__ import annotations

from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSettings, QTimer, Signal
from PySide6.QtWidgets import QWidget

from stainmap.app import edits
from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case, Region
from stainmap.model.intake import Intake, Shade
from stainmap.model.shade_table import OffsetClass
from stainmap.model.target import DEFAULT_OFFSETS, Offset
from stainmap.model.zone import Area
from stainmap.ui import case_figures as figures
from stainmap.ui.asking import ask
from stainmap.ui.unit_panel import UnitPanel
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.intake import OwnShades
    from stainmap.planning.draft import ThinWall
    from stainmap.ui.intake_dialog import IntakeDialog, IntakeFacts

_CLASS_WORDS = {
    OffsetClass.FRONT: marked("intake desk", "front teeth"),
    OffsetClass.PREMOLAR: marked("intake desk", "premolars"),
    OffsetClass.MOLAR: marked("intake desk", "molars"),
}
_FOLDER = "photograph_folder"
_DRAFT_FIELDS = ("opened", "outcome", "intake", "units", "screw_channels", "reading")


class IntakeDesk(QObject):
    """Asks before planning, and says whether the plan is a draft.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(
        self, session: Session, unit: UnitPanel, settings: QSettings, window: QWidget
    ) -> None:
        super().__init__(window)
        self._session, self._unit, self._settings = session, unit, settings
        self._window = window
        # Beside the settings, where people look for what belongs to this computer.
        self.own_file = Path(settings.fileName()).with_name("shades.toml")
        self._thin: tuple[tuple[object, ...], ThinWall | None] | None = None
        unit.intake_asked.connect(self.ask_for_intake)

    @cached_property
    def shades(self) -> OwnShades:
        """Tabs and usual offsets, read when they are first asked for."""
        from stainmap.app.intake import OwnShades  # noqa: PLC0415

        shades = OwnShades.read(self.own_file)
        if shades.problem is not None:
            self.said.emit(
                translate("intake desk", "{problem} The shipped shades are used.").format(
                    problem=shades.problem
                )
            )
        return shades

    # --- draft or not --------------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Say anew whether the plan is a draft."""
        if change.touches(*_DRAFT_FIELDS):
            case = self._session.case
            known = case is None or (case.intake is not None and case.intake.stump_known)
            self._unit.set_draft("" if known else self.draft)

    @property
    def draft(self) -> str:
        """Why the plan is a draft as long as nobody has named the stump, or empty."""
        from stainmap.planning.draft import draft_sentence, thin_wall  # noqa: PLC0415

        case, shape = self._session.case, self._session.shape
        if case is None or shape is None or shape.mesh is not case.surface.mesh:
            return ""
        key = (shape, case.reading, case.units, case.screw_channels)
        if self._thin is None or self._thin[0] != key:
            # What advice has measured in the background is not measured again here.
            prediction = self._session.prediction
            over = None if prediction is None else prediction.places.over(case)
            self._thin = (key, thin_wall(case, shape.wall_mm, over))
        thin = self._thin[1]
        return "" if thin is None else draft_sentence(thin)

    # --- what is asked -------------------------------------------------------------------

    def ask_for_intake(self) -> None:
        """Show the intake page, and put what was answered into the case as one step."""
        from stainmap.app.intake import (  # noqa: PLC0415
            unit_stumps,
            with_intake,
        )
        from stainmap.ui.intake_dialog import IntakeDialog  # noqa: PLC0415 - slow to import

        case = self._session.case
        if case is None:
            return
        dialog = IntakeDialog(self._facts(case), self.shades.table, self._photograph, self._window)
        dialog.table_asked.connect(lambda: self._show_tabs(dialog))
        if not ask(dialog):
            return
        intake, stump = dialog.intake, dialog.behind.chosen_stump
        own = dialog.behind.unit_stumps
        cement, usual = dialog.cement.currentText(), self.shades.usual(case.units)
        same = intake == (case.intake or Intake())
        backing = case.backing(Region.STUMP)
        behind = (backing.stump, backing.cement, unit_stumps(case))
        if same and (stump, cement, own) == behind:
            return
        try:
            self._session.edit(
                translate("intake desk", "fill in the intake page"),
                lambda c: with_intake(
                    c, intake, stump=stump, cement=cement, unit_stumps=own, usual=usual
                ),
            )
        except StainmapError as error:
            self.said.emit(str(error))

    def ask_for_target(self) -> None:
        """Ask what is wanted, and make it part of the case."""
        from stainmap.planning.targets import offset_class  # noqa: PLC0415
        from stainmap.ui.wanted_dialog import WantedDialog  # noqa: PLC0415 - slow to import

        case = self._session.case
        if case is None:
            return
        areas: tuple[Area, ...] = tuple(offset.area for offset in DEFAULT_OFFSETS)
        names = {area: figures.area_name(case, area) for area in areas}
        tooth_class = offset_class(case.units)
        dialog = WantedDialog(
            case.target,
            names,
            self._window,
            usual=self.shades.usual(case.units),
            class_word=translate("intake desk", _CLASS_WORDS[tooth_class]),
        )
        dialog.usual_asked.connect(lambda offsets: self._keep_usual(tooth_class, offsets))
        # Later: the one dialog has closed by then.
        dialog.intake_asked.connect(lambda: QTimer.singleShot(0, self.ask_for_intake))
        if ask(dialog):
            target = dialog.target
            self._session.edit(
                translate("intake desk", "set what is wanted"),
                lambda c: edits.with_target(c, target),
            )

    def _facts(self, case: Case) -> IntakeFacts:
        from stainmap.app.intake import teeth_beside, unit_stumps  # noqa: PLC0415
        from stainmap.ui.backing_dialog import units_on_stumps  # noqa: PLC0415 - slow to import
        from stainmap.ui.intake_dialog import IntakeFacts  # noqa: PLC0415 - slow to import

        backing = case.backing(Region.STUMP)
        names = figures.material_names(case)
        teeth = case.units[0].tooth.name
        if len(case.units) > 1:
            teeth = translate("intake desk", "bridge of {count} units, {first} to {last}").format(
                count=len(case.units),
                first=case.units[0].tooth.number,
                last=case.units[-1].tooth.number,
            )
        return IntakeFacts(
            title=translate(
                "intake desk",
                "{code}, {teeth}. Nothing here is required; leave out what is not known.",
            ).format(code=case.code, teeth=teeth),
            front=case.units[0].tooth.is_front,
            intake=case.intake or Intake(),
            beside=teeth_beside(case.units),
            stump=backing.stump,
            cement=backing.cement,
            stumps=names.stumps,
            cements=names.cements,
            draft=self.draft,
            units=units_on_stumps(case),
            unit_stumps=unit_stumps(case),
        )

    def _photograph(self, places: list[str], first: str) -> dict[str, Shade]:
        from stainmap.ui.photograph_dialog import PhotographDialog  # noqa: PLC0415 - slow to import

        folder = str(self._settings.value(_FOLDER, "", type=str))
        dialog = PhotographDialog(places, first, folder, self._window)
        accepted = ask(dialog)
        self._settings.setValue(_FOLDER, dialog.folder)
        return dialog.shades if accepted else {}

    def _show_tabs(self, page: IntakeDialog) -> None:
        from stainmap.ui.tab_table_dialog import TabTableDialog  # noqa: PLC0415 - slow to import

        dialog = TabTableDialog(self.shades.table, page)
        if not ask(dialog):
            return
        tabs = dialog.tabs
        if tabs == self.shades.table.tabs:
            return
        try:
            self.shades.keep_tabs(tabs)
        except StainmapError as error:
            self.said.emit(str(error))
            return
        page.set_table(self.shades.table)
        self.said.emit(translate("intake desk", "The table of tabs was changed on this computer."))

    def _keep_usual(self, tooth_class: OffsetClass, offsets: tuple[Offset, ...]) -> None:
        try:
            self.shades.keep_offsets(tooth_class, offsets)
        except StainmapError as error:
            self.said.emit(str(error))
            return
        self.said.emit(
            translate("intake desk", "Kept as the usual offsets of {class_words}.").format(
                class_words=translate("intake desk", _CLASS_WORDS[tooth_class])
            )
        )
