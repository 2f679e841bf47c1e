"""Packs that somebody has opened, kept in the lab book, so that their exercises can be repeated."""

from __future__ import annotations

from collections.abc import Iterable

from stainmap.errors import PackError
from stainmap.labbook.attempt import KeptPack
from stainmap.practice.exercise import KINDS, check_exercise
from stainmap.practice.packs import Pack, PackedExercise, pack_bytes, pack_from_bytes

Exercises = dict[tuple[str, str], PackedExercise]
"""Exercises by the hash of their pack and their own."""


def kept_pack(pack: Pack) -> KeptPack:
    """Return a pack in the form the lab book keeps."""
    return KeptPack(sha256=pack.sha256, title=pack.title, content=pack_bytes(pack))


def exercises_kept(packs: Iterable[KeptPack]) -> Exercises:
    """Return the exercises of kept packs.

    Packs that this version no longer understands are passed over: nothing was lost, they can only
    not be repeated here.
    """
    found: Exercises = {}
    for one in packs:
        try:
            pack = pack_from_bytes(one.content, one.title, kinds=KINDS, check=check_exercise)
        except PackError:
            continue
        found |= {(one.sha256, exercise.sha256): exercise for exercise in pack.exercises}
    return found
