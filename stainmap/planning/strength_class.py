"""What a block's zirconia is strong enough for, in words; of the material, not of a programme.

Flexural strengths 3Y 800 to 900, 4Y 560 to 650, 5Y 470 to 500 MPa, beams across layers about 30 %
lower [Kaizer2020]: beams of one maker's blocks in four-point bending; another's may differ. Classes
of ISO 6872 by their least strength (100, 300, 500, 800 MPa for classes 2 to 5), from memory. What a
programme does to strength is not predicted; the makers of block and oven decide which cycles they
allow.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from stainmap.model.material import Block, ScatteringClass
from stainmap.words import marked, translate

STATEMENT: Final = marked(
    "strength class",
    "Strength class: of the material, after published ranges; what a programme does to it is not"
    " predicted. The makers of block and oven decide which cycles are allowed.",
)
_MPA: Final = {
    ScatteringClass.Y3: (800, 900),
    ScatteringClass.Y4: (560, 650),
    ScatteringClass.Y5: (470, 500),
}
_LAYERED_SHARE = 0.7
_CLASSES: Final = (
    (800, 5, marked("strength class", "spans of four units and more")),
    (500, 4, marked("strength class", "spans of up to three units, molars too")),
    (
        300,
        3,
        marked(
            "strength class", "single crowns, and spans of three units up to the second premolar"
        ),
    ),
    (100, 2, marked("strength class", "single crowns, bonded")),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class StrengthClass:
    """The range of a block's flexural strength in MPa, its class by ISO 6872, and its use."""

    kinds: tuple[str, ...]
    mpa: tuple[int, int]
    number: int
    use: str

    def __str__(self) -> str:
        """Return one line for the user."""
        kinds = "/".join(self.kinds)
        return translate(
            "strength class", "{kinds}, {low} to {high} MPa: class {number}, {use}"
        ).format(
            kinds=kinds,
            low=self.mpa[0],
            high=self.mpa[1],
            number=self.number,
            use=translate("strength class", self.use),
        )


def strength_class(block: Block) -> StrengthClass:
    """Return the class of a block; of layers that differ, the weakest counts, less 30 %."""
    kinds = tuple(dict.fromkeys(layer.scattering for layer in block.layers))
    low, high = min(_MPA[kind] for kind in kinds)
    if len(kinds) > 1:
        low, high = round(_LAYERED_SHARE * low), round(_LAYERED_SHARE * high)
    number, use = next((number, use) for least, number, use in _CLASSES if low >= least)
    return StrengthClass(kinds=tuple(map(str, kinds)), mpa=(low, high), number=number, use=use)
