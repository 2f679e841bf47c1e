"""The course of a bridge: slices along its span, straight or bent with the dental arch."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stainmap.errors import ReadingError
from stainmap.planning.progress import Steps
from stainmap.surface.frame import PrincipalFrame
from stainmap.surface.mesh import FloatArray, TriMesh, unit_rows
from stainmap.surface.neck import SLICE_MM, Neck, narrow_slices, smallest_section
from stainmap.surface.section import Outline, hull_area, plane_section
from stainmap.words import translate

# Bodies shorter than this are not taken for a span that follows the arch, and one that leaves a
# straight line by less is as good as straight. Slices across a bent one take what is within reach.
_LONG_MM = 20.0
_BENT_MM = 1.5
_REACH_MM = 9.0
# A parabola is looked at this far beyond the ends, as a share of the length.
_BEYOND = 0.15


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Course:
    """Slices along a span: places (S, 3) in its middle, mm, and unit normals (S, 3) along it."""

    places: FloatArray
    normals: FloatArray


def straight_course(mesh: TriMesh, frame: PrincipalFrame) -> Course:
    """Return slices across the longest direction of a body."""
    axis = frame.axes[:, 0]
    along = mesh.vertices @ axis
    offsets = np.arange(along.min(), along.max(), SLICE_MM)
    places = frame.centre + (offsets - frame.centre @ axis)[:, None] * axis
    return Course(places=places, normals=np.tile(axis, (len(offsets), 1)))


def bent_course(mesh: TriMesh, frame: PrincipalFrame) -> Course | None:
    """Return slices across a parabola laid through a long bent body, or None where it is straight.

    A parabola is the plainest form of a dental arch.
    """
    arm = (mesh.vertices - frame.centre) @ frame.axes
    u = arm[:, 0]
    length = float(np.ptp(u))
    if length < _LONG_MM:
        return None
    weight = np.sqrt(mesh.vertex_areas)
    fits = [np.polyfit(u, arm[:, column], 2, w=weight) for column in (1, 2)]
    column = 2 if abs(fits[1][0]) > abs(fits[0][0]) else 1
    fit = fits[column - 1]
    if abs(float(fit[0])) * (0.5 * length) ** 2 < _BENT_MM:
        return None
    fine = np.linspace(u.min() - _BEYOND * length, u.max() + _BEYOND * length, 2000)
    way = np.hypot(np.diff(fine), np.diff(np.polyval(fit, fine)))
    way = np.concatenate([[0.0], np.cumsum(way)])
    at = np.interp(np.arange(SLICE_MM, way[-1], SLICE_MM), way, fine)
    along, across = frame.axes[:, 0], frame.axes[:, column]
    places = frame.centre + np.outer(at, along) + np.outer(np.polyval(fit, at), across)
    slope = np.polyval(np.polyder(fit), at)
    return Course(places=places, normals=unit_rows(along + np.outer(slope, across)))


def necks_along(
    mesh: TriMesh, course: Course, steps: Steps, *, most_share: float, measured_on: TriMesh
) -> tuple[Neck, ...]:
    """Return the necks of a body whose span takes this course, in order.

    Parameters
    ----------
    mesh
        The body.
    course
        Slices across its span; only what lies near their places counts.
    steps
        Hears of the progress.
    most_share
        Share of the largest section on either side below which a minimum is a neck.
    measured_on
        The surface on which the sections are measured in the end.
    """
    areas = _convex_areas_mm2(mesh, course, steps.part(0.0, 0.6))
    necks = []
    for place, share in narrow_slices(areas, most_share):
        steps.say(0.7, translate("span", "measuring connectors"))
        start, normal = course.places[place], course.normals[place]
        necks.append(
            smallest_section(
                mesh,
                _across(normal),
                float(start @ normal),
                near=start,
                measured_on=measured_on,
                share=share,
            )
        )
    return tuple(necks)


def necks_at(
    mesh: TriMesh,
    frame: PrincipalFrame,
    places: Sequence[FloatArray],
    *,
    measured_on: TriMesh,
) -> tuple[Neck, ...]:
    """Return the necks at places that a person has pointed at, in order along the span.

    Parameters
    ----------
    mesh, frame
        The body, and its frame.
    places
        (3,) each, on the surface where two units part, mm.
    measured_on
        The surface on which the sections are measured in the end.

    Raises
    ------
    ReadingError
        If nothing can be cut there.
    """
    course = bent_course(mesh, frame) or straight_course(mesh, frame)
    every = slice(None, None, max(1, len(course.places) // 24))
    few = Course(places=course.places[every], normals=course.normals[every])
    largest = max(float(_convex_areas_mm2(mesh, few, Steps(None)).max()), 1e-9)
    found = []
    for said in places:
        place = np.asarray(said, dtype=np.float64)
        at = int(np.linalg.norm(course.places - place, axis=1).argmin())
        normal = course.normals[at]
        beyond = float((place - course.places[at]) @ normal) / SLICE_MM
        outlines = _near(plane_section(mesh, normal, float(place @ normal)), place)
        if not outlines:
            raise ReadingError(
                translate("span", "Nothing can be cut where the units were said to part."),
                where="units",
                advice=translate("span", "Click on the connector itself."),
            )
        share = min(1.0, hull_area(outlines[0].points, normal) / largest)
        neck = smallest_section(
            mesh,
            _across(normal),
            float(place @ normal),
            near=outlines[0].centre,
            measured_on=measured_on,
            share=share,
        )
        found.append((at + beyond, neck))
    return tuple(neck for _, neck in sorted(found, key=lambda one: one[0]))


def _across(normal: FloatArray) -> FloatArray:
    """Return orthonormal columns (3, 3) of which the first is a unit normal."""
    helper = np.eye(3)[int(np.argmin(np.abs(normal)))]
    side = np.cross(normal, helper)
    side /= np.linalg.norm(side)
    return np.stack([normal, side, np.cross(normal, side)], axis=1)


def _near(outlines: Sequence[Outline], place: FloatArray) -> list[Outline]:
    return [o for o in outlines if float(np.linalg.norm(o.centre - place)) < _REACH_MM]


def _convex_areas_mm2(mesh: TriMesh, course: Course, steps: Steps) -> FloatArray:
    """Return the convex area of each slice, without what is far from its place."""
    areas = np.zeros(len(course.places))
    for number, (place, normal) in enumerate(zip(course.places, course.normals, strict=True)):
        if number % 10 == 0:
            steps.say(number / len(areas), translate("span", "looking for connectors"))
        outlines = _near(plane_section(mesh, normal, float(place @ normal)), place)
        if outlines:
            areas[number] = hull_area(np.concatenate([o.points for o in outlines]), normal)
    return areas
