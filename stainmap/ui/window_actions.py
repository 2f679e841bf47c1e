"""Menus, keys and the texts of the help menu."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from html import escape
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu, QMenuBar

from stainmap import __version__
from stainmap.paper.page_size import PageSize
from stainmap.paper.views import Side
from stainmap.ui import case_figures as figures
from stainmap.ui.asking import ask
from stainmap.ui.crown_picture import Look
from stainmap.ui.icons import icon
from stainmap.ui.key_map import keep_name, native, plain, with_key
from stainmap.ui.look_bar import LOOKS
from stainmap.ui.manual_desk import ManualDesk
from stainmap.ui.manual_places import PLACE
from stainmap.ui.manual_search import CONTENTS
from stainmap.ui.next_part import go_to_next_part
from stainmap.ui.theme import Scheme
from stainmap.ui.told_dialog import ToldDialog
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow

CAUTIONS = marked(
    "help",
    """<p><b>Stain liquids are acidic solutions of metal salts.</b> Gloves, goggles, and air
that is drawn away; keep to their safety data sheets. No liquid goes back into its bottle.</p>
<p><b>Ceramic dust</b> from milling and from cleaning is drawn off and not breathed in.</p>
<p><b>Ovens and fresh work are hot.</b> Crowns dry before they are sintered; wet ones crack.</p>
<p><b>Thin walls break.</b> Keep to the smallest wall the maker of the block allows.</p>
<p><b>What is shown is a prediction</b> with a stated uncertainty: a direction, not a match. The
materials that come with the program are invented, for demonstration: do not fire by them. The
makers' instructions for use, local rules and licensed practice decide.</p>""",
)

KEYS = marked(
    "help",
    """<table cellpadding="3">
<tr><td>turn</td><td>right drag, arrow keys</td></tr>
<tr><td>shift</td><td>middle drag, Shift and right drag, Shift and arrow keys</td></tr>
<tr><td>zoom at the pointer</td><td>wheel; plus and minus</td></tr>
<tr><td>whole crown</td><td>Home, Ctrl+0</td></tr>
<tr><td>occlusal, buccal, lingual, mesial, distal, inner</td><td>Ctrl+1 to Ctrl+6;
O B L M D I on the crown</td></tr>
<tr><td>flat views; which of them; which unit</td><td>Ctrl+F; W (rosette) O B L M D, A for
all; Page up, Page down, on the flat views</td></tr>
<tr><td>check the place under the pointer; section there; all lights</td>
<td>Ctrl+K; Ctrl+J; Ctrl+L</td></tr>
<tr><td>in the row: value alone</td><td>V on the crown</td></tr>
<tr><td>before the last step; the bare block</td><td>H, Shift+H held on the crown</td></tr>
<tr><td>compare plans; history; film of the plan</td><td>Ctrl+D; Ctrl+H; Ctrl+M</td></tr>
<tr><td>looks</td><td>Alt and the number on the bar</td></tr>
<tr><td>paint</td><td>left drag; Esc takes the stroke back; with Alt, or with
Crown, Brush moves the margin, a zone goes over the margin and takes it along</td></tr>
<tr><td>back from a question, a message, a reading</td><td>Esc</td></tr>
<tr><td>brush, eraser</td><td>P, E; [ and ] change the size</td></tr>
<tr><td>fill up to creases, line along a crease</td><td>F, C; click or Return on the crown,
Shift takes away, left drag turns, Esc goes back</td></tr>
<tr><td>chosen area: grow, shrink, smooth its edge</td><td>G, Shift+G, S</td></tr>
<tr><td>mirror mesial-distal, streaks, reset to the proposal</td><td>X, T, R</td></tr>
<tr><td>coats</td><td>digits in the table, 2-3 for a span, plus, minus, Delete; L locks a cell
</td></tr>
<tr><td>range of coats; copy, paste; move a step</td><td>Shift and arrows; Ctrl+C, Ctrl+V;
Ctrl+Shift with Left, Right, or drag its head</td></tr>
<tr><td>suggest coats; intake; tray, its sheets</td><td>Ctrl+G; Ctrl+I; Ctrl+T, Ctrl+P
</td></tr>
<tr><td>next part of the window, part before</td><td>F6, Shift+F6</td></tr>
<tr><td>settings; manual, at the page for what has the keyboard; this list</td>
<td>Ctrl+comma; F1; Ctrl+F1</td></tr>
<tr><td>paint an area instead of a step</td><td>choose its name (Left from the first step)</td></tr>
</table>""",
)

_SIDES = (Side.OCCLUSAL, Side.BUCCAL, Side.LINGUAL, Side.MESIAL, Side.DISTAL, Side.INNER)


class WindowActions(QObject):
    """All commands of a window, in its menus and at the right of its bar."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        bar = window.top.menus
        self._looks: dict[Look, QAction] = {}
        self._schemes: dict[Scheme, QAction] = {}
        self.manual = ManualDesk(window)
        self._file(self._menu(bar, marked("menu", "&File")))
        self._edit(self._menu(bar, marked("menu", "&Edit")))
        self._crown(self._menu(bar, marked("menu", "&Crown")))
        self._plan(self._menu(bar, marked("menu", "&Plan")))
        self._view(self._menu(bar, marked("menu", "&View")))
        self._practice(self._menu(bar, marked("menu", "P&ractice")))
        self._help(self._menu(bar, marked("menu", "&Help")))
        window.own_settings.keys.add_menus(bar)
        window.top.add_commands((self.open, self.save, self.undo, self.redo), words=False)
        window.top.add_commands((self.export, self.sheets), words=True)
        self.refresh()

    def _action(
        self,
        menu: QMenu,
        text: str,
        call: Callable[[], object],
        keys: QKeySequence.StandardKey | str | None = None,
        drawing: str = "",
        context: str = "menu",
    ) -> QAction:
        words = translate(context, text)
        action = QAction(words, self._window)
        keep_name(action, text)
        if keys is not None:
            action.setShortcut(QKeySequence(keys))
        if drawing:
            action.setIcon(icon(drawing))
            action.setIconVisibleInMenu(False)
        action.setToolTip(with_key(plain(words), action.shortcut()))
        action.triggered.connect(lambda _checked: call())
        menu.addAction(action)
        return action

    @staticmethod
    def _menu(above: QMenuBar | QMenu, text: str) -> QMenu:
        menu = above.addMenu(translate("menu", text))
        keep_name(menu.menuAction(), text)
        return menu

    def _file(self, menu: QMenu) -> None:
        window, keys = self._window, QKeySequence.StandardKey
        self.open = self._action(
            menu, marked("menu", "&Open..."), window.ask_to_open, keys.Open, "open"
        )
        window.recent.fill(self._menu(menu, marked("menu", "Open &recent")))
        self._action(menu, marked("menu", "Open the sa&mple"), window.open_sample)
        menu.addSeparator()
        self.save: QAction = self._action(
            menu, marked("menu", "&Save"), window.saving.save, keys.Save, "save"
        )
        self.save_as = self._action(
            menu, marked("menu", "Save &as..."), window.saving.save_as, "Ctrl+Shift+S"
        )
        menu.addSeparator()
        self.export: QAction = self._action(
            menu, marked("menu", "&Export..."), window.saving.export, "Ctrl+E", "export"
        )
        self.export.setIconText(translate("menu", "Export"))
        self.sheets: QAction = self._action(
            menu, marked("menu", "&Print sheets..."), self._preview, keys.Print, "print"
        )
        self.sheets.setIconText(translate("menu", "Sheets"))
        self.save_sheets = self._action(
            menu, marked("menu", "Save s&heets (A4)..."), partial(self._print, PageSize.A4)
        )
        self.letter = self._action(
            menu, marked("menu", "Save sheets (&Letter)..."), partial(self._print, PageSize.LETTER)
        )
        menu.addSeparator()
        self._action(menu, marked("menu", "&Quit"), window.close, "Ctrl+Q")

    def _preview(self) -> None:
        window = self._window
        window.printing.show_preview(window.own_settings.settings.page, window.saving.folder)

    def _print(self, page: PageSize) -> None:
        window = self._window
        window.printing.ask_and_write(page, window.saving.folder)

    def _edit(self, menu: QMenu) -> None:
        window, keys = self._window, QKeySequence.StandardKey
        self.undo = self._action(
            menu, marked("menu", "&Undo"), window.session.undo, keys.Undo, "undo"
        )
        self.redo = self._action(
            menu, marked("menu", "&Redo"), window.session.redo, "Ctrl+Shift+Z", "redo"
        )
        menu.addSeparator()
        entry = window.plan.table.entry
        self._coats = [
            self._action(menu, marked("menu", "Cu&t coats"), entry.cut, keys.Cut),
            self._action(menu, marked("menu", "&Copy coats"), entry.copy, keys.Copy),
            self._action(
                menu,
                marked("menu", "Copy coats with &names"),
                partial(entry.copy, heads=True),
                "Ctrl+Shift+C",
            ),
            self._action(menu, marked("menu", "&Paste coats"), entry.paste, keys.Paste),
        ]
        menu.addSeparator()
        own = window.own_settings
        settings = self._action(menu, marked("menu", "Se&ttings..."), own.open, keys.Preferences)
        settings.setMenuRole(QAction.MenuRole.PreferencesRole)
        if settings.shortcut().isEmpty():
            settings.setShortcut(QKeySequence("Ctrl+,"))

    def _crown(self, menu: QMenu) -> None:
        """List what of the reading a person can correct, and what is wanted of the crown."""
        window, corrections = self._window, self._window.corrections
        self.target = self._action(
            menu, marked("menu", "Say what is &wanted..."), window.intake.ask_for_target
        )
        menu.addSeparator()
        self.teeth = self._action(
            menu, marked("menu", "&Tooth and roles..."), corrections.ask_for_teeth
        )
        self.mesial = self._action(
            menu, marked("menu", "Say where &mesial is..."), window.flow.ask_for_mesial
        )
        self.bite = self._action(
            menu, marked("menu", "Say which side &bites..."), window.flow.ask_for_bite
        )
        self.wall = self._action(
            menu,
            marked("menu", "Wall where there is no &inner surface..."),
            corrections.ask_for_wall,
        )
        self.read = self._action(
            menu, marked("menu", "&How it was read..."), corrections.show_reading
        )
        self.notes = self._action(
            menu, marked("menu", "What was &noticed..."), window.flow.show_notes
        )
        self.cut = self._action(
            menu, marked("menu", "&Cut off the crown..."), window.flow.cut_off_the_crown
        )
        menu.addSeparator()
        self.propose = self._action(
            menu, marked("menu", "&Propose zones again"), corrections.propose_again
        )
        self.sliders = self._action(
            menu, marked("menu", "How &far zones reach..."), window.sliders.open
        )
        self.margin = self._action(menu, marked("menu", "Brush moves the ma&rgin"), lambda: None)
        self.margin.setCheckable(True)
        self.margin.toggled.connect(window.desk.let_move_margin)
        corrections.margin_wanted.connect(partial(self.margin.setChecked, True))

    def _plan(self, menu: QMenu) -> None:
        """List what surrounds the coats: hand, backing, furnace, and what comes after it."""
        dialogs, flow = self._window.dialogs, self._window.flow
        self._of_case = [
            self._action(
                menu, marked("menu", "&Intake..."), self._window.intake.ask_for_intake, "Ctrl+I"
            ),
            self._action(
                menu, marked("menu", "Suggest coats..."), self._window.suggest.open, "Ctrl+G"
            ),
            self._action(
                menu, marked("menu", "Co&mpare plans..."), self._window.ways.open_compare, "Ctrl+D"
            ),
            self._action(
                menu, marked("menu", "&Film of the plan"), self._window.ways.open_film, "Ctrl+M"
            ),
            self._action(menu, marked("menu", "&Hand and uptake..."), dialogs.ask_for_process),
            self._action(menu, marked("menu", "What &lies behind..."), dialogs.ask_for_backings),
        ]
        self.height = self._action(
            menu, marked("menu", "H&eight in the block..."), dialogs.ask_for_height
        )
        screw = self._action(
            menu, marked("menu", "Show where a &screw leaves..."), flow.ask_for_screw_channel
        )
        self._of_case.append(screw)
        self.unscrew = self._action(
            menu, marked("menu", "&Take the screw channel away"), dialogs.close_screw_channels
        )
        menu.addSeparator()
        self._of_case += [
            self._action(menu, marked("menu", "&Mix..."), self._window.run_desk.open_mixing),
            self._action(menu, marked("menu", "Compare &furnaces..."), dialogs.compare_furnaces),
            self._action(menu, marked("menu", "&Blank coupon..."), dialogs.ask_for_coupon),
            self._action(menu, marked("menu", "&After sintering..."), dialogs.ask_for_finish),
        ]

        menu.addSeparator()
        self.connectors = self._action(
            menu, marked("menu", "Accent &over connectors"), self._window.run_desk.paint_connectors
        )
        self._of_case.append(
            self._action(
                menu, marked("menu", "State on the benc&h..."), self._window.run_desk.ask_for_state
            )
        )
        self._action(
            menu,
            marked("menu", "T&ray and its sheets..."),
            self._window.run_desk.open_tray,
            "Ctrl+T",
        )
        self._action(menu, marked("menu", "Materials..."), self._window.materials.open, "Ctrl+B")

    def _view(self, menu: QMenu) -> None:
        window = self._window
        group = QActionGroup(self)
        for entry in LOOKS:
            action = self._action(
                menu,
                entry.name,
                partial(window.set_look, entry.look),
                f"Alt+{entry.number}",
                context="look bar",
            )
            action.setCheckable(True)
            group.addAction(action)
            self._looks[entry.look] = action
        menu.addSeparator()
        sides = self._menu(menu, marked("menu", "Look &from"))
        for number, side in enumerate(_SIDES, start=1):
            look = partial(window.crown.look_from, side)
            self._action(sides, str(side), look, f"Ctrl+{number}", context="values")
        self._action(menu, marked("menu", "&Whole crown"), window.crown.fit, "Ctrl+0")
        flat = self._action(menu, marked("menu", "&Flat views"), lambda: None, "Ctrl+F")
        flat.setCheckable(True)
        flat.setChecked(window.flats.is_on)
        flat.toggled.connect(window.flats.switch)
        window.flats.switched.connect(flat.setChecked)
        menu.addSeparator()
        self._of_case += [
            self._action(
                menu, marked("menu", "Under all &lights..."), window.dialogs.show_lights, "Ctrl+L"
            ),
            self._action(
                menu, marked("menu", "Check this &point"), window.dialogs.check_point, "Ctrl+K"
            ),
            self._action(menu, marked("menu", "&Section here..."), window.sections.open, "Ctrl+J"),
        ]
        before = window.ways.before
        self._instead(menu, marked("menu", "&Before the last step"), before.show_before)
        self._instead(menu, marked("menu", "The bare bloc&k"), before.show_bare)
        curved = self._action(menu, marked("menu", "Correct for c&urvature"), lambda: None)
        curved.setCheckable(True)
        curved.toggled.connect(window.correct_curvature)
        menu.addSeparator()
        for name, dock in (
            ("Plan", window.plan_dock),
            ("Outcome", window.outcome_dock),
            ("Run", window.run_dock),
            ("History", window.ways.dock),
        ):
            keep_name(dock.toggleViewAction(), name)
            menu.addAction(dock.toggleViewAction())
        window.ways.dock.toggleViewAction().setShortcut(QKeySequence("Ctrl+H"))
        menu.addSeparator()
        for text, keys, step in (
            (marked("menu", "&Next part of the window"), "F6", 1),
            (marked("menu", "Part of the window &before"), "Shift+F6", -1),
        ):
            self._action(menu, text, partial(go_to_next_part, window, step), keys)
        schemes = self._menu(menu, marked("menu", "&Colours of the window"))
        scheme_group = QActionGroup(self)
        own = window.own_settings
        for scheme in Scheme:
            action = self._action(
                schemes, scheme.value, partial(own.set_scheme, scheme), context="values"
            )
            action.setCheckable(True)
            scheme_group.addAction(action)
            self._schemes[scheme] = action
        own.changed.connect(lambda settings: self._schemes[settings.scheme].setChecked(True))

    def _instead(self, menu: QMenu, text: str, show: Callable[[bool], None]) -> None:
        """List something that is shown in place of the open case until it is switched off."""
        before = self._window.ways.before
        action = self._action(menu, text, lambda: show(action.isChecked()))
        action.setCheckable(True)
        bare = show == before.show_bare
        before.changed.connect(
            lambda: action.setChecked(before.shows_bare if bare else before.shows_before)
        )
        self._of_case.append(action)

    def _practice(self, menu: QMenu) -> None:
        practice = self._window.practice
        self._action(
            menu, marked("menu", "&New practice..."), practice.new_practice, "Ctrl+Shift+N"
        )
        self._of_case.append(
            self._action(menu, marked("menu", "&Slips of this plan..."), practice.show_slips)
        )

    def _help(self, menu: QMenu) -> None:
        self._action(menu, marked("menu", "&Manual"), self.manual.show_for_focus, "F1")
        self._action(menu, marked("menu", "&Keys and mouse"), self._tell_keys, "Ctrl+F1")
        self._action(menu, marked("menu", "&Guided first plan"), self._window.guided.start)
        self._action(menu, marked("menu", "&Cautions"), self._tell_cautions)
        self._action(menu, marked("menu", "Check the &display..."), self._window.display.open)
        self._action(menu, marked("menu", "&Evidence"), lambda: self.manual.show("evidence.md"))
        self._action(menu, marked("menu", "&About stainmap"), self._about)

    def _tell_keys(self) -> None:
        """Show the list of keys, and below it those that somebody has changed."""
        no_key = translate("help", "no key")
        changed = [
            f"<tr><td>{escape(one.words)}</td><td>{escape(native(one.key)) or no_key}</td></tr>"
            for one in self._window.own_settings.keys.commands()
            if one.key != one.default
        ]
        rows = "".join(changed)
        head = translate("help", "Changed in the settings")
        own = f"<p><b>{head}</b></p><table>{rows}</table>" if changed else ""
        self._tell(
            translate("help", "Keys and mouse"), f"{translate('help', KEYS)}{own}", "keys.md"
        )

    def _tell_cautions(self) -> None:
        self._tell(translate("help", "Cautions"), translate("help", CAUTIONS), "cautions.md")

    def _tell(self, title: str, text: str, place: str) -> None:
        dialog = ToldDialog(title, text, self._window)
        dialog.setProperty(PLACE, place)
        ask(dialog)

    def _about(self) -> None:
        self._tell(
            f"stainmap {__version__}",
            translate(
                "help",
                "<p>Plans the staining of milled zirconia crowns and bridges before they are"
                " sintered.</p><p>A planning aid with stated uncertainty; not a shade guarantee and"
                " not medical advice.</p>",
            ),
            CONTENTS,
        )

    def mark_look(self, look: Look) -> None:
        """Mark a look as the one that is on."""
        self._looks[look].setChecked(True)

    def refresh(self) -> None:
        """Switch commands on and off, and name what undo and redo would do."""
        session = self._window.session
        history = session.history
        has_case = session.case is not None and not self._window.flow.is_aside
        for action in (
            self.save,
            self.save_as,
            self.export,
            self.sheets,
            self.save_sheets,
            self.letter,
            self.target,
            self.teeth,
            self.mesial,
            self.bite,
            self.read,
            self.cut,
            self.propose,
            self.sliders,
            self.margin,
        ):
            action.setEnabled(has_case)
        for action in (*self._of_case, *self._coats):
            action.setEnabled(has_case)
        case = session.case
        layered = case is not None and len(case.materials.block(case.plan.block).layers) > 1
        self.height.setEnabled(has_case and layered)
        self.connectors.setEnabled(has_case and case is not None and figures.has_connectors(case))
        self.unscrew.setEnabled(has_case and case is not None and bool(case.screw_channels))
        reading = None if case is None or not has_case else case.reading
        self.wall.setEnabled(reading is not None and reading.assumed_wall_mm is not None)
        self.notes.setEnabled(reading is not None and bool(reading.warnings))
        undo = None if history is None else history.undo_label
        redo = None if history is None else history.redo_label
        self.undo.setEnabled(has_case and undo is not None)
        self.redo.setEnabled(has_case and redo is not None)
        _name(self.undo, undo, translate("menu", "&Undo"), translate("menu", "&Undo {step}"))
        _name(self.redo, redo, translate("menu", "&Redo"), translate("menu", "&Redo {step}"))


def _name(action: QAction, step: str | None, alone: str, with_step: str) -> None:
    """Say on an entry and beside its button what it would take back or do again."""
    # A step is called by names that somebody gave: an ampersand in them is no mark of a letter.
    action.setText(with_step.format(step=step.replace("&", "&&")) if step else alone)
    words = with_step.replace("&", "").format(step=step) if step else plain(alone)
    action.setToolTip(with_key(words, action.shortcut()))
