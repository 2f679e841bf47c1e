"""After how many days a trainee repeats: a line to type them, and back to the usual ones."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QPushButton, QWidget

from stainmap.errors import StainmapError
from stainmap.labbook.days import days_from_text
from stainmap.practice.progress import REPEAT_DAYS
from stainmap.ui.form_dialog import FormDialog
from stainmap.words import marked, translate

_REMARK = marked(
    "practice repeats",
    "These days are common practice. That spacing helps is published for words and facts, not for"
    " exercises like these.",
)


class RepeatsDialog(FormDialog):
    """Asks for the days between tries, as "1, 7, 30"; OK is refused while they do not fit."""

    def __init__(
        self, trainee: str, days: tuple[int, ...] | None, parent: QWidget | None = None
    ) -> None:
        super().__init__(
            translate("practice repeats", "Repeats"),
            translate(
                "practice repeats",
                "What {trainee} has passed comes back after some days, and again after longer.",
            ).format(trainee=trainee),
            parent,
        )
        self.days = QLineEdit(_text(days or REPEAT_DAYS))
        self.days.setAccessibleName(translate("practice repeats", "Days from one try to the next"))
        self.add_row(translate("practice repeats", "days from one try to the next"), self.days)
        usual = QPushButton(
            translate("practice repeats", "as usual: {days}").format(days=_text(REPEAT_DAYS))
        )
        usual.setAutoDefault(False)
        usual.clicked.connect(lambda: self.days.setText(_text(REPEAT_DAYS)))
        self.add_widget(usual)
        self.trouble = self.add_note(translate("practice repeats", _REMARK))
        # Room for what may be said there later: the dialog does not grow then.
        self.trouble.setMinimumHeight(3 * self.trouble.fontMetrics().lineSpacing())
        self.trouble.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.end()

    def chosen(self) -> tuple[int, ...] | None:
        """Return the days, None for the usual ones.

        Raises
        ------
        LabbookError
            If they are no rising whole numbers.
        """
        days = days_from_text(self.days.text())
        return None if days == REPEAT_DAYS else days

    def accept(self) -> None:
        """Close with OK, unless the days do not fit: then say why."""
        try:
            self.chosen()
        except StainmapError as error:
            self.trouble.setText(str(error))
            return
        super().accept()


def _text(days: tuple[int, ...]) -> str:
    return ", ".join(map(str, days))
