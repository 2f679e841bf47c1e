"""Dabs on a short and a long bridge, and what memory the engine holds: a process of its own.

    python -m tests.benchmarks.long_bridge

says "ready" when both are made, measures as soon as it gets a line, and prints one JSON object.
`test_engine_speed` starts it: what other tests left in memory counts neither for the figures here
nor against them.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

import numpy as np

from stainmap import memory
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.scene import scene_from_case
from stainmap.predict.shape import crown_shape
from tests.benchmarks.measuring import seconds
from tests.benchmarks.painted_crowns import Brushed, long_tube

ENOUGH = 1.15
MOST_ROUNDS = 25


def held_mb() -> float:
    """Return the resident memory of this process where the system tells it, or nan."""
    status = Path("/proc/self/status")
    if not status.exists():
        return float("nan")
    lines = status.read_text(encoding="ascii").splitlines()
    return int(next(line for line in lines if line.startswith("VmRSS")).split()[1]) / 1024


def main() -> None:
    """Measure, and print."""
    memory.settle()
    places, shaped = [], 0.0
    for count in (50_000, 500_000):
        case = long_tube(count)
        shape = crown_shape(case)
        assert abs(shape.mesh.vertex_count / count - 1.0) < 0.05
        memory.give_back_freed()
        shaped = held_mb()
        middle = np.array([4.0, 0.0, float(np.median(shape.mesh.vertices[:, 2]))])
        engine = AppearanceEngine(shape, scene_from_case(case, bands="screen"), threads=1)
        places.append(Brushed(shape, engine, middle))
        if count == 500_000:
            engine.begin_stroke()
    short, long = places
    recoloured = [short.dab(), long.dab()]
    memory.give_back_freed()
    held = held_mb() - shaped
    print("ready", flush=True)
    sys.stdin.readline()
    # In turn, and the least disturbed round of each counts.
    times = []
    for _ in range(MOST_ROUNDS):
        times.append([seconds(short.dab, 5), seconds(long.dab, 5)])
        least = np.min(times, axis=0)
        if least[1] <= ENOUGH * least[0]:
            break
    short_ms, long_ms = (1000.0 * least).tolist()
    found = {"recoloured": recoloured, "short_ms": short_ms, "long_ms": long_ms, "held_mb": held}
    print(json.dumps(found))


if __name__ == "__main__":
    main()
