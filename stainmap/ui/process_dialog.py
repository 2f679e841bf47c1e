"""Whose hand paints, and how a laboratory's liquids go in."""

from __future__ import annotations

from PySide6.QtWidgets import QLineEdit, QWidget

from stainmap.model.process import StainProcess, UptakeRule
from stainmap.ui.form_dialog import FormDialog
from stainmap.words import translate


class ProcessDialog(FormDialog):
    """The painter and their hand; uptake, depths and wicking for those who have measured them."""

    def __init__(self, process: StainProcess, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("process dialog", "Hand and uptake"),
            translate(
                "process dialog",
                "A wet hand leaves more in a coat than a dry one. 1.0 is the hand the materials"
                " were described with.",
            ),
            parent,
        )
        uptake = process.uptake
        # Asked for where jars are mixed.
        self._amounts = process.amounts
        self.painter = QLineEdit(process.painter)
        self.painter.setAccessibleName(translate("process dialog", "Painter"))
        self.painter.setPlaceholderText(translate("process dialog", "as the laboratory calls them"))
        self.painter.setMaxLength(40)
        self.add_row(translate("process dialog", "Painter"), self.painter)
        self.hand = self.add_number(
            translate("process dialog", "Hand factor"), uptake.hand_factor, 0.6, 1.6, step=0.05
        )
        self.add_heads(translate("process dialog", "assumed until measured"))
        self.saturation = self.add_number(
            translate("process dialog", "Coats to saturation"),
            uptake.coats_to_saturation,
            0.5,
            40.0,
            decimals=1,
            step=0.5,
        )
        self.competition = self.add_number(
            translate("process dialog", "Competition for the same pores"),
            uptake.competition,
            0.0,
            1.0,
            before=translate("process dialog", "Competition, 0 to 1"),
        )
        self.outer = self.add_number(
            translate("process dialog", "Depth from outside"),
            process.outer_depth_mm,
            0.05,
            2.0,
            step=0.05,
            before=translate("process dialog", "Depth from outside, mm sintered"),
        )
        self.inner = self.add_number(
            translate("process dialog", "Depth from inside"),
            process.inner_depth_mm,
            0.05,
            2.0,
            step=0.05,
            before=translate("process dialog", "Depth from inside, mm sintered"),
        )
        self.wicking = self.add_number(
            translate("process dialog", "Wicking"),
            process.wicking_mm,
            0.0,
            2.0,
            step=0.05,
            before=translate("process dialog", "Wicking, mm sintered"),
        )
        self.end()

    @property
    def process(self) -> StainProcess:
        """The way of staining as it is set now."""
        return StainProcess(
            outer_depth_mm=self.outer.value(),
            inner_depth_mm=self.inner.value(),
            wicking_mm=self.wicking.value(),
            painter=self.painter.text().strip(),
            amounts=self._amounts,
            uptake=UptakeRule(
                coats_to_saturation=self.saturation.value(),
                competition=self.competition.value(),
                hand_factor=self.hand.value(),
            ),
        )
