"""The intake page: everything that is asked before planning, on one page."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from stainmap.errors import PlanError
from stainmap.model.colour import (
    IN_PLACE,
    SPHERE_WITH_GLOSS,
    SPHERE_WITHOUT_GLOSS,
    WITHOUT_GLOSS,
    Conversion,
    Measurement,
)
from stainmap.model.intake import (
    MOST_WISH_CHARACTERS,
    Intake,
    Neighbour,
    Shade,
    ShadeSource,
    Third,
    ThirdShade,
)
from stainmap.model.shade_table import ShadeTable
from stainmap.model.tooth import Tooth
from stainmap.optics.colorimetry import LIGHTS
from stainmap.planning.targets import AS_PREDICTED, outside_ceramic, shade_in
from stainmap.predict.colour_conversion import conversions_for
from stainmap.ui.form_dialog import FormDialog, choice_box
from stainmap.ui.intake_backing import IntakeBacking
from stainmap.ui.plate import link_button
from stainmap.ui.section import Hairline, SectionHead, SoftLabel
from stainmap.ui.shade_row import ShadeRow
from stainmap.ui.theme import font, tones
from stainmap.words import listed, marked, translate, value_word

_GEOMETRIES = (WITHOUT_GLOSS, SPHERE_WITHOUT_GLOSS, SPHERE_WITH_GLOSS)
_GRADIENT = marked(
    "intake dialog",
    "The middle third is what the body is held to. A third that is not read follows it: the"
    " gradient from neck to edge comes from the offsets.",
)

PhotographAsked = Callable[[list[str], str], dict[str, Shade]]


@dataclass(frozen=True, slots=True, kw_only=True)
class IntakeFacts:
    """What the page is told of the case.

    Parameters
    ----------
    title
        Case and teeth in words.
    front
        True if the incisal third is called so; behind the canines it is that of the cusps.
    intake
        Answers so far.
    beside
        Teeth beside the restoration.
    stump, cement
        What lies behind the crown now.
    stumps, cements
        To choose from.
    units, unit_stumps
        Units of a bridge that may have a stump of their own, by the numbers of their teeth, and
        the stumps of those that have.
    draft
        What is said as long as nobody has named the stump; empty where the wall is thick enough.
    """

    title: str
    front: bool
    intake: Intake
    beside: tuple[Tooth, ...]
    stump: str
    cement: str
    stumps: tuple[str, ...]
    cements: tuple[str, ...]
    draft: str
    units: Mapping[int, str] = field(default_factory=dict)
    unit_stumps: Mapping[int, str] = field(default_factory=dict)


class IntakeDialog(QDialog):
    """One page; nothing in it is required.

    Parameters
    ----------
    ask_photograph
        Called with the names of all places and the one asked for; returns shades by name.

    Signals
    -------
    table_asked
        The table of tabs is to be shown.
    """

    table_asked = Signal()

    def __init__(
        self,
        facts: IntakeFacts,
        table: ShadeTable,
        ask_photograph: PhotographAsked,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("intake dialog", "Intake"))
        self._facts, self._ask = facts, ask_photograph
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(24, 18, 24, 16)
        self._column.setSpacing(9)
        self._column.addWidget(SoftLabel(facts.title, 13))
        self._add_shades(table)
        self._add_neighbours(table)
        self._add_backing()
        self._add_wish()
        self.caution = QLabel()
        self.caution.setFont(font(12, 500))
        self.caution.setWordWrap(True)
        self._column.addWidget(self.caution)
        kinds = QDialogButtonBox.StandardButton
        buttons = QDialogButtonBox(kinds.Ok | kinds.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self._column.addWidget(buttons)
        for row in self._all_rows:
            row.changed.connect(self._show)
        self._show()

    # --- parts of the page ---------------------------------------------------------------

    def _add_shades(self, table: ShadeTable) -> None:
        head = SectionHead(translate("intake dialog", "Wanted shade, by thirds"))
        self.photograph = link_button(translate("intake dialog", "from a photograph..."))
        self.photograph.clicked.connect(lambda: self._from_photograph(self._names[0]))
        self.tabs = link_button(translate("intake dialog", "table of tabs..."))
        self.tabs.clicked.connect(self.table_asked)
        head.add_widget(self.photograph)
        head.add_widget(self.tabs)
        self._column.addWidget(head)
        grid = self._grid()
        heads = {
            1: translate("intake dialog", "read as"),
            3: translate("intake dialog", "screen"),
            4: translate("intake dialog", "L* a* b* as compared,  ±"),
        }
        for column, word in heads.items():
            grid.addWidget(SoftLabel(word, 11), 0, column)
        intake = self._facts.intake
        self.thirds: dict[Third, ShadeRow] = {}
        # The middle third first: it is the one that is asked for most, often the only one.
        for line, third in enumerate((Third.MIDDLE, Third.CERVICAL, Third.INCISAL), start=1):
            name = self._third_name(third)
            row = ShadeRow(name, intake.shade(third), table, self)
            label = QLabel(name)
            label.setFont(font(13, 600 if third is Third.MIDDLE else 400))
            label.setBuddy(row.source)
            row.add_to(grid, line, label)
            row.photograph_asked.connect(lambda name=name: self._from_photograph(name))
            self.thirds[third] = row
        self._column.addLayout(grid)
        self._column.addWidget(FormDialog.soft(translate("intake dialog", _GRADIENT)))
        self.conversions = FormDialog.soft("")
        self._column.addWidget(self.conversions)
        self._add_way()

    def _add_way(self) -> None:
        """Add the line about how L*a*b* were measured; it shows where any were."""
        how, chosen = _way_of(self._facts.intake)
        self.way = QWidget()
        line = QHBoxLayout(self.way)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(8)
        self.geometry_ = choice_box(
            translate("intake dialog", "Geometry of the reading"),
            _GEOMETRIES,
            how.geometry,
            value_word,
        )
        self.light = choice_box(
            translate("intake dialog", "Light of the reading"), LIGHTS, how.illuminant
        )
        self.converts = QCheckBox()
        self.converts.setChecked(bool(chosen))
        line.addWidget(SoftLabel(translate("intake dialog", "L*a*b* measured in"), 13))
        line.addWidget(self.geometry_)
        line.addWidget(self.light)
        line.addWidget(self.converts)
        line.addStretch(1)
        self._column.addWidget(self.way)
        self.told = FormDialog.soft("")
        self._column.addWidget(self.told)
        for box in (self.geometry_, self.light):
            box.currentTextChanged.connect(self._set_way)
        self.converts.toggled.connect(self._set_way)

    def _add_neighbours(self, table: ShadeTable) -> None:
        self._column.addWidget(Hairline())
        self._column.addWidget(SectionHead(translate("intake dialog", "Neighbours")))
        grid = self._grid()
        self.neighbours: list[tuple[QComboBox, ShadeRow]] = []
        known = list(self._facts.intake.neighbours)
        free = [one for one in self._facts.beside if one not in [n.tooth for n in known]]
        teeth = [(one.tooth, one.shade) for one in known] + [(one, None) for one in free]
        for line, (tooth, shade) in enumerate(teeth[:2]):
            number = choice_box(
                translate("intake dialog", "Neighbour {line}").format(line=line + 1),
                _all_teeth(),
                str(tooth.number),
            )
            number.setMaximumWidth(76)
            row = ShadeRow(
                translate("intake dialog", "neighbour {line}").format(line=line + 1),
                shade,
                table,
                self,
            )
            row.photograph_asked.connect(lambda row=row: self._from_photograph(row.name))
            row.add_to(grid, line, number)
            number.currentTextChanged.connect(self._name_neighbours)
            self.neighbours.append((number, row))
        self._column.addLayout(grid)
        self._name_neighbours()
        self._set_way()

    def _add_backing(self) -> None:
        facts = self._facts
        self._column.addWidget(Hairline())
        self._column.addWidget(SectionHead(translate("intake dialog", "What lies behind")))
        self.behind = IntakeBacking(facts, self)
        self.behind.changed.connect(self._show)
        self.stump, self.cement = self.behind.stump, self.behind.cement
        self.stands_on = self.behind.stands_on
        self._column.addWidget(self.behind)

    def _add_wish(self) -> None:
        self._column.addWidget(Hairline())
        self._column.addWidget(
            SectionHead(
                translate("intake dialog", "The dentist's wish"),
                translate("intake dialog", "in their words"),
            )
        )
        self.wish = QPlainTextEdit(self._facts.intake.wish)
        self.wish.setAccessibleName(translate("intake dialog", "The dentist's wish"))
        self.wish.setTabChangesFocus(True)
        self.wish.setFixedHeight(58)
        self.wish.textChanged.connect(self._show)
        self._column.addWidget(self.wish)

    @staticmethod
    def _grid() -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(5)
        grid.setColumnMinimumWidth(0, 84)
        grid.setColumnMinimumWidth(1, 112)
        grid.setColumnMinimumWidth(3, 44)
        grid.setColumnStretch(2, 1)
        return grid

    # --- what was answered ---------------------------------------------------------------

    @property
    def intake(self) -> Intake:
        """The answers as they are now; raises PlanError if they contradict each other."""
        shades = tuple(
            ThirdShade(third=third, shade=row.shade)
            for third, row in self.thirds.items()
            if row.shade is not None
        )
        neighbours = tuple(
            Neighbour(tooth=Tooth(number=int(number.currentText())), shade=row.shade)
            for number, row in self.neighbours
            if row.shade is not None
        )
        return Intake(
            shades=shades,
            stump_known=self.behind.is_known,
            implant_base=self.behind.on_implant,
            neighbours=neighbours,
            wish=self.wish.toPlainText().strip(),
        )

    def set_table(self, table: ShadeTable) -> None:
        """Choose from another table of tabs."""
        for row in self._all_rows:
            row.set_table(table)

    def accept(self) -> None:
        """Close if the answers hold together; say what does not."""
        try:
            _ = self.intake
        except PlanError as error:
            self._say(str(error))
            return
        super().accept()

    # --- keeping the page in step --------------------------------------------------------

    @property
    def _all_rows(self) -> list[ShadeRow]:
        return [*self.thirds.values(), *(row for _, row in self.neighbours)]

    @property
    def _names(self) -> list[str]:
        return [row.name for row in self._all_rows]

    def _third_name(self, third: Third) -> str:
        if third is Third.INCISAL and not self._facts.front:
            return translate("intake dialog", "cusps")
        return value_word(third)

    def _name_neighbours(self) -> None:
        """Call neighbours by their numbers; of two with one number the second is told apart."""
        taken: list[str] = []
        for number, row in self.neighbours:
            name = translate("intake dialog", "neighbour {number}").format(
                number=number.currentText()
            )
            row.name = (
                translate("intake dialog", "{name} again").format(name=name)
                if name in taken
                else name
            )
            taken.append(row.name)
        self._show()

    def _from_photograph(self, name: str) -> None:
        found = self._ask(self._names, name)
        for row in self._all_rows:
            if row.name in found:
                row.set_photographed(found[row.name])

    def _set_way(self) -> None:
        how = Measurement(
            geometry=str(self.geometry_.currentData()),
            illuminant=str(self.light.currentData()),
            backing=IN_PLACE,
        )
        needed: tuple[Conversion, ...] = ()
        said = ""
        try:
            needed = conversions_for(how, AS_PREDICTED)
        except PlanError as error:
            said = str(error)
        self.converts.setVisible(bool(needed))
        self.converts.setText(
            translate("intake dialog", "convert by {ways}").format(
                ways=listed([value_word(one) for one in needed])
            )
        )
        chosen = needed if self.converts.isChecked() else ()
        if needed and not chosen:
            said = translate(
                "intake dialog",
                "Without the conversion, no difference to a prediction at 45/0, D65 is shown.",
            )
        self._way_said = said
        for row in self._all_rows:
            row.set_measured_by(how, chosen)

    def _show(self) -> None:
        if not hasattr(self, "wish"):
            # The page is still being laid out.
            return
        measured = any(row.is_measured for row in self._all_rows)
        self.way.setVisible(measured)
        self.told.setVisible(measured and bool(self._way_said))
        self.told.setText(self._way_said)
        said = self._conversions_said()
        self.conversions.setText(said)
        self.conversions.setVisible(bool(said))
        problems = [self._problem_of(row) for row in self._all_rows]
        over = len(self.wish.toPlainText().strip()) - MOST_WISH_CHARACTERS
        if over > 0:
            problems.append(
                translate("intake dialog", "The wish is {over} characters too long.").format(
                    over=over
                )
            )
        if not self.behind.is_known:
            assumed = translate("intake dialog", "Assumed behind the crown: {stump}.").format(
                stump=self._facts.stump
            )
            problems.append(" ".join(part for part in (self._facts.draft, assumed) if part))
        self._say(" ".join(one for one in problems if one))

    def _conversions_said(self) -> str:
        """Return by name what was done to shades to compare them, and what is doubtful of one."""
        names: dict[str, list[str]] = {}
        notes: dict[str, list[str]] = {}
        for row in self._all_rows:
            shade = row.shade
            if shade is None:
                continue
            with contextlib.suppress(PlanError):
                for one in shade_in(shade).conversions:
                    names.setdefault(value_word(one.conversion), []).append(row.name)
            if shade.note:
                notes.setdefault(shade.note, []).append(shade.name or row.name)
        parts = [
            translate("intake dialog", "Converted by {name}: {rows}.").format(
                name=name, rows=", ".join(rows)
            )
            for name, rows in names.items()
        ]
        parts += [f"{', '.join(dict.fromkeys(of))}: {note}." for note, of in notes.items()]
        return " ".join(parts)

    def _say(self, text: str) -> None:
        self.caution.setText(text)
        self.caution.setVisible(bool(text))
        self.caution.setStyleSheet(f"color: {tones(self).caution};")

    @staticmethod
    def _problem_of(row: ShadeRow) -> str:
        shade = row.shade
        if shade is None:
            return ""
        try:
            outside = outside_ceramic(shade_in(shade).colour)
        except PlanError:
            return ""
        return f"{row.name[:1].upper()}{row.name[1:]}: {outside}" if outside else ""


def _way_of(intake: Intake) -> tuple[Measurement, tuple[Conversion, ...]]:
    """Return how the measured shades of an intake were measured, all alike on this page."""
    shades = [one.shade for one in intake.shades] + [one.shade for one in intake.neighbours]
    for shade in shades:
        if shade.source is ShadeSource.MEASURED:
            return shade.colour.measurement, shade.conversions
    return AS_PREDICTED, ()


def _all_teeth() -> tuple[str, ...]:
    return tuple(str(10 * quadrant + n) for quadrant in (1, 2, 3, 4) for n in range(1, 9))
