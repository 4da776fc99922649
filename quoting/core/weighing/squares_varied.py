"""Joined squares with a column or a row of motifs less and more.

What they close on becomes the maker's own counts, of which one is varied; the size that is asked
stays as it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from quoting.core.order.design import Design
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.quote.quote import Quote
from quoting.core.weighing.variations import Variation, Varied, both_ways


def squares_varied(quote: Quote, body: JoinedSquares) -> Iterator[Variation]:
    """Yield a column of motifs less and more, then a row; layouts that were counted get shares."""
    grid, design, free = quote.plan.grid, quote.order.design, body.resized()
    assert grid is not None, "squares lie in a grid"  # noqa: S101
    columns, rows = grid.columns, grid.rows
    yield from both_ways(
        Varied.COLUMN,
        lambda by: replace(design, body=replace(free, columns=columns + by, rows=rows)),
    )
    yield from both_ways(
        Varied.MOTIF_ROW,
        lambda by: replace(design, body=replace(free, columns=columns, rows=rows + by)),
    )


def squares_held(quote: Quote, body: JoinedSquares, design: Design) -> Design:
    """Return a design of another border whose body has the motifs that it had."""
    grid = quote.plan.grid
    assert grid is not None, "squares lie in a grid"  # noqa: S101
    return replace(design, body=replace(body, columns=grid.columns, rows=grid.rows))
