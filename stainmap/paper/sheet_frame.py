"""Head and foot of every sheet: what it is about, what it is worth, what to be careful of."""

from __future__ import annotations

from stainmap.paper.page import (
    BOLD,
    HAIR,
    INK,
    LIGHT_FACE,
    MEDIUM,
    SMALLEST_PT,
    SOFT,
    Page,
    Rect,
)
from stainmap.paper.sheet_data import CAUTIONS, NO_REFERENCE, Heading, SheetData

_RULE_MM = 34.0
_DRAFT_MM = 36.9  # baseline of why a plan is a draft
CONTENT_TOP_MM = 39.0
"""Upper edge of what stands below the head."""
_QR_MM = 17.5
_FOOT_MM = 15.0  # from the lower edge of the paper to the line above the foot
_MADE = "made with stainmap"
# Lines to write a lot on, the longest that all jars of a plan have room for.
_BLANKS = ("_____", "____", "___", "__")
_CAUTION_PT, _CAUTION_LEADING_MM = 7.5, 3.45


def draw_head(
    page: Page, heading: Heading, title: str, subtitle: str, number: int, count: int
) -> None:
    """Draw the head of a page: title, case, revision, plan hash and its QR code, date."""
    page.fitted(page.left, 23.0, title, 22.0, 54.0 if heading.draft else 76.0, face=LIGHT_FACE)
    if heading.draft:
        _draw_draft(page, heading.draft)
    page.fitted(page.left, 30.0, subtitle, 10.5, 76.0, face=MEDIUM)
    rows = (
        (("case", heading.code), ("date", heading.day.isoformat())),
        (("revision", heading.revision), ("by", heading.technician)),
        (("plan", heading.hash_text), ("page", f"{number} of {count}")),
        (("replaces", heading.replaces_text), ("", "")),
    )
    first, second = page.right - 96.0, page.right - 51.0
    for index, (one, other) in enumerate(rows):
        y = 17.4 + 4.35 * index
        _fact(page, first, y, *one, 14.5, 29.0)
        _fact(page, second, y, *other, 9.5, 22.0)
    page.qr_code(heading.hash_text, page.right - _QR_MM, 14.0, _QR_MM)
    page.line(page.left, _RULE_MM, page.right, _RULE_MM, weight=0.8)


def _draw_draft(page: Page, reason: str) -> None:
    """Mark a draft where nobody who reads the title can miss it, and say why below the head."""
    mark = Rect(page.left + 56.0, 16.4, 19.0, 7.6)
    page.box(mark, weight=1.2, radius=1.0)
    page.text(mark.middle[0], 21.6, "DRAFT", 12.0, face=BOLD, align="centre")
    page.fitted(page.left, _DRAFT_MM, reason, 7.8, page.inside, face=MEDIUM)


def _fact(
    page: Page, x: float, y: float, name: str, value: str, indent: float, width: float
) -> None:
    if not name:
        return
    page.text(x, y, name, 8.0, grey=SOFT)
    if value:
        page.fitted(x + indent, y, value, 8.5, width, face=MEDIUM)
    else:
        page.line(x + indent, y + 0.6, x + indent + width, y + 0.6, weight=0.3, grey=HAIR)


def foot_top(page: Page) -> float:
    """Return the y above which a page's content must end."""
    lines = len(_caution_lines(page))
    return page.height - _FOOT_MM - 4.6 - lines * _CAUTION_LEADING_MM


def draw_foot(page: Page, heading: Heading, line: str) -> None:
    """Draw the foot: cautions above a line; lots and programme, and what the sheet is worth."""
    lines = _caution_lines(page)
    bottom = page.height - _FOOT_MM
    y = bottom - 2.6 - (len(lines) - 1) * _CAUTION_LEADING_MM
    page.line(page.left + 0.4, y - 2.4, page.left + 0.4, bottom - 1.8, weight=2.2, grey=SOFT)
    for index, text in enumerate(lines):
        place = y + index * _CAUTION_LEADING_MM
        if index == 0:
            width = page.text(page.left + 3.0, place, "Cautions", _CAUTION_PT, face=MEDIUM)
            page.text(page.left + 3.0 + width + 1.4, place, text, _CAUTION_PT)
        else:
            page.text(page.left + 3.0, place, text, _CAUTION_PT)
    page.line(page.left, bottom, page.right, bottom, weight=0.4)
    page.fitted(page.left, bottom + 4.2, line, 7.5, _foot_room(page), grey=SOFT)
    page.text(page.right, bottom + 4.2, _MADE, 7.5, grey=SOFT, align="right")
    worth = f"{heading.warnings} {NO_REFERENCE}".strip()
    page.fitted(page.left, bottom + 7.9, worth, 7.5, page.inside, face=MEDIUM, grey=INK)


def _foot_room(page: Page) -> float:
    return page.inside - page.text_width(_MADE, 7.5) - 4.0


def _caution_lines(page: Page) -> list[str]:
    """Return the cautions broken into lines; the first leaves room for its title."""
    indent = page.text_width("Cautions", _CAUTION_PT, MEDIUM) + 1.4
    whole = page.inside - 3.0
    first = page.wrapped(CAUTIONS, _CAUTION_PT, whole - indent)[0]
    return [first, *page.wrapped(CAUTIONS[len(first) :], _CAUTION_PT, whole)]


def lots_text(sheet: SheetData) -> str:
    """Return block, lot and programme, with a line where the lot is not known."""
    programme = sheet.case.materials.programme(sheet.case.programme)
    peak = sheet.degrees.text(programme.peak_c)
    return f"{block_lot_text(sheet)}   Programme {programme.name}, {peak}"


def block_lot_text(sheet: SheetData) -> str:
    """Return the block and its lot, with a line where that is not known."""
    return f"Block {sheet.block.name}, lot {sheet.block.lot or '________'}"


def liquid_lots_text(sheet: SheetData, blank: str = _BLANKS[0]) -> str:
    """Return the lots of the liquids by jar, with lines where they are not known."""
    lots = "  ".join(f"{jar.number} {jar.lot or blank}" for jar in sheet.case.plan.jars)
    return f"Liquid lots  {lots}"


def foot_with_lots(page: Page, sheet: SheetData) -> str:
    """Return block, programme and the lots of all jars, with the longest lines that fit."""
    texts = [f"{lots_text(sheet)}   {liquid_lots_text(sheet, blank)}" for blank in _BLANKS]
    room = _foot_room(page)
    fitting = (one for one in texts if page.text_width(one, SMALLEST_PT) <= room)
    return next(fitting, texts[-1])
