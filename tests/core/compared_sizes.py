"""Sizes of blankets, and one design compared over them, for tests of comparisons."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.order.order import Order
from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import Comparison, compare_sizes
from quoting.core.workshop.workshop import Workshop
from tests.examples import TODAY, sample_order, sample_workshop

PRAM, COT, BED, THROW = (
    Size(width_cm=width, height_cm=height)
    for width, height in ((60, 75), (80, 100), (90, 120), (120, 150))
)
SIZES = (PRAM, COT, BED, THROW)
DOLL = Size(width_cm=3, height_cm=3)


def compared(
    *sizes: Size,
    order: Order | None = None,
    workshop: Workshop | None = None,
    prices: dict[Size, Decimal] | None = None,
) -> Comparison:
    """Return the sizes compared, all of them unless told which."""
    return compare_sizes(
        order or sample_order(),
        workshop or sample_workshop(),
        sizes or SIZES,
        today=TODAY,
        prices=prices,
    )


def at(each: str, *sizes: Size) -> dict[Size, Decimal]:
    """Return the same price for each size."""
    return dict.fromkeys(sizes, Decimal(each))
