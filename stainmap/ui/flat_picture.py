"""One flat view as pixels that know their place on the crown: coloured anew within a frame."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.paper.raster import Camera, FrameBuffer, rasterise
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh
from stainmap.surface.picking import Hit

if TYPE_CHECKING:
    from stainmap.paper.shading import ShadingFields
    from stainmap.planning.flat_views import FlatPart

Margins = tuple[int, int, int]

_SAMPLES = 2
_BORDER_MM = 0.2
_RELIEF = 0.55


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatSheet:
    """What a flat view shows, before it has a size.

    Parameters
    ----------
    vertices
        (n,) int32 vertices of the crown; one may occur twice, on two halves.
    faces
        (m, 3) int32 places in `vertices`.
    places
        (n, 3) mm: right, up, towards the viewer.
    low, high
        (2,) mm. What has to be seen.
    axes
        (3, 3) rows right, up, towards the viewer of a view from a side; None where the surface
        is laid flat, and light has no direction.
    notable
        (n,) places drawn at more than twice or less than half their size.
    discs
        Middle and radius, mm, of every disc.
    """

    vertices: IndexArray
    faces: IndexArray
    places: FloatArray
    low: FloatArray
    high: FloatArray
    axes: FloatArray | None
    notable: BoolArray
    discs: tuple[tuple[float, float, float], ...] = ()


def side_sheet(mesh: TriMesh, faces: BoolArray, axes: FloatArray) -> FlatSheet:
    """Return the view of some faces (F,) along the last of three axes (rows)."""
    chosen = mesh.faces[faces]
    used = np.zeros(mesh.vertex_count, dtype=np.bool_)
    used[chosen] = True
    vertices = np.flatnonzero(used)
    local = (np.cumsum(used, dtype=np.int32) - 1)[chosen]
    places = mesh.vertices[vertices] @ axes.T
    return FlatSheet(
        vertices=vertices.astype(np.int32),
        faces=local,
        places=places,
        low=places[:, :2].min(axis=0),
        high=places[:, :2].max(axis=0),
        axes=axes,
        notable=np.zeros(len(vertices), dtype=np.bool_),
    )


def flat_sheet(parts: tuple[FlatPart, ...]) -> FlatSheet:
    """Return a rosette, or the halves of a front tooth: the lingual one above the facial one."""
    from stainmap.planning.flat_views import facing_places  # noqa: PLC0415

    flat, discs = facing_places(parts)
    first = np.cumsum([0, *(len(part.vertices) for part in parts)])
    faces = [part.faces + start for part, start in zip(parts, first, strict=False)]
    middle = np.array([[x, y] for x, y, _ in discs])
    reach = np.array([[radius] for _, _, radius in discs])
    return FlatSheet(
        vertices=np.concatenate([part.vertices for part in parts]),
        faces=np.concatenate(faces).astype(np.int32),
        places=np.c_[flat, np.zeros(len(flat))],
        low=(middle - reach).min(axis=0),
        high=(middle + reach).max(axis=0),
        axes=None,
        notable=np.concatenate([part.notable for part in parts]),
        discs=discs,
    )


def fitted_scale(sheet: FlatSheet, width: int, height: int, margins: Margins) -> float:
    """Return the pixels per mm at which a sheet fills a picture beside its margins."""
    beside, above, below = margins
    room = np.array([max(width - 2 * beside, 8), max(height - above - below, 8)])
    return float((room / (sheet.high - sheet.low + 2.0 * _BORDER_MM)).min())


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatLight:
    """Light on every pixel of a flat view, before any colour.

    `diffuse` (n, 3), `gloss` and `openness` (n, 1) light a colour; `relief` (n,) darkens the
    patches of areas and coats.
    """

    diffuse: NDArray[np.float32]
    gloss: NDArray[np.float32]
    openness: NDArray[np.float32]
    relief: NDArray[np.float32]


class FlatPicture:
    """The pixels of one flat view: which face each shows, and where on it.

    Takes a tenth of a second at 100,000 faces; made in the background.

    Parameters
    ----------
    mesh
        The crown.
    sheet
        What is shown.
    width, height
        In device pixels.
    margins
        Pixels kept free left and right, above, and below.
    most_pixels_per_mm
        Limit of the scale, where several views are to have the same.
    """

    def __init__(
        self,
        mesh: TriMesh,
        sheet: FlatSheet,
        width: int,
        height: int,
        margins: Margins = (0, 0, 0),
        most_pixels_per_mm: float = np.inf,
    ) -> None:
        self.mesh, self.sheet, self.width, self.height = mesh, sheet, width, height
        _, above, below = margins
        fitted = fitted_scale(sheet, width, height, margins)
        self.pixels_per_mm = min(fitted, most_pixels_per_mm)
        middle = 0.5 * (sheet.low + sheet.high)
        # Keep the middle of what is seen in the middle of the room.
        shift = 0.5 * (above - below) / self.pixels_per_mm
        self.centre = (float(middle[0]), float(middle[1] + shift))
        camera = Camera(
            eye=(0.0, 0.0, 1.0),
            up=(0.0, 1.0, 0.0),
            centre=(*self.centre, 0.0),
            height_mm=height / self.pixels_per_mm,
        )
        frame = rasterise(sheet.places, sheet.faces, camera, width, height, samples=_SAMPLES)
        self.places: FloatArray = camera.project(sheet.places, width, height)[:, :2]
        self.coverage = frame.coverage
        pixel, chosen = _one_sample_a_pixel(frame)
        self.rows = np.full((height, width), -1, dtype=np.int32)
        self.rows.ravel()[pixel] = np.arange(len(pixel), dtype=np.int32)
        self.corners = frame.corners[chosen]
        self.vertices = sheet.vertices[self.corners]
        self.weights = frame.barycentric[chosen]
        ends = self.places[sheet.faces]
        sides = np.linalg.norm(ends - np.roll(ends, 1, axis=1), axis=2)
        self._edge_px = float(np.percentile(sides, 99)) if len(sides) else 0.0
        self.seen_faces = np.unique(frame.face[frame.face >= 0])
        self._seen: BoolArray = np.zeros(mesh.vertex_count, dtype=np.bool_)
        self._seen[sheet.vertices[sheet.faces[self.seen_faces]]] = True
        # Where each vertex of the crown is drawn; a vertex on both halves is drawn twice.
        order = np.argsort(sheet.vertices, kind="stable")
        self._drawn, self._drawn_order = sheet.vertices[order], order

    # --- colours -------------------------------------------------------------------------

    def take(self, per_vertex: NDArray[np.generic], rows: IndexArray) -> NDArray[np.float32]:
        """Return values of the crown's vertices, (V,) or (V, k), at some of the pixels' rows."""
        at = per_vertex[self.vertices[rows]].astype(np.float32, copy=False)
        weights = self.weights[rows]
        if at.ndim == 2:
            return np.asarray((at * weights).sum(axis=1))
        return np.asarray(np.einsum("nij,ni->nj", at, weights))

    def light(self, fields: ShadingFields, occlusal: FloatArray, *, chalk: bool) -> FlatLight:
        """Return the light on all pixels; without direction where the surface is laid flat."""
        from stainmap.paper.shading import form_relief, light_frame  # noqa: PLC0415

        rows = np.arange(len(self.corners), dtype=np.int32)
        openness = np.clip(self.take(fields.openness, rows), 0.02, 1.0)
        if self.sheet.axes is None:
            hollow = np.clip(openness, 0.1, 1.0) ** np.float32(0.8)
            ones = np.ones((len(rows), 3), dtype=np.float32)
            return FlatLight(
                diffuse=ones,
                gloss=np.zeros((len(rows), 1), dtype=np.float32),
                openness=openness[:, None],
                relief=1.0 + (hollow - 1.0) * np.float32(_RELIEF),
            )
        frame = self._frame(self.sheet.axes)
        lighting = light_frame(frame, fields, occlusal=occlusal, chalk=chalk)
        return FlatLight(
            diffuse=np.broadcast_to(lighting.diffuse, (len(rows), 3)),
            gloss=lighting.gloss,
            openness=lighting.openness,
            relief=form_relief(frame, fields, _RELIEF),
        )

    def _frame(self, axes: FloatArray) -> FrameBuffer:
        """Return the pixels as a frame of the crown's own vertices, seen along its axes."""
        from scipy import sparse  # noqa: PLC0415

        rows = len(self.corners)
        starts = np.arange(0, 3 * rows + 1, 3, dtype=np.int32)
        _, up, towards = axes
        return FrameBuffer(
            camera=Camera(
                eye=(float(towards[0]), float(towards[1]), float(towards[2])),
                up=(float(up[0]), float(up[1]), float(up[2])),
                centre=(0.0, 0.0, 0.0),
                height_mm=self.height / self.pixels_per_mm,
            ),
            width=self.width,
            height=self.height,
            samples=1,
            face=self.rows,
            hits=np.flatnonzero(self.rows.ravel() >= 0),
            corners=self.vertices,
            barycentric=self.weights,
            front=np.ones(rows, dtype=np.bool_),
            nearness=np.zeros(self.rows.shape, dtype=np.float32),
            weights=sparse.csr_array(
                (self.weights.ravel(), self.vertices.ravel(), starts),
                shape=(rows, self.mesh.vertex_count),
            ),
        )

    def box_of(self, vertices: IndexArray, border: int = 3) -> tuple[int, int, int, int] | None:
        """Return left, top, right, bottom around some vertices of the crown, if they are seen."""
        vertices = vertices[self._seen[vertices]]
        if not len(vertices):
            return None
        at = self.places[self._local(vertices)]
        # A triangle reaches as far as its other corners.
        reach = border + int(np.ceil(self._edge_px))
        left, top = (int(v) - reach for v in np.floor(at.min(axis=0)))
        right, bottom = (int(v) + reach for v in np.ceil(at.max(axis=0)))
        box = max(left, 0), max(top, 0), min(right, self.width), min(bottom, self.height)
        return box if box[0] < box[2] and box[1] < box[3] else None

    def _local(self, vertices: IndexArray) -> NDArray[np.intp]:
        """Return all places in the sheet at which vertices of the crown stand."""
        first = np.searchsorted(self._drawn, vertices, side="left")
        last = np.searchsorted(self._drawn, vertices, side="right")
        once = first[last > first]
        twice = first[last > first + 1] + 1
        return np.asarray(self._drawn_order[np.concatenate([once, twice])])

    # --- pointing ------------------------------------------------------------------------

    def pick(self, x: float, y: float) -> Hit | None:
        """Return the place of the crown that is drawn at a place of the picture, in pixels."""
        column, row = int(np.floor(x)), int(np.floor(y))
        if not (0 <= column < self.width and 0 <= row < self.height):
            return None
        at = int(self.rows[row, column])
        if at < 0:
            return None
        weights = self._weights_at(self.corners[at], x, y)
        vertices = self.vertices[at]
        weights = self.weights[at].astype(np.float64) if weights is None else weights
        return Hit(
            face=self._face_of(vertices),
            vertex=int(vertices[int(weights.argmax())]),
            position=weights @ self.mesh.vertices[vertices],
            barycentric=weights,
            distance_mm=0.0,
        )

    def _weights_at(self, corners: IndexArray, x: float, y: float) -> FloatArray | None:
        """Return the weights of three corners at a place in or beside their triangle."""
        a, b, c = self.places[corners]
        matrix = np.stack([b - a, c - a], axis=1)
        if abs(np.linalg.det(matrix)) < 1e-9:
            return None
        second, third = np.linalg.solve(matrix, np.array([x, y]) - a)
        weights = np.clip([1.0 - second - third, second, third], 0.0, None)
        return np.asarray(weights / weights.sum())

    def _face_of(self, vertices: IndexArray) -> int:
        around = [self.mesh.vertex_faces[[int(vertex)]].indices for vertex in vertices]
        return int(np.intersect1d(np.intersect1d(around[0], around[1]), around[2])[0])

    def place_of(self, hit: Hit) -> FloatArray | None:
        """Return where a place of the crown is drawn, (2,) pixels; None if it is not to be seen."""
        corners = self.mesh.faces[hit.face]
        if not self._seen[corners].all():
            return None
        local = [self._local(np.array([corner], dtype=np.int32)) for corner in corners]
        if not all(len(place) for place in local):
            return None
        corner_places = np.stack([self.places[one[0]] for one in local])
        place: FloatArray = np.asarray(hit.barycentric @ corner_places)
        column, row = (int(v) for v in np.floor(place))
        if not (0 <= column < self.width and 0 <= row < self.height):
            return None
        window = self.rows[max(row - 1, 0) : row + 2, max(column - 1, 0) : column + 2]
        rows = window[window >= 0]
        if not len(rows):
            return None
        # What is drawn there must be the place itself, and not something before it.
        drawn = np.einsum("ni,nij->nj", self.weights[rows], self.mesh.vertices[self.vertices[rows]])
        off = np.linalg.norm(drawn - hit.position, axis=1).min()
        return place if off < 4.0 / self.pixels_per_mm + 0.2 else None

    def ring(self, position: FloatArray, radius_mm: float) -> FloatArray:
        """Return line pieces (n, 2, 2) in pixels where a ball around a place cuts what is seen."""
        away = self.mesh.vertices[self.sheet.vertices] - position
        return self._border(np.sqrt(np.einsum("ij,ij->i", away, away)) - radius_mm)

    def outline(self, inside: BoolArray) -> FloatArray:
        """Return line pieces (n, 2, 2) in pixels around what is seen of a region (V,)."""
        return self._border(0.5 - inside[self.sheet.vertices].astype(np.float64))

    def place_of_vertex(self, vertex: int) -> FloatArray | None:
        """Return where a vertex of the crown is drawn, (2,) pixels; None if it is not seen."""
        if not self._seen[vertex]:
            return None
        return np.asarray(self.places[self._local(np.array([vertex], dtype=np.int32))[0]])

    def _border(self, out: FloatArray) -> FloatArray:
        """Return where values change sign on what is seen, line pieces (n, 2, 2) in pixels."""
        faces = self.sheet.faces[self.seen_faces]
        inside = out[faces] < 0.0
        count = inside.sum(axis=1)
        cut = (count == 1) | (count == 2)
        faces, inside = faces[cut], inside[cut]
        alone = np.where(inside.sum(axis=1) == 1, inside.argmax(axis=1), (~inside).argmax(axis=1))
        row = np.arange(len(faces))
        start = faces[row, alone]
        ends = []
        for turn in (1, 2):
            other = faces[row, (alone + turn) % 3]
            share = out[start] / (out[start] - out[other])
            ends.append(
                self.places[start] + share[:, None] * (self.places[other] - self.places[start])
            )
        return np.stack(ends, axis=1)

    def pixels_of(self, points_mm: FloatArray) -> FloatArray:
        """Return pixels (n, 2) of places (n, 2) on the sheet, mm."""
        away = (points_mm - np.array(self.centre)) * self.pixels_per_mm
        place = np.stack([0.5 * self.width + away[:, 0], 0.5 * self.height - away[:, 1]], axis=1)
        return np.asarray(place)


def _one_sample_a_pixel(frame: FrameBuffer) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return the pixels that show a face, and of each the first of its samples that does."""
    row, column = np.divmod(frame.hits, frame.width * frame.samples)
    pixel = row // frame.samples * frame.width + column // frame.samples
    pixel, first = np.unique(pixel, return_index=True)
    return pixel, first
