"""What is mixed for a tray and how its day goes, worked out together."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from stainmap.app.tray import LaidTray
from stainmap.planning.tray_mixing import TrayMixing
from stainmap.planning.tray_run import TrayRun, tray_run


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TrayDay:
    """A tray as it is shown.

    Parameters
    ----------
    laid, mixing
        Its cases, and what is mixed for them.
    run
        Its day from a start on; None where nothing is painted.
    """

    laid: LaidTray
    mixing: TrayMixing
    run: TrayRun | None


def tray_day(laid: LaidTray, start: datetime) -> TrayDay:
    """Return what is mixed for a tray, and its day if it begins at `start`.

    Raises
    ------
    CatalogueError
        If a programme is not among its case's materials.
    """
    mixing = laid.mixing()
    cases = [one.labelled for one in laid.cases]
    run = tray_run(cases, len(mixing.jars), start) if cases else None
    return TrayDay(laid=laid, mixing=mixing, run=run)
