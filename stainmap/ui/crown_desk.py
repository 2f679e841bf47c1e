"""The crown view at work: what the session knows is shown, what the pointer does is painted."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, Qt, QTimer, Signal

from stainmap.app.brush import Brush, Tool
from stainmap.app.change import Change
from stainmap.app.painting import NOTHING, StrokeUpdate
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.zone import Area, Zone
from stainmap.paper.views import CrownDirections
from stainmap.surface.mesh import TriMesh
from stainmap.surface.picking import Hit
from stainmap.ui import case_figures as figures
from stainmap.ui.brush_bar import BrushSettings
from stainmap.ui.camera import Camera
from stainmap.ui.crown_cards import ProbeReading
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import CrownView, PointerTask
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction

# A brush that has not moved for so long rests; then what shows through the wall is coloured too.
_RESTS_MS = 60
# Looks that show what colour a stroke will have; in the others its place is enough.
_COLOURED_UNDER_BRUSH = (Look.SINTERED, Look.BENCH, Look.ROW, Look.VALUE, Look.OFFSET)
_UNPREDICTED = 176  # sRGB grey of a crown whose colour is not known yet
_CHALK = 178  # sRGB grey of a mesh that has not been read
# A mesh outside of this, mm, has no size yet at which it could be shown to scale.
_SHOWN_MM = (1.0, 140.0)
_STAND_IN_MM = 10.0


class CrownDesk(QObject):
    """Keeps one crown view in step with a session.

    Signals
    -------
    purpose_changed
        The line that says what the brush does, and whether it puts on coats.
    problem
        A StainmapError from painting.
    drawn
        A `StrokeUpdate` that has just been shown.
    replaced
        Another prediction is shown, see `put_in_place`.
    named
        What is under the pointer, as one line; empty if nothing is.
    """

    purpose_changed = Signal(str, bool)
    problem = Signal(object)
    named = Signal(str)
    drawn = Signal(object)
    replaced = Signal()

    def __init__(
        self,
        session: Session,
        view: CrownView,
        parent: QObject | None = None,
        *,
        paints: bool = True,
    ) -> None:
        super().__init__(parent)
        self._session, self._view, self._paints = session, view, paints
        self._instead: Prediction | None = None
        self._settings = BrushSettings()
        self._area: Area = Zone.BODY
        self._step: int | None = None
        self._can_paint = True
        self._moves_margin = False
        self._left_at: Camera | None = None
        self._bench_shown: Prediction | None = None
        self._last_vertex: int | None = None
        self._known: tuple[Prediction, int, ProbeReading] | None = None
        # Places painted by a move that is still being passed on, in looks without their colour.
        self._passed: list[NDArray[np.int32]] = []
        self._brush_rests = QTimer(self, singleShot=True, interval=_RESTS_MS)
        self._brush_rests.timeout.connect(self._catch_up)
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._expect_stroke)
        self._next_turn = QTimer(self, singleShot=True, interval=0)
        self._next_turn.timeout.connect(self._show)
        # What the look that is on tells of a vertex, beyond what every reading says.
        self.figure_of: Callable[[int], str] = lambda _vertex: ""
        view.pointed_at.connect(self.read)
        view.stroke_began.connect(self._begin)
        view.stroke_moved.connect(self._move)
        view.stroke_ended.connect(self._end)
        view.stroke_cancelled.connect(self._cancel)

    # --- what is painted -----------------------------------------------------------------

    @property
    def view(self) -> CrownView:
        """The view that is kept in step."""
        return self._view

    @property
    def step(self) -> int | None:
        """Step the brush adds to, or None while it paints an area."""
        return self._step

    @property
    def area(self) -> Area:
        """Area that was chosen; with a step, the one whose cell it is."""
        return self._area

    @property
    def can_paint(self) -> bool:
        """True while tools may work on the crown, which is a read one."""
        return self._can_paint and not self._view.is_bare

    @property
    def last_vertex(self) -> int | None:
        """Vertex under the pointer when it was last on this crown."""
        return self._last_vertex

    @property
    def prediction(self) -> Prediction | None:
        """What is shown: the session's newest prediction, or the one put in its place."""
        return self._session.prediction if self._instead is None else self._instead

    @property
    def is_replaced(self) -> bool:
        """True while something else than the open case's prediction is shown."""
        return self._instead is not None

    def put_in_place(self, prediction: Prediction | None) -> None:
        """Show another prediction of the same surface for a while; None shows the open case's.

        All looks, figures and flat views follow; nothing is painted meanwhile.
        """
        if prediction is self._instead or self._session.is_painting or self._view.is_bare:
            return
        self._instead = prediction
        case = self._session.case
        if case is None or not self._view.shows(case.surface.mesh):
            return
        self._show_zones(case if prediction is None else prediction.case)
        self._show_appearance()
        self._show_purpose()
        self.replaced.emit()

    def choose(self, area: Area, step: int | None) -> None:
        """Paint `area`, or with a step (from 0) add coats of that step."""
        self._area, self._step = area, step
        self._show_purpose()
        self._show_coats()

    def set_brush(self, settings: BrushSettings) -> None:
        """Use another tool or size."""
        self._settings = settings
        self._show_purpose()

    def allow_painting(self, allowed: bool) -> None:
        """Switch the brush off while a question is asked of the crown."""
        self._can_paint = allowed
        self._show_purpose()

    @property
    def brush(self) -> Brush:
        """The brush as the session knows it."""
        return Brush(
            tool=self._settings.tool,
            area=self._area,
            step=self._step,
            radius_mm=self._settings.radius_mm,
            softness=self._settings.softness,
            strength_coats=self._settings.strength_coats,
            moves_margin=self._moves_margin and self._step is None and isinstance(self._area, Zone),
        )

    def let_move_margin(self, allowed: bool) -> None:
        """Let painted zones go over the margin and take it along, or keep them on their side."""
        self._moves_margin = allowed
        self._show_purpose()

    def _show_purpose(self) -> None:
        case = self._session.case
        paints = self._can_paint and self._paints and self._instead is None
        if case is None or not paints or self._view.is_bare:
            self._view.set_task(PointerTask.TURN)
            self.purpose_changed.emit("", False)
            return
        if self._step is not None and self._step >= len(case.plan.steps):
            self._step = None
        tool = self._settings.tool
        task = PointerTask.PLACE if tool.takes_a_place else PointerTask.PAINT
        self._view.set_task(task, self._settings.radius_mm, ring=tool is not Tool.FILL)
        words = self.brush.describe(case)
        if self.brush.moves_margin and "margin" not in words:
            words = translate("crown desk", "{does}, moves the margin").format(does=words)
        self.purpose_changed.emit(words, self._step is not None)

    # --- the session speaks --------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Show what has changed."""
        case = self._session.case
        if change.touches("opened"):
            self._left_at = self._instead = self._known = None
        elif self._view.is_bare:
            return
        if case is None:
            return
        if change.touches("opened", "surface", "reading", "units"):
            self._show_crown()
        if change.touches("opened", "zones", "accents", "surface"):
            self._show_zones(case if self._instead is None else self._instead.case)
        if change.touches("appearance"):
            self._show_appearance()
        if change.touches("shading") and self._session.shading is not None:
            self._view.set_shading(self._session.shading)
        if change.touches("opened", "outcome", "plan", "units", "accents"):
            outcome = self._session.outcome
            rows = figures.legend_rows(case, outcome)
            self._view.zone_legend.set_rows(rows, figures.legend_note(case))
        if change.touches("opened", "plan", "units", "history"):
            self._show_purpose()

    def show_bare(self, mesh: TriMesh, millimetres: float, up: NDArray[np.float64]) -> None:
        """Show a mesh that has not been read, in chalk, in place of the open case.

        Parameters
        ----------
        mesh
            The mesh in its own unit.
        millimetres
            Length of that unit.
        up
            (3,) the direction it is turned about.
        """
        if self._left_at is None and self._view.has_crown and not self._view.is_bare:
            self._left_at = self._view.camera
        longest_mm = float(mesh.extent.max()) * millimetres
        has_scale = _SHOWN_MM[0] <= longest_mm <= _SHOWN_MM[1]
        factor = millimetres if has_scale else _STAND_IN_MM / float(mesh.extent.max())
        sized = TriMesh(mesh.vertices * factor, mesh.faces)
        self._view.set_bare(sized, bare_directions(up), has_scale=has_scale)
        self._view.set_colours(np.full((sized.vertex_count, 3), _CHALK, np.uint8))
        self._view.set_task(PointerTask.TURN)

    def show_again(self) -> None:
        """Show the open case as it was left, after a bare mesh was shown in its place."""
        camera = self._left_at
        if self._session.case is None:
            self._view.clear()
            return
        self.refresh(Change(fields=frozenset({"opened", "zones", "appearance", "shading"})))
        if camera is not None:
            self._view.stand_at(camera)

    def _show_crown(self) -> None:
        case = self._session.case
        if case is None:
            return
        fresh = not self._view.shows(case.surface.mesh)
        self._view.set_crown(case.surface.mesh, figures.directions_of(case), case.units[0].tooth)
        if fresh:
            self._last_vertex = None
            seen = self._session.shown_srgb
            grey = np.full((case.surface.mesh.vertex_count, 3), _UNPREDICTED, np.uint8)
            self._view.set_colours(grey if seen is None else seen)
            self._show_appearance()

    def _show_zones(self, case: Case) -> None:
        accents = {int(mask.accent): mask.share for mask in case.accents}
        self._view.set_zones(case.zones, accents)

    def _show_appearance(self) -> None:
        prediction = self.prediction
        if prediction is None or self._session.is_painting or not self._fits():
            return
        self._view.set_colours(prediction.appearance.srgb)
        self._bench_shown = None
        self.show_bench()
        self._show_coats()
        self._session.need_shading()
        self._view.read_again()

    def show_bench(self) -> None:
        """Colour the crown as it looks while it is painted, if that is what is looked at."""
        prediction = self.prediction
        if self._view.look is not Look.BENCH or prediction is None or not self._fits():
            return
        if self._bench_shown is not prediction:
            self._bench_shown = prediction
            srgb = figures.bench_srgb(prediction.case, prediction.coats)
            self._view.set_colours(srgb, Look.BENCH)

    def _fits(self) -> bool:
        """Return True if the newest prediction is of the surface that is shown."""
        prediction, case = self.prediction, self._session.case
        return (
            prediction is not None and case is not None and prediction.case.surface is case.surface
        )

    def _show_coats(self) -> None:
        prediction = self.prediction
        if prediction is None or not self._fits():
            return
        plan, step = prediction.case.plan, self._step
        if step is not None and step < len(plan.steps):
            title = translate("crown desk", "step {step}, {liquid}").format(
                step=step + 1, liquid=plan.liquid_of(plan.steps[step])
            )
            self._view.set_coats(prediction.coats[step], title)
        else:
            total = prediction.coats.sum(axis=0)
            self._view.set_coats(
                np.asarray(total, dtype=np.float32), translate("crown desk", "all steps together")
            )

    # --- the pointer speaks --------------------------------------------------------------

    def read(self, hit: Hit | None, *, from_afar: bool = False) -> None:
        """Tell what is known of a place that is pointed at, here or on a flat view."""
        prediction = self.prediction
        if hit is not None:
            self._last_vertex = hit.vertex
        if hit is None or prediction is None or not self._fits() or not self._can_paint:
            self._view.set_probe(None, None)
            self.named.emit("")
            return
        if self._instead is None:
            # In a turn of its own: what is read of the place is in sight before.
            self._soon.start()
        reading = self._reading_at(prediction, hit.vertex)
        reading = replace(reading, figure=self.figure_of(hit.vertex))
        self._view.set_probe(reading, None if from_afar else hit.position)
        self.named.emit(reading.spoken)

    def _expect_stroke(self) -> None:
        if self._last_vertex is not None and self._instead is None:
            self._session.expect_stroke(self._last_vertex, self._settings.radius_mm)

    def _reading_at(self, prediction: Prediction, vertex: int) -> ProbeReading:
        """Return what is known of a vertex; the same place is asked for many times over."""
        if self._known is None or self._known[:2] != (prediction, vertex):
            self._known = (prediction, vertex, figures.probe_reading(prediction, vertex))
        return self._known[2]

    def _begin(self, position: NDArray[np.float64], vertex: int, keys: Qt.KeyboardModifier) -> None:
        brush = self.brush
        if keys & Qt.KeyboardModifier.AltModifier and isinstance(self._area, Zone):
            brush = replace(brush, moves_margin=True)
        try:
            self._session.begin_stroke(brush)
            self._passed = []
        except StainmapError as error:
            self.problem.emit(error)
            return
        self._move(position, vertex, keys, in_turns=True)

    def _move(
        self,
        position: NDArray[np.float64],
        vertex: int,
        _keys: Qt.KeyboardModifier,
        *,
        in_turns: bool = False,
    ) -> None:
        if self._session.is_painting:
            # What the hand passed in one move is coloured once, at its end; what is unseen, never.
            unseen = self._view.look not in _COLOURED_UNDER_BRUSH
            more = unseen or self._view.passes_by
            update = self._session.stroke_to(position, vertex, more=more, in_turns=in_turns)
            if unseen:
                self._passed.append(update.painted)
            if self._view.passes_by:
                return
            if unseen:
                passed, self._passed = np.unique(np.concatenate(self._passed)), []
                update = replace(update, painted=passed.astype(np.int32))
            elif in_turns:
                self._next_turn.start()
            else:
                self._brush_rests.start()
            self._draw(update)

    def _show(self) -> None:
        """Show the first place of a stroke: to get ready for it took a turn of its own."""
        self._brush_rests.start()
        self._draw(self._session.show_stroke())

    def _catch_up(self) -> None:
        """Show the other side of the wall as far as it has been left, piece by piece."""
        update = self._session.catch_up()
        if update is NOTHING:
            return
        self._brush_rests.start()
        if len(update.vertices):
            self._draw(update)

    def _draw(self, update: StrokeUpdate) -> None:
        stroke, painted = self._session.stroke, update.painted
        if len(update.vertices):
            self._view.update_colours(update.vertices, update.srgb)
            self.drawn.emit(update)
        if update.coats is not None and self._view.look is Look.BENCH and stroke is not None:
            srgb = figures.bench_srgb(stroke.case, update.coats)
            self._view.update_colours(painted, srgb, Look.BENCH)
        if stroke is None or not len(painted):
            return
        if stroke.brushed is not None:
            self._draw_coats(painted, stroke.brushed)
        elif stroke.accent is not None:
            self._view.update_accent(int(self._area), painted, stroke.accent[painted])
        else:
            self._view.update_zones(painted, stroke.zones[painted])

    def _draw_coats(self, painted: NDArray[np.int32], brushed: NDArray[np.float32]) -> None:
        prediction, step = self._session.prediction, self._step
        if prediction is None or step is None or not self._fits():
            return
        before = prediction.case.plan.steps[step].brushed
        old = np.float32(0.0) if before is None else before.at(painted)
        coats = prediction.coats[step, painted] + brushed[painted] - old
        self._view.update_coats(painted, np.asarray(coats, dtype=np.float32))

    def _end(self) -> None:
        if self._session.is_painting:
            self._session.end_stroke()

    def _cancel(self) -> None:
        if self._session.is_painting:
            self._session.cancel_stroke()


def bare_directions(mesh_axis: NDArray[np.float64]) -> CrownDirections:
    """Return directions for a mesh of which only an up direction is assumed."""
    guess = np.eye(3)[int(np.argmin(np.abs(mesh_axis)))]
    mesial = guess - (guess @ mesh_axis) * mesh_axis
    mesial /= np.linalg.norm(mesial)
    return CrownDirections(
        occlusal=mesh_axis,
        mesial=mesial,
        buccal=np.cross(mesh_axis, mesial),
        sides_known=False,
    )
