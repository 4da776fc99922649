"""Where all that a buyer pays goes: cost lines by groups, and what is taken or left besides."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import Price


def part_amounts(price: Price, groups: Iterable[tuple[LineKind, ...]]) -> list[Decimal]:
    """Return what each group of cost lines takes, then fees, tax and profit; a loss is below 0."""
    return [*(price.amount(*group) for group in groups), price.fees, price.tax, price.profit]
