"""Small pictures of steps: colours that are known, colours that are worked out, what is kept."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.history_colours import StepColours
from stainmap.app.history_pictures import SmallPictures, colours_beside
from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.history import History
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from tests.app.test_compare import painted_dome


@pytest.fixture(scope="module")
def here() -> Prediction:
    return predict_case(painted_dome())


def test_a_picture_shows_the_colours_it_is_given(here: Prediction) -> None:
    drawing = SmallPictures(80, 60)
    count = here.case.surface.mesh.vertex_count
    grey = drawing.picture(here.case, np.full((count, 3), 150, np.uint8))
    assert grey.shape == (60, 80, 3)
    # Neutral colours stay neutral but for light that wanders farther in red.
    assert np.ptp(grey.astype(int), axis=2).max() <= 12
    warm = drawing.picture(here.case, np.tile(np.array([200, 150, 100], np.uint8), (count, 1)))
    inside = np.ptp(warm.astype(int), axis=2) > 30
    assert inside.mean() > 0.3


def test_where_things_lie_is_worked_out_once(
    here: Prediction, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawing = SmallPictures(80, 60)
    first = drawing.picture(here.case, here.appearance.srgb)
    monkeypatch.setattr("stainmap.app.history_pictures.rasterise", None)
    assert np.array_equal(drawing.picture(here.case, here.appearance.srgb), first)


def test_colours_of_another_state_are_those_of_its_own_prediction(here: Prediction) -> None:
    more = edits.with_coats(here.case, 0, Zone.BODY, CoatSpan.exactly(4))
    alone = predict_case(more).appearance.srgb.astype(int)
    assert np.abs(colours_beside(here, more).astype(int) - alone).max() <= 1


def test_the_oldest_colours_go_first(here: Prediction) -> None:
    srgb = here.appearance.srgb
    kept = StepColours(most_bytes=2 * srgb.nbytes)
    cases = [edits.with_coats(here.case, 0, Zone.BODY, CoatSpan.exactly(n)) for n in (1, 3, 4)]
    for case in cases:
        kept.keep(case, srgb)
    assert [kept.of(case) is not None for case in cases] == [False, True, True]
    kept.keep(cases[1], srgb)
    kept.keep(cases[0], srgb)
    assert [kept.of(case) is not None for case in cases] == [True, True, False]
    assert kept.bytes_kept <= 2 * srgb.nbytes
    kept.clear()
    assert kept.of(cases[0]) is None


def test_the_history_is_gone_to_at_any_of_its_states() -> None:
    session = Session(starter_catalogue(), threaded=False)
    session.adopt(painted_dome(), path=None, saved=True)
    for coats in (1, 3, 4):
        session.edit(
            f"{coats} coats",
            lambda case, n=coats: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(n)),
        )
    history = session.history
    assert history is not None
    session.go_to(1)
    assert session.history is not None
    assert session.history.position == 1
    assert session.history.entries is history.entries
    assert session.case is history.entries[1].case
    assert session.is_up_to_date
    session.go_to(3)
    assert session.case is history.case
    for nowhere in (-1, 4, 3):
        session.go_to(nowhere)
        assert session.case is history.case
    session.close()


def test_a_history_at_its_own_state_is_itself() -> None:
    history = History.begun_with(painted_dome())
    assert history.at(0) is history
    assert history.at(5) is history
