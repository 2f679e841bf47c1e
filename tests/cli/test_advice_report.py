"""Advice in what `predict` says."""

from __future__ import annotations

import json

import pytest

from stainmap.app.prediction import Prediction, predict_case
from stainmap.cli.outcome_report import prediction_lines, prediction_report
from stainmap.model.zone import Zone
from tests.planning.advice_grounds import base_case, painted


@pytest.fixture(scope="module")
def prediction() -> Prediction:
    return predict_case(painted(base_case(), ("barley", Zone.BODY, 6)))


def test_the_report_lists_advice_with_limit_and_place(prediction: Prediction) -> None:
    report = json.loads(json.dumps(prediction_report(prediction)))
    by_rule = {one["rule"]: one for one in report["advice"]}
    coats = by_rule["more coats than taken up"]
    assert coats["severity"] == "check"
    assert coats["area"] == "body"
    assert coats["figure"] == pytest.approx(0.287, abs=1e-3)
    assert coats["threshold"]["value"] == 0.3
    assert coats["threshold"]["mark"] == "assumed"
    assert len(coats["point_mm"]) == 3
    assert coats["vertices"] > 100
    lots = by_rule["lot missing"]
    assert (lots["point_mm"], lots["threshold"], lots["vertices"]) == (None, None, 0)


def test_the_lines_end_with_it(prediction: Prediction) -> None:
    lines = list(prediction_lines(prediction))
    at = lines.index("Advice:")
    assert len(lines) - at - 1 == len(prediction.advice)
    assert all(line.startswith("  ") for line in lines[at + 1 :])
