"""The page of the run's first stage: jars, what the plan takes out of them, drop volume."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from stainmap.model.case import Case
from stainmap.model.plan import Jar
from stainmap.model.process import JarAmounts
from stainmap.planning.batch_size import ESTIMATE, USUAL_JAR_DROPS
from stainmap.planning.dyes import recommended_dyes
from stainmap.planning.mixing import JAR_LIFE_HOURS, mixing_list
from stainmap.planning.tray_mixing import PaintedCase, TrayMixing, tray_mixing
from stainmap.ui.colour_table import ColourTable
from stainmap.ui.form_dialog import FormDialog, number_box
from stainmap.ui.jar_rows import jar_heads, jar_rows
from stainmap.words import translate

_MICROMETRES = 1000.0
_SAME_DROPS = 0.05  # the field has one decimal


class MixingDialog(FormDialog):
    """Shows what is mixed; drop volume, jar sizes and dyes can be changed, as one undo step.

    Parameters
    ----------
    case
        The open case; `case` of the dialog is what becomes of it.
    coats
        Its coats, (S, V).
    usual_drops_per_ml
        What the laboratory's pipettes give by the settings; offered where the case has another.
    """

    def __init__(
        self,
        case: Case,
        coats: NDArray[np.float32],
        parent: QWidget | None = None,
        *,
        usual_drops_per_ml: float | None = None,
    ) -> None:
        super().__init__(
            translate("mixing dialog", "Mix"),
            translate(
                "mixing dialog",
                "A jar is {drops} drops of liquid with 2 to 3 of dye (common practice)."
                " Mixed jars are kept {hours:g} h at most (assumed); no liquid goes back into"
                " its bottle.",
            ).format(drops=USUAL_JAR_DROPS, hours=JAR_LIFE_HOURS),
            parent,
        )
        self.case, self._coats = case, coats
        amounts = case.process.jar_amounts
        self.table = ColourTable(jar_heads())
        self.add_widget(self.table)
        self.remarks = self.add_note("")
        self.add_widget(self._buttons())
        self.add_note(translate("batch size", ESTIMATE))
        self.drops = number_box(
            translate("mixing dialog", "Drops in 1 mL"),
            amounts.drops_per_ml,
            5.0,
            100.0,
            decimals=1,
            step=1.0,
        )
        self.film = number_box(
            translate("mixing dialog", "Film per coat"),
            _MICROMETRES * amounts.film_per_coat_mm,
            1.0,
            1000.0,
            decimals=0,
            step=5.0,
        )
        self.left = number_box(
            translate("mixing dialog", "Drops left in the jar"),
            amounts.left_in_jar_drops,
            0.0,
            50.0,
            decimals=1,
            step=1.0,
        )
        # The jars come first, what is taken for granted about them below.
        self._column.removeItem(self.grid)
        self._column.addLayout(self.grid)
        self.add_heads(translate("mixing dialog", "assumed until counted or measured"))
        self.add_row(translate("mixing dialog", "Drops in 1 mL (count them)"), self.drops)
        self.add_row(
            translate("mixing dialog", "Film per coat, µm, on the milled surface"), self.film
        )
        self.add_row(translate("mixing dialog", "Drops that stay in jar and brush"), self.left)
        for box in (self.drops, self.film, self.left):
            box.valueChanged.connect(self._change_amounts)
        self._add_usual(usual_drops_per_ml)
        self.end()
        self._show()

    def _add_usual(self, drops_per_ml: float | None) -> None:
        """Offer the laboratory's drop where the case has another."""
        if drops_per_ml is None or abs(drops_per_ml - self.drops.value()) < _SAME_DROPS:
            return
        words = translate(
            "mixing dialog", "Take the drop of the settings ({drops:.1f} in 1 mL)"
        ).format(drops=drops_per_ml)
        self.take_usual = QPushButton(words)
        self.take_usual.setAutoDefault(False)
        self.take_usual.clicked.connect(lambda: self.drops.setValue(drops_per_ml))
        self.add_widget(self.take_usual)

    def _buttons(self) -> QWidget:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        self.tell_apart = QPushButton(translate("mixing dialog", "Dyes that tell jars apart"))
        self.shrink = QPushButton(translate("mixing dialog", "Smallest jars"))
        self.usual = QPushButton(
            translate("mixing dialog", "Jars of {drops} drops").format(drops=USUAL_JAR_DROPS)
        )
        self.shrink.setToolTip(
            translate("mixing dialog", "The fewest whole drops of the same ratios that last")
        )
        for button, call in (
            (self.tell_apart, self._tell_apart),
            (self.shrink, self._shrink),
            (self.usual, self._back_to_usual),
        ):
            button.setAutoDefault(False)
            button.clicked.connect(call)
            line.addWidget(button)
        line.addStretch(1)
        return row

    @property
    def mixing(self) -> TrayMixing:
        """What is mixed as things stand."""
        return tray_mixing([PaintedCase(case=self.case, coats=self._coats)])

    def _show(self) -> None:
        mixing = self.mixing
        self.table.set_rows(jar_rows(mixing.jars))
        said = [*mixing.left_out, *mixing.remarks]
        if not mixing.left_out:
            said += [text for text in mixing_list(self.case).remarks if text not in said]
        if mixing.least_difference is not None and mixing.least_colour_blind is not None:
            said.insert(
                0,
                translate(
                    "mixing dialog",
                    "On chalk the jars differ by dE00 {least:.0f} or more, to colour-blind eyes"
                    " by {blind:.0f}.",
                ).format(
                    least=mixing.least_difference,
                    blind=mixing.least_colour_blind,
                ),
            )
        self.remarks.setText(
            " ".join(said) or translate("mixing dialog", "No jar is on the tray yet.")
        )
        for button in (self.tell_apart, self.shrink, self.usual):
            button.setEnabled(bool(mixing.jars))
        self.adjustSize()

    def _change_amounts(self) -> None:
        amounts = JarAmounts(
            drops_per_ml=self.drops.value(),
            film_per_coat_mm=self.film.value() / _MICROMETRES,
            left_in_jar_drops=self.left.value(),
        )
        own = None if amounts == JarAmounts() else amounts
        self.case = replace(self.case, process=replace(self.case.process, amounts=own))
        self._show()

    def _tell_apart(self) -> None:
        recipes = recommended_dyes(self.case)
        jars = zip(self.case.plan.jars, recipes, strict=True)
        self._with_jars(tuple(replace(jar, dye_drops=drops) for jar, drops in jars))

    def _shrink(self) -> None:
        smallest = {jar.planned.number: jar.smallest for jar in self.mixing.jars}
        self._with_jars(
            tuple(_as_large_as(jar, smallest.get(jar.number, jar)) for jar in self.case.plan.jars)
        )

    def _back_to_usual(self) -> None:
        self._with_jars(tuple(_usual(jar) for jar in self.case.plan.jars))

    def _with_jars(self, jars: tuple[Jar, ...]) -> None:
        self.case = replace(self.case, plan=replace(self.case.plan, jars=jars))
        self._show()


def _as_large_as(jar: Jar, other: Jar) -> Jar:
    return replace(jar, liquid_drops=other.liquid_drops, dye_drops=other.dye_drops)


def _usual(jar: Jar) -> Jar:
    """Return the jar at 25 drops where whole drops of dye keep its ratio; else as it is."""
    scaled = [drops * USUAL_JAR_DROPS / jar.liquid_drops for drops in jar.dye_drops]
    if any(drops != round(drops) for drops in scaled):
        return jar
    cyan, magenta, yellow = (round(drops) for drops in scaled)
    return replace(jar, liquid_drops=USUAL_JAR_DROPS, dye_drops=(cyan, magenta, yellow))
