"""The starter materials: what they were designed to do, and the directions published series show.

Agreement with the design says that the model was built as designed, not that it is true.
"""

from __future__ import annotations

import itertools
from functools import cache

import numpy as np

from stainmap.optics.difference import delta_e_76
from tests.evidence.figures import (
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
    table,
)
from tests.predict.scenes import Coats, plate_lab
from tests.predict.test_outcome_table import EFFECTS, SPOTS, TRANSLUCENCY, translucency

DESIGN = Source(Origin.INVENTED, "our own design of what a technician expects to see")
MODEL = Source(Origin.INVENTED, "starter materials, computed by the engine")
KIM = Source(
    Origin.PUBLISHED, "Kim and Kim 2014, abstract; measured there on other liquids and blocks"
)
WANG = Source(
    Origin.PUBLISHED, "Wang et al. 2013, abstract; measured there, TP 5.5 to 15.1 at 1.0 to 0.4 mm"
)
ORDER = Source(
    Origin.PUBLISHED, "order of the classes in several abstracts; measured there, sizes differ"
)
SPEED = Source(
    Origin.PUBLISHED,
    "direction: Luz et al. 2021, abstract, slow against microwave cycle; the size is assumed",
)
PROGRAMMES = ("slow", "standard", "fast", "very fast")


def sections() -> tuple[Section, ...]:
    """Return the sections on the starter materials."""
    return (outcome(), coats(), thickness())


def outcome() -> Section:
    """Return the table of effects and the spot values against their design."""
    bare = plate_lab()
    rows, off = [], []
    for liquid, designed in EFFECTS.items():
        found = [plate_lab([(liquid, count)]) - bare for count in (1, 2, 3)]
        away = float(np.abs(np.array(found) - designed).max())
        off.append(away)
        rows.append([liquid, *(_shift(one) for one in found), Number(away)])
    spots, missed = [], []
    for name, outside, wall_mm, inside, wanted in SPOTS:
        lab = plate_lab(outside, wall_mm=wall_mm, inside=inside)
        missed.append(float(np.abs(lab - wanted).max()))
        spots.append([name, _coats(outside), _coats(inside), Number(wall_mm, 1), _lab(lab)])
    return Section(
        title="Outcome table",
        blocks=(
            (
                "**All starter materials are invented.** Their amounts were fitted to the "
                "effects they were designed to have; this section says that the program was "
                "built as designed, and nothing about any liquid one can buy. Change of L* "
                "a* b* on the medium 3Y block, 1.2 mm over natural dentine, slow cycle, "
                "45/0, D65, 2 degrees, without sideways light:"
            ),
            table(("Liquid", "1 coat", "2 coats", "3 coats", "furthest from design"), rows, DESIGN),
            "Places of a crown (L* a* b*):",
            table(("Place", "outside", "inside", "wall, mm", "L* a* b*"), spots, DESIGN),
            (
                Check(
                    key="outcome-effects",
                    what="Effects of ten liquids, furthest from design, per axis",
                    found=Number(max(off)),
                    most=0.3,
                    source=DESIGN,
                    headline=True,
                ),
                Check(
                    key="outcome-spots",
                    what="Places of a crown, furthest from design, per axis",
                    found=Number(max(missed)),
                    most=0.3,
                    source=DESIGN,
                ),
            ),
        ),
    )


@cache
def series() -> np.ndarray:
    """Return L*a*b* of 0 to 5 coats of barley on the white block, 2.0 mm."""
    labs = [plate_lab(wall_mm=2.0, block="white 3Y")]
    labs += [plate_lab([("barley", n)], wall_mm=2.0, block="white 3Y") for n in range(1, 6)]
    return np.array(labs)


def coats() -> Section:
    """Return a published series of applications against ours."""
    found = series()
    differences = np.asarray(delta_e_76(found, found[0]))
    applications = np.arange(6.0)
    rows = [
        [Number(n, 0), *(Number(value, 1) for value in lab), Number(difference, 1)]
        for n, lab, difference in zip(applications, found, differences, strict=True)
    ]
    axes = (
        ("lightness falls", "L*", found[:, 0]),
        ("yellow rises", "b*", found[:, 2]),
        ("difference to the bare block", "dEab", differences),
    )
    panels = [
        Panel(
            title=title,
            x_label="applications",
            y_label=name,
            y_from_zero=name == "dEab",
            curves=(Curve(label="engine", x=applications, y=values, stroke=Stroke.OURS),),
        )
        for title, name, values in axes
    ]
    steps = np.diff(found, axis=0)
    return Section(
        title="More coats",
        blocks=(
            (
                "Kim and Kim (2014) put 0 to 5 applications of a colouring liquid on zirconia of "
                "2.0 mm: L* fell, b* rose, and dEab among the groups ran from 1.3 to 15.7. Their "
                "L*a*b* were not available to us, so direction and size are what can be compared. "
                "Barley on the white 3Y block, 2.0 mm:"
            ),
            table(("Coats", "L*", "a*", "b*", "dEab to bare"), rows, MODEL),
            Plot(
                key="applications",
                title="Five coats on a white block of 2.0 mm",
                caption="Barley on white 3Y.",
                panels=tuple(panels),
                source=MODEL,
            ),
            (
                Check(
                    key="applications-lightness",
                    what="Largest change of L* from one coat to the next (falls)",
                    found=Number(float(steps[:, 0].max())),
                    most=0.0,
                    source=KIM,
                ),
                Check(
                    key="applications-yellow",
                    what="Smallest change of b* from one coat to the next (rises)",
                    found=Number(float(steps[:, 2].min())),
                    least=0.0,
                    source=KIM,
                ),
                Check(
                    key="applications-difference",
                    what="dEab of five coats on a white block of 2 mm",
                    found=Number(float(differences[-1]), 1),
                    least=10.0,
                    most=16.0,
                    source=KIM,
                    headline=True,
                ),
            ),
        ),
    )


def thickness() -> Section:
    """Return translucency by wall, class and programme against published directions."""
    walls = np.linspace(0.4, 1.0, 7)
    by_class = {
        kind: np.array([translucency(f"medium {kind}", wall) for wall in walls])
        for kind in TRANSLUCENCY
    }
    fits = {kind: _exponential(walls, values) for kind, values in by_class.items()}
    rows = tuple(
        ((kind, *(Number(value, 1) for value in values), Number(fits[kind], 4)), MODEL)
        for kind, values in by_class.items()
    )
    by_programme = {
        name: [translucency(f"medium {kind}", programme=name) for kind in TRANSLUCENCY]
        for name in PROGRAMMES
    }
    timed = tuple(
        ((name, *(Number(value, 1) for value in values)), SPEED)
        for name, values in by_programme.items()
    )
    shades = tuple(TRANSLUCENCY["3Y"])
    gaps = []
    for shade in shades:
        y3, y4, y5 = (translucency(f"{shade} {kind}") for kind in ("3Y", "4Y", "5Y"))
        gaps += [y5 - y4, y4 - y3]
    slowest = min(
        first - second
        for slow, quick in itertools.pairwise(PROGRAMMES)
        for first, second in zip(by_programme[slow], by_programme[quick], strict=True)
    )
    return Section(
        title="Translucency",
        blocks=(
            (
                "TP is the colour difference (dEab) between a plate over white and over "
                "black, here tiles of reflectance 0.85 and 0.02 across an air gap. Absolute "
                "TP differs between instruments; directions do not. Medium block, wall in "
                "mm, and how much of ln TP a straight line explains:"
            ),
            Table(heads=("Class", *(f"{wall:.1f}" for wall in walls), "R² of ln TP"), rows=rows),
            Plot(
                key="translucency",
                title="Translucency by wall",
                caption="Medium block of each class, slow cycle.",
                panels=(
                    Panel(
                        title="TP",
                        x_label="wall, mm",
                        y_label="dEab, white to black",
                        y_from_zero=True,
                        curves=_by_class(walls, by_class),
                    ),
                    Panel(
                        title="ln TP: an exponential is a straight line",
                        x_label="wall, mm",
                        y_label="ln TP",
                        curves=_by_class(
                            walls, {kind: np.log(value) for kind, value in by_class.items()}
                        ),
                    ),
                ),
                source=MODEL,
            ),
            "TP at 1.0 mm by class and sintering programme:",
            Table(heads=("Programme", *TRANSLUCENCY), rows=timed),
            (
                Check(
                    key="tp-exponential",
                    what="TP falls exponentially with the wall: least R² of ln TP",
                    found=Number(min(fits.values()), 4),
                    least=0.98,
                    source=WANG,
                    headline=True,
                ),
                Check(
                    key="tp-classes",
                    what="5Y over 4Y over 3Y: smallest step of TP, five shades, 1.0 mm",
                    found=Number(min(gaps)),
                    least=0.5,
                    source=ORDER,
                    headline=True,
                ),
                Check(
                    key="tp-programmes",
                    what="Slower is more translucent: smallest step of TP between programmes",
                    found=Number(slowest),
                    least=0.1,
                    source=SPEED,
                ),
            ),
        ),
    )


def _by_class(walls: np.ndarray, values: dict[str, np.ndarray]) -> tuple[Curve, ...]:
    strokes = (Stroke.OURS, Stroke.OTHER, Stroke.WITHOUT)
    return tuple(
        Curve(label=kind, x=walls, y=found, stroke=stroke)
        for (kind, found), stroke in zip(values.items(), strokes, strict=True)
    )


def _exponential(walls: np.ndarray, values: np.ndarray) -> float:
    """Return the share of the variance of ln TP that a straight line explains."""
    return float(np.corrcoef(walls, np.log(values))[0, 1] ** 2)


def _shift(values: np.ndarray) -> str:
    return " ".join(str(Number(float(value), 1, signed=True)) for value in values)


def _lab(values: np.ndarray) -> str:
    return " / ".join(str(Number(float(value), 1)) for value in values)


def _coats(painted: Coats) -> str:
    steps = [f"{liquid} {count:g}" for liquid, count in painted]
    return ", ".join(steps) or "none"
