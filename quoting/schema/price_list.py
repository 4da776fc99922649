"""A price list: a price for each size that is compared."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.place import Document, at
from quoting.core.order.resizing import Size
from quoting.notation import LENGTH, read_size
from quoting.schema.figures import MONEY, SIDE
from quoting.schema.kind import Leaf
from quoting.schema.notation import FILE, Notation
from quoting.schema.reading import Content, read_noted
from quoting.schema.several import Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.spot import Spot


class SizeText(Leaf[Size]):
    """A width and a height in one text, `70x90cm`, which is the size's label too.

    Typed for a blanket that goes `by_width`, the one measure is enough; a list of prices is for
    any blanket, so that a file needs both.
    """

    stand_in = Size(width_cm=1, height_cm=1)
    quantity = LENGTH

    def __init__(self, *, by_width: bool = False) -> None:
        self.by_width = by_width

    def from_file(self, spot: Spot) -> Size:
        """Return the size. Errors: `wrong-type`; as `read_size`, and `Size`'s own."""
        text = spot.value
        if not isinstance(text, str):
            return spot.wrong(self.stand_in, "measure")
        return spot.attempt(self.stand_in, lambda: size_of(text))

    def parse(self, text: str, notation: Notation) -> Size:
        """Return the size. Errors: as `read_size`, and `Size`'s own."""
        unit = notation.unit_of(LENGTH)
        width_cm, height_cm = read_size(text, notation.marks, unit, by_width=self.by_width)
        return Size(width_cm=width_cm, height_cm=height_cm, label=text.strip())

    def to_file(self, value: Size, notation: Notation) -> str:
        """Return the size in the inside unit."""
        del notation
        return self.to_record(value)

    def to_record(self, value: Size) -> str:
        """Return the size in the inside unit."""
        return self.show(value, FILE)

    def show(self, value: Size, notation: Notation) -> str:
        """Return both sides with their units, whatever the size was called."""
        return f"{SIDE.show(value.width_cm, notation)} x {SIDE.show(value.height_cm, notation)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedSize:
    """A size and its price."""

    size: Size
    price: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceList:
    """The prices, in their order."""

    prices: tuple[PricedSize, ...]


_priced = Fields(PricedSize)
PRICED_SIZE = Shape(
    PricedSize,
    _priced(lambda priced: priced.size, SizeText(), "Size"),
    _priced(lambda priced: priced.price, MONEY, "Price"),
)

_list = Fields(PriceList)
PRICE_LIST = Shape(PriceList, _list(lambda listed: listed.prices, Several(PRICED_SIZE), "Prices"))


def read_price_list(content: Content) -> Mapping[Size, Decimal]:
    """Return the price of each size in a file's content, in its order.

    Errors: one refusal with every mistake, each at its place (`prices.2.size`), a size given
    twice (`size-twice`) among them.
    """
    listed, notes = read_noted(content, PRICE_LIST, Document.PRICES, FILE)
    prices: dict[Size, Decimal] = {}
    for number, priced in enumerate(listed.prices, 1):
        if priced.size in prices:
            notes.close(at("prices", number, "size"), MistakeCode.SIZE_TWICE, read=str(priced.size))
        prices[priced.size] = priced.price
    notes.done()
    return prices


def size_of(text: str, *, by_width: bool = False) -> Size:
    """Return the size that a text says, with its unit. Errors: as `read_size`, and `Size`'s own."""
    width_cm, height_cm = read_size(text, FILE.marks, by_width=by_width)
    return Size(width_cm=width_cm, height_cm=height_cm, label=text.strip())
