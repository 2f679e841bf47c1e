"""Reads a crown or bridge from its shape: what it is, which way it stands, where it ends."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from stainmap.errors import ReadingError
from stainmap.model.crown import BodyKind, CrownReading
from stainmap.model.tooth import Unit
from stainmap.planning.assembly import Assembly, find_row, no_crown
from stainmap.planning.axis import jaw_axis
from stainmap.planning.body import Body
from stainmap.planning.body_kind import has_roots, is_jaw, why_no_crown
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.span import necks_at
from stainmap.planning.standing import Sight, find_standing, find_start, look_around
from stainmap.planning.survey import Survey, survey_at_hand
from stainmap.planning.units_of_bridge import LOOSE_NECK_SHARE, Neck, find_necks, label_units
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import FloatArray, TriMesh
from stainmap.words import translate


@dataclass(frozen=True, slots=True, kw_only=True)
class BridgeSaid:
    """What a person said of the units of a bridge.

    Parameters
    ----------
    units_as_given
        Whether the number of units is that of the teeth named, even where the shape shows another.
    neck_places
        Places (x, y, z), mm, where units part; empty to find them.
    roles_said
        Whether the roles of the units are what a person said. If not, they are read from the
        cavities where there are some, see `CrownReading.roles`.
    """

    units_as_given: bool = False
    neck_places: tuple[tuple[float, float, float], ...] = ()
    roles_said: bool = True


NOTHING_OF_THE_BRIDGE = BridgeSaid()


def read_crown(
    mesh: TriMesh,
    operator: SurfaceOperator,
    units: tuple[Unit, ...],
    *,
    occlusal_axis: ArrayLike | None = None,
    mesial: ArrayLike | None = None,
    bridge: BridgeSaid = NOTHING_OF_THE_BRIDGE,
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
    bridge
        What a person said of a bridge's units.
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
        raise ReadingError(
            translate("reading", "The mesh has no faces."),
            advice=translate("reading", "Choose another file."),
        )
    if operator.mesh is not mesh:
        raise ValueError("the operator belongs to another mesh")
    found = survey_at_hand(operator, survey, steps.part(0.0, 0.35))
    body, reliefs = found.body, found.reliefs
    shortest = body.frame.axes[:, 2]
    if is_jaw(body.piece, body.frame):
        axis = said_axis if said_axis is not None else jaw_axis(body.copy, body.frame, reliefs.wide)
        return no_crown(body, "", kind=BodyKind.JAW, axis=axis)
    necks = _necks(body, units, steps.part(0.35, 0.5), bridge)
    reason = why_no_crown(body.piece, body.frame, body.copy, reliefs.wide, bridge=bool(necks))
    rooted = not necks and has_roots(body.piece, body.frame)
    if reason is not None and not (rooted or bridge.units_as_given):
        return no_crown(body, reason, axis=shortest if said_axis is None else said_axis)
    sight = Sight(reliefs=reliefs, outlook=look_around(body, steps.part(0.5, 0.6)))
    unit_of_piece = label_units(body.piece, necks)
    chain = body.thinned.sampled(unit_of_piece)
    start = find_start(body, sight, chain, units, said_axis, rooted=rooted)
    try:
        standing = find_standing(body, sight, chain, units, start, steps.part(0.6, 0.85))
    except ReadingError as error:
        if said_axis is not None:
            raise
        kind = BodyKind.ROOTED_TOOTH if rooted else BodyKind.NOT_A_CROWN
        reason = "" if rooted else error.message
        return no_crown(body, reason, kind=kind, axis=start.axis if rooted else shortest)
    steps.say(0.85, translate("reading", "finding the directions"))
    row = find_row(standing, units, said_mesial)
    steps.say(0.9, translate("reading", "drawing the margin"))
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
        necks_said=bool(bridge.neck_places),
        roles_said=bridge.roles_said,
    )
    return assembly.reading()


def _direction(said: ArrayLike | None, name: str) -> FloatArray | None:
    """Return what a person said as a unit vector."""
    if said is None:
        return None
    vector = np.asarray(said, dtype=np.float64)
    if vector.shape != (3,) or not np.isfinite(vector).all() or not np.linalg.norm(vector) > 0:
        raise ReadingError(
            translate("reading", "{numbers} is no direction.").format(
                numbers=np.array2string(vector)
            ),
            where=name,
            advice=translate("reading", "Give three numbers that are not all zero."),
        )
    return np.asarray(vector / np.linalg.norm(vector))


def _named(teeth: int) -> str:
    """Return "1 tooth is named" or "3 teeth are named"."""
    text = (
        translate("reading", "1 tooth is named")
        if teeth == 1
        else translate("reading", "{count} teeth are named")
    )
    return text.format(count=teeth)


def _places(count: int) -> str:
    """Return "1 place is shown" or "2 places are shown"."""
    text = (
        translate("reading", "1 place is shown")
        if count == 1
        else translate("reading", "{count} places are shown")
    )
    return text.format(count=count)


def _necks_said(
    body: Body, units: tuple[Unit, ...], places: tuple[tuple[float, float, float], ...]
) -> tuple[Neck, ...]:
    """Return the necks where a person has shown them."""
    if units and len(places) != len(units) - 1:
        raise ReadingError(
            translate("reading", "{named}, and {shown} where units part.").format(
                named=_named(len(units)), shown=_places(len(places))
            ),
            where="units",
            advice=translate("reading", "Show one place less than there are teeth."),
        )
    points = [np.asarray(place, dtype=np.float64) for place in places]
    return necks_at(body.copy, body.frame, points, measured_on=body.piece)


def _necks(body: Body, units: tuple[Unit, ...], steps: Steps, said: BridgeSaid) -> tuple[Neck, ...]:
    """Return the necks; as many as the units need, if any are given."""
    if said.neck_places:
        return _necks_said(body, units, said.neck_places)
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
    elif not said.units_as_given:
        raise ReadingError(
            translate("reading", "The shape has {count} units, and {named}.").format(
                count=len(necks) + 1, named=_named(len(units))
            ),
            where="units",
            advice=translate("reading", "Name every tooth of the bridge."),
        )
    if len(necks) < wanted:
        raise ReadingError(
            (
                translate("reading", "{named}, and the shape shows 1 unit.")
                if not necks
                else translate("reading", "{named}, and the shape shows {count} units.")
            ).format(named=_named(len(units)), count=len(necks) + 1),
            where="units",
            advice=translate("reading", "Name only the teeth that are in this file."),
        )
    strongest = sorted(necks, key=lambda neck: neck.share)[:wanted]
    return tuple(neck for neck in necks if neck in strongest)
