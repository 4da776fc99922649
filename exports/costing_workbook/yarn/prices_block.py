"""How each yarn of an order is sold: its balls, its packs, and their prices."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from exports.costing_workbook.yarn.found_lines import FoundLines, as_length, counted_for
from exports.costing_workbook.yarn.yarn_assumptions_block import COUNTED
from exports.sheets.cells import Cell, Ref, heads, reckoned, words, yours
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from exports.sheets.rules import AMOUNT, SOME, SOME_WHOLE
from exports.sheets.sheet_rows import number_text
from exports.told_apart import put_up_words
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import PutUp, Yarn

TITLE = "Balls and their prices"
ALIKE = 1e-12
"""Prices of a gram and lengths that are the same but for the last digits of a float."""


@dataclass(frozen=True, slots=True)
class PriceLines:
    """The ways that the yarns are sold: found by yarn and how it is sold."""

    found: FoundLines

    def grams(self, yarn: str, sold: str) -> str:
        """Return the weight of a ball."""
        return self.found.one("D", yarn, sold)

    def length(self, yarn: str, sold: str) -> str:
        """Return the length of a ball."""
        return self.found.one("E", yarn, sold)

    def pack(self, yarn: str, sold: str) -> str:
        """Return the balls of a pack."""
        return self.found.one("F", yarn, sold)

    def price(self, yarn: str, sold: str) -> str:
        """Return the price of a pack."""
        return self.found.one("G", yarn, sold)

    def length_per_gram(self, yarn: str) -> str:
        """Return the length for a gram, by the label of the smallest ball of a yarn."""
        return self.found.where("I", "J", yarn, 0)

    def cheapest_per_gram(self, yarn: str) -> str:
        """Return the least that a gram of a yarn costs."""
        return self.found.where("H", "K", yarn, 0)


def yarns_of(quote: Quote) -> list[Yarn]:
    """Return the yarns of an order, in the order of its colours."""
    names = dict.fromkeys(colour.source.yarn for colour in quote.estimate.colours)
    return [quote.workshop.yarn(name) for name in names]


def prices_block(grid: Grid, quote: Quote, shapes: Shapes) -> PriceLines:
    """Write every ball size and price of the yarns in the order."""
    yarns, unit = yarns_of(quote), shapes.long_unit
    grid.block(TITLE)
    headings = [
        *heads("", "yarn", "sold as", "g a ball", f"{unit} a ball", figures_from=3),
        *heads("balls a pack", "price of a pack", "price of a gram", figures_from=0),
        *heads(f"{unit} a gram", "balls smaller", "grams cheaper", figures_from=0),
    ]
    lines = Lines(grid, sum(len(yarn.put_ups) for yarn in yarns), headings)
    found = FoundLines(lines, "BC")
    prices: list[Ref] = []
    for yarn in yarns:
        said = put_up_words(yarn, shapes.speech)
        prices += [
            _put_up(grid, found, yarn, put_up, said[put_up], quote, shapes)
            for put_up in yarn.put_ups
        ]
    lines.close(1)
    for number, price in enumerate(prices, 1):
        grid.name(f"ball_price_{number}", price)
    return PriceLines(found)


def _put_up(
    grid: Grid,
    found: FoundLines,
    yarn: Yarn,
    put_up: PutUp,
    said: str,
    quote: Quote,
    shapes: Shapes,
) -> Ref:
    """Write one way that a yarn is sold and return the cell of its price."""
    row, length = grid.next_row, shapes.long(put_up.length_m)
    refs = grid.line(
        None,
        words(yarn.name),
        words(said),
        yours(put_up.weight_g, TENTHS, SOME.called("weight")),
        yours(length, TENTHS, SOME.called("length")),
        yours(put_up.pack, COUNT, SOME_WHOLE.called("balls a pack")),
        yours(put_up.price, shapes.rate(put_up.price), AMOUNT.called("price")),
        *_of_a_gram(row, found, yarn, put_up, shapes),
        faults=[found.twice(f"B{row}", f"C{row}"), *_changed(row, yarn, put_up, quote, shapes)],
    )
    return refs[5]


def _of_a_gram(
    row: int, found: FoundLines, yarn: Yarn, put_up: PutUp, shapes: Shapes
) -> Iterator[Cell]:
    """Yield price and length of a gram, and how many ways are smaller, and cheaper, than this.

    The first of both tells what of the shelf is charged, and how long it is.
    """
    grams, length, word = f"N(D{row})", f"N(E{row})", f"B{row}"
    column = found.lines.column
    price = f"IF({grams}*N(F{row})>0,N(G{row})/(N(F{row})*{grams}),0)"
    yield reckoned(price, put_up.price_per_gram, shapes.fine_money)
    per_gram = shapes.long(put_up.length_m) / put_up.weight_g
    yield reckoned(f"IF({grams}>0,{length}/{grams},0)", per_gram, "0.00")
    shorter = found.less(f"{column('E')}<E{row}", word=word)
    lighter = found.less(f"{column('E')}=E{row}", f"{column('D')}<D{row}", word=word)
    size = put_up.length_m, put_up.weight_g
    smaller = sum((some.length_m, some.weight_g) < size for some in yarn.put_ups)
    yield reckoned(f"{shorter}+{lighter}", smaller, COUNT)
    cheaper = found.less(f"{column('H')}<H{row}", word=word)
    yield reckoned(cheaper, _under(put_up, yarn.put_ups), COUNT)


def _under(put_up: PutUp, others: Sequence[PutUp]) -> int:
    own = float(put_up.price_per_gram)
    prices = [float(some.price_per_gram) for some in others]
    return sum(price < own and not math.isclose(price, own, rel_tol=ALIKE) for price in prices)


def _changed(row: int, yarn: Yarn, put_up: PutUp, quote: Quote, shapes: Shapes) -> Iterator[Fault]:
    """Yield what a changed ball or price does not do: count and choose anew."""
    length = shapes.long(put_up.length_m)
    yield counted_for(f"D{row}", put_up.weight_g, COUNTED, as_length(put_up.weight_g, "g"))
    yield counted_for(f"E{row}", length, COUNTED, as_length(length, shapes.long_unit))
    yield counted_for(f"F{row}", put_up.pack, COUNTED, f'{put_up.pack}&" a pack"')
    if len(yarn.put_ups) > 1 or (quote.order.design.mix_lots and yarn.stock):
        changed = f"ROUND(N(G{row})-{number_text(put_up.price)},9)<>0"
        yield Fault(changed, '"packs were chosen at the old prices: the program chooses anew"')
