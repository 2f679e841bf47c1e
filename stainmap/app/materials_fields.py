"""The fields of the forms of materials: what can be typed, in which range, and how it is called."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from stainmap.app.materials import MaterialKind
from stainmap.model.material import (
    LARGEST_SCATTERING_FACTOR,
    LEAST_SCATTERING_FACTOR,
    ScatteringClass,
)
from stainmap.words import marked, translate

YES, NO = "yes", "no"


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """One field of a form.

    Parameters
    ----------
    path
        Its place in the catalogue's table, as ``nominal.lightness``.
    words
        What it is called, with its unit.
    low, high
        Range of a number.
    choices
        What can be chosen; "stumps" and "ions" stand for the names of the catalogue. None: a
        number, or text where `is_text`.
    optional
        True if it may be left empty; `empty` then says what that means.
    """

    path: str
    words: str
    low: float = 0.0
    high: float = 0.0
    choices: tuple[str, ...] = ()
    is_text: bool = False
    is_whole: bool = False
    optional: bool = False
    empty: str = ""

    @property
    def expected(self) -> str:
        """What can be typed, in words."""
        if self.choices:
            return translate("materials form", "one of the list")
        if self.is_text:
            return translate("materials form", "any text")
        span = translate("materials form", "{low:g} to {high:g}").format(
            low=self.low, high=self.high
        )
        return (
            translate("materials form", "{span}, or nothing: {empty}").format(
                span=span, empty=translate("materials form", self.empty)
            )
            if self.optional
            else span
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NodeTable:
    """The table of what a material is made up of.

    Parameters
    ----------
    path
        Its list in the catalogue's table.
    words
        What one row is, and what all are.
    least, most
        How many rows there can be.
    """

    path: str
    words: tuple[str, str]
    columns: tuple[Quantity, ...]
    least: int
    most: int


def _number(path: str, words: str, low: float, high: float) -> Quantity:
    """Return a field for a number that has to be there."""
    return Quantity(path=path, words=words, low=low, high=high)


_CLASSES = tuple(one.value for one in ScatteringClass)
_SOLVED = marked("materials form", "solved from the colour")

NUMBERS: Final[dict[MaterialKind, tuple[Quantity, ...]]] = {
    MaterialKind.BLOCK: (
        Quantity(path="lot", words=marked("materials form", "Lot"), is_text=True),
        _number("enlargement_factor", marked("materials form", "Enlargement factor"), 1.0, 1.5),
        _number("minimum_wall_mm", marked("materials form", "Least wall, mm sintered"), 0.1, 3.0),
    ),
    MaterialKind.LIQUID: (
        Quantity(path="purpose", words=marked("materials form", "Purpose"), is_text=True),
        _number("scatter_change", marked("materials form", "Change of scattering"), -0.3, 0.3),
        *(
            Quantity(
                path=f"dye_drops.{at}",
                words=words,
                low=0,
                high=25,
                is_whole=True,
            )
            for at, words in enumerate(
                (
                    marked("materials form", "Drops of cyan on 25"),
                    marked("materials form", "Drops of magenta on 25"),
                    marked("materials form", "Drops of yellow on 25"),
                )
            )
        ),
    ),
    MaterialKind.ION: (),
    MaterialKind.DYE: tuple(
        Quantity(
            path=f"absorption_rgb.{at}",
            words=words,
            high=10.0,
        )
        for at, words in enumerate(
            (
                marked("materials form", "Absorbs red, per drop"),
                marked("materials form", "Absorbs green, per drop"),
                marked("materials form", "Absorbs blue, per drop"),
            )
        )
    ),
    MaterialKind.PROGRAMME: (
        _number("start_c", marked("materials form", "Starts at, °C"), 0.0, 500.0),
        _number(
            "scattering_factor",
            marked("materials form", "Factor on scattering"),
            LEAST_SCATTERING_FACTOR,
            LARGEST_SCATTERING_FACTOR,
        ),
        Quantity(
            path="own_drying_minutes",
            words=marked("materials form", "Dries by itself, min"),
            low=1.0,
            high=600.0,
            optional=True,
            empty=marked("materials form", "dried elsewhere"),
        ),
    ),
    MaterialKind.STUMP: (
        _number("floor", marked("materials form", "Reflectance at short waves"), 0.0, 1.0),
        _number("rise", marked("materials form", "Rise towards long waves"), -1.0, 1.0),
        _number("centre_nm", marked("materials form", "Half risen at, nm"), 200.0, 1000.0),
        _number("width_nm", marked("materials form", "Width of the rise, nm"), 1.0, 500.0),
    ),
    MaterialKind.CEMENT: (
        _number("absorption_per_mm", marked("materials form", "Absorption, 1/mm"), 0.0, 1000.0),
        _number("scattering_per_mm", marked("materials form", "Scattering, 1/mm"), 0.0, 1000.0),
        Quantity(
            path="coupled", words=marked("materials form", "Wets both sides"), choices=(YES, NO)
        ),
    ),
}
"""Fields of every kind besides name and origin; ranges: common practice, no published source."""

NODES: Final[dict[MaterialKind, NodeTable]] = {
    MaterialKind.BLOCK: NodeTable(
        path="layers",
        words=(marked("materials form", "layer"), marked("materials form", "layers")),
        least=1,
        most=6,
        columns=(
            _number("bottom_mm", marked("materials form", "Bottom, mm milled"), 0.0, 40.0),
            Quantity(
                path="scattering",
                words=marked("materials form", "Class of zirconia"),
                choices=_CLASSES,
            ),
            _number("nominal.lightness", marked("materials form", "Nominal L*"), 0.0, 100.0),
            _number("nominal.a", marked("materials form", "Nominal a*"), -30.0, 30.0),
            _number("nominal.b", marked("materials form", "Nominal b*"), -20.0, 60.0),
            _number("nominal_thickness_mm", marked("materials form", "of a plate, mm"), 0.2, 10.0),
            Quantity(
                path="nominal.measurement.backing",
                words=marked("materials form", "over"),
                choices=("stumps",),
            ),
            *(
                Quantity(
                    path=f"absorption.{path}",
                    words=words,
                    low=low,
                    high=high,
                    optional=True,
                    empty=_SOLVED,
                )
                for path, words, low, high in (
                    (
                        "c0_per_mm",
                        marked("materials form", "Absorption at 400 nm, 1/mm"),
                        0.0,
                        1000.0,
                    ),
                    ("decay_nm", marked("materials form", "falls to 1/e within, nm"), 1.0, 1000.0),
                    ("c1_per_mm", marked("materials form", "on top of, 1/mm"), 0.0, 1000.0),
                )
            ),
        ),
    ),
    MaterialKind.LIQUID: NodeTable(
        path="amplitudes_per_mm",
        words=(marked("materials form", "ion"), marked("materials form", "ions")),
        least=0,
        most=20,
        columns=(
            Quantity(path="0", words=marked("materials form", "Ion"), choices=("ions",)),
            _number("1", marked("materials form", "At full load, 1/mm"), 0.0, 50.0),
        ),
    ),
    MaterialKind.ION: NodeTable(
        path="bands",
        words=(marked("materials form", "band"), marked("materials form", "bands")),
        least=1,
        most=20,
        columns=(
            _number("centre_nm", marked("materials form", "Centre, nm"), 100.0, 1500.0),
            _number("width_nm", marked("materials form", "Standard deviation, nm"), 0.5, 500.0),
            _number("strength", marked("materials form", "Strength"), 0.0, 100.0),
        ),
    ),
    MaterialKind.PROGRAMME: NodeTable(
        path="segments",
        words=(marked("materials form", "piece"), marked("materials form", "pieces")),
        least=1,
        most=30,
        columns=(
            _number("target_c", marked("materials form", "To, °C"), 0.0, 1700.0),
            _number("minutes", marked("materials form", "within, min"), 0.1, 3000.0),
        ),
    ),
}
