"""Where a bridge is narrow: its connectors, and which unit each vertex belongs to."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.planning.progress import Steps
from stainmap.planning.span import bent_course, necks_along
from stainmap.surface import neck as necks_of_body
from stainmap.surface.frame import PrincipalFrame
from stainmap.surface.mesh import TriMesh
from stainmap.surface.neck import NECK_SHARE, Neck
from stainmap.words import translate

__all__ = ["LOOSE_NECK_SHARE", "NECK_SHARE", "Neck", "find_necks", "label_units"]

# A looser bound, when the user says how many units there are and the strict one finds too few.
LOOSE_NECK_SHARE = 0.85


def find_necks(
    mesh: TriMesh,
    frame: PrincipalFrame,
    steps: Steps,
    *,
    most_share: float = NECK_SHARE,
    measured_on: TriMesh | None = None,
) -> tuple[Neck, ...]:
    """Return the connectors of a body, in order along its span.

    Slices stand across the longest direction; on a long span that is bent with the arch, across
    a parabola through it, if that shows more of them.

    Parameters
    ----------
    mesh, frame
        The body, and its frame.
    steps
        Hears of the progress.
    most_share
        Share of the largest section on either side below which a minimum is a connector.
    measured_on
        The surface on which the sections are measured in the end; the mesh itself if None.
    """
    course = bent_course(mesh, frame)
    part = steps if course is None else steps.part(0.0, 0.5)
    necks = necks_of_body.find_necks(
        mesh,
        frame.axes,
        most_share=most_share,
        measured_on=measured_on,
        progress=lambda share: part.say(
            share, translate("units of bridge", "looking for connectors")
        ),
    )
    if course is None:
        return necks
    along = necks_along(
        mesh,
        course,
        steps.part(0.5, 1.0),
        most_share=most_share,
        measured_on=measured_on or mesh,
    )
    return along if len(along) >= len(necks) else necks


def label_units(mesh: TriMesh, necks: tuple[Neck, ...]) -> NDArray[np.uint8]:
    """Return (V,) which unit each vertex belongs to, in order along the span."""
    return necks_of_body.parts_between(mesh, necks)
