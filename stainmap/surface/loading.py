"""Loading a mesh file: read, weld, repair, and say what was odd about it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.errors import MeshFileError
from stainmap.surface.formats import CHOOSE_A_MESH, EXTENSIONS, MeshFormat, detect_format
from stainmap.surface.loading_3mf import read_3mf
from stainmap.surface.loading_obj import read_obj
from stainmap.surface.loading_off import read_off
from stainmap.surface.loading_ply import read_ply
from stainmap.surface.loading_stl import read_ascii_stl, read_binary_stl
from stainmap.surface.mesh import EdgeTable, FloatArray, IndexArray, TriMesh, face_cross, frozen
from stainmap.surface.soup import MAX_TRIANGLES, Soup, too_many
from stainmap.surface.welding import near_tolerance, weld
from stainmap.surface.winding import repair_winding
from stainmap.units import LengthUnit

Progress = Callable[[float, str], None] | None

MAX_FILE_BYTES = 1 << 30
# Far beyond any workpiece in any unit; float32 coordinates of this size have lost its detail.
MAX_COORDINATE = 1e8
# Coarser rounding of coordinates than this share of the diagonal (1.5 um on 15 mm) is said.
COARSEST_STEP = 1e-4
_READERS: dict[MeshFormat, Callable[[bytes, str], Soup]] = {
    MeshFormat.BINARY_STL: read_binary_stl,
    MeshFormat.ASCII_STL: read_ascii_stl,
    MeshFormat.PLY: read_ply,
    MeshFormat.OBJ: read_obj,
    MeshFormat.OFF: read_off,
    MeshFormat.THREE_MF: read_3mf,
}
_BLANK = b"\0 \t\r\n"
# A body of 10 mm in metres has a hundredth.
MIN_DIAGONAL = 1e-4


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LoadedMesh:
    """A surface as a file describes it, welded and repaired.

    Parameters
    ----------
    mesh
        The surface, in the file's unit.
    file_vertex
        (N,) int32. For each point of the file in order (for STL each corner of each facet) its
        vertex; -1 for points that no facet of the surface uses.
    format
        What the file is: "binary STL", "ASCII STL", "PLY", "OBJ", "OFF" or "3MF".
    shells
        Number of separate surfaces.
    repairs
        What was repaired, in short sentences.
    warnings
        What is odd and was left, in short sentences.
    declared_unit
        The unit, if the file says one (3MF does).
    """

    mesh: TriMesh
    file_vertex: IndexArray
    format: str
    shells: int
    repairs: tuple[str, ...]
    warnings: tuple[str, ...]
    declared_unit: LengthUnit | None = None


def load_mesh(path: Path | str, *, progress: Progress = None) -> LoadedMesh:
    """Load a mesh file.

    Parameters
    ----------
    path
        An STL, PLY, OBJ, OFF or 3MF file, up to 1 GB; told apart by what it holds.
    progress
        Called with the share done and what is being done; may raise to stop.

    Raises
    ------
    MeshFileError
        If there is no such file, it cannot be read, or it holds no surface.
    """
    path = Path(path)
    if progress is not None:
        progress(0.0, "Reading the file")
    return load_mesh_bytes(read_file(path), path.name, progress=progress)


def read_file(path: Path) -> bytes:
    """Return the bytes of a mesh file.

    Raises
    ------
    MeshFileError
        If it is missing, a folder, not readable, or larger than 1 GB.
    """
    name = path.name or str(path)
    try:
        if path.is_dir():
            raise MeshFileError("It is a folder.", where=name, advice=CHOOSE_A_MESH)
        if not path.exists():
            raise MeshFileError(
                "There is no such file.", where=name, advice="Check the name and the folder."
            )
        if not path.is_file():
            raise MeshFileError("It is not an ordinary file.", where=name, advice=CHOOSE_A_MESH)
        size = path.stat().st_size
        if size > MAX_FILE_BYTES:
            raise MeshFileError(
                f"It has {size / 2**30:.1f} GB; at most 1 GB is read.",
                where=name,
                advice="Export one body at a time.",
            )
        return path.read_bytes()
    except PermissionError:
        raise MeshFileError(
            "It may not be read.", where=name, advice="Ask for permission, or copy it elsewhere."
        ) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise MeshFileError(
            f"It could not be read ({reason}).", where=name, advice="Copy it elsewhere, try again."
        ) from None


def load_mesh_bytes(content: bytes, name: str, *, progress: Progress = None) -> LoadedMesh:
    """Load a mesh from the bytes of a file.

    Parameters
    ----------
    content
        The whole file.
    name
        Its name, for messages; an unusual ending is only a warning.
    progress
        Called with the share done and what is being done; may raise to stop.

    Raises
    ------
    MeshFileError
        If it holds no surface that can be read.
    """
    if not content[:4096].strip(_BLANK) and not content.strip(_BLANK):
        raise MeshFileError("It is empty.", where=name, advice="Export it again, or copy it again.")
    content = content.removeprefix(b"\xef\xbb\xbf")
    mesh_format = detect_format(content, name)
    soup = _READERS[mesh_format](content, name)
    if len(soup.triangles) > MAX_TRIANGLES:
        raise too_many(len(soup.triangles), name)
    return _assembled(soup, mesh_format, name, progress)


def _assembled(soup: Soup, mesh_format: MeshFormat, name: str, progress: Progress) -> LoadedMesh:
    """Weld, drop what is no surface, turn windings, and collect what is odd."""
    _check_coordinates(soup.points, name)
    if progress is not None:
        progress(0.4, "Joining points")
    repairs: list[str] = []
    warnings = [*_odd_name(mesh_format, name), *soup.warnings, *_rounded(soup.points)]
    welded = weld(soup.points, near_tolerance(soup.points, soup.triangles))
    if welded.joined:
        repairs.append(_count(welded.joined, "point", "lay almost on another one and", "joined"))
    faces = welded.index[soup.triangles]
    faces = _without_collapsed(faces, repairs)
    faces = _without_doubles(faces, repairs)
    points, faces, place = _used_only(welded.points, faces)
    cross = face_cross(points, faces)
    _check_area(points, cross, name)
    if progress is not None:
        progress(0.7, "Checking the surface")
    winding = repair_winding(points, faces, cross)
    if winding.one_sided:
        raise MeshFileError(
            "Its surface has only one side, like a Moebius strip, so that inside and outside cannot"
            " be told apart.",
            where=name,
            advice="Repair it in the program it comes from.",
        )
    if winding.turned:
        repairs.append(_count(winding.turned, "facet", "had the wrong winding and", "turned"))
    if winding.shells_turned:
        some = "The surface was" if winding.shells == 1 else "A separate surface was"
        if winding.shells_turned > 1:
            some = f"{winding.shells_turned:,} separate surfaces were"
        repairs.append(f"{some} inside out and {some.split()[-1]} turned.")
    flat = int((np.einsum("ij,ij->i", cross, cross) == 0).sum())
    shells = winding.shells
    if (winding.table.face_count > 2).any():
        shells = _pieces(winding.table.edges, len(points))
    warnings += _odd_surface(winding.table, shells, flat)
    mesh = TriMesh(points, winding.faces)
    if progress is not None:
        progress(1.0, "Loaded")
    return LoadedMesh(
        mesh=mesh,
        file_vertex=frozen(place[welded.index]),
        format=mesh_format.value,
        shells=shells,
        repairs=tuple(repairs),
        warnings=tuple(warnings),
        declared_unit=soup.declared_unit,
    )


def _count(number: int, thing: str, what: str, done: str) -> str:
    """Return a sentence, for instance "3 facets had no width and were left out."."""
    if number == 1:
        return f"1 {thing} {what} was {done}."
    return f"{number:,} {thing}s {what} were {done}."


def _check_coordinates(points: NDArray[np.float32] | NDArray[np.float64], name: str) -> None:
    if not len(points):
        raise MeshFileError("It holds no points.", where=name, advice="Export it again.")
    largest = max(float(points.max()), -float(points.min()))
    if not np.isfinite(largest):
        finite = np.isfinite(points)
        row = int(np.flatnonzero(~finite.all(axis=1))[0])
        raise MeshFileError(
            f"Point {row + 1:,} has a coordinate that is not a number"
            f" ({points[row][~finite[row]][0]}).",
            where=name,
            advice="Export it again.",
        )
    if largest > MAX_COORDINATE:
        raise MeshFileError(
            f"A coordinate is {largest:.2g}, far beyond any workpiece in any unit.",
            where=name,
            advice="Export it again, near the origin.",
        )


def _check_area(points: FloatArray, cross: FloatArray, name: str) -> None:
    if not len(cross):
        raise MeshFileError(
            "All of its triangles are without area.", where=name, advice="Export it again."
        )
    diagonal = float(np.linalg.norm([np.ptp(points[:, k]) for k in range(3)]))
    if 0 < diagonal < MIN_DIAGONAL:
        raise MeshFileError(
            f"All of it is only {diagonal:.2g} across, far below any workpiece in any unit.",
            where=name,
            advice="Export it again.",
        )
    area = 0.5 * float(np.linalg.norm(cross, axis=1).sum())
    if not area > 1e-9 * diagonal**2:
        raise MeshFileError(
            "Its surface has no area: all of it lies in a line or a point.",
            where=name,
            advice="Export it again.",
        )


def _odd_name(mesh_format: MeshFormat, name: str) -> list[str]:
    ending = Path(name).suffix.lower()
    if ending == mesh_format.extension:
        return []
    if ending in EXTENSIONS:
        said = f"The name says {ending[1:].upper()}"
    else:
        said = f"The name does not end in {mesh_format.extension}"
    return [f"{said}, but the file is {mesh_format.value}; it was read as that."]


def _rounded(points: NDArray[np.float32] | NDArray[np.float64]) -> list[str]:
    """Say so if single precision has lost detail because the surface lies far from the origin."""
    if points.dtype != np.float32:
        return []
    diagonal = float(np.linalg.norm([float(np.ptp(points[:, k])) for k in range(3)]))
    step = float(np.spacing(max(points.max(), -points.min())))
    if step <= COARSEST_STEP * diagonal:
        return []
    return [f"It lies so far from the origin that its points are rounded to steps of {step:.1g}."]


def _without_collapsed(faces: IndexArray, repairs: list[str]) -> IndexArray:
    a, b, c = faces.T
    collapsed = (a == b) | (b == c) | (c == a)
    number = int(collapsed.sum())
    if not number:
        return faces
    repairs.append(_count(number, "facet", "had no width and", "left out"))
    return np.asarray(faces[~collapsed])


def _without_doubles(faces: IndexArray, repairs: list[str]) -> IndexArray:
    """Keep the first of facets with the same three corners, whichever way they are wound."""
    # A sum of scrambled corner numbers does not depend on their order; equal sums are looked at.
    scrambled = faces.astype(np.uint64)
    scrambled ^= scrambled << np.uint64(21)
    scrambled *= np.uint64(0x9E3779B97F4A7C15)
    scrambled ^= scrambled >> np.uint64(29)
    scrambled *= np.uint64(0xC2B2AE3D27D4EB4F)
    key = scrambled[:, 0] + scrambled[:, 1] + scrambled[:, 2]
    ordered = np.sort(key)
    repeated = ordered[1:][ordered[1:] == ordered[:-1]]
    if not len(repeated):
        return faces
    suspects = np.flatnonzero(np.isin(key, repeated))
    corners = np.sort(faces[suspects], axis=1)
    _, first = np.unique(corners, axis=0, return_index=True)
    keep = np.ones(len(faces), dtype=np.bool_)
    keep[suspects] = False
    keep[suspects[first]] = True
    number = len(faces) - int(keep.sum())
    if number:
        repairs.append(_count(number, "facet", "was there already and", "left out"))
        if number > 1:
            repairs[-1] = repairs[-1].replace("was there", "were there")
    return np.asarray(faces[keep])


def _used_only(points: FloatArray, faces: IndexArray) -> tuple[FloatArray, IndexArray, IndexArray]:
    """Drop points without facets; return points, faces, and the new number of each point or -1."""
    used = np.zeros(len(points), dtype=np.bool_)
    used[faces] = True
    if used.all():
        return points, faces, np.arange(len(points), dtype=np.int32)
    place = np.where(used, np.cumsum(used) - 1, -1).astype(np.int32)
    return points[used], place[faces], place


def _odd_surface(table: EdgeTable, shells: int, flat: int) -> list[str]:
    """Return sentences about what is odd about a surface but was left."""
    odd: list[str] = []
    if shells > 1:
        odd.append(f"It holds {shells:,} separate surfaces.")
    border = table.edges[table.face_count == 1]
    if len(border):
        used, ends = np.unique(border, return_inverse=True)
        loops = _pieces(ends.reshape(-1, 2).astype(np.int32), len(used))
        borders = "a border" if loops == 1 else f"{loops:,} borders"
        odd.append(f"The surface is open: it has {borders} of {len(border):,} edges.")
    crowded = int((table.face_count > 2).sum())
    if crowded:
        odd.append(
            "At 1 edge more than two facets meet."
            if crowded == 1
            else f"At {crowded:,} edges more than two facets meet."
        )
    if flat:
        odd.append("1 facet has no area." if flat == 1 else f"{flat:,} facets have no area.")
    return odd


def _pieces(edges: IndexArray, vertex_count: int) -> int:
    """Return into how many pieces edges (E, 2) join the vertices."""
    graph = sparse.coo_array(
        (np.ones(len(edges), dtype=np.int8), (edges[:, 0], edges[:, 1])),
        shape=(vertex_count, vertex_count),
    )
    return int(csgraph.connected_components(graph, directed=False)[0])
