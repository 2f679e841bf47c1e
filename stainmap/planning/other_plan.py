"""What another plan would give on the crown as it has been measured for the open one."""

from __future__ import annotations

from stainmap.model.case import Case
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import Outcome, judge
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.grinding import GroundCrown
from stainmap.predict.scene import scene_from_case
from stainmap.predict.seen import Seen


def outcome_of_plan(
    case: Case,
    ground: GroundCrown,
    layout: CoatLayout,
    *,
    seen: Seen,
    like: AppearanceEngine | None = None,
) -> Outcome:
    """Return the outcome of a case, with full coats at the end of spans.

    Meant for its predicted colours; of their doubt nothing is worked out.

    Parameters
    ----------
    case
        The open case with another plan; surface, zones and backings are the same.
    ground, layout
        The crown as it is seen, and the layout of its surface.
    seen
        How it is looked at.
    like
        An engine for the same crown, whose ground work is shared; its state is left alone.
    """
    scene = scene_from_case(case, bands=seen.bands, light=seen.light, observer=seen.observer)
    engine = AppearanceEngine(
        ground.shape, scene, curvature_correction=seen.curvature_correction, reuse=like
    )
    lab = engine.whole(ground.coats(scene, layout.coats(case))).lab
    return judge(case, layout, ground.shape.wall_mm, lab)
