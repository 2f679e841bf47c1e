"""Everything that is computed from a case, recomputing only what an edit touched."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.app.brush import Stroke
from stainmap.app.job import Progress
from stainmap.model.case import Case
from stainmap.model.zone import Area
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import Outcome, judge, lights_by_area
from stainmap.predict.appearance import Appearance, AppearanceEngine
from stainmap.predict.lights import UnderLights
from stainmap.predict.parameter_spread import BEFORE_CALIBRATION, CrownState, VertexSpread
from stainmap.predict.scene import Bands, scene_from_case
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
    shape
        Wall thickness and the like of its surface.
    layout, engine
        Reused by the next prediction of the same surface and materials.
    coats
        (S, V) float32, at the upper end of spans.
    appearance
        At the upper end of spans.
    outcome
        Per area, at both ends.
    """

    case: Case
    shape: CrownShape
    layout: CoatLayout
    engine: AppearanceEngine
    coats: NDArray[np.float32]
    appearance: Appearance
    outcome: Outcome

    def under_lights(self) -> dict[Area, UnderLights]:
        """Return every area's colour under every light; of the engine's state as it is now."""
        return lights_by_area(self.case, self.layout, self.engine)

    def vertex_sd(self) -> NDArray[np.float64]:
        """Return one standard deviation of L*, a*, b* at every vertex, (V, 3), as it is shown."""
        state = _state(self.engine, self.shape, self.coats)
        everywhere = np.arange(len(state.wall_mm))
        own = VertexSpread(state, self.appearance.lab).at(everywhere, BEFORE_CALIBRATION.covariance)
        doubt = self.appearance.doubt_lightness
        return shown_sd(own, BEFORE_CALIBRATION.discrepancy_sd, 0.0 if doubt is None else doubt)


def predict_case(
    case: Case,
    *,
    previous: Prediction | None = None,
    operator: SurfaceOperator | None = None,
    bands: Bands = "screen",
    light: str = "D65",
    observer: int = 2,
    progress: Progress | None = None,
) -> Prediction:
    """Return what follows from `case`, reusing what `previous` shares with it.

    Parameters
    ----------
    operator
        Operator of the case's surface, if one is at hand.
    bands
        "screen" for the fitted nodes of live work, "full" for export.
    light, observer
        What the colour is predicted for: one of `colorimetry.LIGHTS`, 2 or 10 degrees.

    Raises
    ------
    StainmapError
        If plan, materials and surface do not fit together.
    """
    same_shape = previous is not None and (
        previous.case.surface is case.surface
        and previous.case.reading is case.reading
        and previous.case.units == case.units
    )
    if previous is None or not same_shape:
        shape = crown_shape(case, operator=operator, progress=progress)
        layout = CoatLayout(case.surface.mesh, case.reading.outer)
        _make_ready_to_paint(case.surface.mesh)
    else:
        shape, layout = previous.shape, previous.layout
    engine = _engine(case, shape, previous if same_shape else None, bands, (light, observer))
    coats = layout.coats(case, "high")
    appearance = engine.whole(coats)
    lab_low = None
    if any(entry.coats.is_span for step in case.plan.steps for entry in step.areas):
        lab_low = engine.whole(layout.coats(case, "low")).lab
        # The engine's state must be that of what is on screen: the upper end.
        appearance = engine.whole(coats)
    outcome = judge(
        case,
        layout,
        shape.wall_mm,
        appearance.lab,
        lab_low,
        state=_state(engine, shape, coats),
        lightness_doubt=appearance.doubt_lightness,
    )
    return Prediction(
        case=case,
        shape=shape,
        layout=layout,
        engine=engine,
        coats=coats,
        appearance=appearance,
        outcome=outcome,
    )


def _make_ready_to_paint(mesh: TriMesh) -> None:
    """Keep of a mesh what a brush asks for, worked out here and not under the first stroke."""
    wanted = ("adjacency", "vertex_faces", "vertex_normals", "vertex_areas", "is_watertight")
    for name in wanted:
        getattr(mesh, name)
    mesh.forget_derived(keep=wanted)


def _engine(
    case: Case,
    shape: CrownShape,
    previous: Prediction | None,
    bands: Bands,
    seen: tuple[str, int],
) -> AppearanceEngine:
    if previous is not None and _same_optics(previous.case, case):
        scene = previous.engine.scene
        if (scene.light, scene.observer) == seen:
            return previous.engine
    light, observer = seen
    scene = scene_from_case(case, bands=bands, light=light, observer=observer)
    return AppearanceEngine(shape, scene)


def _state(engine: AppearanceEngine, shape: CrownShape, coats: NDArray[np.float32]) -> CrownState:
    return CrownState(
        scene=engine.scene,
        coats=coats,
        wall_mm=shape.wall_mm,
        partner=shape.partner,
        inside=shape.inner,
    )


def _same_optics(before: Case, after: Case) -> bool:
    """Return True if liquids per step, block, backing and programme are what they were."""
    return (
        before.materials is after.materials
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
    drawn = case if stroke.accent is None else stroke.result()
    new = layout.unsoftened(drawn, stroke.zones, vertices)
    old = layout.unsoftened(case, case.zones, vertices)
    reach = stroke.reach[vertices]
    changed = np.abs(new - old) > 1e-6
    if stroke.accent is not None:
        return np.maximum(before + (new - old), 0.0)
    return np.where(changed, before + reach * (new - before), before).astype(np.float32)
