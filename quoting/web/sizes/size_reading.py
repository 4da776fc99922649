"""From the Sizes form to sizes, prices and a budget: every mistake at once, each at its place."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.ground.place import Document
from quoting.core.order.order import Order
from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import MOST_SIZES
from quoting.core.workshop.selling import Target
from quoting.schema.notes import Notes
from quoting.web.drafts import Sheet
from quoting.web.forms.lines import typed_of
from quoting.web.shop import Shop
from quoting.web.sizes.customary_sizes import Size as CustomarySize
from quoting.web.sizes.size_form import MOST_OWN_LINES, Asks, SizesForm
from quoting.web.sizes.size_travel import given_size
from quoting.web.sizes.stand_ins import FIELD, stood_in
from quoting.wording.shapes import size_words


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked; `prices` is None where the target fixes them."""

    sizes: tuple[Size, ...]
    prices: Mapping[Size, Decimal] | None
    budget: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """One line of the form, the size it names, and whether that is to be compared."""

    sheet: Sheet
    size: Size | None
    taken: bool


def read_asked(form: SizesForm, order: Order, shop: Shop) -> Asked:
    """Return what the form asks, the order's own size first. Errors: every mistake in one refusal.

    A size that the maker typed may be the order's own, too, as long as one price is given for it.
    """
    if form.meta.own_lines > MOST_OWN_LINES:
        raise refuse("own", MistakeCode.TOO_MANY, read=form.meta.own_lines, limit=MOST_SIZES)
    notes = Notes(Document.FORM)
    sheet = Sheet(form, notes)
    at_prices = sheet.may("asks", Asks.TARGET) is Asks.PRICES
    found: dict[Size, Decimal | None] = {}
    ordered = ordered_size(order, shop, stood_in(typed_of(form, FIELD).typed))
    offered = [line for line in _customary(sheet, shop) if line.size != ordered]
    for line in (*_ordered(sheet, ordered), *offered, *_own(sheet, order, shop)):
        price = _price(line) if at_prices else None
        if line.size is not None and line.taken:
            priced = price is not None and found.get(line.size) is not None
            if line.size in found and (line.size != ordered or priced):
                line.sheet.wrong("size", MistakeCode.SIZE_TWICE, read=str(line.size))
            found[line.size] = found.get(line.size) or price
    budget = sheet.may("budget")
    notes.done()
    prices = {size: price for size, price in found.items() if price is not None}
    return Asked(sizes=tuple(found), prices=prices if at_prices else None, budget=budget)


def _customary(sheet: Sheet, shop: Shop) -> Iterator[_Line]:
    for line, known in zip(sheet.lines("customary"), shop.sizes, strict=True):
        yield _Line(sheet=line, size=compared_size(known), taken=line.may("take"))


def ordered_size(order: Order, shop: Shop, names: Collection[str]) -> Size | None:
    """Return the order's own size, under its customary name if it has one.

    None where a side of it is among the `names` of what is not given yet.
    """
    own = given_size(order, names)
    if own is None:
        return None
    size = replace(own, label=own_size_words(order, shop))
    return next((known for known in map(compared_size, shop.sizes) if known == size), size)


def _ordered(sheet: Sheet, size: Size | None) -> Iterator[_Line]:
    if size is not None:
        line = sheet.part("ordered")
        yield _Line(sheet=line, size=size, taken=line.may("take"))


def compared_size(known: CustomarySize) -> Size:
    """Return a customary size as one to compare, under its name."""
    return Size(width_cm=known.width_cm, height_cm=known.height_cm, label=known.name)


def own_size_words(order: Order, shop: Shop) -> str:
    """Return the order's own size in words, of what goes by its width its width alone."""
    design = order.design
    if design.body.goes_by_width:
        return shop.speech.length(design.width_cm)
    return shop.speech.size(design.width_cm, design.height_cm)


def _called_by_sides(size: Size, order: Order, shop: Shop) -> Size:
    by_width = order.design.body.goes_by_width
    label = size_words(size.width_cm, size.height_cm, shop.speech, by_width=by_width)
    return replace(size, label=label)


def _own(sheet: Sheet, order: Order, shop: Shop) -> Iterator[_Line]:
    for line in sheet.lines("own"):
        size: Size | None = line.may("size")
        if size is not None:
            size = _called_by_sides(size, order, shop)
        yield _Line(sheet=line, size=size, taken=size is not None)


def _price(line: _Line) -> Decimal | None:
    """Return the price beside a size; it waits, unread, where a customary size is not ticked."""
    if line.size is not None and not line.taken:
        return None
    price: Decimal | None = line.sheet.may("price")
    if price is None:
        return None
    if line.size is None:
        line.sheet.wrong("size", MistakeCode.MISSING)
    try:
        Target(given=price)
    except Refused as refused:
        for mistake in refused.mistakes:
            line.sheet.wrong("price", mistake.code, **mistake.facts)
    return price
