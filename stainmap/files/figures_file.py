"""The entry of a case file that holds what was predicted of the areas: ``figures/KEY.json``."""

from __future__ import annotations

from dataclasses import asdict
from math import isfinite
from typing import Final

import msgspec

from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.area_figures import AreaFigures, KeptFigures, Lab

FIGURES: Final = "figures/"
MOST_BYTES: Final = 1 << 20


class _AreaDoc(msgspec.Struct, frozen=True):
    """One area by its number; see `AreaFigures`."""

    area: int
    area_mm2: float
    lab: Lab
    wall_mm: float
    lab_low: Lab | None = None
    parameters_sd: Lab | None = None
    lightness_doubt: float = 0.0


class _FiguresDoc(msgspec.Struct, frozen=True):
    """All areas, of the whole and of every unit of a bridge."""

    whole: tuple[_AreaDoc, ...]
    units: tuple[tuple[_AreaDoc, ...], ...] = ()


def figures_entry(kept: KeptFigures) -> tuple[str, bytes]:
    """Return name and content of the entry that holds the figures of the areas."""
    document = _FiguresDoc(
        whole=tuple(_written(one) for one in kept.whole),
        units=tuple(tuple(_written(one) for one in unit) for unit in kept.units),
    )
    return f"{FIGURES}{kept.key}.json", msgspec.json.encode(document)


def figures_from(name: str, content: bytes) -> KeptFigures | None:
    """Return the figures in an entry; None for whatever is wrong with it: they are computed anew.

    Whether they are those of the case is for `figures_key.fits` to say.
    """
    try:
        document = msgspec.json.decode(content, type=_FiguresDoc)
        return KeptFigures(
            key=name.removeprefix(FIGURES).removesuffix(".json"),
            whole=tuple(_read(one) for one in document.whole),
            units=tuple(tuple(_read(one) for one in unit) for unit in document.units),
        )
    except (msgspec.DecodeError, ValueError):
        return None


def _written(figures: AreaFigures) -> _AreaDoc:
    return _AreaDoc(**{**asdict(figures), "area": int(figures.area)})


def _read(one: _AreaDoc) -> AreaFigures:
    numbers = [one.area_mm2, one.wall_mm, one.lightness_doubt, *one.lab]
    numbers += [*(one.lab_low or ()), *(one.parameters_sd or ())]
    if not all(map(isfinite, numbers)):
        raise ValueError("a figure is not a number")
    return AreaFigures(
        area=_area(one.area),
        area_mm2=one.area_mm2,
        lab=one.lab,
        lab_low=one.lab_low,
        parameters_sd=one.parameters_sd,
        lightness_doubt=one.lightness_doubt,
        wall_mm=one.wall_mm,
    )


def _area(number: int) -> Area:
    return Zone(number) if number <= max(Zone) else Accent(number)
