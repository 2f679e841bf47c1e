"""Advice on the coats: too many, against each other, not there, too broad, too near a contact."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import csgraph

from stainmap.model.advice_limits import AdviceLimit, Mark
from stainmap.model.zone import Accent, Area, Zone
from stainmap.optics.difference import delta_e_00
from stainmap.planning.advice_ground import AdviceGround, FlatSample, touching
from stainmap.planning.advice_value import Advice, Mask, Severity
from stainmap.planning.coat_limits import excesses
from stainmap.planning.outcome import coat_entries
from stainmap.predict.grinding import remaining_share
from stainmap.predict.uptake import coats_for_share, load_after_steps
from stainmap.surface.below_level import area_below, faces_touching, level_length
from stainmap.words import listed, sentence_case, translate

_TOPS: tuple[Area, ...] = (Zone.CUSP, Accent.MARGINAL_RIDGE, Accent.TRIANGULAR_RIDGE)
# A liquid with less than this on an area has no part in it.
_SOME = 0.5
# How squarely two effects must oppose each other: cosine of the angle between them in a*, b*.
_OPPOSED = -0.7
# Bare pieces smaller than this are specks, and so many are looked at.
_LEAST_MM2, _MOST_PIECES = 0.3, 12


def planned_coats(ground: AdviceGround, area: Area) -> NDArray[np.float64]:
    """Return what the plan puts on an area, (S,): full counts, inherited and brushed ones too."""
    coats = np.zeros(len(ground.case.plan.steps))
    for entry in coat_entries(ground.case, area):
        coats[entry.step] += max(span.high for span in entry.coats)
    weight = ground.weights[area]
    for index, step in enumerate(ground.case.plan.steps):
        if step.brushed is not None:
            share = weight[step.brushed.vertices] / weight.sum()
            coats[index] += float(share @ step.brushed.coats)
    return coats


def more_than_taken_up(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each area where the last coat of a liquid finds hardly any room.

    The room that a coat finds is 1 before the first one and shrinks with every load already there;
    see `predict.uptake`.
    """
    limit = ground.limits["last_coat"]
    for area in ground.weights:
        coats = planned_coats(ground, area)
        found = _least_room(ground, coats)
        if found is None or found[1] >= limit.value:
            continue
        liquid, room = found
        yield Advice(
            rule="more coats than taken up",
            sentence=translate(
                "advice coats",
                "{name}: the last coat of {liquid} adds {room:.0f} % of what a first one does.",
            ).format(name=sentence_case(ground.name(area)), liquid=liquid, room=100 * room),
            severity=Severity.CHECK,
            remedy=translate("advice coats", "Leave coats out, or take a stronger liquid."),
            figure=room,
            limit=limit,
            area=area,
            place=ground.area_place(area),
        )


def _least_room(ground: AdviceGround, coats: NDArray[np.float64]) -> tuple[str, float] | None:
    """Return the liquid whose last coat found least room, and that room, 0 to 1."""
    scene = ground.plain_scene
    rule = scene.process.uptake
    found: tuple[str, float] | None = None
    for liquid in np.unique(scene.step_liquid[coats >= _SOME]):
        last = int(np.flatnonzero((scene.step_liquid == liquid) & (coats >= _SOME))[-1])
        before = coats[: last + 1].copy()
        before[last] -= min(1.0, before[last])
        load = load_after_steps(
            before[:, None],
            scene.step_liquid[: last + 1],
            scene.step_dilution[: last + 1],
            liquid_count=len(scene.liquids),
            rule=rule,
        )[:, 0]
        eta = rule.competition
        room = max(1.0 - (eta * load.sum() + (1.0 - eta) * load[liquid]), 0.0)
        if found is None or room < found[1]:
            found = (scene.liquids[liquid], float(room))
    return found


def more_than_usual(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each area with more coats than usual; see `coat_limits`."""
    plan = ground.case.plan
    for area in ground.weights:
        by_liquid: dict[str, float] = {}
        for step, count in zip(plan.steps, planned_coats(ground, area), strict=True):
            liquid = plan.liquid_of(step)
            by_liquid[liquid] = by_liquid.get(liquid, 0.0) + round(float(count), 1)
        for excess in excesses(area, by_liquid, ground.case.materials):
            yield Advice(
                rule="more coats than usual",
                sentence=(
                    translate("advice coats", "{area}: {coats:g} coat; usual: {limit}.")
                    if excess.coats == 1
                    else translate("advice coats", "{area}: {coats:g} coats; usual: {limit}.")
                ).format(
                    area=sentence_case(ground.name(area)),
                    coats=excess.coats,
                    limit=excess.limit.label,
                ),
                severity=Severity.NOTE,
                figure=excess.coats,
                limit=AdviceLimit(
                    name="coat_limit",
                    value=float(excess.limit.most),
                    unit="coats",
                    mark=Mark.COMMON_PRACTICE,
                    source=translate(
                        "advice coats",
                        "Beyond it the starter materials leave the colours of natural teeth",
                    ),
                ),
                area=area,
                place=ground.area_place(area),
            )


def cancelling(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence where two liquids on one area undo each other's hue and chroma.

    What a liquid does is the step in a*, b* between the area with and without it. Of two that point
    apart, the share undone is that of the longer step taken back by the other. Nothing is said
    where the area would miss what is wanted of it without the two: then they lower value on
    purpose.
    """
    for area, sample in ground.samples.items():
        found = _worst_pair(ground, area, sample)
        if found is None:
            continue
        names, undone, darker = found
        yield Advice(
            rule="coats cancel",
            sentence=translate(
                "advice coats",
                "{name}: {names} undo {undone:.0f} % of each other's hue and chroma and still "
                "take {darker:.1f} L*.",
            ).format(
                name=sentence_case(ground.name(area)),
                names=names,
                undone=100 * undone,
                darker=darker,
            ),
            severity=Severity.CHECK,
            remedy=translate(
                "advice coats",
                "Without them the area would be as near to what is wanted, as far as is seen.",
            )
            if ground.case.target is not None
            else translate(
                "advice coats", "Fewer coats of both give about the same hue and a lighter tooth."
            ),
            figure=undone,
            limit=ground.limits["cancel_share"],
            area=area,
            place=ground.area_place(area),
        )


def _worst_pair(
    ground: AdviceGround, area: Area, sample: FlatSample
) -> tuple[str, float, float] | None:
    """Return names of the two liquids that cancel most, the share undone, and the L* they take."""
    scene = ground.plain_scene
    present = [
        liquid
        for liquid in range(len(scene.liquids))
        if sample.coats[scene.step_liquid == liquid].sum() >= _SOME
    ]
    if len(present) < 2:
        return None
    pairs = list(combinations(range(len(present)), 2))
    pieces = [sample, *(_without(ground, sample, (one,)) for one in present)]
    pieces += [_without(ground, sample, (present[i], present[j])) for i, j in pairs]
    lab = ground.flat_lab(pieces)
    effect = lab[0, 1:] - lab[1 : 1 + len(present), 1:]
    length = np.linalg.norm(effect, axis=1)
    found: tuple[str, float, float] | None = None
    for change, (i, j) in zip(lab[1 + len(present) :] - lab[0], pairs, strict=True):
        product = float(effect[i] @ effect[j])
        short, long = sorted((float(length[i]), float(length[j])))
        if short < ground.limits["cancel_effect"].value or product > _OPPOSED * short * long:
            continue
        undone = -product / long**2
        if undone < ground.limits["cancel_share"].value or _is_needed(ground, area, change):
            continue
        if found is None or undone > found[1]:
            names = listed([scene.liquids[present[k]] for k in (i, j)])
            found = (names, undone, float(change[0]))
    return found


def _is_needed(ground: AdviceGround, area: Area, change: NDArray[np.float64]) -> bool:
    """Return True if an area would visibly miss what is wanted after a change of L*a*b*."""
    outcome = ground.outcome.area(area)
    if outcome is None or outcome.wanted is None or outcome.delta_e_00 is None:
        return False
    after = np.asarray(outcome.predicted.lab) + change
    missed = float(delta_e_00(after, np.asarray(outcome.wanted.lab)))
    return missed > outcome.delta_e_00 + ground.limits["cancel_seen"].value


def _without(ground: AdviceGround, sample: FlatSample, liquids: tuple[int, ...]) -> FlatSample:
    stays = ~np.isin(ground.plain_scene.step_liquid, liquids)
    return replace(sample, coats=sample.coats * stays)


def bare_ring(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each narrow strip without coats between painted places.

    Width is twice the area over the length of the whole border, which is exact for a strip.
    """
    total = ground.coats.sum(axis=0, dtype=np.float64)
    outer = ground.case.reading.outer
    level = ground.limits["bare_coats"].value
    bare = outer & (total < level)
    if not bare.any() or not (outer & (total >= 1.0)).any():
        return
    width_limit, length_limit = ground.limits["ring_width"], ground.limits["ring_length"]
    # Beyond the margin a strip ends, whatever lies there.
    field = np.where(outer, total, 2.0 * level)
    at = np.flatnonzero(bare)
    ways = ground.mesh.adjacency[at][:, at]
    _, piece = csgraph.connected_components(ways, directed=False)
    sizes = np.bincount(piece, ground.mesh.vertex_areas[at])
    touched = faces_touching(ground.mesh, bare)
    strips: dict[str, list[tuple[float, float, Mask]]] = {}
    for number in np.argsort(-sizes)[:_MOST_PIECES]:
        if sizes[number] < _LEAST_MM2:
            break
        mask = np.zeros(len(bare), bool)
        mask[at[piece == number]] = True
        faces = faces_touching(ground.mesh, mask, touched)
        border = level_length(ground.mesh, field, level, faces)
        if border <= 0.0:
            continue
        width = 2.0 * area_below(ground.mesh, field, level, faces) / border
        length = border / 2.0
        if width > width_limit.value or length < max(length_limit.value, 3.0 * width):
            continue
        strips.setdefault(_areas_beside(ground, mask), []).append((width, length, mask))
    for beside, found in strips.items():
        width, length = max(one[0] for one in found), sum(one[1] for one in found)
        text = (
            translate(
                "advice coats", "A bare strip, {width:.1f} mm wide, {length:.0f} mm long, {place}."
            )
            if len(found) == 1
            else translate(
                "advice coats",
                "{count} bare strips, up to {width:.1f} mm wide, {length:.0f} mm long together,"
                " {place}.",
            )
        )
        yield Advice(
            rule="bare ring",
            sentence=text.format(count=len(found), width=width, length=length, place=beside),
            severity=Severity.CHECK,
            remedy=translate(
                "advice coats", "Let the areas meet, or paint what lies between them."
            ),
            figure=width,
            limit=width_limit,
            place=ground.place(np.any([one[2] for one in found], axis=0)),
        )


def _areas_beside(ground: AdviceGround, mask: Mask) -> str:
    """Return where a strip runs: "in the body" or "between cervical and body"."""
    around = touching(ground.mesh, mask) & ground.case.reading.outer
    zones = np.bincount(ground.case.zones[around], minlength=7)
    names = [ground.name(Zone(int(k))) for k in np.argsort(-zones) if zones[k] and k > 0][:2]
    if len(names) < 2:
        return (
            translate("advice coats", "in the {area} area").format(area=names[0])
            if names
            else translate("advice coats", "at the margin")
        )
    return translate("advice coats", "between {area} and {other}").format(
        area=names[0], other=names[1]
    )


def broad_fissure(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence where a painted fissure is broader than a fine brush's stroke."""
    painted = any(
        entry.area == Zone.FISSURE and entry.coats.high
        for step in ground.case.plan.steps
        for entry in step.areas
    )
    if not painted:
        return
    limit, least = ground.limits["fine_brush"], ground.limits["fissure_area"]
    broad = ground.fissure_mm > limit.value
    if float(ground.mesh.vertex_areas[broad].sum()) < least.value:
        return
    widest = float(ground.fissure_mm.max())
    yield Advice(
        rule="broad fissure",
        sentence=translate(
            "advice coats", "The fissure is up to {widest:.1f} mm wide: too wide for a fine brush."
        ).format(widest=widest),
        severity=Severity.CHECK,
        remedy=translate("advice coats", "Narrow the area with the eraser or the zone sliders."),
        figure=widest,
        limit=limit,
        area=Zone.FISSURE,
        place=ground.place(broad),
    )


def ground_contacts(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence where adjusting the bite would change the colour of tips and ridges.

    The coats on the upper half millimetre as a flat piece, and the same with the load that grinding
    leaves, on a thinner wall. Where the contacts will be nobody knows yet.
    """
    case = ground.case
    if not len(case.plan.steps):
        return
    tops = case.reading.outer & (
        case.reading.depth_below_crest_mm <= ground.limits["contact_depth"].value
    )
    tops &= case.zones == int(Zone.CUSP)
    if not tops.any():
        return
    planned = [one.depth_mm for one in case.after_sintering.ground if one.area in (None, Zone.CUSP)]
    limit, usual = ground.limits["ground_seen"], ground.limits["adjustment"]
    depth = max(planned, default=usual.value)
    (sample,) = ground.flat_samples(ground.mesh.vertex_areas * tops)
    if planned:
        # The walls of this ground are those that grinding leaves.
        sample = replace(sample, wall_mm=sample.wall_mm + depth)
    share = remaining_share(
        np.array([depth], np.float32), np.array([sample.wall_mm], np.float32), case.process
    )
    scene = ground.plain_scene
    left = coats_for_share(
        sample.coats[:, None],
        share,
        scene.step_liquid,
        scene.step_dilution,
        liquid_count=len(scene.liquids),
        rule=scene.process.uptake,
    )[:, 0]
    after = replace(sample, coats=left, wall_mm=max(sample.wall_mm - depth, 0.05))
    lab = ground.flat_lab([sample, after])
    change = float(delta_e_00(lab[0], lab[1]))
    if change < limit.value:
        return
    text = (
        translate(
            "advice coats",
            "Grinding {depth:g} mm off contacts on the {area} leaves lighter spots, {change:.1f}"
            " dE00.",
        )
        if lab[1, 0] > lab[0, 0]
        else translate(
            "advice coats",
            "Grinding {depth:g} mm off contacts on the {area} leaves darker spots, {change:.1f}"
            " dE00.",
        )
    )
    yield Advice(
        rule="contacts exposed by grinding",
        sentence=text.format(depth=depth, area=ground.name(Zone.CUSP), change=change),
        severity=Severity.CHECK,
        remedy=translate(
            "advice coats", "Check the bite before staining, or paint tips and ridges less."
        ),
        figure=change,
        limit=limit,
        basis=translate("advice coats", "Planned grinding.")
        if planned
        else translate("advice coats", "Assumed: {origin}").format(origin=usual.origin),
        area=Zone.CUSP,
        place=ground.place(tops),
    )


def green_cusp(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each area of the biting side that its coats turn green.

    a* with and without the coats of the outer surface, both as flat pieces at the area's wall.
    """
    limit = ground.limits["green_shift"]
    areas = [area for area in _TOPS if area in ground.samples]
    for area in areas:
        sample = ground.samples[area]
        lab = ground.flat_lab([sample, replace(sample, coats=np.zeros_like(sample.coats))])
        fall = float(lab[1, 1] - lab[0, 1])
        if fall < limit.value or lab[0, 1] >= 0.0:
            continue
        yield Advice(
            rule="cusp turns green",
            sentence=translate(
                "advice coats",
                "{name}: its coats turn it green, a* {a:.1f}, {fall:.1f} below the bare block.",
            ).format(name=sentence_case(ground.name(area)), a=lab[0, 1], fall=fall),
            severity=Severity.CHECK,
            remedy=translate(
                "advice coats", "Take a redder liquid for part of the coats, or fewer coats."
            ),
            figure=fall,
            limit=limit,
            area=area,
            place=ground.area_place(area),
        )
