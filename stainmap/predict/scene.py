"""Everything spectral about a case: what a prediction needs besides coats and walls.

The plain calculation with it is in `reference`, the fast one in `appearance`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Backing, Case, Region
from stainmap.model.finishing import Finish
from stainmap.model.material import Catalogue, Liquid
from stainmap.model.plan import Jar, StainPlan
from stainmap.model.process import StainProcess
from stainmap.optics.colorimetry import srgb_matrix, xyz_to_lab, xyz_weights
from stainmap.optics.interface import fitted_interface, textbook_interface
from stainmap.optics.spectrum import BANDS_NM, gaussian_band
from stainmap.predict.blocks import (
    absorption_per_mm,
    layer_absorption,
    layer_share,
    scattering_per_mm,
)
from stainmap.predict.finish import film_transmittance, surface_radiance
from stainmap.predict.quadrature import (
    Materials,
    Quadrature,
    fit_quadrature,
    sample_reflectances,
)
from stainmap.predict.regions import backing_within, region_of_vertices
from stainmap.predict.uptake import full_load_ratio
from stainmap.words import translate

Bands = Literal["full", "screen"]
Surfaces = Literal["fitted", "textbook"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OpticalScene:
    """Everything spectral about a case. B bands, H block layers, L liquids, S steps, G regions.

    Parameters
    ----------
    wavelengths_nm
        (B,) bands: all 31, or the 12 of the screen.
    xyz_weights
        (B, 3). XYZ of radiance factors R is ``R @ xyz_weights``.
    white_xyz
        (3,) XYZ of the perfect diffuser, Y = 1.
    srgb_matrix
        (3, 3). Linear sRGB is ``srgb_matrix @ XYZ``, adapted from the light to the screen.
    block_absorption_per_mm, block_scattering_per_mm
        (H, B) Kubelka-Munk K and S of the block's layers; S holds the programme's factor.
    reduced_scattering_per_mm
        (H, B) mu_s' with the programme's factor, for light that spreads sideways.
    liquid_absorption_per_mm
        (L, B) Kubelka-Munk K of each liquid at load 1.
    scatter_change
        (L,) share by which load 1 of each liquid changes S.
    step_liquid, step_dilution
        (S,) which liquid a step paints, and the share of liquid in its jar.
    backing_reflectance
        (G, B) internal reflectance at the back of the wall, per region.
    open_backing_reflectance
        (B,) the same where nothing but open air lies behind: for the inner surface seen from
        inside, whose far side is the outer surface.
    front_internal, hemispherical_factor, radiance_factor
        (B,) see `Interface`. Sideways light works on hemispherical reflectance; times
        ``radiance_factor / hemispherical_factor`` it is the 45/0 radiance factor.
    surface_radiance
        Radiance factor that a rough outer surface adds at 45/0, the same in all bands; 0 for a
        smooth one.
    region_index
        (V,) uint8 into `regions`, or None for the first region everywhere.
    layer_share
        (H, V) float32 blend of block layers, or None for a block of one layer.
    """

    light: str
    observer: int
    process: StainProcess
    wavelengths_nm: NDArray[np.float64]
    xyz_weights: NDArray[np.float64]
    white_xyz: NDArray[np.float64]
    srgb_matrix: NDArray[np.float64]
    block_absorption_per_mm: NDArray[np.float64]
    block_scattering_per_mm: NDArray[np.float64]
    reduced_scattering_per_mm: NDArray[np.float64]
    liquids: tuple[str, ...]
    liquid_absorption_per_mm: NDArray[np.float64]
    scatter_change: NDArray[np.float64]
    step_liquid: NDArray[np.int32]
    step_dilution: NDArray[np.float64]
    regions: tuple[Region, ...]
    backing_reflectance: NDArray[np.float64]
    open_backing_reflectance: NDArray[np.float64]
    front_internal: NDArray[np.float64]
    hemispherical_factor: NDArray[np.float64]
    radiance_factor: NDArray[np.float64]
    surface_radiance: float = 0.0
    region_index: NDArray[np.uint8] | None = None
    layer_share: NDArray[np.float32] | None = None

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for name in self.__dataclass_fields__:
            value = getattr(self, name)
            if isinstance(value, np.ndarray):
                value.flags.writeable = False

    def on_bands(self, indices: NDArray[np.intp], xyz_weights: NDArray[np.float64]) -> OpticalScene:
        """Return the scene on some of its bands only, with other weights for them."""
        return replace(
            self,
            wavelengths_nm=self.wavelengths_nm[indices],
            xyz_weights=xyz_weights,
            block_absorption_per_mm=self.block_absorption_per_mm[:, indices],
            block_scattering_per_mm=self.block_scattering_per_mm[:, indices],
            reduced_scattering_per_mm=self.reduced_scattering_per_mm[:, indices],
            liquid_absorption_per_mm=self.liquid_absorption_per_mm[:, indices],
            backing_reflectance=self.backing_reflectance[:, indices],
            open_backing_reflectance=self.open_backing_reflectance[indices],
            front_internal=self.front_internal[indices],
            hemispherical_factor=self.hemispherical_factor[indices],
            radiance_factor=self.radiance_factor[indices],
        )

    def at_vertices(self, vertices: NDArray[np.intp]) -> OpticalScene:
        """Return the scene for some of the vertices only."""
        region = None if self.region_index is None else self.region_index[vertices]
        share = None if self.layer_share is None else self.layer_share[:, vertices]
        return replace(self, region_index=region, layer_share=share)

    def lab(self, radiance_factor: ArrayLike) -> NDArray[np.float64]:
        """Return L*a*b* of (..., B) radiance factors out of the ceramic, (..., 3)."""
        xyz = np.asarray(radiance_factor, dtype=np.float64) @ self.xyz_weights
        return xyz_to_lab(xyz + self.surface_radiance * self.white_xyz, self.white_xyz)


# ------------------------------------------------------------------------------------------------
# Building a scene


def build_scene(
    materials: Catalogue,
    plan: StainPlan,
    *,
    programme: str,
    backings: Sequence[Backing],
    light: str = "D65",
    observer: int = 2,
    process: StainProcess | None = None,
    surfaces: Surfaces = "fitted",
) -> OpticalScene:
    """Return the scene of a plan on all 31 bands, for any surface.

    Parameters
    ----------
    materials
        Catalogue that holds every material named.
    plan
        Gives the block, the liquids (those of its jars, in order) and the steps.
    programme
        Name of the sintering programme.
    backings
        What lies behind each region; their order is that of `OpticalScene.regions`.
    light, observer
        Light (one of `colorimetry.LIGHTS`) and observer (2 or 10 degrees).
    process
        What the laboratory's way of staining decides; the assumed defaults if None.
    surfaces
        "fitted" to radiative transport, or the "textbook" model to compare with.

    Raises
    ------
    CatalogueError
        If a material is missing or a block has an impossible colour.
    PlanError
        If nothing lies behind the crown.
    """
    if not backings:
        raise PlanError(
            translate("scene", "The case does not say what lies behind the crown."),
            advice=translate("scene", "Choose a stump."),
        )
    interface = (
        fitted_interface(len(BANDS_NM)) if surfaces == "fitted" else textbook_interface(BANDS_NM)
    )
    block = materials.block(plan.block)
    factor = materials.programme(programme).effective_scattering_factor
    absorption = np.stack(
        [absorption_per_mm(layer_absorption(layer, materials), BANDS_NM) for layer in block.layers]
    )
    scattering = factor * np.stack(
        [scattering_per_mm(layer.scattering, BANDS_NM) for layer in block.layers]
    )
    names = tuple(dict.fromkeys(jar.liquid for jar in plan.jars))
    liquids = [materials.liquid(name) for name in names]
    liquid_absorption = [liquid_absorption_per_mm(liquid, materials) for liquid in liquids]
    jars = [plan.jar(step.jar) for step in plan.steps]
    weights = xyz_weights(light, observer)
    return OpticalScene(
        light=light,
        observer=observer,
        process=StainProcess() if process is None else process,
        wavelengths_nm=BANDS_NM,
        xyz_weights=weights,
        white_xyz=weights.sum(0),
        srgb_matrix=srgb_matrix(weights.sum(0)),
        block_absorption_per_mm=interface.absorption_factor * absorption,
        block_scattering_per_mm=interface.scattering_factor * scattering,
        reduced_scattering_per_mm=scattering,
        liquids=names,
        liquid_absorption_per_mm=interface.absorption_factor
        * full_load_ratio(block.enlargement_factor)
        * np.reshape(liquid_absorption, (len(names), len(BANDS_NM))),
        scatter_change=np.array([liquid.scatter_change for liquid in liquids], dtype=np.float64),
        step_liquid=np.array([names.index(jar.liquid) for jar in jars], dtype=np.int32),
        step_dilution=np.array([jar.dilution for jar in jars], dtype=np.float64),
        regions=tuple(backing.region for backing in backings),
        backing_reflectance=np.stack(
            [backing_within(backing, materials, interface) for backing in backings]
        ),
        open_backing_reflectance=interface.backing(np.zeros(len(BANDS_NM)), coupled=False),
        front_internal=interface.front_internal,
        hemispherical_factor=interface.hemispherical_factor,
        radiance_factor=interface.radiance_factor,
    )


def with_finish(scene: OpticalScene, finish: Finish) -> OpticalScene:
    """Return a scene of a polished crown with its outer surface left in another way."""
    left = film_transmittance(finish, scene.wavelengths_nm)
    return replace(
        scene,
        hemispherical_factor=left * scene.hemispherical_factor,
        radiance_factor=left * scene.radiance_factor,
        surface_radiance=surface_radiance(finish),
    )


def scene_from_case(
    case: Case,
    *,
    bands: Bands = "full",
    light: str = "D65",
    observer: int = 2,
    process: StainProcess | None = None,
    surfaces: Surfaces = "fitted",
) -> OpticalScene:
    """Return the scene of a case, with region and block layer per vertex.

    Parameters as for `build_scene`; the case's own process if `process` is None. `bands`
    "screen" takes 12 bands with weights refitted to this catalogue and light (see `quadrature`),
    "full" all 31. The case's finish is in the scene, what is ground away is not (see `grinding`).
    """
    scene = build_scene(
        case.materials,
        case.plan,
        programme=case.programme,
        backings=case.backings,
        light=light,
        observer=observer,
        process=case.process if process is None else process,
        surfaces=surfaces,
    )
    scene = replace(
        with_finish(scene, case.after_sintering.finish),
        region_index=region_of_vertices(case),
        layer_share=layer_share_of_vertices(case),
    )
    if bands == "screen":
        nodes = screen_quadrature(
            case.materials,
            case.plan.block,
            case.programme,
            light,
            observer,
            surfaces,
            case.after_sintering.finish,
        )
        return scene.on_bands(nodes.indices, nodes.xyz_weights)
    return scene


def liquid_absorption_per_mm(liquid: Liquid, materials: Catalogue) -> NDArray[np.float64]:
    """Return the absorption mu_a a liquid adds at load 1, (31,) 1/mm."""
    absorption = np.zeros(len(BANDS_NM))
    for name, amount in liquid.amplitudes_per_mm:
        for band in materials.ion(name).bands:
            absorption += (
                amount * band.strength * gaussian_band(BANDS_NM, band.centre_nm, band.width_nm)
            )
    return absorption


def layer_share_of_vertices(case: Case) -> NDArray[np.float32] | None:
    """Return the blend of block layers at each vertex, (H, V), or None for a uniform block.

    The lowest point of the restoration along its occlusal axis lies at the nesting height, the
    occlusal side towards the top of the blank.
    """
    block = case.materials.block(case.plan.block)
    if len(block.layers) == 1:
        return None
    along = case.surface.mesh.vertices @ np.array(case.reading.occlusal_axis)
    milled = (along - along.min()) * case.source.enlargement_factor
    return layer_share(block, milled + case.plan.nesting_height_mm)


@lru_cache(maxsize=32)
def screen_quadrature(
    materials: Catalogue,
    block: str,
    programme: str,
    light: str,
    observer: int,
    surfaces: Surfaces = "fitted",
    finish: Finish = Finish.POLISHED,
) -> Quadrature:
    """Return 12 bands and their weights for one block with every liquid and stump there is."""
    everything = StainPlan(
        block=block,
        jars=tuple(
            Jar(number=number, liquid=liquid.name)
            for number, liquid in enumerate(materials.liquids, start=1)
        ),
    )
    backings = [
        Backing(region=Region.STUMP, stump=stump.name, cement=cement.name)
        for stump in materials.stumps
        for cement in materials.cements
    ]
    scene = build_scene(
        materials,
        everything,
        programme=programme,
        backings=backings,
        light=light,
        observer=observer,
        surfaces=surfaces,
    )
    scene = with_finish(scene, finish)
    states = sample_reflectances(
        Materials(
            block_absorption_per_mm=scene.block_absorption_per_mm,
            block_scattering_per_mm=scene.block_scattering_per_mm,
            liquid_absorption_per_mm=scene.liquid_absorption_per_mm,
            scatter_change=scene.scatter_change,
            backing_reflectance=scene.backing_reflectance,
            factor=scene.radiance_factor,
            front_internal=scene.front_internal,
        )
    )
    return fit_quadrature(states, scene.xyz_weights)
