"""The pictures of the manual, taken of the running program.

    python -m tests.tools.pictures             # all of them, into resources/manual/pictures
    python -m tests.tools.pictures NAME ...    # some of them
    python -m tests.tools.pictures --to FOLDER # somewhere else, to be looked at

Each start of the program serves several pictures, which are taken in the order of the list.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PIL import Image
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QWidget

from stainmap.model.zone import Zone
from stainmap.paths import resource, sample_case
from tests.tools.golden import as_pil, few_colours
from tests.tools.real_window import Hand, on_own_screen, started

FOLDER = resource("manual") / "pictures"
SIZE = (1320, 840)
# Of a page of words; and from how many on a picture shows the shades of a crown.
COLOURS, MANY_COLOURS = 256, 2500
_ZONES, _IN_THE_ROW = "Alt+3", "Alt+8"
Take = Callable[[Hand, Path], QImage]


@dataclass(frozen=True, kw_only=True)
class Picture:
    """A picture of the manual.

    Parameters
    ----------
    name
        Its file, without the ending.
    on
        Sample case or mesh that the program is started on; empty for the first start.
    take
        Brings the window there, photographs it, and leaves it as it was.
    stable
        Whether it looks the same every time.
    """

    name: str
    take: Take
    on: str = ""
    stable: bool = True


# --- ways to photograph --------------------------------------------------------------------------


def whole(hand: Hand) -> QImage:
    """Return the window at rest."""
    hand.out_of_the_way()
    hand.settle(lit=True)
    return hand.photograph()


def at_rest(hand: Hand, widget: QWidget) -> QImage:
    """Return a widget once it stands still."""
    hand.out_of_the_way()
    before = hand.photograph(widget)
    for _ in range(60):
        hand.rest(400)
        now = hand.photograph(widget)
        if now == before:
            break
        before = now
    return before


def of_dialog(opens: Callable[[Hand], object], leave: str = "Esc") -> Take:
    """Return a way to photograph the dialog that something opens."""

    def take(hand: Hand, _folder: Path) -> QImage:
        seen: list[QImage] = []

        def look(dialog: QWidget) -> None:
            seen.append(at_rest(hand, dialog))
            hand.press(leave, dialog)

        hand.in_dialog(lambda: opens(hand), look)
        return seen[0]

    return take


def of_window(opens: Callable[[Hand], object], ready: Callable[[QWidget], bool]) -> Take:
    """Return a way to photograph a window that stands beside the program's own."""

    def take(hand: Hand, _folder: Path) -> QImage:
        opens(hand)
        hand.wait(lambda: _other(hand) is not None, "the other window")
        window = _other(hand)
        assert window is not None
        window.move(0, 0)
        hand.wait(lambda: ready(window), "what stands in it")
        picture = at_rest(hand, window)
        hand.press("Esc", window)
        hand.wait(lambda: not window.isVisible(), "its end")
        hand.come_back()
        return picture

    return take


def look_of(keys: str) -> Take:
    """Return a way to photograph a look, and to go back to the first one."""

    def take(hand: Hand, _folder: Path) -> QImage:
        hand.press(keys, hand.window.crown)
        if keys == _ZONES:
            hand.wait(lambda: hand.window.crown.overlay.pills, "the numbers of the areas")
        if keys == _IN_THE_ROW:
            hand.wait(lambda: hand.window.crown.overlay.row_labels, "the neighbours", 600.0)
        picture = whole(hand)
        hand.press("Alt+1")
        return picture

    return take


def _other(hand: Hand) -> QWidget | None:
    for one in QApplication.topLevelWidgets():
        if one.isVisible() and one is not hand.window and one.isWindow() and one.windowTitle():
            return one
    return None


# --- single pictures -----------------------------------------------------------------------------


def first_window(hand: Hand, _folder: Path) -> QImage:
    return whole(hand)


def guided(hand: Hand, _folder: Path) -> QImage:
    hand.click(hand.window.strip.guided)
    hand.rest(400)
    picture = whole(hand)
    card = hand.window.guided.card
    hand.click(card.close_button)
    return picture


def coat_table(hand: Hand, _folder: Path) -> QImage:
    table = hand.window.plan.table
    table.setFocus()
    table.select_cell(1, Zone.BODY)
    hand.settle()
    return hand.photograph(hand.window.plan_dock)


def outcome(hand: Hand, _folder: Path) -> QImage:
    hand.settle()
    return hand.photograph(hand.window.outcome_dock)


def flat_views(hand: Hand, _folder: Path) -> QImage:
    hand.press(_ZONES)
    hand.press("Ctrl+F")
    hand.press("W", hand.window.flat_pane)
    views = hand.window.flat_pane.shown_views
    hand.wait(lambda: all(view.picture is not None for view in views), "the flat views")
    picture = whole(hand)
    hand.press("Ctrl+F")
    hand.press("Alt+1")
    return picture


def parts(hand: Hand, _folder: Path) -> QImage:
    hand.press(_ZONES)
    hand.press("Ctrl+2")
    hand.wait(lambda: hand.window.crown.overlay.pills, "the numbers of the areas")
    hand.out_of_the_way()
    hand.settle(lit=True)
    picture = hand.photograph(hand.window.crown)
    hand.press("Ctrl+0")
    hand.press("Alt+1")
    return picture


def suggested(hand: Hand, _folder: Path) -> QImage:
    seen: list[QImage] = []

    def look(dialog: QWidget) -> None:
        job = hand.window.suggest._job
        hand.wait(lambda: job is None or job.is_finished, "the plans", 600.0)
        hand.rest(300)
        job = hand.window.suggest._job
        hand.wait(lambda: job is None or job.is_finished, "the blocks", 600.0)
        seen.append(at_rest(hand, dialog))
        hand.press("Esc", dialog)

    hand.in_dialog(lambda: hand.press("Ctrl+G"), look)
    return seen[0]


def sheets(hand: Hand, _folder: Path) -> QImage:
    hand.press("Ctrl+P")
    hand.wait(lambda: hand.window.printing.preview is not None, "the sheets")
    preview = hand.window.printing.preview
    assert preview is not None
    picture = at_rest(hand, preview)
    hand.press("Esc", preview)
    hand.come_back()
    return picture


def film(hand: Hand, _folder: Path) -> QImage:
    hand.press("Ctrl+M")
    card = hand.window.ways.film.card
    hand.wait(lambda: card.isVisible() and card.track.maximum() > 3, "the film")
    hand.settle()
    card.track.setFocus()
    for _ in range(4):
        hand.press("Right", card.track)
    picture = whole(hand)
    hand.press("Esc", hand.window.crown)
    return picture


def questions(hand: Hand, folder: Path) -> QImage:
    from tests.tools.states import opened_card

    opened_card(hand, sample(folder, "upper_premolar_14.stl"))
    hand.rest(300)
    return whole(hand)


def practice(hand: Hand, _folder: Path) -> QImage:
    seen: list[QImage] = []

    def look(dialog: QWidget) -> None:
        hand.type("AB", dialog.name)  # type: ignore[attr-defined]
        hand.press("Tab", dialog.name)  # type: ignore[attr-defined]
        seen.append(at_rest(hand, dialog))
        hand.press("Esc", dialog)

    hand.in_dialog(lambda: hand.press("Ctrl+Shift+N"), look)
    return seen[0]


def tray(hand: Hand, folder: Path) -> QImage:
    hand.press("Ctrl+T")
    hand.wait(lambda: _other(hand) is not None, "the tray")
    window = _other(hand)
    assert window is not None
    picture = at_rest(hand, window)
    hand.press("Esc", window)
    hand.come_back()
    return picture


def sample(folder: Path, name: str) -> Path:
    """Return a copy of a sample file, so that nothing beside the original is written."""
    path = folder / name
    path.write_bytes(sample_case(name).read_bytes())
    return path


CASE, BRIDGE = "lower_molar_36.stainmap", "bridge_14_15_16.stainmap"
PICTURES = (
    Picture(name="first_start", take=first_window),
    Picture(name="guided", take=guided),
    Picture(name="questions", take=questions, stable=False),
    Picture(name="coat_table", take=coat_table, on=CASE),
    Picture(name="outcome", take=outcome, on=CASE),
    Picture(name="zones", take=look_of(_ZONES), on=CASE),
    Picture(name="flat_views", take=flat_views, on=CASE),
    Picture(name="bench", take=look_of("Alt+2"), on=CASE),
    Picture(name="value", take=look_of("Alt+5"), on=CASE),
    Picture(name="in_the_row", take=look_of(_IN_THE_ROW), on=CASE),
    Picture(name="parts", take=parts, on=CASE),
    Picture(name="suggested", take=suggested, on=CASE, stable=False),
    Picture(name="sheets", take=sheets, on=CASE, stable=False),
    Picture(name="settings", take=of_dialog(lambda hand: hand.press("Ctrl+,")), on=CASE),
    Picture(name="intake", take=of_dialog(lambda hand: hand.press("Ctrl+I")), on=CASE),
    Picture(name="jars", take=of_dialog(lambda hand: hand.menu("Plan", "Mix")), on=CASE),
    Picture(name="coupon", take=of_dialog(lambda hand: hand.menu("Plan", "Blank coupon")), on=CASE),
    Picture(name="cautions", take=of_dialog(lambda hand: hand.menu("Help", "Cautions")), on=CASE),
    Picture(name="film", take=film, on=CASE),
    Picture(name="practice", take=practice, on=CASE, stable=False),
    Picture(
        name="materials",
        take=of_window(lambda hand: hand.press("Ctrl+B"), lambda _window: True),
        on=CASE,
    ),
    Picture(name="bridge", take=look_of(_ZONES), on=BRIDGE),
    Picture(name="tray", take=tray, on=BRIDGE),
)


def take_all(wanted: tuple[Picture, ...], keep: Callable[[Picture, QImage], object]) -> None:
    """Take pictures, start by start, and hand each on."""
    for on in dict.fromkeys(one.on for one in wanted):
        with tempfile.TemporaryDirectory() as place:
            folder = Path(place)
            files = [sample(folder, on)] if on else []
            with started(folder / "home", *files, size=SIZE) as hand:
                hand.wait(lambda: hand.window.session.case is not None, "the crown")
                hand.settle()
                for one in wanted:
                    if one.on == on:
                        keep(one, one.take(hand, folder))
                        print(one.name, flush=True)
                        hand.rest(100)


def as_kept(picture: Image.Image) -> Image.Image:
    """Return a picture with few colours, or as it is where a crown would show steps."""
    if picture.getcolors(MANY_COLOURS) is None:
        return picture
    return few_colours(picture, COLOURS)


def main(arguments: list[str]) -> int:
    """Take the pictures that are asked for."""
    folder = FOLDER
    if "--to" in arguments:
        at = arguments.index("--to")
        folder = Path(arguments[at + 1])
        del arguments[at : at + 2]
    folder.mkdir(parents=True, exist_ok=True)
    wanted = tuple(one for one in PICTURES if not arguments or one.name in arguments)

    def keep(one: Picture, image: QImage) -> None:
        as_kept(as_pil(image)).save(folder / f"{one.name}.png", optimize=True)

    take_all(wanted, keep)
    return 0


if __name__ == "__main__":
    sys.exit(on_own_screen("tests.tools.pictures", main))
