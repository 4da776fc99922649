"""What the yarn of each size costs, line by line, each amount rounded once."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from exports.comparison_workbook.ball_prices import PriceSpans, cheapest_gram, known, pack_of
from exports.comparison_workbook.packs_list import PacksList
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.sheets.cells import (
    Span,
    beside,
    count_where,
    counted,
    heads,
    reckoned,
    rounded,
    total_where,
    words,
)
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, Shapes
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.ground.money import round_half_up
from quoting.core.price.cost_lines import Line, LineKind
from quoting.core.workshop.selling import YarnCharged
from quoting.wording import line_unit

BY_THE_GRAM, FROM_THE_SHELF = "by the gram", "by the gram, from the shelf"
NOT_SOLD = '"no such ball is among the prices"'
NO_SUCH_SIZE = '"no such size is compared"'

FromRow = Callable[[int], str]
"""An expression of a line, from the number of its row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _YarnLine:
    """One line of one size: what it charges, how that is sold, its rate, and if that is known."""

    size: str
    colour: ColourEstimate
    charge: Line
    sold: str
    rate: FromRow
    is_known: FromRow


@dataclass(frozen=True, slots=True)
class AmountSpans:
    """The sizes and the amounts of all lines of yarn, one beside the other."""

    sizes: Span
    amounts: Span

    def of(self, size: str) -> str:
        """Return what the yarn of the size in a cell costs."""
        return total_where(self.amounts, (self.sizes, size))


def yarn_lines(
    grid: Grid, rows: Rows, names: Span, prices: PriceSpans, shapes: Shapes
) -> AmountSpans:
    """Write the yarn of every size; return the columns that are summed by its name."""
    used = rows.first.workshop.pricing.yarn_charged is YarnCharged.USED
    rates = _Rates(prices, PacksList(grid, rows, prices, shapes) if used else None)
    every = [line for sized in rows.all for line in _lines_of(sized, rates)]
    grid.block("The yarn of each size, all blankets of the order together")
    listed = Lines(
        grid,
        len(every),
        [
            *heads("size", "colour", "yarn", "sold as", "quantity", figures_from=4),
            *heads("", "rate", "amount"),
        ],
    )
    for line in every:
        _write(grid, line, names, shapes)
    listed.close()
    return AmountSpans(listed.column("A"), listed.column("H"))


@dataclass(frozen=True, slots=True)
class _Rates:
    """What the lines are charged at, each by the words of its own line."""

    prices: PriceSpans
    taken: PacksList | None

    def is_yarn(self, row: int) -> str:
        return known(self.prices, beside("C", row))

    def is_pack(self, row: int) -> str:
        return known(self.prices, beside("C", row), beside("D", row))

    def pack(self, row: int) -> str:
        return pack_of(self.prices, self.prices.prices, beside("C", row), beside("D", row))

    def gram_of_shelf(self, row: int) -> str:
        return cheapest_gram(self.prices, beside("C", row))

    def gram_of_balls(self, row: int) -> str:
        assert self.taken is not None, "only what is charged by the gram asks"  # noqa: S101
        return self.taken.of_gram(beside("A", row), beside("B", row))


def _lines_of(sized: Sized, rates: _Rates) -> Iterator[_YarnLine]:
    """Yield a size's lines in the order of its quote: of each colour what the shelf gives first."""
    charges = iter([line for line in sized.quote.price.lines if line.kind is LineKind.YARN])

    def line(colour: ColourEstimate, sold: str, rate: FromRow, is_known: FromRow) -> _YarnLine:
        return _YarnLine(
            size=sized.name,
            colour=colour,
            charge=next(charges),
            sold=sold,
            rate=rate,
            is_known=is_known,
        )

    for colour in sized.quote.estimate.colours:
        if round_half_up(colour.from_stock_g, 0):
            yield line(colour, FROM_THE_SHELF, rates.gram_of_shelf, rates.is_yarn)
        if rates.taken and colour.choice.bought:
            yield line(colour, BY_THE_GRAM, rates.gram_of_balls, rates.is_yarn)
            continue
        for some in colour.choice.bought:
            sold = rates.prices.sold[colour.source.yarn][some.put_up]
            yield line(colour, sold, rates.pack, rates.is_pack)


def _write(grid: Grid, line: _YarnLine, names: Span, shapes: Shapes) -> None:
    row, charge = grid.next_row, line.charge
    size = f"{count_where((names, beside('A', row)))}<>1"
    product = rounded(f"{beside('E', row)}*{beside('G', row)}", shapes.digits)
    grid.line(
        words(line.size),
        words(line.colour.colour),
        words(line.colour.source.yarn),
        words(line.sold),
        counted(charge.quantity, COUNT),
        words(line_unit(charge, shapes.speech)),
        reckoned(line.rate(row), charge.rate, shapes.rate(charge.rate)),
        reckoned(product, charge.amount, shapes.money),
        faults=[Fault(size, NO_SUCH_SIZE), Fault(f"{line.is_known(row)}=0", NOT_SOLD)],
    )
