"""The fields that light needs on the open surface, computed in the background when first asked."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from stainmap.app.job import JobRunner
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.paper.shading import ShadingFields
    from stainmap.surface.diffusion import SurfaceOperator


class ShadingWork:
    """Smoothed normals and occlusion of one surface at a time.

    Parameters
    ----------
    jobs
        Does the work.
    on_ready
        Called when the fields are there.
    """

    def __init__(self, jobs: JobRunner, on_ready: Callable[[], None]) -> None:
        self._jobs, self._on_ready = jobs, on_ready
        self._kept: tuple[TriMesh, ShadingFields] | None = None

    def fields_of(self, mesh: TriMesh) -> ShadingFields | None:
        """Return the fields of a surface, or None as long as they are not computed."""
        if self._kept is None or self._kept[0] is not mesh:
            return None
        return self._kept[1]

    def keep(self, mesh: TriMesh, fields: ShadingFields) -> None:
        """Take fields that somebody else has computed."""
        self._kept = (mesh, fields)

    def need(self, operator: SurfaceOperator) -> None:
        """Compute the fields of an operator's surface, unless they are there."""
        from stainmap.paper.shading import shading_fields  # noqa: PLC0415

        if self.fields_of(operator.mesh) is not None:
            return

        def done(fields: ShadingFields) -> None:
            self.keep(operator.mesh, fields)
            operator.forget()
            self._on_ready()

        self._jobs.start(
            translate("shading work", "Looking into the grooves"),
            lambda progress: shading_fields(operator, progress=progress),
            on_done=done,
            on_failed=lambda _error: None,
        )

    def close(self) -> None:
        """Let the work under way go."""
        self._jobs.close()
