"""The crown of an exercise, read and with its true areas, before anything is planned on it."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import CancelledError, PlanError, StainmapError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import AccentMask, Backing, Case, Region
from stainmap.model.crown import CrownReading, CrownSurface, MeshSource
from stainmap.model.intake import Intake
from stainmap.model.material import Catalogue
from stainmap.model.plan import StainPlan
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.reading import BridgeSaid, read_crown
from stainmap.practice.crown_bridge import make_bridge
from stainmap.practice.crown_maker import make_crown, stl_bytes
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState
from stainmap.words import translate

Progress = Callable[[float, str], None]
Masks = tuple[tuple[Accent, NDArray[np.float32]], ...]

RESOLUTION: Final = 0.4
"""Edges of 0.25 to 0.33 mm: a crown in about a second, fine enough for areas told to 0.5 mm."""
LEAST_ZONE_MM2: Final = 1.5
"""A zone smaller than this cannot be asked for; the fissures of a premolar have some 4 mm2."""
FIRST_BLOCK: Final = "medium 3Y"
FIRST_PROGRAMME: Final = "slow"

_SOLID = "solid ceramic (pontic)"
_KEPT = 4


@lru_cache(maxsize=1)
def practice_materials() -> Catalogue:
    """Return the materials of all exercises: the starter set, whatever a user's own are.

    An exercise is the same for everybody who has its seed; so must its materials be.
    """
    return starter_catalogue()


def practice_crown(
    teeth: tuple[int, ...], seed: int, variation: float, progress: Progress | None = None
) -> Case:
    """Return a case without a plan on a crown or bridge made from a seed.

    Zones, accents and both proposals are the truth of the maker (see `crown_truth`). The last few
    crowns are kept.

    Raises
    ------
    PlanError
        If the seed gives a crown that nothing can be asked of; the sentence says why.
    """
    key = (teeth, seed, float(variation))
    if key not in _crowns:
        while len(_crowns) >= _KEPT:
            _crowns.pop(next(iter(_crowns)))
        _crowns[key] = _made(teeth, seed, variation, progress)
    return _crowns[key]


_crowns: dict[tuple[tuple[int, ...], int, float], Case] = {}


def _made(teeth: tuple[int, ...], seed: int, variation: float, progress: Progress | None) -> Case:
    def report(share: float, phrase: str) -> None:
        if progress is not None:
            progress(share, phrase)

    reading_it = translate("exercise crown", "reading the crown")

    def making(share: float, phrase: str) -> None:
        # A crown that is made is not done here: it is still to be read.
        report(0.6 * share, phrase if share < 1.0 else reading_it)

    name = "-".join(map(str, teeth))
    try:
        if len(teeth) > 1:
            bridge = make_bridge(
                teeth, seed=seed, variation=variation, resolution=RESOLUTION, progress=making
            )
            mesh, zones, masks = bridge.mesh, bridge.zones, bridge.accents
            axis, mesial, units = bridge.occlusal_axis, bridge.mesial, bridge.units
        else:
            units = (Unit(tooth=Tooth(number=teeth[0])),)
            crown = make_crown(
                units[0].tooth,
                seed=seed,
                variation=variation,
                resolution=RESOLUTION,
                progress=making,
            )
            mesh, zones, masks = crown.mesh, crown.zones, crown.accents
            axis, mesial = crown.occlusal_axis, crown.mesial
        report(0.6, reading_it)
        reading = read_crown(
            mesh,
            SurfaceOperator(mesh),
            units,
            occlusal_axis=axis,
            mesial=mesial,
            bridge=BridgeSaid(units_as_given=True),
            progress=lambda share, phrase: report(0.6 + 0.4 * share, phrase),
        )
    except CancelledError:
        raise
    except (StainmapError, ValueError) as error:
        raise _unusable(seed, name, str(error)) from error
    case = _case(units, seed, mesh, reading, zones, masks)
    _refuse_degenerate(case, seed, name)
    mesh.forget_derived()
    return case


def _case(
    units: tuple[Unit, ...],
    seed: int,
    mesh: TriMesh,
    reading: CrownReading,
    zones: NDArray[np.uint8],
    masks: Masks,
) -> Case:
    materials = practice_materials()
    outer = reading.outer
    # The margin as read may differ by a vertex from the one that was made.
    told = np.where(outer & (zones == int(Zone.INNER)), np.uint8(Zone.CERVICAL), zones)
    told = np.where(outer, told, np.uint8(Zone.INNER)).astype(np.uint8)
    accents = tuple(
        AccentMask(accent=accent, share=np.where(outer, share, 0.0).astype(np.float32))
        for accent, share in sorted(masks, key=lambda one: int(one[0]))
        if (share[outer] > 0.5).any()
    )
    name = "-".join(str(unit.tooth.number) for unit in units)
    content = stl_bytes(mesh)
    count = mesh.vertex_count
    cement = materials.cements[0].name
    backings = [Backing(region=Region.STUMP, stump=materials.stumps[0].name, cement=cement)]
    if any(unit.role is Role.PONTIC for unit in units):
        backings.append(Backing(region=Region.PONTIC, stump=_SOLID, cement=cement))
    if any(unit.tooth.is_front for unit in units):
        backings.append(Backing(region=Region.INCISAL_EDGE, stump="dark mouth", cement=cement))
    own = np.arange(count, dtype=np.int32)
    return Case(
        code=f"practice {name}, {seed}",
        units=units,
        source=MeshSource(
            name=f"practice_{name}_{seed}.stl",
            content=content,
            sha256=hashlib.sha256(content).hexdigest(),
            unit=LengthUnit.MILLIMETRE,
            size_state=SizeState.SINTERED,
            enlargement_factor=materials.block(FIRST_BLOCK).enlargement_factor,
        ),
        surface=CrownSurface(
            mesh=mesh,
            parents=np.stack([own, own], axis=1),
            base_vertex_count=count,
            file_vertex=np.ascontiguousarray(mesh.faces.ravel(), dtype=np.int32),
        ),
        reading=reading,
        zones=told,
        proposal=told,
        accents=accents,
        accent_proposal=accents,
        plan=StainPlan(block=FIRST_BLOCK),
        materials=materials,
        backings=tuple(backings),
        programme=FIRST_PROGRAMME,
        intake=Intake(stump_known=True, wish="Invented, for practice."),
        notes="Invented, for practice: nobody's tooth, no real materials.",
    )


def zones_asked(case: Case) -> tuple[Zone, ...]:
    """Return the zones of the outside that a crown of these teeth has."""
    front = all(unit.tooth.is_front for unit in case.units)
    outside = (Zone.CERVICAL, Zone.BODY, Zone.INTERPROXIMAL, Zone.CUSP)
    return outside if front else (*outside, Zone.FISSURE)


def _refuse_degenerate(case: Case, seed: int, name: str) -> None:
    mesh = case.surface.mesh
    if not np.isfinite(mesh.vertices).all() or not mesh.is_watertight:
        raise _unusable(seed, name, translate("exercise crown", "Its surface is not closed."))
    sizes = mesh.vertex_areas
    for zone in zones_asked(case):
        size = float(sizes[case.zones == int(zone)].sum())
        if size < LEAST_ZONE_MM2:
            raise _unusable(
                seed,
                name,
                translate("exercise crown", "Its {label} zone has only {size:.1f} mm2.").format(
                    label=zone.label, size=size
                ),
            )
    if not (case.reading.outer.any() and (~case.reading.outer).any()):
        raise _unusable(seed, name, translate("exercise crown", "It has no inner surface."))


def _unusable(seed: int, name: str, why: str) -> PlanError:
    return PlanError(
        translate(
            "exercise crown",
            "Seed {seed} gives a crown of tooth {name} that nothing can be asked of. {why}",
        ).format(seed=seed, name=name, why=why),
        advice=translate("exercise crown", "Take another seed."),
    )
