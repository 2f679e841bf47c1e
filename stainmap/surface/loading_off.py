"""Reading OFF files."""

from __future__ import annotations

import re

from stainmap.errors import MeshFileError
from stainmap.surface.loading_rows import (
    check_amount,
    check_rows,
    corner_array,
    point_array,
    rows_of,
    too_short,
    triangles_of,
)
from stainmap.surface.soup import Soup

_COMMENT = re.compile(rb"#[^\n]*")
_HEAD = re.compile(rb"\s*\w*OFF\s+(\d{1,18})\s+(\d{1,18})[^\n]*\n", re.IGNORECASE)


def read_off(content: bytes, name: str) -> Soup:
    """Read an OFF file; polygons are cut into fans of triangles, colours and normals left out.

    Raises
    ------
    MeshFileError
        If it is incomplete, a row is not as it must be, or there is no face.
    """
    text = _COMMENT.sub(b"", content.replace(b"\r\n", b"\n").replace(b"\r", b"\n"))
    head = _HEAD.match(text)
    if head is None:
        raise MeshFileError(
            "It begins like OFF, but the numbers of points and faces are missing.",
            where=name,
            advice="Export it again, best as binary STL.",
        )
    point_count, face_count = int(head.group(1)), int(head.group(2))
    if 2 * (point_count + face_count) > len(text):
        raise too_short(point_count, face_count, name)
    check_amount(text, name)
    rows = rows_of(text[head.end() :])
    check_rows(rows, point_count, face_count, name)
    points = point_array(rows[:point_count], name)
    if not face_count:
        raise MeshFileError(
            "It holds points but no triangles.", where=name, advice="Export it as a surface."
        )
    words = [row.split() for row in rows[point_count : point_count + face_count]]
    corners, lengths = corner_array([row[1 : int(row[0]) + 1] for row in words], name)
    return Soup(points=points, triangles=triangles_of(corners, lengths, point_count, name))
