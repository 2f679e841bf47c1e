"""What the crown looked like after its last steps, kept until somebody wants a picture of them."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case

Bytes = NDArray[np.uint8]

_KEPT_BYTES = 24 << 20


class StepColours:
    """What the crown looked like after the steps that were predicted as they were made.

    Holds colours only, and the oldest go when they have become too many.
    """

    def __init__(self, most_bytes: int = _KEPT_BYTES) -> None:
        self._most_bytes = most_bytes
        self._kept: dict[int, tuple[Case, Bytes]] = {}

    def clear(self) -> None:
        """Forget all."""
        self._kept.clear()

    def keep(self, case: Case, srgb: Bytes) -> None:
        """Keep the colours (V, 3) of a case."""
        self._kept.pop(id(case), None)
        self._kept[id(case)] = (case, srgb)
        while len(self._kept) > 1 and self.bytes_kept > self._most_bytes:
            self._kept.pop(next(iter(self._kept)))

    def of(self, case: Case) -> Bytes | None:
        """Return the colours of a case, or None if they are not known any more."""
        found = self._kept.get(id(case))
        return None if found is None else found[1]

    @property
    def bytes_kept(self) -> int:
        """How much is kept."""
        return sum(srgb.nbytes for _, srgb in self._kept.values())
