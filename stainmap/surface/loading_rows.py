"""What the readers of text formats have in common: rows of numbers, and polygons."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import MeshFileError
from stainmap.surface.soup import MAX_TRIANGLES, too_many

EXPORT_AGAIN = "Export it again, or copy it again from where it came."
POINT_FOR_COMMA = "Export it again with decimal points instead of commas."

# What stands between words, of which a triangle's row has four and a point's three or more.
_MAX_GAPS = 8 * MAX_TRIANGLES


def check_amount(text: bytes, name: str) -> None:
    """Refuse text of so many words that taking it apart could fill the memory."""
    gaps = sum(text.count(gap) for gap in (b" ", b"\n", b"\t", b"\r"))
    if gaps > _MAX_GAPS:
        raise too_many(gaps // 8, name)


def rows_of(text: bytes) -> list[bytes]:
    """Return the lines that are not blank."""
    return [line for line in text.splitlines() if line.strip()]


def check_rows(rows: list[bytes], points: int, faces: int, name: str) -> None:
    """Refuse text with fewer lines than promised, or a face with fewer corners than it says.

    Points come first, then faces, each of which begins with the number of its corners.
    """
    for what, promised, held in (
        ("points", points, len(rows)),
        ("faces", faces, len(rows) - points),
    ):
        if held < promised:
            raise MeshFileError(
                f"It promises {promised:,} {what} and holds {max(held, 0):,}.",
                where=name,
                advice=EXPORT_AGAIN,
            )
    for number, row in enumerate(rows[points : points + faces], start=1):
        words = row.split()
        if not is_count(words[0]) or int(words[0]) < 3 or len(words) <= int(words[0]):
            raise MeshFileError(
                f"Face {number:,} is incomplete: '{row.decode('utf-8', 'replace')[:40]}'.",
                where=name,
                advice=EXPORT_AGAIN,
            )


def is_count(word: bytes) -> bool:
    """Return whether a word is a whole number of a sensible length."""
    return word.isdigit() and len(word) < 19


def too_short(points: int, faces: int, name: str) -> MeshFileError:
    """Return the error about a file that cannot hold what it promises."""
    return MeshFileError(
        f"It ends too early for the {points:,} points and {faces:,} faces it promises.",
        where=name,
        advice=EXPORT_AGAIN,
    )


def point_array(rows: list[bytes], name: str) -> NDArray[np.float64]:
    """Return the first three numbers of each row, (N, 3).

    Raises
    ------
    MeshFileError
        At the first row that does not begin with three numbers.
    """
    words = [word for row in rows for word in row.split(None, 3)[:3]]
    try:
        # Python would read 1_0 as ten, the formats do not.
        if len(words) != 3 * len(rows) or b"_" in b"".join(words):
            raise ValueError
        return np.array(list(map(float, words)), dtype=np.float64).reshape(-1, 3)
    except ValueError:
        number, row = next(
            (number, row)
            for number, row in enumerate((row.split(None, 3)[:3] for row in rows), start=1)
            if not _three_numbers(row)
        )
        shown = b" ".join(row).decode("utf-8", "replace")[:40]
        raise MeshFileError(
            f"Point {number:,} is '{shown}' instead of three numbers.",
            where=name,
            advice=POINT_FOR_COMMA if "," in shown else EXPORT_AGAIN,
        ) from None


def _three_numbers(row: list[bytes]) -> bool:
    try:
        return len(list(map(float, row))) == 3 and not any(b"_" in word for word in row)
    except ValueError:
        return False


def corner_array(faces: list[list[bytes]], name: str) -> tuple[NDArray[np.int64], NDArray[np.intp]]:
    """Return the corners of all faces, one after the other, and how many each has.

    Raises
    ------
    MeshFileError
        If a corner is no whole number, or a face has fewer than three.
    """
    lengths = np.array([len(face) for face in faces], dtype=np.intp)
    if (lengths < 3).any():
        raise MeshFileError(
            f"Face {int(np.argmax(lengths < 3)) + 1:,} has fewer than three corners.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    words = [word for face in faces for word in face]
    try:
        if b"_" in b"".join(words):
            raise ValueError
        return np.array(list(map(int, words)), dtype=np.int64), lengths
    except (ValueError, OverflowError):
        shown = next((word for word in words if not _is_short_integer(word)), b"?")
        raise MeshFileError(
            f"A face has the corner '{shown.decode('utf-8', 'replace')[:20]}', which is no number.",
            where=name,
            advice=EXPORT_AGAIN,
        ) from None


def _is_short_integer(word: bytes) -> bool:
    return word.removeprefix(b"-").removeprefix(b"+").isdigit() and len(word) < 19


def triangles_of(
    corners: NDArray[np.int64], lengths: NDArray[np.intp], point_count: int, name: str
) -> NDArray[np.int64]:
    """Return the triangles (T, 3) of polygons whose corners count from 0.

    Raises
    ------
    MeshFileError
        If a corner does not exist.
    """
    wrong = (corners < 0) | (corners >= point_count)
    if wrong.any():
        at = int(np.argmax(wrong))
        face = int(np.searchsorted(np.cumsum(lengths), at, side="right"))
        raise MeshFileError(
            f"Face {face + 1:,} has a corner that does not exist among {point_count:,} points.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    return fans(corners, lengths)


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
