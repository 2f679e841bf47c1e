"""Shades from a photograph: its grey patch and the spots on the teeth are clicked."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.errors import PhotographError
from stainmap.files.photograph_file import SUFFIXES, read_photograph
from stainmap.model.intake import Shade
from stainmap.planning.photograph import GREY_CARD, Photograph, photographed_shade, read_patch
from stainmap.planning.targets import outside_ceramic, shade_in
from stainmap.ui.form_dialog import FormDialog, number_box
from stainmap.ui.picture_spots import PictureSpots
from stainmap.ui.section import SoftLabel
from stainmap.words import marked, translate

PATCH = marked("photograph dialog", "grey patch")
_NOTHING = "\N{EN DASH}"
_SIDE_PX = 330
_FIRST = marked(
    "photograph dialog",
    "Open a picture that shows the tooth beside a neutral grey patch, in the same light.",
)
_KEYS = marked(
    "photograph dialog",
    "Arrow keys move the chosen spot, plus and minus or the wheel change its size. Keep off gloss,"
    " edges and shadows.",
)


class PhotographDialog(QDialog):
    """A picture, a list of spots, and what every spot says.

    Parameters
    ----------
    places
        Names of the places a shade is wanted of.
    first
        The place that is asked for.
    folder
        Where pictures are looked for.
    """

    def __init__(
        self, places: Sequence[str], first: str, folder: str, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("photograph dialog", "Shade from a photograph"))
        self.folder = folder
        self.shades: dict[str, Shade] = {}
        self._photograph: Photograph | None = None
        self._order = [
            translate("photograph dialog", PATCH),
            first,
            *(one for one in places if one != first),
        ]
        row = QHBoxLayout(self)
        row.setContentsMargins(20, 20, 20, 16)
        row.setSpacing(18)
        self.picture = PictureSpots()
        self.picture.placed.connect(self._placed)
        row.addWidget(self.picture, 1)
        row.addLayout(self._side())
        self.choose(translate("photograph dialog", PATCH))
        self._read()

    def _side(self) -> QVBoxLayout:
        """Return the column beside the picture."""
        side = QVBoxLayout()
        side.setSpacing(10)
        opening = QPushButton(translate("photograph dialog", "Open a &picture..."))
        opening.clicked.connect(self.ask_for_picture)
        self.advice = _sentence(translate("photograph dialog", _FIRST))
        side.addWidget(opening)
        side.addWidget(self.advice)
        side.addLayout(self._places())
        self.reflectance = number_box(
            translate("photograph dialog", "Reflectance of the grey patch in percent"),
            100 * GREY_CARD,
            5.0,
            95.0,
            decimals=1,
        )
        self.reflectance.setSuffix(" %")
        self.reflectance.valueChanged.connect(self._read)
        line = QHBoxLayout()
        line.addWidget(SoftLabel(translate("photograph dialog", "The patch reflects")))
        line.addWidget(self.reflectance)
        line.addStretch(1)
        side.addLayout(line)
        side.addWidget(_sentence(translate("photograph dialog", _KEYS)))
        side.addStretch(1)
        kinds = QDialogButtonBox.StandardButton
        self.box = QDialogButtonBox(kinds.Ok | kinds.Cancel)
        self.box.accepted.connect(self.accept)
        self.box.rejected.connect(self.reject)
        side.addWidget(self.box)
        return side

    def _places(self) -> QGridLayout:
        """Return a button for every spot, and what it says beside it."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(6)
        self.buttons: dict[str, QPushButton] = {}
        self.said: dict[str, SoftLabel] = {}
        for index, name in enumerate(self._order):
            button = QPushButton(name)
            button.setCheckable(True)
            button.setAutoExclusive(True)
            button.setAutoDefault(False)
            button.setToolTip(
                translate(
                    "photograph dialog", "The next click in the picture places the {name}"
                ).format(name=name)
            )
            button.clicked.connect(lambda _on, name=name: self.choose(name))
            said = SoftLabel(_NOTHING)
            said.setMinimumWidth(150)
            grid.addWidget(button, index, 0)
            grid.addWidget(said, index, 1)
            self.buttons[name], self.said[name] = button, said
        return grid

    def ask_for_picture(self) -> None:
        """Let a picture be chosen."""
        wanted = " ".join(f"*{suffix}" for suffix in SUFFIXES)
        name, _ = QFileDialog.getOpenFileName(
            self,
            translate("photograph dialog", "Open a picture"),
            self.folder,
            translate("photograph dialog", "Pictures ({wanted})").format(wanted=wanted),
        )
        if name:
            self.show_picture(Path(name))

    def show_picture(self, path: Path) -> None:
        """Show a picture, or say why not."""
        try:
            photograph = read_photograph(path)
        except PhotographError as error:
            self.advice.setText(str(error))
            return
        self.folder = str(path.parent)
        self._photograph = photograph
        self.picture.set_photograph(photograph)
        self.choose(translate("photograph dialog", PATCH))
        self.picture.setFocus()
        self._read()

    def choose(self, name: str) -> None:
        """Let the next click place this spot."""
        self.buttons[name].setChecked(True)
        self.picture.choose(name)

    def _placed(self, name: str) -> None:
        new = name not in self.shades and self.said[name].text() == _NOTHING
        self._read()
        left = [one for one in self._order if one not in self.picture.spots]
        # The patch and what was asked for follow each other; the rest is placed by choice.
        if new and left and left[0] in self._order[:2]:
            self.choose(left[0])

    def _read(self) -> None:
        """Read all spots anew; what one of them says is wrong is said once, above."""
        self.shades = {}
        for said in self.said.values():
            said.setText(_NOTHING)
        self.box.button(QDialogButtonBox.StandardButton.Ok).setEnabled(False)
        photograph, spots = self._photograph, self.picture.spots
        if photograph is None:
            return
        problems: list[str] = []
        try:
            patch = read_patch(
                photograph,
                spots.get(translate("photograph dialog", PATCH)),
                self.reflectance.value() / 100.0,
            )
        except PhotographError as error:
            self.advice.setText(str(error))
            return
        self.said[translate("photograph dialog", PATCH)].setText(
            translate("photograph dialog", "light of {light_k:.0f} K").format(
                light_k=round(patch.light_k, -2)
            )
        )
        for name, spot in spots.items():
            if name == translate("photograph dialog", PATCH):
                continue
            try:
                shade = photographed_shade(photograph, patch, spot)
            except PhotographError as error:
                problems.append(f"{name}: {error.message} {error.advice or ''}")
                self.said[name].setText(translate("photograph dialog", "not usable"))
                continue
            self.shades[name] = shade
            self.said[name].setText(_figures(shade))
            outside = outside_ceramic(shade.colour)
            if outside:
                problems.append(f"{name}: {outside}")
        left = (
            ""
            if self.shades
            else translate("photograph dialog", "Now click the tooth, away from gloss and edges.")
        )
        self.advice.setText(" ".join(problems) or left or _worth())
        self.box.button(QDialogButtonBox.StandardButton.Ok).setEnabled(bool(self.shades))


def _sentence(text: str) -> QLabel:
    label = FormDialog.soft(text)
    label.setFixedWidth(_SIDE_PX)
    return label


def _figures(shade: Shade) -> str:
    seen = shade_in(shade)
    lab = " ".join(f"{value:.1f}" for value in seen.colour.lab)
    sd = " ".join(f"{value:.1f}" for value in seen.sd)
    return f"{lab}  \N{PLUS-MINUS SIGN} {sd}".replace("-", "\N{MINUS SIGN}")


def _worth() -> str:
    return translate(
        "photograph dialog",
        "L* a* b* after balancing, with one standard deviation. A photograph is the least certain"
        " of the three ways.",
    )
