"""All that zones are laid out from and that no slider moves, kept so that moving one is quick."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import ReadingError
from stainmap.model.case import AccentMask
from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Role, Unit
from stainmap.model.zone import OUTER_ZONES, Accent
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.planning.accents import firm_accents, ridge_accents
from stainmap.planning.body import Body, centres, unit_parts
from stainmap.planning.directions import across, buccal_from_mesial
from stainmap.planning.drawing import Drawing, embrasure_mm
from stainmap.planning.fissures import find_fissures
from stainmap.planning.landmarks import (
    Landmarks,
    UnitPart,
    as_pontic,
    find_crest,
    find_landmarks,
    height_of_top,
)
from stainmap.planning.margin import CAVITY_RATIO, cavity_ratio
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.relief import SMOOTHING_MM, Reliefs
from stainmap.planning.row import mesial_along, row_directions, row_order
from stainmap.planning.unit_form import UnitForm
from stainmap.planning.zone_rules import zone_shares
from stainmap.surface.mesh import BoolArray, FloatArray, unit_rows
from stainmap.surface.principal import principal_curvatures
from stainmap.words import translate

_DEFAULT_SLIDERS = ZoneSliders()
# Islands smaller than this share of a unit's outer area go to the zone around them.
_ISLAND_SHARE = 0.0022


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ZoneProposal:
    """Zones and accents as proposed, and what they were made from.

    Parameters
    ----------
    zones
        (V,) uint8 zone numbers.
    accents
        Soft masks in the order of their numbers, those that are empty left out.
    reading
        The reading.
    sliders
        How far the zones reach.
    """

    zones: NDArray[np.uint8]
    accents: tuple[AccentMask, ...]
    reading: CrownReading
    sliders: ZoneSliders = _DEFAULT_SLIDERS

    def __post_init__(self) -> None:
        """Make the zones read-only."""
        self.zones.flags.writeable = False


class ZoneGround:
    """The landmarks of every unit and the accents that stay, from which zones are proposed.

    Parameters
    ----------
    drawing
        The surface that is drawn on.
    forms
        Form of each unit.
    accents
        Accents that no slider moves, on the whole surface.
    beside
        (P,) how much each vertex of the piece belongs to connectors.
    """

    def __init__(
        self,
        *,
        drawing: Drawing,
        forms: tuple[UnitForm, ...],
        accents: dict[Accent, FloatArray],
        beside: FloatArray,
    ) -> None:
        self._drawing, self._forms, self._beside = drawing, forms, beside
        self._firm = _masks(accents)
        sizes_mm = unit_sizes_mm(forms)
        self._smallest_mm2 = _ISLAND_SHARE * sizes_mm**2
        # Ridges end at fissures, so they change with their width alone; the last ones are kept.
        self._ridges: tuple[float, tuple[AccentMask, ...]] | None = None

    @property
    def reading(self) -> CrownReading:
        """The reading that the landmarks belong to."""
        return self._drawing.reading

    def propose(self, sliders: ZoneSliders, progress: Progress | None = None) -> ZoneProposal:
        """Propose zones and accents; a fifth of a second for 100,000 vertices.

        Parameters
        ----------
        sliders
            How far the zones reach.
        progress
            Hears a share and a phrase; may raise CancelledError.
        """
        steps = Steps(progress)
        steps.say(0.0, translate("zone ground", "laying out the zones"))
        count = self._drawing.body.copy.vertex_count
        shares = np.zeros((count, len(OUTER_ZONES)))
        fissures = []
        for form in self._forms:
            fissure = find_fissures(form, sliders.fissure_width)
            by_zone = zone_shares(form, fissure, sliders)
            vertices = form.landmarks.part.vertices
            shares[vertices] = np.stack([by_zone[zone] for zone in OUTER_ZONES], axis=1)
            fissures.append(fissure)
        steps.say(0.3, translate("zone ground", "drawing the borders"))
        zones = self._drawing.zones(shares, self._beside, self._smallest_mm2)
        steps.say(0.7, translate("zone ground", "drawing the accents"))
        accents = (*self._firm, *self._ridges_between(fissures, sliders.fissure_width))
        steps.say(1.0, translate("zone ground", "zones proposed"))
        return ZoneProposal(
            zones=zones,
            accents=tuple(sorted(accents, key=lambda mask: int(mask.accent))),
            reading=self.reading,
            sliders=sliders,
        )

    def _ridges_between(self, fissures: list[FloatArray], width: float) -> tuple[AccentMask, ...]:
        if self._ridges is None or self._ridges[0] != width:
            count = self._drawing.body.copy.vertex_count
            on_copy = [
                ridge_accents(form, fissure)
                for form, fissure in zip(self._forms, fissures, strict=True)
            ]
            drawn = self._drawing.on_whole(gathered(count, self._forms, on_copy))
            self._ridges = (width, _masks(drawn))
        return self._ridges[1]


def gathered(
    count: int, forms: tuple[UnitForm, ...], of_units: list[dict[Accent, FloatArray]]
) -> dict[Accent, FloatArray]:
    """Return accents of units, (V,) each, as accents of the copy, (count,) each."""
    whole: dict[Accent, FloatArray] = {}
    for form, accents in zip(forms, of_units, strict=True):
        for accent, mask in accents.items():
            whole.setdefault(accent, np.zeros(count))[form.landmarks.part.vertices] = mask
    return whole


def unit_sizes_mm(forms: tuple[UnitForm, ...]) -> FloatArray:
    """Return c of each unit, (N,), in the order of the units."""
    sizes = np.zeros(len(forms))
    for form in forms:
        sizes[form.landmarks.part.index] = form.landmarks.size_mm
    return sizes


def _masks(accents: dict[Accent, FloatArray]) -> tuple[AccentMask, ...]:
    return tuple(
        AccentMask(accent=accent, share=np.clip(mask, 0.0, 1.0).astype(np.float32))
        for accent, mask in sorted(accents.items())
        if mask.any()
    )


def lay_ground(drawing: Drawing, reliefs: Reliefs, steps: Steps) -> ZoneGround:
    """Return what zones are proposed from.

    Parameters
    ----------
    drawing
        The surface that is drawn on.
    reliefs
        Reliefs of its copy.
    steps
        Hears how far it is.
    """
    body = drawing.body
    steps.say(0.0, translate("zone ground", "reading grooves and ridges"))
    forms = _forms(drawing, reliefs, steps.part(0.0, 0.7))
    steps.say(0.7, translate("zone ground", "drawing the accents"))
    beside = drawing.beside_connectors()
    on_copy = gathered(body.copy.vertex_count, forms, [firm_accents(form) for form in forms])
    accents = drawing.on_whole(on_copy) | drawing.borders(beside, unit_sizes_mm(forms))
    return ZoneGround(drawing=drawing, forms=forms, accents=accents, beside=beside)


def _forms(drawing: Drawing, reliefs: Reliefs, steps: Steps) -> tuple[UnitForm, ...]:
    """Return the forms of the units on the copy."""
    body, reading, units = drawing.body, drawing.reading, drawing.units
    copy, thinned = body.copy, body.thinned
    axis = np.asarray(reading.occlusal_axis)
    bends = principal_curvatures(body.operator, SMOOTHING_MM)
    level_bend = bends.along(unit_rows(np.cross(reliefs.middle.normals, axis)))
    unit_index = thinned.sampled(reading.unit_index[body.vertices])
    embrasure = embrasure_mm(copy, unit_index)
    outer = thinned.majority(drawing.free_outer())
    rim = thinned.sampled(reading.rim[body.vertices])
    parts = unit_parts(copy, unit_index, units)
    mesials = _mesials(reading, units, centres(parts), axis)
    forms = []
    for number, part in enumerate(parts):
        steps.say(
            0.3 + 0.7 * number / len(parts), translate("zone ground", "reading grooves and ridges")
        )
        mesial, vertices = mesials[part.index], part.vertices
        landmarks = _landmarks(body, part, outer[vertices], reliefs.at(vertices), axis)
        forms.append(
            UnitForm(
                landmarks=landmarks,
                mesial=mesial,
                buccal=buccal_from_mesial(mesial, axis, units[part.index].tooth),
                normals=reliefs.middle.normals[vertices],
                valley_per_mm=-bends.least[vertices],
                level_bend_per_mm=level_bend[vertices],
                top_mm=height_of_top(landmarks, landmarks.up),
                embrasure_mm=embrasure[vertices],
                rim=rim[vertices],
                hollow=cavity_ratio(part.mesh, landmarks.outer) > CAVITY_RATIO,
            )
        )
    return tuple(forms)


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
                translate(
                    "zone ground", "Which side of tooth {number} is mesial is not known."
                ).format(number=unit.tooth.number),
                where="mesial direction",
                advice=translate(
                    "zone ground", "Click its mesial side, or give the direction as three numbers."
                ),
            )
        mesials.append(mesial)
    return mesials
