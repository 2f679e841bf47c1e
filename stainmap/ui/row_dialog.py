"""Which meshes the neighbours in the row have: made from numbers, or files somebody has."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QLabel, QPushButton, QWidget

from stainmap.model.tooth import Tooth
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.opening_flow import MESH_ENDINGS
from stainmap.words import marked, translate

_MADE = marked("row dialog", "made from numbers")


class RowDialog(FormDialog):
    """A line per neighbour: what it is made from, and two buttons.

    Parameters
    ----------
    teeth
        The neighbours.
    files
        Meshes chosen before, by tooth number.
    """

    def __init__(
        self, teeth: Sequence[Tooth], files: Mapping[int, Path], parent: QWidget | None = None
    ) -> None:
        super().__init__(
            translate("row dialog", "Neighbours in the row"),
            translate(
                "row dialog",
                "A neighbour is made from numbers, as nobody has it, or read from a mesh. A mesh"
                " that"
                " was exported beside the crown, in the same coordinates, stays where it stands;"
                " others are stood in the arch.",
            ),
            parent,
        )
        self.files: dict[int, Path] = {
            tooth.number: files[tooth.number] for tooth in teeth if tooth.number in files
        }
        self._names: dict[int, QLabel] = {}
        self.open_buttons: dict[int, QPushButton] = {}
        for tooth in teeth:
            name = QLabel(translate("row dialog", _MADE))
            name.setMinimumWidth(180)
            self._names[tooth.number] = name
            choose, make = (
                QPushButton(translate("row dialog", "Open a mesh...")),
                QPushButton(translate("row dialog", "Make it")),
            )
            choose.setAccessibleName(
                translate("row dialog", "Open a mesh of {number}").format(number=tooth.number)
            )
            make.setAccessibleName(
                translate("row dialog", "Make {number} from numbers").format(number=tooth.number)
            )
            choose.clicked.connect(lambda _on, tooth=tooth: self._ask(tooth))
            make.clicked.connect(lambda _on, tooth=tooth: self.set_file(tooth, None))
            self.open_buttons[tooth.number] = choose
            self.add_row(f"{tooth.number}  {tooth.name}", choose, make, name)
            self.set_file(tooth, self.files.get(tooth.number))
        self.end()

    def set_file(self, tooth: Tooth, path: Path | None) -> None:
        """Take a mesh for a tooth, or None to make it."""
        if path is None:
            self.files.pop(tooth.number, None)
        else:
            self.files[tooth.number] = path
        self._names[tooth.number].setText(
            translate("row dialog", _MADE) if path is None else path.name
        )
        self._names[tooth.number].setToolTip("" if path is None else str(path))

    def _ask(self, tooth: Tooth) -> None:
        known = self.files.get(tooth.number)
        endings = " ".join(f"*{ending}" for ending in MESH_ENDINGS)
        name, _ = QFileDialog.getOpenFileName(
            self,
            translate("row dialog", "Mesh of {number}").format(number=tooth.number),
            str(known.parent) if known else "",
            translate("row dialog", "Meshes ({endings});;All files (*)").format(endings=endings),
        )
        if name:
            self.set_file(tooth, Path(name))
