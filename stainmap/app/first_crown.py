"""The sample, read beside the making of the window that will show it."""

from __future__ import annotations

from threading import Thread

import numpy as np
from numpy.typing import NDArray

from stainmap.app.sample import open_sample, sample_look
from stainmap.model.case import Case


class FirstCrown:
    """Begins at once to read the sample in a thread of its own, with all that a view asks for.

    To unpack, to check sums and to go through long arrays takes no hold of the interpreter:
    meanwhile the other thread imports the window.
    """

    def __init__(self) -> None:
        self._read: tuple[Case, NDArray[np.uint8] | None] | None = None
        self._failure: BaseException | None = None
        self._thread = Thread(target=self._work, name="stainmap first crown", daemon=True)
        self._thread.start()

    def _work(self) -> None:
        try:
            case = open_sample()
            case.surface.mesh.make_ready_to_draw()
            self._read = case, sample_look(case)
        except BaseException as error:  # noqa: BLE001 - it is raised again where it is waited for
            self._failure = error

    def wait(self) -> tuple[Case, NDArray[np.uint8] | None]:
        """Return the sample and the colours it was last seen in, as soon as they are there.

        Raises
        ------
        StainmapError
            If it is missing or damaged: the installation is.
        """
        self._thread.join()
        if self._read is None:
            raise self._failure or RuntimeError("the sample was not read")
        return self._read
