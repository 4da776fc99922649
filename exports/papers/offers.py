"""A quote as the paper for its buyer, as it is today or as it was given."""

from __future__ import annotations

from exports.papers.pictures import buyers_picture, kept_picture
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.quote.quote import Quote
from quoting.wording.offer_paper import offer_paper
from quoting.wording.paper import Paper


def quote_paper(quote: Quote) -> Paper:
    """Return what the buyer would read of a quote. Errors: as `speech_of`."""
    return offer_paper(offer_of(quote), buyers_picture(quote))


def given_paper(offer: Offer, page: str) -> Paper:
    """Return what the buyer has read of a quote that was given.

    `page` is the one that was sent, from which the drawing is taken: nothing is reckoned again.
    Errors: as `kept_picture`.
    """
    return offer_paper(offer, kept_picture(page))
