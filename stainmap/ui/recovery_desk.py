"""Work that a killed program left behind, and what is said while unsaved work cannot be kept."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QDialogButtonBox, QListWidget, QListWidgetItem, QWidget

from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.files.recovery import Recovered
from stainmap.ui.asking import ask
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.opening_flow import OpeningFlow
from stainmap.words import translate

_MOST_ROWS, _LIST_PX = 6, 460


class RecoveryDialog(FormDialog):
    """Lists what was left behind; one is opened, or chosen ones are thrown away."""

    def __init__(self, found: Sequence[Recovered], parent: QWidget | None = None) -> None:
        super().__init__(
            translate("recovery desk", "Unsaved work"),
            translate(
                "recovery desk",
                "The program ended without saving. This was kept; what is opened counts as "
                "not saved until it is saved.",
            ),
            parent,
        )
        self.list = QListWidget()
        self.list.setAccessibleName(translate("recovery desk", "Unsaved work"))
        for one in found:
            item = QListWidgetItem(_line(one))
            item.setData(Qt.ItemDataRole.UserRole, one)
            item.setToolTip("" if one.file is None else str(one.file))
            self.list.addItem(item)
        self.list.setCurrentRow(0)
        # Long names end in dots; the whole stands beside the pointer.
        self.list.setMinimumWidth(_LIST_PX)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        rows = min(max(len(found), 2), _MOST_ROWS)
        self.list.setFixedHeight(rows * self.list.sizeHintForRow(0) + 8)
        self.list.itemActivated.connect(self.accept)
        self.add_widget(self.list)
        buttons = QDialogButtonBox()
        roles = QDialogButtonBox.ButtonRole
        self.take = buttons.addButton(translate("recovery desk", "Open"), roles.AcceptRole)
        self.throw_away = buttons.addButton(
            translate("recovery desk", "Throw away"), roles.DestructiveRole
        )
        self.later = buttons.addButton(translate("recovery desk", "Later"), roles.RejectRole)
        self.take.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self.throw_away.clicked.connect(self._throw_away)
        self.add_widget(buttons)

    @property
    def chosen(self) -> Recovered | None:
        """What is marked in the list."""
        row = self.list.currentRow()
        one = self.list.item(row).data(Qt.ItemDataRole.UserRole) if row >= 0 else None
        return one if isinstance(one, Recovered) else None

    def _throw_away(self) -> None:
        one = self.chosen
        if one is None:
            return
        one.discard()
        self.list.takeItem(self.list.currentRow())
        if self.list.count() == 0:
            self.reject()


def _line(one: Recovered) -> str:
    return (
        translate("recovery desk", "{label}, never saved").format(label=one.label)
        if one.file is None
        else translate("recovery desk", "{label}, saved last as {file}").format(
            label=one.label, file=one.file.name
        )
    )


class RecoveryDesk(QObject):
    """Offers what was left behind, and says so while nothing can be kept.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(self, session: Session, flow: OpeningFlow, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._flow, self._window = session, flow, window
        self._was_stuck = False

    def offer(self, found: Sequence[Recovered]) -> None:
        """Let the user choose what becomes of work that was left behind."""
        dialog = RecoveryDialog(found, self._window)
        if ask(dialog) and dialog.chosen is not None:
            self._flow.recover(dialog.chosen)

    def say_nothing_is_kept(self, problem: StainmapError) -> None:
        """Say that unsaved work cannot be kept against a crash."""
        self._flow.tell(
            translate("recovery desk", "Unsaved work cannot be kept"),
            translate(
                "recovery desk",
                "{problem} Save the case now and then: after a crash only its file would be left.",
            ).format(problem=problem),
        )

    def refresh(self, change: Change) -> None:
        """Say when unsaved work cannot be kept against a crash, and when it can again."""
        if not change.touches("journal"):
            return
        problem = self._session.journal_problem
        if problem is not None and not self._was_stuck:
            self.say_nothing_is_kept(problem)
        elif problem is None and self._was_stuck:
            self.said.emit(translate("recovery desk", "Unsaved work is kept again."))
        self._was_stuck = problem is not None
