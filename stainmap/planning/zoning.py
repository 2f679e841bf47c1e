"""Proposes the zones and accents of a crown or bridge that has been read."""

from __future__ import annotations

import numpy as np

from stainmap.errors import ReadingError
from stainmap.model.crown import BodyKind, CrownReading
from stainmap.model.tooth import Unit
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.planning.drawing import Drawing
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.survey import Survey, survey_at_hand
from stainmap.planning.zone_ground import ZoneGround, ZoneProposal, lay_ground
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

__all__ = ["ZoneGround", "ZoneProposal", "ZoneSliders", "find_zone_ground", "propose_zones"]

_DEFAULT_SLIDERS = ZoneSliders()


def propose_zones(
    mesh: TriMesh,
    operator: SurfaceOperator,
    reading: CrownReading,
    units: tuple[Unit, ...],
    *,
    sliders: ZoneSliders = _DEFAULT_SLIDERS,
    survey: Survey | None = None,
    progress: Progress | None = None,
) -> ZoneProposal:
    """Propose zones and accents.

    Parameters
    ----------
    mesh, operator
        The surface the reading belongs to, and its operator.
    reading
        What was read from it.
    units
        Teeth and roles.
    sliders
        How far the zones reach.
    survey
        What the reading began with, if it is at hand.
    progress
        Hears a share and a phrase; may raise CancelledError.

    Raises
    ------
    ReadingError
        If the body is no crown, no tooth is named, or mesial is not known.
    """

    def first(share: float, phrase: str) -> None:
        if progress is not None:
            progress(0.75 * share, phrase)

    def then(share: float, phrase: str) -> None:
        if progress is not None:
            progress(0.75 + 0.25 * share, phrase)

    ground = find_zone_ground(mesh, operator, reading, units, survey=survey, progress=first)
    return ground.propose(sliders, then)


def find_zone_ground(
    mesh: TriMesh,
    operator: SurfaceOperator,
    reading: CrownReading,
    units: tuple[Unit, ...],
    *,
    survey: Survey | None = None,
    progress: Progress | None = None,
) -> ZoneGround:
    """Return what zones are proposed from, to propose them again and again.

    Parameters are those of `propose_zones`, and so is what it raises.
    """
    steps = Steps(progress)
    if operator.mesh is not mesh:
        raise ValueError("the operator belongs to another mesh")
    _refuse_what_has_no_zones(reading, units)
    found = survey_at_hand(operator, survey, steps.part(0.0, 0.6))
    drawing = Drawing(body=found.body, reading=reading, units=units)
    ground = lay_ground(drawing, found.reliefs, steps.part(0.6, 1.0))
    steps.say(1.0, translate("zoning", "landmarks found"))
    return ground


def _refuse_what_has_no_zones(reading: CrownReading, units: tuple[Unit, ...]) -> None:
    if not units:
        raise ReadingError(
            translate("zoning", "No tooth is named."),
            where="units",
            advice=translate("zoning", "Name it, as in 46."),
        )
    if reading.kind is BodyKind.NOT_A_CROWN or not np.isfinite(reading.height).any():
        raise ReadingError(
            reading.warnings[0]
            if reading.warnings
            else translate("zoning", "The body is no crown."),
            advice=translate("zoning", "Choose another file, or check its length unit."),
        )
