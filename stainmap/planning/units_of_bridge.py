"""Where a bridge is narrow: its connectors, and which unit each vertex belongs to."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.planning.progress import Steps
from stainmap.surface import neck as necks_of_body
from stainmap.surface.frame import PrincipalFrame
from stainmap.surface.mesh import TriMesh
from stainmap.surface.neck import NECK_SHARE, Neck

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
    """Return the connectors of a body, in order along its longest direction.

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
    return necks_of_body.find_necks(
        mesh,
        frame.axes,
        most_share=most_share,
        measured_on=measured_on,
        progress=lambda share: steps.say(share, "looking for connectors"),
    )


def label_units(mesh: TriMesh, necks: tuple[Neck, ...]) -> NDArray[np.uint8]:
    """Return (V,) which unit each vertex belongs to, in order along the span."""
    return necks_of_body.parts_between(mesh, necks)
