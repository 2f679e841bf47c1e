"""Layers: Kubelka-Munk, adding-doubling, and the fast engine between the two."""

from __future__ import annotations

import numpy as np

from stainmap.optics.adding_doubling import LambertianBacking, layered_transport
from stainmap.optics.interface import (
    CEMENT_INDEX,
    diffuse_fresnel,
    fitted_interface,
    textbook_interface,
    zirconia_index,
)
from stainmap.optics.slab import km_infinite_reflectance, km_reflectance_transmittance
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
from tests.optics import test_adding_doubling, test_slab, test_transport

CLOSED_FORM = Source(
    Origin.COMPUTED,
    "closed form of Kubelka 1948, worked out elsewhere and confirmed by the adding formula",
)
IADPYTHON = Source(Origin.COMPUTED, "iadpython 0.5.3, adding-doubling, 16 streams")
LIBRARY = Source(Origin.COMPUTED, "iadpython 0.5.3, adding-doubling, 16 points")
LIBRARY_SHARES = {
    "diffuse_R": "comes back, diffuse light",
    "diffuse_T": "passes, diffuse light",
    "normal_R": "comes back, beam along the normal",
    "normal_T": "passes, beam along the normal",
}
PMCX = Source(Origin.COMPUTED, "pmcx 0.8.1, Monte Carlo, 5e7 photons a slab")


def sections() -> tuple[Section, ...]:
    """Return the sections on layers."""
    return (kubelka_munk(), boundaries(), adding_doubling(), slabs())


def kubelka_munk() -> Section:
    """Return Kubelka-Munk against its closed form, and against transport without surfaces."""
    worked, off = [], []
    for S, K, X, R0, T, infinite in test_slab.WORKED:
        found = [float(value) for value in km_reflectance_transmittance(K, S, X)]
        found.append(float(km_infinite_reflectance(K, S)))
        worked.append([Number(S), Number(K), Number(X, 1), *(Number(one, 8) for one in found)])
        off += [abs(one - other) for one, other in zip(found, (R0, T, infinite), strict=True)]
    bare, usual = [], []
    for mua, musp, d, R, T, *_ in test_slab.ADDING_DOUBLING:
        own_R, own_T = (
            float(value) for value in km_reflectance_transmittance(2.0 * mua, 0.75 * musp, d)
        )
        cells = [Number(mua), Number(musp, 0), Number(d, 1), Number(R, 4), Number(own_R, 4)]
        bare.append([*cells, Number(T, 4), Number(own_T, 4)])
        if musp * d >= 2.5 and mua / musp <= 0.1:
            usual.append(abs(own_R - R))
    return Section(
        title="One layer: Kubelka-Munk",
        blocks=(
            (
                "The fast engine is made of Kubelka-Munk layers composed by adding. Its "
                "formulas against their closed form: S and K in 1/mm, X in mm, R and T of "
                "the layer on black, R of an infinitely thick one."
            ),
            table(("S", "K", "X", "R", "T", "R infinite"), worked, CLOSED_FORM),
            (
                "Kubelka-Munk is an approximation of radiative transport. Without surfaces "
                "(index 1), with the textbook link K = 2 mu_a, S = 3/4 mu_s' (Gate 1974), it "
                "does this against adding-doubling for diffuse light; mu_a and mu_s' in "
                "1/mm, d in mm:"
            ),
            table(
                ("mu_a", "mu_s'", "d", "R truth", "R ours", "T truth", "T ours"), bare, IADPYTHON
            ),
            (
                Check(
                    key="kubelka-munk-closed-form",
                    what="Kubelka-Munk against its closed form, largest difference",
                    found=Number(1e9 * max(off), 1),
                    most=6.0,
                    unit="billionths",
                    source=CLOSED_FORM,
                    headline=True,
                ),
                Check(
                    key="kubelka-munk-transport",
                    what="R without surfaces, mu_s' d of 2.5 and more, mu_a up to mu_s'/10, worst",
                    found=Number(max(usual), 4),
                    most=0.008,
                    source=IADPYTHON,
                ),
            ),
        ),
    )


def boundaries() -> Section:
    """Return what surfaces turn back: Fresnel integrals and the index."""
    quadrature = Source(Origin.COMPUTED, "independent quadrature of the Fresnel formulas")
    dispersion = Source(
        Origin.PUBLISHED, "formula of Wood and Nassau 1982 (cubic zirconia), worked out elsewhere"
    )
    known = [(1.5, 0.0918, 0.5963), (2.15, 0.1797, 0.8225), (2.2, 0.1860, 0.8318)]
    integrals, off = [], []
    for n, k1, k2 in known:
        found = float(diffuse_fresnel(1.0, n)), float(diffuse_fresnel(n, 1.0))
        integrals.append([Number(n), *(Number(one, 4) for one in (k1, found[0], k2, found[1]))])
        off += [abs(found[0] - k1), abs(found[1] - k2)]
    index = [(400, 2.2229), (450, 2.1966), (500, 2.1788), (550, 2.1661), (700, 2.1437)]
    lines = [[Number(nm, 0), Number(n, 4), Number(float(zirconia_index(nm)), 4)] for nm, n in index]
    away = max(abs(float(zirconia_index(nm)) - n) for nm, n in index)
    return Section(
        title="Surfaces",
        blocks=(
            (
                "Light that leaves zirconia is turned back inside more often than not. Share of "
                "Lambertian light turned back from outside (k1) and from within (k2) at index n:"
            ),
            table(("n", "k1 truth", "k1 ours", "k2 truth", "k2 ours"), integrals, quadrature),
            (
                "Refractive index of the reference and of the textbook option; the fast "
                "engine takes 2.15 throughout, as its constants were fitted with it:"
            ),
            table(("nm", "n truth", "n ours"), lines, dispersion),
            (
                Check(
                    key="fresnel",
                    what="Diffuse Fresnel factors, largest difference",
                    found=Number(1e6 * max(off), 0),
                    most=60.0,
                    unit="millionths",
                    source=quadrature,
                ),
                Check(
                    key="index",
                    what="Refractive index, largest difference",
                    found=Number(1e6 * away, 0),
                    most=60.0,
                    unit="millionths",
                    source=dispersion,
                ),
            ),
        ),
    )


def adding_doubling() -> Section:
    """Return the reference solver against another library and against Monte Carlo."""
    off: dict[str, list[float]] = {share: [] for share in LIBRARY_SHARES}
    for row in test_adding_doubling.rows("iadpython_slabs.csv"):
        n, mua, musp, mm = (
            float(row[key]) for key in ("n", "mua_per_mm", "musp_per_mm", "thickness_mm")
        )
        got = test_adding_doubling.in_air(mua, musp, mm, n)
        found = {
            "normal_R": got.normal_reflectance,
            "normal_T": got.normal_transmittance,
            "diffuse_R": got.first_surface + got.reflectance,
            "diffuse_T": got.transmittance,
        }
        for share, value in found.items():
            off[share].append(abs(float(value[0]) - float(row[share])))
    rows = [
        [name, Number(float(np.median(off[share])), 5), Number(max(off[share]), 5)]
        for share, name in LIBRARY_SHARES.items()
    ]
    monte_carlo = [
        abs(_on_scattering_stump(row) - float(row["R_mc"]))
        for row in test_adding_doubling.rows("slab_reference.csv")
        if float(row["g"]) == 0.0
    ]
    matt = [
        test_transport.transport(
            [(row["mua0_per_mm"], row["musp_per_mm"], row["thickness_mm"])], row["stump"]
        )
        - row["R_mc"]
        for row in test_transport.table()
        if row["g"] == 0.0
    ]
    return Section(
        title="The reference: adding-doubling",
        blocks=(
            (
                "What the fast engine is held to is a multi-stream adding-doubling solver of our "
                "own with exact Fresnel surfaces. It is held itself to a published library on 108 "
                "slabs in air (index 1.0, 1.5 and 2.15, mu_s' 1 to 27 per mm, 0.3 to 2 mm) and "
                "to Monte Carlo slabs on a scattering stump. Difference of the shares:"
            ),
            table(("Share of the light, 108 slabs", "median", "largest"), rows, LIBRARY),
            (
                Check(
                    key="adding-doubling-library",
                    what="Adding-doubling against iadpython, 108 slabs, largest difference",
                    found=Number(max(max(each) for each in off.values()), 4),
                    most=0.003,
                    source=LIBRARY,
                    headline=True,
                ),
                Check(
                    key="adding-doubling-slabs",
                    what="Adding-doubling against Monte Carlo, 54 slabs, largest difference in R",
                    found=Number(max(monte_carlo), 5),
                    most=0.0005,
                    source=PMCX,
                    headline=True,
                ),
                Check(
                    key="adding-doubling-matt",
                    what="the same with a matt stump in place of the scattering one",
                    found=Number(float(np.abs(matt).max()), 4),
                    most=0.003,
                    source=PMCX,
                ),
            ),
        ),
    )


def _on_scattering_stump(row: dict[str, str]) -> float:
    """Return R of a slab of the Monte Carlo table, its stump followed as a layer."""
    numbers = {key: float(row[key]) for key in row if key != "stump"}
    got = layered_transport(
        [
            test_adding_doubling.layer(
                numbers["mua0_per_mm"], numbers["musp_per_mm"], numbers["thickness_mm"]
            ),
            test_adding_doubling.layer(numbers["mua_substrate_per_mm"], 2.5, 4.0, CEMENT_INDEX),
        ],
        LambertianBacking(reflectance=0.0, refractive_index=CEMENT_INDEX),
    )
    return float(got.reflectance[0])


def slabs() -> Section:
    """Return the fast engine against the Monte Carlo slabs."""
    fitted, book = fitted_interface(1), textbook_interface([550.0])
    fast = test_transport.errors(fitted, isotropic=True)
    textbook = test_transport.errors(book, isotropic=True)
    forward = test_transport.errors(fitted, isotropic=False)
    return Section(
        title="The fast engine on slabs",
        blocks=(
            (
                "Slabs of ceramic (index 2.15) of 0.6, 1.0 and 1.5 mm on a light and a dark "
                "stump, mu_s' 4.2 to 8.6 per mm, mu_a 0.003 to 0.15 per mm, in air, diffuse "
                "light: 54 with isotropic scattering and 30 with forward scattering of the same "
                "mu_s'. They were computed once, for this project, by a published Monte Carlo "
                "code."
            ),
            _distribution(fast, textbook),
            (
                _lightness("fast-slabs-rms", "Fast engine, 54 slabs, RMS", _rms(fast), 0.4),
                _lightness("fast-slabs-worst", "the same, worst", float(np.abs(fast).max()), 1.0),
                _lightness(
                    "fast-slabs-forward",
                    "Fast engine, 30 slabs with forward scattering, RMS",
                    _rms(forward),
                    0.4,
                ),
                Check(
                    key="textbook-slabs-rms",
                    what="Textbook factors instead of the fitted ones, 54 slabs, RMS",
                    found=Number(_rms(textbook)),
                    least=3.0 * _rms(fast),
                    unit="L*",
                    source=PMCX,
                ),
            ),
        ),
    )


def _distribution(fast: np.ndarray, textbook: np.ndarray) -> Plot:
    share = np.linspace(0.0, 100.0, len(fast))
    return Plot(
        key="slabs",
        title="How far off the fast engine is on slabs",
        caption="Share of the 54 slabs whose error in L* is no larger than the value below.",
        panels=(
            Panel(
                title="54 slabs, Monte Carlo as truth",
                x_label="error in L*, without its sign",
                y_label="% of the slabs",
                x_limits=(0.0, float(np.ceil(4.0 * np.abs(textbook).max()) / 4.0)),
                y_from_zero=True,
                curves=(
                    Curve(
                        label="fitted boundaries",
                        x=np.sort(np.abs(fast)),
                        y=share,
                        stroke=Stroke.OURS,
                    ),
                    Curve(
                        label="textbook boundaries",
                        x=np.sort(np.abs(textbook)),
                        y=share,
                        stroke=Stroke.OTHER,
                    ),
                ),
            ),
        ),
        source=PMCX,
    )


def _lightness(key: str, what: str, found: float, most: float) -> Check:
    return Check(key=key, what=what, found=Number(found), most=most, unit="L*", source=PMCX)


def _rms(values: np.ndarray) -> float:
    return float(np.sqrt(np.mean(np.square(values))))
