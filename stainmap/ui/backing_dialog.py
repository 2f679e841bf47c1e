"""What lies behind the crown, region by region."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from PySide6.QtWidgets import QComboBox, QDoubleSpinBox, QWidget

from stainmap.model.case import Backing, Case, Region
from stainmap.model.tooth import Role
from stainmap.ui.form_dialog import FormDialog, choice_box, number_box
from stainmap.words import marked, translate

AS_ALL = marked("backing dialog", "as in the other units")
_WORDS = {
    Region.STUMP: marked("backing dialog", "inside the crown"),
    Region.PONTIC: marked("backing dialog", "pontic"),
    Region.INCISAL_EDGE: marked("backing dialog", "incisal edge"),
    Region.SCREW_CHANNEL: marked("backing dialog", "screw channel"),
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


def behind_now(case: Case) -> tuple[Backing, ...]:
    """Return what lies behind every region of this crown, and what single units have of their own.

    A region without an entry of its own has the stump's.
    """
    common = [replace(case.backing(region), region=region) for region in regions_of(case)]
    own = [one for one in case.backings if one.of_unit is not None and one.region is Region.STUMP]
    return (*common, *sorted(own, key=lambda one: one.of_unit or 0))


def units_on_stumps(case: Case) -> dict[int, str]:
    """Return the units of a bridge that stand on stumps, by the numbers of their teeth."""
    if len(case.units) < 2:
        return {}
    return {
        number: str(unit.tooth.number)
        for number, unit in enumerate(case.units)
        if unit.role is not Role.PONTIC
    }


def _stump_words(stump: str) -> str:
    return translate("backing dialog", AS_ALL) if stump == AS_ALL else stump


@dataclass(frozen=True, slots=True, kw_only=True)
class _Fields:
    stump: QComboBox
    cement: QComboBox
    thickness_mm: QDoubleSpinBox

    def let_choose(self) -> None:
        """Offer cement and thickness where a stump of its own is chosen."""
        own = self.stump.currentData() != AS_ALL
        self.cement.setEnabled(own)
        self.thickness_mm.setEnabled(own)


class BackingDialog(FormDialog):
    """Stump, cement and its thickness for every region the crown has; of bridges for every unit.

    Parameters
    ----------
    backings
        What lies behind now, as `behind_now` has it.
    stumps, cements
        Names to choose from.
    units
        Units that may have a stump of their own, and what they are called.
    """

    def __init__(
        self,
        backings: Sequence[Backing],
        stumps: Sequence[str],
        cements: Sequence[str],
        parent: QWidget | None = None,
        *,
        units: Mapping[int, str] | None = None,
    ) -> None:
        super().__init__(
            translate("backing dialog", "What lies behind"),
            translate(
                "backing dialog",
                "Thin walls show what lies behind them; a dark stump lowers value most where the"
                " wall is thinnest.",
            ),
            parent,
        )
        self.add_heads(
            translate("backing dialog", "region"),
            translate("backing dialog", "behind the wall"),
            translate("backing dialog", "cement"),
            "mm",
        )
        self._fields: dict[tuple[Region, int | None], _Fields] = {}
        for backing in backings:
            if backing.of_unit is None:
                self._add(
                    translate("backing dialog", _WORDS[backing.region]), backing, stumps, cements
                )
        common = next(one for one in backings if one.region is Region.STUMP)
        own = {one.of_unit: one for one in backings}
        for unit, name in (units or {}).items():
            backing = own.get(unit) or replace(common, of_unit=unit, stump=AS_ALL)
            self._add(
                translate("backing dialog", "inside {name}").format(name=name),
                backing,
                (AS_ALL, *stumps),
                cements,
            )
        self.end()

    def _add(
        self, name: str, backing: Backing, stumps: Sequence[str], cements: Sequence[str]
    ) -> None:
        fields = _Fields(
            stump=choice_box(
                translate("backing dialog", "Behind {name}").format(name=name),
                stumps,
                backing.stump,
                _stump_words,
            ),
            cement=choice_box(
                translate("backing dialog", "Cement, {name}").format(name=name),
                cements,
                backing.cement,
            ),
            thickness_mm=number_box(
                translate("backing dialog", "Cement thickness, {name}").format(name=name),
                backing.cement_thickness_mm,
                0.0,
                1.0,
                step=0.05,
            ),
        )
        fields.let_choose()
        fields.stump.currentTextChanged.connect(lambda _text: fields.let_choose())
        self._fields[backing.region, backing.of_unit] = fields
        self.add_row(name, fields.stump, fields.cement, fields.thickness_mm)

    @property
    def backings(self) -> tuple[Backing, ...]:
        """What is to lie behind each region and unit, as it is set now."""
        return tuple(
            Backing(
                region=region,
                stump=str(fields.stump.currentData()),
                cement=str(fields.cement.currentData()),
                cement_thickness_mm=fields.thickness_mm.value(),
                of_unit=unit,
            )
            for (region, unit), fields in self._fields.items()
            if fields.stump.currentData() != AS_ALL
        )
