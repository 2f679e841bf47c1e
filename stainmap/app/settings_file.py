"""The file of settings: read without trusting it, kept aside where it is damaged, written whole."""

from __future__ import annotations

import errno
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from platformdirs import user_config_path

from stainmap.app.settings import Language, Motion, Scheme, Settings, Typeface
from stainmap.errors import StainmapError
from stainmap.files.atomic import make_folder, write_bytes
from stainmap.files.toml_text import toml_text
from stainmap.paper.page_size import PageSize
from stainmap.units import TemperatureUnit
from stainmap.words import translate

NAME: Final = "settings.toml"
_MOST_BYTES: Final = 1_000_000
_MOST_KEPT: Final = 1000
_COMMENT = (
    "Settings of stainmap for this computer; the program writes this file anew whenever a setting"
    "\nis changed. Set them by Edit > Settings."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingsRead:
    """Settings as a file has them.

    Parameters
    ----------
    settings
        What holds; defaults where the file says nothing, or nothing that can be used.
    problem
        One sentence about a file that could not be used as it is; empty if there is nothing to
        say.
    may_write
        False if what is there could not be kept aside, so that nothing may be written over it.
    """

    settings: Settings
    problem: str = ""
    may_write: bool = True


def settings_path() -> Path:
    """Return where the settings of this computer lie."""
    return user_config_path("stainmap", appauthor=False) / NAME


def read_settings(path: Path) -> SettingsRead:
    """Return the settings of a file; one that is damaged is kept aside under another name."""
    try:
        with path.open("rb") as file:
            content = file.read(_MOST_BYTES + 1)
        if len(content) > _MOST_BYTES:
            return _set_aside(
                path, Settings(), translate("settings file", "it is too large for one")
            )
        document = tomllib.loads(content.decode("utf-8"))
    except OSError as error:
        if error.errno in (errno.ENOENT, errno.ENOTDIR):
            return SettingsRead(settings=Settings())
        return _set_aside(
            path,
            Settings(),
            translate("settings file", "it cannot be read, {value}").format(
                value=error.strerror or error
            ),
        )
    except (UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError):
        return _set_aside(path, Settings(), translate("settings file", "it is damaged"))
    settings, wrong = _checked(document)
    if not wrong:
        return SettingsRead(settings=settings)
    return _set_aside(
        path,
        settings,
        translate("settings file", "it says nothing usable for {wrong}").format(
            wrong=", ".join(wrong)
        ),
    )


def write_settings(path: Path, settings: Settings) -> None:
    """Write all settings, also those at their defaults, so that the file shows what there is.

    Raises
    ------
    StainmapError
        If it cannot be written; what was there before is untouched.
    """
    make_folder(path.parent)
    document = {name: one.write(settings) for name, one in _ENTRIES.items()}
    write_bytes(path, toml_text(document, comment=_COMMENT).encode("utf-8"))


class SettingsStore:
    """The settings of this computer and the file they are kept in.

    Parameters
    ----------
    path
        The file; None keeps them until the program ends.
    """

    def __init__(self, path: Path | None = None) -> None:
        read = SettingsRead(settings=Settings()) if path is None else read_settings(path)
        self._path = path if read.may_write else None
        self._settings = read.settings
        self.problem = read.problem

    @property
    def settings(self) -> Settings:
        """What is set."""
        return self._settings

    def keep(self, settings: Settings) -> None:
        """Take over settings, and write them if they are others than before.

        Raises
        ------
        StainmapError
            If they cannot be written; they hold until the program ends all the same.
        """
        if settings == self._settings:
            return
        self._settings = settings
        if self._path is not None:
            write_settings(self._path, settings)


def _set_aside(path: Path, settings: Settings, why: str) -> SettingsRead:
    """Move a file that cannot be used out of the way, and write what of it holds in its place."""
    rest = (
        translate("settings file", "The defaults are used")
        if settings == Settings()
        else translate("settings file", "All others hold")
    )
    try:
        kept = _free_name(path)
        path.replace(kept)
    except OSError:
        return SettingsRead(
            settings=settings,
            problem=(
                translate(
                    "settings file",
                    "The settings file {path} is left alone, because {why}. {rest}, and what you "
                    "set holds until the program ends; move the file away to keep settings again.",
                ).format(path=path, why=why, rest=rest)
            ),
            may_write=False,
        )
    problem = translate(
        "settings file",
        "The settings file was not used as it is, because {why}. {rest}; the file as "
        "it was is kept as {kept}.",
    ).format(why=why, rest=rest, kept=kept)
    try:
        write_settings(path, settings)
    except StainmapError as error:
        problem = translate(
            "settings file", "{problem} New settings cannot be written. {error}"
        ).format(problem=problem, error=error)
    return SettingsRead(settings=settings, problem=problem)


def _free_name(path: Path) -> Path:
    for number in range(1, _MOST_KEPT):
        kept = path.with_name(f"{path.stem}.kept-{number}{path.suffix}")
        if not kept.exists():
            return kept
    raise FileExistsError(errno.EEXIST, translate("settings file", "there are too many of them"))


# --- what the file holds -------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class _Entry:
    """One line of the file: the field of `Settings`, how its value is read, and how written."""

    field: str
    read: Callable[[Any], Any]
    write: Callable[[Settings], Any]


def _checked(document: Mapping[str, Any]) -> tuple[Settings, list[str]]:
    """Return the settings that can be used, and the names of lines that cannot."""
    values: dict[str, Any] = {}
    wrong = [
        translate("settings file", "'{name}', which it does not know").format(name=name)
        for name in document
        if name not in _ENTRIES
    ]
    for name, entry in _ENTRIES.items():
        if name not in document:
            continue
        try:
            value = entry.read(document[name])
            # One by one: a wrong value must not take the others away.
            Settings(**{entry.field: value})
        except (StainmapError, ValueError, TypeError):
            wrong.append(f"'{name}'")
        else:
            values[entry.field] = value
    return Settings(**values), wrong


def _whole(value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise TypeError
    return value


def _number(value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise TypeError
    return float(value)


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError
    return value


def _keys(value: Any) -> dict[str, str]:
    if not isinstance(value, dict):
        raise TypeError
    return {name: _text(key) for name, key in value.items()}


_ENTRIES: Final[Mapping[str, _Entry]] = {
    "degrees": _Entry(field="degrees", read=TemperatureUnit, write=lambda s: s.degrees.value),
    "paper": _Entry(field="page", read=PageSize, write=lambda s: s.page.value),
    "colours": _Entry(field="scheme", read=Scheme, write=lambda s: s.scheme.value),
    "typeface": _Entry(field="typeface", read=Typeface, write=lambda s: s.typeface.value),
    "size_percent": _Entry(field="size_percent", read=_whole, write=lambda s: s.size_percent),
    "motion": _Entry(field="motion", read=Motion, write=lambda s: s.motion.value),
    "drop_volume_ml": _Entry(
        field="drop_volume_ml", read=_number, write=lambda s: s.drop_volume_ml
    ),
    "programme": _Entry(field="programme", read=_text, write=lambda s: s.programme),
    "language": _Entry(field="language", read=Language, write=lambda s: s.language.value),
    "keys": _Entry(field="keys", read=_keys, write=lambda s: dict(s.keys)),
}
