"""Length units and sizes told by the extents of a body."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from stainmap.planning.size_check import Size, plausible_sizes
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState
from tests.planning.bodies import revolved


@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("name", ["hollow_46", "solid_14", "solid_11"])
def test_units_tell_apart(real: Callable[..., TriMesh], name: str, unit: LengthUnit) -> None:
    in_file = real(name).scaled(1.0 / unit.millimetres)
    assert plausible_sizes(in_file) == (Size(unit=unit, state=SizeState.UNKNOWN),)


@pytest.mark.parametrize("unit", list(LengthUnit))
def test_a_bridge_fits_one_unit(real: Callable[..., TriMesh], unit: LengthUnit) -> None:
    in_file = real("bridge_14_15_16").scaled(1.0 / unit.millimetres)
    assert [size.unit for size in plausible_sizes(in_file)] == [unit]


def test_a_quarter_more_cannot_be_told_but_beyond_14_mm(real: Callable[..., TriMesh]) -> None:
    crown = real("solid_14")  # 10 mm long, 12.5 as milled
    assert plausible_sizes(crown.scaled(1.25))[0].state is SizeState.UNKNOWN
    molar = real("hollow_46")  # 12 mm long, 15 as milled
    assert plausible_sizes(molar.scaled(1.25))[0] == Size(
        unit=LengthUnit.MILLIMETRE, state=SizeState.MILLED
    )


def test_what_the_file_declares_comes_first() -> None:
    # 12 long and 8 thick, and 30 times that in inches: only one fits, whatever is declared.
    body = revolved(12.0, lambda x: 4.0 + 0.0 * x)
    assert plausible_sizes(body, LengthUnit.INCH)[0].unit is LengthUnit.MILLIMETRE
    assert plausible_sizes(body, LengthUnit.MILLIMETRE)[0].unit is LengthUnit.MILLIMETRE


@pytest.mark.parametrize("factor", [0.2, 40.0])
def test_some_sizes_fit_nothing(real: Callable[..., TriMesh], factor: float) -> None:
    sizes = plausible_sizes(real("solid_11").scaled(factor))
    assert LengthUnit.MILLIMETRE not in [size.unit for size in sizes]
