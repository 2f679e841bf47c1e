"""Which block to mill: the usual choice of the trade, and the one that is predicted to do best.

The usual choice is common practice, no published source: a final shade lighter than the lightest
reddish-brown tab takes the lightest block; from the first to the third of these tabs the second
block; darker than the third, reddish-brown or of the grey family, the third block. Other families
are not covered by it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from stainmap.model.colour import Colour
from stainmap.model.material import Block, ScatteringClass
from stainmap.model.shade_table import HueFamily, ShadeTable, Tab
from stainmap.planning.plan_score import area_importance
from stainmap.planning.reach import BlockReach
from stainmap.planning.shade_tabs import nearest_tabs, tab_colour
from stainmap.planning.suggest_result import WITHIN_REACH_DE00
from stainmap.predict.uncertainty import TIE_DE00
from stainmap.words import coat_count_text, either, jars_text, listed, marked, translate, value_word

PROVENANCE: Final = marked("block choice", "common practice, no published source")

_LIGHTER = marked("block choice", "lighter than {first}: the lightest block")
_WITHIN = marked("block choice", "from {first} to {third}: the second block")
_DARKER = marked("block choice", "darker than {third}, {family}: the third block")


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualChoice:
    """The usual choice.

    Parameters
    ----------
    blocks
        Names of those it allows, none where the rule does not cover the shade.
    rule
        The rule that was applied, or why none covers the shade.
    tab
        The tab that the shade was taken for.
    """

    blocks: tuple[str, ...]
    rule: str
    tab: str

    @property
    def covered(self) -> bool:
        """True if the rule says anything about the shade."""
        return bool(self.blocks)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BlockChoice:
    """The usual block and the computed one.

    Parameters
    ----------
    usual
        What the trade would take.
    computed
        The block whose best plan scores best among those of the same class.
    agrees
        True if the usual choice is the computed one, or as good: within 0.3 dE00 per area.
    sentences
        What is to be said about it, with predicted numbers.
    """

    usual: UsualChoice
    computed: BlockReach
    agrees: bool
    sentences: tuple[str, ...]


def block_line(blocks: Sequence[Block], kind: ScatteringClass) -> tuple[Block, ...]:
    """Return the one-layer blocks of a class from the lightest to the deepest.

    A block that is darker than the one before it but less chromatic is of another family (greyish)
    and stands outside the line.
    """
    own = [one for one in blocks if len(one.layers) == 1 and one.layers[0].scattering is kind]
    own.sort(key=lambda one: -one.layers[0].nominal.lightness)
    line: list[Block] = []
    for block in own:
        if not line or block.layers[0].nominal.chroma >= line[-1].layers[0].nominal.chroma:
            line.append(block)
    return tuple(line)


def usual_choice(
    table: ShadeTable, shade: Colour, name: str, blocks: Sequence[Block], kind: ScatteringClass
) -> UsualChoice:
    """Return what the trade would take for a shade.

    Parameters
    ----------
    table
        Tabs; the reddish-brown ones in their order carry the rule.
    shade
        Wanted colour of the body, measured as a prediction is.
    name
        Designation of the tab if the shade is one; otherwise the nearest tab gives the family.
    blocks, kind
        Blocks to choose from, and their class. The last of their line is the third block, the one
        before it the second, all lighter ones count as the lightest.
    """
    tab = _named(table, name)
    taken = tab or nearest_tabs(table, shade)[0].tab
    said = (
        taken.name
        if tab
        else translate("block choice", "a shade nearest to {name}").format(name=taken.name)
    )
    brown = [one for one in table.tabs if one.family is HueFamily.REDDISH_BROWN]
    line = block_line(blocks, kind)
    if len(line) < 3 or len(brown) < 3:
        return UsualChoice(
            blocks=(),
            rule=translate("block choice", "It needs three blocks of one class."),
            tab=said,
        )
    first, third = brown[0], brown[2]
    lightness = tab_colour(tab).lightness if tab else shade.lightness
    lightest, darkest = tab_colour(first).lightness, tab_colour(third).lightness
    chosen: tuple[Block, ...] = ()
    rule = translate("block choice", "The rule says nothing of the {family} family.").format(
        family=value_word(taken.family or "unnamed")
    )
    if lightness > lightest:
        chosen, rule = line[:-2], translate("block choice", _LIGHTER).format(first=first.name)
    elif taken.family is HueFamily.REDDISH_BROWN and lightness >= darkest:
        chosen, rule = (
            line[-2:-1],
            translate("block choice", _WITHIN).format(first=first.name, third=third.name),
        )
    elif taken.family in (HueFamily.REDDISH_BROWN, HueFamily.GREY) and lightness < darkest:
        chosen = line[-1:]
        rule = translate("block choice", _DARKER).format(
            third=third.name, family=value_word(taken.family)
        )
    return UsualChoice(blocks=tuple(one.name for one in chosen), rule=rule, tab=said)


def choose_block(
    usual: UsualChoice, reached: Sequence[BlockReach], kind: ScatteringClass
) -> BlockChoice:
    """Return the usual choice beside the computed one, and why they differ where they do.

    Parameters
    ----------
    reached
        Of all blocks that are compared.
    kind
        Class of the block the case was planned on: strength is not chosen by colour.
    """
    own = [one for one in reached if one.scattering is kind] or list(reached)
    computed = min(own, key=lambda one: one.score)
    usual_ones = [one for one in reached if one.block in usual.blocks]
    if not usual_ones:
        words = (
            translate("block choice", "Usual choice for {tab}: none. {rule}").format(
                tab=usual.tab, rule=usual.rule
            ),
            translate("block choice", "Computed: {block}; {figures}.").format(
                block=computed.block, figures=_figures(computed)
            ),
        )
        return BlockChoice(usual=usual, computed=computed, agrees=False, sentences=words)
    best = min(usual_ones, key=lambda one: one.score)
    # A tie is one of the mean over areas; scores are sums.
    tie = TIE_DE00 * float(area_importance([one.area for one in computed.areas]).sum())
    agrees = best.score - computed.score <= tie
    named = either(usual.blocks)
    head = translate(
        "block choice", "Usual choice for {tab}: {named} ({rule}; {provenance})."
    ).format(
        tab=usual.tab,
        named=named,
        rule=usual.rule,
        provenance=translate("block choice", PROVENANCE),
    )
    if agrees:
        same = (
            translate("block choice", "the same")
            if computed.block in usual.blocks
            else translate("block choice", "{block}, as good").format(block=computed.block)
        )
        words = (
            head,
            translate("block choice", "Computed: {same}; {figures}.").format(
                same=same, figures=_figures(best)
            ),
        )
        return BlockChoice(usual=usual, computed=computed, agrees=True, sentences=words)
    why = (
        head,
        translate(
            "block choice", "Computed: {block}; {figures}. On {usual}: {usual_figures}."
        ).format(
            block=computed.block,
            figures=_figures(computed),
            usual=best.block,
            usual_figures=_figures(best),
        ),
        _why(best, computed),
    )
    return BlockChoice(usual=usual, computed=computed, agrees=False, sentences=why)


def _figures(one: BlockReach) -> str:
    return translate(
        "block choice",
        "{area} {de00:.1f} dE00 from what is wanted, the furthest area {largest:.1f}, {coats}"
        " coats",
    ).format(area=one.body.label, de00=one.body.de00, largest=one.largest_de00, coats=one.coats)


def _effort(one: BlockReach) -> str:
    jars = len(one.plan.jars)
    return listed([jars_text(jars), coat_count_text(one.coats)])


def _why(usual: BlockReach, computed: BlockReach) -> str:
    """Return why the computed block is another one, with predicted numbers."""
    body = usual.body
    bare, wanted = usual.bare_body, body.wanted
    if body.label in usual.too_dark:
        if wanted.lightness - bare.lightness > WITHIN_REACH_DE00:
            return translate(
                "block choice",
                "Wanted L* {lightness:.1f}; {block} without any stain is predicted at L* "
                "{bare:.1f} here: not reachable, stain only lowers value and adds "
                "chroma.",
            ).format(lightness=wanted.lightness, block=usual.block, bare=bare.lightness)
        return translate(
            "block choice",
            "Wanted C* {chroma:.1f}; {block} without any stain is predicted at C* "
            "{bare:.1f} here: not reachable, stain only lowers value and adds chroma.",
        ).format(chroma=wanted.chroma, block=usual.block, bare=bare.chroma)
    apart = [
        (mine.de00 - other.de00, mine, other)
        for mine in usual.areas
        for other in computed.areas
        if mine.area == other.area
    ]
    gain, mine, other = max(apart, key=lambda one: one[0])
    if gain > TIE_DE00:
        return translate(
            "block choice",
            "The difference is made by the {area}: {de00:.1f} dE00 on {block} (predicted L*"
            " {lightness:.1f} C* {chroma:.1f}, wanted L* {wanted:.1f} C* {wanted_chroma:.1f}),"
            " {other_de00:.1f} on {other}.",
        ).format(
            area=mine.label,
            de00=mine.de00,
            block=usual.block,
            lightness=mine.predicted.lightness,
            chroma=mine.predicted.chroma,
            wanted=mine.wanted.lightness,
            wanted_chroma=mine.wanted.chroma,
            other_de00=other.de00,
            other=computed.block,
        )
    return translate(
        "block choice", "Both come as near; {block} needs {effort}, {other} {other_effort}."
    ).format(
        block=computed.block,
        effort=_effort(computed),
        other=usual.block,
        other_effort=_effort(usual),
    )


def _named(table: ShadeTable, name: str) -> Tab | None:
    wanted = name.strip().casefold()
    return next((tab for tab in table.tabs if tab.name.casefold() == wanted), None)
