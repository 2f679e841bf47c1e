"""What sets two plans apart, as figures: area by area, and what each of them takes."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from stainmap.app.compare import Compared
from stainmap.planning.outcome import AreaOutcome, Outcome
from stainmap.planning.what_if import AreaWhatIf
from stainmap.predict.plate_translucency import range_text
from stainmap.predict.sintering import duration_text
from stainmap.ui.colour_table import Cell, ColourTable, Swatches
from stainmap.ui.marks import signed
from stainmap.ui.outcome_panel import screen_colour
from stainmap.ui.section import SoftLabel
from stainmap.words import marked, translate

_HEADS = (
    marked("compare tables", "area"),
    marked("compare tables", "left | right"),
    marked("compare tables", "L* left"),
    marked("compare tables", "right"),
    "dL*",
    marked("compare tables", "C* left"),
    marked("compare tables", "right"),
    "dC*",
    "dE00",
    marked("compare tables", "from wanted"),
)
_NOT_CALIBRATED = marked(
    "compare tables", "Not calibrated: each colour is a direction, not a match."
)
_BY_CLASS = marked(
    "compare tables",
    "What a programme does to scattering is assumed by its class until a blank coupon has been"
    " read.",
)


class DifferenceTables(QWidget):
    """Areas with both colours and their difference at the left, coats, jars and times beside."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.areas = ColourTable([translate("compare tables", head) for head in _HEADS])
        self.facts = ColourTable(
            ("", translate("compare tables", "left"), translate("compare tables", "right"))
        )
        self.note = SoftLabel("", 12)
        self.note.setWordWrap(True)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(36)
        row.addWidget(self.areas, 3, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout()
        column.setSpacing(8)
        column.addWidget(self.facts)
        column.addWidget(self.note)
        column.addStretch(1)
        row.addLayout(column, 2)

    def set_compared(self, found: Compared | None) -> None:
        """Show what sets the two apart; None empties the tables."""
        if found is None:
            self.areas.set_rows(())
            self.facts.set_rows(())
            self.note.setText("")
            return
        self.areas.set_rows([_area_row(one) for one in found.areas])
        self.facts.set_rows([*_effort_rows(found), *_programme_rows(found), *_coat_rows(found)])
        says = (
            [] if found.here.outcome.calibrated else [translate("compare tables", _NOT_CALIBRATED)]
        )
        if found.programmes is not None and not all(found.programmes.measured):
            says.append(translate("compare tables", _BY_CLASS))
        self.note.setText(" ".join(says))


def _area_row(one: AreaWhatIf) -> Sequence[Cell]:
    here, there = one.here, one.there
    wanted = one.wanted_de00
    return (
        one.label,
        Swatches(
            (screen_colour(here), screen_colour(there)),
            translate("compare tables", "{label}, left and right in colour").format(
                label=one.label
            ),
        ),
        f"{here.lightness:.1f}",
        f"{there.lightness:.1f}",
        signed(there.lightness - here.lightness),
        f"{here.chroma:.1f}",
        f"{there.chroma:.1f}",
        signed(there.chroma - here.chroma),
        f"{one.change_de00:.1f}",
        "" if wanted is None else f"{wanted[0]:.1f} \N{RIGHTWARDS ARROW} {wanted[1]:.1f}",
    )


def _effort_rows(found: Compared) -> list[tuple[str, str, str]]:
    here, there = found.efforts
    return [
        (
            translate("compare tables", "coats, rounds of painting"),
            str(here.coats),
            str(there.coats),
        ),
        (translate("compare tables", "jars"), str(here.jars), str(there.jars)),
        (
            translate("compare tables", "mixing and painting"),
            duration_text(here.minutes),
            duration_text(there.minutes),
        ),
    ]


def _programme_rows(found: Compared) -> list[tuple[str, str, str]]:
    programmes = found.programmes
    if programmes is None:
        return []
    times = [duration_text(minutes) for minutes in programmes.minutes]
    plates = [range_text(values) for values in programmes.translucency]
    return [
        (translate("compare tables", "programme"), programmes.here, programmes.there),
        (translate("compare tables", "time, cold to opening"), times[0], times[1]),
        (
            translate("compare tables", "class by time"),
            programmes.classes[0],
            programmes.classes[1],
        ),
        (translate("compare tables", "TP of a bare plate of 1.0 mm"), plates[0], plates[1]),
    ]


def _coat_rows(found: Compared) -> list[tuple[str, str, str]]:
    """Return the coats of the areas that are painted otherwise in the two plans."""
    rows = []
    for one in found.areas:
        here, there = (
            _coats_of(outcome, one) for outcome in (found.here.outcome, found.there.outcome)
        )
        if here != there:
            rows.append(
                (translate("compare tables", "coats: {label}").format(label=one.label), here, there)
            )
    return rows


def _coats_of(outcome: Outcome, one: AreaWhatIf) -> str:
    area = outcome.area(one.area)
    return "" if area is None else coats_text(area)


def coats_text(area: AreaOutcome) -> str:
    """Return the coats an area gets by liquid, as "barley 1, slate 2-3"; "none" without any.

    What an accent inherits from the zones below it counts; over several zones it reads "1/2".
    """
    parts: dict[str, list[str]] = {}
    for entry in area.coats:
        words = "/".join(str(span) for span in entry.coats)
        parts.setdefault(entry.liquid, []).append(words)
    return ",\n".join(
        f"{liquid} {' + '.join(words)}" for liquid, words in parts.items()
    ) or translate("compare tables", "none")
