"""The tools beside the brush at work: what they would do is shown, what they do is one edit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QObject, QPoint, Qt, QTimer, Signal
from PySide6.QtWidgets import QMenu

from stainmap.app import edits
from stainmap.app.brush import Tool
from stainmap.app.change import Change
from stainmap.app.job import JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.plan import Streaks
from stainmap.model.zone import OUTER_ZONES, Accent
from stainmap.surface.mesh import TriMesh
from stainmap.surface.picking import Hit
from stainmap.ui import case_figures as figures
from stainmap.ui.brush_bar import BrushBar, BrushSettings, Command
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_overlay import Preview
from stainmap.ui.crown_view import CrownView
from stainmap.ui.tool_preview import arrows_of, line_of, outline_of
from stainmap.words import marked, sentence_case, translate, value_word

if TYPE_CHECKING:
    from stainmap.app.tool_strokes import CreaseWork
    from stainmap.surface.geodesic import Graph

_HOVER_MS = 250
# Rows of streaks that are added make the dialog higher.
_ROOM_PX = 120
_WORDS = {
    Tool.BRUSH: marked("zone tool desk", "Brush: left drag paints, Esc takes the stroke back"),
    Tool.ERASER: marked(
        "zone tool desk", "Eraser: left drag gives back or takes away, Esc takes the stroke back"
    ),
    Tool.FILL: marked(
        "zone tool desk",
        "Fill: click a place, and it is filled up to the creases around it. Esc: brush",
    ),
    Tool.LINE: marked(
        "zone tool desk", "Line: click where it starts, then where it ends. Esc: brush"
    ),
}
Edit = Callable[[Case], Case]


class ZoneToolDesk(QObject):
    """Carries out what the tools and commands of the brush bar ask for.

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
        desk: CrownDesk,
        bar: BrushBar,
        runner: JobRunner,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._session, self._view, self._desk, self._bar = session, view, desk, bar
        self._runner = runner
        self._settings = bar.settings
        self._work: CreaseWork | None = None
        self._graph: tuple[TriMesh, Graph] | None = None
        self._sought: TriMesh | None = None
        self._start: int | None = None
        self._hit: Hit | None = None
        self._pointed: Command | None = None
        self._hover = QTimer(self, singleShot=True, interval=_HOVER_MS)
        self._hover.timeout.connect(self._show_command)
        bar.settings_changed.connect(self._set)
        bar.command_asked.connect(self._carry_out)
        bar.command_pointed.connect(self._point_at_command)
        view.pointed_at.connect(self._point)
        view.tool_placed.connect(self._place)
        view.tool_left.connect(self.step_back)

    # --- from outside --------------------------------------------------------------------

    @property
    def start(self) -> int | None:
        """Vertex where a line has been started, or None."""
        return self._start

    def refresh(self, change: Change) -> None:
        """Forget what belongs to another surface or to what was undone."""
        if change.touches("opened", "surface", "reading"):
            self._start = self._hit = None
            self._show(None)
            case = self._session.case
            mesh = None if case is None else case.surface.mesh
            if self._work is not None and self._work.mesh is not mesh:
                self._work = None
            if self._graph is not None and self._graph[0] is not mesh:
                self._graph = None
        if change.touches("opened", "surface") and self._tool.takes_a_place:
            self._seek_creases()

    def step_back(self) -> bool:
        """Do what Esc means for a tool; return False if it means nothing."""
        if not self._tool.takes_a_place:
            return False
        if self._start is not None:
            self._start = None
            self._show(None)
            self.said.emit(translate("zone tool desk", _WORDS[Tool.LINE]))
        else:
            self._bar.set_tool(Tool.BRUSH)
        return True

    # --- fill and line -------------------------------------------------------------------

    @property
    def _tool(self) -> Tool:
        return self._settings.tool

    def _set(self, settings: BrushSettings) -> None:
        before, self._settings = self._settings, settings
        if settings.tool is not before.tool:
            self._start = None
            self._show(None)
            self.said.emit(translate("zone tool desk", _WORDS[settings.tool]))
            if settings.tool.takes_a_place:
                self._seek_creases()
        elif settings.crease_mm != before.crease_mm:
            self._preview_place()

    def _seek_creases(self) -> None:
        """Work out where the crown bends, in the background, unless that has been done."""
        from stainmap.app.tool_strokes import CreaseWork  # noqa: PLC0415

        case = self._session.case
        mesh = None if case is None else case.surface.mesh
        if mesh is None or self._sought is mesh:
            return
        if self._work is not None and self._work.mesh is mesh:
            return
        self._sought = mesh

        def work(_progress: Progress) -> CreaseWork:
            return CreaseWork(mesh)

        def done(found: CreaseWork) -> None:
            self._sought = None
            now = self._session.case
            if now is not None and now.surface.mesh is found.mesh:
                self._work = found
                self._preview_place()

        def failed(error: StainmapError) -> None:
            self._sought = None
            self.said.emit(str(error))

        self._runner.start(
            translate("zone tool desk", "Looking for creases"), work, on_done=done, on_failed=failed
        )

    def _ready(self) -> tuple[Case, CreaseWork] | None:
        case, work = self._session.case, self._work
        if case is None or work is None or work.mesh is not case.surface.mesh:
            return None
        return case, work

    def _point(self, hit: Hit | None) -> None:
        self._hit = hit
        if self._tool.takes_a_place:
            self._preview_place()

    def _preview_place(self) -> None:
        """Show what a click would fill, or the line it would draw."""
        ready, hit = self._ready(), self._hit
        if ready is None or not self._tool.takes_a_place:
            return
        case, work = ready
        preview: Preview | None = None
        if self._tool is Tool.FILL and hit is not None:
            label = work.patches(case, self._settings.crease_mm)
            own = label[hit.vertex]
            preview = outline_of(work.mesh, label == own) if own >= 0 else None
        elif self._start is not None:
            way = np.empty(0, np.int32)
            if hit is not None:
                way = work.paths_from(case, self._start).to(hit.vertex)
            preview = line_of(work.mesh, way, self._start)
        self._show(preview)

    def _place(self, hit: Hit, keys: Qt.KeyboardModifier) -> None:
        from stainmap.app.tool_strokes import painted, taking_away  # noqa: PLC0415

        self._hit = hit
        ready = self._ready()
        if ready is None:
            self._seek_creases()
            if (ready := self._ready()) is None:
                self.said.emit(
                    translate("zone tool desk", "One moment: looking for the creases of this crown")
                )
                return
        case, work = ready
        brush = self._desk.brush
        if keys & Qt.KeyboardModifier.ShiftModifier:
            brush = taking_away(brush)
        words = brush.describe(case)
        if self._tool is Tool.FILL:
            settings = self._settings
            place = work.place_to_fill(
                case, hit.vertex, settings.crease_mm, brush, settings.soft_edge_mm
            )
        elif self._start is None:
            self._start = hit.vertex
            self._preview_place()
            self.said.emit(
                translate("zone tool desk", "Line: now click where it ends. Esc: start again")
            )
            return
        else:
            way = work.paths_from(case, self._start).to(hit.vertex)
            if not len(way):
                self.said.emit(
                    translate(
                        "zone tool desk", "No way along the surface leads there: choose another end"
                    )
                )
                return
            place = work.place_of_line(case, way, brush)
            self._start = None
            self._show(None)
        if self._edit(words, lambda c: painted(c, place, brush)) is False:
            self.said.emit(
                translate(
                    "zone tool desk",
                    "Nothing changes there: it already is as the tool would make it",
                )
            )

    # --- commands ------------------------------------------------------------------------

    def _command(self, command: Command) -> tuple[str, Edit] | None:
        """Return the name and the edit of a command that needs no menu."""
        from stainmap.planning.zone_tools import grown_area, shrunk_area, smoothed_area  # noqa: PLC0415

        case, area, by_mm = self._session.case, self._desk.area, self._settings.grow_mm
        if case is None:
            return None
        name, graph = figures.area_name(case, area), self._graph_of(case)
        if command is Command.GROW:
            return translate("zone tool desk", "grow {name} by {by_mm:g} mm").format(
                name=name, by_mm=by_mm
            ), partial(grown_area, area=area, by_mm=by_mm, graph=graph)
        if command is Command.SHRINK:
            return translate("zone tool desk", "shrink {name} by {by_mm:g} mm").format(
                name=name, by_mm=by_mm
            ), partial(shrunk_area, area=area, by_mm=by_mm, graph=graph)
        if command is Command.SMOOTH:
            return translate("zone tool desk", "smooth the edge of {name}").format(
                name=name
            ), partial(smoothed_area, area=area, graph=graph)
        return None

    def _carry_out(self, command: Command) -> None:
        if self._session.case is None or not self._desk.can_paint:
            return
        if command is Command.STREAKS:
            self.ask_for_streaks()
        elif command is Command.MIRROR:
            self._pop_up(command, self.mirror_menu())
        elif command is Command.RESET:
            self._pop_up(command, self.reset_menu())
        else:
            self._apply(*(self._command(command) or ("", lambda case: case)))
            if self._pointed is command:
                self._hover.start()

    def _apply(self, label: str, change: Edit) -> None:
        changed, words = self._edit(label, change), sentence_case(label)
        if changed is not None:
            self.said.emit(
                translate("zone tool desk", "{step}: done").format(step=words)
                if changed
                else translate("zone tool desk", "{step}: nothing to change").format(step=words)
            )

    def _edit(self, label: str, change: Edit) -> bool | None:
        """Make one undo step; return whether anything changed, None if it was refused."""
        before = self._session.case
        try:
            self._session.edit(label, change)
        except StainmapError as error:
            self.said.emit(str(error))
            return None
        return self._session.case is not before

    def mirror_menu(self) -> QMenu:
        """Return what can be mirrored, and which way."""
        from stainmap.planning.mirrored import Half, mirrored_area, mirrored_corrections  # noqa: PLC0415

        case, area = self._session.case, self._desk.area
        menu = QMenu(self._bar)
        if case is None:
            return menu
        name = figures.area_name(case, area)
        for half, other in ((Half.MESIAL, Half.DISTAL), (Half.DISTAL, Half.MESIAL)):
            self._entry(
                menu,
                translate("zone tool desk", "What was corrected by hand: {half} to {other}").format(
                    half=value_word(half), other=value_word(other)
                ),
                translate("zone tool desk", "mirror corrections, {half} to {other}").format(
                    half=value_word(half), other=value_word(other)
                ),
                partial(mirrored_corrections, half=half),
            )
        menu.addSeparator()
        for half, other in ((Half.MESIAL, Half.DISTAL), (Half.DISTAL, Half.MESIAL)):
            self._entry(
                menu,
                translate("zone tool desk", "The chosen area, {name}: {half} to {other}").format(
                    name=name, half=value_word(half), other=value_word(other)
                ),
                translate("zone tool desk", "mirror {name}, {half} to {other}").format(
                    name=name, half=value_word(half), other=value_word(other)
                ),
                partial(mirrored_area, area=area, half=half),
            )
        return menu

    def reset_menu(self) -> QMenu:
        """Return what can be given back to the proposal."""
        from stainmap.planning.zone_tools import reset_all, reset_area  # noqa: PLC0415

        case, area = self._session.case, self._desk.area
        menu = QMenu(self._bar)
        if case is None:
            return menu
        name = figures.area_name(case, area)
        self._entry(
            menu,
            translate("zone tool desk", "The chosen area, {name}").format(name=name),
            translate("zone tool desk", "reset {name} to the proposal").format(name=name),
            partial(reset_area, area=area),
        )
        self._entry(
            menu,
            translate("zone tool desk", "All zones and accents"),
            translate("zone tool desk", "reset all areas to the proposal"),
            reset_all,
        )
        return menu

    def _entry(self, menu: QMenu, text: str, label: str, change: Edit) -> None:
        action = menu.addAction(text)
        action.triggered.connect(lambda _checked: self._apply(label, change))
        action.hovered.connect(lambda: self._show_change(change))

    def _pop_up(self, command: Command, menu: QMenu) -> None:
        button = self._bar.commands[command]
        menu.aboutToHide.connect(lambda: self._show(None))
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(button.mapToGlobal(QPoint(0, button.height())))
        if menu.actions():
            menu.setActiveAction(menu.actions()[0])

    def ask_for_streaks(self) -> None:
        """Place and edit the streaks of a step; what they give is shown while they are set."""
        from stainmap.ui.streaks_dialog import StreaksDialog  # noqa: PLC0415

        case = self._session.case
        if case is None or not case.plan.steps:
            self.said.emit(
                translate(
                    "zone tool desk",
                    "Streaks carry the coat of a step: add a step to the plan first",
                )
            )
            return
        dialog = StreaksDialog(case, self._step_for_streaks(case), self._bar.window())
        # Beside the crown, on which the strokes are shown.
        dialog.adjustSize()
        corner = self._bar.mapToGlobal(QPoint(0, self._bar.height()))
        dialog.move(max(corner.x(), 0), max(corner.y() - dialog.height() - _ROOM_PX, 0))
        dialog.changed.connect(lambda step, streaks: self._show_streaks(case, step, streaks))
        self._show_streaks(case, dialog.step, dialog.streaks[dialog.step])
        accepted = dialog.exec() == StreaksDialog.DialogCode.Accepted
        wanted = dialog.streaks
        dialog.deleteLater()
        self._show(None)
        if accepted:

            def change(old: Case) -> Case:
                for step, streaks in enumerate(wanted):
                    old = edits.with_streaks(old, step, streaks)
                return old

            self._apply(translate("zone tool desk", "change streaks"), change)

    def _step_for_streaks(self, case: Case) -> int:
        """Return the chosen step, or the one that streaks would most likely belong to."""
        steps = case.plan.steps
        if self._desk.step is not None:
            return self._desk.step
        with_streaks = [index for index, step in enumerate(steps) if step.streaks]
        of_area = [i for i, step in enumerate(steps) if step.entry(self._desk.area) is not None]
        outside = [
            index
            for index, step in enumerate(steps)
            if any(entry.area in OUTER_ZONES for entry in step.areas)
        ]
        return next(iter((*with_streaks, *of_area, *outside)), 0)

    # --- what is shown -------------------------------------------------------------------

    def _point_at_command(self, command: Command | None) -> None:
        self._pointed = command
        if command is None:
            self._hover.stop()
            if not self._tool.takes_a_place:
                self._show(None)
        else:
            self._hover.start()

    def _show_command(self) -> None:
        if self._pointed is None or not self._desk.can_paint:
            return
        found = self._command(self._pointed)
        if found is not None:
            self._show_change(found[1], whole=True)

    def _show_change(self, change: Edit, *, whole: bool = False) -> None:
        """Show the new edge of the chosen area, or else the places that would change."""
        case, area = self._session.case, self._desk.area
        if case is None:
            return
        try:
            after = change(case)
        except StainmapError:
            self._show(None)
            return
        mesh = case.surface.mesh
        if not whole:
            different = after.zones != case.zones
            for accent in Accent:
                one, other = case.accent(accent), after.accent(accent)
                if one is not other:
                    zero = np.zeros(len(case.zones), np.float32)
                    gap = np.abs(
                        (zero if one is None else one) - (zero if other is None else other)
                    )
                    different |= gap > 0.02
            self._show(outline_of(mesh, different))
        elif isinstance(area, Accent):
            share = after.accent(area)
            self._show(None if share is None else outline_of(mesh, share))
        else:
            self._show(outline_of(mesh, after.zones == int(area)))

    def _show_streaks(self, case: Case, step: int, streaks: tuple[Streaks, ...]) -> None:
        # Drawing what paper draws takes longer to import than a window may to start.
        from stainmap.paper.streak_arrows import streak_arrows  # noqa: PLC0415

        plan = case.plan
        steps = tuple(
            replace(one, streaks=streaks if index == step else ())
            for index, one in enumerate(plan.steps)
        )
        lines = streak_arrows(replace(case, plan=replace(plan, steps=steps)))
        self._show(arrows_of([(line.points, line.normals) for line in lines]))

    def _show(self, preview: Preview | None) -> None:
        overlay = self._view.overlay
        if preview is not None or overlay.preview is not None:
            overlay.preview = preview
            overlay.update()

    def _graph_of(self, case: Case) -> Graph:
        from stainmap.surface.geodesic import distance_graph  # noqa: PLC0415

        mesh = case.surface.mesh
        if self._work is not None and self._work.mesh is mesh:
            return self._work.graph
        if self._graph is None or self._graph[0] is not mesh:
            self._graph = (mesh, distance_graph(mesh))
        return self._graph[1]
