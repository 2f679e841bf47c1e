"""How the crown was read: every reading, how sure it is, and a way to set it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.ui.plate import link_button
from stainmap.ui.reading_rows import Correction, ReadingRow
from stainmap.ui.section import Hairline, SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate

_BAR_PX, _BAR_HIGH_PX = 72, 6
_FOUND_PX = 280


class SureBar(QWidget):
    """A short bar, filled as far as a reading is sure.

    Parameters
    ----------
    share
        0 to 1.
    """

    def __init__(self, share: float, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._share = min(max(share, 0.0), 1.0)
        self.setAccessibleName(
            translate("reading dialog", "{share:.0f} percent sure").format(share=100 * self._share)
        )
        self.setToolTip(
            translate("reading dialog", "{share:.0f} % sure").format(share=100 * self._share)
        )

    def sizeHint(self) -> QSize:
        """Return a short low bar."""
        return QSize(_BAR_PX, 16)

    def minimumSizeHint(self) -> QSize:
        """Return the same."""
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the bar, hollow where it is a guess."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        t = tones(self)
        box = QRectF(0, 0.5 * (self.height() - _BAR_HIGH_PX), _BAR_PX, _BAR_HIGH_PX)
        painter.setBrush(QColor(t.hair))
        painter.drawRoundedRect(box, 2, 2)
        box.setWidth(max(_BAR_PX * self._share, 0.0))
        painter.setBrush(QColor(t.accent))
        if self._share > 0.0:
            painter.drawRoundedRect(box, 2, 2)
        painter.end()


class ReadingDialog(QDialog):
    """Lists the readings; what was chosen to be done is in `chosen` and `confirmed`.

    Parameters
    ----------
    body
        What the body is, in a sentence.
    rows
        The readings.
    notes
        What was noticed.
    may_cut, was_cut
        Whether a crown hangs on a root or jaw and can be cut off, and whether one was.
    """

    def __init__(
        self,
        body: str,
        rows: Sequence[ReadingRow],
        notes: Sequence[str] = (),
        *,
        may_cut: bool = False,
        was_cut: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("reading dialog", "How it was read"))
        self.chosen: Correction | None = None
        self.confirmed = ""
        self.wants_cut = self.wants_whole = False
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        head = QLabel(body)
        head.setFont(font(15, 600))
        head.setWordWrap(True)
        column.addWidget(head)
        column.addLayout(self._table(rows))
        if notes:
            column.addWidget(Hairline())
            said = SoftLabel("\n".join(notes))
            said.setWordWrap(True)
            said.setAccessibleName(translate("reading dialog", "What was noticed"))
            column.addWidget(said)
        column.addWidget(Hairline())
        foot = QHBoxLayout()
        self.cut = link_button(translate("reading dialog", "cut off the crown"))
        self.cut.clicked.connect(partial(self._leave, wants_cut=True))
        self.cut.setVisible(may_cut)
        foot.addWidget(self.cut)
        self.whole = link_button(translate("reading dialog", "take the whole file again"))
        self.whole.clicked.connect(partial(self._leave, wants_whole=True))
        self.whole.setVisible(was_cut)
        foot.addSpacing(16)
        foot.addWidget(self.whole)
        foot.addStretch(1)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        foot.addWidget(buttons)
        column.addLayout(foot)

    def _table(self, rows: Sequence[ReadingRow]) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(14)
        grid.setVerticalSpacing(9)
        grid.setColumnStretch(1, 1)
        self.corrections: dict[str, QPushButton] = {}
        self.confirmations: dict[str, QPushButton] = {}
        for number, row in enumerate(rows):
            name = QLabel(row.name)
            name.setFont(font(13, 600))
            found = QLabel(row.found)
            found.setMinimumWidth(_FOUND_PX)
            found.setWordWrap(True)
            words = SoftLabel(row.words)
            grid.addWidget(name, number, 0)
            grid.addWidget(found, number, 1)
            grid.addWidget(SureBar(1.0 if row.said else row.sure), number, 2)
            grid.addWidget(words, number, 3)
            correction = translate("reading rows", row.correction)
            set_it = link_button(correction)
            set_it.setAccessibleName(f"{row.name}: {correction}")
            set_it.clicked.connect(partial(self._correct, row.correction))
            grid.addWidget(set_it, number, 4)
            self.corrections[row.key] = set_it
            if row.can_be_confirmed:
                right = link_button(translate("reading dialog", "it is right"))
                right.setAccessibleName(
                    translate("reading dialog", "{name}: it is right").format(name=row.name)
                )
                right.clicked.connect(partial(self._confirm, row.key))
                grid.addWidget(right, number, 5)
                self.confirmations[row.key] = right
        return grid

    def _correct(self, correction: Correction, _checked: bool = False) -> None:
        self.chosen = correction
        self.accept()

    def _confirm(self, key: str, _checked: bool = False) -> None:
        self.confirmed = key
        self.accept()

    def _leave(
        self, _checked: bool = False, *, wants_cut: bool = False, wants_whole: bool = False
    ) -> None:
        self.wants_cut, self.wants_whole = wants_cut, wants_whole
        self.accept()
