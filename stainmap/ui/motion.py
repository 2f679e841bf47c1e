"""Whether the window moves anything by itself: the crown turning to a place, folds, menus."""

from __future__ import annotations

import sys

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from stainmap.app.settings import Motion

_MOVES, _EFFECTS_AT_START = "stainmap_moves", "stainmap_effects"
_EFFECTS = (
    Qt.UIEffect.UI_AnimateMenu,
    Qt.UIEffect.UI_FadeMenu,
    Qt.UIEffect.UI_AnimateCombo,
    Qt.UIEffect.UI_AnimateTooltip,
    Qt.UIEffect.UI_FadeTooltip,
    Qt.UIEffect.UI_AnimateToolBox,
)


def moves() -> bool:
    """Return False where everything is to be in its new place at once."""
    app = QApplication.instance()
    told = None if app is None else app.property(_MOVES)
    return told is None or bool(told)


def apply_motion(app: QApplication, motion: Motion) -> bool:
    """Let the application move things, or not; return whether it does."""
    at_start = _effects_at_start(app)
    moving = motion is Motion.FULL or (motion is Motion.SYSTEM and not system_wants_less(app))
    app.setProperty(_MOVES, moving)
    for effect, enabled in zip(_EFFECTS, at_start, strict=True):
        QApplication.setEffectEnabled(effect, moving and enabled)
    return moving


def system_wants_less(app: QApplication) -> bool:
    """Return True if the desktop asks for less motion, as far as Qt tells.

    Versions of Qt that know of the wish tell it with the other hints of accessibility. Before
    them, Qt passes on only what Windows says of its menus, which go still with all other
    animations there.
    """
    accessibility = getattr(app.styleHints(), "accessibility", None)
    hints = accessibility() if accessibility is not None else None
    preference = getattr(hints, "motionPreference", None)
    if preference is not None:
        return "reduc" in str(preference()).lower()
    return sys.platform == "win32" and not _effects_at_start(app)[0]


def _effects_at_start(app: QApplication) -> list[bool]:
    """Return which effects the desktop had on, before anything was switched here."""
    kept = app.property(_EFFECTS_AT_START)
    if kept is None:
        kept = [QApplication.isEffectEnabled(effect) for effect in _EFFECTS]
        app.setProperty(_EFFECTS_AT_START, kept)
    return [bool(enabled) for enabled in kept]
