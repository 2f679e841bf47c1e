"""The fast engine against the reference on random stained walls that nobody fitted."""

from __future__ import annotations

import numpy as np

from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import fitted_interface, textbook_interface
from stainmap.optics.spectrum import BANDS_NM
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
    table,
)
from tests.predict.test_against_transport import STATES, transport_labs, two_flux_lab, walls

REFERENCE = Source(
    Origin.COMPUTED, "our own adding-doubling, held to iadpython and pmcx as shown above"
)
WALLS_MM = ((0.3, 0.6), (0.6, 1.0), (1.0, 1.5), (1.5, 2.0))


def sections() -> tuple[Section, ...]:
    """Return the section on random walls."""
    fitted = two_flux_lab(fitted_interface(len(BANDS_NM)))
    book = two_flux_lab(textbook_interface(BANDS_NM))
    diffuse, directed = transport_labs()
    answers = {
        "fitted": np.asarray(delta_e_00(fitted, diffuse)),
        "measured": np.asarray(delta_e_00(fitted, directed)),
        "textbook": np.asarray(delta_e_00(book, diffuse)),
    }
    return (_section(answers),)


def _section(off: dict[str, np.ndarray]) -> Section:
    thickness = np.array([wall.thickness_mm for wall in walls()])
    rows = []
    for low, high in WALLS_MM:
        here = (thickness >= low) & (thickness < high)
        numbers = [value for name in ("fitted", "textbook") for value in _summary(off[name][here])]
        rows.append(
            [f"{low} to {high} mm", Number(int(here.sum()), 0), *(Number(one) for one in numbers)]
        )
    everything = [value for name in ("fitted", "textbook") for value in _summary(off[name])]
    rows.append(["all", Number(STATES, 0), *(Number(one) for one in everything)])
    heads = ("Wall", "states", "fitted, median", "95 %", "worst", "textbook, median", "95 %",
             "worst")  # fmt: skip
    median, tail, _ = _summary(off["fitted"])
    beam_median, beam_tail, _ = _summary(off["measured"])
    return Section(
        title="Random walls nobody fitted",
        blocks=(
            (
                f"{STATES} random walls of 0.3 to 2.0 mm with mu_s' between 4 and 27 per mm in "
                "every band, stained outside and some also inside with up to three starter "
                "liquids, on random stumps, cemented or across air. dE00 under D65 between the "
                "fast engine and adding-doubling, for diffuse light; and with textbook factors "
                "(K = 2 mu_a, S = 3/4 mu_s', Lambertian Fresnel) instead of the fitted ones:"
            ),
            table(heads, rows, REFERENCE),
            _plot(off),
            (
                _check("median", "Fast engine against adding-doubling, 500 random walls, "
                       "median dE00", median, 0.25, headline=True),
                _check("tail", "the same, 95th percentile", tail, 0.8, headline=True),
                _check("beam-median", "Against adding-doubling that follows the 45 degree beam "
                       "itself, median dE00", beam_median, 0.35),
                _check("beam-tail", "the same, 95th percentile", beam_tail, 0.8),
                Check(
                    key="walls-textbook",
                    what="Textbook factors over fitted ones, medians",
                    found=Number(float(np.median(off["textbook"])) / median, 1),
                    least=3.0,
                    unit="times",
                    source=REFERENCE,
                ),
            ),
        ),
    )  # fmt: skip


def _summary(off: np.ndarray) -> tuple[float, float, float]:
    return float(np.median(off)), float(np.percentile(off, 95)), float(off.max())


def _check(key: str, what: str, found: float, most: float, *, headline: bool = False) -> Check:
    return Check(
        key=f"walls-{key}",
        what=what,
        found=Number(found),
        most=most,
        source=REFERENCE,
        headline=headline,
    )


def _plot(off: dict[str, np.ndarray]) -> Plot:
    share = np.linspace(0.0, 100.0, 101)
    named = (
        ("fitted boundaries", "fitted", Stroke.OURS),
        ("fitted, 45 degree beam followed", "measured", Stroke.OTHER),
        ("textbook boundaries", "textbook", Stroke.WITHOUT),
    )
    return Plot(
        key="walls",
        title="How far off the fast engine is on random walls",
        caption="Share of the 500 walls whose dE00 is no larger than the value below.",
        panels=(
            Panel(
                title="500 random walls, adding-doubling as truth",
                x_label="dE00",
                y_label="% of the walls",
                x_limits=(0.0, float(np.ceil(2.0 * off["textbook"].max()) / 2.0)),
                y_from_zero=True,
                curves=tuple(
                    Curve(label=label, x=np.percentile(off[name], share), y=share, stroke=stroke)
                    for label, name, stroke in named
                ),
            ),
        ),
        source=REFERENCE,
    )
