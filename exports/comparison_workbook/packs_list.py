"""The balls that each size takes, where yarn is charged by the gram: what one of them costs."""

from __future__ import annotations

from exports.comparison_workbook.ball_prices import PriceSpans, pack_of
from exports.comparison_workbook.size_rows import Rows
from exports.sheets.cells import Span, beside, counted, heads, reckoned, total_where, words
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import Bought


class PacksList:
    """The list, and what a gram of a size's colour costs by it."""

    def __init__(self, grid: Grid, rows: Rows, prices: PriceSpans, shapes: Shapes) -> None:
        self._prices, self._shapes = prices, shapes
        taken = [
            (sized.name, colour, some)
            for sized in rows.all
            for colour in sized.quote.estimate.colours
            for some in colour.choice.bought
        ]
        grid.block("The balls that each size takes")
        self._listed = Lines(
            grid,
            len(taken),
            [
                *heads("size", "colour", "yarn", "sold as", "packs", figures_from=4),
                *heads("price of a pack", "price of all", "g of all", figures_from=0),
            ],
        )
        for name, colour, some in taken:
            self._write(grid, name, colour, some)
        self._listed.close()

    def of_gram(self, size: str, colour: str) -> str:
        """Return what a gram costs of the balls of the size and the colour in two cells."""
        spent, weight = (
            total_where(
                self._column(letter), (self._column("A"), size), (self._column("B"), colour)
            )
            for letter in "GH"
        )
        return f"{spent}/{weight}"

    def _column(self, letter: str) -> Span:
        return self._listed.column(letter)

    def _write(self, grid: Grid, name: str, colour: ColourEstimate, some: Bought) -> None:
        row, money = grid.next_row, self._shapes.rate(some.put_up.price)
        yarn, pack, packs = (beside(letter, row) for letter in "CDE")
        balls, grams, price = (
            pack_of(self._prices, span, yarn, pack)
            for span in (self._prices.balls, self._prices.grams, self._prices.prices)
        )
        grid.line(
            words(name),
            words(colour.colour),
            words(colour.source.yarn),
            words(self._prices.sold[colour.source.yarn][some.put_up]),
            counted(some.packs, COUNT),
            reckoned(price, some.put_up.price, money),
            reckoned(f"{packs}*{beside('F', row)}", some.cost, money),
            reckoned(f"{packs}*{balls}*{grams}", some.balls * some.put_up.weight_g, TENTHS),
        )
