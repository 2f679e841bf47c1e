"""Everything that is computed from a case, recomputing only what an edit touched."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.app.advising import advice_on
from stainmap.app.brush import Stroke
from stainmap.app.job import Progress
from stainmap.model.case import Case
from stainmap.model.zone import Area
from stainmap.planning.advice_ground import MeasuredPlaces
from stainmap.planning.advice_value import Advice
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import Outcome, judge, lights_by_area
from stainmap.planning.what_if import ProgrammeWhatIf, what_if_programme
from stainmap.predict.appearance import Appearance, AppearanceEngine
from stainmap.predict.grinding import GroundCrown, ground_crown, ground_depth_mm
from stainmap.predict.lights import UnderLights
from stainmap.predict.parameter_spread import (
    BEFORE_CALIBRATION,
    CrownState,
    VertexSpread,
    lab_sd,
)
from stainmap.predict.scene import scene_from_case
from stainmap.predict.seen import Seen
from stainmap.predict.shape import CrownShape, crown_shape
from stainmap.predict.uncertainty import shown_sd
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Prediction:
    """What follows from one case.

    Parameters
    ----------
    case
        The case it was computed for.
    seen
        How it is looked at.
    shape
        Wall thickness and the like of its surface, before anything is ground away.
    ground
        The crown as it is seen, with what grinding after sintering leaves.
    layout, engine
        Reused by the next prediction of the same surface and materials. The engine takes the
        coats that grinding leaves, see `seen_coats`.
    coats
        (S, V) float32 as painted, at the upper end of spans.
    appearance
        At the upper end of spans.
    outcome
        Per area, at both ends.
    lab_low
        (V, 3) float32. L*a*b* at the lower end of spans; None without spans.
    advice
        What the rules of advice say of it, most urgent first.
    places
        What was measured for them; reused by the next prediction of the same surface.
    """

    case: Case
    seen: Seen
    shape: CrownShape
    ground: GroundCrown
    layout: CoatLayout
    engine: AppearanceEngine
    coats: NDArray[np.float32]
    appearance: Appearance
    outcome: Outcome
    lab_low: NDArray[np.float32] | None = None
    advice: tuple[Advice, ...] = ()
    places: MeasuredPlaces = field(default_factory=MeasuredPlaces)

    def seen_coats(
        self, coats: NDArray[np.float32], vertices: NDArray[np.int32]
    ) -> NDArray[np.float32]:
        """Return what the engine takes for coats (S, k) painted at some vertices (k,)."""
        return self.ground.coats(self.engine.scene, coats, vertices)

    def what_if(self, programme: str) -> ProgrammeWhatIf:
        """Return what the plan gives in another programme; raise CatalogueError without one."""
        return what_if_programme(
            self.case, programme, self.ground, self.layout, seen=self.seen, here=self.outcome
        )

    def unit_outcomes(self) -> tuple[Outcome, ...]:
        """Return the outcome of every unit by itself; of a single crown, that of the crown."""
        case = self.case
        if len(case.units) == 1:
            return (self.outcome,)
        state = _state(self.engine, self.ground, self.coats)
        return tuple(
            judge(
                case,
                self.layout,
                self.ground.shape.wall_mm,
                self.appearance.lab,
                self.lab_low,
                state=state,
                lightness_doubt=self.appearance.doubt_lightness,
                unit=unit,
            )
            for unit in range(len(case.units))
        )

    def under_lights(self) -> dict[Area, UnderLights]:
        """Return every area's colour under every light; of the engine's state as it is now."""
        return lights_by_area(self.case, self.layout, self.engine)

    def sd_at(self, vertex: int) -> tuple[float, float, float]:
        """Return one standard deviation of L*, a*, b* at one vertex, as it is shown."""
        here = np.array([vertex])
        jacobian = _state(self.engine, self.ground, self.coats).jacobian(here)
        doubt = self.appearance.doubt_lightness
        lightness, a, b = shown_sd(
            lab_sd(jacobian, BEFORE_CALIBRATION.covariance),
            BEFORE_CALIBRATION.discrepancy_sd,
            0.0 if doubt is None else doubt[here],
        )[0]
        return float(lightness), float(a), float(b)

    def vertex_sd(self) -> NDArray[np.float64]:
        """Return one standard deviation of L*, a*, b* at every vertex, (V, 3), as it is shown."""
        state = _state(self.engine, self.ground, self.coats)
        everywhere = np.arange(len(state.wall_mm))
        own = VertexSpread(state, self.appearance.lab).at(everywhere, BEFORE_CALIBRATION.covariance)
        doubt = self.appearance.doubt_lightness
        return shown_sd(own, BEFORE_CALIBRATION.discrepancy_sd, 0.0 if doubt is None else doubt)


def predict_case(
    case: Case,
    *,
    previous: Prediction | None = None,
    operator: SurfaceOperator | None = None,
    seen: Seen | None = None,
    apart: bool = False,
    figures_only: bool = False,
    threads: int = 2,
    progress: Progress | None = None,
) -> Prediction:
    """Return what follows from `case`, reusing what `previous` shares with it.

    Parameters
    ----------
    operator
        Operator of the case's surface, if one is at hand.
    seen
        How it is looked at; live under D65 by the 2 degree observer if None.
    apart
        True leaves the engine of `previous` in its state, for a case that is shown beside that one.
    figures_only
        True for what is printed and thrown away: no advice, and nothing made ready for a brush.
    threads
        How many threads share the work; one where several processes work side by side.

    Raises
    ------
    StainmapError
        If plan, materials and surface do not fit together.
    """
    seen = Seen() if seen is None else seen
    same_shape = previous is not None and (
        previous.case.surface is case.surface
        and previous.case.reading is case.reading
        and previous.case.units == case.units
    )
    if previous is None or not same_shape:
        if operator is not None and operator.mesh is not case.surface.mesh:
            operator = None
        if not figures_only:
            # What a pointer asks for first is not made in the time of the screen.
            _ = case.surface.mesh.picker
        shape = crown_shape(case, operator=operator, progress=progress)
        layout = CoatLayout(case.surface.mesh, case.reading.outer)
        if not figures_only:
            _make_ready_to_paint(case.surface.mesh)
    else:
        shape, layout = previous.shape, previous.layout
    if not same_shape:
        previous = None
    ground = _ground(case, shape, previous)
    engine = _engine(case, ground.shape, previous, seen, apart=apart, threads=threads)
    coats = layout.coats(case, "high")
    appearance = engine.whole(ground.coats(engine.scene, coats))
    lab_low = None
    if any(entry.coats.is_span for step in case.plan.steps for entry in step.areas):
        low = layout.coats(case, "low")
        lab_low = engine.whole(ground.coats(engine.scene, low)).lab
        # The engine's state must be that of what is on screen: the upper end.
        appearance = engine.whole(ground.coats(engine.scene, coats))
    outcome = judge(
        case,
        layout,
        ground.shape.wall_mm,
        appearance.lab,
        lab_low,
        state=_state(engine, ground, coats),
        lightness_doubt=appearance.doubt_lightness,
    )
    prediction = Prediction(
        case=case,
        seen=seen,
        shape=shape,
        ground=ground,
        layout=layout,
        engine=engine,
        coats=coats,
        appearance=appearance,
        outcome=outcome,
        lab_low=lab_low,
    )
    if figures_only:
        return prediction
    advice, places = advice_on(prediction, None if previous is None else previous.places)
    # What advice asked of the mesh is a hundred bytes per vertex; `places` keeps what takes long.
    _make_ready_to_paint(case.surface.mesh)
    return replace(prediction, advice=advice, places=places)


def for_record(prediction: Prediction, progress: Progress | None = None) -> Prediction:
    """Return the prediction of the same case as it is exported.

    On all bands, under D65, by the 2 degree observer, whatever is on screen.
    """
    seen = Seen(bands="full", curvature_correction=prediction.seen.curvature_correction)
    if prediction.seen == seen:
        return prediction
    return predict_case(prediction.case, previous=prediction, seen=seen, progress=progress)


def for_sheets(prediction: Prediction, progress: Progress | None = None) -> Prediction:
    """Return the prediction of the same case as it is printed: under D65, by the 2 degree observer.

    On the bands it was seen on: the sheet holds the very figures of the screen. Those of all bands
    differ by 0.02 L*, a* or b* at most, a fifth of the last digit printed (tested).
    """
    seen = replace(prediction.seen, light=Seen().light, observer=Seen().observer)
    if prediction.seen == seen:
        return prediction
    return predict_case(
        prediction.case, previous=prediction, seen=seen, figures_only=True, progress=progress
    )


def _make_ready_to_paint(mesh: TriMesh) -> None:
    """Keep of a mesh what a brush asks for, worked out here and not under the first stroke."""
    wanted = ("adjacency", "vertex_faces", "vertex_normals", "vertex_areas", "is_watertight")
    for name in wanted:
        getattr(mesh, name)
    pointed = ("vertex_blocks", "picker", "extent")
    mesh.forget_derived(keep=(*wanted, *pointed, "light_faces", "bounds", "centre"))


def _ground(case: Case, shape: CrownShape, previous: Prediction | None) -> GroundCrown:
    if previous is not None and _same_ground(previous.case, case):
        return previous.ground
    return ground_crown(shape, case.process, ground_depth_mm(case))


def _same_ground(before: Case, after: Case) -> bool:
    """Return True if as much is ground away everywhere; areas move with zones and accents."""
    if before.after_sintering.ground != after.after_sintering.ground:
        return False
    return not after.after_sintering.ground or (
        before.process == after.process
        and before.zones is after.zones
        and before.accents is after.accents
    )


def _engine(
    case: Case,
    shape: CrownShape,
    previous: Prediction | None,
    seen: Seen,
    *,
    apart: bool,
    threads: int,
) -> AppearanceEngine:
    same = previous is not None and previous.seen == seen and _same_optics(previous.case, case)
    if previous is not None and same and not apart:
        return previous.engine
    scene = scene_from_case(case, bands=seen.bands, light=seen.light, observer=seen.observer)
    return AppearanceEngine(
        shape,
        scene,
        threads=threads,
        curvature_correction=seen.curvature_correction,
        reuse=None if previous is None else previous.engine,
    )


def _state(engine: AppearanceEngine, ground: GroundCrown, coats: NDArray[np.float32]) -> CrownState:
    shape = ground.shape
    return CrownState(
        scene=engine.scene,
        coats=ground.coats(engine.scene, coats),
        wall_mm=shape.wall_mm,
        partner=shape.partner,
        inside=shape.inner,
    )


def _same_optics(before: Case, after: Case) -> bool:
    """Return True if liquids per step, block, backing, programme and process are what they were.

    So are finish and grinding, and the places of screw channels.
    """
    return (
        _same_ground(before, after)
        and before.process == after.process
        and before.after_sintering.finish == after.after_sintering.finish
        and before.screw_channels == after.screw_channels
        and before.materials is after.materials
        and before.backings == after.backings
        and before.programme == after.programme
        and before.plan.block == after.plan.block
        and before.plan.nesting_height_mm == after.plan.nesting_height_mm
        and before.plan.jars == after.plan.jars
        and [step.jar for step in before.plan.steps] == [step.jar for step in after.plan.steps]
    )


def coats_under_brush(
    stroke: Stroke, layout: CoatLayout, coats: NDArray[np.float32], vertices: NDArray[np.int32]
) -> NDArray[np.float32]:
    """Return the coats (S, k) at vertices that a moving brush has touched.

    Brushed coats are exact. Zones and accents come without feathering across their new border,
    blended in by how fully the brush has covered the place; the feathered result follows when
    the brush is lifted.
    """
    before = coats[:, vertices]
    case = stroke.case
    if stroke.brushed is not None and stroke.brush.step is not None:
        result = before.copy()
        already = case.plan.steps[stroke.brush.step].brushed
        old = 0.0 if already is None else already.at(vertices)
        result[stroke.brush.step] += stroke.brushed[vertices] - old
        return np.maximum(result, 0.0, out=result)
    new = layout.unsoftened(stroke.drawn(), stroke.zones, vertices)
    old = layout.unsoftened(case, case.zones, vertices)
    reach = stroke.reach[vertices]
    changed = np.abs(new - old) > 1e-6
    if stroke.accent is not None:
        return np.maximum(before + (new - old), 0.0)
    return np.where(changed, before + reach * (new - before), before).astype(np.float32)
