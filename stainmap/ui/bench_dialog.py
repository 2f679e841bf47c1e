"""What has been done at the bench, and when."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QDateTime
from PySide6.QtWidgets import QDateTimeEdit, QWidget

from stainmap.model.bench_record import BenchRecord, BenchStage
from stainmap.model.time_words import date_and_time
from stainmap.ui.form_dialog import FormDialog, choice_box
from stainmap.words import marked, translate, value_word

NOTHING = marked("bench dialog", "nothing yet")
_FORMAT = "yyyy-MM-dd HH:mm"


def stage_words(stage: str) -> str:
    """Return what a stage is called; also for `NOTHING`."""
    return translate("bench dialog", NOTHING) if stage == NOTHING else value_word(stage)


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
        names = (
            whose[0]
            if len(whose) == 1
            else translate("bench dialog", "{count} cases ({whose})").format(
                count=len(whose), whose=", ".join(whose)
            )
        )
        super().__init__(
            translate("bench dialog", "State on the bench"),
            translate(
                "bench dialog",
                "What has been done of {names}? Marks of later stages are taken back.",
            ).format(names=names),
            parent,
        )
        latest = record.latest
        stages = [stage.value for stage in BenchStage]
        # The next thing to be done is offered.
        place = 0 if latest is None else min(latest.stage.rank + 1, len(stages) - 1)
        self.stage = choice_box(
            translate("bench dialog", "Done"),
            [NOTHING, *stages],
            stages[place],
            stage_words,
        )
        self.when = QDateTimeEdit(QDateTime.fromSecsSinceEpoch(int(now.timestamp())))
        self.when.setDisplayFormat(_FORMAT)
        self.when.setMaximumDateTime(self.when.dateTime())
        self.when.setAccessibleName(translate("bench dialog", "When"))
        self.stage.currentIndexChanged.connect(
            lambda _at: self.when.setEnabled(self.stage.currentData() != NOTHING)
        )
        self.add_row(translate("bench dialog", "Done"), self.stage)
        self.add_row(translate("bench dialog", "When"), self.when)
        marks = "; ".join(
            f"{value_word(m.stage)} {date_and_time(m.at.astimezone())}" for m in record.marks
        )
        self.add_note(
            translate("bench dialog", "Marked so far: {marks}.").format(marks=marks)
            if marks
            else translate("bench dialog", "Nothing has been marked so far.")
        )
        self.end()

    @property
    def chosen(self) -> BenchStage | None:
        """The stage that is done; None if nothing is."""
        text = str(self.stage.currentData())
        return None if text == NOTHING else BenchStage(text)

    @property
    def at(self) -> datetime:
        """When it was done, in this computer's time zone."""
        seconds = self.when.dateTime().toSecsSinceEpoch()
        return datetime.fromtimestamp(seconds).astimezone()
