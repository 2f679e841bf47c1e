"""The laboratory's own materials: a catalogue file of its own, beside the set that comes along.

The starter set is never written to. An entry of one's own has a name of its own; only a dye takes
the place of the starter's of the same name, because jars hold drops of three dyes.
"""

from __future__ import annotations

import errno
from pathlib import Path
from typing import Final

from stainmap.app.materials import (
    Material,
    MaterialKind,
    entries,
    entry,
    kind_of,
    only,
    renamed,
    with_entries,
    with_entry,
    without_entry,
)
from stainmap.app.materials_form import check_numbers
from stainmap.errors import CatalogueError, StainmapError
from stainmap.files.atomic import make_folder
from stainmap.files.catalogue import (
    check_references,
    entries_of,
    joined,
    merged,
    write_catalogue,
)
from stainmap.model.material import Block, Catalogue, Liquid
from stainmap.words import translate, value_word

NAME: Final = "materials.toml"
_MOST_KEPT: Final = 1000
_MOST_LETTERS: Final = 60
_COMMENT = (
    "The laboratory's own materials; the program writes this file anew when one of them changes.\n"
    "Change them by Plan > Materials."
)
_WHOSE = "the laboratory's set"


class OwnMaterials:
    """The starter set and what the laboratory has added to it.

    Parameters
    ----------
    path
        The laboratory's file, which may not be there yet; None keeps everything until the end.
    base
        The set that comes with the program.
    """

    def __init__(self, path: Path | None, base: Catalogue) -> None:
        self._path, self.base = path, base
        self._own = Catalogue()
        self.problem = ""
        self._may_write = True
        if path is not None:
            self._read(path)

    @property
    def own(self) -> Catalogue:
        """What the laboratory has added."""
        return self._own

    @property
    def all(self) -> Catalogue:
        """Everything that a case can be begun with."""
        return joined(self.base, self._own)

    def is_own(self, kind: MaterialKind, name: str) -> bool:
        """Return True if an entry is the laboratory's, and can be changed."""
        return entry(self._own, kind, name) is not None

    def free_name(self, kind: MaterialKind, like: str) -> str:
        """Return a name that no entry of the kind has."""
        known = {one.name for one in entries(self.all, kind)}
        tries = [like, f"{like}, own", *(f"{like}, own {number}" for number in range(2, 1000))]
        return next(name for name in tries if name not in known)

    def check(self, material: Material) -> None:
        """Raise CatalogueError if an entry cannot be one of the laboratory's."""
        kind = kind_of(material)
        _check_name(material.name, kind)
        check_numbers(material)
        merged(self.base, with_entry(self._own, material), where=_WHOSE)

    def keep(self, material: Material) -> None:
        """Add an entry, or change the laboratory's own of that name, and write the file.

        Raises
        ------
        CatalogueError
            If a number is out of range, a reference leads nowhere, a block's colour cannot be
            had, or the name is one of the starter set.
        StainmapError
            If the file cannot be written; nothing has changed then.
        """
        kind = kind_of(material)
        fixed = entry(self.base, kind, material.name) is not None and not self.is_own(
            kind, material.name
        )
        if kind is not MaterialKind.DYE and fixed:
            raise CatalogueError(
                translate(
                    "materials set",
                    "The {kind} '{name}' comes with the program and stays as it is.",
                ).format(kind=value_word(kind), name=material.name),
                advice=translate("materials set", "Copy it, and change the copy."),
            )
        if kind is MaterialKind.DYE and entry(self.base, kind, material.name) is None:
            raise CatalogueError(
                translate(
                    "materials set", "Jars hold drops of three dyes, and '{name}' is none of them."
                ).format(name=material.name),
                advice=translate(
                    "materials set", "Copy one of the three to give it your own numbers."
                ),
            )
        self.check(material)
        self._write(with_entry(self._own, material))

    def rename(self, kind: MaterialKind, name: str, new: str) -> Material:
        """Give an own entry another name; return it. Its place in the list stays.

        Raises
        ------
        CatalogueError
            If the name is taken or empty, or something of one's own refers to the old one.
        StainmapError
            If the file cannot be written.
        """
        old = self._require_own(kind, name)
        new = new.strip()
        if new == name:
            return old
        if kind is MaterialKind.DYE:
            raise CatalogueError(
                translate(
                    "materials set",
                    "The three dyes keep their names, which jars and sheets refer to.",
                ),
                advice=translate("materials set", "Change the numbers instead."),
            )
        _check_name(new, kind)
        if entry(self.all, kind, new) is not None:
            raise CatalogueError(
                translate("materials set", "There already is a {kind} called '{new}'.").format(
                    kind=value_word(kind), new=new
                ),
                advice=translate("materials set", "Choose another name."),
            )
        changed = renamed(old, new)
        old_ones = entries(self._own, kind)
        own = with_entries(
            self._own, kind, tuple(changed if one is old else one for one in old_ones)
        )
        self._check_rest(own, kind, name)
        self._write(own)
        return changed

    def remove(self, kind: MaterialKind, name: str) -> None:
        """Take an own entry away.

        Raises
        ------
        CatalogueError
            If it comes with the program, or something of one's own refers to it.
        StainmapError
            If the file cannot be written.
        """
        self._require_own(kind, name)
        own = without_entry(self._own, kind, name)
        self._check_rest(own, kind, name)
        self._write(own)

    def take_file(self, path: Path) -> tuple[tuple[Material, ...], tuple[str, ...]]:
        """Add what a materials file holds; return the entries that are new, and what is wrong.

        An entry that is there already with the same numbers is passed over; one with other
        numbers is left out and said, so that nothing of one's own is overwritten.

        Raises
        ------
        CatalogueError
            If the file is no materials file.
        StainmapError
            If the laboratory's file cannot be written.
        """
        read = entries_of(self.all, path)
        said = [str(problem) for problem in read.problems]
        added: list[Material] = []
        own = self._own
        for kind in MaterialKind:
            for one in entries(read.catalogue, kind):
                place = read.places.get((kind.value, one.name), path.name)
                there = entry(self.all, kind, one.name)
                if there == one:
                    continue
                try:
                    _refuse_namesake(kind, one, there, self.base)
                    check_numbers(one)
                    merged(joined(self.base, read.catalogue), with_entry(own, one), where=place)
                except CatalogueError as error:
                    said.append(
                        str(CatalogueError(error.message, where=place, advice=error.advice))
                    )
                    continue
                own = with_entry(own, one)
                added.append(one)
        # What refers to an entry that was left out is left out as well.
        for one in tuple(added):
            try:
                merged(joined(self.base, own), only(one), where=path.name)
            except CatalogueError as error:
                said.append(str(error))
                own = without_entry(own, kind_of(one), one.name)
                added.remove(one)
        if added:
            self._write(own)
        return tuple(added), tuple(said)

    def _require_own(self, kind: MaterialKind, name: str) -> Material:
        found = entry(self._own, kind, name)
        if found is None:
            raise CatalogueError(
                translate(
                    "materials set", "The {kind} '{name}' is none of the laboratory's set."
                ).format(kind=value_word(kind), name=name),
                advice=translate(
                    "materials set",
                    "What comes with the program stays as it is; copy it to change it.",
                ),
            )
        return found

    def _check_rest(self, own: Catalogue, kind: MaterialKind, name: str) -> None:
        try:
            check_references(joined(self.base, own), where=_WHOSE)
        except CatalogueError as error:
            raise CatalogueError(
                translate(
                    "materials set", "The {kind} '{name}' is needed: {where} refers to it."
                ).format(kind=value_word(kind), name=name, where=error.where),
                advice=translate("materials set", "Change that one first."),
            ) from error

    def _write(self, own: Catalogue) -> None:
        if self._path is not None and self._may_write:
            make_folder(self._path.parent)
            write_catalogue(self._path, own, comment=_COMMENT)
        self._own = own

    def _read(self, path: Path) -> None:
        if not path.exists():
            return
        try:
            read = entries_of(self.base, path)
        except CatalogueError as error:
            self._set_aside(
                path, translate("materials set", "it cannot be used: {error}").format(error=error)
            )
            return
        self._own = read.catalogue
        if read.problems:
            why = translate("materials set", "something in it cannot be used: {problem}")
            self._set_aside(path, why.format(problem=read.problems[0]))

    def _set_aside(self, path: Path, why: str) -> None:
        """Keep a file that cannot be used as it is, and write what of it holds in its place."""
        try:
            kept = next(
                one
                for one in (
                    path.with_name(f"{path.stem}.kept-{number}{path.suffix}")
                    for number in range(1, _MOST_KEPT)
                )
                if not one.exists()
            )
            path.replace(kept)
        except (OSError, StopIteration) as error:
            self._may_write = False
            reason = errno.errorcode.get(getattr(error, "errno", None) or 0, "")
            text = translate(
                "materials set",
                "The laboratory's materials {path} are left alone, because {why} What you change"
                " holds until the program ends; move the file away to keep changes again. {reason}",
            )
            self.problem = text.format(path=path, why=why, reason=reason).rstrip()
            return
        self.problem = translate(
            "materials set",
            "The laboratory's materials were not read as they are, because {why} All other entries"
            " hold; the file as it was is kept as {kept}.",
        ).format(why=why, kept=kept)
        try:
            self._write(self._own)
        except StainmapError as error:
            more = translate("materials set", "Changes cannot be written. {error}")
            self.problem = f"{self.problem} {more.format(error=error)}"


def export_entries(path: Path, chosen: tuple[Material, ...], catalogue: Catalogue) -> None:
    """Write entries, and the ions and stumps they refer to, as a materials file.

    Raises
    ------
    StainmapError
        If the file cannot be written.
    """
    out = Catalogue()
    for one in (*(found for own in chosen for found in needed_by(own, catalogue)), *chosen):
        out = with_entry(out, one)
    write_catalogue(path, out, comment="Materials of a laboratory, exported by stainmap.")


def needed_by(material: Material, catalogue: Catalogue) -> tuple[Material, ...]:
    """Return the ions of a liquid, or the stumps that a block's colours were measured over."""
    names: list[tuple[MaterialKind, str]] = []
    if isinstance(material, Liquid):
        names = [(MaterialKind.ION, ion) for ion, _ in material.amplitudes_per_mm]
    elif isinstance(material, Block):
        names = [
            (MaterialKind.STUMP, layer.nominal.measurement.backing) for layer in material.layers
        ]
    found = (entry(catalogue, of, name) for of, name in dict.fromkeys(names))
    return tuple(one for one in found if one is not None)


def _check_name(name: str, kind: MaterialKind) -> None:
    if not name.strip():
        raise CatalogueError(
            translate("materials set", "The {kind} has no name.").format(kind=value_word(kind)),
            advice=translate("materials set", "Give it one."),
        )
    if len(name) > _MOST_LETTERS or not name.isprintable():
        raise CatalogueError(
            translate(
                "materials set",
                "The name of the {kind} is too long, or has signs that cannot be printed.",
            ).format(kind=value_word(kind)),
            advice=translate("materials set", "Give at most {most} letters on one line.").format(
                most=_MOST_LETTERS
            ),
        )


def _refuse_namesake(
    kind: MaterialKind, one: Material, there: Material | None, base: Catalogue
) -> None:
    if kind is MaterialKind.DYE:
        if entry(base, kind, one.name) is None:
            raise CatalogueError(
                translate(
                    "materials set", "Jars hold drops of three dyes, and '{name}' is none of them."
                ).format(name=one.name),
                advice=translate(
                    "materials set", "Give the entry the name of the dye whose place it takes."
                ),
            )
        if there is None or entry(base, kind, one.name) == there:
            return
    if there is not None:
        raise CatalogueError(
            translate(
                "materials set", "There already is a {kind} called '{name}', with other numbers."
            ).format(kind=value_word(kind), name=one.name),
            advice=translate("materials set", "Give one of the two another name."),
        )
