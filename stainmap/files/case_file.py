"""Case files: one zip with a readable description, the mesh as it came, and plain arrays.

The archive holds ``case.json``, ``mesh/original`` (the bytes of the file that came in),
``arrays/NAME.npy`` and, if there was a prediction, ``preview.png`` and ``look/HASH.npy``: the
colours that were seen, to be shown at once until they are predicted anew. Nothing in it is trusted:
names are looked up, never followed; sizes are checked before unpacking; arrays are never pickled.
"""

from __future__ import annotations

import contextlib
import hashlib
import io
import json
import os
import socket
import struct
import time
import zipfile
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, BinaryIO

import filelock
import numpy as np
from numpy.typing import NDArray

from stainmap import __version__
from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.atomic import write_atomically
from stainmap.files.case_document import (
    after_sintering_of,
    backings_of,
    decode_document,
    document_of,
    encode_document,
    plan_of,
    process_of,
    screw_channels_of,
    sliders_of,
    units_of,
)
from stainmap.files.case_entries import CaseDoc
from stainmap.files.case_shades import intake_of, target_of
from stainmap.files.catalogue_tables import catalogue_from_dict
from stainmap.model.case import AccentMask, Case
from stainmap.model.crown import BodyKind, CrownReading, CrownSurface, MeshSource
from stainmap.model.plan import MAX_COATS
from stainmap.model.zone import Accent
from stainmap.planning.plan_hash import plan_hash
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState

SUFFIX = ".stainmap"
_DOCUMENT = "case.json"
_MESH = "mesh/original"
_PREVIEW = "preview.png"
_CHOOSE = "Choose a file that ends in .stainmap."
_LOOK = "look/"
_MOST_BYTES = 2 << 30
_MOST_DOCUMENT_BYTES = 64 << 20
_MOST_ENTRIES = 400
# One date for all entries, so that the same case gives the same bytes.
_ENTRY_DATE = (2020, 1, 1, 0, 0, 0)

# What zipfile, zlib, numpy and the values themselves raise on a damaged archive.
_DAMAGE = (
    OSError,
    EOFError,
    ValueError,
    KeyError,
    TypeError,
    RuntimeError,
    NotImplementedError,
    OverflowError,
    MemoryError,
    struct.error,
    zlib.error,
)

Progress = Callable[[float, str], None]


def write_case(
    case: Case,
    path: Path,
    *,
    preview_png: bytes | None = None,
    look: NDArray[np.uint8] | None = None,
) -> None:
    """Write a case atomically.

    Parameters
    ----------
    preview_png
        Small picture of the crown for file managers.
    look
        (V, 3) predicted sRGB, shown when the case is opened until it is predicted anew.

    Raises
    ------
    StainmapError
        If it cannot be written; the file that was there before is untouched.
    """

    def write(stream: BinaryIO) -> None:
        with zipfile.ZipFile(stream, "w") as archive:
            _put(archive, _DOCUMENT, encode_document(document_of(case, __version__)))
            _put(archive, _MESH, case.source.content)
            for name, array in _arrays_of(case).items():
                _put(archive, f"arrays/{name}.npy", _npy_bytes(array))
            if preview_png is not None:
                _put(archive, _PREVIEW, preview_png)
            if look is not None:
                _put(archive, f"{_LOOK}{plan_hash(case)}.npy", _npy_bytes(look))

    write_atomically(path, write)


def read_case(path: Path, progress: Progress | None = None) -> Case:
    """Read a case file of this or any older version.

    Raises
    ------
    CaseFileError
        If it is missing, cut short, damaged, not a case, or from a newer version.
    """
    if progress is not None:
        progress(0.1, "reading the case")
    try:
        if path.exists() and not (path.is_file() or path.is_dir()):
            raise CaseFileError("It is not an ordinary file.", where=path.name, advice=_CHOOSE)
        with path.open("rb") as stream, zipfile.ZipFile(stream) as archive:
            return _Reader(archive, path.name).case()
    except StainmapError:
        raise
    except FileNotFoundError as error:
        raise CaseFileError(
            "There is no such file.", where=str(path), advice="Choose another."
        ) from error
    except IsADirectoryError as error:
        raise CaseFileError(
            "It is a folder.", where=str(path), advice="Choose a file inside it."
        ) from error
    except PermissionError as error:
        raise CaseFileError(
            "You may not read it.", where=str(path), advice="Ask its owner."
        ) from error
    except zipfile.BadZipFile as error:
        raise CaseFileError(
            "It is cut short or is not a case file.",
            where=path.name,
            advice="Open an older copy, or look for it among the recovered cases.",
        ) from error
    except _DAMAGE as error:
        raise CaseFileError(
            f"It is damaged ({error}).", where=path.name, advice="Open an older copy of the case."
        ) from error


def read_look(path: Path, case: Case) -> NDArray[np.uint8] | None:
    """Return the colours (V, 3) a case file was last seen in, or None if they are not of `case`.

    They only bridge the seconds until the prediction is there, so whatever is wrong with them is
    no error.
    """
    try:
        with path.open("rb") as stream, zipfile.ZipFile(stream) as archive:
            name = f"{_LOOK}{plan_hash(case)}.npy"
            if archive.getinfo(name).file_size > 4 * len(case.zones) + 1024:
                return None
            look = np.lib.format.read_array(io.BytesIO(archive.read(name)), allow_pickle=False)
    except (*_DAMAGE, zipfile.BadZipFile, StainmapError):
        return None
    if look.dtype != np.uint8 or look.shape != (len(case.zones), 3):
        return None
    return np.asarray(look)


def is_case_file(path: Path) -> bool:
    """Return True if the file's content, not its name, is that of a case archive."""
    try:
        if not path.is_file():
            return False
        with zipfile.ZipFile(path) as archive:
            return _DOCUMENT in archive.namelist()
    except (OSError, zipfile.BadZipFile):
        return False


def _npy_bytes(array: NDArray[Any]) -> bytes:
    buffer = io.BytesIO()
    np.lib.format.write_array(buffer, np.ascontiguousarray(array), allow_pickle=False)
    return buffer.getvalue()


def _put(archive: zipfile.ZipFile, name: str, content: bytes) -> None:
    entry = zipfile.ZipInfo(name, date_time=_ENTRY_DATE)
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.external_attr = 0o644 << 16
    archive.writestr(entry, content, compresslevel=1)


def _arrays_of(case: Case) -> dict[str, NDArray[Any]]:
    surface, reading = case.surface, case.reading
    arrays: dict[str, NDArray[Any]] = {
        "vertices": surface.mesh.vertices,
        "faces": surface.mesh.faces,
        "parents": surface.parents,
        "file_vertex": surface.file_vertex,
        "outer": reading.outer,
        "rim": reading.rim,
        "unit_index": reading.unit_index,
        "height": reading.height,
        "depth_below_crest_mm": reading.depth_below_crest_mm,
        "zones": case.zones,
        "proposal": case.proposal,
    }
    for mask in case.accents:
        arrays[f"accent_{int(mask.accent)}"] = mask.share
    for mask in case.accent_proposal:
        arrays[f"accent_proposal_{int(mask.accent)}"] = mask.share
    for index, step in enumerate(case.plan.steps):
        if step.brushed is not None:
            arrays[f"brushed_{index}_vertices"] = step.brushed.vertices
            arrays[f"brushed_{index}_coats"] = step.brushed.coats
    return arrays


class _Reader:
    """Reads one archive, checking everything on the way."""

    def __init__(self, archive: zipfile.ZipFile, where: str) -> None:
        self._archive = archive
        self._where = where
        entries = archive.infolist()
        if len(entries) > _MOST_ENTRIES or sum(e.file_size for e in entries) > _MOST_BYTES:
            raise self._damaged("it unpacks to more than a case can hold")
        self._sizes = {entry.filename: entry.file_size for entry in entries}

    def case(self) -> Case:
        if _DOCUMENT not in self._sizes:
            raise CaseFileError(
                "It is an archive, but not a case.",
                where=self._where,
                advice="Choose a file that ends in .stainmap.",
            )
        if self._sizes[_DOCUMENT] > _MOST_DOCUMENT_BYTES:
            raise self._damaged("its description is far too long")
        document = decode_document(self._bytes(_DOCUMENT), self._where)
        content = self._bytes(_MESH)
        if hashlib.sha256(content).hexdigest() != document.source.sha256:
            raise self._damaged("the mesh in it is not the one it was saved with")
        surface = self._surface(document)
        count = len(surface.mesh.vertices)
        return Case(
            code=document.code,
            units=units_of(document),
            source=MeshSource(
                name=document.source.name,
                content=content,
                sha256=document.source.sha256,
                unit=LengthUnit(document.source.unit),
                size_state=SizeState(document.source.size_state),
                enlargement_factor=document.source.enlargement_factor,
            ),
            surface=surface,
            reading=self._reading(document, count),
            zones=self._array("zones", np.uint8, (count,), most=6),
            proposal=self._array("proposal", np.uint8, (count,), most=6),
            accents=self._accents(document.accents, "accent", count),
            accent_proposal=self._accents(document.accent_proposal, "accent_proposal", count),
            plan=plan_of(document, lambda name: self._brushed(name, count)),
            materials=catalogue_from_dict(document.materials, self._where),
            backings=backings_of(document),
            programme=document.programme,
            target=target_of(document),
            notes=document.notes,
            revision=document.revision,
            replaces=document.replaces,
            printed=document.printed,
            process=process_of(document),
            after_sintering=after_sintering_of(document),
            screw_channels=screw_channels_of(document),
            sliders=sliders_of(document),
            intake=intake_of(document),
        )

    def _surface(self, document: CaseDoc) -> CrownSurface:
        vertices = self._array("vertices", np.float64, (None, 3))
        if not np.isfinite(vertices).all():
            raise self._damaged("a vertex is not a number")
        count = len(vertices)
        faces = self._array("faces", np.int32, (None, 3), most=count - 1)
        base = document.base_vertex_count
        if not 0 < base <= count:
            raise self._damaged("its surface does not fit together")
        parents = self._array("parents", np.int32, (count, 2), most=count - 1)
        file_vertex = self._array("file_vertex", np.int32, (None,), least=-1, most=base - 1)
        return CrownSurface(
            mesh=TriMesh(vertices, faces),
            parents=parents,
            base_vertex_count=base,
            file_vertex=file_vertex,
        )

    def _reading(self, document: CaseDoc, count: int) -> CrownReading:
        reading = document.reading
        return CrownReading(
            kind=BodyKind(reading.kind),
            occlusal_axis=reading.occlusal_axis,
            mesial=reading.mesial,
            outer=self._array("outer", np.bool_, (count,)),
            rim=self._array("rim", np.bool_, (count,)),
            unit_index=self._array(
                "unit_index", np.uint8, (count,), most=max(len(document.units) - 1, 0)
            ),
            height=self._array("height", np.float32, (count,)),
            depth_below_crest_mm=self._array("depth_below_crest_mm", np.float32, (count,)),
            connectors_mm2=reading.connectors_mm2,
            confidence=tuple(sorted(reading.confidence.items())),
            set_by_user=frozenset(reading.set_by_user),
            assumed_wall_mm=reading.assumed_wall_mm,
            warnings=reading.warnings,
        )

    def _accents(self, numbers: tuple[int, ...], prefix: str, count: int) -> tuple[AccentMask, ...]:
        return tuple(
            AccentMask(accent=Accent(number), share=self._share(f"{prefix}_{number}", count))
            for number in numbers
        )

    def _brushed(self, name: str, count: int) -> NDArray[Any]:
        if name.endswith("_vertices"):
            return self._array(name, np.int32, (None,), most=count - 1)
        coats = self._array(name, np.float32, (None,))
        if not ((coats >= 0.0) & (coats <= MAX_COATS)).all():
            raise self._damaged("a number of brushed coats is impossible")
        return coats

    def _share(self, name: str, count: int) -> NDArray[Any]:
        share = self._array(name, np.float32, (count,))
        if not ((share >= 0.0) & (share <= 1.0)).all():
            raise self._damaged(f"its list of {name} holds no shares")
        return share

    def _array(
        self,
        name: str,
        dtype: Any,
        shape: tuple[int | None, ...],
        *,
        least: int = 0,
        most: int | None = None,
    ) -> NDArray[Any]:
        """Return one array after checking type, shape and, for indices, range."""
        stream = io.BytesIO(self._bytes(f"arrays/{name}.npy"))
        array = np.lib.format.read_array(stream, allow_pickle=False)
        fits = array.ndim == len(shape) and all(
            wanted is None or wanted == got for wanted, got in zip(shape, array.shape, strict=False)
        )
        if array.dtype != np.dtype(dtype) or not fits:
            raise self._damaged(f"its list of {name} has the wrong form")
        if most is not None and array.size and (array.min() < least or array.max() > most):
            raise self._damaged(f"its list of {name} points beyond the surface")
        return np.asarray(array)

    def _bytes(self, name: str) -> bytes:
        if name not in self._sizes:
            raise self._damaged(f"{name} is missing")
        return self._archive.read(name)

    def _damaged(self, what: str) -> CaseFileError:
        return CaseFileError(
            f"The case is damaged: {what}.",
            where=self._where,
            advice="Open an older copy of the case.",
        )


@dataclass(slots=True, eq=False)
class CaseLock:
    """Says that a case is open here. The lock dies with the process that holds it."""

    _lock: filelock.BaseFileLock
    _note: Path

    @classmethod
    def take(cls, path: Path) -> CaseLock | None:
        """Take the lock of a case; return None if somebody else has it.

        Where the folder cannot be written, or locks do not work, nobody can save there either;
        a lock that guards nothing is returned.
        """
        beside = path.parent / f".{path.name}.lock"
        lock = filelock.FileLock(beside, timeout=0)
        note = path.parent / f".{path.name}.who"
        try:
            lock.acquire()
        except filelock.Timeout:
            return None
        except (OSError, NotImplementedError):
            return cls(lock, note)
        with contextlib.suppress(OSError):
            note.write_text(
                json.dumps(
                    {"host": socket.gethostname(), "process": os.getpid(), "since": time.time()}
                ),
                encoding="utf-8",
            )
        return cls(lock, note)

    def release(self) -> None:
        """Let others open the case for writing."""
        if self._lock.is_locked:
            with contextlib.suppress(OSError):
                self._note.unlink(missing_ok=True)
            path = Path(self._lock.lock_file)
            self._lock.release()
            with contextlib.suppress(OSError):
                path.unlink(missing_ok=True)


def holder_of(path: Path) -> str:
    """Return who has a case open, as "computer, process 123", or an empty string."""
    try:
        note = json.loads((path.parent / f".{path.name}.who").read_text(encoding="utf-8"))
        return f"{note['host']}, process {note['process']}"
    except (OSError, ValueError, KeyError, TypeError):
        return ""
