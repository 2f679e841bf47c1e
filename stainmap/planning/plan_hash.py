"""A fingerprint of everything that is printed on the sheets."""

from __future__ import annotations

import hashlib
import json
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

import numpy as np

from stainmap.model.case import Case
from stainmap.model.finishing import AfterSintering
from stainmap.model.process import StainProcess

SHOWN_DIGITS = 8

# Fields of materials and targets that came later; without a value they do not count.
_LATER_FIELDS = frozenset(
    {"amounts", "own_drying_minutes", "coupon", "conversions", "held", "body_doubt"}
)
# The same of a field whose 0 is a value.
_LATER_INDEX = frozenset({"of_unit"})
# A lock binds the search for coats, not the hand.
_NOT_PAINTED = frozenset({"locked"})


def plan_hash(case: Case) -> str:
    """Return the SHA-256 of the canonical JSON of plan, zones, accents, materials and backing.

    Notes, case code, revision and history do not count: two cases with the same hash are painted
    and mixed alike. Arrays enter by the hash of their bytes. What came to cases later counts only
    where it is not what earlier ones took for granted, so that the hash on a sheet stays true.
    """
    shown = {
        "units": case.units,
        "zones": case.zones,
        "accents": case.accents,
        "plan": case.plan,
        "materials": _used_materials(case),
        "backings": case.backings,
        "programme": case.programme,
        "target": case.target,
    }
    later = {
        "process": (case.process, StainProcess()),
        "after_sintering": (case.after_sintering, AfterSintering()),
        "screw_channels": (case.screw_channels, ()),
        "intake": (case.intake, None),
    }
    shown |= {name: value for name, (value, granted) in later.items() if value != granted}
    text = json.dumps(_plain(shown), sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()


def short_hash(full: str) -> str:
    """Return the eight characters shown on sheets, as "7c41-09ae"."""
    return f"{full[:4]}-{full[4:SHOWN_DIGITS]}"


def _used_materials(case: Case) -> dict[str, Any]:
    materials, plan = case.materials, case.plan
    return {
        "block": materials.block(plan.block),
        "liquids": [materials.liquid(jar.liquid) for jar in plan.jars],
        "programme": materials.programme(case.programme),
        "stumps": [materials.stump(backing.stump) for backing in case.backings],
        "cements": [materials.cement(backing.cement) for backing in case.backings],
    }


def _plain(value: Any) -> Any:
    """Return the value as plain JSON types, field by field."""
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, np.ndarray):
        array = np.ascontiguousarray(value)
        digest = hashlib.sha256(array.tobytes()).hexdigest()
        return f"{array.dtype.str}{list(array.shape)}{digest}"
    if is_dataclass(value) and not isinstance(value, type):
        return {
            field.name: _plain(getattr(value, field.name))
            for field in fields(value)
            if field.name not in _NOT_PAINTED
            and (field.name not in _LATER_FIELDS or getattr(value, field.name))
            and not (field.name in _LATER_INDEX and getattr(value, field.name) is None)
        }
    if isinstance(value, dict):
        return {str(key): _plain(entry) for key, entry in value.items()}
    if isinstance(value, (tuple, list)):
        return [_plain(entry) for entry in value]
    return value
