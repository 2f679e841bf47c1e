"""The list of one kind of material: whose each entry is, where its numbers come from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from stainmap.app.materials import Material, origin_word
from stainmap.ui.theme import font
from stainmap.words import marked, translate

OWN = marked("materials list", "The laboratory's own")
STARTER = marked("materials list", "Comes with the program: copy it to change it")
CASE = marked("materials list", "Only in the open case")
WHOSE_WORDS = {
    OWN: marked("materials list", "the laboratory's own"),
    STARTER: marked("materials list", "comes with the program"),
    CASE: marked("materials list", "only in the open case"),
}
_NAME = Qt.ItemDataRole.UserRole
_LEAST_PX = 250


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """One line: the entry, whose it is (`OWN`, `STARTER`, `CASE`), how the case stands to it."""

    material: Material
    whose: str
    standing: str
    short: str = ""
    changed: bool = False


class MaterialList(QTreeWidget):
    """Entries under a head for each owner; several can be chosen, one of them is looked at.

    Signals
    -------
    looked_at
        Name of the entry, and its owner.
    remove_asked, rename_asked
        The chosen entries are to go; the one looked at is to get another name.
    """

    looked_at = Signal(str, str)
    remove_asked = Signal()
    rename_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        from stainmap.ui.materials_tables import HEAD_STYLE  # noqa: PLC0415

        super().__init__(parent)
        self.setAccessibleName(translate("materials list", "Materials"))
        self.setHeaderLabels(
            [
                translate("materials list", "Name"),
                translate("materials list", "Numbers"),
                translate("materials list", "Case"),
            ]
        )
        self.setMinimumWidth(_LEAST_PX)
        self.setRootIsDecorated(False)
        self.setItemsExpandable(False)
        self.setIndentation(10)
        self.setUniformRowHeights(True)
        self.setSelectionMode(QTreeWidget.SelectionMode.ExtendedSelection)
        header = self.header()
        header.setStyleSheet(HEAD_STYLE)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column in (1, 2):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
        header.setStretchLastSection(False)
        self._filling = False
        self.currentItemChanged.connect(self._tell)

    def fill(self, lines: Sequence[Listed], current: str) -> None:
        """Show the entries, and look at the one of a name, else at the first."""
        self._filling = True
        self.clear()
        chosen: QTreeWidgetItem | None = None
        for whose in (
            OWN,
            CASE,
            STARTER,
        ):
            own = [one for one in lines if one.whose == whose]
            if not own:
                continue
            head = QTreeWidgetItem(self, [translate("materials list", whose)])
            head.setFlags(Qt.ItemFlag.ItemIsEnabled)
            head.setFont(0, font(12, 600))
            head.setFirstColumnSpanned(True)
            for one in own:
                mark = "\N{BULLET} " if one.changed else ""
                words = [f"{mark}{one.material.name}", origin_word(one.material), one.short]
                item = QTreeWidgetItem(head, words)
                item.setData(0, _NAME, (one.material.name, whose))
                kept = translate("materials list", "changed, not kept yet") if one.changed else ""
                told = "; ".join(part for part in (one.standing, kept) if part)
                for column in range(3):
                    item.setToolTip(column, f"{one.material.name}: {told}".strip(": "))
                if chosen is None or one.material.name == current:
                    chosen = item
        self.expandAll()
        if chosen is not None:
            self.setCurrentItem(chosen)
        self._filling = False
        self._tell(chosen)

    @property
    def chosen(self) -> tuple[str, ...]:
        """Names of the chosen entries."""
        names = [item.data(0, _NAME) for item in self.selectedItems()]
        return tuple(name[0] for name in names if name is not None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete removes what is chosen, F2 renames."""
        if event.key() == Qt.Key.Key_Delete:
            self.remove_asked.emit()
        elif event.key() == Qt.Key.Key_F2:
            self.rename_asked.emit()
        else:
            super().keyPressEvent(event)

    def _tell(self, item: QTreeWidgetItem | None, _before: QTreeWidgetItem | None = None) -> None:
        if self._filling:
            return
        data = None if item is None else item.data(0, _NAME)
        if data is not None:
            self.looked_at.emit(*data)
