"""A thin line that says what is being worked out and how far that is, with a way to stop it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QVBoxLayout, QWidget

from stainmap.ui.plate import link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.words import translate


class ProgressLine(QWidget):
    """Hidden until there is something to say.

    Signals
    -------
    stopped
        Somebody wants the work to stop.
    """

    stopped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setFixedHeight(6)
        self.bar.setAccessibleName(translate("progress line", "Share done"))
        self.phrase = SoftLabel("", 12)
        self.stop = link_button(translate("progress line", "stop"))
        self.stop.setAccessibleName(translate("progress line", "Stop the work"))
        self.stop.clicked.connect(self.stopped)
        self._working = QWidget()
        row = QHBoxLayout(self._working)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(10)
        row.addWidget(self.bar, 1)
        row.addWidget(self.phrase)
        row.addWidget(self.stop)
        self.said = QLabel()
        self.said.setFont(font(13))
        self.said.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._working)
        column.addWidget(self.said)
        self.end_work()

    @property
    def is_working(self) -> bool:
        """True while work is shown."""
        return not self._working.isHidden()

    def show_progress(self, share: float, phrase: str) -> None:
        """Say what is being done, and how far it is, 0 to 1."""
        self.said.hide()
        self._working.show()
        self.bar.setValue(round(1000 * min(max(share, 0.0), 1.0)))
        self.phrase.setText(phrase)
        self.setAccessibleName(
            translate("progress line", "Progress: {phrase}").format(phrase=phrase)
        )
        self.show()

    def end_work(self, problem: str = "") -> None:
        """Nothing is being worked on any more; say why, if something went wrong."""
        self._working.hide()
        self.said.setText(problem)
        self.said.setVisible(bool(problem))
        self.setAccessibleName(problem or translate("progress line", "Progress"))
        self.setVisible(bool(problem))
