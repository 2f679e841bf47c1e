"""The list of exercises: who practises, what is to be done next, and all there is."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFileDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QMessageBox,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.practising import (
    NextExercise,
    PracticeBook,
    fresh_exercise,
    level_reached,
    next_exercise,
)
from stainmap.errors import StainmapError
from stainmap.labbook.attempt import Attempt, trainee_code
from stainmap.practice.exercise import (
    FACTS,
    FAULTS,
    KINDS,
    LEVELS,
    SITTING_MINUTES,
    Kind,
    check_exercise,
)
from stainmap.practice.exercise_words import WORDS, exercise_text
from stainmap.practice.packs import SUFFIX, Pack, PackedExercise, read_pack, write_pack
from stainmap.practice.progress import REPEAT_DAYS
from stainmap.ui.plate import link_button
from stainmap.ui.practice_repeats import RepeatsDialog
from stainmap.ui.screen_room import resize_within_screen
from stainmap.ui.section import Hairline, SoftLabel
from stainmap.ui.theme import font
from stainmap.words import marked, translate

_LEVEL_WORDS = (
    marked("practice list", "by how it went"),
    marked("practice list", "easy"),
    marked("practice list", "middle"),
    marked("practice list", "hard"),
)
_SHOWN: tuple[Kind, ...] = (*(kind for kind in Kind if not kind.is_fault), FAULTS[0])


class PracticeList(QDialog):
    """Lets an exercise be chosen.

    Signals
    -------
    chosen
        `PackedExercise`, and the hash of the pack it came from or an empty string.
    sheet_asked
        The instructor's sheet is to be written.
    """

    chosen = Signal(object, str)
    sheet_asked = Signal()

    def __init__(
        self, book: PracticeBook, trainee: str, today: date, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("practice list", "Practice"))
        resize_within_screen(self, 720, 760)
        self._book, self._today = book, today
        self._attempts: tuple[Attempt, ...] = ()
        self._pack: Pack | None = None
        self._next: NextExercise | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 18, 24, 18)
        column.setSpacing(10)
        column.addLayout(self._who_row(trainee))
        self.trouble = _sentence("", 12)
        column.addWidget(self.trouble)
        column.addWidget(Hairline())
        self.why = _sentence("", 13)
        self.recommended = QPushButton()
        self.recommended.setProperty("main", True)
        self.recommended.clicked.connect(self._begin_next)
        row = QHBoxLayout()
        row.addWidget(self.why, 1)
        row.addWidget(self.recommended)
        column.addLayout(row)
        column.addWidget(Hairline())
        column.addLayout(self._level_row())
        self._area = QScrollArea()
        self._area.setAccessibleName(translate("practice list", "Exercises"))
        self._area.setWidgetResizable(True)
        column.addWidget(self._area, 1)
        column.addWidget(Hairline())
        column.addLayout(self._foot())
        self.buttons: dict[str, QPushButton] = {}
        self._take_name()

    def _who_row(self, trainee: str) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(10)
        label = QLabel(translate("practice list", "Your initials or a code"))
        self.name = QLineEdit(trainee)
        self.name.setMaxLength(24)
        self.name.setMaximumWidth(160)
        self.name.setPlaceholderText(translate("practice list", "as AB"))
        self.name.setAccessibleName(translate("practice list", "Initials or a code"))
        self.name.textChanged.connect(self._take_name)
        label.setBuddy(self.name)
        row.addWidget(label)
        row.addWidget(self.name)
        hint = SoftLabel(
            translate(
                "practice list",
                "Asked once; results are kept under it on this computer. {minutes} minutes"
                " a day are enough.",
            ).format(minutes=SITTING_MINUTES),
            12,
        )
        hint.setWordWrap(True)
        row.addWidget(hint, 1)
        return row

    def _level_row(self) -> QHBoxLayout:
        self.level = QComboBox()
        self.level.addItems([translate("practice list", word) for word in _LEVEL_WORDS])
        self.level.setAccessibleName(translate("practice list", "How hard"))
        row = QHBoxLayout()
        self.head = QLabel(translate("practice list", "All exercises"))
        self.head.setFont(font(15, 600))
        row.addWidget(self.head, 1)
        row.addWidget(QLabel(translate("practice list", "how hard")))
        row.addWidget(self.level)
        return row

    def _foot(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(20)
        self.open_pack = link_button(translate("practice list", "open a pack"))
        self.save_pack = link_button(translate("practice list", "save these as a pack"))
        self.sheet = link_button(translate("practice list", "instructor's sheet"))
        self.open_pack.clicked.connect(self._ask_for_pack)
        self.save_pack.clicked.connect(self._ask_where_to_save)
        self.sheet.clicked.connect(self.sheet_asked)
        self.repeats = link_button(translate("practice list", "repeats"))
        self.repeats.clicked.connect(self._ask_for_repeats)
        for button in (self.open_pack, self.save_pack, self.repeats, self.sheet):
            row.addWidget(button)
        row.addStretch(1)
        close = QPushButton(translate("practice list", "Close"))
        close.setAutoDefault(False)
        close.clicked.connect(self.reject)
        row.addWidget(close)
        return row

    # --- who practises -----------------------------------------------------------------------

    @property
    def trainee(self) -> str:
        """The code as it is kept, or an empty string while there is none."""
        try:
            return trainee_code(self.name.text())
        except StainmapError:
            return ""

    @property
    def pack(self) -> Pack | None:
        """The pack that is listed, None for all exercises."""
        return self._pack

    def _ask_for_repeats(self) -> None:
        if not self.trainee:
            self.trouble.setText(
                translate(
                    "practice list", "Say first whose repeats they are: type initials or a code."
                )
            )
            self.trouble.show()
            self.name.setFocus()
            return
        dialog = RepeatsDialog(self.trainee, self._book.repeat_days(self.trainee), self)
        if dialog.exec():
            try:
                self._book.set_repeat_days(self.trainee, dialog.chosen())
            except StainmapError as error:
                QMessageBox.warning(self, translate("practice list", "Not kept"), str(error))
            self._take_name()
        dialog.deleteLater()

    def _take_name(self) -> None:
        code = self.trainee
        self._attempts = self._book.attempts(code) if code else ()
        self._next = next_exercise(
            self._attempts,
            self._today,
            days=(self._book.repeat_days(code) if code else None) or REPEAT_DAYS,
            from_packs=self._book.from_packs() if code else None,
        )
        self._show()

    def _show(self) -> None:
        typed = bool(self.name.text().strip())
        trouble = self._book.trouble
        if typed and not self.trainee:
            try:
                trainee_code(self.name.text())
            except StainmapError as error:
                trouble = str(error)
        self.trouble.setText(trouble)
        self.trouble.setVisible(bool(trouble))
        ready = bool(self.trainee)
        if self._next is not None:
            title = exercise_text(FACTS[Kind(self._next.exercise.kind)].title)
            self.recommended.setText(title)
            self.why.setText(
                translate("practice list", "Next: {why}").format(why=self._next.why)
                if ready
                else translate("practice list", "Say who you are, then begin here.")
            )
        self.recommended.setEnabled(ready)
        self._fill(ready=ready)

    # --- the list ----------------------------------------------------------------------------

    def _fill(self, *, ready: bool) -> None:
        page = QWidget()
        grid = QGridLayout(page)
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(10)
        grid.setColumnStretch(0, 1)
        self.buttons = {}
        pack = self._pack
        if pack is None:
            self.head.setText(translate("practice list", "All exercises"))
            for row, kind in enumerate(_SHOWN):
                self._add_kind(grid, row, kind, ready=ready)
        else:
            self.head.setText(pack.title)
            for row, one in enumerate(pack.exercises):
                self._add_packed(grid, row, one, ready=ready)
        self.level.setEnabled(pack is None)
        grid.setRowStretch(grid.rowCount(), 1)
        self._area.setWidget(page)

    def _add_kind(self, grid: QGridLayout, row: int, kind: Kind, *, ready: bool) -> None:
        kinds = FAULTS if kind.is_fault else (kind,)
        own = [one for one in self._attempts if one.kind in {one.value for one in kinds}]
        facts = FACTS[kind]
        remark = translate("practice list", "{ask} About {minutes} minutes.").format(
            ask=exercise_text(WORDS[kind].ask), minutes=facts.minutes
        )
        self._add(
            grid, row, exercise_text(facts.title), remark, _past(own), kind.value, ready=ready
        )
        self.buttons[kind.value].clicked.connect(lambda: self._begin(kind))

    def _add_packed(self, grid: QGridLayout, row: int, one: PackedExercise, *, ready: bool) -> None:
        own = [done for done in self._attempts if done.exercise_hash == one.sha256]
        remark = exercise_text(WORDS[Kind(one.kind)].ask)
        self._add(grid, row, exercise_text(one.name), remark, _past(own), one.sha256, ready=ready)
        pack = self._pack
        hashed = "" if pack is None else pack.sha256
        self.buttons[one.sha256].clicked.connect(lambda: self._emit(one, hashed))

    def _add(
        self,
        grid: QGridLayout,
        row: int,
        title: str,
        remark: str,
        past: str,
        key: str,
        *,
        ready: bool,
    ) -> None:
        words = QWidget()
        lines = QVBoxLayout(words)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(1)
        head = QLabel(title)
        head.setFont(font(13, 600))
        lines.addWidget(head)
        soft = SoftLabel(remark, 12)
        soft.setWordWrap(True)
        lines.addWidget(soft)
        grid.addWidget(words, row, 0)
        grid.addWidget(SoftLabel(past, 12), row, 1, Qt.AlignmentFlag.AlignTop)
        begin = QPushButton(translate("practice list", "Begin"))
        begin.setAccessibleName(translate("practice list", "Begin: {title}").format(title=title))
        begin.setAutoDefault(False)
        begin.setEnabled(ready)
        grid.addWidget(begin, row, 2, Qt.AlignmentFlag.AlignTop)
        self.buttons[key] = begin

    # --- beginning ---------------------------------------------------------------------------

    def _begin_next(self) -> None:
        if self._next is not None and self.trainee:
            self._emit(self._next.exercise, self._next.pack_hash)

    def _begin(self, kind: Kind) -> None:
        if kind.is_fault:
            # The one that was met least; which it is must not be told.
            counts = {one: sum(a.kind == one.value for a in self._attempts) for one in FAULTS}
            fewest = [one for one in FAULTS if counts[one] == min(counts.values())]
            kind = fewest[(7 * len(self._attempts) + len(self.trainee)) % len(fewest)]
        chosen = self.level.currentIndex()
        own = [one for one in self._attempts if one.kind == kind.value]
        level = LEVELS[chosen - 1] if chosen else level_reached(own)
        self._emit(fresh_exercise(kind, self._attempts, level), "")

    def _emit(self, packed: PackedExercise, pack_hash: str) -> None:
        # Closed first: what is chosen may open a window of its own at once.
        self.accept()
        self.chosen.emit(packed, pack_hash)

    # --- packs -------------------------------------------------------------------------------

    def _ask_for_pack(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self,
            translate("practice list", "Open a pack of exercises"),
            "",
            translate("practice list", "Packs of exercises (*{suffix})").format(suffix=SUFFIX),
        )
        if name:
            self.show_pack(Path(name))

    def show_pack(self, path: Path) -> None:
        """List the exercises of a pack; what cannot be read is said."""
        try:
            self._pack = read_pack(path, kinds=KINDS, check=check_exercise)
        except StainmapError as error:
            self.trouble.setText(str(error))
            self.trouble.show()
            return
        self._book.keep_pack(self._pack)
        self._show()

    def _ask_where_to_save(self) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self,
            translate("practice list", "Save as a pack"),
            f"exercises{SUFFIX}",
            translate("practice list", "Packs of exercises (*{suffix})").format(suffix=SUFFIX),
        )
        if name:
            path = Path(name)
            self.write_pack(path if path.suffix else path.with_suffix(SUFFIX))

    def write_pack(self, path: Path) -> None:
        """Write what is listed as a pack: an exercise of every kind, or the pack that is open."""
        pack = self._pack
        if pack is None:
            chosen = self.level.currentIndex() or 1
            exercises = tuple(fresh_exercise(kind, (), LEVELS[chosen - 1]) for kind in Kind)
            pack = Pack(title=path.stem[:60] or "exercises", exercises=exercises)
        try:
            write_pack(pack, path)
        except StainmapError as error:
            QMessageBox.warning(self, translate("practice list", "Not saved"), str(error))
            return
        self.trouble.setText(translate("practice list", "Saved as {path}.").format(path=path))
        self.trouble.show()


def _past(own: Sequence[Attempt]) -> str:
    """Return how earlier tries went, in a few words."""
    if not own:
        return translate("practice list", "not tried yet")
    best = max(one.score for one in own)
    text = (
        translate("practice list", "once, best {best:.0f}")
        if len(own) == 1
        else translate("practice list", "{count} times, best {best:.0f}")
    )
    return text.format(count=len(own), best=best)


def _sentence(text: str, px: int) -> QLabel:
    label = QLabel(text)
    label.setFont(font(px))
    label.setWordWrap(True)
    return label
