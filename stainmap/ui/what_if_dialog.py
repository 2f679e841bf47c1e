"""What another furnace programme would make of the same plan, side by side with the chosen one."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from stainmap.planning.strength_class import STATEMENT
from stainmap.planning.what_if import ProgrammeWhatIf
from stainmap.predict.plate_translucency import range_text
from stainmap.predict.sintering import duration_text
from stainmap.ui.colour_table import Cell, ColourTable, Swatches
from stainmap.ui.form_dialog import FormDialog, choice_box
from stainmap.ui.marks import signed
from stainmap.ui.outcome_panel import screen_colour
from stainmap.words import marked, translate

_WORKING = marked("what if dialog", "Working it out…")
_DIRECTION = marked(
    "what if dialog",
    "A direction: what a programme does to scattering is assumed by its class until a blank coupon"
    " has been read.",
)


class WhatIfDialog(FormDialog):
    """Choose another programme and see every area in both.

    Signals
    -------
    asked
        Name of the programme to compare with.
    crowns_asked
        Name of the programme that the crown is to be seen in, beside the chosen one.
    """

    asked = Signal(str)
    crowns_asked = Signal(str)

    def __init__(self, here: str, programmes: Sequence[str], parent: QWidget | None = None) -> None:
        super().__init__(
            translate("what if dialog", "Compare furnaces"),
            translate(
                "what if dialog",
                "The same plan, sintered “{here}” as planned, and in another programme.",
            ).format(here=here),
            parent,
        )
        others = [name for name in programmes if name != here]
        self.programme = choice_box(
            translate("what if dialog", "Other programme"), others, others[0] if others else ""
        )
        self.programme.textActivated.connect(self._ask)
        self.add_row(translate("what if dialog", "Other programme"), self.programme)
        self.facts = ColourTable(("", "planned", "other"))
        self.add_widget(self.facts)
        self.table = ColourTable(
            (
                "area",
                translate("what if dialog", "planned | other"),
                "L*",
                "dL*",
                "da*",
                "db*",
                "dE00",
            )
        )
        self.add_widget(self.table)
        self.note = self.add_note(translate("what if dialog", _WORKING))
        self.crowns = QPushButton(translate("what if dialog", "Show both crowns"))
        self.crowns.setAutoDefault(False)
        self.crowns.setEnabled(bool(others))
        self.crowns.clicked.connect(self._show_crowns)
        self.add_widget(self.crowns)
        self.end(only_close=True)

    def start(self) -> None:
        """Ask for the first comparison."""
        if self.programme.count():
            self._ask(self.programme.currentText())
        else:
            self.note.setText(translate("what if dialog", "The materials have no other programme."))

    def _show_crowns(self) -> None:
        self.accept()
        self.crowns_asked.emit(self.programme.currentText())

    def _ask(self, name: str) -> None:
        self.table.set_rows(())
        self.facts.set_rows(())
        self.note.setText(translate("what if dialog", _WORKING))
        self.asked.emit(name)

    def set_result(self, found: ProgrammeWhatIf) -> None:
        """Show a comparison, if it is the one that is chosen."""
        if found.there != self.programme.currentText():
            return
        rows: list[Sequence[Cell]] = []
        for one in found.areas:
            colours = (screen_colour(one.here), screen_colour(one.there))
            rows.append(
                (
                    one.label,
                    Swatches(
                        colours,
                        translate("what if dialog", "{label} in both programmes").format(
                            label=one.label
                        ),
                    ),
                    f"{one.there.lightness:.1f}",
                    *(signed(value) for value in one.change),
                    f"{one.change_de00:.1f}",
                )
            )
        self.table.set_rows(rows)
        self.facts.set_rows(
            (
                (
                    translate("what if dialog", "time, cold to opening"),
                    *(duration_text(minutes) for minutes in found.minutes),
                ),
                (translate("what if dialog", "class by time"), *found.classes),
                (
                    translate("what if dialog", "TP of a bare plate of 1.0 mm"),
                    *map(range_text, found.translucency),
                ),
                (
                    translate("what if dialog", "strength class"),
                    *(
                        [
                            translate("what if dialog", "class {number}").format(
                                number=found.strength.number
                            )
                        ]
                        * 2
                    ),
                ),
            )
        )
        said = [f"{found.strength}.", translate("strength class", STATEMENT)]
        if not all(found.measured):
            said.append(translate("what if dialog", _DIRECTION))
        self.note.setText(" ".join(said))
        self.adjustSize()

    def set_problem(self, sentence: str) -> None:
        """Say why there is nothing to compare."""
        self.note.setText(sentence)
