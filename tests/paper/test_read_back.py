"""Every page opened by two independent readers, and compared field by field with the case."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime
from io import BytesIO
from itertools import combinations, pairwise

import numpy as np
import pytest
from pypdf import PdfReader
from scipy.spatial import cKDTree

from stainmap.app.prediction import predict_case
from stainmap.app.sheets import sheet_data
from stainmap.errors import PlanError
from stainmap.files.case_file import read_case
from stainmap.model.case import Case
from stainmap.model.colour import Colour
from stainmap.model.intake import Intake, Neighbour, Shade, ShadeSource, Third, ThirdShade
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Accent, Zone
from stainmap.paper import unit_map
from stainmap.paper.agreement_sheet import agreement_bytes, difference_text, predicted_rows
from stainmap.paper.area_lines import Mark
from stainmap.paper.coat_map import coat_map_bytes
from stainmap.paper.marks import draw_jar, draw_patch
from stainmap.paper.mixing_sheet import mixing_list_bytes
from stainmap.paper.page import Page, Rect
from stainmap.paper.page_pictures import page_pngs
from stainmap.paper.page_size import PageSize
from stainmap.paper.paper_copy import PaperCopy
from stainmap.paper.paper_light import paper_operator, paper_shading
from stainmap.paper.predicted_list import number_text
from stainmap.paper.raster import rasterise
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.tray_sheet import tray_hash, tray_list_bytes
from stainmap.paper.views import Side
from stainmap.paths import sample_case
from stainmap.planning.plan_hash import short_hash
from tests.paper.conftest import MakeSheet
from tests.paper.reading_back import codes, grey_pages, other_texts, texts

WISH = "Like its neighbour, please, and no white spots. The patient smiles broadly; the neck shows."
MIXED_AT = datetime(2026, 11, 25, 8, 30)  # noqa: DTZ001 - the bench's own clock
WORDS = " ".join


@pytest.fixture(scope="module", autouse=True)
def _coarse_pictures() -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(unit_map, "DOTS_PER_INCH", 100.0)
        yield


def flat(pages: list[str]) -> str:
    """Return text without regard to where lines break."""
    return WORDS(WORDS(pages).split())


def invented_intake() -> Intake:
    """Return an intake of an invented patient."""
    tab = Shade(
        source=ShadeSource.TAB,
        colour=Colour(lightness=74.1, a=1.2, b=19.4),
        doubt=(1.5, 0.7, 1.6),
        name="A3",
        note="Tab table from memory.",
    )
    neck = Shade(source=ShadeSource.MEASURED, colour=Colour(lightness=70.2, a=2.4, b=22.5))
    return Intake(
        shades=(
            ThirdShade(third=Third.CERVICAL, shade=neck),
            ThirdShade(third=Third.MIDDLE, shade=tab),
        ),
        stump_known=True,
        neighbours=(Neighbour(tooth=Tooth(number=35), shade=tab),),
        wish=WISH,
    )


@pytest.fixture(scope="module")
def asked(make_sheet: MakeSheet, dome: Case) -> SheetData:
    """Return the dome with everything asked for."""
    return make_sheet(replace(dome, intake=invented_intake()), mixed_at=MIXED_AT)


@pytest.fixture(scope="module")
def pdfs(asked: SheetData) -> dict[str, bytes]:
    other = replace(asked.case, code="S-0099")
    return {
        "coat map": coat_map_bytes(asked),
        "mixing list": mixing_list_bytes(asked),
        "agreement": agreement_bytes(asked),
        "tray": tray_list_bytes([asked, replace(asked, case=other)]),
    }


@pytest.mark.parametrize("kind", ["coat map", "mixing list", "agreement", "tray"])
def test_two_readers_find_the_same_words(pdfs: dict[str, bytes], kind: str) -> None:
    one, other = texts(pdfs[kind]), other_texts(pdfs[kind])
    assert len(one) == len(other) > 0
    for page, again in zip(one, other, strict=True):
        # Order on the page is a reader's choice, words are not.
        assert sorted(page.split()) == sorted(again.split())


@pytest.mark.parametrize("kind", ["coat map", "mixing list", "agreement", "tray"])
def test_every_page_embeds_its_fonts(pdfs: dict[str, bytes], kind: str) -> None:
    for page in PdfReader(BytesIO(pdfs[kind])).pages:
        fonts = [font.get_object() for font in page["/Resources"]["/Font"].values()]
        assert fonts
        for font in fonts:
            assert "StainmapSans" in str(font["/BaseFont"])
            assert "/FontFile2" in font["/FontDescriptor"].get_object()


def test_the_code_on_every_page_is_the_plan_hash(asked: SheetData, pdfs: dict[str, bytes]) -> None:
    for kind in ("coat map", "mixing list", "agreement"):
        for page in grey_pages(pdfs[kind], 150.0):
            assert codes(page) == [asked.hash_text]
    both = [asked, replace(asked, case=replace(asked.case, code="S-0099"))]
    for page in grey_pages(pdfs["tray"], 150.0):
        assert codes(page) == [short_hash(tray_hash(both))]


def test_the_code_is_read_from_a_poor_copy(asked: SheetData, pdfs: dict[str, bytes]) -> None:
    page = grey_pages(pdfs["mixing list"], 100.0)[0]
    rng = np.random.default_rng(3)
    # As a worn copier leaves it: pale, grey paper, speckles.
    worn = np.clip(0.35 + 0.5 * page + rng.normal(0.0, 0.06, page.shape), 0.0, 1.0)
    assert codes(worn) == [asked.hash_text]


def test_head_facts_field_by_field(asked: SheetData, pdfs: dict[str, bytes]) -> None:
    for kind in ("coat map", "mixing list", "agreement"):
        for number, page in enumerate(texts(pdfs[kind]), start=1):
            words = flat([page])
            for fact in (
                f"case {asked.case.code}",
                f"revision {asked.case.revision}",
                f"plan {asked.hash_text}",
                "replaces 7c41-09ae",
                f"date {asked.day.isoformat()}",
            ):
                name, value = fact.split(" ", 1)
                assert name in words.split(), (kind, fact)
                assert value in words, (kind, fact)
            assert f"{number} of {len(texts(pdfs[kind]))}" in words
            assert f"Block {asked.block.name}" in words


def test_the_agreement_says_what_was_wanted_field_by_field(
    asked: SheetData, pdfs: dict[str, bytes]
) -> None:
    words = flat(texts(pdfs["agreement"]))
    intake = asked.case.intake
    assert intake is not None
    for where, shade in [
        *((f"{one.third} third", one.shade) for one in intake.shades),
        *((f"neighbour {one.tooth.number}", one.shade) for one in intake.neighbours),
    ]:
        row = words[words.index(where) :]
        for value in (
            str(shade.source),
            shade.name,
            number_text(shade.colour.lightness),
            number_text(shade.colour.chroma),
            number_text(shade.colour.hue_degrees, 0),
        ):
            assert value in row[:90], (where, value)
    assert "±1.5 0.7 1.6" in words
    assert WISH in words
    assert "Tab table from memory." in words
    assert "stump natural dentine, medium" in words
    assert "not told" not in words
    # Every figure of the second table, and the words beside it.
    for name, row in predicted_rows(asked):
        at = words.index(name, words.index("What is predicted"))
        line = words[at : at + 110]
        for value in (
            number_text(row.predicted.lightness),
            number_text(row.predicted.chroma),
            number_text(row.predicted.hue_degrees, 0),
            difference_text(row, calibrated=False),
        ):
            assert value in line, (name, value)
    for limit in (
        "not calibrated",
        "Stain" if "darker than wanted" in words else "standard deviation",
        "no shade guarantee",
        "A shade tab is a word for a colour",
    ):
        assert limit in words


def test_an_unknown_stump_is_said_and_a_draft_is_marked(sheet: SheetData) -> None:
    words = flat(texts(agreement_bytes(sheet)))
    assert "not told; taken as natural dentine, medium" in words
    assert "DRAFT" not in words
    reason = "Draft: 9.7 mm² of wall are thinner than 1.0 mm. Choose the stump."
    for make in (coat_map_bytes, mixing_list_bytes, agreement_bytes):
        for page in texts(make(replace(sheet, draft=reason))):
            assert "DRAFT" in page
            assert reason in flat([page])


def test_a_target_without_an_intake_is_still_what_was_wanted(sheet: SheetData) -> None:
    target = sheet.case.target
    assert target is not None
    words = flat(texts(agreement_bytes(sheet)))
    assert f"body {target.name} {target.body.lightness:.1f}" in words
    without = replace(sheet, case=replace(sheet.case, target=None))
    assert "No shade was given." in flat(texts(agreement_bytes(without)))


def test_a_bodys_value_out_of_reach_is_said_in_plain_words(
    make_sheet: MakeSheet, dome: Case
) -> None:
    target = dome.target
    assert target is not None
    light = replace(target, body=replace(target.body, lightness=92.0))
    sheet = make_sheet(replace(dome, target=light))
    body = sheet.outcome.area(Zone.BODY)
    assert body is not None
    gap = 92.0 - body.predicted.lightness
    words = flat(texts(agreement_bytes(sheet)))
    assert f"up to {gap:.1f} L* darker than wanted. Stain only lowers value" in words


def test_a_long_wish_is_printed_to_its_last_word(make_sheet: MakeSheet, dome: Case) -> None:
    words = " ".join(f"word{number}" for number in range(230)) + " " + "x" * 150 + " end"
    intake = replace(invented_intake(), wish=words)
    back = flat(texts(agreement_bytes(make_sheet(replace(dome, intake=intake)))))
    assert all(f"word{number}" in back for number in range(230))
    assert "end" in back
    assert back.count("x") >= 150


def test_the_tray_lists_what_each_case_takes(make_sheet: MakeSheet, dome: Case) -> None:
    fewer = replace(dome, code="S-0100", plan=dome.plan.without_step(3))
    words = flat(texts(tray_list_bytes([make_sheet(dome), make_sheet(fewer)])))
    assert "tray of 2 cases, 2 units" in words
    # Steps 1 and 2 come from jar 1 in both; jar 3 is used by the first case alone.
    assert words.count("1, 2") >= 2
    assert "2 units of 2 cases" in words
    assert "1 unit of 1 case" in words
    for code in ("S-0036", "S-0100"):
        assert code in words
    # Two single units in one oven: 10 minutes and 5 for the second, as the run of the tray has it.
    assert "93 °C (200 °F), 15 min, assumed" in words
    with pytest.raises(PlanError, match="have the code S-0036"):
        tray_list_bytes([make_sheet(dome), make_sheet(dome)])


def test_pictures_of_pages_are_the_pages(pdfs: dict[str, bytes]) -> None:
    pages = page_pngs(pdfs["agreement"], 100.0)
    assert len(pages) == len(texts(pdfs["agreement"]))
    assert pages[0].startswith(b"\x89PNG")
    assert page_pngs(pdfs["agreement"], 100.0) == pages


# --- in grey: hatches told from one another


def textures(draw, count: int, side_mm: float) -> list[np.ndarray]:
    """Return (n, n) grey samples of patches drawn side by side, at 300 dots per inch."""
    page = Page(PageSize.A4, "patches")
    for index in range(count):
        draw(page, index, Rect(20.0 + index * (side_mm + 4.0), 20.0, side_mm, side_mm))
    page.next()
    (picture,) = grey_pages(page.finished(), 300.0)
    per_mm = 300.0 / 25.4
    size = round((side_mm - 0.6) * per_mm)
    found = []
    for index in range(count):
        x = round((20.3 + index * (side_mm + 4.0)) * per_mm)
        y = round(20.3 * per_mm)
        found.append(picture[y : y + size, x : x + size])
    return found


def directions(sample: np.ndarray) -> np.ndarray:
    """Return the share of line in each of twelve directions, with the ink's share at the end.

    From the tensor of grey steps: a level hatch has all its steps upwards, a crossed one in two
    directions. Neither size nor place matters.
    """
    down, across = np.gradient(sample)
    strength = down**2 + across**2
    angle = np.degrees(np.arctan2(down, across)) % 180.0
    shares, _ = np.histogram(angle, bins=12, range=(0.0, 180.0), weights=strength)
    ink = float(1.0 - sample.mean())
    total = shares.sum()
    shape = shares / total if total > 1e-9 else np.zeros(12)
    return np.append(shape, ink)


def smallest_difference(samples: list[np.ndarray]) -> float:
    features = [directions(sample) for sample in samples]
    return min(float(np.abs(one - other).sum()) for one, other in combinations(features, 2))


def test_zone_hatches_differ_in_grey() -> None:
    zones = [Zone.CERVICAL, Zone.BODY, Zone.INTERPROXIMAL, Zone.CUSP, Zone.FISSURE]

    def draw(page: Page, index: int, rect: Rect) -> None:
        draw_patch(page, zones[index], rect)

    # 2 would be wholly different directions; measured 0.9 and more.
    found = smallest_difference(textures(draw, len(zones), 12.0))
    print("zones", found)
    assert found > 0.5


def test_jar_hatches_differ_in_grey() -> None:
    def draw(page: Page, index: int, rect: Rect) -> None:
        draw_jar(page, index + 1, rect.x, rect.y, rect.width)

    found = smallest_difference(textures(draw, 5, 12.0))
    print("jars", found)
    assert found > 0.5


def test_an_accent_is_outlined_in_dashes_and_empty() -> None:
    (sample,) = textures(lambda page, _, rect: draw_patch(page, Accent.LINE_ANGLE, rect), 1, 12.0)
    assert sample[20:-20, 20:-20].min() > 0.99


# --- contours against the coat field


@pytest.fixture(scope="module")
def fine_sheet() -> SheetData:
    """Return what is printed about the sample molar, whose map is drawn on a thinned copy."""
    return sheet_data(predict_case(read_case(sample_case("lower_molar_36.stainmap"))))


@pytest.mark.parametrize("name", ["sheet", "fine_sheet"])
@pytest.mark.parametrize("side", [Side.BUCCAL, Side.OCCLUSAL])
def test_printed_contours_lie_where_a_coat_more_begins(
    name: str, side: Side, request: pytest.FixtureRequest
) -> None:
    """Every point of a dotted line has half a coat more on one side, within a pixel."""
    sheet: SheetData = request.getfixturevalue(name)
    copy = PaperCopy.of(sheet.case)
    assert (copy.mesh is sheet.case.surface.mesh) == (name == "sheet")
    operator = paper_operator(copy.mesh)
    whole = unit_map.whole_map(sheet, copy, paper_shading(operator), operator)
    page = Page(PageSize.A4, "contours")
    drawing = unit_map.draw_view(page, whole, side, 3.0, 20.0, 20.0, "view")
    lines = [line for line in drawing.lines if line.mark is Mark.CONTOUR]
    assert lines
    view = whole.view(side, 3.0)
    # An independent picture of the coats as they are laid on, unsoftened by the map.
    mesh = sheet.case.surface.mesh
    frame = rasterise(mesh.vertices, mesh.faces, view.camera, view.width, view.height)
    coats = sheet.coats.sum(axis=0)[:, None].astype(np.float32)
    image = np.full(frame.face.size, np.nan)
    image[frame.hits] = frame.take(coats)[:, 0]
    image = image.reshape(frame.face.shape)
    right = total = 0
    for line in lines:
        for x, y in _along(line.points):
            row, column = int(y * frame.samples), int(x * frame.samples)
            part = image[max(row - 3, 0) : row + 4, max(column - 3, 0) : column + 4]
            if not np.isfinite(part).all():
                continue  # at the outline a step lies on the side that is not seen
            low, high = part.min(), part.max()
            level = np.floor(low) + 0.5 if low % 1.0 < 0.5 else np.floor(low) + 1.5
            right += bool(low <= level <= high)
            total += 1
    assert total > 200
    assert right / total > 0.95
    # Every place where the coats pass half a coat is on one of the lines.
    rounded = np.round(image)
    steps = np.abs(np.diff(rounded, axis=0)) == 1
    rows, columns = np.nonzero(steps[:, :-1] & np.isfinite(rounded[:-1, :-1]))
    dense = np.concatenate([_along(line.points) for line in lines])
    places = np.stack([columns + 0.5, rows + 1.0], axis=1) / frame.samples
    nearest, _ = cKDTree(dense).query(places)
    assert np.mean(nearest < 1.5) > 0.9


def _along(points: np.ndarray) -> np.ndarray:
    """Return points every half pixel along a line."""
    parts = [points[:1]]
    for one, other in pairwise(points):
        count = max(int(2 * np.hypot(*(other - one))), 1)
        parts.append(one + (other - one) * np.linspace(0.0, 1.0, count + 1)[1:, None])
    return np.concatenate(parts)
