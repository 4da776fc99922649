"""A price as a bar: what it pays for, down to what is left."""

from __future__ import annotations

from exports.charts.values import Part, StackedBar
from exports.price_parts import part_amounts
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import Price
from quoting.wording import Speech

_COSTS = {
    "Yarn": (LineKind.YARN,),
    "Making": (LineKind.MAKING,),
    "Admin": (LineKind.OFFICE,),
    "Overhead": (LineKind.OVERHEAD,),
    "Delivery, packaging, extras": (LineKind.DELIVERY, LineKind.PACKAGING, LineKind.EXTRA),
}
_PARTS = (*_COSTS, "Fees", "Tax", "Profit")


def price_bar(name: str, price: Price, speech: Speech) -> StackedBar:
    """Return all that the buyer pays, by what it pays for; a loss is a part below nothing."""
    amounts = part_amounts(price, _COSTS.values())
    return StackedBar(
        name=name,
        parts=tuple(
            Part(what=what, amount=amount, label=speech.money(amount, price.currency))
            for what, amount in zip(_PARTS, amounts, strict=True)
        ),
        label=speech.money(price.total, price.currency),
    )
