"""The working guide of a quote as a paper, with the maker's own drawing."""

from __future__ import annotations

from flask import Response

from exports.drawing import draw_blanket
from quoting.core.quote.quote import Quote
from quoting.web.papers.showing import paper_file
from quoting.wording import speech_of
from quoting.wording.drawing import drawing_title
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Paper, Picture


def drawn_guide(quote: Quote) -> Paper:
    """Return a quote's working guide beside the maker's own drawing."""
    speech = speech_of(quote.workshop)
    drawing = draw_blanket(quote, speech)
    return guide_paper(quote, Picture(svg=drawing, in_words=drawing_title(quote, speech)))


def guide_file(quote: Quote) -> Response:
    """Return the guide as a PDF. Errors: as `paper_file`."""
    return paper_file(drawn_guide(quote), f"guide {quote.order.title}")
