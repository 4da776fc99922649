"""The form of the Sizes page: which sizes, at which prices, under which budget."""

from __future__ import annotations

from collections.abc import Collection
from enum import StrEnum

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.order.order import Order
from quoting.core.weighing.comparison import MOST_SIZES
from quoting.core.workshop.stitches import Vocabulary
from quoting.notation import write_number
from quoting.schema.documents import order_text as text_of_order
from quoting.schema.figures import MONEY
from quoting.schema.price_list import SizeText
from quoting.schema.words import TEXT, YES_NO, Choice
from quoting.web.forms.fields import Figure
from quoting.web.forms.from_shape import field_of
from quoting.web.forms.lines import Lines, Part
from quoting.web.forms.sent import line_numbers
from quoting.web.shop import Shop
from quoting.web.sizes.size_travel import TICKED, own_size_key
from quoting.web.sizes.stand_ins import FIELD
from quoting.wording.shapes import size_words

OWN_LINES = 3
MOST_OWN_LINES = 2 * MOST_SIZES
"""Lines of the maker's own that are looked into; more are refused unread."""

FIRST_TICKED = 6
ADD = "add own"


class Asks(StrEnum):
    """What is asked of the sizes: their prices at the target, or what given prices pay."""

    TARGET = "target"
    PRICES = "prices"


class SizeField(Figure):
    """A size as people say it, `70 x 90`, in the workshop's units where none is typed."""

    @property
    def understood(self) -> str | None:
        """The size in plain notation, where it was typed otherwise."""
        if self.data is None:
            return None
        size, by_width = self.data, self.kind.by_width  # type: ignore[attr-defined]
        say = self.meta.shop.speech
        plain = size_words(size.width_cm, size.height_cm, say, by_width=by_width)
        return None if _bare(self.typed) == _bare(plain) else plain


class OfferedForm(Form):
    """A size that is offered, ticked or not."""

    take = field_of(YES_NO, "Compare it")
    price = field_of(MONEY, "Price")


class OrderedForm(OfferedForm):
    """The order's own size, and which that was when its tick and its price were typed."""

    size = field_of(TEXT, "Size")


class OwnForm(Form):
    """A size of the maker's own."""

    size = SizeField("Size", SizeText())
    price = field_of(MONEY, "Price")


class OwnWidthForm(Form):
    """A size of the maker's own of what goes by its width."""

    size = SizeField("Size", SizeText(by_width=True))
    price = field_of(MONEY, "Price")


class SizesForm(Form):
    """Everything that is asked; the order comes along as the text of its file."""

    order_file = field_of(TEXT, "Order")
    stood_in = field_of(TEXT, "Not given yet")
    asks = field_of(Choice(Asks), "Question")
    budget = field_of(MONEY, "The buyer can spend, in all")
    ordered = Part(OrderedForm)
    customary = Lines(OfferedForm, "Customary sizes")
    own = Lines(OwnForm, "Sizes of my own")


class WidthsForm(SizesForm):
    """The same of what goes by its width."""

    own = Lines(OwnWidthForm, "Sizes of my own")


def bind_sizes(shop: Shop, sent: MultiDict[str, str], order: Order | None = None) -> SizesForm:
    """Return the form with what was sent in it, and some lines to type in.

    Without an order, which tells how its sizes are typed, it is not asked anything yet.
    """
    lines = line_numbers(sent)
    sent_own = lines.get("own", [])
    own = sent_own[:MOST_OWN_LINES]
    wanted = max(OWN_LINES, len(own) + (sent.get("do") == ADD))
    lines["own"] = [*own, *_next_numbers(own, wanted - len(own))]
    lines["customary"] = list(range(1, len(shop.sizes) + 1))
    by_width = order is not None and order.design.body.goes_by_width
    form = WidthsForm if by_width else SizesForm
    return form(sent, meta={"shop": shop, "lines": lines, "own_lines": len(sent_own)})


def start_sizes(shop: Shop, order: Order, stood_in: Collection[str] = ()) -> SizesForm:
    """Return the form as it begins: the order's own size, and the smaller customary ones.

    `stood_in` names the fields of the order that are not given yet.
    """
    sent: MultiDict[str, str] = MultiDict(
        {
            "order_file": order_text(order),
            FIELD: " ".join(stood_in),
            "asks": Asks.TARGET.value,
            "ordered.size": own_size_key(order, stood_in),
            "ordered.take": TICKED,
        }
    )
    for number in range(1, FIRST_TICKED + 1):
        sent[f"customary.{number}.take"] = TICKED
    target = order.terms.target
    if target is not None and target.given is not None:
        sent["ordered.price"] = write_number(target.given, shop.marks)
    return bind_sizes(shop, sent, order)


def order_text(order: Order) -> str:
    """Return an order as the text that the page carries along."""
    return text_of_order(order, Vocabulary.US)


def _next_numbers(numbers: list[int], count: int) -> range:
    first = max(numbers, default=0) + 1
    return range(first, first + count)


def _bare(text: str) -> str:
    return "".join(text.lower().split()).replace("x", "×")
