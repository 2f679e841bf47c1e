"""Blocks, liquids, dyes, sintering programmes and what lies behind the crown."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

from stainmap.errors import CatalogueError
from stainmap.model.colour import Colour
from stainmap.words import translate


class Provenance(StrEnum):
    """Where a material's numbers come from."""

    INVENTED = "invented, for demonstration"
    MEASURED = "measured"
    CALIBRATED = "calibrated"


class ScatteringClass(StrEnum):
    """Class of zirconia by its yttria content, which sets how strongly it scatters."""

    Y3 = "3Y"
    Y4 = "4Y"
    Y5 = "5Y"


@dataclass(frozen=True, slots=True, kw_only=True)
class Absorption:
    """Block absorption ``c0 exp(-(wavelength - 400) / decay) + c1`` in 1/mm, wavelength in nm."""

    c0_per_mm: float
    decay_nm: float
    c1_per_mm: float

    def __post_init__(self) -> None:
        """Refuse negative absorption."""
        if self.c0_per_mm < 0 or self.c1_per_mm < 0 or self.decay_nm <= 0:
            raise CatalogueError(
                translate(
                    "material", "Block absorption must not be negative, its decay above zero."
                )
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockLayer:
    """One layer of a block, from `bottom_mm` (milled, above the bottom of the blank) upwards."""

    bottom_mm: float
    scattering: ScatteringClass
    nominal: Colour
    nominal_thickness_mm: float
    absorption: Absorption | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A pre-shaded blank, described by its sintered colour over a stated backing."""

    name: str
    layers: tuple[BlockLayer, ...]
    enlargement_factor: float
    minimum_wall_mm: float
    provenance: Provenance
    lot: str = ""

    def __post_init__(self) -> None:
        """Refuse blanks without a layer or with an impossible enlargement."""
        if not 1 <= len(self.layers) <= 6:
            raise CatalogueError(
                translate("material", "Block '{name}' has {count} layers.").format(
                    name=self.name, count=len(self.layers)
                ),
                advice=translate("material", "Give 1 to 6."),
            )
        if not 1.0 <= self.enlargement_factor <= 1.5:
            raise CatalogueError(
                translate(
                    "material", "Block '{name}' has the enlargement factor {enlargement_factor}."
                ).format(name=self.name, enlargement_factor=self.enlargement_factor),
                advice=translate("material", "It lies between 1.0 and 1.5, usually near 1.25."),
            )
        bottoms = [layer.bottom_mm for layer in self.layers]
        if bottoms != sorted(bottoms) or bottoms[0] != 0.0:
            raise CatalogueError(
                translate("material", "The layers of block '{name}' are not in order.").format(
                    name=self.name
                ),
                advice=translate("material", "Start at 0 mm and go up."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class IonBand:
    """One Gaussian absorption band of an ion: centre and standard deviation in nm, strength."""

    centre_nm: float
    width_nm: float
    strength: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Ion:
    """An ion with the bands it absorbs by."""

    name: str
    bands: tuple[IonBand, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Liquid:
    """A staining liquid: absorption as amounts of ions at full load, in 1/mm.

    ``scatter_change`` is what a fully loaded layer does to scattering (-0.3 to 0.3).
    """

    name: str
    purpose: str
    amplitudes_per_mm: tuple[tuple[str, float], ...]
    provenance: Provenance
    scatter_change: float = 0.0
    dye_drops: tuple[int, int, int] = (0, 0, 0)

    def __post_init__(self) -> None:
        """Refuse negative amounts and scattering out of range."""
        if any(amount < 0 for _, amount in self.amplitudes_per_mm):
            raise CatalogueError(
                translate("material", "Liquid '{name}' has a negative amount of an ion.").format(
                    name=self.name
                )
            )
        if not -0.3 <= self.scatter_change <= 0.3:
            raise CatalogueError(
                translate(
                    "material", "Liquid '{name}' changes scattering by {scatter_change}."
                ).format(name=self.name, scatter_change=self.scatter_change),
                advice=translate("material", "Give a value between -0.3 and 0.3."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Dye:
    """An organic indicator dye: absorption per drop on 25 drops at full load, linear R, G, B."""

    name: str
    absorption_rgb: tuple[float, float, float]
    provenance: Provenance


LEAST_SCATTERING_FACTOR, LARGEST_SCATTERING_FACTOR = 0.7, 1.8


def _check_scattering_factor(factor: float, whose: str) -> None:
    if not LEAST_SCATTERING_FACTOR <= factor <= LARGEST_SCATTERING_FACTOR:
        raise CatalogueError(
            translate("material", "{whose} multiplies scattering by {factor}.").format(
                whose=whose, factor=factor
            ),
            advice=translate("material", "Give a factor between 0.7 and 1.8."),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """One straight piece of a sintering programme: to `target_c` within `minutes`."""

    target_c: float
    minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankCoupon:
    """What an unstained coupon told about a programme, who read it, and when.

    `scattering_factor` multiplies scattering relative to the slow programme that blocks are
    described by, and replaces the one assumed for the programme's class.
    """

    scattering_factor: float
    read_by: str
    read_on: str
    note: str = ""

    def __post_init__(self) -> None:
        """Refuse factors no programme has, and readings nobody stands for."""
        _check_scattering_factor(self.scattering_factor, "The coupon")
        if not self.read_by.strip() or not self.read_on.strip():
            raise CatalogueError(
                translate("material", "A coupon's reading names nobody or no day."),
                advice=translate("material", "Say who read it, and when."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class SinteringProgramme:
    """Ramps and holds from `start_c`; opening ends the last one.

    `scattering_factor` is the one assumed for its class; `coupon` replaces it by a measured one.
    `own_drying_minutes` is the drying stage of furnaces that have one, before the ramps; None means
    that the work is dried elsewhere.
    """

    name: str
    segments: tuple[Segment, ...]
    scattering_factor: float
    provenance: Provenance
    start_c: float = 20.0
    coupon: BlankCoupon | None = None
    own_drying_minutes: float | None = None

    def __post_init__(self) -> None:
        """Refuse programmes without a segment or with a scattering factor out of range."""
        if not self.segments or any(segment.minutes <= 0 for segment in self.segments):
            raise CatalogueError(
                translate("material", "Programme '{name}' has an empty segment.").format(
                    name=self.name
                )
            )
        _check_scattering_factor(self.scattering_factor, f"Programme '{self.name}'")
        drying = self.own_drying_minutes
        if drying is not None and not 0.0 < drying <= 600.0:
            raise CatalogueError(
                translate("material", "Programme '{name}' dries for {drying:g} minutes.").format(
                    name=self.name, drying=drying
                ),
                advice=translate(
                    "material", "Give more than 0 and at most 600, or leave the field out."
                ),
            )

    @property
    def effective_scattering_factor(self) -> float:
        """What predictions multiply scattering by: the coupon's factor, else the class's."""
        return self.scattering_factor if self.coupon is None else self.coupon.scattering_factor

    @property
    def minutes(self) -> float:
        """Total time from cold to opening."""
        return sum(segment.minutes for segment in self.segments)

    @property
    def peak_c(self) -> float:
        """Highest temperature."""
        return max(segment.target_c for segment in self.segments)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stump:
    """What lies behind the cement: its own reflectance over wavelength as a sigmoid.

    ``R = floor + rise / (1 + exp(-(wavelength - centre) / width))``, wavelengths in nm.
    """

    name: str
    floor: float
    rise: float
    centre_nm: float
    width_nm: float
    provenance: Provenance

    def __post_init__(self) -> None:
        """Refuse reflectances outside 0 to 1."""
        if not (0 <= self.floor <= 1 and 0 <= self.floor + self.rise <= 1 and self.width_nm > 0):
            raise CatalogueError(
                translate(
                    "material", "Stump '{name}' reflects less than nothing or more than all."
                ).format(name=self.name)
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Cement:
    """Cement between crown and stump: Kubelka-Munk absorption and scattering in 1/mm, grey."""

    name: str
    absorption_per_mm: float
    scattering_per_mm: float
    coupled: bool
    provenance: Provenance


_Named = TypeVar("_Named", Block, Ion, Liquid, Dye, SinteringProgramme, Stump, Cement)


@dataclass(frozen=True, slots=True, kw_only=True)
class Catalogue:
    """All materials a case may choose from. Names are unique within each kind."""

    blocks: tuple[Block, ...] = ()
    ions: tuple[Ion, ...] = ()
    liquids: tuple[Liquid, ...] = ()
    dyes: tuple[Dye, ...] = ()
    programmes: tuple[SinteringProgramme, ...] = ()
    stumps: tuple[Stump, ...] = ()
    cements: tuple[Cement, ...] = ()

    def block(self, name: str) -> Block:
        """Return the block called `name`; raise CatalogueError if there is none."""
        return _find(self.blocks, name, "block")

    def ion(self, name: str) -> Ion:
        """Return the ion called `name`; raise CatalogueError if there is none."""
        return _find(self.ions, name, "ion")

    def liquid(self, name: str) -> Liquid:
        """Return the liquid called `name`; raise CatalogueError if there is none."""
        return _find(self.liquids, name, "liquid")

    def programme(self, name: str) -> SinteringProgramme:
        """Return the programme called `name`; raise CatalogueError if there is none."""
        return _find(self.programmes, name, "programme")

    def stump(self, name: str) -> Stump:
        """Return the stump called `name`; raise CatalogueError if there is none."""
        return _find(self.stumps, name, "stump")

    def cement(self, name: str) -> Cement:
        """Return the cement called `name`; raise CatalogueError if there is none."""
        return _find(self.cements, name, "cement")


def _find(things: Iterable[_Named], name: str, kind: str) -> _Named:
    known = []
    for thing in things:
        if thing.name == name:
            return thing
        known.append(thing.name)
    raise CatalogueError(
        translate("material", "There is no {kind} called '{name}'.").format(kind=kind, name=name),
        advice=translate("material", "Known: {known}.").format(known=", ".join(known))
        if known
        else translate("material", "The catalogue is empty."),
    )
