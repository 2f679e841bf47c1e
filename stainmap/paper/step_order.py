"""The order of steps on paper, with a box to tick for every coat."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from stainmap.model.plan import CoatSpan, Step
from stainmap.model.zone import Area
from stainmap.paper.marks import draw_jar, draw_number, draw_ticks, number_width, ticks_width
from stainmap.paper.page import BOLD, MEDIUM, SOFT, Page
from stainmap.paper.sheet_data import SheetData

_INDENT_MM, _LINE_MM, _STEP_GAP_MM = 23.5, 5.2, 1.4
_JAR_MM, _PILL_MM = 4.4, 3.6
_WORD_GAP_MM = 3.2


@dataclass(frozen=True, slots=True, kw_only=True)
class _Task:
    """One thing a step does: an area's number (0 for none), boxes to tick, words."""

    area: int
    coats: CoatSpan
    words: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class StepEntry:
    """One step, broken into lines."""

    number: int
    jar: int
    liquid: str
    lines: tuple[tuple[_Task, ...], ...]

    @property
    def height(self) -> float:
        """Height with the gap below."""
        return max(len(self.lines), 1) * _LINE_MM + _STEP_GAP_MM


def step_entries(
    page: Page, sheet: SheetData, unit: int, areas: tuple[Area, ...], width: float
) -> tuple[StepEntry, ...]:
    """Return the steps that paint any of the areas, broken into lines of `width`."""
    plan = sheet.case.plan
    entries = []
    for number, step in enumerate(plan.steps, start=1):
        tasks = _tasks(sheet, unit, step, areas)
        if tasks:
            entries.append(
                StepEntry(
                    number=number,
                    jar=step.jar,
                    liquid=plan.liquid_of(step),
                    lines=_broken(page, tasks, width - _INDENT_MM),
                )
            )
    return tuple(entries)


def balanced(entries: Sequence[StepEntry]) -> tuple[tuple[StepEntry, ...], tuple[StepEntry, ...]]:
    """Return the steps in two columns of nearly equal height, the left one not the shorter."""
    total = sum(entry.height for entry in entries)
    left = 0.0
    for index, entry in enumerate(entries):
        if left >= 0.5 * total - 1e-9:
            return tuple(entries[:index]), tuple(entries[index:])
        left += entry.height
    return tuple(entries), ()


def column_height(entries: Sequence[StepEntry]) -> float:
    """Return the height of steps below one another."""
    return sum(entry.height for entry in entries)


def draw_steps(page: Page, entries: Sequence[StepEntry], x: float, y: float) -> None:
    """Draw steps below one another, the first one's upper edge at y."""
    for entry in entries:
        page.text(x + 3.9, y + 3.4, str(entry.number), 9.0, face=BOLD, align="right")
        draw_jar(page, entry.jar, x + 5.0, y, _JAR_MM)
        page.fitted(x + 10.6, y + 3.4, entry.liquid, 9.0, _INDENT_MM - 11.4, face=MEDIUM)
        for index, line in enumerate(entry.lines):
            _draw_tasks(page, line, x + _INDENT_MM, y + index * _LINE_MM)
        y += entry.height


def _draw_tasks(page: Page, tasks: Sequence[_Task], x: float, y: float) -> None:
    for task in tasks:
        if task.area:
            pill = number_width(page, task.area, _PILL_MM)
            draw_number(page, task.area, x + pill / 2, y + _JAR_MM / 2, _PILL_MM)
            x += pill + 1.1
        if task.coats.is_span:
            x += page.text(x, y + 3.4, str(task.coats), 8.0, face=MEDIUM) + 1.1
        draw_ticks(page, task.coats, x, y + 0.7)
        x += ticks_width(task.coats)
        if task.words:
            x += 1.2 + page.text(x + 1.2, y + 3.3, task.words, 8.0, grey=SOFT)
        x += _WORD_GAP_MM


def _task_width(page: Page, task: _Task) -> float:
    width = ticks_width(task.coats)
    if task.area:
        width += number_width(page, task.area, _PILL_MM) + 1.1
    if task.coats.is_span:
        width += page.text_width(str(task.coats), 8.0, MEDIUM) + 1.1
    if task.words:
        width += 1.2 + page.text_width(task.words, 8.0)
    return width


def _tasks(sheet: SheetData, unit: int, step: Step, areas: tuple[Area, ...]) -> tuple[_Task, ...]:
    """Return what a step does; names are written where there are not more than two."""
    painted = [entry for entry in step.areas if entry.area in areas]
    named = len(painted) <= 2
    tasks = [
        _Task(
            area=int(entry.area),
            coats=entry.coats,
            words=sheet.label(entry.area, unit) if named else "",
        )
        for entry in painted
    ]
    for streaks in step.streaks:
        if streaks.area in areas:
            length = streaks.length_mm * sheet.enlargement
            words = f"{streaks.count} streaks, {length:.1f} mm"
            if streaks.direction < 0:
                words += f", {sheet.case.units[unit].tooth.occlusal_word}"
            coats = CoatSpan.exactly(streaks.coats)
            tasks.append(_Task(area=int(streaks.area), coats=coats, words=words))
    if step.brushed is not None and len(step.brushed.coats):
        most = max(math.ceil(float(step.brushed.coats.max()) - 1e-3), 1)
        words = "brushed by hand, see dotted lines"
        tasks.append(_Task(area=0, coats=CoatSpan.exactly(most), words=words))
    return tuple(tasks)


def _broken(page: Page, tasks: Sequence[_Task], width: float) -> tuple[tuple[_Task, ...], ...]:
    lines: list[list[_Task]] = [[]]
    used = 0.0
    for named in tasks:
        task = named
        needed = _task_width(page, task)
        if needed > width:
            # So many boxes to tick leave no room for words; the number says which area it is.
            task = replace(task, words="")
            needed = _task_width(page, task)
        if lines[-1] and used + _WORD_GAP_MM + needed > width:
            lines.append([])
            used = 0.0
        used += needed + (_WORD_GAP_MM if lines[-1] else 0.0)
        lines[-1].append(task)
    return tuple(tuple(line) for line in lines)
