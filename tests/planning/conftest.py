"""Crowns and readings that several tests look at, made once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Tooth, Unit
from stainmap.planning.reading import read_crown
from stainmap.planning.zoning import ZoneProposal, propose_zones
from stainmap.practice.crown_maker import MadeCrown, make_crown
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.planning.bodies import units

# Real crowns are read at this edge length here: a quarter of the vertices of the product's 0.14.
EDGE_MM = 0.3
# Which way they stand in their files, where the shape cannot tell.
SAID_AXIS = {"solid_11": (0.0, -1.0, 0.0)}
TEETH = {
    "hollow_46": (46,),
    "solid_46": (46,),
    "solid_14": (14,),
    "solid_11": (11,),
    "bridge_14_15_16": (14, 15, 16),
}


@dataclass(frozen=True)
class Read:
    """A surface with its operator and what was read from it."""

    mesh: TriMesh
    operator: SurfaceOperator
    units: tuple[Unit, ...]
    reading: CrownReading

    def propose(self, **options: object) -> ZoneProposal:
        return propose_zones(self.mesh, self.operator, self.reading, self.units, **options)


def read(mesh: TriMesh, *numbers: int, **said: object) -> Read:
    """Read a mesh as these teeth."""
    operator = SurfaceOperator(mesh)
    teeth = units(*numbers) if numbers else ()
    return Read(mesh, operator, teeth, read_crown(mesh, operator, teeth, **said))


@pytest.fixture(scope="session")
def real(shared_meshes: Path) -> Callable[..., TriMesh]:
    """Return a loader of the real crowns beside the checkout, refined."""

    @cache
    def load(name: str, edge_mm: float = EDGE_MM) -> TriMesh:
        return refine(load_mesh(shared_meshes / f"{name}.stl").mesh, edge_mm).mesh

    return load


@pytest.fixture(scope="session")
def real_read(real: Callable[..., TriMesh]) -> Callable[..., Read]:
    """Return a reader of the real crowns that remembers what it has read."""

    @cache
    def get(name: str, edge_mm: float = EDGE_MM) -> Read:
        return read(real(name, edge_mm), *TEETH[name], occlusal_axis=SAID_AXIS.get(name))

    return get


@pytest.fixture(scope="session")
def made() -> Callable[..., MadeCrown]:
    """Return a maker of practice crowns that remembers them."""

    @cache
    def get(number: int, seed: int = 1, variation: float = 0.0) -> MadeCrown:
        tooth = Tooth(number=number)
        return make_crown(tooth, seed=seed, variation=variation, resolution=0.45)

    return get


def surface_truth(crown: MadeCrown) -> np.ndarray:
    """Return the areas of a made crown's vertices."""
    return np.asarray(crown.mesh.vertex_areas)
