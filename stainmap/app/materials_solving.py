"""A block solved from its nominal colours, and what came of it in words."""

from __future__ import annotations

from stainmap.model.material import Block, Catalogue
from stainmap.predict.blocks import LARGEST_REMAINING_DE00, SolvedBlock, nearest_to_nominal
from stainmap.words import translate


def solve_layers(block: Block, catalogue: Catalogue) -> tuple[SolvedBlock, ...]:
    """Return for every layer the absorption that comes nearest to its nominal colour.

    Raises
    ------
    CatalogueError
        If a colour was measured in a way that is not predicted, or over an unknown backing.
    """
    return tuple(
        nearest_to_nominal(layer, catalogue.stump(layer.nominal.measurement.backing))
        for layer in block.layers
    )


def is_reached(solved: SolvedBlock) -> bool:
    """Return True if a ceramic can have the colour, near enough."""
    return solved.remaining_de00 <= LARGEST_REMAINING_DE00


def solved_words(number: int, solved: SolvedBlock) -> str:
    """Return what was found for a layer in a sentence, with the nearest colour it can have."""
    found, reached = solved.absorption, solved.reached
    colour = f"L* {reached.lightness:.1f}, a* {reached.a:.1f}, b* {reached.b:.1f}"
    if not is_reached(solved):
        return translate(
            "materials solving",
            "Layer {number} cannot have this colour: the nearest it can have is {colour}, "
            "dE00 {remaining_de00:.1f} away.",
        ).format(number=number, colour=colour, remaining_de00=solved.remaining_de00)
    return translate(
        "materials solving",
        "Layer {number} reaches {colour}, dE00 {remaining_de00:.1f} from what was "
        "given: it absorbs {c0_per_mm:.3g} 1/mm at 400 nm, falling to 1/e within "
        "{decay_nm:.0f} nm, on top of {c1_per_mm:.2g} 1/mm.",
    ).format(
        number=number,
        colour=colour,
        remaining_de00=solved.remaining_de00,
        c0_per_mm=found.c0_per_mm,
        decay_nm=found.decay_nm,
        c1_per_mm=found.c1_per_mm,
    )
