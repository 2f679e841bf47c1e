"""What if the same plan were sintered in another programme: the colours of all areas, both ways."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stainmap.model.case import Case
from stainmap.model.colour import Colour
from stainmap.model.zone import Area
from stainmap.optics.difference import delta_e_00
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import Outcome, judge
from stainmap.planning.strength_class import StrengthClass, strength_class
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.grinding import GroundCrown
from stainmap.predict.parameter_spread import CrownState
from stainmap.predict.plate_translucency import plate_translucency
from stainmap.predict.scene import scene_from_case
from stainmap.predict.seen import Seen
from stainmap.predict.sintering import time_class


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaWhatIf:
    """One area in both programmes, or in two plans of the same crown.

    Parameters
    ----------
    here, there
        Predicted colour in the case's own programme or plan, and in the other.
    change
        dL*, da*, db* from here to there.
    change_de00
        CIEDE2000 between the two.
    wanted_de00
        CIEDE2000 to what is wanted, here and there; None where nothing is wanted.
    """

    area: Area
    label: str
    here: Colour
    there: Colour
    change: tuple[float, float, float]
    change_de00: float
    wanted_de00: tuple[float, float] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ProgrammeWhatIf:
    """The same plan in two programmes, area by area; both of full coats at the end of spans.

    `factors` are what the programmes multiply scattering by, `measured` says of which of them a
    coupon was read. Where none was, the change is a direction, by an assumed factor.
    `classes` are the programmes' classes by time, `translucency` is TP_ab of a bare plate of 1 mm
    of each layer of the block in both, `strength` the class of the block, the same in both.
    """

    here: str
    there: str
    minutes: tuple[float, float]
    factors: tuple[float, float]
    measured: tuple[bool, bool]
    areas: tuple[AreaWhatIf, ...]
    classes: tuple[str, str]
    translucency: tuple[tuple[float, ...], tuple[float, ...]]
    strength: StrengthClass

    @property
    def largest_de00(self) -> float:
        """The change of the area that changes most."""
        return max((one.change_de00 for one in self.areas), default=0.0)


def what_if_programme(
    case: Case,
    other: str,
    ground: GroundCrown,
    layout: CoatLayout,
    *,
    seen: Seen | None = None,
    here: Outcome | None = None,
) -> ProgrammeWhatIf:
    """Return what the plan of a case gives in its own programme and in another.

    Parameters
    ----------
    other
        Name of the other programme.
    ground
        The crown as it is seen, with what grinding leaves.
    layout
        Of the case's surface.
    seen
        How both are looked at; as on screen under D65 if None.
    here
        The outcome in the case's own programme, seen in the same way, if it is at hand.

    Raises
    ------
    CatalogueError
        If the materials have no such programme.
    """
    how = Seen() if seen is None else seen
    own, another = (case.materials.programme(name) for name in (case.programme, other))

    def outcome(programme: str) -> Outcome:
        changed = replace(case, programme=programme)
        scene = scene_from_case(changed, bands=how.bands, light=how.light, observer=how.observer)
        engine = AppearanceEngine(
            ground.shape, scene, curvature_correction=how.curvature_correction
        )
        coats = ground.coats(scene, layout.coats(changed))
        lab = engine.whole(coats).lab
        state = CrownState(
            scene=scene,
            coats=coats,
            wall_mm=ground.shape.wall_mm,
            partner=ground.shape.partner,
            inside=ground.shape.inner,
        )
        return judge(changed, layout, ground.shape.wall_mm, lab, state=state)

    here = outcome(own.name) if here is None else here
    return programme_what_if(case, another.name, here, outcome(another.name))


def changes_by_area(here: Outcome, there: Outcome) -> tuple[AreaWhatIf, ...]:
    """Return how the areas that two outcomes have in common differ."""
    areas = []
    for one in here.areas:
        changed = there.area(one.area)
        if changed is None:
            continue
        before, after = np.array(one.predicted.lab), np.array(changed.predicted.lab)
        lightness, a, b = (float(value) for value in after - before)
        both = (one.delta_e_00, changed.delta_e_00)
        areas.append(
            AreaWhatIf(
                area=one.area,
                label=one.label,
                here=one.predicted,
                there=changed.predicted,
                change=(lightness, a, b),
                change_de00=float(delta_e_00(before, after)),
                wanted_de00=None if both[0] is None or both[1] is None else (both[0], both[1]),
            )
        )
    return tuple(areas)


def programme_what_if(case: Case, other: str, here: Outcome, there: Outcome) -> ProgrammeWhatIf:
    """Return two programmes beside one another, of outcomes that have been predicted in both.

    Parameters
    ----------
    here, there
        Outcome of the case in its own programme, and in the one named `other`.

    Raises
    ------
    CatalogueError
        If the materials have no such programme.
    """
    block = case.materials.block(case.plan.block)
    own, another = (case.materials.programme(name) for name in (case.programme, other))
    return ProgrammeWhatIf(
        here=own.name,
        there=another.name,
        minutes=(own.minutes, another.minutes),
        factors=(own.effective_scattering_factor, another.effective_scattering_factor),
        measured=(own.coupon is not None, another.coupon is not None),
        areas=changes_by_area(here, there),
        classes=(time_class(own.minutes), time_class(another.minutes)),
        translucency=(
            plate_translucency(block, case.materials, own.name),
            plate_translucency(block, case.materials, another.name),
        ),
        strength=strength_class(block),
    )
