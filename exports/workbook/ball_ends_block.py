"""Where each ball is used up: expected, and how much sooner or later it may be."""

from __future__ import annotations

from exports.workbook.cells import counted, heads, words
from exports.workbook.grid import Grid
from quoting.core.passes import Plan
from quoting.core.quote import Quote
from quoting.core.strands import Point
from quoting.wording import point_words


def ball_ends_block(grid: Grid, quote: Quote) -> None:
    """Write where every ball that runs out does so; nothing where all of them last."""
    rows = [
        (colour.colour, number, end)
        for colour in quote.estimate.colours
        for number, end in enumerate(colour.ball_ends, 1)
        if end.expected is not None
    ]
    if not rows:
        return
    grid.block("Where balls are used up")
    grid.line(*heads("", "colour", "expected", "ball", "soonest", "", "latest", figures_from=9))
    for colour, number, end in rows:
        grid.line(
            None,
            words(colour),
            words(_place(end.expected, quote.plan)),
            counted(number),
            words(_place(end.soonest, quote.plan)),
            None,
            words(_place(end.latest, quote.plan)),
        )


def _place(point: Point | None, plan: Plan) -> str:
    return "it lasts" if point is None else point_words(point, plan)
