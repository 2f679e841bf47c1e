"""History at work: its list follows the case, and its pictures are made in the background."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, QTimer
from PySide6.QtGui import QPixmap

from stainmap.app.change import Change
from stainmap.app.history_colours import StepColours
from stainmap.app.job import JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.history import History
from stainmap.ui.history_list import (
    PICTURE_PX,
    PICTURE_SCALE,
    HistoryPanel,
    Standing,
    StepRow,
    picture_of,
)
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.history_pictures import SmallPictures

_OPENED = marked("history desk", "as it was opened")


class HistoryDesk(QObject):
    """Fills the panel while it is seen; hidden it costs nothing but the colours it remembers."""

    def __init__(
        self, session: Session, panel: HistoryPanel, runner: JobRunner, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._session, self.panel, self._runner = session, panel, runner
        self._drawing: SmallPictures | None = None
        self._colours = StepColours()
        # Pictures by the case they are of, which the history holds; and those that cannot be made.
        self._pictures: dict[int, tuple[Case, QPixmap]] = {}
        self._refused: set[int] = set()
        self._busy = False
        # Several notices in a row are one change of the list.
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._show)
        panel.list.chosen.connect(self._go_to)

    def seen(self, _visible: bool = True) -> None:
        """Catch up with the case: the panel has come into sight."""
        self._soon.start()

    def refresh(self, change: Change) -> None:
        """Follow the case."""
        if change.touches("opened", "seen"):
            # All pictures are in one light.
            self._colours.clear()
            self._pictures.clear()
            self._refused.clear()
        session, case = self._session, self._session.case
        appearance = session.appearance
        predicted = change.touches("appearance") and session.is_up_to_date
        if predicted and appearance is not None and case is not None:
            self._colours.keep(case, appearance.srgb)
        if change.touches("opened", "history", "appearance", "shading"):
            self._soon.start()

    def _go_to(self, number: int) -> None:
        self._session.go_to(number)

    # --- the list --------------------------------------------------------------------------

    def _show(self) -> None:
        history = self._session.history
        if history is None or not self.panel.isVisible():
            return
        alive = {id(entry.case) for entry in history.entries}
        self._pictures = {key: kept for key, kept in self._pictures.items() if key in alive}
        rows = [_row(history, number) for number in range(len(history.entries))]
        pictures = {
            number: self._pictures[id(entry.case)][1]
            for number, entry in enumerate(history.entries)
            if id(entry.case) in self._pictures
        }
        listed = self.panel.list
        listed.steps.set_rows(rows, pictures)
        listed.select(history.position)
        steps, undone = len(rows) - 1, len(rows) - 1 - history.position
        words = {
            0: translate("history desk", "no step yet"),
            1: translate("history desk", "1 step"),
        }.get(steps, translate("history desk", "{steps} steps").format(steps=steps))
        self.panel.head.set_remark(
            translate("history desk", "{words}, {undone} undone").format(words=words, undone=undone)
            if undone
            else words
        )
        self._draw_next()

    # --- pictures --------------------------------------------------------------------------

    def _draw_next(self) -> None:
        """Make the picture that is missing nearest to where the case stands."""
        history, here = self._session.history, self._session.prediction
        if self._busy or history is None or here is None or not self.panel.isVisible():
            return
        case = next((one for one in _nearest_first(history) if self._lacks(one)), None)
        if case is None:
            return
        self._busy = True
        known = self._colours.of(case)
        fields = self._session.shading
        current = self._session.case
        if current is None or current.surface is not case.surface:
            fields = None

        def work(_progress: Progress) -> NDArray[np.uint8]:
            from stainmap.app.history_pictures import (  # noqa: PLC0415 - slow to import
                SmallPictures,
                colours_beside,
            )

            if self._drawing is None:
                width, height = PICTURE_PX.width(), PICTURE_PX.height()
                self._drawing = SmallPictures(PICTURE_SCALE * width, PICTURE_SCALE * height)
            srgb = colours_beside(here, case) if known is None else known
            return self._drawing.picture(case, srgb, fields)

        def done(pixels: NDArray[np.uint8]) -> None:
            self._busy = False
            self._pictures[id(case)] = (case, picture_of(pixels))
            self._soon.start()

        def failed(_error: StainmapError) -> None:
            # A state that cannot be predicted has no picture; the outcome says why.
            self._busy = False
            self._refused.add(id(case))
            self._soon.start()

        self._runner.start(
            translate("history desk", "Small pictures"), work, on_done=done, on_failed=failed
        )

    def _lacks(self, case: Case) -> bool:
        return id(case) not in self._pictures and id(case) not in self._refused


def _row(history: History, number: int) -> StepRow:
    standing = Standing.DONE
    if number == history.position:
        standing = Standing.CURRENT
    elif number > history.position:
        standing = Standing.UNDONE
    label = history.entries[number].label if number else translate("history desk", _OPENED)
    return StepRow(number=number, label=label, standing=standing)


def _nearest_first(history: History) -> list[Case]:
    order = sorted(range(len(history.entries)), key=lambda at: abs(at - history.position))
    return [history.entries[at].case for at in order]
