"""What is worked out aside after every prediction is shown for that prediction only."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest
from PySide6.QtCore import QObject

from stainmap.app.change import Change
from stainmap.app.job import Progress
from stainmap.errors import StainmapError
from stainmap.ui.per_prediction import PerPrediction
from tests.app.session_moves import HeldRunner

PREDICTED, OPENED = Change(fields=frozenset({"outcome"})), Change(fields=frozenset({"opened"}))


class Doubled(PerPrediction[int]):
    """Doubles predictions, which are numbers here; those below zero have nothing to be doubled."""

    def __init__(self, session: Any, runner: HeldRunner, parent: QObject) -> None:
        super().__init__(session, runner, parent)
        self.shown: list[int | None] = []

    def title(self) -> str:
        return "Doubling"

    def wants(self, prediction: Any) -> bool:
        return prediction >= 0

    def work(self, prediction: Any, progress: Progress) -> int:
        progress(0.0, "doubling")
        if prediction == 13:
            raise StainmapError("13 is not doubled.")
        return 2 * prediction

    def show(self, found: int | None) -> None:
        self.shown.append(found)


@pytest.fixture
def session() -> SimpleNamespace:
    return SimpleNamespace(prediction=None)


@pytest.fixture
def runner() -> HeldRunner:
    return HeldRunner()


@pytest.fixture
def desk(session: SimpleNamespace, runner: HeldRunner, qapp: QObject) -> Doubled:
    return Doubled(session, runner, qapp)


def predict(session: SimpleNamespace, desk: Doubled, number: int | None) -> None:
    session.prediction = number
    desk.refresh(PREDICTED)


def test_what_comes_late_is_not_shown(
    session: SimpleNamespace, runner: HeldRunner, desk: Doubled
) -> None:
    predict(session, desk, 4)
    predict(session, desk, 5)
    first, second = runner.held
    assert first.is_cancelled
    second.run()
    first.run()
    assert desk.shown == [10]


def test_nothing_is_shown_where_there_is_nothing_to_work_out(
    session: SimpleNamespace, runner: HeldRunner, desk: Doubled
) -> None:
    predict(session, desk, -1)
    predict(session, desk, None)
    assert runner.held == []
    assert desk.shown == [None, None]
    desk.refresh(Change(fields=frozenset({"seen"})))
    assert desk.shown == [None, None]


def test_a_failure_takes_away_what_held_for_another_plan(
    session: SimpleNamespace, runner: HeldRunner, desk: Doubled
) -> None:
    predict(session, desk, 4)
    runner.let_go()
    predict(session, desk, 13)
    runner.let_go()
    assert desk.shown == [8, None]


def test_another_case_begins_with_nothing(
    session: SimpleNamespace, runner: HeldRunner, desk: Doubled
) -> None:
    session.prediction = 4
    desk.refresh(OPENED)
    assert desk.shown == [None]
    runner.let_go()
    assert desk.shown == [None, 8]
