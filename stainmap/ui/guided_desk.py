"""The guided first plan at work: it watches what is done in the window, and points at controls."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint, QRect, QSettings, QTimer, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QToolButton, QVBoxLayout, QWidget

from stainmap.app.change import Change
from stainmap.app.guided import STEPS, Did, Guide, GuidedStep, guide_at
from stainmap.model.case import Case
from stainmap.model.history import Entry
from stainmap.ui.guided_card import GuidedCard, GuidedRing
from stainmap.ui.key_map import name_in_files
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow

_FOLLOW_MS = 200
_AT = "guided/at"
_NOT_BEGUN = -1


class GuidedDesk(QObject):
    """Shows the card while a first plan is on; where it stands is kept with the settings.

    Signals
    -------
    changed
        It has begun, ended, or stands elsewhere.
    """

    changed = Signal()

    def __init__(self, window: MainWindow, settings: QSettings) -> None:
        super().__init__(window)
        self._window, self._session, self._settings = window, window.session, settings
        self.card, self.ring = GuidedCard(), GuidedRing(window)
        self.card.hide()
        centre = window.strip.parentWidget()
        column = None if centre is None else centre.layout()
        if isinstance(column, QVBoxLayout):
            column.insertWidget(column.indexOf(window.strip) + 1, self.card)
        self.guide: Guide | None = None
        self._watches = False
        self._case: Case | None = None
        self._entries: tuple[Entry, ...] = ()
        # Panels are moved, folded and scrolled; the ring goes along.
        self._follow = QTimer(self, interval=_FOLLOW_MS)
        self._follow.timeout.connect(self._place_ring)
        self.card.kept.connect(lambda: self._heed(Did.KEPT))
        self.card.skipped.connect(self._skip)
        self.card.back_asked.connect(self._go_back)
        self.card.closed.connect(self.close)
        window.strip.guided_asked.connect(self.start)
        self.changed.connect(self._show_strip)
        window.strip.set_unfinished(self.stands_at is not None)

    # --- begun and ended -------------------------------------------------------------------

    @property
    def is_on(self) -> bool:
        """True while the card is shown."""
        return self.guide is not None

    @property
    def stands_at(self) -> int | None:
        """The step an unfinished first plan stands at, from 0, or None without one."""
        told = str(self._settings.value(_AT, _NOT_BEGUN))
        at = int(told) if told.isdecimal() else _NOT_BEGUN
        return at if 0 < at < len(STEPS) else None

    def start(self) -> None:
        """Begin, or go on where it was left."""
        self._watch()
        history = self._session.history
        self._case = self._session.case
        self._entries = () if history is None else history.entries
        self._go_to(guide_at(self.stands_at or 0))

    def close(self) -> None:
        """Put the card away; an unfinished plan is gone on with the next time."""
        if self.guide is not None and self.guide.step is None:
            self._settings.setValue(_AT, _NOT_BEGUN)
        self.guide = None
        self.card.hide()
        self._follow.stop()
        self.ring.hide()
        self.changed.emit()

    def _skip(self) -> None:
        if self.guide is not None:
            self._go_to(self.guide.next())

    def _go_back(self) -> None:
        if self.guide is not None:
            self._go_to(self.guide.back())

    def _go_to(self, guide: Guide) -> None:
        self.guide = guide
        over = guide.step is None
        self._settings.setValue(_AT, _NOT_BEGUN if over else guide.at)
        words = guide.words
        title, sentence = (translate("guided", text) for text in (words.title, words.sentence))
        self.card.say(title, sentence, guide.at, len(STEPS))
        self.card.show()
        self._raise_panel()
        if over:
            self._follow.stop()
            self.ring.hide()
        else:
            self._follow.start()
            self._place_ring()
        self.changed.emit()

    def _show_strip(self) -> None:
        self._window.strip.set_unfinished(self.stands_at is not None)
        self._window.show_strip()

    # --- what is done ----------------------------------------------------------------------

    def _watch(self) -> None:
        """Hear of what is done; once is enough."""
        if self._watches:
            return
        self._watches = True
        commands, window = self._window.commands, self._window
        # These come after what they ask for: the dialogs have been closed by then.
        commands.teeth.triggered.connect(lambda _on: self._heed(Did.SAID_TOOTH))
        for action in (commands.sheets, commands.save_sheets, commands.letter):
            action.triggered.connect(lambda _on: self._heed(Did.SAW_SHEETS))
        window.plan_desk.area_asked_for.connect(lambda _area: self._heed(Did.SAW_OUTCOME))

    def _heed(self, did: Did) -> None:
        if self.guide is not None:
            self._take(self.guide.after(did))

    def _take(self, guide: Guide) -> None:
        if guide is not self.guide:
            self._go_to(guide)

    def refresh(self, change: Change) -> None:
        """Look whether what has changed is what the step asks for."""
        before, case = self._case, self._session.case
        if not change.touches("opened", "history"):
            return
        history, known = self._session.history, self._entries
        self._case, self._entries = case, () if history is None else history.entries
        if self.guide is None or case is None:
            return
        if change.touches("opened"):
            self._heed(Did.OPENED)
            return
        # Going back and forward in the history is no step of a first plan.
        made = self._entries is not known
        if made and before is not None and before is not case:
            self._take(self.guide.after_edit(before, case))

    # --- what is meant ---------------------------------------------------------------------

    def _raise_panel(self) -> None:
        """Bring the panel of the step to the front, where several share a place."""
        window, step = self._window, None if self.guide is None else self.guide.step
        if step in (GuidedStep.ZONE, GuidedStep.COAT):
            window.plan_dock.raise_()
        elif step is GuidedStep.OUTCOME:
            window.outcome_dock.raise_()

    def _place_ring(self) -> None:
        step = None if self.guide is None else self.guide.step
        self.ring.lie_about(QRect() if step is None else self.place_of(step))

    def place_of(self, step: GuidedStep) -> QRect:
        """Return where the control of a step lies in the window; empty if it is out of sight."""
        window = self._window
        if step is GuidedStep.TOOTH:
            return self._menu_place("Crown")
        widgets: dict[GuidedStep, QWidget | None] = {
            GuidedStep.OPEN: self._button_of(window.commands.open),
            GuidedStep.ZONE: window.plan.brush,
            GuidedStep.COAT: window.plan.table,
            GuidedStep.OUTCOME: window.outcome.outcome,
            GuidedStep.SHEETS: self._button_of(window.commands.sheets),
        }
        widget = widgets[step]
        if widget is None or not widget.isVisible():
            return QRect()
        # Of a panel that scrolls, the part that is seen.
        seen = widget.visibleRegion().boundingRect()
        return QRect(widget.mapTo(window, seen.topLeft()), seen.size())

    def _button_of(self, action: QAction) -> QWidget | None:
        """Return the button of the bar that does what a menu entry does."""
        buttons = self._window.top.findChildren(QToolButton)
        return next((one for one in buttons if one.defaultAction() is action), None)

    def _menu_place(self, name: str) -> QRect:
        menus = self._window.top.menus
        for action in menus.actions():
            if name_in_files(action) == name:
                place = menus.actionGeometry(action)
                return QRect(menus.mapTo(self._window, QPoint(place.topLeft())), place.size())
        return QRect()
