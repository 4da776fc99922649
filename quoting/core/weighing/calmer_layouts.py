"""Motifs of fewer colours each, which leave fewer ends: AABBC in place of ABCDE.

Over all motifs the colours are what they were: the inner rounds of a layout are worked in runs, and
each of its colours begins as many motifs, so that it comes as often at every place. Where all
motifs end in the same rounds, they keep them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from itertools import groupby

from quoting.core.ground.errors import Refused
from quoting.core.order.joined_squares import JoinedSquares, Layout
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote
from quoting.core.weighing.alternatives import Alternative, Nearby, check_size, first_that_keep


@dataclass(frozen=True, slots=True, kw_only=True)
class _Coloured:
    """So many motifs with these inner rounds, from the centre outwards."""

    inner: tuple[str, ...]
    count: int

    @property
    def colours(self) -> tuple[str, ...]:
        """Its colours, each once."""
        return tuple(dict.fromkeys(self.inner))


def calmer_layouts(quote: Quote, *, today: date) -> tuple[Alternative, ...]:
    """Return up to three designs of fewer colours a motif, the fewest ends first.

    Nothing is offered where the ends are few. Errors: as `check_size`.
    """
    check_size(quote)
    body = quote.order.design.body
    assert isinstance(body, JoinedSquares), "told by its class"  # noqa: S101
    if quote.estimate.ends < MANY_ENDS:
        return ()
    return first_that_keep(
        quote,
        _in_fewer_runs(quote, body),
        lambda other: other.estimate.ends < quote.estimate.ends,
        today=today,
    )


def _in_fewer_runs(quote: Quote, body: JoinedSquares) -> Iterator[Nearby]:
    """Yield the body in runs of fewer colours, from one on; none of more layouts than it may have.

    Motifs are not compared one by one, so how far off it is goes by the layouts.
    """
    motifs, outer = _motifs(quote)
    most = max(len(list(groupby(motif.inner))) for motif in motifs)
    for runs in range(1, most):
        layouts, distance = _in_runs(motifs, outer, runs)
        with suppress(Refused):
            yield Nearby(body=replace(body, layouts=layouts, pool=None), distance=distance)


def _motifs(quote: Quote) -> tuple[list[_Coloured], tuple[str, ...]]:
    """Return the motifs of each layout, and the rounds that all of them end in."""
    layouts = layouts_made(quote.plan)
    first, colours = layouts[0], [layout.own_colours for layout in layouts]
    same = _same_at_the_end(colours, joined_on=bool(first.joined_on))
    inner = len(first.own_colours) - same
    found = [_Coloured(inner=each.colours[:inner], count=each.count) for each in layouts]
    return found, first.colours[inner:]


def _same_at_the_end(layouts: Sequence[tuple[str, ...]], *, joined_on: bool) -> int:
    """Return how many last rounds all motifs have alike; of a single layout the last alone.

    `joined_on`: after these comes a round that joins all of them.
    """
    rounds = len(layouts[0])
    if len(layouts) == 1:
        return 0 if joined_on else min(1, rounds - 1)
    for same in range(rounds):
        if len({colours[rounds - 1 - same] for colours in layouts}) > 1:
            return same
    return rounds - 1


def _in_runs(
    motifs: Sequence[_Coloured], outer: tuple[str, ...], runs: int
) -> tuple[tuple[Layout, ...], float]:
    """Return layouts of so many runs inside, and the share of rounds in another colour."""
    shares: dict[tuple[str, ...], float] = {}
    elsewhere = total = 0.0
    for motif in motifs:
        for inner in _turned(motif, runs):
            share = motif.count / len(motif.colours)
            shares[inner] = shares.get(inner, 0.0) + share
            other = sum(a != b for a, b in zip(inner, motif.inner, strict=True))
            elsewhere += share * other
            total += share * (len(inner) + len(outer))
    layouts = (Layout(colours=(*inner, *outer), share=part) for inner, part in shares.items())
    return tuple(layouts), elsewhere / total


def _turned(motif: _Coloured, runs: int) -> Iterator[tuple[str, ...]]:
    """Yield the inner rounds in so many runs, begun by each of the colours in turn."""
    colours, rounds = motif.colours, len(motif.inner)
    of_each = min(runs, len(colours))
    for first in range(len(colours)):
        yield tuple(
            colours[(first + place * of_each // rounds) % len(colours)] for place in range(rounds)
        )
