"""The page for the buyer: an offer in words, and the blanket drawn."""

from __future__ import annotations

from exports.papers.offers import quote_paper
from quoting.core.quote.offer import Offer
from quoting.core.quote.quote import Quote
from quoting.web.papers.showing import paper_page
from quoting.wording.offer_paper import offer_paper
from quoting.wording.paper import Picture


def quote_page(quote: Quote) -> str:
    """Return the page of a quote, as its workshop was when it was given."""
    return paper_page(quote_paper(quote))


def offer_page(offer: Offer, drawing: Picture) -> str:
    """Return the page of an offer beside the drawing of its blanket."""
    return paper_page(offer_paper(offer, drawing))
