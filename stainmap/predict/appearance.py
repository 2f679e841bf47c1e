"""What a plan will look like: from coats to the colour of every vertex, whole or under the brush.

Coats in painting order become load (`uptake`), the liquid wicks (`wicking`), the stained layers
reflect what the wall and its backing let them (`kernel`), light spreads sideways (`sideways`),
and the result is seen under the scene's light.

On the outer surface the stain put inside the crown is the far layer, with its backing behind.
Where the inner surface is looked at the two swap places: its own stain is in front, the outer
one behind it, and behind that open air. That colour is for judging what was brushed inside; it
is not what anybody sees in the mouth.
"""

from __future__ import annotations

from dataclasses import dataclass
from threading import RLock

import numpy as np
from numpy.typing import NDArray

from stainmap.predict.curvature_correction import corrected_reflectance, curving_length_mm
from stainmap.predict.doubt import lightness_doubt
from stainmap.predict.ground_work import GroundWork, lay_ground_work, mean_scattering
from stainmap.predict.grounds import BEYOND, HERE, Grounds
from stainmap.predict.kernel import LayerKernel
from stainmap.predict.painted_state import (
    Beyond,
    Dab,
    PaintedPatch,
    PaintedState,
    WayBack,
    merged,
    without,
)
from stainmap.predict.scene import OpticalScene
from stainmap.predict.shape import CrownShape
from stainmap.predict.sideways import Membrane
from stainmap.predict.uptake import load_after_steps

Floats = NDArray[np.float32]
Bytes = NDArray[np.uint8]
Indices = NDArray[np.int32]

# A dab on a wall thinner than this recolours its other side, by more than the changes below.
_SEEN_THROUGH_MM = 1.5
# Smaller changes, of load and of the share of R1, wait for the end of the stroke.
_LOAD_CHANGE = 1e-4
_FAR_CHANGE = 3e-3


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Appearance:
    """Predicted colour of every vertex, in the mesh's order.

    Parameters
    ----------
    lab
        (V, 3) float32. CIE L*a*b* at 45/0 without gloss, under the scene's light.
    srgb
        (V, 3) uint8. Encoded sRGB, the light's white being the screen's.
    doubt_lightness
        (V,) float32, standard deviation of L* from what the calculation leaves out (see
        `doubt`); None where light was not spread.
    """

    lab: Floats
    srgb: Bytes
    doubt_lightness: Floats | None

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for array in (self.lab, self.srgb, self.doubt_lightness):
            if array is not None:
                array.flags.writeable = False


class AppearanceEngine:
    """Predicts one crown under one scene, and keeps up with a brush.

    After `whole` the engine holds the state of the surface; `dab` changes it where the brush has
    been, close to exact (0.25 dE00), and `end_stroke` makes it exact again. May be used from
    several threads, one at a time.

    Parameters
    ----------
    shape, scene
        What is known of the crown and of everything spectral. The scene's bands decide between
        live work (12) and export (31).
    threads
        Number of threads.
    sideways
        False leaves all light where it entered, to compare with.
    curvature_correction
        True makes convex places lighter and hollow ones darker (see `curvature_correction`);
        off, every place is as good as flat, and its doubt says so.
    reuse
        An engine for the same shape under another scene, say with one liquid more. What depends
        on the shape, the wicking length or the scattering alone is then shared with it, and
        takes neither time nor memory again. Its state is its own.
    """

    def __init__(
        self,
        shape: CrownShape,
        scene: OpticalScene,
        *,
        threads: int = 2,
        sideways: bool = True,
        curvature_correction: bool = False,
        reuse: AppearanceEngine | None = None,
    ) -> None:
        levels = shape.levels
        order = levels.order
        self._scene = scene
        self._levels = levels
        self._kernel = LayerKernel(scene, threads=threads)
        self._walls = self._kernel.walls(shape.wall_mm[order], shape.inner[order], order)
        known = None if reuse is None or reuse.ground_work.shape is not shape else reuse.ground_work
        scattering = mean_scattering(scene, levels.hierarchy.fine.mass[levels.rank, 0])
        self._curving = curving_length_mm(scattering)
        self.ground_work: GroundWork = lay_ground_work(shape, scene, scattering, threads, known)
        self._wicking = self.ground_work.wicking
        self._membrane = self.ground_work.membrane if sideways else None
        self._curvature_correction = curvature_correction
        eye = scene.xyz_weights[:, 1]
        self._curving_seen = float(eye @ self._curving / eye.sum())
        self._hemispherical_share = float(
            eye @ (scene.hemispherical_factor / scene.radiance_factor) / eye.sum()
        )
        self._curvature = self.ground_work.curvature_per_mm
        self._partner, self._has_partner = self.ground_work.partner, self.ground_work.has_partner
        self._seen_through = self.ground_work.seen_through
        self._see_through = shape.wall_mm[order] < _SEEN_THROUGH_MM
        self._state: PaintedState | None = None
        self._way_back: WayBack | None = None
        wicking_mm = scene.process.wicking_mm
        self._grounds = Grounds(levels, self._wicking, self._membrane, wicking_mm)
        self._beyond = Beyond()
        self._lock = RLock()

    def whole(self, coats: NDArray[np.floating]) -> Appearance:
        """Return the colour of the whole crown, computed afresh.

        Parameters
        ----------
        coats
            (S, V) coats of each step, in painting order.
        """
        self._check(coats, self._levels.count)
        with self._lock:
            raw = np.empty((self._levels.count, len(self._scene.liquids)), dtype=np.float32)

            def work(part: slice) -> None:
                raw[part] = self._uptake(coats[:, self._levels.order[part]])

            self._kernel.share_out(work, len(raw))
            self._way_back = None
            self._beyond.forget()
            self._state = self._solve(raw, None)
            return self._state.appearance

    @property
    def scene(self) -> OpticalScene:
        """Everything spectral that is predicted with."""
        return self._scene

    def mean_radiance_factor(self, weights: NDArray[np.float64]) -> NDArray[np.float64]:
        """Return the mean radiance factor at 45/0, sideways light included, on the scene's bands.

        Parameters
        ----------
        weights
            (V,) what each vertex counts in the mean; not negative, not all zero.

        Returns
        -------
        (B,) out of the ceramic, without what its outer surface adds.
        """
        chosen = np.flatnonzero(weights)
        with self._lock:
            state = self._current()
            places = self._levels.rank[chosen]
            seen = self._spread_reflectance(state, places)
            mean = weights[chosen] @ seen.astype(np.float64) / weights[chosen].sum()
        scene = self._scene
        return np.asarray(mean * scene.radiance_factor / scene.hemispherical_factor)

    def begin_stroke(self) -> None:
        """Remember the state, so that `cancel_stroke` can bring it back."""
        with self._lock:
            self._way_back = WayBack(self._current())

    def prepare_dab(self, vertex: int, radius_mm: float, *, through: bool = True) -> bool:
        """Cut out the patch that a dab around a vertex will need; return whether it is there.

        For the pointer on its way to the first dab: where a patch serves already, and while the
        engine is at work elsewhere, this returns at once.

        Parameters
        ----------
        vertex
            The vertex under the pointer.
        radius_mm
            Radius of the brush.
        through
            False if the dab will leave the other side of the wall to `catch_up`.
        """
        if not self._lock.acquire(blocking=False):
            return False
        try:
            here = int(self._levels.rank[vertex])
            ready = self._grounds.prepare(HERE, here, radius_mm)
            # Where light comes through the wall, the dab recolours the other side as well.
            if through and ready and self._has_partner[here] and self._see_through[here]:
                self._grounds.prepare(BEYOND, int(self._partner[here]), radius_mm)
            return ready
        finally:
            self._lock.release()

    def dab(self, vertices: Indices, coats: NDArray[np.floating], *, through: bool = True) -> Dab:
        """Change the coats of some vertices and return what that recolours.

        Parameters
        ----------
        vertices
            (k,) distinct vertices.
        coats
            (S, k) what each step now has put there, in all.
        through
            False leaves what shows through on the other side of the wall to `catch_up`: it costs
            as much again, and is behind what the brush is looked at on.
        """
        self._check(coats, len(vertices))
        with self._lock:
            state = self._current()
            places = self._levels.rank[vertices]
            sorting = np.argsort(places)
            places = places[sorting]
            new = self._uptake(coats[:, sorting])
            change = new - state.raw[places]
            self._keep(state, places)
            state.raw[places] = new
            stirred = np.abs(change).max(axis=1, initial=0.0) > 0.0
            if not stirred.any():
                nothing = self._levels.order[:0]
                lab, srgb = self._kernel.colour(state.R1[:0])
                return Dab(vertices=nothing, lab=lab, srgb=srgb)
            return self._paint(state, places[stirred], change[stirred], through)

    def cut_for(self, vertices: Indices) -> bool:
        """Cut the patch that a dab on vertices (k,) needs; False if it is there, or none serves."""
        with self._lock:
            places = np.sort(self._levels.rank[vertices])
            if not len(places) or self._grounds.serves(HERE, places):
                return False
            return self._grounds.around(HERE, places) is not None

    def catch_up(self) -> Dab | None:
        """Recolour the other side of the wall after dabs that left it; None once that is done.

        No more at a time than one patch holds.
        """
        with self._lock:
            state = self._current()
            behind = self._beyond.ready or self._behind(state)
            self._beyond.ready = None
            return None if behind is None else self._recolour(state, [behind])

    def prepare_catch_up(self) -> bool:
        """Cut the patch that `catch_up` needs next; False if it is there, or none is needed."""
        with self._lock:
            if (before := self._beyond.ready) is None:
                self._beyond.ready = self._behind(self._current())
            return before is None and self._beyond.ready is not None

    def end_stroke(self) -> Appearance:
        """Return the colour of the whole crown after the dabs, exact again."""
        with self._lock:
            state = self._current()
            self._way_back = None
            self._beyond.forget()
            self._state = self._solve(state.raw, state)
            return self._state.appearance

    def cancel_stroke(self) -> Appearance:
        """Bring back the state at `begin_stroke`, without computing anything."""
        with self._lock:
            if self._way_back is not None:
                self._state, self._way_back = self._way_back.back(), None
            self._beyond.forget()
            return self._current().appearance

    # ---- the whole surface

    def _current(self) -> PaintedState:
        """Return the state; that of the unstained crown before anything was asked for."""
        if self._state is None:
            shape = (self._levels.count, len(self._scene.liquids))
            self._state = self._solve(np.zeros(shape, dtype=np.float32), None)
        return self._state

    def _check(self, coats: NDArray[np.floating], count: int) -> None:
        wanted = (len(self._scene.step_liquid), count)
        if coats.shape != wanted:
            raise ValueError(f"coats must have shape {wanted}, not {coats.shape}")

    def _uptake(self, coats: NDArray[np.floating]) -> Floats:
        """Return the raw load (n, L) of coats (S, n)."""
        scene = self._scene
        load = load_after_steps(
            coats,
            scene.step_liquid,
            scene.step_dilution,
            liquid_count=len(scene.liquids),
            rule=scene.process.uptake,
        )
        return np.ascontiguousarray(load.T, dtype=np.float32)

    def _opposite(self, load: Floats, chosen: Indices | slice) -> Floats:
        """Return the load (n, L) opposite some vertices."""
        far = load[self._partner[chosen]]
        far[~self._has_partner[chosen]] = 0
        return far

    def _solve(self, raw: Floats, warm: PaintedState | None) -> PaintedState:
        """Return the state of the whole surface; `warm` is a state close to it."""
        load = self._wicking.spread(raw, None if warm is None else warm.load)
        R1 = self._kernel.reflectance(self._walls, load, self._opposite(load, slice(None)))
        if self._membrane is None:
            phi, coarse, reflectance, doubt = R1[:0], R1[:0, 0], R1, None
        else:
            phi, coarse = self._spread_light(self._membrane, R1, warm)
            flat = self._membrane.reflectance(phi, R1)
            luminance = self._kernel.luminance(flat)
            doubt = lightness_doubt(
                luminance,
                self._kernel.luminance(R1),
                luminance * coarse,
                self._curvature,
                self._curving_seen,
                self._hemispherical_share,
                corrected=self._curvature_correction,
            )
            reflectance = self._curved(flat, slice(None))
        lab, srgb = self._kernel.colour(reflectance)
        rank = self._levels.rank
        appearance = Appearance(
            lab=lab[rank],
            srgb=srgb[rank],
            doubt_lightness=None if doubt is None else doubt[rank],
        )
        return PaintedState(
            raw=raw, load=load, R1=R1, phi=phi, coarse=coarse, appearance=appearance
        )

    def _spread_light(
        self, membrane: Membrane, R1: Floats, warm: PaintedState | None
    ) -> tuple[Floats, Floats]:
        """Return phi (V, B), and the coarse level's luminance relative to its own (V,)."""
        if warm is not None:
            return membrane.resolve(R1, warm.phi), warm.coarse
        solution = membrane.solve(R1)
        reflectance = membrane.reflectance(solution.phi, R1)
        missed = membrane.reflectance_slope(reflectance, R1)
        missed *= solution.coarse_gap
        luminance = self._kernel.luminance
        return solution.phi, 1 + luminance(missed) / luminance(reflectance)

    # ---- under the brush

    def _paint(self, state: PaintedState, places: Indices, change: Floats, through: bool) -> Dab:
        """Change the raw load of some vertices (k,), ascending, by (k, L)."""
        ground = self._grounds.around(HERE, places)
        if ground is None:
            # The state before stays as it is, and so does its way back.
            self._state = self._solve(state.raw.copy(), None)
            self._beyond.forget()
            shown = self._state.appearance
            everywhere = np.arange(self._levels.count, dtype=np.int32)
            return Dab(vertices=everywhere, lab=shown.lab, srgb=shown.srgb)
        inside = ground.patch.vertices
        self._keep(state, inside)
        wet = self._wet(state, ground, places, change)
        touched = merged(wet, self._seen_through.of(wet))
        new = self._kernel.reflectance(
            self._walls.at(touched), state.load[touched], self._opposite(state.load, touched)
        )
        moved = np.abs(new / state.R1[touched] - 1).max(axis=1) > _FAR_CHANGE
        self._keep(state, touched)
        state.R1[touched] = new
        # What shows through on the other side of the wall, where the wall is thin enough.
        self._beyond.add(without(touched[moved], inside))
        behind = self._behind(state) if through else None
        return self._recolour(state, [ground, *([] if behind is None else [behind])])

    def _behind(self, state: PaintedState) -> PaintedPatch | None:
        """Return a patch around the newest of what has shown through; None if nothing has."""
        places = self._beyond.take(self._levels.positions)
        ground = self._grounds.around(BEYOND, places) if len(places) else None
        if ground is None:
            return None
        self._keep(state, ground.patch.vertices)
        return ground

    def _keep(self, state: PaintedState, places: Indices) -> None:
        """Keep what a stroke is going to overwrite."""
        if self._way_back is not None:
            self._way_back.keep(state, places)

    def _wet(
        self, state: PaintedState, ground: PaintedPatch, places: Indices, change: Floats
    ) -> Indices:
        """Let a change of the raw load wick; return the vertices whose load it changes."""
        inside = ground.wicking.vertices
        liquids = np.flatnonzero(np.abs(change).max(axis=0) > 0)
        raw_change = np.zeros((len(inside), len(liquids)), dtype=np.float32)
        raw_change[np.searchsorted(inside, places)] = change[:, liquids]
        load_change = self._wicking.change(ground.wicking, raw_change)
        here = np.ix_(inside, liquids)
        state.load[here] = np.maximum(state.load[here] + load_change, 0)
        wet: Indices = inside[np.abs(load_change).max(axis=1) > _LOAD_CHANGE]
        return wet

    def _recolour(self, state: PaintedState, grounds: list[PaintedPatch]) -> Dab:
        """Let light spread anew on patches, which may overlap at the rim."""
        for ground in grounds:
            if self._membrane is not None and ground.light is not None:
                phi = self._membrane.change(ground.light, state.R1, state.phi)
                state.phi[ground.patch.vertices] = phi
        inside = grounds[0].patch.vertices
        for ground in grounds[1:]:
            inside = merged(inside, ground.patch.vertices)
        lab, srgb = self._kernel.colour(self._spread_reflectance(state, inside))
        return Dab(vertices=self._levels.order[inside], lab=lab, srgb=srgb)

    def _spread_reflectance(self, state: PaintedState, places: Indices) -> Floats:
        """Return the reflectance (n, B) that comes out at some vertices."""
        R1 = state.R1[places]
        if self._membrane is None:
            return R1
        return self._curved(self._membrane.reflectance(state.phi[places], R1), places)

    def _curved(self, reflectance: Floats, places: Indices | slice) -> Floats:
        """Return reflectances (n, B) corrected for curvature, if that is switched on."""
        if not self._curvature_correction:
            return reflectance
        curved = corrected_reflectance(reflectance, self._curvature[places], self._curving)
        return curved.astype(np.float32, copy=False)
