"""Loading, picking and brushing are quick, measured against something else in the same run."""

from __future__ import annotations

import io
import struct
from collections.abc import Callable
from time import process_time

import numpy as np
import pytest
import trimesh

from stainmap.surface.brush import brush_vertices
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.loading import load_mesh_bytes
from stainmap.surface.mesh import TriMesh
from stainmap.surface.picking import Picker
from tests.benchmarks.measuring import in_turn, ratio

pytestmark = pytest.mark.benchmark


def ring(around: int, across: int) -> TriMesh:
    """Return a bumpy torus of 2 x around x across facets, of about the size of a crown."""
    i, j = np.meshgrid(np.arange(around), np.arange(across), indexing="ij")
    u, v = 2.0 * np.pi * i.ravel() / around, 2.0 * np.pi * j.ravel() / across
    minor = 2.0 + 0.1 * np.sin(9.0 * u) * np.sin(7.0 * v)
    out = 3.5 + minor * np.cos(v)
    vertices = np.c_[out * np.cos(u), out * np.sin(u), minor * np.sin(v)]
    right, up = (i + 1) % around, (j + 1) % across
    a, b, c, d = ((p * across + q).ravel() for p, q in ((i, j), (right, j), (right, up), (i, up)))
    return TriMesh(vertices, np.concatenate([np.c_[a, b, c], np.c_[a, c, d]]))


@pytest.fixture(scope="module")
def large_stl() -> bytes:
    """Return a binary STL of 700,000 facets in no order at all."""
    mesh = ring(700, 500)
    order = np.random.default_rng(0).permutation(mesh.face_count)
    facets = np.zeros(mesh.face_count, dtype="(12,)<f4, <u2")
    facets["f0"][:, 3:] = mesh.vertices[mesh.faces[order]].reshape(-1, 9)
    return bytes(80) + struct.pack("<I", mesh.face_count) + facets.tobytes()


def test_large_stl_is_read_welded_and_mapped_quickly(
    large_stl: bytes,
    monkeypatch: pytest.MonkeyPatch,
    record_property: Callable[[str, object], None],
) -> None:
    """At most 0.6 of trimesh's default load with the near weld, 0.35 with the exact weld alone.

    The time includes what trimesh's load does not do: the check of windings, borders and doubles.
    """
    loaded = load_mesh_bytes(large_stl, "large.stl")
    assert (loaded.mesh.vertex_count, loaded.mesh.face_count) == (350_000, 700_000)
    assert len(loaded.file_vertex) == 2_100_000

    def reference() -> object:
        return trimesh.load(io.BytesIO(large_stl), file_type="stl")

    def ours() -> object:
        return load_mesh_bytes(large_stl, "large.stl")

    def exact() -> object:
        with monkeypatch.context() as patch:
            patch.setattr("stainmap.surface.loading.near_tolerance", lambda *_: 0.0)
            return load_mesh_bytes(large_stl, "large.stl")

    near = ratio(ours, reference, 0.6)
    alone = ratio(exact, reference, 0.35)
    record_property("near weld over trimesh", near)
    record_property("exact weld over trimesh", alone)
    print(f"of trimesh's time: near weld {near:.2f}, exact {alone:.2f}")
    assert near <= 0.6
    assert alone <= 0.35


@pytest.fixture(scope="module")
def ascii_stl() -> bytes:
    """Return 80,000 facets as text."""
    mesh = ring(200, 200)
    text = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False).export(file_type="stl_ascii")
    content = text.encode() if isinstance(text, str) else text
    assert load_mesh_bytes(content, "large.stl").format == "ASCII STL"
    return content


def test_ascii_stl_is_read_no_slower_than_by_trimesh(
    ascii_stl: bytes, record_property: Callable[[str, object], None]
) -> None:
    """Strictly, with weld, map and checks; 80,000 facets, to whose number both times are linear."""
    content = ascii_stl

    def reference() -> object:
        return trimesh.load(io.BytesIO(content), file_type="stl")

    def ours() -> object:
        return load_mesh_bytes(content, "large.stl")

    share = ratio(ours, reference, 1.0)
    record_property("ASCII over trimesh", share)
    print(f"ASCII: {share:.2f} of trimesh's time")
    assert share <= 1.0


def test_pick_and_dab_cost_less_than_a_few_looks_at_all_vertices() -> None:
    """At 100,000 vertices, with a brush of 0.8 mm: milliseconds, whatever the machine."""
    mesh = ring(400, 250)
    picker = Picker(mesh)
    hit = picker.pick((40.0, 3.0, 5.0), (-40.0, -1.0, -4.0))
    assert hit is not None
    mesh.adjacency  # noqa: B018 - built once per crown, before the first dab

    def look() -> object:
        return np.linalg.norm(mesh.vertices - hit.position, axis=1)

    def pick() -> object:
        return picker.pick((40.0, 3.0, 5.0), (-40.0, -1.0, -4.0))

    def dab() -> object:
        return brush_vertices(mesh, hit.position, hit.vertex, 0.8, 0.5)

    looking, picking, dabbing = in_turn(20, look, pick, dab)
    print(f"look {1e3 * looking:.2f}, pick {1e3 * picking:.2f}, dab {1e3 * dabbing:.2f} ms")
    assert picking < 2.0 * looking
    assert dabbing < 3.0 * looking


def test_kept_factor_makes_smoothing_quick() -> None:
    """Smoothing again with the same length costs a small share of the first time."""
    operator = SurfaceOperator(ring(250, 160))
    values = np.random.default_rng(0).random(operator.mesh.vertex_count)

    def first() -> object:
        operator.forget()
        return operator.smooth(values, 0.34)

    def again() -> object:
        return operator.smooth(values, 0.34)

    # Factoring is done in a thread of its own, so the processor's time of all threads counts.
    cold, warm = in_turn(3, first, again, clock=process_time)
    assert warm < 0.25 * cold
