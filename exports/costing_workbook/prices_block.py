"""How each yarn of an order is sold: its balls, its packs, and their prices."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from exports.sheets.cells import Ref, heads, reckoned, span_of, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import PutUp, Yarn


@dataclass(frozen=True, slots=True, kw_only=True)
class PutUpRefs:
    """The cells of one way that a yarn is sold."""

    put_up: PutUp
    grams: Ref
    length: Ref
    pack: Ref
    price: Ref
    per_gram: Ref


@dataclass(frozen=True, slots=True)
class PriceRefs:
    """The ways that one yarn is sold, in the order of the workshop's list."""

    yarn: Yarn
    sold: tuple[PutUpRefs, ...]

    def of(self, put_up: PutUp) -> PutUpRefs:
        """Return the cells of one of them."""
        return next(refs for refs in self.sold if refs.put_up == put_up)

    @property
    def length_per_gram(self) -> str:
        """The length for a gram, by the label of the smallest of them."""
        smallest = self.of(self.yarn.smallest)
        return f"{smallest.length}/{smallest.grams}"

    @property
    def cheapest_per_gram(self) -> str:
        """The least that a gram costs."""
        return f"MIN({span_of([refs.per_gram for refs in self.sold])})"


def prices_block(grid: Grid, quote: Quote, shapes: Shapes) -> Mapping[str, PriceRefs]:
    """Write every ball size and price of the yarns in the order; return them by yarn."""
    grid.block("Balls and their prices")
    grid.line(
        *heads("", "yarn", "", "g a ball", f"{shapes.long_unit} a ball", figures_from=3),
        *heads("balls a pack", "price of a pack", "price of a gram", figures_from=0),
    )
    names = dict.fromkeys(colour.source.yarn for colour in quote.estimate.colours)
    prices = {name: _yarn(grid, quote.workshop.yarn(name), shapes) for name in names}
    every = (sold.price for refs in prices.values() for sold in refs.sold)
    for number, price in enumerate(every, 1):
        grid.name(f"ball_price_{number}", price)
    return prices


def _yarn(grid: Grid, yarn: Yarn, shapes: Shapes) -> PriceRefs:
    sold = tuple(_put_up(grid, yarn.name, put_up, shapes) for put_up in yarn.put_ups)
    return PriceRefs(yarn, sold)


def _put_up(grid: Grid, name: str, put_up: PutUp, shapes: Shapes) -> PutUpRefs:
    row = grid.next_row
    _, grams, length, pack, price, per_gram = grid.line(
        None,
        words(name),
        None,
        yours(put_up.weight_g, TENTHS),
        yours(shapes.long(put_up.length_m), TENTHS),
        yours(put_up.pack, COUNT),
        yours(put_up.price, shapes.rate(put_up.price)),
        reckoned(
            f"Yarn!G{row}/(Yarn!F{row}*Yarn!D{row})", put_up.price_per_gram, shapes.fine_money
        ),
    )
    return PutUpRefs(
        put_up=put_up, grams=grams, length=length, pack=pack, price=price, per_gram=per_gram
    )
