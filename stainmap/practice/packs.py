"""Packs of exercises as files to share: one JSON file, known by the hash of what is in it.

``{"format": "stainmap exercise pack", "version": 1, "sha256": ..., "content": {"title", "author",
"notes", "exercises": [{"name", "kind", "seed", "teeth", "variation", "settings"}, ...]}}``. The
hash is that of the canonical JSON of `content`; results in the lab book carry it. A pack holds no
mesh and no picture: crowns are made anew from their seeds, and one that is of no use is told when
its exercise is begun (`exercise_crown`).
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

import msgspec

from stainmap.errors import LabbookError, PackError, StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.labbook.attempt import MOST_NAME_CHARACTERS, MOST_SEED, canonical_json
from stainmap.model.tooth import Tooth
from stainmap.practice.crown_bridge import MAKEABLE_BRIDGES
from stainmap.practice.crown_solids import MAKEABLE_TEETH
from stainmap.words import translate

SUFFIX: Final = ".stainpack"
FORMAT: Final = "stainmap exercise pack"
VERSION: Final = 1
MOST_BYTES: Final = 1 << 20
MOST_EXERCISES: Final = 200
_MOST_SETTINGS = 40
_MOST_TEXT = 2000

Setting = str | int | float | bool | list[str | int | float] | None
"""What an exercise may be set to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PackedExercise:
    """One exercise as numbers: everything it is made from.

    Parameters
    ----------
    name
        What it is called on screen, at most 60 characters. Does not count for its hash.
    kind
        Which kind of exercise, as a short word.
    seed
        The individual its crown is made from, 0 to 2^31 - 1.
    teeth
        One of `MAKEABLE_TEETH`, or the units of one of `MAKEABLE_BRIDGES`, mesial first.
    variation
        As for `make_crown`, 0 to 1.
    settings
        What else the kind wants to know: block, wanted shade, level. Plain values and lists of
        them.
    """

    name: str
    kind: str
    seed: int
    teeth: tuple[int, ...]
    variation: float = 0.0
    settings: Mapping[str, Setting] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Refuse what no exercise can be made from, in a sentence."""
        for what, text in (("name", self.name), ("kind", self.kind)):
            if not 0 < len(text.strip()) <= MOST_NAME_CHARACTERS or not text.isprintable():
                raise PackError(
                    translate(
                        "packs",
                        "The {what} of an exercise needs 1 to {most_name_characters} characters"
                        " on one "
                        "line.",
                    ).format(what=what, most_name_characters=MOST_NAME_CHARACTERS)
                )
        if not 0 <= self.seed <= MOST_SEED:
            raise PackError(
                translate("packs", "The seed {seed} is not between 0 and {most_seed}.").format(
                    seed=self.seed, most_seed=MOST_SEED
                )
            )
        if not 0.0 <= self.variation <= 1.0:
            raise PackError(
                translate("packs", "The variation {variation:g} is not between 0 and 1.").format(
                    variation=self.variation
                )
            )
        if not is_makeable(self.teeth):
            given = "-".join(map(str, self.teeth)) or "none"
            raise PackError(
                translate(
                    "packs", "The exercise asks for a crown that cannot be made (tooth {given})."
                ).format(given=given),
                advice=translate("packs", "Teeth that can: {map}.").format(
                    map=", ".join(map(str, MAKEABLE_TEETH))
                ),
            )
        if len(self.settings) > _MOST_SETTINGS:
            raise PackError(
                translate("packs", "An exercise has at most {most_settings} settings.").format(
                    most_settings=_MOST_SETTINGS
                )
            )

    @property
    def sha256(self) -> str:
        """Hash of the task: two exercises with the same one ask the same of a trainee."""
        return _sha256(
            {
                "kind": self.kind,
                "seed": self.seed,
                "teeth": list(self.teeth),
                "variation": float(self.variation),
                "settings": dict(self.settings),
            }
        )

    @property
    def tooth(self) -> Tooth:
        """The tooth, or of a bridge the one that is first."""
        return Tooth(number=self.teeth[0])


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """Exercises in their order. `author` is initials or a code; `notes` are shown before it."""

    title: str
    exercises: tuple[PackedExercise, ...]
    author: str = ""
    notes: str = ""

    def __post_init__(self) -> None:
        """Refuse a pack without a title or exercises, or with too many of them."""
        if not 0 < len(self.title.strip()) <= MOST_NAME_CHARACTERS:
            raise PackError(
                translate(
                    "packs", "A pack needs a title of 1 to {most_name_characters} characters."
                ).format(most_name_characters=MOST_NAME_CHARACTERS)
            )
        if not 0 < len(self.exercises) <= MOST_EXERCISES:
            raise PackError(
                translate(
                    "packs", "A pack holds 1 to {most_exercises} exercises, this one {count}."
                ).format(most_exercises=MOST_EXERCISES, count=len(self.exercises))
            )
        if len(self.notes) > _MOST_TEXT or len(self.author) > MOST_NAME_CHARACTERS:
            raise PackError(
                translate(
                    "packs", "The notes of a pack have at most {most_text} characters."
                ).format(most_text=_MOST_TEXT)
            )

    @property
    def sha256(self) -> str:
        """Hash of all that is in it, by which results belong to it."""
        return _sha256(_content(self))


class _ExerciseDoc(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    name: str
    kind: str
    seed: int
    teeth: tuple[int, ...]
    variation: float = 0.0
    settings: dict[str, Setting] = {}


class _ContentDoc(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    title: str
    exercises: tuple[_ExerciseDoc, ...]
    author: str = ""
    notes: str = ""


class _HeadDoc(msgspec.Struct, frozen=True):
    format: str
    version: int


class _PackDoc(msgspec.Struct, frozen=True):
    sha256: str
    content: msgspec.Raw


def is_makeable(teeth: tuple[int, ...]) -> bool:
    """Return whether a crown or a bridge of these teeth can be made."""
    return teeth in MAKEABLE_BRIDGES or (len(teeth) == 1 and teeth[0] in MAKEABLE_TEETH)


def pack_bytes(pack: Pack) -> bytes:
    """Return the pack as a file; the same pack gives the same bytes."""
    document = {
        "format": FORMAT,
        "version": VERSION,
        "sha256": pack.sha256,
        "content": _content(pack),
    }
    text = canonical_json(document).encode("ascii")
    return msgspec.json.format(text, indent=1) + b"\n"


def write_pack(pack: Pack, path: Path) -> None:
    """Write a pack; what was there before is untouched if it cannot be written.

    Raises
    ------
    StainmapError
        If the file cannot be written.
    """
    write_bytes(path, pack_bytes(pack))


def read_pack(
    path: Path,
    *,
    kinds: Collection[str],
    check: Callable[[PackedExercise], None] | None = None,
) -> Pack:
    """Return a pack from a file that nobody vouches for.

    Parameters
    ----------
    path
        The file.
    kinds
        The kinds of exercises there are.
    check
        Called with every exercise; raises StainmapError where its settings make no sense.

    Raises
    ------
    PackError
        If it cannot be read, is too large, no pack, damaged, of a newer version, or asks for what
        cannot be made; the sentence says which.
    """
    try:
        if path.stat().st_size > MOST_BYTES:
            raise PackError(
                translate("packs", "The file is larger than any pack ({most_bytes} kB).").format(
                    most_bytes=MOST_BYTES // 1024
                ),
                where=path.name,
                advice=translate("packs", "Ask for it again from whoever made it."),
            )
        content = path.read_bytes()
    except OSError as error:
        raise PackError(
            translate("packs", "The file cannot be read."),
            where=path.name,
            advice=translate("packs", "Look whether it is still there."),
        ) from error
    return pack_from_bytes(content, path.name, kinds=kinds, check=check)


def pack_from_bytes(
    content: bytes,
    name: str,
    *,
    kinds: Collection[str],
    check: Callable[[PackedExercise], None] | None = None,
) -> Pack:
    """Return a pack from the bytes of a file called `name`; raises as `read_pack`."""
    _check_head(content, name)
    try:
        document = msgspec.json.decode(content, type=_PackDoc)
        plain = msgspec.json.decode(document.content)
        told = msgspec.json.decode(document.content, type=_ContentDoc)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        raise _damaged(name) from error
    if _sha256(plain) != document.sha256:
        raise _damaged(name)
    exercises = tuple(
        _exercise(
            one,
            translate("packs", "{name}, exercise {number}").format(name=name, number=number),
            kinds,
            check,
        )
        for number, one in enumerate(told.exercises, start=1)
    )
    try:
        pack = Pack(title=told.title, exercises=exercises, author=told.author, notes=told.notes)
    except PackError as error:
        raise PackError(error.message, where=name, advice=error.advice) from error
    if pack.sha256 != document.sha256:
        # Written by hand or by another program: a number as 1 instead of 1.0, a default left out.
        raise PackError(
            translate(
                "packs",
                "The pack is not written the way packs are, so results could not be told to"
                " belong to"
                " it.",
            ),
            where=name,
            advice=translate("packs", "Let it be saved again by the program it was made with."),
        )
    return pack


def _check_head(content: bytes, name: str) -> None:
    """Refuse what is no pack, and what a newer version wrote."""
    try:
        head = msgspec.json.decode(content, type=_HeadDoc)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        if FORMAT.encode("ascii") in content[:400]:
            raise _damaged(name) from error
        raise _foreign(name) from error
    if head.format != FORMAT:
        raise _foreign(name)
    if head.version > VERSION:
        raise PackError(
            translate(
                "packs",
                "A newer version wrote this pack (version {version}; this one reads up to "
                "{version_2}).",
            ).format(version=head.version, version_2=VERSION),
            where=name,
            advice=translate("packs", "Open it with that version."),
        )
    if head.version < 1:
        raise _damaged(name)


def _exercise(
    told: _ExerciseDoc,
    where: str,
    kinds: Collection[str],
    check: Callable[[PackedExercise], None] | None,
) -> PackedExercise:
    if told.kind not in kinds:
        raise PackError(
            translate("packs", "There is no kind of exercise called {kind!r}.").format(
                kind=told.kind[:MOST_NAME_CHARACTERS]
            ),
            where=where,
            advice=translate("packs", "The pack may be made for another version of the program."),
        )
    try:
        exercise = PackedExercise(
            name=told.name,
            kind=told.kind,
            seed=told.seed,
            teeth=told.teeth,
            variation=told.variation,
            settings=dict(told.settings),
        )
        if check is not None:
            check(exercise)
    except StainmapError as error:
        raise PackError(error.message, where=where, advice=error.advice) from error
    return exercise


def _content(pack: Pack) -> dict[str, Any]:
    return {
        "title": pack.title,
        "author": pack.author,
        "notes": pack.notes,
        "exercises": [
            {
                "name": one.name,
                "kind": one.kind,
                "seed": one.seed,
                "teeth": list(one.teeth),
                "variation": float(one.variation),
                "settings": dict(one.settings),
            }
            for one in pack.exercises
        ],
    }


def _sha256(value: Any) -> str:
    try:
        text = canonical_json(value)
    except LabbookError as error:
        raise PackError(error.message) from error
    return hashlib.sha256(text.encode("ascii")).hexdigest()


def _damaged(name: str) -> PackError:
    return PackError(
        translate("packs", "The pack is damaged or was changed by hand."),
        where=name,
        advice=translate("packs", "Ask for it again from whoever made it."),
    )


def _foreign(name: str) -> PackError:
    return PackError(
        translate("packs", "This is no pack of exercises."),
        where=name,
        advice=translate("packs", "Packs end in {suffix}.").format(suffix=SUFFIX),
    )
