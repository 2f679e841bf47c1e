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
                sentence=f"Neighbour {number} cannot be compared: {error.message}",
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
        inside = " Inside the uncertainty." if abs(step) < doubt else ""
        yield Advice(
            rule="value of neighbours",
            sentence=f"The body is {abs(step):.1f} L* {'lighter' if step > 0 else 'darker'} than "
            f"neighbour {number}.{inside}",
            severity=Severity.CHECK,
            remedy="Change the coats of the body, or ask whether the shade or the neighbour "
            "decides.",
            figure=seen,
            limit=limit,
            basis=f"One standard deviation of the step: \N{PLUS-MINUS SIGN}{doubt:.1f} L*.",
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
            sentence=f"{numbers[0]} comes out {abs(one - other):.1f} L* lighter than "
            f"{numbers[1]} beside it.",
            severity=Severity.CHECK,
            remedy="Give the units coats of their own, or a wall or backing that is more alike.",
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
            sentence="No tooth number is given.",
            severity=Severity.SETTLE,
            remedy="Say which tooth it is.",
        )
    for number in sorted({one for one in numbers if numbers.count(one) > 1}):
        yield Advice(
            rule="tooth number missing",
            sentence=f"Two units are called {number}.",
            severity=Severity.SETTLE,
            remedy="Give each unit its own tooth number.",
        )


def missing_lots(ground: AdviceGround) -> Iterator[Advice]:
    """Yield one sentence for block and jars in use without a lot."""
    case = ground.case
    used = {step.jar for step in case.plan.steps}
    jars = [jar for jar in case.plan.jars if jar.number in used]
    without = [jar for jar in jars if not jar.lot.strip()]
    block = not case.materials.block(case.plan.block).lot.strip()
    parts = ["the block"] if block else []
    if without and len(without) == len(jars):
        parts.append("any jar" if not block else "the jars")
    elif without:
        names = ", ".join(str(jar.number) for jar in without)
        parts.append(f"jar {names}" if len(without) == 1 else f"jars {names}")
    if not parts:
        return
    yield Advice(
        rule="lot missing",
        sentence=f"No lot is noted for {' and '.join(parts)}.",
        severity=Severity.NOTE,
        remedy="Note them before the first coat: a remake is explained by them.",
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
