"""What `predict` says of the units of a bridge."""

from __future__ import annotations

import json
from dataclasses import replace

import numpy as np
import pytest

from stainmap.app.prediction import predict_case
from stainmap.cli.outcome_report import prediction_lines, prediction_report
from stainmap.model.tooth import Role, Tooth, Unit
from tests.builders import dome_case
from tests.predict.scenes import DENTINE, materials


def test_every_unit_has_its_value_beside_the_one_before() -> None:
    case = dome_case(10, 24)
    left = case.surface.mesh.vertices[:, 0] > 0.01
    jars = tuple(
        replace(jar, liquid=name)
        for jar, name in zip(case.plan.jars, ("barley", "umber"), strict=True)
    )
    bridge = replace(
        case,
        materials=materials(),
        plan=replace(case.plan, block="medium 3Y", jars=jars),
        backings=(DENTINE,),
        units=(Unit(tooth=Tooth(number=14), role=Role.RETAINER), Unit(tooth=Tooth(number=15))),
        reading=replace(case.reading, unit_index=left.astype(np.uint8)),
    )
    prediction = predict_case(bridge)
    first, second = json.loads(json.dumps(prediction_report(prediction)))["units"]
    assert (first["tooth"], second["tooth"]) == (15, 14)
    assert first["from_unit_before"] is None
    assert second["from_unit_before"] == pytest.approx(
        second["body_lightness"] - first["body_lightness"], abs=2e-3
    )
    assert any("L* of each unit's body" in line for line in prediction_lines(prediction))
    alone = predict_case(replace(bridge, units=bridge.units[:1], reading=case.reading))
    assert not any("of each unit" in line for line in prediction_lines(alone))
