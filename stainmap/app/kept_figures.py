"""What a case file keeps of a prediction, for whoever prints the case later."""

from __future__ import annotations

from stainmap.app.prediction import Prediction
from stainmap.planning.area_figures import KeptFigures
from stainmap.planning.figures_key import figures_key
from stainmap.planning.outcome import figures_of
from stainmap.predict.seen import Seen


def figures_to_keep(prediction: Prediction) -> KeptFigures | None:
    """Return the figures of all areas, or None if they are not seen as paper shows them."""
    if prediction.seen != Seen():
        return None
    return KeptFigures(
        key=figures_key(prediction.case),
        whole=figures_of(prediction.outcome),
        units=(
            tuple(map(figures_of, prediction.unit_outcomes()))
            if len(prediction.case.units) > 1
            else ()
        ),
    )
