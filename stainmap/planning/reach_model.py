"""The quick prediction of any coats at the places that stand for a crown's areas, on one block."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Backing, Case
from stainmap.model.plan import Jar, StainPlan
from stainmap.model.zone import Zone
from stainmap.planning.reach_places import Places
from stainmap.predict.blocks import layer_share
from stainmap.predict.kernel import LayerKernel, Walls
from stainmap.predict.scene import build_scene, screen_quadrature, with_finish
from stainmap.predict.uptake import load_after_steps

Array = NDArray[np.float64]
Counts = NDArray[np.int64]

USUAL_DILUTION: Final = 25.0 / 27.5
"""Share of liquid in a jar of 25 drops with 2 to 3 drops of dye: common practice, no published
source. Taken while a plan's dyes are not known yet."""

_THINNEST_MM = 0.05
_STATES_AT_ONCE = 60_000


class ReachModel:
    """One block under one case's furnace, stump and hand.

    Parameters
    ----------
    case
        Gives materials, programme, backings, process and finish.
    places
        Of its crown.
    liquids
        L names, in painting order.
    block
        Name of the block; the case's own if empty.
    nesting_height_mm
        Of the lowest point above the bottom of the blank; the plan's if None.
    backings
        What may lie behind, by row: the case's own if None. Rows beyond the case's are asked for
        by their position.
    """

    def __init__(
        self,
        case: Case,
        places: Places,
        liquids: Sequence[str],
        *,
        block: str = "",
        nesting_height_mm: float | None = None,
        backings: Sequence[Backing] | None = None,
    ) -> None:
        self.block = block or case.plan.block
        self.places = places
        self.liquids = tuple(liquids)
        plan = StainPlan(
            block=self.block,
            jars=tuple(Jar(number=k, liquid=name) for k, name in enumerate(liquids, start=1)),
        )
        scene = build_scene(
            case.materials,
            plan,
            programme=case.programme,
            backings=case.backings if backings is None else backings,
            process=case.process,
        )
        finish = case.after_sintering.finish
        nodes = screen_quadrature(
            case.materials, self.block, case.programme, "D65", 2, finish=finish
        )
        scene = with_finish(scene, finish).on_bands(nodes.indices, nodes.xyz_weights)
        known = case.materials.block(self.block)
        height = case.plan.nesting_height_mm if nesting_height_mm is None else nesting_height_mm
        if len(known.layers) > 1:
            scene = replace(scene, layer_share=layer_share(known, places.height_mm + height))
        self._scene = replace(scene, region_index=places.region)
        self._kernel = LayerKernel(self._scene, threads=1)
        self._rule = case.process.uptake
        self.backing_rows = len(case.backings)
        outside = np.zeros(len(places.wall_mm), dtype=bool)
        self._walls = self._kernel.walls(places.wall_mm.astype(np.float32), outside)

    @property
    def bare(self) -> Array:
        """Colour of every area without any coat, neighbours mixed in, (A, 3)."""
        nothing = np.zeros((len(self.places.wall_mm), len(self.liquids)))
        return self.places.mixed(self._lab(self._walls, nothing, nothing))

    def table(self, area: int, counts: Counts, inner: Counts) -> Array:
        """Return what n options of an area, over I inside, add to every area, (I, n, A, 3).

        Summed over areas these are the colours that `plan_colours` gives.

        Parameters
        ----------
        area
            Position among the places' areas.
        counts, inner
            (n, L) and (I, L) coats of each liquid.
        """
        here = np.arange(self.places.start[area], self.places.start[area + 1])
        fade = self._fade(area)
        near = self._near_load(counts, here, fade)
        far = self._far_load(inner, here)
        options, insides, k = len(counts), len(inner), len(here)
        added = np.empty((insides, options, len(self.places.areas), 3))
        mixing = self.places.mixing[:, here]
        each = max(_STATES_AT_ONCE // max(options * k, 1), 1)
        for begin in range(0, insides, each):
            part = slice(begin, min(begin + each, insides))
            many = part.stop - part.start
            place = np.tile(here, options * many)
            walls = self._walls.at(place.astype(np.int32))
            front = np.broadcast_to(near, (many, *near.shape)).reshape(many * options * k, -1)
            back = np.broadcast_to(far[part, None], (many, options, *far.shape[1:]))
            found = self._lab(walls, front, back.reshape(many * options * k, -1))
            added[part] = mixing @ found.reshape(many, options, k, 3)
        return added

    def plan_colours(self, plan: StainPlan) -> Array:
        """Return what the cells of a plan give every area, neighbours mixed in, (A, 3).

        Streaks and brushed coats are left out; so are accents but where they are areas themselves.
        """
        steps = [(plan.liquid_of(step), plan.jar(step.jar).dilution, step) for step in plan.steps]
        known = [one for one in steps if one[0] in self.liquids]
        index = [self.liquids.index(one[0]) for one in known]
        dilution = [one[1] for one in known]
        places = self.places
        near = np.zeros((len(known), len(places.wall_mm)))
        far = np.zeros_like(near)
        for row, (_, _, step) in enumerate(known):
            inside = step.entry(Zone.INNER)
            if inside is not None:
                far[row] = inside.coats.high * places.inner
            for position, area in enumerate(places.areas):
                entry = step.entry(area)
                if entry is not None:
                    where = places.of(position)
                    fade = 1.0 if entry.fade is None else places.fade[where]
                    near[row, where] = entry.coats.high * fade
        loads = [
            load_after_steps(
                coats, index, dilution, liquid_count=len(self.liquids), rule=self._rule
            )
            for coats in (near, far)
        ]
        front = (loads[0] * places.left).T
        return places.mixed(self._lab(self._walls, front, loads[1].T))

    def days(
        self,
        near: Array,
        far: Array,
        dilution: Array,
        wall_change_mm: Array,
        backing_shift: NDArray[np.int64],
    ) -> Array:
        """Return the colours (D, A, 3) of all areas on D days, neighbours mixed in.

        Parameters
        ----------
        near
            (D, A, L) coats as they came out, of each area.
        far
            (D, L) coats inside.
        dilution
            (D, L) share of liquid in each jar.
        wall_change_mm
            (D,) by which all walls are off.
        backing_shift
            (D,) added to the row of what lies behind.
        """
        places = self.places
        count, n = len(near), len(places.wall_mm)
        of_area = np.repeat(np.arange(len(places.areas)), np.diff(places.start))
        fade = np.concatenate([self._fade(area) for area in range(len(places.areas))])
        coats = near[:, of_area, :] * dilution[:, None, :]
        coats = coats * fade[None, :, None]
        inside = (far * dilution)[:, None, :] * places.inner[None, :, None]
        front = self._load(coats.reshape(count * n, -1)) * np.tile(places.left, count)[:, None]
        back = self._load(inside.reshape(count * n, -1))
        changed = places.wall_mm[None] + wall_change_mm[:, None]
        wall = np.maximum(changed, _THINNEST_MM).astype(np.float32).reshape(-1)
        order = np.tile(np.arange(n, dtype=np.int32), count)
        walls = self._kernel.walls(wall, np.zeros(len(wall), dtype=bool), order)
        shifted = walls.backing + np.repeat(backing_shift, n).astype(np.int32)
        walls = replace(walls, backing=shifted.astype(np.int32))
        lab = self._lab(walls, front, back).reshape(count, n, 3)
        return places.mixed(lab)

    def _fade(self, area: int) -> Array:
        where = self.places.of(area)
        if self.places.areas[area] is Zone.CUSP:
            return self.places.fade[where]
        return np.ones(where.stop - where.start)

    def _near_load(self, counts: Counts, here: NDArray[np.intp], fade: Array) -> Array:
        """Return the loads (n * k, L) of n options at k places."""
        coats = counts[:, None, :] * fade[None, :, None] * USUAL_DILUTION
        load = self._load(coats.reshape(-1, coats.shape[-1]))
        return np.asarray(load * np.tile(self.places.left[here], len(counts))[:, None])

    def _far_load(self, inner: Counts, here: NDArray[np.intp]) -> Array:
        """Return the loads (I, k, L) opposite k places."""
        coats = inner[:, None, :] * self.places.inner[here][None, :, None] * USUAL_DILUTION
        return self._load(coats.reshape(-1, coats.shape[-1])).reshape(coats.shape)

    def _load(self, coats: Array) -> Array:
        """Return the loads (m, L) of undiluted coats (m, L), in painting order."""
        count = len(self.liquids)
        load = load_after_steps(
            coats.T, np.arange(count), np.ones(count), liquid_count=count, rule=self._rule
        )
        return np.asarray(load.T)

    def _lab(self, walls: Walls, front: Array, back: Array) -> Array:
        near = np.ascontiguousarray(front, dtype=np.float32)
        far = np.ascontiguousarray(back, dtype=np.float32)
        lab, _ = self._kernel.colour(self._kernel.reflectance(walls, near, far))
        return lab.astype(np.float64)
