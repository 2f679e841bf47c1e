"""What a coat of the film does, in words and figures."""

from __future__ import annotations

from stainmap.app.film import CoatChange, Film, Moment
from stainmap.model.zone import Zone

SQUARE_MM = "mm\N{SUPERSCRIPT TWO}"
BARE = "The bare block, as it would be sintered without stain"


def title_of(film: Film, number: int) -> str:
    """Return what is painted at a moment, from 0, in one line."""
    moment = film.moments[number]
    if number == 0:
        return BARE
    coats = f"coat {moment.coat} of {moment.coats}"
    return f"Step {moment.step}, {coats}: {moment.liquid} from jar {moment.jar}"


def lines_of(film: Film, number: int) -> tuple[str, str]:
    """Return where a coat goes with what it takes, and what it changes."""
    moment = film.moments[number]
    if number == 0:
        count = len(film.moments) - 1
        coats = "one coat follows" if count == 1 else f"{count} coats follow"
        return f"{_body_words(moment)}.", f"In the order they are painted, {coats}."
    return (_place_words(moment), _change_words(film, number))


def _place_words(moment: Moment) -> str:
    return (
        f"On {', '.join(moment.areas) or 'nothing'}: {moment.covered_mm2:.0f} {SQUARE_MM} sintered,"
        f" {1000.0 * moment.ml:.1f} \N{MICRO SIGN}L, {moment.drops:.2f} drops."
    )


def _change_words(film: Film, number: int) -> str:
    moment, body = film.moments[number], film.body_change(number)
    if moment.painted is None:
        return "It lies on nothing, so it changes nothing."
    there = f"Where it is painted {change_text(moment.painted)}."
    if body is None:
        return there
    return f"{there} {_body_words(moment)} ({_steps(body)})."


def _body_words(moment: Moment) -> str:
    body = moment.outcome.area(Zone.BODY)
    if body is None:
        return "There is no body zone"
    return f"Body L* {body.predicted.lightness:.1f}, C* {body.predicted.chroma:.1f}"


def change_text(change: CoatChange) -> str:
    """Return "dL* -1.2, dC* +0.4, dE00 1.3" with true minus signs."""
    return f"{_steps(change)}, dE00 {change.de00:.1f}"


def _steps(change: CoatChange) -> str:
    return f"dL* {_signed(change.lightness)}, dC* {_signed(change.chroma)}"


def _signed(value: float) -> str:
    text = f"{abs(value):.1f}"
    if text == "0.0":
        return text
    return f"+{text}" if value > 0 else f"\N{MINUS SIGN}{text}"
