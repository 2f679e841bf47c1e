"""Values that files hold in English, listed for the translators: `words.value_word` looks them up.

Members of enumerations and the like keep their values in files and in the command line; on screen
they are called by these words. A test compares the list with the enumerations.
"""

from __future__ import annotations

from typing import Final

from stainmap.words import marked

VALUES: Final = (
    # Kinds of bodies, of `model.crown`.
    marked("values", "crown"),
    marked("values", "bridge"),
    marked("values", "solid crown"),
    marked("values", "open sheet"),
    marked("values", "rooted tooth"),
    marked("values", "jaw"),
    marked("values", "several bodies"),
    marked("values", "not a crown"),
    # Roles of units, and regions behind a wall.
    marked("values", "retainer"),
    marked("values", "pontic"),
    marked("values", "stump"),
    marked("values", "incisal edge"),
    marked("values", "screw channel"),
    marked("values", "open air"),
    # Sides of teeth.
    marked("values", "mesial"),
    marked("values", "distal"),
    marked("values", "buccal"),
    marked("values", "lingual"),
    marked("values", "labial"),
    marked("values", "palatal"),
    marked("values", "occlusal"),
    marked("values", "incisal"),
    marked("values", "cervical"),
    marked("values", "inner surface"),
    # Stages of the bench, of units, and of their sheets.
    marked("values", "mixed"),
    marked("values", "painted"),
    marked("values", "dried"),
    marked("values", "sintered"),
    marked("values", "judged"),
    marked("values", "draft"),
    marked("values", "planned"),
    marked("values", "no sheet"),
    marked("values", "sheet as planned"),
    marked("values", "plan newer than the sheet"),
    # Stages of the run.
    marked("values", "mix"),
    marked("values", "coats"),
    marked("values", "dry"),
    marked("values", "sinter"),
    marked("values", "cool"),
    # Thirds of a tooth.
    marked("values", "middle"),
    # Sizes of meshes.
    marked("values", "milled"),
    # Finishes, and classes of programmes by their time.
    marked("values", "as sintered"),
    marked("values", "polished"),
    marked("values", "glazed"),
    marked("values", "slow"),
    marked("values", "standard"),
    marked("values", "fast"),
    marked("values", "very fast"),
    # Families of tabs.
    marked("values", "reddish-brown"),
    marked("values", "reddish-yellow"),
    marked("values", "grey"),
    marked("values", "reddish-grey"),
    marked("values", "unnamed"),
    # How a colour was measured, and what makes unlike ones alike.
    marked("values", "d/8, tab table"),
    marked("values", "photograph"),
    marked("values", "in place"),
    marked("values", "first-surface reflection, polished, n 2.15"),
    marked("values", "linear Bradford adaptation"),
    marked("values", "tab table, illuminant C to D65, geometry unchanged, \u00b11.5"),
    marked("values", "photograph taken for 45/0, D65"),
    # Where numbers come from.
    marked("values", "invented"),
    marked("values", "measured"),
    marked("values", "calibrated"),
    marked("values", "published"),
    marked("values", "from memory"),
    marked("values", "common practice"),
    marked("values", "common practice, no published source"),
    marked("values", "assumed"),
    # How much hangs on advice, and what a difference means.
    marked("values", "settle first"),
    marked("values", "check"),
    marked("values", "note"),
    marked("values", "not seen by most"),
    marked("values", "seen, usually accepted"),
    marked("values", "usually rejected"),
    marked("values", "direction, not a match"),
    # Kinds of materials, and of their spectra.
    marked("values", "block"),
    marked("values", "liquid"),
    marked("values", "ion"),
    marked("values", "dye"),
    marked("values", "programme"),
    marked("values", "cement"),
    marked("values", "reflectance"),
    marked("values", "absorption"),
    marked("values", "scattering"),
    # Looks, and flat views.
    marked("values", "bench"),
    marked("values", "zones"),
    marked("values", "value"),
    marked("values", "offset"),
    marked("values", "thickness"),
    marked("values", "in the row"),
    marked("values", "ground"),
    marked("values", "all"),
    marked("values", "rosette"),
    # Palettes of the window.
    marked("values", "system"),
    marked("values", "light"),
    marked("values", "dark"),
    # Ways of a section.
    marked("values", "buccal to lingual"),
    marked("values", "mesial to distal"),
    marked("values", "level"),
    # Words for colours of dyes.
    marked("values", "pink"),
    marked("values", "red"),
    marked("values", "orange"),
    marked("values", "yellow"),
    marked("values", "green"),
    marked("values", "blue"),
    marked("values", "violet"),
    # Slips.
    marked("values", "a coat too many"),
    marked("values", "a coat too few"),
    marked("values", "brushed half a millimetre too far"),
    marked("values", "twice the dye in the jar"),
    marked("values", "no dye in the jar"),
    marked("values", "fired in the fastest programme"),
    # Skills of practice.
    marked("values", "finding areas"),
    marked("values", "reaching a shade"),
    marked("values", "choosing the block"),
    marked("values", "leading value"),
    marked("values", "few coats and jars"),
    marked("values", "order at the bench"),
    marked("values", "leaving nothing bare"),
    marked("values", "mixing jars"),
    marked("values", "finding faults"),
    marked("values", "seeing value"),
    # What a film can be written as.
    marked("values", "Animated GIF, 256 colours"),
    marked("values", "Animated PNG"),
    marked("values", "Series of PNG pictures, numbered"),
)
