"""What the maker should hear of rounds, motifs and ends, in whole sentences."""

from __future__ import annotations

from quoting.core.ground.codes import CautionCode
from quoting.wording.phrases import Sentences

CONSTRUCTION_CAUTIONS: Sentences = {
    CautionCode.ROUNDS_CUP: (
        "Each round of {stitch} grows by {more} stitches; by its height and width {flat} lie flat, "
        "so the piece may cup. Try some rounds before you promise it.",
    ),
    CautionCode.ROUNDS_RUFFLE: (
        "Each round of {stitch} grows by {more} stitches; by its height and width {flat} lie flat, "
        "so the piece may ruffle. Try some rounds before you promise it.",
    ),
    CautionCode.ONE_SIZE_ACROSS: (
        "A circle or a hexagon goes by the width that is asked: it comes out {height_cm} long, "
        "where {wanted_cm} was asked. Ask the buyer which of the two she means.",
    ),
    CautionCode.CLUSTERS_BY_SWATCH: (
        "No motif in clusters was measured, so size and yarn go by the swatch of {stitch} in rows, "
        "which has no spaces: make one, measure and weigh it.",
    ),
    CautionCode.FEW_MOTIFS_WEIGHED: (
        "{motif} was weighed with only {motifs} on the scale, so what the scale rounds is a large "
        "part of each. Weigh {wanted} or more together.",
    ),
    CautionCode.LAYOUT_LEFT_OUT: (
        "Layouts {layouts} get no motif: the others take all {motifs}. Give them some of these, or "
        "take them out.",
        "Layout {layout} gets no motif: the others take all {motifs}. Give it some of these, or "
        "take it out.",
    ),
    CautionCode.USUAL_MINUTES: (
        "The minutes for {tasks} are what is usual, not yours: time some, and put yours in.",
    ),
    CautionCode.ENDS_LIE_WITHIN: (
        "{ends} ends lie within rows, where balls are joined, and reach no border or fringe: weave "
        "those in, or join balls at an edge.",
        "Rounds begin and end within the work, where no end reaches a border or a fringe: those "
        "have to be woven in or worked over.",
    ),
    CautionCode.FRINGE_FOR_A_BABY: (
        "A fringe is loose yarn that a small child can pull out, suck or be caught in: leave it "
        "off what is for an infant.",
    ),
}
