"""Days and times as they are said: weekday and month in the language that is spoken."""

from __future__ import annotations

from datetime import datetime

from stainmap.words import marked, translate

_WEEKDAYS = (
    marked("time", "Mon"),
    marked("time", "Tue"),
    marked("time", "Wed"),
    marked("time", "Thu"),
    marked("time", "Fri"),
    marked("time", "Sat"),
    marked("time", "Sun"),
)
_MONTHS = (
    marked("time", "Jan"),
    marked("time", "Feb"),
    marked("time", "Mar"),
    marked("time", "Apr"),
    marked("time", "May"),
    marked("time", "Jun"),
    marked("time", "Jul"),
    marked("time", "Aug"),
    marked("time", "Sep"),
    marked("time", "Oct"),
    marked("time", "Nov"),
    marked("time", "Dec"),
)


def day_and_time(moment: datetime) -> str:
    """Return weekday and clock time, such as "Sat 08:10"."""
    return f"{translate('time', _WEEKDAYS[moment.weekday()])} {moment:%H:%M}"


def date_and_time(moment: datetime) -> str:
    """Return day, month and clock time, such as "4 May 08:10"."""
    return translate("time", "{day} {month} {clock}").format(
        day=moment.day, month=translate("time", _MONTHS[moment.month - 1]), clock=f"{moment:%H:%M}"
    )
