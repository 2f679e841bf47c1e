"""What the plan is predicted to give, area by area, beside what is wanted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.planning.area_figures import AreaFigures, Lab
from stainmap.planning.coats import CoatLayout
from stainmap.planning.targets import wanted_in
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.colour_conversion import AppliedConversion, colour_difference
from stainmap.predict.lights import UnderLights, spectrum_from_nodes, under_lights
from stainmap.predict.parameter_spread import (
    BEFORE_CALIBRATION,
    CrownState,
    Knowledge,
    area_sd,
)
from stainmap.predict.scene import scene_from_case
from stainmap.predict.uncertainty import is_calibrated, shown_sd
from stainmap.words import translate

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
        One standard deviation of L*, a*, b*: what is shown.
    parameters_sd
        The part of it that linearised parameters give; None if it was not asked for.
    lightness_doubt
        The part of that of L* which the calculation leaves out (see `doubt`).
    offset_from_body
        Predicted dL* and dC* from the predicted body; None for the body and without one.
    wanted_offset
        Wanted dL* and dC*; None where nothing is wanted of the area.
    wanted
        Wanted colour, after the conversions the target allows; as it was measured if refused.
    delta_e_00
        CIEDE2000 to what is wanted, or None.
    conversions
        What made the wanted colour comparable; their names belong beside the difference.
    difference_sd
        Standard deviation of L*, a*, b* of the wanted colour: what conversions add, and the doubt
        of its reading.
    refused
        Why there is no difference to what is wanted: they were measured unlike. Empty otherwise.
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
    parameters_sd: tuple[float, float, float] | None = None
    lightness_doubt: float = 0.0
    conversions: tuple[AppliedConversion, ...] = ()
    difference_sd: tuple[float, float, float] = (0.0, 0.0, 0.0)
    refused: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """All areas that exist on the crown, by number.

    Parameters
    ----------
    calibrated
        Whether block and liquids are; without, no word is said about a difference.
    provenance
        Where `AreaOutcome.plus_minus` comes from, in a few words.
    """

    areas: tuple[AreaOutcome, ...]
    calibrated: bool
    provenance: str = BEFORE_CALIBRATION.provenance

    @property
    def largest_plus_minus(self) -> tuple[float, float, float]:
        """The largest standard deviation of L*, a*, b* among areas: where one number has room.

        Zeros without an area.
        """
        if not self.areas:
            return 0.0, 0.0, 0.0
        lightness, a, b = (
            max(column) for column in zip(*(one.plus_minus for one in self.areas), strict=True)
        )
        return lightness, a, b

    @property
    def refused(self) -> str:
        """Why nothing is said of what is wanted, or empty."""
        return next((one.refused for one in self.areas if one.refused), "")

    @property
    def conversions(self) -> tuple[AppliedConversion, ...]:
        """What made the wanted colours comparable."""
        return next((one.conversions for one in self.areas if one.conversions), ())

    def area(self, area: Area) -> AreaOutcome | None:
        """Return the outcome of one area, or None if the crown has none of it."""
        return next((one for one in self.areas if one.area == area), None)


def judge(  # noqa: PLR0913 - what is judged, and in which light of knowledge
    case: Case,
    layout: CoatLayout,
    wall_mm: NDArray[np.float32],
    lab: NDArray[np.float32],
    lab_low: NDArray[np.float32] | None = None,
    *,
    state: CrownState | None = None,
    lightness_doubt: NDArray[np.float32] | None = None,
    knowledge: Knowledge = BEFORE_CALIBRATION,
    unit: int | None = None,
) -> Outcome:
    """Return the outcome of a prediction.

    Parameters
    ----------
    wall_mm
        (V,) wall thickness.
    lab, lab_low
        (V, 3) predicted L*a*b* at the upper end of spans and, where there are spans, at the lower.
    state
        What was predicted from, which also says the light and the observer; without, parameters
        are not linearised and the usual light is taken.
    lightness_doubt
        (V,) standard deviation of L* from what the calculation leaves out.
    knowledge
        How well parameters are known.
    unit
        Which unit of a bridge the means are taken over, from 0; all of them if None.
    """
    weights = area_weights(case, layout, unit)
    light = None
    parameters_sd = np.zeros((len(weights), 3))
    if state is not None:
        light = (state.scene.light, state.scene.observer)
        parameters_sd = area_sd(state, list(weights.values()), knowledge.covariance)
    figures = [
        AreaFigures(
            area=area,
            area_mm2=float(_extent(case, area, unit)),
            lab=_mean(lab, weight),
            lab_low=None if lab_low is None else _mean(lab_low, weight),
            parameters_sd=None if state is None else _triple(own_sd),
            # Neighbours are off alike, so that a mean is as doubtful as its vertices.
            lightness_doubt=(
                0.0
                if lightness_doubt is None
                else float(np.average(lightness_doubt, weights=weight))
            ),
            wall_mm=float(np.average(wall_mm, weights=weight)),
        )
        for (area, weight), own_sd in zip(weights.items(), parameters_sd, strict=True)
    ]
    return outcome_of(case, figures, light=light, knowledge=knowledge, unit=unit)


def outcome_of(
    case: Case,
    figures: Sequence[AreaFigures],
    *,
    light: tuple[str, int] | None = None,
    knowledge: Knowledge = BEFORE_CALIBRATION,
    unit: int | None = None,
) -> Outcome:
    """Return the outcome that figures of areas stand for, in words and beside what is wanted.

    Parameters
    ----------
    light
        Light and observer they were computed for; the usual ones if None.
    """
    how = Measurement(backing=case.backings[0].stump if case.backings else "unknown")
    if light is not None:
        how = replace(how, illuminant=light[0], observer_degrees=light[1])
    body = next((one.lab for one in figures if one.area is Zone.BODY), None)
    front = case.units[unit or 0].tooth.is_front
    areas = []
    for one in figures:
        own_sd = np.array((0.0, 0.0, 0.0) if one.parameters_sd is None else one.parameters_sd)
        outcome = AreaOutcome(
            area=one.area,
            label=area_label(one.area, front=front),
            area_mm2=one.area_mm2,
            coats=coat_entries(case, one.area, unit),
            predicted=_colour(one.lab, how),
            predicted_low=None if one.lab_low is None else _colour(one.lab_low, how),
            plus_minus=_triple(shown_sd(own_sd, knowledge.discrepancy_sd, one.lightness_doubt)),
            parameters_sd=one.parameters_sd,
            lightness_doubt=one.lightness_doubt,
            wall_mm=one.wall_mm,
        )
        areas.append(_beside_wanted(outcome, case, body))
    return Outcome(
        areas=tuple(areas),
        calibrated=is_calibrated(case.materials, case.plan),
        provenance=knowledge.provenance,
    )


def figures_of(outcome: Outcome) -> tuple[AreaFigures, ...]:
    """Return the figures that an outcome stands for: what `outcome_of` takes."""
    return tuple(
        AreaFigures(
            area=one.area,
            area_mm2=one.area_mm2,
            lab=one.predicted.lab,
            lab_low=None if one.predicted_low is None else one.predicted_low.lab,
            parameters_sd=one.parameters_sd,
            lightness_doubt=one.lightness_doubt,
            wall_mm=one.wall_mm,
        )
        for one in outcome.areas
    )


def lights_by_area(
    case: Case, layout: CoatLayout, engine: AppearanceEngine
) -> dict[Area, UnderLights]:
    """Return the colour of every area under every light, at the upper end of spans.

    Parameters
    ----------
    engine
        Holds the prediction, with 12 bands or all of them.
    """
    scene = engine.scene
    full = scene_from_case(case, light=scene.light, observer=scene.observer)
    to_all_bands = spectrum_from_nodes(full, scene.wavelengths_nm)
    backing = case.backings[0].stump
    return {
        area: under_lights(
            engine.mean_radiance_factor(weight) @ to_all_bands + scene.surface_radiance, backing
        )
        for area, weight in area_weights(case, layout).items()
    }


def area_weights(
    case: Case, layout: CoatLayout, unit: int | None = None
) -> dict[Area, NDArray[np.float64]]:
    """Return for each area on the crown the weight (V,) of each vertex in its mean, mm2.

    With `unit`, of the areas and vertices of that unit alone.

    A zone counts where its softened share is above one half and no accent lies on it; an accent
    where its mask is above one half. A zone wholly under accents counts in full.
    """
    sizes = _sizes(case, unit)
    shares = layout.shares(case.zones, _SOFTNESS_MM)
    covered = np.zeros(len(sizes), bool)
    for mask in case.accents:
        covered |= mask.share > _SHARE
    weights: dict[Area, NDArray[np.float64]] = {}
    for zone in Zone:
        share = shares[int(zone)]
        if not sizes[case.zones == int(zone)].any():
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


def coat_entries(case: Case, area: Area, unit: int | None = None) -> tuple[CoatEntry, ...]:
    """Return what every step puts on an area, with what an accent inherits from below."""
    below = _zones_below(case, area, unit) if isinstance(area, Accent) else ()
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


def inherited_text(case: Case, area: Accent, step: int, unit: int | None = None) -> str:
    """Return the coats an accent inherits in a step, as "2", or "1/2" over several zones."""
    for entry in coat_entries(case, area, unit):
        if entry.step == step and entry.inherited:
            return "/".join(str(span) for span in entry.coats)
    return ""


def _sizes(case: Case, unit: int | None) -> NDArray[np.float64]:
    """Return the vertex areas (V,), mm2; zero outside the unit if one is given."""
    sizes = case.surface.mesh.vertex_areas
    return sizes if unit is None else np.where(case.reading.unit_index == unit, sizes, 0.0)


def _zones_below(case: Case, accent: Accent, unit: int | None) -> tuple[Zone, ...]:
    """Return the zones under an accent, largest share first, leaving out small ones."""
    mask = case.accent(accent)
    if mask is None:
        return ()
    weight = _sizes(case, unit) * mask
    by_zone = np.bincount(case.zones, weight, minlength=7)[1:7]
    total = by_zone.sum()
    if total <= 0:
        return ()
    order = np.argsort(-by_zone, kind="stable")
    return tuple(Zone(int(i) + 1) for i in order if by_zone[i] > _INHERITED_SHARE * total)


def _extent(case: Case, area: Area, unit: int | None) -> float:
    sizes = _sizes(case, unit)
    if isinstance(area, Zone):
        return float(sizes[case.zones == int(area)].sum())
    mask = case.accent(area)
    return 0.0 if mask is None else float((sizes * (mask > _SHARE)).sum())


def _mean(lab: NDArray[np.float32], weight: NDArray[np.float64]) -> Lab:
    return _triple(weight @ lab.astype(np.float64) / weight.sum())


def _colour(lab: Lab, how: Measurement) -> Colour:
    lightness, a, b = lab
    return Colour(lightness=min(max(lightness, 0.0), 100.0), a=a, b=b, measurement=how)


def _triple(values: NDArray[np.float64]) -> Lab:
    lightness, a, b = (float(value) for value in values)
    return lightness, a, b


def _beside_wanted(outcome: AreaOutcome, case: Case, body: Lab | None) -> AreaOutcome:
    if body is not None and outcome.area is not Zone.BODY:
        chroma = hypot(body[1], body[2])
        offset = (outcome.predicted.lightness - body[0], outcome.predicted.chroma - chroma)
        outcome = replace(outcome, offset_from_body=offset)
    target, how = case.target, outcome.predicted.measurement
    as_read = None if target is None else target.wanted(outcome.area)
    if target is None or as_read is None:
        return outcome
    try:
        wanted = wanted_in(target, outcome.area, how)
        body_wanted = wanted_in(target, Zone.BODY, how)
    except PlanError as error:
        wanted = body_wanted = None
        outcome = replace(outcome, refused=str(error))
    if wanted is None or body_wanted is None:
        return replace(outcome, wanted=as_read, wanted_offset=_step(outcome, as_read, target.body))
    # An offset that was asked for is said as it was asked for, whatever conversions make of it.
    steps = (wanted.colour, body_wanted.colour) if wanted.own else (as_read, target.body)
    return replace(
        outcome,
        wanted=wanted.colour,
        wanted_offset=_step(outcome, *steps),
        delta_e_00=colour_difference(outcome.predicted, wanted.colour).de00,
        conversions=wanted.conversions,
        difference_sd=wanted.sd,
    )


def _step(outcome: AreaOutcome, colour: Colour, body: Colour) -> tuple[float, float] | None:
    """Return dL* and dC* of an area's colour from the body's, None for the body itself."""
    if outcome.area is Zone.BODY:
        return None
    return colour.lightness - body.lightness, colour.chroma - body.chroma


def plus_minus_text(areas: Sequence[AreaOutcome], between: str = ", ") -> str:
    """Return the plus-minus of L*, a*, b* of some areas, from the surest to the least sure.

    Empty without an area: a surface may have nothing that is seen.
    """
    if not areas:
        return ""
    parts = []
    for axis, name in enumerate(("L*", "a*", "b*")):
        values = [round(area.plus_minus[axis], 1) for area in areas]
        low, high = min(values), max(values)
        span = (
            f"{low:.1f}"
            if low == high
            else translate("outcome", "{low:.1f} to {high:.1f}").format(low=low, high=high)
        )
        parts.append(f"\N{PLUS-MINUS SIGN}{span} {name}")
    return between.join(parts)
