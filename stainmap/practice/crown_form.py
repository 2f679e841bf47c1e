"""What describes the form of a tooth that can be made: ridges, outlines and walls, mm.

One frame for all: +x mesial, +y buccal, +z occlusal, as on a tooth of quadrant 1 or 3; sintered
size. The numbers themselves are in `crown_data`.
"""

from __future__ import annotations

from dataclasses import dataclass

Point = tuple[float, float, float]
PlanPoint = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class AroundTooth:
    """One number for each side of the tooth, blended by direction in between."""

    mesial: float
    buccal: float
    distal: float
    lingual: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Ridge:
    """A crest from its first to its last point, bent towards the middle one.

    `slope` is the fall of the flanks (mm per mm), `rounding` the radius of the crest.
    """

    points: tuple[Point, Point, Point]
    slope: float
    rounding: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Cusp:
    """A tip and the ridges that run down from it.

    `triangular` holds the middle and the end of the triangular ridge; `mesial` and `distal` are
    the ends of the cusp ridges, `outer` that of the swelling on the wall. `further` are ridges of
    this cusp alone, such as the oblique ridge of an upper molar; they too start at the tip.
    """

    name: str
    tip: Point
    triangular: tuple[Point, Point]
    mesial: Point | None
    distal: Point | None
    outer: Point
    slope: float = 0.8
    rounding: float = 0.42
    further: tuple[Ridge, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WallGroove:
    """A groove (negative depth: a swelling) down the wall at one direction from mesial.

    It lies between two shares of the wall's height, 0 at the margin and 1 at the top.
    """

    direction_deg: float
    depth: float
    half_width: float
    share_from: float
    share_to: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Pit:
    """A pit near a place; it settles on the nearest meeting of three cusps."""

    place: PlanPoint
    depth: float
    half_width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Carving:
    """How deep the relief of the biting surface is cut.

    `fissure_depth` and `fissure_width` are those of the main grooves; `at_marginal_ridges` and
    `between` scale them where a marginal ridge, or a named pair of cusps, meets. Grooves fade out
    between two shares of the outline. `ridge_height` raises the triangular ridges;
    `secondary_depth` and `secondary_width` are those of the grooves beside them. `crossing` are
    grooves along a curve of three points, cut whatever lies there.
    """

    fissure_depth: float
    fissure_width: float
    at_marginal_ridges: float
    fade: tuple[float, float]
    ridge_height: float
    secondary_depth: float = 0.17
    secondary_width: float = 0.2
    between: tuple[tuple[str, str, float], ...] = ()
    crossing: tuple[tuple[tuple[PlanPoint, PlanPoint, PlanPoint], float, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Preparation:
    """The cavity: walls to keep, rim and rounded chamfer at the margin, taper of its wall."""

    occlusal_wall: float
    axial_wall: float
    rim: float
    chamfer: float
    taper_deg: float = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class BackTooth:
    """A premolar or molar.

    `outline` is the widest contour seen from above. Per side of the tooth: `contour_share`, the
    share of the height at which the wall is widest; `cervical_draw` and `occlusal_draw`, how far
    the wall draws in below and above it; `margin_height`. `axis_lean` is how far the wall's
    middle has moved buccally at `top`, the height that counts as the wall's full one. `shoulder`
    rounds the wall into the table, `stump_top` caps the cavity, `tip_scatter` is the standard
    deviation of every individual's cusp tips. `turn_height` and `core_radius` place the rays that
    make the mesh.
    """

    position: int
    is_upper: bool
    cusps: tuple[Cusp, ...]
    marginal_ridges: tuple[Ridge, Ridge]
    outline: tuple[PlanPoint, ...]
    contour_share: AroundTooth
    cervical_draw: AroundTooth
    occlusal_draw: AroundTooth
    margin_height: AroundTooth
    top: float
    axis_lean: float
    wall_grooves: tuple[WallGroove, ...]
    pits: tuple[Pit, ...]
    carving: Carving
    preparation: Preparation
    stump_top: float
    turn_height: float
    core_radius: float
    shoulder: float
    tip_scatter: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CanineCusp:
    """What a canine has and an incisor has not.

    The edge falls from a tip at `x` with two slopes (mm per mm), rounded by `rounding`; a ridge
    runs down from it on either face.
    """

    x: float
    mesial_slope: float
    distal_slope: float
    rounding: float
    labial_ridge: float
    palatal_ridge: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontTooth:
    """An upper incisor or canine: profiles of its four sides as (height, distance) points.

    `labial` and `palatal` are y, `mesial` and `distal` x. `edge` is the height of the incisal
    edge and `mamelon_height` that of its three lobes, `lobe_depth` the depth of the labial
    valleys, `ridge_height` the height of the palatal marginal ridges. `labial_bend` is how much
    the labial face curves from side to side, near the neck and near the edge (y falls by this
    times x squared). `turn_height` and the half axes `core` place the rays that make the mesh.
    A canine has a `cusp` besides.
    """

    position: int
    is_upper: bool
    labial: tuple[PlanPoint, ...]
    palatal: tuple[PlanPoint, ...]
    mesial: tuple[PlanPoint, ...]
    distal: tuple[PlanPoint, ...]
    edge: float
    margin_height: AroundTooth
    lobe_depth: float
    ridge_height: float
    mamelon_height: float
    preparation: Preparation
    turn_height: float
    core: tuple[float, float]
    labial_bend: tuple[float, float] = (0.105, 0.043)
    cusp: CanineCusp | None = None


ToothForm = BackTooth | FrontTooth
