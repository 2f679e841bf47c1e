"""Advice comes with every prediction, and follows what is edited."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.app import advising
from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.sample import open_sample
from stainmap.app.session import Session
from stainmap.errors import CatalogueError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.intake import Intake
from stainmap.model.zone import Zone
from stainmap.planning.advice_value import Severity
from tests.planning.advice_grounds import base_case, painted


@pytest.fixture(scope="module")
def prediction() -> Prediction:
    return predict_case(painted(base_case(), ("barley", Zone.BODY, 6)))


def rules(prediction: Prediction) -> set[str]:
    return {one.rule for one in prediction.advice}


def test_a_prediction_holds_advice(prediction: Prediction) -> None:
    # The dome's wall is 1 mm by construction, measured within some hundredths.
    assert {"more coats than taken up", "more coats than usual", "lot missing"} <= rules(prediction)


def test_measured_places_are_kept_until_what_they_depend_on_changes(
    prediction: Prediction,
) -> None:
    case = prediction.case
    kept = prediction.places.over_stump
    repainted = replace(case, plan=replace(case.plan, steps=()))
    after = predict_case(repainted, previous=prediction)
    assert after.places.over_stump is kept
    assert "more coats than taken up" not in rules(after)
    zones = case.zones.copy()
    zones[0] = int(Zone.FISSURE)
    grooved = painted(replace(case, zones=zones), ("umber", Zone.FISSURE, 1))
    assert predict_case(grooved, previous=after).places.fissure_of is zones


def test_saying_what_lies_behind_is_followed_by_the_advice() -> None:
    session = Session(starter_catalogue(), threaded=False)
    session.adopt(base_case(), path=None, saved=True)
    assert session.prediction is not None
    assert "stump missing" in rules(session.prediction)
    known = Intake(stump_known=True)
    session.edit("say what lies behind", lambda case: replace(case, intake=known))
    assert session.is_up_to_date
    assert "stump missing" not in rules(session.prediction)
    session.close()


def test_a_damaged_table_takes_away_the_advice_and_nothing_else(
    prediction: Prediction, monkeypatch: pytest.MonkeyPatch
) -> None:
    def damaged() -> None:
        raise CatalogueError("The file is not valid TOML.", where="limits.toml")

    monkeypatch.setattr(advising, "starter_limits", damaged)
    advising._limits_of_this_computer.cache_clear()
    (said,), _ = advising.advice_on(prediction)
    assert said.sentence == "No advice: limits.toml: The file is not valid TOML."
    monkeypatch.undo()
    advising._limits_of_this_computer.cache_clear()


def test_the_sample_has_nothing_to_settle() -> None:
    said = predict_case(open_sample()).advice
    assert all(one.severity is not Severity.SETTLE for one in said)
    # Its jars have no lot, and nobody has said what lies behind: a sample says so as any case.
    assert "lot missing" in {one.rule for one in said}


def test_own_limits_that_cannot_be_read_are_left_out_and_said(
    prediction: Prediction, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "advice.toml"
    path.write_text("nonsense", encoding="utf-8")
    monkeypatch.setattr(advising, "own_limits_path", lambda: path)
    advising._limits_of_this_computer.cache_clear()
    said, _ = advising.advice_on(prediction)
    assert "advice.toml" in said[-1].sentence
    path.write_text(
        'format = "stainmap advice"\nversion = 1\n[[limit]]\nname = "last_coat"\nvalue = 0.1\n'
        'unit = "of a first coat"\nmark = "assumed"\nsource = "own"\n',
        encoding="utf-8",
    )
    advising._limits_of_this_computer.cache_clear()
    said, _ = advising.advice_on(prediction)
    assert "more coats than taken up" not in {one.rule for one in said}
    monkeypatch.undo()
    advising._limits_of_this_computer.cache_clear()
