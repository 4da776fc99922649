"""The form of the Sizes page: which sizes, at which prices, under which budget."""

from __future__ import annotations

from enum import StrEnum

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.comparison import MOST_SIZES
from quoting.core.order import Order
from quoting.core.resizing import own_size
from quoting.core.stitches import Vocabulary
from quoting.intake import write_order
from quoting.notation import LENGTH, read_size, write_number
from quoting.web.fields import Money, OneOf, Text, Tick, Typed
from quoting.web.lines import Lines, Part, line_numbers
from quoting.web.shop import Shop
from quoting.web.size_travel import TICKED, size_key

OWN_LINES = 3
MOST_OWN_LINES = 2 * MOST_SIZES
"""Lines of the maker's own that are looked into; more are refused unread."""

FIRST_TICKED = 6
ADD = "add own"


class Asks(StrEnum):
    """What is asked of the sizes: their prices at the target, or what given prices pay."""

    TARGET = "target"
    PRICES = "prices"


class SizeText(Typed):
    """A size as people say it, `70 x 90`, in the workshop's units where none is typed."""

    def read(self, text: str) -> tuple[float, float]:
        """Return width and height in cm."""
        return read_size(text, self.marks, self.meta.shop.unit_of(LENGTH))

    @property
    def understood(self) -> str | None:
        """The size in plain notation, where it was typed otherwise."""
        if self.data is None:
            return None
        plain: str = self.meta.shop.speech.size(*self.data)
        return None if _bare(self.typed) == _bare(plain) else plain


class OfferedForm(Form):
    """A size that is offered, ticked or not."""

    take = Tick("Compare it")
    price = Money("Price")


class OrderedForm(OfferedForm):
    """The order's own size, and which that was when its tick and its price were typed."""

    size = Text("Size")


class OwnForm(Form):
    """A size of the maker's own."""

    size = SizeText("Size")
    price = Money("Price")


class SizesForm(Form):
    """Everything that is asked; the order comes along as the text of its file."""

    order_file = Text("Order")
    asks = OneOf("Question", Asks)
    budget = Money("The buyer can spend, in all")
    ordered = Part(OrderedForm)
    customary = Lines(OfferedForm, "Customary sizes")
    own = Lines(OwnForm, "Sizes of my own")


def bind_sizes(shop: Shop, sent: MultiDict[str, str]) -> SizesForm:
    """Return the form with what was sent in it, and some lines to type in."""
    lines = line_numbers(sent)
    sent_own = lines.get("own", [])
    own = sent_own[:MOST_OWN_LINES]
    wanted = max(OWN_LINES, len(own) + (sent.get("do") == ADD))
    lines["own"] = [*own, *_next_numbers(own, wanted - len(own))]
    lines["customary"] = list(range(1, len(shop.sizes) + 1))
    return SizesForm(sent, meta={"shop": shop, "lines": lines, "own_lines": len(sent_own)})


def start_sizes(shop: Shop, order: Order) -> SizesForm:
    """Return the form as it begins: the order's own size, and the smaller customary ones."""
    sent: MultiDict[str, str] = MultiDict(
        {
            "order_file": order_text(order),
            "asks": Asks.TARGET.value,
            "ordered.size": size_key(own_size(order)),
            "ordered.take": TICKED,
        }
    )
    for number in range(1, FIRST_TICKED + 1):
        sent[f"customary.{number}.take"] = TICKED
    target = order.terms.target
    if target is not None and target.given is not None:
        sent["ordered.price"] = write_number(target.given, shop.marks)
    return bind_sizes(shop, sent)


def order_text(order: Order) -> str:
    """Return an order as the text that the page carries along."""
    return write_order(order, Vocabulary.US)


def _next_numbers(numbers: list[int], count: int) -> range:
    first = max(numbers, default=0) + 1
    return range(first, first + count)


def _bare(text: str) -> str:
    return "".join(text.lower().split()).replace("x", "×")
