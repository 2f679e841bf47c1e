"""Windows that open no larger than the screen they open on."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

# What a desktop takes for frame and title of a window.
_FRAME_PX, _TITLE_PX = 16, 40


def resize_within_screen(window: QWidget, width_px: int, height_px: int) -> None:
    """Give a window its usual size, or what the screen has room for."""
    room = window.screen().availableSize()
    width = min(width_px, room.width() - _FRAME_PX)
    window.resize(width, min(height_px, room.height() - _TITLE_PX))
