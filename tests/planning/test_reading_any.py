"""Reading what nobody has prepared: shallow cavities, capped and cut crowns, hollow bridges, jaws.

The truth of made crowns is the maker's own; of the real ones it is the axis of their files, which
is the jaw's. More individuals on demand: STAINMAP_MORE=1.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from stainmap.errors import ReadingError
from stainmap.model.crown import READINGS, BodyKind
from stainmap.model.tooth import Role
from stainmap.planning.reading import BridgeSaid, read_crown
from stainmap.practice.crown_bridge import MadeBridge, make_bridge
from stainmap.practice.crown_maker import MadeCrown
from stainmap.surface.capping import cap_of
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh, boundary_loops, submesh
from stainmap.surface.refining import refine
from stainmap.surface.thinning import thin
from tests.planning.bodies import angle_deg, turned, units
from tests.planning.conftest import SAID_AXIS, TEETH, Read, read

Made = Callable[..., MadeCrown]
RealRead = Callable[..., Read]

MORE = bool(os.environ.get("STAINMAP_MORE"))
SEEDS = range(3, 13) if MORE else (3,)
NUMBERS = (36, 46, 16, 14, 24) if MORE else (16, 14)
# Occlusal in the files of the real crowns, and how near to it a reading has to come.
JAW_AXIS = {
    "hollow_46": ((0, 1, 0), 12.0),
    "solid_46": ((0, 1, 0), 25.0),
    "solid_14": ((0, -1, 0), 25.0),
    "bridge_14_15_16": ((0, -1, 0), 25.0),
}


def sheet_of(crown: MadeCrown) -> TriMesh:
    """Return the outer surface alone."""
    return submesh(crown.mesh, crown.outer[crown.mesh.faces].all(axis=1))[0]


def solid_of(crown: MadeCrown) -> TriMesh:
    """Return the outer surface, closed at its border as a design station closes it."""
    sheet = sheet_of(crown)
    cap = cap_of(sheet, boundary_loops(sheet)[:1])
    extra = sheet.vertex_count + np.arange(len(cap.extra))
    numbers = np.concatenate([cap.border, extra])
    points = np.concatenate([sheet.vertices, cap.extra])
    return refine(TriMesh(points, np.concatenate([sheet.faces, numbers[cap.faces]])), 0.4).mesh


def shallow_of(crown: MadeCrown, share: float) -> TriMesh:
    """Return the crown with its cavity pressed down to a share of its depth."""
    points = crown.mesh.vertices.copy()
    inner = ~crown.outer
    low = points[inner, 2].min()
    points[inner, 2] = low + share * (points[inner, 2] - low)
    return TriMesh(points, crown.mesh.faces)


@cache
def bridge(seed: int = 1) -> MadeBridge:
    return make_bridge((14, 15, 16), seed=seed, variation=1.0, resolution=0.35)


@cache
def bridge_read() -> tuple[Read, np.ndarray]:
    """Return the made bridge, turned, as it was read, and how it was turned."""
    body, turn = turned(bridge().mesh, seed=5)
    return read(body, 14, 15, 16), turn


# ---- the five real meshes


@pytest.mark.parametrize("name", sorted(JAW_AXIS))
def test_real_axis_and_units(
    real_read: RealRead, name: str, record_property: Callable[..., None]
) -> None:
    found = real_read(name).reading
    axis, limit = JAW_AXIS[name]
    off = angle_deg(found.occlusal_axis, axis)
    record_property("axis_off_deg", round(off, 2))
    assert off < limit
    assert int(found.unit_index.max()) + 1 == len(TEETH[name])
    assert found.sure("occlusal_axis") > 0.8
    assert [key for key, _ in found.confidence] == list(READINGS)


@pytest.mark.parametrize("name", ["bridge_14_15_16", "solid_14"])
def test_rotated_copies_are_read_alike(real_read: RealRead, name: str) -> None:
    one = real_read(name, 0.5)
    mesh, turn = turned(one.mesh, seed=21)
    other = read(mesh, *TEETH[name]).reading
    assert angle_deg(other.occlusal_axis, turn @ one.reading.occlusal_axis) < 1.0
    assert np.array_equal(other.unit_index, one.reading.unit_index)
    assert dict(other.confidence) == pytest.approx(dict(one.reading.confidence), abs=0.02)


def test_a_solid_front_tooth_is_asked_or_doubted(real_read: RealRead) -> None:
    """Named, it is asked for; unnamed, it is never sure."""
    mesh = real_read("solid_11").mesh
    body, _ = turned(mesh, seed=2)
    with pytest.raises(ReadingError) as caught:
        read(body, 11)
    assert caught.value.where == "occlusal axis"
    unnamed = read(body).reading
    assert unnamed.sure("occlusal_axis") < 0.5
    assert any("only guessed" in sentence for sentence in unnamed.warnings)
    told = read(mesh, 11, occlusal_axis=SAID_AXIS["solid_11"]).reading
    assert told.sure("occlusal_axis") == 1.0


# ---- made crowns in all the forms they come in


@pytest.mark.parametrize("number", NUMBERS)
@pytest.mark.parametrize("seed", SEEDS)
def test_forms_of_a_back_tooth(made: Made, number: int, seed: int) -> None:
    crown = made(number, seed, 1.0)
    noise = np.random.default_rng(seed).normal(0.0, 0.02, crown.mesh.vertices.shape)
    noisy = TriMesh(crown.mesh.vertices + noise, crown.mesh.faces)
    forms = {
        "hollow": (crown.mesh, BodyKind.CROWN),
        "noisy": (noisy, BodyKind.CROWN),
        "solid": (solid_of(crown), BodyKind.SOLID_CROWN),
        "sheet": (sheet_of(crown), BodyKind.OPEN_SHEET),
        # A cavity that is too shallow to be told by what it sees: a valley on the wrong side.
        "half": (shallow_of(crown, 0.5), BodyKind.CROWN),
        "shallow": (shallow_of(crown, 0.2), BodyKind.SOLID_CROWN),
    }
    for form, (mesh, kind) in forms.items():
        body, turn = turned(mesh, seed)
        found = read(body, number).reading
        assert found.kind is kind, form
        assert angle_deg(found.occlusal_axis, turn @ crown.occlusal_axis) < 12.0, form
        assert found.sure("occlusal_axis") > 0.5, form
        assert (found.assumed_wall_mm is None) == (kind is BodyKind.CROWN), form
        if found.mesial is not None and found.sure("mesial") >= 0.5:
            assert angle_deg(found.mesial, turn @ crown.mesial) < 20.0, form
        assert found.sure("buccal") == found.sure("mesial")


def test_unnamed_solids_are_never_sure(made: Made) -> None:
    for number in (11, 14):
        assert read(solid_of(made(number, 3, 1.0))).reading.sure("occlusal_axis") < 0.5


def test_margin_is_surest_where_it_is_sharpest(made: Made, real_read: RealRead) -> None:
    """The knife edge of a made crown, the border of a sheet, the blunt base of a scanned tooth."""
    crown = made(36)
    edge = read(crown.mesh, 36).reading.sure("margin")
    border = read(sheet_of(crown), 36).reading.sure("margin")
    blunt = real_read("solid_46").reading.sure("margin")
    assert border > 0.9
    assert edge > blunt > 0.1


# ---- bridges


def test_hollow_bridge(record_property: Callable[..., None]) -> None:
    made_bridge = bridge()
    one, turn = bridge_read()
    body, found = one.mesh, one.reading
    assert found.kind is BodyKind.BRIDGE
    assert angle_deg(found.occlusal_axis, turn @ made_bridge.occlusal_axis) < 12.0
    assert angle_deg(found.mesial, turn @ made_bridge.mesial) < 15.0
    area = body.vertex_areas
    agreement = area[found.unit_index == made_bridge.unit_index].sum() / area.sum()
    record_property("units_agree", round(float(agreement), 4))
    assert agreement > 0.98
    assert area[found.outer == made_bridge.outer].sum() / area.sum() > 0.98
    # From the patient's right; ours is the smallest section, theirs the one across x.
    truth = made_bridge.connector_sections_mm2[::-1]
    for ours, theirs in zip(found.connectors_mm2, truth, strict=True):
        assert 0.9 * theirs < ours < 1.01 * theirs
    assert found.sure("units") > 0.8
    assert found.sure("connectors") > 0.8


def test_roles_are_read_from_cavities() -> None:
    mesh = bridge().mesh
    operator = SurfaceOperator(mesh)
    splinted = tuple(replace(unit, role=Role.RETAINER) for unit in units(14, 15, 16))
    found = read_crown(mesh, operator, splinted, bridge=BridgeSaid(roles_said=False))
    assert found.roles == (Role.RETAINER, Role.PONTIC, Role.RETAINER)
    assert found.sure("roles") > 0.5
    # A person's word holds, and what the shape says against it is said.
    found = read_crown(mesh, operator, splinted)
    assert found.roles == (Role.RETAINER,) * 3
    assert "roles" in found.set_by_user
    assert any("15 is named a retainer, but has no cavity" in w for w in found.warnings)


def test_units_part_where_a_person_shows() -> None:
    made_bridge = bridge()
    places = tuple(tuple(float(v) for v in place) for place in made_bridge.connectors)
    said = BridgeSaid(neck_places=places[::-1])
    found = read(made_bridge.mesh, 14, 15, 16, bridge=said).reading
    assert "units" in found.set_by_user
    assert found.sure("units") == 1.0
    area = made_bridge.mesh.vertex_areas
    assert area[found.unit_index == made_bridge.unit_index].sum() / area.sum() > 0.98
    with pytest.raises(ReadingError, match="3 teeth are named, and 1 place is shown") as caught:
        read(made_bridge.mesh, 14, 15, 16, bridge=BridgeSaid(neck_places=places[:1]))
    assert caught.value.where == "units"


def test_remeshed_bridge_is_read_alike() -> None:
    found = read(thin(bridge().mesh, 0.45).mesh, 14, 15, 16).reading
    one, turn = bridge_read()
    fine = one.reading
    assert angle_deg(turn @ found.occlusal_axis, fine.occlusal_axis) < 5.0
    assert found.connectors_mm2 == pytest.approx(fine.connectors_mm2, rel=0.05)
