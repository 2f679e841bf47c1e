"""All rules of advice, and what they say about a prediction, most urgent first.

Each rule is a function of one `AdviceGround` that yields any number of `Advice`. A new rule is
written beside its like and named here; its limit goes into ``resources/advice``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from stainmap.planning.advice_bridge import plain_connectors, unusual_order
from stainmap.planning.advice_coats import (
    bare_ring,
    broad_fissure,
    cancelling,
    green_cusp,
    ground_contacts,
    more_than_taken_up,
    more_than_usual,
)
from stainmap.planning.advice_ground import AdviceGround
from stainmap.planning.advice_order import (
    missing_lots,
    missing_number,
    value_between_units,
    value_of_neighbours,
)
from stainmap.planning.advice_value import Advice, Severity
from stainmap.planning.advice_walls import (
    connectors,
    draft,
    fast_programme,
    stump_shines_through,
    thin_walls,
)

Rule = Callable[[AdviceGround], Iterator[Advice]]

RULES: Final[tuple[Rule, ...]] = (
    missing_number,
    thin_walls,
    connectors,
    draft,
    fast_programme,
    stump_shines_through,
    value_of_neighbours,
    value_between_units,
    green_cusp,
    bare_ring,
    cancelling,
    more_than_taken_up,
    broad_fissure,
    ground_contacts,
    more_than_usual,
    plain_connectors,
    unusual_order,
    missing_lots,
)
"""In the order they speak in, among those of one severity."""


def advise(ground: AdviceGround) -> tuple[Advice, ...]:
    """Return what all rules say, what is to be settled first before what is only noted.

    Raises
    ------
    CatalogueError
        If a material or a limit is missing.
    """
    said = [advice for rule in RULES for advice in rule(ground)]
    order = list(Severity)
    return tuple(sorted(said, key=lambda one: order.index(one.severity)))
