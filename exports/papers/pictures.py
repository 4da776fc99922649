"""The drawing of a blanket as a paper has it: drawn anew, or cut out of a page that was kept."""

from __future__ import annotations

import re
from html import unescape

from exports.drawing import draw_blanket
from quoting.core.ground.cautions import Reader
from quoting.core.quote.quote import Quote
from quoting.wording.paper import Picture
from quoting.wording.speech import speech_of

_DRAWING = re.compile(r'<svg\b[^<>]*\bclass="drawing".*?</svg>', re.DOTALL)
_DESCRIPTION = re.compile(r"<desc\b[^<>]*>([^<]*)</desc>")


def buyers_picture(quote: Quote) -> Picture:
    """Return the drawing that the buyer is shown. Errors: as `speech_of`."""
    return picture_of(draw_blanket(quote, speech_of(quote.workshop), reader=Reader.BUYER))


def kept_picture(page: str) -> Picture:
    """Return the drawing that stands in a page, to the letter. Errors: ValueError for none."""
    found = _DRAWING.search(page)
    if found is None:
        raise ValueError("no drawing stands in the page")
    return picture_of(found[0])


def picture_of(svg: str) -> Picture:
    """Return a drawing with what it says of itself."""
    found = _DESCRIPTION.search(svg)
    return Picture(svg=svg, in_words="" if found is None else unescape(found[1]))
