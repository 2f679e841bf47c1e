"""Reads the texts out of the code, and makes what the program loads of their translations.

    python -m tests.tools.translations            # count what is not translated yet
    python -m tests.tools.translations --write    # bring the files of the translators up to date

The files of the translators (``resources/translations/stainmap_de.ts``) are Qt's and open in Qt
Linguist; ``.qm`` beside them is what the program loads. Qt's own tools read the code: they find
every ``translate("context", "text")``, whether it is Qt's or that of ``stainmap.words``.
"""

from __future__ import annotations

import argparse
import ast
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree as ET

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / "resources" / "translations"
LANGUAGES = ("de",)
# Words that are the same in every language: units, signs of colour science, the program's own name,
# and a page of the manual.
SAME_IN_ALL = frozenset({"mm", "mL", "dE", "ΔC", "stainmap", "keys", "md"})
# Errors of programmers: nobody else sees them.
_OF_PYTHON = frozenset(
    {"AssertionError", "ValueError", "TypeError", "RuntimeError", "KeyError", "NotImplementedError"}
)
# What shows its first arguments to people.
_SHOWN = frozenset(
    {
        "QLabel", "SoftLabel", "SectionHead", "QPushButton", "QCheckBox", "QRadioButton",
        "link_button", "setText", "setToolTip", "setWindowTitle", "setAccessibleName",
        "setAccessibleDescription", "setPlaceholderText", "setSuffix", "add_note", "add_row",
        "add_heads", "addAction", "addTab", "addMenu", "_action", "emit", "say", "set_remark",
    }
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A text of the program in another language; `words` is empty where it is not translated."""

    context: str
    text: str
    words: str


def tool(name: str) -> str | None:
    """Return the path of one of Qt's tools for translators, beside this interpreter or anywhere."""
    beside = Path(sys.executable).with_name(f"pyside6-{name}")
    return str(beside) if beside.is_file() else shutil.which(f"pyside6-{name}")


def extract(path: Path) -> None:
    """Bring a file of the translators up to date with the code; translations in it stay."""
    sources = sorted(str(one) for one in (ROOT / "stainmap").rglob("*.py"))
    options = ["-locations", "none", "-no-obsolete", "-target-language", path.stem[-2:]]
    options += ["-tr-function-alias", "translate+=marked"]
    _run("lupdate", [*sources, *options, "-ts", str(path)])


def release(path: Path, to: Path) -> None:
    """Make what the program loads from a file of the translators."""
    _run("lrelease", [str(path), "-qm", str(to)])


def messages(path: Path) -> list[Message]:
    """Return all texts of a file of the translators."""
    found = []
    for context in ET.parse(path).getroot().iter("context"):  # noqa: S314 - our own file
        name = context.findtext("name", "")
        for one in context.iter("message"):
            words = one.find("translation")
            done = words is not None and words.get("type") is None
            text = (words.text or "") if done and words is not None else ""
            found.append(Message(context=name, text=one.findtext("source", ""), words=text))
    return found


def not_in_translate(path: Path) -> Iterator[str]:
    """Yield texts of a module of the window that people see and no translator would find."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if not isinstance(node, ast.Call):
            continue
        name = getattr(node.func, "attr", getattr(node.func, "id", ""))
        # The window's commands: text and what it does are followed by a key and an icon.
        shown = node.args[:2] if name == "_action" else node.args
        for argument in shown if name in _SHOWN else ():
            words = " ".join(_plain_parts(argument))
            if set(re.findall(r"[^\W\d_]{2,}", words)) - SAME_IN_ALL:
                yield ast.unparse(argument)


def errors_not_in_translate(path: Path) -> Iterator[str]:
    """Yield what errors that a module raises say to people in English alone."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        call = node.exc if isinstance(node, ast.Raise) else None
        if not isinstance(call, ast.Call) or "Error" not in ast.unparse(call.func):
            continue
        if getattr(call.func, "id", "") in _OF_PYTHON:
            continue
        advice = [one.value for one in call.keywords if one.arg == "advice"]
        for argument in (*call.args[:1], *advice):
            if re.search(r"[^\W\d_]{2,}", " ".join(_plain_parts(argument))):
                yield ast.unparse(argument)


def _plain_parts(argument: ast.expr) -> Iterator[str]:
    parts = argument.values if isinstance(argument, ast.JoinedStr) else [argument]
    for part in parts:
        if isinstance(part, ast.Constant) and isinstance(part.value, str):
            yield part.value


def _run(name: str, arguments: list[str]) -> None:
    program = tool(name)
    if program is None:
        raise FileNotFoundError(f"pyside6-{name} is not there; it comes with PySide6.")
    subprocess.run([program, *arguments], check=True, capture_output=True, text=True)


def main() -> None:
    """Count, or write."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--write", action="store_true", help="bring the files up to date")
    write = parser.parse_args().write
    for language in LANGUAGES:
        path = FOLDER / f"stainmap_{language}.ts"
        if write:
            FOLDER.mkdir(exist_ok=True)
            extract(path)
            release(path, path.with_suffix(".qm"))
        all_ = messages(path)
        missing = [one for one in all_ if not one.words]
        print(f"{language}: {len(all_)} texts, {len(missing)} of them not translated")
        for one in missing:
            print(f"  {one.context}: {one.text}")
    modules = sorted((ROOT / "stainmap" / "ui").glob("*.py"))
    counts = {path.name: len(list(not_in_translate(path))) for path in modules}
    left = {name: count for name, count in counts.items() if count}
    print(f"texts of the window outside translate(): {sum(left.values())} in {len(left)} modules")


if __name__ == "__main__":
    main()
