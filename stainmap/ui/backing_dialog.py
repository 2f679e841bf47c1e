"""What lies behind the crown, region by region."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtWidgets import QComboBox, QDoubleSpinBox, QWidget

from stainmap.model.case import Backing, Case, Region
from stainmap.model.tooth import Role
from stainmap.ui.form_dialog import FormDialog, choice_box, number_box

_WORDS = {
    Region.STUMP: "inside the crown",
    Region.PONTIC: "pontic",
    Region.INCISAL_EDGE: "incisal edge",
    Region.SCREW_CHANNEL: "screw channel",
}


def regions_of(case: Case) -> tuple[Region, ...]:
    """Return the regions that this crown has."""
    found = [Region.STUMP]
    if any(unit.role is Role.PONTIC for unit in case.units):
        found.append(Region.PONTIC)
    if any(unit.tooth.is_front for unit in case.units):
        found.append(Region.INCISAL_EDGE)
    if case.screw_channels:
        found.append(Region.SCREW_CHANNEL)
    return tuple(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Fields:
    stump: QComboBox
    cement: QComboBox
    thickness_mm: QDoubleSpinBox


class BackingDialog(FormDialog):
    """Stump, cement and its thickness for every region the crown has.

    Parameters
    ----------
    backings
        What lies behind each region now.
    stumps, cements
        Names to choose from.
    """

    def __init__(
        self,
        backings: Sequence[Backing],
        stumps: Sequence[str],
        cements: Sequence[str],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(
            "What lies behind",
            "Thin walls show what lies behind them; a dark stump lowers value most where the wall"
            " is thinnest.",
            parent,
        )
        self.add_heads("region", "behind the wall", "cement", "mm")
        self._fields: dict[Region, _Fields] = {}
        for backing in backings:
            name = _WORDS[backing.region]
            fields = _Fields(
                stump=choice_box(f"Behind {name}", stumps, backing.stump),
                cement=choice_box(f"Cement, {name}", cements, backing.cement),
                thickness_mm=number_box(
                    f"Cement thickness, {name}", backing.cement_thickness_mm, 0.0, 1.0, step=0.05
                ),
            )
            self._fields[backing.region] = fields
            self.add_row(name, fields.stump, fields.cement, fields.thickness_mm)
        self.end()

    @property
    def backings(self) -> tuple[Backing, ...]:
        """What is to lie behind each region, as it is set now."""
        return tuple(
            Backing(
                region=region,
                stump=fields.stump.currentText(),
                cement=fields.cement.currentText(),
                cement_thickness_mm=fields.thickness_mm.value(),
            )
            for region, fields in self._fields.items()
        )
