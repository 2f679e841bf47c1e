"""Arrows for streaks: where each stroke begins and where it ends."""

from __future__ import annotations

import numpy as np

from stainmap.model.case import Case
from stainmap.paper.area_lines import Mark, WorldLines
from stainmap.planning.streaks import streak_shares
from stainmap.surface.mesh import connected_pieces

_LEAST_SHARE = 0.02


def streak_arrows(case: Case, unit: int | None = None) -> tuple[WorldLines, ...]:
    """Return one line of two points per stroke, from where the brush is set down to its end.

    Found from the strokes as they lie on the surface: a stroke is strongest where it begins and
    ends where it has run out, so the arrows show what the prediction is made of. `unit` keeps
    those that begin on one unit.
    """
    mesh = case.surface.mesh
    lines = []
    for number, step in enumerate(case.plan.steps, start=1):
        for streaks in step.streaks:
            share = streak_shares(mesh, case.zones, case.reading, streaks)
            count, piece = connected_pieces(mesh, share > _LEAST_SHARE)
            for stroke in range(count):
                inside = np.flatnonzero(piece == stroke)
                start = inside[share[inside].argmax()]
                if unit is not None and case.reading.unit_index[start] != unit:
                    continue
                away = np.linalg.norm(mesh.vertices[inside] - mesh.vertices[start], axis=1)
                ends = np.array([start, inside[away.argmax()]])
                lines.append(
                    WorldLines(
                        mark=Mark.STREAK,
                        area=number,
                        points=mesh.vertices[ends],
                        normals=mesh.vertex_normals[ends],
                        line_of_point=np.zeros(2, dtype=np.intp),
                    )
                )
    return tuple(lines)
