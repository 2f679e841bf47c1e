"""The unit at the top of the plan: which tooth, which block, what lies behind it, which furnace."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from stainmap.model.tooth import Tooth
from stainmap.ui.icons import paint_icon
from stainmap.ui.marks import paint_text, text_width
from stainmap.ui.materials_marks import mark_origins
from stainmap.ui.plate import link_button
from stainmap.ui.section import PADDING, SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate

_TEETH = tuple(10 * quadrant + position for quadrant in range(1, 5) for position in range(1, 9))


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitFacts:
    """What the panel shows: numbers of all units, sizes in words, and the chosen materials."""

    teeth: tuple[int, ...]
    description: str
    enlargement: str
    size: str
    block: str
    stump: str
    cement: str
    programme: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialNames:
    """What can be chosen from."""

    blocks: tuple[str, ...]
    stumps: tuple[str, ...]
    cements: tuple[str, ...]
    programmes: tuple[str, ...]
    sizes: tuple[str, ...] = ("sintered", "milled")
    origins: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Of each kind: name -> where its numbers come from, in a word."""


class ToothChooser(QComboBox):
    """The tooth's number, large; its list has number and name."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._text = ""
        for number in _TEETH:
            self.addItem(f"{number}  {Tooth(number=number).name}", number)
        self.setAccessibleName(translate("unit panel", "Tooth number, ISO 3950"))
        self.setToolTip(translate("unit panel", "Tooth number by ISO 3950"))
        self.setMaxVisibleItems(16)
        self.view().setMinimumWidth(250)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setProperty("large", True)

    def show_teeth(self, teeth: Sequence[int]) -> None:
        """Show the number of a crown, or first and last of a bridge, which stay as they are."""
        self.setEnabled(len(teeth) == 1)
        if not teeth:
            self._text = "\N{EN DASH}"
        elif len(teeth) == 1:
            self._text = str(teeth[0])
            self.setCurrentIndex(_TEETH.index(teeth[0]))
        else:
            self._text = f"{teeth[0]}\N{EN DASH}{teeth[-1]}"
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for the large number."""
        return QSize(round(text_width(self._text or "88", 40, 300)) + 20, 46)

    def minimumSizeHint(self) -> QSize:
        """Return the same room."""
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the number alone, with a small arrow where it can be changed."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        # A dash alone would lie on the line that figures stand on.
        line = 38 if self._text != "\N{EN DASH}" else 30
        used = paint_text(painter, (0, line), self._text, t.ink, px=40, weight=300)
        if self.isEnabled() and (self.underMouse() or self.hasFocus()):
            paint_icon(painter, "chevron", QRectF(used + 2, 16, 16, 16), t.soft)
        if self.hasFocus():
            painter.setPen(QPen(QColor(t.accent), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 3, 3)
        painter.end()


class UnitPanel(QWidget):
    """Tooth, size, block, backing and programme; all can be changed.

    Signals
    -------
    tooth_chosen
        ISO 3950 number.
    notes_asked
        What was noticed when the crown was read is to be shown.
    intake_asked
        The intake page is to be shown.
    block_chosen, stump_chosen, cement_chosen, programme_chosen, size_chosen
        Name.
    """

    tooth_chosen = Signal(int)
    notes_asked = Signal()
    intake_asked = Signal()
    block_chosen = Signal(str)
    stump_chosen = Signal(str)
    cement_chosen = Signal(str)
    programme_chosen = Signal(str)
    size_chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("unit panel", "Unit"))
        column = QVBoxLayout(self)
        column.setContentsMargins(PADDING, 10, PADDING, 0)
        column.setSpacing(6)
        column.addLayout(self._head())
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnMinimumWidth(0, 84)
        self._grid.setColumnStretch(1, 3)
        self._grid.setColumnStretch(2, 2)
        column.addLayout(self._grid)
        self.block = self._combo(translate("unit panel", "Block"), self.block_chosen)
        self.size_state = self._combo(translate("unit panel", "Size of the mesh"), self.size_chosen)
        self.stump = self._combo(translate("unit panel", "What lies behind"), self.stump_chosen)
        self.cement = self._combo(translate("unit panel", "Cement"), self.cement_chosen)
        self.programme = self._combo(
            translate("unit panel", "Sintering programme"), self.programme_chosen
        )
        self._enlargement = QLabel()
        self._enlargement.setFont(font(13, 500))
        self._enlargement.setContentsMargins(7, 0, 0, 0)
        self._row(0, translate("unit panel", "Block"), self.block)
        self._row(1, translate("unit panel", "Mesh"), self.size_state, self._enlargement)
        self._row(2, translate("unit panel", "Behind it"), self.stump)
        self._row(3, translate("unit panel", "Cement"), self.cement)
        self._row(4, translate("unit panel", "Furnace"), self.programme)

    def _head(self) -> QHBoxLayout:
        """Return number, name, size in words and the links beside them."""
        head = QHBoxLayout()
        head.setSpacing(8)
        self.tooth = ToothChooser()
        self.tooth.activated.connect(self._choose_tooth)
        words = QVBoxLayout()
        words.setSpacing(1)
        self._name = QLabel()
        self._name.setFont(font(15, 600))
        self._description = SoftLabel(px=13)
        words.addStretch(1)
        line = QHBoxLayout()
        line.setSpacing(12)
        self.notes = link_button("")
        self.notes.setFont(font(12, 500))
        self.notes.clicked.connect(self.notes_asked)
        self.notes.hide()
        self.intake = link_button(translate("unit panel", "intake"))
        self.intake.setFont(font(12, 500))
        self.intake.clicked.connect(self.intake_asked)
        # The links must never be what is cut off: where it is narrow, words give way to them.
        for label in (self._name, self._description):
            label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        line.addWidget(self._name, 1)
        line.addWidget(self.notes)
        line.addWidget(self.intake)
        words.addLayout(line)
        words.addWidget(self._description)
        words.addStretch(1)
        head.addWidget(self.tooth)
        head.addLayout(words, 1)
        return head

    def _combo(self, name: str, signal: object) -> QComboBox:
        combo = QComboBox()
        combo.setProperty("quiet", True)
        combo.setAccessibleName(name)
        combo.setToolTip(name)
        combo.setFont(font(13, 500))
        combo.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        combo.setMinimumContentsLength(8)
        combo.textActivated.connect(signal)
        return combo

    def _row(self, row: int, name: str, first: QWidget, second: QWidget | None = None) -> None:
        label = SoftLabel(name, 13)
        label.setBuddy(first)
        self._grid.addWidget(label, row, 0)
        if second is None:
            self._grid.addWidget(first, row, 1, 1, 2)
        else:
            self._grid.addWidget(first, row, 1)
            self._grid.addWidget(second, row, 2)

    def set_materials(self, names: MaterialNames) -> None:
        """Offer these materials."""
        for combo, entries in (
            (self.block, names.blocks),
            (self.size_state, names.sizes),
            (self.stump, names.stumps),
            (self.cement, names.cements),
            (self.programme, names.programmes),
        ):
            combo.clear()
            combo.addItems(list(entries))
        for combo, kind in (
            (self.block, "block"),
            (self.stump, "stump"),
            (self.cement, "cement"),
            (self.programme, "programme"),
        ):
            mark_origins(combo, names.origins.get(kind, {}))

    def set_notes(self, notes: Sequence[str]) -> None:
        """Offer what was noticed when the crown was read, if anything was."""
        count = len(notes)
        self.notes.setVisible(bool(count))
        self.notes.setText(
            translate("unit panel", "1 note")
            if count == 1
            else translate("unit panel", "{count} notes").format(count=count)
        )
        self.notes.setToolTip("\n".join(notes))
        self.notes.setAccessibleDescription(" ".join(notes))

    def set_draft(self, reason: str) -> None:
        """Say why the plan is a draft; an empty reason says that it is none."""
        self.intake.setText(
            translate("unit panel", "draft: intake")
            if reason
            else translate("unit panel", "intake")
        )
        self.intake.setToolTip(
            reason or translate("unit panel", "Shade, stump, neighbours and wish, on one page")
        )
        self.intake.setAccessibleName(translate("unit panel", "Intake page"))
        self.intake.setAccessibleDescription(reason)

    def set_facts(self, facts: UnitFacts | None) -> None:
        """Show a unit, or nothing."""
        for combo in (self.block, self.size_state, self.stump, self.cement, self.programme):
            combo.setEnabled(facts is not None)
        self.intake.setVisible(facts is not None)
        if facts is None:
            self.tooth.show_teeth(())
            self._name.setText(translate("unit panel", "no crown yet"))
            self._description.setText("")
            self._enlargement.setText("")
            return
        self.tooth.show_teeth(facts.teeth)
        one = len(facts.teeth) == 1
        name = (
            Tooth(number=facts.teeth[0]).name
            if one
            else translate("unit panel", "bridge of {count} units").format(count=len(facts.teeth))
        )
        self._name.setText(name)
        self._name.setToolTip(name)
        self._description.setText(facts.description)
        self._description.setToolTip(facts.description)
        self._enlargement.setText(facts.enlargement)
        for combo, text in (
            (self.block, facts.block),
            (self.size_state, facts.size),
            (self.stump, facts.stump),
            (self.cement, facts.cement),
            (self.programme, facts.programme),
        ):
            if combo.findText(text) < 0:
                combo.addItem(text)
            combo.setCurrentText(text)
            combo.setToolTip(f"{combo.accessibleName()}: {text}")

    def _choose_tooth(self, index: int) -> None:
        self.tooth_chosen.emit(_TEETH[index])
