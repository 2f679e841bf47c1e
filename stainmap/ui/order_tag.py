"""What stands beside a step while it is dragged: where it would go, and what that would change."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QLabel, QWidget

from stainmap.ui.theme import font
from stainmap.words import translate


class OrderTag(QLabel):
    """A small label over the table; the pointer goes through it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFont(font(12, 500))
        self.setMargin(4)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.Base)
        self.setFrameShape(QLabel.Shape.Box)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def show_at(self, below: QPoint, step: int | None, to: int, change: str) -> None:
        """Say what moving a step (from 0) would change, in the middle under a point.

        Parameters
        ----------
        step
            None hides the label.
        change
            Empty while it is being worked out.
        """
        self.setVisible(step is not None)
        if step is None:
            return
        place = (
            translate("order tag", "step {step} as step {to}").format(step=step + 1, to=to + 1)
            if to != step
            else translate("order tag", "step {step} stays").format(step=step + 1)
        )
        self.setText(f"{place}: {change}" if change else place)
        self.adjustSize()
        over = self.parentWidget()
        room = 0 if over is None else over.width() - self.width()
        self.move(min(max(below.x() - self.width() // 2, 0), room), below.y())
        self.raise_()
