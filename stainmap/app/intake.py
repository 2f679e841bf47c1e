"""The intake page put into a case, and the shades of this computer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from stainmap.app.edits import with_backing, without_backing
from stainmap.errors import StainmapError
from stainmap.files.shades_file import starter_shades, with_shades, write_shades
from stainmap.model.case import Case, Region
from stainmap.model.intake import Intake
from stainmap.model.shade_table import ClassOffsets, OffsetClass, ShadeTable, Tab
from stainmap.model.target import Offset
from stainmap.model.tooth import Tooth, Unit
from stainmap.planning.targets import offset_class, target_from_intake
from stainmap.words import translate


def with_intake(
    case: Case,
    intake: Intake,
    *,
    stump: str,
    cement: str,
    usual: tuple[Offset, ...],
    unit_stumps: Mapping[int, str] | None = None,
) -> Case:
    """Return the case with the answers of the intake page.

    What is wanted follows the shades where they were changed; offsets that the case already has
    are kept. What a person wanted by hand stays while the shades stay.

    Parameters
    ----------
    stump, cement
        What lies behind the crown: chosen if `intake.stump_known`, else assumed.
    usual
        Offsets to start from where nothing is wanted yet.
    unit_stumps
        Of a bridge, the stumps of those units (from 0) that are not as in the others; those that
        are set already stay if None.

    Raises
    ------
    StainmapError
        If a material is unknown, or the shades cannot be made comparable.
    """
    before = case.intake or Intake()
    changed = with_backing(case, Region.STUMP, stump=stump, cement=cement)
    if unit_stumps is not None:
        changed = _with_unit_stumps(changed, unit_stumps, cement)
    changed = replace(changed, intake=intake)
    if intake.shades == before.shades:
        return changed
    offsets = usual if case.target is None else case.target.offsets
    target = target_from_intake(intake, offsets)
    return changed if target is None else replace(changed, target=target)


def unit_stumps(case: Case) -> dict[int, str]:
    """Return the stumps of those units (from 0) that have one of their own."""
    return {
        one.of_unit: one.stump
        for one in case.backings
        if one.of_unit is not None and one.region is Region.STUMP
    }


def _with_unit_stumps(case: Case, chosen: Mapping[int, str], cement: str) -> Case:
    """Return the case with just these stumps of single units; cement of their own they keep."""
    before = unit_stumps(case)
    for unit in before.keys() - chosen.keys():
        case = without_backing(case, Region.STUMP, unit)
    for unit, stump in chosen.items():
        if before.get(unit) != stump:
            own = case.backing(Region.STUMP, unit).cement if unit in before else cement
            case = with_backing(case, Region.STUMP, stump=stump, cement=own, unit=unit)
    return case


def with_stump_known(case: Case) -> Case:
    """Return the case with what lies behind the crown said by a person, not assumed."""
    intake = case.intake or Intake()
    return case if intake.stump_known else replace(case, intake=replace(intake, stump_known=True))


def teeth_beside(units: tuple[Unit, ...]) -> tuple[Tooth, ...]:
    """Return the teeth before and behind the units in their arch; one at the end of it."""
    right, left = (1, 2) if units[0].tooth.is_upper else (4, 3)
    arch = [10 * right + n for n in range(8, 0, -1)] + [10 * left + n for n in range(1, 9)]
    places = [arch.index(unit.tooth.number) for unit in units if unit.tooth.number in arch]
    if not places:
        return ()
    beside = (min(places) - 1, max(places) + 1)
    return tuple(Tooth(number=arch[place]) for place in beside if 0 <= place < len(arch))


@dataclass(slots=True, eq=False)
class OwnShades:
    """The shipped tabs and offsets with those of this computer on top, kept in one file.

    Parameters
    ----------
    path
        The file; it need not be there.
    """

    path: Path
    table: ShadeTable
    problem: StainmapError | None = None

    @classmethod
    def read(cls, path: Path) -> OwnShades:
        """Return the shades; a file that cannot be used is said in `problem` and left alone."""
        base = starter_shades()
        if not path.exists():
            return cls(path, base)
        try:
            return cls(path, with_shades(base, path))
        except StainmapError as error:
            return cls(path, base, error)

    def usual(self, units: tuple[Unit, ...]) -> tuple[Offset, ...]:
        """Return the usual offsets of a restoration."""
        return self.table.offsets(offset_class(units))

    def keep_offsets(self, tooth_class: OffsetClass, offsets: tuple[Offset, ...]) -> None:
        """Make offsets the usual ones of a class of teeth from now on.

        Raises
        ------
        StainmapError
            If they cannot be written, or would replace a file that could not be read.
        """
        entry = ClassOffsets(tooth_class=tooth_class, offsets=offsets)
        kept = [one for one in self.table.usual_offsets if one.tooth_class is not tooth_class]
        order = list(OffsetClass)
        usual = sorted((*kept, entry), key=lambda one: order.index(one.tooth_class))
        self._keep(replace(self.table, usual_offsets=tuple(usual)))

    def keep_tabs(self, tabs: tuple[Tab, ...]) -> None:
        """Keep other tabs; raise StainmapError as `keep_offsets` does."""
        self._keep(replace(self.table, tabs=tabs))

    def _keep(self, table: ShadeTable) -> None:
        if self.problem is not None:
            raise StainmapError(
                translate(
                    "intake",
                    "The shades of this computer cannot be changed while their file is damaged.",
                ),
                where=str(self.path),
                advice=translate("intake", "Correct it, or take it away."),
            )
        self.path.parent.mkdir(parents=True, exist_ok=True)
        write_shades(self.path, table, starter_shades())
        self.table = table
