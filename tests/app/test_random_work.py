"""Random work on a session: nothing raises, undo gives the first case, redo the last.

STAINMAP_MORE=1 makes 10,000 runs of 50 moves besides; STAINMAP_RUNS names another number.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from tests.app.session_moves import Mover, digest, planned


def run(seed: int, moves: int, folder: Path) -> Mover:
    """Make random moves, then go back to the start and to the end; return who made them."""
    session = Session(starter_catalogue(), threaded=False)
    mover = Mover(session, seed, folder)
    session.adopt(planned(), path=None)
    first, before = mover.case, digest(mover.case)
    try:
        for _ in range(moves):
            mover.move()
        mover.walk()
    except Exception as error:
        error.add_note(f"seed {seed}, last moves: {', '.join(mover.done[-8:])}")
        raise
    assert digest(first) == before
    session.close()
    return mover


def test_five_hundred_random_moves(tmp_path: Path) -> None:
    mover = run(2026, 500, tmp_path)
    assert len(set(mover.done)) > 40, "hardly anything was tried"
    refused = sum(done.endswith("refused") for done in mover.done)
    assert 5 < refused < 150


@pytest.mark.skipif(not os.environ.get("STAINMAP_MORE"), reason="long; set STAINMAP_MORE=1")
def test_many_runs_of_fifty_random_moves(tmp_path: Path) -> None:
    runs = int(os.environ.get("STAINMAP_RUNS", "10000"))
    first = int(os.environ.get("STAINMAP_FIRST_SEED", "1"))
    for seed in range(first, first + runs):
        run(seed, 50, tmp_path)
