"""What becomes of the ends of a quote: as was asked, but of those within, which are woven in."""

from __future__ import annotations

from quoting.core.estimate.ends_within import ends_to_weave
from quoting.core.order.design import EndsBecome
from quoting.core.quote.quote import Quote


def woven_besides(quote: Quote) -> int:
    """Return how many ends are woven in though those at the edges become something else."""
    return ends_to_weave(quote.order.design.ends, quote.estimate.strands, quote.plan)


def fate_at_edges(quote: Quote) -> EndsBecome:
    """Return what becomes of the ends at the edges; woven in where none is left there."""
    some = woven_besides(quote) < quote.estimate.ends
    return quote.order.design.ends if some else EndsBecome.WOVEN_IN


def main_fate(quote: Quote) -> EndsBecome:
    """Return what becomes of most ends."""
    few = 2 * woven_besides(quote) <= quote.estimate.ends
    return quote.order.design.ends if few else EndsBecome.WOVEN_IN
