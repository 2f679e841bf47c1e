"""The states of the window that have to look right, each reached by what a person does.

    python -m tests.tools.states FOLDER [NAME ...]   # pictures of all, or of some, to look at
    python -m tests.tools.states --write             # the golden ones anew, into tests/data/states

A golden picture shows the part of the window that tells the state, at half its size. Small crowns
are used for those, so that the tests can make them again quickly; pictures to be looked at show the
crowns that come with the program.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from unittest import mock

from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent, QImage
from PySide6.QtWidgets import QPushButton, QWidget

from stainmap.app import opening
from stainmap.app.session import Session
from stainmap.app.settings import Scheme, Settings
from stainmap.files.case_file import read_case
from stainmap.files.case_lock import CaseLock
from stainmap.files.journal import Journal
from stainmap.model.zone import Zone
from tests.tools.golden import FOLDER, write_golden
from tests.tools.real_window import LEFT, NONE, Hand, as_set_up, on_own_screen, started

LIGHT_EDGE_MM = 0.4
USUAL, SMALLEST = (1440, 900), (1024, 700)


@dataclass(frozen=True, kw_only=True)
class Crowns:
    """Files that states are shown with: a mesh that has not been read, and a planned case.

    `edge_mm` is how finely meshes are read, where it is not as the program does.
    """

    mesh: Path
    case: Path
    edge_mm: float | None = None


@dataclass(frozen=True, kw_only=True)
class State:
    """A state that has to look right.

    Parameters
    ----------
    name
        What its picture is called.
    reach
        What a person does to get there.
    part
        The part of the window that tells it; the whole window where None.
    begins
        What the program is started on: "nothing", a "case", or one that is "locked".
    before
        What happens before the program is started.
    dialog
        The button pressed in the dialog that the start opens; "photograph" where that is the state.
    stable
        Whether it looks the same every time; then its picture is kept as a golden one.
    """

    name: str
    reach: Callable[[Hand, Crowns, Path], object]
    part: Callable[[Hand], QWidget] | None = None
    stable: bool = True
    begins: str = "nothing"
    settings: Settings | None = None
    size: tuple[int, int] = USUAL
    environment: tuple[tuple[str, str], ...] = ()
    before: Callable[[Path, Crowns], object] | None = None
    dialog: str = ""

    @property
    def percent(self) -> int:
        """How large everything is."""
        return 100 if self.settings is None else self.settings.size_percent

    @property
    def shows_the_crown(self) -> bool:
        """Whether the light in the grooves can be seen in its picture."""
        return self.part in (None, crown) and self.begins == "case"


# --- what is done --------------------------------------------------------------------------------


def drop(hand: Hand, path: Path) -> None:
    """Let go of a file over the window."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    place = QPointF(hand.window.rect().center())
    hand.said.append(f"drop {path.name}")
    hand.window.dropEvent(QDropEvent(place, Qt.DropAction.CopyAction, data, LEFT, NONE))
    hand.rest()


def opened_card(hand: Hand, path: Path) -> None:
    """Drop a mesh and wait for the questions about it."""
    drop(hand, path)
    hand.wait(hand.window.flow.questions.isVisible, "the questions about the mesh")


def read(hand: Hand, path: Path) -> None:
    """Open a mesh and have it read; its name tells the tooth."""
    opened_card(hand, path)
    card = hand.window.flow.questions
    hand.click(card.sintered, QPoint(8, card.sintered.height() // 2))
    hand.click(card.read)
    hand.wait(lambda: hand.window.session.case is not None, "the crown")


def put_a_coat(hand: Hand, area: Zone = Zone.BODY, digit: str = "2") -> None:
    """Type coats into a cell of the first step."""
    table = hand.window.plan.table
    table.setFocus()
    table.select_cell(0, area)
    hand.press(digit, table)
    hand.press("Return")


def nothing(hand: Hand, _crowns: Crowns, _folder: Path) -> None:
    hand.wait(hand.window.flow.message.isVisible, "the card that says what to do")


def loading(hand: Hand, crowns: Crowns, _folder: Path) -> None:
    opened_card(hand, crowns.mesh)
    card = hand.window.flow.questions
    hand.click(card.sintered, QPoint(8, card.sintered.height() // 2))
    hand.click(card.read)
    hand.wait(hand.window.flow.progress.isVisible, "progress")
    job = hand.window.session.job
    hand.wait(lambda: job is None or job.share > 0.3 or job.is_finished, "some progress")


def refused(hand: Hand, _crowns: Crowns, folder: Path) -> None:
    path = folder / "half a crown.stl"
    path.write_bytes(b"solid half".ljust(80) + (1000).to_bytes(4, "little") + bytes(5000))
    drop(hand, path)
    hand.wait(lambda: hand.window.session.problem is not None, "the refusal")


def with_warnings(hand: Hand, crowns: Crowns, folder: Path) -> None:
    opened_card(hand, torn(crowns.mesh, folder / "torn_36.stl"))


def no_zones(hand: Hand, _crowns: Crowns, folder: Path) -> None:
    read(hand, ball(folder / "ball_36.stl"))
    hand.settle()
    hand.press("Alt+3")


def no_plan(hand: Hand, crowns: Crowns, _folder: Path) -> None:
    read(hand, crowns.mesh)


def as_opened(hand: Hand, _crowns: Crowns, _folder: Path) -> None:
    hand.wait(lambda: hand.window.session.case is not None, "the case")


def not_reachable(hand: Hand, _crowns: Crowns, _folder: Path) -> None:
    as_opened(hand, _crowns, _folder)
    hand.settle()
    hand.choose(hand.window.plan.unit.block, "greyish 4Y")
    hand.settle()
    # What no coats reach is searched for aside.
    hand.wait(lambda: "reach" in hand.window.outcome.outcome.reach.text().lower(), "the sentence")


def unsaved(hand: Hand, crowns: Crowns, folder: Path) -> None:
    as_opened(hand, crowns, folder)
    hand.settle()
    put_a_coat(hand)


def taken_up_again(hand: Hand, _crowns: Crowns, _folder: Path) -> None:
    hand.wait(lambda: hand.window.session.case is not None, "what was left behind")


def in_outcome(hand: Hand, crowns: Crowns, folder: Path) -> None:
    as_opened(hand, crowns, folder)
    hand.settle()
    hand.window.outcome_dock.raise_()


# --- what was there before -----------------------------------------------------------------------


def left_behind(home: Path, crowns: Crowns) -> None:
    """Leave the unsaved work of a program that was killed."""
    journal = Journal(home / "data" / "stainmap" / "recovery")
    case = read_case(crowns.case)
    journal.note(replace(case, notes="the lights went out"), file=crowns.case)
    journal.close(keep=True)


def torn(mesh: Path, to: Path) -> Path:
    """Write a mesh with a hole in it, a face that has no area and one that is there twice."""
    facets = mesh.read_bytes()[84:]
    kept = [facets[at : at + 50] for at in range(0, len(facets), 50)]
    kept = kept[: len(kept) // 3] + kept[len(kept) // 3 + 12 :]
    flat = kept[5][:12] + 3 * kept[5][12:24] + kept[5][48:]
    kept += [kept[9], flat]
    to.write_bytes(b"torn".ljust(80) + len(kept).to_bytes(4, "little") + b"".join(kept))
    return to


def ball(to: Path) -> Path:
    """Write a ball, which is no crown."""
    import trimesh

    trimesh.creation.icosphere(subdivisions=3, radius=5.0).export(to)
    return to


@contextmanager
def somebody_else(crowns: Crowns) -> Iterator[None]:
    """Let somebody else have the case open."""
    theirs = CaseLock.take(crowns.case)
    assert theirs is not None
    try:
        yield
    finally:
        theirs.release()


def crown(hand: Hand) -> QWidget:
    return hand.window.crown


def outcome(hand: Hand) -> QWidget:
    return hand.window.outcome_dock


def plan(hand: Hand) -> QWidget:
    return hand.window.plan_dock


def standing(hand: Hand) -> QWidget:
    return hand.window.top.state


STATES = (
    State(name="nothing_loaded", reach=nothing),
    State(name="loading", reach=loading, stable=False),
    State(name="load_refused", reach=refused, part=crown),
    State(name="mesh_with_warnings", reach=with_warnings, part=crown),
    State(name="no_zones", reach=no_zones, part=crown),
    State(name="no_plan", reach=no_plan, part=plan),
    State(name="target_missing", reach=no_plan, part=outcome),
    State(name="uncalibrated", reach=as_opened, part=outcome, begins="case"),
    State(name="not_reachable", reach=not_reachable, part=outcome, begins="case"),
    State(name="read_only", reach=as_opened, part=standing, begins="locked"),
    State(name="unsaved", reach=unsaved, part=standing, begins="case"),
    State(name="left_behind", reach=nothing, before=left_behind, dialog="photograph"),
    State(
        name="taken_up_again",
        reach=taken_up_again,
        part=standing,
        before=left_behind,
        dialog="Open",
    ),
    State(
        name="no_opengl",
        reach=as_opened,
        begins="case",
        environment=(("STAINMAP_NO_GL", "1"),),
        part=crown,
    ),
    State(name="smallest", reach=as_opened, begins="case", size=SMALLEST),
    State(name="smallest_outcome", reach=in_outcome, begins="case", size=SMALLEST),
    State(name="dark", reach=as_opened, begins="case", settings=as_set_up(Scheme.DARK)),
    State(name="dark_nothing", reach=nothing, settings=as_set_up(Scheme.DARK)),
    State(
        name="twice_the_size",
        reach=as_opened,
        begins="case",
        size=SMALLEST,
        settings=as_set_up(size_percent=200),
        stable=False,
    ),
)


def pictures_of(state: State, crowns: Crowns, home: Path) -> tuple[QImage, QImage]:
    """Return the whole window in a state, and the part that tells it."""
    home.mkdir()
    seen: list[tuple[QImage, QImage]] = []

    def at_dialog(hand: Hand, dialog: QWidget) -> None:
        hand.out_of_the_way()
        if state.dialog == "photograph":
            hand.rest(600)
            seen.append((hand.photograph(), hand.photograph(dialog)))
            hand.press("Esc")
        else:
            buttons = dialog.findChildren(QPushButton)
            hand.click(next(one for one in buttons if one.text() == state.dialog))

    with ExitStack() as stack:
        stack.enter_context(mock.patch.dict("os.environ", dict(state.environment)))
        if crowns.edge_mm is not None:
            stack.enter_context(mock.patch.object(opening, "MAX_EDGE_MM", crowns.edge_mm))
        if state.begins == "locked":
            stack.enter_context(somebody_else(crowns))
        if not state.shows_the_crown and crowns.edge_mm is not None:
            # It takes seconds and plays no part.
            stack.enter_context(mock.patch.object(Session, "need_shading"))
        if state.before is not None:
            state.before(home, crowns)
        files = () if state.begins == "nothing" else (crowns.case,)
        hand = stack.enter_context(
            started(
                home,
                *files,
                settings=state.settings,
                size=state.size,
                sample=False,
                at_dialog=at_dialog if state.dialog else None,
            )
        )
        state.reach(hand, crowns, home)
        hand.out_of_the_way()
        if seen:
            return seen[0]
        if state.reach is not loading:
            hand.settle(lit=state.shows_the_crown)
        whole = hand.photograph()
        return whole, whole if state.part is None else hand.photograph(state.part(hand))


def main(arguments: list[str]) -> int:
    """Make the pictures that are asked for."""
    writes = "--write" in arguments
    names = [one for one in arguments if not one.startswith("--")]
    folder = FOLDER if writes or not names else Path(names.pop(0))
    folder.mkdir(parents=True, exist_ok=True)
    wanted = [one for one in STATES if not names or one.name in names]
    if len(wanted) > 1 and not writes:
        # Qt reads its scale once: what is larger has a process of its own.
        for one in [one for one in wanted if one.percent != 100]:
            wanted.remove(one)
            command = [sys.executable, "-m", "tests.tools.states", str(folder), one.name]
            subprocess.run(command, check=True)
    elif wanted and wanted[0].percent != 100:
        os.environ["QT_SCALE_FACTOR"] = f"{wanted[0].percent / 100.0:g}"
    with tempfile.TemporaryDirectory() as place:
        crowns = (light_crowns if writes or "--light" in arguments else shipped_crowns)(Path(place))
        for state in wanted:
            if writes and not state.stable:
                continue
            whole, part = pictures_of(state, crowns, Path(place) / state.name)
            if writes:
                write_golden(part, folder / f"{state.name}.png")
            else:
                whole.save(str(folder / f"{state.name}.png"))
            print(state.name, flush=True)
    return 0


def shipped_crowns(folder: Path) -> Crowns:
    """Return copies of the sample crown's files, so that nothing beside them is written."""
    from stainmap.paths import sample_case

    names = ("lower_molar_36.stl", "lower_molar_36.stainmap")
    mesh, case = (folder / name for name in names)
    for path in (mesh, case):
        path.write_bytes(sample_case(path.name).read_bytes())
    return Crowns(mesh=mesh, case=case)


def light_crowns(folder: Path) -> Crowns:
    """Return a crown like the sample with a tenth of its vertices, read and planned."""
    from stainmap.app.sample import SAMPLE, make_sample
    from stainmap.files.case_file import write_case
    from stainmap.model.tooth import Tooth
    from stainmap.practice.crown_maker import make_crown, stl_bytes

    mesh, case = folder / "light_36.stl", folder / "light_36.stainmap"
    mesh.write_bytes(stl_bytes(make_crown(Tooth(number=36), resolution=0.4).mesh))
    with mock.patch.object(opening, "MAX_EDGE_MM", LIGHT_EDGE_MM):
        write_case(make_sample(mesh, SAMPLE), case)
    return Crowns(mesh=mesh, case=case, edge_mm=LIGHT_EDGE_MM)


if __name__ == "__main__":
    sys.exit(on_own_screen("tests.tools.states", main))
