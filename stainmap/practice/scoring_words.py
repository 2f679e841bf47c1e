"""What scores say of an answer, one sentence for each part."""

from __future__ import annotations

from stainmap.model.zone import Area, Zone, area_label
from stainmap.practice.exercise_task import Task
from stainmap.practice.scoring_areas import AreaOverlap
from stainmap.practice.scoring_plan import Bare, OutOfTurn
from stainmap.practice.scoring_reach import AreaReach, Ruled
from stainmap.words import jars_text, listed, sentence_case, translate


def area_name(task: Task, area: Area) -> str:
    """Return what an area is called on the crown of an exercise."""
    return area_label(area, front=task.true.units[0].tooth.is_front)


def overlap_text(name: str, one: AreaOverlap) -> str:
    """Return how far an area that was painted is the true one."""
    is_zone = isinstance(one.area, Zone)
    if one.overlap > 1.0 - 1e-6:
        text = (
            translate("scoring", "The {name} zone is where it belongs.")
            if is_zone
            else translate("scoring", "The {name} is where it belongs.")
        )
    elif one.overlap < 0.005:
        text = (
            translate("scoring", "The {name} zone was not found: {missed:.1f} mm² of it.")
            if is_zone
            else translate("scoring", "The {name} was not found: {missed:.1f} mm² of it.")
        )
    else:
        text = (
            translate(
                "scoring",
                "The {name} zone overlaps the true one by {percent:.0f} %: {missed:.1f} mm² missed,"
                " {extra:.1f} mm² too much.",
            )
            if is_zone
            else translate(
                "scoring",
                "The {name} overlaps the true one by {percent:.0f} %: {missed:.1f} mm² missed,"
                " {extra:.1f} mm² too much.",
            )
        )
    return text.format(
        name=name, percent=100 * one.overlap, missed=one.missed_mm2, extra=one.extra_mm2
    )


def with_coats(count: int) -> str:
    """Return "without a coat", "with 1 coat", "with 2 coats"."""
    if count == 0:
        return translate("scoring", "without a coat")
    if count == 1:
        return translate("scoring", "with 1 coat")
    return translate("scoring", "with {count} coats").format(count=count)


def coats_text(more: int, best: str) -> str:
    """Return how many coats more a block takes than the best one."""
    if more == 0:
        return translate("scoring", "It takes no more coats than it must.")
    if more == 1:
        return translate(
            "scoring",
            "The body takes a coat more than on {best}: a lighter start is a longer way.",
        ).format(best=best)
    return translate(
        "scoring",
        "The body takes {more} coats more than on {best}: a lighter start is a longer way.",
    ).format(more=more, best=best)


def reach_text(task: Task, one: AreaReach) -> str:
    """Return how near an area has come to what is wanted of it."""
    value, chroma = one.off
    name = sentence_case(area_name(task, one.area))
    if one.area is Zone.BODY and one.bands <= 1.0:
        text = translate("scoring", "{name}: within {bands:.1f} dE00 of the wanted shade.")
    elif one.area is Zone.BODY:
        text = translate(
            "scoring",
            "{name}: {bands:.1f} dE00 from the wanted shade ({value} L*, {chroma} C*); 1.0 is near"
            " enough.",
        )
    elif one.bands <= 1.0:
        text = translate("scoring", "{name}: its step from the body is as wanted.")
    elif one.ruled is Ruled.BODY:
        text = translate("scoring", "{name}: it stands beside a body that is off.")
    elif one.ruled is Ruled.OWN:
        text = translate(
            "scoring",
            "{name}: {de00:.1f} dE00 from the wanted colour ({value} L*, {chroma} C*).",
        )
    elif abs(value) < 0.05:
        text = (
            translate("scoring", "{name}: too much chroma against the body by {by_chroma:.1f} C*.")
            if chroma > 0
            else translate(
                "scoring", "{name}: too little chroma against the body by {by_chroma:.1f} C*."
            )
        )
    elif value > 0:
        text = translate(
            "scoring",
            "{name}: too light against the body by {by_value:.1f} L*, {chroma} in C*.",
        )
    else:
        text = translate(
            "scoring",
            "{name}: too dark against the body by {by_value:.1f} L*, {chroma} in C*.",
        )
    return text.format(
        name=name,
        bands=one.bands,
        de00=one.de00,
        value=signed(value),
        chroma=signed(chroma),
        by_value=abs(value),
        by_chroma=abs(chroma),
    )


def cover_text(bare: Bare) -> str:
    """Return what was left bare."""
    if bare.bare_mm2 < 0.05:
        return translate("scoring", "Nothing was left bare.")
    text = (
        translate(
            "scoring",
            "{bare:.1f} of {due:.0f} mm² are bare, among them a ring up to {ring:.1f} mm wide; most"
            " of it lies in {area}.",
        )
        if bare.rings
        else translate(
            "scoring", "{bare:.1f} of {due:.0f} mm² are bare; most of it lies in {area}."
        )
    )
    return text.format(
        bare=bare.bare_mm2, due=bare.due_mm2, ring=bare.widest_ring_mm, area=bare.beside
    )


def economy_text(work: str, enough: str) -> str:
    """Return what was used, and what would do."""
    return translate("scoring", "{work}; {enough} do it.").format(work=work, enough=enough)


def needed_text(work: str, enough: str, *, costs: bool) -> str:
    """Return what was used, and whether it is more than is needed."""
    if costs:
        return translate("scoring", "{work}, where {enough} do it.").format(
            work=work, enough=enough
        )
    return translate("scoring", "{work}: no more than are needed.").format(work=work)


def turn_text(task: Task, turn: OutOfTurn) -> str:
    """Return what is painted out of its turn, or not at all."""
    if turn.faults:
        return turn.faults[0].sentence
    if turn.missing:
        names = listed([area_name(task, area) for area in turn.missing])
        return translate(
            "scoring", "Coats are due on {areas} and there are none: left out is out of turn, too."
        ).format(areas=names)
    return translate("scoring", "The order is the usual one: deep first, accents last.")


def hue_text(own: float, wanted: float, *, kept: bool) -> str:
    """Return whether cusps turned green."""
    text = (
        translate("scoring", "Their hue is kept: a* {own}, wanted {wanted}.")
        if kept
        else translate(
            "scoring",
            "They turn green: a* {own}, wanted {wanted}. A rosier or a neutral liquid lowers value"
            " without that.",
        )
    )
    return text.format(own=signed(own), wanted=signed(wanted))


def work_text(jars: int, coats: int) -> str:
    """Return "3 jars and 11 coats", those of all areas together."""
    if coats == 1:
        return translate("scoring", "{jars} and 1 coat").format(jars=jars_text(jars))
    return translate("scoring", "{jars} and {coats} coats, all areas together").format(
        jars=jars_text(jars), coats=coats
    )


def signed(value: float) -> str:
    """Return a figure with its sign, a true minus, one decimal."""
    text = f"{abs(value):.1f}"
    if text == "0.0":
        return text
    return f"+{text}" if value > 0 else f"\N{MINUS SIGN}{text}"
