"""What is asked in practice, above the crown: the task, what to do, the time, and hand in."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from stainmap.practice.exercise import SITTING_MINUTES, Kind
from stainmap.practice.exercise_faults import WORDS as FAULT_WORDS
from stainmap.practice.exercise_words import TaskWords
from stainmap.practice.scoring import FaultAnswer
from stainmap.ui.plate import link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones

_TICK_MS = 1000
_UNSAID = "not said yet"


class PracticeBar(QWidget):
    """The task of the exercise that is open.

    Signals
    -------
    handed_in
        The answer is to be scored.
    left
        Practice is to end.
    stopped
        What is being made is not to be waited for.
    switched
        Of a fault: True to see the crown as it was planned, False as it came out.
    map_asked
        The coat map is to be shown.
    """

    handed_in = Signal()
    left = Signal()
    stopped = Signal()
    switched = Signal(bool)
    map_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Practice")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        column = QVBoxLayout(self)
        column.setContentsMargins(22, 10, 16, 10)
        column.setSpacing(6)
        column.addLayout(self._head())
        self.ask = QLabel()
        self.ask.setFont(font(13, 550))
        self.ask.setWordWrap(True)
        column.addWidget(self.ask)
        self.steps = SoftLabel("", 13)
        self.steps.setWordWrap(True)
        self.steps.setTextFormat(Qt.TextFormat.PlainText)
        column.addWidget(self.steps)
        self.progress = QProgressBar()
        self.progress.setRange(0, 1000)
        self.progress.setTextVisible(False)
        self.progress.setFixedHeight(6)
        self.progress.setAccessibleName("Share done")
        column.addWidget(self.progress)
        self.faults = self._fault_rows()
        column.addWidget(self.faults)
        self._choices: tuple[Kind, ...] = ()
        self._seconds = 0
        self._clock = QTimer(self)
        self._clock.setInterval(_TICK_MS)
        self._clock.timeout.connect(self._tick)
        self.show_making("")

    def _head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(16)
        self.title = QLabel()
        self.title.setFont(font(15, 650))
        self.time = SoftLabel("", 13)
        self.time.setToolTip(
            f"A sitting is {SITTING_MINUTES} minutes; nothing happens when they are over"
        )
        self.fold = link_button("less")
        self.fold.setAccessibleName("Show less of the task")
        self.fold.clicked.connect(self._fold)
        self.map = QPushButton("Show the coat map")
        self.map.clicked.connect(self.map_asked)
        self.hand_in = QPushButton("Hand in")
        self.hand_in.setProperty("main", True)
        self.hand_in.setToolTip("Score what is there (Ctrl+Return)")
        self.hand_in.clicked.connect(self.handed_in)
        self.leave = link_button("leave practice")
        self.leave.clicked.connect(self.left)
        row.addWidget(self.title)
        row.addWidget(self.time)
        row.addWidget(self.fold)
        row.addStretch(1)
        row.addWidget(self.map)
        row.addWidget(self.hand_in)
        row.addWidget(self.leave)
        return row

    def _fault_rows(self) -> QWidget:
        part = QWidget()
        grid = QGridLayout(part)
        grid.setContentsMargins(0, 2, 0, 0)
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(1, 1)
        self.sign, self.cause = QComboBox(), QComboBox()
        rows = (
            ("What is to be seen?", "What you see", self.sign),
            ("What was done wrong?", "What was done wrong", self.cause),
        )
        for number, (question, name, box) in enumerate(rows):
            label = QLabel(question)
            label.setBuddy(box)
            box.setAccessibleName(name)
            box.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
            grid.addWidget(label, number, 0)
            grid.addWidget(box, number, 1)
        self.planned = QPushButton("Show as planned (V)")
        self.planned.setCheckable(True)
        self.planned.toggled.connect(self._switch)
        self.here = SoftLabel("Point at the crown to read both colours of a place.", 12)
        grid.addWidget(self.planned, 2, 0)
        grid.addWidget(self.here, 2, 1)
        return part

    # --- what is shown -----------------------------------------------------------------------

    def show_making(self, phrase: str, share: float = 0.0, title: str = "") -> None:
        """Say that an exercise is being made, and how far it is."""
        self.title.setText(title or "Practice")
        self.ask.setText(phrase)
        self.progress.setValue(round(1000 * share))
        for part in (self.steps, self.faults, self.hand_in, self.fold, self.map, self.time):
            part.hide()
        self.progress.setVisible(bool(phrase))

    def show_task(self, kind: Kind, words: TaskWords, choices: Sequence[Kind]) -> None:
        """Show a task, ready to be done; the clock begins."""
        self.title.setText(words.title)
        self.ask.setText(words.ask)
        self.steps.setText("\n".join(f"{n}  {text}" for n, text in enumerate(words.steps, 1)))
        self.setAccessibleDescription(f"{words.ask} {' '.join(words.steps)}")
        self.progress.hide()
        for part in (self.steps, self.hand_in, self.fold, self.time):
            part.show()
        self._unfold(True)
        self.faults.setVisible(bool(choices))
        self.map.setVisible(kind is Kind.PAPER_MAP)
        self._choices = tuple(choices)
        told = [FAULT_WORDS[choice] for choice in choices]
        for box, texts in (
            (self.sign, [one.sign for one in told]),
            (self.cause, [one.cause for one in told]),
        ):
            box.clear()
            box.addItems([_UNSAID, *texts])
        self.planned.setChecked(False)
        self.hand_in.setEnabled(True)
        self._seconds = 0
        self._show_time()
        self._clock.start()

    def show_done(self, text: str) -> None:
        """Say that the answer is scored; nothing can be handed in any more."""
        self._clock.stop()
        self.ask.setText(text)
        for part in (self.steps, self.faults, self.hand_in, self.fold, self.map):
            part.hide()

    def say_here(self, text: str) -> None:
        """Tell the colours of the place under the pointer."""
        self.here.setText(text)

    @property
    def answer(self) -> FaultAnswer:
        """What was chosen as cause and sign of a fault."""
        return FaultAnswer(cause=self._chosen(self.cause), sign=self._chosen(self.sign))

    def _chosen(self, box: QComboBox) -> Kind | None:
        return self._choices[box.currentIndex() - 1] if box.currentIndex() > 0 else None

    @property
    def minutes(self) -> float:
        """How long the task has been open."""
        return self._seconds / 60.0

    def _switch(self, planned: bool) -> None:
        self.planned.setText("Show as it came out (V)" if planned else "Show as planned (V)")
        self.switched.emit(planned)

    def _fold(self) -> None:
        self._unfold(self.steps.isHidden())

    def _unfold(self, whole: bool) -> None:
        self.steps.setVisible(whole)
        self.fold.setText("less" if whole else "what to do")
        name = "Show less of the task" if whole else "Show what to do"
        self.fold.setAccessibleName(name)

    def _tick(self) -> None:
        self._seconds += 1
        self._show_time()

    def _show_time(self) -> None:
        self.time.setText(f"{self._seconds // 60}:{self._seconds % 60:02d}")

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the bar, with the accent at its left edge."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.panel))
        painter.fillRect(QRectF(0, 0, 4, self.height()), QColor(t.accent))
        painter.fillRect(0, self.height() - 1, self.width(), 1, QColor(t.line))
        painter.end()
