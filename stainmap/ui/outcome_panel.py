"""The outcome: per area the predicted colour beside the wanted one, and what the figures mean."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QVBoxLayout, QWidget

from stainmap.model.colour import Colour
from stainmap.model.zone import Area
from stainmap.optics.colorimetry import lab_to_srgb, white_point
from stainmap.ui.marks import Align, paint_text, paint_touching_swatches, signed
from stainmap.ui.plate import link_button
from stainmap.ui.section import PADDING, SectionHead, TableNote
from stainmap.ui.theme import tones
from stainmap.words import translate, value_word

if TYPE_CHECKING:
    from stainmap.planning.out_of_reach import OutOfReach
    from stainmap.planning.outcome import AreaOutcome

_LEAST_ROW_PX, _LINE_PX, _HEAD_PX = 40, 13.5, 24
_SWATCH = 52.0
Line = tuple[str, list[str], bool]


def screen_colour(colour: Colour) -> str:
    """Return a colour as ``#rrggbb`` for the screen, as an eye adapted to its light sees it."""
    how = colour.measurement
    white = white_point(how.illuminant, how.observer_degrees)
    red, green, blue = (float(v) for v in lab_to_srgb(colour.lab, white))
    return QColor.fromRgbF(red, green, blue).name()


class CautionLine(QWidget):
    """What the figures are worth, with the caution bar before it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(42)
        self._title, self._detail = "", ""

    def set_text(self, title: str, detail: str) -> None:
        """Show a sentence and the figures that go with it."""
        self._title, self._detail = title, detail
        self.setAccessibleName(f"{title} {detail}")
        self.setToolTip(f"{title} {detail}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw plate, bar and two lines."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(t.field))
        painter.drawRoundedRect(QRectF(self.rect()), 4, 4)
        painter.fillRect(QRectF(0, 0, 3, self.height()), QColor(t.caution))
        room = self.width() - 20.0
        paint_text(painter, (12, 17), self._title, t.ink, weight=600, width=room)
        paint_text(painter, (12, 34), self._detail, t.soft, px=12, width=room)
        painter.end()


class OutcomeRow(QWidget):
    """One area's swatches and figures; a click or Enter asks for the area."""

    asked_for = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self._outcome: AreaOutcome | None = None
        self._lines: list[Line] = []

    @property
    def area(self) -> Area | None:
        """The area that is shown."""
        return None if self._outcome is None else self._outcome.area

    def set_outcome(
        self,
        outcome: AreaOutcome,
        *,
        calibrated: bool = False,
        beyond: OutOfReach | None = None,
    ) -> None:
        """Show an area.

        Parameters
        ----------
        calibrated
            Whether there are words for its difference to what is wanted.
        beyond
            Why no coats reach what is wanted of it.
        """
        self._outcome = outcome
        self._lines = _lines(outcome)
        words = _verdict(outcome) if calibrated else ""
        if beyond is not None:
            words = translate(
                "outcome panel", "not reachable: bare block {axis} {bare:.1f}"
            ).format(axis=beyond.axis, bare=beyond.bare)
        if words:
            self._lines.append((words, [], True))
        self.setFixedHeight(max(_LEAST_ROW_PX, round(27 + _LINE_PX * len(self._lines))))
        self.setAccessibleName(_spoken(outcome, self._lines))
        self.setToolTip(_hint(outcome))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw swatches, name and the lines of figures in the same columns."""
        outcome = self._outcome
        if outcome is None:
            return
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(QRectF(0, 0, self.width(), 1), QColor(t.hair))
        shown = screen_colour(outcome.predicted)
        unlike = outcome.wanted is None or bool(outcome.refused)
        wanted = shown if unlike or outcome.wanted is None else screen_colour(outcome.wanted)
        swatch = QRectF(0, 7, _SWATCH, self.height() - 14.0)
        paint_touching_swatches(painter, swatch, wanted, shown)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        columns = _columns(self.width())
        x, y = _SWATCH + 10.0, 20.0
        room = columns[0] - 34 - x
        paint_text(painter, (x, y), outcome.label, t.ink, weight=600, width=room)
        distance = outcome.delta_e_00
        figures = [*_absolute(outcome.predicted), "" if distance is None else f"{distance:.1f}"]
        _paint_figures(painter, columns, y, figures, t.ink, 13, 500)
        y += 1.0
        for name, figures, strong in self._lines:
            y += _LINE_PX
            words = t.soft if figures else t.ink
            paint_text(painter, (x, y), name, words, px=12, width=self.width() - x)
            _paint_figures(painter, columns, y, figures, t.ink if strong else t.soft, 12, 400)
        if self.hasFocus():
            painter.setPen(QPen(QColor(t.accent), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 2, -1, -1), 3, 3)
        painter.end()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Ask for the area."""
        if self._outcome is not None and self.rect().contains(event.position().toPoint()):
            self.asked_for.emit(self._outcome.area)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Ask for the area with Enter or the space bar."""
        keys = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)
        if self._outcome is not None and event.key() in keys:
            self.asked_for.emit(self._outcome.area)
        else:
            super().keyPressEvent(event)


class _ColumnHeads(QWidget):
    """Names of the columns of figures."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(_HEAD_PX)
        self.setAccessibleName(translate("outcome panel", "wanted and predicted; L*, C*, h, dE00"))
        self.targets = True

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw them over their columns."""
        painter = QPainter(self)
        t = tones(self)
        y = _HEAD_PX - 7.0
        words = (
            translate("outcome panel", "wanted | predicted")
            if self.targets
            else translate("outcome panel", "predicted")
        )
        paint_text(painter, (0, y), words, t.soft, px=11)
        names = ["L*", "C*", "h"] + (["dE00"] if self.targets else [])
        for x, name in zip(_columns(self.width()), names, strict=False):
            paint_text(painter, (x, y), name, t.soft, px=11, align=Align.AlignRight)
        painter.end()


class OutcomePanel(QWidget):
    """All areas' outcomes under each other.

    Signals
    -------
    area_asked_for
        Area whose row was clicked: turn the crown to it.
    change_asked
        Somebody wants to say what is wanted.
    """

    area_asked_for = Signal(object)
    change_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("outcome panel", "Outcome"))
        column = QVBoxLayout(self)
        column.setContentsMargins(PADDING, 14, PADDING, 8)
        column.setSpacing(0)
        self.head = SectionHead(translate("outcome panel", "Outcome"))
        self.caution = CautionLine()
        self._heads = _ColumnHeads()
        column.addWidget(self.head)
        column.addSpacing(8)
        column.addWidget(self.caution)
        column.addSpacing(4)
        column.addWidget(self._heads)
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        column.addLayout(self._list)
        self.reach = TableNote()
        self.reach.hide()
        column.addSpacing(4)
        column.addWidget(self.reach)
        self.change = link_button(translate("outcome panel", "say what is wanted"))
        self.change.clicked.connect(self.change_asked)
        column.addWidget(self.change)
        self._rows: list[OutcomeRow] = []
        self._shown: tuple[AreaOutcome, ...] = ()
        self._calibrated = False
        self._beyond: dict[Area, OutOfReach] = {}

    def set_out_of_reach(self, found: Sequence[OutOfReach]) -> None:
        """Say of these areas that no coats bring them to what is wanted."""
        beyond = {one.area: one for one in found}
        if beyond != self._beyond:
            self._beyond = beyond
            self._show_rows()
        labels = ", ".join(one.label for one in found)
        self.reach.setVisible(bool(found))
        if found:
            self.reach.warn(
                translate(
                    "outcome panel",
                    "Not reachable in {areas}: stain only lowers value and adds chroma.",
                ).format(areas=labels)
            )

    def set_outcomes(self, outcomes: Sequence[AreaOutcome], *, calibrated: bool = False) -> None:
        """Show these areas, in this order.

        Parameters
        ----------
        calibrated
            Whether there are words for their differences to what is wanted.
        """
        self._shown, self._calibrated = tuple(outcomes), calibrated
        if outcomes:
            how = outcomes[0].predicted.measurement
            degrees = f"{how.observer_degrees}\N{DEGREE SIGN}"
            self.head.set_remark(f"{how.geometry}, {how.illuminant}, {degrees}")
        else:
            self.head.set_remark("")
        self._heads.targets = any(one.wanted is not None for one in outcomes)
        self._heads.setVisible(bool(outcomes))
        self.change.setVisible(bool(outcomes))
        has_target = self._heads.targets
        self.change.setText(
            translate("outcome panel", "change what is wanted")
            if has_target
            else translate("outcome panel", "say what is wanted")
        )
        self._heads.update()
        while len(self._rows) < len(outcomes):
            row = OutcomeRow()
            row.asked_for.connect(self.area_asked_for)
            self._list.addWidget(row)
            self._rows.append(row)
        self._show_rows()

    def _show_rows(self) -> None:
        for k, row in enumerate(self._rows):
            row.setVisible(k < len(self._shown))
            if k < len(self._shown):
                one = self._shown[k]
                row.set_outcome(one, calibrated=self._calibrated, beyond=self._beyond.get(one.area))


def _columns(width: int) -> tuple[float, float, float, float]:
    """Return the right edges of L*, C*, h and dE00."""
    return (width - 118.0, width - 74.0, width - 42.0, float(width))


def _paint_figures(
    painter: QPainter,
    columns: Sequence[float],
    y: float,
    figures: Sequence[str],
    colour: str,
    px: int,
    weight: int,
) -> None:
    for x, figure in zip(columns, figures, strict=False):
        paint_text(painter, (x, y), figure, colour, px=px, weight=weight, align=Align.AlignRight)


def _absolute(colour: Colour) -> tuple[str, str, str]:
    return (f"{colour.lightness:.1f}", f"{colour.chroma:.1f}", f"{colour.hue_degrees:.0f}")


def _lines(outcome: AreaOutcome) -> list[Line]:
    """Return the lines below an area's own figures: name, figures, whether in full ink."""
    lines: list[Line] = []
    if outcome.predicted_low is not None:
        lines.append(
            (
                translate("outcome panel", "fewest coats"),
                list(_absolute(outcome.predicted_low)),
                True,
            )
        )
    if outcome.offset_from_body is not None:
        lines.append(
            (
                translate("outcome panel", "from body"),
                [signed(v) for v in outcome.offset_from_body],
                True,
            )
        )
    if outcome.wanted_offset is not None:
        wanted = translate("outcome panel", "wanted")
        lines.append((wanted, [signed(v) for v in outcome.wanted_offset], False))
    elif outcome.wanted is not None and not outcome.refused:
        wanted = translate("outcome panel", "wanted")
        lines.append((wanted, list(_absolute(outcome.wanted)), False))
    return lines


def _verdict(outcome: AreaOutcome) -> str:
    """Return what the difference to what is wanted means, once there is a calibration."""
    from stainmap.predict.uncertainty import inside_uncertainty, verdict  # noqa: PLC0415

    if outcome.wanted is None or outcome.delta_e_00 is None or outcome.refused:
        return ""
    gaps = zip(outcome.predicted.lab, outcome.wanted.lab, strict=True)
    sure = zip(gaps, outcome.plus_minus, outcome.difference_sd, strict=True)
    if all(inside_uncertainty(one - other, sd, its) for (one, other), sd, its in sure):
        return translate("outcome panel", "inside the uncertainty")
    return value_word(verdict(outcome.delta_e_00, calibrated=True))


def _hint(outcome: AreaOutcome) -> str:
    """Return what a row says when it is pointed at."""
    names = ("L*", "a*", "b*")
    spread = zip(names, outcome.plus_minus, strict=True)
    said = ", ".join(f"{name} \N{PLUS-MINUS SIGN}{sd:.1f}" for name, sd in spread)
    parts = [translate("outcome panel", "{figures} (one standard deviation).").format(figures=said)]
    if outcome.refused:
        parts.append(outcome.refused)
    parts += [
        translate("outcome panel", "Wanted colour: {conversion}.").format(conversion=one)
        for one in outcome.conversions
    ]
    return " ".join([*parts, translate("outcome panel", "Click to turn the crown to this area.")])


def _spoken(outcome: AreaOutcome, lines: Sequence[Line]) -> str:
    names = ("L*", "C*", "h")
    parts = [
        (translate("outcome panel", "predicted"), list(_absolute(outcome.predicted)), True),
        *lines,
    ]
    said = [
        f"{name} {', '.join(f'{n} {v}' for n, v in zip(names, figures, strict=False))}".strip()
        for name, figures, _ in parts
    ]
    if outcome.delta_e_00 is not None:
        said.append(f"dE00 {outcome.delta_e_00:.1f}")
    return f"{outcome.label}: " + "; ".join(said)
