"""The balls of all yarns that the sizes take, each once: how they are sold and what they cost."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from exports.comparison_workbook.size_rows import Rows
from exports.sheets.cells import (
    Span,
    beside,
    count_where,
    counted,
    heads,
    quoted,
    reckoned,
    total_where,
    words,
    yours,
)
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from exports.sheets.rules import AMOUNT
from exports.told_apart import put_up_words
from quoting.core.workshop.yarns import PutUp, Yarn

CHOSEN_ANEW = '"at other prices other balls may cost less: the program chooses anew"'


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceSpans:
    """The columns of the list: words, and the figures of a pack and of a gram.

    `cheapest` has a one beside whatever costs least for a gram of its yarn. `sold` are the words
    for each ball of a yarn by the yarn's name.
    """

    yarns: Span
    packs: Span
    grams: Span
    balls: Span
    prices: Span
    per_gram: Span
    cheapest: Span
    sold: Mapping[str, Mapping[PutUp, str]]


def ball_prices(grid: Grid, rows: Rows, shapes: Shapes) -> PriceSpans:
    """Write how every yarn is sold; return the columns, which other lines read by their words."""
    yarns = list(_yarns(rows))
    sold = {yarn.name: put_up_words(yarn, shapes.speech) for yarn in yarns}
    grid.block("Balls and their prices, for all sizes")
    listed = Lines(
        grid,
        sum(len(yarn.put_ups) for yarn in yarns),
        [
            *heads("yarn", "sold as", "g a ball", "balls a pack", figures_from=2),
            *heads("price of a pack", "as quoted", "price of a gram", figures_from=0),
            *heads("least of its yarn", figures_from=0),
        ],
    )
    spans = PriceSpans(
        sold=sold, **{name: listed.column(letter) for name, letter in _COLUMNS.items()}
    )
    for yarn in yarns:
        for put_up in yarn.put_ups:
            _line(grid, yarn, put_up, spans, shapes)
    listed.close()
    return spans


_COLUMNS = {
    "yarns": "A",
    "packs": "B",
    "grams": "C",
    "balls": "D",
    "prices": "E",
    "per_gram": "G",
    "cheapest": "H",
}


def _yarns(rows: Rows) -> Iterator[Yarn]:
    """Yield the yarns that any size takes, in the order of the workshop."""
    taken = {colour.source.yarn for row in rows.all for colour in row.quote.estimate.colours}
    return (yarn for yarn in rows.first.workshop.yarns if yarn.name in taken)


def _line(grid: Grid, yarn: Yarn, put_up: PutUp, spans: PriceSpans, shapes: Shapes) -> None:
    row, money = grid.next_row, shapes.rate(put_up.price)
    name, grams, balls, price, asked, gram = (beside(letter, row) for letter in "ACDEFG")
    cheaper = f"SUMPRODUCT(--EXACT({spans.yarns},{name}),--({spans.per_gram}<{gram}))"
    least = put_up.price_per_gram == yarn.cheapest_per_gram
    grid.line(
        words(yarn.name),
        words(spans.sold[yarn.name][put_up]),
        counted(put_up.weight_g, TENTHS),
        counted(put_up.pack, COUNT),
        yours(put_up.price, money, AMOUNT.called("price of a pack")),
        quoted(put_up.price, money),
        reckoned(f"{price}/({balls}*{grams})", put_up.price_per_gram, shapes.fine_money),
        reckoned(f"IF({cheaper}=0,1,0)", int(least), COUNT),
        faults=[_moved_apart(spans, price, asked, name)],
    )


def _moved_apart(spans: PriceSpans, price: str, asked: str, name: str) -> Fault:
    """Return that a price has moved by another share than the others of its yarn."""
    quoted_prices = Span(spans.prices.sheet, "F", spans.prices.first, spans.prices.last)
    now, then = (total_where(each, (spans.yarns, name)) for each in (spans.prices, quoted_prices))
    return Fault(f"ROUND({price}*{then}-{asked}*{now},6)<>0", CHOSEN_ANEW)


def known(spans: PriceSpans, yarn: str, pack: str = "") -> str:
    """Return how many lines of the list have the words of two cells, as an expression."""
    named = (spans.packs, pack)
    return count_where((spans.yarns, yarn), *([named] if pack else []))


def pack_of(spans: PriceSpans, figures: Span, yarn: str, pack: str) -> str:
    """Return a figure of the pack that two cells name."""
    return total_where(figures, (spans.yarns, yarn), (spans.packs, pack))


def cheapest_gram(spans: PriceSpans, yarn: str) -> str:
    """Return what a gram of a yarn costs at the least; of several that cost so, the same."""
    told = f"--EXACT({spans.yarns},{yarn}),{spans.cheapest}"
    return f"SUMPRODUCT({told},{spans.per_gram})/SUMPRODUCT({told})"
