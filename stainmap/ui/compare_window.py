"""Two plans of one crown side by side: two crowns that turn together, and what sets them apart."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QCheckBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QSplitter,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.change import Change
from stainmap.app.compare import Compared, ShownPlan
from stainmap.app.job import JobRunner
from stainmap.app.prediction import Prediction
from stainmap.paper.shading import ShadingFields
from stainmap.predict.lights import SHOWN_LIGHTS, light_name
from stainmap.surface.picking import Hit
from stainmap.ui.compare_tables import DifferenceTables
from stainmap.ui.compare_view import LinkedView
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_picture import Look
from stainmap.ui.form_dialog import choice_box
from stainmap.ui.look_bar import LOOKS, look_name
from stainmap.ui.look_desk import LookDesk
from stainmap.ui.progress_line import ProgressLine
from stainmap.ui.screen_room import resize_within_screen
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.words import marked, translate

_WIDTH_PX, _HEIGHT_PX, _LEAST_WIDTH_PX, _LEAST_HEIGHT_PX = 1240, 860, 760, 560
_CROWNS_PX, _TABLES_PX, _LIGHT_PX = 540, 230, 190
# Looks that are of one prediction alone; a crown in its row has no place beside another.
_SHARED = (
    Look.SINTERED,
    Look.BENCH,
    Look.ZONES,
    Look.COATS,
    Look.VALUE,
    Look.OFFSET,
    Look.THICKNESS,
    Look.GROUND,
)
_ALL = frozenset(
    {"surface", "reading", "units", "zones", "accents", "plan", "appearance", "outcome", "shading"}
)
HERE_TITLE = marked("compare window", "The plan as it is")


@dataclass(slots=True, eq=False)
class Side:
    """One of the two crowns: head, view, and what colours the view."""

    title: QLabel
    effort: SoftLabel
    view: LinkedView
    shown: ShownPlan | None = None
    desk: CrownDesk | None = None
    looks: LookDesk | None = None

    @property
    def prediction(self) -> Prediction | None:
        """What it shows."""
        return None if self.shown is None else self.shown.prediction


class CompareWindow(QWidget):
    """A window with the open plan at the left and another one at the right.

    Turning one crown turns the other; both are in the same look and light. Esc closes the window.

    Signals
    -------
    light_asked
        Name of the light both are to be seen under.
    take_asked
        The plan at the right is to become the open one.
    stopped
        What is being worked out is to stop.
    closed
        Nothing needs to be kept any more.
    """

    light_asked = Signal(str)
    take_asked = Signal()
    stopped = Signal()
    closed = Signal()

    def __init__(self, runner: JobRunner, owner: QWidget | None = None) -> None:
        super().__init__(owner, Qt.WindowType.Window)
        self.setWindowTitle(translate("compare window", "Compare"))
        self.setMinimumSize(_LEAST_WIDTH_PX, _LEAST_HEIGHT_PX)
        resize_within_screen(self, _WIDTH_PX, _HEIGHT_PX)
        self._runner = runner
        self._look = Look.SINTERED
        self.against_menu = QMenu(self)
        self.against_menu.setToolTipsVisible(True)
        self.here, self.there = self._side(translate("compare window", HERE_TITLE)), self._side("")
        self.here.view.link(self.there.view)
        self.here.view.pointed_at.connect(lambda hit: self._point(self.here, self.there, hit))
        self.there.view.pointed_at.connect(lambda hit: self._point(self.there, self.here, hit))
        self.progress = ProgressLine()
        self.progress.stopped.connect(self.stopped)
        self.tables = DifferenceTables()
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        column.setSpacing(8)
        column.addLayout(self._bar())
        column.addWidget(self.progress)
        parts = QSplitter(Qt.Orientation.Vertical)
        parts.setChildrenCollapsible(False)
        parts.addWidget(self._crowns())
        parts.addWidget(self._framed_tables())
        parts.setStretchFactor(0, 1)
        parts.setSizes([_CROWNS_PX, _TABLES_PX])
        column.addWidget(parts, 1)
        QShortcut(QKeySequence("Esc"), self, self.close)
        for entry in LOOKS:
            if entry.look in _SHARED:
                keys = QKeySequence(f"Alt+{entry.number}")
                QShortcut(keys, self, lambda look=entry.look: self.set_look(look))

    def _side(self, title: str) -> Side:
        name = QLabel(title)
        name.setFont(font(15, 600))
        effort = SoftLabel("", 12)
        effort.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        return Side(title=name, effort=effort, view=LinkedView())

    def _bar(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(10)
        self.against = QToolButton()
        self.against.setText(translate("compare window", "Beside the plan"))
        self.against.setProperty("framed", True)
        self.against.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.against.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.against.setMenu(self.against_menu)
        self.against.setAccessibleName(translate("compare window", "What stands beside the plan"))
        self.against.setStyleSheet("QToolButton { padding: 3px 18px 3px 8px; }")
        names = [look_name(entry) for entry in LOOKS if entry.look in _SHARED]
        self.look = choice_box(translate("compare window", "Look of both crowns"), names, names[0])
        shared = [entry.look for entry in LOOKS if entry.look in _SHARED]
        self.look.activated.connect(lambda at: self.set_look(shared[at]))
        lights = [f"{light}  {light_name(light)}" for light in SHOWN_LIGHTS]
        self.light = choice_box(
            translate("compare window", "Light on both crowns"), lights, lights[0]
        )
        self.light.setMaximumWidth(_LIGHT_PX)
        self.light.activated.connect(lambda at: self.light_asked.emit(SHOWN_LIGHTS[at]))
        self.shading = QCheckBox(translate("compare window", "Shading"))
        self.shading.setChecked(True)
        self.shading.toggled.connect(self._switch_shading)
        self.fit = QPushButton(translate("compare window", "Whole crown"))
        self.fit.clicked.connect(self.here.view.fit)
        self.take = QPushButton(translate("compare window", "Take the plan at the right"))
        self.take.clicked.connect(self.take_asked)
        row.addWidget(self.against)
        row.addSpacing(6)
        for word, box in (
            (translate("compare window", "Look"), self.look),
            (translate("compare window", "Light"), self.light),
        ):
            label = SoftLabel(word, 12)
            label.setBuddy(box)
            row.addWidget(label)
            row.addWidget(box)
        row.addWidget(self.shading)
        row.addStretch(1)
        row.addWidget(self.fit)
        row.addWidget(self.take)
        return row

    def _crowns(self) -> QWidget:
        crowns = QWidget()
        grid = QGridLayout(crowns)
        grid.setContentsMargins(0, 0, 0, 6)
        grid.setHorizontalSpacing(4)
        grid.setVerticalSpacing(4)
        for column, side in enumerate((self.here, self.there)):
            head = QHBoxLayout()
            head.setSpacing(10)
            head.addWidget(side.title)
            head.addWidget(side.effort, 1)
            grid.addLayout(head, 0, column)
            grid.addWidget(side.view, 1, column)
            grid.setColumnStretch(column, 1)
        grid.setRowStretch(1, 1)
        return crowns

    def _framed_tables(self) -> QScrollArea:
        frame = QScrollArea()
        frame.setWidgetResizable(True)
        frame.setWidget(self.tables)
        frame.setAccessibleName(translate("compare window", "Differences"))
        return frame

    # --- what is shown ---------------------------------------------------------------------

    def set_here(self, prediction: Prediction, shading: ShadingFields | None) -> None:
        """Show the open plan at the left."""
        self._show(self.here, prediction, shading)
        at = SHOWN_LIGHTS.index(prediction.seen.light)
        self.light.setCurrentIndex(at)

    def set_there(self, title: str, prediction: Prediction, shading: ShadingFields | None) -> None:
        """Show another plan at the right."""
        self.name_there(title)
        self._show(self.there, prediction, shading)
        self.there.view.follow(self.here.view.camera, moving=False)

    def name_there(self, title: str) -> None:
        """Say what is going to stand at the right."""
        self.there.title.setText(title)
        self.setWindowTitle(translate("compare window", "Compare: {title}").format(title=title))

    def set_compared(self, found: Compared | None) -> None:
        """Show what sets the two apart; None while that is not known."""
        self.tables.set_compared(found)
        for at, side in enumerate((self.here, self.there)):
            side.effort.setText("" if found is None else effort_words(found, at))

    def allow_taking(self, allowed: bool) -> None:
        """Say whether the plan at the right can become the open one."""
        self.take.setEnabled(allowed)

    def _show(self, side: Side, prediction: Prediction, shading: ShadingFields | None) -> None:
        fields = _ALL
        if side.shown is None or side.desk is None or side.looks is None:
            side.shown = ShownPlan(prediction, shading)
            side.desk = CrownDesk(side.shown, side.view, self, paints=False)
            side.looks = LookDesk(side.shown, side.desk, self._runner, self)
            side.view.set_look(self._look)
            fields = fields | {"opened"}
        else:
            side.shown.show(prediction, shading)
        change = Change(fields=fields)
        side.desk.refresh(change)
        side.looks.refresh(change)

    # --- both together ---------------------------------------------------------------------

    def set_look(self, look: Look) -> None:
        """Colour both crowns by the same; a look that only one crown can have shows Sintered."""
        self._look = look if look in _SHARED else Look.SINTERED
        entry = next(one for one in LOOKS if one.look is self._look)
        self.look.setCurrentText(look_name(entry))
        for side in (self.here, self.there):
            side.view.set_look(self._look)
            if side.desk is not None and side.looks is not None:
                side.desk.show_bench()
                side.looks.show()

    def _switch_shading(self, on: bool) -> None:
        for side in (self.here, self.there):
            side.view.set_relief(on)

    def _point(self, side: Side, other: Side, hit: Hit | None) -> None:
        """Read the same place on the other crown."""
        one, two = side.prediction, other.prediction
        if other.desk is None or one is None or two is None:
            return
        same = one.case.surface is two.case.surface
        other.desk.read(hit if same else None, from_afar=False)

    # --- Qt's hooks ------------------------------------------------------------------------

    def closeEvent(self, event: QCloseEvent) -> None:
        """Stop what is being worked out."""
        self.stopped.emit()
        self.closed.emit()
        super().closeEvent(event)


def effort_words(found: Compared, at: int) -> str:
    """Return coats, jars and time of one of the two plans in a line."""
    effort = found.efforts[at]
    return translate(
        "compare window", "coats: {coats}, jars: {jars}, mixing and painting: {minutes:.0f} min"
    ).format(coats=effort.coats, jars=effort.jars, minutes=effort.minutes)
