"""Advice on the ceramic itself: walls, connectors, what shines through, the programme."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import numpy as np

from stainmap.model.advice_limits import AdviceLimit, Mark
from stainmap.model.case import Backing, Region
from stainmap.model.tooth import Role
from stainmap.optics.difference import delta_e_00
from stainmap.planning.advice_ground import AdviceGround, FlatSample, touching
from stainmap.planning.advice_value import Advice, Mask, Severity
from stainmap.planning.draft import THIN_WALL_MM
from stainmap.planning.row import row_order
from stainmap.surface.below_level import area_below, faces_within
from stainmap.words import listed, translate

_SQUARE = "mm\N{SUPERSCRIPT TWO}"
# Less than this is a few points of the mesh; as sheets have it, see `draft.thin_wall`.
DRAFT_FROM_MM2 = 0.5
# Walls at which a stump's influence is worked out; between them it is linear enough.
_GRID_MM = np.concatenate([np.arange(0.2, 2.0, 0.1), np.arange(2.0, 4.1, 0.25)])


def thin_walls(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each unit with wall below the block's minimum, above the margin strip.

    The area is that of facets cut along the minimum, walls being linear within a facet.
    """
    if ground.assumed_wall:
        return
    case, mesh = ground.case, ground.mesh
    block = case.materials.block(case.plan.block)
    wall, least = ground.wall_mm, block.minimum_wall_mm
    for unit in range(len(case.units)):
        judged = ground.over_stump & (case.reading.unit_index == unit)
        thin = judged & (wall < least)
        if not thin.any():
            continue
        area = area_below(mesh, wall, least, faces_within(mesh, judged))
        if area < ground.limits["thin_wall_area"].value:
            continue
        thinnest = float(wall[thin].min())
        left_out = ground.limits["margin_left_out"]
        ground_off = bool(case.after_sintering.ground)
        of_bridge = len(case.units) > 1
        if ground_off:
            text = (
                translate(
                    "advice walls",
                    "{area:.1f} {square} of wall of {tooth} are below {least:.2f} mm after grinding"
                    " (thinnest {thinnest:.2f} mm).",
                )
                if of_bridge
                else translate(
                    "advice walls",
                    "{area:.1f} {square} of wall are below {least:.2f} mm after grinding (thinnest"
                    " {thinnest:.2f} mm).",
                )
            )
        else:
            text = (
                translate(
                    "advice walls",
                    "{area:.1f} {square} of wall of {tooth} are below {least:.2f} mm (thinnest"
                    " {thinnest:.2f} mm).",
                )
                if of_bridge
                else translate(
                    "advice walls",
                    "{area:.1f} {square} of wall are below {least:.2f} mm (thinnest"
                    " {thinnest:.2f} mm).",
                )
            )
        yield Advice(
            rule="thin wall",
            sentence=text.format(
                area=area,
                square=_SQUARE,
                tooth=case.units[unit].tooth.number,
                least=least,
                thinnest=thinnest,
            ),
            severity=Severity.SETTLE,
            remedy=translate(
                "advice walls", "Make the wall thicker there, or choose a block that allows it."
            ),
            figure=area,
            limit=AdviceLimit(
                name="minimum_wall",
                value=least,
                unit="mm",
                mark=Mark.FROM_MEMORY,
                source=translate(
                    "advice walls", "The least wall of block {name}, as the materials give it"
                ).format(name=block.name),
            ),
            basis=translate(
                "advice walls", "The last {length} above the margin is left out."
            ).format(length=left_out.said),
            unit=unit,
            place=ground.place(thin),
        )


def connectors(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each connector whose section is too small for its place and span."""
    case = ground.case
    order = row_order(case.units)
    # A bridge whose necks were not all found has fewer sections than pairs.
    sections = zip(case.reading.connectors_mm2, pairwise(order), strict=False)
    for section, (left, right) in sections:
        limit = ground.limits[_connector_limit(ground, order, left, right)]
        if section >= limit.value:
            continue
        teeth = "\N{EN DASH}".join(str(case.units[k].tooth.number) for k in (left, right))
        yield Advice(
            rule="connector",
            sentence=translate(
                "advice walls",
                "Connector {teeth}: {section:.1f} {square}; {value:g} {square} or more is "
                "usual there.",
            ).format(teeth=teeth, section=section, square=_SQUARE, value=limit.value),
            severity=Severity.SETTLE,
            remedy=translate(
                "advice walls", "Have the connector made larger, above all in height."
            ),
            figure=section,
            limit=limit,
            unit=left,
            place=ground.place(_between(ground, left, right)),
        )


def _connector_limit(ground: AdviceGround, order: list[int], left: int, right: int) -> str:
    units = ground.case.units
    pontic = [units[k].role is Role.PONTIC for k in order]
    span = 0
    for position in (order.index(left), order.index(right)):
        first = last = position
        if not pontic[position]:
            continue
        while first > 0 and pontic[first - 1]:
            first -= 1
        while last + 1 < len(order) and pontic[last + 1]:
            last += 1
        span = max(span, last - first + 1)
    if span >= 2:
        return "connector_long_span"
    front = units[left].tooth.is_front and units[right].tooth.is_front
    return "connector_front" if front else "connector_back"


def _between(ground: AdviceGround, left: int, right: int) -> Mask:
    """Return the vertices (V,) along the border of two units."""
    index = ground.case.reading.unit_index
    one, other = index == left, index == right
    beside: Mask = (one & touching(ground.mesh, other)) | (other & touching(ground.mesh, one))
    return beside


def stump_shines_through(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence where the stump changes the colour against the one the block is given over.

    The bare wall over the case's stump and cement is compared with the same wall over what the
    block's colour was measured on, both as flat pieces, at the wall of every place.
    """
    if ground.assumed_wall:
        return
    stumps = ground.stump_backings()
    for backing, units in stumps.items():
        whose = units if len(stumps) > 1 else None
        yield from _shines_through(ground, backing, whose)


def _shines_through(
    ground: AdviceGround, backing: Backing, units: list[int] | None
) -> Iterator[Advice]:
    """Yield a sentence if a stump shows on its units, on all if None."""
    case = ground.case
    nominal = case.materials.block(case.plan.block).layers[0].nominal.measurement.backing
    known = {stump.name for stump in case.materials.stumps}
    if backing.stump == nominal or nominal not in known:
        return
    over = ground.over_stump
    if units is not None:
        over = over & np.isin(case.reading.unit_index, units)
    region = case.backings.index(backing)
    steps = len(case.plan.steps)
    layers = ground.scene.layer_share
    mean = None if layers is None or not over.any() else layers[:, over].mean(axis=1)
    pieces = [
        FlatSample(
            coats=np.zeros(steps),
            partner_coats=np.zeros(steps),
            wall_mm=float(wall),
            layers=mean,
            region=region,
        )
        for wall in _GRID_MM
    ]
    usual = tuple(replace(one, stump=nominal) if one is backing else one for one in case.backings)
    here = ground.flat_lab(pieces)
    there = ground.flat_lab(pieces, ground.scene_over(usual))
    seen = np.interp(ground.wall_mm, _GRID_MM, delta_e_00(here, there))
    limit, least = ground.limits["stump_seen"], ground.limits["stump_area"]
    shows = over & (seen > limit.value)
    area = float(ground.mesh.vertex_areas[shows].sum())
    if area < least.value:
        return
    worst = float(np.percentile(seen[shows], 95))
    is_darker = (here[:, 0] - there[:, 0])[:10].mean() < 0
    if units is None:
        text = (
            translate(
                "advice walls",
                "The stump ({stump}) shines through on {area:.0f} {square}: darker, up to"
                " {worst:.1f} dE00.",
            )
            if is_darker
            else translate(
                "advice walls",
                "The stump ({stump}) shines through on {area:.0f} {square}: lighter, up to"
                " {worst:.1f} dE00.",
            )
        )
    else:
        text = (
            translate(
                "advice walls",
                "The stump of {teeth} ({stump}) shines through on {area:.0f} {square}: darker, up"
                " to {worst:.1f} dE00.",
            )
            if is_darker
            else translate(
                "advice walls",
                "The stump of {teeth} ({stump}) shines through on {area:.0f} {square}: lighter, up"
                " to {worst:.1f} dE00.",
            )
        )
    yield Advice(
        rule="stump shines through",
        unit=None if units is None else units[0],
        sentence=text.format(
            teeth=listed([str(case.units[k].tooth.number) for k in units or ()]),
            stump=backing.stump,
            area=area,
            square=_SQUARE,
            worst=worst,
        ),
        severity=Severity.CHECK,
        remedy=translate(
            "advice walls", "Plan a thicker wall, a more opaque cement or a more opaque block."
        ),
        figure=worst,
        limit=limit,
        basis=translate(
            "advice walls",
            "Against the same bare wall over '{nominal}', which the block's colour is "
            "given for; the prediction holds it already.",
        ).format(nominal=nominal),
        place=ground.place(shows),
    )


def draft(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence while nobody has said what lies behind the crown; see `draft`."""
    case = ground.case
    if case.intake is not None and case.intake.stump_known:
        return
    thin = ground.over_stump & (ground.wall_mm < THIN_WALL_MM)
    area = float(ground.mesh.vertex_areas[thin].sum())
    if area < DRAFT_FROM_MM2:
        yield Advice(
            rule="stump missing",
            sentence=translate(
                "advice walls", "Nobody has said what lies behind; {stump} is assumed."
            ).format(stump=case.backing(Region.STUMP).stump),
            severity=Severity.NOTE,
            remedy=translate("advice walls", "Choose the stump on the intake page."),
        )
        return
    yield Advice(
        rule="stump missing",
        sentence=translate(
            "advice walls",
            "Draft: nobody has said what lies behind {area:.1f} {square} of wall below "
            "{limit:.1f} mm (thinnest {thinnest:.2f} mm).",
        ).format(
            area=area,
            square=_SQUARE,
            limit=THIN_WALL_MM,
            thinnest=float(ground.wall_mm[thin].min()),
        ),
        severity=Severity.SETTLE,
        remedy=translate("advice walls", "Choose the stump on the intake page."),
        figure=area,
        limit=AdviceLimit(
            name="draft_wall",
            value=THIN_WALL_MM,
            unit="mm",
            mark=Mark.COMMON_PRACTICE,
            source=translate("advice walls", "A thinner wall shows what lies behind it"),
        ),
        place=ground.place(thin),
    )


def fast_programme(ground: AdviceGround) -> Iterator[Advice]:
    """Yield what speaks against a fast programme: too many units, walls too thick."""
    case = ground.case
    programme = case.materials.programme(case.programme)
    fast = ground.limits["fast_minutes"]
    if programme.minutes > fast.value:
        return
    basis = translate(
        "advice walls", "A fast programme: {minutes:.0f} min, cold to opening."
    ).format(minutes=programme.minutes)
    remedy = translate(
        "advice walls", "Choose a slower programme; the makers of block and oven decide."
    )
    units = ground.limits["fast_units"]
    if len(case.units) > units.value:
        yield Advice(
            rule="fast programme, units",
            sentence=translate(
                "advice walls", "'{name}' with {count} units: at most {value:g} is usual."
            ).format(name=programme.name, count=len(case.units), value=units.value),
            severity=Severity.SETTLE,
            remedy=remedy,
            figure=float(len(case.units)),
            limit=units,
            basis=basis,
        )
    if ground.assumed_wall:
        return
    limit, least = ground.limits["fast_wall"], ground.limits["fast_wall_area"]
    thick = case.reading.outer & (ground.wall_mm > limit.value)
    if float(ground.mesh.vertex_areas[thick].sum()) < least.value:
        return
    thickest = float(np.percentile(ground.wall_mm[thick], 95))
    yield Advice(
        rule="fast programme, walls",
        sentence=translate(
            "advice walls",
            "'{name}' with walls up to {thickest:.1f} mm: at most {value:g} mm is usual.",
        ).format(name=programme.name, thickest=thickest, value=limit.value),
        severity=Severity.SETTLE,
        remedy=remedy,
        figure=thickest,
        limit=limit,
        basis=basis,
        place=ground.place(thick),
    )
