"""The first sheet: the sizes side by side, the charts, what was counted and what was put in."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.charts import Place, earned_chart, stacked_chart
from exports.comparison_workbook.counts_table import CountRefs, counts_table
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.results_table import area_price_words
from exports.comparison_workbook.size_rows import Rows
from exports.comparison_workbook.terms_sheet import Shared
from exports.comparison_workbook.working_sheet import Answers
from exports.sale_formulas.term_cells import GIVEN
from exports.sheets.cells import Cell, Formula, Look, Ref, Span, heads, reckoned, span_of, words
from exports.sheets.grid import LETTERS, Fault, Grid
from exports.sheets.heading import heading
from exports.sheets.legend import legend
from exports.sheets.number_formats import HOURS, ROUGH_SHARE, Shapes
from quoting.core.weighing.best_size import best_of
from quoting.core.weighing.comparison import Rule
from quoting.wording import NO_PRICE_OF_SIZE, NO_SIZE_NAMED
from quoting.wording.shapes import width_note

TITLE = "Sizes"
WIDTHS = (24, *[13] * 11)
FLAGS = "N"
NO_PRICE = "no price"

CHART_LINES = 18
SIDE_BY_SIDE = 10
"""Up to so many sizes two charts fit beside each other."""

ON_A_PAGE = 8
"""Up to so many sizes the charts fit under the answers on a page."""

ANSWERS_ROWS, RULES_ROWS = 7, 3
"""Beside the lines of the sizes: free rows, titles, headings, what is said under them."""

TALL_CM, FULL_CM, LEFT_CM, RIGHT_CM = 9.0, 31, 19, 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted:
    """What was counted of every size, their names, and the row that the answers begin after."""

    counts: list[CountRefs]
    names: Span
    head: int


def write_counts(grid: Grid, rows: Rows, shapes: Shapes) -> Counted:
    """Write what was counted, below the room for the answers; return its cells."""
    quote = rows.first
    head = heading(grid, quote.order.title) + 1
    many = shapes.speech.count(quote.order.quantity, "blanket")
    day = shapes.speech.day(quote.day)
    about = f"The same design at several sizes, {many} of each, {day}"
    note = width_note(quote.plan)
    grid.line(words(f"{about}. {note}" if note else about, Look.NOTE))
    grid.next_row = _rules_at(rows, head) + RULES_ROWS + rows.count + 1
    legend(grid)
    counts = counts_table(grid, rows, shapes)
    names = Span(TITLE, "A", counts[0].area.row, counts[-1].area.row)
    return Counted(counts=counts, names=names, head=head)


def write_answers(
    grid: Grid,
    rows: Rows,
    head: int,
    inputs: list[InputRefs],
    found: Answers,
    shared: Shared,
    shapes: Shapes,
) -> None:
    """Write the answers under the head, and the charts under them."""
    grid.next_row = head + 1
    grid.block("In short")
    headings = grid.line(
        *heads("size", "price of one", "an hour earns", "hours", "no fewer than", "no more than"),
        *heads("profit", "all costs", "the buyer pays", "margin", "hourly pay", figures_from=0),
        *heads(area_price_words(shapes), figures_from=0),
    )
    lines = [_size(grid, at, inputs, found, shapes) for at in range(rows.count)]
    columns = list(zip(headings, *lines, strict=True))
    names, earned, pay = columns[0][1:], columns[2], columns[10]
    grid.line(words(_how_sure(rows), Look.NOTE))
    _best(grid, rows, names, earned[1:], shared)
    if rows.count > ON_A_PAGE:
        grid.break_here()
    grid.gap()
    first, second = _places(rows, grid.next_row)
    stacked_chart(grid, names, found.shares.parts, first, shapes)
    earned_chart(grid, names, earned, pay, second, shapes)
    grid.next_row = _rules_at(rows, head)
    grid.break_here()
    _rules(grid, rows, found, shapes)


def _size(
    grid: Grid, at: int, inputs: list[InputRefs], found: Answers, shapes: Shapes
) -> list[Ref]:
    """Write the answers of one size; of one that has no price, its hours and its costs."""
    sums, result, hours = found.sums[at], found.results[at], inputs[at].hours
    sold, money = sums.sold, shapes.money

    def priced(ref: Ref, shape: str = money, look: Look = Look.PLAIN, other: str = "") -> Cell:
        return Cell(Formula(f'IF({sold.each}>0,{ref},"{other}")', ref.value), look, shape)

    def known(ref: Ref, shape: str) -> Cell:
        return reckoned(str(ref), ref.value, shape)

    return grid.line(
        words(sums.sized.name),
        priced(sold.each, look=Look.STRONG, other=NO_PRICE),
        priced(sold.earned, look=Look.STRONG),
        *(known(ref, HOURS) for ref in (hours.total, hours.low, hours.high)),
        priced(sold.profit),
        known(sums.cost.total, money),
        priced(sold.total),
        priced(result.margin, ROUGH_SHARE),
        known(result.pay, money),
        priced(result.per_area),
        faults=[Fault(f"NOT({sold.each}>0)", f'"{NO_PRICE_OF_SIZE}"')],
    )


def _how_sure(rows: Rows) -> str:
    """Return what the range of the hours promises."""
    if all(sized.quote.estimate.hours.timed_enough for sized in rows.all):
        return "The hours are within their range 19 times in 20."
    return "The range of the hours is a rough one: too few timings promise nothing."


def _best(
    grid: Grid,
    rows: Rows,
    names: tuple[Ref, ...],
    earned: tuple[Ref, ...],
    shared: Shared,
) -> None:
    """Name the size that pays best for an hour, where prices are given; of equals, the first."""
    grid.gap()
    target, hours = shared.terms.target, span_of(earned)
    paid = [some.quote.price.earned_per_hour for some in rows.all[: rows.count]]
    best = rows.all[best_of(paid)].name if target.value == GIVEN else NO_SIZE_NAMED
    found = f"INDEX({span_of(names)},MATCH(MAX({hours}),{hours},0))"
    given = f'AND({target}="{GIVEN}",COUNT({hours})>0)'
    said = Formula(f'IF({given},{found},"{NO_SIZE_NAMED}")', best)
    grid.name("best", grid.line(words("Pays best for an hour"), Cell(said, Look.BLOCK))[1])


def _rules(grid: Grid, rows: Rows, found: Answers, shapes: Shapes) -> None:
    """Write what an hour would earn at the prices of the rules of thumb."""
    grid.block("What an hour would earn by the trade's rules of thumb")
    titles = ("three times the materials", "by area", "by ball")
    grid.line(
        *heads("size", *(word for title in titles for word in (f"price {title}", "an hour earns")))
    )
    for at in range(rows.count):
        cells = [
            reckoned(str(ref), ref.value, shapes.money)
            for rule in Rule
            for ref in (found.rules[rule][at].each, found.rules[rule][at].earned)
        ]
        grid.line(words(rows.all[at].name), *cells)


def _rules_at(rows: Rows, head: int) -> int:
    """Return the row that the rules of thumb begin after: the answers and the charts."""
    answers = head + 1 + ANSWERS_ROWS + rows.count
    return answers + CHART_LINES * (1 if rows.count <= SIDE_BY_SIDE else 2)


def _places(rows: Rows, row: int) -> tuple[Place, Place]:
    """Return where the two charts stand: beside each other, or one under the other."""
    if rows.count <= SIDE_BY_SIDE:
        right = f"{LETTERS[7]}{row}"
        return Place(f"A{row}", LEFT_CM, TALL_CM), Place(right, RIGHT_CM, TALL_CM)
    under = f"A{row + CHART_LINES}"
    return Place(f"A{row}", FULL_CM, TALL_CM), Place(under, FULL_CM, TALL_CM)
