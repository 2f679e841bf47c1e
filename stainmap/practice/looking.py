"""What a plan gives on the crown of an exercise: the same prediction as the window's."""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.zone import Area, Zone
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import area_weights
from stainmap.predict.appearance import Appearance, AppearanceEngine
from stainmap.predict.grinding import GroundCrown, ground_crown
from stainmap.predict.scene import scene_from_case
from stainmap.predict.shape import crown_shape

Lab = tuple[float, float, float]
_KEPT: Final = 200
"""Means of so many layings are remembered: of an answer, most areas are as they were before."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Looked:
    """A case and what comes out of it. Arrays are per vertex of the exercise's crown.

    Parameters
    ----------
    coats
        (S, V) coats of every step.
    lab
        (V, 3) predicted L*a*b*.
    srgb
        (V, 3) the same as the screen shows it.
    areas
        Mean L*a*b* of every area, over the areas as they truly are.
    """

    case: Case
    coats: NDArray[np.float32]
    lab: NDArray[np.float32]
    srgb: NDArray[np.uint8]
    areas: dict[Area, Lab]

    @property
    def painted(self) -> NDArray[np.float32]:
        """Coats of all steps together, (V,)."""
        return np.asarray(self.coats.sum(axis=0), dtype=np.float32)

    def offset(self, area: Area) -> tuple[float, float]:
        """Return dL* and dC* of an area from the body."""
        lightness, a, b = self.areas[area]
        body = self.areas[Zone.BODY]
        return lightness - body[0], float(np.hypot(a, b) - np.hypot(body[1], body[2]))


class Looker:
    """Predicts plans on one crown; what depends on the crown alone is worked out once.

    Parameters
    ----------
    case
        Any case on that crown; its zones and accents are those that means are taken over.
    """

    def __init__(self, case: Case) -> None:
        self._truth = case
        shape = crown_shape(case)
        self.ground: GroundCrown = ground_crown(shape, case.process, None)
        self.layout = CoatLayout(case.surface.mesh, case.reading.outer)
        self._weights = area_weights(case, self.layout)
        self._engine: AppearanceEngine | None = None
        self._means: OrderedDict[object, dict[Area, Lab]] = OrderedDict()

    @property
    def weights(self) -> dict[Area, NDArray[np.float64]]:
        """Weight (V,) of every vertex in the mean of each area, mm2."""
        return self._weights

    def look(self, case: Case) -> Looked:
        """Return what a case on this crown gives.

        Raises
        ------
        StainmapError
            If plan and materials do not fit together.
        """
        coats = self.layout.coats(case)
        appearance = self._predicted(case, coats)
        return Looked(
            case=case,
            coats=coats,
            lab=appearance.lab,
            srgb=appearance.srgb,
            areas=self._means_of(appearance),
        )

    def means(self, case: Case, coats: NDArray[np.float32]) -> dict[Area, Lab]:
        """Return the mean L*a*b* of every area for coats that were laid by somebody else.

        Parameters
        ----------
        case
            Its plan has the liquids of the coats, a step for each of them.
        coats
            (S, V) coats of these steps.
        """
        liquids = tuple(case.plan.liquid_of(step) for step in case.plan.steps)
        digest = hashlib.blake2b(np.ascontiguousarray(coats).tobytes(), digest_size=16).digest()
        key = (case.plan.block, case.plan.nesting_height_mm, case.backings, liquids, digest)
        if key not in self._means:
            self._means[key] = self._means_of(self._predicted(case, coats))
            while len(self._means) > _KEPT:
                self._means.popitem(last=False)
        return self._means[key]

    def _predicted(self, case: Case, coats: NDArray[np.float32]) -> Appearance:
        scene = scene_from_case(case, bands="screen")
        engine = AppearanceEngine(self.ground.shape, scene, threads=1, reuse=self._engine)
        self._engine = engine
        return engine.whole(coats)

    def _means_of(self, appearance: Appearance) -> dict[Area, Lab]:
        lab = appearance.lab.astype(np.float64)
        means = {area: weight @ lab / weight.sum() for area, weight in self._weights.items()}
        return {area: (float(m[0]), float(m[1]), float(m[2])) for area, m in means.items()}

    def bare(self, case: Case) -> Looked:
        """Return what the block of a case is without any coat."""
        return self.look(replace(case, plan=replace(case.plan, steps=())))
