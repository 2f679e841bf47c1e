"""Small cases made from closed forms, so that tests know the truth about them."""

from __future__ import annotations

import hashlib
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import AccentMask, Backing, Case, Region
from stainmap.model.colour import IN_PLACE, Colour, Measurement
from stainmap.model.crown import BodyKind, CrownReading, CrownSurface, MeshSource
from stainmap.model.material import (
    Absorption,
    Block,
    BlockLayer,
    Catalogue,
    Cement,
    Dye,
    Ion,
    IonBand,
    Liquid,
    Provenance,
    ScatteringClass,
    Segment,
    SinteringProgramme,
    Stump,
)
from stainmap.model.plan import AreaCoats, CoatSpan, Jar, StainPlan, Step
from stainmap.model.target import Target
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState

OUTER_RADIUS_MM = 5.0
INNER_RADIUS_MM = 4.0


def dome(rings: int = 24, around: int = 64) -> tuple[TriMesh, NDArray[np.bool_]]:
    """Return a hollow hemisphere, open below, and which vertices are its outer surface.

    Outer radius 5 mm, inner 4 mm, so the wall is 1 mm everywhere; the rim is a flat ring at z = 0.
    """
    points, faces = [], []

    def half_sphere(radius: float, *, inward: bool) -> tuple[int, list[int]]:
        first = len(points)
        points.append((0.0, 0.0, radius))
        for ring in range(1, rings + 1):
            polar = 0.5 * np.pi * ring / rings
            for step in range(around):
                angle = 2.0 * np.pi * step / around
                points.append(
                    (
                        radius * np.sin(polar) * np.cos(angle),
                        radius * np.sin(polar) * np.sin(angle),
                        radius * np.cos(polar),
                    )
                )
        for step in range(around):
            after = (step + 1) % around
            triangles = [(first, first + 1 + step, first + 1 + after)]
            for ring in range(rings - 1):
                a = first + 1 + ring * around
                b = a + around
                triangles.append((a + step, b + step, b + after))
                triangles.append((a + step, b + after, a + after))
            for one, two, three in triangles:
                faces.append((one, three, two) if inward else (one, two, three))
        last = first + 1 + (rings - 1) * around
        return first, list(range(last, last + around))

    _, outer_rim = half_sphere(OUTER_RADIUS_MM, inward=False)
    outer_count = len(points)
    _, inner_rim = half_sphere(INNER_RADIUS_MM, inward=True)
    for step in range(around):
        after = (step + 1) % around
        faces.append((outer_rim[step], inner_rim[step], inner_rim[after]))
        faces.append((outer_rim[step], inner_rim[after], outer_rim[after]))
    mesh = TriMesh(np.array(points), np.array(faces))
    return mesh, np.arange(len(points)) < outer_count


def materials() -> Catalogue:
    """Return a catalogue of one or two of everything, with numbers of no meaning."""
    invented = Provenance.INVENTED
    layer = BlockLayer(
        bottom_mm=0.0,
        scattering=ScatteringClass.Y3,
        nominal=Colour(lightness=75.5, a=0.4, b=16.0),
        nominal_thickness_mm=1.2,
        absorption=Absorption(c0_per_mm=0.359, decay_nm=63.0, c1_per_mm=0.0029),
    )
    return Catalogue(
        blocks=(
            Block(
                name="grey block",
                layers=(layer,),
                enlargement_factor=1.25,
                minimum_wall_mm=0.5,
                provenance=invented,
            ),
        ),
        ions=(Ion(name="X", bands=(IonBand(centre_nm=450.0, width_nm=60.0, strength=1.0),)),),
        liquids=(
            Liquid(
                name="first", purpose="base", amplitudes_per_mm=(("X", 0.3),), provenance=invented
            ),
            Liquid(
                name="second", purpose="dark", amplitudes_per_mm=(("X", 0.9),), provenance=invented
            ),
        ),
        dyes=(Dye(name="cyan", absorption_rgb=(1.5, 0.4, 0.1), provenance=invented),),
        programmes=(
            SinteringProgramme(
                name="slow",
                segments=(
                    Segment(target_c=1500.0, minutes=240.0),
                    Segment(target_c=200.0, minutes=180.0),
                ),
                scattering_factor=1.0,
                provenance=invented,
            ),
        ),
        stumps=(
            Stump(
                name="stump",
                floor=0.2,
                rise=0.38,
                centre_nm=520.0,
                width_nm=52.0,
                provenance=invented,
            ),
        ),
        cements=(
            Cement(
                name="clear",
                absorption_per_mm=0.0,
                scattering_per_mm=0.0,
                coupled=True,
                provenance=invented,
            ),
        ),
    )


def dome_case(rings: int = 24, around: int = 64) -> Case:
    """Return a planned case on the dome: cap cusp, belt body, foot cervical, inner surface."""
    mesh, outer = dome(rings, around)
    height = mesh.vertices[:, 2]
    zones = np.full(len(height), int(Zone.INNER), np.uint8)
    zones[outer] = int(Zone.BODY)
    zones[outer & (height < 1.5)] = int(Zone.CERVICAL)
    zones[outer & (height > 4.0)] = int(Zone.CUSP)
    margin = np.where(outer & (height < 0.6), 1.0, 0.0).astype(np.float32)
    content = b"solid dome"
    plan = StainPlan(
        block="grey block",
        jars=(Jar(number=1, liquid="first"), Jar(number=2, liquid="second", dye_drops=(1, 1, 0))),
        steps=(
            Step(jar=1, areas=(AreaCoats(area=Zone.INNER, coats=CoatSpan.exactly(2)),)),
            Step(
                jar=1,
                areas=(
                    AreaCoats(area=Zone.CERVICAL, coats=CoatSpan.exactly(3)),
                    AreaCoats(area=Zone.BODY, coats=CoatSpan.exactly(1)),
                ),
            ),
            Step(jar=2, areas=(AreaCoats(area=Accent.MARGIN_BAND, coats=CoatSpan(low=1, high=2)),)),
        ),
    )
    indices = np.arange(len(height), dtype=np.int32)
    return Case(
        code="T-0001",
        units=(Unit(tooth=Tooth(number=36)),),
        source=MeshSource(
            name="dome.stl",
            content=content,
            sha256=hashlib.sha256(content).hexdigest(),
            unit=LengthUnit.MILLIMETRE,
            size_state=SizeState.SINTERED,
            enlargement_factor=1.25,
        ),
        surface=CrownSurface(
            mesh=mesh,
            parents=np.stack([indices, indices], axis=1),
            base_vertex_count=len(height),
            file_vertex=mesh.faces.ravel().copy(),
        ),
        reading=CrownReading(
            kind=BodyKind.CROWN,
            occlusal_axis=(0.0, 0.0, 1.0),
            mesial=(1.0, 0.0, 0.0),
            outer=outer,
            rim=np.zeros(len(height), bool),
            unit_index=np.zeros(len(height), np.uint8),
            height=np.where(outer, height / OUTER_RADIUS_MM, np.nan).astype(np.float32),
            depth_below_crest_mm=(OUTER_RADIUS_MM - height).astype(np.float32),
            confidence=(("occlusal_axis", 1.0),),
        ),
        zones=zones,
        proposal=zones.copy(),
        accents=(AccentMask(accent=Accent.MARGIN_BAND, share=margin),),
        accent_proposal=(AccentMask(accent=Accent.MARGIN_BAND, share=margin.copy()),),
        plan=plan,
        materials=materials(),
        backings=(Backing(region=Region.STUMP, stump="stump", cement="clear"),),
        programme="slow",
        target=Target(
            body=Colour(lightness=74.0, a=1.0, b=18.0, measurement=Measurement(backing=IN_PLACE)),
            name="invented",
        ),
    )


def with_coats(case: Case, step: int, area: Zone | Accent, coats: int) -> Case:
    """Return the case with other coats in one cell."""
    plan = case.plan
    changed = plan.steps[step].with_coats(area, CoatSpan.exactly(coats))
    return replace(case, plan=plan.with_step(step, changed))
