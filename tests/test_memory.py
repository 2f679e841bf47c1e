"""Freed memory goes back to the system, where the C library can do that."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from stainmap import memory

ROOT = Path(__file__).parents[1]
LINUX = Path("/proc/self/status").exists()

# Pieces below the library's limit for pages of their own, freed out of order but for one at the
# end, which keeps the store from shrinking by itself.
FREED = """
import sys
import time
from pathlib import Path
from stainmap import memory

def resident_mb():
    lines = Path("/proc/self/status").read_text().splitlines()
    return int(next(line for line in lines if line.startswith("VmRSS")).split()[1]) / 1024

memory.settle()
pieces = [bytearray(b"x" * 500_000) for _ in range(200)]
last = pieces[-1]
full = resident_mb()
del pieces[::2]
pieces.clear()
kept = resident_mb()
if sys.argv[1] == "call":
    memory.give_back_freed()
else:
    with memory.giving_back(every_s=0.01):
        time.sleep(0.05)
print(full, kept, resident_mb())
"""


@pytest.mark.skipif(not LINUX, reason="only Linux tells a process its own size")
@pytest.mark.parametrize("how", ["call", "context"])
def test_freed_memory_is_given_back(how: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", FREED, how],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
        timeout=60,
    )
    full, kept, after = (float(word) for word in done.stdout.split())
    assert kept > full - 20, "the pieces went back by themselves: nothing is tested"
    assert after < full - 80


def test_a_library_without_the_routines_is_left_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(memory.ctypes, "CDLL", lambda _name: object())
    memory._trim.cache_clear()
    try:
        memory.settle()
        assert memory.give_back_freed() is False
    finally:
        memory._trim.cache_clear()
