"""Packs are what their hash says, or a sentence says what they are."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.errors import PackError
from stainmap.practice.exercise import KINDS, Kind, check_exercise, exercise
from stainmap.practice.packs import (
    MOST_BYTES,
    SUFFIX,
    Pack,
    pack_bytes,
    pack_from_bytes,
    read_pack,
    write_pack,
)

PACK = Pack(
    title="Invented week 1",
    author="AB",
    notes="Für den Anfang.\nTwo lines.",
    exercises=(
        exercise(Kind.FIND_AREAS, 5),
        exercise(Kind.FAULT_WHITE_RING, 6, level=3),
        exercise(Kind.BRIDGE_APART, 7, level=2),
    ),
)


def read(content: bytes) -> Pack:
    return pack_from_bytes(content, "x.stainpack", kinds=KINDS, check=check_exercise)


def changed(change: Any) -> bytes:
    """Return the pack with something changed by hand, and its hash made to fit again."""
    document = json.loads(pack_bytes(PACK))
    change(document)
    content = document.get("content")
    canonical = json.dumps(content, sort_keys=True, separators=(",", ":"))
    import hashlib

    document["sha256"] = hashlib.sha256(canonical.encode()).hexdigest()
    return json.dumps(document).encode()


def test_what_is_written_is_read(tmp_path: Path) -> None:
    path = tmp_path / f"week{SUFFIX}"
    write_pack(PACK, path)
    assert read_pack(path, kinds=KINDS, check=check_exercise) == PACK
    assert pack_bytes(read(pack_bytes(PACK))) == pack_bytes(PACK)
    assert PACK.sha256 in path.read_text(encoding="ascii")


def test_the_hash_is_of_the_content_alone() -> None:
    """Another program with the same rule finds the same hash; layout and order do not count."""
    import hashlib

    document = json.loads(pack_bytes(PACK))
    canonical = json.dumps(document["content"], sort_keys=True, separators=(",", ":"))
    assert hashlib.sha256(canonical.encode()).hexdigest() == PACK.sha256
    turned = dict(reversed(document.items()))
    assert read(json.dumps(turned, indent=7).encode()) == PACK


def test_any_change_of_content_is_another_pack() -> None:
    others = [
        replace(PACK, title="Invented week 2"),
        replace(PACK, notes=""),
        replace(PACK, exercises=PACK.exercises[::-1]),
        replace(PACK, exercises=(replace(PACK.exercises[0], seed=6), *PACK.exercises[1:])),
    ]
    assert len({PACK.sha256, *(one.sha256 for one in others)}) == 5


def test_the_task_counts_for_an_exercise_not_its_name() -> None:
    one = PACK.exercises[0]
    assert replace(one, name="other").sha256 == one.sha256
    for other in (
        replace(one, seed=9),
        replace(one, variation=0.25),
        replace(one, settings={"level": 2}),
        replace(one, teeth=(36,) if one.teeth != (36,) else (46,)),
    ):
        assert other.sha256 != one.sha256


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "no pack"),
        (b"solid crown\nfacet normal 0 0 1", "no pack"),
        (b"PK\x03\x04" + b"\0" * 40, "no pack"),
        (b"\xff\xfe\x00", "no pack"),
        (b"[1, 2]", "no pack"),
        (b'{"format": "stainmap tray", "version": 1}', "no pack"),
        (b'{"format": 3, "version": 1}', "no pack"),
        (b"[" * 100_000, "no pack"),
        (b'{"format": "stainmap exercise pack", "version": 1}', "damaged"),
        (b'{"format": "stainmap exercise pack", "version": 0}', "damaged"),
        (b'{"format": "stainmap exercise pack", "version": 7, "x": 1}', r"newer.*version 7"),
        (pack_bytes(PACK)[:-200], "no pack|damaged"),
        (pack_bytes(PACK).replace(b'"seed": 5', b'"seed": 8'), "damaged or was changed"),
        (pack_bytes(PACK).replace(b"week 1", b"week 9"), "damaged or was changed"),
    ],
)
def test_damaged_foreign_and_newer_files_get_a_sentence(content: bytes, said: str) -> None:
    with pytest.raises(PackError, match=said) as caught:
        read(content)
    assert caught.value.where == "x.stainpack"
    assert caught.value.advice


def put(key: str, value: object) -> Any:
    return lambda document: document["content"]["exercises"][1].__setitem__(key, value)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (put("kind", "juggle"), "no kind of exercise"),
        (put("teeth", [99]), "cannot be made"),
        (put("teeth", []), "cannot be made"),
        (put("teeth", [14, 16]), "cannot be made"),
        (put("seed", -3), "not between"),
        (put("seed", 2**40), "not between"),
        (put("variation", 7.0), "not between 0 and 1"),
        (put("name", "two\nlines"), "on one line"),
        (put("name", ""), "needs 1 to"),
        (put("settings", {"level": 9}), "level 9"),
        (put("settings", {"wizard": True}), "setting 'wizard'"),
        (put("settings", {"level": {"deep": 1}}), "damaged"),
        (put("settings", {str(n): n for n in range(50)}), "at most 40"),
        (put("extra", 1), "damaged"),
        (put("seed", "5"), "damaged"),
        (put("variation", 1), "not written the way"),
        (lambda document: document["content"].pop("notes"), "not written the way"),
        (lambda document: document["content"].update(exercises=[]), "holds 1 to"),
        (lambda document: document["content"].update(title=" "), "title of 1 to"),
        (lambda document: document["content"].update(notes="x" * 2001), "at most 2000"),
        (
            lambda document: document["content"].update(
                exercises=document["content"]["exercises"] * 100
            ),
            "holds 1 to 200",
        ),
    ],
)
def test_packs_that_ask_for_nonsense_say_where(change: Any, said: str) -> None:
    with pytest.raises(PackError, match=said) as caught:
        read(changed(change))
    assert caught.value.where is not None
    assert caught.value.where.startswith("x.stainpack")


def test_files_that_are_too_large_or_gone_are_refused(tmp_path: Path) -> None:
    large = tmp_path / "large.stainpack"
    large.write_bytes(pack_bytes(PACK) + b" " * MOST_BYTES)
    with pytest.raises(PackError, match="larger than any pack"):
        read_pack(large, kinds=KINDS)
    with pytest.raises(PackError, match="cannot be read"):
        read_pack(tmp_path / "gone.stainpack", kinds=KINDS)
    with pytest.raises(PackError, match="cannot be read"):
        read_pack(tmp_path, kinds=KINDS)


@given(st.data())
def test_no_damage_gets_through(data: st.DataObject) -> None:
    """Whatever bytes change, the pack is either read as it was or refused in a sentence."""
    content = bytearray(pack_bytes(PACK))
    for _ in range(data.draw(st.integers(1, 4))):
        content[data.draw(st.integers(0, len(content) - 1))] = data.draw(st.integers(0, 255))
    end = data.draw(st.integers(0, len(content)))
    for damaged in (bytes(content), bytes(content[:end])):
        try:
            found = read(damaged)
        except PackError:
            continue
        assert found == PACK
