"""Crowns that several tests look at, made once."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

import pytest

from stainmap.model.tooth import Tooth
from stainmap.practice.crown_bridge import MadeBridge, make_bridge
from stainmap.practice.crown_maker import MadeCrown, make_crown


@pytest.fixture(scope="session")
def crown_of() -> Callable[..., MadeCrown]:
    """Return a maker of quick crowns (about 11 000 faces on a molar) that remembers them."""

    @cache
    def make(number: int, seed: int = 0, variation: float = 0.0) -> MadeCrown:
        return make_crown(Tooth(number=number), seed=seed, variation=variation, resolution=0.4)

    return make


@pytest.fixture(scope="session")
def bridge_of() -> Callable[..., MadeBridge]:
    """Return a maker of quick bridges (about 26 000 faces) that remembers them."""

    @cache
    def make(seed: int = 0, variation: float = 0.0) -> MadeBridge:
        return make_bridge(seed=seed, variation=variation, resolution=0.4)

    return make
