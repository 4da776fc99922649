"""The Sizes page of the sample workshop, and the comparison that it should show."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import Comparison, compare_sizes
from quoting.core.workshop.workshop import Workshop
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_workshop
from tests.web.conftest import ORDER, Maker
from tests.web.pages import Page

SHOP = open_shop(sample_workshop(), today=lambda: TODAY)
SAY = SHOP.speech
NUMBERS = {size.name: number for number, size in enumerate(SHOP.sizes, 1)}
ORDERED = "Cot"
"""What the sample order's own size is called."""

SIX = [
    Size(width_cm=size.width_cm, height_cm=size.height_cm, label=size.name)
    for size in sorted(SHOP.sizes[:6], key=lambda size: size.name != ORDERED)
]
"""The sizes that the page begins with, in its order: the order's own before the others."""

PRICES = dict(zip(SIX, map(Decimal, (240, 60, 200, 240, 290, 470)), strict=True))


def compare(workshop: Workshop | None = None, **changes: object) -> Comparison:
    """Return the sample order at the first six sizes."""
    return compare_sizes(ORDER, workshop or sample_workshop(), SIX, today=TODAY, **changes)  # type: ignore[arg-type]


def ask(maker: Maker, address: str = "/sizes", **typed: str) -> Page:
    """Open the Sizes page, type, and ask."""
    return maker.send(address, "/sizes", **typed)


def price_of(size: str) -> str:
    """Return the name of the price field beside a size."""
    return "ordered.price" if size == ORDERED else f"customary.{NUMBERS[size]}.price"


TYPED = {price_of(str(size)).replace(".", "__"): str(price) for size, price in PRICES.items()}


def sizes_of(page: Page) -> list[str]:
    """Return the sizes of the table, without what is said of them."""
    names = [row[0].removesuffix(" pays best") for row in page.table("Size asked")[1:]]
    return [name.removesuffix(" as ordered") for name in names]


def words(text: str) -> str:
    """Return a text with plain spaces."""
    return " ".join(text.split())
