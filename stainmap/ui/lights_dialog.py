"""Every area under every light, and how much it changes between them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtGui import QColor
from PySide6.QtWidgets import QWidget

from stainmap.predict.lights import FLUORESCENCE, SHOWN_LIGHTS, UnderLights, light_name
from stainmap.ui.colour_table import Cell, ColourTable, Swatches
from stainmap.ui.form_dialog import FormDialog
from stainmap.words import translate


class LightsDialog(FormDialog):
    """Swatches of all areas under all lights, as an eye adapted to the light sees them.

    Parameters
    ----------
    areas
        By the name of the area.
    observer_degrees
        2 or 10.
    """

    def __init__(
        self,
        areas: Mapping[str, UnderLights],
        observer_degrees: int = 2,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(
            translate("lights dialog", "Under all lights"),
            translate(
                "lights dialog",
                "What the crown looks like to an eye that is used to each light. Where an area"
                " changes more than the teeth beside it, it stands out under that light.",
            ),
            parent,
        )
        self.table = ColourTable(
            (
                translate("lights dialog", "area"),
                *SHOWN_LIGHTS,
                translate("lights dialog", "largest change"),
            )
        )
        rows: list[Sequence[Cell]] = []
        for name, seen in areas.items():
            swatches = [
                Swatches(
                    (_hex(seen.on_screen(light, observer_degrees)),),
                    translate("lights dialog", "{name} under {light}").format(
                        name=name, light=light_name(light)
                    ),
                )
                for light in SHOWN_LIGHTS
            ]
            change = next(
                one for one in seen.largest_change if one.observer_degrees == observer_degrees
            )
            rows.append((name, *swatches, str(change)))
        self.table.set_rows(rows)
        self.add_widget(self.table)
        lights = ", ".join(f"{light} {light_name(light)}" for light in SHOWN_LIGHTS)
        self.add_note(
            translate("lights dialog", "{lights}; {degrees}° observer. {fluorescence}").format(
                lights=lights,
                degrees=observer_degrees,
                fluorescence=translate("lights", FLUORESCENCE),
            )
        )
        self.end(only_close=True)


def _hex(rgb: tuple[float, float, float]) -> str:
    return QColor.fromRgbF(*(min(max(value, 0.0), 1.0) for value in rgb)).name()
