"""Somebody who is new to the program makes a whole plan with mouse and keys: every step counts.

    python -m tests.tools.scripted_user MESH FOLDER    # on a mesh of one's own, and says the steps

A step is one click, one key with what is held beside it, one typed field or one stroke. Nothing is
done that a person could not do: what is clicked has to be seen and switched on, keys are those that
the menus and the page of keys name, and files are chosen in the dialogs that the program opens.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path
from unittest import mock

from PySide6.QtCore import QPoint
from PySide6.QtGui import QDesktopServices, QTextCursor
from PySide6.QtWidgets import (
    QFileDialog,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QWidget,
)

from stainmap.model.colour import Colour
from stainmap.model.intake import Third
from stainmap.model.zone import Accent, Area, Zone
from tests.tools.real_window import Hand, on_own_screen, started

MOST_STEPS = 120
# Common practice for a molar of a warm shade, no published source: what goes on which area.
COATS: tuple[tuple[str, Area, str], ...] = (
    ("barley", Zone.CERVICAL, "2"),
    ("barley", Zone.BODY, "1"),
    ("barley", Zone.INTERPROXIMAL, "1"),
    ("slate", Zone.CUSP, "1-2"),
    ("umber", Zone.FISSURE, "2"),
    ("umber", Accent.MARGIN_BAND, "1"),
)


@dataclass(frozen=True, kw_only=True)
class Made:
    """What the user has in the end."""

    said: tuple[str, ...]
    case: Path
    sheets: tuple[Path, ...]
    body: Colour


class User:
    """Works one window from first start to printed sheets."""

    def __init__(self, hand: Hand, folder: Path) -> None:
        self.hand, self.window, self.folder = hand, hand.window, folder

    def make_a_plan(self, mesh: Path) -> Made:
        """Do the whole job."""
        hand, window = self.hand, self.window
        hand.wait(lambda: window.session.case is not None, "the sample")
        hand.settle()
        self._open(mesh)
        self._say_what_is_wanted()
        self._put_coats_on()
        self._paint()
        self._mix()
        self._save()
        self._print()
        outcome = window.session.outcome
        body = None if outcome is None else outcome.area(Zone.BODY)
        assert body is not None
        path = window.session.path
        assert path is not None
        return Made(
            said=tuple(hand.said),
            case=path,
            sheets=tuple(sorted(self.folder.glob("*.pdf"))),
            body=body.predicted,
        )

    def _open(self, mesh: Path) -> None:
        """By the button on the strip of the first start; the card asks what has to be known."""
        hand, window = self.hand, self.window
        hand.in_dialog(lambda: hand.click(window.strip.open), lambda d: self._choose(d, mesh))
        card = window.flow.questions
        hand.wait(card.isVisible, "the questions about the mesh")
        hand.type("46", card.teeth, "tooth 46")
        hand.click(card.sintered, QPoint(8, card.sintered.height() // 2))
        before = window.session.case
        hand.click(card.read)
        hand.wait(lambda: window.session.case is not before, "the crown")
        hand.settle()
        self._answer_what_is_asked()

    def _answer_what_is_asked(self) -> None:
        """Answer with the first button of the card that lies on the crown, if there is one."""
        message = self.window.flow.message
        for _ in range(3):
            if not message.isVisible():
                return
            self.hand.click(message.buttons[-1], what=f"{message.accessibleName()}: last button")
            self.hand.settle()

    def _say_what_is_wanted(self) -> None:
        """Fill the page of the intake: a tab, the stump, the dentist's wish."""
        hand = self.hand

        def fill(page: QWidget) -> None:
            row = page.thirds[Third.MIDDLE]  # type: ignore[attr-defined]
            hand.choose(row.source, "tab")
            hand.choose(row.tab, "A3.5")
            stump = page.stump  # type: ignore[attr-defined]
            hand.choose(stump, stump.itemText(1))
            wish: QPlainTextEdit = page.wish  # type: ignore[attr-defined]
            hand.click(wish.viewport())
            hand.type("Warm neck, calm cusps; not to stand out.", wish)
            wish.moveCursor(QTextCursor.MoveOperation.End)
            hand.click(self._button(page, "OK"))

        hand.in_dialog(lambda: hand.click(self.window.plan.unit.intake), fill, "the intake")
        hand.settle()

    def _put_coats_on(self) -> None:
        """One step for each liquid, and coats typed where the cells are."""
        hand, window = self.hand, self.window
        for liquid in dict.fromkeys(name for name, _, _ in COATS):
            self._add_step(liquid)
        table = window.plan.table
        liquids = list(dict.fromkeys(name for name, _, _ in COATS))
        for liquid, area, coats in COATS:
            step = liquids.index(liquid)
            place = self._cell(step, area)
            hand.click(table.viewport(), place, f"cell {liquid}, {area}")
            # The first figure opens the cell, as in any spreadsheet.
            hand.type(coats[0], table, f"{coats[0]} coats")
            if len(coats) > 1:
                field = next(one for one in table.findChildren(QLineEdit) if one.isVisible())
                hand.type(coats, field)
            hand.press("Return")
        hand.settle()

    def _add_step(self, liquid: str) -> None:
        hand, button = self.hand, self.window.plan.add_step

        def choose() -> None:
            menu = button.menu()
            action = next(one for one in menu.actions() if one.text().startswith(liquid))
            hand.click(menu, menu.actionGeometry(action).center(), f"liquid {liquid}")

        count = len(self._case().plan.steps)
        hand.in_popup(lambda: hand.click(button), choose)
        hand.wait(lambda: len(self._case().plan.steps) == count + 1, f"a step of {liquid}")

    def _paint(self) -> None:
        """Widen the fissure with the brush where it seems too short, from the occlusal side."""
        hand, window = self.hand, self.window
        table = window.plan.table
        heads = table.verticalHeader()
        row = table.model().area_rows  # type: ignore[attr-defined]
        at = next(r for r in row if table.model().area_at(r) is Zone.FISSURE)  # type: ignore[attr-defined]
        y = heads.sectionViewportPosition(at) + heads.sectionSize(at) // 2
        hand.click(heads.viewport(), QPoint(70, y), "the name of the fissure")
        hand.press("Alt+3", what="look Zones")
        hand.press("Ctrl+1", what="look from occlusal")
        hand.settle()
        before = self._case()
        middle = window.crown.rect().center()
        hand.drag(window.crown, middle - QPoint(40, 0), middle, middle + QPoint(40, 12))
        hand.wait(lambda: self._case() is not before, "the stroke")
        hand.press("Alt+1", what="look Sintered")
        hand.settle()

    def _mix(self) -> None:
        """Look at the jars, and have the dyes tell them apart."""
        hand = self.hand

        def look(page: QWidget) -> None:
            hand.click(self._button(page, "Dyes that tell jars apart"))
            hand.rest(200)
            hand.click(self._button(page, "OK"))

        hand.in_dialog(lambda: hand.menu("Plan", "Mix"), look, "the jars")
        hand.settle()

    def _save(self) -> None:
        hand, window = self.hand, self.window
        path = self.folder / "crown 46.stainmap"
        hand.in_dialog(lambda: hand.press("Ctrl+S"), lambda d: self._choose(d, path))
        hand.wait(lambda: window.session.path == path and path.is_file(), "the saved case")

    def _print(self) -> None:
        """Look at the sheets, and write them as PDF beside the case."""
        hand, window = self.hand, self.window
        hand.press("Ctrl+P", what="the sheets")
        hand.wait(lambda: window.printing.preview is not None, "the preview of the sheets")
        preview = window.printing.preview
        assert preview is not None
        hand.wait(preview.isVisible, "the preview")
        hand.in_dialog(
            lambda: hand.click(self._button(preview, "Save as PDF...")),
            lambda d: self._choose(d, self.folder),
            "the folder of the sheets",
        )
        hand.wait(lambda: len(list(self.folder.glob("*.pdf"))) >= 3, "the sheets")
        hand.wait(window.printing.progress.isHidden, "the last of the sheets")
        hand.press("Esc", preview, "leave the preview")
        hand.come_back()

    # --- helpers ---------------------------------------------------------------------------

    def _case(self):
        case = self.window.session.case
        assert case is not None
        return case

    def _cell(self, step: int, area: Area) -> QPoint:
        table = self.window.plan.table
        model = table.model()
        row = next(r for r in model.area_rows if model.area_at(r) is area)  # type: ignore[attr-defined]
        return table.visualRect(model.index(row, step)).center()

    def _choose(self, dialog: QWidget, path: Path) -> None:
        """Type a path into a dialog for files."""
        assert isinstance(dialog, QFileDialog)
        line = next(one for one in dialog.findChildren(QLineEdit) if one.isVisible())
        self.hand.type(str(path), line, path.name)
        self.hand.press("Return", line)
        self.hand.rest(100)
        if dialog.isVisible():
            # A folder: the first Return went into it.
            self.hand.click(self._button(dialog, "Choose", "Open", "Save"))

    @staticmethod
    def _button(where: QWidget, *names: str) -> QPushButton:
        for one in where.findChildren(QPushButton):
            if one.isVisible() and one.text().replace("&", "") in names:
                return one
        raise LookupError(f"There is no button {names}")


def make_a_plan(mesh: Path, home: Path, folder: Path) -> Made:
    """Start the program for the first time and let the user make a plan for a mesh."""
    with (
        # The desktop is not asked to show the sheets.
        mock.patch.object(QDesktopServices, "openUrl", return_value=True),
        started(home, size=(1440, 1000)) as hand,
    ):
        return User(hand, folder).make_a_plan(mesh)


def main(arguments: list[str]) -> int:
    """Make a plan and say what it took."""
    mesh, folder = Path(arguments[0]), Path(arguments[1])
    folder.mkdir(parents=True, exist_ok=True)
    made = make_a_plan(mesh, folder / "home", folder)
    for number, step in enumerate(made.said, start=1):
        print(f"{number:3} {step}")
    print(f"{len(made.said)} steps, {len(made.sheets)} sheets")
    return 0


if __name__ == "__main__":
    sys.exit(on_own_screen("tests.tools.scripted_user", main))
