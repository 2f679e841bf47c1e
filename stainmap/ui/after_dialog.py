"""What is done to the crown after sintering: how its surface is left, and what is ground away."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QComboBox, QWidget

from stainmap.model.finishing import AfterSintering, Finish
from stainmap.model.zone import Area
from stainmap.ui.form_dialog import FormDialog, choice_box
from stainmap.words import marked, translate, value_word

GROUND_STEPS_MM = (0.0, 0.1, 0.2, 0.3)
_INHERITED = marked("after dialog", "as all of it")


class AfterDialog(FormDialog):
    """Finish of the whole crown, and the depth ground away from all of it and from areas.

    Parameters
    ----------
    after
        What is done now.
    names
        The outer areas of this crown and their names.
    """

    def __init__(
        self,
        after: AfterSintering,
        names: Sequence[tuple[Area, str]],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(
            translate("after dialog", "After sintering"),
            translate(
                "after dialog",
                "Stain lies near the surface: grinding exposes paler ceramic. The prediction shows"
                " what is left.",
            ),
            parent,
        )
        self._after = after
        self.finish = choice_box(
            translate("after dialog", "Finish"),
            [str(one) for one in Finish],
            str(after.finish),
            value_word,
        )
        self.add_row(translate("after dialog", "Finish"), self.finish)
        self.add_heads(
            translate("after dialog", "ground away"), translate("after dialog", "mm, sintered")
        )
        depths = {entry.area: entry.depth_mm for entry in after.ground}
        self.depths: dict[Area | None, QComboBox] = {}
        for area, name in ((None, translate("after dialog", "all of the outside")), *names):
            box = self._depth_box(name, area, depths.get(area))
            self.depths[area] = box
            self.add_row(name, box, strong=area is None)
        self.add_note(
            translate(
                "after dialog",
                "Effects of finish and depth are assumed until a laboratory has measured them."
                " Walls"
                " get thinner by grinding: keep to the smallest the block's maker allows.",
            )
        )
        self.end()

    @staticmethod
    def _depth_box(name: str, area: Area | None, depth_mm: float | None) -> QComboBox:
        box = choice_box(
            translate("after dialog", "Ground away from {name}").format(name=name), (), ""
        )
        box.addItem(
            translate("after dialog", "nothing")
            if area is None
            else translate("after dialog", _INHERITED),
            0.0,
        )
        for step_mm in sorted({*GROUND_STEPS_MM[1:], *((depth_mm,) if depth_mm else ())}):
            box.addItem(f"{step_mm:g}", step_mm)
        box.setCurrentIndex(max(box.findData(depth_mm or 0.0), 0))
        return box

    @property
    def after(self) -> AfterSintering:
        """What is to be done, as it is set now."""
        result = AfterSintering(
            finish=Finish(str(self.finish.currentData())), ground=self._after.ground
        )
        for area, box in self.depths.items():
            result = result.with_ground(area, float(box.currentData()))
        return result
