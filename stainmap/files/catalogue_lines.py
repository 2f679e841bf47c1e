"""Where in the text of a materials file an entry and its fields stand, for people to find."""

from __future__ import annotations

import re
from collections.abc import Sequence

_HEADER = re.compile(r"\s*\[\[?\s*\"?([A-Za-z0-9_-]+)\"?\s*\]\]?")
_INDEX = re.compile(r"\[(\d+)\]")


class CatalogueLines:
    """Line numbers, from 1, in the text of a TOML file of ``[[kind]]`` tables.

    Made for sentences, not for machines: a file written in an unusual way may get the line of
    the entry where that of the field is meant.
    """

    def __init__(self, text: str) -> None:
        self._lines = text.splitlines()
        self._headers: list[tuple[str, int]] = []
        for number, line in enumerate(self._lines, start=1):
            found = _HEADER.match(line)
            if found is not None:
                self._headers.append((found[1], number))

    def entry(self, kind: str, number: int) -> int | None:
        """Return the line on which entry `number` (from 1) of a kind begins."""
        begins = [line for name, line in self._headers if name == kind]
        if number <= len(begins):
            return begins[number - 1]
        return self._key(kind, range(1, len(self._lines) + 1), 0)

    def field(self, kind: str, number: int, path: str) -> int | None:
        """Return the line of a field given as ``layers[1].nominal.b``, else that of its entry.

        Within a list the field is looked for as often as the list has come before.
        """
        begin = self.entry(kind, number)
        if begin is None:
            return None
        after = [line for _, line in self._headers if line > begin]
        inside = range(begin, after[0] if after else len(self._lines) + 1)
        indices = [int(index) for index in _INDEX.findall(path)]
        for key in reversed(_INDEX.sub("", path).split(".")):
            for times in (indices[-1] if indices else 0, 0):
                line = self._key(key, inside, times)
                if line is not None:
                    return line
        return begin

    def _key(self, key: str, inside: Sequence[int], times: int) -> int | None:
        """Return the line of a key after `times` others of its name, or None."""
        if not key:
            return None
        pattern = re.compile(rf"(?<![\w-])[\"']?{re.escape(key)}[\"']?\s*=")
        for number in inside:
            for _ in pattern.finditer(self._lines[number - 1].split("#")[0]):
                if times == 0:
                    return number
                times -= 1
        return None
