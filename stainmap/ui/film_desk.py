"""The film at work: made in the background, played on the crown itself, saved as pictures."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QFileDialog, QWidget

from stainmap.app.change import Change
from stainmap.app.film import Film, make_film
from stainmap.app.film_pictures import KINDS, FilmLook, film_pictures, write_film
from stainmap.app.film_words import lines_of, title_of
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import CancelledError, StainmapError
from stainmap.paper import raster
from stainmap.ui import case_figures as figures
from stainmap.ui.camera import DISTANCE_MM
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_picture import Look
from stainmap.ui.film_card import FilmCard
from stainmap.ui.motion import moves
from stainmap.words import marked, translate, value_word

SECONDS_EACH = 1.6
SPEEDS = (0.5, 1.0, 2.0, 4.0)
_NOT_READY = marked("film desk", "The prediction is not ready yet.")
_OVER = marked("film desk", "The plan is another one now, so the film is over.")
_PICTURE_PX = (900, 700)


class FilmDesk(QObject):
    """Plays the plan on the crown view, coat after coat.

    While it is shown, looks, light on the surface, flat views and the reading under the pointer are
    those of the coat that is shown; nothing is painted. On the crown the space bar plays and
    pauses, Page Down goes one coat on, Page Up one back, Esc ends it.

    Signals
    -------
    said
        A sentence for the status line.
    started
        The film takes the crown view.
    """

    said = Signal(str)
    started = Signal()

    def __init__(
        self, session: Session, desk: CrownDesk, runner: JobRunner, window: QWidget
    ) -> None:
        super().__init__(window)
        self._session, self._desk, self._view = session, desk, desk.view
        self._runner, self._window = runner, window
        self.folder = ""
        self.card = FilmCard(self._view)
        self.card.hide()
        self.film: Film | None = None
        # Asked for by events that still come while the window is taken down, after the card.
        self._is_open = False
        self._speed = 1.0
        self._job: Job[Any] | None = None
        self._timer = QTimer(self)
        self._timer.timeout.connect(self._go_on)
        card = self.card
        card.moved.connect(self._show)
        card.play_asked.connect(self.play_or_pause)
        card.faster_asked.connect(lambda: self._change_speed(1))
        card.slower_asked.connect(lambda: self._change_speed(-1))
        card.save_asked.connect(self._ask_where)
        card.closed.connect(self.close)
        card.stopped.connect(self._stop)
        self._view.installEventFilter(self)

    # --- opened and closed -----------------------------------------------------------------

    @property
    def is_open(self) -> bool:
        """True while the card lies on the crown."""
        return self._is_open

    @property
    def is_playing(self) -> bool:
        """True while it goes on by itself."""
        return self._timer.isActive()

    @property
    def is_animated(self) -> bool:
        """False where the desktop asks for reduced motion: then it goes by steps only."""
        return moves()

    def open(self) -> None:
        """Make the film of the open plan, and show its first moment."""
        prediction = self._session.prediction
        if self.is_open:
            self.card.track.setFocus()
            return
        if prediction is None or not self._session.is_up_to_date:
            self.said.emit(translate("film desk", _NOT_READY))
            return
        if self._session.is_painting or self._view.is_bare:
            return
        self.started.emit()
        self.card.say(translate("film desk", "The plan, coat after coat"), ())
        self.card.set_made(False)
        self._is_open = True
        self.card.track.set_coats(())
        self._set_state()
        self.card.show()
        self._place()

        def done(film: Film) -> None:
            self._ended()
            if self.is_open and self._session.prediction is prediction:
                self._take(film)

        self._start(
            translate("film desk", "Making the film"),
            lambda progress: make_film(prediction, progress),
            done,
            closes=True,
        )

    def _take(self, film: Film) -> None:
        self.film = film
        self.card.set_made(True)
        case = film.prediction.case
        dyes = {look.number: look.dye for look in figures.jars_on_tray(case)}
        self.card.track.set_coats([(one.step, dyes[one.jar]) for one in film.moments[1:]])
        self.card.track.setFocus()
        if self.card.track.value() == 0:
            self._show(0)
        else:
            self.card.track.setValue(0)

    def close(self) -> None:
        """End it, and show the plan as it is."""
        if not self.is_open:
            return
        self._is_open = False
        self._timer.stop()
        self._stop()
        focus = QApplication.focusWidget()
        had_focus = focus is not None and self.card.isAncestorOf(focus)
        self.film = None
        self.card.hide()
        self._desk.put_in_place(None)
        if self._view.evaded is self.card:
            self._view.keep_clear_of(None)
        if had_focus:
            self._view.setFocus()

    def refresh(self, change: Change) -> None:
        """End it where the plan becomes another one."""
        if not self.is_open:
            return
        prediction = self._session.prediction
        stale = self.film is not None and prediction is not self.film.prediction
        if change.touches("opened", "history", "seen") or (change.touches("appearance") and stale):
            self.close()
            self.said.emit(translate("film desk", _OVER))

    # --- shown -----------------------------------------------------------------------------

    def _show(self, number: int) -> None:
        film = self.film
        if film is None:
            return
        self._desk.put_in_place(film.prediction_at(number))
        self.card.say(title_of(film, number), lines_of(film, number))
        self._set_state()
        self._place()

    def _set_state(self) -> None:
        self.card.set_state(
            playing=self.is_playing,
            speed=self._speed,
            ready=self.film is not None and self._job is None,
            animated=self.is_animated,
        )

    def play_or_pause(self) -> None:
        """Go on by itself from here, or stay; from the end it begins anew."""
        if self.film is None or not self.is_animated:
            return
        if self.is_playing:
            self._timer.stop()
        else:
            track = self.card.track
            if track.value() == track.maximum():
                track.setValue(0)
            self._timer.start(self._wait_ms)
        self._set_state()

    @property
    def _wait_ms(self) -> int:
        return round(1000.0 * SECONDS_EACH / self._speed)

    def _go_on(self) -> None:
        track = self.card.track
        track.setValue(track.value() + 1)
        if track.value() == track.maximum():
            self._timer.stop()
            self._set_state()

    def _change_speed(self, by: int) -> None:
        at = min(max(SPEEDS.index(self._speed) + by, 0), len(SPEEDS) - 1)
        self._speed = SPEEDS[at]
        if self.is_playing:
            self._timer.start(self._wait_ms)
        self._set_state()

    def _place(self) -> None:
        if not self.is_open:
            # Work that was stopped ends after the card has been put away.
            return
        before = self.card.geometry()
        self.card.place(self._view)
        if self._view.evaded is not self.card or self.card.geometry() != before:
            self._view.keep_clear_of(self.card)

    # --- saved -----------------------------------------------------------------------------

    def _ask_where(self) -> None:
        film = self.film
        if film is None:
            return
        self._timer.stop()
        self._set_state()
        filters = ";;".join(f"{value_word(words)} (*{ending})" for ending, words in KINDS.items())
        start = Path(self.folder) / f"{film.prediction.case.code} film.gif"
        name, chosen = QFileDialog.getSaveFileName(
            self._window, translate("film desk", "Save the film"), str(start), filters
        )
        if not name:
            return
        path = Path(name)
        if path.suffix.lower() not in KINDS:
            path = path.with_name(path.name + chosen.rpartition("*")[2].rstrip(")"))
        self.save_to(path)

    def save_to(self, path: Path) -> None:
        """Write the film as seen now: from here, and as it looks on the bench in that look."""
        film = self.film
        if film is None:
            return
        camera = self._view.camera.fitted(film.prediction.case.surface.mesh.vertices, *_PICTURE_PX)
        look = FilmLook(
            camera=raster.Camera(
                eye=_triple(camera.axes[2]),
                up=_triple(camera.axes[1]),
                centre=_triple(camera.target),
                height_mm=camera.height_mm,
                distance_mm=DISTANCE_MM,
            ),
            width=_PICTURE_PX[0],
            height=_PICTURE_PX[1],
            shading=self._session.shading,
            bench=self._view.look is Look.BENCH,
        )
        seconds = SECONDS_EACH / self._speed

        def work(progress: Progress) -> tuple[Path, ...]:
            return write_film(path, film_pictures(film, look, progress), seconds)

        def done(written: tuple[Path, ...]) -> None:
            self._ended()
            if len(written) == 1:
                self.said.emit(
                    translate("film desk", "Saved the film as {path}.").format(path=written[0])
                )
            else:
                self.said.emit(
                    translate("film desk", "Saved {count} pictures, the first as {path}.").format(
                        count=len(written), path=written[0]
                    )
                )

        self._start(translate("film desk", "Saving the film"), work, done, closes=False)

    # --- work ------------------------------------------------------------------------------

    def _start(self, title: str, work: Any, done: Any, *, closes: bool) -> None:
        """Do something in the background; `closes` ends the film where it does not succeed."""
        self.card.progress.show_progress(0.0, title)
        self._place()

        def failed(error: StainmapError) -> None:
            stopped = isinstance(error, CancelledError)
            self._ended("" if stopped or closes else str(error))
            if closes:
                self.close()
                if not stopped:
                    self.said.emit(str(error))

        def follow(job: Job[Any]) -> None:
            if job is self._job:
                self.card.progress.show_progress(job.share, job.phrase)

        job = self._runner.start(title, work, on_done=done, on_failed=failed, on_progress=follow)
        if not job.is_finished:
            self._job = job
            self._set_state()

    def _ended(self, problem: str = "") -> None:
        self._job = None
        self.card.progress.end_work(problem)
        self._set_state()
        self._place()

    def _stop(self) -> None:
        if self._job is not None:
            self._job.cancel()

    # --- keys, size ------------------------------------------------------------------------

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Play by keys on the crown, and keep the card in its place."""
        if self.is_open:
            if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
                if self._act_on(Qt.Key(event.key())):
                    return True
            elif event.type() == QEvent.Type.Resize:
                self._place()
        return super().eventFilter(watched, event)

    def _act_on(self, key: Qt.Key) -> bool:
        track = self.card.track
        if key == Qt.Key.Key_Space:
            self.play_or_pause()
        elif key == Qt.Key.Key_PageDown:
            track.setValue(track.value() + 1)
        elif key == Qt.Key.Key_PageUp:
            track.setValue(track.value() - 1)
        elif key == Qt.Key.Key_Escape:
            self.close()
        else:
            return False
        return True


def _triple(vector: Any) -> tuple[float, float, float]:
    return (float(vector[0]), float(vector[1]), float(vector[2]))
