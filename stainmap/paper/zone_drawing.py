"""A zone map of one side: a quiet picture of the form, sharp lines on it, and numbers."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage, sparse

from stainmap.model.zone import Zone
from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper.area_lines import AreaFields, Mark, WorldLines
from stainmap.paper.isolines import grid_contours, simplified_lines, split_lines
from stainmap.paper.raster import FrameBuffer
from stainmap.paper.shading import SURROUND_SRGB, ShadingFields, encoded, form_relief
from stainmap.paper.zone_colours import zone_colour_linear

FloatArray = NDArray[np.float64]
FloatField = NDArray[np.float32]

_NO_ZONE = 0.52
_PAPER = 0.93
_CUT = 0.62

_RELIEF_SCREEN, _RELIEF_PAPER = 0.55, 0.22
_LEAST_ISLAND = 0.0035  # of the picture; what only peeps over a crest gets no colour of its own
_SEEN_MM = 0.05  # a line this far behind the surface still lies on it
_GRAZING = 0.06
_SIMPLIFY_PX = 0.12
_OUTLINE_BLUR_PX = 1.2
# Hatches thin out where planes crowd: every second line needs this much room on the picture.
_HATCH_ROOM_PX = 7.0
# Size of a piece that gets a number, in squares of a number's width: zones, accents, and the
# largest piece of an area that has no such piece on this side.
_ROOM_ZONE, _ROOM_ACCENT, _ROOM_LEAST = 1.0, 0.4, 0.15
# A number that has this many of its own widths around it may move to the middle of its area.
_PLENTY = 0.9
# Numbers on paper are placed to so many pixels.
_NUMBER_STEP = 2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SeenLine:
    """A line as seen: points (k, 2) in pixels from the upper left corner."""

    mark: Mark
    area: int
    points: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberSpot:
    """Where an area's number stands, in pixels; `room` is the free radius around it."""

    area: int
    x: float
    y: float
    room: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ZoneDrawing:
    """A zone map of one side.

    Parameters
    ----------
    picture
        (H, W, 3) uint8 sRGB: the form, flat zone colours or white, without any line.
    lines
        In the order to draw them.
    numbers
        Where the areas' numbers stand; no two closer than asked for.
    """

    picture: NDArray[np.uint8]
    lines: tuple[SeenLine, ...]
    numbers: tuple[NumberSpot, ...]


def draw_zones(
    frame: FrameBuffer,
    shading: ShadingFields,
    fields: AreaFields,
    world: tuple[WorldLines, ...],
    *,
    paper: bool,
    number_px: float,
    shortest_px: float = 0.0,
    every_area: bool = False,
) -> ZoneDrawing:
    """Return the zone map of what a frame shows.

    Parameters
    ----------
    frame, shading, fields, world
        The frame, and the fields and lines of its mesh.
    paper
        White zones on a white ground instead of coloured ones on grey.
    number_px
        Diameter of the pill that a number stands in.
    shortest_px
        Lines shorter than this are left out.
    every_area
        Whether an area too small for a number gets one all the same, on its largest piece.
    """
    relief = form_relief(frame, shading, _RELIEF_PAPER if paper else _RELIEF_SCREEN)
    if paper:
        # All zones are white: only the places of numbers depend on them.
        step = _NUMBER_STEP
        spots = _Grid.of_pixels(frame, step)
        zones = _labels(spots, fields)
        light = _PAPER * relief[:, None]
        ground = 1.0
    else:
        step = 1
        labels = _labels(_Grid.of_samples(frame), fields)
        middle = frame.samples // 2
        zones = labels[middle :: frame.samples, middle :: frame.samples]
        spots = _Grid.of_pixels(frame, step)
        colours = np.full((len(Zone) + 1, 3), _NO_ZONE)
        colours[1:] = [zone_colour_linear(zone) for zone in Zone]
        light = colours[labels.ravel()[frame.hits]] * relief[:, None]
        ground = float(decode_srgb(SURROUND_SRGB))
    light = np.where(frame.front[:, None], light, _CUT).astype(np.float32)
    picture = encoded(frame.average(light, ground))
    # The farthest of the samples around each: a slanted surface must not hide its own lines.
    hidden = ndimage.minimum_filter(frame.nearness, size=3, mode="nearest")
    drawn = [line for line in world if line.mark is not Mark.STREAK]
    lines = _seen(frame, hidden, drawn, shortest_px)
    for line in world:
        if line.mark is Mark.STREAK:
            lines += _arrows(frame, hidden, line)
    lines += [SeenLine(mark=Mark.OUTLINE, area=0, points=points) for points in _outline(frame)]
    return ZoneDrawing(
        picture=np.repeat(picture, 3, axis=2) if paper else picture,
        lines=tuple(lines),
        numbers=_number_spots(spots, zones, fields, number_px, step, every_area=every_area),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Grid:
    """All samples of a frame, or the middle one of every square of a few pixels.

    Parameters
    ----------
    shape
        Rows and columns.
    hits
        (n,) positions in the flattened grid that show a face.
    weights
        (n, V) corners of that face.
    front
        (n,) whether it is seen from its front.
    """

    shape: tuple[int, int]
    hits: NDArray[np.intp]
    weights: sparse.csr_array[np.float32]
    front: NDArray[np.bool_]

    @classmethod
    def of_samples(cls, frame: FrameBuffer) -> _Grid:
        return cls(
            shape=(frame.face.shape[0], frame.face.shape[1]),
            hits=frame.hits,
            weights=frame.weights,
            front=frame.front,
        )

    @classmethod
    def of_pixels(cls, frame: FrameBuffer, step: int) -> _Grid:
        pitch = frame.samples * step
        height, width = frame.height // step, frame.width // step
        row, column = np.divmod(frame.hits, frame.width * frame.samples)
        middle = (row % pitch == pitch // 2) & (column % pitch == pitch // 2)
        chosen = np.flatnonzero(middle & (row < height * pitch) & (column < width * pitch))
        return cls(
            shape=(height, width),
            hits=row[chosen] // pitch * width + column[chosen] // pitch,
            weights=frame.weights[chosen],
            front=frame.front[chosen],
        )

    def take(self, per_vertex: FloatArray) -> FloatField:
        """Return the values of vertices where a face shows."""
        return np.asarray(self.weights @ per_vertex.astype(np.float32))


def _labels(grid: _Grid, fields: AreaFields) -> NDArray[np.int8]:
    """Return the zone at every place of a grid; slivers go to what lies around.

    -1 where nothing is, or where a cut shows the inside of the surface.
    """
    shares = grid.take(fields.zones)
    image: NDArray[np.int8] = np.full(grid.shape, -1, dtype=np.int8)
    image.ravel()[grid.hits] = np.where(grid.front, shares.argmax(axis=1), -1)
    least = _LEAST_ISLAND * max(len(grid.hits), 1)
    small = np.zeros(image.shape, dtype=np.bool_)
    for number in np.flatnonzero(np.bincount(image.ravel() + 1)[1:]):
        pieces, _ = ndimage.label(image == number)
        size = np.bincount(pieces.ravel())
        size[0] = image.size
        small |= size[pieces] < least
    if small.any() and not small[image >= 0].all():
        nearest = ndimage.distance_transform_edt(
            small | (image < 0), return_distances=False, return_indices=True
        )
        image = np.where(small, image[tuple(nearest)], image)
    return image


def _outline(frame: FrameBuffer) -> list[FloatArray]:
    """Return the outlines of what is seen."""
    padded = np.pad(frame.coverage, 1)
    # Wide enough that one sample a pixel gives as smooth a line as several.
    soft = ndimage.gaussian_filter(padded, _OUTLINE_BLUR_PX)
    outlines = [points - 1.0 for points in grid_contours(soft, 0.5) if len(points) > 8]
    return simplified_lines(outlines, _SIMPLIFY_PX)


def _seen(
    frame: FrameBuffer, hidden: FloatField, lines: list[WorldLines], shortest_px: float
) -> list[SeenLine]:
    """Return the parts of lines that are in sight: nearer than `hidden`, at every sample."""
    if not lines:
        return []
    points = np.concatenate([line.points for line in lines])
    normals = np.concatenate([line.normals for line in lines])
    size = [len(line.points) for line in lines]
    kind = np.repeat(np.arange(len(lines)), size)
    at, in_sight = _in_sight(frame, hidden, points, normals)
    room = np.ones(len(points))
    for line, end in zip(lines, np.cumsum(size), strict=True):
        if line.across is not None and line.order is not None:
            spacing = _plane_spacing_px(frame, line.normals, line.across)
            needed = _HATCH_ROOM_PX * _thinning(line.order)
            room[end - len(line.points) : end] = np.clip(spacing - needed, -1.0, 1.0)
    # Lines of different kinds never run on into one another.
    most = max(int(line.line_of_point.max(initial=0)) for line in lines) + 1
    line_of_point = kind * most + np.concatenate([line.line_of_point for line in lines])
    margin = np.where(in_sight, room, -1.0)
    parts = [
        part
        for part in split_lines(np.c_[at[:, :2], kind], line_of_point, margin)
        if float(np.hypot(*np.diff(part[:, :2], axis=0).T).sum()) >= shortest_px
    ]
    shapes = simplified_lines([part[:, :2] for part in parts], _SIMPLIFY_PX)
    whose = [lines[round(float(part[0, 2]))] for part in parts]
    return [
        SeenLine(mark=line.mark, area=line.area, points=shape)
        for line, shape in zip(whose, shapes, strict=True)
    ]


def _arrows(frame: FrameBuffer, hidden: FloatField, line: WorldLines) -> list[SeenLine]:
    """Return an arrow if both its ends are in sight."""
    at, in_sight = _in_sight(frame, hidden, line.points, line.normals)
    if not in_sight.all():
        return []
    return [SeenLine(mark=line.mark, area=line.area, points=at[:, :2])]


def _in_sight(
    frame: FrameBuffer, hidden: FloatField, points: FloatArray, normals: FloatArray
) -> tuple[FloatArray, NDArray[np.bool_]]:
    """Return points as the camera projects them, and whether nothing lies before them."""
    at = frame.camera.project(points, frame.width, frame.height)
    side = frame.samples
    column = np.clip((at[:, 0] * side).astype(np.intp), 0, frame.width * side - 1)
    row = np.clip((at[:, 1] * side).astype(np.intp), 0, frame.height * side - 1)
    facing = normals @ frame.camera.axes[2] > _GRAZING
    return at, facing & (at[:, 2] + _SEEN_MM >= hidden[row, column])


def _plane_spacing_px(frame: FrameBuffer, normals: FloatArray, across: FloatArray) -> FloatArray:
    """Return (N,) how far apart neighbouring planes of a hatch cut the picture, in pixels."""
    right, up, towards = frame.camera.axes
    facing = normals @ towards
    slope = (across @ towards) / np.maximum(facing, _GRAZING)
    change = np.hypot(
        across @ right - slope * (normals @ right), across @ up - slope * (normals @ up)
    )
    return np.asarray(1.0 / np.maximum(change, 1e-9) / frame.pixel_mm)


def _thinning(order: NDArray[np.intp]) -> FloatArray:
    """Return (N,) how much room a plane needs: every second less, every fourth least."""
    return np.where(order % 2 != 0, 1.0, np.where(order % 4 != 0, 0.5, 0.25))


def _number_spots(
    grid: _Grid,
    zones: NDArray[np.int8],
    fields: AreaFields,
    number_px: float,
    step: int,
    *,
    every_area: bool,
) -> tuple[NumberSpot, ...]:
    """Place numbers at the widest visible part of every area, zones first, none on another.

    `step` is how many pixels lie between places of the grid.
    """
    number = number_px / step
    square = number**2
    least = (_ROOM_LEAST if every_area else _ROOM_ZONE) * square
    masks: list[_Piece] = []
    for zone in Zone:
        masks += _pieces(int(zone), zones == int(zone), _ROOM_ZONE * square, least)
    masks.sort(key=lambda piece: -piece.size)
    on_top: list[_Piece] = []
    for accent, share in fields.accents.items():
        image = np.zeros(zones.shape, dtype=np.bool_)
        image.ravel()[grid.hits] = (grid.take(share) > 0.5) & grid.front
        on_top += _pieces(accent, image, _ROOM_ACCENT * square, least)
    on_top.sort(key=lambda piece: -piece.size)
    spots: list[NumberSpot] = []
    for piece in masks + on_top:
        spot = _widest(piece, zones.shape, spots, number)
        if spot is not None:
            spots.append(spot)
    return tuple(
        NumberSpot(area=spot.area, x=spot.x * step, y=spot.y * step, room=spot.room * step)
        for spot in spots
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Piece:
    """A connected part of an area in a picture: its mask, cut out at (row, column)."""

    area: int
    mask: NDArray[np.bool_]
    row: int
    column: int
    size: int


def _pieces(area: int, mask: NDArray[np.bool_], room_px: float, least_px: float) -> list[_Piece]:
    """Return the pieces of an area of at least `room_px`, or its largest one from `least_px`."""
    pieces, _ = ndimage.label(mask)
    boxes = ndimage.find_objects(pieces)
    found = [
        _Piece(
            area=area,
            mask=pieces[box] == number,
            row=box[0].start,
            column=box[1].start,
            size=int((pieces[box] == number).sum()),
        )
        for number, box in enumerate(boxes, start=1)
    ]
    large = [piece for piece in found if piece.size >= room_px]
    if large or not found:
        return large
    largest = max(found, key=lambda piece: piece.size)
    return [largest] if largest.size >= least_px else []


def _widest(
    piece: _Piece, shape: tuple[int, ...], taken: list[NumberSpot], number_px: float
) -> NumberSpot | None:
    """Return the middle of the widest part of a piece that no other number covers.

    Where there is plenty of room, the place nearest the middle of the piece is taken.
    """
    y, x = np.ogrid[: piece.mask.shape[0], : piece.mask.shape[1]]
    y, x = y + piece.row + 0.5, x + piece.column + 0.5
    half = 0.5 * number_px
    free = piece.mask & (x >= half) & (x <= shape[1] - half)
    free &= (y >= half) & (y <= shape[0] - half)
    for spot in taken:
        reach = number_px * (1.35 if max(piece.area, spot.area) > 9 else 1.15)
        free &= (x - spot.x) ** 2 + (y - spot.y) ** 2 > reach**2
    if not free.any():
        return None
    room = ndimage.distance_transform_edt(np.pad(piece.mask, 1))[1:-1, 1:-1]
    rows, columns = np.nonzero(piece.mask)
    middle = (columns.mean() + piece.column + 0.5, rows.mean() + piece.row + 0.5)
    away = np.hypot(x - middle[0], y - middle[1])
    score = np.where(free, np.minimum(room, _PLENTY * number_px) - 0.05 * away, -np.inf)
    row, column = np.unravel_index(int(score.argmax()), score.shape)
    return NumberSpot(
        area=piece.area,
        x=float(x[0, column]),
        y=float(y[row, 0]),
        room=float(room[row, column]),
    )
