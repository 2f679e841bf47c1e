"""The menu of a step of the coat table, and of the cells that are chosen in it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMenu

from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.ui.coat_table import CoatTable


def step_menu(table: CoatTable, step: int) -> QMenu:
    """Return the menu of a step: cells, add, remove, move, change its jar."""
    menu = QMenu(translate("step menu", "Step {step}").format(step=step + 1), table)
    menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    jar_now = table.columns[step].jar.number
    for text, call in (
        (translate("step menu", "Copy"), table.entry.copy),
        (translate("step menu", "Copy with names"), lambda: table.entry.copy(heads=True)),
        (translate("step menu", "Cut"), table.entry.cut),
        (translate("step menu", "Paste"), table.entry.paste),
    ):
        menu.addAction(text).triggered.connect(call)
    menu.addSeparator()
    add = menu.addAction(translate("step menu", "Add a step after this one"))
    add.triggered.connect(lambda: table.step_add_requested.emit(step + 1, jar_now))
    remove = menu.addAction(translate("step menu", "Remove this step"))
    remove.triggered.connect(lambda: table.step_remove_requested.emit(step))
    lockable, locked = table.entry.lockable
    if lockable:
        lock = menu.addAction(
            translate("step menu", "Set these coats free")
            if locked
            else translate("step menu", "Lock these coats")
        )
        lock.triggered.connect(table.entry.turn_lock)
    menu.addSeparator()
    earlier = menu.addAction(translate("step menu", "Paint it earlier"))
    earlier.setEnabled(step > 0)
    earlier.triggered.connect(lambda: table.move_step(step, step - 1))
    later = menu.addAction(translate("step menu", "Paint it later"))
    later.setEnabled(step + 1 < len(table.columns))
    later.triggered.connect(lambda: table.move_step(step, step + 1))
    jars = menu.addMenu(translate("step menu", "Take it from"))
    for jar in table.jars:
        action = jars.addAction(
            translate("step menu", "jar {number}, {liquid}").format(
                number=jar.number, liquid=jar.liquid
            )
        )
        action.setCheckable(True)
        action.setChecked(jar.number == jar_now)
        action.triggered.connect(
            lambda _checked, number=jar.number: table.step_jar_requested.emit(step, number)
        )
    return menu
