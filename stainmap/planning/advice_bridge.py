"""Advice on what is usual on bridges and for a bench: connector accents, order of painting."""

from __future__ import annotations

from collections.abc import Iterator

from stainmap.model.zone import Accent
from stainmap.planning.advice_ground import AdviceGround
from stainmap.planning.advice_value import Advice, Severity
from stainmap.planning.bench_order import USUAL_ORDER, order_remarks
from stainmap.planning.bridge_accents import has_connector_accent, has_connectors
from stainmap.words import translate


def plain_connectors(ground: AdviceGround) -> Iterator[Advice]:
    """Yield the usual suggestion while a planned bridge has no accent over its connectors."""
    case = ground.case
    if not case.plan.steps or not has_connectors(case) or has_connector_accent(case):
        return
    mask = case.accent(Accent.CONNECTOR)
    yield Advice(
        rule="connectors without accent",
        sentence=translate(
            "advice bridge",
            "Nothing sets the units apart: connectors and embrasures have no accent.",
        ),
        severity=Severity.NOTE,
        remedy=translate(
            "advice bridge",
            "One coat of a warm dark accent on the facing surfaces of both units (menu Plan,"
            " Accent over connectors).",
        ),
        basis=translate("advice bridge", "Common practice, no published source."),
        area=Accent.CONNECTOR,
        place=None if mask is None else ground.place(mask > 0.5),
    )


def unusual_order(ground: AdviceGround) -> Iterator[Advice]:
    """Yield a sentence for each step that comes later than usual."""
    for remark in order_remarks(ground.case):
        yield Advice(
            rule="order of painting",
            sentence=remark,
            severity=Severity.NOTE,
            remedy=translate(
                "advice bridge",
                "Move the step, or keep it if it is meant so: the prediction knows the order.",
            ),
            basis=USUAL_ORDER,
        )
