"""Windows that open no larger than the screen they open on."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

# What a desktop takes for frame and title of a window.
_FRAME_PX, _TITLE_PX = 16, 40


def fit_small_screen(window: QWidget) -> bool:
    """Let a window be smaller than it should be where the screen is; return True if so."""
    room, least = window.screen().availableSize(), window.minimumSize()
    if room.width() >= least.width() and room.height() >= least.height():
        return False
    window.setMinimumSize(least.boundedTo(room))
    window.resize(window.size().boundedTo(room))
    return True


def resize_within_screen(window: QWidget, width_px: int, height_px: int) -> None:
    """Give a window its usual size, or what the screen has room for."""
    room = window.screen().availableSize()
    width = min(width_px, room.width() - _FRAME_PX)
    window.resize(width, min(height_px, room.height() - _TITLE_PX))
