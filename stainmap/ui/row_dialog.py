"""Which meshes the neighbours in the row have: made from numbers, or files somebody has."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QLabel, QPushButton, QWidget

from stainmap.model.tooth import Tooth
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.opening_flow import MESH_ENDINGS

_MADE = "made from numbers"


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
            "Neighbours in the row",
            "A neighbour is made from numbers, as nobody has it, or read from a mesh. A mesh that"
            " was exported beside the crown, in the same coordinates, stays where it stands;"
            " others are stood in the arch.",
            parent,
        )
        self.files: dict[int, Path] = {
            tooth.number: files[tooth.number] for tooth in teeth if tooth.number in files
        }
        self._names: dict[int, QLabel] = {}
        self.open_buttons: dict[int, QPushButton] = {}
        for tooth in teeth:
            name = QLabel(_MADE)
            name.setMinimumWidth(180)
            self._names[tooth.number] = name
            choose, make = QPushButton("Open a mesh..."), QPushButton("Make it")
            choose.setAccessibleName(f"Open a mesh of {tooth.number}")
            make.setAccessibleName(f"Make {tooth.number} from numbers")
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
        self._names[tooth.number].setText(_MADE if path is None else path.name)
        self._names[tooth.number].setToolTip("" if path is None else str(path))

    def _ask(self, tooth: Tooth) -> None:
        known = self.files.get(tooth.number)
        endings = " ".join(f"*{ending}" for ending in MESH_ENDINGS)
        name, _ = QFileDialog.getOpenFileName(
            self,
            f"Mesh of {tooth.number}",
            str(known.parent) if known else "",
            f"Meshes ({endings});;All files (*)",
        )
        if name:
            self.set_file(tooth, Path(name))
