"""The whole drawing of a blanket: for the maker with every strand, for the buyer without."""

from __future__ import annotations

from exports.drawing.bands import draw_bands
from exports.drawing.bodies import DRAWN, outline_of
from exports.drawing.key import draw_key
from exports.drawing.layout import BUYERS_ROOM, MAKERS_ROOM, VIEW_WIDTH, lay_out
from exports.drawing.rulers import draw_rulers
from exports.drawing.strand_marks import draw_strands
from exports.drawing.tables import colour_codes, strands_drawn
from exports.svg import picture
from quoting.core.ground.cautions import Reader
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, drawing_description, drawing_title

RULER_HEIGHT = 32.0


def draw_blanket(
    quote: Quote, speech: Speech, *, reader: Reader = Reader.MAKER, prefix: str = "blanket"
) -> str:
    """Return the blanket of a quote as SVG, to scale; of several, the first.

    `prefix` begins every id in it. For the maker it has as many elements of class `tail` as the
    blanket has ends, and as many of class `carry` as yarns are carried up; for the buyer none,
    who would take them for a fringe, and none of joined motifs, where there would be hundreds. A
    left-handed maker's is mirrored, as she has it before her.
    """
    room = MAKERS_ROOM if reader is Reader.MAKER else BUYERS_ROOM
    layout = lay_out(quote.plan, room, outline=outline_of(quote.plan), mirrored=speech.left_handed)
    codes = colour_codes(quote)
    strands = strands_drawn(quote) if reader is Reader.MAKER else ()
    marked = strands if quote.plan.grid is None else ()
    key, bottom = draw_key(
        codes,
        marked,
        layout.blanket.bottom + RULER_HEIGHT,
        speech,
        unmarked=len(strands) - len(marked),
    )
    return picture(
        draw_rulers(layout, speech, reader),
        draw_bands(layout, codes, DRAWN[type(quote.order.design.body)], speech, prefix=prefix),
        draw_strands(layout, marked, codes),
        key,
        width=VIEW_WIDTH,
        height=bottom,
        title=drawing_title(quote, speech),
        description=drawing_description(quote, strands, speech),
        prefix=prefix,
        class_="drawing",
    )
