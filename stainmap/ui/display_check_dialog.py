"""Three patches to judge the display by; what was seen is kept in the settings and shown."""

from __future__ import annotations

from datetime import datetime

import numpy as np
from PySide6.QtCore import QObject, QRect, QSettings, QSize, Qt, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QSpinBox, QWidget

from stainmap.app.display_check import (
    DARK_CODES,
    EVEN_GREY,
    STEPS_L,
    TOOTH_LAB,
    DisplayJudgement,
    judgement_from,
)
from stainmap.optics.colorimetry import lab_to_srgb
from stainmap.ui.asking import ask
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.look_bar import LookBar
from stainmap.ui.theme import font
from stainmap.words import marked, translate

KEY = "display/judgement"
_HIGH_PX, _SQUARE_PX = 96, 40
_NOT_YET = marked("display check dialog", "this display has not been judged yet")


def kept_judgement(settings: QSettings) -> DisplayJudgement | None:
    """Return what was seen last on this computer, or None."""
    return judgement_from(str(settings.value(KEY, "", type=str)))


class _Patch(QWidget):
    """A patch that is drawn pixel by pixel, whatever the scaling of the screen."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setFixedSize(QSize(420, _HIGH_PX))
        self.setAccessibleName(name)

    def _device(self) -> tuple[int, int]:
        ratio = self.devicePixelRatioF()
        return round(self.width() * ratio), round(self.height() * ratio)

    def _squares(self, count: int) -> list[QRect]:
        """Return places of squares in a row, in device pixels."""
        wide, high = self._device()
        side = round(_SQUARE_PX * self.devicePixelRatioF())
        step = wide / count
        top = (high - side) // 2
        return [QRect(round(step * (k + 0.5) - side / 2), top, side, side) for k in range(count)]

    def pixels(self) -> np.ndarray:
        """Return (h, w, 3) uint8, in device pixels."""
        raise NotImplementedError

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the pixels as they are."""
        pixels = np.ascontiguousarray(self.pixels())
        high, wide = pixels.shape[:2]
        image = QImage(pixels.tobytes(), wide, high, 3 * wide, QImage.Format.Format_RGB888).copy()
        image.setDevicePixelRatio(self.devicePixelRatioF())
        painter = QPainter(self)
        painter.drawImage(0, 0, image)
        painter.end()


class LinedPatch(_Patch):
    """Fine black and white lines around a plain grey."""

    def __init__(self) -> None:
        super().__init__(translate("display check dialog", "Lines around a grey"))
        self.grey = EVEN_GREY

    def set_grey(self, grey: int) -> None:
        """Draw another grey in the middle."""
        self.grey = grey
        self.update()

    def pixels(self) -> np.ndarray:
        """Return the lines with the grey in the middle."""
        wide, high = self._device()
        out = np.zeros((high, wide, 3), np.uint8)
        out[::2] = 255
        out[high // 4 : high - high // 4, wide // 3 : wide - wide // 3] = self.grey
        return out


class DarkPatch(_Patch):
    """Dark squares on black."""

    def __init__(self) -> None:
        super().__init__(translate("display check dialog", "Dark squares on black"))

    def pixels(self) -> np.ndarray:
        """Return black with its squares."""
        wide, high = self._device()
        out = np.zeros((high, wide, 3), np.uint8)
        for code, place in zip(DARK_CODES, self._squares(len(DARK_CODES)), strict=True):
            out[place.top() : place.bottom(), place.left() : place.right()] = code
        return out


class ToothPatch(_Patch):
    """A tooth colour with squares that are a little lighter."""

    def __init__(self) -> None:
        super().__init__(
            translate("display check dialog", "Slightly lighter squares on a tooth colour")
        )

    def pixels(self) -> np.ndarray:
        """Return the tooth colour with its squares."""
        wide, high = self._device()
        out = np.zeros((high, wide, 3), np.uint8)
        out[:] = _encoded(0.0)
        for step, place in zip(STEPS_L, self._squares(len(STEPS_L)), strict=True):
            out[place.top() : place.bottom(), place.left() : place.right()] = _encoded(step)
        return out


class DisplayCheckDialog(FormDialog):
    """Asks what is seen on three patches, and says what follows."""

    def __init__(self, settings: QSettings, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("display check dialog", "Check the display"),
            translate(
                "display check dialog",
                "Sit as you work, let the display warm up, turn off night colours. Whether its"
                " white"
                " is right no eye can tell: set it to D65 (6500 K).",
            ),
            parent,
        )
        self._settings = settings
        last = kept_judgement(settings)
        self.lines, self.dark, self.tooth = LinedPatch(), DarkPatch(), ToothPatch()
        self.grey = QSlider(Qt.Orientation.Horizontal)
        self.grey.setRange(120, 235)
        self.grey.setAccessibleName(translate("display check dialog", "Grey in the middle"))
        self.grey.valueChanged.connect(self.lines.set_grey)
        self.grey.setValue(EVEN_GREY if last is None else last.grey)
        self.dark_seen = _count(
            translate("display check dialog", "Dark squares seen"), len(DARK_CODES)
        )
        self.steps_seen = _count(
            translate("display check dialog", "Lighter squares seen"), len(STEPS_L)
        )
        if last is not None:
            self.dark_seen.setValue(last.dark_seen)
            self.steps_seen.setValue(last.steps_seen)
        self.add_note(
            translate(
                "display check dialog",
                "1  Screw up your eyes: move the slider until the grey vanishes in the lines.",
            )
        )
        self.add_widget(self.lines)
        self.add_widget(self.grey)
        self.add_note(
            translate("display check dialog", "2  How many squares stand out from the black?")
        )
        self.add_widget(_beside(self.dark, self.dark_seen))
        self.add_note(
            translate(
                "display check dialog",
                "3  How many squares are lighter than the tooth colour around them?",
            )
        )
        self.add_widget(_beside(self.tooth, self.steps_seen))
        self.verdict = QLabel()
        self.verdict.setFont(font(13, 500))
        self.verdict.setWordWrap(True)
        self.verdict.setAccessibleName(translate("display check dialog", "What follows"))
        self.add_widget(self.verdict)
        self.when = self.add_note(
            translate("display check dialog", _NOT_YET) if last is None else last.in_short
        )
        self.grey.valueChanged.connect(self._say)
        self.dark_seen.valueChanged.connect(self._say)
        self.steps_seen.valueChanged.connect(self._say)
        self._say()
        self.end()
        self.accepted.connect(self._keep)

    @property
    def judgement(self) -> DisplayJudgement:
        """What is seen now."""
        return DisplayJudgement(
            grey=self.grey.value(),
            dark_seen=self.dark_seen.value(),
            steps_seen=self.steps_seen.value(),
            day=datetime.now().astimezone().date().isoformat(),
        )

    def _say(self) -> None:
        self.verdict.setText(" ".join(self.judgement.sentences))

    def _keep(self) -> None:
        self._settings.setValue(KEY, self.judgement.to_text())


def _count(name: str, most: int) -> QSpinBox:
    box = QSpinBox()
    box.setRange(0, most)
    box.setValue(most)
    box.setAccessibleName(name)
    return box


def _beside(patch: QWidget, box: QSpinBox) -> QWidget:
    both = QWidget()
    row = QHBoxLayout(both)
    row.setContentsMargins(0, 0, 0, 0)
    row.addWidget(patch)
    row.addWidget(box, 0, Qt.AlignmentFlag.AlignVCenter)
    return both


def _encoded(step: float) -> list[int]:
    lightness, a, b = TOOTH_LAB
    rgb = np.clip(lab_to_srgb(np.array([[lightness + step, a, b]])), 0.0, 1.0)[0]
    return [int(value) for value in np.rint(rgb * 255.0)]


class DisplayDesk(QObject):
    """Opens the check, and says at the menu of lights what came of the last one.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(self, settings: QSettings, looks: LookBar, window: QWidget) -> None:
        super().__init__(window)
        self._settings, self._looks, self._window = settings, looks, window
        looks.check_asked.connect(self.open)
        self._show()

    def open(self) -> None:
        """Let the display be judged."""
        if ask(DisplayCheckDialog(self._settings, self._window)):
            self._show()
            judgement = kept_judgement(self._settings)
            if judgement is not None:
                self.said.emit(" ".join(judgement.sentences))

    def _show(self) -> None:
        judgement = kept_judgement(self._settings)
        self._looks.set_display(
            translate("display check dialog", _NOT_YET) if judgement is None else judgement.in_short
        )
