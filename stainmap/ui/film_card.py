"""The card of the film on the crown: what the coat does, a stroke per coat, how to play it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QHBoxLayout,
    QPushButton,
    QSizePolicy,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from stainmap.ui.plate import Plate, link_button
from stainmap.ui.progress_line import ProgressLine
from stainmap.ui.section import SoftLabel
from stainmap.ui.status_line import ElidedLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate

WIDTH_PX, _LEAST_PX = 520, 300
_TRACK_PX, _GAP_PX, _STEP_GAP_PX = 22, 2.0, 7.0
_WORDS_PX = 50  # three lines


class FilmTrack(QSlider):
    """One short stroke for every coat, those of a step together; the bare block is the first."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setAccessibleName(translate("film card", "Coat that is shown"))
        self.setPageStep(1)
        self.setFixedHeight(_TRACK_PX)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._dyes: tuple[tuple[int, str], ...] = ()

    def set_coats(self, coats: Sequence[tuple[int, str]]) -> None:
        """Take number of the step and dye of the jar, as ``#rrggbb``, of every coat."""
        self._dyes = tuple(coats)
        self.setRange(0, len(coats))
        self.update()

    def sizeHint(self) -> QSize:
        """Return a low bar."""
        return QSize(200, _TRACK_PX)

    def strokes(self) -> list[QRectF]:
        """Return where the strokes lie, that of the bare block first."""
        steps = [0, *(step for step, _ in self._dyes)]
        breaks = sum(before != after for before, after in pairwise(steps))
        room = self.width() - 4.0 - _STEP_GAP_PX * breaks - _GAP_PX * (len(steps) - 1 - breaks)
        wide = max(room / len(steps), 1.0)
        found, x = [], 2.0
        for at, step in enumerate(steps):
            if at:
                x += _STEP_GAP_PX if step != steps[at - 1] else _GAP_PX
            found.append(QRectF(x, 6.0, wide, self.height() - 12.0))
            x += wide
        return found

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the strokes: painted ones in their jar's dye, the others empty."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        for at, rect in enumerate(self.strokes()):
            dye = t.field if at == 0 else self._dyes[at - 1][1]
            painter.setPen(QPen(QColor(t.soft), 1))
            painter.setBrush(QColor(dye) if at <= self.value() else Qt.BrushStyle.NoBrush)
            painter.drawRect(rect)
            if at == self.value():
                painter.setPen(QPen(QColor(t.accent), 2.5))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRect(rect.adjusted(-1, -3, 1, 3))
        if self.hasFocus():
            painter.setPen(QPen(QColor(t.accent), 1, Qt.PenStyle.DotLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))
        painter.end()

    def _at(self, place: QPointF) -> int:
        """Return the coat whose stroke is nearest."""
        middles = [abs(rect.center().x() - place.x()) for rect in self.strokes()]
        return middles.index(min(middles))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the stroke that is clicked."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.setValue(self._at(event.position()))
            event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Follow the pointer while the button is down."""
        if event.buttons() & Qt.MouseButton.LeftButton:
            self.setValue(self._at(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Nothing is left to do."""
        event.accept()


class FilmCard(Plate):
    """Words and figures of a coat above the strokes of all coats and the buttons.

    Signals
    -------
    moved
        The coat that is to be shown, from 0, the bare block.
    play_asked, faster_asked, slower_asked, save_asked, closed, stopped
        The buttons.
    """

    moved = Signal(int)
    play_asked = Signal()
    faster_asked = Signal()
    slower_asked = Signal()
    save_asked = Signal()
    closed = Signal()
    stopped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("film card", "Film of the plan"))
        self._title = ElidedLabel()
        self._title.setFont(font(15, 600))
        self._title.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._lines = (SoftLabel("", 12), SoftLabel("", 12))
        for label in self._lines:
            label.setWordWrap(True)
        self.track = FilmTrack()
        self.track.valueChanged.connect(self.moved)
        self.progress = ProgressLine()
        self.progress.stopped.connect(self.stopped)
        self.play = self._button(
            translate("film card", "play"),
            translate("film card", "Play the film"),
            self.play_asked.emit,
        )
        self.back = self._button(
            translate("film card", "back"),
            translate("film card", "One coat back"),
            lambda: self._go_by(-1),
        )
        self.on = self._button(
            translate("film card", "on"),
            translate("film card", "One coat on"),
            lambda: self._go_by(1),
        )
        self.slower = self._button(
            translate("film card", "slower"),
            translate("film card", "Play slower"),
            self.slower_asked.emit,
        )
        self.faster = self._button(
            translate("film card", "faster"),
            translate("film card", "Play faster"),
            self.faster_asked.emit,
        )
        self.save = self._button(
            translate("film card", "save..."),
            translate("film card", "Save the film as pictures"),
            self.save_asked.emit,
        )
        self.close_button = self._button(
            translate("film card", "close"),
            translate("film card", "Close the film"),
            self.closed.emit,
        )
        self._speed = SoftLabel("", 12)
        head = QHBoxLayout()
        head.addWidget(self._title, 1)
        head.addWidget(self.close_button)
        foot = QHBoxLayout()
        foot.setSpacing(18)
        self._foot = QWidget()
        self._foot.setLayout(foot)
        foot.setContentsMargins(0, 0, 0, 0)
        for button in (self.play, self.back, self.on, self.slower):
            foot.addWidget(button)
        foot.addWidget(self._speed)
        foot.addWidget(self.faster)
        foot.addStretch(1)
        foot.addWidget(self.save)
        self._words = QWidget()
        words = QVBoxLayout(self._words)
        words.setContentsMargins(0, 0, 0, 0)
        words.setSpacing(2)
        for label in self._lines:
            words.addWidget(label)
        words.addStretch(1)
        self.body.addLayout(head)
        self.body.addWidget(self._words)
        self.body.addWidget(self.progress)
        self.body.addWidget(self.track)
        self.body.addWidget(self._foot)

    @staticmethod
    def _button(word: str, name: str, call: Callable[[], object]) -> QPushButton:
        button = link_button(word)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.clicked.connect(lambda _on: call())
        return button

    def _go_by(self, coats: int) -> None:
        self.track.setValue(self.track.value() + coats)

    def say(self, title: str, lines: Sequence[str]) -> None:
        """Show the words of a moment."""
        self._title.setText(title)
        self._title.setToolTip(title)
        for label, line in zip(self._lines, (*lines, "", "")[:2], strict=True):
            label.setText(line)
            label.setVisible(bool(line))
        self.setAccessibleDescription(" ".join((title, *lines)))
        self.fit()

    @property
    def said(self) -> str:
        """What stands on the card."""
        return " ".join(label.text() for label in (self._title, *self._lines) if label.text())

    def set_made(self, made: bool) -> None:
        """Show strokes and buttons, once there is a film."""
        for part in (self.track, self._foot):
            part.setVisible(made)
        # The same height for all coats: the crown must not jump from one to the next.
        self._words.setMinimumHeight(_WORDS_PX if made else 0)

    def set_state(self, *, playing: bool, speed: float, ready: bool, animated: bool) -> None:
        """Show what the buttons can do now."""
        self.play.setText(
            translate("film card", "pause") if playing else translate("film card", "play")
        )
        name = (
            translate("film card", "Pause the film")
            if playing
            else translate("film card", "Play the film")
        )
        self.play.setAccessibleName(name)
        self.play.setToolTip(
            translate("film card", "{name} (space bar on the crown)").format(name=name)
        )
        moving: tuple[QWidget, ...] = (self.play, self.slower, self.faster, self._speed)
        for widget in moving:
            widget.setVisible(animated)
        for widget in (self.play, self.slower, self.faster, self.save, self.track):
            widget.setEnabled(ready)
        self._speed.setText(f"{speed:g}\N{MULTIPLICATION SIGN}")
        self.back.setEnabled(ready and self.track.value() > 0)
        self.on.setEnabled(ready and self.track.value() < self.track.maximum())

    def place(self, view: QWidget) -> None:
        """Lie at the foot of the view, as wide as there is room."""
        self.setFixedWidth(max(min(WIDTH_PX, view.width() - 24), _LEAST_PX))
        self.fit()
        x = (view.width() - self.width()) // 2
        self.move(max(x, 8), max(view.height() - self.height() - 10, 8))
        self.raise_()
