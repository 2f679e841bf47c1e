"""Jobs end in exactly one notice, in whatever way the work ends."""

from __future__ import annotations

import threading
import time

import pytest

from stainmap.app.job import JobRunner, Progress
from stainmap.errors import CancelledError, StainmapError


class Heard:
    """Collects what a job says."""

    def __init__(self) -> None:
        self.results: list[object] = []
        self.errors: list[StainmapError] = []
        self.progress: list[float] = []


def start(runner: JobRunner, work: object, heard: Heard):
    return runner.start(
        "Work",
        work,
        on_done=heard.results.append,
        on_failed=heard.errors.append,
        on_progress=lambda job: heard.progress.append(job.share),
    )


def test_a_result_arrives_once() -> None:
    heard = Heard()
    job = start(JobRunner(threaded=False), lambda _: 7, heard)
    assert job.is_finished
    assert heard.results == [7]
    assert heard.errors == []


def test_a_cancelled_job_ends_at_its_next_report() -> None:
    heard, begun = Heard(), threading.Event()

    def work(progress: Progress) -> int:
        begun.set()
        for step in range(2000):
            progress(step / 2000, "working")
            time.sleep(0.002)
        return 1

    runner = JobRunner()
    job = start(runner, work, heard)
    assert begun.wait(5)
    job.cancel()
    assert job.wait(5)
    runner.close()
    assert heard.results == []
    assert [type(error) for error in heard.errors] == [CancelledError]


def test_progress_is_passed_on_no_more_often_than_a_screen_shows() -> None:
    heard = Heard()

    def work(progress: Progress) -> None:
        for step in range(10_000):
            progress(step / 10_000, "quick")

    start(JobRunner(threaded=False), work, heard)
    assert 1 <= len(heard.progress) < 200


@pytest.mark.parametrize("error", [ZeroDivisionError("x"), MemoryError(), KeyError("k")])
def test_whatever_goes_wrong_reaches_the_user_as_a_sentence(error: Exception) -> None:
    heard = Heard()

    def work(progress: Progress) -> None:
        raise error

    start(JobRunner(threaded=False), work, heard)
    (said,) = heard.errors
    assert said.message.startswith("Work ")
    assert said.advice


def test_jobs_of_one_runner_do_not_overlap() -> None:
    running, most = [0], [0]

    def work(progress: Progress) -> None:
        running[0] += 1
        most[0] = max(most[0], running[0])
        time.sleep(0.01)
        running[0] -= 1

    runner, heard = JobRunner(), Heard()
    jobs = [start(runner, work, heard) for _ in range(5)]
    assert all(job.wait(5) for job in jobs)
    runner.close()
    assert most == [1]
    assert len(heard.results) == 5


def test_what_is_begun_after_closing_is_dropped_in_silence() -> None:
    """A notice still on its way when the window closes may want to go on predicting."""
    for threaded in (True, False):
        heard, runner = Heard(), JobRunner(threaded=threaded)
        runner.close()
        job = start(runner, lambda _: 7, heard)
        assert job.is_finished
        assert job.is_cancelled
        assert heard.results == []
        assert heard.errors == []
