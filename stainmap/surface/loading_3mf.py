"""Reading 3MF files [ThreeMF2018] piece by piece.

A general reader builds the whole tree of the XML first; a file of some kilobytes can unpack to one
that fills the memory. Here the text passes by once, and only points, triangles and places are kept.
Nothing is ever unpacked to the disk: a part's path is a name in the archive and nothing else.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Iterator
from typing import NamedTuple, NoReturn, Self
from xml.parsers import expat

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import MeshFileError
from stainmap.surface.loading_rows import EXPORT_AGAIN, POINT_FOR_COMMA
from stainmap.surface.soup import MAX_POINTS, MAX_TRIANGLES, Soup, too_many
from stainmap.units import LengthUnit

_MAX_UNPACKED_BYTES = 1 << 30
_MAX_ELEMENTS = 2 * MAX_TRIANGLES
_MAX_DEPTH = 100
_MAX_PLACED = 10_000
_MAX_NESTED = 30
_MAX_PARTS = 100
_CHUNK_BYTES = 1 << 20
# One tag with all it says; expat holds it in memory until it ends.
_LONGEST_TAG_BYTES = 1 << 22
_WORDS_AT_ONCE = 300_000

# Units of 3MF; the millimetre is the default.
_UNITS = {
    "micron": (LengthUnit.MICROMETRE, 1.0),
    "millimeter": (LengthUnit.MILLIMETRE, 1.0),
    "centimeter": (LengthUnit.CENTIMETRE, 1.0),
    "inch": (LengthUnit.INCH, 1.0),
    "foot": (LengthUnit.INCH, 12.0),
    "meter": (LengthUnit.METRE, 1.0),
}
_ROOT_PART = "3d/3dmodel.model"
_RELATIONS = "_rels/.rels"


class _Use(NamedTuple):
    """One placing of an object: the part and number it has there, and where it goes (4, 3)."""

    part: str
    number: str
    transform: NDArray[np.float64]


class _Object(NamedTuple):
    """What an object holds: points, triangles, and other objects."""

    points: NDArray[np.float64]
    triangles: NDArray[np.int64]
    components: list[_Use]


class _Model(NamedTuple):
    """One model part of the archive."""

    unit: str
    objects: dict[str, _Object]
    items: list[_Use]


def read_3mf(content: bytes, name: str) -> Soup:
    """Read a 3MF file: every object that its build list places, where it places it.

    Parameters
    ----------
    content, name
        The bytes, and the file's name for error messages.

    Raises
    ------
    MeshFileError
        If it is damaged, incomplete or far too large, or places no triangles.
    """
    with _Archive(content, name) as archive:
        root = archive.root_part()
        models = {root: archive.model(root)}
        if models[root].unit not in _UNITS:
            raise MeshFileError(
                f"Its unit is '{models[root].unit[:20]}', which 3MF does not know.",
                where=name,
                advice=EXPORT_AGAIN,
            )
        points: list[NDArray[np.float64]] = []
        triangles: list[NDArray[np.int64]] = []
        before = faces = 0
        for body, transform in _placed(models, root, archive, name):
            with np.errstate(over="ignore", invalid="ignore"):
                placed = body.points @ transform[:3] + transform[3]
            mirrored = np.linalg.det(transform[:3]) < 0
            points.append(placed)
            triangles.append((body.triangles[:, ::-1] if mirrored else body.triangles) + before)
            before += len(placed)
            faces += len(body.triangles)
            if before > MAX_POINTS or faces > MAX_TRIANGLES:
                raise too_many(max(faces, before), name)
    if not faces:
        what = "points but no triangles" if before else "no triangles"
        raise MeshFileError(f"It holds {what}.", where=name, advice="Export it as a surface.")
    unit, factor = _UNITS[models[root].unit]
    return Soup(
        points=np.concatenate(points) * factor,
        triangles=np.concatenate(triangles),
        declared_unit=unit,
    )


def _placed(
    models: dict[str, _Model], root: str, archive: _Archive, name: str
) -> Iterator[tuple[_Object, NDArray[np.float64]]]:
    """Yield every body with its place, going down through components without recursion."""
    waiting = [(use, use.transform, 1) for use in reversed(models[root].items)]
    if not waiting:
        raise MeshFileError(
            "Its build list is empty, so nothing of it is placed anywhere.",
            where=name,
            advice=EXPORT_AGAIN,
        )
    count = 0
    while waiting:
        use, transform, depth = waiting.pop()
        count += 1
        if count > _MAX_PLACED or depth > _MAX_NESTED:
            raise MeshFileError(
                "Its objects are made of one another without end, or place far too many copies.",
                where=name,
                advice="Export it as one body.",
            )
        if use.part not in models:
            if len(models) >= _MAX_PARTS:
                raise too_many(_MAX_PARTS, name)
            models[use.part] = archive.model(use.part)
        body = models[use.part].objects.get(use.number)
        if body is None:
            raise MeshFileError(
                f"It places object '{use.number[:20]}', which it does not hold.",
                where=name,
                advice=EXPORT_AGAIN,
            )
        if len(body.points):
            yield body, transform
        for inner in reversed(body.components):
            with np.errstate(over="ignore", invalid="ignore"):
                moved = inner.transform @ transform[:3]
                moved[3] += transform[3]
            waiting.append((inner, moved, depth + 1))


class _Archive:
    """The ZIP archive around a 3MF file; nothing is read but what is asked for, and with limits."""

    def __init__(self, content: bytes, name: str) -> None:
        self._name = name
        self._left = _MAX_UNPACKED_BYTES
        try:
            self._zip = zipfile.ZipFile(io.BytesIO(content))
            entries = self._zip.infolist()
        except Exception:  # noqa: BLE001 - zipfile fails in many ways on damaged archives
            self._damaged()
        if any(entry.compress_size > len(content) for entry in entries):
            self._damaged()
        self._parts = {_part_name(entry.filename): entry for entry in entries}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._zip.close()

    def _damaged(self) -> NoReturn:
        raise MeshFileError(
            "It is a damaged or incomplete 3MF file.", where=self._name, advice=EXPORT_AGAIN
        ) from None

    def root_part(self) -> str:
        """Return the part with the model: the one the relations name, else the usual one."""
        named = ""
        if _RELATIONS in self._parts:
            try:
                relations = self._zip.open(self._parts[_RELATIONS]).read(1 << 20)
            except Exception:  # noqa: BLE001 - as above; the usual name may still help
                relations = b""
            named = _part_name(_start_part(relations))
        models = [part for part in self._parts if part.endswith(".model")]
        usual = [part for part in models if part.endswith(_ROOT_PART)]
        part = next((one for one in (named, *usual, *models) if one in self._parts), None)
        if part is None:
            self._damaged()
        return part

    def model(self, part: str) -> _Model:
        """Return what one part describes."""
        entry = self._parts.get(part)
        if entry is None:
            raise MeshFileError(
                f"It refers to a part '{part[:40]}', which it does not hold.",
                where=self._name,
                advice=EXPORT_AGAIN,
            )
        if entry.file_size > self._left:
            self._too_large(entry.file_size)
        parser = _ModelParser(part, self._name)
        try:
            with self._zip.open(entry) as stream:
                while chunk := stream.read(_CHUNK_BYTES):
                    self._left -= len(chunk)
                    if self._left < 0:
                        self._too_large(_MAX_UNPACKED_BYTES)
                    parser.feed(chunk)
            return parser.finished()
        except MeshFileError:
            raise
        except expat.ExpatError as error:
            raise MeshFileError(
                f"Line {error.lineno:,} of its model is no proper XML.",
                where=self._name,
                advice=EXPORT_AGAIN,
            ) from None
        except Exception:  # noqa: BLE001 - as above
            self._damaged()

    def _too_large(self, size: int) -> NoReturn:
        raise MeshFileError(
            f"Unpacked it would take {size / 2**30:.1f} GB; at most 1 GB is read.",
            where=self._name,
            advice="Export one body at a time.",
        )


def _part_name(path: str) -> str:
    """Return the name of a part as it is compared: without the first slash, in small letters."""
    return path.lstrip("/").lower()


def _start_part(relations: bytes) -> str:
    """Return the target that a relations part gives for the model, or nothing."""
    found: list[str] = []

    def start(tag: str, attributes: dict[str, str]) -> None:
        if tag.endswith("Relationship") and attributes.get("Type", "").endswith("/3dmodel"):
            found.append(attributes.get("Target", ""))

    parser = expat.ParserCreate()
    parser.StartElementHandler = start
    parser.StartDoctypeDeclHandler = _no_definitions
    try:
        parser.Parse(relations, True)
    except (expat.ExpatError, MeshFileError):
        return ""
    return found[0] if found else ""


def _no_definitions(*_: object) -> NoReturn:
    raise MeshFileError("It holds XML definitions.")


class _ModelParser:
    """Takes the XML of a model in pieces and keeps what makes the surface."""

    def __init__(self, part: str, name: str) -> None:
        self._part, self._name = part, name
        self._unit = "millimeter"
        self._objects: dict[str, _Object] = {}
        self._items: list[_Use] = []
        self._number: str | None = None
        self._components: list[_Use] = []
        self._points = _Numbers(name, "Point", _number)
        self._corners = _Numbers(name, "Triangle", _index)
        self._depth = self._elements = self._fed = 0
        self._total_points = self._total_triangles = 0
        self._handlers: dict[str, Callable[[dict[str, str]], None]] = {}
        self._object_tag = ""
        self._expat = expat.ParserCreate(namespace_separator=" ")
        self._expat.StartElementHandler = self._start
        self._expat.EndElementHandler = self._end
        self._expat.StartDoctypeDeclHandler = self._definitions

    def feed(self, chunk: bytes) -> None:
        """Take the next piece."""
        self._fed += len(chunk)
        self._expat.Parse(chunk, False)
        if self._fed - self._expat.CurrentByteIndex > _LONGEST_TAG_BYTES + len(chunk):
            self._refuse("Its model has a tag or text of many megabytes.")
        if self._total_points + len(self._points) > MAX_POINTS:
            raise too_many(self._total_points + len(self._points), self._name)
        if self._total_triangles + len(self._corners) > MAX_TRIANGLES:
            raise too_many(self._total_triangles + len(self._corners), self._name)

    def finished(self) -> _Model:
        """Return the model after the last piece."""
        self._expat.Parse(b"", True)
        return _Model(unit=self._unit, objects=self._objects, items=self._items)

    def _refuse(self, message: str) -> NoReturn:
        raise MeshFileError(message, where=self._name, advice=EXPORT_AGAIN) from None

    def _definitions(self, *_: object) -> NoReturn:
        self._refuse("It holds XML definitions that do not belong in 3MF.")

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        self._depth += 1
        self._elements += 1
        if self._depth > _MAX_DEPTH:
            self._refuse(f"Its model is nested more than {_MAX_DEPTH} deep.")
        if self._elements > _MAX_ELEMENTS:
            raise too_many(self._elements, self._name)
        handler = self._handlers.get(tag)
        if handler is not None:
            handler(attributes)
        elif self._depth == 1:
            self._root(tag, attributes)

    def _end(self, tag: str) -> None:
        self._depth -= 1
        if tag == self._object_tag and self._number is not None:
            self._close_object(self._number)

    def _root(self, tag: str, attributes: dict[str, str]) -> None:
        space, _, local = tag.rpartition(" ")
        if local != "model":
            self._refuse(f"Its model begins with '{local[:20]}' instead of 'model'.")
        self._unit = attributes.get("unit", "millimeter").strip().lower()
        prefix = f"{space} " if space else ""
        self._object_tag = f"{prefix}object"
        self._handlers = {
            f"{prefix}object": self._open_object,
            f"{prefix}vertex": self._vertex,
            f"{prefix}triangle": self._triangle,
            f"{prefix}component": self._component,
            f"{prefix}item": self._item,
        }

    def _open_object(self, attributes: dict[str, str]) -> None:
        number = attributes.get("id")
        if number is None or self._number is not None:
            self._refuse("One of its objects has no number, or lies within another one.")
        if number in self._objects:
            self._refuse(f"Two of its objects have the number '{number[:20]}'.")
        self._number = number

    def _close_object(self, number: str) -> None:
        points = self._points.taken()
        triangles = self._corners.taken().astype(np.int64)
        if not np.isfinite(points).all():
            row = int(np.flatnonzero(~np.isfinite(points).all(axis=1))[0])
            self._refuse(f"Point {row + 1:,} has a coordinate that is not a number.")
        wrong = ((triangles < 0) | (triangles >= len(points))).any(axis=1)
        if wrong.any():
            self._refuse(
                f"Triangle {int(wrong.argmax()) + 1:,} has a corner that does not exist among"
                f" {len(points):,} points."
            )
        self._objects[number] = _Object(points, triangles, self._components)
        self._total_points += len(points)
        self._total_triangles += len(triangles)
        self._components, self._number = [], None

    def _vertex(self, attributes: dict[str, str]) -> None:
        if self._number is None:
            return
        try:
            self._points.add((attributes["x"], attributes["y"], attributes["z"]))
        except KeyError as error:
            self._refuse(f"A point has no {error.args[0]}.")

    def _triangle(self, attributes: dict[str, str]) -> None:
        if self._number is None:
            return
        try:
            self._corners.add((attributes["v1"], attributes["v2"], attributes["v3"]))
        except KeyError as error:
            self._refuse(f"A triangle has no {error.args[0]}.")

    def _component(self, attributes: dict[str, str]) -> None:
        if self._number is not None:
            self._components.append(self._use(attributes))
        if len(self._components) > _MAX_PLACED:
            raise too_many(len(self._components), self._name)

    def _item(self, attributes: dict[str, str]) -> None:
        self._items.append(self._use(attributes))
        if len(self._items) > _MAX_PLACED:
            raise too_many(len(self._items), self._name)

    def _use(self, attributes: dict[str, str]) -> _Use:
        number = attributes.get("objectid")
        if number is None:
            self._refuse("It places an object without saying which.")
        part = self._part
        for key, value in attributes.items():
            # The production extension lets an object lie in another part.
            if key.rpartition(" ")[2] == "path":
                part = _part_name(value)
        words = attributes.get("transform", "1 0 0 0 1 0 0 0 1 0 0 0").split()
        try:
            transform = np.array([_number(word) for word in words]).reshape(4, 3)
        except ValueError:
            transform = np.full((4, 3), np.nan)
        if not np.isfinite(transform).all():
            self._refuse(f"It places object '{number[:20]}' by something else than 12 numbers.")
        return _Use(part, number, transform)


class _Numbers:
    """Words of three numbers each, turned into arrays a few at a time."""

    def __init__(self, name: str, what: str, parse: Callable[[str], float]) -> None:
        self._name, self._what, self._parse = name, what, parse
        self._words: list[str] = []
        self._done: list[NDArray[np.float64]] = []
        self._count = 0

    def __len__(self) -> int:
        return self._count

    def add(self, words: tuple[str, str, str]) -> None:
        """Take three more."""
        self._words += words
        self._count += 1
        if len(self._words) >= _WORDS_AT_ONCE:
            self._convert()

    def taken(self) -> NDArray[np.float64]:
        """Return all of them as (N, 3) and begin anew."""
        self._convert()
        whole = np.concatenate(self._done)
        self._done, self._count = [], 0
        return whole

    def _convert(self) -> None:
        try:
            numbers = np.array(list(map(self._parse, self._words)), dtype=np.float64)
        except ValueError:
            raise self._no_number() from None
        self._done.append(numbers.reshape(-1, 3))
        self._words = []

    def _no_number(self) -> MeshFileError:
        """Find the first word that is no number, and say so."""
        before = sum(map(len, self._done))
        for place, word in enumerate(self._words):
            try:
                self._parse(word)
            except ValueError:
                return MeshFileError(
                    f"{self._what} {before + place // 3 + 1:,} has '{word[:20]}' where a number"
                    " must stand.",
                    where=self._name,
                    advice=POINT_FOR_COMMA if "," in word else EXPORT_AGAIN,
                )
        raise AssertionError


def _number(word: str) -> float:
    """Return a number; Python would read 1_0 as ten, the standard does not."""
    if "_" in word:
        raise ValueError(word)
    return float(word)


def _index(word: str) -> int:
    """Return the number of a point, which has ten digits at most."""
    if "_" in word or len(word) > 10:
        raise ValueError(word)
    return int(word)
