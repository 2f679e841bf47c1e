"""Slips in the window: what one of them does to a plan, and how a plan bears one's own."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.job import Job, JobRunner, Progress
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.zone import Zone, area_label
from stainmap.practice.looking import Looked, Looker
from stainmap.practice.slips import (
    DAYS,
    OwnSlips,
    SlipEffect,
    Spread,
    possible_slips,
    slip_effect,
    slip_words,
    spread_of_slips,
)
from stainmap.ui.form_dialog import number_box
from stainmap.ui.section import Hairline, SectionHead, SoftLabel
from stainmap.ui.theme import font
from stainmap.words import marked, sentence_case, translate

_AREAS = (Zone.CERVICAL, Zone.BODY, Zone.INTERPROXIMAL, Zone.CUSP, Zone.FISSURE)
_HEADS = (
    marked("practice slips", "slip"),
    marked("practice slips", "seen most on"),
    "dL*",
    "dC*",
    "dE00",
    marked("practice slips", "at the worst place"),
)
_REST_MS = 400
_ALIKE_PERCENT = 3
T = TypeVar("T")


class SlipsDialog(QDialog):
    """Every slip that can happen with a plan, and the spread of one's own.

    Parameters
    ----------
    case
        A planned case.
    looker
        Of its crown; made in the background if None.
    runner
        Does the work, and belongs to the dialog: closing it stops and ends it.
    other
        A plan on the same crown for the same wish, to be compared in how much it bears.
    """

    def __init__(
        self,
        case: Case,
        looker: Looker | None,
        runner: JobRunner,
        parent: QWidget | None = None,
        *,
        other: Case | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("practice slips", "Slips"))
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.resize(860, 640)
        self._case, self._looker, self._runner, self._other = case, looker, runner, other
        self._planned: Looked | None = None
        self._jobs: list[Job[Any]] = []
        self.effects: list[SlipEffect] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 18, 24, 18)
        column.setSpacing(10)
        text = translate(
            "practice slips",
            "What one slip of the hand would do to this plan, as predicted on the whole crown:"
            " the area that changes most, and the largest difference at any place.",
        )
        column.addWidget(_sentence(text))
        self.table = QTableWidget(0, len(_HEADS))
        self.table.setHorizontalHeaderLabels([translate("practice slips", head) for head in _HEADS])
        self.table.setAccessibleName(translate("practice slips", "Slips, the gravest first"))
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.verticalHeader().hide()
        # Tab goes on to the fields below; arrows go through the rows.
        self.table.setTabKeyNavigation(False)
        head = self.table.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        column.addWidget(self.table, 1)
        column.addWidget(Hairline())
        column.addWidget(SectionHead(translate("practice slips", "Your own slips")))
        column.addLayout(self._own_row())
        self.spread = _sentence("")
        self.spread.setAccessibleName(translate("practice slips", "How the plan bears your slips"))
        column.addWidget(self.spread)
        note = SoftLabel(
            translate(
                "practice slips",
                "Figures of the hand are assumed until you change them. Brushing over a border"
                " is in"
                " the table, not in the days.",
            ),
            11,
        )
        note.setWordWrap(True)
        column.addWidget(note)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self._rest.timeout.connect(self._count_days)
        self._start(
            translate("practice slips", "Predicting slips"), self._all_effects, self._show_effects
        )

    def _own_row(self) -> QHBoxLayout:
        own = OwnSlips()
        self.miscounts = number_box(
            translate("practice slips", "Crowns of ten with a miscounted coat"),
            own.miscounts_in_ten,
            0.0,
            10.0,
            decimals=0,
        )
        self.jars = number_box(
            translate("practice slips", "Crowns of ten with a jar mixed wrong"),
            own.wrong_jars_in_ten,
            0.0,
            10.0,
            decimals=0,
        )
        self.hand = number_box(
            translate("practice slips", "How much a coat differs, percent"),
            100.0 * own.hand_share,
            0.0,
            50.0,
            decimals=0,
        )
        row = QHBoxLayout()
        row.setSpacing(10)
        fields = (
            (translate("practice slips", "Of ten crowns, a coat miscounted on"), self.miscounts),
            (translate("practice slips", "a jar mixed wrong on"), self.jars),
            (translate("practice slips", "coats differ by, %"), self.hand),
        )
        for name, box in fields:
            box.setSingleStep(1.0)
            box.valueChanged.connect(lambda _value: self._rest.start())
            row.addWidget(QLabel(name))
            row.addWidget(box)
        row.addStretch(1)
        return row

    @property
    def own(self) -> OwnSlips:
        """The slips that are set."""
        return OwnSlips(
            miscounts_in_ten=self.miscounts.value(),
            wrong_jars_in_ten=self.jars.value(),
            hand_share=self.hand.value() / 100.0,
        )

    # --- work --------------------------------------------------------------------------------

    def _start(self, title: str, work: Callable[[Progress], T], done: Callable[[T], None]) -> None:
        def failed(error: StainmapError) -> None:
            self.spread.setText(str(error))

        job = self._runner.start(
            title, work, on_done=done, on_failed=failed, on_progress=self._tell
        )
        self._jobs.append(job)

    def _tell(self, job: Job[Any]) -> None:
        if not self.effects:
            self.spread.setText(
                translate("practice slips", "{phrase}, {share:.0f} % done.").format(
                    phrase=sentence_case(job.phrase), share=100 * job.share
                )
            )

    def _ready(self) -> tuple[Looker, Looked]:
        """Return what predicts, and the plan as it was meant; made once, in the work's thread."""
        looker = self._looker = Looker(self._case) if self._looker is None else self._looker
        planned = self._planned = (
            looker.look(self._case) if self._planned is None else self._planned
        )
        return looker, planned

    def _all_effects(self, progress: Progress) -> list[SlipEffect]:
        looker, planned = self._ready()
        progress(0.0, translate("practice slips", "predicting the plan"))
        slips = possible_slips(self._case)
        effects = []
        for number, slip in enumerate(slips):
            progress(number / max(len(slips), 1), translate("practice slips", "predicting slips"))
            effects.append(slip_effect(looker, planned, slip))
        return sorted(effects, key=lambda one: -one.areas[0].de00)

    def _show_effects(self, effects: list[SlipEffect]) -> None:
        self.effects = effects
        front = self._case.units[0].tooth.is_front
        self.table.setRowCount(len(effects))
        for row, effect in enumerate(effects):
            first = effect.areas[0]
            cells = (
                slip_words(self._case, effect.slip),
                area_label(first.area, front=front),
                _signed(first.value),
                _signed(first.chroma),
                f"{first.de00:.1f}",
                f"{effect.largest_de00:.1f}",
            )
            for column, text in enumerate(cells):
                item = QTableWidgetItem(text)
                if column > 1:
                    right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
                    item.setTextAlignment(right)
                self.table.setItem(row, column, item)
        if not effects:
            self.spread.setText(
                translate("practice slips", "Nothing is painted yet, so nothing can slip.")
            )
            return
        self._count_days()

    def _count_days(self) -> None:
        own = self.own

        def work(_progress: Progress) -> tuple[Spread, Spread | None]:
            looker, planned = self._ready()
            found = spread_of_slips(looker, planned, own, _AREAS)
            if self._other is None:
                return found, None
            other = looker.look(self._other)
            return found, spread_of_slips(looker, other, own, _AREAS, wanted=planned)

        self._start(translate("practice slips", "Counting days"), work, self._show_spread)

    def _show_spread(self, both: tuple[Spread, Spread | None]) -> None:
        found, other = both
        front = self._case.units[0].tooth.is_front
        weak = found.areas.index(found.weakest)
        name = area_label(found.weakest, front=front)
        survived = round(100.0 * found.survival.share)
        text = translate(
            "practice slips",
            "Of {days} simulated days with such a hand {survived} % keep every area within "
            "what most accept. Weakest is the {area}: {usual:.1f} dE00 off on half of the"
            " days, {bad:.1f} on one of twenty.",
        ).format(
            days=DAYS,
            survived=survived,
            area=name,
            usual=found.usual_de00[weak],
            bad=found.bad_de00[weak],
        )
        if other is not None:
            text = f"{text} {_compared(found, other)}"
        self.spread.setText(text)

    def done(self, result: int) -> None:
        """Close, and stop what is being worked on."""
        self._rest.stop()
        for job in self._jobs:
            job.cancel()
        self._runner.close()
        super().done(result)


def _compared(found: Spread, other: Spread) -> str:
    """Return how another plan bears the same days."""
    share, there = (round(100.0 * one.survival.share) for one in (found, other))
    if abs(share - there) <= _ALIKE_PERCENT:
        return translate(
            "practice slips", "The plan you handed in keeps them on {there} %: about as robust."
        ).format(there=there)
    if there < share:
        return translate(
            "practice slips",
            "The plan you handed in keeps them on {there} %: it is the more fragile one.",
        ).format(there=there)
    return translate(
        "practice slips",
        "The plan you handed in keeps them on {there} %: it is the more robust one.",
    ).format(there=there)


def _sentence(text: str) -> QLabel:
    label = QLabel(text)
    label.setFont(font(13))
    label.setWordWrap(True)
    return label


def _signed(value: float) -> str:
    text = f"{abs(value):.1f}"
    if text == "0.0":
        return text
    return f"+{text}" if value > 0 else f"\N{MINUS SIGN}{text}"
