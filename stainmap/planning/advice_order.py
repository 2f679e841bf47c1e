"""Advice on what is missing, and on steps of value between neighbours."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.colour import Colour
from stainmap.model.zone import Zone
from stainmap.optics.difference import delta_e_00
from stainmap.planning.advice_ground import AdviceGround
from stainmap.planning.advice_value import Advice, Mask, Severity
from stainmap.planning.row import row_order, row_place
from stainmap.planning.targets import shade_in
from stainmap.words import listed, translate


def value_of_neighbours(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each neighbour whose value the body misses.

    The step is CIEDE2000 of lightness alone: the neighbour's L* against that of the nearest unit's
    body, at that body's a* and b*.
    """
    case = ground.case
    body = ground.outcome.area(Zone.BODY)
    if case.intake is None or body is None:
        return
    limit = ground.limits["value_step"]
    places = [row_place(unit.tooth) for unit in case.units]
    for neighbour in case.intake.neighbours:
        number = neighbour.tooth.number
        unit = int(np.argmin([abs(row_place(neighbour.tooth) - place) for place in places]))
        if case.units[unit].tooth.is_upper != neighbour.tooth.is_upper:
            continue
        try:
            wanted = shade_in(neighbour.shade, body.predicted.measurement)
        except PlanError as error:
            yield Advice(
                rule="value of neighbours",
                sentence=translate(
                    "advice order", "Neighbour {number} cannot be compared: {message}"
                ).format(number=number, message=error.message),
                severity=Severity.NOTE,
                remedy=error.advice or "",
            )
            continue
        own = _unit_value(ground, unit)
        value = body.predicted.lightness if own is None else own
        step = value - wanted.colour.lightness
        seen = _seen(body.predicted, value, wanted.colour.lightness)
        if seen < limit.value:
            continue
        doubt = float(np.hypot(body.plus_minus[0], wanted.sd[0]))
        text = (
            translate("advice order", "The body is {step:.1f} L* lighter than neighbour {number}.")
            if step > 0
            else translate(
                "advice order", "The body is {step:.1f} L* darker than neighbour {number}."
            )
        )
        said = [text.format(step=abs(step), number=number)]
        if abs(step) < doubt:
            said.append(translate("advice order", "Inside the uncertainty."))
        yield Advice(
            rule="value of neighbours",
            sentence=" ".join(said),
            severity=Severity.CHECK,
            remedy=translate(
                "advice order",
                "Change the coats of the body, or ask whether the shade or the neighbour decides.",
            ),
            figure=seen,
            limit=limit,
            basis=translate(
                "advice order", "One standard deviation of the step: ±{doubt:.1f} L*."
            ).format(doubt=doubt),
            area=Zone.BODY,
            unit=unit,
            place=ground.place(_body_of(ground, unit)),
        )


def value_between_units(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each pair of neighbouring units whose bodies differ in value."""
    case = ground.case
    order = row_order(case.units)
    body = ground.outcome.area(Zone.BODY)
    if body is None:
        return
    limit = ground.limits["value_step"]
    for left, right in pairwise(order):
        one, other = _unit_value(ground, left), _unit_value(ground, right)
        if one is None or other is None:
            continue
        seen = _seen(body.predicted, one, other)
        if seen < limit.value:
            continue
        lighter, darker = (left, right) if one > other else (right, left)
        numbers = [case.units[k].tooth.number for k in (lighter, darker)]
        yield Advice(
            rule="value between units",
            sentence=translate(
                "advice order",
                "{number} comes out {step:.1f} L* lighter than {other} beside it.",
            ).format(number=numbers[0], step=abs(one - other), other=numbers[1]),
            severity=Severity.CHECK,
            remedy=translate(
                "advice order",
                "Give the units coats of their own, or a wall or backing that is more alike.",
            ),
            figure=seen,
            limit=limit,
            area=Zone.BODY,
            unit=lighter,
            place=ground.place(_body_of(ground, lighter)),
        )


def missing_number(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence while a unit has no tooth number of its own."""
    units = ground.case.units
    numbers = [unit.tooth.number for unit in units]
    if not numbers:
        yield Advice(
            rule="tooth number missing",
            sentence=translate("advice order", "No tooth number is given."),
            severity=Severity.SETTLE,
            remedy=translate("advice order", "Say which tooth it is."),
        )
    for number in sorted({one for one in numbers if numbers.count(one) > 1}):
        yield Advice(
            rule="tooth number missing",
            sentence=translate("advice order", "Two units are called {number}.").format(
                number=number
            ),
            severity=Severity.SETTLE,
            remedy=translate("advice order", "Give each unit its own tooth number."),
        )


def missing_lots(ground: AdviceGround) -> Iterator[Advice]:
    """Yield one sentence for block and jars in use without a lot."""
    case = ground.case
    used = {step.jar for step in case.plan.steps}
    jars = [jar for jar in case.plan.jars if jar.number in used]
    without = [jar for jar in jars if not jar.lot.strip()]
    block = not case.materials.block(case.plan.block).lot.strip()
    parts = [translate("advice order", "the block")] if block else []
    if without and len(without) == len(jars):
        parts.append(
            translate("advice order", "any jar")
            if not block
            else translate("advice order", "the jars")
        )
    elif without:
        names = ", ".join(str(jar.number) for jar in without)
        parts.append(
            translate("advice order", "jar {names}").format(names=names)
            if len(without) == 1
            else translate("advice order", "jars {names}").format(names=names)
        )
    if not parts:
        return
    yield Advice(
        rule="lot missing",
        sentence=translate("advice order", "No lot is noted for {parts}.").format(
            parts=listed(parts)
        ),
        severity=Severity.NOTE,
        remedy=translate(
            "advice order", "Note them before the first coat: a remake is explained by them."
        ),
        figure=float(len(without) + block),
    )


def _body_of(ground: AdviceGround, unit: int) -> Mask:
    of_unit = ground.case.reading.unit_index == unit
    return np.asarray((ground.case.zones == int(Zone.BODY)) & of_unit)


def _unit_value(ground: AdviceGround, unit: int) -> float | None:
    """Return the mean predicted L* of a unit's body, or None if it has none."""
    weight: NDArray[np.float64] | None = ground.weights.get(Zone.BODY)
    if weight is None:
        return None
    own = weight * (ground.case.reading.unit_index == unit)
    if own.sum() <= 0.0:
        return None
    return float(own @ ground.lightness / own.sum())


def _seen(colour: Colour, one: float, other: float) -> float:
    """Return CIEDE2000 of two lightnesses at a colour's a* and b*."""
    return float(delta_e_00((one, colour.a, colour.b), (other, colour.a, colour.b)))
