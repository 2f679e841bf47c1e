"""The states that have to look right, held against the pictures of them that are kept.

Some in every run, all of them with STAINMAP_MORE=1. After a change that is meant, look at the new
pictures and keep them: `python -m tests.tools.states --write`.
"""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
from PIL import Image

from tests.tools import golden
from tests.tools.states import LIGHT_EDGE_MM, STATES, Crowns, State, drop, pictures_of

MORE = bool(os.environ.get("STAINMAP_MORE"))
STABLE = {state.name: state for state in STATES if state.stable}
IN_EVERY_RUN = ("nothing_loaded", "dark_nothing", "load_refused")
pytestmark = pytest.mark.gl


@pytest.fixture(scope="module")
def crowns(tmp_path_factory: pytest.TempPathFactory, request: pytest.FixtureRequest) -> Crowns:
    """Return files of a light crown, named as the kept pictures show them."""
    folder = tmp_path_factory.mktemp("crowns")
    mesh, case = (folder / f"light_36{ending}" for ending in (".stl", ".stainmap"))
    if MORE:
        # In every run there are only states without a crown.
        made = request.getfixturevalue("light_sample")
        shutil.copy(made, case)
        shutil.copy(made.with_suffix(".stl"), mesh)
    return Crowns(mesh=mesh, case=case, edge_mm=LIGHT_EDGE_MM)


def held(state: State, crowns: Crowns, folder: Path) -> float:
    """Return how far a state is from its kept picture; leave the new one where it is asked for."""
    _, part = pictures_of(state, crowns, folder / "home")
    if looked := os.environ.get("STAINMAP_LOOK"):
        part.save(str(Path(looked) / f"{state.name}.png"))
    return golden.unlike_golden(part, golden.FOLDER / f"{state.name}.png")


def test_every_stable_state_has_its_picture_and_no_picture_is_left_over() -> None:
    assert {path.stem for path in golden.FOLDER.glob("*.png")} == set(STABLE)
    assert sum(path.stat().st_size for path in golden.FOLDER.glob("*.png")) < 1_500_000


@pytest.mark.parametrize("name", STABLE if MORE else IN_EVERY_RUN)
def test_it_looks_as_it_did(name: str, crowns: Crowns, tmp_path: Path) -> None:
    far = held(STABLE[name], crowns, tmp_path)
    assert far <= golden.SAME, f"{name}: {far:.2%} of the picture look otherwise"


def test_another_sentence_is_another_picture(crowns: Crowns, tmp_path: Path) -> None:
    """The tolerance is smaller than what a person would call a change."""

    def otherwise(hand, _crowns, folder) -> None:
        path = folder / "half a crown.stl"
        path.write_bytes(b"")
        drop(hand, path)
        hand.wait(lambda: hand.window.session.problem is not None, "the refusal")

    state = STABLE["load_refused"]
    changed = State(name=state.name, reach=otherwise, part=state.part)
    assert held(changed, crowns, tmp_path) > 3.0 * golden.SAME


def test_pictures_of_other_states_are_told_apart() -> None:
    def kept(name: str) -> Image.Image:
        return Image.open(golden.FOLDER / f"{name}.png")

    pairs = (
        ("unsaved", "read_only"),
        ("uncalibrated", "not_reachable"),
        ("uncalibrated", "target_missing"),
        ("smallest", "smallest_outcome"),
        ("nothing_loaded", "dark_nothing"),
    )
    for one, other in pairs:
        assert golden.unlike(kept(one), kept(other)) > 3.0 * golden.SAME, (one, other)
