"""Where each ball is used up: expected, and how much sooner or later it may be."""

from __future__ import annotations

from exports.sheets.cells import Look, heads, words
from exports.sheets.grid import Grid
from quoting.core.estimate.strands import Point
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote
from quoting.wording import point_words

APART = 4


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
    grid.line(
        *heads("", "colour", "ball", *_spread("expected", "soonest", "latest"), figures_from=99)
    )
    for colour, number, end in rows:
        places = (_place(point, quote.plan) for point in (end.expected, end.soonest, end.latest))
        said = [words(text, Look.NOTE) if text else None for text in _spread(*places)]
        grid.line(None, words(colour), words(str(number)), *said)


def _spread(*texts: str) -> list[str]:
    """Return texts a few columns apart, so that each has room."""
    return [part for text in texts for part in (text, *[""] * (APART - 1))]


def _place(point: Point | None, plan: Plan) -> str:
    return "it lasts" if point is None else point_words(point, plan)
