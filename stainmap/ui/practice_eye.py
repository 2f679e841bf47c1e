"""Value differences by eye: two halves of a disc, one of them lighter, until one can just tell."""

from __future__ import annotations

from datetime import UTC, datetime

import numpy as np
from PySide6.QtCore import QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.practice.exercise import Kind
from stainmap.practice.exercise_words import WORDS, TaskWords
from stainmap.practice.staircase import LEAST_TRIALS, Staircase, Threshold
from stainmap.ui.plate import link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import SURROUND, font
from stainmap.words import translate

BLANK_MS = 250
_END_HEIGHT_PX = 220
FULL_DL, NONE_DL = 1.2, 6.0
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
        self.setAccessibleName(translate("practice eye", "Two halves of a disc"))
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
        words = WORDS[Kind.VALUE_BY_EYE].spoken()
        self.setWindowTitle(words.title)
        self.resize(760, 640)
        self.began_at = datetime.now(UTC)
        self._blank_ms = blank_ms
        # Which half is the lighter one is drawn by lot, the same for the same exercise.
        self._lot = np.random.default_rng(seed)
        self.test = Staircase()
        self._pair = self.test.next_pair()
        self._left_is_lighter = True
        self._is_over = False
        self._build(words)
        self._blank = QTimer(self)
        self._blank.setSingleShot(True)
        self._blank.setInterval(blank_ms)
        self._blank.timeout.connect(self._show_pair)

    def _build(self, words: TaskWords) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 18, 24, 18)
        column.setSpacing(10)
        self.ask = _sentence(words.ask, 550)
        self.steps = _sentence(
            "\n".join(f"{n}  {text}" for n, text in enumerate(words.steps, 1)), 400
        )
        self.view = HalvesView()
        self.view.chosen.connect(self.answer)
        self.count = SoftLabel("", 13)
        self.left, self.right = (
            QPushButton(translate("practice eye", "left is lighter")),
            QPushButton(translate("practice eye", "right is lighter")),
        )
        self.back = link_button(translate("practice eye", "take back"))
        self.back.setToolTip(translate("practice eye", "Take the last answer back (Backspace)"))
        self.back.clicked.connect(self.take_back)
        self.enough = link_button(translate("practice eye", "enough"))
        self.enough.setToolTip(
            translate("practice eye", "End the test with what is known of the threshold by now")
        )
        self.enough.clicked.connect(self._end)
        self.progress = QProgressBar()
        self.progress.setRange(0, 1000)
        self.progress.setTextVisible(False)
        self.progress.setFixedHeight(6)
        self.progress.setAccessibleName(translate("practice eye", "How far the test is"))
        self.begin = QPushButton(translate("practice eye", "Begin"))
        self.begin.setProperty("main", True)
        self.begin.clicked.connect(self.start)
        self.left.clicked.connect(lambda: self.answer(True))
        self.right.clicked.connect(lambda: self.answer(False))
        for part in (self.ask, self.steps):
            column.addWidget(part)
        column.addWidget(self.view, 1)
        column.addWidget(self.progress)
        row = QHBoxLayout()
        row.setSpacing(12)
        row.addWidget(self.count, 1)
        for link in (self.back, self.enough):
            row.addWidget(link)
        for button in (self.left, self.right, self.begin):
            button.setAutoDefault(False)
            row.addWidget(button)
        self._while_asked: tuple[QWidget, ...] = (
            self.left,
            self.right,
            self.back,
            self.enough,
            self.progress,
        )
        for asked in self._while_asked:
            asked.hide()
        column.addLayout(row)

    def start(self) -> None:
        """Show the first pair."""
        self.began_at = datetime.now(UTC)
        self.begin.hide()
        self.steps.hide()
        for part in self._while_asked:
            part.show()
        self.ask.setText(translate("practice eye", "Which half is lighter?"))
        self.view.setFocus()
        self._show_pair()

    def _show_pair(self) -> None:
        self._pair = self.test.next_pair()
        self._left_is_lighter = bool(self._lot.integers(2))
        greys = (self._pair.lighter, self._pair.darker)
        self.view.show_levels(*(greys if self._left_is_lighter else greys[::-1]))
        self.count.setText(
            translate("practice eye", "pair {count}").format(count=len(self.test.trials) + 1)
        )
        self.back.setEnabled(bool(self.test.trials))
        self.enough.setEnabled(len(self.test.trials) >= LEAST_TRIALS)
        self.progress.setValue(round(1000 * self.test.share_done))

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

    def take_back(self) -> None:
        """Ask anew as if the last answer had not been given."""
        if self.view.is_asking and self.test.trials:
            self.test = self.test.taken_back()
            self.view.setFocus()
            self.view.show_nothing()
            self._blank.start()

    @property
    def _is_running(self) -> bool:
        return self.begin.isHidden() and not self._is_over

    def reject(self) -> None:
        """Close; a test that has told something already ends with it first, so it is kept."""
        if self._is_running and len(self.test.trials) >= LEAST_TRIALS:
            self._end()
            return
        super().reject()

    def _end(self) -> None:
        if self._is_over:
            return
        self._is_over = True
        self._blank.stop()
        self.view.show_nothing()
        for part in (*self._while_asked, self.view):
            part.hide()
        found = self.test.threshold()
        self.ask.setText(threshold_words(found))
        self.steps.setText(
            translate(
                "practice eye",
                "Screen, light and tiredness matter: compare only with yourself, on the same"
                " screen.",
            )
        )
        self.steps.show()
        self.count.setText(
            translate("practice eye", "{count} pairs").format(count=len(self.test.trials))
        )
        close = QPushButton(translate("practice eye", "Close"))
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
        elif event.key() == Qt.Key.Key_Backspace:
            self.take_back()
        else:
            super().keyPressEvent(event)


def threshold_words(found: Threshold) -> str:
    """Return what a test has found, in a sentence."""
    if found.not_found:
        return translate(
            "practice eye", "No difference was told reliably: try again in a calmer light."
        )
    if found.below_screen:
        return translate(
            "practice eye",
            "You tell the smallest step this screen can show: your threshold is below "
            "{threshold:.1f} L*.",
        ).format(threshold=found.threshold_dl)
    return translate(
        "practice eye",
        "You can just tell {threshold:.1f} L* (between {low:.1f} and {high:.1f} with 95 %"
        " probability): right in five of six cases.",
    ).format(threshold=found.threshold_dl, low=found.low_dl, high=found.high_dl)


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
