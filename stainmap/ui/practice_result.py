"""The score of an answer: why, what was best and worst, and what the crown shows beside it."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QLabel,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.model.case import Case
from stainmap.model.zone import area_label
from stainmap.practice.exercise_words import exercise_text
from stainmap.practice.score import Mark, Overlay, Score, ScorePart
from stainmap.ui.plate import link_button
from stainmap.ui.section import PADDING, Hairline, SectionHead, SoftLabel
from stainmap.ui.theme import font
from stainmap.words import marked, translate

MARK_COLOURS: dict[Mark, str] = {
    Mark.MISSED: "#88ccee",
    Mark.EXTRA: "#cc6677",
    Mark.OTHER: "#ddcc77",
}
"""From the published "muted" colour-blind-safe set, those that no zone of ours has."""
_GREYED = 0.75
WORTH = marked("practice result", "This says how the exercise went, nothing about clinical skill.")
YOURS, WRONG, TRUE = "yours", "wrong", "true"


class _Swatch(QWidget):
    """A small square of a colour."""

    def __init__(self, colour: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._colour = colour
        self.setFixedSize(14, 14)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill it."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self._colour))
        painter.end()


def _sentence(text: str, px: int = 13, weight: int = 400) -> QLabel:
    label = QLabel(text)
    label.setFont(font(px, weight))
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label


class ResultPanel(QWidget):
    """What a handed-in answer was worth.

    Signals
    -------
    shown
        What the crown is to show: "yours", "wrong" or "true".
    stepped
        Of the true answer, how many steps are painted.
    slips_asked
        Slips of the true plan are asked for.
    """

    shown = Signal(str)
    stepped = Signal(int)
    slips_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("practice result", "Score"))
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(PADDING, 8, PADDING, 12)
        self._column.setSpacing(8)
        self._step = self._steps = 0
        self._lines: list[str] = []

    @property
    def step(self) -> int:
        """How many steps of the true plan are shown."""
        return self._step

    def set_score(self, score: Score, *, went_wrong: bool, lines: list[str], remark: str) -> None:
        """Show a score.

        Parameters
        ----------
        went_wrong
            True if the crown was done by somebody else, and the answer says what went wrong.
        lines
            What every step of the true plan does; empty where there is none.
        remark
            A sentence that the result could not be kept, or that it is time to stop; or empty.
        """
        self._clear()
        add = self._column.addWidget
        head = QHBoxLayout()
        self.number = QLabel(f"{score.value:.0f}")
        self.number.setFont(font(40, 300))
        self.number.setAccessibleName(
            translate("practice result", "{points:.0f} of 100 points").format(points=score.value)
        )
        head.addWidget(self.number)
        head.addWidget(
            SoftLabel(translate("practice result", "of 100 points"), 13),
            1,
            Qt.AlignmentFlag.AlignBottom,
        )
        self._column.addLayout(head)
        add(SoftLabel(translate("practice result", "Best"), 11))
        add(_sentence(score.best))
        add(SoftLabel(translate("practice result", "What cost most"), 11))
        add(_sentence(score.worst))
        if score.lesson:
            add(SoftLabel(translate("practice result", "What helps"), 11))
            add(_sentence(exercise_text(score.lesson)))
        if remark:
            add(_sentence(remark, 12))
        add(Hairline())
        add(SectionHead(translate("practice result", "On the crown")))
        self._add_choices(went_wrong=went_wrong, overlay=score.overlay)
        self._lines = lines
        self._steps = len(lines)
        self._add_stepping()
        add(Hairline())
        add(SectionHead(translate("practice result", "Point by point")))
        if score.rule:
            rule = SoftLabel(score.rule, 12)
            rule.setWordWrap(True)
            add(rule)
        for part in score.parts:
            self._add_part(part)
        add(Hairline())
        self._add_ways(slips=bool(lines))
        worth = SoftLabel(translate("practice result", WORTH), 11)
        worth.setWordWrap(True)
        add(worth)
        self._column.addStretch(1)

    def _clear(self) -> None:
        while self._column.count():
            item = self._column.takeAt(0)
            if item is None:
                continue
            widget, inner = item.widget(), item.layout()
            if widget is not None:
                # Deleted only once the program is idle: until then it would stand behind.
                widget.hide()
                widget.deleteLater()
            elif inner is not None:
                while inner.count():
                    own = inner.takeAt(0)
                    one = None if own is None else own.widget()
                    if one is not None:
                        one.hide()
                        one.deleteLater()
                inner.deleteLater()

    def _add_choices(self, *, went_wrong: bool, overlay: Overlay | None) -> None:
        self.choices = QButtonGroup(self)
        self.yours = QRadioButton(
            translate("practice result", "as it came out")
            if went_wrong
            else translate("practice result", "what you handed in")
        )
        self.wrong = QRadioButton(translate("practice result", "where it is off"))
        self.true = QRadioButton(
            translate("practice result", "as it was planned")
            if went_wrong
            else translate("practice result", "a true answer")
        )
        names = ((self.yours, YOURS), (self.wrong, WRONG), (self.true, TRUE))
        for button, name in names:
            self.choices.addButton(button)
            button.toggled.connect(lambda on, name=name: self.shown.emit(name) if on else None)
            self._column.addWidget(button)
            if button is self.wrong and overlay is not None:
                self._add_legend(overlay)
        self.wrong.setVisible(overlay is not None and bool(overlay.words))

    def _add_legend(self, overlay: Overlay) -> None:
        for mark, words in overlay.words:
            row = QHBoxLayout()
            row.setContentsMargins(24, 0, 0, 0)
            row.addWidget(_Swatch(MARK_COLOURS[mark]))
            row.addWidget(SoftLabel(words, 12), 1)
            self._column.addLayout(row)

    def _add_stepping(self) -> None:
        self.back, self.on = (
            link_button(translate("practice result", "step back")),
            link_button(translate("practice result", "step on")),
        )
        self.where = _sentence("", 12)
        row = QHBoxLayout()
        row.setContentsMargins(24, 0, 0, 0)
        row.addWidget(self.back)
        row.addWidget(self.on)
        row.addStretch(1)
        self._column.addLayout(row)
        self._column.addWidget(self.where)
        self.true.toggled.connect(lambda _on: self._say_step())
        self.back.clicked.connect(lambda: self.show_step(self._step - 1))
        self.on.clicked.connect(lambda: self.show_step(self._step + 1))
        for button in (self.back, self.on):
            button.setVisible(self._steps > 0)
        self._step = self._steps
        self._say_step()

    def show_step(self, step: int) -> None:
        """Show the true plan up to a step, on crown and table."""
        self._step = min(max(step, 0), self._steps)
        if not self.true.isChecked():
            self.true.setChecked(True)
        self.stepped.emit(self._step)
        self._say_step()

    def _say_step(self) -> None:
        self.back.setEnabled(self._step > 0)
        self.on.setEnabled(self._step < self._steps)
        self.where.setVisible(self._steps > 0 and self.true.isChecked())
        if self._step == 0:
            self.where.setText(translate("practice result", "The bare crown, nothing painted yet."))
        elif self._lines:
            self.where.setText(
                translate("practice result", "Step {step} of {steps} is done: {work}").format(
                    step=self._step, steps=self._steps, work=self._lines[self._step - 1]
                )
            )

    def _add_part(self, part: ScorePart) -> None:
        row = QHBoxLayout()
        name = QLabel(part.name)
        name.setFont(font(13, 600))
        points = QLabel(_points(part))
        points.setFont(font(13, 600))
        row.addWidget(name, 1)
        row.addWidget(points)
        self._column.addLayout(row)
        self._column.addWidget(_sentence(part.sentence, 12))

    def _add_ways(self, *, slips: bool) -> None:
        self.slips = link_button(
            translate("practice result", "what slips would do to the true plan")
        )
        self.slips.clicked.connect(self.slips_asked)
        self._column.addWidget(self.slips)
        self.slips.setVisible(slips)


def marked_colours(overlay: Overlay, shown: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """Return what was missed and what is too much in colours (V, 3), all else in greys.

    Parameters
    ----------
    shown
        (V, 3) colours of the answer, sRGB.
    """
    grey = shown.astype(float) @ np.array([0.2126, 0.7152, 0.0722])
    colours = np.repeat((_GREYED * grey + (1.0 - _GREYED) * 128.0)[:, None], 3, axis=1)
    for mark, colour in MARK_COLOURS.items():
        rgb = [int(colour[k : k + 2], 16) for k in (1, 3, 5)]
        colours[overlay.marks == int(mark)] = rgb
    return np.round(colours).astype(np.uint8)


def step_lines(case: Case) -> list[str]:
    """Return what every step of a plan does, as "ash: 2 on cusp, 1 on interproximal"."""
    front = case.units[0].tooth.is_front
    lines = []
    for step in case.plan.steps:
        parts = ", ".join(
            translate("practice window", "{coats} on {area}").format(
                coats=entry.coats, area=area_label(entry.area, front=front)
            )
            for entry in step.areas
        )
        lines.append(f"{case.plan.liquid_of(step)}: {parts}.")
    return lines


def _points(part: ScorePart) -> str:
    """Return "35 of 40" for what was reached, the points taken off for faults."""
    if part.most > 0.0:
        return translate("practice result", "{points:.0f} of {most:.0f}").format(
            points=part.points, most=part.most
        )
    if part.points > -0.05:
        return translate("practice result", "none off")
    return f"\N{MINUS SIGN}{-part.points:.0f}"
