"""Dialogs that somebody waits for, thrown away afterwards: a hidden one would keep what it has."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QDialog
from shiboken6 import isValid


def ask(dialog: QDialog) -> bool:
    """Run a dialog; return True if it was accepted. Its answers can be read by the same function.

    It goes when the window's own loop goes on.
    """
    accepted = dialog.exec() == QDialog.DialogCode.Accepted
    dialog.deleteLater()
    return accepted


def while_there(dialog: QDialog, call: Callable[..., object]) -> Callable[..., None]:
    """Return `call` for the notices of a job, which does nothing once the dialog has gone."""

    def heed(*arguments: object) -> None:
        if isValid(dialog):
            call(*arguments)

    return heed
