"""The working guide of a quote as a page, with the maker's own drawing."""

from __future__ import annotations

from exports.drawing import draw_blanket
from quoting.core.quote.quote import Quote
from quoting.web.papers.showing import paper_page
from quoting.wording import speech_of
from quoting.wording.drawing import drawing_title
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Picture


def guide_page(quote: Quote) -> str:
    """Return the page of a quote's working guide."""
    drawing = draw_blanket(quote, speech_of(quote.workshop))
    return paper_page(guide_paper(quote, Picture(svg=drawing, in_words=drawing_title(quote))))
