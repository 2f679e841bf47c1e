"""Advice on a prediction: the limits of this computer, and what the rules say by them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from platformdirs import user_config_path

from stainmap.errors import CatalogueError
from stainmap.files.advice_file import starter_limits, with_limits
from stainmap.model.advice_limits import AdviceLimits
from stainmap.model.case import Case
from stainmap.planning.advice import advise
from stainmap.planning.advice_ground import AdviceGround, MeasuredPlaces
from stainmap.planning.advice_value import Advice, Severity
from stainmap.planning.outcome import area_weights
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction


def own_limits_path() -> Path:
    """Return where somebody's own limits lie, if there are any."""
    return user_config_path("stainmap", appauthor=False) / "advice.toml"


def advice_on(
    prediction: Prediction, kept: MeasuredPlaces | None = None
) -> tuple[tuple[Advice, ...], MeasuredPlaces]:
    """Return the advice on a prediction, and what was measured for it on the way.

    Parameters
    ----------
    kept
        What was measured for the prediction before, of the same surface.
    """
    try:
        limits, problem = _limits_of_this_computer()
    except CatalogueError as error:
        # A damaged table takes away the advice, not the prediction.
        said = Advice(
            rule="limits",
            sentence=translate("advising", "No advice: {error}").format(error=error),
            severity=Severity.CHECK,
        )
        return (said,), MeasuredPlaces() if kept is None else kept
    ground = AdviceGround(
        case=prediction.case,
        outcome=prediction.outcome,
        wall_mm=prediction.ground.shape.wall_mm,
        partner=prediction.ground.shape.partner,
        assumed_wall=prediction.ground.shape.assumed_wall,
        coats=prediction.coats,
        lightness=prediction.appearance.lab[:, 0],
        weights=area_weights(prediction.case, prediction.layout),
        scene=prediction.engine.scene,
        limits=limits,
        kept=MeasuredPlaces() if kept is None else kept,
    )
    advice = advise(ground)
    if problem:
        advice = (*advice, Advice(rule="own limits", sentence=problem, severity=Severity.NOTE))
    return advice, ground.kept


def with_hidden_advice(case: Case, key: str) -> Case:
    """Return the case with a piece of advice hidden, by its `Advice.key`."""
    if key in case.hidden_advice:
        return case
    return replace(case, hidden_advice=(*case.hidden_advice, key))


def with_all_advice(case: Case) -> Case:
    """Return the case with no advice hidden."""
    return replace(case, hidden_advice=()) if case.hidden_advice else case


@cache
def _limits_of_this_computer() -> tuple[AdviceLimits, str]:
    """Return the limits, and why somebody's own do not hold, or empty; read once a session."""
    limits, path = starter_limits(), own_limits_path()
    if not path.is_file():
        return limits, ""
    try:
        return with_limits(limits, path), ""
    except CatalogueError as error:
        return limits, translate(
            "advising", "Your own limits for advice are left out: {error}"
        ).format(error=error)
