"""The whole drawing of a quote's blanket."""

from __future__ import annotations

from exports.drawing.bands import draw_bands
from exports.drawing.key import draw_key
from exports.drawing.layout import VIEW_WIDTH, lay_out
from exports.drawing.rulers import draw_rulers
from exports.drawing.strand_marks import draw_strands
from exports.drawing.tables import colour_codes, strands_drawn
from exports.svg import picture
from quoting.core.passes import Edge
from quoting.core.quote import Quote
from quoting.wording import Speech, drawing_description, drawing_title

RULER_HEIGHT = 32.0


def draw_blanket(quote: Quote, speech: Speech, *, prefix: str = "blanket") -> str:
    """Return the blanket of a quote as SVG, to scale, with every strand; of several, the first.

    `prefix` begins every id in it. It has as many elements of class `tail` as the blanket has
    ends, and as many of class `carry` as yarns are carried up.
    """
    layout, codes = lay_out(quote.plan), colour_codes(quote)
    strands = strands_drawn(quote)
    joined = any(strand.ends.edge is Edge.WITHIN for strand in strands)
    key, bottom = draw_key(codes, layout.blanket.bottom + RULER_HEIGHT, joined=joined)
    return picture(
        draw_rulers(layout, speech),
        draw_bands(layout, codes),
        draw_strands(layout, strands, codes),
        key,
        width=VIEW_WIDTH,
        height=bottom,
        title=drawing_title(quote),
        description=drawing_description(quote, strands, speech),
        prefix=prefix,
        class_="drawing",
    )
