"""The map of one unit: its part of the surface, seen from each side and put on paper."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.spatial import ConvexHull

from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.paper.area_lines import AreaFields, Mark, WorldLines, area_fields, area_lines
from stainmap.paper.marks import draw_number
from stainmap.paper.page import INK, MEDIUM, WHITE, Page
from stainmap.paper.paper_copy import PaperCopy
from stainmap.paper.raster import rasterise
from stainmap.paper.shading import ShadingFields
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.streak_arrows import streak_arrows
from stainmap.paper.views import CrownDirections, FlatExtent, FlatView, Side
from stainmap.paper.zone_drawing import ZoneDrawing, draw_zones
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import IndexArray, TriMesh, boundary_loops, submesh

FloatArray = NDArray[np.float64]

# Of the grey relief; lines and numbers above it are drawn as such.
DOTS_PER_INCH = 150.0
# The relief is quiet and its silhouette lies under a line: one sample a pixel is enough.
_SAMPLES = 1
ZONE_PILL_MM, ACCENT_PILL_MM = 3.8, 3.5
_SHORTEST_MM = 1.2
_HATCH_GREY, _CONTOUR_GREY = 0.34, 0.1
_SILHOUETTE_GREY = 0.55
_LEAST_ENCLOSED = 0.7


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class UnitMap:
    """A unit, or a whole bridge, ready to be drawn from any side.

    Parameters
    ----------
    mesh, shading, fields, lines
        Its part of the surface and what belongs to it.
    directions, extents
        Its sides, and how far it reaches as seen from each.
    enlargement
        Milled over sintered length.
    cuts
        (K, 3) int32. Faces that close the connectors where the unit is cut off, wound so that
        their backs are seen: they show as plain grey and carry no zone.
    """

    mesh: TriMesh
    shading: ShadingFields
    fields: AreaFields
    lines: tuple[WorldLines, ...]
    directions: CrownDirections
    extents: dict[Side, FlatExtent]
    enlargement: float
    cuts: IndexArray

    def view(self, side: Side, scale: float) -> FlatView:
        """Return the view from a side that prints at `scale` to 1 in milled size."""
        pixels_per_mm = scale * self.enlargement * DOTS_PER_INCH / 25.4
        return _seen(self.extents[side], pixels_per_mm)

    def size_on_paper(self, side: Side, scale: float) -> tuple[float, float]:
        """Return width and height in mm of the view from a side at `scale` to 1."""
        view = self.view(side, scale)
        factor = scale * self.enlargement
        return view.width_mm * factor, view.height_mm * factor

    @property
    def milled_size_mm(self) -> tuple[float, float, float]:
        """Milled extent mesial to distal, buccal to lingual, and in height."""
        above, beside = self.extents[Side.OCCLUSAL], self.extents[Side.BUCCAL]
        across = (above.high - above.low) * self.enlargement
        height = (beside.high[1] - beside.low[1]) * self.enlargement
        return float(across[0]), float(across[1]), float(height)


# Laying a page out asks for the sizes of the same views again and again.
@lru_cache(maxsize=64)
def _seen(extent: FlatExtent, pixels_per_mm: float) -> FlatView:
    return extent.view(pixels_per_mm)


def whole_map(
    sheet: SheetData, copy: PaperCopy, shading: ShadingFields, operator: SurfaceOperator
) -> UnitMap:
    """Return the map of everything in the case, on its copy, which shading and operator are of."""
    case = sheet.case
    directions = CrownDirections.of(case.reading, case.units[0].tooth)
    painted = sheet.painted_areas()
    accents = tuple(mask for mask in case.accents if mask.accent in painted)
    fields = area_fields(operator, case.zones, accents, sheet.coats, thinned=copy.thinned)
    mesh = copy.mesh
    return UnitMap(
        mesh=mesh,
        shading=shading,
        fields=fields,
        lines=_lines(mesh, shading, fields, directions) + streak_arrows(case),
        directions=directions,
        extents=_extents(case.surface.mesh.vertices, directions),
        enlargement=sheet.enlargement,
        cuts=np.zeros((0, 3), dtype=np.int32),
    )


def part_map(whole: UnitMap, copy: PaperCopy, case: Case, unit: int) -> UnitMap:
    """Return the map of one unit of a bridge, cut off at its connectors."""
    vertex_unit = copy.reading.unit_index[whole.mesh.faces]
    most = np.median(vertex_unit, axis=1).astype(np.intp)
    own = most == unit
    mesh, vertex = submesh(whole.mesh, own)
    cut = np.zeros(whole.mesh.vertex_count, dtype=np.bool_)
    cut[whole.mesh.faces[~own]] = True
    shading = ShadingFields(
        normals=whole.shading.normals[vertex],
        normals_red=whole.shading.normals_red[vertex],
        normals_green=whole.shading.normals_green[vertex],
        normals_blue=whole.shading.normals_blue[vertex],
        openness=whole.shading.openness[vertex],
    )
    fields = AreaFields(
        zones=whole.fields.zones[vertex],
        accents={number: share[vertex] for number, share in whole.fields.accents.items()},
        coats=None if whole.fields.coats is None else whole.fields.coats[vertex],
    )
    directions = CrownDirections.of(case.reading, case.units[unit].tooth)
    return UnitMap(
        mesh=mesh,
        shading=shading,
        fields=fields,
        lines=_lines(mesh, shading, fields, directions) + streak_arrows(case, unit),
        directions=directions,
        extents=_extents(_unit_places(case, unit), directions),
        enlargement=whole.enlargement,
        cuts=_cut_faces(mesh, cut[vertex]),
    )


def _extents(places: FloatArray, directions: CrownDirections) -> dict[Side, FlatExtent]:
    """Return how far the surface itself reaches: printed sizes do not depend on the copy."""
    return {side: FlatExtent.of(places, directions, side) for side in Side}


def _unit_places(case: Case, unit: int) -> FloatArray:
    """Return (n, 3) the vertices of the faces of one unit."""
    mesh = case.surface.mesh
    own = np.sort(case.reading.unit_index[mesh.faces], axis=1)[:, 1] == unit
    used = np.zeros(mesh.vertex_count, dtype=np.bool_)
    used[mesh.faces[own]] = True
    return mesh.vertices[used]


def _cut_faces(mesh: TriMesh, cut: NDArray[np.bool_]) -> IndexArray:
    """Return fans over the borders that lie wholly on the cut, wound along the border's faces.

    A border that encloses much less than its convex hull stays open: a fan would cover what is
    not cut.
    """
    fans = [np.zeros((0, 3), dtype=np.int32)]
    for loop in boundary_loops(mesh):
        if cut[loop].all() and _is_convex(mesh.vertices[loop]):
            first = np.full(len(loop) - 2, loop[0], dtype=np.int32)
            fans.append(np.stack([first, loop[1:-1], loop[2:]], axis=1))
    return np.concatenate(fans)


def _is_convex(loop: FloatArray) -> bool:
    """Return True if a closed chain of points (k, 3) encloses most of its flat convex hull."""
    arm = loop - loop.mean(axis=0)
    normal = np.cross(arm, np.roll(arm, -1, axis=0)).sum(axis=0)
    enclosed = 0.5 * float(np.linalg.norm(normal))
    _, spread, axes = np.linalg.svd(arm, full_matrices=False)
    if len(loop) < 4 or spread[1] < 1e-6:
        return True
    return enclosed > _LEAST_ENCLOSED * float(ConvexHull(arm @ axes[:2].T).volume)


def _lines(
    mesh: TriMesh, shading: ShadingFields, fields: AreaFields, directions: CrownDirections
) -> tuple[WorldLines, ...]:
    return area_lines(mesh, shading.normals_blue.astype(np.float64), fields, directions)


def draw_view(
    page: Page, unit: UnitMap, side: Side, scale: float, x: float, y: float, caption: str
) -> ZoneDrawing:
    """Draw a unit from a side, its upper left corner at x, y, with a caption below."""
    view = unit.view(side, scale)
    frame = rasterise(
        unit.mesh.vertices,
        np.concatenate([unit.mesh.faces, unit.cuts]),
        view.camera,
        view.width,
        view.height,
        samples=_SAMPLES,
        both_sides=not unit.mesh.is_watertight,
    )
    per_mm = DOTS_PER_INCH / 25.4
    drawing = draw_zones(
        frame,
        unit.shading,
        unit.fields,
        unit.lines,
        paper=True,
        number_px=ZONE_PILL_MM * per_mm,
        shortest_px=_SHORTEST_MM * per_mm,
        every_area=side in (Side.OCCLUSAL, Side.INNER),
    )
    page.picture(Image.fromarray(drawing.picture[:, :, 0]), x, y, view.width / per_mm)
    corner = np.array([x, y])
    for line in drawing.lines:
        draw_mark(page, line.mark, corner + line.points / per_mm)
    for spot in drawing.numbers:
        size = ZONE_PILL_MM if spot.area <= max(Zone) else ACCENT_PILL_MM
        draw_number(page, spot.area, x + spot.x / per_mm, y + spot.y / per_mm, size)
    middle = x + 0.5 * view.width / per_mm
    page.text(middle, y + view.height / per_mm + 4.0, caption, 8.0, face=MEDIUM, align="centre")
    return drawing


def draw_silhouette(page: Page, drawing: ZoneDrawing, scale: float, x: float, y: float) -> None:
    """Draw the outline of a view that was drawn at `scale` to 1 again at 1 to 1, filled.

    Its middle comes to lie at x, y.
    """
    outlines = [line.points for line in drawing.lines if line.mark is Mark.OUTLINE]
    height, width = drawing.picture.shape[:2]
    per_mm = scale * DOTS_PER_INCH / 25.4
    largest = max(outlines, key=lambda points: float(np.prod(np.ptp(points, axis=0))))
    points = (largest - np.array([0.5 * width, 0.5 * height])) / per_mm + np.array([x, y])
    page.path(points, weight=0.0, fill=_SILHOUETTE_GREY)


def draw_mark(page: Page, mark: Mark, points: FloatArray) -> None:
    """Draw a line of a map through points (k, 2) in mm, in the way of its kind."""
    match mark:
        case Mark.HATCH:
            page.path(points, weight=0.3, grey=_HATCH_GREY)
        case Mark.CONTOUR:
            page.path(points, weight=0.5, grey=_CONTOUR_GREY, dash=(0.01, 1.3), round_ends=True)
        case Mark.ACCENT:
            page.path(points, weight=1.7, grey=WHITE)
            page.path(points, weight=0.55, dash=(2.0, 1.4))
        case Mark.BORDER:
            page.path(points, weight=0.8, round_ends=True)
        case Mark.OUTLINE:
            page.path(points, weight=0.6, round_ends=True)
        case Mark.STREAK:
            _draw_arrow(page, points)


def _draw_arrow(page: Page, points: FloatArray) -> None:
    start, end = points[0], points[-1]
    along = end - start
    length = float(np.hypot(*along))
    if length < 1.0:
        return
    along = along / length
    head = [
        end + 1.2 * (np.cos(turn) * along + np.sin(turn) * np.array([-along[1], along[0]]))
        for turn in (2.65, -2.65)
    ]
    for weight, grey in ((2.2, WHITE), (0.9, INK)):
        page.path([start, end], weight=weight, grey=grey, round_ends=True)
        page.path([head[0], end, head[1]], weight=weight, grey=grey, round_ends=True)
