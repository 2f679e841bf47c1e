"""Sheets read back: everything that must be on them, nothing on top of anything else."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime
from io import BytesIO
from itertools import combinations
from pathlib import Path
from typing import NamedTuple

import numpy as np
import pytest
import trimesh
from pypdf import PdfReader

from stainmap.errors import CancelledError, PlanError, StainmapError
from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.model.plan import AreaCoats, BrushedCoats, CoatSpan, Jar, StainPlan, Step
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.paper import unit_map
from stainmap.paper.coat_map import coat_map_bytes, write_coat_map
from stainmap.paper.mixing_sheet import mixing_list_bytes, steps_text, write_mixing_list
from stainmap.paper.page import MARGIN_MM, SMALLEST_PT, Page
from stainmap.paper.page_size import PageSize
from stainmap.paper.predicted_list import number_text
from stainmap.paper.raster import Camera, rasterise
from stainmap.paper.sheet_data import SheetData
from stainmap.surface.mesh import TriMesh, submesh
from tests.paper.conftest import MakeSheet

MIXED_AT = datetime(2026, 11, 25, 8, 30)  # noqa: DTZ001 - the bench's own clock


def text_of(pdf: bytes) -> str:
    return "\n".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages)


def pages_of(pdf: bytes) -> int:
    return len(PdfReader(BytesIO(pdf)).pages)


@pytest.fixture(scope="module", autouse=True)
def _coarse_pictures() -> Iterator[None]:
    """Draw the pictures at a third of their fineness: where things stand does not change."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(unit_map, "DOTS_PER_INCH", 100.0)
        yield


@pytest.fixture(scope="module")
def coat_map(sheet: SheetData) -> str:
    return text_of(coat_map_bytes(sheet))


@pytest.fixture(scope="module")
def mixing(sheet: SheetData) -> str:
    return text_of(mixing_list_bytes(replace(sheet, mixed_at=MIXED_AT)))


CAUTIONS = (
    "acidic metal-salt solutions",
    "gloves, goggles, ventilation",
    "no dust",
    "instructions for use",
    "Invented materials: do not fire by this sheet.",
    "Not calibrated: direction, not a match.",
    "Printed colour is not a shade reference.",
)


@pytest.mark.parametrize("words", CAUTIONS)
def test_both_sheets_carry_the_cautions(coat_map: str, mixing: str, words: str) -> None:
    assert words in coat_map.replace("\n", " ")
    assert words in mixing.replace("\n", " ")


def test_both_sheets_say_what_they_belong_to(sheet: SheetData, coat_map: str, mixing: str) -> None:
    for text in (coat_map, mixing):
        assert "S-0036" in text
        assert sheet.hash_text in text
        assert "7c41-09ae" in text  # the plan it replaces
        assert "2026-11-25" in text
        assert "36 lower left first molar" in text
        assert "medium 3Y" in text
        for number in range(1, 5):
            assert f"{number} _____" in text  # lots to fill in


def test_the_coat_map_holds_areas_coats_and_predictions(sheet: SheetData, coat_map: str) -> None:
    for name in ("cervical", "body", "cusp", "inner surface", "margin band", "marginal ridge"):
        assert name in coat_map
    for liquid in ("barley", "slate", "ash", "umber"):
        assert liquid in coat_map
    assert "2-3" in coat_map
    assert "3:1 in milled size" in coat_map
    for side in (
        "buccal",
        "lingual",
        "mesial",
        "distal",
        "occlusal, buccal below",
        "rosette, buccal below",
    ):
        assert side in coat_map
    for row in sheet.outcome.areas:
        if row.area is not Zone.INNER:
            assert number_text(row.predicted.lightness) in coat_map
            assert number_text(row.predicted.chroma) in coat_map
    assert "±2.5 L*" in coat_map
    assert "lower end" in coat_map
    assert "3 streaks, 3.1 mm" in coat_map  # 2.5 mm sintered, enlarged by 1.245
    assert "slow, 1500 °C" in coat_map


def test_an_accent_without_coats_is_left_out(make_sheet: MakeSheet, dome: Case) -> None:
    plan = dome.plan.without_step(3)
    text = text_of(coat_map_bytes(make_sheet(replace(dome, plan=plan))))
    assert "margin band" in text
    assert "marginal ridge" not in text


def test_the_mixing_list_holds_jars_times_and_programme(mixing: str) -> None:
    for words in ("cyan 2", "magenta 2   yellow 1", "yellow 3", "cyan 1   magenta 2"):
        assert words in mixing
    assert "36, steps 1 and 2" in mixing
    assert "36, step 5" in mixing
    assert "16:30" in mixing  # mixed at 8:30, thrown away after 8 h
    assert "discard 25 Nov 16:30" in mixing
    assert "93 °C (200 °F)" in mixing
    assert "to 1500 °C" in mixing
    assert "5.0 °C/min" in mixing
    assert "No liquid back into the bottle." in mixing
    assert "93 %" in mixing  # 25 of 27 drops
    assert "dE00" in mixing


def test_without_a_time_the_mixing_list_says_how_long_jars_last(sheet: SheetData) -> None:
    assert "discard after 8 h" in text_of(mixing_list_bytes(sheet))


def test_known_lots_and_technician_are_printed(make_sheet: MakeSheet, dome: Case) -> None:
    jars = tuple(replace(jar, lot=f"L{jar.number}77") for jar in dome.plan.jars)
    case = replace(dome, plan=replace(dome.plan, jars=jars))
    text = text_of(mixing_list_bytes(make_sheet(case, technician="K. M.")))
    assert "1 L177" in text
    assert "K. M." in text


@pytest.mark.parametrize("page", list(PageSize))
def test_pages_have_the_size_asked_for(sheet: SheetData, page: PageSize) -> None:
    width, height = {PageSize.A4: (210.0, 297.0), PageSize.LETTER: (215.9, 279.4)}[page]
    for pdf in (
        coat_map_bytes(replace(sheet, page=page)),
        mixing_list_bytes(replace(sheet, page=page)),
    ):
        for one in PdfReader(BytesIO(pdf)).pages:
            assert float(one.mediabox.width) == pytest.approx(width * 72 / 25.4, abs=0.01)
            assert float(one.mediabox.height) == pytest.approx(height * 72 / 25.4, abs=0.01)


@pytest.mark.parametrize("page", list(PageSize))
def test_one_page_per_unit(sheet: SheetData, page: PageSize) -> None:
    assert pages_of(coat_map_bytes(replace(sheet, page=page))) == 1
    assert pages_of(mixing_list_bytes(replace(sheet, page=page))) == 1


def test_the_same_sheet_gives_the_same_bytes(sheet: SheetData) -> None:
    one, other = coat_map_bytes(sheet), coat_map_bytes(sheet)
    assert hashlib.sha256(one).hexdigest() == hashlib.sha256(other).hexdigest()
    one, other = mixing_list_bytes(sheet), mixing_list_bytes(sheet)
    assert hashlib.sha256(one).hexdigest() == hashlib.sha256(other).hexdigest()


def test_fonts_are_embedded_and_no_other_is_used(sheet: SheetData) -> None:
    reader = PdfReader(BytesIO(coat_map_bytes(sheet)))
    fonts = reader.pages[0]["/Resources"]["/Font"]
    used = {str(font.get_object()["/BaseFont"]) for font in fonts.values()}
    # reportlab always names Helvetica, its starting font; every text names another.
    assert {name for name in used if "StainmapSans" not in name} <= {"/Helvetica"}
    assert sum("StainmapSans" in name for name in used) == 4


class Box(NamedTuple):
    page: int
    text: str
    left: float
    top: float
    right: float
    bottom: float


def recorded(monkeypatch: pytest.MonkeyPatch) -> list[Box]:
    """Record the box of every text that is written."""
    boxes: list[Box] = []
    number = [0]
    write, turn = Page.text, Page.next

    def text(self, x, y, text, size=9.0, **style):
        width = write(self, x, y, text, size, **style)
        shift = {"left": 0.0, "right": width, "centre": width / 2}[style.get("align", "left")]
        cap = 0.727 * size * 25.4 / 72
        if text.strip():
            assert size >= SMALLEST_PT - 1e-9
            boxes.append(Box(number[0], text, x - shift, y - cap, x - shift + width, y))
        return width

    def next_page(self):
        number[0] += 1
        turn(self)

    monkeypatch.setattr(Page, "text", text)
    monkeypatch.setattr(Page, "next", next_page)
    return boxes


def overlapping(boxes: list[Box]) -> list[tuple[str, str]]:
    return [
        (one.text, other.text)
        for one, other in combinations(boxes, 2)
        if one.page == other.page
        and min(one.right, other.right) - max(one.left, other.left) > 0.05
        and min(one.bottom, other.bottom) - max(one.top, other.top) > 0.05
    ]


def many_steps(dome: Case, count: int) -> Case:
    """Return the dome with many steps, spans and every jar there is."""
    names = [liquid.name for liquid in dome.materials.liquids]
    jars = tuple(
        Jar(number=number, liquid=name, dye_drops=dome.materials.liquid(name).dye_drops)
        for number, name in enumerate(names, start=1)
    )
    zones = (Zone.CERVICAL, Zone.BODY, Zone.CUSP, Zone.INNER)
    steps = tuple(
        Step(
            jar=index % len(jars) + 1,
            areas=(
                AreaCoats(area=zones[index % 4], coats=CoatSpan(low=2, high=2 + index % 2)),
                AreaCoats(area=Accent.MARGIN_BAND, coats=CoatSpan(low=1, high=12)),
            ),
        )
        for index in range(count)
    )
    return replace(
        dome,
        code="A case code that nobody can read at a glance 0123456789",
        plan=StainPlan(block="graded medium to light 3Y/4Y", jars=jars, steps=steps),
    )


@pytest.mark.parametrize("page", list(PageSize))
@pytest.mark.parametrize("steps", [5, 8, 12, 24])
def test_no_text_lies_on_another_or_in_the_margin(
    make_sheet: MakeSheet,
    dome: Case,
    monkeypatch: pytest.MonkeyPatch,
    page: PageSize,
    steps: int,
) -> None:
    case = dome if steps == 5 else many_steps(dome, steps)
    sheet = make_sheet(case, page=page, technician="Somebody with rather a long name")
    width, height = page.size_mm
    for make in (coat_map_bytes, mixing_list_bytes):
        with monkeypatch.context() as patch:
            boxes = recorded(patch)
            make(sheet)
        assert overlapping(boxes) == []
        for box in boxes:
            assert box.left >= MARGIN_MM - 1.0, box
            assert box.right <= width - MARGIN_MM + 1.0, box
            assert box.top >= 8.0, box
            assert box.bottom <= height - 5.0, box


def test_brushed_coats_are_mentioned(make_sheet: MakeSheet, dome: Case) -> None:
    brushed = BrushedCoats(
        vertices=np.array([3, 4], np.int32), coats=np.array([0.5, 1.2], np.float32)
    )
    step = replace(dome.plan.steps[1], brushed=brushed)
    case = replace(dome, plan=dome.plan.with_step(1, step))
    assert "brushed by hand" in text_of(coat_map_bytes(make_sheet(case)))


def test_unknown_sides_are_not_named(make_sheet: MakeSheet, dome: Case) -> None:
    case = replace(dome, reading=replace(dome.reading, mesial=None))
    text = text_of(coat_map_bytes(make_sheet(case)))
    assert "side 1" in text
    assert "mesial not set" in text
    assert "lingual" not in text


def test_front_teeth_have_their_own_words(make_sheet: MakeSheet, dome: Case) -> None:
    case = replace(dome, units=(Unit(tooth=Tooth(number=21)),))
    text = text_of(coat_map_bytes(make_sheet(case)))
    for word in ("labial", "palatal", "incisal, labial below"):
        assert word in text
    assert "buccal" not in text
    assert "cusp" not in text


def bridge(dome: Case) -> Case:
    """Return the dome as a bridge of two, cut in the middle."""
    left = dome.surface.mesh.vertices[:, 0] > 0.01
    return replace(
        dome,
        units=(
            Unit(tooth=Tooth(number=14), role=Role.RETAINER),
            Unit(tooth=Tooth(number=15), role=Role.PONTIC),
        ),
        reading=replace(
            dome.reading,
            kind=BodyKind.BRIDGE,
            unit_index=left.astype(np.uint8),
            connectors_mm2=(9.2,),
        ),
    )


def test_a_bridge_has_an_overview_and_a_page_per_unit(make_sheet: MakeSheet, dome: Case) -> None:
    pdf = coat_map_bytes(make_sheet(bridge(dome)))
    texts = [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]
    assert len(texts) == 3
    assert "overview" in texts[0]
    assert "9.2 mm²" in texts[0]
    assert "14 upper right first premolar, retainer" in texts[1]
    assert "15 upper right second premolar, pontic" in texts[2]
    # The marginal ridge lies on the half that is unit 15.
    assert "marginal ridge" in texts[2]
    assert "marginal ridge" not in texts[1]
    assert "14 15" in text_of(mixing_list_bytes(make_sheet(bridge(dome))))


def test_a_round_connector_is_closed_and_shows_the_back_of_the_cut() -> None:
    ball = trimesh.creation.icosphere(subdivisions=4)
    half, _ = submesh(TriMesh(ball.vertices, ball.faces), ball.triangles_center[:, 0] > 0.0)
    on_cut = half.vertices[:, 0] < 0.15
    cuts = unit_map._cut_faces(half, on_cut)
    corners = half.vertices[cuts]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    # A circle of radius 1 along jagged facets; its front looks into the body.
    assert normals[:, 0].sum() / 2 == pytest.approx(np.pi, rel=0.03)
    camera = Camera(eye=(-1, 0, 0), up=(0, 0, 1), centre=(0, 0, 0), height_mm=2.4)
    faces = np.concatenate([half.faces, cuts])
    frame = rasterise(half.vertices, faces, camera, 60, 60, both_sides=True)
    closed = frame.face.ravel()[frame.hits] >= half.face_count
    assert closed.mean() > 0.9
    assert not frame.front[closed].any()
    # The margin of an open crown is no cut.
    assert len(unit_map._cut_faces(half, np.zeros(half.vertex_count, bool))) == 0


def test_a_border_far_from_round_stays_open(make_sheet: MakeSheet, dome: Case) -> None:
    outer = dome.surface.mesh.vertices[:, 0] > 0.01
    half, vertex = submesh(dome.surface.mesh, outer[dome.surface.mesh.faces].all(axis=1))
    # Half a ring between 4 and 5 mm: a fan over it would cover the hollow of the crown.
    assert len(unit_map._cut_faces(half, np.ones(len(vertex), bool))) == 0


@pytest.mark.parametrize("write", [write_coat_map, write_mixing_list])
def test_a_sheet_that_cannot_be_written_says_why(sheet: SheetData, tmp_path: Path, write) -> None:
    with pytest.raises(StainmapError, match="folder does not exist"):
        write(tmp_path / "nowhere" / "sheet.pdf", sheet)
    with pytest.raises(StainmapError, match="folder of that name"):
        write(tmp_path, sheet)


def test_written_files_are_what_the_bytes_say(sheet: SheetData, tmp_path: Path) -> None:
    write_mixing_list(tmp_path / "mixing.pdf", sheet)
    assert (tmp_path / "mixing.pdf").read_bytes() == mixing_list_bytes(sheet)


def test_the_coat_map_tells_how_far_it_is_and_can_be_stopped(
    sheet: SheetData, tmp_path: Path
) -> None:
    heard: list[float] = []

    def listen(share: float, what: str) -> None:
        heard.append(share)
        assert what
        if stop_at < share:
            raise CancelledError("stopped")

    stop_at = 2.0
    coat_map_bytes(replace(sheet, shading=None), progress=listen)
    assert heard == sorted(heard)
    assert heard[0] < 0.1
    assert heard[-1] > 0.5
    stop_at = 0.3
    with pytest.raises(CancelledError):
        write_coat_map(tmp_path / "map.pdf", replace(sheet, shading=None), progress=listen)
    assert list(tmp_path.iterdir()) == []


def test_an_empty_plan_says_what_is_missing(make_sheet: MakeSheet, dome: Case) -> None:
    sheet = make_sheet(replace(dome, plan=StainPlan(block="medium 3Y")))
    with pytest.raises(PlanError, match="no step"):
        coat_map_bytes(sheet)
    with pytest.raises(PlanError, match="no jar"):
        mixing_list_bytes(sheet)


def test_a_case_without_a_unit_says_so(sheet: SheetData, dome: Case) -> None:
    with pytest.raises(PlanError, match="names no unit"):
        replace(sheet, case=replace(dome, units=()))


def test_data_of_two_cases_are_refused(sheet: SheetData) -> None:
    with pytest.raises(PlanError, match="do not fit"):
        replace(sheet, coats=sheet.coats[:2])
    with pytest.raises(PlanError, match="hash"):
        replace(sheet, plan_hash="7c41")


@pytest.mark.parametrize(
    ("value", "digits", "signed", "text"),
    [
        (-3.04, 1, True, "\N{MINUS SIGN}3.0"),
        (2.0, 1, True, "+2.0"),
        (-0.04, 1, True, "0.0"),
        (86.6, 0, False, "87"),
        (0.0, 1, True, "0.0"),
    ],
)
def test_numbers_have_a_true_minus_and_no_signed_zero(
    value: float, digits: int, signed: bool, text: str
) -> None:
    assert number_text(value, digits, signed=signed) == text


def test_steps_are_listed_as_people_do() -> None:
    assert steps_text([3]) == "step 3"
    assert steps_text([1, 2]) == "steps 1 and 2"
    assert steps_text([1, 2, 7]) == "steps 1, 2 and 7"
    assert steps_text([]) == "no step"
