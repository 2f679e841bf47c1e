"""Colour: differences, whites, bands."""

from __future__ import annotations

import numpy as np

from stainmap.optics.colorimetry import white_point
from stainmap.optics.difference import delta_e_00
from stainmap.predict.scene import screen_quadrature
from tests.evidence.figures import Check, Number, Origin, Section, Source, Table, table
from tests.optics import test_colorimetry, test_difference
from tests.predict import test_scene
from tests.predict.scenes import materials

SHARMA = Source(Origin.PUBLISHED, "Sharma, Wu and Dalal 2005, table 1")
WHITES = Source(Origin.PUBLISHED, "white points by the method of ASTM E308, in colour-science")
ALL_BANDS = Source(Origin.COMPUTED, "the same states with all 31 bands, double precision")
SHOWN_PAIRS = (1, 5, 9, 17, 25, 34)
BAND_CASES = (
    ("white 3Y", "D65", "slow"),
    ("medium 3Y", "D65", "slow"),
    ("medium 3Y", "D65", "very fast"),
    ("deep 4Y", "D65", "standard"),
    ("medium 5Y", "A", "slow"),
    ("graded medium to light 3Y/4Y", "LED-B3", "slow"),
    ("medium 3Y", "FL11", "slow"),
)


def sections() -> tuple[Section, ...]:
    """Return the sections on colour."""
    return (differences(), bands())


def differences() -> Section:
    """Return CIEDE2000 and the whites against what is published."""
    rows, off = [], []
    for pair, one, other, published in test_difference.published():
        found = float(delta_e_00(one, other))
        if pair != test_difference.TIE:
            off.append(abs(found - published))
        if pair in SHOWN_PAIRS:
            rows.append([f"pair {pair}", Number(published, 4), Number(found, 4)])
    whites, away = [], []
    for light, observer, published in test_colorimetry.WHITES:
        found = white_point(light, observer)
        away.append(float(np.abs(found - published).max()))
        values = zip(published, found, strict=True)
        whites.append([f"{light}, {observer} degrees", *(_pair(*pair) for pair in values)])
    return Section(
        title="Colour differences and whites",
        blocks=(
            (
                "CIEDE2000 against the published test pairs, six of 34 shown. In pair 14 the "
                "hues lie exactly opposite and rounding decides between two values; either "
                "is accepted there."
            ),
            table(("CIEDE2000", "published", "ours"), rows, SHARMA),
            "XYZ of the perfect diffuser, published / ours:",
            table(("Light and observer", "X", "Y", "Z"), whites, WHITES),
            (
                Check(
                    key="ciede2000",
                    what="CIEDE2000, 33 pairs without the tie, largest difference",
                    found=Number(1e6 * max(off), 0),
                    most=51.0,
                    unit="millionths",
                    source=SHARMA,
                    headline=True,
                ),
                Check(
                    key="whites",
                    what="White points, largest difference",
                    found=Number(1e6 * max(away), 0),
                    most=15.0,
                    unit="millionths",
                    source=WHITES,
                ),
            ),
        ),
    )


def bands() -> Section:
    """Return the twelve bands of the screen against all 31."""
    rows, largest = [], {}
    for case in BAND_CASES:
        error = _band_error(*case)
        largest[case] = float(error.max())
        cells = (*case, Number(float(np.median(error)), 3), Number(largest[case], 3))
        rows.append((cells, ALL_BANDS))
    return Section(
        title="Twelve bands on screen",
        blocks=(
            (
                "While the brush moves, twelve bands are computed, with weights refitted to "
                "the catalogue and the light. Exports and *check this point* take all 31. "
                "dE00 between the two on 5000 random states that the weights were not fitted "
                "to: walls of 0.3 to 2.5 mm, up to four liquids on either side, every stump "
                "and cement."
            ),
            Table(heads=("Block", "Light", "Programme", "median", "largest"), rows=tuple(rows)),
            (
                Check(
                    key="twelve-bands",
                    what="Twelve bands against 31, largest dE00",
                    found=Number(max(largest.values()), 3),
                    most=0.1,
                    source=ALL_BANDS,
                    headline=True,
                ),
            ),
        ),
    )


def _band_error(block: str, light: str, programme: str) -> np.ndarray:
    scene, found = test_scene.states(block, light, programme, random_state=77)
    nodes = screen_quadrature(materials(), block, programme, light, 2)
    screen = scene.on_bands(nodes.indices, nodes.xyz_weights)
    return np.asarray(delta_e_00(screen.lab(found[:, nodes.indices]), scene.lab(found)))


def _pair(published: float, ours: float) -> str:
    return f"{published:.5f} / {ours:.5f}"
