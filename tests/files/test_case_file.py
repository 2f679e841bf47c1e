"""Case files: saved without loss, refused with a sentence, never half written."""

from __future__ import annotations

import contextlib
import io
import json
import multiprocessing
import os
import zipfile
from dataclasses import fields, is_dataclass, replace
from datetime import datetime, timedelta, timezone
from enum import Enum
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.case_file import is_case_file, read_case, read_look, write_case
from stainmap.files.case_lock import CaseLock, holder_of
from stainmap.model.bench_record import BenchMark, BenchRecord, BenchStage
from stainmap.model.case import Case, ScrewChannel
from stainmap.model.colour import IN_PLACE, TAB_TABLE_SPHERE, Colour, Conversion, Measurement
from stainmap.model.finishing import AfterSintering, Finish, Grinding
from stainmap.model.intake import Intake, Neighbour, Shade, ShadeSource, Third, ThirdShade
from stainmap.model.material import BlankCoupon, Catalogue
from stainmap.model.plan import BrushedCoats, Streaks
from stainmap.model.process import JarAmounts, StainProcess, UptakeRule
from stainmap.model.target import AreaShade
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Accent, Zone
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.planning.plan_hash import plan_hash
from stainmap.surface.mesh import TriMesh
from tests.builders import dome_case, with_coats

MONDAY = datetime(2026, 5, 4, 9, 30, tzinfo=timezone(timedelta(hours=2)))


def full_case() -> Case:
    """Return a case that uses every kind of thing a case can hold."""
    case = dome_case(6, 12)
    step = replace(
        case.plan.steps[1],
        brushed=BrushedCoats(
            vertices=np.array([2, 5], np.int32), coats=np.array([1, 0.5], np.float32)
        ),
        streaks=(Streaks(area=Zone.BODY, count=3, length_mm=2.5, coats=1),),
    )
    assert case.target is not None
    return replace(
        case,
        plan=case.plan.with_step(1, step),
        target=replace(
            case.target,
            conversions=tuple(Conversion),
            held=(
                AreaShade(area=Zone.CERVICAL, colour=tab("A4").colour, doubt=(0.5, 0.4, 1.5)),
                AreaShade(
                    area=Zone.CUSP,
                    colour=tab("A1").colour,
                    conversions=(Conversion.TAB_TABLE,),
                ),
            ),
            body_doubt=(0.5, 0.25, 1.8),
        ),
        backings=(*case.backings, replace(case.backings[0], of_unit=0)),
        hidden_advice=("thin walls//0", "missing lots//"),
        notes="stump photographed; \N{GREEK SMALL LETTER DELTA}E checked",
        replaces="7c41-09ae",
        revision=4,
        materials=with_coupon(case.materials),
        process=StainProcess(
            outer_depth_mm=0.45,
            inner_depth_mm=0.25,
            wicking_mm=0.1,
            uptake=UptakeRule(coats_to_saturation=5.5, competition=0.8, hand_factor=1.3),
            painter="bench 2",
            amounts=JarAmounts(drops_per_ml=22.0, film_per_coat_mm=0.05, left_in_jar_drops=3.0),
        ),
        after_sintering=AfterSintering(
            finish=Finish.GLAZED,
            ground=(Grinding(depth_mm=0.1), Grinding(depth_mm=0.2, area=Accent.MARGIN_BAND)),
        ),
        screw_channels=(
            ScrewChannel(unit=0, point_mm=(0.1, 0.2, 5.0), axis=(0.0, 0.1, 1.0), radius_mm=1.4),
        ),
        sliders=ZoneSliders(neck_climb=0.35, cusp_descent=0.5, fissure_width=0.2),
        intake=Intake(
            shades=(
                ThirdShade(third=Third.MIDDLE, shade=measured()),
                ThirdShade(third=Third.CERVICAL, shade=tab("A4")),
            ),
            stump_known=True,
            implant_base=True,
            neighbours=(Neighbour(tooth=Tooth(number=35), shade=tab("B2")),),
            wish="not lighter than 35 \N{EM DASH} rather a little older",
        ),
        bench=BenchRecord(
            marks=(
                BenchMark(stage=BenchStage.MIXED, at=MONDAY, plan_hash="ab" * 32),
                BenchMark(stage=BenchStage.SINTERED, at=MONDAY.replace(day=5), plan_hash="cd" * 32),
            )
        ),
    )


def tab(name: str) -> Shade:
    how = Measurement(geometry=TAB_TABLE_SPHERE, illuminant="C", backing=IN_PLACE)
    return Shade(
        source=ShadeSource.TAB,
        colour=Colour(lightness=72.5, a=0.25, b=17.5, measurement=how),
        doubt=(0.5, 0.25, 1.8),
        name=name,
        conversions=(Conversion.TAB_TABLE,),
        note="from memory",
    )


def measured() -> Shade:
    return Shade(
        source=ShadeSource.MEASURED, colour=Colour(lightness=74.5, a=0.5, b=18.5), name="35"
    )


def with_coupon(materials: Catalogue) -> Catalogue:
    coupon = BlankCoupon(scattering_factor=0.93, read_by="bench 2", read_on="2026-05-04")
    programme = replace(materials.programmes[0], coupon=coupon, own_drying_minutes=12.0)
    return replace(materials, programmes=(programme,))


def assert_same(one: object, other: object, place: str = "case") -> None:
    """Compare two values field by field, arrays bit by bit."""
    assert type(one) is type(other), place
    if isinstance(one, np.ndarray):
        assert one.dtype == other.dtype, place
        np.testing.assert_array_equal(one, other, err_msg=place)
    elif isinstance(one, TriMesh):
        assert_same(one.vertices, other.vertices, place)
        assert_same(one.faces, other.faces, place)
    elif is_dataclass(one):
        for field in fields(one):
            assert_same(
                getattr(one, field.name), getattr(other, field.name), f"{place}.{field.name}"
            )
    elif isinstance(one, tuple):
        assert len(one) == len(other), place
        for index, (left, right) in enumerate(zip(one, other, strict=True)):
            assert_same(left, right, f"{place}[{index}]")
    else:
        assert isinstance(one, (Enum, str, int, float, bytes, frozenset, datetime, type(None))), (
            place
        )
        assert one == other, place


def test_nothing_is_lost_between_saving_and_opening(tmp_path: Path) -> None:
    case, path = full_case(), tmp_path / "a case.stainmap"
    write_case(case, path)
    again = read_case(path)
    assert_same(case, again)
    assert plan_hash(again) == plan_hash(case)


def test_locked_coats_stay_locked(tmp_path: Path) -> None:
    case, path = full_case(), tmp_path / "locked.stainmap"
    step = case.plan.steps[0]
    locked = step.with_locked(step.areas[0].area, locked=True)
    write_case(replace(case, plan=case.plan.with_step(0, locked)), path)
    assert read_case(path).plan.steps[0].areas == locked.areas


OLD_CASE = Path(__file__).parents[1] / "data" / "case_schema_1.stainmap"


def test_a_case_of_schema_1_opens_as_it_was(tmp_path: Path) -> None:
    """A file that the first version of the program wrote; its hash stands on printed sheets."""
    case = read_case(OLD_CASE)
    assert plan_hash(case) == "860c776053f45cd36403761b7970da8ad020e2d368689f624ec776e539ebc31d"
    assert case.process == StainProcess()
    assert case.after_sintering == AfterSintering()
    assert case.screw_channels == ()
    assert case.sliders == ZoneSliders()
    assert case.materials.programmes[0].coupon is None
    assert case.plan.steps[1].brushed is not None
    write_case(case, tmp_path / "new.stainmap")
    assert_same(case, read_case(tmp_path / "new.stainmap"))


CASE_OF_SCHEMA_2 = OLD_CASE.with_name("case_schema_2.stainmap")


def test_a_case_of_schema_2_opens_as_it_was(tmp_path: Path) -> None:
    """A file that schema 2 wrote, with everything it could hold; its hash stands on sheets."""
    case = read_case(CASE_OF_SCHEMA_2)
    assert plan_hash(case) == "e4a741c7cf910abbef98c08685e4608880666e3c98eb115878f0a7dbf3a8fe4b"
    assert case.intake is None
    assert case.target is not None
    assert case.target.held == ()
    assert case.target.body_doubt is None
    assert case.process.painter == "bench 2"
    assert case.sliders == ZoneSliders(neck_climb=0.35, cusp_descent=0.5, fissure_width=0.2)
    write_case(case, tmp_path / "new.stainmap")
    assert_same(case, read_case(tmp_path / "new.stainmap"))


CASE_OF_SCHEMA_3 = OLD_CASE.with_name("case_schema_3.stainmap")


def test_a_case_of_schema_3_opens_as_it_was(tmp_path: Path) -> None:
    """A file that schema 3 wrote, with everything it could hold; nothing was done of it yet."""
    case = read_case(CASE_OF_SCHEMA_3)
    assert plan_hash(case) == "672606134b6a26f96208c54bade32f5e77fed1d82c7ee9c1fe91d7b7e6afc862"
    assert case.bench == BenchRecord()
    assert case.intake is not None
    assert case.intake.neighbours[0].tooth.number == 35
    assert case.plan.steps[0].areas[0].locked
    write_case(case, tmp_path / "new.stainmap")
    assert_same(case, read_case(tmp_path / "new.stainmap"))


def test_what_was_done_at_the_bench_changes_no_sheet() -> None:
    case = full_case()
    assert plan_hash(replace(case, bench=BenchRecord())) == plan_hash(case)


def test_what_came_later_counts_in_the_hash_once_it_is_there() -> None:
    case = read_case(OLD_CASE)
    changed = [
        replace(case, process=replace(case.process, painter="bench 2")),
        replace(case, after_sintering=AfterSintering(finish=Finish.GLAZED)),
        replace(case, screw_channels=full_case().screw_channels),
        replace(case, materials=with_coupon(case.materials)),
        replace(case, intake=Intake(stump_known=True)),
        replace(case, target=replace(case.target, body_doubt=(1.0, 0.5, 1.0))),
    ]
    assert len({plan_hash(one) for one in (case, *changed)}) == 7


def test_the_same_case_gives_the_same_bytes(tmp_path: Path) -> None:
    one, other = tmp_path / "1.stainmap", tmp_path / "2.stainmap"
    write_case(full_case(), one)
    write_case(full_case(), other)
    assert one.read_bytes() == other.read_bytes()


def test_the_description_is_readable_and_the_mesh_untouched(tmp_path: Path) -> None:
    case, path = full_case(), tmp_path / "c.stainmap"
    write_case(case, path)
    with zipfile.ZipFile(path) as archive:
        description = json.loads(archive.read("case.json"))
        assert archive.read("mesh/original") == case.source.content
    assert description["schema"] == 4
    assert description["plan"]["steps"][1]["areas"][0] == {
        "area": 1,
        "low": 3,
        "high": 3,
        "fade_mm": None,
        "locked": False,
    }


def rewritten(path: Path, **changes: object) -> Path:
    """Return a copy of a case file with some entries of its description replaced."""
    target = path.with_name("changed.stainmap")
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(target, "w") as new:
        for name in old.namelist():
            content = old.read(name)
            if name == "case.json":
                content = json.dumps(json.loads(content) | changes).encode()
            new.writestr(name, content)
    return target


SHADE = {
    "source": "measured",
    "colour": {
        "lab": [70, 1, 18],
        "geometry": "45/0",
        "illuminant": "D65",
        "observer_degrees": 2,
        "backing": "in place",
    },
    "doubt": [1, 1, 1],
}


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"schema": 99}, "newer version"),
        ({"schema": 0}, "does not exist"),
        ({"format": "something else"}, "not a case"),
        ({"units": [{"tooth": 99, "role": "crown"}]}, "99"),
        ({"units": [{"tooth": 36, "role": "king"}]}, "king"),
        ({"programme": 3}, "programme"),
        ({"base_vertex_count": 10**9}, "does not fit"),
        ({"accents": [10]}, "accent_10"),
        ({"plan": None}, "plan"),
        ({"process": {"hand_factor": 2.0}}, "hand factor of 2.0"),
        ({"process": {"wicking_mm": -1.0}}, "wicking"),
        ({"intake": {"neighbours": [{"tooth": 99, "shade": SHADE}]}}, "99"),
        ({"intake": {"shades": [{"third": "upper", "shade": SHADE}]}}, "upper"),
        ({"intake": {"shades": [{"third": "middle", "shade": SHADE | {"source": "guess"}}]}}, "gu"),
        ({"intake": {"shades": 2 * [{"third": "middle", "shade": SHADE}]}}, "two shades"),
        ({"intake": {"wish": "x" * 2001}}, "2001"),
        ({"bench": [{"stage": "fired", "at": "2026-05-04T09:30:00Z", "plan_hash": ""}]}, "fired"),
        ({"bench": [{"stage": "mixed", "at": "2026-05-04T09:30:00", "plan_hash": ""}]}, "zone"),
        (
            {"bench": 2 * [{"stage": "mixed", "at": "2026-05-04T09:30:00Z", "plan_hash": ""}]},
            "order",
        ),
        ({"after_sintering": {"finish": "varnished"}}, "varnished"),
        ({"after_sintering": {"ground": [{"depth_mm": 9.0}]}}, "9.0"),
        ({"after_sintering": {"ground": [{"depth_mm": 0.1, "area": 99}]}}, "99"),
        (
            {
                "screw_channels": [
                    {"unit": 5, "point_mm": [0, 0, 5], "axis": [0, 0, 1], "radius_mm": 1.0}
                ]
            },
            "unit that is not there",
        ),
    ],
)
def test_a_description_that_does_not_fit_is_refused_with_its_reason(
    tmp_path: Path, changes: dict[str, object], says: str
) -> None:
    path = tmp_path / "c.stainmap"
    write_case(full_case(), path)
    with pytest.raises(StainmapError) as caught:
        read_case(rewritten(path, **changes))
    assert says in str(caught.value)


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.floats(0.0, 0.999))
def test_a_file_cut_short_anywhere_is_refused(tmp_path: Path, share: float) -> None:
    whole = io.BytesIO()
    path = tmp_path / "c.stainmap"
    write_case(full_case(), path)
    content = path.read_bytes()
    whole.write(content[: int(share * len(content))])
    cut = tmp_path / "cut.stainmap"
    cut.write_bytes(whole.getvalue())
    with pytest.raises(CaseFileError) as caught:
        read_case(cut)
    assert caught.value.advice
    assert not is_case_file(cut)


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.data())
def test_garbled_bytes_are_read_or_refused_but_never_a_traceback(
    tmp_path: Path, data: st.DataObject
) -> None:
    path = tmp_path / "c.stainmap"
    if not path.exists():
        write_case(full_case(), path)
    content = bytearray(path.read_bytes())
    for _ in range(data.draw(st.integers(1, 6))):
        content[data.draw(st.integers(0, len(content) - 1))] = data.draw(st.integers(0, 255))
    garbled = tmp_path / "garbled.stainmap"
    garbled.write_bytes(content)
    with contextlib.suppress(StainmapError):
        assert read_case(garbled).units


def test_arrays_are_never_unpickled(tmp_path: Path) -> None:
    path = tmp_path / "c.stainmap"
    write_case(full_case(), path)
    target = tmp_path / "pickled.stainmap"
    poison = io.BytesIO()
    np.save(poison, np.array([print], dtype=object), allow_pickle=True)
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(target, "w") as new:
        for name in old.namelist():
            new.writestr(name, poison.getvalue() if name == "arrays/zones.npy" else old.read(name))
    with pytest.raises(CaseFileError):
        read_case(target)


@pytest.mark.parametrize("kind", ["missing", "folder", "text", "empty", "other zip"])
def test_what_is_no_case_file_is_refused_with_a_sentence(tmp_path: Path, kind: str) -> None:
    path = tmp_path / "x.stainmap"
    if kind == "folder":
        path.mkdir()
    elif kind == "text":
        path.write_text("not a case")
    elif kind == "empty":
        path.touch()
    elif kind == "other zip":
        with zipfile.ZipFile(path, "w") as archive:
            archive.writestr("readme.txt", "hello")
    with pytest.raises(CaseFileError) as caught:
        read_case(path)
    assert "x.stainmap" in str(caught.value)
    assert caught.value.advice


def test_a_failed_write_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "c.stainmap"
    write_case(full_case(), path)
    before = path.read_bytes()

    def full_disk(handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full_disk)
    with pytest.raises(StainmapError, match="disk is full"):
        write_case(replace(full_case(), notes="new"), path)
    assert path.read_bytes() == before
    assert [entry.name for entry in tmp_path.iterdir()] == ["c.stainmap"]


def test_a_folder_that_is_not_there_is_said(tmp_path: Path) -> None:
    with pytest.raises(StainmapError, match="folder does not exist"):
        write_case(full_case(), tmp_path / "nowhere" / "c.stainmap")


def take_in_another_process(path: str) -> bool:
    lock = CaseLock.take(Path(path))
    if lock is None:
        return False
    lock.release()
    return True


def test_two_programs_do_not_hold_one_case(tmp_path: Path) -> None:
    path = tmp_path / "c.stainmap"
    write_case(full_case(), path)
    lock = CaseLock.take(path)
    assert lock is not None
    assert str(os.getpid()) in holder_of(path)
    context = multiprocessing.get_context("spawn")
    with context.Pool(1) as pool:
        assert pool.apply(take_in_another_process, (str(path),)) is False
        lock.release()
        assert pool.apply(take_in_another_process, (str(path),)) is True
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["c.stainmap"]


def test_the_look_of_a_case_comes_back_with_it_and_with_no_other(tmp_path: Path) -> None:
    case, path = full_case(), tmp_path / "c.stainmap"
    seen = np.random.default_rng(2).integers(0, 256, (len(case.zones), 3), dtype=np.uint8)
    write_case(case, path, look=seen)
    opened = read_case(path)
    assert_same(case, opened)
    np.testing.assert_array_equal(read_look(path, opened), seen)
    assert read_look(path, with_coats(opened, 1, Zone.BODY, 5)) is None
    write_case(case, path)
    assert read_look(path, opened) is None
    assert read_look(tmp_path / "missing.stainmap", opened) is None


@pytest.mark.parametrize("value", [np.nan, -0.5, 2.0, np.inf])
def test_shares_that_are_none_are_refused(tmp_path: Path, value: float) -> None:
    path, target = tmp_path / "c.stainmap", tmp_path / "bad.stainmap"
    case = full_case()
    write_case(case, path)
    share = case.accents[0].share.copy()
    share[0] = value
    bad = io.BytesIO()
    np.save(bad, share)
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(target, "w") as new:
        for name in old.namelist():
            content = bad.getvalue() if name == "arrays/accent_7.npy" else old.read(name)
            new.writestr(name, content)
    with pytest.raises(CaseFileError, match="accent_7"):
        read_case(target)


def test_vertices_that_no_facet_uses_keep_their_place(tmp_path: Path) -> None:
    case = full_case()
    file_vertex = case.surface.file_vertex.copy()
    file_vertex[3] = -1
    case = replace(case, surface=replace(case.surface, file_vertex=file_vertex))
    write_case(case, tmp_path / "c.stainmap")
    assert_same(case, read_case(tmp_path / "c.stainmap"))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="pipes with a name exist on POSIX only")
def test_what_is_no_ordinary_file_is_not_waited_for(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.stainmap"
    os.mkfifo(pipe)
    with pytest.raises(CaseFileError, match="ordinary"):
        read_case(pipe)
    assert not is_case_file(pipe)
