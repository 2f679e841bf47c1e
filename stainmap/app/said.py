"""What a person has said about a crown's reading: kept in the case, and read again with."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from stainmap.app.opening import ASSUMED_WALL_MM, Answers, MeshLook, Vector, scale_to_sintered
from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.material import Catalogue
from stainmap.planning.directions import across, mesial_from_buccal
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

# Sections of connectors that can be typed, mm2.
CONNECTOR_MM2 = (0.5, 60.0)


def answers_of(case: Case) -> Answers:
    """Return what has been said about a case so far, to read it again with."""
    reading, said = case.reading, case.reading.set_by_user
    return Answers(
        units=case.units,
        size_state=case.source.size_state,
        block=case.plan.block,
        unit=case.source.unit,
        occlusal_axis=reading.occlusal_axis if "occlusal_axis" in said else None,
        mesial=reading.mesial if "mesial" in said else None,
        sliders=case.sliders,
        assumed_wall_mm=reading.assumed_wall_mm or ASSUMED_WALL_MM,
        neck_places=neck_places(case) if "units" in said else (),
        units_as_given="units" in said,
        roles_said="roles" in said,
        connectors_mm2=reading.connectors_mm2 if "connectors" in said else (),
    )


def neck_places(case: Case) -> tuple[Vector, ...]:
    """Return the places, mm, where the units of a case part now."""
    mesh, unit = case.surface.mesh, case.reading.unit_index
    i, j = mesh.edges.T
    parting = unit[i] != unit[j]
    pairs = np.sort(np.c_[unit[i], unit[j]][parting], axis=1)
    middles = 0.5 * (mesh.vertices[i] + mesh.vertices[j])[parting]
    places = []
    for pair in np.unique(pairs, axis=0):
        x, y, z = (float(v) for v in middles[(pairs == pair).all(axis=1)].mean(axis=0))
        places.append((x, y, z))
    return tuple(places)


def mesial_of_buccal(case: Case, buccal: Vector) -> Vector:
    """Return mesial of the first unit where a person has shown its buccal side.

    Raises
    ------
    PlanError
        If what was shown lies along the occlusal axis.
    """
    axis = np.asarray(case.reading.occlusal_axis)
    flat = across(np.asarray(buccal, dtype=np.float64), axis)
    if flat is None:
        raise PlanError(translate("said", "Buccal cannot point along the occlusal axis."))
    x, y, z = (float(v) for v in mesial_from_buccal(flat, axis, case.units[0].tooth))
    return (x, y, z)


def sintered_per_shown(
    look: MeshLook, answers: Answers, materials: Catalogue, shown: TriMesh
) -> float:
    """Return the factor from a mesh as it is shown before it is read to sintered mm."""
    block = materials.block(answers.block)
    sized = scale_to_sintered(look, answers, block.enlargement_factor)
    return sized * float(look.mesh.extent.max()) / float(shown.extent.max())


def confirmed(case: Case, name: str) -> Case:
    """Return the case with one reading said to be right as it is."""
    # The margin is where the outer surface ends, and buccal follows from mesial.
    held = {"margin": "inner_surface", "buccal": "mesial"}.get(name, name)
    reading = case.reading
    return replace(case, reading=replace(reading, set_by_user=reading.set_by_user | {name, held}))


def with_connectors(case: Case, sections_mm2: tuple[float, ...]) -> Case:
    """Return the case with the sections of its connectors as somebody else has measured them.

    Raises
    ------
    PlanError
        If there are more or fewer than connectors, or one is out of range.
    """
    reading = case.reading
    if len(sections_mm2) != len(reading.connectors_mm2):
        raise PlanError(
            translate("said", "There are {count} connectors.").format(
                count=len(reading.connectors_mm2)
            )
        )
    low, high = CONNECTOR_MM2
    if not all(low <= section <= high for section in sections_mm2):
        raise PlanError(
            translate("said", "A connector of that section is out of range."),
            advice=translate("said", "Give {low:g} to {high:g} mm2.").format(low=low, high=high),
        )
    return replace(
        case,
        reading=replace(
            reading,
            connectors_mm2=sections_mm2,
            set_by_user=reading.set_by_user | {"connectors"},
        ),
    )
