"""Advice under the value ladder: short sentences, each with its limit and a way to its place."""

from __future__ import annotations

import re
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from stainmap.planning.advice_value import Advice, Severity
from stainmap.ui.marks import Align, paint_text
from stainmap.ui.plate import link_button
from stainmap.ui.section import SectionHead, SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import marked, sentence_case, translate, value_word

_MARK_PX = 18
_FIGURE = re.compile(r"(\d) (?=mm|%|dE00|L\*|coats?|min|units?)")
_NOTHING = marked("advice panel", "Nothing to say about this plan.")
_NOTHING_ELSE = marked("advice panel", "Nothing else to say about this plan.")


class SeverityMark(QWidget):
    """Told by form, not by colour: a filled square, a ring, a dot."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedSize(QSize(_MARK_PX, _MARK_PX))
        self._severity = Severity.NOTE

    def set_severity(self, severity: Severity) -> None:
        """Show another one."""
        self._severity = severity
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        middle = QPointF(_MARK_PX / 2.0 - 1.0, _MARK_PX / 2.0)
        if self._severity is Severity.SETTLE:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(t.caution))
            painter.drawRoundedRect(QRectF(middle.x() - 7, middle.y() - 7, 14, 14), 3, 3)
            at = (middle.x(), middle.y() + 4.5)
            paint_text(painter, at, "!", t.panel, px=12, weight=650, align=Align.AlignHCenter)
        elif self._severity is Severity.CHECK:
            painter.setPen(QPen(QColor(t.ink), 1.6))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(middle, 4.5, 4.5)
        else:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(t.soft))
            painter.drawEllipse(middle, 2.5, 2.5)
        painter.end()


class AdviceRow(QWidget):
    """One sentence; a click or the space bar opens what stands behind it.

    Signals
    -------
    show_asked
        The `Advice` whose place is to be shown, or no longer.
    hide_asked
        The `Advice` that is not to be shown any more in this case.
    moved
        +1 or -1: the row below or above is to have the focus.
    """

    show_asked = Signal(object)
    hide_asked = Signal(object)
    moved = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.advice: Advice | None = None
        self.mark = SeverityMark()
        self.sentence, self.detail = QLabel(), SoftLabel("", 12)
        self.sentence.setFont(font(13))
        for label in (self.sentence, self.detail):
            label.setWordWrap(True)
            label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.MinimumExpanding)
        self.detail.hide()
        self.show_me = link_button(translate("advice panel", "show me"))
        self.show_me.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        # The sentence keeps its lines while the word changes.
        self.show_me.setFixedWidth(self.show_me.sizeHint().width())
        self.show_me.clicked.connect(self._ask)
        words = QVBoxLayout()
        words.setContentsMargins(0, 1, 0, 0)
        words.setSpacing(3)
        self.put_aside = link_button(translate("advice panel", "Hide this advice"))
        self.put_aside.setToolTip(
            translate("advice panel", "Hide this advice in this case (Del). It can be shown again.")
        )
        self.put_aside.hide()
        self.put_aside.clicked.connect(self._ask_to_hide)
        words.addWidget(self.sentence)
        words.addWidget(self.detail)
        words.addWidget(self.put_aside, 0, Qt.AlignmentFlag.AlignLeft)
        row = QHBoxLayout(self)
        row.setContentsMargins(4, 5, 4, 5)
        row.setSpacing(6)
        row.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        row.addWidget(self.show_me, 0, Qt.AlignmentFlag.AlignTop)

    @property
    def is_open(self) -> bool:
        """True while limit and source are shown."""
        return not self.detail.isHidden()

    def set_advice(self, advice: Advice, *, shown: bool) -> None:
        """Show a piece of advice; `shown` if its place is marked on the crown."""
        if self.advice is None or self.advice.sentence != advice.sentence:
            self.open_detail(False)
        self.advice = advice
        self.mark.set_severity(advice.severity)
        self.sentence.setText(kept_together(advice.sentence))
        self.detail.setText(kept_together(advice.detail))
        self.show_me.setVisible(advice.place is not None)
        self.show_me.setText(
            translate("advice panel", "unmark") if shown else translate("advice panel", "show me")
        )
        self.show_me.setAccessibleName(f"{self.show_me.text()}: {advice.sentence}")
        severity = value_word(advice.severity)
        self.setAccessibleName(f"{severity}: {advice.sentence}")
        self.setAccessibleDescription(advice.detail)
        self.put_aside.setAccessibleName(
            translate("advice panel", "Hide this advice: {sentence}").format(
                sentence=advice.sentence
            )
        )
        told = [f"<b>{sentence_case(severity)}.</b>", advice.detail]
        if advice.place is not None:
            told.append(translate("advice panel", "Return: show me."))
        self.setToolTip(f"<p>{' '.join(told)}</p>")

    def open_detail(self, opened: bool) -> None:
        """Show or hide limit and source."""
        self.detail.setVisible(opened)
        self.put_aside.setVisible(opened)
        self.updateGeometry()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the line above, and the focus."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(QRectF(0, 0, self.width(), 1), QColor(t.hair))
        if self.hasFocus():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(QColor(t.accent), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 2, -1, -1), 3, 3)
        painter.end()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Open or close the detail."""
        if event.button() == Qt.MouseButton.LeftButton and self.rect().contains(
            event.position().toPoint()
        ):
            self._turn_over()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Come into sight."""
        super().focusInEvent(event)
        self._come_into_sight()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return shows the place, space opens the detail, Del hides it, arrows go up and down."""
        key = event.key()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._ask()
        elif key == Qt.Key.Key_Space:
            self._turn_over()
        elif key == Qt.Key.Key_Delete:
            self._ask_to_hide()
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.moved.emit(1 if key == Qt.Key.Key_Down else -1)
        else:
            super().keyPressEvent(event)

    def _turn_over(self) -> None:
        if self.advice is not None and self.advice.detail:
            self.open_detail(not self.is_open)
            # Once the list has made room for it.
            QTimer.singleShot(0, self, self._come_into_sight)

    def _come_into_sight(self) -> None:
        above = self.parentWidget()
        while above is not None and not isinstance(above, QScrollArea):
            above = above.parentWidget()
        if isinstance(above, QScrollArea):
            above.ensureWidgetVisible(self, 0, 8)

    def _ask_to_hide(self) -> None:
        if self.advice is not None:
            self.hide_asked.emit(self.advice)

    def _ask(self) -> None:
        if self.advice is not None and self.advice.place is not None:
            self.show_asked.emit(self.advice)


class AdvicePanel(QWidget):
    """All advice under each other, most urgent first.

    Signals
    -------
    show_asked
        The `Advice` whose place is to be shown, or no longer.
    hide_asked
        The `Advice` that is not to be shown any more in this case.
    all_asked
        What was hidden is to be shown again.
    """

    show_asked = Signal(object)
    hide_asked = Signal(object)
    all_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("advice panel", "Advice"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        self.head = SectionHead(translate("advice panel", "Advice"))
        self.nothing = SoftLabel(translate("advice panel", _NOTHING))
        column.addWidget(self.head)
        column.addWidget(self.nothing)
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        column.addLayout(self._list)
        self.all = link_button("")
        self.all.setToolTip(translate("advice panel", "Show again what was hidden in this case"))
        self.all.hide()
        self.all.clicked.connect(self.all_asked)
        column.addWidget(self.all, 0, Qt.AlignmentFlag.AlignLeft)
        self.rows: list[AdviceRow] = []

    def set_advice(
        self, said: Sequence[Advice], shown: Advice | None = None, *, hidden: int = 0
    ) -> None:
        """Show these, in this order.

        Parameters
        ----------
        shown
            The one whose place is marked on the crown.
        hidden
            How many more there are that somebody has hidden.
        """
        while len(self.rows) < len(said):
            row = AdviceRow()
            row.show_asked.connect(self.show_asked)
            row.hide_asked.connect(self.hide_asked)
            row.moved.connect(lambda step, one=row: self._move_focus(one, step))
            self._list.addWidget(row)
            self.rows.append(row)
        for k, row in enumerate(self.rows):
            row.setVisible(k < len(said))
            if k < len(said):
                row.set_advice(said[k], shown=said[k] is shown)
        self.nothing.setVisible(not said)
        self.nothing.setText(
            translate("advice panel", _NOTHING_ELSE)
            if hidden
            else translate("advice panel", _NOTHING)
        )
        self.all.setVisible(hidden > 0)
        self.all.setText(
            translate("advice panel", "{hidden} hidden: show again").format(hidden=hidden)
        )
        self.head.set_remark(counted(said))

    def _move_focus(self, row: AdviceRow, step: int) -> None:
        at = self.rows.index(row) + step
        if 0 <= at < len(self.rows) and not self.rows[at].isHidden():
            self.rows[at].setFocus(Qt.FocusReason.TabFocusReason)


def kept_together(text: str) -> str:
    """Return a text whose lines do not break between a figure and its unit."""
    return _FIGURE.sub("\\1\N{NO-BREAK SPACE}", text)


def counted(said: Sequence[Advice]) -> str:
    """Return how many there are of each severity, such as "1 to settle, 2 to check"."""
    words = {
        Severity.SETTLE: translate("advice panel", "to settle"),
        Severity.CHECK: translate("advice panel", "to check"),
        Severity.NOTE: translate("advice panel", "noted"),
    }
    counts = {severity: sum(one.severity is severity for one in said) for severity in Severity}
    return ", ".join(f"{counts[one]} {words[one]}" for one in Severity if counts[one])
