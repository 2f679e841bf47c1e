"""Dialogs about the plan's surroundings: furnace, backing, hand, finish, lights, checks."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QDialog, QWidget

from stainmap.app import edits
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.ui import case_figures as figures
from stainmap.ui.asking import ask, while_there
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.form_dialog import ask_number
from stainmap.ui.manual_places import BEHIND
from stainmap.ui.opening_flow import OpeningFlow
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction

_NOT_READY = marked("plan dialogs", "The prediction is not ready yet.")


class PlanDialogs(QObject):
    """Asks, and edits the open case by what was said; every dialog is one undo step.

    Signals
    -------
    said
        A sentence for the status line.
    crowns_asked
        Name of a programme that the crown is to be seen in, beside the chosen one.
    """

    said = Signal(str)
    crowns_asked = Signal(str)

    def __init__(
        self,
        session: Session,
        runner: JobRunner,
        desk: CrownDesk,
        flow: OpeningFlow,
        window: QWidget,
    ) -> None:
        super().__init__(window)
        self._session, self._runner, self._desk = session, runner, desk
        self._flow, self._window = flow, window

    # --- what is edited ------------------------------------------------------------------

    def ask_for_finish(self) -> None:
        """Ask for the finish, and for what is ground away."""
        from stainmap.ui.after_dialog import AfterDialog  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        names = [
            (area, figures.area_name(case, area))
            for area in figures.areas_of(case)
            if isinstance(area, Zone) and area is not Zone.INNER
        ]
        dialog = AfterDialog(case.after_sintering, names, self._window)
        if _accepted(dialog) and dialog.after != case.after_sintering:
            after = dialog.after
            self._edit(
                translate("plan dialogs", "change what is done after sintering"),
                replace(case, after_sintering=after),
            )

    def ask_for_process(self) -> None:
        """Ask whose hand paints, and how liquids go in."""
        from stainmap.ui.process_dialog import ProcessDialog  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        dialog = ProcessDialog(case.process, self._window)
        if _accepted(dialog) and dialog.process != case.process:
            self._edit(
                translate("plan dialogs", "change hand and uptake"),
                edits.with_process(case, dialog.process),
            )

    def ask_for_backings(self) -> None:
        """Ask what lies behind every region of the crown."""
        from stainmap.app.intake import with_stump_known  # noqa: PLC0415
        from stainmap.ui.backing_dialog import BackingDialog, behind_now, units_on_stumps  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        before = behind_now(case)
        names = figures.material_names(case)
        dialog = BackingDialog(
            before, names.stumps, names.cements, self._window, units=units_on_stumps(case)
        )
        if not _accepted(dialog) or (
            dialog.backings == before and case.intake is not None and case.intake.stump_known
        ):
            return
        for old in before:
            if old.of_unit is not None:
                case = edits.without_backing(case, old.region, old.of_unit)
        for new in dialog.backings:
            if new not in before or new.of_unit is not None:
                unit = new.of_unit
                case = edits.with_backing(
                    case, new.region, stump=new.stump, cement=new.cement, unit=unit
                )
                case = edits.with_cement_thickness(case, new.region, new.cement_thickness_mm, unit)
        # Whoever leaves this page with OK has said what lies behind.
        self._edit(translate("plan dialogs", "change what lies behind"), with_stump_known(case))

    def ask_for_height(self) -> None:
        """Ask where in a block of several layers the crown lies."""
        case = self._session.case
        if case is None:
            return
        block = case.materials.block(case.plan.block)
        layers = ", ".join(
            translate("plan dialogs", "{kind} from {bottom:g} mm").format(
                kind=layer.scattering, bottom=layer.bottom_mm
            )
            for layer in block.layers
        )
        height_mm = ask_number(
            self._window,
            translate("plan dialogs", "Height in the block"),
            translate(
                "plan dialogs",
                "Layers of {name}: {layers}.\nLowest point of the crown above the bottom of the "
                "blank, mm milled:",
            ).format(name=block.name, layers=layers),
            case.plan.nesting_height_mm,
            0.0,
            edits.MAX_NESTING_MM,
            1,
            place=BEHIND,
        )
        if height_mm is not None and height_mm != case.plan.nesting_height_mm:
            self._edit(
                translate("plan dialogs", "{height:g} mm above the bottom of the blank").format(
                    height=height_mm
                ),
                edits.with_nesting_height(case, height_mm),
            )

    def ask_for_coupon(self) -> None:
        """Ask what a blank coupon told about the furnace programme."""
        from stainmap.ui.coupon_dialog import CouponDialog  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        dialog = CouponDialog(case, self._window)
        if _accepted(dialog) and dialog.coupon != case.materials.programme(case.programme).coupon:
            changed = edits.with_coupon(case, case.programme, dialog.coupon)
            self._edit(
                translate("plan dialogs", "coupon of {programme}").format(programme=case.programme),
                changed,
            )

    def close_screw_channels(self) -> None:
        """Take all screw channels away."""
        case = self._session.case
        if case is not None and case.screw_channels:
            self._edit(
                translate("plan dialogs", "take the screw channel away"),
                replace(case, screw_channels=()),
            )

    def _edit(self, label: str, changed: Case) -> None:
        self._session.edit(label, lambda _case: changed)

    # --- what is shown -------------------------------------------------------------------

    def compare_furnaces(self) -> None:
        """Show the plan in another furnace programme beside the chosen one."""
        from stainmap.ui.what_if_dialog import WhatIfDialog  # noqa: PLC0415

        prediction = self._ready()
        if prediction is None:
            return
        case = prediction.case
        names = [one.name for one in case.materials.programmes]
        dialog = WhatIfDialog(case.programme, names, self._window)

        def work_out(programme: str) -> None:
            self._runner.start(
                translate("plan dialogs", "Comparing furnaces"),
                lambda _progress: prediction.what_if(programme),
                on_done=while_there(dialog, dialog.set_result),
                on_failed=while_there(dialog, lambda error: dialog.set_problem(str(error))),
            )

        dialog.asked.connect(work_out)
        dialog.crowns_asked.connect(self.crowns_asked)
        dialog.start()
        ask(dialog)

    def show_lights(self) -> None:
        """Show all areas under all lights."""
        from stainmap.ui.lights_dialog import LightsDialog  # noqa: PLC0415

        prediction = self._ready()
        if prediction is None:
            return
        seen = prediction.under_lights()
        areas = {figures.area_name(prediction.case, area): one for area, one in seen.items()}
        ask(LightsDialog(areas, self._session.seen.observer, self._window))

    def check_point(self) -> None:
        """Say how good the fast prediction is where the pointer was last on the crown."""
        from stainmap.predict.point_check import check_point  # noqa: PLC0415 - slow to import

        prediction = self._ready()
        if prediction is None:
            return
        vertex = self._desk.last_vertex
        if vertex is None:
            self.said.emit(translate("plan dialogs", "Point at a place of the crown first."))
            return
        scene = prediction.engine.scene
        try:
            found = check_point(
                prediction.case,
                prediction.ground.shape,
                prediction.ground.coats(scene, prediction.coats),
                vertex,
                light=prediction.seen.light,
                observer=prediction.seen.observer,
            )
        except StainmapError as error:
            self.said.emit(str(error))
            return
        place = figures.place_name(prediction.case, vertex)
        self._flow.tell(
            translate("plan dialogs", "Checked: {place}").format(place=place),
            found.verdict,
            figures.check_details(found),
        )

    def _ready(self) -> Prediction | None:
        prediction = self._session.prediction
        if prediction is None or not self._session.is_up_to_date:
            self.said.emit(translate("plan dialogs", _NOT_READY))
            return None
        return prediction


def _accepted(dialog: QDialog) -> bool:
    return ask(dialog)
