"""Cutting a crown off a root and out of a jaw: nothing is lost, and what is left is a crown."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from stainmap.app.cutting import NeckCut, cut_off, proposed_cut, section_lines, with_whole_file
from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
from stainmap.app.session import Session
from stainmap.errors import MeshFileError
from stainmap.files.case_file import read_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Zone
from stainmap.practice.crown_maker import make_crown, stl_bytes
from stainmap.surface.mesh import TriMesh, boundary_loops, submesh
from stainmap.units import LengthUnit, SizeState

EDGE_MM = 0.3


@cache
def rooted(number: int = 36) -> TriMesh:
    """Return a made crown with a root of 12 mm below its margin, closed, 0.4 mm triangles."""
    crown = make_crown(Tooth(number=number), seed=2, resolution=0.35)
    sheet, _ = submesh(crown.mesh, crown.outer[crown.mesh.faces].all(axis=1))
    return with_root(sheet, 12.0)


def with_root(sheet: TriMesh, length_mm: float) -> TriMesh:
    """Return an open sheet drawn out below its border to a tapering closed root."""
    border = boundary_loops(sheet)[0][::-1]
    count, rings = len(border), 30
    points, faces = [sheet.vertices], [sheet.faces]
    base = sheet.vertices[border]
    middle = base.mean(axis=0)
    before = border.astype(np.int64)
    for ring in range(1, rings + 1):
        down = ring / rings
        width = np.sqrt(max(1.0 - down**1.6, 0.0)) if ring < rings else 0.02
        place = middle + (base - middle) * [width, width, 1.0 - down]
        place[:, 2] -= length_mm * down
        now = sheet.vertex_count + (ring - 1) * count + np.arange(count)
        points.append(place)
        a, b = before, np.roll(before, -1)
        c, d = now, np.roll(now, -1)
        faces += [np.c_[a, b, d], np.c_[a, d, c]]
        before = now
    tip = sum(len(p) for p in points)
    points.append((middle - [0.0, 0.0, length_mm])[None])
    faces.append(np.c_[before, np.roll(before, -1), np.full(count, tip)])
    mesh = TriMesh(np.concatenate(points), np.concatenate(faces))
    return mesh if mesh.volume > 0 else TriMesh(mesh.vertices, mesh.faces[:, ::-1])


def jaw() -> TriMesh:
    """Return a bent bar of gum with seven teeth standing in it: one open sheet, about 55 mm wide.

    A height field over a grid: it is a scan as far as the program can tell.
    """
    x, y = np.meshgrid(np.arange(-30.0, 30.0, 0.5), np.arange(-24.0, 24.0, 0.5), indexing="ij")
    ring = 22.0
    turn = np.arctan2(x, y + 10.0)
    off = np.hypot(x, y + 10.0) - ring
    z = 7.0 * np.exp(-((off / 6.0) ** 4))
    for k in range(-3, 4):
        along = (turn - 0.42 * k) * ring
        bump = np.exp(-((along / 4.0) ** 6) - (off / 4.0) ** 6)
        pit = 1.2 * np.exp(-(along**2 + off**2) / 2.5)
        z += bump * (8.0 - pit)
    points = np.c_[x.ravel(), y.ravel(), z.ravel()]
    n, m = x.shape
    index = np.arange(n * m).reshape(n, m)
    a, b, c, d = index[:-1, :-1], index[1:, :-1], index[1:, 1:], index[:-1, 1:]
    faces = np.concatenate(
        [np.c_[a.ravel(), b.ravel(), c.ravel()], np.c_[a.ravel(), c.ravel(), d.ravel()]]
    )
    return TriMesh(points, faces)


def opened(mesh: TriMesh, folder: Path, number: int = 36) -> Case:
    path = folder / f"made_{number}.stl"
    path.write_bytes(stl_bytes(mesh))
    answers = Answers(
        units=units_from_numbers((number,)),
        size_state=SizeState.SINTERED,
        block="medium 3Y",
        unit=LengthUnit.MILLIMETRE,
    )
    case, _ = build_case(look_at_mesh(path), answers, starter_catalogue())
    return case


@pytest.fixture(scope="module", autouse=True)
def coarse() -> Iterator[None]:
    """Refine to 0.3 mm, a quarter of the vertices of the product's 0.14: seconds for minutes."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("stainmap.app.opening.MAX_EDGE_MM", EDGE_MM)
        patch.setattr("stainmap.app.cutting.MAX_EDGE_MM", EDGE_MM)
        yield


@pytest.fixture(scope="module")
def tooth(tmp_path_factory: pytest.TempPathFactory) -> Case:
    return opened(rooted(), tmp_path_factory.mktemp("tooth"))


@pytest.fixture(scope="module")
def crown(tooth: Case) -> Case:
    return cut_off(tooth, proposed_cut(tooth))[0]


def test_a_tooth_with_its_root_says_what_it_is(tooth: Case) -> None:
    assert tooth.reading.kind is BodyKind.ROOTED_TOOTH
    assert "tooth with its roots" in " ".join(tooth.reading.warnings)
    # The proposed cut lies a usual crown's height (7.5 mm) below the cusps, across the tooth.
    plane = proposed_cut(tooth)
    assert plane.close
    normal = np.array(plane.normal)
    assert normal[2] > np.cos(np.radians(10.0))
    top = float((tooth.surface.mesh.vertices @ normal).max())
    assert top - float(normal @ plane.point_mm) == pytest.approx(7.5)


def test_the_crown_that_is_cut_off(tooth: Case, crown: Case) -> None:
    assert crown.reading.kind is BodyKind.SOLID_CROWN
    assert crown.reading.assumed_wall_mm == 1.0
    assert any("wall is assumed" in sentence for sentence in crown.reading.warnings)
    assert not any("roots" in sentence for sentence in crown.reading.warnings)
    assert "cut" in crown.reading.set_by_user
    mesh = crown.surface.mesh
    assert mesh.is_watertight
    assert mesh.edge_lengths.max() <= EDGE_MM + 1e-9
    plane = proposed_cut(tooth)
    height = mesh.vertices @ np.array(plane.normal) - np.dot(plane.normal, plane.point_mm)
    assert height.min() == pytest.approx(0.0, abs=1e-5)
    assert np.dot(crown.reading.occlusal_axis, (0.0, 0.0, 1.0)) > np.cos(np.radians(12.0))
    # The margin is where it was cut, and all five zones are on the crown.
    edges = mesh.edges[crown.reading.outer[mesh.edges].sum(axis=1) == 1]
    assert np.percentile(height[edges], 95) < 0.4
    assert set(np.unique(crown.zones)) >= {int(zone) for zone in Zone}


def test_the_file_stays_whole_and_its_vertices_are_found(tooth: Case, crown: Case) -> None:
    assert crown.source is tooth.source
    surface = crown.surface
    of_file = surface.file_vertex
    left = of_file >= 0
    assert 0.1 < left.mean() < 0.9
    before = tooth.surface.mesh.vertices[tooth.surface.file_vertex[left]]
    assert np.array_equal(surface.mesh.vertices[of_file[left]], before)
    assert of_file.max() < surface.base_vertex_count


def test_one_undo_step_and_a_saved_case_lose_nothing(tooth: Case, tmp_path: Path) -> None:
    session = Session(starter_catalogue(), threaded=False)
    session.adopt(tooth, path=None)
    session.cut_off(proposed_cut(tooth))
    cut = session.case
    assert cut is not None
    assert cut is not tooth
    assert session.problem is None
    assert session.is_up_to_date
    assert session.appearance is not None
    assert len(session.appearance.srgb) == cut.surface.mesh.vertex_count
    session.undo()
    assert session.case is tooth
    assert len(session.appearance.srgb) == tooth.surface.mesh.vertex_count
    session.redo()
    path = tmp_path / "cut.stainmap"
    session.save(path)
    again = read_case(path)
    assert np.array_equal(again.surface.mesh.vertices, cut.surface.mesh.vertices)
    assert again.reading.set_by_user == cut.reading.set_by_user
    assert again.source.content == tooth.source.content
    # And from the file that it carries, all of the tooth is there again.
    whole, _ = with_whole_file(again)
    assert np.array_equal(whole.surface.mesh.vertices, tooth.surface.mesh.vertices)
    assert whole.reading.kind is BodyKind.ROOTED_TOOTH
    assert whole.plan == again.plan
    session.close()


def test_left_open_it_is_a_sheet_with_its_margin_at_the_cut(tooth: Case) -> None:
    plane = proposed_cut(tooth)
    sheet, _ = cut_off(tooth, NeckCut(point_mm=plane.point_mm, normal=plane.normal, close=False))
    assert sheet.reading.kind is BodyKind.OPEN_SHEET
    assert sheet.reading.outer.all()
    assert sheet.reading.sure("margin") > 0.9
    border = sheet.surface.mesh.boundary_vertices
    height = sheet.surface.mesh.vertices @ np.array(plane.normal)
    assert height[border] == pytest.approx(np.dot(plane.normal, plane.point_mm), abs=1e-4)


def test_what_was_painted_stays_on_the_crown(crown: Case) -> None:
    """A second cut, a millimetre higher, of a crown that was corrected by hand."""
    top = crown.surface.mesh.vertices[:, 2] > crown.surface.mesh.vertices[:, 2].max() - 1.5
    zones = crown.zones.copy()
    zones[top] = int(Zone.CERVICAL)
    painted = Case(
        **{name: getattr(crown, name) for name in crown.__dataclass_fields__} | {"zones": zones}
    )
    plane = proposed_cut(crown)
    higher = np.array(plane.point_mm) + np.array(plane.normal)
    again, _ = cut_off(
        painted, NeckCut(point_mm=tuple(higher.tolist()), normal=plane.normal, close=True)
    )
    mesh = again.surface.mesh
    still = mesh.vertices[:, 2] > mesh.vertices[:, 2].max() - 1.4
    assert (again.zones[still] == int(Zone.CERVICAL)).mean() > 0.97


def test_a_plane_beside_the_tooth(tooth: Case) -> None:
    with pytest.raises(MeshFileError, match="Nothing lies"):
        cut_off(tooth, NeckCut(point_mm=(0.0, 0.0, 50.0), normal=(0.0, 0.0, 1.0), close=True))


def test_section_lines_lie_in_the_plane_and_close(tooth: Case) -> None:
    plane = proposed_cut(tooth)
    lines = section_lines(tooth.surface.mesh, plane)
    assert lines @ np.array(plane.normal) == pytest.approx(np.dot(plane.normal, plane.point_mm))
    # Every end meets exactly one other.
    _, count = np.unique(lines.reshape(-1, 3).round(9), axis=0, return_counts=True)
    assert (count == 2).all()


def test_jaw_and_one_of_its_crowns(tmp_path: Path) -> None:
    case = opened(jaw(), tmp_path)
    assert case.reading.kind is BodyKind.JAW
    assert "looks like a jaw" in " ".join(case.reading.warnings)
    assert np.dot(case.reading.occlusal_axis, (0.0, 0.0, 1.0)) > 0.99
    middle = (0.0, 12.0, 14.0)
    cut = NeckCut(point_mm=(0.0, 12.0, 9.2), normal=(0.0, 0.0, 1.0), close=False, keep_mm=middle)
    crown, _ = cut_off(case, cut)
    assert crown.reading.kind is BodyKind.OPEN_SHEET
    assert crown.surface.mesh.extent[0] < 14.0
    assert np.abs(crown.surface.mesh.centre[:2] - middle[:2]).max() < 1.5
    assert np.isfinite(crown.reading.height).any()
