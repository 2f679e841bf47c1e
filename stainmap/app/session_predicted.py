"""What a session shows of its crown: the newest prediction, and how that is looked at."""

from __future__ import annotations

from abc import abstractmethod
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.app.predicting import Predicting
from stainmap.app.shading_work import ShadingWork
from stainmap.model.case import Case
from stainmap.predict.seen import Seen

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.paper.shading import ShadingFields
    from stainmap.planning.outcome import Outcome
    from stainmap.predict.appearance import Appearance
    from stainmap.predict.shape import CrownShape


class PredictedSession:
    """The side of a session that is looked at; see `session.Session`."""

    _predicting: Predicting
    _shading: ShadingWork

    @property
    @abstractmethod
    def case(self) -> Case | None:
        """The current case, or None before anything was opened."""

    @abstractmethod
    def _notify(self, fields: frozenset[str]) -> None: ...

    @property
    def prediction(self) -> Prediction | None:
        """The newest prediction; see `is_up_to_date`. None until there is one."""
        return self._predicting.newest

    @property
    def shape(self) -> CrownShape | None:
        """Wall, partner vertices and operators of the current surface, once measured."""
        return None if self.prediction is None else self.prediction.shape

    @property
    def coats(self) -> NDArray[np.float32] | None:
        """Coats per step and vertex, (S, V), of the newest prediction."""
        return None if self.prediction is None else self.prediction.coats

    @property
    def appearance(self) -> Appearance | None:
        """Colour per vertex of the newest prediction."""
        return None if self.prediction is None else self.prediction.appearance

    @property
    def shown_srgb(self) -> NDArray[np.uint8] | None:
        """Colours (V, 3) to show: predicted, or last seen as long as nothing is predicted."""
        return self._predicting.shown_srgb

    @property
    def outcome(self) -> Outcome | None:
        """What the newest prediction gives area by area."""
        return None if self.prediction is None else self.prediction.outcome

    @property
    def shading(self) -> ShadingFields | None:
        """Smoothed normals and occlusion of the open surface, once computed; see `need_shading`."""
        return None if self.case is None else self._shading.fields_of(self.case.surface.mesh)

    @property
    def is_up_to_date(self) -> bool:
        """True if the prediction belongs to the current case."""
        return self._predicting.is_up_to_date

    def need_shading(self) -> None:
        """Compute the fields that light needs, in the background; "shading" tells when ready."""
        if self.prediction is not None:
            self._shading.need(self.prediction.shape.operator)

    def first_look_is_drawn(self) -> None:
        """Say that the open crown stands on the screen as it was last seen: the rest may come."""
        self._predicting.first_look_is_drawn()

    @property
    def seen(self) -> Seen:
        """How predictions are looked at: light, observer, corrections."""
        return self._predicting.seen

    def see(self, seen: Seen) -> None:
        """Look at predictions in another way; the plan stays as it is."""
        if seen != self.seen:
            self._predicting.seen = seen
            self._notify(frozenset({"seen"}))
            self._predicting.go_on()
