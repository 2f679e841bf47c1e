"""What `predict --what-if` says: the same plan in two programmes, as an object and as lines."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stainmap.planning.strength_class import STATEMENT
from stainmap.planning.what_if import ProgrammeWhatIf
from stainmap.predict.plate_translucency import range_text
from stainmap.predict.sintering import duration_text


def what_if_report(found: ProgrammeWhatIf) -> dict[str, Any]:
    """Return the JSON object; L*a*b* and differences are rounded to 0.001."""
    return {
        "programmes": [
            {
                "name": name,
                "minutes": minutes,
                "scattering_factor": factor,
                "factor_from": "blank coupon" if measured else "class, assumed",
                "class": kind,
                "plate_tp": _rounded(translucency),
            }
            for name, minutes, factor, measured, kind, translucency in zip(
                (found.here, found.there),
                found.minutes,
                found.factors,
                found.measured,
                found.classes,
                found.translucency,
                strict=True,
            )
        ],
        "strength": {
            "mpa": list(found.strength.mpa),
            "iso_6872_class": found.strength.number,
            "use": found.strength.use,
            "statement": STATEMENT,
        },
        "areas": {
            one.label: {
                "lab": [_rounded(one.here.lab), _rounded(one.there.lab)],
                "change": _rounded(one.change),
                "change_de00": round(one.change_de00, 3),
                "wanted_de00": None if one.wanted_de00 is None else _rounded(one.wanted_de00),
            }
            for one in found.areas
        },
    }


def what_if_lines(found: ProgrammeWhatIf) -> Iterator[str]:
    """Yield the table as a person reads it."""
    times = [duration_text(minutes) for minutes in found.minutes]
    yield f"What if: {found.here} ({times[0]}) against {found.there} ({times[1]})"
    yield f"{'area':26}{'L*':>7}{'C*':>7}{'dL*':>7}{'da*':>7}{'db*':>7}{'dE00':>7}"
    for one in found.areas:
        lightness, a, b = one.change
        yield (
            f"{one.label:26}{one.there.lightness:7.1f}{one.there.chroma:7.1f}"
            f"{lightness:+7.1f}{a:+7.1f}{b:+7.1f}{one.change_de00:7.1f}"
        )
    here, there = (range_text(values) for values in found.translucency)
    yield f"TP of a bare plate of 1.0 mm: {here} and {there}; classes by time: " + " and ".join(
        found.classes
    )
    yield f"{found.strength}. {STATEMENT}"
    if not all(found.measured):
        yield "A direction: what a programme does to scattering is assumed until a coupon is read."


def _rounded(values: tuple[float, ...]) -> list[float]:
    return [round(float(value), 3) for value in values]
