"""A planned dome of few vertices, for tests that open many windows."""

from __future__ import annotations

from dataclasses import replace

from stainmap.app import edits
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, StainPlan
from stainmap.model.zone import Accent, Zone
from tests.builders import dome_case


def small_planned_case() -> Case:
    """Return a dome with starter materials and a plan of three steps and four coats."""
    materials = starter_catalogue()
    case = dome_case(14, 36)
    backing = replace(
        case.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    case = replace(
        case,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
    )
    for at, liquid in enumerate(("barley", "slate", "umber")):
        case = edits.with_added_liquid(case, at, liquid)
    case = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(1))
    case = edits.with_coats(case, 1, Zone.CUSP, CoatSpan.exactly(2))
    return edits.with_coats(case, 2, Accent.MARGIN_BAND, CoatSpan.exactly(1))
