"""Proposes the zones and accents of a crown or bridge that has been read."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import ReadingError
from stainmap.model.case import AccentMask
from stainmap.model.crown import BodyKind, CrownReading
from stainmap.model.tooth import Role, Unit
from stainmap.model.zone import OUTER_ZONES, Accent
from stainmap.planning.accents import unit_accents
from stainmap.planning.body import Body, centres, find_body, unit_parts
from stainmap.planning.directions import across, buccal_from_mesial
from stainmap.planning.drawing import Drawing, embrasure_mm
from stainmap.planning.fissures import find_fissures
from stainmap.planning.landmarks import (
    Landmarks,
    UnitPart,
    as_pontic,
    find_crest,
    find_landmarks,
)
from stainmap.planning.margin import CAVITY_RATIO, cavity_ratio
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.relief import SMOOTHING_MM, Reliefs, find_reliefs
from stainmap.planning.row import mesial_along, row_directions, row_order
from stainmap.planning.unit_form import UnitForm
from stainmap.planning.zone_rules import ZoneSliders, zone_shares
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh, unit_rows
from stainmap.surface.principal import principal_curvatures

__all__ = ["ZoneProposal", "ZoneSliders", "propose_zones"]

_DEFAULT_SLIDERS = ZoneSliders()
# Islands smaller than this share of a unit's outer area go to the zone around them.
_ISLAND_SHARE = 0.0022


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ZoneProposal:
    """Zones and accents as proposed, and the reading they were made from.

    Parameters
    ----------
    zones
        (V,) uint8 zone numbers.
    accents
        Soft masks in the order of their numbers, those that are empty left out.
    reading
        The reading.
    """

    zones: NDArray[np.uint8]
    accents: tuple[AccentMask, ...]
    reading: CrownReading

    def __post_init__(self) -> None:
        """Make the zones read-only."""
        self.zones.flags.writeable = False


def propose_zones(
    mesh: TriMesh,
    operator: SurfaceOperator,
    reading: CrownReading,
    units: tuple[Unit, ...],
    *,
    sliders: ZoneSliders = _DEFAULT_SLIDERS,
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
    progress
        Hears a share and a phrase; may raise CancelledError.

    Raises
    ------
    ReadingError
        If the body is no crown, no tooth is named, or mesial is not known.
    """
    steps = Steps(progress)
    if operator.mesh is not mesh:
        raise ValueError("the operator belongs to another mesh")
    _refuse_what_has_no_zones(reading, units)
    body = steps.during(0.0, "looking at the body", lambda: find_body(operator))
    drawing = Drawing(body=body, reading=reading, units=units)
    layout = _lay_out(drawing, sliders, steps.part(0.15, 0.75))
    steps.say(0.75, "drawing the borders")
    beside = drawing.beside_connectors()
    zones = drawing.zones(layout.shares, beside, _ISLAND_SHARE * layout.sizes_mm**2)
    steps.say(0.9, "drawing the accents")
    masks = drawing.accents(layout.accents, beside, layout.sizes_mm)
    steps.say(1.0, "zones proposed")
    return ZoneProposal(
        zones=zones,
        accents=tuple(
            AccentMask(accent=accent, share=np.clip(mask, 0.0, 1.0).astype(np.float32))
            for accent, mask in sorted(masks.items())
            if mask.any()
        ),
        reading=reading,
    )


def _refuse_what_has_no_zones(reading: CrownReading, units: tuple[Unit, ...]) -> None:
    if not units:
        raise ReadingError("No tooth is named.", where="units", advice="Name it, as in 46.")
    if reading.kind is BodyKind.NOT_A_CROWN or not np.isfinite(reading.height).any():
        raise ReadingError(
            reading.warnings[0] if reading.warnings else "The body is no crown.",
            advice="Choose another file, or check its length unit.",
        )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Layout:
    """Zones and accents on the copy: shares (W, 5), masks (W,), and c of each unit (N,)."""

    shares: FloatArray
    accents: dict[Accent, FloatArray]
    sizes_mm: FloatArray


def _lay_out(drawing: Drawing, sliders: ZoneSliders, steps: Steps) -> _Layout:
    """Lay out zones and accents of every unit on the copy."""
    body, reading, units = drawing.body, drawing.reading, drawing.units
    copy, thinned = body.copy, body.thinned
    axis = np.asarray(reading.occlusal_axis)
    reliefs = find_reliefs(body.operator, steps.part(0.0, 0.5))
    steps.say(0.5, "reading grooves and ridges")
    bends = principal_curvatures(body.operator, SMOOTHING_MM)
    level_bend = bends.along(unit_rows(np.cross(reliefs.middle.normals, axis)))
    unit_index = thinned.sampled(reading.unit_index[body.vertices])
    embrasure = embrasure_mm(copy, unit_index)
    outer = thinned.majority(drawing.free_outer())
    rim = thinned.sampled(reading.rim[body.vertices])
    parts = unit_parts(copy, unit_index, units)
    mesials = _mesials(reading, units, centres(parts), axis)
    shares = np.zeros((copy.vertex_count, len(OUTER_ZONES)))
    accents: dict[Accent, FloatArray] = {}
    sizes = np.zeros(len(parts))
    for number, part in enumerate(parts):
        steps.say(0.6 + 0.4 * number / len(parts), "laying out the zones")
        mesial, vertices = mesials[part.index], part.vertices
        landmarks = _landmarks(body, part, outer[vertices], reliefs.at(vertices), axis)
        form = UnitForm(
            landmarks=landmarks,
            mesial=mesial,
            buccal=buccal_from_mesial(mesial, axis, units[part.index].tooth),
            normals=reliefs.middle.normals[vertices],
            valley_per_mm=-bends.least[vertices],
            level_bend_per_mm=level_bend[vertices],
            embrasure_mm=embrasure[vertices],
            rim=rim[vertices],
            hollow=cavity_ratio(part.mesh, landmarks.outer) > CAVITY_RATIO,
        )
        fissure = find_fissures(form, sliders.fissure_width)
        by_zone = zone_shares(form, fissure, sliders)
        shares[vertices] = np.stack([by_zone[zone] for zone in OUTER_ZONES], axis=1)
        sizes[part.index] = landmarks.size_mm
        for accent, mask in unit_accents(form, fissure).items():
            accents.setdefault(accent, np.zeros(copy.vertex_count))[vertices] = mask
    return _Layout(shares=shares, accents=accents, sizes_mm=sizes)


def _landmarks(
    body: Body, part: UnitPart, outer: BoolArray, reliefs: Reliefs, axis: FloatArray
) -> Landmarks:
    """Return the landmarks of a unit within the outer surface that was read or set."""
    crest = find_crest(part, outer, axis, reliefs)
    margin = body.open_margin()
    open_margin = None if margin is None else margin[part.vertices]
    landmarks = find_landmarks(part, outer, axis, crest, open_margin=open_margin)
    pontic = part.unit is not None and part.unit.role is Role.PONTIC
    return as_pontic(landmarks) if pontic else landmarks


def _mesials(
    reading: CrownReading, units: tuple[Unit, ...], middles: FloatArray, axis: FloatArray
) -> list[FloatArray]:
    """Return mesial across the axis for each unit of the case."""
    found: list[FloatArray | None]
    if len(middles) > 1:
        order = row_order(units)
        lefts = dict(zip(order, row_directions(middles[order], axis), strict=True))
        found = [
            None if (left := lefts[k]) is None else mesial_along(left, unit.tooth)
            for k, unit in enumerate(units)
        ]
    else:
        said = reading.mesial
        found = [None if said is None else across(np.asarray(said), axis)]
    mesials = []
    for unit, mesial in zip(units, found, strict=True):
        if mesial is None:
            raise ReadingError(
                f"Which side of tooth {unit.tooth.number} is mesial is not known.",
                where="mesial direction",
                advice="Click its mesial side, or give the direction as three numbers.",
            )
        mesials.append(mesial)
    return mesials
