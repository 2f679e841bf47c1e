"""Curved ceramic: the correction that is off by default, against our own Monte Carlo."""

from __future__ import annotations

import numpy as np

from stainmap.predict.curvature_correction import corrected_reflectance, curving_length_mm
from tests.evidence.figures import (
    Block,
    Check,
    Curve,
    Number,
    Origin,
    Panel,
    Plot,
    Section,
    Source,
    Stroke,
    Table,
)
from tests.predict.test_curved_light import (
    COVERAGE,
    FORMS,
    bend_of,
    crown_levels,
    doubt_of,
    level_errors,
    lightness,
    rms,
    shells,
    strip_errors,
)

OWN = Source(
    Origin.COMPUTED,
    "our own Monte Carlo on shells; only how the correction bows was fitted to these",
)
CROWN = Source(Origin.COMPUTED, "our own Monte Carlo in the shape of the sample crown, 80 places")
LEVEL_MOST = {"cylinder": 0.5, "ball": 1.1, "groove": 1.0}
NAMES = {"cylinder": "cylinders", "ball": "balls", "groove": "half-round grooves"}
PLOTTED_MUA, PLOTTED_STUMP = 0.03, "light"


def sections() -> tuple[Section, ...]:
    """Return the section on curved surfaces."""
    return (curved(),)


def curved() -> Section:
    """Return bare shells and stained strips on them, with the correction and without."""
    levels, strips = level_errors(), strip_errors()
    rows = []
    for form in FORMS:
        on, without = levels[form]
        on_strip, without_strip = strips[form]
        cells = (
            NAMES[form],
            Number(rms(without)),
            Number(rms(on)),
            Number(float(np.abs(on).max())),
            Number(rms(without_strip)),
            Number(rms(on_strip)),
            Number(float(on_strip.max())),
        )
        rows.append((cells, OWN))
    heads = ("Shells, L*", "level off, RMS", "level on, RMS", "level on, worst",
             "strip off, RMS", "strip on, RMS", "strip on, worst RMS")  # fmt: skip
    levels_held = tuple(
        _check(f"level-{form}", f"Level of {NAMES[form]}, correction on, RMS",
               rms(levels[form][0]), LEVEL_MOST[form])
        for form in FORMS
    )  # fmt: skip
    strips_held = tuple(
        _check(f"strip-{form}", f"A strip of 0.6 mm on {NAMES[form]}, correction on, RMS",
               rms(strips[form][0]), 0.8)
        for form in FORMS
    )  # fmt: skip
    blocks: tuple[Block, ...] = (
        (
            "Behind each square millimetre of a convex surface lies less ceramic for light to be "
            "lost in, so it is paler than a plate of the same wall; in a groove it is darker. The "
            "engine has a correction for this as a named switch, **off by default**; whether it "
            "should be on, the Monte Carlo on a crown below was made to decide. Shells of 1 to 5 "
            "mm radius, walls of 1 and 1.5 mm, mu_s' 8.6 "
            "to 18, three stumps, three absorptions:"
        ),
        Table(heads=heads, rows=tuple(rows)),
        _plot(),
        (*levels_held, *strips_held),
        *crown_blocks(),
    )
    return Section(title="Curved surfaces", blocks=blocks)


def _plot() -> Plot:
    table = shells()
    conf = int(
        np.flatnonzero((table["conf_mua"] == PLOTTED_MUA) & (table["conf_stump"] == PLOTTED_STUMP))[
            0
        ]
    )
    return Plot(
        key="curvature",
        title="How much lighter a bare curved surface is than a plate",
        caption=f"mu_a {PLOTTED_MUA} per mm, {PLOTTED_STUMP} stump. Without the correction the "
        "engine shows no difference.",
        panels=tuple(_panel(table, conf, musp) for musp in np.unique(table["musp"])),
        source=OWN,
        one_scale=True,
    )


def _panel(table: dict[str, np.ndarray], conf: int, musp: float) -> Panel:
    chosen = np.flatnonzero(table["musp"] == musp)
    bends = np.array(
        [bend_of(str(table["form"][at]), float(table["radius_mm"][at])) for at in chosen]
    )
    flat = table["plate_R"][chosen, conf, 0]
    found = corrected_reflectance(flat[:, None], bends, [float(curving_length_mm(musp))])[:, 0]
    order = np.argsort(bends)
    moved = lightness(table["level_R"][chosen, conf]) - lightness(flat)
    ours = lightness(found) - lightness(flat)
    return Panel(
        title=f"mu_s' {musp:g}",
        x_label="sum of the curvatures, 1/mm, convex positive",
        y_label="change of L*",
        curves=(
            Curve(label="Monte Carlo", x=bends[order], y=moved[order], stroke=Stroke.TRUTH),
            Curve(label="engine, correction on", x=bends[order], y=ours[order],
                  stroke=Stroke.OURS),
            Curve(label="engine, correction off", x=bends[order], y=np.zeros(len(bends)),
                  stroke=Stroke.WITHOUT),
        ),
    )  # fmt: skip


def _check(key: str, what: str, found: float, most: float) -> Check:
    return Check(
        key=f"curved-{key}", what=what, found=Number(found), most=most, unit="L*", source=OWN
    )


def crown_blocks() -> tuple[Block, ...]:
    """Return what a Monte Carlo in the shape of the sample crown says of the correction."""
    found = crown_levels()
    rows = []
    held = []
    for at, musp in enumerate(found["musp"]):
        plain = found["plain"][at] - found["truth"][at]
        corrected = found["corrected"][at] - found["truth"][at]
        cells = (
            Number(float(musp), 1),
            Number(float(plain.mean()), 2, signed=True),
            Number(rms(plain)),
            Number(float(corrected.mean()), 2, signed=True),
            Number(rms(corrected)),
            Number(100.0 * float(np.mean(np.abs(corrected) > np.abs(plain) + 0.5)), 0),
            Number(float(found["noise"][at].mean())),
        )
        rows.append((cells, CROWN))
        doubt = np.hypot(found["noise"][at], doubt_of(found)[at])
        for deviations, least, most in COVERAGE:
            share = 100.0 * float(np.mean(np.abs(corrected) <= deviations * doubt))
            held.append(
                Check(
                    key=f"curved-doubt-{musp:g}-{deviations}",
                    what=f"Sample crown at mu_s' {musp:g}: errors within {deviations} "
                    f"deviation{'s' if deviations > 1 else ''} of the doubt",
                    found=Number(share, 0),
                    least=least,
                    most=most,
                    unit="%",
                    source=CROWN,
                )
            )
        held.append(
            Check(
                key=f"curved-crown-{musp:g}",
                what=f"Sample crown at mu_s' {musp:g}: error with the correction over that without",
                found=Number(rms(corrected) / rms(plain)),
                most=0.6,
                unit="times",
                source=CROWN,
                headline=at == 0,
            )
        )
    heads = (
        "mu_s' per mm",
        "off, mean",
        "off, RMS",
        "on, mean",
        "on, RMS",
        "worse by 0.5, %",
        "noise of the truth",
    )
    return (
        (
            "A crown is no shell. Bare ceramic in the shape of the sample crown at 80 places of "
            "its outer surface, three stumps, three absorptions; one-dimensional values are Monte "
            "Carlo's own, so that only shape is judged. Engine minus Monte Carlo, in L*:"
        ),
        Table(heads=heads, rows=tuple(rows)),
        _crown_plot(found),
        (
            "On this crown the correction more than halves the error and takes away most of its "
            "mean, and leaves 2 L* of it: what is seen is nearer to the corrected colour. The "
            "places it makes worse lie in hollows of the occlusal surface; a likely reason is that "
            "ridges stand closer to them than light spreads. Light that leaves the crown and falls "
            "on it elsewhere is in neither. One crown is one crown; the other figures of this page "
            "are of flat ceramic."
        ),
        (
            "**It stays off all the same**, because a prediction is held against what is wanted, "
            "and that is told of flat places: a tab, a coupon, an offset between areas as the "
            "trade gives it. Corrected, the bare sample molar has fissures 6 L* darker and 4.5 C* "
            "paler than its body by shape alone, where 4 L* darker and 5 C* richer is what the "
            "stain is usually asked for. Switch it on to see a crown as it will look; what is left "
            "out while it is off is in the doubt beside every colour, and two fifths of it while "
            "it is on:"
        ),
        tuple(held),
    )


def _crown_plot(found: dict[str, np.ndarray]) -> Plot:
    conf = int(np.flatnonzero((found["mua"] == PLOTTED_MUA) & (found["stump"] == PLOTTED_STUMP))[0])
    order = np.argsort(found["bend"])
    bend = found["bend"][order]
    panels = []
    for at, musp in enumerate(found["musp"]):
        plain = found["plain"][at, order, conf]
        curves = (
            ("Monte Carlo", found["truth"][at, order, conf] - plain, Stroke.TRUTH),
            ("engine, correction on", found["corrected"][at, order, conf] - plain, Stroke.OURS),
            ("engine, correction off", np.zeros(len(bend)), Stroke.WITHOUT),
        )
        panels.append(
            Panel(
                title=f"mu_s' {musp:g}",
                x_label="sum of the curvatures, 1/mm, convex positive",
                y_label="change of L*",
                curves=tuple(
                    Curve(label=label, x=bend, y=values, stroke=stroke, every_point=True)
                    for label, values, stroke in curves
                ),
            )
        )
    return Plot(
        key="crown",
        title="How much lighter 80 places of a crown are than the engine has them flat",
        caption=f"mu_a {PLOTTED_MUA} per mm, {PLOTTED_STUMP} stump, lower molar 36.",
        panels=tuple(panels),
        source=CROWN,
        one_scale=True,
    )
