"""How the rounds of a piece from its centre were reckoned, as sums to be done again by hand."""

from __future__ import annotations

from quoting.core.order.from_centre import FromCentre
from quoting.core.quote.quote import Quote
from quoting.wording import Speech


def centre_of(quote: Quote) -> FromCentre:
    """Return the body of a quote whose blanket is worked from its centre."""
    body = quote.order.design.body
    assert isinstance(body, FromCentre), "these are the sums of rounds"  # noqa: S101
    return body


def rounds_sum(quote: Quote, say: Speech) -> str:
    """Return how the rounds follow from the short side."""
    del say
    return f"{len(quote.plan.rows)}"


def last_round_words(quote: Quote, say: Speech) -> str:
    """Return what the last round has."""
    return say.count(quote.plan.stitches, "stitch", "stitches")


def longer_words(quote: Quote, say: Speech) -> str:
    """Return by how much a rectangle is longer."""
    del quote, say
    return ""
