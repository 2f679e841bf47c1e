"""Reads a crown or bridge from its shape: what it is, which way it stands, where it ends."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from stainmap.errors import ReadingError
from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Unit
from stainmap.planning.assembly import Assembly, find_row, no_crown
from stainmap.planning.body import Body
from stainmap.planning.body_kind import has_roots, why_no_crown
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.standing import Sight, find_standing, find_start, look_around
from stainmap.planning.survey import Survey, survey_at_hand
from stainmap.planning.units_of_bridge import LOOSE_NECK_SHARE, Neck, find_necks, label_units
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import FloatArray, TriMesh


def read_crown(
    mesh: TriMesh,
    operator: SurfaceOperator,
    units: tuple[Unit, ...],
    *,
    occlusal_axis: ArrayLike | None = None,
    mesial: ArrayLike | None = None,
    units_as_given: bool = False,
    survey: Survey | None = None,
    progress: Progress | None = None,
) -> CrownReading:
    """Read a crown or bridge from its shape.

    Parameters
    ----------
    mesh
        The surface in sintered mm, refined or not.
    operator
        Its operator.
    units
        Teeth and roles. Empty to read the shape alone: then mesial stays open.
    occlusal_axis
        (3,) the direction of the biting side as set by a person, any length; None to read it.
    mesial
        (3,) mesial as set by a person; on a bridge, of the first unit. None to read it.
    units_as_given
        Whether the number of units is taken from `units` even where the shape shows another.
    survey
        What reading begins with, if it is at hand.
    progress
        Hears a share and a phrase; may raise CancelledError.

    Returns
    -------
    reading
        What could not be read is left open with a sentence in `warnings`.

    Raises
    ------
    ReadingError
        If a person must say something first: the axis of a solid front tooth, or teeth that do
        not fit the number of units found. Or if what was said cannot be.
    """
    steps = Steps(progress)
    said_axis = _direction(occlusal_axis, "occlusal axis")
    said_mesial = _direction(mesial, "mesial direction")
    if not mesh.face_count:
        raise ReadingError("The mesh has no faces.", advice="Choose another file.")
    if operator.mesh is not mesh:
        raise ValueError("the operator belongs to another mesh")
    found = survey_at_hand(operator, survey, steps.part(0.0, 0.35))
    body, reliefs = found.body, found.reliefs
    necks = _necks(body, units, steps.part(0.35, 0.5), as_given=units_as_given)
    reason = why_no_crown(body.piece, body.frame, body.copy, reliefs.wide, bridge=bool(necks))
    rooted = not necks and has_roots(body.piece, body.frame)
    if reason is not None and not (rooted or units_as_given):
        return no_crown(body, reason)
    sight = Sight(reliefs=reliefs, outlook=look_around(body, steps.part(0.5, 0.6)))
    start = find_start(body, sight, units, said_axis)
    unit_of_piece = label_units(body.piece, necks)
    chain = body.thinned.sampled(unit_of_piece)
    try:
        standing = find_standing(body, sight, chain, units, start, steps.part(0.6, 0.85))
    except ReadingError as error:
        if said_axis is not None:
            raise
        return no_crown(body, error.message, rooted=rooted)
    steps.say(0.85, "finding the directions")
    row = find_row(standing, units, said_mesial)
    steps.say(0.9, "drawing the margin")
    assembly = Assembly(
        body=body,
        sight=sight,
        units=units,
        necks=necks,
        rooted=rooted,
        start=start,
        standing=standing,
        unit_of_piece=unit_of_piece,
        row=row,
    )
    return assembly.reading()


def _direction(said: ArrayLike | None, name: str) -> FloatArray | None:
    """Return what a person said as a unit vector."""
    if said is None:
        return None
    vector = np.asarray(said, dtype=np.float64)
    if vector.shape != (3,) or not np.isfinite(vector).all() or not np.linalg.norm(vector) > 0:
        raise ReadingError(
            f"{np.array2string(vector)} is no direction.",
            where=name,
            advice="Give three numbers that are not all zero.",
        )
    return np.asarray(vector / np.linalg.norm(vector))


def _necks(
    body: Body, units: tuple[Unit, ...], steps: Steps, *, as_given: bool
) -> tuple[Neck, ...]:
    """Return the necks; as many as the units need, if any are given."""
    necks = find_necks(body.copy, body.frame, steps, measured_on=body.piece)
    wanted = len(units) - 1
    if not units or len(necks) == wanted:
        return necks
    if len(necks) < wanted:
        necks = find_necks(
            body.copy,
            body.frame,
            steps,
            most_share=LOOSE_NECK_SHARE,
            measured_on=body.piece,
        )
    elif not as_given:
        raise ReadingError(
            f"The shape has {len(necks) + 1} units, and {len(units)} "
            f"{'tooth is' if len(units) == 1 else 'teeth are'} named.",
            where="units",
            advice="Name every tooth of the bridge.",
        )
    if len(necks) < wanted:
        raise ReadingError(
            f"{len(units)} teeth are named, and the shape shows {len(necks) + 1} "
            f"{'unit' if not necks else 'units'}.",
            where="units",
            advice="Name only the teeth that are in this file.",
        )
    strongest = sorted(necks, key=lambda neck: neck.share)[:wanted]
    return tuple(neck for neck in necks if neck in strongest)
