"""One description of every key: files, forms and records to values, and values to them."""

from quoting.schema.documents import (
    load_order,
    load_order_text,
    load_price_list,
    load_workshop,
    load_workshop_text,
    order_text,
    workshop_text,
)
from quoting.schema.price_list import size_of

__all__ = [
    "load_order",
    "load_order_text",
    "load_price_list",
    "load_workshop",
    "load_workshop_text",
    "order_text",
    "size_of",
    "workshop_text",
]
