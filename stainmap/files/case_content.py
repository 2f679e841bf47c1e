"""What lies in a case file, entry by entry: written from a case, and read without being trusted.

The entries are ``case.json``, ``mesh/original`` (the bytes of the file that came in),
``arrays/NAME.npy`` and, if it was measured, ``measured/KEY.npy``. Where they lie, in one archive or
in the journal of unsaved work, is no matter of this module: it is given their sizes and a way to
read them.
"""

from __future__ import annotations

import hashlib
import io
import struct
import zipfile
import zlib
from collections.abc import Callable, Iterator, Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stainmap import __version__
from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.case_document import (
    after_sintering_of,
    backings_of,
    bench_of,
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
from stainmap.model.crown import BodyKind, CrownReading, CrownSurface, MeasuredShape, MeshSource
from stainmap.model.plan import MAX_COATS
from stainmap.model.zone import Accent
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState
from stainmap.words import translate

DOCUMENT = "case.json"
MESH = "mesh/original"
_MOST_BYTES = 2 << 30
_MOST_DOCUMENT_BYTES = 64 << 20
_MOST_ENTRIES = 400
_MEASURED = "measured/"
_MEASURED_TYPE = np.dtype([("wall_mm", "<f4"), ("partner", "<i4"), ("curvature_per_mm", "<f4")])
# What zipfile, zlib, numpy and the values themselves raise on a damaged archive.
DAMAGE = (
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
    zipfile.BadZipFile,
)


def document_bytes(case: Case) -> bytes:
    """Return the readable description of a case, `case.json`."""
    return encode_document(document_of(case, __version__))


def entries_of(case: Case) -> Iterator[tuple[str, Callable[[], bytes]]]:
    """Yield the name of every entry and what makes its content, in the order of the file."""
    yield DOCUMENT, lambda: document_bytes(case)
    yield MESH, lambda: case.source.content
    for name, array in arrays_of(case).items():
        yield array_entry(name), lambda array=array: npy_bytes(array)  # type: ignore[misc]


def array_entry(name: str) -> str:
    """Return the name of the entry that holds an array."""
    return f"arrays/{name}.npy"


def arrays_of(case: Case) -> dict[str, NDArray[Any]]:
    """Return all arrays of a case by name."""
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


def measured_entry(measured: MeasuredShape) -> tuple[str, bytes]:
    """Return name and content of the entry that holds what was measured of a surface."""
    values = np.empty(len(measured.wall_mm), dtype=_MEASURED_TYPE)
    values["wall_mm"], values["partner"] = measured.wall_mm, measured.partner
    values["curvature_per_mm"] = measured.curvature_per_mm
    return f"{_MEASURED}{measured.key}.npy", npy_bytes(values)


def npy_bytes(array: NDArray[Any]) -> bytes:
    """Return an array as the bytes of an npy file."""
    buffer = io.BytesIO()
    np.lib.format.write_array(buffer, np.ascontiguousarray(array), allow_pickle=False)
    return buffer.getvalue()


class CaseReader:
    """Puts a case together from its entries, checking everything on the way.

    Parameters
    ----------
    sizes
        Bytes of each entry.
    read
        Returns the content of one of them.
    where
        What to call the whole in a sentence.
    """

    def __init__(self, sizes: Mapping[str, int], read: Callable[[str], bytes], where: str) -> None:
        self._sizes, self._read, self._where = sizes, read, where
        if len(sizes) > _MOST_ENTRIES or sum(sizes.values()) > _MOST_BYTES:
            raise self._damaged(
                translate("case content", "it unpacks to more than a case can hold")
            )

    def case(self) -> Case:
        """Return the case; raise CaseFileError, or what numpy raises on damage."""
        if DOCUMENT not in self._sizes:
            raise CaseFileError(
                translate("case content", "It is an archive, but not a case."),
                where=self._where,
                advice=translate("case content", "Choose a file that ends in .stainmap."),
            )
        if self._sizes[DOCUMENT] > _MOST_DOCUMENT_BYTES:
            raise self._damaged(translate("case content", "its description is far too long"))
        document = decode_document(self._bytes(DOCUMENT), self._where)
        content = self._bytes(MESH)
        if hashlib.sha256(content).hexdigest() != document.source.sha256:
            raise self._damaged(
                translate("case content", "the mesh in it is not the one it was saved with")
            )
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
            bench=bench_of(document),
            hidden_advice=document.hidden_advice,
        )

    def _surface(self, document: CaseDoc) -> CrownSurface:
        vertices = self._array("vertices", np.float64, (None, 3))
        if not np.isfinite(vertices).all():
            raise self._damaged(translate("case content", "a vertex is not a number"))
        count = len(vertices)
        faces = self._array("faces", np.int32, (None, 3), most=count - 1)
        base = document.base_vertex_count
        if not 0 < base <= count:
            raise self._damaged(translate("case content", "its surface does not fit together"))
        parents = self._array("parents", np.int32, (count, 2), most=count - 1)
        file_vertex = self._array("file_vertex", np.int32, (None,), least=-1, most=base - 1)
        return CrownSurface(
            mesh=TriMesh(vertices, faces),
            parents=parents,
            base_vertex_count=base,
            file_vertex=file_vertex,
            measured=self._measured(count),
        )

    def _measured(self, count: int) -> MeasuredShape | None:
        """Return what was measured of the surface; whatever is wrong with it is no error.

        It is measured again then.
        """
        name = next((name for name in self._sizes if name.startswith(_MEASURED)), None)
        if name is None or self._sizes[name] > _MEASURED_TYPE.itemsize * count + 1024:
            return None
        try:
            stream = io.BytesIO(self._read(name))
            values = np.lib.format.read_array(stream, allow_pickle=False)
        except (*DAMAGE, StainmapError):
            return None
        if values.dtype != _MEASURED_TYPE or values.shape != (count,):
            return None
        wall, partner = values["wall_mm"].copy(), values["partner"].copy()
        curvature = values["curvature_per_mm"].copy()
        sound = (wall > 0.0).all() and np.isfinite(wall).all() and np.isfinite(curvature).all()
        if not sound or partner.min(initial=-1) < -1 or partner.max(initial=-1) >= count:
            return None
        key = name.removeprefix(_MEASURED).removesuffix(".npy")
        return MeasuredShape(key=key, wall_mm=wall, partner=partner, curvature_per_mm=curvature)

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
            raise self._damaged(
                translate("case content", "a number of brushed coats is impossible")
            )
        return coats

    def _share(self, name: str, count: int) -> NDArray[Any]:
        share = self._array(name, np.float32, (count,))
        if not ((share >= 0.0) & (share <= 1.0)).all():
            raise self._damaged(
                translate("case content", "its list of {name} holds no shares").format(name=name)
            )
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
        stream = io.BytesIO(self._bytes(array_entry(name)))
        array = np.lib.format.read_array(stream, allow_pickle=False)
        fits = array.ndim == len(shape) and all(
            wanted is None or wanted == got for wanted, got in zip(shape, array.shape, strict=False)
        )
        if array.dtype != np.dtype(dtype) or not fits:
            raise self._damaged(
                translate("case content", "its list of {name} has the wrong form").format(name=name)
            )
        if most is not None and array.size and (array.min() < least or array.max() > most):
            raise self._damaged(
                translate("case content", "its list of {name} points beyond the surface").format(
                    name=name
                )
            )
        return np.asarray(array)

    def _bytes(self, name: str) -> bytes:
        if name not in self._sizes:
            raise self._damaged(translate("case content", "{name} is missing").format(name=name))
        return self._read(name)

    def _damaged(self, what: str) -> CaseFileError:
        return CaseFileError(
            translate("case content", "The case is damaged: {what}.").format(what=what),
            where=self._where,
            advice=translate("case content", "Open an older copy of the case."),
        )
