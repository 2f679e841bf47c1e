"""What the trade expects of the starter materials, and how far plans within the limits get."""

from __future__ import annotations

from functools import cache

import numpy as np

from stainmap.model.zone import OUTER_ZONES, Zone, area_label
from stainmap.planning.coat_limits import LIMITS
from tests.evidence.figures import MINUS, Cell, Check, Number, Origin, Section, Source, Table, table
from tests.predict.test_directions import (
    BLOCKS,
    MASKED,
    NECK_WALLS_MM,
    PONTIC,
    SOLID_BLOCKS,
    UNMASKED,
    VALUE_LOWERING,
    WARM_BASES,
    change_at_cusp,
    chroma,
    farthest,
    on,
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
    """Return necks and cusps by block, and the ends of the colours that plans can have."""
    rows = tuple(_cusp_row(block) for block in SOLID_BLOCKS)
    found = [change for block in cusps().values() for change in block.values()]
    falls = [-change[..., 0] for change in found]
    green = {
        liquid: max(float(np.abs(block[liquid][..., 1]).max()) for block in cusps().values())
        for liquid in ("slate", "ash")
    }
    limits = [
        [area_label(area), "; ".join(limit.label for limit in LIMITS[area] if limit.most)]
        for area in (*OUTER_ZONES, Zone.INNER)
    ]
    ends = [_ends_row(block) for block in BLOCKS]
    return Section(
        title="Trade directions",
        blocks=(
            (
                "Two or three coats of a base at the neck raise chroma; one or two coats of a "
                "liquid that lowers value take 1 to 5 L* from a cusp without turning it green (a* "
                "within 0.6). On all fifteen blocks, walls of 1.0 to 2.4 mm at the cusp and 0.6 to "
                "1.0 mm at the neck:"
            ),
            Table(
                heads=(
                    "Block",
                    "C* by 2 coats of base, least",
                    "L* by 1 coat, least",
                    "L* by 2 coats, most",
                    "a* by slate, most",
                    "a* by ash, most",
                ),
                rows=rows,
            ),
            (
                "How many coats an area takes at most is common practice without a published "
                "source. The program's limits, what an accent inherits from below counted in "
                "(ridges and line angles as cusps, a margin band as the neck, an embrasure as the "
                "interproximal area, the tissue side of a pontic as the body):"
            ),
            table(("Area", "coats together"), limits, PRACTICE),
            (
                f"No plan within these limits, on walls of 1.0 to 3.0 mm, leaves a* {MINUS}2 to 6 "
                "and b* 3 to 30 over natural, discoloured or built-up teeth and the plug of a "
                "screw channel, under any cement, or over metal and titanium under opaque cement. "
                "All such plans were tried, pale liquids first and dark ones first, after the "
                "slowest and the fastest programme, bare inside and with two coats of a base. "
                "**Where metal is not hidden by its cement, and before a dark mouth**, a clear "
                "wall of 1.0 mm turns greenish by itself, bare or stained, and a* falls lower: the "
                "last column says how far. Pontics of other blocks than medium 3Y get to a* 6.6 "
                "and b* 30.5 at most, as solid ceramic is medium 3Y behind all of them."
            ),
            table(
                ("Block", "a*, least to most", "b*, least to most", "a* not masked, least"),
                ends,
                SPAN,
            ),
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
                    what="Two coats, largest fall of L*, all blocks",
                    found=Number(max(float(fall.max()) for fall in falls)),
                    most=5.0,
                    source=PRACTICE,
                    headline=True,
                ),
                Check(
                    key="trade-green-ash",
                    what="Largest change of a* by ash, all blocks",
                    found=Number(green["ash"]),
                    most=0.6,
                    source=PRACTICE,
                ),
                Check(
                    key="trade-green-slate",
                    what="Largest change of a* by slate, all blocks",
                    found=Number(green["slate"]),
                    most=0.6,
                    source=PRACTICE,
                    headline=True,
                ),
                *_span_checks(),
            ),
        ),
    )


def _cusp_row(block: str) -> tuple[tuple[Cell, ...], Source]:
    found = cusps()[block]
    lowered = np.stack([-change[..., 0] for change in found.values()])
    moved = []
    for liquid in ("slate", "ash"):
        change = found[liquid][..., 1]
        moved.append(float(change.flat[np.abs(change).argmax()]))
    cells: tuple[Cell, ...] = (
        block,
        Number(_chroma_gain(block), 1, signed=True),
        Number(-float(lowered[..., 0].min()), 1, signed=True),
        Number(-float(lowered[..., 1].max()), 1, signed=True),
        *(Number(most, 2, signed=True) for most in moved),
    )
    return cells, PRACTICE


def _ends_row(block: str) -> list[Cell]:
    ends, bare = farthest(block, MASKED), farthest(block, UNMASKED)
    spans = [
        f"{Number(ends[f'least {name}'][0], 1)} to {Number(ends[f'largest {name}'][0], 1)}"
        for name in ("a", "b")
    ]
    return [block, *spans, Number(bare["least a"][0], 1)]


def _span_checks() -> tuple[Check, ...]:
    """Return how far any plan on any block gets, and what is asked of it."""
    asked = (
        ("a", "least", "a*", -2.0),
        ("a", "largest", "a*", 6.0),
        ("b", "least", "b*", 3.0),
        ("b", "largest", "b*", 30.0),
    )
    checks = []
    for name, end, label, limit in asked:
        pick, word = (min, "Least") if end == "least" else (max, "Largest")
        found = pick(farthest(block, MASKED)[f"{end} {name}"][0] for block in BLOCKS)
        bound = {"least": limit} if end == "least" else {"most": limit}
        checks.append(
            Check(
                key=f"trade-span-{name}-{end}",
                what=f"{word} {label} of any plan within the limits, all blocks, teeth and masked "
                "metal",
                found=Number(found),
                source=SPAN,
                headline=True,
                **bound,
            )
        )
    unmasked = min(farthest(block, UNMASKED)["least a"][0] for block in BLOCKS)
    pontic = max(farthest(block, (on(PONTIC),))["largest a"][0] for block in BLOCKS)
    return (
        *checks,
        Check(
            key="trade-span-unmasked",
            what="Least a* over metal that is not masked and before a dark mouth",
            found=Number(unmasked),
            least=-2.8,
            source=SPAN,
        ),
        Check(
            key="trade-span-pontic",
            what="Largest a* of pontics",
            found=Number(pontic),
            most=6.6,
            source=SPAN,
        ),
    )


def _chroma_gain(block: str) -> float:
    """Return the least gain of chroma by two coats of any warm base at the neck."""
    bare = chroma(plates([], NECK_WALLS_MM, block=block))
    return min(
        float((chroma(plates([(liquid, 2)], NECK_WALLS_MM, block=block)) - bare).min())
        for liquid in WARM_BASES
    )
