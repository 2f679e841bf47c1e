"""The settings at work: kept, worn by the window, told to whatever goes by them."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication, QMainWindow

from stainmap.app.session import Session
from stainmap.app.settings import Settings, follows_drop_volume, with_drop_volume
from stainmap.app.settings_file import SettingsStore
from stainmap.errors import StainmapError
from stainmap.ui.asking import ask
from stainmap.ui.key_map import KeyMap
from stainmap.ui.motion import apply_motion
from stainmap.ui.theme import Scheme, apply_theme, is_worn
from stainmap.words import translate


class SettingsDesk(QObject):
    """Holds the settings of a window.

    Signals
    -------
    changed
        The new `Settings`.
    said
        A sentence for the status line.
    """

    changed = Signal(object)
    said = Signal(str)

    def __init__(self, store: SettingsStore, session: Session, window: QMainWindow) -> None:
        super().__init__(window)
        self._store, self._session, self._window = store, session, window
        self.keys = KeyMap(self)
        self.changed.connect(lambda settings: self.keys.apply(settings.keys))
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.styleHints().colorSchemeChanged.connect(self._desktop_changed)

    @property
    def store(self) -> SettingsStore:
        """Where the settings are kept, for another window that goes by them."""
        return self._store

    @property
    def settings(self) -> Settings:
        """What is set."""
        return self._store.settings

    @property
    def problem(self) -> str:
        """One sentence about a settings file that could not be used; empty if there is none."""
        return self._store.problem

    def open(self) -> None:
        """Show the settings and take over what was changed."""
        from stainmap.ui.settings_dialog import SettingsDialog  # noqa: PLC0415

        before = self.settings
        programmes = [one.name for one in self._session.materials.programmes]
        dialog = SettingsDialog(before, programmes, self.keys, self._window)
        dialog.tried.connect(self._wear)
        if ask(dialog):
            self.change(dialog.settings)
        else:
            self._wear(before)

    def set_scheme(self, scheme: Scheme) -> None:
        """Wear another palette, now and after the next start."""
        self.change(replace(self.settings, scheme=scheme))

    def change(self, settings: Settings) -> None:
        """Keep other settings and go by them from now on."""
        before = self.settings
        problem = ""
        try:
            self._store.keep(settings)
        except StainmapError as error:
            said = translate(
                "settings", "The settings hold until the program ends; they cannot be kept. {why}"
            )
            problem = said.format(why=error)
        self._wear(settings)
        self.changed.emit(settings)
        self._change_drop(before, settings)
        if problem:
            self.said.emit(problem)
        elif settings.language != before.language:
            self.said.emit(
                translate(
                    "settings", "The window speaks the other language from the next start on."
                )
            )
        elif settings.size_percent != before.size_percent:
            said = translate("settings", "The window has {percent} % from the next start on.")
            self.said.emit(said.format(percent=settings.size_percent))

    def _change_drop(self, before: Settings, now: Settings) -> None:
        """Let the open case follow the volume of a drop, unless it has one of its own."""
        case = self._session.case
        if case is None or before.drop_volume_ml == now.drop_volume_ml:
            return
        if not follows_drop_volume(case, before):
            self.said.emit(
                translate(
                    "settings", "The open case keeps the volume of a drop that was set for it."
                )
            )
            return
        said = translate("settings", "set the volume of a drop to {volume} mL")
        label = said.format(volume=f"{now.drop_volume_ml:g}")
        try:
            self._session.edit(label, lambda one: with_drop_volume(one, now))
        except StainmapError as error:
            self.said.emit(str(error))

    def _desktop_changed(self) -> None:
        if self.settings.scheme is Scheme.SYSTEM:
            self._wear(self.settings)

    def _wear(self, settings: Settings) -> None:
        """Show the window in the colours, face and motion of some settings."""
        app = QApplication.instance()
        if isinstance(app, QApplication):
            # Dressing every widget anew takes a while.
            if not is_worn(app, settings.scheme, settings.typeface):
                apply_theme(app, settings.scheme, settings.typeface)
            self._window.setAnimated(apply_motion(app, settings.motion))
