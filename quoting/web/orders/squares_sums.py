"""How motifs and their joins were counted, as sums to be done again by hand."""

from __future__ import annotations

from collections import Counter

from quoting.core.order.joined_squares import SEWN, JoinedSquares
from quoting.core.plan.passes import Work
from quoting.core.plan.squares.seams import YARN_SEWN
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.rounds import RoundCount, Rounds
from quoting.web.orders.reckonings import DIGITS
from quoting.web.orders.room_sums import room_sum, times_sum
from quoting.wording import Speech


def squares_of(quote: Quote) -> JoinedSquares:
    """Return the body of a quote whose blanket is made of joined motifs."""
    body = quote.order.design.body
    assert isinstance(body, JoinedSquares), "these are the sums of motifs"  # noqa: S101
    return body


def grid_of(quote: Quote) -> SquaresGrid:
    """Return which motif lies where."""
    assert quote.plan.grid is not None, "joined motifs lie in a grid"  # noqa: S101
    return quote.plan.grid


def across_sums(quote: Quote, say: Speech) -> list[str]:
    """Return how the motifs across and down follow from the size, or are the maker's own."""
    body, design, grid = squares_of(quote), quote.order.design, grid_of(quote)
    asked = (
        ("across", body.columns, design.width_cm, grid.columns),
        ("down", body.rows, design.height_cm, grid.rows),
    )
    each_cm = grid.side_cm + grid.gap_cm
    return [
        f"{way.capitalize()}: {say.number(count)}, your own count"
        if own is not None
        else f"{way.capitalize()}: {room_sum(side, each_cm, quote, say, more_cm=grid.gap_cm)}"
        for way, own, side, count in asked
    ]


def across_words(quote: Quote, say: Speech) -> str:
    """Return what these sums say."""
    grid = grid_of(quote)
    motif = f"a motif of {say.length(grid.side_cm, DIGITS)}"
    if not grid.gap_cm:
        return f"The finished side less the border on both sides, by {motif}, to the nearest."
    gap = say.length(grid.gap_cm, DIGITS)
    return (
        f"The finished side less the border on both sides and with one join more, by {motif} and "
        f"{gap} of its join, to the nearest."
    )


def motif_rounds(quote: Quote, say: Speech) -> list[str]:
    """Return what each round of a motif has: `Round 1: 12 stitches, 8 chains`."""
    return [
        f"Round {number}: {_round_words(count, say)}"
        for number, count in enumerate(_round_counts(quote), 1)
    ]


def motif_stitches(quote: Quote) -> int:
    """Return the stitches of one motif, chains left out."""
    return sum(count.stitches for count in _round_counts(quote))


def edges_sum(quote: Quote, say: Speech) -> str:
    """Return how many edges meet, and on how many lines."""
    grid = grid_of(quote)
    columns, rows = grid.columns, grid.rows
    return (
        f"{rows} × ({columns} − 1) + {columns} × ({rows} − 1) = {say.number(grid.shared_edges)} "
        f"edges; ({columns} − 1) + ({rows} − 1) = {say.number(grid.seam_lines)} lines; "
        f"{times_sum(grid.shared_edges, grid.side_cm, say)}"
    )


def join_yarn_words(quote: Quote, say: Speech) -> str:
    """Return what the join is made of: its stitches, or its needlefuls; empty if nothing more."""
    plan, method = quote.plan, squares_of(quote).join.method
    seams = plan.of_work(Work.SEAM)
    if method in SEWN:
        needlefuls = sum(plan.times(seam) for seam in seams)
        sewn = say.trimmed(YARN_SEWN[method], 1)
        return f"{sewn} times as much yarn as there is to sew, in {needlefuls} needlefuls."
    stitches: Counter[str] = Counter()
    for seam in seams:
        for stitch, count in seam.stitches.items():
            stitches[stitch] += count * plan.times(seam)
    said = [f"{say.number(count)} {say.stitch(stitch)}" for stitch, count in stitches.items()]
    return f"{' and '.join(said)} in the joins." if said else ""


def _round_counts(quote: Quote) -> list[RoundCount]:
    motif, counted = _motif_counted(quote)
    rounds = squares_of(quote).rounds or motif.rounds
    return [counted.round(number) for number in range(1, rounds + 1)]


def _motif_counted(quote: Quote) -> tuple[Motif, Rounds]:
    motif = quote.workshop.motif(squares_of(quote).motif)
    return motif, motif.counted(quote.workshop.basic_stitch(motif.stitch, "stitch"))


def _round_words(count: RoundCount, say: Speech) -> str:
    said = say.count(count.stitches, "stitch", "stitches")
    return f"{said}, {say.count(count.chains, 'chain')}" if count.chains else said
