"""Asks which file materials or a spectrum are read from or written to, and remembers the folder."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QFileDialog, QInputDialog, QWidget

from stainmap.words import marked, translate, value_word

if TYPE_CHECKING:
    from stainmap.app.materials_spectra import SpectrumOf

TOML, CSV = (
    marked("materials files", "Materials (*.toml)"),
    marked("materials files", "Spectra (*.csv *.txt)"),
)
_FOLDER = "materials/folder"


class MaterialFiles:
    """The dialogs of files, over whatever window asks."""

    def __init__(self, settings: QSettings) -> None:
        self._settings = settings

    def to_read(self, over: QWidget, title: str, kinds: str) -> Path | None:
        """Ask for a file that is there; None if nobody wants one."""
        name, _ = QFileDialog.getOpenFileName(
            over, title, self._folder, translate("materials files", kinds)
        )
        return self._remembered(name)

    def to_write(self, over: QWidget, title: str, name: str, kinds: str) -> Path | None:
        """Ask where to write; the ending is added where it is missing."""
        start = str(Path(self._folder) / name)
        chosen, _ = QFileDialog.getSaveFileName(
            over, title, start, translate("materials files", kinds)
        )
        if chosen and not Path(chosen).suffix:
            chosen += Path(name).suffix
        return self._remembered(chosen)

    @staticmethod
    def which(over: QWidget, kinds: Sequence[SpectrumOf], title: str) -> SpectrumOf | None:
        """Ask which spectrum is meant, where there is a choice."""
        if len(kinds) < 2:
            return next(iter(kinds), None)
        words = [value_word(one) for one in kinds]
        chosen, said = QInputDialog.getItem(
            over, title, translate("materials files", "Of which?"), words, 0, False
        )
        return kinds[words.index(chosen)] if said else None

    @property
    def _folder(self) -> str:
        return str(self._settings.value(_FOLDER, ""))

    def _remembered(self, name: str) -> Path | None:
        if not name:
            return None
        self._settings.setValue(_FOLDER, str(Path(name).parent))
        return Path(name)
