"""Quotes at a margin or at a hundred, and their lines, for tests of costs and prices."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from quoting.core.order.order import Terms
from quoting.core.price.cost_lines import Line, LineKind
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Pricing, Target
from tests.examples import sample_order, sample_quote, sample_workshop

PRICING = Pricing(target=Target(margin=0.15))
HUNDRED = Terms(target=Target(given=Decimal(100)))


def money(text: str) -> Decimal:
    """Return the exact amount."""
    return Decimal(text)


def quoted(*, terms: Terms | None = None, quantity: int = 1, **changes: Any) -> Quote:
    """Return the quote of the cot blanket, in a workshop with these fields replaced."""
    order = sample_order(terms=terms or Terms(), quantity=quantity)
    return sample_quote(order, sample_workshop(**changes))


def lines_of(quote: Quote, kind: LineKind) -> list[Line]:
    """Return the lines of one kind."""
    return [line for line in quote.lines if line.kind is kind]
