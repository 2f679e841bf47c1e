"""The fast layered Kubelka-Munk calculation: many vertices, all bands, single precision.

The same mathematics as in `reference`, which it is tested against. What makes it fast: bands
along the slow axis and vertices along the quick one, chunks that stay in the processor's cache,
buffers that are used again, and the form of the layer formula that needs one square root and one
exponential per layer, band and vertex.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from threading import local

import numpy as np
from numpy.typing import NDArray

from stainmap.optics.colorimetry import encode_srgb
from stainmap.predict.scene import OpticalScene

Floats = NDArray[np.float32]
Bytes = NDArray[np.uint8]

# Bands times vertices: small enough for seven buffers to stay in cache, and for BLAS not to
# start threads of its own.
_CHUNK_VALUES = 24576
_CODES = 16384
_LEAST_REFLECTANCE = np.float32(1e-4)
_LEAST_ABSORPTION = np.float32(1e-6)
_LAB_LIMIT = 6.0 / 29.0
_LEAST_RATIO = np.float32(1e-6)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Walls:
    """What a vertex is besides its load; V vertices.

    Parameters
    ----------
    near_mm, core_mm, far_mm
        (V,) thickness of the stained layer looked at, the core, and the stained layer opposite.
    backing
        (V,) int32, row of the table of backings.
    block_share
        (H, V) blend of block layers, or None for a block of one layer.
    """

    near_mm: Floats
    core_mm: Floats
    far_mm: Floats
    backing: NDArray[np.int32]
    block_share: Floats | None

    def at(self, where: slice | NDArray[np.int32]) -> Walls:
        """Return the walls of some vertices."""
        share = None if self.block_share is None else self.block_share[:, where]
        return Walls(
            near_mm=self.near_mm[where],
            core_mm=self.core_mm[where],
            far_mm=self.far_mm[where],
            backing=self.backing[where],
            block_share=share,
        )


class LayerKernel:
    """Reflectance and colour of stained walls under one scene.

    Parameters
    ----------
    scene
        What is known per band.
    threads
        Number of threads that chunks of vertices are shared out among.
    """

    def __init__(self, scene: OpticalScene, *, threads: int = 2) -> None:
        self._scene = scene
        self._block_K = _columns(np.maximum(scene.block_absorption_per_mm, _LEAST_ABSORPTION))
        self._block_S = _columns(scene.block_scattering_per_mm)
        self._liquid_K = _columns(scene.liquid_absorption_per_mm)
        self._scatter_change = scene.scatter_change.astype(np.float32)
        self._scatters = bool(scene.scatter_change.any())
        self._backings = _columns(
            np.vstack([scene.backing_reflectance, scene.open_backing_reflectance])
        )
        self._front = scene.front_internal.astype(np.float32)[:, None]
        self._factor = scene.hemispherical_factor.astype(np.float32)[:, None]
        to_radiance = scene.radiance_factor / scene.hemispherical_factor
        weights = scene.xyz_weights * to_radiance[:, None]
        self._to_ratio = (weights / scene.white_xyz).astype(np.float32)
        self._surface = np.float32(scene.surface_radiance)
        self._to_srgb = (scene.srgb_matrix * scene.white_xyz).T.astype(np.float32)
        codes = encode_srgb(np.arange(_CODES) / (_CODES - 1.0))
        self._codes = np.round(255.0 * codes).astype(np.uint8)
        self._pool = ThreadPoolExecutor(threads) if threads > 1 else None
        self._chunk = max(_CHUNK_VALUES // self.bands, 1)
        self._kept = local()

    @property
    def bands(self) -> int:
        """Number of bands, B."""
        return len(self._front)

    def share_out(self, work: Callable[[slice], None], count: int) -> None:
        """Do the work for `count` vertices, chunk by chunk, on all threads."""
        size = self._chunk
        parts = [slice(begin, begin + size) for begin in range(0, count, size)]
        list((self._pool.map if self._pool and len(parts) > 1 else map)(work, parts))

    def walls(
        self, wall_mm: Floats, inside: NDArray[np.bool_], order: NDArray[np.int32] | None = None
    ) -> Walls:
        """Return the walls of all vertices.

        In walls thinner than both stained layers together these shrink in proportion.

        Parameters
        ----------
        wall_mm
            (V,) sintered wall thickness.
        inside
            (V,) True where the inner surface is looked at: its own stain lies in front, that of
            the outer surface behind it, and behind that open air.
        order
            (V,) the vertices of the scene that the other arrays' entries belong to.
        """
        scene, process = self._scene, self._scene.process
        chosen = slice(None) if order is None else order
        shrink = np.minimum(1.0, wall_mm / (process.outer_depth_mm + process.inner_depth_mm))
        near = shrink * np.where(inside, process.inner_depth_mm, process.outer_depth_mm)
        far = shrink * np.where(inside, process.outer_depth_mm, process.inner_depth_mm)
        backing = np.zeros(len(wall_mm), dtype=np.int32)
        if scene.region_index is not None:
            backing[:] = scene.region_index[chosen]
        backing[inside] = len(scene.backing_reflectance)
        share = None if scene.layer_share is None else scene.layer_share[:, chosen]
        return Walls(
            near_mm=near.astype(np.float32),
            core_mm=np.maximum(wall_mm - near - far, 0.0).astype(np.float32),
            far_mm=far.astype(np.float32),
            backing=backing,
            block_share=None if share is None else np.ascontiguousarray(share, dtype=np.float32),
        )

    def reflectance(
        self, walls: Walls, near_load: Floats, far_load: Floats, out: Floats | None = None
    ) -> Floats:
        """Return R1, (V, B): hemispherical, first surface left out, light not yet spread.

        Parameters
        ----------
        near_load, far_load
            (V, L) load of each liquid on the surface looked at and opposite.
        out
            (V, B) to be written into, if at hand.
        """
        if out is None:
            out = np.empty((len(near_load), self.bands), dtype=np.float32)

        def work(part: slice) -> None:
            self._reflectance(walls.at(part), near_load[part], far_load[part], out[part])

        self.share_out(work, len(out))
        return out

    def colour(
        self, reflectance: Floats, out: tuple[Floats, Bytes] | None = None
    ) -> tuple[Floats, Bytes]:
        """Return L*a*b* (V, 3) at 45/0 and encoded sRGB (V, 3) of hemispherical reflectances.

        sRGB is clipped to the screen's gamut; the light's white is the white of the screen. Both
        are written into `out`, if arrays are at hand.
        """
        if out is None:
            count = len(reflectance)
            out = np.empty((count, 3), dtype=np.float32), np.empty((count, 3), dtype=np.uint8)
        lab, srgb = out

        def work(part: slice) -> None:
            here, codes = reflectance[part], srgb[part]
            ratio, linear, code = self._colour_buffers(len(here))
            np.matmul(here, self._to_ratio, out=ratio)
            ratio += self._surface
            np.matmul(ratio, self._to_srgb, out=linear)
            np.clip(linear, 0, 1, out=linear)
            linear *= np.float32(_CODES - 1)
            linear += np.float32(0.5)
            np.copyto(code, linear, casting="unsafe")
            np.take(self._codes, code, out=codes, mode="clip")
            _lab_of_ratio(ratio, linear, lab[part])

        self.share_out(work, len(reflectance))
        return lab, srgb

    def luminance(self, reflectance: Floats) -> Floats:
        """Return Y (V,) at 45/0, 1 for the perfect diffuser, of hemispherical reflectances."""
        luminance: Floats = reflectance @ self._to_ratio[:, 1]
        return luminance

    def _reflectance(self, walls: Walls, near: Floats, far: Floats, out: Floats) -> None:
        R, K, S, *scratch = self._buffers(len(near))
        block_K, block_S = self._block(walls.block_share)
        np.take(self._backings, walls.backing, axis=1, out=R, mode="clip")
        core_mm = walls.core_mm
        # A layer without stain is block like the core, and one layer with it.
        near_stained, far_stained = bool(near.any()), bool(far.any())
        if far_stained:
            self._stain(block_K, block_S, far, K, S)
            _lay_over(R, K, S if self._scatters else block_S, walls.far_mm, scratch)
        else:
            core_mm = core_mm + walls.far_mm
        if not near_stained:
            core_mm = core_mm + walls.near_mm
        _lay_over(R, block_K, block_S, core_mm, scratch)
        if near_stained:
            self._stain(block_K, block_S, near, K, S)
            _lay_over(R, K, S if self._scatters else block_S, walls.near_mm, scratch)
        np.multiply(self._front, R, out=K)
        np.subtract(1, K, out=K)
        R *= self._factor
        R /= K
        np.maximum(R.T, _LEAST_REFLECTANCE, out=out)

    def _block(self, share: Floats | None) -> tuple[Floats, Floats]:
        """Return K and S of the unstained block, (B, 1) or (B, n)."""
        if share is None:
            return self._block_K, self._block_S
        return self._block_K @ share, self._block_S @ share

    def _stain(self, block_K: Floats, block_S: Floats, load: Floats, K: Floats, S: Floats) -> None:
        """Write K and, if any liquid scatters, S of a stained layer into two buffers."""
        np.matmul(self._liquid_K, load.T, out=K)
        K += block_K
        if self._scatters:
            factor = load @ self._scatter_change
            factor += 1
            np.multiply(block_S, factor, out=S)

    def _buffers(self, count: int) -> list[Floats]:
        """Return seven buffers (B, count), the beginnings of those kept for a full chunk."""
        kept: list[Floats] | None = getattr(self._kept, "layers", None)
        if kept is None:
            kept = [np.empty(self.bands * self._chunk, dtype=np.float32) for _ in range(7)]
            self._kept.layers = kept
        return [each[: self.bands * count].reshape(self.bands, count) for each in kept]

    def _colour_buffers(self, count: int) -> tuple[Floats, Floats, NDArray[np.intp]]:
        """Return XYZ ratios, linear sRGB and its codes, (count, 3), kept like the others."""
        kept: tuple[Floats, Floats, NDArray[np.intp]] | None = getattr(self._kept, "colour", None)
        if kept is None:
            size = (self._chunk, 3)
            kept = (
                np.empty(size, dtype=np.float32),
                np.empty(size, dtype=np.float32),
                np.empty(size, dtype=np.intp),
            )
            self._kept.colour = kept
        ratio, linear, code = kept
        return ratio[:count], linear[:count], code[:count]


def _columns(per_row: NDArray[np.float64]) -> Floats:
    """Return the transpose, single precision."""
    return np.ascontiguousarray(per_row.T, dtype=np.float32)


def _lay_over(R: Floats, K: Floats, S: Floats, X: Floats, scratch: list[Floats]) -> None:
    """Put a layer on a backing of reflectance R, in place; all (B, n), K and S perhaps (B, 1).

    [Kubelka1948] written as what the layer changes, with e = exp(-2 m X) and m^2 = K (K + 2 S):
    ``(1 - e) (S (1 - R)^2 - 2 K R) / (m (1 + e) + (1 - e) (K + S (1 - R)))``. Nothing overflows,
    nothing is the small difference of two large numbers, and the one transcendental is an
    exponential, which takes half as long as a hyperbolic tangent.
    """
    change, rest, below, v = scratch
    if K.shape[1] == 1:
        m = np.sqrt(K * (K + 2 * S))
    else:
        m = np.add(K, S + S, out=change)
        m *= K
        np.sqrt(m, out=m)
    np.multiply(m, -2 * X, out=rest)
    np.exp(rest, out=rest)
    np.add(1, rest, out=below)
    np.subtract(1, rest, out=rest)
    below *= m
    np.subtract(1, R, out=change)
    np.multiply(S, change, out=v)
    change *= v
    v += K
    v *= rest
    below += v
    np.multiply(K, R, out=v)
    v += v
    change -= v
    change *= rest
    change /= below
    R += change


def _lab_of_ratio(ratio: Floats, f: Floats, lab: Floats) -> None:
    """Write CIE 1976 L*a*b* (n, 3) of XYZ relative to white (n, 3) [CIE2018]; f is scratch."""
    # A third of the logarithm: twice as quick as the cube root. What is dark is replaced below.
    np.maximum(ratio, _LEAST_RATIO, out=f)
    np.log(f, out=f)
    f *= np.float32(1 / 3)
    np.exp(f, out=f)
    if ratio.min(initial=1.0) <= _LAB_LIMIT**3:
        dark = ratio <= _LAB_LIMIT**3
        f[dark] = ratio[dark] / np.float32(3 * _LAB_LIMIT**2) + np.float32(4 / 29)
    x, y, z = f.T
    lightness, red, yellow = lab.T
    np.multiply(y, 116, out=lightness)
    lightness -= 16
    np.subtract(x, y, out=red)
    red *= 500
    np.subtract(y, z, out=yellow)
    yellow *= 200
