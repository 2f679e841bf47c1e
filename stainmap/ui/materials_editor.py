"""One material, looked at and edited: plot, numbers, what it is made up of, where it comes from."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.materials import Material, MaterialKind, kind_of, origin_of, short_origin
from stainmap.app.materials_curves import Plot, plots_of
from stainmap.app.materials_fields import NODES, NUMBERS, Quantity
from stainmap.app.materials_form import (
    choices_of,
    node_texts,
    number_text,
    with_added_node,
    with_node,
    with_number,
    with_origin,
    without_node,
)
from stainmap.app.materials_spectra import readable, written
from stainmap.errors import StainmapError
from stainmap.model.material import Catalogue, Provenance
from stainmap.ui.form_dialog import choice_box
from stainmap.ui.key_map import native
from stainmap.ui.materials_degrees import beside, expected, in_degrees, plot_in, shown, typed
from stainmap.ui.materials_plot import MaterialPlot
from stainmap.ui.materials_tables import FormTable
from stainmap.ui.section import SoftLabel, TableNote
from stainmap.ui.theme import font
from stainmap.units import TemperatureUnit
from stainmap.words import marked, translate, value_word

_ADD = {
    MaterialKind.BLOCK: marked("materials editor", "Add a layer"),
    MaterialKind.LIQUID: marked("materials editor", "Add an ion"),
    MaterialKind.ION: marked("materials editor", "Add a band"),
    MaterialKind.PROGRAMME: marked("materials editor", "Add a piece"),
}
_REMOVE = {
    MaterialKind.BLOCK: marked("materials editor", "Remove the layer"),
    MaterialKind.LIQUID: marked("materials editor", "Remove the ion"),
    MaterialKind.ION: marked("materials editor", "Remove the band"),
    MaterialKind.PROGRAMME: marked("materials editor", "Remove the piece"),
}
_ORIGINS = {short_origin(one): one for one in Provenance}


class MaterialEditor(QWidget):
    """Edits a draft of one entry; nothing holds before it is kept.

    Signals
    -------
    edited
        The draft has become another one.
    keep_asked, discard_asked
        The draft is to hold; it is to be dropped.
    put_asked
        The entry as it is kept is to come into the open case.
    solve_asked, read_asked, write_asked
        A block is to be solved from its colours; a spectrum is to be read or written.
    """

    edited = Signal()
    keep_asked = Signal()
    discard_asked = Signal()
    put_asked = Signal()
    solve_asked = Signal()
    read_asked = Signal()
    write_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._draft: Material | None = None
        self._catalogue = Catalogue()
        self._editable = False
        self._plots: tuple[Plot, ...] = ()
        self._degrees = TemperatureUnit.BOTH
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(self._head())
        self.plot = MaterialPlot()
        column.addWidget(self.plot, 3)
        column.addLayout(self._tables(), 4)
        self.note = TableNote()
        column.addWidget(self.note)
        column.addLayout(self._feet())

    def _head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self._name = QLabel()
        self._name.setFont(font(15, 600))
        self._standing = SoftLabel("", 12)
        for label in (self._name, self._standing):
            label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.origin = choice_box(
            translate("materials editor", "Where the numbers come from"),
            list(_ORIGINS),
            "invented",
            value_word,
        )
        self.origin.activated.connect(
            lambda _at: self._choose_origin(str(self.origin.currentData()))
        )
        self.shown = choice_box(
            translate("materials editor", "What the plot shows"),
            [translate("materials editor", "Absorption")],
            translate("materials editor", "Absorption"),
        )
        self.shown.activated.connect(self._show_plot)
        row.addWidget(self._name, 2)
        row.addWidget(self._standing, 3)
        self._origin_words = SoftLabel(translate("materials editor", "Numbers"), 12)
        self._origin_words.setBuddy(self.origin)
        row.addWidget(self._origin_words)
        row.addWidget(self.origin)
        row.addWidget(self.shown)
        return row

    def _tables(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.numbers = FormTable(translate("materials editor", "Numbers of the material"))
        self.numbers.horizontalHeader().hide()
        self.numbers.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.numbers.typed.connect(self._type_number)
        self.nodes = FormTable(translate("materials editor", "What the material is made up of"))
        self.nodes.typed.connect(self._type_node)
        self.nodes.added.connect(self._add_node)
        self.nodes.removed.connect(self._remove_node)
        row.addWidget(self.numbers, 4)
        row.addWidget(self.nodes, 5)
        return row

    def _feet(self) -> QVBoxLayout:
        feet = QVBoxLayout()
        feet.setSpacing(6)
        first, second = QHBoxLayout(), QHBoxLayout()
        self.add_node = _button(translate("materials editor", "Add a row"), self._add_node)
        self.add_node.setToolTip(native("Ins"))
        self.remove_node = _button(
            translate("materials editor", "Remove the row"), self._remove_node
        )
        self.remove_node.setToolTip(native("Del"))
        self.solve = _button(
            translate("materials editor", "Solve from the colour"), self.solve_asked.emit
        )
        self.read = _button(
            translate("materials editor", "Read a spectrum..."), self.read_asked.emit
        )
        self.write = _button(
            translate("materials editor", "Write a spectrum..."), self.write_asked.emit
        )
        for one in (self.add_node, self.remove_node, self.solve):
            first.addWidget(one)
        first.addStretch(1)
        first.addWidget(self.read)
        first.addWidget(self.write)
        self.also = QCheckBox(translate("materials editor", "also in the open case"))
        self.also.setChecked(True)
        self.also.setToolTip(
            translate(
                "materials editor",
                "The case has materials of its own. With this, what you keep, add or import"
                " comes into"
                " it too, as a step that can be undone.",
            )
        )
        self.put = _button(translate("materials editor", "Put into the case"), self.put_asked.emit)
        self.discard = _button(translate("materials editor", "Discard"), self.discard_asked.emit)
        self.keep = _button(translate("materials editor", "Keep the changes"), self.keep_asked.emit)
        self.keep.setProperty("main", True)
        second.addWidget(self.also)
        second.addStretch(1)
        for one in (self.put, self.discard, self.keep):
            second.addWidget(one)
        feet.addLayout(first)
        feet.addLayout(second)
        return feet

    # --- what is shown ---------------------------------------------------------------------

    @property
    def draft(self) -> Material | None:
        """The entry as it is edited now."""
        return self._draft

    @property
    def current_node(self) -> int:
        """Layer, ion, band or piece that the keyboard is at, from 0."""
        across = self._is_across
        at = self.nodes.currentColumn() if across else self.nodes.currentRow()
        return max(at, 0)

    @property
    def _is_across(self) -> bool:
        return self._draft is not None and kind_of(self._draft) is MaterialKind.BLOCK

    def show_entry(
        self, material: Material | None, catalogue: Catalogue, standing: str, *, editable: bool
    ) -> None:
        """Show an entry, or nothing."""
        self._draft, self._catalogue, self._editable = material, catalogue, editable
        self._name.setText("" if material is None else material.name)
        self._standing.setText(standing)
        self._standing.setToolTip(standing)
        self.note.tell("")
        self._fill()

    def set_state(self, *, changed: bool, has_case: bool, can_put: bool) -> None:
        """Say what can be done with the entry."""
        self.keep.setEnabled(changed)
        self.discard.setEnabled(changed)
        self.also.setEnabled(has_case)
        self.put.setEnabled(has_case and can_put)

    def write_temperatures(self, degrees: TemperatureUnit) -> None:
        """Show and take temperatures in these degrees."""
        if degrees is not self._degrees:
            self._degrees = degrees
            self._fill()

    def take_draft(self, material: Material) -> None:
        """Go on with another draft of the entry."""
        self._draft = material
        self._fill()
        self.edited.emit()

    def _fill(self) -> None:
        draft = self._draft
        self.setEnabled(draft is not None)
        if draft is None:
            self.numbers.setRowCount(0)
            self.nodes.setRowCount(0)
            self.plot.set_plot(None)
            return
        origin = origin_of(draft)
        self.origin.setVisible(origin is not None)
        self._origin_words.setVisible(origin is not None)
        self.origin.setEnabled(self._editable)
        if origin is not None:
            self.origin.setCurrentIndex(self.origin.findData(short_origin(origin)))
        self._fill_numbers(draft)
        self._fill_nodes(draft)
        self._fill_plots(draft)
        editable, kind = self._editable, kind_of(draft)
        nodes = NODES.get(kind)
        for one in (self.add_node, self.remove_node):
            one.setVisible(nodes is not None)
            one.setEnabled(editable)
        if nodes is not None:
            self.add_node.setText(translate("materials editor", _ADD[kind]))
            self.remove_node.setText(translate("materials editor", _REMOVE[kind]))
        self.solve.setVisible(kind is MaterialKind.BLOCK)
        self.read.setVisible(bool(readable(draft)))
        self.read.setEnabled(editable)
        self.write.setVisible(bool(written(draft)))

    def _fill_numbers(self, draft: Material) -> None:
        fields = NUMBERS[kind_of(draft)]
        self.numbers.setVisible(bool(fields))
        self.numbers.fill(
            [self._line(one, number_text(draft, one)) for one in fields],
            [translate("materials editor", "value")],
            [[shown(one, number_text(draft, one), self._degrees)] for one in fields],
            [[choices_of(one, self._catalogue)] for one in fields],
            [
                [
                    translate("materials editor", "Expected is {expected}.").format(
                        expected=expected(one, self._degrees)
                    )
                ]
                for one in fields
            ],
            editable=self._editable,
        )

    def _line(self, field: Quantity, text: str = "") -> str:
        """Return what a field is called, with what it holds in other degrees if those are shown."""
        words = in_degrees(translate("materials form", field.words), self._degrees)
        other = beside(field, text, self._degrees)
        return f"{words} ({other})" if other else words

    def _fill_nodes(self, draft: Material) -> None:
        nodes = NODES.get(kind_of(draft))
        self.nodes.setVisible(nodes is not None)
        if nodes is None:
            return
        texts = node_texts(draft)
        heads = [self._line(one) for one in nodes.columns]
        row_word = translate("materials form", nodes.words[0])
        lines = []
        for at, row in enumerate(texts):
            # Where both degrees are shown, the other ones stand beside what is typed.
            pairs = zip(nodes.columns, row, strict=True)
            others = [other for one, text in pairs if (other := beside(one, text, self._degrees))]
            lines.append(", ".join((f"{row_word} {at + 1}", *others)))
            fields = zip(nodes.columns, row, strict=True)
            texts[at] = [shown(one, text, self._degrees) for one, text in fields]
        choices = [[choices_of(one, self._catalogue) for one in nodes.columns] for _ in texts]
        hints = [
            [
                translate("materials editor", "Expected is {expected}.").format(
                    expected=expected(one, self._degrees)
                )
                for one in nodes.columns
            ]
            for _ in texts
        ]
        if self._is_across:
            lines, heads = heads, lines
            texts, choices, hints = (
                [list(row) for row in zip(*texts, strict=True)],
                [list(row) for row in zip(*choices, strict=True)],
                [list(row) for row in zip(*hints, strict=True)],
            )
        self.nodes.fill(lines, heads, texts, choices, hints, editable=self._editable)

    def _fill_plots(self, draft: Material) -> None:
        try:
            plots = plots_of(draft, self._catalogue)
            self._plots = tuple(plot_in(plot, self._degrees) for plot in plots)
        except StainmapError as error:
            self._plots = ()
            self.note.warn(str(error))
        titles = [plot.title for plot in self._plots]
        if titles != [self.shown.itemText(at) for at in range(self.shown.count())]:
            self.shown.clear()
            self.shown.addItems(titles)
        self.shown.setVisible(len(titles) > 1)
        self._show_plot()

    def _show_plot(self) -> None:
        at = self.shown.currentIndex()
        self.plot.set_plot(self._plots[at] if 0 <= at < len(self._plots) else None)

    # --- what is typed ---------------------------------------------------------------------

    def _type_number(self, line: int, _column: int, text: str) -> None:
        draft = self._draft
        if draft is not None:
            field = NUMBERS[kind_of(draft)][line]
            self._change(lambda: with_number(draft, field, typed(field, text, self._degrees)))

    def _type_node(self, line: int, column: int, text: str) -> None:
        draft = self._draft
        if draft is not None:
            at, field = (column, line) if self._is_across else (line, column)
            one = NODES[kind_of(draft)].columns[field]
            said = typed(one, text, self._degrees)
            self._change(lambda: with_node(draft, at, field, said, self._catalogue))

    def _add_node(self) -> None:
        draft, at = self._draft, self.current_node
        if draft is not None and self._editable and kind_of(draft) in NODES:
            self._change(lambda: with_added_node(draft, at, self._catalogue))

    def _remove_node(self) -> None:
        draft, at = self._draft, self.current_node
        if draft is not None and self._editable and node_texts(draft):
            self._change(lambda: without_node(draft, at))

    def _choose_origin(self, word: str) -> None:
        draft = self._draft
        if draft is not None:
            self._change(lambda: with_origin(draft, _ORIGINS[word]))

    def _change(self, change: Callable[[], Material]) -> None:
        try:
            changed = change()
        except StainmapError as error:
            self.numbers.put_back()
            self.nodes.put_back()
            self.note.warn(str(error))
            return
        self.note.tell("")
        self.take_draft(changed)


def _button(text: str, call: Callable[[], object]) -> QPushButton:
    button = QPushButton(text)
    button.setAutoDefault(False)
    button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    button.clicked.connect(lambda _checked: call())
    return button
