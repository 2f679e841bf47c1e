"""The jars of a case or a tray as rows of a table: what goes in, what they look like and serve."""

from __future__ import annotations

from collections.abc import Sequence

from stainmap.optics.colorimetry import encode_srgb
from stainmap.planning.batch_size import served_text
from stainmap.planning.tray_mixing import TrayJar
from stainmap.ui.colour_table import Cell, Swatches

JAR_HEADS = ("jar", "drops", "dye", "on chalk", "takes, drops", "enough for", "smallest jar")


def jar_rows(jars: Sequence[TrayJar]) -> list[Sequence[Cell]]:
    """Return a row of cells for every jar, for a table with `JAR_HEADS`."""
    rows: list[Sequence[Cell]] = []
    for one in jars:
        r, g, b = (round(255.0 * float(value)) for value in encode_srgb(one.look_linear))
        dyes = ", ".join(f"{name} {drops}" for name, drops in one.dyes) or "none"
        rows.append(
            (
                f"{one.jar.number}  {one.jar.liquid}",
                str(one.jar.liquid_drops),
                dyes,
                Swatches((f"#{r:02x}{g:02x}{b:02x}",), f"jar {one.jar.number}: {one.look_word}"),
                f"{one.need_drops:.1f}",
                served_text(one.serves),
                f"{one.smallest.liquid_drops} drops",
            )
        )
    return rows
