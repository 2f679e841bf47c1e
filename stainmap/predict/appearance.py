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

from dataclasses import dataclass, replace
from threading import RLock

import numpy as np
from numpy.typing import NDArray

from stainmap.predict.doubt import lightness_doubt
from stainmap.predict.kernel import LayerKernel
from stainmap.predict.levels import Patch
from stainmap.predict.scene import OpticalScene
from stainmap.predict.shape import CrownShape
from stainmap.predict.sideways import Membrane, direct_share, spread_mm
from stainmap.predict.uptake import load_after_steps
from stainmap.predict.wicking import Wicking, WickingPatch

Floats = NDArray[np.float32]
Bytes = NDArray[np.uint8]
Indices = NDArray[np.int32]

# A patch reaches this many lengths beyond what was painted, and a little more to serve the next
# dabs too. Beyond the largest one the whole surface is solved instead.
_LIGHT_LENGTHS = 2.0
_LIQUID_LENGTHS = 2.0
_PATCH_SPARE_MM = 0.3
_LARGEST_PATCH_MM = 6.0
# Smaller changes, of load and of the share of R1, wait for the end of the stroke.
_LOAD_CHANGE = 1e-4
_FAR_CHANGE = 1e-3


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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Dab:
    """The vertices (m,) that one dab recoloured, their L*a*b* (m, 3) and encoded sRGB (m, 3)."""

    vertices: Indices
    lab: Floats
    srgb: Bytes


@dataclass(slots=True, kw_only=True, eq=False)
class _State:
    """What is on the surface, (V, ...) in the compact order.

    `coarse` is the luminance from the coarse mesh level relative to that of the whole solve.
    """

    raw: Floats
    load: Floats
    R1: Floats
    phi: Floats
    coarse: Floats
    appearance: Appearance

    def copy(self) -> _State:
        """Return a copy that painting does not touch."""
        arrays = {name: getattr(self, name).copy() for name in ("raw", "load", "R1", "phi")}
        return replace(self, **arrays)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Ground:
    """A patch of one side of the crown that is being painted, kept while the brush stays on it."""

    patch: Patch
    wicking: WickingPatch | None

    def serves(self, vertices: Indices, margin_mm: float) -> bool:
        """Return whether vertices (ascending) all lie that far inside the patch."""
        inside = self.patch.vertices
        place = np.minimum(np.searchsorted(inside, vertices), len(inside) - 1)
        return np.array_equal(inside[place], vertices) and bool(
            self.patch.rim_distance_mm[place].min() >= margin_mm
        )


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
    """

    def __init__(
        self, shape: CrownShape, scene: OpticalScene, *, threads: int = 2, sideways: bool = True
    ) -> None:
        levels = shape.levels
        order = levels.order
        self._scene = scene
        self._levels = levels
        self._kernel = LayerKernel(scene, threads=threads)
        self._walls = self._kernel.walls(shape.wall_mm[order], shape.inner[order], order)
        self._wicking = Wicking(
            levels, shape.outer[order], scene.process.wicking_mm, threads=threads
        )
        scattering = _mean_scattering(scene, levels.hierarchy.fine.mass[levels.rank, 0])
        spread = spread_mm(scattering)
        self._membrane = (
            Membrane(levels, spread, direct_share(scattering), threads=threads)
            if sideways
            else None
        )
        eye = scene.xyz_weights[:, 1]
        self._spread_mm = float(eye @ spread / eye.sum())
        self._hemispherical_share = float(
            eye @ (scene.hemispherical_factor / scene.radiance_factor) / eye.sum()
        )
        self._curvature = shape.curvature_per_mm[order]
        partner = shape.partner[order]
        self._has_partner = partner >= 0
        self._partner = np.where(self._has_partner, levels.rank[partner], 0).astype(np.int32)
        self._seen_through = _SeenThrough(self._partner, self._has_partner)
        reach = self._membrane.reach_mm if self._membrane else 0.0
        self._margin_mm = _LIGHT_LENGTHS * reach + _LIQUID_LENGTHS * scene.process.wicking_mm
        self._state: _State | None = None
        self._before_stroke: _State | None = None
        self._grounds: list[_Ground | None] = [None, None]
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
            self._before_stroke = None
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
            R1 = state.R1[places]
            if self._membrane is not None:
                R1 = self._membrane.reflectance(state.phi[places], R1)
            mean = weights[chosen] @ R1.astype(np.float64) / weights[chosen].sum()
        scene = self._scene
        return np.asarray(mean * scene.radiance_factor / scene.hemispherical_factor)

    def begin_stroke(self) -> None:
        """Remember the state, so that `cancel_stroke` can bring it back."""
        with self._lock:
            self._before_stroke = self._current().copy()

    def dab(self, vertices: Indices, coats: NDArray[np.floating]) -> Dab:
        """Change the coats of some vertices and return what that recolours.

        Parameters
        ----------
        vertices
            (k,) distinct vertices.
        coats
            (S, k) what each step now has put there, in all.
        """
        self._check(coats, len(vertices))
        with self._lock:
            state = self._current()
            places = self._levels.rank[vertices]
            sorting = np.argsort(places)
            places = places[sorting]
            new = self._uptake(coats[:, sorting])
            change = new - state.raw[places]
            state.raw[places] = new
            stirred = np.abs(change).max(axis=1, initial=0.0) > 0.0
            if not stirred.any():
                nothing = self._levels.order[:0]
                lab, srgb = self._kernel.colour(state.R1[:0])
                return Dab(vertices=nothing, lab=lab, srgb=srgb)
            return self._paint(state, places[stirred], change[stirred])

    def end_stroke(self) -> Appearance:
        """Return the colour of the whole crown after the dabs, exact again."""
        with self._lock:
            state = self._current()
            self._before_stroke = None
            self._state = self._solve(state.raw, state)
            return self._state.appearance

    def cancel_stroke(self) -> Appearance:
        """Bring back the state at `begin_stroke`, without computing anything."""
        with self._lock:
            if self._before_stroke is not None:
                self._state, self._before_stroke = self._before_stroke, None
            return self._current().appearance

    # ---- the whole surface

    def _current(self) -> _State:
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

    def _solve(self, raw: Floats, warm: _State | None) -> _State:
        """Return the state of the whole surface; `warm` is a state close to it."""
        load = self._wicking.spread(raw, None if warm is None else warm.load)
        R1 = self._kernel.reflectance(self._walls, load, self._opposite(load, slice(None)))
        if self._membrane is None:
            phi, coarse, reflectance, doubt = R1[:0], R1[:0, 0], R1, None
        else:
            phi, coarse = self._spread_light(self._membrane, R1, warm)
            reflectance = self._membrane.reflectance(phi, R1)
            luminance = self._kernel.luminance(reflectance)
            doubt = lightness_doubt(
                luminance,
                self._kernel.luminance(R1),
                luminance * coarse,
                self._curvature,
                self._spread_mm,
                self._hemispherical_share,
            )
        lab, srgb = self._kernel.colour(reflectance)
        rank = self._levels.rank
        appearance = Appearance(
            lab=lab[rank],
            srgb=srgb[rank],
            doubt_lightness=None if doubt is None else doubt[rank],
        )
        return _State(raw=raw, load=load, R1=R1, phi=phi, coarse=coarse, appearance=appearance)

    def _spread_light(
        self, membrane: Membrane, R1: Floats, warm: _State | None
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

    def _paint(self, state: _State, places: Indices, change: Floats) -> Dab:
        """Change the raw load of some vertices (k,), ascending, by (k, L)."""
        ground = self._ground(0, places)
        if ground is None:
            self._state = self._solve(state.raw, None)
            shown = self._state.appearance
            everywhere = np.arange(self._levels.count, dtype=np.int32)
            return Dab(vertices=everywhere, lab=shown.lab, srgb=shown.srgb)
        inside = ground.patch.vertices
        wet = self._wet(state, ground, places, change)
        touched = _merged(wet, self._seen_through.of(wet))
        new = self._kernel.reflectance(
            self._walls.at(touched), state.load[touched], self._opposite(state.load, touched)
        )
        moved = np.abs(new / state.R1[touched] - 1).max(axis=1) > _FAR_CHANGE
        state.R1[touched] = new
        patches = [ground.patch]
        # What shows through on the other side of the wall, where the wall is thin enough.
        beyond = _without(touched[moved], inside)
        behind = self._ground(1, beyond) if len(beyond) else None
        if behind is not None:
            patches.append(behind.patch)
        return self._recolour(state, patches)

    def _wet(self, state: _State, ground: _Ground, places: Indices, change: Floats) -> Indices:
        """Let a change of the raw load wick; return the vertices whose load it changes."""
        inside = ground.patch.vertices
        liquids = np.flatnonzero(np.abs(change).max(axis=0) > 0)
        raw_change = np.zeros((len(inside), len(liquids)), dtype=np.float32)
        raw_change[np.searchsorted(inside, places)] = change[:, liquids]
        load_change = self._wicking.change(ground.wicking, raw_change)
        here = np.ix_(inside, liquids)
        state.load[here] = np.maximum(state.load[here] + load_change, 0)
        wet: Indices = inside[np.abs(load_change).max(axis=1) > _LOAD_CHANGE]
        return wet

    def _ground(self, which: int, places: Indices) -> _Ground | None:
        """Return a patch around vertices, the last one if it still serves; None if too large."""
        held = self._grounds[which]
        if held is not None and held.serves(places, self._margin_mm):
            return held
        positions = self._levels.positions[:, places]
        centre = (positions.min(axis=1) + positions.max(axis=1)) / 2
        painted = float(self._levels.distance_mm(places, centre).max())
        radius = painted + self._margin_mm + _PATCH_SPARE_MM
        if radius > _LARGEST_PATCH_MM:
            return None
        patch = self._levels.patch(centre, radius, places)
        made = _Ground(patch=patch, wicking=self._wicking.patch(patch))
        self._grounds[which] = made
        return made

    def _recolour(self, state: _State, patches: list[Patch]) -> Dab:
        """Let light spread anew on patches, which may overlap at the rim."""
        if self._membrane is not None:
            for patch in patches:
                state.phi[patch.vertices] = self._membrane.change(patch, state.R1, state.phi)
        inside = patches[0].vertices
        for patch in patches[1:]:
            inside = _merged(inside, patch.vertices)
        reflectance = R1 = state.R1[inside]
        if self._membrane is not None:
            reflectance = self._membrane.reflectance(state.phi[inside], R1)
        lab, srgb = self._kernel.colour(reflectance)
        return Dab(vertices=self._levels.order[inside], lab=lab, srgb=srgb)


class _SeenThrough:
    """For every vertex, those vertices on the other side of the wall that look at it."""

    def __init__(self, partner: Indices, has_partner: NDArray[np.bool_]) -> None:
        looking = np.flatnonzero(has_partner).astype(np.int32)
        self._looking = looking[np.argsort(partner[looking], kind="stable")]
        at = partner[self._looking]
        self._starts = np.searchsorted(at, np.arange(len(partner) + 1)).astype(np.int32)

    def of(self, vertices: Indices) -> Indices:
        """Return all vertices (m,) that look at any of these (n,)."""
        begin = self._starts[vertices]
        length = self._starts[vertices + 1] - begin
        ends = np.cumsum(length)
        step = np.arange(int(length.sum())) - np.repeat(ends - length, length)
        found: Indices = self._looking[np.repeat(begin, length) + step]
        return found


def _merged(one: Indices, other: Indices) -> Indices:
    """Return what is in either, ascending; numpy's own routine takes a millisecond."""
    both = np.concatenate([one, other])
    both.sort()
    first = np.ones(len(both), dtype=np.bool_)
    np.not_equal(both[1:], both[:-1], out=first[1:])
    merged: Indices = both[first]
    return merged


def _without(those: Indices, others: Indices) -> Indices:
    """Return which of `those` are not among `others`, both ascending."""
    place = np.minimum(np.searchsorted(others, those), len(others) - 1)
    found: Indices = those[others[place] != those]
    return found


def _mean_scattering(scene: OpticalScene, area: Floats) -> NDArray[np.float64]:
    """Return the reduced scattering (B,) for light that spreads sideways, 1/mm.

    In a block of several layers the mean over the crown: the membrane has one length per band.
    """
    layers = scene.reduced_scattering_per_mm
    share = np.ones(1) if scene.layer_share is None else scene.layer_share @ np.float64(area)
    return np.asarray(share / share.sum() @ layers)
