"""The page for the buyer: an offer in words, and the blanket drawn."""

from __future__ import annotations

from exports.papers.pictures import buyers_picture
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.quote.quote import Quote
from quoting.web.papers.showing import paper_page
from quoting.wording import offer_paper
from quoting.wording.paper import Picture


def quote_page(quote: Quote) -> str:
    """Return the page of a quote, as its workshop was when it was given."""
    return offer_page(offer_of(quote), buyers_picture(quote))


def offer_page(offer: Offer, drawing: Picture) -> str:
    """Return the page of an offer beside the drawing of its blanket."""
    return paper_page(offer_paper(offer, drawing))
