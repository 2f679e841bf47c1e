"""Sessions that are killed at a random moment of their work; run as a program of its own.

    python -m tests.app.killed_session FOLDER ROUNDS SEED

Everything is imported once; each round forks a worker on a folder of its own and kills it by
SIGKILL. The worker notes every state in a log before the journal hears of it, and every save before
it begins.
"""

from __future__ import annotations

import json
import os
import signal
import sys
import time
from pathlib import Path
from typing import Any

import numpy as np

from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.journal import Journal
from stainmap.model.case import Case
from tests.app.session_moves import Mover, digest, planned

# No hand is quicker: dabs of a stroke, and a breath between steps.
_DAB_S, _BREATH_S = 0.01, 0.06
_LONGEST_S = 2.0


class Log:
    """Lines that are with the system at once, so that a kill cannot take them back."""

    def __init__(self, path: Path) -> None:
        self._file = os.open(path, os.O_CREAT | os.O_APPEND | os.O_WRONLY)

    def write(self, **entry: Any) -> None:
        line = json.dumps({"at_s": time.monotonic(), **entry}) + "\n"
        os.write(self._file, line.encode())


class LoggedJournal(Journal):
    """Says what it is about to keep."""

    log: Log

    def note(self, case: Case, **more: Any) -> None:
        self.log.write(what="state", digest=digest(case))
        super().note(case, **more)


def work(folder: Path, seed: int) -> None:
    """Work on a session until somebody puts an end to it."""
    log = Log(folder / "log")
    journal = LoggedJournal(folder / "kept")
    journal.log = log
    session = Session(starter_catalogue(), threaded=False, journal=journal)
    mover = Mover(session, seed, folder)
    session.adopt(planned(24, 64), path=None)
    log.write(what="ready")
    moves = (mover.edit, mover.stroke, mover.stroke, mover.undo, mover.redo, mover.edit)
    plain, file = session.stroke_to, folder / "case.stainmap"

    def slowly(position: Any, vertex: int) -> Any:
        time.sleep(_DAB_S)
        return plain(position, vertex)

    session.stroke_to = slowly  # type: ignore[method-assign]
    for number in range(10_000):
        mover.done.append("")
        log.write(what="move")
        mover.one(*moves)()
        time.sleep(_BREATH_S)
        if number % 4 == 3:
            log.write(what="saving", digest=digest(mover.case))
            session.save(file)
            log.write(what="saved")


def one_round(folder: Path, seed: int) -> None:
    """Fork a worker, wait a random while, kill it."""
    folder.mkdir(parents=True)
    pid = os.fork()
    if pid == 0:
        work(folder, seed)
    log = folder / "log"
    while not log.exists() or b"ready" not in log.read_bytes():
        time.sleep(0.005)
    time.sleep(float(np.random.default_rng(seed).uniform(0.0, _LONGEST_S)))
    os.kill(pid, signal.SIGKILL)
    killed_s = time.monotonic()
    os.waitpid(pid, 0)
    (folder / "killed").write_text(str(killed_s))


if __name__ == "__main__":
    place, rounds, first = Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    for number in range(rounds):
        one_round(place / str(number), first + number)
