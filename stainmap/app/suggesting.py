"""Suggestions for the open case: coats on its block, and every block side by side."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from stainmap.app.edits import with_block
from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction, predict_case
from stainmap.files.shades_file import starter_shades
from stainmap.model.case import Case
from stainmap.model.plan import StainPlan
from stainmap.model.shade_table import ShadeTable
from stainmap.model.target import Target
from stainmap.model.zone import Zone
from stainmap.planning.block_choice import BlockChoice, choose_block, usual_choice
from stainmap.planning.reach import BlockReach, reach_of_blocks
from stainmap.planning.suggest import Suggester
from stainmap.planning.suggest_result import Stock, Suggestions
from stainmap.planning.targets import wanted_in
from stainmap.predict.seen import Seen


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BlocksSideBySide:
    """Every block with its best plan, and which one to take."""

    reached: tuple[BlockReach, ...]
    choice: BlockChoice


def suggester_for(
    prediction: Prediction, *, stock: Stock | None = None, progress: Progress | None = None
) -> Suggester:
    """Return what suggestions for a case are made with, as seen on screen under D65.

    Raises
    ------
    PlanError
        If nothing is wanted of the crown, or there is nothing to paint it with.
    """
    usual = replace(Seen(), curvature_correction=prediction.seen.curvature_correction)
    if prediction.seen != usual:
        prediction = predict_case(
            prediction.case, previous=prediction, seen=usual, progress=progress
        )
    return Suggester(
        prediction.case,
        prediction.ground,
        prediction.layout,
        prediction.engine,
        prediction.outcome,
        stock=stock,
        progress=progress,
    )


def suggest_coats(
    prediction: Prediction,
    *,
    stock: Stock | None = None,
    progress: Progress | None = None,
    on_first: Callable[[Suggestions], None] | None = None,
) -> Suggestions:
    """Return several plans for a case on its block, all predicted on the whole crown.

    `on_first` hears of them within two seconds for one crown, when all but the suggested one are
    estimates still.
    """
    return suggester_for(prediction, stock=stock, progress=progress).suggest(on_first)


def compare_blocks(
    prediction: Prediction,
    *,
    stock: Stock | None = None,
    shades: ShadeTable | None = None,
    progress: Progress | None = None,
) -> BlocksSideBySide:
    """Return every block of the case's materials with its best plan, and which one to take.

    Parameters
    ----------
    shades
        Tabs that the usual choice is told by; those that come with the program if None.
    """
    suggester = suggester_for(prediction, stock=stock, progress=progress)
    reached = reach_of_blocks(suggester)
    case = prediction.case
    kind = case.materials.block(case.plan.block).layers[0].scattering
    # Without a wanted colour there is no suggester.
    target = case.target
    wanted = None if target is None else wanted_in(target, Zone.BODY)
    shade = suggester.wanted_colours[0] if wanted is None else wanted.colour
    usual = usual_choice(
        starter_shades() if shades is None else shades,
        shade,
        _shade_name(target),
        case.materials.blocks,
        kind,
    )
    return BlocksSideBySide(reached=reached, choice=choose_block(usual, reached, kind))


def _shade_name(target: Target | None) -> str:
    return "" if target is None else target.name


def with_suggested(case: Case, plan: StainPlan) -> Case:
    """Return the case with a suggested plan, and its block where that is another one."""
    if plan.block == case.plan.block:
        return replace(case, plan=plan)
    # A mesh of milled size is scaled by the new block's enlargement.
    return replace(with_block(case, plan.block), plan=plan)
