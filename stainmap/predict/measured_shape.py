"""What was measured of a crown's shape, kept so that nobody measures it twice.

Wall and curvature take half the time of a prediction, and a crown that lies on a tray has been
predicted before: its file may hold them. They count only for the very surface and reading they were
measured of, and only in the version of the program that measured them.
"""

from __future__ import annotations

import hashlib
from typing import TYPE_CHECKING

import numpy as np

from stainmap import __version__
from stainmap.model.case import Case
from stainmap.model.crown import MeasuredShape

if TYPE_CHECKING:
    from stainmap.predict.shape import CrownShape

# Raised whenever the same surface would be measured otherwise: a test of the sample cases, which
# keep what was measured of them, says when that is.
_WAY = 1


def shape_key(case: Case) -> str:
    """Return a hexadecimal digest of everything that wall and curvature depend on."""
    reading = case.reading
    digest = hashlib.sha256(f"{__version__} {_WAY}".encode())
    mesh = case.surface.mesh
    arrays = (
        mesh.vertices,
        mesh.faces,
        reading.outer,
        reading.rim,
        reading.unit_index,
        reading.depth_below_crest_mm,
    )
    for array in arrays:
        digest.update(f"{array.dtype} {array.shape}".encode())
        digest.update(np.ascontiguousarray(array).data)
    units = [(str(unit.role), unit.tooth.is_front) for unit in case.units]
    digest.update(repr((reading.occlusal_axis, reading.assumed_wall_mm, units)).encode())
    return digest.hexdigest()


def known_shape(case: Case) -> MeasuredShape | None:
    """Return what the case's file holds of its shape; None if that is nothing, or not of it."""
    measured = case.surface.measured
    if measured is None or measured.key != shape_key(case):
        return None
    count = case.surface.mesh.vertex_count
    arrays = (measured.wall_mm, measured.partner, measured.curvature_per_mm)
    if (
        any(array.shape != (count,) for array in arrays)
        or measured.partner.max(initial=-1) >= count
    ):
        return None
    return measured


def measured_shape(case: Case, shape: CrownShape) -> MeasuredShape:
    """Return what was measured of a case's crown, to be kept with it."""
    return MeasuredShape(
        key=shape_key(case),
        wall_mm=shape.wall_mm,
        partner=shape.partner,
        curvature_per_mm=shape.curvature_per_mm,
    )
