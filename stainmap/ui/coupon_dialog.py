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
from stainmap.words import translate


class CouponDialog(FormDialog):
    """A factor on scattering, typed in or worked out from one reading of an unstained coupon.

    Parameters
    ----------
    case
        Its block is what the coupon is cut from, its programme what it was sintered in.
    """

    def __init__(self, case: Case, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("coupon dialog", "Blank coupon, programme {programme}").format(
                programme=case.programme
            ),
            translate(
                "coupon dialog",
                "An unstained coupon of the block, sintered in this programme, replaces the assumed"
                " effect of the programme by a measured one.",
            ),
            parent,
        )
        self._case = case
        programme = case.materials.programme(case.programme)
        old = programme.coupon
        self.used = QCheckBox(translate("coupon dialog", "use a measured factor"))
        self.used.setChecked(old is not None)
        self.add_row("", self.used)
        self.factor = number_box(
            translate("coupon dialog", "Factor on scattering"),
            programme.effective_scattering_factor,
            0.7,
            1.8,
            step=0.01,
        )
        self.add_row(
            translate("coupon dialog", "Factor ({scattering_factor:g} assumed)").format(
                scattering_factor=programme.scattering_factor
            ),
            self.factor,
        )
        self.read_by = QLineEdit("" if old is None else old.read_by)
        self.read_by.setAccessibleName(translate("coupon dialog", "Read by"))
        self.read_on = QLineEdit(
            datetime.now(UTC).date().isoformat() if old is None else old.read_on
        )
        self.read_on.setAccessibleName(translate("coupon dialog", "Read on"))
        self.add_row(translate("coupon dialog", "Read by"), self.read_by)
        self.add_row(translate("coupon dialog", "Read on"), self.read_on)
        self.add_heads(translate("coupon dialog", "work it out from one reading, 45/0, D65, 2°"))
        layer = case.materials.block(case.plan.block).layers[0]
        nominal = layer.nominal
        self.lab = [
            number_box(
                translate("coupon dialog", "Coupon {axis}").format(axis=axis),
                value,
                low,
                high,
                decimals=1,
                step=0.5,
            )
            for axis, value, low, high in (
                ("L*", nominal.lightness, 0.0, 100.0),
                ("a*", nominal.a, -30.0, 30.0),
                ("b*", nominal.b, -20.0, 60.0),
            )
        ]
        self.add_row("L*, a*, b*", *self.lab)
        stumps = [stump.name for stump in case.materials.stumps]
        self.backing = choice_box(
            translate("coupon dialog", "Coupon lies on"), stumps, nominal.measurement.backing
        )
        self.add_row(translate("coupon dialog", "Lies on"), self.backing)
        self.thickness_mm = number_box(
            translate("coupon dialog", "Coupon thickness"), 1.0, 0.3, 4.0, step=0.1
        )
        self.add_row(translate("coupon dialog", "Thickness, mm sintered"), self.thickness_mm)
        self.coupled = QCheckBox(translate("coupon dialog", "joined by gel or cement"))
        self.add_row("", self.coupled)
        work = QPushButton(translate("coupon dialog", "Work the factor out"))
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
            translate(
                "coupon dialog",
                "Scattering {scattering_factor:.2f} times that of the slow programme; dE00 "
                "{remaining_de00:.1f} remains.",
            ).format(scattering_factor=found.scattering_factor, remaining_de00=found.remaining_de00)
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
