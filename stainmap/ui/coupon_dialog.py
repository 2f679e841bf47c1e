"""What a blank coupon told about a furnace programme."""

from __future__ import annotations

from datetime import UTC, datetime

from PySide6.QtWidgets import QCheckBox, QLabel, QLineEdit, QPushButton, QWidget

from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.material import BlankCoupon
from stainmap.predict.sintering import factor_from_coupon
from stainmap.ui.form_dialog import FormDialog, choice_box, number_box


class CouponDialog(FormDialog):
    """A factor on scattering, typed in or worked out from one reading of an unstained coupon.

    Parameters
    ----------
    case
        Its block is what the coupon is cut from, its programme what it was sintered in.
    """

    def __init__(self, case: Case, parent: QWidget | None = None) -> None:
        super().__init__(
            f"Blank coupon, programme {case.programme}",
            "An unstained coupon of the block, sintered in this programme, replaces the assumed"
            " effect of the programme by a measured one.",
            parent,
        )
        self._case = case
        programme = case.materials.programme(case.programme)
        old = programme.coupon
        self.used = QCheckBox("use a measured factor")
        self.used.setChecked(old is not None)
        self.add_row("", self.used)
        self.factor = number_box(
            "Factor on scattering", programme.effective_scattering_factor, 0.7, 1.8, step=0.01
        )
        self.add_row(f"Factor ({programme.scattering_factor:g} assumed)", self.factor)
        self.read_by = QLineEdit("" if old is None else old.read_by)
        self.read_by.setAccessibleName("Read by")
        self.read_on = QLineEdit(
            datetime.now(UTC).date().isoformat() if old is None else old.read_on
        )
        self.read_on.setAccessibleName("Read on")
        self.add_row("Read by", self.read_by)
        self.add_row("Read on", self.read_on)
        self.add_heads("work it out from one reading, 45/0, D65, 2\N{DEGREE SIGN}")
        layer = case.materials.block(case.plan.block).layers[0]
        nominal = layer.nominal
        self.lab = [
            number_box(f"Coupon {axis}", value, low, high, decimals=1, step=0.5)
            for axis, value, low, high in (
                ("L*", nominal.lightness, 0.0, 100.0),
                ("a*", nominal.a, -30.0, 30.0),
                ("b*", nominal.b, -20.0, 60.0),
            )
        ]
        self.add_row("L*, a*, b*", *self.lab)
        stumps = [stump.name for stump in case.materials.stumps]
        self.backing = choice_box("Coupon lies on", stumps, nominal.measurement.backing)
        self.add_row("Lies on", self.backing)
        self.thickness_mm = number_box("Coupon thickness", 1.0, 0.3, 4.0, step=0.1)
        self.add_row("Thickness, mm sintered", self.thickness_mm)
        self.coupled = QCheckBox("joined by gel or cement")
        self.add_row("", self.coupled)
        work = QPushButton("Work the factor out")
        work.setAutoDefault(False)
        work.clicked.connect(self.work_out)
        self.add_row("", work)
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.add_widget(self.said)
        self.end()

    def work_out(self) -> None:
        """Put the factor that the reading tells into its field, or say why there is none."""
        light, a, b = (box.value() for box in self.lab)
        case = self._case
        layer = case.materials.block(case.plan.block).layers[0]
        try:
            reading = Colour(
                lightness=light,
                a=a,
                b=b,
                measurement=Measurement(backing=self.backing.currentText()),
            )
            found = factor_from_coupon(
                layer,
                case.materials,
                (reading,),
                self.thickness_mm.value(),
                coupled=self.coupled.isChecked(),
            )
        except StainmapError as error:
            self.said.setText(str(error))
            return
        self.factor.setValue(found.scattering_factor)
        self.used.setChecked(True)
        self.said.setText(
            f"Scattering {found.scattering_factor:.2f} times that of the slow programme;"
            f" dE00 {found.remaining_de00:.1f} remains."
        )

    def accept(self) -> None:
        """Close only with a coupon that somebody stands for."""
        try:
            _ = self.coupon
        except StainmapError as error:
            self.said.setText(str(error))
            return
        super().accept()

    @property
    def coupon(self) -> BlankCoupon | None:
        """The coupon as it is set now, or None for the assumed factor."""
        if not self.used.isChecked():
            return None
        return BlankCoupon(
            scattering_factor=self.factor.value(),
            read_by=self.read_by.text().strip(),
            read_on=self.read_on.text().strip(),
        )
