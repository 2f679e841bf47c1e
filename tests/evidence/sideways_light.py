"""Light and liquid that spread sideways: profiles against Monte Carlo and against closed forms."""

from __future__ import annotations

from functools import cache

import numpy as np
from numpy.typing import NDArray

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
from tests.predict import test_light_profiles as profiles_of
from tests.predict.crowns import strip
from tests.predict.test_light_profiles import Profiles, lightness, middle, off, rms
from tests.predict.test_wicking import LENGTH_MM, everywhere, spread

PMCX = Source(Origin.COMPUTED, "pmcx 0.8.1, Monte Carlo, 3 to 4e8 photons a profile")
OWN = Source(Origin.COMPUTED, "our own Monte Carlo, itself within 0.08 L* of pmcx on 36 profiles")
EITHER = Source(Origin.COMPUTED, "pmcx 0.8.1 up to mu_s' 8.6, our own Monte Carlo beyond")
X_MM = profiles_of.X_MM[profiles_of.SEEN]
WIDTHS_MM = {0.15: "0.3 mm", 0.3: "0.6 mm", 0.6: "1.2 mm", 1.5: "3.0 mm", np.inf: "edge"}


@cache
def tables() -> dict[str, Profiles]:
    """Return the four tables of profiles by name."""
    return {
        "pmcx": profiles_of.reference_strips(),
        "own": profiles_of.own_strips(),
        "pmcx steps": profiles_of.reference_steps(),
        "own steps": profiles_of.own_steps(),
    }


@cache
def settled(name: str) -> NDArray:
    """Return the engine's settled profiles of a table, (P, 160)."""
    return profiles_of.settled(tables()[name])


@cache
def plain(name: str) -> NDArray:
    """Return the engine's profiles of a table without sideways light, (P, 160)."""
    return profiles_of.unspread(tables()[name])[:, profiles_of.SEEN]


def source_of(name: str) -> Source:
    """Return where the truth of a table comes from."""
    return PMCX if name.startswith("pmcx") else OWN


def sections() -> tuple[Section, ...]:
    """Return the sections on what spreads sideways."""
    return (light(), wicking())


def light() -> Section:
    """Return stains and steps against Monte Carlo."""
    agreement = _own_against_pmcx()
    return Section(
        title="Light that spreads sideways",
        blocks=(
            (
                "Within the ceramic light wanders one to two millimetres before it leaves, "
                "so a narrow stain is paler and wider than its coats. The engine solves a "
                "membrane equation with local loss on the surface, band by band. Its "
                "constants were **fitted to stain profiles of mu_s' 4.2 to 18 per mm**, the "
                "middle of fissures weighing more; 27 per mm and steps of the wall were not "
                "fitted to. All figures here are of the engine as it stands: its own layers, "
                "then the membrane, on a mesh. The stain lies in the upper 0.4 mm. The "
                "default 3Y block has mu_s' 12 at 550 nm and 18 at 400 nm."
            ),
            _fissure_plot(),
            _by_scattering(),
            (
                "The same by width, in L*, for mu_s' up to 8.6. *Under the brush* only a "
                "patch around the stain is solved; on release the whole surface is."
            ),
            _by_width(),
            _border_plot(),
            "A step of the wall from 1.5 to 0.6 mm, by scattering and stump, in L*:",
            _step_plot(),
            _steps(),
            (
                _check("unspread", "Without sideways light, 420 stain profiles, RMS",
                       rms(off(plain("pmcx"), tables()["pmcx"])), least=3.0),
                _check("settled", "Settled picture, 420 stain profiles, RMS",
                       rms(_error("pmcx")), most=0.6, headline=True),
                _check("brushed", "Under the brush, stains of four widths, RMS",
                       rms(np.array(list(_brushed().values()))), most=1.2, headline=True),
                _check("brushed-wide", "the same, the widest stain, 3 mm in one stroke, RMS",
                       _brushed()[1.5], most=1.6),
                _check("own", "Settled picture, stain profiles at mu_s' 12 and more, RMS",
                       rms(_error("own")[tables()["own"].musp > 10.0]), most=0.6, source=OWN,
                       headline=True),
                _check("fissure", "Middle of a fissure of 0.3 mm at mu_s' 6 and more, worst",
                       max(_fissure_worst(name, 5.0) for name in ("pmcx", "own")), most=1.0,
                       source=EITHER, headline=True),
                _check("fissure-clear", "the same at mu_s' 4.2, clearer than any starter block in "
                       "any band, RMS", rms(_fissures("pmcx", 0.0, 5.0)), most=1.0),
                _check("fissure-clear-worst", "the same, worst: a stain of 1.2 per mm, more than "
                       "any starter liquid takes", _fissure_worst("pmcx", 0.0, 5.0), most=2.0),
                _check("steps", "Steps of the wall, 18 profiles, RMS",
                       rms(_error("pmcx steps")), most=0.6),
                _check("own-steps", "Steps of the wall at mu_s' 12 and more, RMS",
                       rms(_error("own steps")), most=0.6, source=OWN),
                _check("two-codes", "The two Monte Carlo codes from each other, RMS",
                       agreement, most=0.08),
            ),
        ),
    )  # fmt: skip


def wicking() -> Section:
    """Return the spread of liquid against its closed form."""
    mesh = strip(6.0, 0.02, rows=2)
    x = mesh.vertices[:, 0]
    edge = x[x < 0].max() / 2.0
    exact = np.where(
        x > edge, 1 - np.exp((edge - x) / LENGTH_MM) / 2, np.exp((x - edge) / LENGTH_MM) / 2
    )
    found = spread(mesh, everywhere(mesh), (x > edge)[:, None])[:, 0]
    order = np.argsort(x)
    # The strip has two rows of vertices; every other one is enough for the drawing.
    near = order[np.abs(x[order] - edge) < 1.0][::2]
    closed = Source(Origin.COMPUTED, "closed form of screened diffusion across an edge")
    return Section(
        title="Liquid that wicks",
        blocks=(
            (
                "Before it dries the liquid creeps along the porous surface. The load is spread by "
                "screened diffusion with a length of 0.15 mm (sintered). The length and the form "
                "are **assumed**; what can be proven is only that the equation is solved."
            ),
            Plot(
                key="wicking",
                title="Load across the border of a coat",
                caption="Painted to the right of 0.",
                panels=(
                    Panel(
                        title="length 0.15 mm",
                        x_label="mm from the border",
                        y_label="load, share of the painted one",
                        x_limits=(-1.0, 1.0),
                        curves=(
                            Curve(label="closed form", x=x[near], y=exact[near],
                                  stroke=Stroke.TRUTH),
                            Curve(label="engine", x=x[near], y=found[near], stroke=Stroke.OURS),
                        ),
                    ),
                ),
                source=closed,
            ),
            (
                Check(
                    key="wicking",
                    what="Load across an edge, largest difference",
                    found=Number(float(np.abs(found - exact).max()), 4),
                    most=0.005,
                    source=closed,
                ),
            ),
        ),
    )  # fmt: skip


def coverage() -> tuple[float, float]:
    """Return shares (%) of bins within two deviations of the doubt; all, and shifted by over 1 L*.

    Of the doubt only the parts that a flat plate can have: its floor and its share of spreading.
    The one-dimensional values are Monte Carlo's own, so that only spreading is judged.
    """
    inside, shifted = [], []
    for name in ("pmcx", "own"):
        among = tables()[name]
        flat = _own_values(name)
        membrane = profiles_of.membrane_of(profiles_of.plate(), among.musp)
        R1 = profiles_of.compact(flat)
        found = profiles_of.seen(membrane.reflectance(membrane.solve(R1).phi, R1))
        shift = np.abs(lightness(found) - lightness(flat[:, profiles_of.SEEN]))
        deviation = np.hypot(0.1, 0.10 * shift)
        inside.append((np.abs(off(found, among)) <= 2.0 * deviation).ravel())
        shifted.append((shift > 1.0).ravel())
    within, moved = np.concatenate(inside), np.concatenate(shifted)
    return 100.0 * float(within.mean()), 100.0 * float(within[moved].mean())


def _own_values(name: str) -> NDArray:
    """Return Monte Carlo's reflectance of even plates, column by column, (P, columns)."""
    among = tables()[name]
    edges = among.only(np.isinf(among.half_mm))
    stained, bare = edges.truth[:, -10:].mean(axis=1), edges.truth[:, :10].mean(axis=1)
    same = [
        int(
            np.flatnonzero(
                (edges.musp == among.musp[at])
                & (edges.mua == among.mua[at])
                & (edges.stump == among.stump[at])
                & (edges.stain == among.stain[at])
                & (edges.wall_mm[:, 0] == among.wall_mm[at, 0])
            )[0]
        )
        for at in range(len(among.musp))
    ]
    return np.where(among.covered, stained[same][:, None], bare[same][:, None])


def _error(name: str) -> NDArray:
    return off(settled(name), tables()[name])


@cache
def _brushed() -> dict[float, float]:
    """Return the RMS of the patch under the brush by half width."""
    reference = tables()["pmcx"]
    found = {}
    for half in (0.15, 0.3, 0.6, 1.5):
        painted = reference.only(reference.half_mm == half)
        found[half] = rms(off(profiles_of.brushed(painted), painted))
    return found


def _fissures(name: str, above: float, below: float = np.inf) -> NDArray:
    """Return the errors in the middle of the fissures of a table, by limits of mu_s'."""
    among = tables()[name]
    chosen = (among.half_mm == 0.15) & (among.musp > above) & (among.musp < below)
    return middle(_error(name)[chosen])


def _fissure_worst(name: str, above: float, below: float = np.inf) -> float:
    return float(np.abs(_fissures(name, above, below)).max())


def _own_against_pmcx() -> float:
    """Return the RMS between both codes, on the plates that both computed."""
    older, newer = tables()["pmcx"], tables()["own"]
    older = older.only((older.musp == 8.6) & (older.wall_mm[:, 0] == 1.0))
    newer = newer.only(newer.musp == 8.6)
    gaps = [
        lightness(newer.only(newer.half_mm == half).truth)
        - lightness(older.only(older.half_mm == half).truth)
        for half in (0.15, 0.3, np.inf)
    ]
    return rms(np.concatenate(gaps))


def _check(
    key: str,
    what: str,
    found: float,
    *,
    least: float | None = None,
    most: float | None = None,
    source: Source = PMCX,
    headline: bool = False,
) -> Check:
    return Check(
        key=f"sideways-{key}",
        what=what,
        found=Number(found),
        least=least,
        most=most,
        unit="L*",
        source=source,
        headline=headline,
    )


def _by_scattering() -> Table:
    rows = []
    for name in ("pmcx", "own"):
        among = tables()[name]
        for musp in np.unique(among.musp):
            here = among.musp == musp
            fissure = here & (among.half_mm == 0.15)
            cells = (
                Number(float(musp), 1),
                Number(int(here.sum()), 0),
                Number(rms(off(plain(name), among)[here])),
                Number(rms(_error(name)[here])),
                Number(float(np.abs(_error(name)[here]).max())),
                Number(rms(middle(_error(name)[fissure]))),
                Number(float(np.abs(middle(_error(name)[fissure])).max())),
            )
            rows.append((cells, source_of(name)))
    heads = ("mu_s' per mm", "profiles", "without, RMS", "engine, RMS", "worst, at a border",
             "fissure, middle, RMS", "worst")  # fmt: skip
    return Table(heads=heads, rows=tuple(rows))


def _by_width() -> Table:
    among = tables()["pmcx"]
    rows = []
    for half, under in _brushed().items():
        here = among.half_mm == half
        off_without, off_settled = off(plain("pmcx"), among)[here], _error("pmcx")[here]
        numbers = (rms(off_without), rms(off_settled), under)
        rows.append([WIDTHS_MM[half], *(Number(number) for number in numbers)])
    heads = ("Width of the stain", "without, RMS", "settled, RMS", "under the brush, RMS")
    return table(heads, rows, PMCX)


def _steps() -> Table:
    rows = []
    for name in ("pmcx steps", "own steps"):
        among = tables()[name]
        for musp in np.unique(among.musp):
            for stump in ("light", "dark"):
                here = (among.musp == musp) & (among.stump.astype(str) == stump)
                if here.any():
                    cells = (
                        Number(float(musp), 1),
                        stump,
                        Number(rms(off(plain(name), among)[here])),
                        Number(rms(_error(name)[here])),
                    )
                    rows.append((cells, source_of(name)))
    return Table(heads=("mu_s' per mm", "stump", "without, RMS", "engine, RMS"), rows=tuple(rows))


def _first(name: str, half: float, musp: float, **values: object) -> int:
    """Return the first profile of a table with these values; 1.0 mm of wall, a middling stain."""
    among = tables()[name]
    chosen = (among.half_mm == half) & (among.musp == musp)
    for key, value in values.items():
        chosen &= getattr(among, key) == value
    return int(np.flatnonzero(chosen)[0])


def _fissure_plot() -> Plot:
    panels = []
    for name, musp in (("pmcx", 4.2), ("pmcx", 8.6), ("own", 12.0), ("own", 18.0)):
        at = _first(name, 0.15, musp, stain=0.4, mua=0.03, stump="light")
        panels.append(_panel(name, at, f"mu_s' {musp:g}", 2.0))
    return Plot(
        key="fissures",
        title="Across a fissure 0.3 mm wide on a plate of 1.0 mm",
        caption="Stain of 0.4 per mm over mu_a 0.03 per mm, light stump.",
        panels=tuple(panels),
        source=EITHER,
        one_scale=True,
    )


def _border_plot() -> Plot:
    panels = []
    for name, half, musp in (("pmcx", 0.6, 8.6), ("pmcx", np.inf, 4.2), ("own", np.inf, 18.0)):
        at = _first(name, half, musp, stain=0.4, mua=0.03, stump="light")
        title = f"{WIDTHS_MM[half]}, mu_s' {musp:g}"
        panels.append(_panel(name, at, title, 3.0))
    return Plot(
        key="borders",
        title="Across a wide stain and across the edge of a large one",
        caption="As above. On the bare side light spreads further than on the stained one.",
        panels=tuple(panels),
        source=EITHER,
        one_scale=True,
    )


def _step_plot() -> Plot:
    panels = []
    for name, musp in (("pmcx steps", 4.2), ("pmcx steps", 8.6), ("own steps", 18.0)):
        among = tables()[name]
        chosen = (among.musp == musp) & (among.stump.astype(str) == "dark")
        nearest = np.abs(among.mua - 0.03)
        at = int(np.flatnonzero(chosen)[np.argmin(nearest[chosen])])
        panels.append(_panel(name, at, f"mu_s' {musp:g}, dark stump", 3.0))
    return Plot(
        key="steps",
        title="Across a step of the wall, 1.5 mm at the left and 0.6 mm at the right",
        caption="mu_a 0.03 per mm. No constant was fitted to these.",
        panels=tuple(panels),
        source=EITHER,
    )


def _panel(name: str, at: int, title: str, reach_mm: float) -> Panel:
    shown = np.abs(X_MM) <= reach_mm
    curves = (
        ("Monte Carlo", tables()[name].truth[at], Stroke.TRUTH),
        ("engine", settled(name)[at], Stroke.OURS),
        ("engine without sideways light", plain(name)[at], Stroke.WITHOUT),
    )
    return Panel(
        title=title,
        x_label="mm",
        y_label="L*",
        x_limits=(-reach_mm, reach_mm),
        curves=tuple(
            Curve(label=label, x=X_MM[shown], y=lightness(values[shown]), stroke=stroke)
            for label, values, stroke in curves
        ),
    )
