"""Blankets side by side: each alone, without rulers or words, and all to one scale."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from exports.drawing.bands import draw_bands
from exports.drawing.bodies import DRAWN, outline_of
from exports.drawing.layout import lay_out
from exports.drawing.tables import colour_codes
from exports.svg import element, number, picture
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, drawing_description, drawing_title

MARGIN = 4.0
"""Room round the largest, in the drawing's units, for the line that it is drawn with."""


def draw_side_by_side(quotes: Sequence[Quote], speech: Speech) -> Iterator[str]:
    """Yield the blanket of each quote as SVG, standing on one line; of several alike, the first.

    So small a drawing bears no words: its size and its colours are told beside it.
    """
    widest_cm = max(quote.plan.width_cm for quote in quotes)
    tallest_cm = max(quote.plan.height_cm for quote in quotes)
    for place, quote in enumerate(quotes, 1):
        prefix = f"choice-{place}"
        layout = lay_out(quote.plan, outline=outline_of(quote.plan))
        blanket = layout.blanket
        width = widest_cm * layout.scale + 2 * MARGIN
        height = tallest_cm * layout.scale + 2 * MARGIN
        right = (width - blanket.width) / 2 - blanket.left
        down = height - MARGIN - blanket.bottom
        body = DRAWN[type(quote.order.design.body)]
        bands = draw_bands(layout, colour_codes(quote), body, speech, prefix=prefix)
        yield picture(
            element("g", bands, transform=f"translate({number(right)} {number(down)})"),
            width=width,
            height=height,
            title=drawing_title(quote, speech),
            description=drawing_description(quote, (), speech),
            prefix=prefix,
            class_="drawing",
        )
