"""The look "In the row" at work: neighbours made in the background, coloured, and compared."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from platformdirs import user_cache_path
from PySide6.QtCore import QObject, QSettings, Signal

from stainmap.app.change import Change
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import CancelledError, StainmapError
from stainmap.model.case import Case
from stainmap.ui.asking import ask
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_picture import Look
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.app.row import Row, RowStep
    from stainmap.planning.row_colours import NeighbourColours

_MAKING = marked("row desk", "making the neighbours")
_NOTHING_WANTED = marked("row desk", "grey neighbours: nothing is wanted yet")


class RowDesk(QObject):
    """Keeps the row of one crown view in step with a session.

    Nothing is made before somebody looks.

    Signals
    -------
    said
        A sentence for the status line.
    """

    said = Signal(str)

    def __init__(
        self,
        session: Session,
        desk: CrownDesk,
        runner: JobRunner,
        settings: QSettings,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._session, self._desk, self._view = session, desk, desk.view
        self._runner, self._settings = runner, settings
        self._kept_in = user_cache_path("stainmap", appauthor=False) / "row"
        self._made_of: Case | None = None
        self._job: Job[Row] | None = None
        self._stopped = False
        self._coloured: Prediction | None = None
        self.card = self._view.legends.row
        self.card.stop_asked.connect(self.stop)
        self.card.neighbours_asked.connect(self.choose_neighbours)
        desk.replaced.connect(self.refresh_colours)

    # --- what is asked for ---------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Show what has changed."""
        if change.touches("opened"):
            self._let_go()
        if change.touches("opened", "surface", "reading", "units", "shading"):
            self.show()
        elif change.touches("appearance", "outcome", "target", "intake"):
            self._coloured = None
            self.refresh_colours()

    def show(self, *, again: bool = False) -> None:
        """Make the row if the look is on and it has not been made; `again` after it was stopped."""
        case = self._session.case
        if self._view.look is not Look.ROW or self._view.is_bare or case is None:
            return
        if again:
            self._stopped = False
        if self._fits(case) and self._view.row is not None:
            self.refresh_colours()
        elif self._job is None and not self._stopped:
            self._make(case)

    def stop(self) -> None:
        """Stop making the neighbours."""
        if self._job is not None:
            self._job.cancel()
            self.card.say_working("stopping", None)

    def choose_neighbours(self) -> None:
        """Ask for meshes of the neighbours."""
        from stainmap.planning.row_placing import teeth_beside  # noqa: PLC0415
        from stainmap.ui.row_dialog import RowDialog  # noqa: PLC0415

        case = self._session.case
        if case is None:
            return
        teeth = tuple(one.tooth for one in teeth_beside(case.units))
        dialog = RowDialog(teeth, self._files(case), self._view.window())
        if ask(dialog):
            for tooth in teeth:
                path = dialog.files.get(tooth.number)
                self._settings.setValue(self._key(case, tooth.number), str(path) if path else "")
            self._let_go()
            self.show(again=True)

    # --- making --------------------------------------------------------------------------

    def _fits(self, case: Case) -> bool:
        made = self._made_of
        return made is not None and (
            made.surface is case.surface
            and made.reading is case.reading
            and made.units == case.units
        )

    def _let_go(self) -> None:
        if self._job is not None:
            self._job.cancel()
        self._job = self._made_of = self._coloured = None
        self._stopped = False
        self._view.set_row(None)

    def _key(self, case: Case, number: int) -> str:
        return f"row/{case.source.sha256[:16]}/{number}"

    def _files(self, case: Case) -> dict[int, Path]:
        """Return the meshes that were chosen, by tooth number."""
        from stainmap.planning.row_placing import teeth_beside  # noqa: PLC0415

        found = {}
        for beside in teeth_beside(case.units):
            name = str(self._settings.value(self._key(case, beside.tooth.number), "", type=str))
            if name:
                found[beside.tooth.number] = Path(name)
        return found

    def _make(self, case: Case) -> None:
        fields = self._session.shading
        if fields is None:
            self.card.say_working(translate("row desk", "light is being worked out"), None)
            self._session.need_shading()
            return
        files, kept_in = self._files(case), self._kept_in
        self._view.set_row(None)
        self._made_of = None

        def work(progress: Progress) -> Row:
            # What makes teeth is fetched when somebody looks, not when the window starts.
            from stainmap.app.row import build_row  # noqa: PLC0415

            return build_row(case, fields, files=files, kept_in=kept_in, progress=progress)

        def done(row: Row) -> None:
            if self._job is job:
                self._job, self._made_of, self._coloured = None, case, None
                self._view.set_row(row, case.units)
                self.show()

        def failed(error: StainmapError) -> None:
            if self._job is not job:
                return
            self._job, self._stopped = None, True
            if isinstance(error, CancelledError):
                self.card.say_working(
                    translate("row desk", "stopped; choose the look again to go on"), None
                )
            else:
                self.card.say_working(
                    translate("row desk", "no neighbours: see the status line"), None
                )
                self.said.emit(str(error))

        job: Job[Row] | None = None
        self.card.say_working(translate("row desk", _MAKING), 0.0)
        started = self._runner.start(
            translate("row desk", "Making the neighbours"),
            work,
            on_done=done,
            on_failed=failed,
            on_progress=self._tell,
        )
        job = started
        if not started.is_finished:
            self._job = started

    def _tell(self, job: Job[Row]) -> None:
        if job is self._job and not job.is_cancelled:
            self.card.say_working(translate("row desk", _MAKING), job.share, job.phrase)

    # --- colours and figures -------------------------------------------------------------

    def refresh_colours(self) -> None:
        """Colour the neighbours by what is wanted now, and say how far the crown is off them."""
        row, prediction, case = self._view.row, self._desk.prediction, self._session.case
        if row is None or self._view.look is not Look.ROW or prediction is None or case is None:
            return
        if prediction.case.surface is not case.surface or prediction is self._coloured:
            return
        from stainmap.app.row import gradient_of, neighbours_srgb  # noqa: PLC0415 - as above

        self._coloured = prediction
        try:
            colours = gradient_of(row, prediction.case)
        except StainmapError as error:
            self._view.set_neighbours(neighbours_srgb(row, None))
            self.card.show_steps(
                (),
                case.units,
                (translate("row desk", "grey neighbours: the wanted colour"), str(error)),
            )
            return
        self._view.set_neighbours(neighbours_srgb(row, colours))
        if colours is None:
            self.card.show_steps(
                (), case.units, (translate("row desk", _NOTHING_WANTED), *self._notes(row, None))
            )
            return
        self._compare(row, prediction, colours)

    def _compare(
        self, row: Row, prediction: Prediction, colours: tuple[NeighbourColours, ...]
    ) -> None:
        units = prediction.case.units

        def work(progress: Progress) -> tuple[RowStep, ...]:
            from stainmap.app.row import row_steps  # noqa: PLC0415 - as above

            progress(0.0, translate("row desk", "steps to the neighbours"))
            return row_steps(row, prediction, colours)

        def done(steps: tuple[RowStep, ...]) -> None:
            if self._coloured is prediction:
                self.card.show_steps(steps, units, self._notes(row, colours))

        def failed(error: StainmapError) -> None:
            if self._coloured is prediction:
                self.card.show_steps((), units, (str(error),))

        self._runner.start(
            translate("row desk", "Steps to the neighbours"), work, on_done=done, on_failed=failed
        )

    def _notes(self, row: Row, colours: tuple[NeighbourColours, ...] | None) -> tuple[str, ...]:
        made = [one for one in row.neighbours if not one.tooth.name]
        notes = []
        if len(made) == len(row.neighbours):
            notes.append(translate("row desk", "neighbours from numbers: nobody's teeth"))
        elif made:
            numbers = ", ".join(str(one.beside.tooth.number) for one in made)
            notes.append(
                translate("row desk", "{numbers} from numbers: nobody's teeth").format(
                    numbers=numbers
                )
            )
        given = [one.own_shade for one in colours or ()]
        if colours is not None and all(given) and given:
            notes.append(translate("row desk", "coloured by the shades given of them"))
        elif any(given):
            notes.append(translate("row desk", "coloured by their own shade or the wanted one"))
        elif colours is not None:
            notes.append(translate("row desk", "coloured as is wanted of the crown, under D65"))
        notes.append(light_note())
        return tuple(notes)


def light_note() -> str:
    """Return how the light on the row falls off, and from where it is seen."""
    from stainmap.app.row import LIGHT_AT_THE_BACK  # noqa: PLC0415 - as above

    return translate("row desk", "light at the back {percent:.0f} %; seen from 600 mm").format(
        percent=100 * LIGHT_AT_THE_BACK
    )
