"""The keys of all commands: what they are, what they were, and which of them are taken."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QMenu, QMenuBar, QWidget

from stainmap.words import marked, translate

_PORTABLE = QKeySequence.SequenceFormat.PortableText
_NATIVE = QKeySequence.SequenceFormat.NativeText
_NAME = "name in files"

# Keys that mean something where the keyboard is, whatever the commands are; a command on one of
# them would take it away.
OF_THE_VIEWS: Mapping[str, str] = {
    "A": marked("keys", "shows all flat views"),
    "W": marked("keys", "shows the rosette"),
    "O": marked("keys", "looks from occlusal"),
    "B": marked("keys", "looks from buccal"),
    "L": marked("keys", "looks from lingual, and locks a cell of the coat table"),
    "M": marked("keys", "looks from mesial"),
    "D": marked("keys", "looks from distal"),
    "I": marked("keys", "looks at the inner surface"),
    "H": marked("keys", "shows the crown before the last step"),
    "Shift+H": marked("keys", "shows the bare block"),
    "+": marked("keys", "zooms, and adds a coat"),
    "-": marked("keys", "zooms, and takes a coat away"),
    "=": marked("keys", "zooms"),
    "[": marked("keys", "makes the brush smaller"),
    "]": marked("keys", "makes the brush larger"),
    "Home": marked("keys", "shows the whole crown"),
    "PgUp": marked("keys", "shows the unit before"),
    "PgDown": marked("keys", "shows the next unit"),
    "Left": marked("keys", "moves and turns"),
    "Right": marked("keys", "moves and turns"),
    "Up": marked("keys", "moves and turns"),
    "Down": marked("keys", "moves and turns"),
    "Shift+Left": marked("keys", "shifts the crown"),
    "Shift+Right": marked("keys", "shifts the crown"),
    "Shift+Up": marked("keys", "shifts the crown"),
    "Shift+Down": marked("keys", "shifts the crown"),
    "Return": marked("keys", "chooses"),
    "Enter": marked("keys", "chooses"),
    "Space": marked("keys", "chooses"),
    "Esc": marked("keys", "takes back what was begun last"),
    "Tab": marked("keys", "goes to the next part of the window"),
    "Shift+Tab": marked("keys", "goes to the part before"),
    "Backtab": marked("keys", "goes to the part before"),
    "Shift+Backtab": marked("keys", "goes to the part before"),
    "Del": marked("keys", "clears coats"),
    "Backspace": marked("keys", "clears coats"),
    "F2": marked("keys", "changes coats where they stand"),
    "F10": marked("keys", "goes to the menus"),
    "Ctrl+C": marked("keys", "copies"),
    "Ctrl+X": marked("keys", "cuts"),
    "Ctrl+V": marked("keys", "pastes"),
    "Ctrl+A": marked("keys", "selects all"),
    "Menu": marked("keys", "opens the menu of what has the keyboard"),
    "Shift+F10": marked("keys", "opens the menu of what has the keyboard"),
    **{str(digit): marked("keys", "types coats into the table") for digit in range(10)},
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
                told = entries_of(menu, title)
                named = entries_of(menu, name_in_files(action), name_in_files)
                for (words, entry), (name, _) in zip(told, named, strict=True):
                    self.add(name.replace(" > ", "/").lower(), words, entry)

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
                return translate(
                    "keys", "{key} is the key of {command}. Take another, or free it there first."
                ).format(key=said, command=other.words)
        if key == self._bound[name].default:
            return ""
        if key in OF_THE_VIEWS:
            return translate("keys", "{key} {does}. Take another.").format(
                key=said, does=translate("keys", OF_THE_VIEWS[key])
            )
        if key in self._menus:
            return translate("keys", "{key} opens the menu {menu}. Take another.").format(
                key=said, menu=self._menus[key]
            )
        return ""


def with_key(tip: str, key: QKeySequence) -> str:
    """Return a tool tip that names its key, if there is one."""
    said = key.toString(_NATIVE)
    return f"{tip} ({said})" if said else tip


def plain(text: str) -> str:
    """Return the words of an entry without the mark of its letter and its dots."""
    return text.replace("&", "").rstrip(".")


def keep_name(action: QAction, english: str) -> None:
    """Keep the English text of an entry: its name in files is the same in every language."""
    action.setProperty(_NAME, english)


def name_in_files(action: QAction) -> str:
    """Return the English words of an entry, whatever language it is shown in."""
    english = action.property(_NAME)
    return plain(english if isinstance(english, str) else action.text())


def words_of(action: QAction) -> str:
    """Return the words of an entry as they are shown."""
    return plain(action.text())


def entries_of(
    menu: QMenu, path: str, called: Callable[[QAction], str] = words_of
) -> Iterator[tuple[str, QAction]]:
    """Yield the entries of a menu and those below it, by the way there: "File > Open"."""
    for action in menu.actions():
        if action.isSeparator():
            continue
        words = f"{path} > {called(action)}"
        below = action.menu()
        if isinstance(below, QMenu):
            yield from entries_of(below, words, called)
        else:
            yield words, action


def _tip_with(tip: str, before: str, now: str) -> str:
    """Return a tool tip with another key in its brackets."""
    if before and f"({before})" in tip:
        return tip.replace(f" ({before})", f" ({now})" if now else "", 1)
    return f"{tip} ({now})" if now and now != before else tip
