"""The looks that stand for a figure, and the ground crown: worked out when they are looked at."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QObject

from stainmap.app.change import Change
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.looks import (
    Offsets,
    Walls,
    ground_look,
    offsets_of,
    value_srgb,
    walls_of,
)
from stainmap.app.painting import StrokeUpdate
from stainmap.app.session import Session
from stainmap.errors import CancelledError, StainmapError
from stainmap.model.zone import Zone
from stainmap.planning.look_colours import (
    LOOK_DEPTHS_MM,
    MOST_DE00,
    NEUTRAL,
    OFFSET_SCALE,
    VALUE_SCALE,
)
from stainmap.planning.progress import Steps
from stainmap.ui.case_figures import colour_words
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_picture import Look
from stainmap.ui.legends import ScaleWords, Tick
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.predict.appearance import Appearance

_DE = "dE00"
_STOPPED = marked("look desk", "stopped; choose a depth to go on")
_SHOWN = (Look.VALUE, Look.OFFSET, Look.THICKNESS, Look.GROUND)


class LookDesk(QObject):
    """Keeps the colours, legends and readings of four looks in step with a session.

    Nothing is worked out for a look that is not on.
    """

    def __init__(
        self, session: Session, desk: CrownDesk, runner: JobRunner, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._session, self._desk, self._view = session, desk, desk.view
        self._runner = runner
        self._shown: tuple[Prediction | None, Look] | None = None
        self._offsets: tuple[Prediction, Offsets] | None = None
        self._depth_mm = LOOK_DEPTHS_MM[1]
        self._ground: tuple[Prediction, dict[float, Appearance]] | None = None
        self._grinding: Job[Appearance] | None = None
        # The depth that somebody stopped working out, and of what.
        self._stopped: tuple[Prediction, float] | None = None
        desk.figure_of = self.figure_at
        desk.drawn.connect(self.follow)
        desk.replaced.connect(self.show)
        card = self._view.legends.ground
        card.set_depth(self._depth_mm)
        card.depth_chosen.connect(self.choose_depth)
        card.stop_asked.connect(self.stop)

    @property
    def depth_mm(self) -> float:
        """How deep the crown is ground in the look of that name."""
        return self._depth_mm

    def refresh(self, change: Change) -> None:
        """Show what has changed."""
        if change.touches("opened", "surface", "appearance", "outcome"):
            self.show()

    def choose_depth(self, depth_mm: float) -> None:
        """Show the crown ground by another depth, mm."""
        self._depth_mm, self._stopped = depth_mm, None
        self._view.legends.ground.set_depth(depth_mm)
        self._shown = None
        self.show()

    def show(self) -> None:
        """Colour the crown by the look that is on, if it is one of these."""
        look, prediction, case = self._view.look, self._fitting(), self._session.case
        busy = self._session.is_painting or self._view.is_bare
        if look not in _SHOWN or busy or case is None or self._shown == (prediction, look):
            return
        if not self._view.shows(case.surface.mesh):
            return
        self._shown = (prediction, look)
        if prediction is None:
            count = case.surface.mesh.vertex_count
            self._view.set_colours(np.tile(np.array(NEUTRAL, np.uint8), (count, 1)), look)
            self._view.set_scale(None)
            self._view.legends.ground.say(translate("look desk", "nothing has been predicted yet"))
        shows: dict[Look, Callable[[Prediction], None]] = {
            Look.VALUE: self._show_value,
            Look.OFFSET: self._show_offset,
            Look.THICKNESS: self._show_walls,
            Look.GROUND: self._show_ground,
        }
        if prediction is not None:
            shows[look](prediction)
        self._view.read_again()

    def _fitting(self) -> Prediction | None:
        """Return what is shown, if it is of the surface that is open."""
        prediction, case = self._desk.prediction, self._session.case
        if prediction is None or case is None or prediction.case.surface is not case.surface:
            return None
        return prediction

    # --- one look each -------------------------------------------------------------------

    def _show_value(self, prediction: Prediction) -> None:
        self._view.set_colours(value_srgb(prediction.appearance.lab), Look.VALUE)
        ticks = [Tick(float(at), f"{at}") for at in range(55, 86, 5)]
        body = prediction.outcome.area(Zone.BODY)
        notes = [translate("look desk", "greys stretched to three times their contrast")]
        if body is not None:
            notes.insert(
                0,
                translate("look desk", "body L* {lightness:.1f}, as predicted").format(
                    lightness=body.predicted.lightness
                ),
            )
        words = ScaleWords(
            title=translate("look desk", "Value, L*"), scale=VALUE_SCALE, ticks=ticks, notes=notes
        )
        self._view.set_scale(words)

    def _offsets_of(self, prediction: Prediction) -> Offsets:
        if self._offsets is None or self._offsets[0] is not prediction:
            self._offsets = (prediction, offsets_of(prediction))
        return self._offsets[1]

    def _show_offset(self, prediction: Prediction) -> None:
        from stainmap.predict.uncertainty import ACCEPTABLE_DE00, PERCEPTIBLE_DE00  # noqa: PLC0415

        offsets = self._offsets_of(prediction)
        self._view.set_colours(offsets.srgb(), Look.OFFSET)
        ticks = (
            Tick(0.0, "0"),
            Tick(PERCEPTIBLE_DE00, f"{PERCEPTIBLE_DE00:g}", strong=True),
            Tick(ACCEPTABLE_DE00, f"{ACCEPTABLE_DE00:g}", strong=True),
            Tick(4.0, "4"),
            Tick(
                MOST_DE00,
                translate("look desk", "{most:g} or more").format(most=MOST_DE00),
            ),
        )
        # Whether a difference is seen or accepted is said of calibrated materials only.
        notes = [translate("look desk", "half of observers see 0.8, accept 1.8")]
        if not prediction.outcome.calibrated:
            notes.append(translate("look desk", "not calibrated: direction, not a match"))
        neutral = translate("look desk", "nothing is wanted there")
        if prediction.case.target is None:
            neutral = translate("look desk", "no wanted colour has been set")
        elif offsets.refused:
            neutral = translate("look desk", "wanted colour was measured otherwise")
        words = ScaleWords(
            title=translate("look desk", "Offset from wanted, {de}").format(de=_DE),
            scale=OFFSET_SCALE,
            ticks=ticks,
            notes=notes,
            neutral=neutral,
        )
        self._view.set_scale(words)

    def _show_walls(self, prediction: Prediction) -> None:
        walls = walls_of(prediction)
        self._view.set_colours(walls.srgb(), Look.THICKNESS)
        scale, least = walls.scale, walls.minimum_mm
        block = prediction.case.plan.block
        ticks = (
            Tick(scale.low, f"{scale.low:g}"),
            Tick(least, f"{least:.2f}", strong=True),
            *(Tick(least + over, f"{least + over:.2f}") for over in (0.5, 1.0, 1.5, 2.0)),
        )
        notes = [translate("look desk", "orange: below the minimum of {block}").format(block=block)]
        if walls.assumed:
            notes.append(translate("look desk", "assumed: the crown has no inner surface"))
        words = ScaleWords(
            title=self._wall_title(prediction), scale=scale, ticks=ticks, notes=notes
        )
        self._view.set_scale(words)

    @staticmethod
    def _wall_title(prediction: Prediction) -> str:
        if prediction.case.after_sintering.ground:
            return translate("look desk", "Wall, mm sintered, after grinding")
        return translate("look desk", "Wall, mm sintered")

    def _show_ground(self, prediction: Prediction) -> None:
        ground = self._ground_of(prediction)
        card = self._view.legends.ground
        if ground is not None:
            self._view.set_colours(ground.srgb, Look.GROUND)
            card.say(self._body_words(prediction, ground))
            return
        # Until it is known the crown is shown as it is; the card says so.
        self._view.set_colours(prediction.appearance.srgb, Look.GROUND)
        if self._stopped == (prediction, self._depth_mm):
            card.say(translate("look desk", _STOPPED))
            return
        self._grind(prediction)

    def _ground_of(self, prediction: Prediction) -> Appearance | None:
        if self._ground is None or self._ground[0] is not prediction:
            return None
        return self._ground[1].get(self._depth_mm)

    @staticmethod
    def _body_words(prediction: Prediction, ground: Appearance) -> str:
        body = prediction.case.zones == int(Zone.BODY)
        if not body.any():
            return ""
        sizes = prediction.case.surface.mesh.vertex_areas[body]
        change = np.average((ground.lab - prediction.appearance.lab)[body, 0], weights=sizes)
        return translate("look desk", "the body's L* changes by {change}").format(
            change=_signed(float(change))
        )

    def _grind(self, prediction: Prediction) -> None:
        """Work out the ground crown, one depth at a time; the newest wish is done last."""
        card = self._view.legends.ground
        card.say_working(translate("look desk", "worked out; shown as it is until then"))
        if self._grinding is not None:
            return
        depth = self._depth_mm

        def work(progress: Progress) -> Appearance:
            return Steps(progress).during(
                0.0, translate("look desk", "grinding"), lambda: ground_look(prediction, depth)
            )

        def done(appearance: Appearance) -> None:
            self._grinding = None
            if self._ground is None or self._ground[0] is not prediction:
                self._ground = (prediction, {})
            self._ground[1][depth] = appearance
            self._again()

        def failed(error: StainmapError) -> None:
            self._grinding = None
            if isinstance(error, CancelledError):
                self._again()
            elif self._fitting() is prediction and self._depth_mm == depth:
                self._view.legends.ground.say(str(error))
            else:
                self._again()

        job = self._runner.start(
            translate("look desk", "Grinding"), work, on_done=done, on_failed=failed
        )
        if not job.is_finished:
            self._grinding = job

    def stop(self) -> None:
        """Stop working out the ground crown; choosing a depth begins again."""
        prediction = self._fitting()
        if self._grinding is not None and prediction is not None:
            self._stopped = (prediction, self._depth_mm)
            self._grinding.cancel()
            self._view.legends.ground.say(translate("look desk", _STOPPED))

    def _again(self) -> None:
        if self._view.look is Look.GROUND:
            self._shown = None
            self.show()

    # --- brush and pointer ---------------------------------------------------------------

    def follow(self, update: StrokeUpdate) -> None:
        """Recolour what the brush has changed, where that costs next to nothing."""
        look, prediction = self._view.look, self._fitting()
        if update.lab is None or prediction is None or look not in (Look.VALUE, Look.OFFSET):
            return
        if look is Look.VALUE:
            srgb = value_srgb(update.lab)
        else:
            srgb = self._offsets_of(prediction).srgb_at(update.vertices, update.lab)
        # A stroke that is taken back leaves the prediction as it was, but not these colours.
        self._shown = None
        self._view.update_colours(update.vertices, srgb, look)

    def figure_at(self, vertex: int) -> str:
        """Return what the look that is on tells of a vertex, or nothing."""
        look, prediction = self._view.look, self._fitting()
        if prediction is None or look not in _SHOWN:
            return ""
        if look is Look.VALUE:
            return self._value_words(prediction, vertex)
        if look is Look.OFFSET:
            return self._offset_words(prediction, vertex)
        if look is Look.THICKNESS:
            return self._wall_words(prediction, vertex)
        ground = self._ground_of(prediction)
        if ground is None:
            return ""
        return translate("look desk", "ground {depth_mm:.1f} mm: {colour}").format(
            depth_mm=self._depth_mm, colour=colour_words(ground.lab[vertex])
        )

    @staticmethod
    def _value_words(prediction: Prediction, vertex: int) -> str:
        lightness = float(prediction.appearance.lab[vertex, 0])
        body = prediction.outcome.area(Zone.BODY)
        if body is None:
            return translate("look desk", "value L* {lightness:.1f}").format(lightness=lightness)
        step = _signed(lightness - body.predicted.lightness)
        return translate("look desk", "value L* {lightness:.1f}, {step} from the body").format(
            lightness=lightness, step=step
        )

    def _offset_words(self, prediction: Prediction, vertex: int) -> str:
        offsets = self._offsets_of(prediction)
        off = float(offsets.de00[vertex])
        if not np.isfinite(off):
            return translate("look desk", "nothing to compare with")
        return translate("look desk", "{off:.1f} {de} from {colour}").format(
            off=off, de=_DE, colour=colour_words(offsets.wanted[vertex])
        )

    @staticmethod
    def _wall_words(prediction: Prediction, vertex: int) -> str:
        walls: Walls = walls_of(prediction)
        wall = float(walls.wall_mm[vertex])
        over = wall - walls.minimum_mm
        text = (
            translate("look desk", "{wall:.2f} mm, {over:.2f} above the minimum {least:.2f}")
            if over >= 0
            else translate("look desk", "{wall:.2f} mm, {over:.2f} below the minimum {least:.2f}")
        )
        return text.format(wall=wall, over=abs(over), least=walls.minimum_mm)


def _signed(value: float) -> str:
    """Return a figure with its sign, a true minus, one decimal."""
    text = f"{abs(value):.1f}"
    if text == "0.0":
        return text
    return f"+{text}" if value > 0 else f"\N{MINUS SIGN}{text}"
