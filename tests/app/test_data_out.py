"""Plan and prediction as data: held to the schema, and to the case field by field."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from typing import Any

import jsonschema
import pytest

from stainmap.app.data_out import areas_table, data_document, data_json
from stainmap.app.prediction import Prediction, predict_case
from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.paths import resource
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.seen import Seen
from tests.builders import dome_case

Document = dict[str, Any]


@pytest.fixture(scope="module")
def schema() -> Document:
    path = resource("schemas", "plan_and_prediction.schema.json")
    found: Document = json.loads(path.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(found)
    return found


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(14, 32)


@pytest.fixture(scope="module")
def prediction(case: Case) -> Prediction:
    return predict_case(case)


@pytest.fixture(scope="module")
def bridge(case: Case) -> Prediction:
    """Return the dome as two units, with a span and seen under another light."""
    right = case.surface.mesh.vertices[:, 0] > 0.01
    span = replace(
        case,
        units=(
            Unit(tooth=Tooth(number=14), role=Role.RETAINER),
            Unit(tooth=Tooth(number=15), role=Role.PONTIC),
        ),
        reading=replace(case.reading, kind=BodyKind.BRIDGE, unit_index=right.astype("uint8")),
        target=None,
    )
    return predict_case(span, seen=Seen(bands="full", light="A", observer=10))


def test_documents_keep_to_the_schema(
    schema: Document, prediction: Prediction, bridge: Prediction
) -> None:
    for one in (prediction, bridge):
        document = json.loads(data_json(one))
        jsonschema.validate(document, schema, cls=jsonschema.Draft202012Validator)


@pytest.mark.parametrize(
    ("place", "value"),
    [
        (("case", "plan_hash"), "short"),
        (("plan", "jars", 0, "liquid_drops"), 0),
        (("prediction", "units", 0, "areas", 0, "sd"), [1.0, -1.0, 1.0]),
        (("prediction", "observer_degrees"), 3),
        (("unknown",), 1),
    ],
)
def test_the_schema_refuses_what_is_not_so(
    schema: Document, prediction: Prediction, place: tuple[Any, ...], value: object
) -> None:
    document = json.loads(data_json(prediction))
    inner = document
    for step in place[:-1]:
        inner = inner[step]
    inner[place[-1]] = value
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, schema, cls=jsonschema.Draft202012Validator)


def test_the_schema_leaves_no_entry_out(schema: Document, prediction: Prediction) -> None:
    document = data_document(prediction)
    for name in ("case", "plan", "prediction"):
        kept = schema["properties"][name]
        assert set(kept["required"]) == set(kept["properties"]) == set(document[name])


def test_entries_are_those_of_the_case(case: Case, prediction: Prediction) -> None:
    document = data_document(prediction)
    assert document["case"]["code"] == case.code
    assert document["case"]["plan_hash"] == plan_hash(case)
    plan = document["plan"]
    for entry, jar in zip(plan["jars"], case.plan.jars, strict=True):
        assert (entry["number"], entry["liquid"]) == (jar.number, jar.liquid)
        # Of the dyes that the materials have.
        drops = tuple(entry["dye_drops"].values())
        assert drops == jar.dye_drops[: len(case.materials.dyes)]
    for entry, step in zip(plan["steps"], case.plan.steps, strict=True):
        assert entry["jar"] == step.jar
        got = [(one["number"], one["coats_low"], one["coats_high"]) for one in entry["areas"]]
        assert got == [(int(a.area), a.coats.low, a.coats.high) for a in step.areas]
    (unit,) = document["prediction"]["units"]
    for entry, one in zip(unit["areas"], prediction.outcome.areas, strict=True):
        assert entry["predicted"]["lab"] == pytest.approx(one.predicted.lab, abs=6e-4)
        assert entry["sd"] == pytest.approx(one.plus_minus, abs=6e-4)
        assert entry["verdict"] is None  # not calibrated


def test_units_have_means_of_their_own_that_make_up_the_whole(bridge: Prediction) -> None:
    units = bridge.unit_outcomes()
    assert len(units) == 2
    for one in bridge.outcome.areas:
        parts = [found for unit in units if (found := unit.area(one.area)) is not None]
        assert sum(part.area_mm2 for part in parts) == pytest.approx(one.area_mm2, rel=1e-6)
        lightness = [part.predicted.lightness for part in parts]
        assert min(lightness) - 1e-6 <= one.predicted.lightness <= max(lightness) + 1e-6
    labs = [unit.area(Zone.BODY) for unit in units]
    assert all(one is not None for one in labs)


def test_heads_of_the_table_name_light_and_observer(bridge: Prediction) -> None:
    rows = list(csv.DictReader(io.StringIO(areas_table(bridge))))
    assert {row["tooth"] for row in rows} == {"14", "15"}
    first = rows[0]
    area = bridge.unit_outcomes()[0].areas[0]
    assert float(first["L* (A, 10 deg)"]) == pytest.approx(area.predicted.lightness, abs=6e-4)
    assert float(first["sd b* (A, 10 deg)"]) == pytest.approx(area.plus_minus[2], abs=6e-4)
    assert first["wanted L* (A, 10 deg)"] == ""
    assert not any(head in {"L*", "a*", "b*"} for head in first)
