"""The window of the materials: kinds, the list of one kind, one entry with plot and numbers."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QGridLayout,
    QPushButton,
    QSplitter,
    QTabBar,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.materials import MaterialKind
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.key_map import native
from stainmap.ui.materials_editor import MaterialEditor
from stainmap.ui.materials_list import MaterialList
from stainmap.ui.screen_room import resize_within_screen
from stainmap.words import marked, translate

_WIDTH_PX, _HEIGHT_PX, _LEAST_WIDTH_PX, _LEAST_HEIGHT_PX = 1180, 820, 900, 600
_LIST_PX, _EDITOR_PX = 340, 800
_WHOSE = marked(
    "materials window",
    "The laboratory's set is kept on this computer, for all cases. A case carries its own copy of"
    " materials, so that its plan stays what it was: undo takes back what the case holds, not what"
    " the set holds.",
)


class MaterialsWindow(QWidget):
    """Shows materials; what is asked for is done by `materials_desk.MaterialsDesk`.

    Signals
    -------
    kind_chosen
        `MaterialKind` to list.
    add_asked, copy_asked, rename_asked, remove_asked, import_asked, export_asked
        What the buttons say.
    undo_asked, redo_asked
        The last step of the open case is to be taken back, or done again.
    """

    kind_chosen = Signal(object)
    add_asked = Signal()
    copy_asked = Signal()
    rename_asked = Signal()
    remove_asked = Signal()
    import_asked = Signal()
    export_asked = Signal()
    undo_asked = Signal()
    redo_asked = Signal()

    def __init__(self, may_close: Callable[[], bool], owner: QWidget | None = None) -> None:
        super().__init__(owner, Qt.WindowType.Window)
        self._may_close = may_close
        self.setWindowTitle(translate("materials window", "Materials"))
        self.setMinimumSize(_LEAST_WIDTH_PX, _LEAST_HEIGHT_PX)
        resize_within_screen(self, _WIDTH_PX, _HEIGHT_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 12)
        column.setSpacing(8)
        self.kinds = QTabBar()
        self.kinds.setAccessibleName(translate("materials window", "Kinds of material"))
        self.kinds.setDrawBase(False)
        self.kinds.setExpanding(False)
        for kind in MaterialKind:
            self.kinds.addTab(kind.heading)
        self.kinds.currentChanged.connect(lambda at: self.kind_chosen.emit(list(MaterialKind)[at]))
        column.addWidget(self.kinds)
        parts = QSplitter(Qt.Orientation.Horizontal)
        parts.setChildrenCollapsible(False)
        parts.addWidget(self._left())
        self.editor = MaterialEditor()
        self._go_by_settings(owner)
        parts.addWidget(self.editor)
        parts.setStretchFactor(1, 1)
        parts.setSizes([_LIST_PX, _EDITOR_PX])
        column.addWidget(parts, 1)
        column.addWidget(FormDialog.soft(translate("materials window", _WHOSE)))
        QShortcut(QKeySequence("Esc"), self, self.close)
        QShortcut(QKeySequence(QKeySequence.StandardKey.Undo), self, self.undo_asked.emit)
        QShortcut(QKeySequence("Ctrl+Shift+Z"), self, self.redo_asked.emit)
        QShortcut(QKeySequence(QKeySequence.StandardKey.Save), self, self._keep)

    def _go_by_settings(self, owner: QWidget | None) -> None:
        """Write temperatures as the window it belongs to does."""
        settings = getattr(owner, "own_settings", None)
        if settings is not None:
            self.editor.write_temperatures(settings.settings.degrees)
            settings.changed.connect(lambda now: self.editor.write_temperatures(now.degrees))

    def _left(self) -> QWidget:
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 4, 0)
        column.setSpacing(6)
        self.list = MaterialList()
        self.list.remove_asked.connect(self.remove_asked)
        self.list.rename_asked.connect(self.rename_asked)
        column.addWidget(self.list, 1)
        grid = QGridLayout()
        grid.setSpacing(6)
        self.buttons = {}
        for at, (name, text, signal) in enumerate(
            (
                ("Add", translate("materials window", "Add"), self.add_asked),
                ("Copy", translate("materials window", "Copy"), self.copy_asked),
                ("Rename", translate("materials window", "Rename..."), self.rename_asked),
                ("Remove", translate("materials window", "Remove"), self.remove_asked),
                ("Import", translate("materials window", "Import..."), self.import_asked),
                ("Export", translate("materials window", "Export..."), self.export_asked),
            )
        ):
            button = QPushButton(text)
            button.clicked.connect(signal)
            self.buttons[name] = button
            grid.addWidget(button, at // 3, at % 3)
        self.buttons["Rename"].setToolTip("F2")
        self.buttons["Remove"].setToolTip(native("Del"))
        self.buttons["Import"].setToolTip(
            translate("materials window", "Materials of another file (TOML) come into the set")
        )
        self.buttons["Export"].setToolTip(
            translate("materials window", "Write the chosen entries as a materials file (TOML)")
        )
        column.addLayout(grid)
        return left

    def choose_kind(self, kind: MaterialKind) -> None:
        """List another kind."""
        self.kinds.setCurrentIndex(list(MaterialKind).index(kind))

    @property
    def kind(self) -> MaterialKind:
        """The kind that is listed."""
        return list(MaterialKind)[self.kinds.currentIndex()]

    def _keep(self) -> None:
        if self.editor.keep.isEnabled():
            self.editor.keep_asked.emit()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close unless there are changes that somebody wants to go on with."""
        if self._may_close():
            super().closeEvent(event)
        else:
            event.ignore()
