"""The panels left and right of the crown, put together from their parts."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QDockWidget, QFrame, QScrollArea, QToolButton, QVBoxLayout, QWidget

from stainmap.ui.advice_panel import AdvicePanel
from stainmap.ui.brush_bar import BrushBar
from stainmap.ui.coat_table import CoatTable
from stainmap.ui.icons import icon
from stainmap.ui.outcome_panel import OutcomePanel
from stainmap.ui.section import PADDING, Hairline, SectionHead, TableNote
from stainmap.ui.theme import tones
from stainmap.ui.unit_panel import UnitPanel
from stainmap.ui.unit_values_panel import UnitValuesPanel
from stainmap.ui.value_ladder import ValueLadder
from stainmap.words import translate

PLAN_PX, OUTCOME_PX = 438, 344
_LEAST_PX = 240


class PlanPanel(QWidget):
    """Unit, coat table and brush."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 12)
        column.setSpacing(0)
        self.unit = UnitPanel()
        self.table = CoatTable()
        self.brush = BrushBar()
        self.head = SectionHead(
            translate("side panels", "Plan"), translate("side panels", "coats as painted")
        )
        self.add_step = QToolButton()
        self.add_step.setIcon(icon("plus"))
        self.add_step.setIconSize(QSize(18, 18))
        self.add_step.setText(translate("side panels", "step"))
        self.add_step.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.add_step.setAccessibleName(translate("side panels", "Add a step"))
        self.add_step.setToolTip(translate("side panels", "Add a step at the end"))
        self.add_step.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.suggest = QToolButton()
        self.suggest.setText(translate("side panels", "Suggest coats"))
        self.suggest.setToolTip(
            translate("side panels", "Search for coats that come near what is wanted (Ctrl+G)")
        )
        self.head.add_widget(self.suggest)
        self.head.add_widget(self.add_step)
        self.note = TableNote()
        inner = QVBoxLayout()
        inner.setContentsMargins(PADDING, 12, PADDING, 0)
        inner.setSpacing(6)
        inner.addWidget(self.head)
        inner.addWidget(self.table)
        inner.addWidget(self.note)
        inner.addSpacing(4)
        inner.addWidget(Hairline())
        inner.addSpacing(4)
        inner.addWidget(self.brush)
        column.addWidget(self.unit)
        column.addLayout(inner)
        column.addStretch(1)


class OutcomeSide(QWidget):
    """Outcome, value ladder, advice and, of a bridge, value per unit."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 12)
        column.setSpacing(0)
        self.outcome = OutcomePanel()
        self.ladder = ValueLadder()
        self.ladder_head = SectionHead(translate("side panels", "Value ladder"))
        inner = QVBoxLayout()
        inner.setContentsMargins(PADDING, 8, PADDING, 0)
        inner.setSpacing(8)
        inner.addWidget(Hairline())
        inner.addWidget(self.ladder_head)
        inner.addWidget(self.ladder)
        self.advice = AdvicePanel()
        inner.addWidget(self.advice)
        self.unit_values = UnitValuesPanel()
        inner.addWidget(self.unit_values)
        column.addWidget(self.outcome)
        column.addLayout(inner)
        column.addStretch(1)


class Grip(QWidget):
    """What a panel is moved by: a short line at its top."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setToolTip(
            translate("side panels", "Drag to move this panel; double-click to let it float")
        )
        self.setCursor(Qt.CursorShape.SizeAllCursor)

    def sizeHint(self) -> QSize:
        """Return a low bar."""
        return QSize(40, 9)

    def minimumSizeHint(self) -> QSize:
        """Return the same."""
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the line."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.panel))
        painter.fillRect(self.width() // 2 - 12, 4, 24, 2, QColor(t.hair))
        painter.end()


class PanelDock(QDockWidget):
    """A panel that can be moved, and scrolls where it is too high for the window."""

    def __init__(self, name: str, content: QWidget, width_px: int | None = None) -> None:
        super().__init__(name)
        self.setObjectName(name)
        self.setAccessibleName(name)
        self.setFeatures(
            QDockWidget.DockWidgetFeature.DockWidgetMovable
            | QDockWidget.DockWidgetFeature.DockWidgetFloatable
            | QDockWidget.DockWidgetFeature.DockWidgetClosable
        )
        self.setTitleBarWidget(Grip())
        self._content, self._width_px = content, width_px
        self._scroll: QScrollArea | None = None
        if width_px is None:
            self.setWidget(content)
            return
        self._scroll = scroll = QScrollArea()
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setProperty("quiet", True)
        scroll.setWidgetResizable(True)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(content)
        scroll.setMinimumWidth(width_px)
        scroll.setAccessibleName(name)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(scroll)

    def squeeze(self, room_px: int) -> None:
        """Take no more room than there is, in a window smaller than it should be.

        It is scrolled from side to side then.
        """
        if self._scroll is None or self._width_px is None:
            return
        bar = Qt.ScrollBarPolicy
        tight = room_px < self._width_px
        self._content.setMinimumWidth(self._width_px if tight else 0)
        self._scroll.setMinimumWidth(max(_LEAST_PX, min(room_px, self._width_px)))
        self._scroll.setHorizontalScrollBarPolicy(
            bar.ScrollBarAsNeeded if tight else bar.ScrollBarAlwaysOff
        )
