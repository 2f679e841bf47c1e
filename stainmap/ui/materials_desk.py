"""The materials at work: the laboratory's set, what of it comes into the open case, and files."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSettings, QTimer, Signal
from PySide6.QtWidgets import QInputDialog, QMessageBox, QWidget

from stainmap.app.change import Change
from stainmap.app.job import JobRunner
from stainmap.app.materials import Material, MaterialKind, entries, entry, kind_of
from stainmap.app.materials_case import (
    only_in_case,
    refuse_used,
    short_standing,
    standing_in_case,
    with_material,
    without_material,
)
from stainmap.app.materials_form import new_entry, renamed_copy
from stainmap.app.materials_set import NAME, OwnMaterials, export_entries
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.material import Block, Catalogue
from stainmap.ui import materials_words as words
from stainmap.ui.materials_files import CSV, TOML, MaterialFiles
from stainmap.ui.materials_list import CASE, OWN, STARTER, WHOSE_WORDS, Listed
from stainmap.words import translate, value_word

if TYPE_CHECKING:
    from stainmap.app.materials_spectra import Fitted
    from stainmap.predict.blocks import SolvedBlock
    from stainmap.ui.materials_window import MaterialsWindow


class MaterialsDesk(QObject):
    """Holds the laboratory's set, gives it to new cases, and edits it in a window.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(
        self, session: Session, settings: QSettings, runner: JobRunner, window: QWidget
    ) -> None:
        super().__init__(window)
        self._session, self._runner, self._window = session, runner, window
        self._files = MaterialFiles(settings)
        path = Path(settings.fileName()).with_name(NAME)
        self.store = OwnMaterials(path, session.materials)
        session.materials = self.store.all
        if self.store.problem:
            # Once everybody listens.
            QTimer.singleShot(0, self, lambda: self.said.emit(self.store.problem))
        self.view: MaterialsWindow | None = None
        self._drafts: dict[tuple[MaterialKind, str], Material] = {}
        self._at: tuple[str, str] = ("", "")

    # --- the window ------------------------------------------------------------------------

    def open(self) -> None:
        """Show the window there is for materials."""
        if self.view is None:
            self.view = self._made()
        self._show()
        self.view.show()
        self.view.raise_()
        self.view.activateWindow()
        if self.store.problem:
            self.view.editor.note.warn(self.store.problem)

    def refresh(self, change: Change) -> None:
        """Show what the open case has now."""
        shown = self.view is not None and self.view.isVisible()
        if shown and change.touches("opened", "materials", "plan", "programme", "backings"):
            self._show()

    def may_leave(self) -> bool:
        """Ask about changes that are not kept yet; False if the user wants to go on with them."""
        if not self._drafts:
            return True
        kinds = QMessageBox.StandardButton
        answer = QMessageBox.question(
            self.view or self._window,
            translate("materials desk", "Materials"),
            words.unkept([name for _, name in self._drafts]),
            kinds.Save | kinds.Discard | kinds.Cancel,
            kinds.Save,
        )
        if answer == kinds.Cancel:
            return False
        if answer == kinds.Discard:
            self._drafts.clear()
            return True
        try:
            for draft in tuple(self._drafts.values()):
                self._kept(draft)
        except StainmapError as error:
            self._warn(str(error))
            return False
        return True

    @property
    def _here(self) -> MaterialsWindow:
        if self.view is None:
            self.view = self._made()
        return self.view

    def _made(self) -> MaterialsWindow:
        # Asked for by few on any one day, and the start of the window is waited for.
        from stainmap.ui.materials_window import MaterialsWindow  # noqa: PLC0415

        view = MaterialsWindow(self.may_leave, self._window)
        view.kind_chosen.connect(lambda _kind: self._show())
        view.list.looked_at.connect(self._look_at)
        view.add_asked.connect(lambda: self._tried(self._add))
        view.copy_asked.connect(lambda: self._tried(self._copy))
        view.rename_asked.connect(lambda: self._tried(self._rename))
        view.remove_asked.connect(lambda: self._tried(self._remove))
        view.import_asked.connect(self._import)
        view.export_asked.connect(lambda: self._tried(self._export))
        view.undo_asked.connect(self._session.undo)
        view.redo_asked.connect(self._session.redo)
        editor = view.editor
        editor.edited.connect(self._edited)
        editor.keep_asked.connect(self._keep)
        editor.discard_asked.connect(self._discard)
        editor.put_asked.connect(lambda: self._tried(self._put))
        editor.solve_asked.connect(self._solve)
        editor.read_asked.connect(lambda: self._tried(self._read))
        editor.write_asked.connect(lambda: self._tried(self._write))
        return view

    # --- what is shown ---------------------------------------------------------------------

    @property
    def _everything(self) -> Catalogue:
        return self.store.all

    def _lines(self, kind: MaterialKind) -> list[Listed]:
        case = self._session.case
        lines = []
        for one in entries(self._everything, kind):
            whose = OWN if self.store.is_own(kind, one.name) else STARTER
            changed = (kind, one.name) in self._drafts
            standing = standing_in_case(case, one)
            lines.append(
                Listed(
                    material=one,
                    whose=whose,
                    standing=standing,
                    short=short_standing(case, one),
                    changed=changed,
                )
            )
        for one in only_in_case(case, kind, self._everything):
            standing = standing_in_case(case, one)
            short = short_standing(case, one)
            lines.append(Listed(material=one, whose=CASE, standing=standing, short=short))
        return lines

    def _show(self, name: str = "") -> None:
        if self.view is not None:
            self.view.list.fill(self._lines(self.view.kind), name or self._at[0])

    def _look_at(self, name: str, whose: str) -> None:
        if self.view is None:
            return
        self._at = (name, whose)
        material = self._shown()
        parts = [translate("materials list", WHOSE_WORDS[whose])]
        if material is not None:
            parts.append(standing_in_case(self._session.case, material))
        standing = " \N{MIDDLE DOT} ".join(one for one in parts if one)
        draft = self._drafts.get((self.view.kind, name)) if whose == OWN else None
        self.view.editor.show_entry(
            draft or material, self._catalogue(whose), standing, editable=whose == OWN
        )
        self._set_state()

    def _shown(self) -> Material | None:
        """Return the entry that is looked at, as it is kept."""
        name, whose = self._at
        if self.view is None:
            return None
        return entry(self._catalogue(whose), self.view.kind, name)

    def _catalogue(self, whose: str) -> Catalogue:
        case = self._session.case
        return case.materials if whose == CASE and case is not None else self._everything

    def _set_state(self) -> None:
        if self.view is None:
            return
        material, case, kind = self._shown(), self._session.case, self.view.kind
        changed = (kind, self._at[0]) in self._drafts and self._at[1] == OWN
        here = None if case is None else entry(case.materials, kind, self._at[0])
        own = self._at[1] == OWN
        self.view.editor.set_state(
            changed=changed,
            has_case=case is not None,
            can_put=material is not None and here != material and not changed,
        )
        dye = kind is MaterialKind.DYE
        self.view.buttons["Add"].setEnabled(not dye)
        self.view.buttons["Rename"].setEnabled(own and not dye)
        self.view.buttons["Remove"].setEnabled(material is not None and self._at[1] != STARTER)
        self.view.buttons["Copy"].setEnabled(material is not None)

    # --- what is edited --------------------------------------------------------------------

    def _edited(self) -> None:
        draft, kept = self._here.editor.draft, self._shown()
        if draft is None or self._at[1] != OWN:
            return
        key = kind_of(draft), draft.name
        if draft == kept:
            self._drafts.pop(key, None)
        else:
            self._drafts[key] = draft
        self._set_state()

    def _discard(self) -> None:
        if self.view is not None:
            self._drafts.pop((self.view.kind, self._at[0]), None)
            self._show()

    def _keep(self) -> None:
        draft = None if self.view is None else self.view.editor.draft
        if draft is None:
            return
        self._tell(translate("materials desk", "Checking it…"))
        self._runner.start(
            translate("materials desk", "Checking the material"),
            lambda _progress: self.store.check(draft),
            on_done=lambda _none: self._tried(lambda: self._checked(draft)),
            on_failed=lambda error: self._warn(str(error)),
        )

    def _checked(self, draft: Material) -> None:
        self._kept(draft)
        self._show()
        self._tell(words.kept(draft.name), self._in_case_words([draft]))

    def _kept(self, material: Material) -> None:
        """Keep an entry in the set, and in the open case where that is wanted."""
        self.store.keep(material)
        self._drafts.pop((kind_of(material), material.name), None)
        self._session.materials = self.store.all
        self._into_case([material], words.change_step(material))

    def _add(self) -> None:
        kind = self._here.kind
        name = self.store.free_name(kind, words.new_name(kind))
        made = new_entry(kind, name, self._everything)
        self._new(made, words.first_copied(kind, name))

    def _copy(self) -> None:
        material, kind = self._here.editor.draft, self._here.kind
        if material is None:
            return
        if kind is MaterialKind.DYE:
            if self.store.is_own(kind, material.name):
                raise words.own_dye()
            self._new(material, words.dye_replaced(material.name))
            return
        made = renamed_copy(material, self.store.free_name(kind, material.name))
        self._new(made, words.own_copy(made.name))

    def _new(self, material: Material, sentence: str) -> None:
        self.store.keep(material)
        self._session.materials = self.store.all
        self._into_case([material], words.add_step(material))
        self._at = (material.name, OWN)
        self._show()
        self._tell(sentence, self._in_case_words([material]))

    def _rename(self) -> None:
        kind, (name, whose) = self._here.kind, self._at
        if whose != OWN:
            raise words.not_own()
        if (kind, name) in self._drafts:
            raise words.not_kept()
        new, said = QInputDialog.getText(
            self._here,
            translate("materials desk", "Rename {kind}").format(kind=value_word(kind)),
            translate("materials desk", "New name of {name}:").format(name=name),
            text=name,
        )
        if not said or new.strip() == name:
            return
        material = self.store.rename(kind, name, new)
        self._session.materials = self.store.all
        self._into_case([material], words.add_step(material))
        self._at = (material.name, OWN)
        self._show()
        case = self._session.case
        stays = case is not None and entry(case.materials, kind, name) is not None
        self._tell(words.renamed(name, material.name, stays_in_case=stays))

    def _remove(self) -> None:
        kind, case = self._here.kind, self._session.case
        names = self._here.list.chosen or (self._at[0],)
        for name in names:
            if case is not None and entry(case.materials, kind, name) is not None:
                refuse_used(case, kind, name)
            own = self.store.is_own(kind, name)
            if own:
                self.store.remove(kind, name)
                self._drafts.pop((kind, name), None)
                self._session.materials = self.store.all
            elif entry(self.store.base, kind, name) is not None:
                self.store.remove(kind, name)  # says that it comes with the program
            if case is not None:
                self._out_of_case(kind, name)
        self._show()
        self._tell(translate("materials desk", "Removed: {names}.").format(names=", ".join(names)))

    # --- the open case ---------------------------------------------------------------------

    def _out_of_case(self, kind: MaterialKind, name: str) -> None:
        back = entry(self.store.base, kind, name)
        self._session.edit(
            words.remove_step(kind, name),
            lambda case: without_material(case, kind, name, back),
        )

    def _into_case(self, materials: Sequence[Material], label: str) -> None:
        if self._session.case is None or self.view is None or not self.view.editor.also.isChecked():
            return
        everything = self.store.all

        def change(case: Case) -> Case:
            for one in materials:
                case = with_material(case, one, everything)
            return case

        self._session.edit(label, change)

    def _in_case_words(self, materials: Sequence[Material]) -> str:
        case = self._session.case
        if case is None:
            return ""
        inside = all(entry(case.materials, kind_of(one), one.name) == one for one in materials)
        return words.case_changed() if inside else words.case_unchanged()

    def _put(self) -> None:
        material = self._shown()
        if material is None:
            return
        everything = self._everything
        label = words.put_step(material)
        self._session.edit(label, lambda case: with_material(case, material, everything))
        self._show()
        self._tell(words.into_case(material))

    # --- colours and spectra ---------------------------------------------------------------

    def _solve(self) -> None:
        """Say, layer by layer, which absorption a nominal colour means and how near it comes."""
        from stainmap.app.materials_solving import solve_layers  # noqa: PLC0415

        block = None if self.view is None else self.view.editor.draft
        if not isinstance(block, Block):
            return
        catalogue = self._catalogue(self._at[1])
        self._tell(translate("materials desk", "Solving…"))
        self._runner.start(
            translate("materials desk", "Solving a block"),
            lambda _progress: solve_layers(block, catalogue),
            on_done=self._solved,
            on_failed=lambda error: self._warn(str(error)),
        )

    def _solved(self, found: Sequence[SolvedBlock]) -> None:
        from stainmap.app.materials_solving import is_reached, solved_words  # noqa: PLC0415

        said = [solved_words(at, one) for at, one in enumerate(found, start=1)]
        far = not all(map(is_reached, found))
        (self._warn if far else self._tell)(" ".join(said))

    def _read(self) -> None:
        from stainmap.app.materials_spectra import read_into, readable  # noqa: PLC0415

        draft = self._here.editor.draft
        if draft is None:
            return
        of = self._files.which(
            self._here, readable(draft), translate("materials desk", "Read a spectrum")
        )
        if of is None:
            return
        path = self._files.to_read(self._here, translate("materials desk", "Read a spectrum"), CSV)
        if path is None:
            return
        catalogue, layer = self._everything, self._here.editor.current_node
        self._runner.start(
            translate("materials desk", "Reading a spectrum"),
            lambda _progress: read_into(path, draft, of, catalogue, self._layer(draft, layer)),
            on_done=lambda found: self._fitted(draft, found),
            on_failed=lambda error: self._warn(str(error)),
        )

    def _fitted(self, draft: Material, found: Fitted) -> None:
        if self.view is not None and self.view.editor.draft is draft:
            self.view.editor.take_draft(found.material)
            self._tell(found.said)

    def _write(self) -> None:
        from stainmap.app.materials_spectra import write_spectrum, written  # noqa: PLC0415

        draft = self._here.editor.draft
        if draft is None:
            return
        of = self._files.which(
            self._here, written(draft), translate("materials desk", "Write a spectrum")
        )
        if of is None:
            return
        path = self._files.to_write(
            self._here,
            translate("materials desk", "Write a spectrum"),
            f"{draft.name} {of}.csv",
            CSV,
        )
        if path is not None:
            layer = self._layer(draft, self._here.editor.current_node)
            write_spectrum(path, draft, of, self._catalogue(self._at[1]), layer)
            self._tell(words.written_to(path))

    @staticmethod
    def _layer(material: Material, at: int) -> int:
        return min(at, len(material.layers) - 1) if isinstance(material, Block) else 0

    # --- files -----------------------------------------------------------------------------

    def _import(self) -> None:
        path = self._files.to_read(
            self._here, translate("materials desk", "Import materials"), TOML
        )
        if path is None:
            return
        self._runner.start(
            translate("materials desk", "Importing materials"),
            lambda _progress: self.store.take_file(path),
            on_done=lambda found: self._tried(lambda: self._imported(path, *found)),
            on_failed=lambda error: self._warn(str(error)),
        )

    def _imported(self, path: Path, added: tuple[Material, ...], wrong: tuple[str, ...]) -> None:
        self._session.materials = self.store.all
        if added:
            self._into_case(added, words.import_step(path))
            if self.view is not None and not any(kind_of(a) is self.view.kind for a in added):
                self.view.choose_kind(kind_of(added[0]))
        self._show()
        sentence = words.imported(added)
        if not wrong:
            self._tell(sentence, self._in_case_words(added) if added else "")
            return
        self._warn(f"{sentence} {words.left_out(wrong)}")

    def _export(self) -> None:
        kind, catalogue = self._here.kind, self._catalogue(self._at[1])
        chosen = [entry(catalogue, kind, name) for name in self._here.list.chosen]
        found = tuple(one for one in chosen if one is not None)
        if not found:
            raise words.nothing_chosen()
        name = f"{found[0].name}.toml" if len(found) == 1 else f"{kind.heading.lower()}.toml"
        path = self._files.to_write(
            self._here, translate("materials desk", "Export materials"), name, TOML
        )
        if path is not None:
            export_entries(path, found, catalogue)
            self._tell(words.exported(found, path))

    # --- words -----------------------------------------------------------------------------

    def _tried(self, do: Callable[[], object]) -> None:
        try:
            do()
        except StainmapError as error:
            self._warn(str(error))

    def _tell(self, *sentences: str) -> None:
        if self.view is not None:
            self.view.editor.note.tell(" ".join(one for one in sentences if one))

    def _warn(self, sentence: str) -> None:
        if self.view is not None:
            self.view.editor.note.warn(sentence)
        self.said.emit(sentence)
