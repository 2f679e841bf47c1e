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
from stainmap.practice.exercise_words import TaskWords, exercise_text
from stainmap.practice.scoring import FaultAnswer
from stainmap.ui.plate import link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import marked, translate

_TICK_MS = 1000
_UNSAID = marked("practice bar", "not said yet")


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
    again, listed
        The same exercise once more, and another one.
    """

    handed_in = Signal()
    left = Signal()
    stopped = Signal()
    switched = Signal(bool)
    map_asked = Signal()
    again = Signal()
    listed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("practice bar", "Practice"))
        # As high as its text is at its width; the crown, which expands, has the rest.
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
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
        self.progress.setAccessibleName(translate("practice bar", "Share done"))
        making = QHBoxLayout()
        making.setSpacing(16)
        making.addWidget(self.progress, 1)
        # Not where Hand in will stand: a click that comes too late must not hand in.
        making.addWidget(self.stop)
        column.addLayout(making)
        self.faults = self._fault_rows()
        column.addWidget(self.faults)
        self._signs: tuple[Kind, ...] = ()
        self._causes: tuple[Kind, ...] = ()
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
        # A long title takes a second line in a narrow window.
        self.title.setWordWrap(True)
        self.time = SoftLabel("", 13)
        self.time.setToolTip(
            translate(
                "practice bar",
                "A sitting is {minutes} minutes; nothing happens when they are over",
            ).format(minutes=SITTING_MINUTES)
        )
        self.fold = link_button(translate("practice bar", "less"))
        self.fold.setAccessibleName(translate("practice bar", "Show less of the task"))
        self.fold.clicked.connect(self._fold)
        self.map = QPushButton(translate("practice bar", "Show the coat map"))
        self.map.clicked.connect(self.map_asked)
        self.hand_in = QPushButton(translate("practice bar", "Hand in"))
        self.hand_in.setProperty("main", True)
        self.hand_in.setToolTip(translate("practice bar", "Score what is there (Ctrl+Return)"))
        self.hand_in.clicked.connect(self.handed_in)
        self.stop = link_button(translate("practice bar", "stop"))
        self.stop.setToolTip(translate("practice bar", "Do not wait for this exercise"))
        self.stop.clicked.connect(self.stopped)
        self.once_more = QPushButton(translate("practice bar", "Try it again"))
        self.once_more.clicked.connect(self.again)
        self.next = QPushButton(translate("practice bar", "Next exercise"))
        self.next.setProperty("main", True)
        self.next.clicked.connect(self.listed)
        self.leave = link_button(translate("practice bar", "leave practice"))
        self.leave.clicked.connect(self.left)
        row.addWidget(self.title, 1)
        row.addWidget(self.time)
        row.addWidget(self.fold)
        row.addWidget(self.map)
        row.addWidget(self.hand_in)
        row.addWidget(self.once_more)
        row.addWidget(self.next)
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
            (
                translate("practice bar", "What is to be seen?"),
                translate("practice bar", "What you see"),
                self.sign,
            ),
            (
                translate("practice bar", "What was done wrong?"),
                translate("practice bar", "What was done wrong"),
                self.cause,
            ),
        )
        for number, (question, name, box) in enumerate(rows):
            label = QLabel(question)
            label.setBuddy(box)
            box.setAccessibleName(name)
            box.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
            grid.addWidget(label, number, 0)
            grid.addWidget(box, number, 1)
        self.planned = QPushButton(translate("practice bar", "Show as planned (V)"))
        self.planned.setCheckable(True)
        self.planned.toggled.connect(self._switch)
        # Both texts fit: the button must not jump under the pointer.
        widths = []
        for planned in (True, False):
            self._name_switch(planned)
            widths.append(self.planned.sizeHint().width())
        self.planned.setFixedWidth(max(widths))
        self.here = SoftLabel(
            translate("practice bar", "Point at the crown to read both colours of a place."), 12
        )
        grid.addWidget(self.planned, 2, 0)
        grid.addWidget(self.here, 2, 1)
        return part

    # --- what is shown -----------------------------------------------------------------------

    def show_making(self, phrase: str, share: float = 0.0, title: str = "") -> None:
        """Say that an exercise is being made, and how far it is."""
        self.title.setText(title or translate("practice bar", "Practice"))
        self.ask.setText(phrase)
        self.progress.setValue(round(1000 * share))
        for part in (self.steps, self.faults, self.hand_in, self.fold, self.map, self.time):
            part.hide()
        for button in (self.once_more, self.next):
            button.hide()
        self.progress.setVisible(bool(phrase))
        self.stop.setVisible(bool(phrase))

    def show_not_made(self, text: str) -> None:
        """Say why there is no exercise; it can be tried again, or another one chosen."""
        self.ask.setText(text)
        self.progress.hide()
        for button in (self.stop, self.hand_in):
            button.hide()
        for button in (self.once_more, self.next):
            button.show()

    def show_task(self, kind: Kind, words: TaskWords, choices: Sequence[Kind]) -> None:
        """Show a task, ready to be done; the clock begins."""
        said = words.spoken()
        self.title.setText(said.title)
        self.ask.setText(said.ask)
        self.steps.setText("\n".join(f"{n}  {text}" for n, text in enumerate(said.steps, 1)))
        self.setAccessibleDescription(f"{said.ask} {' '.join(said.steps)}")
        self.progress.hide()
        for button in (self.stop, self.once_more, self.next):
            button.hide()
        for part in (self.steps, self.hand_in, self.fold, self.time):
            part.show()
        self._unfold(True)
        self.faults.setVisible(bool(choices))
        self.map.setVisible(kind is Kind.PAPER_MAP)
        # In another order each: the place of what is seen must not tell what was done.
        self._signs, half = tuple(choices), len(choices) // 2
        self._causes = (*self._signs[half:], *self._signs[:half])[::-1]
        for box, texts in (
            (self.sign, [exercise_text(FAULT_WORDS[one].sign) for one in self._signs]),
            (self.cause, [exercise_text(FAULT_WORDS[one].cause) for one in self._causes]),
        ):
            box.clear()
            box.addItems([translate("practice bar", _UNSAID), *texts])
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
        for button in (self.once_more, self.next):
            button.show()

    def say_here(self, text: str) -> None:
        """Tell the colours of the place under the pointer."""
        self.here.setText(text)

    @property
    def answer(self) -> FaultAnswer:
        """What was chosen as cause and sign of a fault."""
        return FaultAnswer(
            cause=_chosen(self.cause, self._causes), sign=_chosen(self.sign, self._signs)
        )

    @property
    def minutes(self) -> float:
        """How long the task has been open."""
        return self._seconds / 60.0

    def _switch(self, planned: bool) -> None:
        self._name_switch(planned)
        self.switched.emit(planned)

    def _name_switch(self, planned: bool) -> None:
        self.planned.setText(
            translate("practice bar", "Show as it came out (V)")
            if planned
            else translate("practice bar", "Show as planned (V)")
        )

    def _fold(self) -> None:
        self._unfold(self.steps.isHidden())

    def _unfold(self, whole: bool) -> None:
        self.steps.setVisible(whole)
        self.fold.setText(
            translate("practice bar", "less") if whole else translate("practice bar", "what to do")
        )
        name = (
            translate("practice bar", "Show less of the task")
            if whole
            else translate("practice bar", "Show what to do")
        )
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


def _chosen(box: QComboBox, kinds: tuple[Kind, ...]) -> Kind | None:
    return kinds[box.currentIndex() - 1] if box.currentIndex() > 0 else None
