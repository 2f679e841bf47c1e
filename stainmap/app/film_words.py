"""What a coat of the film does, in words and figures."""

from __future__ import annotations

from stainmap.app.film import CoatChange, Film, Moment
from stainmap.model.zone import Zone
from stainmap.words import marked, translate

SQUARE_MM = "mm\N{SUPERSCRIPT TWO}"
BARE = marked("film words", "The bare block, as it would be sintered without stain")


def title_of(film: Film, number: int) -> str:
    """Return what is painted at a moment, from 0, in one line."""
    moment = film.moments[number]
    if number == 0:
        return translate("film words", BARE)
    coats = translate("film words", "coat {coat} of {coats}").format(
        coat=moment.coat, coats=moment.coats
    )
    return translate("film words", "Step {step}, {coats}: {liquid} from jar {jar}").format(
        step=moment.step, coats=coats, liquid=moment.liquid, jar=moment.jar
    )


def lines_of(film: Film, number: int) -> tuple[str, str]:
    """Return where a coat goes with what it takes, and what it changes."""
    moment = film.moments[number]
    if number == 0:
        count = len(film.moments) - 1
        coats = (
            translate("film words", "one coat follows")
            if count == 1
            else translate("film words", "{count} coats follow").format(count=count)
        )
        return f"{_body_words(moment)}.", translate(
            "film words", "In the order they are painted, {coats}."
        ).format(coats=coats)
    return (_place_words(moment), _change_words(film, number))


def _place_words(moment: Moment) -> str:
    return translate(
        "film words",
        "On {areas}: {size:.0f} {square} sintered, {microlitres:.1f} µL, {drops:.2f} drops.",
    ).format(
        areas=", ".join(moment.areas) or translate("film words", "nothing"),
        size=moment.covered_mm2,
        square=SQUARE_MM,
        microlitres=1000.0 * moment.ml,
        drops=moment.drops,
    )


def _change_words(film: Film, number: int) -> str:
    moment, body = film.moments[number], film.body_change(number)
    if moment.painted is None:
        return translate("film words", "It lies on nothing, so it changes nothing.")
    there = translate("film words", "Where it is painted {change}.").format(
        change=change_text(moment.painted)
    )
    if body is None:
        return there
    return f"{there} {_body_words(moment)} ({_steps(body)})."


def _body_words(moment: Moment) -> str:
    body = moment.outcome.area(Zone.BODY)
    if body is None:
        return translate("film words", "There is no body zone")
    return translate("film words", "Body L* {lightness:.1f}, C* {chroma:.1f}").format(
        lightness=body.predicted.lightness, chroma=body.predicted.chroma
    )


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
