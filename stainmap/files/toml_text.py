"""Plain data as TOML text: what the standard library reads but does not write."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any


def toml_text(document: Mapping[str, Any], *, comment: str = "") -> str:
    """Return a document as TOML 1.0.

    Parameters
    ----------
    document
        Values are strings, numbers, booleans, lists, tables; a list of tables at the top level
        becomes ``[[name]]`` sections, everything below stands inline.
    comment
        Lines to put first.

    Raises
    ------
    TypeError
        If a value is none of these (TOML has no null).
    """
    lines = [f"# {line}".rstrip() for line in comment.splitlines()]
    sections = {key: value for key, value in document.items() if _is_section(value)}
    lines += [
        f"{_key(key)} = {_inline(value)}" for key, value in document.items() if key not in sections
    ]
    for name, tables in sections.items():
        for table in tables:
            lines += ["", f"[[{_key(name)}]]"]
            lines += [f"{_key(key)} = {_inline(value)}" for key, value in table.items()]
    return "\n".join(lines) + "\n"


def _is_section(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(one, dict) for one in value)


def _inline(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, (int, float)):
        return repr(value)
    if isinstance(value, list):
        return f"[{', '.join(_inline(own) for own in value)}]"
    if isinstance(value, dict):
        inside = ", ".join(f"{_key(key)} = {_inline(own)}" for key, own in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    raise TypeError(f"TOML cannot hold {value!r}")


def _key(key: str) -> str:
    bare = key.isascii() and key.replace("_", "a").replace("-", "a").isalnum()
    return key if bare else _text(key)


def _text(value: str) -> str:
    # A JSON string is a TOML basic string but for the one control character JSON leaves alone.
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
