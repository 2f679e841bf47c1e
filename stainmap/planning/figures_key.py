"""Whether figures that were kept are those of a case: a digest of all that they depend on."""

from __future__ import annotations

import hashlib

import numpy as np

from stainmap import __version__
from stainmap.model.case import Case
from stainmap.planning.area_figures import KeptFigures
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.measured_shape import shape_key
from stainmap.predict.parameter_spread import BEFORE_CALIBRATION

# Raised whenever the same crown and plan would be predicted otherwise: a test of the sample cases,
# which keep their figures, says when that is.
_WAY = 1


def figures_key(case: Case) -> str:
    """Return a hexadecimal digest of everything that the figures of its areas depend on.

    That is what is painted on what, the shape, and what is known of parameters; not the code, the
    notes or the revision of a case.
    """
    digest = hashlib.sha256(f"{__version__} {_WAY}".encode())
    for part in (shape_key(case), plan_hash(case), repr(BEFORE_CALIBRATION.discrepancy_sd)):
        digest.update(f" {part}".encode())
    digest.update(np.ascontiguousarray(BEFORE_CALIBRATION.covariance).data)
    return digest.hexdigest()


def fits(kept: KeptFigures | None, case: Case) -> bool:
    """Return True if figures were computed of just this crown and plan."""
    if kept is None or not kept.whole or kept.key != figures_key(case):
        return False
    return len(kept.units) == (len(case.units) if len(case.units) > 1 else 0)
