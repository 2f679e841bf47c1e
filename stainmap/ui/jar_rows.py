"""The jars of a case or a tray as rows of a table: what goes in, what they look like and serve."""

from __future__ import annotations

from collections.abc import Sequence

from stainmap.optics.colorimetry import encode_srgb
from stainmap.planning.batch_size import served_text
from stainmap.planning.tray_mixing import TrayJar
from stainmap.ui.colour_table import Cell, Swatches
from stainmap.words import marked, translate, value_word

_HEADS = (
    marked("jar rows", "jar"),
    marked("jar rows", "drops"),
    marked("jar rows", "dye"),
    marked("jar rows", "on chalk"),
    marked("jar rows", "takes, drops"),
    marked("jar rows", "enough for"),
    marked("jar rows", "smallest jar"),
)


def jar_heads() -> list[str]:
    """Return the heads of a table of jars."""
    return [translate("jar rows", head) for head in _HEADS]


def jar_rows(jars: Sequence[TrayJar]) -> list[Sequence[Cell]]:
    """Return a row of cells for every jar, for a table with `jar_heads`."""
    rows: list[Sequence[Cell]] = []
    for one in jars:
        r, g, b = (round(255.0 * float(value)) for value in encode_srgb(one.look_linear))
        dyes = ", ".join(f"{name} {drops}" for name, drops in one.dyes) or translate(
            "jar rows", "none"
        )
        rows.append(
            (
                f"{one.jar.number}  {one.jar.liquid}",
                str(one.jar.liquid_drops),
                dyes,
                Swatches(
                    (f"#{r:02x}{g:02x}{b:02x}",),
                    translate("jar rows", "jar {number}: {look}").format(
                        number=one.jar.number, look=value_word(one.look_word)
                    ),
                ),
                f"{one.need_drops:.1f}",
                served_text(one.serves),
                translate("jar rows", "{drops} drops").format(drops=one.smallest.liquid_drops),
            )
        )
    return rows
