"""How a verb answers: sentences or one JSON object, exit codes, progress."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import wraps
from pathlib import Path
from typing import Any, NoReturn

import click

from stainmap.errors import StainmapError

DONE, CANNOT, USAGE = 0, 1, 2


def reports(function: Callable[..., dict[str, Any]]) -> Callable[..., None]:
    """Print what a verb returns, as sentences or as one JSON object; turn errors into exit 1."""

    @wraps(function)
    def run(*args: Any, as_json: bool, **options: Any) -> None:
        try:
            report = function(*args, as_json=as_json, **options)
        except StainmapError as error:
            fail(error, as_json=as_json)
        except KeyboardInterrupt:
            fail(StainmapError("Stopped; nothing was changed."), as_json=as_json)
        if as_json:
            click.echo(json.dumps(report, ensure_ascii=False, indent=1))

    return click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")(run)


def fail(error: StainmapError, *, as_json: bool) -> NoReturn:
    """Say what cannot be done and end with exit code 1."""
    if as_json:
        entry = {"message": error.message, "where": error.where, "advice": error.advice}
        click.echo(json.dumps({"error": entry}, ensure_ascii=False, indent=1))
    else:
        click.echo(str(error), err=True)
    raise SystemExit(CANNOT)


@contextmanager
def about(path: Path, *kinds: type[StainmapError]) -> Iterator[None]:
    """Name the file in errors of these kinds that were raised where its name is not known."""
    try:
        yield
    except kinds as error:
        error.where = error.where or path.name
        raise


def check_ending(path: Path, ending: str) -> None:
    """Refuse to write a file that ends otherwise, so that a slip does not cost a mesh or a case."""
    if path.suffix.lower() != ending:
        raise StainmapError(
            f"A file that ends in {ending} is written here.",
            where=path.name,
            advice="Choose a name with that ending.",
        )


def told_progress(*, shown: bool) -> Callable[[float, str], None]:
    """Return a progress callback that says each stage once on standard error, if `shown`."""
    said: list[str] = []

    def say(share: float, phrase: str) -> None:
        del share
        if shown and phrase and (not said or said[-1] != phrase):
            said.append(phrase)
            click.echo(f"  {phrase} ...", err=True)

    return say


def is_watched(as_json: bool) -> bool:
    """Return True if a person looks on: progress is for a terminal, not for logs and scripts."""
    return not as_json and sys.stderr.isatty()
