"""The card with the sliders of the zones: neck, cusps, fissures."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QVBoxLayout, QWidget

from stainmap.model.zone_sliders import CUSP_DESCENT, FISSURE_WIDTH, NECK_CLIMB, ZoneSliders
from stainmap.ui.plate import Plate, link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.words import marked, translate

CARD_PX = 300
_STEP = 0.01
_PAGE = 5
_USUAL = ZoneSliders()
_PAINTED_STAYS = marked("zone sliders", "What was painted by hand stays.")


class ZoneSlider(QWidget):
    """A name, a figure in per cent and a slider for it.

    Signals
    -------
    moved
        The slider stands elsewhere.
    let_go
        The hand has left it.
    """

    moved = Signal()
    let_go = Signal()

    def __init__(self, name: str, of_what: str, ends: tuple[float, float]) -> None:
        super().__init__()
        self._of_what = of_what
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        head = QHBoxLayout()
        self._name, self._figure = SoftLabel(name), QLabel()
        self._figure.setFont(font(12, 500))
        head.addWidget(self._name)
        head.addStretch(1)
        head.addWidget(self._figure)
        column.addLayout(head)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(round(ends[0] / _STEP), round(ends[1] / _STEP))
        self.slider.setPageStep(_PAGE)
        self.slider.setFixedHeight(18)
        column.addWidget(self.slider)
        self.set_name(name)
        self.slider.valueChanged.connect(self._say)
        self.slider.sliderReleased.connect(self.let_go)

    def set_name(self, name: str) -> None:
        """Name it otherwise, as for a front tooth."""
        self._name.setText(name)
        self.slider.setAccessibleName(
            translate("zone sliders", "{name}, per cent {of_what}").format(
                name=name, of_what=self._of_what
            )
        )
        self._show()

    @property
    def share(self) -> float:
        """Where it stands."""
        return round(self.slider.value() * _STEP, 2)

    def set_share(self, share: float) -> None:
        """Put it somewhere without a signal."""
        self.slider.blockSignals(True)
        self.slider.setValue(round(share / _STEP))
        self.slider.blockSignals(False)
        self._show()

    def _say(self) -> None:
        self._show()
        self.moved.emit()

    def _show(self) -> None:
        self._figure.setText(f"{self.slider.value()} % {self._of_what}")


class ZoneSlidersCard(Plate):
    """Three sliders that say how far the proposed zones reach.

    Signals
    -------
    moved
        A slider moves: the `ZoneSliders` as they stand.
    let_go
        The hand has left a slider.
    closed
        Somebody is done with them.
    """

    moved = Signal(object)
    let_go = Signal()
    closed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("zone sliders", "How far the zones reach"))
        self.setFixedWidth(CARD_PX)
        head = QHBoxLayout()
        title = QLabel(translate("zone sliders", "Zones"))
        title.setFont(font(15, 600))
        self.usual, self.close_button = (
            link_button(translate("zone sliders", "usual")),
            link_button(translate("zone sliders", "done")),
        )
        self.usual.setToolTip(translate("zone sliders", "Back to how far the zones usually reach"))
        self.usual.clicked.connect(self._take_usual)
        self.close_button.clicked.connect(self.closed)
        head.addWidget(title, 1)
        head.addWidget(self.usual)
        head.addSpacing(12)
        head.addWidget(self.close_button)
        self.body.addLayout(head)
        self.neck = ZoneSlider(
            translate("zone sliders", "neck climbs"),
            translate("zone sliders", "of the wall"),
            NECK_CLIMB,
        )
        self.cusps = ZoneSlider(
            translate("zone sliders", "cusps come down"),
            translate("zone sliders", "of the wall"),
            CUSP_DESCENT,
        )
        self.fissures = ZoneSlider(
            translate("zone sliders", "fissures are wide"),
            translate("zone sliders", "of their valleys"),
            FISSURE_WIDTH,
        )
        self._note = SoftLabel(translate("zone sliders", _PAINTED_STAYS))
        for row in (self.neck, self.cusps, self.fissures):
            row.moved.connect(self._tell)
            row.let_go.connect(self.let_go)
            self.body.addWidget(row)
        self.body.addWidget(self._note)

    @property
    def sliders(self) -> ZoneSliders:
        """The sliders as they stand."""
        return ZoneSliders(
            neck_climb=self.neck.share,
            cusp_descent=self.cusps.share,
            fissure_width=self.fissures.share,
        )

    def set_sliders(self, sliders: ZoneSliders) -> None:
        """Put the sliders somewhere without a signal."""
        self.neck.set_share(sliders.neck_climb)
        self.cusps.set_share(sliders.cusp_descent)
        self.fissures.set_share(sliders.fissure_width)

    def set_kind(self, *, front: bool, fissures: bool) -> None:
        """Name the sliders for the teeth of the case; front teeth alone have no fissures."""
        self.cusps.set_name(
            translate("zone sliders", "incisal edge comes down")
            if front
            else translate("zone sliders", "cusps come down")
        )
        self.fissures.setVisible(fissures)
        self.fit()

    def set_ready(self, ready: bool, note: str = "") -> None:
        """Let the sliders be moved, or say what is waited for."""
        for row in (self.neck, self.cusps, self.fissures):
            row.setEnabled(ready)
        self.usual.setEnabled(ready)
        self._note.setText(note or translate("zone sliders", _PAINTED_STAYS))

    @property
    def is_held(self) -> bool:
        """True while the hand is on a slider."""
        return any(row.slider.isSliderDown() for row in (self.neck, self.cusps, self.fissures))

    def _tell(self) -> None:
        self.moved.emit(self.sliders)

    def _take_usual(self) -> None:
        self.set_sliders(_USUAL)
        self._tell()
        self.let_go.emit()
