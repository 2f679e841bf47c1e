"""What is said to people, in their language: English stands in the code, others are looked up.

A sentence is written whole where it is needed, with places for its values in braces:
``translate("settings", "One drop has {volume} mL.").format(volume=text)``. Both arguments are
plain texts: a program that reads the code (``tests/tools/translations.py``) finds them there.
"""

from __future__ import annotations

from collections.abc import Callable

Lookup = Callable[[str, str], str]


def _as_it_stands(_context: str, text: str) -> str:
    return text


class _Language:
    """The language that is spoken now."""

    lookup: Lookup = staticmethod(_as_it_stands)


def translate(context: str, text: str) -> str:
    """Return a text in the language that is spoken now; in English where there is no other.

    Parameters
    ----------
    context
        Which part of the program says it: the same word may be two in another language.
    text
        Whole sentence or phrase in English.
    """
    return _Language.lookup(context, text)


def speak(lookup: Lookup | None) -> None:
    """Look up all texts by a function of context and text from now on; None speaks English."""
    _Language.lookup = staticmethod(_as_it_stands if lookup is None else lookup)
