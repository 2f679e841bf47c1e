"""What is said when materials change: the steps in the history, and what became of a wish."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from stainmap.app.materials import Material, MaterialKind, kind_of
from stainmap.errors import CatalogueError
from stainmap.words import translate, value_word


def change_step(material: Material) -> str:
    """Return the name of the step that changes an entry."""
    return translate("materials desk", "change {kind} {name}").format(
        kind=value_word(kind_of(material)), name=material.name
    )


def add_step(material: Material) -> str:
    """Return the name of the step that adds an entry."""
    return translate("materials desk", "add {kind} {name}").format(
        kind=value_word(kind_of(material)), name=material.name
    )


def remove_step(kind: MaterialKind, name: str) -> str:
    """Return the name of the step that takes an entry away."""
    return translate("materials desk", "remove {kind} {name}").format(
        kind=value_word(kind), name=name
    )


def put_step(material: Material) -> str:
    """Return the name of the step that puts an entry into the case."""
    return translate("materials desk", "put {kind} {name} into the case").format(
        kind=value_word(kind_of(material)), name=material.name
    )


def import_step(path: Path) -> str:
    """Return the name of the step that imports a file."""
    return translate("materials desk", "import materials of {name}").format(name=path.name)


def unkept(names: Sequence[str]) -> str:
    """Return the question about drafts that are not kept."""
    return translate(
        "materials desk", "Changes are not kept yet: {names}. Keep them in the laboratory's set?"
    ).format(names=", ".join(names))


def new_name(kind: MaterialKind) -> str:
    """Return the name of an entry that has none yet."""
    return translate("materials desk", "new {kind}").format(kind=value_word(kind))


def first_copied(kind: MaterialKind, name: str) -> str:
    """Say what a new entry is."""
    return translate(
        "materials desk", "{name} is a copy of the first {kind}, to be changed."
    ).format(name=name, kind=value_word(kind))


def dye_replaced(name: str) -> str:
    """Say what an own dye is."""
    return translate(
        "materials desk", "Your own {name} takes the place of the one that came."
    ).format(name=name)


def own_copy(name: str) -> str:
    """Say what a copy is."""
    return translate("materials desk", "{name} is yours to change.").format(name=name)


def kept(name: str) -> str:
    """Say that a draft is kept."""
    return translate("materials desk", "{name} is kept in the laboratory's set.").format(name=name)


def renamed(before: str, now: str, *, stays_in_case: bool) -> str:
    """Say that an entry has another name."""
    said = translate("materials desk", "{name} is called {new} in the laboratory's set.").format(
        name=before, new=now
    )
    if not stays_in_case:
        return said
    stays = translate("materials desk", "The open case keeps {name} besides.").format(name=before)
    return f"{said} {stays}"


def into_case(material: Material) -> str:
    """Say that the open case has an entry now."""
    return translate(
        "materials desk", "The open case has {name} as it is kept here; undo takes it back."
    ).format(name=material.name)


def case_changed() -> str:
    """Say that the open case has changed with the set."""
    return translate("materials desk", "The open case has it too, as a step that can be undone.")


def case_unchanged() -> str:
    """Say that the open case has not changed with the set."""
    return translate("materials desk", "The open case stays as it is.")


def left_out(wrong: Sequence[str]) -> str:
    """Say what of a file was not taken; `wrong` are whole sentences."""
    return translate("materials desk", "Left out: {sentences}").format(sentences=" ".join(wrong))


def written_to(path: Path) -> str:
    """Say where a spectrum was written."""
    return translate("materials desk", "Written: {path}").format(path=path)


def imported(added: Sequence[Material]) -> str:
    """Say what a file has brought."""
    if not added:
        return translate("materials desk", "Nothing new was in the file.")
    return translate("materials desk", "Imported: {names}.").format(
        names=", ".join(one.name for one in added)
    )


def exported(found: Sequence[Material], path: Path) -> str:
    """Say what was written."""
    return translate("materials desk", "Exported: {names}, to {path}").format(
        names=", ".join(one.name for one in found), path=path
    )


def not_own() -> CatalogueError:
    """Return why an entry cannot be renamed."""
    return CatalogueError(
        translate("materials desk", "Only the laboratory's own entries can be renamed.")
    )


def not_kept() -> CatalogueError:
    """Return why an entry cannot be renamed yet."""
    return CatalogueError(
        translate("materials desk", "It has changes that are not kept yet."),
        advice=translate("materials desk", "Keep or discard them first."),
    )


def own_dye() -> CatalogueError:
    """Return why a dye cannot be copied."""
    return CatalogueError(translate("materials desk", "There is an own dye of that name already."))


def nothing_chosen() -> CatalogueError:
    """Return why nothing is exported."""
    return CatalogueError(
        translate("materials desk", "Nothing is chosen."),
        advice=translate("materials desk", "Choose entries of the list first."),
    )
