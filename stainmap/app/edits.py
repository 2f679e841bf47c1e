"""What a person changes in a case: each function returns a new case from an old one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from stainmap.errors import PlanError
from stainmap.model.case import Backing, Case, Region, ScrewChannel
from stainmap.model.finishing import Finish
from stainmap.model.material import BlankCoupon
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step, Streaks
from stainmap.model.process import StainProcess
from stainmap.model.target import Target
from stainmap.model.zone import Area
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState
from stainmap.words import translate

# No blank is higher.
MAX_NESTING_MM = 40.0
SCREW_PLUG = "plug of a screw channel"


def with_coats(case: Case, step: int, area: Area, coats: CoatSpan | None) -> Case:
    """Return the case with other coats in one cell of the table; None clears it."""
    old = _step(case, step)
    new = old.with_coats(area, coats)
    return case if new == old else replace(case, plan=case.plan.with_step(step, new))


def with_cells(case: Case, cells: Iterable[tuple[int, Area, CoatSpan | None]]) -> Case:
    """Return the case with other coats in several cells of the table; None clears a cell."""
    for step, area, coats in cells:
        case = with_coats(case, step, area, coats)
    return case


def with_lock(case: Case, step: int, area: Area, *, locked: bool) -> Case:
    """Return the case with coats that stay when others are suggested, or do not."""
    new = _step(case, step).with_locked(area, locked=locked)
    return replace(case, plan=case.plan.with_step(step, new))


def with_added_step(case: Case, at: int, jar: int) -> Case:
    """Return the case with an empty step from a jar of the tray before position `at`."""
    case.plan.jar(jar)
    steps = list(case.plan.steps)
    steps.insert(at, Step(jar=jar))
    return replace(case, plan=replace(case.plan, steps=tuple(steps)))


def with_added_liquid(case: Case, at: int, liquid: str) -> Case:
    """Return the case with a new step of a liquid, from its jar or from a new one.

    A new jar gets the next free number and the dye recipe that tells it best from the others.
    """
    from stainmap.planning.dyes import recommended_dyes  # noqa: PLC0415

    case.materials.liquid(liquid)
    for jar in case.plan.jars:
        if jar.liquid == liquid:
            return with_added_step(case, at, jar.number)
    number = next(n for n in range(1, 100) if all(jar.number != n for jar in case.plan.jars))
    plan = replace(case.plan, jars=(*case.plan.jars, Jar(number=number, liquid=liquid)))
    drops = recommended_dyes(replace(case, plan=plan))[-1]
    jars = (*case.plan.jars, Jar(number=number, liquid=liquid, dye_drops=drops))
    return with_added_step(replace(case, plan=replace(plan, jars=jars)), at, number)


def without_step(case: Case, step: int) -> Case:
    """Return the case without a step; a jar that serves no step any more leaves the tray."""
    jar = _step(case, step).jar
    plan = case.plan.without_step(step)
    if all(one.jar != jar for one in plan.steps):
        plan = replace(plan, jars=tuple(one for one in plan.jars if one.number != jar))
    return replace(case, plan=plan)


def with_moved_step(case: Case, step: int, to: int) -> Case:
    """Return the case with a step moved to another place in the order."""
    _step(case, step)
    if not 0 <= to < len(case.plan.steps):
        raise PlanError(translate("edits", "A step cannot move beyond the ends of the plan."))
    return case if step == to else replace(case, plan=case.plan.moved_step(step, to))


def with_step_jar(case: Case, step: int, jar: int) -> Case:
    """Return the case with a step painted from another jar of the tray."""
    case.plan.jar(jar)
    changed = replace(_step(case, step), jar=jar)
    return replace(case, plan=case.plan.with_step(step, changed))


def with_jar(case: Case, jar: Jar) -> Case:
    """Return the case with one jar of the tray replaced by another of the same number."""
    case.plan.jar(jar.number)
    case.materials.liquid(jar.liquid)
    jars = tuple(jar if one.number == jar.number else one for one in case.plan.jars)
    return replace(case, plan=replace(case.plan, jars=jars))


def with_streaks(case: Case, step: int, streaks: tuple[Streaks, ...]) -> Case:
    """Return the case with other streaks in a step; none takes them away."""
    old = _step(case, step)
    if streaks == old.streaks:
        return case
    return replace(case, plan=case.plan.with_step(step, replace(old, streaks=streaks)))


def with_block(case: Case, name: str) -> Case:
    """Return the case on another block.

    A mesh of milled size is sintered by the new block's enlargement factor.
    """
    block = case.materials.block(name)
    changed = replace(case, plan=replace(case.plan, block=block.name))
    source = replace(case.source, enlargement_factor=block.enlargement_factor)
    if source.sintered_mm_per_unit == case.source.sintered_mm_per_unit:
        return replace(changed, source=source)
    factor = source.sintered_mm_per_unit / case.source.sintered_mm_per_unit
    return replace(_scaled(changed, factor), source=source)


def with_nesting_height(case: Case, height_mm: float) -> Case:
    """Return the case with its lowest point as high above the bottom of the blank, milled mm."""
    if not 0.0 <= height_mm <= MAX_NESTING_MM:
        raise PlanError(
            translate("edits", "A height of {height_mm} mm in the blank is out of range.").format(
                height_mm=height_mm
            ),
            advice=translate("edits", "Give 0 to {max_nesting_mm:g} mm.").format(
                max_nesting_mm=MAX_NESTING_MM
            ),
        )
    return replace(case, plan=replace(case.plan, nesting_height_mm=height_mm))


def with_size(case: Case, state: SizeState, unit: LengthUnit) -> Case:
    """Return the case with the file's lengths understood in another way."""
    source = replace(case.source, size_state=state, unit=unit)
    if source.sintered_mm_per_unit == case.source.sintered_mm_per_unit:
        return replace(case, source=source)
    factor = source.sintered_mm_per_unit / case.source.sintered_mm_per_unit
    return replace(_scaled(case, factor), source=source)


def with_programme(case: Case, name: str) -> Case:
    """Return the case with another sintering programme."""
    return replace(case, programme=case.materials.programme(name).name)


def with_backing(
    case: Case, region: Region, *, stump: str, cement: str, unit: int | None = None
) -> Case:
    """Return the case with something else behind one region, of one unit (from 0) or of all."""
    case.materials.stump(stump)
    case.materials.cement(cement)
    old = _own_backing(case, region, unit)
    new = (
        Backing(region=region, stump=stump, cement=cement, of_unit=unit)
        if old is None
        else replace(old, stump=stump, cement=cement)
    )
    return replace(case, backings=(*case.backings, new) if old is None else _in_place(case, new))


def with_cement_thickness(
    case: Case, region: Region, thickness_mm: float, unit: int | None = None
) -> Case:
    """Return the case with another thickness of the cement behind one region, 0 to 1 mm."""
    old = _own_backing(case, region, unit)
    if old is None:
        raise PlanError(
            translate("edits", "Nothing of its own lies behind the region '{region}'.").format(
                region=region
            ),
            advice=translate("edits", "Choose what lies behind it first."),
        )
    return replace(case, backings=_in_place(case, replace(old, cement_thickness_mm=thickness_mm)))


def without_backing(case: Case, region: Region, unit: int | None = None) -> Case:
    """Return the case with the stump behind a region again; the stump itself stays.

    Of a unit (from 0): with what lies behind all units again.
    """
    if region is Region.STUMP and unit is None:
        raise PlanError(
            translate("edits", "Something must lie behind the crown."),
            advice=translate("edits", "Choose another stump."),
        )
    kept = tuple(one for one in case.backings if (one.region, one.of_unit) != (region, unit))
    return case if len(kept) == len(case.backings) else replace(case, backings=kept)


def with_screw_channel(
    case: Case,
    point_mm: tuple[float, float, float],
    vertex: int,
    *,
    axis: tuple[float, float, float] | None = None,
    radius_mm: float = 1.2,
) -> Case:
    """Return the case with a screw channel in the unit of a vertex, in place of the one it had.

    Parameters
    ----------
    point_mm, vertex
        Where the channel leaves, and a vertex there, as a click on the surface gives them.
    axis
        Its direction; the occlusal axis if None.
    radius_mm
        Sintered, 0.5 to 3 mm.
    """
    unit = int(case.reading.unit_index[vertex])
    channel = ScrewChannel(
        unit=unit,
        point_mm=point_mm,
        axis=case.reading.occlusal_axis if axis is None else axis,
        radius_mm=radius_mm,
    )
    kept = tuple(one for one in case.screw_channels if one.unit != unit)
    channels = tuple(sorted((*kept, channel), key=lambda one: one.unit))
    changed = replace(case, screw_channels=channels)
    if any(one.region is Region.SCREW_CHANNEL for one in case.backings):
        return changed
    plugs = [stump.name for stump in case.materials.stumps if stump.name == SCREW_PLUG]
    if not plugs:
        return changed
    cement = case.backing(Region.STUMP).cement
    return with_backing(changed, Region.SCREW_CHANNEL, stump=plugs[0], cement=cement)


def without_screw_channel(case: Case, unit: int) -> Case:
    """Return the case without the screw channel of a unit (from 0)."""
    kept = tuple(one for one in case.screw_channels if one.unit != unit)
    return replace(case, screw_channels=kept)


def with_painter(case: Case, painter: str, hand_factor: float) -> Case:
    """Return the case painted by somebody, with their hand factor, 0.6 to 1.6."""
    uptake = replace(case.process.uptake, hand_factor=hand_factor)
    return with_process(case, replace(case.process, painter=painter.strip(), uptake=uptake))


def with_process(case: Case, process: StainProcess) -> Case:
    """Return the case with another way of staining."""
    return case if process == case.process else replace(case, process=process)


def with_finish(case: Case, finish: Finish) -> Case:
    """Return the case with its surface left in another way after sintering."""
    return replace(case, after_sintering=replace(case.after_sintering, finish=finish))


def with_ground(case: Case, area: Area | None, depth_mm: float) -> Case:
    """Return the case with an area (None: all of the outside) ground; 0 mm takes that back."""
    return replace(case, after_sintering=case.after_sintering.with_ground(area, depth_mm))


def with_coupon(case: Case, programme: str, coupon: BlankCoupon | None) -> Case:
    """Return the case with a programme's measured factor; None goes back to that of its class."""
    case.materials.programme(programme)
    programmes = tuple(
        replace(one, coupon=coupon) if one.name == programme else one
        for one in case.materials.programmes
    )
    return replace(case, materials=replace(case.materials, programmes=programmes))


def with_target(case: Case, target: Target | None) -> Case:
    """Return the case with something else wanted."""
    return replace(case, target=target)


def with_plan(case: Case, plan: StainPlan) -> Case:
    """Return the case with another plan; raise CatalogueError if it needs unknown materials."""
    case.materials.block(plan.block)
    for jar in plan.jars:
        case.materials.liquid(jar.liquid)
    return replace(case, plan=plan)


def with_assumed_wall(case: Case, wall_mm: float) -> Case:
    """Return a case without inner surface with another wall assumed, 0.3 to 4 mm."""
    if not 0.3 <= wall_mm <= 4.0:
        raise PlanError(
            translate("edits", "A wall of {wall_mm} mm is out of range.").format(wall_mm=wall_mm),
            advice=translate("edits", "Give 0.3 to 4 mm."),
        )
    return replace(case, reading=replace(case.reading, assumed_wall_mm=wall_mm))


def _step(case: Case, step: int) -> Step:
    if not 0 <= step < len(case.plan.steps):
        raise PlanError(
            translate("edits", "There is no step {step} in the plan.").format(step=step + 1)
        )
    return case.plan.steps[step]


def _own_backing(case: Case, region: Region, unit: int | None) -> Backing | None:
    same = (one for one in case.backings if (one.region, one.of_unit) == (region, unit))
    return next(same, None)


def _in_place(case: Case, new: Backing) -> tuple[Backing, ...]:
    key = (new.region, new.of_unit)
    return tuple(new if (one.region, one.of_unit) == key else one for one in case.backings)


def _scaled(case: Case, factor: float) -> Case:
    """Return the case with all its lengths multiplied; labels stay with their vertices."""
    mesh = TriMesh(case.surface.mesh.vertices * factor, case.surface.mesh.faces)
    reading = case.reading
    channels = []
    for channel in case.screw_channels:
        x, y, z = (factor * value for value in channel.point_mm)
        channels.append(replace(channel, point_mm=(x, y, z)))
    depth = (reading.depth_below_crest_mm * np.float32(factor)).astype(np.float32)
    return replace(
        case,
        surface=replace(case.surface, mesh=mesh),
        screw_channels=tuple(channels),
        reading=replace(
            reading,
            depth_below_crest_mm=depth,
            connectors_mm2=tuple(area * factor**2 for area in reading.connectors_mm2),
        ),
    )
