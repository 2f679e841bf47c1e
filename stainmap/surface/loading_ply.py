"""Reading PLY files [Turk1994], text and binary.

A general reader takes apart whatever the header describes; here only points and faces are looked
at, in one pass, and no promise of the header is believed before the bytes are there.
"""

from __future__ import annotations

import re
from typing import Literal, NamedTuple, NoReturn

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import MeshFileError
from stainmap.surface.loading_rows import (
    EXPORT_AGAIN,
    check_amount,
    check_rows,
    corner_array,
    is_count,
    point_array,
    rows_of,
    too_short,
    triangles_of,
)
from stainmap.surface.soup import MAX_POINTS, MAX_TRIANGLES, Soup, too_many

_LONGEST_HEADER_BYTES = 1 << 18
_END = re.compile(rb"^end_header[ \t]*\r?\n", re.MULTILINE)
_ORDERS = {"ascii": "", "binary_little_endian": "<", "binary_big_endian": ">"}
_TYPES = {
    "char": "i1",
    "uchar": "u1",
    "short": "i2",
    "ushort": "u2",
    "int": "i4",
    "uint": "u4",
    "float": "f4",
    "double": "f8",
}
_TYPES |= {"int8": "i1", "uint8": "u1", "int16": "i2", "uint16": "u2", "int32": "i4"}
_TYPES |= {"uint32": "u4", "int64": "i8", "uint64": "u8", "float32": "f4", "float64": "f8"}
_CORNER_LISTS = ("vertex_indices", "vertex_index")


class _Property(NamedTuple):
    """A value of an element, or a list of values if `count_kind` is not empty."""

    name: str
    kind: str
    count_kind: str


class _Element(NamedTuple):
    """A kind of thing in the file, how many there are, and what is said of each."""

    name: str
    total: int
    properties: list[_Property]

    @property
    def least_bytes(self) -> int:
        """How many bytes one takes at least; a face has three corners."""
        size = 0
        for one in self.properties:
            if not one.count_kind:
                size += _size(one.kind)
            else:
                corners = 3 if self.name == "face" and one.name in _CORNER_LISTS else 0
                size += _size(one.count_kind) + corners * _size(one.kind)
        return size


def _size(kind: str) -> int:
    return int(kind[1])


def read_ply(content: bytes, name: str) -> Soup:
    """Read a PLY file; polygons are cut into fans of triangles, all else is left out.

    Raises
    ------
    MeshFileError
        If header or rows are not as they must be, the file ends too early, or has no faces.
    """
    mark = _END.search(content, 0, _LONGEST_HEADER_BYTES)
    if mark is None:
        raise MeshFileError(
            "Its header is incomplete: 'end_header' is missing.", where=name, advice=EXPORT_AGAIN
        )
    order, elements = _header(content[: mark.start()], name)
    by_name = {one.name: one for one in elements}
    if len(by_name) < len(elements):
        _refuse("Its header names an element twice.", name)
    points, faces = (by_name[one].total if one in by_name else 0 for one in ("vertex", "face"))
    _check_axes(by_name.get("vertex"), name)
    is_text = order == "ascii"
    # In text a value takes two bytes with the gap behind it, but for the last one.
    least = sum(one.total * (2 if is_text else one.least_bytes) for one in elements) - is_text
    if least > len(content) - mark.end():
        raise too_short(points, faces, name)
    if points > MAX_POINTS or faces > MAX_TRIANGLES:
        raise too_many(max(points, faces), name)
    if is_text:
        return _read_text(content[mark.end() :], elements, points, name)
    return _Binary(content, mark.end(), _ORDERS[order], name).soup(elements)


def _refuse(message: str, name: str) -> NoReturn:
    raise MeshFileError(message, where=name, advice=EXPORT_AGAIN) from None


def _no_faces(points: int, name: str) -> MeshFileError:
    what = "points but no triangles" if points else "no triangles"
    return MeshFileError(f"It holds {what}.", where=name, advice="Export it as a surface.")


def _check_axes(vertex: _Element | None, name: str) -> None:
    axes = [] if vertex is None else [one.name for one in vertex.properties if not one.count_kind]
    if not set("xyz") <= set(axes):
        _refuse("Its header describes no points with x, y and z.", name)


def _header(header: bytes, name: str) -> tuple[str, list[_Element]]:
    """Return the order of bytes and what follows the header, in turn."""
    order = ""
    elements: list[_Element] = []
    lines = header.decode("ascii", "replace").splitlines()[1:]
    for number, line in enumerate(lines, start=2):
        words = line.split()
        if not words or words[0] in ("comment", "obj_info"):
            continue
        if words[0] == "format" and len(words) == 3 and words[1] in _ORDERS and not order:
            order = words[1]
        elif words[0] == "element" and len(words) == 3 and is_count(words[2].encode()):
            elements.append(_Element(words[1], int(words[2]), []))
        elif words[0] == "property" and elements:
            elements[-1].properties.append(_property(words, line, number, name))
        else:
            _refuse(f"Line {number} of its header is '{line[:40]}', which cannot be read.", name)
    if not order:
        _refuse("Its header does not say whether it is text or binary.", name)
    return order, elements


def _property(words: list[str], line: str, number: int, name: str) -> _Property:
    is_list = words[1:2] == ["list"]
    kinds = words[2:4] if is_list else words[1:2]
    if len(words) != (5 if is_list else 3) or not set(kinds) <= _TYPES.keys():
        _refuse(f"Line {number} of its header is '{line[:40]}', which cannot be read.", name)
    count_kind = _TYPES[kinds[0]] if is_list else ""
    if count_kind.startswith("f"):
        _refuse(f"Line {number} of its header counts in fractions: '{line[:40]}'.", name)
    return _Property(words[-1], _TYPES[kinds[-1]], count_kind)


def _corner_list(element: _Element, name: str) -> int:
    """Return which property of a face lists its corners."""
    for place, one in enumerate(element.properties):
        if one.count_kind and one.name in _CORNER_LISTS and not one.kind.startswith("f"):
            return place
    _refuse("Its header describes faces without a list of corners.", name)


# ---- text


def _read_text(body: bytes, elements: list[_Element], point_count: int, name: str) -> Soup:
    check_amount(body, name)
    rows = rows_of(body)
    points: NDArray[np.float64] = np.empty((0, 3))
    triangles: NDArray[np.int64] | None = None
    start = 0
    for element in elements:
        count = element.total if element.properties else 0
        mine = rows[start : start + count]
        start += count
        if element.name == "vertex":
            check_rows(mine, count, 0, name)
            points = _text_points(mine, element, name)
        elif element.name == "face" and count:
            if len(mine) < count:
                _refuse(f"It promises {count:,} faces and holds {len(mine):,}.", name)
            corners, lengths = _text_corners(mine, element, name)
            triangles = triangles_of(corners, lengths, point_count, name)
    if triangles is None:
        raise _no_faces(len(points), name)
    return Soup(points=points, triangles=triangles)


def _text_points(rows: list[bytes], element: _Element, name: str) -> NDArray[np.float64]:
    names = [one.name for one in element.properties]
    if names[:3] == ["x", "y", "z"]:
        return point_array(rows, name)
    if any(one.count_kind for one in element.properties):
        _refuse("Its points carry lists, which cannot be read.", name)
    x, y, z = (names.index(axis) for axis in "xyz")
    last = max(x, y, z)
    picked = []
    for row in rows:
        words = row.split(None, last + 1)
        picked.append(b" ".join((words[x], words[y], words[z])) if len(words) > last else b"?")
    return point_array(picked, name)


def _text_corners(
    rows: list[bytes], element: _Element, name: str
) -> tuple[NDArray[np.int64], NDArray[np.intp]]:
    place = _corner_list(element, name)
    faces = []
    for number, row in enumerate(rows, start=1):
        face = _listed(row.split(), element, place)
        if len(face) < 3:
            shown = row.decode("utf-8", "replace")[:40]
            _refuse(f"Face {number:,} is incomplete: '{shown}'.", name)
        faces.append(face)
    return corner_array(faces, name)


def _listed(words: list[bytes], element: _Element, place: int) -> list[bytes]:
    """Return what the list at a place of a row holds; nothing if the row is too short for it."""
    at = 0
    for number, one in enumerate(element.properties):
        if not one.count_kind:
            at += 1
            continue
        if at >= len(words) or not is_count(words[at]):
            return []
        count = int(words[at])
        if number == place:
            found = words[at + 1 : at + 1 + count]
            return found if len(found) == count else []
        at += 1 + count
    return []


# ---- binary


class _Binary:
    """Reads one element after another from bytes."""

    def __init__(self, content: bytes, start: int, order: str, name: str) -> None:
        self._content, self._at, self._order, self._name = content, start, order, name

    def soup(self, elements: list[_Element]) -> Soup:
        """Return points and triangles."""
        points: NDArray[np.float64] = np.empty((0, 3))
        corners: tuple[NDArray[np.int64], NDArray[np.intp]] | None = None
        for element in elements:
            if not element.total or not element.properties:
                continue
            if element.name == "face":
                corners = self._corners(element)
                continue
            rows = self._table(element)
            if rows is None:
                self._walk(element, -1)
            if element.name == "vertex":
                if rows is None:
                    _refuse("Its points carry lists of different lengths.", self._name)
                names = [one.name for one in element.properties]
                columns = [rows[f"value {names.index(axis)}"] for axis in "xyz"]
                with np.errstate(invalid="ignore"):  # some bit patterns of NaN, refused later
                    points = np.stack([one.astype(np.float64) for one in columns], axis=1)
            if len(points) and corners is not None:
                break
        if corners is None:
            raise _no_faces(len(points), self._name)
        return Soup(points=points, triangles=triangles_of(*corners, len(points), self._name))

    def _table(self, element: _Element) -> NDArray[np.void] | None:
        """Return the rows of an element, and go on behind it, if its lists are all as long.

        Most files hold triangles only. None if lists differ, or there are fewer bytes than that.
        """
        fields: list[tuple[str, str] | tuple[str, str, tuple[int]]] = []
        at = self._at
        for place, one in enumerate(element.properties):
            if not one.count_kind:
                fields.append((f"value {place}", self._order + one.kind))
                at += _size(one.kind)
                continue
            count = self._count(at, one)
            fields.append((f"count {place}", self._order + one.count_kind))
            fields.append((f"value {place}", self._order + one.kind, (count,)))
            at += _size(one.count_kind) + count * _size(one.kind)
            if at > len(self._content):
                return None
        row = np.dtype(fields)
        if element.total * row.itemsize > len(self._content) - self._at:
            return None
        rows = np.frombuffer(self._content, row, element.total, self._at)
        for place, one in enumerate(element.properties):
            if one.count_kind and (rows[f"count {place}"] != rows[f"count {place}"][0]).any():
                return None
        self._at += element.total * row.itemsize
        return rows

    def _corners(self, element: _Element) -> tuple[NDArray[np.int64], NDArray[np.intp]]:
        """Return the corners of all faces, one after the other, and how many each has."""
        place = _corner_list(element, self._name)
        rows = self._table(element)
        if rows is not None:
            table = rows[f"value {place}"].astype(np.int64)
            lengths = np.full(len(table), table.shape[1], dtype=np.intp)
            corners = table.reshape(-1)
        else:
            start, lengths = self._walk(element, place)
            size = _size(element.properties[place].kind)
            first = np.repeat(start, lengths)
            step = np.arange(len(first)) - np.repeat(np.cumsum(lengths) - lengths, lengths)
            at = (first + step * size)[:, None] + np.arange(size)
            picked = np.ascontiguousarray(np.frombuffer(self._content, np.uint8)[at])
            kind = self._order + element.properties[place].kind
            corners = picked.view(kind).reshape(-1).astype(np.int64)
        if (lengths < 3).any():
            number = int(np.argmax(lengths < 3)) + 1
            _refuse(f"Face {number:,} has fewer than three corners.", self._name)
        return corners, lengths

    def _walk(self, element: _Element, place: int) -> tuple[NDArray[np.int64], NDArray[np.intp]]:
        """Go through an element row by row; return where the lists at a place begin, how long."""
        starts: list[int] = []
        lengths: list[int] = []
        at, end = self._at, len(self._content)
        for number in range(1, element.total + 1):
            for which, one in enumerate(element.properties):
                if not one.count_kind:
                    at += _size(one.kind)
                    continue
                count = self._count(at, one)
                at += _size(one.count_kind)
                if which == place:
                    starts.append(at)
                    lengths.append(count)
                at += count * _size(one.kind)
            if at > end:
                _refuse(f"It ends too early: within {element.name} {number:,}.", self._name)
        self._at = at
        return np.array(starts, dtype=np.int64), np.array(lengths, dtype=np.intp)

    def _count(self, at: int, one: _Property) -> int:
        """Return how long a list says it is; nothing if it says less."""
        order: Literal["big", "little"] = "big" if self._order == ">" else "little"
        piece = self._content[at : at + _size(one.count_kind)]
        return max(0, int.from_bytes(piece, order, signed=one.count_kind.startswith("i")))
