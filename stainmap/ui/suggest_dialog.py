"""Suggested coats: several plans side by side, then every block; one of them can be taken."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QMenu,
    QProgressBar,
    QPushButton,
    QScrollArea,
    QSpinBox,
    QTabWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.suggesting import BlocksSideBySide
from stainmap.planning import suggest_words as words
from stainmap.planning.suggest_result import (
    MOST_JARS,
    Stock,
    SuggestedArea,
    SuggestedPlan,
    Suggestions,
)
from stainmap.ui.plate import link_button
from stainmap.ui.screen_room import resize_within_screen
from stainmap.ui.section import Hairline, SoftLabel
from stainmap.ui.suggest_blocks import BlockTable
from stainmap.ui.suggest_columns import area_cell, head_label, sentence, swatches
from stainmap.ui.theme import font
from stainmap.words import translate

_WIDTH_PX, _HEIGHT_PX = 1120, 760
_COLUMN_PX = 232
_HIGHEST_JARS = 12


class SuggestDialog(QDialog):
    """Works while it is open; closing it stops the work.

    Signals
    -------
    asked
        `Stock` to search with.
    stopped
        The search is to stop.
    taken
        `SuggestedPlan` or `BlockReach` that is to become the plan.
    beside_asked
        `Suggestions`, and the `SuggestedPlan` among them that is to be seen beside the open plan.
    """

    asked = Signal(object)
    stopped = Signal()
    taken = Signal(object)
    beside_asked = Signal(object, object)

    def __init__(self, liquids: Sequence[str], block: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("suggest dialog", "Suggest coats"))
        resize_within_screen(self, _WIDTH_PX, _HEIGHT_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 18, 24, 18)
        column.setSpacing(10)
        column.addLayout(self._stock_row(liquids))
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setFixedHeight(6)
        self.phrase = SoftLabel("", 12)
        self.stop = link_button(translate("suggest dialog", "stop"))
        self.stop.setAccessibleName(translate("suggest dialog", "Stop the search"))
        self.stop.clicked.connect(self.stopped)
        self._working = QWidget()
        line = QHBoxLayout(self._working)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(self.bar, 1)
        line.addWidget(self.phrase)
        line.addWidget(self.stop)
        column.addWidget(self._working)
        self.said = sentence("", 13)
        self.said.hide()
        column.addWidget(self.said)
        self.pages = QTabWidget()
        self.pages.setAccessibleName(translate("suggest dialog", "Plans and blocks"))
        self._plans = QScrollArea()
        self._plans.setAccessibleName(translate("suggest dialog", "Suggested plans"))
        self.blocks = BlockTable()
        self.blocks.taken.connect(self.taken)
        for area, name in (
            (self._plans, translate("suggest dialog", "Coats on {block}").format(block=block)),
            (self.blocks, translate("suggest dialog", "Blocks")),
        ):
            area.setWidgetResizable(True)
            self.pages.addTab(area, name)
        column.addWidget(self.pages, 1)
        close = QPushButton(translate("suggest dialog", "Close"))
        close.clicked.connect(self.reject)
        foot = QHBoxLayout()
        self.caution = sentence("", 12)
        foot.addWidget(self.caution, 1)
        foot.addWidget(close)
        column.addLayout(foot)
        self.takes: list[QPushButton] = []

    def _stock_row(self, liquids: Sequence[str]) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(10)
        self.jars = QSpinBox()
        self.jars.setRange(1, _HIGHEST_JARS)
        self.jars.setValue(MOST_JARS)
        self.jars.setAccessibleName(translate("suggest dialog", "Most jars"))
        self.stock = QToolButton()
        self.stock.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.stock.setAccessibleName(translate("suggest dialog", "Liquids in stock"))
        menu = QMenu(self.stock)
        menu.setToolTipsVisible(True)
        self._liquids = []
        for name in liquids:
            action = menu.addAction(name)
            action.setCheckable(True)
            action.setChecked(True)
            action.toggled.connect(self._name_stock)
            self._liquids.append(action)
        self.stock.setMenu(menu)
        self._name_stock()
        self.again = QPushButton(translate("suggest dialog", "Search again"))
        self.again.clicked.connect(lambda: self.asked.emit(self.chosen_stock))
        for widget in (
            QLabel(translate("suggest dialog", "At most")),
            self.jars,
            QLabel(translate("suggest dialog", "jars, of")),
            self.stock,
            self.again,
        ):
            row.addWidget(widget)
        row.addStretch(1)
        row.addWidget(
            SoftLabel(
                translate("suggest dialog", "Locked coats stay (L in the table locks a cell)."), 12
            )
        )
        return row

    @property
    def chosen_stock(self) -> Stock:
        """What the search may use."""
        names = tuple(one.text() for one in self._liquids if one.isChecked())
        return Stock(liquids=names, most_jars=self.jars.value())

    def _name_stock(self) -> None:
        count = sum(one.isChecked() for one in self._liquids)
        all_of_them = count == len(self._liquids)
        self.stock.setText(
            translate("suggest dialog", "all {count} liquids").format(count=count)
            if all_of_them
            else translate("suggest dialog", "{count} of {all_} liquids").format(
                count=count, all_=len(self._liquids)
            )
        )

    # --- at work ---------------------------------------------------------------------------

    def start(self) -> None:
        """Ask for the first search."""
        self.asked.emit(self.chosen_stock)

    def show_progress(self, share: float, phrase: str) -> None:
        """Say how far it is."""
        self._working.show()
        self.again.setEnabled(False)
        self.bar.setValue(round(1000 * share))
        self.phrase.setText(phrase)

    def end_work(self, problem: str = "") -> None:
        """Nothing is being worked on any more; say why, if something went wrong."""
        self._working.hide()
        self.again.setEnabled(True)
        self.said.setText(problem)
        self.said.setVisible(bool(problem))

    def reject(self) -> None:
        """Close, and stop what is being worked on."""
        self.stopped.emit()
        super().reject()

    # --- what was found --------------------------------------------------------------------

    def set_plans(self, found: Suggestions) -> None:
        """Show plans side by side."""
        page = QWidget()
        page.setAccessibleName(translate("suggest dialog", "Plans side by side"))
        outer = QVBoxLayout(page)
        outer.setContentsMargins(14, 12, 14, 12)
        outer.setSpacing(10)
        for one in found.out_of_reach:
            outer.addWidget(sentence(words.out_of_reach_line(one, found.block), 13))
        grid = QGridLayout()
        grid.setHorizontalSpacing(20)
        grid.setVerticalSpacing(8)
        outer.addLayout(grid)
        outer.addStretch(1)
        self.takes = []
        rows = [
            "",
            translate("suggest dialog", "jars"),
            translate("suggest dialog", "inside"),
            *(one.label for one in found.plans[0].areas),
            translate("suggest dialog", "days"),
            translate("suggest dialog", "why"),
        ]
        for row, name in enumerate(rows):
            label = SoftLabel(name, 12)
            grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignTop)
        for number, plan in enumerate(found.plans, start=1):
            self._fill(grid, number, plan, found)
            grid.setColumnMinimumWidth(number, _COLUMN_PX)
            grid.setColumnStretch(number, 1)
        self._plans.setWidget(page)
        self.caution.setText(" ".join(words.caution(found)))

    def _fill(
        self, grid: QGridLayout, column: int, plan: SuggestedPlan, found: Suggestions
    ) -> None:
        top = Qt.AlignmentFlag.AlignTop
        head = QWidget()
        lines = QVBoxLayout(head)
        lines.setContentsMargins(0, 0, 0, 4)
        lines.setSpacing(4)
        title = words.title_of(plan.kind)
        lines.addWidget(head_label(title))
        lines.addWidget(sentence(words.plan_line(plan), 12))
        take = QPushButton(translate("suggest dialog", "Take this plan"))
        take.setAccessibleName(
            translate("suggest dialog", "Take the plan: {title}").format(title=title)
        )
        take.clicked.connect(lambda: self.taken.emit(plan))
        self.takes.append(take)
        lines.addWidget(take, 0, Qt.AlignmentFlag.AlignLeft)
        beside = link_button(translate("suggest dialog", "see both crowns"))
        beside.setAccessibleName(
            translate("suggest dialog", "See the open plan beside: {title}").format(title=title)
        )
        beside.clicked.connect(lambda: self.beside_asked.emit(found, plan))
        lines.addWidget(beside, 0, Qt.AlignmentFlag.AlignLeft)
        lines.addWidget(Hairline())
        grid.addWidget(head, 0, column, top)
        jars = QLabel(
            ", ".join(f"{jar.number} {jar.liquid}" for jar in plan.plan.jars)
            or translate("suggest dialog", "none")
        )
        jars.setFont(font(13, 500))
        jars.setWordWrap(True)
        grid.addWidget(jars, 1, column, top)
        grid.addWidget(sentence(words.coats_text(plan.inside), 13), 2, column, top)
        row = 3
        for row, one in enumerate(plan.areas, start=3):
            grid.addWidget(self._cell(one), row, column, top)
        grid.addWidget(sentence(words.survival_line(plan), 12), row + 1, column, top)
        why = sentence("\n".join(words.reasons(plan, found)), 12)
        grid.addWidget(why, row + 2, column, top)

    @staticmethod
    def _cell(one: SuggestedArea) -> QWidget:
        return area_cell(
            swatches(
                one.wanted,
                one.predicted,
                translate("suggest dialog", "{label}, wanted and predicted").format(
                    label=one.label
                ),
            ),
            words.coats_text(one.coats),
            f"{one.de00:.1f}",
        )

    def set_blocks(self, found: BlocksSideBySide) -> None:
        """Show all blocks."""
        self.blocks.set_blocks(found)
