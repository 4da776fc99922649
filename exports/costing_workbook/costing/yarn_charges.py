"""The yarn lines of the costs: each reads what is bought and used by the words it bears itself.

So a line of packs that is copied or taken out changes the costs as it should, and breaks nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.costing.charge import KIND_WORDS, Charge
from exports.costing_workbook.yarn.yarn_sheet import YarnRefs
from exports.sheets.cells import Formula, reckoned, rounded
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, Shapes
from exports.told_apart import put_up_words
from quoting.core.ground.money import round_half_up
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import YarnCharged
from quoting.wording import yarn_line_parts

SHELF, FURTHER = "from the shelf", "packs added under To buy"
GRAMS = "g"
"""The unit of what is charged by weight."""


@dataclass(frozen=True, slots=True)
class _Said:
    """A yarn line of the quote, in the words of its line on the sheet: what it is, how sold."""

    line: Line
    what: str
    sold: str
    from_shelf: bool = False

    def colour(self, row: int) -> str:
        """Return the colour as it stands in the line's first cell, after what all have there."""
        before = len(self.what) - len(self.line.subject)
        return f"MID(A{row},{before + 1},LEN(A{row}))"


def yarn_charges(quote: Quote, yarn: YarnRefs, shapes: Shapes, first_row: int) -> list[Charge]:
    """Return the yarn lines: from the shelf, then bought or used, as the quote has them.

    They stand under one another on the sheet of the costing, from `first_row`. Where packs are
    charged, a last line is for those that were added to the packs and have no line there.
    """
    lines = list(_lines(quote, shapes))
    charges = [_charge(said, row, yarn, shapes) for row, said in enumerate(lines, first_row)]
    if quote.workshop.pricing.yarn_charged is YarnCharged.USED:
        return charges
    return [*charges, _further(yarn, shapes)]


def _lines(quote: Quote, shapes: Shapes) -> Iterator[_Said]:
    """Yield the yarn lines of the quote, which come colour by colour, the shelf first."""
    lines = iter([line for line in quote.lines if line.kind is LineKind.YARN])
    used = quote.workshop.pricing.yarn_charged is YarnCharged.USED
    for colour in quote.estimate.colours:
        said = put_up_words(quote.workshop.yarn(colour.source.yarn), shapes.speech)
        if round_half_up(colour.from_stock_g, 0):
            line = next(lines)
            what, sold = yarn_line_parts(line, shapes.speech)
            yield _Said(line, what, f"{SHELF}, {sold}", from_shelf=True)
        for some in colour.choice.bought[:1] if used else colour.choice.bought:
            line = next(lines)
            what, sold = yarn_line_parts(line, shapes.speech)
            yield _Said(line, what, sold if used else said[some.put_up])


def _charge(said: _Said, row: int, yarn: YarnRefs, shapes: Shapes) -> Charge:
    """Return one line: grams from the shelf, grams used, or packs."""
    line, colour = said.line, said.colour(row)
    if line.unit is not Unit.GRAM:
        quantity = yarn.packs.packs(colour, f"B{row}")
        rate, shape = yarn.packs.price(colour, f"B{row}"), shapes.rate(line.rate)
    elif said.from_shelf:
        quantity = yarn.colours.shelf_grams(colour)
        rate, shape = yarn.shelf.price_per_gram(colour), shapes.fine_money
    else:
        quantity = f"{yarn.colours.grams(colour)}-{yarn.colours.shelf_grams(colour)}"
        rate, shape = yarn.packs.price_per_gram(colour), shapes.fine_money
    return Charge(
        line,
        reckoned(quantity, line.quantity, COUNT),
        reckoned(rate, line.rate, shape),
        what=said.what,
        detail=said.sold,
    )


def _further(yarn: YarnRefs, shapes: Shapes) -> Charge:
    """Return the line of all packs of which no other line tells; as written there are none."""
    nothing = Decimal(0)
    line = Line(kind=LineKind.YARN, quantity=nothing, unit=Unit.PACK, rate=nothing, amount=nothing)

    def untold(lines: Lines) -> Formula:
        """Return what all packs cost but those that a line of the costs tells of."""
        kinds, units = lines.figures("H"), lines.figures("D")
        product = rounded(f"{lines.figures('C')}*{lines.figures('E')}", shapes.digits)
        packs = f'--({kinds}="{KIND_WORDS[LineKind.YARN]}"),--({units}<>"{GRAMS}")'
        told = f"SUMPRODUCT({packs},{product})"
        return Formula(rounded(f"{yarn.packs.cost}-{told}", shapes.digits), nothing)

    return Charge(line, None, None, what="Yarn", detail=FURTHER, amount=untold)
