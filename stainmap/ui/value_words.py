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
    marked("values", "transmittance"),
    marked("values", "absorption in 1/mm"),
    marked("values", "scattering in 1/mm"),
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

# Units of the limits that advice is held to, and where each limit comes from.
LIMITS: Final = (
    marked(
        "limits", "Every crown is thin at its margin: walls are judged above the last millimetre."
    ),
    marked("limits", "mm"),
    marked("limits", "Less than this is a few points of the mesh."),
    marked("limits", "mm2"),
    marked("limits", "Usual guidance for zirconia between front teeth."),
    marked("limits", "Usual guidance for zirconia behind the canine."),
    marked("limits", "Usual guidance beside two or more pontics in a row."),
    marked("limits", "Paravina et al. 2015: half of 175 observers accept up to 1.8."),
    marked("limits", "dE00"),
    marked("limits", "A smaller spot is not noticed."),
    marked(
        "limits",
        "Below it a coat costs time and hardly changes the colour; follows from the saturation"
        " of the process.",
    ),
    marked("limits", "of a first coat"),
    marked(
        "limits",
        "Paravina et al. 2015: half of 175 observers accept up to 1.8; here of lightness alone.",
    ),
    marked("limits", "What a liquid must do at least before it can be said to be undone."),
    marked("limits", "in a*, b*"),
    marked("limits", "Half of what one liquid does to hue and chroma is undone by another."),
    marked("limits", "share"),
    marked(
        "limits",
        "Paravina et al. 2015: half of 175 observers see 0.8; by more than that the two are"
        " needed.",
    ),
    marked("limits", "Fewer coats than this read as none."),
    marked("limits", "coats"),
    marked(
        "limits", "A wider bare area is meant; a narrower one is a gap between two painted ones."
    ),
    marked("limits", "A shorter gap closes by itself, as liquid spreads."),
    marked("limits", "What one stroke of a fine brush fills; wider, a line becomes a stripe."),
    marked("limits", "Pits, where fissures meet, may be wider."),
    marked("limits", "Usual occlusal adjustment is 0.1 to 0.3 mm."),
    marked("limits", "Contacts lie on tips and ridges, down to this far below them."),
    marked(
        "limits",
        "Starter liquids that cool a cusp are designed to stay within it; only where a* ends"
        " below 0.",
    ),
    marked("limits", "a*"),
    marked("limits", "Programmes up to two hours, cold to opening, are called fast."),
    marked("limits", "min"),
    marked("limits", "Usual guidance: fast programmes for single units and short bridges."),
    marked("limits", "units"),
    marked(
        "limits", "Usual guidance: thick walls neither heat nor cool evenly in a fast programme."
    ),
    marked("limits", "Less than this is no thick place."),
)
