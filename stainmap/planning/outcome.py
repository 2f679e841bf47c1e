"""What the plan is predicted to give, area by area, beside what is wanted."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.optics.difference import delta_e_00
from stainmap.planning.coats import CoatLayout
from stainmap.predict.uncertainty import UNCALIBRATED_SD, is_calibrated

# The share above which a vertex speaks for its zone, and the softness that share is taken at.
_SHARE = 0.5
_SOFTNESS_MM = 0.6
# An accent shows the coats of several zones if each lies under more than this much of it.
_INHERITED_SHARE = 0.2


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatEntry:
    """What one step puts on an area: `coats` as planned; `inherited` if it comes from below."""

    step: int
    liquid: str
    coats: tuple[CoatSpan, ...]
    inherited: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaOutcome:
    """Prediction for one area.

    Parameters
    ----------
    area_mm2
        Sintered area.
    predicted, predicted_low
        Area-weighted mean colour at the upper and at the lower end of spans; the latter is None
        without spans.
    plus_minus
        One standard deviation of L*, a*, b*.
    offset_from_body
        Predicted dL* and dC* from the predicted body; None for the body and without one.
    wanted_offset
        Wanted dL* and dC*; None where nothing is wanted of the area.
    delta_e_00
        CIEDE2000 to what is wanted, or None.
    wall_mm
        Area-weighted mean wall.
    """

    area: Area
    label: str
    area_mm2: float
    coats: tuple[CoatEntry, ...]
    predicted: Colour
    plus_minus: tuple[float, float, float]
    wall_mm: float
    predicted_low: Colour | None = None
    wanted: Colour | None = None
    offset_from_body: tuple[float, float] | None = None
    wanted_offset: tuple[float, float] | None = None
    delta_e_00: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """All areas that exist on the crown, by number; whether the materials are calibrated."""

    areas: tuple[AreaOutcome, ...]
    calibrated: bool

    def area(self, area: Area) -> AreaOutcome | None:
        """Return the outcome of one area, or None if the crown has none of it."""
        return next((one for one in self.areas if one.area == area), None)


def judge(
    case: Case,
    layout: CoatLayout,
    wall_mm: NDArray[np.float32],
    lab: NDArray[np.float32],
    lab_low: NDArray[np.float32] | None = None,
) -> Outcome:
    """Return the outcome of a prediction.

    Parameters
    ----------
    wall_mm
        (V,) wall thickness.
    lab, lab_low
        (V, 3) predicted L*a*b* at the upper end of spans and, where there are spans, at the lower.
    """
    weights = area_weights(case, layout)
    body = _mean(lab, weights[Zone.BODY]) if Zone.BODY in weights else None
    areas = []
    for area, weight in weights.items():
        outcome = AreaOutcome(
            area=area,
            label=area_label(area, front=case.units[0].tooth.is_front),
            area_mm2=float(_extent(case, area)),
            coats=coat_entries(case, area),
            predicted=_colour(_mean(lab, weight), case),
            predicted_low=None if lab_low is None else _colour(_mean(lab_low, weight), case),
            plus_minus=UNCALIBRATED_SD,
            wall_mm=float(np.average(wall_mm, weights=weight)),
        )
        areas.append(_beside_wanted(outcome, case, body))
    return Outcome(areas=tuple(areas), calibrated=is_calibrated(case.materials, case.plan))


def area_weights(case: Case, layout: CoatLayout) -> dict[Area, NDArray[np.float64]]:
    """Return for each area on the crown the weight (V,) of each vertex in its mean, mm2.

    A zone counts where its softened share is above one half and no accent lies on it; an accent
    where its mask is above one half. A zone wholly under accents counts in full.
    """
    sizes = case.surface.mesh.vertex_areas
    shares = layout.shares(case.zones, _SOFTNESS_MM)
    covered = np.zeros(len(sizes), bool)
    for mask in case.accents:
        covered |= mask.share > _SHARE
    weights: dict[Area, NDArray[np.float64]] = {}
    for zone in Zone:
        share = shares[int(zone)]
        if not (case.zones == int(zone)).any():
            continue
        inside = share > _SHARE
        for chosen in (inside & ~covered, inside, case.zones == int(zone)):
            weight = sizes * share * chosen
            if weight.sum() > 0:
                weights[zone] = weight
                break
    for mask in case.accents:
        weight = sizes * mask.share * (mask.share > _SHARE)
        if weight.sum() > 0:
            weights[mask.accent] = weight
    return weights


def coat_entries(case: Case, area: Area) -> tuple[CoatEntry, ...]:
    """Return what every step puts on an area, with what an accent inherits from below."""
    below = _zones_below(case, area) if isinstance(area, Accent) else ()
    entries = []
    for index, step in enumerate(case.plan.steps):
        liquid = case.plan.liquid_of(step)
        inherited = tuple(
            dict.fromkeys(
                entry.coats if (entry := step.entry(zone)) is not None else CoatSpan.exactly(0)
                for zone in below
            )
        )
        if any(span.high for span in inherited):
            entries.append(CoatEntry(step=index, liquid=liquid, coats=inherited, inherited=True))
        own = step.entry(area)
        if own is not None:
            entries.append(
                CoatEntry(step=index, liquid=liquid, coats=(own.coats,), inherited=False)
            )
    return tuple(entries)


def inherited_text(case: Case, area: Accent, step: int) -> str:
    """Return the coats an accent inherits in a step, as "2", or "1/2" over several zones."""
    for entry in coat_entries(case, area):
        if entry.step == step and entry.inherited:
            return "/".join(str(span) for span in entry.coats)
    return ""


def _zones_below(case: Case, accent: Accent) -> tuple[Zone, ...]:
    """Return the zones under an accent, largest share first, leaving out small ones."""
    mask = case.accent(accent)
    if mask is None:
        return ()
    weight = case.surface.mesh.vertex_areas * mask
    by_zone = np.bincount(case.zones, weight, minlength=7)[1:7]
    total = by_zone.sum()
    if total <= 0:
        return ()
    order = np.argsort(-by_zone, kind="stable")
    return tuple(Zone(int(i) + 1) for i in order if by_zone[i] > _INHERITED_SHARE * total)


def _extent(case: Case, area: Area) -> float:
    sizes = case.surface.mesh.vertex_areas
    if isinstance(area, Zone):
        return float(sizes[case.zones == int(area)].sum())
    mask = case.accent(area)
    return 0.0 if mask is None else float((sizes * (mask > _SHARE)).sum())


def _mean(lab: NDArray[np.float32], weight: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray(weight @ lab.astype(np.float64) / weight.sum())


def _colour(lab: NDArray[np.float64], case: Case) -> Colour:
    backing = case.backings[0].stump if case.backings else "unknown"
    return Colour(
        lightness=float(np.clip(lab[0], 0.0, 100.0)),
        a=float(lab[1]),
        b=float(lab[2]),
        measurement=Measurement(backing=backing),
    )


def _beside_wanted(
    outcome: AreaOutcome, case: Case, body: NDArray[np.float64] | None
) -> AreaOutcome:
    offset = None
    if body is not None and outcome.area is not Zone.BODY:
        chroma = float(np.hypot(body[1], body[2]))
        offset = (outcome.predicted.lightness - float(body[0]), outcome.predicted.chroma - chroma)
    wanted = None if case.target is None else case.target.wanted(outcome.area)
    if wanted is None or case.target is None:
        return replace(outcome, offset_from_body=offset)
    difference = float(delta_e_00(np.array(outcome.predicted.lab), np.array(wanted.lab)))
    wanted_offset = None
    if outcome.area is not Zone.BODY:
        target = case.target.body
        wanted_offset = (wanted.lightness - target.lightness, wanted.chroma - target.chroma)
    return replace(
        outcome,
        wanted=wanted,
        offset_from_body=offset,
        wanted_offset=wanted_offset,
        delta_e_00=difference,
    )
