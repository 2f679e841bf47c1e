"""The page as a whole: its sections in order, and what it says before them."""

from __future__ import annotations

from functools import cache

from tests.evidence import (
    colours,
    curved_light,
    layers,
    origins,
    random_walls,
    sideways_light,
    starter_set,
    trade,
)
from tests.evidence.figures import Origin, Section

TITLE = "Evidence"

_WORDS = {
    Origin.MEASURED: "on real matter, by whom is said",
    Origin.PUBLISHED: "in a paper or a standard; 'abstract' means that no more of it was read",
    Origin.COMPUTED: "by a formula or a program that the engine does not share",
    Origin.FITTED: "chosen so that the engine agrees with something; to what is said",
    Origin.ASSUMED: "taken without proof; why is said",
    Origin.FROM_MEMORY: "recalled by the authors of the program, not looked up",
    Origin.INVENTED: "made up for demonstration",
}

OPENING = (
    (
        "What the predicted colours of this program rest on. Every number on this page is "
        "computed by the functions that the tests of the program call, and the tests fail if "
        "one leaves its limits or if this page is out of date."
    ),
    (
        "**What this page does not prove.** The starter materials are invented. Agreement "
        "with radiative transport says that light is followed rightly through a layer whose "
        "absorption and scattering are known; it is not agreement with real ceramics, whose "
        "absorption and scattering nobody has measured for this program. No fired crown has "
        "been compared with a prediction. Only coupons of your own blocks and liquids, fired "
        "in your own oven, can do that."
    ),
    (
        "The column *Origin* says where the value comes from that ours is held against, or, "
        "in a list of constants, where the constant comes from:"
    ),
    "\n".join(f"- **{word}**: {meaning}" for word, meaning in _WORDS.items()),
    (
        "Nothing on this page has the origin *measured* by ourselves: this project owns no "
        "instrument. L* alone stands where one wavelength is looked at; then Y is its reflectance."
    ),
)


@cache
def sections() -> tuple[Section, ...]:
    """Return all sections of the page, computed once."""
    return (
        *layers.sections(),
        *random_walls.sections(),
        *sideways_light.sections(),
        *curved_light.sections(),
        *colours.sections(),
        *starter_set.sections(),
        *trade.sections(),
        *origins.sections(),
    )
