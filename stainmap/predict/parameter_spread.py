"""What not knowing the parameters amounts to in L*a*b*: linearisation of the plain prediction.

Six parameters stand for what a laboratory does not know before it has calibrated. The plain
calculation of `reference` is differentiated by each, at chosen vertices; a covariance of the
parameters then gives that of the colour. Every parameter is common to the whole crown, so the
derivative of a mean colour is the mean of the derivatives. Sideways light and wicking, which
mix neighbours of much the same derivative, are left out, as is what is ground away.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import OpticalScene

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


class Parameter(StrEnum):
    """What is not known exactly, in the order of every covariance here."""

    SCATTERING = "scattering"
    BLOCK_ABSORPTION = "absorption of the block"
    LIQUID_ABSORPTION = "absorption of the liquids"
    STAIN_DEPTH = "depth of the stain"
    COATS = "coats to saturation"
    WALL = "wall thickness"


PARAMETERS: Final = tuple(Parameter)

# Steps of the central differences: of logarithms, and of the wall in mm.
_STEP: Final = 0.05
_WALL_STEP_MM: Final = 0.02
# Vertices that stand for an area, and for all of one kind.
_PER_AREA: Final = 24
_PER_KIND: Final = 200
# Length over which the backing stops to be seen, for the features of the linear model; assumed.
_SEEN_THROUGH_MM: Final = 0.6
_RIDGE: Final = 1e-4


@dataclass(frozen=True, slots=True, kw_only=True)
class ParameterPrior:
    """Standard deviations of the parameters, and where they come from.

    All are of natural logarithms (0.25 is about 25 %), but `wall_mm`. The parameters are taken
    as independent.
    """

    scattering: float = 0.25
    block_absorption: float = 0.25
    liquid_absorption: float = 0.30
    stain_depth: float = 0.30
    coats: float = 0.30
    wall_mm: float = 0.05
    provenance: str = "assumed before calibration, off by 20 to 35 %, the wall by 0.05 mm"

    @property
    def sd(self) -> Floats:
        """Standard deviations, (6,), in the order of `Parameter`."""
        return np.array(
            [
                self.scattering,
                self.block_absorption,
                self.liquid_absorption,
                self.stain_depth,
                self.coats,
                self.wall_mm,
            ]
        )

    @property
    def covariance(self) -> Floats:
        """Covariance of the parameters, (6, 6)."""
        return np.diag(self.sd**2)


UNCALIBRATED: Final = ParameterPrior()
"""What is taken before calibration."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Knowledge:
    """How well parameters are known, and how far predictions from them are off.

    Parameters
    ----------
    covariance
        (6, 6) of the parameters, in the order of `Parameter`.
    discrepancy_sd
        How far held-back coupons were off in L*, a*, b*; None before calibration.
    provenance
        Where both come from, in a few words.
    """

    covariance: Floats
    discrepancy_sd: tuple[float, float, float] | None
    provenance: str


BEFORE_CALIBRATION: Final = Knowledge(
    covariance=UNCALIBRATED.covariance, discrepancy_sd=None, provenance=UNCALIBRATED.provenance
)
"""All that is known of a laboratory that has not calibrated."""


def with_parameters(
    scene: OpticalScene, wall_mm: ArrayLike, change: ArrayLike
) -> tuple[OpticalScene, Floats]:
    """Return scene and walls with every parameter changed.

    Parameters
    ----------
    change
        (6,) in the order of `Parameter`: logarithms of factors, the last one mm of wall. More
        coats to saturation mean that every coat counts less.
    """
    scattering, block, liquid, depth, coats = np.exp(np.asarray(change, dtype=np.float64)[:5])
    process = replace(
        scene.process,
        outer_depth_mm=scene.process.outer_depth_mm * float(depth),
        inner_depth_mm=scene.process.inner_depth_mm * float(depth),
    )
    changed = replace(
        scene,
        process=process,
        block_scattering_per_mm=scene.block_scattering_per_mm * scattering,
        reduced_scattering_per_mm=scene.reduced_scattering_per_mm * scattering,
        block_absorption_per_mm=scene.block_absorption_per_mm * block,
        liquid_absorption_per_mm=scene.liquid_absorption_per_mm * liquid,
        step_dilution=scene.step_dilution / coats,
    )
    wall = np.asarray(wall_mm, dtype=np.float64) + float(np.asarray(change)[5])
    return changed, np.maximum(wall, 0.01)


def lab_jacobian(
    scene: OpticalScene,
    coats: ArrayLike,
    wall_mm: ArrayLike,
    partner_coats: ArrayLike | None = None,
    *,
    inside: ArrayLike | None = None,
) -> Floats:
    """Return how L*a*b* changes with every parameter, (V, 3, 6), by central differences.

    Parameters as for `reference.reference_lab`.
    """
    wall = np.asarray(wall_mm, dtype=np.float64)
    columns = []
    for index, parameter in enumerate(PARAMETERS):
        step = np.zeros(len(PARAMETERS))
        step[index] = _WALL_STEP_MM if parameter is Parameter.WALL else _STEP
        ends = []
        for change in (step, -step):
            changed, walls = with_parameters(scene, wall, change)
            ends.append(reference_lab(changed, coats, walls, partner_coats, inside=inside))
        columns.append((ends[0] - ends[1]) / (2.0 * step[index]))
    return np.stack(columns, axis=-1)


def lab_sd(jacobian: ArrayLike, covariance: ArrayLike) -> Floats:
    """Return the standard deviation of L*, a*, b*, (..., 3), from (..., 3, 6) and (6, 6)."""
    J = np.asarray(jacobian, dtype=np.float64)
    variance = np.einsum("...ip,pq,...iq->...i", J, np.asarray(covariance, dtype=np.float64), J)
    return np.asarray(np.sqrt(np.maximum(variance, 0.0)), dtype=np.float64)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownState:
    """What the plain calculation needs of every vertex of a crown.

    Parameters
    ----------
    scene
        With region and layers per vertex.
    coats
        (S, V).
    wall_mm
        (V,).
    partner
        (V,) the vertex on the other side of the wall, -1 for none.
    inside
        (V,) bool, True where the inner surface is looked at.
    """

    scene: OpticalScene
    coats: NDArray[np.float32]
    wall_mm: NDArray[np.float32]
    partner: NDArray[np.int32]
    inside: NDArray[np.bool_]

    def jacobian(self, vertices: Indices) -> Floats:
        """Return `lab_jacobian` at some vertices (n,), (n, 3, 6)."""
        partner = self.partner[vertices]
        opposite = np.where(partner >= 0, self.coats[:, partner], 0.0)
        return lab_jacobian(
            self.scene.at_vertices(vertices),
            self.coats[:, vertices],
            self.wall_mm[vertices],
            opposite,
            inside=self.inside[vertices],
        )


def area_sd(
    state: CrownState, weights: Sequence[NDArray[np.float64]], covariance: ArrayLike
) -> Floats:
    """Return the standard deviation of the mean L*, a*, b* of areas, (A, 3).

    Parameters
    ----------
    weights
        What each vertex (V,) counts in the mean of each of the A areas. An area is spoken for
        by at most 24 of its vertices, an equal share of its weight each, from thin to thick.
    covariance
        (6, 6) of the parameters.
    """
    chosen = [_spread_over(weight, state.wall_mm, _PER_AREA) for weight in weights]
    if not chosen:
        return np.empty((0, 3))
    jacobian = state.jacobian(np.concatenate(chosen))
    ends = np.cumsum([len(one) for one in chosen])
    means = [part.mean(0) for part in np.split(jacobian, ends[:-1])]
    return lab_sd(np.stack(means), covariance)


class VertexSpread:
    """The standard deviation at every vertex, by a linear model of the derivatives.

    The derivatives at some 200 vertices of each kind (outer or inner surface, what lies behind)
    are explained by the squares and products of lab, wall and load; the model then serves any
    number of vertices at the cost of one small matrix product. Good to 0.1 in each axis at 95 %
    of vertices (see `tests/predict/test_parameter_spread.py`).

    Parameters
    ----------
    state
        The crown.
    lab
        (V, 3) predicted L*a*b*.
    """

    def __init__(self, state: CrownState, lab: NDArray[np.float32]) -> None:
        self._state = state
        self._lab = lab
        self._kind = self._kinds()
        self._models: dict[int, Floats] = {}
        for kind in np.unique(self._kind):
            here = (self._kind == kind).astype(np.float64)
            vertices = _spread_over(here, lab[:, 0], _PER_KIND)
            known = self._features(vertices)
            # Columns of the derivatives are weighed alike; the constant is not held back.
            ridge = _RIDGE * len(vertices) * np.eye(known.shape[1])
            ridge[0, 0] = 0.0
            wanted = state.jacobian(vertices).reshape(len(vertices), -1)
            solved = np.linalg.solve(known.T @ known + ridge, known.T @ wanted)
            self._models[int(kind)] = np.asarray(solved, dtype=np.float64)

    def at(self, vertices: Indices, covariance: ArrayLike) -> Floats:
        """Return the standard deviation of L*, a*, b* at some vertices (n,), (n, 3)."""
        sd = np.empty((len(vertices), 3))
        kinds = self._kind[vertices]
        for kind, model in self._models.items():
            here = kinds == kind
            if here.any():
                jacobian = self._features(vertices[here]) @ model
                sd[here] = lab_sd(jacobian.reshape(-1, 3, len(PARAMETERS)), covariance)
        return sd

    def _kinds(self) -> NDArray[np.int32]:
        region = self._state.scene.region_index
        behind = np.zeros(len(self._state.inside), np.int32) if region is None else region
        return np.where(self._state.inside, -1, behind).astype(np.int32)

    def _features(self, vertices: Indices) -> Floats:
        """Return features (n, 21): constant, five of the state, and all their products."""
        L, a, b = np.asarray(self._lab[vertices], dtype=np.float64).T
        wall = np.asarray(self._state.wall_mm[vertices], dtype=np.float64)
        coats = self._state.coats[:, vertices]
        load = -np.expm1(-coats.sum(0) / self._state.scene.process.uptake.coats_to_saturation)
        one = np.ones(len(vertices))
        # Scaled to run over about one.
        state = [
            (L - 72.0) / 8.0,
            a / 3.0,
            (b - 16.0) / 8.0,
            np.exp(-wall / _SEEN_THROUGH_MM),
            load,
        ]
        products = [state[i] * state[j] for i in range(5) for j in range(i, 5)]
        return np.stack([one, *state, *products], axis=1)


def _spread_over(weight: NDArray[np.float64], along: NDArray[np.float32], count: int) -> Indices:
    """Return at most `count` vertices of equal shares of `weight`, in the order of `along`."""
    inside = np.flatnonzero(weight > 0)
    inside = inside[np.argsort(along[inside], kind="stable")]
    if len(inside) <= count:
        return inside
    reached = np.cumsum(weight[inside])
    wanted = (np.arange(count) + 0.5) / count * reached[-1]
    return np.unique(inside[np.searchsorted(reached, wanted)])
