"""How good the fast answer is at one point, against radiative transport without any fit.

Four calculations of the same wall: with the bands of the screen, with all bands, with textbook
surfaces, and by adding and doubling. All leave out what comes from the neighbourhood: liquid that
wicked there and light that spread sideways.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Backing, Case
from stainmap.model.material import Catalogue
from stainmap.optics.adding_doubling import LambertianBacking, TransportLayer, layered_transport
from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import (
    CEMENT_INDEX,
    CERAMIC_INDEX,
    fitted_interface,
    zirconia_index,
)
from stainmap.optics.spectrum import BANDS_NM
from stainmap.predict.blocks import stump_reflectance
from stainmap.predict.reference import layers_of_load, load_of_coats, reference_lab
from stainmap.predict.scene import OpticalScene, scene_from_case
from stainmap.predict.shape import CrownShape
from stainmap.predict.uncertainty import PERCEPTIBLE_DE00
from stainmap.words import translate

Lab = tuple[float, float, float]

GOOD_DE00: Final = 0.5
"""Up to here the fast answer counts as good: well below what most people see; assumed."""

_AIR_INDEX: Final = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PointCheck:
    """One point, calculated in several ways; L*a*b* at 45/0 without gloss.

    Parameters
    ----------
    vertex, wall_mm, region
        Which point, its sintered wall, and what lies behind it ("open air" where the inner surface
        is looked at).
    light, observer_degrees
        What the colours are for.
    fast
        The bands of the screen and fitted surfaces.
    plain
        All bands and fitted surfaces, as exported.
    textbook
        All bands, Lambertian surfaces with dispersion, K = 2 mu_a, S = 3/4 mu_s'.
    transport
        Adding and doubling, all bands, refractive index as in the fast answer: the reference.
    transport_with_dispersion
        The same with the published dispersion of the index. Most of what it adds is the same in
        every wall, and would be taken up by the block if its colour were solved that way.
    fast_de00, plain_de00, textbook_de00
        CIEDE2000 of these to `transport`.
    verdict
        One sentence for a technician.
    """

    vertex: int
    wall_mm: float
    region: str
    light: str
    observer_degrees: int
    fast: Lab
    plain: Lab
    textbook: Lab
    transport: Lab
    transport_with_dispersion: Lab
    fast_de00: float
    plain_de00: float
    textbook_de00: float
    verdict: str


def check_point(
    case: Case,
    shape: CrownShape,
    coats: ArrayLike,
    vertex: int,
    *,
    light: str = "D65",
    observer: int = 2,
) -> PointCheck:
    """Return how good the fast answer is at a vertex; takes about 0.2 s.

    Parameters
    ----------
    case
        Planned case.
    shape
        Its shape, with what was ground off already taken away.
    coats
        (S, V) coats of every step at every vertex, as the prediction got them.
    vertex
        Index into the surface.
    light, observer
        One of `colorimetry.LIGHTS`; 2 or 10 degrees.

    Raises
    ------
    PlanError
        If there is no such vertex, or coats and surface do not fit together.
    """
    count = len(shape.wall_mm)
    if not 0 <= vertex < count:
        raise PlanError(
            translate("point check", "There is no vertex {vertex}.").format(vertex=vertex),
            advice=translate("point check", "They run from 0 to {count}.").format(count=count - 1),
        )
    painted = np.asarray(coats, dtype=np.float64)
    if painted.shape != (len(case.plan.steps), count):
        raise PlanError(
            translate(
                "point check",
                "Coats of shape {shape} do not fit {count} steps on {count_2} vertices.",
            ).format(shape=painted.shape, count=len(case.plan.steps), count_2=count)
        )
    here = np.array([vertex])
    partner = int(shape.partner[vertex])
    far = painted[:, [partner]] if partner >= 0 else np.zeros_like(painted[:, here])
    point = _Point(
        wall_mm=np.asarray(shape.wall_mm[here], dtype=np.float64),
        inside=np.asarray(shape.inner[here]),
        coats=painted[:, here],
        far_coats=far,
    )
    full = scene_from_case(case, light=light, observer=observer).at_vertices(here)
    screen = scene_from_case(case, bands="screen", light=light, observer=observer)
    book = scene_from_case(case, light=light, observer=observer, surfaces="textbook")
    region = 0 if full.region_index is None else int(full.region_index[0])
    backing = None if point.inside[0] else case.backings[region]
    behind = transport_backing(backing, case.materials)

    answers = {
        "fast": point.lab(screen.at_vertices(here)),
        "plain": point.lab(full),
        "textbook": point.lab(book.at_vertices(here)),
        "transport": point.transport_lab(full, behind, CERAMIC_INDEX),
        "transport_with_dispersion": point.transport_lab(full, behind, zirconia_index(BANDS_NM)),
    }
    off = {
        name: float(delta_e_00(answers[name], answers["transport"]))
        for name in ("fast", "plain", "textbook")
    }
    return PointCheck(
        vertex=vertex,
        wall_mm=float(point.wall_mm[0]),
        region="open air" if backing is None else str(backing.region),
        light=light,
        observer_degrees=observer,
        fast_de00=off["fast"],
        plain_de00=off["plain"],
        textbook_de00=off["textbook"],
        verdict=_verdict(off["fast"]),
        **{name: _triple(lab) for name, lab in answers.items()},
    )


def transport_backing(
    backing: Backing | None, materials: Catalogue
) -> tuple[tuple[TransportLayer, ...], LambertianBacking]:
    """Return what lies behind the wall as transport sees it: layers, and what they lie on.

    Cement that couples is a layer of index 1.52 on a Lambertian stump in the same medium; its
    Kubelka-Munk constants become mu_a = K / 2 and mu_s' = 4/3 S [Gate1974]. Without coupling the
    stump is a Lambertian reflector across an air gap. None is open air.
    """
    if backing is None:
        return (), LambertianBacking(reflectance=0.0, refractive_index=_AIR_INDEX)
    cement = materials.cement(backing.cement)
    stump = stump_reflectance(materials.stump(backing.stump), BANDS_NM)
    index = CEMENT_INDEX if cement.coupled else _AIR_INDEX
    layer = TransportLayer(
        absorption_per_mm=cement.absorption_per_mm / 2.0,
        reduced_scattering_per_mm=cement.scattering_per_mm * 4.0 / 3.0,
        thickness_mm=backing.cement_thickness_mm,
        refractive_index=index,
    )
    return (layer,), LambertianBacking(reflectance=stump, refractive_index=index)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Point:
    """Wall (1,), whether the inner surface is looked at (1,), coats here and opposite (S, 1)."""

    wall_mm: NDArray[np.float64]
    inside: NDArray[np.bool_]
    coats: NDArray[np.float64]
    far_coats: NDArray[np.float64]

    def lab(self, scene: OpticalScene) -> NDArray[np.float64]:
        """Return L*a*b* by two-flux layers, (3,)."""
        labs = reference_lab(scene, self.coats, self.wall_mm, self.far_coats, inside=self.inside)
        return np.asarray(labs[0], dtype=np.float64)

    def transport_lab(
        self,
        scene: OpticalScene,
        behind: tuple[tuple[TransportLayer, ...], LambertianBacking],
        index: ArrayLike,
    ) -> NDArray[np.float64]:
        """Return L*a*b* by transport in the layers of a scene with fitted surfaces, (3,)."""
        fitted = fitted_interface(len(scene.wavelengths_nm))
        layers = layers_of_load(
            scene,
            load_of_coats(scene, self.coats),
            self.wall_mm,
            load_of_coats(scene, self.far_coats),
            inside=self.inside,
        )
        wall = [
            TransportLayer(
                absorption_per_mm=K[0] / fitted.absorption_factor,
                reduced_scattering_per_mm=S[0] / fitted.scattering_factor,
                thickness_mm=float(X[0, 0]),
                refractive_index=index,
            )
            for K, S, X in layers
        ]
        below, backing = behind
        found = layered_transport([*wall, *below], backing)
        # What a finish takes from light on its way in and out.
        left = scene.radiance_factor / fitted.radiance_factor
        return scene.lab(left * found.radiance_factor_45_0)


def _verdict(difference_de00: float) -> str:
    if difference_de00 <= GOOD_DE00:
        text = translate(
            "point check",
            "The fast answer is good here: {off:.1f} dE00 from the exact calculation, hardly"
            " visible.",
        )
    elif difference_de00 <= PERCEPTIBLE_DE00:
        text = translate(
            "point check",
            "The fast answer is fair here: {off:.1f} dE00 from the exact calculation, few would see"
            " it.",
        )
    else:
        text = translate(
            "point check",
            "Take care here: the fast answer is {off:.1f} dE00 from the exact calculation, which"
            " can be seen; the wall is too thin or too clear for it.",
        )
    return text.format(off=difference_de00)


def _triple(lab: NDArray[np.float64]) -> Lab:
    lightness, a, b = (float(value) for value in lab)
    return lightness, a, b
