"""Softened borders of areas for one view: at once where that is quick, else beside its work."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, Signal

from stainmap.app.job import JobRunner, Progress
from stainmap.errors import StainmapError
from stainmap.surface.mesh import TriMesh
from stainmap.ui.poster import Poster
from stainmap.ui.zone_shares import ZoneShares, hard_shares
from stainmap.words import translate

Masks = Mapping[int, NDArray[np.float32]]
Indices = NDArray[np.int32]
Shares = NDArray[np.float32]
Areas = tuple[NDArray[np.uint8], Masks]

# Softened in the thread of the window: 3 ms for a thousand vertices.
_AT_ONCE = 5_000


class ZoneSoftening(QObject):
    """Zones and accents of one mesh as they were last told, and their shares once worked out.

    Signals
    -------
    softened
        Shares that were not there at once are there now.
    """

    softened = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._mesh: TriMesh | None = None
        self._shares: ZoneShares | None = None
        # What the shares do not know yet.
        self._unseen: Areas | None = None
        # What is being worked out beside, while anything is.
        self._told: Areas = (np.empty(0, np.uint8), {})
        self._at_work = False
        self._runner: JobRunner | None = None
        self._drawn: tuple[Shares, Shares] | None = None

    def take(self, mesh: TriMesh | None) -> None:
        """Have to do with another mesh from now on, of which nothing is known."""
        self._mesh, self._shares, self._unseen = mesh, None, None
        self._at_work, self._drawn = False, None

    def set_areas(self, zones: NDArray[np.uint8], accents: Masks) -> None:
        """Take zone numbers (V,) and soft masks (V,) of accents by number, 7 to 13."""
        self._unseen = (zones, accents)

    @property
    def drawn(self) -> tuple[Shares, Shares] | None:
        """The shares (V, 6) and (V, 7) to draw; None while nobody has looked at them."""
        return self._drawn if self._unseen is None or self._at_work else None

    def look(self) -> bool:
        """Bring the shares up to date; return False if those that were drawn stay.

        Of a large mesh that has not been looked at before they have hard borders first; `softened`
        tells of the soft ones.
        """
        mesh, unseen = self._mesh, self._unseen
        if mesh is None or unseen is None or self._at_work:
            return False
        shares, self._unseen = self._shares, None
        if mesh.vertex_count > _AT_ONCE and (shares is None or not shares.is_close(*unseen)):
            self._soften(mesh, *unseen)
            if shares is None:
                self._drawn = hard_shares(*unseen)
            return shares is None
        if shares is None:
            shares = self._shares = ZoneShares(mesh)
        shares.set_zones(unseen[0])
        shares.set_accents(unseen[1])
        self._drawn = (shares.zones, shares.accents)
        return True

    def _soften(self, mesh: TriMesh, zones: NDArray[np.uint8], accents: Masks) -> None:
        """Work the shares out beside the window's work."""
        known, self._told, self._at_work = self._shares, (zones, accents), True
        if self._runner is None:
            self._runner = JobRunner(post=Poster())

        def work(_progress: Progress) -> ZoneShares:
            shares = ZoneShares(mesh) if known is None else known
            shares.set_zones(zones)
            shares.set_accents(accents)
            return shares

        def done(shares: ZoneShares) -> None:
            if mesh is self._mesh:
                self._shares, self._at_work = shares, False
                self._drawn = (shares.zones, shares.accents)
                # A brush may have gone on meanwhile: a few changes more, mended in place.
                self.look()
                self.softened.emit()

        def failed(_error: StainmapError) -> None:
            if mesh is self._mesh:
                self._at_work = False

        title = translate("zone softening", "Softening the borders of areas")
        self._runner.start(title, work, on_done=done, on_failed=failed)

    def change_zones(self, vertices: Indices, zones: NDArray[np.uint8]) -> Indices | None:
        """Take zone numbers (k,) of some vertices; return where (n,) shares are others now."""
        if self._at_work:
            all_zones, accents = self._unseen or self._told
            all_zones = all_zones.copy()
            all_zones[vertices] = zones
            self._unseen = (all_zones, accents)
        if self._at_work or self._shares is None or self._unseen is not None:
            return None
        return self._shares.change_zones(vertices, zones)

    def change_accent(
        self, number: int, vertices: Indices, share: NDArray[np.float32]
    ) -> Indices | None:
        """Take an accent's mask (k,) at some vertices; return where (n,) shares are others now."""
        if self._at_work:
            zones, accents = self._unseen or self._told
            mask = accents.get(number)
            mask = np.zeros(len(zones), np.float32) if mask is None else mask.copy()
            mask[vertices] = share
            self._unseen = (zones, {**accents, number: mask})
        if self._at_work or self._shares is None or self._unseen is not None:
            return None
        return self._shares.change_accent(number, vertices, share)
