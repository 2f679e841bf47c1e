"""Cells of the tables of suggestions: swatches, coats, a difference."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from stainmap.model.colour import Colour
from stainmap.ui.colour_table import Swatches
from stainmap.ui.outcome_panel import screen_colour
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font


def head_label(text: str) -> QLabel:
    """Return the title of a column."""
    label = QLabel(text)
    label.setFont(font(15, 600))
    return label


def sentence(text: str, px: int = 12) -> QLabel:
    """Return a quiet text of as many lines as it takes."""
    label = SoftLabel(text, px)
    label.setWordWrap(True)
    label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    return label


def swatches(wanted: Colour, predicted: Colour, name: str) -> Swatches:
    """Return the wanted colour beside the predicted one, touching."""
    return Swatches((screen_colour(wanted), screen_colour(predicted)), name)


def area_cell(pair: Swatches, coats: str, difference: str) -> QWidget:
    """Return one area of one plan: colours and dE00, the coats under them."""
    cell = QWidget()
    column = QVBoxLayout(cell)
    column.setContentsMargins(0, 0, 0, 2)
    column.setSpacing(2)
    line = QHBoxLayout()
    line.setSpacing(8)
    figure = QLabel(difference)
    figure.setFont(font(13, 600))
    line.addWidget(pair)
    line.addWidget(figure)
    line.addWidget(SoftLabel("dE00", 11))
    line.addStretch(1)
    column.addLayout(line)
    what = QLabel(coats)
    what.setFont(font(13))
    what.setWordWrap(True)
    what.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
    column.addWidget(what)
    return cell
