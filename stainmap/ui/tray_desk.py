"""The tray at work: a window beside the crown, which follows the open case and the files."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from stainmap.app.change import Change
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.files.case_file import SUFFIX as CASE_SUFFIX
from stainmap.files.tray_file import SUFFIX as TRAY_SUFFIX
from stainmap.files.tray_file import read_tray, write_tray
from stainmap.model.bench_record import BenchRecord, BenchStage
from stainmap.model.case import Case
from stainmap.model.tray import Tray, TrayEntry
from stainmap.paper.page_size import PageSize
from stainmap.ui.asking import ask
from stainmap.ui.printing_flow import PrintingFlow
from stainmap.words import marked, translate, value_word

if TYPE_CHECKING:
    from stainmap.app.tray import LaidCase, LaidTray
    from stainmap.app.tray_day import TrayDay
    from stainmap.planning.unit_state import UnitState
    from stainmap.ui.tray_dialog import TrayDialog

# Several changes in a row are followed once.
_FOLLOW_MS = 250
_FOLLOWED = ("plan", "bench", "zones", "accents", "code", "units", "programme", "printed")
_MARKING = marked("tray desk", "Writing into the files of the cases…")
Stamp = tuple[int, int]


class TrayDesk(QObject):
    """Lays a tray, keeps it in step with the window, and changes cases that lie on it.

    Every step can be taken back: what is done to the open case by the window's undo as well, what
    is done to the tray and to files by the tray's own.

    Signals
    -------
    said
        A sentence for the status line.
    case_asked
        File of a case that is to be opened in the window.
    """

    said = Signal(str)
    case_asked = Signal(object)

    def __init__(
        self,
        session: Session,
        runner: JobRunner,
        window: QWidget,
        prepare: Callable[[PrintingFlow], PageSize],
    ) -> None:
        super().__init__(window)
        self._session, self._runner, self._window = session, runner, window
        self._prepare = prepare
        self.dialog: TrayDialog | None = None
        self._laid: LaidTray | None = None
        self._read: dict[Path, tuple[Stamp, LaidCase]] = {}
        self._drafts: dict[Path, tuple[Case, UnitState]] = {}
        self._measuring: Job[UnitState] | None = None
        self._done: list[tuple[str, Callable[[], None]]] = []
        self._said: list[str] = []
        self._follow = QTimer(self, singleShot=True, interval=_FOLLOW_MS)
        self._follow.timeout.connect(self._lay_again)

    # --- the window of the tray ----------------------------------------------------------

    def open(self) -> None:
        """Show the tray, the open case on it if it has been saved."""
        from stainmap.ui.tray_dialog import entries_of  # noqa: PLC0415

        if self.dialog is None:
            self.dialog = self._new_dialog()
        dialog = self.dialog
        dialog.show()
        dialog.raise_()
        dialog.activateWindow()
        path = self._open_path()
        if path is not None and path not in {e.path for e in dialog.tray.entries}:
            dialog.add_entries(entries_of([str(path)]))

    def close(self) -> None:
        """Put the tray away for good."""
        if self.dialog is not None:
            self.dialog.close()

    def _new_dialog(self) -> TrayDialog:
        from stainmap.ui.tray_dialog import TrayDialog  # noqa: PLC0415

        dialog = TrayDialog(self._window)
        dialog.laid.connect(self._lay)
        dialog.add_asked.connect(self._add)
        dialog.open_asked.connect(self._open_tray)
        dialog.keep_asked.connect(self._keep)
        dialog.case_asked.connect(self.case_asked)
        dialog.off_asked.connect(self._take_off)
        dialog.state_asked.connect(self._ask_for_state)
        dialog.undo_asked.connect(self._undo)
        printing = PrintingFlow(self._session, self._runner, dialog, dialog)
        printing.said.connect(self._printed)
        dialog.sheets_asked.connect(
            lambda laid: printing.show_tray(laid, self._prepare(printing), self._folder())
        )
        dialog.finished.connect(printing.close)
        return dialog

    def _printed(self, sentence: str) -> None:
        if self.dialog is not None:
            self.dialog.say(sentence)
            self._follow.start()  # files of cases know what was printed of them

    # --- following -----------------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Follow what is done to the open case, while the tray is seen."""
        dialog = self.dialog
        if dialog is None or not dialog.isVisible() or not dialog.tray.entries:
            return
        if change.touches("opened", "file", "outcome", *_FOLLOWED):
            self._follow.start()

    def _lay_again(self) -> None:
        if self.dialog is not None and self.dialog.tray.entries:
            self._lay(self.dialog.tray)

    def _open_case(self) -> LaidCase | None:
        """Return the open case as it lies on a tray; None if it has no file or no coats yet."""
        from stainmap.app.tray import laid_case  # noqa: PLC0415

        path, prediction = self._session.path, self._session.prediction
        if path is None or prediction is None or not self._session.is_up_to_date:
            return None
        case = prediction.case
        return laid_case(path, case, prediction.coats)

    def _known(self) -> list[LaidCase]:
        """Return the cases that need not be read again."""
        own = self._open_case()
        known = [] if own is None else [own]
        here = None if own is None else own.entry.path
        known += [
            laid
            for path, (stamp, laid) in self._read.items()
            if path != here and stamp == _stamp(path)
        ]
        return known

    def _lay(self, tray: Tray) -> None:
        from stainmap.app.tray import lay_tray  # noqa: PLC0415
        from stainmap.app.tray_day import tray_day  # noqa: PLC0415

        known = self._known()
        own = self._session.path

        def work(progress: Progress) -> TrayDay:
            return tray_day(
                lay_tray(tray, progress, known=known),
                datetime.now().astimezone().replace(second=0, microsecond=0),
            )

        def done(day: TrayDay) -> None:
            dialog, laid = self.dialog, day.laid
            if dialog is None or [one.path for one in laid.tray.entries] != [
                one.path for one in dialog.tray.entries
            ]:
                return
            self._laid = laid
            for one in laid.cases:
                path = one.entry.path
                # The open case is not what its file holds.
                if own is None or path != own.resolve():
                    self._read[path] = (_stamp(path), replace(one, labelled=one.case))
            dialog.set_laid(day, self._states(laid), self._open_path())
            if self._said:
                dialog.say("\n".join(self._said))
                self._said = []
            self._measure(laid)

        self._runner.start(
            translate("tray desk", "Reading the tray"),
            work,
            on_done=done,
            on_failed=lambda error: self._problem(str(error)),
        )

    def _open_path(self) -> Path | None:
        path = self._session.path
        return None if path is None else path.resolve()

    # --- how far they are ----------------------------------------------------------------

    def _states(self, laid: LaidTray) -> Mapping[Path, UnitState]:
        return {one.entry.path: self._state(one) for one in laid.cases}

    def _state(self, one: LaidCase) -> UnitState:
        from stainmap.planning.unit_state import unit_state  # noqa: PLC0415

        known, prediction = self._drafts.get(one.entry.path), self._session.prediction
        if known is not None and known[0] is one.case:
            return known[1]
        if prediction is None or prediction.case is not one.case:
            return unit_state(one.case, one.entry.plan_hash)
        state = unit_state(one.case, one.entry.plan_hash, prediction.shape.wall_mm)
        self._drafts[one.entry.path] = (one.case, state)
        return state

    def _measure(self, laid: LaidTray) -> None:
        """Measure the walls of cases that may be drafts for them, one after the other."""
        from stainmap.planning.unit_state import needs_walls  # noqa: PLC0415

        if self._measuring is not None:
            self._measuring.cancel()
            self._measuring = None
        for one in laid.cases:
            known = self._drafts.get(one.entry.path)
            if needs_walls(one.case) and (known is None or known[0] is not one.case):
                self._measure_one(one)
                return

    def _measure_one(self, one: LaidCase) -> None:
        def done(state: UnitState) -> None:
            self._measuring = None
            self._drafts[one.entry.path] = (one.case, state)
            if self._laid is not None and self.dialog is not None:
                self.dialog.show_states(self._states(self._laid), self._open_path())
                self._measure(self._laid)

        job = self._runner.start(
            translate("tray desk", "Measuring walls"),
            lambda progress: _measured(one, progress),
            on_done=done,
            on_failed=lambda _error: None,
        )
        self._measuring = None if job.is_finished else job

    def _ask_for_state(self) -> None:
        """Ask what has been done of the chosen cases, and mark it in all of them."""
        from stainmap.ui.bench_dialog import BenchDialog  # noqa: PLC0415

        dialog, laid = self.dialog, self._laid
        if dialog is None or laid is None:
            return
        chosen = [one for one in laid.cases if one.entry.path in set(dialog.units.chosen)]
        if not chosen:
            return
        asked = BenchDialog(
            tuple(one.case.code for one in chosen),
            chosen[0].case.bench,
            datetime.now().astimezone(),
            dialog,
        )
        if not ask(asked):
            return
        self.mark([one.entry.path for one in chosen], asked.chosen, asked.at)

    def mark(self, paths: Sequence[Path], stage: BenchStage | None, at: datetime) -> None:
        """Mark a stage in cases, the open one among them or not, as one step of undo."""
        from stainmap.app.tray_bench import with_stage  # noqa: PLC0415

        what = translate("tray desk", "nothing done") if stage is None else value_word(stage)

        def done(before: Mapping[Path, BenchRecord], problems: Sequence[str]) -> None:
            count = _cases(len(before))
            if before:
                self._note(f"{what}, {count}", lambda: self._put_back(before))
            self._tell(
                [
                    translate("tray desk", "Marked as {what}: {count}.").format(
                        what=what, count=count
                    )
                ]
                if before
                else [],
                problems,
            )

        self._change(dict.fromkeys(paths, lambda case: with_stage(case, stage, at)), done)

    def _put_back(self, before: Mapping[Path, BenchRecord]) -> None:
        self._change(
            {path: partial(_put_back, old) for path, old in before.items()},
            lambda _found, problems: self._tell([], problems),
        )

    def _change(
        self,
        changes: Mapping[Path, Callable[[Case], Case]],
        done: Callable[[Mapping[Path, BenchRecord], Sequence[str]], None],
    ) -> None:
        """Change cases, by an edit what is open and others in their files, aside.

        `done` hears what had been done of those that were changed, and why others were not.
        """
        here, case = self._open_path(), self._session.case
        before: dict[Path, BenchRecord] = {}
        problems: list[str] = []
        if here in changes and here is not None and case is not None:
            try:
                changed = changes[here](case)  # refused before there is an edit
            except StainmapError as error:
                problems.append(f"{case.code}: {error}")
            else:
                before[here] = case.bench
                self._session.edit(
                    translate("tray desk", "state on the bench"), lambda _case: changed
                )
        others = {path: change for path, change in changes.items() if path != here}
        if others and self.dialog is not None:
            self.dialog.day.setText(translate("tray desk", _MARKING))

        def work(progress: Progress) -> tuple[dict[Path, BenchRecord], list[str]]:
            return _in_files(others, progress)

        self._runner.start(
            translate("tray desk", "Marking the state"),
            work,
            on_done=lambda found: done({**before, **found[0]}, [*problems, *found[1]]),
            on_failed=lambda error: done(before, [*problems, str(error)]),
        )

    def _tell(self, done: Sequence[str], problems: Sequence[str]) -> None:
        self._said = [*problems, *done]
        self._lay_again()

    # --- what lies on it -----------------------------------------------------------------

    def _note(self, what: str, back: Callable[[], None]) -> None:
        self._done.append((what, back))
        if self.dialog is not None:
            self.dialog.set_undo(what)

    def _undo(self) -> None:
        if self._done:
            _, back = self._done.pop()
            back()
        if self.dialog is not None:
            self.dialog.set_undo(self._done[-1][0] if self._done else "")

    def _change_tray(self, what: str, change: Callable[[TrayDialog], None]) -> None:
        dialog = self.dialog
        if dialog is None:
            return
        before = dialog.tray
        change(dialog)
        if [e.path for e in dialog.tray.entries] != [e.path for e in before.entries]:
            self._note(what, lambda: dialog.lay(before))

    def _take_off(self) -> None:
        count = 0 if self.dialog is None else len(self.dialog.units.chosen)
        if count:
            self._change_tray(
                translate("tray desk", "take off {cases}").format(cases=_cases(count)),
                lambda dialog: dialog.lay(dialog.without_chosen()),
            )

    def _add(self) -> None:
        from stainmap.ui.tray_dialog import entries_of  # noqa: PLC0415

        names, _ = QFileDialog.getOpenFileNames(
            self.dialog,
            translate("tray desk", "Add cases"),
            self._folder(),
            translate("tray desk", "Cases (*{ending})").format(ending=CASE_SUFFIX),
        )
        if names:
            entries: tuple[TrayEntry, ...] = entries_of(names)
            self._change_tray(
                translate("tray desk", "add cases"), lambda dialog: dialog.add_entries(entries)
            )

    def _open_tray(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self.dialog,
            translate("tray desk", "Open a tray"),
            self._folder(),
            translate("tray desk", "Trays (*{ending})").format(ending=TRAY_SUFFIX),
        )
        if not name:
            return
        try:
            tray = read_tray(Path(name))
        except StainmapError as error:
            self._problem(str(error))
            return
        self._change_tray(translate("tray desk", "open a tray"), lambda dialog: dialog.lay(tray))

    def _keep(self) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self.dialog,
            translate("tray desk", "Keep the tray"),
            self._folder(),
            translate("tray desk", "Trays (*{ending})").format(ending=TRAY_SUFFIX),
        )
        if not name or self.dialog is None:
            return
        path = Path(name) if name.endswith(TRAY_SUFFIX) else Path(name + TRAY_SUFFIX)
        try:
            write_tray(self.dialog.tray, path)
        except StainmapError as error:
            self._problem(str(error))
            return
        self.dialog.say(translate("tray desk", "Kept as {path}.").format(path=path))
        self.said.emit(translate("tray desk", "Kept as {path}.").format(path=path))

    def _problem(self, sentence: str) -> None:
        if self.dialog is not None:
            self.dialog.set_problem(sentence)

    def _folder(self) -> str:
        path = self._session.path
        return "" if path is None else str(path.parent)


def _put_back(record: BenchRecord, case: Case) -> Case:
    from stainmap.app.tray_bench import with_record  # noqa: PLC0415

    return with_record(case, record)


def _in_files(
    changes: Mapping[Path, Callable[[Case], Case]], progress: Progress
) -> tuple[dict[Path, BenchRecord], list[str]]:
    """Change cases in their files; return what had been done of them, and what went wrong."""
    from stainmap.app.tray_bench import edit_file  # noqa: PLC0415

    before: dict[Path, BenchRecord] = {}
    problems = []
    for number, (path, change) in enumerate(changes.items()):
        progress(number / len(changes), path.name)
        try:
            before[path] = edit_file(path, change)[0].bench
        except StainmapError as error:
            said = str(error)
            problems.append(said if path.name in said else f"{path.name}: {said}")
    return before, problems


def _measured(one: LaidCase, progress: Progress) -> UnitState:
    from stainmap.planning.unit_state import unit_state  # noqa: PLC0415
    from stainmap.predict.shape import crown_shape  # noqa: PLC0415

    shape = crown_shape(one.case, progress=progress)
    return unit_state(one.case, one.entry.plan_hash, shape.wall_mm)


def _stamp(path: Path) -> Stamp:
    """Return what changes when a file is written; nothing a file has if it cannot be looked at."""
    try:
        found = path.stat()
    except OSError:
        return (-1, -1)
    return (found.st_mtime_ns, found.st_size)


def _cases(count: int) -> str:
    return (
        translate("tray desk", "one case")
        if count == 1
        else translate("tray desk", "{count} cases").format(count=count)
    )
