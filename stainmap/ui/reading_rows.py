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

_SURE, _LIKELY = 0.8, 0.5
# Nearer to an axis of the file than this, degrees, a direction is said to lie along it.
_ALONG_DEG = 1.0


class Correction(StrEnum):
    """What can be done about a reading."""

    BITE = "show the biting side"
    MARGIN = "move it with the brush"
    WALL = "set the wall"
    PARTS = "show where they part"
    TEETH = "name the teeth"
    ROLES = "say the roles"
    SECTIONS = "set the sections"
    MESIAL = "show mesial"
    BUCCAL = "show the outer side"


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
            return "set by you"
        if self.sure <= 0.0:
            return "not read"
        if self.sure < _LIKELY:
            how = "a guess, please check"
        else:
            how = "likely" if self.sure < _SURE else "sure"
        return f"{how}, {100 * self.sure:.0f} %"

    @property
    def can_be_confirmed(self) -> bool:
        """Whether it makes sense to say that it is right as it is."""
        return not self.said and 0.0 < self.sure < _SURE


def body_in_words(case: Case) -> str:
    """Return what the body is."""
    kind = case.reading.kind
    bodies = {
        BodyKind.CROWN: "A crown with its inner surface.",
        BodyKind.BRIDGE: f"A bridge of {len(case.units)} units.",
        BodyKind.SOLID_CROWN: "A solid crown: it has no inner surface, so a wall is assumed.",
        BodyKind.OPEN_SHEET: "A single sheet: it has no inner surface, so a wall is assumed.",
        BodyKind.ROOTED_TOOTH: "A tooth with its roots. The crown can be cut off.",
        BodyKind.JAW: "A jaw, or a piece of one. The crown that is meant can be cut off.",
        BodyKind.SEVERAL_BODIES: "Several bodies, of which the largest was read.",
        BodyKind.NOT_A_CROWN: "Nothing that could be read as a crown.",
    }
    cut = " Part of the file was cut away." if "cut" in case.reading.set_by_user else ""
    return bodies[kind] + cut


def reading_rows(case: Case) -> tuple[ReadingRow, ...]:
    """Return the readings of a case, in the order in which they rest on each other."""
    front = case.units[0].tooth
    found = {
        "occlusal_axis": (
            f"{front.occlusal_word.capitalize()} side",
            _direction(case.reading.occlusal_axis),
            Correction.BITE,
        ),
        "margin": ("Margin", _margin(case), Correction.MARGIN),
        "inner_surface": ("Inner surface", *_inner(case)),
        "units": ("Units", _units(case), _of_units(case)),
        "roles": ("Roles", _roles(case), Correction.ROLES),
        "connectors": ("Connectors", _connectors(case), Correction.SECTIONS),
        "mesial": ("Mesial", _direction(case.reading.mesial), Correction.MESIAL),
        "buccal": (front.buccal_word.capitalize(), _buccal(case), Correction.BUCCAL),
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
        return "The shape does not tell."
    values = np.asarray(vector)
    nearest = int(np.abs(values).argmax())
    sign = "+" if values[nearest] > 0 else "\N{MINUS SIGN}"
    off = float(np.degrees(np.arccos(np.clip(abs(values[nearest]), 0.0, 1.0))))
    name = f"{sign}{'XYZ'[nearest]} of the file"
    return f"Along {name}." if off < _ALONG_DEG else f"{off:.0f}\N{DEGREE SIGN} from {name}."


def _buccal(case: Case) -> str:
    reading = case.reading
    if reading.mesial is None:
        return "Follows from mesial and the tooth number."
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
        where = "the border of the sheet"
    else:
        ends = _margin_pieces(case)
        hollow = case.reading.assumed_wall_mm is None
        where = "the edge of the cavity" if hollow else "the crease of the base"
    if not len(ends) or not np.isfinite(case.reading.height).any() or not outer.any():
        return "None was found."
    length = float(np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1).sum())
    return f"{length:.1f} mm, along {where}."


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
        return f"None: a wall of {reading.assumed_wall_mm:.2f} mm is assumed.", Correction.WALL
    inner = ~reading.outer
    cavity, rim = area[inner & ~reading.rim].sum(), area[reading.rim].sum()
    return f"{cavity:.0f} mm\u00b2, and a rim of {rim:.0f} mm\u00b2.", Correction.MARGIN


def _units(case: Case) -> str:
    numbers = " ".join(str(unit.tooth.number) for unit in case.units)
    count = len(case.units)
    return f"{numbers}, one unit." if count == 1 else f"{count}: {numbers}."


def _roles(case: Case) -> str:
    return ", ".join(f"{unit.tooth.number} {unit.role.value}" for unit in case.units) + "."


def _connectors(case: Case) -> str:
    sections = case.reading.connectors_mm2
    if not sections:
        return "None was measured."
    names = connector_names(case)
    return ", ".join(
        f"{name} {section:.1f} mm\u00b2" for name, section in zip(names, sections, strict=True)
    )


def connector_names(case: Case) -> list[str]:
    """Return the names of the connectors, as "14-15", in the order of their sections."""
    order = row_order(case.units)
    numbers = [case.units[index].tooth.number for index in order]
    count = len(case.reading.connectors_mm2)
    if len(numbers) != count + 1:
        return [str(k + 1) for k in range(count)]
    return [f"{one}\N{EN DASH}{other}" for one, other in pairwise(numbers)]
