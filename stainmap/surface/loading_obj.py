"""Reading the points and faces of OBJ files.

A general library splits and reorders points by material, texture and normal; here every point
must keep its place, so that what is planned on the surface can be carried back to the file.
"""

from __future__ import annotations

import re

import numpy as np

from stainmap.errors import MeshFileError
from stainmap.surface.loading_rows import check_amount, corner_array, point_array, triangles_of
from stainmap.surface.soup import Soup

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
    check_amount(text, name)
    backwards = _COUNTED_BACKWARDS.search(text) is not None
    point_rows: list[bytes] = []
    faces: list[list[bytes]] = []
    points_before: list[int] = []
    for kind, row in _ROW.findall(text):
        if kind == b"v":
            point_rows.append(row)
        else:
            faces.append((_BEHIND_SLASH.sub(b"", row) if b"/" in row else row).split())
            if backwards:
                points_before.append(len(point_rows))
    points = point_array(point_rows, name)
    if not faces:
        what = "points but no triangles" if len(points) else "no triangles"
        raise MeshFileError(f"It holds {what}.", where=name, advice="Export it as a surface.")
    corners, lengths = corner_array(faces, name)
    if backwards:
        known = np.repeat(np.array(points_before), lengths)
        corners = np.where(corners < 0, corners + known + 1, corners)
    return Soup(points=points, triangles=triangles_of(corners - 1, lengths, len(points), name))
