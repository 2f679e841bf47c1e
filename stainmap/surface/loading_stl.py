"""Reading STL files, binary and ASCII."""

from __future__ import annotations

import re
import struct
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import MeshFileError
from stainmap.surface.loading_rows import EXPORT_AGAIN, POINT_FOR_COMMA
from stainmap.surface.soup import MAX_TRIANGLES, Soup, too_many

HEADER_BYTES = 84
FACET_BYTES = 50
_FACET = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("attribute", "<u2")])
_CHUNK_BYTES = 4_000_000
# Far longer than any facet of twelve numbers.
_LONGEST_FACET_BYTES = 100_000

# A line that begins or ends a solid; names may hold any words.
_SOLID_LINE = re.compile(rb"[ \t]*(end)?solid(?![^\s])[^\n]*", re.IGNORECASE)
# The words of one facet with its twelve numbers left out.
_FACET_WORDS = {
    0: b"facet",
    1: b"normal",
    5: b"outer",
    6: b"loop",
    7: b"vertex",
    11: b"vertex",
    15: b"vertex",
    19: b"endloop",
    20: b"endfacet",
}
_WORDS_PER_FACET = 21
_END_OF_FACET = re.compile(rb"endfacet", re.IGNORECASE)


def promised_facets(content: bytes) -> int:
    """Return the number of triangles that the header of a binary STL promises."""
    return int(struct.unpack_from("<I", content, HEADER_BYTES - 4)[0])


def has_binary_length(content: bytes) -> bool:
    """Return whether the length is exactly that of a binary STL with the promised triangles."""
    return len(content) >= HEADER_BYTES and len(
        content
    ) == HEADER_BYTES + FACET_BYTES * promised_facets(content)


def read_binary_stl(content: bytes, name: str) -> Soup:
    """Read a binary STL. Normals and attribute bytes are ignored.

    Parameters
    ----------
    content, name
        The bytes, and the file's name for error messages.

    Raises
    ------
    MeshFileError
        If it holds fewer or more triangles than its header promises, or none.
    """
    if len(content) < HEADER_BYTES:
        raise MeshFileError(
            f"It ends after {len(content)} bytes, within the header of a binary STL.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    promised = promised_facets(content)
    rest = len(content) - HEADER_BYTES
    held = rest // FACET_BYTES
    if promised == 0 and rest == 0:
        raise MeshFileError("It holds no triangles.", where=name, advice=EXPORT_AGAIN)
    extra = rest - promised * FACET_BYTES
    padding = extra > 0 and (extra < FACET_BYTES or not any(content[-extra:]))
    if promised == 0 or extra < 0 or (extra > 0 and not padding):
        raise MeshFileError(
            f"It promises {promised:,} triangles and holds {held:,}.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    if promised > MAX_TRIANGLES:
        raise too_many(promised, name)
    facets = np.frombuffer(content, dtype=_FACET, count=promised, offset=HEADER_BYTES)
    corners = np.ascontiguousarray(facets["corners"], dtype=np.float32).reshape(-1, 3)
    behind = "1 byte" if extra == 1 else f"{extra:,} bytes"
    warnings = (f"After the last triangle {behind} too many were ignored.",) if padding else ()
    return _soup(corners, warnings)


def read_ascii_stl(content: bytes, name: str) -> Soup:
    """Read an ASCII STL strictly. Normals are ignored; several solids are put together.

    Raises
    ------
    MeshFileError
        At the first line that is not as it must be, if it ends too early, or holds no triangle.
    """
    text = content
    if b"\r" in text:
        text = text.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    parts: list[NDArray[np.float64]] = []
    count = 0
    for start, end in _solids(text, name):
        for corners in _facet_corners(text, start, end, name):
            parts.append(corners)
            count += len(corners) // 3
            if count > MAX_TRIANGLES:
                raise too_many(count, name)
    corners = np.concatenate(parts) if parts else np.empty((0, 3))
    if not len(corners):
        raise MeshFileError("It holds no triangles.", where=name, advice=EXPORT_AGAIN)
    return _soup(corners, ())


def _soup(corners: NDArray[np.float32] | NDArray[np.float64], warnings: tuple[str, ...]) -> Soup:
    triangles = np.arange(len(corners), dtype=np.int32).reshape(-1, 3)
    return Soup(points=corners, triangles=triangles, warnings=warnings)


def _solids(text: bytes, name: str) -> Iterator[tuple[int, int]]:
    """Yield where the facets of each solid begin and end; check that solids begin and end."""
    begun: int | None = None
    last = 0
    for line in _solid_lines(text):
        ends = line.group(1) is not None
        if ends != (begun is not None):
            wrong = "ends a solid that did not begin" if ends else "begins a solid within a solid"
            raise MeshFileError(
                f"Line {_line_number(text, line.start()):,} {wrong}.",
                where=name,
                advice=EXPORT_AGAIN,
            )
        if begun is None:
            _only_blank(text, last, line.start(), name)
            begun = line.end()
        else:
            yield begun, line.start()
            begun = None
        last = line.end()
    if begun is not None:
        count = text.lower().count(b"endfacet", begun)
        raise MeshFileError(
            f"It ends too early: after {count:,} triangles its last line, 'endsolid', is missing.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    _only_blank(text, last, len(text), name)


def _solid_lines(text: bytes) -> Iterator[re.Match[bytes]]:
    """Yield the lines that begin or end a solid.

    First the bare word is looked for: trying the pattern on every line takes a third of reading.
    """
    lower = text.lower()
    at = lower.find(b"solid")
    while at >= 0:
        line = _SOLID_LINE.match(text, text.rfind(b"\n", 0, at) + 1)
        if line is not None:
            yield line
        ends = lower.find(b"\n", at)
        at = lower.find(b"solid", ends) if ends >= 0 else -1


def _only_blank(text: bytes, start: int, end: int, name: str) -> None:
    outside = text[start:end].strip(b" \t\n\0\x1a")
    if outside:
        at = text.index(outside[:1], start)
        raise MeshFileError(
            f"Line {_line_number(text, at):,} lies outside of any solid.",
            where=name,
            advice=EXPORT_AGAIN,
        )


def _facet_corners(text: bytes, start: int, end: int, name: str) -> Iterator[NDArray[np.float64]]:
    """Yield the corners (3n, 3) of the facets between two places, some megabytes at a time."""
    while start < end:
        stop = end
        if end - start > _CHUNK_BYTES:
            stop = min(end, start + _CHUNK_BYTES + _LONGEST_FACET_BYTES)
            mark = _END_OF_FACET.search(text, start + _CHUNK_BYTES, stop)
            if mark is None and stop < end:
                raise _not_a_facet(text, start, stop, name)
            stop = mark.end() if mark else end
        words = text[start:stop].lower().split()
        if not words:
            return
        if len(words) % _WORDS_PER_FACET or not _has_pattern(words):
            raise _not_a_facet(text, start, stop, name)
        # Python would read 1_0 as ten, the format does not.
        strange = b"_" in text[start:stop]
        corners = np.empty((len(words) // _WORDS_PER_FACET, 9))
        try:
            for column, place in enumerate((8, 9, 10, 12, 13, 14, 16, 17, 18)):
                numbers = words[place::_WORDS_PER_FACET]
                if strange and b"_" in b"".join(numbers):
                    raise ValueError
                corners[:, column] = list(map(float, numbers))
        except ValueError:
            raise _not_a_facet(text, start, stop, name) from None
        yield corners.reshape(-1, 3)
        start = stop


def _has_pattern(words: list[bytes]) -> bool:
    return all(
        set(words[place::_WORDS_PER_FACET]) <= {word} for place, word in _FACET_WORDS.items()
    )


def _not_a_facet(text: bytes, start: int, stop: int, name: str) -> MeshFileError:
    """Find the first word that is not as it must be, and say so."""
    for count, match in enumerate(re.finditer(rb"\S+", text[start:stop])):
        place = count % _WORDS_PER_FACET
        word = match.group()
        expected = _FACET_WORDS.get(place)
        if expected is not None:
            fine = word.lower() == expected
        else:
            fine = 2 <= place <= 4 or _is_number(word)
        if not fine:
            wanted = f"'{expected.decode()}'" if expected else "a number"
            shown = word[:30].decode("utf-8", "replace")
            return MeshFileError(
                f"Line {_line_number(text, start + match.start()):,} has '{shown}' where"
                f" {wanted} must stand.",
                where=name,
                advice=POINT_FOR_COMMA if "," in shown and not expected else EXPORT_AGAIN,
            )
    return MeshFileError(
        f"Line {_line_number(text, stop):,} ends a solid in the middle of a triangle.",
        where=name,
        advice=EXPORT_AGAIN,
    )


def _is_number(word: bytes) -> bool:
    try:
        float(word)
    except ValueError:
        return False
    return b"_" not in word


def _line_number(text: bytes, at: int) -> int:
    return text.count(b"\n", 0, at) + 1
