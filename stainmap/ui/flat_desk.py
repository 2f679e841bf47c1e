"""Keeps the flat views in step with the crown: what they show, and what is painted on them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QByteArray, QObject, QSettings, Qt, QTimer, Signal
from PySide6.QtWidgets import QSplitter

from stainmap.app.change import Change
from stainmap.app.job import JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.crown import CrownReading, CrownSurface
from stainmap.model.tooth import Tooth, Unit
from stainmap.paper.views import FLAT_SIDES, CrownDirections, Side
from stainmap.planning.advice_value import Place
from stainmap.surface.picking import Hit
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.flat_marks import SideMark
from stainmap.ui.flat_pane import ONE_BY_ONE, FlatChoice, FlatPane
from stainmap.ui.flat_picture import flat_sheet, side_sheet
from stainmap.ui.flat_view import FlatContent
from stainmap.words import marked, translate, value_word

if TYPE_CHECKING:
    from stainmap.planning.flat_views import FlatPart

FLAT_PX = 230  # height of the pane before anybody has moved its edge
# A few vertices drawn at a false size are not worth a word.
_NOTABLE_SHARE = 0.002
_WAIT, _NOT_YET = (
    marked("flat desk", "being laid flat"),
    marked("flat desk", "here once the crown has been read"),
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Shown:
    """What the contents of the views were made from."""

    surface: CrownSurface
    reading: CrownReading
    units: tuple[Unit, ...]

    def is_of(self, case: Case) -> bool:
        return (
            self.surface is case.surface
            and self.reading is case.reading
            and self.units == case.units
        )


class FlatDesk(QObject):
    """Fills the pane of flat views, and lets what is done on it happen on the crown.

    Nothing is worked out while the pane is hidden.

    Signals
    -------
    switched
        The pane was shown or hidden.
    """

    switched = Signal(bool)

    def __init__(
        self,
        session: Session,
        desk: CrownDesk,
        splitter: QSplitter,
        pane: FlatPane,
        runner: JobRunner,
        settings: QSettings,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        crown = desk.view
        self._session, self._crown, self._desk = session, crown, desk
        self._splitter, self.pane, self._settings = splitter, pane, settings
        self._runner = runner
        self._shown: _Shown | None = None
        # What has been worked out of the crown that is shown, by unit and view.
        self._contents: dict[tuple[int, FlatChoice], FlatContent] = {}
        self._remarks: dict[int, str] = {}
        self._recolour = QTimer(self, singleShot=True, interval=0)
        self._recolour.timeout.connect(self._set_values)
        crown.seen_changed.connect(self._recolour.start)
        crown.seen_changed_at.connect(self._change_at)
        crown.pointed_at.connect(pane.show_pointer)
        crown.task_changed.connect(self._follow_brush)
        pane.chosen.connect(self._choose)
        pane.unit_chosen.connect(lambda _unit: self._fill())
        pane.place_asked.connect(self._change_place)
        pane.brush_resized.connect(crown.brush_resized)
        splitter.splitterMoved.connect(lambda *_: self._remember())
        for view in pane.views.values():
            view.pointed_at.connect(self._pointed)
            view.stroke_began.connect(crown.stroke_began)
            view.stroke_moved.connect(crown.stroke_moved)
            view.stroke_ended.connect(crown.stroke_ended)
            view.stroke_cancelled.connect(crown.stroke_cancelled)
            view.place_chosen.connect(crown.place_chosen)
            view.tool_placed.connect(crown.tool_placed)
        self._restore()

    # --- shown or not --------------------------------------------------------------------

    @property
    def is_on(self) -> bool:
        """True while the pane is shown."""
        return not self.pane.isHidden()

    def switch(self, on: bool) -> None:
        """Show or hide the pane."""
        if on == self.is_on:
            return
        self.pane.setVisible(on)
        self._settings.setValue("flat/on", on)
        if on:
            self._fill()
        self.switched.emit(on)

    def _choose(self, choice: FlatChoice) -> None:
        self._settings.setValue("flat/choice", choice.value)
        self._fill()

    def _change_place(self) -> None:
        """Stand beside the crown, or below it; each place remembers its size."""
        self._stand(Qt.Orientation.Vertical if self._is_beside else Qt.Orientation.Horizontal)
        self._settings.setValue("flat/beside", self._is_beside)

    @property
    def _is_beside(self) -> bool:
        return self._splitter.orientation() == Qt.Orientation.Horizontal

    def _stand(self, orientation: Qt.Orientation) -> None:
        self._splitter.setOrientation(orientation)
        self.pane.set_beside(self._is_beside)
        state = self._settings.value(self._sizes_key)
        if isinstance(state, QByteArray):
            self._splitter.restoreState(state)
        else:
            half = [1000, 1000] if self._is_beside else [600, FLAT_PX]
            self._splitter.setSizes(half)

    @property
    def _sizes_key(self) -> str:
        return "flat/sizes_beside" if self._is_beside else "flat/sizes_below"

    def _remember(self) -> None:
        self._settings.setValue(self._sizes_key, self._splitter.saveState())

    def _restore(self) -> None:
        on = bool(self._settings.value("flat/on", False, type=bool))
        self.pane.setVisible(on)
        name = str(self._settings.value("flat/choice", FlatChoice.ALL.value, type=str))
        if name in set(FlatChoice):
            self.pane.choose(FlatChoice(name))
        beside = bool(self._settings.value("flat/beside", False, type=bool))
        self._stand(Qt.Orientation.Horizontal if beside else Qt.Orientation.Vertical)

    # --- the session speaks --------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Show what has changed of surface, reading or teeth."""
        if change.touches("opened"):
            self._shown = None
        if change.touches("opened", "surface", "reading", "units"):
            self._fill()

    def _fill(self) -> None:
        """Give the views their contents, as far as they are shown."""
        case = self._session.case
        if not self.is_on:
            return
        if case is None or self._crown.is_bare:
            self._shown = None
            for choice in ONE_BY_ONE:
                message = translate("flat desk", _NOT_YET) if choice is FlatChoice.ROSETTE else ""
                self.pane.set_content(choice, None, message)
            return
        if self._shown is None or not self._shown.is_of(case):
            self._shown = _Shown(surface=case.surface, reading=case.reading, units=case.units)
            self._contents, self._remarks = {}, {}
            self.pane.set_units([unit.tooth.number for unit in case.units])
        unit = self.pane.unit
        tooth = case.units[unit].tooth
        directions = CrownDirections.of(case.reading, tooth)
        self.pane.set_words(_words(directions, tooth))
        self._show_sides(case, unit, directions)
        self._show_rosette(case, unit, directions)
        self.pane.share_scale()
        for view in self.pane.shown_views:
            view.build_soon()
        self._follow_brush()
        self._recolour.start()

    def _show_sides(self, case: Case, unit: int, directions: CrownDirections) -> None:
        mesh, tooth = case.surface.mesh, case.units[unit].tooth
        own = (case.reading.unit_index[mesh.faces] == unit).sum(axis=1) >= 2
        for choice in ONE_BY_ONE:
            side = choice.side
            if side is None or (unit, choice) in self._contents or not own.any():
                continue
            towards, up = directions.towards(side), directions.up(side)
            axes = np.stack([np.cross(up, towards), up, towards])
            marks = _side_marks(axes, directions, tooth)
            self._contents[unit, choice] = FlatContent(
                mesh=mesh,
                sheet=side_sheet(mesh, own, axes),
                occlusal=directions.occlusal,
                marks=(marks,),
            )
        for choice in ONE_BY_ONE:
            if choice.side is not None:
                self.pane.set_content(choice, self._contents.get((unit, choice)))

    def _show_rosette(self, case: Case, unit: int, directions: CrownDirections) -> None:
        from stainmap.planning.flat_views import flat_unit  # noqa: PLC0415

        shown = self._shown
        if self.pane.choice not in (FlatChoice.ALL, FlatChoice.ROSETTE):
            return
        self.pane.bar.set_remark(self._remarks.get(unit, ""))
        if (unit, FlatChoice.ROSETTE) in self._contents:
            self.pane.set_content(FlatChoice.ROSETTE, self._contents[unit, FlatChoice.ROSETTE])
            return
        self.pane.set_content(FlatChoice.ROSETTE, None, translate("flat desk", _WAIT))
        mesh, reading, units = case.surface.mesh, case.reading, case.units

        def work(_progress: Progress) -> tuple[FlatPart, ...]:
            return flat_unit(mesh, reading, units, unit)

        def done(parts: tuple[FlatPart, ...]) -> None:
            if shown is self._shown:
                self._lay(case, unit, parts, directions)
                if self.pane.unit == unit:
                    self._show_rosette(case, unit, directions)
                    self._recolour.start()

        def failed(error: StainmapError) -> None:
            if shown is self._shown and self.pane.unit == unit:
                self.pane.set_content(FlatChoice.ROSETTE, None, str(error))

        self._runner.start(
            translate("flat desk", "Laying the crown flat"), work, on_done=done, on_failed=failed
        )

    def _lay(
        self, case: Case, unit: int, parts: tuple[FlatPart, ...], directions: CrownDirections
    ) -> None:
        tooth = case.units[unit].tooth
        marks = tuple(_part_marks(part, directions, tooth) for part in parts)
        self._contents[unit, FlatChoice.ROSETTE] = FlatContent(
            mesh=case.surface.mesh,
            sheet=flat_sheet(parts),
            occlusal=directions.occlusal,
            marks=marks,
        )
        if max(float(part.notable.mean()) for part in parts) > _NOTABLE_SHARE:
            self._remarks[unit] = translate(
                "flat desk", "ruled: drawn more than twice, or less than half, its size"
            )

    # --- advice --------------------------------------------------------------------------

    def mark(self, place: Place | None) -> None:
        """Mark what advice is about, on its own unit; None takes the mark away."""
        case = self._session.case
        inside, middle = None, 0
        if place is not None and case is not None:
            mesh = case.surface.mesh
            away = mesh.vertices[place.vertices] - np.array(place.point_mm)
            middle = int(place.vertices[int(np.einsum("ij,ij->i", away, away).argmin())])
            inside = np.zeros(mesh.vertex_count, dtype=np.bool_)
            inside[place.vertices] = True
            if self.is_on:
                self.pane.choose_unit(int(case.reading.unit_index[middle]))
        for view in self.pane.views.values():
            view.show_found(inside, middle)

    # --- colours -------------------------------------------------------------------------

    def _set_values(self) -> None:
        if self.is_on:
            if self._crown.is_bare == (self._shown is not None):
                self._fill()
            values = self._crown.seen_values
            for view in self.pane.views.values():
                view.set_values(values)

    def _change_at(self, vertices: NDArray[np.int32]) -> None:
        values = self._crown.seen_values
        if self.is_on and values is not None:
            for view in self.pane.shown_views:
                view.change_at(values, vertices)

    # --- the pointer ---------------------------------------------------------------------

    def _pointed(self, hit: Hit | None) -> None:
        self.pane.show_pointer(hit)
        self._crown.show_pointer(hit)
        self._desk.read(hit, from_afar=True)

    def _follow_brush(self) -> None:
        for view in self.pane.views.values():
            view.set_task(self._crown.task, self._crown.ring_mm)


def _words(directions: CrownDirections, tooth: Tooth) -> dict[FlatChoice, str]:
    """Return the names of the views on a tooth."""
    words = {
        choice: value_word(directions.word(choice.side, tooth))
        for choice in FlatChoice
        if choice.side is not None
    }
    words[FlatChoice.ROSETTE] = value_word(FlatChoice.ROSETTE)
    if tooth.is_front:
        words[FlatChoice.ROSETTE] = translate("flat desk", "{front} and {back}").format(
            front=value_word(tooth.buccal_word), back=value_word(tooth.lingual_word)
        )
    return words


def _letter(word: str) -> str:
    """Return what stands for a side where there is no room for its name."""
    return {"labial": "La", "lingual": "Li"}.get(word, word[0].upper())


def _side_marks(
    axes: NDArray[np.float64], directions: CrownDirections, tooth: Tooth
) -> tuple[SideMark, ...]:
    """Return what lies left and right of a view, and below where it looks onto the bite."""
    if not directions.sides_known:
        return ()
    marks = []
    for side in FLAT_SIDES:
        x, y = axes[:2] @ directions.towards(side)
        if np.hypot(x, y) > 0.9:
            word = value_word(directions.word(side, tooth))
            marks.append(SideMark(word=word, angle=float(np.arctan2(y, x)), letter=_letter(word)))
    return tuple(mark for mark in marks if abs(np.cos(mark.angle)) > 0.5 or len(marks) > 2)


def _part_marks(part: FlatPart, directions: CrownDirections, tooth: Tooth) -> tuple[SideMark, ...]:
    """Return what lies around a disc."""
    from stainmap.planning.flat_views import FlatName, Towards  # noqa: PLC0415

    marks = []
    for towards, angle in part.marks.items():
        if towards is Towards.CERVICAL:
            word = "neck"
        elif not directions.sides_known and towards is not Towards.OCCLUSAL:
            continue
        else:
            word = value_word(directions.word(Side(towards.value), tooth))
        if part.name is not FlatName.ROSETTE and towards is Towards.OCCLUSAL:
            # The two halves meet there.
            word = value_word(tooth.occlusal_word)
        marks.append(SideMark(word=word, angle=angle, letter=_letter(word)))
    return tuple(marks)
