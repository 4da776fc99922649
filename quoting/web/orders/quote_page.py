"""The page for the buyer: an offer in words, and the blanket drawn."""

from __future__ import annotations

from flask import render_template
from markupsafe import Markup

from exports.drawing import draw_blanket
from quoting.core.ground.cautions import Reader
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.quote.quote import Quote
from quoting.wording import say_offer, speech_of


def quote_page(quote: Quote) -> str:
    """Return the page of a quote, as its workshop was when it was given."""
    return offer_page(offer_of(quote), buyers_drawing(quote))


def offer_page(offer: Offer, drawing: Markup) -> str:
    """Return the page of an offer beside the drawing of its blanket."""
    return render_template("quote/quote.html", offer=say_offer(offer), drawing=drawing)


def buyers_drawing(quote: Quote) -> Markup:
    """Return the drawing that the buyer is shown."""
    drawn = draw_blanket(quote, speech_of(quote.workshop), reader=Reader.BUYER)
    # The drawing escapes every word that it writes.
    return Markup(drawn)  # noqa: S704
