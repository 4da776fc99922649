"""A price as a bar: what it pays for, down to what is left."""

from __future__ import annotations

from decimal import Decimal

from exports.charts.values import Part, StackedBar
from quoting.core.costing import LineKind
from quoting.core.price import Price
from quoting.wording import Speech

_COSTS = (
    ("Yarn", (LineKind.YARN,)),
    ("Making", (LineKind.MAKING,)),
    ("Office", (LineKind.OFFICE,)),
    ("Overhead", (LineKind.OVERHEAD,)),
    ("Delivery, packaging, extras", (LineKind.DELIVERY, LineKind.PACKAGING, LineKind.EXTRA)),
)


def price_bar(name: str, price: Price, speech: Speech) -> StackedBar:
    """Return all that the buyer pays, by what it pays for; a loss is a part below nothing."""
    amounts = [(what, sum((price.amount(k) for k in kinds), Decimal(0))) for what, kinds in _COSTS]
    amounts += [("Fees", price.fees), ("Tax", price.tax), ("Profit", price.profit)]
    return StackedBar(
        name=name,
        parts=tuple(
            Part(what=what, amount=amount, label=speech.money(amount, price.currency))
            for what, amount in amounts
        ),
        label=speech.money(price.total, price.currency),
    )
