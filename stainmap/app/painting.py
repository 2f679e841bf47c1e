"""A stroke on its way: what the brush changes, and how it looks while the brush moves."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case

if TYPE_CHECKING:
    from stainmap.app.brush import Brush, Stroke
    from stainmap.app.prediction import Prediction


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class StrokeUpdate:
    """What one movement of the brush changed.

    Parameters
    ----------
    vertices, srgb
        (m,) vertices that look different now, and their colour (m, 3). More than were painted:
        light and liquid spread sideways.
    painted
        (k,) vertices whose zone, accent or coats changed.
    lab
        (m, 3) L*a*b* of `vertices` now; None while there is no prediction to follow.
    coats
        (S, k) coats of each step there now; None while there is no prediction to follow.
    """

    vertices: NDArray[np.int32]
    srgb: NDArray[np.uint8]
    painted: NDArray[np.int32]
    lab: NDArray[np.float32] | None = None
    coats: NDArray[np.float32] | None = None


NOTHING = StrokeUpdate(
    vertices=np.empty(0, np.int32),
    srgb=np.empty((0, 3), np.uint8),
    painted=np.empty(0, np.int32),
)
# As empty, but something comes with the next turn.
PREPARED = replace(NOTHING)


class Painting:
    """Holds the stroke on its way and keeps the prediction's engine in step with it."""

    def __init__(self) -> None:
        self._stroke: Stroke | None = None
        self._unseen: list[NDArray[np.int32]] = []

    @property
    def stroke(self) -> Stroke | None:
        """The stroke on its way, or None."""
        return self._stroke

    def begin(self, case: Case, brush: Brush, prediction: Prediction | None) -> None:
        """Put the brush down; raise PlanError if it has nothing to paint."""
        from stainmap.app.brush import Stroke  # noqa: PLC0415

        self._stroke = Stroke.begun(case, brush)
        self._unseen = []
        if prediction is not None:
            self.follow(prediction)

    def follow(self, prediction: Prediction) -> None:
        """Let a prediction that has just arrived follow the stroke from now on."""
        if self._stroke is not None and prediction.case is self._stroke.case:
            prediction.engine.begin_stroke()

    def move(
        self,
        position: NDArray[np.float64],
        vertex: int,
        prediction: Prediction | None,
        *,
        more: bool = False,
        in_turns: bool = False,
    ) -> StrokeUpdate:
        """Press the brush at a point of the surface (mm) near `vertex`; return what changed.

        While no prediction of the stroke's case is there, places are painted without being
        recoloured; the first update after it has arrived recolours them too. So it is while `more`
        places follow that were passed in the same move of the hand; and, with `in_turns`, where the
        surface around has to be got ready first: `show` then recolours it, in a turn of its own.
        """
        from stainmap.surface.brush import brush_vertices  # noqa: PLC0415

        stroke = self._stroke
        if stroke is None:
            return NOTHING
        brush = stroke.brush
        vertices, weight = brush_vertices(
            stroke.case.surface.mesh, position, vertex, brush.radius_mm, brush.softness
        )
        painted = stroke.dab(vertices, weight)
        if len(painted) == 0 and not self._unseen:
            return NOTHING
        if more or prediction is None or prediction.case is not stroke.case:
            self._unseen.append(painted)
            return StrokeUpdate(vertices=NOTHING.vertices, srgb=NOTHING.srgb, painted=painted)
        self._unseen.append(painted)
        if in_turns and prediction.engine.cut_for(self._all_unseen()):
            return StrokeUpdate(vertices=NOTHING.vertices, srgb=NOTHING.srgb, painted=painted)
        return self.show(prediction)

    def show(self, prediction: Prediction | None) -> StrokeUpdate:
        """Recolour what has been painted and is not seen yet; return what changed."""
        from stainmap.app.prediction import coats_under_brush  # noqa: PLC0415

        stroke = self._stroke
        if not self._unseen or stroke is None:
            return NOTHING
        if prediction is None or prediction.case is not stroke.case:
            return NOTHING
        changed, self._unseen = self._all_unseen(), []
        coats = coats_under_brush(stroke, prediction.layout, prediction.coats, changed)
        dab = prediction.engine.dab(changed, prediction.seen_coats(coats, changed), through=False)
        return StrokeUpdate(
            vertices=dab.vertices, srgb=dab.srgb, lab=dab.lab, painted=changed, coats=coats
        )

    def _all_unseen(self) -> NDArray[np.int32]:
        return np.unique(np.concatenate(self._unseen)).astype(np.int32)

    def catch_up(self, prediction: Prediction | None) -> StrokeUpdate:
        """Let what was painted show through on the other side of the wall, as it does of late.

        For a moment in which the brush rests: a piece at a time, `NOTHING` once all is there. Each
        piece takes two turns, so that none is long: after `PREPARED` it comes.
        """
        stroke = self._stroke
        if stroke is None or prediction is None or prediction.case is not stroke.case:
            return NOTHING
        if prediction.engine.prepare_catch_up():
            return PREPARED
        dab = prediction.engine.catch_up()
        if dab is None:
            return NOTHING
        return StrokeUpdate(
            vertices=dab.vertices, srgb=dab.srgb, lab=dab.lab, painted=NOTHING.painted
        )

    def end(self) -> Stroke | None:
        """Lift the brush; return the stroke, or None if there was none."""
        stroke, self._stroke = self._stroke, None
        return stroke

    def cancel(self, prediction: Prediction | None) -> bool:
        """Drop the stroke; return whether there was one.

        The engine has followed the brush, so it is brought back to what was predicted.
        """
        stroke = self.end()
        if stroke is None:
            return False
        if stroke.touched.any() and prediction is not None and prediction.case is stroke.case:
            prediction.engine.cancel_stroke()
        return True
