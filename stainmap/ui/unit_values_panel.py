"""Value per unit of a bridge, under value ladder and advice: one block has to suit all of them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from stainmap.app.job import JobRunner, Progress
from stainmap.app.session import Session
from stainmap.ui.colour_table import ColourTable
from stainmap.ui.marks import signed
from stainmap.ui.per_prediction import PerPrediction
from stainmap.ui.section import SectionHead, SoftLabel
from stainmap.words import marked, translate, value_word

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.planning.unit_values import UnitValue

_HEADS = (
    marked("unit values panel", "unit"),
    marked("unit values panel", "wall mm"),
    "L*",
    "\N{PLUS-MINUS SIGN}",
    "dL*",
)
_NOTE = marked("unit values panel", "Mean of each unit's body; dL* from the unit above it.")


class UnitValuesPanel(QWidget):
    """A line per unit, in the order of the row; hidden where there is one unit."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("unit values panel", "Value per unit"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 4)
        column.setSpacing(6)
        self.head = SectionHead(translate("unit values panel", "Value per unit"))
        self.table = ColourTable([translate("unit values panel", head) for head in _HEADS])
        column.addWidget(self.head)
        column.addWidget(self.table)
        column.addWidget(SoftLabel(translate("unit values panel", _NOTE), 11))
        self.set_values(())

    def set_values(self, values: Sequence[UnitValue]) -> None:
        """Show these units; none or one hide the panel."""
        self.setVisible(len(values) > 1)
        self.table.set_rows([_row(one) for one in values])
        self.head.set_remark(_largest_step(values))
        self.setAccessibleDescription("; ".join(_spoken(one) for one in values))


def _row(one: UnitValue) -> tuple[str, ...]:
    return (
        f"{one.unit.tooth.number}  {value_word(one.unit.role)}",
        f"{one.wall_mm:.1f}",
        f"{one.lightness:.1f}",
        f"{one.plus_minus:.1f}",
        "" if one.from_before is None else signed(one.from_before),
    )


def _spoken(one: UnitValue) -> str:
    number, wall, lightness, plus_minus, step = _row(one)
    said = translate(
        "unit values panel", "{number}: L* {lightness}, plus or minus {plus_minus}, wall {wall} mm"
    ).format(number=number, lightness=lightness, plus_minus=plus_minus, wall=wall)
    return (
        translate("unit values panel", "{unit}, {step} from the unit before it").format(
            unit=said, step=step
        )
        if step
        else said
    )


def _largest_step(values: Sequence[UnitValue]) -> str:
    """Return "largest step 1.2 L*, 15 to 14"; empty without neighbours."""
    steps = [
        (abs(after.from_before), before.unit.tooth.number, after.unit.tooth.number)
        for before, after in pairwise(values)
        if after.from_before is not None
    ]
    if not steps:
        return ""
    size, before, after = max(steps)
    return translate("unit values panel", "largest step {size:.1f} L*, {before} to {after}").format(
        size=size, before=before, after=after
    )


class UnitValuesDesk(PerPrediction["tuple[UnitValue, ...]"]):
    """Works out the value of every unit in the background, whenever a bridge is predicted anew."""

    def __init__(
        self, session: Session, runner: JobRunner, panel: UnitValuesPanel, parent: QObject
    ) -> None:
        super().__init__(session, runner, parent)
        self._panel = panel

    def title(self) -> str:
        """Return what the work is called."""
        return translate("unit values panel", "Value of each unit")

    def wants(self, prediction: Prediction) -> bool:
        """Return True for a bridge."""
        return len(prediction.case.units) > 1

    def work(self, prediction: Prediction, progress: Progress) -> tuple[UnitValue, ...]:
        """Take the mean over each unit's body."""
        from stainmap.planning.unit_values import unit_values  # noqa: PLC0415

        # A plan that was changed meanwhile is not worked out.
        progress(0.0, translate("unit values panel", "value of each unit"))
        return unit_values(prediction.case, prediction.unit_outcomes())

    def show(self, found: tuple[UnitValue, ...] | None) -> None:
        """Show them in the panel."""
        self._panel.set_values(found or ())
