"""Orders as they stand on the worktable, whole and half filled in."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

from quoting.store.order_content import Figures, OrderContent
from tests.examples import sample_order

FIGURES = Figures(
    price=Decimal("284.00"),
    currency="GBP",
    earned_per_hour=Decimal("14.37"),
    hours=Decimal("17.93"),
    ready_by=date(2027, 1, 9),
)
TYPED = {
    "order.title": ("Cot blanket in moorland stripes",),
    "order.buyer": ("Rosalind Quill",),
    "blanket.width": ("80 cm",),
    "blanket.height": ("1OO cm",),
    "blanket.colours": ("oat", "teal", ""),
}


def whole(**changes: Any) -> OrderContent:
    """Return an order that was worked out."""
    order = sample_order()
    content = OrderContent(
        typed=TYPED,
        title=order.title,
        buyer=order.buyer,
        wanted_by=order.wanted_by,
        order=order,
        figures=FIGURES,
    )
    return replace(content, **changes)


def half(title: str = "", **changes: Any) -> OrderContent:
    """Return an order of which nothing but a title is there."""
    return OrderContent(typed={"order.title": (title,)}, title=title, **changes)


def priced(price: str, title: str = "", **changes: Any) -> OrderContent:
    """Return an order at a price."""
    figures = replace(FIGURES, price=Decimal(price), **changes)
    return half(title or f"At {price}", figures=figures)
