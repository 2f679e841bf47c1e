"""What a screen reader finds: the tree of accessible interfaces below a widget."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QWidget

Role = QAccessible.Role
Text = QAccessible.Text

# What a person acts on; each of them has to say what it is.
CONTROLS = frozenset(
    {
        Role.Button,
        Role.ButtonDropDown,
        Role.ButtonMenu,
        Role.CheckBox,
        Role.ComboBox,
        Role.Dial,
        Role.EditableText,
        Role.HotkeyField,
        Role.Link,
        Role.List,
        Role.MenuItem,
        Role.PageTab,
        Role.RadioButton,
        Role.Slider,
        Role.SpinBox,
        Role.Table,
        Role.Tree,
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One interface: its path from the top, role, name, description, and whether keys reach it."""

    path: tuple[str, ...]
    role: Role
    name: str
    description: str
    focusable: bool
    invisible: bool

    def __str__(self) -> str:
        """Return the path, the role and the name."""
        return f"{' > '.join(self.path)}: {self.role.name} '{self.name}'"


def tree(widget: QWidget, *, most: int = 20_000) -> Iterator[Found]:
    """Yield all interfaces below a widget, itself first; those of tables cell by cell."""
    top = QAccessible.queryAccessibleInterface(widget)
    assert top is not None
    stack: list[tuple[QAccessibleInterface, tuple[str, ...]]] = [(top, ())]
    count = 0
    while stack:
        one, above = stack.pop()
        count += 1
        assert count < most, "the tree does not end"
        found = _found(one, above)
        yield found
        if found.invisible:
            continue
        children = (one.child(index) for index in range(one.childCount()))
        stack += [(child, found.path) for child in children if child is not None]


def nameless(widget: QWidget) -> list[str]:
    """Return the controls, and whatever else takes the keyboard, that do not say what they are."""
    return [
        str(one)
        for one in tree(widget)
        if not one.invisible and not one.name.strip() and (one.focusable or one.role in CONTROLS)
    ]


def _found(one: QAccessibleInterface, above: tuple[str, ...]) -> Found:
    made_of = one.object()
    kind = type(made_of).__name__ if made_of is not None else one.role().name
    state = one.state()
    return Found(
        path=(*above, kind),
        role=one.role(),
        name=one.text(Text.Name),
        description=one.text(Text.Description),
        focusable=bool(state.focusable),
        invisible=bool(state.invisible) and one.role() is not Role.Cell,
    )
