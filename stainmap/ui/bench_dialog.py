"""What has been done at the bench, and when."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QDateTime
from PySide6.QtWidgets import QDateTimeEdit, QWidget

from stainmap.model.bench_record import BenchRecord, BenchStage
from stainmap.ui.form_dialog import FormDialog, choice_box

NOTHING = "nothing yet"
_FORMAT = "yyyy-MM-dd HH:mm"


class BenchDialog(FormDialog):
    """Asks for the stage that is done, and for its time.

    Parameters
    ----------
    whose
        Codes of the cases it is about.
    record
        What was done of the first of them.
    now
        The time it is, with its zone; nothing can be done later.
    """

    def __init__(
        self, whose: tuple[str, ...], record: BenchRecord, now: datetime, parent: QWidget | None
    ) -> None:
        names = whose[0] if len(whose) == 1 else f"{len(whose)} cases ({', '.join(whose)})"
        super().__init__(
            "State on the bench",
            f"What has been done of {names}? Marks of later stages are taken back.",
            parent,
        )
        latest = record.latest
        stages = [stage.value for stage in BenchStage]
        # The next thing to be done is offered.
        place = 0 if latest is None else min(latest.stage.rank + 1, len(stages) - 1)
        self.stage = choice_box("Done", [NOTHING, *stages], stages[place])
        self.when = QDateTimeEdit(QDateTime.fromSecsSinceEpoch(int(now.timestamp())))
        self.when.setDisplayFormat(_FORMAT)
        self.when.setMaximumDateTime(self.when.dateTime())
        self.when.setAccessibleName("When")
        self.stage.currentTextChanged.connect(lambda text: self.when.setEnabled(text != NOTHING))
        self.add_row("Done", self.stage)
        self.add_row("When", self.when)
        marks = "; ".join(f"{m.stage} {m.at.astimezone():%d %b %H:%M}" for m in record.marks)
        self.add_note(f"Marked so far: {marks}." if marks else "Nothing has been marked so far.")
        self.end()

    @property
    def chosen(self) -> BenchStage | None:
        """The stage that is done; None if nothing is."""
        text = self.stage.currentText()
        return None if text == NOTHING else BenchStage(text)

    @property
    def at(self) -> datetime:
        """When it was done, in this computer's time zone."""
        seconds = self.when.dateTime().toSecsSinceEpoch()
        return datetime.fromtimestamp(seconds).astimezone()
