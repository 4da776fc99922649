"""The packs to buy of each colour: as chosen, and how many would do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from exports.costing_workbook.yarn.colour_lines import TITLE as COLOURS
from exports.costing_workbook.yarn.colour_lines import ColourLines
from exports.costing_workbook.yarn.found_lines import FoundLines
from exports.costing_workbook.yarn.prices_block import TITLE as PRICES
from exports.costing_workbook.yarn.prices_block import PriceLines
from exports.costing_workbook.yarn.shelf_block import ShelfLines
from exports.costing_workbook.yarn.yarn_assumptions_block import Assumptions
from exports.sheets.cells import Cell, counted, heads, reckoned, rounded, words, yours
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from exports.sheets.rules import COUNT as COUNT_RULE
from exports.told_apart import put_up_words
from quoting.core.estimate.enough import ROUNDING_M, packs_enough
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import Bought
from quoting.core.ground.money import round_money
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Join

TITLE = "To buy"


@dataclass(frozen=True, slots=True)
class PackLines:
    """What is bought: found by colour, yarn and how it is sold."""

    found: FoundLines

    def balls(self, colour: str) -> str:
        """Return the balls of a colour."""
        return self.found.total("G", colour)

    def length(self, colour: str) -> str:
        """Return the length of them."""
        return self.found.total("H", colour)

    def ways(self, colour: str) -> str:
        """How many lines there are of a colour."""
        return self.found.count(colour)

    def wanted(self, colour: str) -> str:
        """Return the packs wanted of a colour that has one line."""
        return self.found.total("F", colour)

    def packs(self, colour: str, sold: str) -> str:
        """Return the packs of a colour that are sold so."""
        return self._sold(sold, colour, "E")

    def price(self, colour: str, sold: str) -> str:
        """Return the price of one of them."""
        count = self._sold(sold, colour)
        return f"IF({count}=0,0,{self._sold(sold, colour, 'J')}/{count})"

    def price_per_gram(self, colour: str) -> str:
        """Return the price of a gram of all packs of a colour together."""
        column, grams = self.found.lines.column, self.found.total("I", colour)
        told = f"--EXACT({column('B')},{colour})"
        spent = f"SUMPRODUCT({told},{column('E')},{column('J')})"
        return f"IF({grams}=0,0,{spent}/{grams})"

    @property
    def cost(self) -> str:
        """What all packs cost together."""
        return f"SUM({self.found.lines.column('K')})"

    def _sold(self, sold: str, colour: str, *letters: str) -> str:
        """Return how many lines of a colour are sold so, or the sum of a column over them."""
        column = self.found.lines.column
        columns = [f"--EXACT({column('B')},{colour})", f"--EXACT({column('D')},{sold})"]
        return f"SUMPRODUCT({','.join([*columns, *(str(column(letter)) for letter in letters)])})"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rests:
    """What a line of packs rests on elsewhere in the sheet."""

    found: FoundLines
    colours: ColourLines
    prices: PriceLines
    shelf: ShelfLines
    assumed: Assumptions
    quote: Quote
    shapes: Shapes

    @property
    def at_an_edge(self) -> bool:
        """Whether rows, not metres alone, tell how many balls it takes."""
        return self.quote.workshop.habits.join is Join.AT_AN_EDGE


def packs_block(
    grid: Grid,
    quote: Quote,
    colours: ColourLines,
    prices: PriceLines,
    shelf: ShelfLines,
    assumed: Assumptions,
    shapes: Shapes,
) -> PackLines:
    """Write the packs of every colour, in their order."""
    estimates = quote.estimate.colours
    grid.block(TITLE)
    headings = [
        *heads("", "colour", "yarn", "sold as", "packs", "packs wanted", "balls", figures_from=4),
        *heads(shapes.long_unit, "g", "price of a pack", "cost", figures_from=0),
    ]
    if quote.workshop.habits.join is Join.AT_AN_EDGE:
        whole = "rows" if quote.plan.in_rows else "rounds"
        headings += heads(f"of them for whole {whole}", figures_from=0)
    lines = Lines(grid, sum(len(colour.choice.bought) for colour in estimates), headings)
    rests = _Rests(
        found=FoundLines(lines, "BCD"),
        colours=colours,
        prices=prices,
        shelf=shelf,
        assumed=assumed,
        quote=quote,
        shapes=shapes,
    )
    for colour in estimates:
        for some in colour.choice.bought:
            _packs(grid, colour, some, rests)
    lines.close(1)
    return PackLines(rests.found)


def _packs(grid: Grid, colour: ColourEstimate, some: Bought, rests: _Rests) -> None:
    row, shapes = grid.next_row, rests.shapes
    stuff = rests.quote.workshop.yarn(colour.source.yarn)
    grid.line(
        None,
        words(colour.colour),
        words(stuff.name),
        words(put_up_words(stuff, shapes.speech)[some.put_up]),
        yours(some.packs, COUNT, COUNT_RULE.called("packs")),
        *_figures(row, colour, some, rests),
        faults=[
            rests.colours.found.unknown(COLOURS, f"B{row}"),
            rests.prices.found.unknown(PRICES, f"C{row}", f"D{row}"),
            Fault(f"F{row}<>N(E{row})", f'F{row}&" wanted"'),
        ],
    )


def _figures(row: int, colour: ColourEstimate, some: Bought, rests: _Rests) -> Iterator[Cell]:
    """Yield F to L: packs wanted, balls, length, weight, price, cost, and what rows ask for."""
    put_up, shapes, prices = some.put_up, rests.shapes, rests.prices
    sold, packs = (f"C{row}", f"D{row}"), f"N(E{row})"
    yield reckoned(_wanted(row, rests), some.packs, COUNT)
    yield reckoned(f"{packs}*{prices.pack(*sold)}", some.balls, COUNT)
    length = some.balls * shapes.long(put_up.length_m)
    yield reckoned(f"G{row}*{prices.length(*sold)}", length, TENTHS)
    yield reckoned(f"G{row}*{prices.grams(*sold)}", some.balls * put_up.weight_g, COUNT)
    yield reckoned(prices.price(*sold), put_up.price, shapes.rate(put_up.price))
    cost = rounded(f"{packs}*J{row}", shapes.digits)
    yield reckoned(cost, round_money(some.cost, shapes.speech.currency), shapes.money)
    if rests.at_an_edge:
        yield counted(some.packs - packs_enough(colour, some), COUNT)


def _wanted(row: int, rests: _Rests) -> str:
    """Return the packs that would do, as `packs_enough`, and those that whole rows or rounds take.

    With no ball at all in hand the first one brings no join.
    """
    colour, sold = f"B{row}", (f"C{row}", f"D{row}")
    tails = f"2*{rests.assumed['tail']}/{rests.shapes.short_per_long}"
    pack = f"({rests.prices.pack(*sold)}*({rests.prices.length(*sold)}-{tails}))"
    rounding = f"{rests.shapes.long(ROUNDING_M)!r}"
    balls = f"({rests.colours.balls_bought(colour)}+{rests.shelf.balls(colour)})"
    spare = f"({rests.colours.spare(colour)}+{rounding}+IF({balls}=0,{tails},0))"
    least = f"IF(AND({balls}=G{row},{rests.colours.to_have(colour)}>0),1,0)"
    enough = f"IF({pack}>0,MAX({least},N(E{row})-INT({spare}/{pack})),N(E{row}))"
    return f"{enough}+N(L{row})" if rests.at_an_edge else enough
