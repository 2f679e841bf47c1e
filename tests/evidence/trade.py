"""What the trade expects of the starter materials, and where they do not do it."""

from __future__ import annotations

from functools import cache

import numpy as np

from tests.evidence.figures import MINUS, Cell, Check, Number, Origin, Section, Source, Table, table
from tests.predict.test_directions import (
    BREACHES_ON_DENTINE,
    NECK_WALLS_MM,
    SOLID_BLOCKS,
    TOO_DARK,
    TOO_GREEN,
    VALUE_LOWERING,
    WARM_BASES,
    change_at_cusp,
    chroma,
    plates,
)

PRACTICE = Source(Origin.ASSUMED, "common practice, no published source")
SPAN = Source(Origin.FROM_MEMORY, "usual span of natural teeth, b* widened to 3; not confirmed")


def sections() -> tuple[Section, ...]:
    """Return the section on directions of the trade."""
    return (trade(),)


@cache
def cusps() -> dict[str, dict[str, np.ndarray]]:
    """Return what one and two coats of each value-lowering liquid do, by block and liquid."""
    return {
        block: {liquid: change_at_cusp(block, liquid) for liquid in VALUE_LOWERING}
        for block in SOLID_BLOCKS
    }


def trade() -> Section:
    """Return necks and cusps by block, and the breaches that the tests know of."""
    rows = tuple(_cusp_row(block) for block in SOLID_BLOCKS)
    falls = [-found[..., 0] for block in cusps().values() for found in block.values()]
    kept = [
        float(np.abs(liquids["slate"][..., 1]).max())
        for block, liquids in cusps().items()
        if block not in TOO_GREEN
    ]
    neutral = [float(np.abs(liquids["ash"][..., 1]).max()) for liquids in cusps().values()]
    within = [
        float(-found[..., 0].min())
        for block, liquids in cusps().items()
        if block not in TOO_DARK
        for found in liquids.values()
    ]
    breaches = [[block, said.replace("-", MINUS)] for block, said in BREACHES_ON_DENTINE.items()]
    return Section(
        title="Trade directions",
        blocks=(
            (
                "Two or three coats of a base at the neck raise chroma; one or two coats of a "
                "liquid that lowers value take 1 to 5 L* from a cusp without turning it green (a* "
                "within 0.6). On all fifteen blocks, walls of 1.0 to 2.4 mm at the cusp and 0.6 to "
                "1.0 mm at the neck. **Where the starter set breaches this, it says so here and in "
                "the tests**, which fail as soon as a breach is gone and still listed."
            ),
            Table(
                heads=(
                    "Block",
                    "C* by 2 coats of base, least",
                    "L* by 1 coat, least",
                    "L* by 2 coats, most",
                    "a* by slate, most",
                    "known breach",
                ),
                rows=rows,
            ),
            (
                "No plan within the limits per zone, on walls of 1.0 to 3.0 mm over natural "
                "dentine, is to leave a* -2 to 6 and b* 3 to 30. How far a search for the worst "
                "plan gets out, on the blocks where it does:"
            ).replace("-", MINUS),
            table(("Block", "reached by the worst plan found"), breaches, SPAN),
            (
                Check(
                    key="trade-value-least",
                    what="One coat that lowers value on a cusp, least fall of L*, all blocks",
                    found=Number(min(float(fall.min()) for fall in falls)),
                    least=1.0,
                    source=PRACTICE,
                ),
                Check(
                    key="trade-value-most",
                    what="Two coats, largest fall of L*, blocks without a known breach",
                    found=Number(max(within)),
                    most=5.0,
                    source=PRACTICE,
                ),
                Check(
                    key="trade-green-ash",
                    what="Largest change of a* by ash, all blocks",
                    found=Number(max(neutral)),
                    most=0.6,
                    source=PRACTICE,
                ),
                Check(
                    key="trade-green-slate",
                    what="Largest change of a* by slate, blocks without a known breach",
                    found=Number(max(kept)),
                    most=0.6,
                    source=PRACTICE,
                ),
                Check(
                    key="trade-breaches",
                    what="Known breaches of these directions by the starter set",
                    found=Number(len(TOO_DARK) + len(TOO_GREEN) + len(BREACHES_ON_DENTINE), 0),
                    most=20.0,
                    source=PRACTICE,
                    headline=True,
                ),
            ),
        ),
    )


def _cusp_row(block: str) -> tuple[tuple[Cell, ...], Source]:
    found = cusps()[block]
    lowered = np.stack([-change[..., 0] for change in found.values()])
    green = found["slate"][..., 1]
    most = float(green.flat[np.abs(green).argmax()])
    breach = [
        word
        for word, known in (("too dark", TOO_DARK), ("a* moves too far", TOO_GREEN))
        if block in known
    ]
    cells: tuple[Cell, ...] = (
        block,
        Number(_chroma_gain(block), 1, signed=True),
        Number(-float(lowered[..., 0].min()), 1, signed=True),
        Number(-float(lowered[..., 1].max()), 1, signed=True),
        Number(most, 2, signed=True),
        ", ".join(breach) or "none",
    )
    return cells, PRACTICE


def _chroma_gain(block: str) -> float:
    """Return the least gain of chroma by two coats of any warm base at the neck."""
    bare = chroma(plates([], NECK_WALLS_MM, block=block))
    return min(
        float((chroma(plates([(liquid, 2)], NECK_WALLS_MM, block=block)) - bare).min())
        for liquid in WARM_BASES
    )
