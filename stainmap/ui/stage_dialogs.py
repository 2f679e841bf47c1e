"""The pages of the run's later stages: order of painting, drying, furnace and cooling."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Signal
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from stainmap.model.case import Case
from stainmap.model.material import SinteringProgramme
from stainmap.model.zone import area_label
from stainmap.planning.bench_order import USUAL_ORDER, order_remarks
from stainmap.planning.mixing import units_painted
from stainmap.planning.schedule import (
    DRY_TEMPERATURE_C,
    SOAK_MINUTES,
    Drying,
    coats_to_paint,
    drying,
    painting_minutes,
    round_minutes,
    sintering_minutes,
)
from stainmap.planning.strength_class import STATEMENT, strength_class
from stainmap.predict.sintering import duration_text, programme_corners, time_class
from stainmap.ui.colour_table import ColourTable
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.marks import Align, paint_text
from stainmap.ui.theme import tones
from stainmap.units import TemperatureUnit
from stainmap.words import translate, value_word

_CURVE_PX = QSize(460, 190)


class OrderDialog(FormDialog):
    """Steps in the order they are painted, how long they take, and whether that order is usual."""

    def __init__(self, case: Case, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("stage dialogs", "Coats"), translate("bench order", USUAL_ORDER), parent
        )
        self.table = ColourTable(
            (
                translate("stage dialogs", "step"),
                translate("stage dialogs", "areas"),
                translate("stage dialogs", "units"),
                translate("stage dialogs", "rounds"),
                translate("stage dialogs", "minutes"),
            )
        )
        self.table.set_rows([_step_row(case, number) for number in _numbers(case)])
        self.add_widget(self.table)
        remarks = order_remarks(case) or (translate("stage dialogs", "The plan keeps to it."),)
        self.remarks = self.add_note(" ".join(remarks))
        self.add_note(
            translate(
                "stage dialogs",
                "All coats take {time}, assumed: a minute of brush for each unit and {soak:g} of"
                " soak, in which other units are painted.",
            ).format(time=duration_text(painting_minutes(case)), soak=SOAK_MINUTES)
        )
        self.end(only_close=True)


class DryingDialog(FormDialog):
    """How the work is dried."""

    def __init__(
        self,
        case: Case,
        parent: QWidget | None = None,
        *,
        degrees: TemperatureUnit = TemperatureUnit.BOTH,
    ) -> None:
        super().__init__(
            translate("stage dialogs", "Dry"),
            translate(
                "stage dialogs",
                "Sintering wet work cracks it. One single unit dries 10 min at"
                " {temperature}, common practice; 5 min for each further unit and 10 for a bridge"
                " are assumed. The makers' instructions for use decide.",
            ).format(temperature=degrees.text(DRY_TEMPERATURE_C)),
            parent,
        )
        self.table = ColourTable(("", translate("stage dialogs", "here")))
        self.table.set_rows(_drying_rows(case, drying(case), degrees))
        self.add_widget(self.table)
        self.add_note(
            translate(
                "stage dialogs",
                "A furnace with a drying stage of its own: give its programme own_drying_minutes"
                " among the laboratory's materials.",
            )
        )
        self.end(only_close=True)


class FurnaceDialog(FormDialog):
    """The programme as a curve and as corners; from here furnaces can be compared.

    Signals
    -------
    compare_asked
        The plan is to be seen in another programme.
    """

    compare_asked = Signal()

    def __init__(
        self,
        case: Case,
        parent: QWidget | None = None,
        *,
        degrees: TemperatureUnit = TemperatureUnit.BOTH,
    ) -> None:
        programme = case.materials.programme(case.programme)
        sinter, cool = sintering_minutes(programme)
        super().__init__(
            translate("stage dialogs", "Sinter and cool"),
            translate(
                "stage dialogs",
                "Programme {name}: {minutes} from cold to opening, {sinter} up to the end of "
                "the last hold and {cool} of cooling; by its time it counts as {time_class}.",
            ).format(
                name=programme.name,
                minutes=duration_text(programme.minutes),
                sinter=duration_text(sinter),
                cool=duration_text(cool),
                time_class=value_word(time_class(programme.minutes)),
            ),
            parent,
        )
        self.curve = FurnaceCurve(programme, degrees)
        self.add_widget(self.curve)
        self.table = ColourTable(
            (
                translate("stage dialogs", "to"),
                translate("stage dialogs", "within"),
                translate("stage dialogs", "at"),
                translate("stage dialogs", "per minute"),
            )
        )
        self.table.set_rows(_corner_rows(programme, degrees))
        self.add_widget(self.table)
        block = case.materials.block(case.plan.block)
        end_c = programme.segments[-1].target_c
        self.add_note(
            translate(
                "stage dialogs", "Do not open above {temperature}. {name}: {strength}. {statement}"
            ).format(
                temperature=degrees.text(end_c),
                name=block.name,
                strength=strength_class(block),
                statement=translate("strength class", STATEMENT),
            )
        )
        others = [one for one in case.materials.programmes if one.name != programme.name]
        self.compare = QPushButton(translate("stage dialogs", "Compare furnaces..."))
        self.compare.setAutoDefault(False)
        self.compare.setEnabled(bool(others))
        self.compare.clicked.connect(self._compare)
        self.add_widget(self.compare)
        self.end(only_close=True)

    def _compare(self) -> None:
        self.accept()
        self.compare_asked.emit()


class FurnaceCurve(QWidget):
    """Temperature over time, with the cooling drawn apart."""

    def __init__(
        self, programme: SinteringProgramme, degrees: TemperatureUnit, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._programme, self._degrees = programme, degrees
        self.setFixedHeight(_CURVE_PX.height())
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(translate("stage dialogs", "Furnace curve"))
        self.setAccessibleDescription(
            "; ".join(f"{row[0]} {row[1]}" for row in _corner_rows(programme, degrees))
        )

    def sizeHint(self) -> QSize:
        """Return the usual size."""
        return _CURVE_PX

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw axes, hours, temperatures and the curve."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        times, temperatures = programme_corners(self._programme)
        field = QRectF(60, 10, self.width() - 74, self.height() - 38)
        degrees = self._degrees
        end, between = float(times[-1]), 1000 if degrees is TemperatureUnit.FAHRENHEIT else 500
        # The top of the axis, in the degrees that it counts.
        top = 100 * (int(degrees.of(self._programme.peak_c)) // 100 + 1)

        def place_of(minute: float, number: float) -> QPointF:
            return QPointF(
                field.left() + minute / end * field.width(),
                field.bottom() - number / top * field.height(),
            )

        def at(minute: float, celsius: float) -> QPointF:
            return place_of(minute, degrees.of(celsius))

        for number in range(0, top, between):
            painter.setPen(QPen(QColor(t.line), 1))
            painter.drawLine(place_of(0.0, number), place_of(end, number))
            place = place_of(0.0, number)
            words = f"{number} {degrees.axis_sign}"
            paint_text(
                painter,
                (place.x() - 6, place.y() + 4),
                words,
                t.soft,
                px=11,
                align=Align.AlignRight,
            )
        for minute in _ticks(end):
            place = place_of(minute, 0.0)
            words = duration_text(minute) if minute else "0"
            middle = (place.x(), field.bottom() + 18)
            paint_text(painter, middle, words, t.soft, px=11, align=Align.AlignHCenter)
        path = QPainterPath(at(0.0, float(temperatures[0])))
        for minute, celsius in zip(times[1:].tolist(), temperatures[1:].tolist(), strict=True):
            path.lineTo(at(minute, celsius))
        painter.setPen(QPen(QColor(t.ink), 2))
        painter.drawPath(path)
        sinter, cool = sintering_minutes(self._programme)
        if cool:
            painter.setPen(QPen(QColor(t.soft), 1))
            painter.drawLine(place_of(sinter, 0.0), place_of(sinter, top))
            place = at(sinter, 250.0)
            paint_text(
                painter,
                (place.x() + 6, place.y() + 4),
                translate("stage dialogs", "cool"),
                t.soft,
                px=11,
            )
        painter.end()


def _ticks(end_minutes: float) -> Sequence[float]:
    """Return some round times from 0 on, five to nine of them."""
    for step in (5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0):
        if end_minutes / step <= 9.0:
            break
    return [step * k for k in range(int(end_minutes / step) + 1)]


def _numbers(case: Case) -> range:
    return range(1, len(case.plan.steps) + 1)


def _step_row(case: Case, number: int) -> tuple[str, ...]:
    step = case.plan.steps[number - 1]
    front = bool(case.units) and case.units[0].tooth.is_front
    areas = [f"{area_label(entry.area, front=front)} {entry.coats}" for entry in step.areas]
    areas += [
        translate("stage dialogs", "streaks from {area}").format(
            area=area_label(one.area, front=front)
        )
        for one in step.streaks
    ]
    areas += [translate("stage dialogs", "brushed by hand")] if step.brushed is not None else []
    units, rounds = units_painted(case, (number,)), coats_to_paint(step)
    return (
        f"{number}  {case.plan.liquid_of(step)}",
        _in_lines(areas) or translate("stage dialogs", "nothing yet"),
        " ".join(str(unit.tooth.number) for unit in units) or translate("stage dialogs", "none"),
        str(rounds),
        f"{rounds * round_minutes(len(units)):.0f}",
    )


def _in_lines(words: Sequence[str], each: int = 3) -> str:
    rows = [", ".join(words[start : start + each]) for start in range(0, len(words), each)]
    return ",\n".join(rows)


def _drying_rows(case: Case, dried: Drying, degrees: TemperatureUnit) -> list[tuple[str, str]]:
    units = max(len(case.units), 1)
    rows = [
        (
            translate("stage dialogs", "units"),
            translate("stage dialogs", "{units}, a bridge").format(units=units)
            if units > 1
            else "1",
        )
    ]
    if dried.in_furnace:
        rows.append(
            (
                translate("stage dialogs", "where"),
                translate("stage dialogs", "in the furnace, by {programme}").format(
                    programme=case.programme
                ),
            )
        )
    else:
        rows.append(
            (
                translate("stage dialogs", "where"),
                translate("stage dialogs", "oven, {temperature}").format(
                    temperature=degrees.text(dried.temperature_c or 0.0)
                ),
            )
        )
    rows.append((translate("stage dialogs", "how long"), duration_text(dried.minutes)))
    return rows


def _corner_rows(
    programme: SinteringProgramme, degrees: TemperatureUnit
) -> list[tuple[str, str, str, str]]:
    rows, before, passed = [], programme.start_c, 0.0
    for segment in programme.segments:
        rise = (segment.target_c - before) / segment.minutes
        passed += segment.minutes
        sign = "+" if rise > 0.0 else "\N{MINUS SIGN}"
        rows.append(
            (
                degrees.text(segment.target_c),
                duration_text(segment.minutes),
                duration_text(passed),
                translate("stage dialogs", "hold")
                if rise == 0.0
                else f"{sign}{degrees.text_of_difference(rise)}",
            )
        )
        before = segment.target_c
    return rows
