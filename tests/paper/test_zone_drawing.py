"""Zone maps of a dome whose borders are circles of latitude."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
from PIL import Image

from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.model.zone import Accent, Zone
from stainmap.optics.difference import delta_e_00
from stainmap.paper.area_lines import AreaFields, Mark, WorldLines, area_fields, area_lines
from stainmap.paper.pictures import crown_picture, dashed, png_bytes, write_png, zone_map
from stainmap.paper.raster import Camera, rasterise
from stainmap.paper.shading import ShadingFields
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.streak_arrows import streak_arrows
from stainmap.paper.views import CrownDirections, FlatExtent, Side
from stainmap.paper.zone_colours import zone_colour_linear
from stainmap.paper.zone_drawing import ZoneDrawing, draw_zones
from stainmap.planning.dyes import lab_of_linear
from stainmap.surface.diffusion import SurfaceOperator

NUMBER_PX = 30.0


@pytest.fixture(scope="module")
def directions(dome: Case) -> CrownDirections:
    return CrownDirections.of(dome.reading, dome.units[0].tooth)


@pytest.fixture(scope="module")
def fields(dome: Case, operator: SurfaceOperator, sheet: SheetData) -> AreaFields:
    return area_fields(operator, dome.zones, dome.accents, sheet.coats)


@pytest.fixture(scope="module")
def lines(
    dome: Case, shading: ShadingFields, fields: AreaFields, directions: CrownDirections
) -> tuple[WorldLines, ...]:
    normals = shading.normals_blue.astype(np.float64)
    return area_lines(dome.surface.mesh, normals, fields, directions)


@pytest.fixture(scope="module")
def drawings(
    dome: Case,
    shading: ShadingFields,
    fields: AreaFields,
    lines: tuple[WorldLines, ...],
    directions: CrownDirections,
) -> dict[Side, ZoneDrawing]:
    mesh = dome.surface.mesh
    result = {}
    for side in Side:
        view = FlatExtent.of(mesh.vertices, directions, side).view(30.0)
        frame = rasterise(mesh.vertices, mesh.faces, view.camera, view.width, view.height)
        result[side] = draw_zones(
            frame,
            shading,
            fields,
            lines + streak_arrows(dome),
            paper=True,
            number_px=NUMBER_PX,
            every_area=True,
        )
    return result


def length(line: WorldLines) -> float:
    step = np.linalg.norm(np.diff(line.points, axis=0), axis=1)
    return float(step[np.diff(line.line_of_point) == 0].sum())


def border(lines: tuple[WorldLines, ...], zone: Zone) -> WorldLines:
    return next(line for line in lines if line.mark is Mark.BORDER and line.area == int(zone))


def test_borders_are_the_circles_where_zones_meet(lines: tuple[WorldLines, ...]) -> None:
    # Zones change at z = 1.5 and z = 4 on a sphere of 5 mm, within one ring of facets (0.25 mm).
    cusp_side = border(lines, Zone.BODY)
    height = cusp_side.points[:, 2]
    radius = np.hypot(cusp_side.points[:, 0], cusp_side.points[:, 1])
    assert abs(height.mean() - 4.0) < 0.15
    np.testing.assert_allclose(np.hypot(radius, height), 5.0, atol=0.02)
    assert length(cusp_side) == pytest.approx(2 * np.pi * radius.mean(), rel=0.01)


def test_hatches_lie_on_their_planes_and_within_their_zone(
    lines: tuple[WorldLines, ...], dome: Case
) -> None:
    centre = dome.surface.mesh.centre
    hatches = [line for line in lines if line.mark is Mark.HATCH]
    assert {line.area for line in hatches} >= {int(Zone.CERVICAL), int(Zone.CUSP)}
    for line in hatches:
        assert line.across is not None
        np.testing.assert_allclose((line.points - centre) @ line.across, line.order, atol=1e-9)
        if line.area == int(Zone.CUSP):
            assert line.points[:, 2].min() > 3.7
        if line.area == int(Zone.CERVICAL):
            assert line.points[:, 2].max() < 1.8


def test_coat_contours_lie_where_the_number_of_coats_changes(
    lines: tuple[WorldLines, ...], fields: AreaFields
) -> None:
    contours = [line for line in lines if line.mark is Mark.CONTOUR]
    assert fields.coats is not None
    low, high = fields.coats.min(), fields.coats.max()
    assert len(contours) == sum(low < level <= high for level in np.arange(0.5, 12.0))
    # Between three cervical coats and one of the body, 1.5 and 2.5 coats lie at the border.
    heights = [line.points[:, 2] for line in contours]
    near = [np.abs(height - 1.5).min() for height in heights]
    assert sorted(near)[1] < 0.3


def test_every_area_has_its_number_somewhere(drawings: dict[Side, ZoneDrawing]) -> None:
    seen = {spot.area for drawing in drawings.values() for spot in drawing.numbers}
    assert seen == {1, 2, 4, 6, int(Accent.MARGIN_BAND), int(Accent.MARGINAL_RIDGE)}


@pytest.mark.parametrize("side", list(Side))
def test_no_number_lies_on_another_or_beyond_the_picture(
    drawings: dict[Side, ZoneDrawing], side: Side
) -> None:
    drawing = drawings[side]
    height, width = drawing.picture.shape[:2]
    for spot in drawing.numbers:
        assert NUMBER_PX / 2 <= spot.x <= width - NUMBER_PX / 2
        assert NUMBER_PX / 2 <= spot.y <= height - NUMBER_PX / 2
    for one, other in combinations(drawing.numbers, 2):
        assert np.hypot(one.x - other.x, one.y - other.y) > 1.1 * NUMBER_PX


def test_only_what_faces_the_viewer_is_drawn(
    drawings: dict[Side, ZoneDrawing], lines: tuple[WorldLines, ...]
) -> None:
    # From the side half of each circle is hidden behind the dome.
    seen = [
        line
        for line in drawings[Side.BUCCAL].lines
        if line.mark is Mark.BORDER and line.area == int(Zone.BODY)
    ]
    across = sum(np.abs(np.diff(line.points[:, 0])).sum() for line in seen) / 30.0
    radius = np.hypot(*border(lines, Zone.BODY).points[0, :2])
    assert across == pytest.approx(2 * radius, rel=0.04)


def test_the_outline_is_the_silhouette(drawings: dict[Side, ZoneDrawing]) -> None:
    (outline,) = [line for line in drawings[Side.OCCLUSAL].lines if line.mark is Mark.OUTLINE]
    middle = np.array(drawings[Side.OCCLUSAL].picture.shape[1::-1]) / 2
    radius = np.hypot(*(outline.points - middle).T) / 30.0
    np.testing.assert_allclose(radius, 5.0, atol=0.05)


def test_streak_arrows_run_from_the_zone_towards_the_margin(
    dome: Case, drawings: dict[Side, ZoneDrawing]
) -> None:
    arrows = streak_arrows(dome)
    assert 3 <= len(arrows) <= 6
    for arrow in arrows:
        start, end = arrow.points
        assert end[2] < start[2] - 1.0
        assert np.linalg.norm(end - start) <= 2.5 + 1e-6
    assert any(line.mark is Mark.STREAK for line in drawings[Side.BUCCAL].lines)


def test_paper_is_grey(drawings: dict[Side, ZoneDrawing]) -> None:
    picture = drawings[Side.MESIAL].picture.astype(int)
    assert np.ptp(picture, axis=2).max() <= 1
    assert picture[0, 0].tolist() == [255, 255, 255]


def test_zone_colours_can_be_told_apart() -> None:
    outer = [zone for zone in Zone if zone is not Zone.INNER]
    lab = [lab_of_linear(zone_colour_linear(zone)) for zone in outer]
    least = min(float(delta_e_00(one, other)) for one, other in combinations(lab, 2))
    assert least >= 15.0


def test_screen_pictures_come_out_whole(
    dome: Case, shading: ShadingFields, fields: AreaFields, lines: tuple[WorldLines, ...]
) -> None:
    camera = Camera(
        eye=(0.4, 1, 0.8), up=(0, 0, 1), centre=(0, 0, 2), height_mm=11.0, distance_mm=120.0
    )
    mesh = dome.surface.mesh
    frame = rasterise(mesh.vertices, mesh.faces, camera, 300, 240)
    zones = zone_map(frame, fields, lines, shading=shading)
    again = zone_map(frame, fields, lines, shading=shading)
    assert zones.shape == (240, 300, 3)
    np.testing.assert_array_equal(zones, again)
    colours = np.full((mesh.vertex_count, 3), 0.5)
    crown = crown_picture(frame, colours, shading=shading, occlusal=(0, 0, 1))
    # Both leave the surround alone and cover the crown with something else.
    inside = frame.coverage == 1.0
    for picture in (zones, crown):
        assert (picture[0] == 0x77).all()
        assert (picture[inside] != 0x77).any(axis=1).mean() > 0.99


def test_dashes_add_up(fields: AreaFields) -> None:
    line = np.array([[0.0, 0.0], [7.0, 0.0], [7.0, 16.0]])
    parts = list(dashed(line, 5.0, 5.0))
    lengths = [float(np.hypot(*np.diff(part, axis=0).T).sum()) for part in parts]
    assert lengths == pytest.approx([5.0, 5.0, 3.0])


def test_png_survives_the_file(tmp_path) -> None:
    picture = np.random.default_rng(1).integers(0, 256, (20, 30, 3), dtype=np.uint8)
    write_png(tmp_path / "picture.png", picture)
    np.testing.assert_array_equal(np.asarray(Image.open(tmp_path / "picture.png")), picture)
    assert (tmp_path / "picture.png").read_bytes() == png_bytes(picture)


def test_a_picture_that_cannot_be_written_says_why(tmp_path) -> None:
    with pytest.raises(StainmapError, match="folder does not exist"):
        write_png(tmp_path / "nowhere" / "picture.png", np.zeros((2, 2), np.uint8))
