"""What a body is before anything is read from it: a jaw, a tooth with roots, no crown at all."""

from __future__ import annotations

import numpy as np

from stainmap.planning.relief import Relief
from stainmap.planning.size_check import LONGEST_MM, SHORTEST_MM
from stainmap.surface.frame import PrincipalFrame, principal_extents
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

# Roots make a body long and its normals lie across it. Two teeth with roots measured 1.9 to 2.1
# and 1.5 to 1.8, crowns at most 1.6 and 1.4.
_ROOT_NORMALS = 1.75
_ROOT_ELONGATION = 1.45
# Every crown has fossae or grooves; a body whose valleys cover less than this is no crown.
_VALLEY_DEPTH_MM = 0.03
_VALLEY_SHARE = 0.01
_SIZE_SLACK = 1.15


# A jaw or a piece of one is larger than any bridge in all three directions, mm: bridges are no
# thicker than their teeth are high, and scans of jaws have gum below them. No jaw is larger than
# the second sizes.
_JAW_MM = (20.0, 13.5, 12.5)
_LARGEST_JAW_MM = (130.0, 100.0, 45.0)


def is_jaw(mesh: TriMesh, frame: PrincipalFrame) -> bool:
    """Return whether a body is as large as a jaw with several teeth."""
    extents = principal_extents(mesh, frame)
    return bool((extents > _JAW_MM).all() and (extents < _LARGEST_JAW_MM).all())


def has_roots(mesh: TriMesh, frame: PrincipalFrame) -> bool:
    """Return whether a single body is long and mostly faces across its length, as roots do."""
    weight = mesh.face_areas / mesh.area
    normals = mesh.face_normals
    spread = np.linalg.eigvalsh(np.einsum("f,fi,fj->ij", weight, normals, normals))
    elongation = frame.spreads[0] / max(float(frame.spreads[1]), 1e-9)
    across = spread[1] / max(float(spread[0]), 1e-9)
    return bool(across >= _ROOT_NORMALS and elongation >= _ROOT_ELONGATION)


def why_no_crown(
    mesh: TriMesh, frame: PrincipalFrame, copy: TriMesh, wide: Relief, *, bridge: bool
) -> str | None:
    """Return a sentence that says why a body cannot be a crown or bridge, or None if it can.

    Parameters
    ----------
    mesh, frame
        The body and its frame.
    copy, wide
        A coarser copy of it, and the wide relief of that.
    bridge
        Whether it has connectors.
    """
    longest, _, shortest = principal_extents(mesh, frame)
    size = translate("body kind", "{longest:.3g} mm long and {shortest:.3g} mm thick").format(
        longest=longest, shortest=shortest
    )
    if longest < LONGEST_MM[0] / _SIZE_SLACK or shortest < SHORTEST_MM[0] / _SIZE_SLACK**2:
        return translate("body kind", "The body is {size}: too small for a crown.").format(
            size=size
        )
    if not bridge and longest > LONGEST_MM[1] * _SIZE_SLACK:
        return translate(
            "body kind", "The body is {size} and in one piece: too large for a crown."
        ).format(size=size)
    valleys = copy.vertex_areas[wide.valley_depth_mm > _VALLEY_DEPTH_MM].sum()
    if valleys < _VALLEY_SHARE * copy.area:
        return translate(
            "body kind", "The body has no fossae or grooves anywhere, as every crown has."
        )
    return None
