"""The smaller parts of the window, each alone."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta, timezone

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from stainmap.app.brush import Tool
from stainmap.errors import PlanError
from stainmap.model.colour import Colour
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.out_of_reach import OutOfReach
from stainmap.planning.outcome import AreaOutcome
from stainmap.planning.schedule import RunPart, RunStage
from stainmap.planning.size_check import Size
from stainmap.planning.unit_values import UnitValue
from stainmap.ui import theme, zone_look
from stainmap.ui.brush_bar import BrushBar, BrushSettings
from stainmap.ui.crown_picture import Look
from stainmap.ui.look_bar import LookBar
from stainmap.ui.marks import signed
from stainmap.ui.open_card import OpenCard, numbers_in_name, tooth_numbers
from stainmap.ui.outcome_panel import OutcomePanel, OutcomeRow, screen_colour
from stainmap.ui.plate import MessageCard, ProgressCard
from stainmap.ui.run_strip import RunDetail, RunStrip, duration
from stainmap.ui.section import PADDING
from stainmap.ui.side_panels import PLAN_PX, PlanPanel
from stainmap.ui.status_line import StatusLine
from stainmap.ui.unit_panel import MaterialNames, UnitFacts, UnitPanel
from stainmap.ui.unit_values_panel import UnitValuesPanel
from stainmap.ui.value_ladder import ValueLadder, pushed_apart
from stainmap.units import LengthUnit, SizeState


def colour(lightness: float, a: float, b: float) -> Colour:
    return Colour(lightness=lightness, a=a, b=b)


def outcome(area: Zone | Accent, predicted: Colour, **more: object) -> AreaOutcome:
    return AreaOutcome(
        area=area,
        label=area.label,
        area_mm2=20.0,
        coats=(),
        predicted=predicted,
        plus_minus=(2.5, 1.3, 2.5),
        wall_mm=1.0,
        **more,
    )


# --- greys, type, colours ----------------------------------------------------------------


def luminance(name: str) -> float:
    """Relative luminance as WCAG 2.2 defines it (its own threshold of 0.04045)."""
    values = [int(name[k : k + 2], 16) / 255.0 for k in (1, 3, 5)]
    linear = [v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in values]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("tones", [theme.LIGHT, theme.DARK], ids=["light", "dark"])
def test_text_has_the_contrast_that_wcag_asks_for(tones: theme.Tones) -> None:
    for ground in (tones.panel, tones.raised, tones.bar, tones.field):
        for ink in (tones.ink, tones.soft, tones.caution):
            assert contrast(ink, ground) >= 4.5, (ink, ground)
        # No link stands on the bar; there the accent is only a focus ring (3:1 for non-text).
        least = 3.0 if ground == tones.bar else 4.5
        assert contrast(tones.accent, ground) >= least, ground
    assert contrast(tones.on_accent, tones.accent) >= 4.5
    assert contrast(tones.ink, tones.accent_fill) >= 4.5
    assert contrast(theme.SURROUND_TEXT, theme.SURROUND) >= 4.5


@pytest.mark.parametrize("tones", [theme.LIGHT, theme.DARK], ids=["light", "dark"])
def test_all_greys_are_neutral(tones: theme.Tones) -> None:
    for role in ("panel", "raised", "bar", "field", "line", "hair", "ink", "soft", "faint"):
        grey = QColor(getattr(tones, role))
        assert grey.red() == grey.green() == grey.blue(), role


def test_figures_are_as_wide_as_each_other(qapp: object) -> None:
    from PySide6.QtGui import QFontInfo, QFontMetricsF

    face = theme.font(13, 400)
    assert QFontInfo(face).family() == theme.FAMILY
    widths = {QFontMetricsF(face).horizontalAdvance(digit) for digit in "0123456789"}
    assert len(widths) == 1


def test_coat_tones_fall_steadily() -> None:
    tones = zone_look.coat_tones()
    grey = zone_look.shader_coat_tones() @ (0.2126, 0.7152, 0.0722)
    assert len(tones) == 13
    assert (np.diff(grey) < 0).all()
    assert tones[0] == pytest.approx(np.full(3, tones[0, 0]), abs=2e-3)


def test_signs_are_true_minuses_and_nothing_has_none() -> None:
    assert signed(2.04) == "+2.0"
    assert signed(-0.04) == "0.0"
    assert signed(-3.15) == "\N{MINUS SIGN}3.2" or signed(-3.15) == "\N{MINUS SIGN}3.1"
    assert signed(4.0, 0) == "+4"


# --- outcome and ladder ------------------------------------------------------------------


def test_an_area_is_read_out_with_all_its_figures(qtbot: QtBot) -> None:
    row = OutcomeRow()
    qtbot.addWidget(row)
    row.set_outcome(
        outcome(
            Zone.CUSP,
            colour(71.7, 0.3, 13.8),
            predicted_low=colour(72.5, 0.2, 14.4),
            wanted=colour(71.6, 1.1, 16.5),
            offset_from_body=(-2.4, -4.1),
            wanted_offset=(-3.0, -2.0),
            delta_e_00=1.14,
        )
    )
    minus = "\N{MINUS SIGN}"
    assert row.accessibleName() == (
        "cusp: predicted L* 71.7, C* 13.8, h 89; fewest coats L* 72.5, C* 14.4, h 89; "
        f"from body L* {minus}2.4, C* {minus}4.1; wanted L* {minus}3.0, C* {minus}2.0; dE00 1.1"
    )


def test_asking_for_an_area_by_click_and_by_key(qtbot: QtBot) -> None:
    panel = OutcomePanel()
    qtbot.addWidget(panel)
    panel.set_outcomes(
        [outcome(Zone.BODY, colour(74, 1, 18)), outcome(Zone.CUSP, colour(72, 0, 14))]
    )
    panel.resize(344, 300)
    panel.show()
    rows = panel.findChildren(OutcomeRow)
    with qtbot.waitSignal(panel.area_asked_for) as asked:
        QTest.mouseClick(rows[1], Qt.MouseButton.LeftButton)
    assert asked.args == [Zone.CUSP]
    with qtbot.waitSignal(panel.area_asked_for) as asked:
        QTest.keyClick(rows[0], Qt.Key.Key_Return)
    assert asked.args == [Zone.BODY]
    panel.set_outcomes([outcome(Zone.BODY, colour(74, 1, 18))])
    assert [row.isVisible() for row in panel.findChildren(OutcomeRow)] == [True, False]


def test_a_difference_has_words_once_there_is_a_calibration(qtbot: QtBot) -> None:
    """Thresholds 0.8 and 1.8 [Paravina2015]; a gap within the plus-minus has none."""
    row = OutcomeRow()
    qtbot.addWidget(row)
    sure = (0.3, 0.3, 0.3)

    def said(wanted: Colour, distance: float, sd: tuple[float, float, float] = sure) -> str:
        one = outcome(Zone.BODY, colour(74, 1, 18), wanted=wanted, delta_e_00=distance)
        row.set_outcome(replace(one, plus_minus=sd), calibrated=True)
        return row.accessibleName()

    assert "not seen by most" in said(colour(73.1, 1, 18), 0.7)
    assert "seen, usually accepted" in said(colour(72.2, 1, 18), 1.4)
    assert "usually rejected" in said(colour(70.0, 1, 18), 3.0)
    assert "inside the uncertainty" in said(colour(72.2, 1, 18), 1.4, (2.5, 1.3, 2.5))
    row.set_outcome(outcome(Zone.BODY, colour(74, 1, 18), wanted=colour(70, 1, 18), delta_e_00=3.0))
    assert "usually" not in row.accessibleName()


def test_what_no_coats_reach_is_said_at_the_area_and_below(qtbot: QtBot) -> None:
    panel = OutcomePanel()
    qtbot.addWidget(panel)
    body = outcome(Zone.BODY, colour(74, 1, 18), wanted=colour(79, 1, 18), delta_e_00=3.5)
    panel.set_outcomes([body, outcome(Zone.CUSP, colour(72, 0, 14))])
    assert panel.reach.isHidden()
    beyond = OutOfReach(area=Zone.BODY, label="body", axis="L*", wanted=79.0, bare=75.3)
    panel.set_out_of_reach([beyond])
    assert panel.reach.text() == ("Not reachable in body: stain only lowers value and adds chroma.")
    rows = panel.findChildren(OutcomeRow)
    assert "not reachable: bare block L* 75.3" in rows[0].accessibleName()
    assert "not reachable" not in rows[1].accessibleName()
    panel.set_out_of_reach(())
    assert panel.reach.isHidden()
    assert "not reachable" not in rows[0].accessibleName()


def test_the_ladder_never_falls_below_twenty_px_per_l(qtbot: QtBot) -> None:
    ladder = ValueLadder()
    qtbot.addWidget(ladder)
    areas = [outcome(Zone.BODY, colour(80, 1, 18)), outcome(Zone.FISSURE, colour(61, 1, 18))]
    ladder.set_outcomes(areas, [("35", 58.0)])
    steps = ladder._y(60) - ladder._y(61)
    assert steps >= 20.0
    assert "beside it 35 L* 58.0" in ladder.accessibleDescription()


def test_swatches_show_the_srgb_of_the_colour() -> None:
    # L* 50 neutral is 0x77 in sRGB; that is also the surround.
    assert screen_colour(colour(50.0, 0.0, 0.0)) == theme.SURROUND


def test_labels_are_pushed_apart_as_little_as_can_be() -> None:
    assert pushed_apart([10, 50, 90], 16, 0, 100) == [10, 50, 90]
    # Two that touch share the push; a run of three is centred on its mean.
    assert pushed_apart([40, 44], 16, 0, 100) == pytest.approx([34, 50])
    assert pushed_apart([40, 40, 40], 10, 0, 100) == pytest.approx([30, 40, 50])
    squeezed = pushed_apart([1, 2, 99, 99.5], 16, 0, 100)
    assert min(np.diff(squeezed)) >= 16 - 1e-9
    assert squeezed[0] >= 0
    assert squeezed[-1] <= 100


def test_the_ladder_says_its_values_and_has_room_for_its_names(qtbot: QtBot) -> None:
    ladder = ValueLadder()
    qtbot.addWidget(ladder)
    areas = [outcome(area, colour(74.0 - k * 0.1, 1, 18)) for k, area in enumerate(Zone)]
    areas.append(outcome(Accent.MARGIN_BAND, colour(68.7, 1, 16)))
    ladder.set_outcomes(areas)
    assert ladder.height() >= 7 * 16
    assert "margin band L* 68.7" in ladder.accessibleDescription()
    assert not ladder.grab().isNull()


# --- run ---------------------------------------------------------------------------------


def run_parts() -> list[RunPart]:
    start = datetime(2026, 11, 25, 18, 30, tzinfo=timezone(timedelta(hours=1)))
    parts = []
    for stage, minutes in zip(RunStage, (12, 26, 10, 415, 85), strict=True):
        end = start + timedelta(minutes=minutes)
        parts.append(RunPart(stage=stage, minutes=minutes, start=start, end=end))
        start = end
    return parts


def test_the_run_says_when_it_is_ready(qtbot: QtBot) -> None:
    strip = RunStrip()
    qtbot.addWidget(strip)
    strip.set_run(run_parts(), RunDetail(dry_c=93.0, curve=((0, 20), (415, 1500), (500, 200))))
    said = strip.accessibleDescription()
    assert "sinter 6 h 55 from 19:18" in said
    assert said.endswith("ready tomorrow 03:38")
    for width in (1600, 1024):
        strip.resize(width, strip.height())
        assert not strip.grab().isNull()
    strip.set_run((), RunDetail())
    assert strip.accessibleDescription() == "Open a crown to see how long it takes."


@pytest.mark.parametrize(
    ("minutes", "text"), [(26.4, "26 min"), (99, "99 min"), (415, "6 h 55"), (120, "2 h 00")]
)
def test_durations(minutes: float, text: str) -> None:
    assert duration(minutes) == text


# --- brush, looks, unit ------------------------------------------------------------------


def test_the_brush_tells_what_is_set(qtbot: QtBot) -> None:
    bar = BrushBar()
    qtbot.addWidget(bar)
    assert bar.settings == BrushSettings()
    with qtbot.waitSignal(bar.settings_changed) as changed:
        QTest.keyClick(bar.radius.slider, Qt.Key.Key_Right)
    assert changed.args[0].radius_mm == pytest.approx(0.65)
    with qtbot.waitSignal(bar.settings_changed) as changed:
        QTest.mouseClick(bar.tools[Tool.ERASER], Qt.MouseButton.LeftButton)
    assert changed.args[0].tool is Tool.ERASER
    bar.resize_brush(-2)
    assert bar.settings.radius_mm == pytest.approx(0.55)
    bar.set_purpose("paints cusp", coats=False)
    assert not bar.strength.isEnabled()
    assert bar.head.remark.text() == "paints cusp"


def test_a_soft_edge_wider_than_the_brush_is_all_soft() -> None:
    assert BrushSettings(radius_mm=0.3, soft_edge_mm=0.5).softness == 1.0
    assert BrushSettings(radius_mm=0.6, soft_edge_mm=0.3).softness == pytest.approx(0.5)


def test_looks_are_chosen_by_click(qtbot: QtBot) -> None:
    bar = LookBar()
    qtbot.addWidget(bar)
    with qtbot.waitSignal(bar.look_chosen) as chosen:
        QTest.mouseClick(bar.buttons[Look.ZONES], Qt.MouseButton.LeftButton)
    assert chosen.args == [Look.ZONES]
    with qtbot.waitSignal(bar.shading_switched) as switched:
        QTest.mouseClick(bar.shading, Qt.MouseButton.LeftButton)
    assert switched.args == [False]


def facts(**more: object) -> UnitFacts:
    values = {
        "teeth": (36,),
        "description": "crown, 7.6 mm high",
        "enlargement": "x 1.245",
        "size": "sintered",
        "block": "medium 3Y",
        "stump": "dentine",
        "cement": "clear",
        "programme": "slow",
    }
    return UnitFacts(**(values | more))


def test_a_bridge_that_is_a_draft_leaves_the_panel_its_width(qtbot: QtBot) -> None:
    plan = PlanPanel()
    qtbot.addWidget(plan)
    long = "bridge of the upper jaw, 110.2 mm high, sintered size"
    plan.unit.set_facts(facts(teeth=tuple(range(14, 17)), description=long))
    plan.unit.set_notes(["one", "two"])
    plan.unit.set_draft("No stump is named.")
    plan.resize(PLAN_PX - 9, 900)  # a scroll bar beside it
    plan.show()
    qtbot.waitExposed(plan)
    unit = plan.unit
    assert unit.minimumSizeHint().width() <= PLAN_PX - 9
    for link in (unit.notes, unit.intake):
        at = link.mapTo(plan, link.rect().topRight())
        assert at.x() <= PLAN_PX - 9 - PADDING
        assert link.width() >= link.sizeHint().width()
    # Words that gave way can be read by pointing at them.
    assert any(label.toolTip() == long for label in unit.findChildren(QLabel))


def test_the_unit_offers_materials_and_passes_on_what_is_chosen(qtbot: QtBot) -> None:
    panel = UnitPanel()
    qtbot.addWidget(panel)
    panel.set_materials(
        MaterialNames(
            blocks=("light 3Y", "medium 3Y"),
            stumps=("dentine", "metal"),
            cements=("clear",),
            programmes=("slow", "fast"),
        )
    )
    panel.set_facts(facts())
    assert panel.block.currentText() == "medium 3Y"
    panel.show()
    with qtbot.waitSignal(panel.block_chosen) as chosen:
        QTest.keyClick(panel.block, Qt.Key.Key_Up)
    assert chosen.args == ["light 3Y"]
    panel.set_facts(facts(stump="a stump that is no longer in the catalogue"))
    assert panel.stump.currentText() == "a stump that is no longer in the catalogue"
    panel.set_facts(facts(teeth=(14, 15, 16)))
    assert not panel.tooth.isEnabled()
    panel.set_facts(None)
    assert not panel.block.isEnabled()


# --- opening, cards, status --------------------------------------------------------------


def test_tooth_numbers_are_read_in_any_usual_way() -> None:
    assert tooth_numbers("46") == (46,)
    assert tooth_numbers("14, 15;16") == (14, 15, 16)
    assert tooth_numbers("  ") == ()
    for wrong in ("49", "4", "x", "14 14", "4.6"):
        with pytest.raises(PlanError):
            tooth_numbers(wrong)


@pytest.mark.parametrize(
    ("stem", "numbers"),
    [
        ("hollow_46", (46,)),
        ("bridge_14_15_16", (14, 15, 16)),
        ("46-45-44", (46, 45, 44)),
        ("crown36", (36,)),
        ("46_46", (46,)),
        ("2024-11-12_case_21", (21,)),
        ("20241112_case", ()),
        ("order_146", ()),
        ("crown_49", ()),
        ("crown v1.12", ()),
    ],
)
def test_tooth_numbers_in_a_file_name(stem: str, numbers: tuple[int, ...]) -> None:
    assert numbers_in_name(stem) == numbers


def asked(
    qtbot: QtBot, state: SizeState, name: str = "crown.stl", last_block: str = ""
) -> OpenCard:
    sizes = [Size(unit=LengthUnit.MILLIMETRE, state=state)]
    card = OpenCard()
    qtbot.addWidget(card)
    blocks = ["light 3Y", "medium 3Y", "dark 3Y"]
    card.ask(name, (10.0, 7.5, 11.0), sizes, blocks, last_block=last_block)
    card.show()
    return card


def test_numbers_from_the_name_are_replaced_by_typing(qtbot: QtBot) -> None:
    card = asked(qtbot, SizeState.MILLED, "bridge_14_15_16.stl", "dark 3Y")
    card.take_focus()
    assert card.teeth.text() == "14 15 16"
    assert card.read.isEnabled()
    assert card.answers is not None
    assert card.answers.block == "dark 3Y"
    QTest.keyClicks(card.teeth, "46")
    assert card.teeth.text() == "46"
    with qtbot.waitSignal(card.accepted):
        QTest.keyClick(card.teeth, Qt.Key.Key_Return)


def test_the_names_of_many_teeth_have_room(qtbot: QtBot) -> None:
    card = asked(qtbot, SizeState.MILLED)
    heights = []
    for text in ("46", "14 15 16", "17 16 15 14 13 12 11 21 22 23"):
        card.teeth.setText(text)
        qtbot.wait(10)
        line = card._teeth_line
        assert line.text().count("\n") == len(text.split()) - 1
        assert line.height() >= line.heightForWidth(line.width())
        assert card.rect().contains(card.read.geometry())
        assert line.geometry().bottom() < card.unit.geometry().top()
        heights.append(card.height())
    assert heights == sorted(set(heights))


def test_the_dialog_waits_for_what_it_needs(qtbot: QtBot) -> None:
    dialog = asked(qtbot, SizeState.UNKNOWN)
    assert not dialog.read.isEnabled()
    QTest.keyClicks(dialog.teeth, "46")
    assert not dialog.read.isEnabled()
    assert dialog.answers is None
    dialog.sintered.setChecked(True)
    assert dialog.read.isEnabled()
    assert dialog.answers is not None
    assert dialog.answers.numbers == (46,)
    assert dialog.answers.size_state is SizeState.SINTERED
    assert dialog.answers.block == "medium 3Y"
    QTest.keyClicks(dialog.teeth, "9")
    assert not dialog.read.isEnabled()


def test_a_size_that_the_shape_tells_is_filled_in(qtbot: QtBot) -> None:
    dialog = asked(qtbot, SizeState.MILLED)
    assert dialog.milled.isChecked()
    QTest.keyClicks(dialog.teeth, "14 15 16")
    assert dialog.answers is not None
    assert dialog.answers.unit is LengthUnit.MILLIMETRE
    assert dialog.unit.itemText(1).endswith("no crown's size")


def test_progress_says_how_far_and_can_be_stopped(qtbot: QtBot) -> None:
    card = ProgressCard()
    qtbot.addWidget(card)
    card.set_progress("Reading the crown", 0.62, "measuring the wall", 2.2)
    assert card.accessibleDescription() == "Reading the crown: measuring the wall, 62 percent"
    with qtbot.waitSignal(card.cancelled):
        QTest.mouseClick(card.cancel, Qt.MouseButton.LeftButton)


def test_a_message_offers_what_can_be_done(qtbot: QtBot) -> None:
    card = MessageCard()
    qtbot.addWidget(card)
    card.set_message("This file is cut short", "Export it again.", ("open another",), "line 4")
    card.show()
    other, details = card.buttons
    with qtbot.waitSignal(card.chosen) as chosen:
        QTest.mouseClick(other, Qt.MouseButton.LeftButton)
    assert chosen.args == ["open another"]
    before = card.height()
    QTest.mouseClick(details, Qt.MouseButton.LeftButton)
    assert card.height() > before


def test_the_status_falls_back_to_the_caution(qtbot: QtBot) -> None:
    line = StatusLine()
    qtbot.addWidget(line)
    line.set_standing("Sample materials are invented")
    line.say("Saved.")
    assert line.message.text() == "Saved."
    line.set_standing("Still invented")
    assert line.message.text() == "Saved."
    line._timer.timeout.emit()
    assert line.message.text() == "Still invented"


def unit_value(number: int, lightness: float, before: float | None) -> UnitValue:
    return UnitValue(
        unit=Unit(tooth=Tooth(number=number), role=Role.RETAINER),
        lightness=lightness,
        plus_minus=3.4,
        from_before=before,
        wall_mm=1.48,
    )


def test_value_per_unit_has_a_line_for_each_and_names_the_largest_step(qtbot: QtBot) -> None:
    panel = UnitValuesPanel()
    qtbot.addWidget(panel)
    values = (unit_value(16, 74.6, None), unit_value(15, 75.6, 1.0), unit_value(14, 74.4, -1.2))
    panel.set_values(values)
    assert not panel.isHidden()
    assert panel.head.remark.text() == "largest step 1.2 L*, 15 to 14"
    texts = panel.table.texts
    assert texts[:5] == ["16  retainer", "1.5", "74.6", "3.4", ""]
    assert texts[-5:] == ["14  retainer", "1.5", "74.4", "3.4", signed(-1.2)]
    assert "15  retainer: L* 75.6" in panel.accessibleDescription()
    panel.set_values(values[:1])
    assert panel.isHidden()
