"""Progress of planning work: ranges, work in compiled code, stopping."""

from __future__ import annotations

import time

import pytest

from stainmap.errors import CancelledError
from stainmap.planning.progress import Steps


def test_parts_fill_their_range() -> None:
    heard: list[tuple[float, str]] = []
    steps = Steps(lambda share, phrase: heard.append((share, phrase)))
    steps.part(0.5, 1.0).part(0.0, 0.5).say(0.5, "half of a half of the second half")
    assert heard == [(0.625, "half of a half of the second half")]


def test_nobody_listens() -> None:
    steps = Steps(None)
    steps.part(0.0, 0.1).say(0.3, "nothing")
    assert steps.during(0.0, "counting", lambda: 7) == 7


def test_long_work_is_reported_while_it_runs() -> None:
    heard: list[float] = []
    steps = Steps(lambda share, _phrase: heard.append(share))

    def work() -> str:
        time.sleep(0.55)
        return "done"

    assert steps.during(0.4, "working", work) == "done"
    assert len(heard) >= 4
    assert set(heard) == {0.4}


def test_what_the_work_raises_comes_out() -> None:
    def work() -> None:
        raise TimeoutError("of its own")

    with pytest.raises(TimeoutError, match="of its own"):
        Steps(lambda _share, _phrase: None).during(0.0, "working", work)


def test_long_work_can_be_left() -> None:
    count = 0

    def stop(_share: float, _phrase: str) -> None:
        nonlocal count
        count += 1
        if count > 1:
            raise CancelledError("Stopped.")

    begin = time.perf_counter()
    with pytest.raises(CancelledError):
        Steps(stop).during(0.0, "working", lambda: time.sleep(0.8))
    assert time.perf_counter() - begin < 0.6
