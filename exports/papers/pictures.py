"""The drawing of a blanket as a paper has it: drawn anew, or cut out of a page that was kept."""

from __future__ import annotations

import re
from html import unescape

from exports.drawing import draw_blanket
from quoting.core.ground.cautions import Reader
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.wording import drawing_description, speech_of
from quoting.wording.paper import Picture

_DRAWING = re.compile(r'<svg\b[^<>]*\bclass="drawing".*?</svg>', re.DOTALL)
_DESCRIPTION = re.compile(r"<desc\b[^<>]*>([^<]*)</desc>")


def buyers_picture(quote: Quote) -> Picture:
    """Return the drawing that the buyer is shown, in her language. Errors: as `speech_of`."""
    speech = speech_of(offer_of(quote))
    return Picture(
        svg=draw_blanket(quote, speech, reader=Reader.BUYER),
        in_words=drawing_description(quote, (), speech),
    )


def kept_picture(page: str) -> Picture:
    """Return the drawing that stands in a page, to the letter. Errors: ValueError for none."""
    found = _DRAWING.search(page)
    if found is None:
        raise ValueError("no drawing stands in the page")
    described = _DESCRIPTION.search(found[0])
    return Picture(svg=found[0], in_words="" if described is None else unescape(described[1]))
