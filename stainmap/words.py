"""What is said to people, in their language: English stands in the code, others are looked up.

A sentence is written whole where it is needed, with places for its values in braces:
``translate("settings", "One drop has {volume} mL.").format(volume=text)``. Both arguments are
plain texts: a program that reads the code (``tests/tools/translations.py``) finds them there.
A text that stands in a table is ``marked("looks", "Bench")`` for that program and looked up when it
is shown: ``translate("looks", text)``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar

Lookup = Callable[[str, str], str]


def _as_it_stands(_context: str, text: str) -> str:
    return text


class _Language:
    """The language that is spoken now."""

    lookup: Lookup = staticmethod(_as_it_stands)


_IN_ENGLISH: ContextVar[bool] = ContextVar("in_english", default=False)


def translate(context: str, text: str) -> str:
    """Return a text in the language that is spoken now; in English where there is no other.

    Parameters
    ----------
    context
        Which part of the program says it: the same word may be two in another language.
    text
        Whole sentence or phrase in English.
    """
    return text if _IN_ENGLISH.get() else _Language.lookup(context, text)


def marked(_context: str, text: str) -> str:
    """Return a text as it stands, marked for the translators: it is looked up when it is shown."""
    return text


def value_word(value: str) -> str:
    """Return what a value that files hold in English is called on screen.

    The values are listed for the translators in `ui/value_words.py`.
    """
    return translate("values", str(value))


def listed(words: Sequence[str]) -> str:
    """Return words as a list in a sentence: "neck, body and cusp"."""
    if len(words) < 2:
        return "".join(words)
    return translate("words", "{first} and {last}").format(
        first=", ".join(words[:-1]), last=words[-1]
    )


def either(words: Sequence[str]) -> str:
    """Return words as a choice in a sentence: "A2, A3 or B3"."""
    if len(words) < 2:
        return "".join(words)
    return translate("words", "{first} or {last}").format(
        first=", ".join(words[:-1]), last=words[-1]
    )


def jars_text(count: int) -> str:
    """Return "1 jar" or "3 jars"."""
    text = translate("words", "1 jar") if count == 1 else translate("words", "{count} jars")
    return text.format(count=count)


def coat_count_text(count: int) -> str:
    """Return "1 coat" or "3 coats"."""
    text = translate("words", "1 coat") if count == 1 else translate("words", "{count} coats")
    return text.format(count=count)


def sentence_case(text: str) -> str:
    """Return a text with a capital at its beginning; all other letters stay as they are."""
    return text[:1].upper() + text[1:]


def speak(lookup: Lookup | None) -> None:
    """Look up all texts by a function of context and text from now on; None speaks English."""
    _Language.lookup = staticmethod(_as_it_stands if lookup is None else lookup)


def speaks_english() -> bool:
    """Return True while texts are said as they stand in the code."""
    return _IN_ENGLISH.get() or _Language.lookup is _as_it_stands


@contextmanager
def in_english() -> Iterator[None]:
    """Speak English inside, on this thread alone: for files and paper, which others read too."""
    before = _IN_ENGLISH.set(True)
    try:
        yield
    finally:
        _IN_ENGLISH.reset(before)
