"""Every block with its best plan, the usual choice first and the computed one beside it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.suggesting import BlocksSideBySide
from stainmap.planning.reach import BlockReach
from stainmap.ui.section import Hairline, SoftLabel
from stainmap.ui.suggest_columns import head_label, sentence, swatches
from stainmap.ui.theme import font
from stainmap.words import either, marked, translate

_HEADS = (
    marked("suggest blocks", "block"),
    marked("suggest blocks", "wanted | bare"),
    marked("suggest blocks", "wanted | best"),
    marked("suggest blocks", "body"),
    marked("suggest blocks", "furthest"),
    marked("suggest blocks", "jars"),
    marked("suggest blocks", "coats"),
    "",
    "",
)


class BlockTable(QScrollArea):
    """What each block reaches.

    Signals
    -------
    taken
        `BlockReach` whose block and plan are to be taken.
    """

    taken = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.takes: dict[str, QPushButton] = {}
        self.setWidget(
            sentence(translate("suggest blocks", "Blocks are compared after the coats."))
        )

    def set_blocks(self, found: BlocksSideBySide) -> None:
        """Show all blocks: how they start, how near they come, what it takes."""
        page = QWidget()
        page.setAccessibleName(translate("suggest blocks", "Blocks side by side"))
        column = QVBoxLayout(page)
        column.setContentsMargins(14, 12, 14, 12)
        column.setSpacing(8)
        choice = found.choice
        beside = QHBoxLayout()
        beside.setSpacing(40)
        usual = either(choice.usual.blocks) or translate("suggest blocks", "none")
        for title, text in (
            (translate("suggest blocks", "Usual choice"), usual),
            (translate("suggest blocks", "Computed"), choice.computed.block),
        ):
            pair = QVBoxLayout()
            pair.setSpacing(0)
            pair.addWidget(SoftLabel(title, 12))
            pair.addWidget(head_label(text))
            beside.addLayout(pair)
        beside.addStretch(1)
        column.addLayout(beside)
        for text in choice.sentences:
            column.addWidget(sentence(text, 13))
        column.addWidget(Hairline())
        grid = QGridLayout()
        grid.setHorizontalSpacing(18)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(7, 1)
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        for place, name in enumerate(_HEADS):
            label = SoftLabel(translate("suggest blocks", name) if name else "", 11)
            if 3 <= place <= 6:
                label.setAlignment(right)
            grid.addWidget(label, 0, place)
        self.takes = {}
        for row, one in enumerate(found.reached, start=1):
            self._fill(grid, row, one, chosen=one.block == choice.computed.block)
        column.addLayout(grid)
        column.addStretch(1)
        self.setWidget(page)

    def _fill(self, grid: QGridLayout, row: int, one: BlockReach, *, chosen: bool) -> None:
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        name = QLabel(one.block)
        name.setFont(font(13, 600 if chosen else 400))
        grid.addWidget(name, row, 0)
        body = one.body
        grid.addWidget(
            swatches(
                body.wanted,
                one.bare_body,
                translate("suggest blocks", "{block}, bare").format(block=one.block),
            ),
            row,
            1,
        )
        grid.addWidget(
            swatches(
                body.wanted,
                body.predicted,
                translate("suggest blocks", "{block}, stained").format(block=one.block),
            ),
            row,
            2,
        )
        figures = (
            f"{body.de00:.1f}",
            f"{one.largest_de00:.1f}",
            str(len(one.plan.jars)),
            str(one.coats),
        )
        for place, text in enumerate(figures, start=3):
            label = QLabel(text)
            label.setFont(font(13))
            label.setAlignment(right)
            grid.addWidget(label, row, place)
        nesting = "" if one.nesting is None else one.nesting.sentence
        grid.addWidget(sentence(f"{one.reads}. {nesting}".strip(), 12), row, 7)
        take = QPushButton(translate("suggest blocks", "Take"))
        take.setAccessibleName(
            translate("suggest blocks", "Take {block} with its plan").format(block=one.block)
        )
        take.setToolTip(
            translate("suggest blocks", "Take {block} with its plan").format(block=one.block)
        )
        take.clicked.connect(lambda: self.taken.emit(one))
        self.takes[one.block] = take
        grid.addWidget(take, row, 8)
