"""How sure a prediction is, every constant and where it comes from, and what is left out."""

from __future__ import annotations

import numpy as np

from stainmap.model.material import ScatteringClass
from stainmap.optics.interface import CEMENT_INDEX, CERAMIC_INDEX, fitted_interface
from stainmap.predict import curvature_correction, sideways, sintering, uncertainty
from stainmap.predict.bench_look import CHALK_LAB
from stainmap.predict.blocks import scattering_per_mm
from stainmap.predict.scene import StainProcess
from stainmap.predict.uptake import UptakeRule
from tests.evidence.figures import Cell, Check, Number, Origin, Section, Source, Table
from tests.evidence.sideways_light import EITHER, coverage

TO_TRANSPORT = Source(
    Origin.FITTED,
    "to adding-doubling at index 2.15, walls 0.5 to 2 mm, mu_s' 4 to 18 per mm",
)
TO_STRIPS = Source(
    Origin.FITTED, "to Monte Carlo stain profiles of mu_s' 4.2 to 18 per mm; see there"
)
TO_SHELLS = Source(Origin.FITTED, "to Monte Carlo shells of mu_s' 4.2 to 18; a switch, off")
_SHELLS = ", ".join(
    f"{value:.2f}"
    for value in (
        curvature_correction.STRENGTH,
        curvature_correction.BEND_CONVEX,
        curvature_correction.BEND_HOLLOW,
    )
)
Row = tuple[tuple[Cell, ...], Source]


def sections() -> tuple[Section, ...]:
    """Return the sections on uncertainty, constants and what is left out."""
    return (doubt(), constants(), materials(), left_out())


def doubt() -> Section:
    """Return the prior of an uncalibrated laboratory and the doubt about the calculation."""
    lightness, a, b = uncertainty.UNCALIBRATED_SD
    prior = Source(
        Origin.ASSUMED,
        "20 to 35 % in scattering, absorption, depth and coats, carried through the model",
    )
    seen = Source(Origin.PUBLISHED, "Paravina et al. 2015, 175 observers, abstract")
    held = Source(Origin.ASSUMED, "no covariance alone proved honest in trials with made data")
    rows: tuple[Row, ...] = (
        (("standard deviation of L*, uncalibrated", Number(lightness, 1)), prior),
        (("standard deviation of a*, uncalibrated", Number(a, 1)), prior),
        (("standard deviation of b*, uncalibrated", Number(b, 1)), prior),
        (("smallest standard deviation after calibration", Number(uncertainty.SMALLEST_SD, 1)),
         held),
        (("fired coupons before a verdict is given", Number(uncertainty.FEWEST_COUPONS, 0)),
         Source(Origin.ASSUMED, "fewer cannot tell spread from chance")),
        (("perceptible, dE00", Number(uncertainty.PERCEPTIBLE_DE00, 1)), seen),
        (("acceptable, dE00", Number(uncertainty.ACCEPTABLE_DE00, 1)), seen),
        (("plans this close are ties, dE00", Number(uncertainty.TIE_DE00, 1)),
         Source(Origin.ASSUMED, "well below what anybody sees")),
    )  # fmt: skip
    every, shifted = coverage()
    return Section(
        title="How sure a prediction is",
        blocks=(
            (
                "Until a laboratory has fired coupons, every predicted colour carries the standard "
                "deviations below, no verdict word is given, and the screen says *direction, not a "
                "match*. **These deviations are an assumption, not a measurement.**"
            ),
            Table(heads=("Number", "Value"), rows=rows),
            (
                "Apart from the materials there is doubt about the calculation on this "
                "shape, shown per vertex. Two of its parts can be held against the stain "
                "profiles: 0.1 L* and a tenth of what sideways light changed. The parts for "
                "curvature and mesh are **assumed** and not calibrated."
            ),
            (
                Check(
                    key="doubt-coverage",
                    what="Bins of all stain profiles within two deviations of that doubt",
                    found=Number(every, 1),
                    least=93.0,
                    most=98.5,
                    unit="%",
                    source=EITHER,
                ),
                Check(
                    key="doubt-coverage-shifted",
                    what="the same where sideways light changed L* by more than 1",
                    found=Number(shifted, 1),
                    least=93.0,
                    most=98.5,
                    unit="%",
                    source=EITHER,
                ),
            ),
        ),
    )


def constants() -> Section:
    """Return every constant of the engine, as it is now, with its origin."""
    return Section(
        title="Every constant of the engine",
        blocks=(
            (
                "Read from the program when this page was made. What a laboratory can calibrate is "
                "assumed until it has."
            ),
            Table(
                heads=("Constant", "Value", "Unit"),
                rows=(*_surfaces(), *_spreading(), *_staining(), *_sintering(), *_numerics()),
            ),
        ),
    )


def _surfaces() -> tuple[Row, ...]:
    fitted = fitted_interface(1)
    wood = Source(
        Origin.PUBLISHED, "Wood and Nassau 1982, cubic zirconia, rounded; 2.166 at 550 nm"
    )
    computed = Source(Origin.COMPUTED, "Fresnel formulas at these two indices")
    return (
        (("refractive index of the ceramic", Number(CERAMIC_INDEX), "-"), wood),
        (("refractive index of cement", Number(CEMENT_INDEX), "-"),
         Source(Origin.FROM_MEMORY, "usual for resins")),
        (("kf, K = kf mu_a", Number(fitted.absorption_factor, 3), "-"), TO_TRANSPORT),
        (("sf, S = sf mu_s'", Number(fitted.scattering_factor, 3), "-"), TO_TRANSPORT),
        (("ki, turned back within at the front", Number(_one(fitted.front_internal), 3), "-"),
         TO_TRANSPORT),
        (("rb, turned back at the back, cemented", Number(_one(fitted.back_coupled), 3), "-"),
         TO_TRANSPORT),
        (("rb, turned back at the back, air gap", Number(_one(fitted.back_air), 3), "-"),
         TO_TRANSPORT),
        (("r_o, turned back outside, cemented", Number(_one(fitted.outside_coupled), 3), "-"),
         computed),
        (("r_o, turned back outside, air gap", Number(_one(fitted.outside_air), 3), "-"),
         computed),
        (("g, radiance factor at 45/0", Number(_one(fitted.radiance_factor), 4), "-"),
         Source(Origin.FITTED, "follows from ki and the Fresnel formulas, light even within")),
    )  # fmt: skip


def _spreading() -> tuple[Row, ...]:
    length, far = (float(sideways.spread_mm(musp)) for musp in (8.6, 17.2))
    return (
        (("sideways length s at mu_s' 8.6", Number(length, 3), "mm"), TO_STRIPS),
        (("its power of 8.6 / mu_s'", Number(float(np.log2(length / far)), 3), "-"), TO_STRIPS),
        (("membrane exponent p less 1, by mu_s'",
          Number(float(sideways.loss_exponent(1.0)) - 1.0, 4), "mm"), TO_STRIPS),
        (("share that leaves where it entered, times mu_s'",
          Number(float(sideways.direct_share(1.0)), 3), "1/mm"), TO_STRIPS),
        (("length s of the correction for curvature at mu_s' 8.6",
          Number(float(curvature_correction.curving_length_mm(8.6)), 3), "mm"), TO_SHELLS),
        (("its strength, and bow where convex and hollow", _SHELLS, "-"), TO_SHELLS),
        (("length over which liquid wicks", Number(StainProcess().wicking_mm), "mm"),
         Source(Origin.ASSUMED, "no measurement known to us; to be calibrated")),
    )  # fmt: skip


def _staining() -> tuple[Row, ...]:
    process, rule = StainProcess(), UptakeRule()
    graded = Source(
        Origin.ASSUMED, "colour is graded in depth in published grinding series; to be calibrated"
    )
    return (
        (("depth stained from outside", Number(process.outer_depth_mm, 1), "mm sintered"), graded),
        (("depth stained from inside", Number(process.inner_depth_mm, 1), "mm sintered"), graded),
        (("n0, coats to saturation", Number(rule.coats_to_saturation, 1), "coats"),
         Source(Origin.ASSUMED, "first-order saturation is no published law; to be calibrated")),
        (("eta, competition for the same pores", Number(rule.competition, 1), "-"),
         Source(Origin.ASSUMED, "to be calibrated with coupons painted in reversed order")),
        (("hand factor of a person", Number(rule.hand_factor, 1), "-"),
         Source(Origin.ASSUMED, "1 until measured")),
        (("L* of the chalky presintered block", Number(CHALK_LAB[0], 1), "-"),
         Source(Origin.INVENTED, "for the look at the bench only")),
    )  # fmt: skip


def _sintering() -> tuple[Row, ...]:
    rows: list[Row] = []
    for kind, name in (
        (ScatteringClass.Y3, "3Y"),
        (ScatteringClass.Y4, "4Y"),
        (ScatteringClass.Y5, "5Y"),
    ):
        blue, green = (float(scattering_per_mm(kind, [nm])[0]) for nm in (400.0, 550.0))
        exponent = float(np.log(blue / green) / np.log(550.0 / 400.0))
        origin = Source(Origin.ASSUMED, "order and size follow published translucency parameters")
        rows += [
            ((f"mu_s' of {name} at 550 nm", Number(green, 1), "1/mm"), origin),
            ((f"exponent of mu_s' of {name}", Number(exponent, 1), "-"), origin),
        ]
    factor = Source(Origin.ASSUMED, "until a blank coupon of the programme replaces it")
    for minutes, name in ((420, "slow"), (300, "standard"), (120, "fast"), (45, "very fast")):
        value = sintering.class_factor(float(minutes))
        rows.append(((f"scattering of a {name} programme, times", Number(value), "-"), factor))
    energy = sintering.ACTIVATION_ENERGY_J_PER_MOL / 1000.0
    published = Source(
        Origin.PUBLISHED, "Mazaheri et al. 2009, abstract; measured there; shown, drives nothing"
    )
    rows.append((("activation energy of densification", Number(energy, 0), "kJ/mol"), published))
    return tuple(rows)


def _numerics() -> tuple[Row, ...]:
    return (
        (("bands for export", Number(31, 0), "10 nm apart"),
         Source(Origin.ASSUMED, "enough for smooth spectra; narrow lines are widened to 5 nm")),
        (("bands on screen", Number(12, 0), "-"),
         Source(Origin.ASSUMED, "fewest that keep dE00 below 0.1, see above")),
    )  # fmt: skip


def materials() -> Section:
    """Return where the numbers of the starter materials come from, kind by kind."""
    rows: tuple[Row, ...] = (
        (("blocks: nominal L*a*b*",), Source(Origin.INVENTED, "5 shades in 3 classes")),
        (("blocks: absorption",), Source(Origin.FITTED, "to those nominal colours")),
        (("blocks: smallest walls",), Source(Origin.FROM_MEMORY, "usual guidance for the classes")),
        (("liquids: amounts of ions",), Source(Origin.FITTED, "to the invented outcome table")),
        (("ions: positions of bands",), Source(Origin.FROM_MEMORY, "literature on such oxides")),
        (("ions: widths and strengths of bands",), Source(Origin.INVENTED, "no spectra obtained")),
        (("stumps, cements: spectra",), Source(Origin.INVENTED, "plausible sigmoids")),
        (("dyes: absorption per drop",), Source(Origin.INVENTED, "three plain primaries")),
        (("programmes: ramps and holds",), Source(Origin.INVENTED, "usual shapes and times")),
    )
    return Section(
        title="The starter materials",
        blocks=(
            (
                "Nothing that comes with the program was measured on a real block, liquid, "
                "cement or tooth. Enter your own materials, or calibrate, before firing by a "
                "prediction."
            ),
            Table(heads=("What",), rows=rows),
        ),
    )


def left_out() -> Section:
    """Return what the engine does not know."""
    return Section(
        title="What is not modelled",
        blocks=(
            (
                "- **Fluorescence** is not modelled: neither of zirconia nor of a stump or a "
                "stain. Under lamps with much ultraviolet a tooth may look lighter than "
                "predicted.\n"
                "- **Opalescence** and light that is not diffuse: at dental grain sizes "
                "almost no light goes straight through.\n"
                "- **Gloss** is left out of every L*a*b* (45/0); instruments that include it "
                "read about 7 L* more.\n"
                "- **Stain graded in depth** is taken as a layer of constant strength.\n"
                "- **Chemistry**: ions do not act on each other or on sintering; a reducing "
                "atmosphere, which darkens coloured zirconia, is not foreseen.\n"
                "- **Glaze and surface stains** fired on top are not part of the plan."
            ),
        ),
    )


def _one(values: np.ndarray) -> float:
    return float(values[0])
