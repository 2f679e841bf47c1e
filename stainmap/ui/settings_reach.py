"""What goes by the settings, and hears when they change."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stainmap.app.settings import Settings
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow


def go_by_settings(window: MainWindow) -> None:
    """Let all parts of a window go by its settings, now and whenever they change."""
    desk = window.own_settings
    for name, button in window.plan.brush.buttons.items():
        desk.keys.add(
            f"tools/{name}",
            translate("settings", "Tool > {name}").format(name=button.accessibleName()),
            button,
        )
    desk.keys.add_mention("plan/suggest coats", window.plan.suggest)

    def go_by(settings: Settings) -> None:
        window.run_desk.settings = settings
        window.printing.settings = settings
        window.flow.settings = settings
        window.plan_desk.write_temperatures(settings.degrees)
        window.commands.refresh()

    desk.said.connect(window.status.say)
    desk.changed.connect(go_by)
    desk.changed.emit(desk.settings)
    if desk.problem:
        window.status.say(desk.problem)
