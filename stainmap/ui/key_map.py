"""The keys of all commands: what they are, what they were, and which of them are taken."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QMenu, QMenuBar, QWidget

_PORTABLE = QKeySequence.SequenceFormat.PortableText
_NATIVE = QKeySequence.SequenceFormat.NativeText

# Keys that mean something where the keyboard is, whatever the commands are; a command on one of
# them would take it away.
OF_THE_VIEWS: Mapping[str, str] = {
    "A": "shows all flat views",
    "W": "shows the rosette",
    "O": "looks from occlusal",
    "B": "looks from buccal",
    "L": "looks from lingual, and locks a cell of the coat table",
    "M": "looks from mesial",
    "D": "looks from distal",
    "I": "looks at the inner surface",
    "H": "shows the crown before the last step",
    "Shift+H": "shows the bare block",
    "+": "zooms, and adds a coat",
    "-": "zooms, and takes a coat away",
    "=": "zooms",
    "[": "makes the brush smaller",
    "]": "makes the brush larger",
    "Home": "shows the whole crown",
    "PgUp": "shows the unit before",
    "PgDown": "shows the next unit",
    "Left": "moves and turns",
    "Right": "moves and turns",
    "Up": "moves and turns",
    "Down": "moves and turns",
    "Shift+Left": "shifts the crown",
    "Shift+Right": "shifts the crown",
    "Shift+Up": "shifts the crown",
    "Shift+Down": "shifts the crown",
    "Return": "chooses",
    "Enter": "chooses",
    "Space": "chooses",
    "Esc": "takes back what was begun last",
    "Tab": "goes to the next part of the window",
    "Shift+Tab": "goes to the part before",
    "Backtab": "goes to the part before",
    "Shift+Backtab": "goes to the part before",
    "Del": "clears coats",
    "Backspace": "clears coats",
    "F2": "changes coats where they stand",
    "F10": "goes to the menus",
    "Ctrl+C": "copies",
    "Ctrl+X": "cuts",
    "Ctrl+V": "pastes",
    "Ctrl+A": "selects all",
    "Menu": "opens the menu of what has the keyboard",
    "Shift+F10": "opens the menu of what has the keyboard",
    **{str(digit): "types coats into the table" for digit in range(10)},
}


def portable(key: str | QKeySequence) -> str:
    """Return a key as it is written in files, the same on every system."""
    return QKeySequence(key).toString(_PORTABLE)


def native(key: str | QKeySequence) -> str:
    """Return a key as people of this system call it."""
    return QKeySequence(key).toString(_NATIVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Command:
    """A command: its name in files, its words, the key it comes with, the one it has."""

    name: str
    words: str
    default: str
    key: str


class _Bound:
    """A command that can have a key, with what is pointed at for it."""

    def __init__(self, words: str, target: QAction | QAbstractButton) -> None:
        self.words, self.target = words, target
        self.default = portable(target.shortcut())
        self.tips: list[tuple[QWidget | QAction, str]] = [(target, target.toolTip())]

    @property
    def key(self) -> str:
        return portable(self.target.shortcut())

    def take(self, key: str) -> None:
        if key != self.key:
            self.target.setShortcut(QKeySequence(key))
        for target, tip in self.tips:
            target.setToolTip(_tip_with(tip, native(self.default), native(key)))


class KeyMap(QObject):
    """All commands that a key can be given to.

    Signals
    -------
    changed
        Some have other keys now.
    """

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bound: dict[str, _Bound] = {}
        self._menus: dict[str, str] = {}

    def add(self, name: str, words: str, target: QAction | QAbstractButton) -> None:
        """Take in a command with the key it has now, which is its default.

        Parameters
        ----------
        name
            What it is called in files: never translated, never changed.
        words
            What it is called on screen.
        """
        self._bound[name] = _Bound(words, target)

    def add_menus(self, bar: QMenuBar) -> None:
        """Take in every entry of a bar's menus, named by the way to it."""
        for action in bar.actions():
            menu = action.menu()
            if isinstance(menu, QMenu):
                title = plain(action.text())
                mnemonic = QKeySequence.mnemonic(action.text()).toString(_PORTABLE)
                if mnemonic:
                    self._menus[mnemonic] = title
                for words, entry in entries_of(menu, title):
                    self.add(words.replace(" > ", "/").lower(), words, entry)

    def add_mention(self, name: str, widget: QWidget) -> None:
        """Keep the key right that a tool tip elsewhere names."""
        self._bound[name].tips.append((widget, widget.toolTip()))

    def apply(self, keys: Mapping[str, str]) -> None:
        """Give commands the keys of the settings, and all others those they came with.

        What two commands would have at once stays with the one that comes first.
        """
        wanted = {
            name: portable(keys[name]) if name in keys else one.default
            for name, one in self._bound.items()
        }
        # Freed first, so that nothing is ambiguous on the way.
        for name, one in self._bound.items():
            if one.key != wanted[name]:
                one.take("")
        taken: set[str] = set()
        for name, one in self._bound.items():
            key = wanted[name]
            one.take("" if key in taken else key)
            taken |= {key} - {""}
        self.changed.emit()

    def commands(self, keys: Mapping[str, str] | None = None) -> tuple[Command, ...]:
        """Return all commands, in the order of the menus, with the keys of a draft of settings."""
        return tuple(
            Command(
                name=name,
                words=one.words,
                default=one.default,
                key=one.key if keys is None else portable(keys.get(name, one.default)),
            )
            for name, one in self._bound.items()
        )

    def why_not(self, name: str, key: str, keys: Mapping[str, str]) -> str:
        """Return why a command cannot have a key, in a sentence; empty if it can.

        Parameters
        ----------
        keys
            The draft of the settings that it is to be put into.
        """
        key = portable(key)
        if not key:
            return ""
        said = native(key)
        for other in self.commands(keys):
            if other.key == key and other.name != name:
                return f"{said} is the key of {other.words}. Take another, or free it there first."
        if key == self._bound[name].default:
            return ""
        if key in OF_THE_VIEWS:
            return f"{said} {OF_THE_VIEWS[key]}. Take another."
        if key in self._menus:
            return f"{said} opens the menu {self._menus[key]}. Take another."
        return ""


def with_key(tip: str, key: QKeySequence) -> str:
    """Return a tool tip that names its key, if there is one."""
    said = key.toString(_NATIVE)
    return f"{tip} ({said})" if said else tip


def plain(text: str) -> str:
    """Return the words of an entry without the mark of its letter and its dots."""
    return text.replace("&", "").rstrip(".")


def entries_of(menu: QMenu, path: str) -> Iterator[tuple[str, QAction]]:
    """Yield the entries of a menu and those below it, by the way there: "File > Open"."""
    for action in menu.actions():
        if action.isSeparator():
            continue
        words = f"{path} > {plain(action.text())}"
        below = action.menu()
        if isinstance(below, QMenu):
            yield from entries_of(below, words)
        else:
            yield words, action


def _tip_with(tip: str, before: str, now: str) -> str:
    """Return a tool tip with another key in its brackets."""
    if before and f"({before})" in tip:
        return tip.replace(f" ({before})", f" ({now})" if now else "", 1)
    return f"{tip} ({now})" if now and now != before else tip
