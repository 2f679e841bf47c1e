"""The verb `suggest`: coats for a case, and the block, as lines or one JSON object."""

# ruff: noqa: PLC0415 - what it needs is imported when it is called, so that --help answers at once

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from stainmap.cli.options import FilePath, path_argument
from stainmap.cli.reporting import about, check_ending, is_watched, reports, told_progress
from stainmap.errors import StainmapError

if TYPE_CHECKING:
    from stainmap.app.suggesting import BlocksSideBySide
    from stainmap.planning.reach import BlockReach
    from stainmap.planning.suggest_result import SuggestedArea, SuggestedPlan, Suggestions


@click.command()
@path_argument("case")
@click.option("-o", "--output", type=FilePath, help="Also write the case with the suggested plan.")
@click.option("--jars", type=click.IntRange(1, 12), default=6, show_default=True, help="At most.")
@click.option("--without", multiple=True, metavar="LIQUID", help="Not in stock; may be repeated.")
@click.option("--blocks", is_flag=True, help="Also compare all blocks.")
@reports
def suggest(
    case: Path,
    output: Path | None,
    jars: int,
    without: tuple[str, ...],
    *,
    blocks: bool,
    as_json: bool,
) -> dict[str, Any]:
    """Suggest coats for what is wanted; locked coats stay."""
    from stainmap.app.prediction import predict_case
    from stainmap.app.suggesting import compare_blocks, suggest_coats, with_suggested
    from stainmap.files.case_file import read_case, write_case
    from stainmap.planning.suggest_result import Stock

    if output is not None:
        check_ending(output, ".stainmap")
    progress = told_progress(shown=is_watched(as_json))
    with about(case, StainmapError):
        loaded = read_case(case, progress)
        for name in without:
            loaded.materials.liquid(name)
        names = [one.name for one in loaded.materials.liquids if one.name not in without]
        stock = Stock(liquids=tuple(names), most_jars=jars)
        prediction = predict_case(loaded, progress=progress)
        found = suggest_coats(prediction, stock=stock, progress=progress)
        beside = compare_blocks(prediction, stock=stock, progress=progress) if blocks else None
    if output is not None:
        write_case(with_suggested(loaded, found.plans[0].plan), output)
    if not as_json:
        for line in _lines(found, beside):
            click.echo(line)
        if output is not None:
            click.echo(f"Written: {output}")
        return {}
    return _report(found, beside) | {"case": None if output is None else str(output)}


def _lines(found: Suggestions, beside: BlocksSideBySide | None) -> Iterator[str]:
    from stainmap.planning import suggest_words as words

    for plan in found.plans:
        yield f"{words.title_of(plan.kind)}: {words.plan_line(plan)}"
        yield f"  jars: {', '.join(plan.liquids) or 'none'}"
        yield f"  {'inside':16}{words.coats_text(plan.inside)}"
        for one in plan.areas:
            yield f"  {one.label:16}{words.coats_text(one.coats):28}{one.de00:5.1f} dE00"
        for sentence in (words.survival_line(plan), *words.reasons(plan, found)):
            yield f"  {sentence}"
    for far in found.out_of_reach:
        yield words.out_of_reach_line(far, found.block)
    if beside is not None:
        yield f"{'block':30}{'body':>6}{'furthest':>9}{'coats':>6}  "
        for block in beside.reached:
            yield (
                f"{block.block:30}{block.body.de00:6.1f}{block.largest_de00:9.1f}{block.coats:6d}"
                f"  {block.reads}"
            )
            if block.nesting is not None and block.nesting.sentence:
                yield f"  {block.nesting.sentence}"
        yield from beside.choice.sentences
    yield from words.caution(found)


def _report(found: Suggestions, beside: BlocksSideBySide | None) -> dict[str, Any]:
    from stainmap.planning import suggest_words as words

    report: dict[str, Any] = {
        "block": found.block,
        "calibrated": found.calibrated,
        "plans": [_plan(one) | {"reasons": words.reasons(one, found)} for one in found.plans],
        "out_of_reach": [
            {
                "area": one.label,
                "nearest_de00": round(one.nearest_de00, 3),
                "sentence": words.out_of_reach_line(one, found.block),
            }
            for one in found.out_of_reach
        ],
        "caution": words.caution(found),
    }
    if beside is not None:
        report["blocks"] = [_block(one) for one in beside.reached]
        report["block_choice"] = {
            "usual": beside.choice.usual.blocks,
            "rule": beside.choice.usual.rule,
            "computed": beside.choice.computed.block,
            "agrees": beside.choice.agrees,
            "sentences": beside.choice.sentences,
        }
    return report


def _plan(plan: SuggestedPlan) -> dict[str, Any]:
    return {
        "kind": plan.kind.value,
        "jars": plan.liquids,
        "inside": dict(plan.inside),
        "areas": {one.label: _area(one) for one in plan.areas},
        "coats": plan.coats,
        "minutes": plan.minutes,
        "score": round(plan.score, 3),
        "days": plan.survival.days,
        "days_survived": plan.survival.survived,
        "on_whole_crown": plan.on_whole_crown,
    }


def _area(one: SuggestedArea) -> dict[str, Any]:
    return {
        "coats": dict(one.coats),
        "predicted_lab": [round(value, 3) for value in one.predicted.lab],
        "wanted_lab": [round(value, 3) for value in one.wanted.lab],
        "de00": round(one.de00, 3),
    }


def _block(one: BlockReach) -> dict[str, Any]:
    return {
        "block": one.block,
        "reads": one.reads,
        "score": round(one.score, 3),
        "coats": one.coats,
        "bare_body_lab": [round(value, 3) for value in one.bare_body.lab],
        "inside": dict(one.inside),
        "areas": {area.label: _area(area) for area in one.areas},
        "nesting": None
        if one.nesting is None
        else {
            "here_mm": one.nesting.here_mm,
            "best_mm": one.nesting.best_mm,
            "coats_saved": one.nesting.coats_saved,
            "sentence": one.nesting.sentence,
        },
    }
