"""The colours of a design as their yarns have them."""

from __future__ import annotations

from quoting.core.quote.quote import Quote


def colour_code(colour: str, quote: Quote) -> str:
    """Return a colour of the design, or of an extra, as its yarn's `#rrggbb`."""
    source = quote.order.design.source_of(colour)
    return quote.workshop.yarn(source.yarn).colours[source.colour]
