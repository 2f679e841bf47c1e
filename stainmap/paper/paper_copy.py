"""The surface as fine as a print can show it, and everything about a case carried over to it.

A refined crown has an edge every 0.1 mm. At three to one in milled size that is less than 0.4 mm on
paper, and a pixel of the printed relief is 0.17 mm: a copy of a third of the vertices looks the
same and takes a third of the time. Areas and coats are averaged onto it, not sampled, so borders
and contours keep their places.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.crown import CrownReading
from stainmap.paper.shading import ShadingFields
from stainmap.surface.mesh import FloatArray, TriMesh, frozen
from stainmap.surface.thinning import Thinned, thin

# About 0.7 mm on paper at the largest scale. A chord this long lies 0.004 mm off a groove of 1 mm
# radius: on paper less than a tenth of the width of a line.
SPACING_MM: Final = 0.18
# The rosette is drawn at half the scale of the views, and light is softened over more than this.
COARSE_MM: Final = 0.25
_COARSE_FROM: Final = 10_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PaperCopy:
    """A case's surface thinned for paper; the surface itself where it is coarse already.

    Parameters
    ----------
    thinned
        The copy, W vertices, and the way back to the V vertices of the case.
    coarse
        A coarser copy of the copy, for the rosette and the light.
    reading, coarse_reading
        What was read from the shape, per vertex of the copy and of the coarser one.
    """

    thinned: Thinned
    coarse: Thinned
    reading: CrownReading
    coarse_reading: CrownReading

    @classmethod
    def of(cls, case: Case) -> PaperCopy:
        """Return the copy of a case's surface."""
        thinned = thin(case.surface.mesh, SPACING_MM)
        coarse = thin(thinned.mesh, COARSE_MM, worthwhile_from=_COARSE_FROM)
        reading = _sampled(case.reading, thinned)
        return cls(
            thinned=thinned,
            coarse=coarse,
            reading=reading,
            coarse_reading=_sampled(reading, coarse),
        )

    @property
    def mesh(self) -> TriMesh:
        """The copy itself."""
        return self.thinned.mesh

    def shading(self, fields: ShadingFields) -> ShadingFields:
        """Return shading fields of the case's surface, such as the window has, on the copy."""
        if self.mesh is self.thinned.source:
            return fields

        def mean(normals: NDArray[np.float32]) -> NDArray[np.float32]:
            rows = self.thinned.mean(normals.astype(np.float64))
            length = np.linalg.norm(rows, axis=1, keepdims=True)
            return frozen((rows / np.maximum(length, 1e-12)).astype(np.float32))

        openness: FloatArray = self.thinned.mean(fields.openness.astype(np.float64))
        return ShadingFields(
            normals=mean(fields.normals),
            normals_red=mean(fields.normals_red),
            normals_green=mean(fields.normals_green),
            normals_blue=mean(fields.normals_blue),
            openness=frozen(openness.astype(np.float32)),
        )


def _sampled(reading: CrownReading, thinned: Thinned) -> CrownReading:
    """Return a reading per vertex of a copy."""
    one = thinned.representative
    return replace(
        reading,
        outer=reading.outer[one],
        rim=reading.rim[one],
        unit_index=reading.unit_index[one],
        height=reading.height[one],
        depth_below_crest_mm=reading.depth_below_crest_mm[one],
    )
