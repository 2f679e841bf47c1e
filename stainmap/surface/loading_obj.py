"""Reading the points and faces of OBJ files.

A general library splits and reorders points by material, texture and normal; here every point
must keep its place, so that what is planned on the surface can be carried back to the file.
"""

from __future__ import annotations

import re

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import MeshFileError
from stainmap.surface.soup import Soup

_EXPORT_AGAIN = "Export it again, or copy it again from where it came."
_ROW = re.compile(rb"^[ \t]*([vf])[ \t]+([^\n#]*)", re.MULTILINE)
_BEHIND_SLASH = re.compile(rb"/\S*")
_COUNTED_BACKWARDS = re.compile(rb"^[ \t]*f[ \t][^\n#]*-", re.MULTILINE)


def read_obj(content: bytes, name: str) -> Soup:
    """Read an OBJ file; polygons are cut into fans of triangles.

    Texture, normals, groups and materials are left out, and so are weights and colours of points.

    Raises
    ------
    MeshFileError
        If a point has no three numbers, a face no three corners or one that does not exist, or if
        there is no face.
    """
    text = content.replace(b"\r\n", b"\n").replace(b"\r", b"\n").replace(b"\\\n", b" ")
    backwards = _COUNTED_BACKWARDS.search(text) is not None
    point_rows: list[bytes] = []
    face_rows: list[list[bytes]] = []
    points_before: list[int] = []
    for kind, row in _ROW.findall(text):
        if kind == b"v":
            point_rows.append(row)
        else:
            face_rows.append(_BEHIND_SLASH.sub(b"", row).split())
            if backwards:
                points_before.append(len(point_rows))
    if not face_rows:
        what = "points but no triangles" if point_rows else "no triangles"
        raise MeshFileError(f"It holds {what}.", where=name, advice="Export it as a surface.")
    points = _points(point_rows, name)
    lengths = np.array([len(row) for row in face_rows], dtype=np.intp)
    if (lengths < 3).any():
        raise MeshFileError(
            f"Face {int(np.argmax(lengths < 3)) + 1:,} has fewer than three corners.",
            where=name,
            advice=_EXPORT_AGAIN,
        )
    corners = _corners(face_rows, name)
    if backwards:
        known = np.repeat(np.array(points_before), lengths)
        corners = np.where(corners < 0, corners + known + 1, corners)
    wrong = (corners < 1) | (corners > len(points))
    if wrong.any():
        at = int(np.argmax(wrong))
        face = int(np.searchsorted(np.cumsum(lengths), at, side="right"))
        raise MeshFileError(
            f"Face {face + 1:,} has a corner that does not exist among {len(points):,} points.",
            where=name,
            advice=_EXPORT_AGAIN,
        )
    return Soup(points=points, triangles=fans(corners - 1, lengths))


def fans(corners: NDArray[np.int64], lengths: NDArray[np.intp]) -> NDArray[np.int64]:
    """Cut polygons into triangles around their first corner.

    Parameters
    ----------
    corners
        Corners of all polygons, one after the other.
    lengths
        (P,) how many corners each polygon has, at least three.

    Returns
    -------
    triangles
        (T, 3), in the order of the polygons.
    """
    start = np.cumsum(lengths) - lengths
    count = lengths - 2
    origin = np.repeat(start, count)
    step = np.arange(len(origin)) - np.repeat(np.cumsum(count) - count, count)
    return np.stack(
        [corners[origin], corners[origin + step + 1], corners[origin + step + 2]], axis=1
    )


def _points(rows: list[bytes], name: str) -> NDArray[np.float64]:
    table = [row.split(None, 3)[:3] for row in rows]
    try:
        return np.array([list(map(float, row)) for row in table], dtype=np.float64).reshape(-1, 3)
    except ValueError:
        number, row = next(
            (number, row) for number, row in enumerate(table, start=1) if not _three_numbers(row)
        )
        shown = b" ".join(row).decode("utf-8", "replace")[:40]
        raise MeshFileError(
            f"Point {number:,} is '{shown}' instead of three numbers.",
            where=name,
            advice=_EXPORT_AGAIN,
        ) from None


def _three_numbers(row: list[bytes]) -> bool:
    try:
        return len(list(map(float, row))) == 3
    except ValueError:
        return False


def _corners(rows: list[list[bytes]], name: str) -> NDArray[np.int64]:
    words = [word for row in rows for word in row]
    try:
        return np.array(list(map(int, words)), dtype=np.int64)
    except (ValueError, OverflowError):
        shown = next(word for word in words if not re.fullmatch(rb"[-+]?\d{1,18}", word))
        raise MeshFileError(
            f"A face has the corner '{shown.decode('utf-8', 'replace')[:20]}', which is no number.",
            where=name,
            advice=_EXPORT_AGAIN,
        ) from None
