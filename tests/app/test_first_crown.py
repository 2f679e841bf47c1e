"""What is shown first: the sample, read beside the making of the window, predicted once drawn."""

from __future__ import annotations

import threading
import time

import numpy as np
import pytest

from stainmap.app import first_crown, predicting
from stainmap.app.first_crown import FirstCrown
from stainmap.app.sample import open_sample, sample_look
from stainmap.app.session import Session
from stainmap.errors import CancelledError, CaseFileError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from tests.builders import dome_case


def test_it_is_the_sample_with_all_that_a_view_asks_for() -> None:
    case, look = FirstCrown().wait()
    expected = open_sample()
    assert case.source.sha256 == expected.source.sha256
    np.testing.assert_array_equal(case.zones, expected.zones)
    assert case.plan == expected.plan
    assert look is not None
    np.testing.assert_array_equal(look, sample_look(expected))
    # Worked out, not to be worked out by whoever draws it.
    assert {"vertex_normals", "light_faces"} <= set(vars(case.surface.mesh))


def test_a_damaged_sample_is_said_where_it_is_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    def damaged() -> Case:
        raise CaseFileError("The case is damaged.", where="sample", advice="Install again.")

    monkeypatch.setattr(first_crown, "open_sample", damaged)
    with pytest.raises(CaseFileError, match="damaged"):
        FirstCrown().wait()


@pytest.fixture
def begun(monkeypatch: pytest.MonkeyPatch) -> threading.Event:
    """Return what is set as soon as a prediction begins, which then comes to nothing."""
    event = threading.Event()

    def predict(*_arguments: object, **_more: object) -> None:
        event.set()
        raise CancelledError("Stopped.")

    monkeypatch.setattr("stainmap.app.prediction.predict_case", predict)
    monkeypatch.setattr(predicting, "_DRAWN_WITHIN_S", 60.0)
    return event


def shown() -> Session:
    """Return a session on a case in the colours it was last seen in."""
    session = Session(starter_catalogue())
    case = dome_case(8, 16)
    look = np.full((len(case.zones), 3), 180, np.uint8)
    session.adopt(case, path=None, saved=True, first_look=look)
    return session


def test_prediction_waits_until_the_last_look_is_drawn(begun: threading.Event) -> None:
    session = shown()
    assert not begun.wait(0.1)
    session.first_look_is_drawn()
    assert begun.wait(30.0)
    session.close()


def test_closing_waits_for_no_drawing(begun: threading.Event) -> None:
    session = shown()
    start = time.monotonic()
    session.close()
    assert time.monotonic() - start < 30.0
