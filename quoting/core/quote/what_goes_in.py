"""What goes into the blankets of a quote, as far as their maker has her buyers told of it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from quoting.core.ground.money import exact, round_half_up
from quoting.core.order.design import EndsBecome
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.plan.passes import Plan
from quoting.core.quote.fate_of_ends import woven_besides
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch


class GoesIn(StrEnum):
    """What is counted of the work: rows, or rounds from a centre, or motifs that are joined.

    Ends by what becomes of them: `ENDS` are woven in.
    """

    STITCHES = "stitches"
    ROWS = "rows"
    ROUNDS = "rounds"
    MOTIFS = "motifs"
    YARN = "yarn"
    ENDS = "ends"
    ENDS_WORKED_OVER = "ends-worked-over"
    ENDS_ENCLOSED = "ends-enclosed"
    ENDS_FRINGE = "ends-fringe"
    HOURS = "hours"


ENDS = {
    EndsBecome.WOVEN_IN: GoesIn.ENDS,
    EndsBecome.WORKED_OVER: GoesIn.ENDS_WORKED_OVER,
    EndsBecome.ENCLOSED: GoesIn.ENDS_ENCLOSED,
    EndsBecome.FRINGE: GoesIn.ENDS_FRINGE,
}
"""How ends are counted, by what becomes of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ingredient:
    """How much of something goes into all the blankets: a count, whole metres, or hours."""

    code: GoesIn
    amount: Decimal


def what_goes_in(quote: Quote) -> Iterator[Ingredient]:
    """Yield each that the workshop's documents tell; of the hours, those of making.

    Chains are no stitches, and rounds of a border no rows, as a maker counts them.
    """
    told, estimate, plan = quote.workshop.documents, quote.estimate, quote.plan
    if told.stitches:
        yield _counted(GoesIn.STITCHES, _stitches(quote))
    if told.rows:
        for code, count in _of_body(plan):
            yield _counted(code, count * quote.order.quantity)
    if told.yarn:
        metres = math.fsum(colour.metres for colour in estimate.colours)
        yield Ingredient(code=GoesIn.YARN, amount=round_half_up(exact(metres), 0))
    if told.ends:
        yield from _ends(quote)
    if told.hours:
        yield Ingredient(code=GoesIn.HOURS, amount=estimate.hours.making)


def _ends(quote: Quote) -> Iterator[Ingredient]:
    """Yield the ends by what becomes of them; those that lie within are woven in."""
    become, estimate = quote.order.design.ends, quote.estimate
    within = woven_besides(quote)
    if within < estimate.ends:
        yield _counted(ENDS[become], estimate.ends - within)
    if within:
        yield _counted(GoesIn.ENDS, within)


def _of_body(plan: Plan) -> Iterator[tuple[GoesIn, int]]:
    """Yield what the body of one blanket is counted in, and how many; of motifs each has its own.

    The last rounds that join them are as many rounds as there are motifs.
    """
    if plan.grid is not None:
        yield GoesIn.MOTIFS, plan.grid.count
        made = layouts_made(plan)
        yield GoesIn.ROUNDS, sum(each.count * len(each.colours) for each in made)
        return
    code = GoesIn.ROWS if plan.in_rows else GoesIn.ROUNDS
    yield code, len(plan.rows)


def _counted(code: GoesIn, count: int) -> Ingredient:
    return Ingredient(code=code, amount=Decimal(count))


def _stitches(quote: Quote) -> int:
    """Return the stitches of all the blankets, borders too."""
    counts = (colour.yarn.counts for colour in quote.estimate.colours)
    return sum(n for of in counts for made, n in of.items() if made.stitch != Stitch.CH)
