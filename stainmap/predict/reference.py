"""The plain prediction: float64, all bands, one array operation per formula.

The fast engine of `appearance` is tested against these functions; exports and *check this point*
may use them. Wicking acts on the load, sideways light on `reflectance_of_load`; neither is here.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.optics.interface import reflectance_outside
from stainmap.optics.stack import stack_reflectance
from stainmap.predict.scene import OpticalScene
from stainmap.predict.uptake import load_after_steps


def reference_lab(
    scene: OpticalScene,
    coats: ArrayLike,
    wall_mm: ArrayLike,
    partner_coats: ArrayLike | None = None,
    *,
    inside: ArrayLike | None = None,
) -> NDArray[np.float64]:
    """Return the predicted L*a*b* of every vertex by itself, (V, 3), 45/0 without gloss.

    Parameters
    ----------
    scene
        What is known per band.
    coats
        (S, V) coats of each step on the surface looked at.
    wall_mm
        (V,) sintered wall thickness.
    partner_coats
        (S, V) coats on the other surface of the wall, opposite each vertex; None for none.
    inside
        (V,) True where the inner surface is looked at, the outer one lying behind in open air;
        None for nowhere.
    """
    load = load_of_coats(scene, coats)
    partner = None if partner_coats is None else load_of_coats(scene, partner_coats)
    reflectance = reflectance_of_load(scene, load, wall_mm, partner, inside=inside)
    return lab_of_reflectance(scene, reflectance)


def load_of_coats(scene: OpticalScene, coats: ArrayLike) -> NDArray[np.float64]:
    """Return the load of each of the scene's liquids, (L, V), of (S, V) coats."""
    return load_after_steps(
        coats,
        scene.step_liquid,
        scene.step_dilution,
        liquid_count=len(scene.liquids),
        rule=scene.process.uptake,
    )


def reflectance_of_load(
    scene: OpticalScene,
    load: ArrayLike,
    wall_mm: ArrayLike,
    partner_load: ArrayLike | None = None,
    *,
    inside: ArrayLike | None = None,
) -> NDArray[np.float64]:
    """Return the hemispherical reflectance R1 before light spreads sideways, (V, B).

    Near stained layer, block, far stained layer, backing: Kubelka-Munk layers on one another,
    then the front surface. Diffuse light, without what the front surface reflects at once.

    Parameters
    ----------
    scene, wall_mm, inside
        As for `reference_lab`.
    load, partner_load
        (L, V) load of each liquid on the surface looked at, and opposite.
    """
    layers = layers_of_load(scene, load, wall_mm, partner_load, inside=inside)
    within = _within(np.asarray(wall_mm), inside)
    internal = stack_reflectance(layers, _backing(scene, within))
    return reflectance_outside(
        internal, factor=scene.hemispherical_factor, front_internal=scene.front_internal
    )


def layers_of_load(
    scene: OpticalScene,
    load: ArrayLike,
    wall_mm: ArrayLike,
    partner_load: ArrayLike | None = None,
    *,
    inside: ArrayLike | None = None,
) -> list[tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]]:
    """Return the layers of the wall from the side looked at: near stained, block, far stained.

    Parameters as for `reflectance_of_load`.

    Returns
    -------
    Kubelka-Munk K and S (V, B) in 1/mm and thickness (V, 1) in mm of each.
    """
    wall = np.asarray(wall_mm, dtype=np.float64)
    near_load = np.asarray(load, dtype=np.float64)
    far_load = np.zeros_like(near_load) if partner_load is None else np.asarray(partner_load)
    within = _within(wall, inside)

    process = scene.process
    shrink = np.minimum(1.0, wall / (process.outer_depth_mm + process.inner_depth_mm))
    near = shrink * np.where(within, process.inner_depth_mm, process.outer_depth_mm)
    far = shrink * np.where(within, process.outer_depth_mm, process.inner_depth_mm)
    core = np.maximum(wall - near - far, 0.0)

    K, S = _block(scene, len(wall))
    near_K, near_S = _stained(scene, K, S, near_load)
    far_K, far_S = _stained(scene, K, S, far_load)
    return [
        (near_K, near_S, near[:, None]),
        (K, S, core[:, None]),
        (far_K, far_S, far[:, None]),
    ]


def _within(wall: NDArray[np.float64], inside: ArrayLike | None) -> NDArray[np.bool_]:
    return np.zeros(wall.shape, dtype=bool) if inside is None else np.asarray(inside, dtype=bool)


def lab_of_reflectance(scene: OpticalScene, reflectance: ArrayLike) -> NDArray[np.float64]:
    """Return L*a*b* at 45/0 of (..., B) hemispherical reflectances, (..., 3)."""
    R = np.asarray(reflectance, dtype=np.float64)
    return scene.lab(R * (scene.radiance_factor / scene.hemispherical_factor))


def _block(scene: OpticalScene, count: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    K, S = scene.block_absorption_per_mm, scene.block_scattering_per_mm
    if scene.layer_share is None:
        shape = (count, K.shape[1])
        return np.broadcast_to(K[0], shape), np.broadcast_to(S[0], shape)
    share = np.asarray(scene.layer_share, dtype=np.float64).T
    return share @ K, share @ S


def _stained(
    scene: OpticalScene,
    K: NDArray[np.float64],
    S: NDArray[np.float64],
    load: NDArray[np.float64],
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    stained_K = K + load.T @ scene.liquid_absorption_per_mm
    stained_S = S * (1.0 + load.T @ scene.scatter_change)[:, None]
    return stained_K, stained_S


def _backing(scene: OpticalScene, inside: NDArray[np.bool_]) -> NDArray[np.float64]:
    region = np.zeros(len(inside), np.uint8) if scene.region_index is None else scene.region_index
    return np.where(
        inside[:, None], scene.open_backing_reflectance, scene.backing_reflectance[region]
    )
