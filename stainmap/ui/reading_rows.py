"""What was read from the crown's shape, in words, and how sure it is. No widgets in here."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

import numpy as np

from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.planning.directions import buccal_from_mesial
from stainmap.planning.row import row_order
from stainmap.surface.mesh import FloatArray
from stainmap.words import marked, sentence_case, translate, value_word

_SURE, _LIKELY = 0.8, 0.5
# Nearer to an axis of the file than this, degrees, a direction is said to lie along it.
_ALONG_DEG = 1.0


class Correction(StrEnum):
    """What can be done about a reading."""

    BITE = marked("reading rows", "show the biting side")
    MARGIN = marked("reading rows", "move it with the brush")
    WALL = marked("reading rows", "set the wall")
    PARTS = marked("reading rows", "show where they part")
    TEETH = marked("reading rows", "name the teeth")
    ROLES = marked("reading rows", "say the roles")
    SECTIONS = marked("reading rows", "set the sections")
    MESIAL = marked("reading rows", "show mesial")
    BUCCAL = marked("reading rows", "show the outer side")


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingRow:
    """One reading.

    Parameters
    ----------
    key
        One of `stainmap.model.crown.READINGS`.
    name, found
        What it is called, and what was found.
    sure
        0 to 1.
    said
        Whether a person has set it.
    correction
        How it is set.
    """

    key: str
    name: str
    found: str
    sure: float
    said: bool
    correction: Correction

    @property
    def words(self) -> str:
        """How sure it is, in words."""
        if self.said:
            return translate("reading rows", "set by you")
        if self.sure <= 0.0:
            return translate("reading rows", "not read")
        if self.sure < _LIKELY:
            how = translate("reading rows", "a guess, please check")
        else:
            how = (
                translate("reading rows", "likely")
                if self.sure < _SURE
                else translate("reading rows", "sure")
            )
        return f"{how}, {100 * self.sure:.0f} %"

    @property
    def can_be_confirmed(self) -> bool:
        """Whether it makes sense to say that it is right as it is."""
        return not self.said and 0.0 < self.sure < _SURE


def body_in_words(case: Case) -> str:
    """Return what the body is."""
    kind = case.reading.kind
    bodies = {
        BodyKind.CROWN: translate("reading rows", "A crown with its inner surface."),
        BodyKind.BRIDGE: translate("reading rows", "A bridge of {count} units.").format(
            count=len(case.units)
        ),
        BodyKind.SOLID_CROWN: translate(
            "reading rows", "A solid crown: it has no inner surface, so a wall is assumed."
        ),
        BodyKind.OPEN_SHEET: translate(
            "reading rows", "A single sheet: it has no inner surface, so a wall is assumed."
        ),
        BodyKind.ROOTED_TOOTH: translate(
            "reading rows", "A tooth with its roots. The crown can be cut off."
        ),
        BodyKind.JAW: translate(
            "reading rows", "A jaw, or a piece of one. The crown that is meant can be cut off."
        ),
        BodyKind.SEVERAL_BODIES: translate(
            "reading rows", "Several bodies, of which the largest was read."
        ),
        BodyKind.NOT_A_CROWN: translate("reading rows", "Nothing that could be read as a crown."),
    }
    if "cut" in case.reading.set_by_user:
        cut = translate("reading rows", "Part of the file was cut away.")
        return f"{bodies[kind]} {cut}"
    return bodies[kind]


def reading_rows(case: Case) -> tuple[ReadingRow, ...]:
    """Return the readings of a case, in the order in which they rest on each other."""
    front = case.units[0].tooth
    found = {
        "occlusal_axis": (
            translate("reading rows", "{occlusal} side").format(
                occlusal=sentence_case(value_word(front.occlusal_word))
            ),
            _direction(case.reading.occlusal_axis),
            Correction.BITE,
        ),
        "margin": (translate("reading rows", "Margin"), _margin(case), Correction.MARGIN),
        "inner_surface": (translate("reading rows", "Inner surface"), *_inner(case)),
        "units": (translate("reading rows", "Units"), _units(case), _of_units(case)),
        "roles": (translate("reading rows", "Roles"), _roles(case), Correction.ROLES),
        "connectors": (
            translate("reading rows", "Connectors"),
            _connectors(case),
            Correction.SECTIONS,
        ),
        "mesial": (
            translate("reading rows", "Mesial"),
            _direction(case.reading.mesial),
            Correction.MESIAL,
        ),
        "buccal": (sentence_case(value_word(front.buccal_word)), _buccal(case), Correction.BUCCAL),
    }
    if len(case.units) < 2:
        del found["roles"], found["connectors"]
    reading = case.reading
    return tuple(
        ReadingRow(
            key=key,
            name=name,
            found=text,
            sure=reading.sure(key),
            said=key in reading.set_by_user
            or (key == "buccal" and "mesial" in reading.set_by_user)
            or (key == "margin" and "inner_surface" in reading.set_by_user),
            correction=correction,
        )
        for key, (name, text, correction) in found.items()
    )


def _of_units(case: Case) -> Correction:
    return Correction.PARTS if len(case.units) > 1 else Correction.TEETH


def _direction(vector: tuple[float, float, float] | None) -> str:
    """Say a direction by the file's nearest axis."""
    if vector is None:
        return translate("reading rows", "The shape does not tell.")
    values = np.asarray(vector)
    nearest = int(np.abs(values).argmax())
    sign = "+" if values[nearest] > 0 else "\N{MINUS SIGN}"
    off = float(np.degrees(np.arccos(np.clip(abs(values[nearest]), 0.0, 1.0))))
    name = translate("reading rows", "{axis} of the file").format(axis=f"{sign}{'XYZ'[nearest]}")
    return (
        translate("reading rows", "Along {name}.").format(name=name)
        if off < _ALONG_DEG
        else translate("reading rows", "{off:.0f}° from {name}.").format(off=off, name=name)
    )


def _buccal(case: Case) -> str:
    reading = case.reading
    if reading.mesial is None:
        return translate("reading rows", "Follows from mesial and the tooth number.")
    axis, mesial = np.asarray(reading.occlusal_axis), np.asarray(reading.mesial)
    flat = mesial - (mesial @ axis) * axis
    flat = flat / max(float(np.linalg.norm(flat)), 1e-12)
    x, y, z = (float(v) for v in buccal_from_mesial(flat, axis, case.units[0].tooth))
    return _direction((x, y, z))


def _margin(case: Case) -> str:
    mesh, outer = case.surface.mesh, case.reading.outer
    kind = case.reading.kind
    if kind is BodyKind.OPEN_SHEET:
        ends = mesh.vertices[mesh.edges[mesh.edge_face_count == 1]]
        where = translate("reading rows", "the border of the sheet")
    else:
        ends = _margin_pieces(case)
        hollow = case.reading.assumed_wall_mm is None
        where = (
            translate("reading rows", "the edge of the cavity")
            if hollow
            else translate("reading rows", "the crease of the base")
        )
    if not len(ends) or not np.isfinite(case.reading.height).any() or not outer.any():
        return translate("reading rows", "None was found.")
    length = float(np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1).sum())
    return translate("reading rows", "{length:.1f} mm, along {where}.").format(
        length=length, where=where
    )


def _margin_pieces(case: Case) -> FloatArray:
    """Return (S, 2, 3) the line through the middles of edges from outer to inner surface."""
    mesh, outer = case.surface.mesh, case.reading.outer
    corner = outer[mesh.faces]
    mixed = corner.any(axis=1) & ~corner.all(axis=1)
    faces, up = mesh.faces[mixed], corner[mixed]
    alone = np.where(up.sum(axis=1) == 1, up.argmax(axis=1), (~up).argmax(axis=1))
    rows = np.arange(len(faces))
    points = [mesh.vertices[faces[rows, (alone + turn) % 3]] for turn in range(3)]
    return np.stack([0.5 * (points[0] + points[1]), 0.5 * (points[0] + points[2])], axis=1)


def _inner(case: Case) -> tuple[str, Correction]:
    reading, area = case.reading, case.surface.mesh.vertex_areas
    if reading.assumed_wall_mm is not None:
        return translate("reading rows", "None: a wall of {wall:.2f} mm is assumed.").format(
            wall=reading.assumed_wall_mm
        ), Correction.WALL
    inner = ~reading.outer
    cavity, rim = area[inner & ~reading.rim].sum(), area[reading.rim].sum()
    return translate("reading rows", "{cavity:.0f} mm², and a rim of {rim:.0f} mm².").format(
        cavity=cavity, rim=rim
    ), Correction.MARGIN


def _units(case: Case) -> str:
    numbers = " ".join(str(unit.tooth.number) for unit in case.units)
    count = len(case.units)
    return (
        translate("reading rows", "{numbers}, one unit.").format(numbers=numbers)
        if count == 1
        else f"{count}: {numbers}."
    )


def _roles(case: Case) -> str:
    return ", ".join(f"{unit.tooth.number} {value_word(unit.role)}" for unit in case.units) + "."


def _connectors(case: Case) -> str:
    sections = case.reading.connectors_mm2
    if not sections:
        return translate("reading rows", "None was measured.")
    names = connector_names(case)
    return ", ".join(
        f"{name} {section:.1f} mm²" for name, section in zip(names, sections, strict=True)
    )


def connector_names(case: Case) -> list[str]:
    """Return the names of the connectors, as "14-15", in the order of their sections."""
    order = row_order(case.units)
    numbers = [case.units[index].tooth.number for index in order]
    count = len(case.reading.connectors_mm2)
    if len(numbers) != count + 1:
        return [str(k + 1) for k in range(count)]
    return [f"{one}\N{EN DASH}{other}" for one, other in pairwise(numbers)]
