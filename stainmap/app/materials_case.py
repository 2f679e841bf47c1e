"""The open case's own materials: put in, taken out, and where the case uses them."""

from __future__ import annotations

from dataclasses import replace

from stainmap.app import edits
from stainmap.app.materials import (
    Material,
    MaterialKind,
    entries,
    entry,
    kind_of,
    with_entry,
    without_entry,
)
from stainmap.app.materials_set import needed_by
from stainmap.errors import CatalogueError
from stainmap.model.case import Case, Region
from stainmap.model.material import Catalogue
from stainmap.words import translate, value_word


def use_in_case(case: Case, kind: MaterialKind, name: str) -> str:
    """Return where the case uses a material, as "in jar 2"; nothing if it does not."""
    plan = case.plan
    if kind is MaterialKind.BLOCK:
        return translate("materials case", "as its block") if plan.block == name else ""
    if kind is MaterialKind.LIQUID:
        jar = next((one.number for one in plan.jars if one.liquid == name), None)
        return "" if jar is None else translate("materials case", "in jar {jar}").format(jar=jar)
    if kind is MaterialKind.PROGRAMME:
        return (
            translate("materials case", "as its sintering programme")
            if case.programme == name
            else ""
        )
    if kind is MaterialKind.CEMENT:
        behind = next((one.region for one in case.backings if one.cement == name), None)
        return "" if behind is None else _behind(behind)
    if kind is MaterialKind.DYE:
        names = [one.name for one in case.materials.dyes]
        at = names.index(name) if name in names else len(names)
        jar = next((one.number for one in plan.jars if any(one.dye_drops[at : at + 1])), None)
        return "" if jar is None else translate("materials case", "in jar {jar}").format(jar=jar)
    if kind is MaterialKind.STUMP:
        behind = next((one.region for one in case.backings if one.stump == name), None)
        if behind is not None:
            return _behind(behind)
        return _referred_to(case.materials.blocks, kind, name, case.materials)
    return _referred_to(case.materials.liquids, kind, name, case.materials)


def with_material(case: Case, material: Material, catalogue: Catalogue) -> Case:
    """Return the case with a material in its own, and what that refers to.

    Parameters
    ----------
    material
        Takes the place of the case's own of that name; a plan that uses it is predicted anew.
    catalogue
        Where ions and stumps are taken from that the case does not have yet.
    """
    kind = kind_of(material)
    if entry(case.materials, kind, material.name) == material:
        return case
    own = case.materials
    for needed in needed_by(material, catalogue):
        if entry(own, kind_of(needed), needed.name) is None:
            own = with_entry(own, needed)
    changed = replace(case, materials=with_entry(own, material))
    if kind is MaterialKind.BLOCK and material.name == case.plan.block:
        # Its enlargement may be another, and with it the size of a mesh as milled.
        return edits.with_block(changed, material.name)
    return changed


def without_material(case: Case, kind: MaterialKind, name: str, back: Material | None) -> Case:
    """Return the case without a material that nothing in it uses.

    Parameters
    ----------
    back
        What takes its place: the starter's dye of the same name, else None.

    Raises
    ------
    CatalogueError
        If the case uses it, saying where.
    """
    if entry(case.materials, kind, name) is None:
        return case
    refuse_used(case, kind, name)
    if back is not None:
        return replace(case, materials=with_entry(case.materials, back))
    return replace(case, materials=without_entry(case.materials, kind, name))


def refuse_used(case: Case, kind: MaterialKind, name: str) -> None:
    """Raise CatalogueError if the case uses a material."""
    where = use_in_case(case, kind, name)
    if where:
        raise CatalogueError(
            translate("materials case", "The open case uses the {kind} '{name}' {where}.").format(
                kind=value_word(kind), name=name, where=where
            ),
            advice=translate("materials case", "Choose another there first."),
        )


def _referred_to(
    those: tuple[Material, ...], kind: MaterialKind, name: str, materials: Catalogue
) -> str:
    for one in those:
        if any(kind_of(own) is kind and own.name == name for own in needed_by(one, materials)):
            return translate("materials case", "in its {kind} '{name}'").format(
                kind=value_word(kind_of(one)), name=one.name
            )
    return ""


def standing_in_case(case: Case | None, material: Material) -> str:
    """Return how an entry stands to the open case: not in it, in it, used, with other numbers."""
    if case is None:
        return ""
    kind = kind_of(material)
    own = entry(case.materials, kind, material.name)
    if own is None:
        return translate("materials case", "not in the case")
    if own != material:
        return translate("materials case", "the case has other numbers")
    where = use_in_case(case, kind, material.name)
    if where:
        return translate("materials case", "used {where}").format(where=where)
    return translate("materials case", "in the case")


def short_standing(case: Case | None, material: Material) -> str:
    """Return how the open case stands to an entry in a word: used, same, other, or nothing."""
    kind = kind_of(material)
    own = None if case is None else entry(case.materials, kind, material.name)
    if case is None or own is None:
        return ""
    if own != material:
        return translate("materials case", "other")
    if use_in_case(case, kind, material.name):
        return translate("materials case", "used")
    return translate("materials case", "same")


def _behind(region: Region) -> str:
    return translate("materials case", "behind its {region}").format(region=value_word(region))


def only_in_case(
    case: Case | None, kind: MaterialKind, catalogue: Catalogue
) -> tuple[Material, ...]:
    """Return what only the open case has, by name."""
    if case is None:
        return ()
    known = {one.name for one in entries(catalogue, kind)}
    return tuple(one for one in entries(case.materials, kind) if one.name not in known)
