"""Value differences by eye: two halves of a disc, one of them lighter, until one can just tell."""

from __future__ import annotations

from datetime import UTC, datetime

import numpy as np
from PySide6.QtCore import QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from stainmap.practice.exercise import Kind
from stainmap.practice.exercise_words import WORDS
from stainmap.practice.staircase import Staircase, Threshold
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import SURROUND, font

BLANK_MS = 350
_END_HEIGHT_PX = 220
FULL_DL, NONE_DL = 0.8, 4.0
"""A threshold that is worth all points, and one that is worth none; assumed."""


class HalvesView(QWidget):
    """A disc on a neutral surround, its halves of two greys, or nothing between two pairs.

    Signals
    -------
    chosen
        True if the left half was said to be the lighter one.
    """

    chosen = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setMinimumSize(420, 320)
        self.setAccessibleName("Two halves of a disc")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._levels: tuple[int, int] | None = None

    def show_levels(self, left: int, right: int) -> None:
        """Show two greys, levels of the screen."""
        self._levels = (left, right)
        self.update()

    def show_nothing(self) -> None:
        """Show the bare surround."""
        self._levels = None
        self.update()

    @property
    def is_asking(self) -> bool:
        """True while a pair is shown."""
        return self._levels is not None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take the half that was clicked as the lighter one."""
        if self.is_asking:
            self.chosen.emit(event.position().x() < 0.5 * self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the halves touching: no line between them gives anything away."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(SURROUND))
        if self._levels is not None:
            size = 0.8 * min(self.width(), self.height())
            disc = QRectF((self.width() - size) / 2, (self.height() - size) / 2, size, size)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            for start, level in ((90, self._levels[0]), (-90, self._levels[1])):
                painter.setBrush(QColor(level, level, level))
                painter.drawPie(disc, start * 16, 180 * 16)
        painter.end()


class EyeDialog(QDialog):
    """One test from beginning to end.

    Signals
    -------
    finished_test
        `Threshold` and how many pairs were asked, once the test is over.
    """

    finished_test = Signal(object, int)

    def __init__(
        self, seed: int, parent: QWidget | None = None, *, blank_ms: int = BLANK_MS
    ) -> None:
        super().__init__(parent)
        words = WORDS[Kind.VALUE_BY_EYE]
        self.setWindowTitle(words.title)
        self.resize(760, 640)
        self.began_at = datetime.now(UTC)
        self._blank_ms = blank_ms
        # Which half is the lighter one is drawn by lot, the same for the same exercise.
        self._lot = np.random.default_rng(seed)
        self.test = Staircase()
        self._pair = self.test.next_pair()
        self._left_is_lighter = True
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 18, 24, 18)
        column.setSpacing(10)
        self.ask = _sentence(words.ask, 550)
        self.steps = _sentence("\n".join(f"{n}  {t}" for n, t in enumerate(words.steps, 1)), 400)
        self.view = HalvesView()
        self.view.chosen.connect(self.answer)
        self.count = SoftLabel("", 13)
        self.left, self.right = QPushButton("left is lighter"), QPushButton("right is lighter")
        self.begin = QPushButton("Begin")
        self.begin.setProperty("main", True)
        self.begin.clicked.connect(self.start)
        self.left.clicked.connect(lambda: self.answer(True))
        self.right.clicked.connect(lambda: self.answer(False))
        for part in (self.ask, self.steps):
            column.addWidget(part)
        column.addWidget(self.view, 1)
        row = QHBoxLayout()
        row.addWidget(self.count, 1)
        for button in (self.left, self.right, self.begin):
            button.setAutoDefault(False)
            row.addWidget(button)
        self.left.hide()
        self.right.hide()
        column.addLayout(row)
        self._blank = QTimer(self)
        self._blank.setSingleShot(True)
        self._blank.setInterval(blank_ms)
        self._blank.timeout.connect(self._show_pair)

    def start(self) -> None:
        """Show the first pair."""
        self.began_at = datetime.now(UTC)
        self.begin.hide()
        self.steps.hide()
        self.left.show()
        self.right.show()
        self.ask.setText("Which half is lighter?")
        self.view.setFocus()
        self._show_pair()

    def _show_pair(self) -> None:
        self._pair = self.test.next_pair()
        self._left_is_lighter = bool(self._lot.integers(2))
        greys = (self._pair.lighter, self._pair.darker)
        self.view.show_levels(*(greys if self._left_is_lighter else greys[::-1]))
        self.count.setText(f"pair {len(self.test.trials) + 1}")

    def answer(self, left: bool) -> None:
        """Take an answer: which half is the lighter one."""
        if not self.view.is_asking:
            return
        self.test = self.test.answered(self._pair, correct=left == self._left_is_lighter)
        self.view.show_nothing()
        if self.test.finished:
            self._end()
        else:
            self._blank.start()

    def _end(self) -> None:
        for part in (self.left, self.right, self.view):
            part.hide()
        found = self.test.threshold()
        self.ask.setText(threshold_words(found))
        self.steps.setText(
            "Between two teeth half of observers see about 1 L*. Screen, light and tiredness"
            " matter: compare only with yourself, on the same screen."
        )
        self.steps.show()
        self.count.setText(f"{len(self.test.trials)} pairs")
        close = QPushButton("Close")
        close.setAutoDefault(False)
        close.clicked.connect(self.accept)
        row = self.layout()
        if isinstance(row, QVBoxLayout):
            row.addStretch(1)
            row.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
        self.resize(self.width(), _END_HEIGHT_PX)
        self.finished_test.emit(found, len(self.test.trials))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take the arrow keys as answers."""
        if event.key() == Qt.Key.Key_Left and self.view.is_asking:
            self.answer(True)
        elif event.key() == Qt.Key.Key_Right and self.view.is_asking:
            self.answer(False)
        else:
            super().keyPressEvent(event)


def threshold_words(found: Threshold) -> str:
    """Return what a test has found, in a sentence."""
    if found.not_found:
        return "No difference was told reliably: try again in a calmer light."
    if found.below_screen:
        return (
            "You tell the smallest step this screen can show: your threshold is below"
            f" {found.threshold_dl:.1f} L*."
        )
    return (
        f"You can just tell {found.threshold_dl:.1f} L* (between {found.low_dl:.1f} and"
        f" {found.high_dl:.1f} with 95 % probability): right in three of four cases."
    )


def eye_points(found: Threshold) -> float:
    """Return 10 to 100 points for a threshold, evenly in its logarithm."""
    if found.not_found:
        return 10.0
    share = np.log(NONE_DL / found.threshold_dl) / np.log(NONE_DL / FULL_DL)
    return float(np.clip(100.0 * share, 10.0, 100.0).round(1))


def _sentence(text: str, weight: int) -> QLabel:
    label = QLabel(text)
    label.setFont(font(13, weight))
    label.setWordWrap(True)
    return label
