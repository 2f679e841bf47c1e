"""Zones proposed again for an open case, without losing what was painted by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.errors import PlanError
from stainmap.model.case import AccentMask, Case
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.planning.zone_ground import ZoneGround, ZoneProposal


def with_proposal(case: Case, proposal: ZoneProposal) -> Case:
    """Return the case with zones and accents as proposed anew, and the reading they come from.

    Painted by hand is what differs from the proposal the case was painted on. It is kept, but only
    where the surface is still outer or still inner as it was.
    """
    same_side = proposal.reading.outer == case.reading.outer
    kept = (case.zones != case.proposal) & same_side
    return replace(
        case,
        reading=proposal.reading,
        zones=np.where(kept, case.zones, proposal.zones),
        proposal=proposal.zones,
        accents=_kept_accents(case, proposal.accents, same_side),
        accent_proposal=proposal.accents,
        sliders=proposal.sliders,
    )


def _kept_accents(
    case: Case, proposed: tuple[AccentMask, ...], same_side: NDArray[np.bool_]
) -> tuple[AccentMask, ...]:
    """Return the proposed masks with what was painted by hand in them."""
    none = np.zeros(len(same_side), np.float32)
    old = {mask.accent: mask.share for mask in case.accent_proposal}
    new = {mask.accent: mask.share for mask in proposed}
    painted = {mask.accent: mask.share for mask in case.accents}
    masks = []
    for accent in sorted(new.keys() | painted.keys()):
        fresh = new.get(accent, none)
        share = painted.get(accent, none)
        kept = (share != old.get(accent, none)) & same_side
        # Where nothing was painted the proposal itself is taken, as most accents are.
        merged = np.where(kept, share, fresh).astype(np.float32) if kept.any() else fresh
        if accent in new or merged.any():
            masks.append(AccentMask(accent=accent, share=merged))
    return tuple(masks)


class Sliding:
    """Zones that follow the sliders, from one case on.

    Parameters
    ----------
    case
        The case as it was when the sliders were taken in hand; hand corrections are its own.
    ground
        The landmarks its zones are proposed from.
    """

    def __init__(self, case: Case, ground: ZoneGround) -> None:
        self.case, self.ground = case, ground

    def at(self, sliders: ZoneSliders, progress: Progress | None = None) -> Case:
        """Return the case with its zones proposed at these sliders."""
        if sliders == self.case.sliders:
            return self.case
        return with_proposal(self.case, self.ground.propose(sliders, progress))


def zone_ground_of(
    case: Case, operator: SurfaceOperator | None = None, progress: Progress | None = None
) -> ZoneGround:
    """Return the landmarks that the zones of a case are proposed from.

    Parameters
    ----------
    operator
        Operator of the case's surface, if one is at hand.

    Raises
    ------
    PlanError
        If no zones were proposed for it, as for a body that is no crown.
    ReadingError
        If mesial is not known.
    """
    if (case.proposal == 0).all() or not np.isfinite(case.reading.height).any():
        raise PlanError(
            translate(
                "proposing",
                "No zones are proposed for this body, so there is nothing for the sliders to move.",
            ),
            advice=translate("proposing", "Paint its zones by hand."),
        )
    # Slow to import, and the window is to be there before.
    from stainmap.planning.zoning import find_zone_ground  # noqa: PLC0415

    mesh = case.surface.mesh
    return find_zone_ground(
        mesh,
        SurfaceOperator(mesh) if operator is None else operator,
        case.reading,
        case.units,
        progress=progress,
    )
