"""What was made on one half of a unit, mesial or distal, made on the other half as well."""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import BrushedCoats, StainPlan
from stainmap.model.zone import Accent, Area
from stainmap.planning.row import mesial_along, row_directions, row_order
from stainmap.planning.zone_tools import accent_share, same_side_as_proposed, side_of, with_zones
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray
from stainmap.surface.mirroring import mirror_sources
from stainmap.words import translate

# A share of an accent that differs by less from the proposal was not painted by hand.
_BY_HAND = 1e-3


class Half(StrEnum):
    """The half of a unit that is copied."""

    MESIAL = "mesial"
    DISTAL = "distal"


def mirrored_area(case: Case, area: Area, half: Half) -> Case:
    """Return the case with an area on the other half of every unit as it is on this one.

    The mirror is the plane through the middle of the unit along its axis and from buccal to
    lingual; each place takes what lies at the nearest place to its image. Where the area is
    taken away, the zone of the image comes instead.

    Raises
    ------
    PlanError
        If it is not known which side is mesial.
    """
    target, source = _pairs(case, half, side_of(case, area))
    if isinstance(area, Accent):
        share = accent_share(case, area).copy()
        share[target] = share[source]
        old = accent_share(case, area)
        return case if np.array_equal(share, old) else case.with_accent(area, share)
    zones = case.zones.copy()
    concerned = (zones[target] == int(area)) | (zones[source] == int(area))
    zones[target[concerned]] = case.zones[source[concerned]]
    return with_zones(case, zones)


def mirrored_corrections(case: Case, half: Half) -> Case:
    """Return the case with everything corrected by hand on one half made on the other as well.

    Zones and accents that differ from the proposal, and brushed coats. What was corrected on the
    other half alone stays.

    Raises
    ------
    PlanError
        As for `mirrored_area`.
    """
    outer = np.asarray(case.reading.outer)
    pairs = [_pairs(case, half, side) for side in (outer, ~outer)]
    target = np.concatenate([pair[0] for pair in pairs])
    source = np.concatenate([pair[1] for pair in pairs])
    changed = _zones_by_hand(case, target, source)
    for accent in Accent:
        changed = _accent_by_hand(changed, accent, target, source)
    plan = _brushed(changed.plan, len(case.zones), target, source)
    return changed if plan is changed.plan else replace(changed, plan=plan)


def unit_mesials(case: Case) -> list[FloatArray]:
    """Return the unit vector towards mesial of each unit, across the axis.

    Raises
    ------
    PlanError
        If the reading does not know mesial.
    """
    axis = np.asarray(case.reading.occlusal_axis, dtype=np.float64)
    said = case.reading.mesial
    found: list[FloatArray | None]
    if len(case.units) > 1:
        order = row_order(case.units)
        middles = np.array([_middle(case, index) for index in range(len(case.units))])
        lefts = dict(zip(order, row_directions(middles[order], axis), strict=True))
        found = [
            None if (left := lefts[k]) is None else mesial_along(left, unit.tooth)
            for k, unit in enumerate(case.units)
        ]
    else:
        found = [None if said is None else np.asarray(said, dtype=np.float64)]
    mesials = []
    for direction in found:
        level = None if direction is None else direction - (direction @ axis) * axis
        if level is None or np.linalg.norm(level) < 1e-9:
            raise PlanError(
                translate(
                    "mirrored",
                    "Which side is mesial is not known, so there is nothing to mirror by.",
                ),
                advice=translate("mirrored", "Say where mesial is (menu Crown) first."),
            )
        mesials.append(level / np.linalg.norm(level))
    return mesials


def _middle(case: Case, unit: int) -> FloatArray:
    own = (case.reading.unit_index == unit) & case.reading.outer
    weight = np.where(own, case.surface.mesh.vertex_areas, 0.0)
    return np.asarray(weight @ case.surface.mesh.vertices / max(float(weight.sum()), 1e-12))


def _pairs(case: Case, half: Half, side: BoolArray) -> tuple[IndexArray, IndexArray]:
    """Return (target, source) vertices of one side of the margin, over all units."""
    mesh, reading = case.surface.mesh, case.reading
    targets, sources = [], []
    for unit, mesial in enumerate(unit_mesials(case)):
        own = reading.unit_index == unit
        along = mesh.vertices @ mesial
        reach = along[own & reading.outer] if (own & reading.outer).any() else along[own]
        if not len(reach):
            continue
        middle = 0.5 * (reach.min() + reach.max())
        copied = along > middle if half is Half.MESIAL else along < middle
        target, source = mirror_sources(
            mesh,
            middle * mesial,
            mesial,
            targets=own & side & ~copied,
            sources=own & side & copied,
        )
        targets.append(target)
        sources.append(source)
    nothing = [np.empty(0, np.int32)]
    return np.concatenate(targets or nothing), np.concatenate(sources or nothing)


def _zones_by_hand(case: Case, target: IndexArray, source: IndexArray) -> Case:
    corrected = (case.zones != case.proposal) & same_side_as_proposed(case)
    taken = corrected[source]
    zones = case.zones.copy()
    zones[target[taken]] = case.zones[source[taken]]
    return with_zones(case, zones)


def _accent_by_hand(case: Case, accent: Accent, target: IndexArray, source: IndexArray) -> Case:
    now = accent_share(case, accent)
    proposed = next((m.share for m in case.accent_proposal if m.accent == accent), None)
    before = np.zeros_like(now) if proposed is None else proposed
    taken = np.abs(now - before)[source] > _BY_HAND
    if not taken.any():
        return case
    share = now.copy()
    share[target[taken]] = now[source[taken]]
    return case if np.array_equal(share, now) else case.with_accent(accent, share)


def _brushed(plan: StainPlan, count: int, target: IndexArray, source: IndexArray) -> StainPlan:
    """Return the plan with brushed coats of the copied half on the other half too."""
    steps = list(plan.steps)
    for index, step in enumerate(steps):
        if step.brushed is None:
            continue
        coats: NDArray[np.float32] = np.zeros(count, np.float32)
        coats[step.brushed.vertices] = step.brushed.coats
        taken = coats[source] > 0.0
        copied = coats.copy()
        copied[target[taken]] = coats[source[taken]]
        if not np.array_equal(copied, coats):
            steps[index] = replace(step, brushed=BrushedCoats.from_dense(copied))
    return plan if tuple(steps) == plan.steps else replace(plan, steps=tuple(steps))
