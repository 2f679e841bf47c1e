"""The plan as a short film: coat after coat from the bare block, and what each coat does."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction
from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import BrushedCoats, CoatSpan, Step
from stainmap.model.zone import Zone, area_label
from stainmap.optics.difference import delta_e_00
from stainmap.planning.outcome import Outcome, judge
from stainmap.planning.schedule import coats_to_paint
from stainmap.predict.appearance import Appearance, AppearanceEngine
from stainmap.words import translate

Floats = NDArray[np.float32]


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatChange:
    """What one coat changes in a mean colour: dL*, dC*, and CIEDE2000 between before and after."""

    lightness: float
    chroma: float
    de00: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Moment:
    """The crown after one coat; the first moment is the bare block.

    Parameters
    ----------
    step
        Number of the step, from 1; 0 on the bare block.
    coat, coats
        Which round of the step this is, and how many it has; all areas of a step get their first
        coat in the first round.
    jar, liquid
        What it is painted with.
    areas
        Names of what gets this coat, with "streaks" and "brushed by hand" where there are any.
    covered_mm2
        Sintered area it lies on; a thinner coat at a soft edge counts by its share.
    ml
        Liquid and dye that it takes, mL; an estimate, see `planning.batch_size`.
    drops
        The same in drops of the laboratory's pipette.
    painted
        What it changes where it is painted; None on the bare block.
    outcome
        Colours of all areas after it.
    lab, srgb
        (V, 3) colours after it.
    own
        (V,) coats of its step so far; None if these are all of them.
    """

    step: int = 0
    coat: int = 0
    coats: int = 0
    jar: int = 0
    liquid: str = ""
    areas: tuple[str, ...] = ()
    covered_mm2: float = 0.0
    ml: float = 0.0
    drops: float = 0.0
    painted: CoatChange | None = None
    outcome: Outcome
    lab: Floats
    srgb: NDArray[np.uint8]
    own: Floats | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Film:
    """A plan, moment by moment, in the order it is painted.

    Parameters
    ----------
    prediction
        The plan's own prediction, at the upper end of spans, which the last moment is.
    moments
        The bare block, then one for every coat.
    """

    prediction: Prediction
    moments: tuple[Moment, ...]

    def coats_at(self, number: int) -> Floats:
        """Return the coats (S, V) of every step at one moment, from 0."""
        moment, whole = self.moments[number], self.prediction.coats
        coats = np.zeros_like(whole)
        if moment.step:
            coats[: moment.step] = whole[: moment.step]
            if moment.own is not None:
                coats[moment.step - 1] = moment.own
        return coats

    def prediction_at(self, number: int) -> Prediction:
        """Return what there is to see at one moment, from 0, as a prediction of the same case."""
        moment = self.moments[number]
        return replace(
            self.prediction,
            coats=self.coats_at(number),
            appearance=Appearance(lab=moment.lab, srgb=moment.srgb, doubt_lightness=None),
            outcome=moment.outcome,
            lab_low=None,
            advice=(),
        )

    def body_change(self, number: int) -> CoatChange | None:
        """Return what a coat changes in the body as a whole, seen from outside, or None."""
        if number == 0:
            return None
        before, after = (self.moments[at].outcome.area(Zone.BODY) for at in (number - 1, number))
        if before is None or after is None:
            return None
        return _change(np.array(before.predicted.lab), np.array(after.predicted.lab))


def make_film(prediction: Prediction, progress: Progress | None = None) -> Film:
    """Return the film of a plan; a whole recolouring for every coat.

    Raises
    ------
    PlanError
        If the plan paints nothing.
    """
    case = prediction.case
    rounds = [(index, coat) for index, coat in _rounds(case)]
    if not rounds:
        raise PlanError(
            translate(
                "film", "The plan paints nothing yet, so there is nothing to show coat by coat."
            ),
            advice=translate("film", "Put coats into the table first."),
        )
    # An engine of its own: that of the prediction stands ready for the brush.
    scene = prediction.engine.scene
    engine = AppearanceEngine(
        prediction.ground.shape,
        scene,
        curvature_correction=prediction.seen.curvature_correction,
        reuse=prediction.engine,
    )

    def seen(coats: Floats) -> tuple[Appearance, Outcome]:
        appearance = engine.whole(prediction.ground.coats(scene, coats))
        wall = prediction.ground.shape.wall_mm
        return appearance, judge(case, prediction.layout, wall, appearance.lab)

    coats = np.zeros_like(prediction.coats)
    look, outcome = seen(coats)
    moments = [Moment(outcome=outcome, lab=look.lab, srgb=look.srgb)]
    for done, (index, coat) in enumerate(rounds, start=1):
        if progress is not None:
            progress(
                done / (len(rounds) + 1),
                translate("film", "coat {done} of {count}").format(done=done, count=len(rounds)),
            )
        before = coats[index].copy()
        count = coats_to_paint(case.plan.steps[index])
        own = None if coat == count else _coats_of_round(prediction, index, coat)
        coats[index] = prediction.coats[index] if own is None else own
        look, outcome = seen(coats)
        moments.append(
            _moment(
                case,
                index,
                coat,
                coats[index] - before,
                (moments[-1].lab, look, outcome, own),
            )
        )
    return Film(prediction=prediction, moments=tuple(moments))


def _rounds(case: Case) -> Iterator[tuple[int, int]]:
    """Yield step (from 0) and coat (from 1) of every round of painting, in order."""
    for index, step in enumerate(case.plan.steps):
        for coat in range(1, coats_to_paint(step) + 1):
            yield index, coat


def _coats_of_round(prediction: Prediction, index: int, coat: int) -> Floats:
    """Return the coats (V,) of a step after so many of its rounds."""
    case = prediction.case
    step = up_to(case.plan.steps[index], coat)
    alone = replace(case, plan=replace(case.plan, steps=(step,)))
    coats: Floats = prediction.layout.coats(alone)[0]
    return coats


def up_to(step: Step, coat: int) -> Step:
    """Return a step as it is after `coat` rounds of painting, 1 or more."""
    areas = tuple(
        replace(entry, coats=CoatSpan.exactly(min(entry.coats.high, coat))) for entry in step.areas
    )
    streaks = tuple(replace(one, coats=min(one.coats, coat)) for one in step.streaks)
    brushed = step.brushed
    if brushed is not None:
        brushed = BrushedCoats(
            vertices=brushed.vertices, coats=np.minimum(brushed.coats, np.float32(coat))
        )
    return replace(step, areas=areas, streaks=streaks, brushed=brushed)


def _moment(
    case: Case,
    index: int,
    coat: int,
    added: Floats,
    seen: tuple[Floats, Appearance, Outcome, Floats | None],
) -> Moment:
    before, look, outcome, own = seen
    step, plan = case.plan.steps[index], case.plan
    areas_mm2 = case.surface.mesh.vertex_areas
    weight = areas_mm2 * added
    amounts = case.process.jar_amounts
    enlarged = case.materials.block(plan.block).enlargement_factor ** 2
    film_mm = amounts.film_per_coat_mm * case.process.uptake.hand_factor
    # Cubic millimetres are microlitres.
    ml = float(weight.sum()) * enlarged * film_mm / 1000.0
    painted = None
    if weight.sum() > 0.0:
        means = [weight @ lab.astype(np.float64) / weight.sum() for lab in (before, look.lab)]
        painted = _change(means[0], means[1])
    return Moment(
        step=index + 1,
        coat=coat,
        coats=coats_to_paint(step),
        jar=step.jar,
        liquid=plan.liquid_of(step),
        areas=_painted_areas(case, step, coat),
        covered_mm2=float((areas_mm2 * np.minimum(added, 1.0)).sum()),
        ml=ml,
        drops=ml * amounts.drops_per_ml,
        painted=painted,
        outcome=outcome,
        lab=look.lab,
        srgb=look.srgb,
        own=own,
    )


def _painted_areas(case: Case, step: Step, coat: int) -> tuple[str, ...]:
    """Return the names of what gets the `coat`-th coat of a step."""
    front = bool(case.units) and case.units[0].tooth.is_front
    names = [
        area_label(entry.area, front=front) for entry in step.areas if entry.coats.high >= coat
    ]
    if any(one.coats >= coat for one in step.streaks):
        names.append("streaks")
    brushed = step.brushed
    if brushed is not None and len(brushed.coats) and float(brushed.coats.max()) > coat - 1 + 1e-3:
        names.append(translate("film", "brushed by hand"))
    return tuple(names)


def _change(before: NDArray[np.float64], after: NDArray[np.float64]) -> CoatChange:
    chroma = [float(np.hypot(lab[1], lab[2])) for lab in (before, after)]
    return CoatChange(
        lightness=float(after[0] - before[0]),
        chroma=chroma[1] - chroma[0],
        de00=float(delta_e_00(before, after)),
    )
