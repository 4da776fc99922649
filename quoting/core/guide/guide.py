"""The whole guide of a quote: what is worked step by step, where balls end, the ends there are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType

from quoting.core.estimate.ball_ends import BallEnd
from quoting.core.guide.handling import Handling, handlings
from quoting.core.guide.lengths import LengthSoFar, lengths_so_far
from quoting.core.guide.loose_ends import LooseEnd, loose_ends
from quoting.core.guide.motifs import (
    MotifsToMake,
    PartEnds,
    SeamLines,
    ends_of_joins,
    motifs_to_make,
    part_ends,
    seam_lines,
)
from quoting.core.guide.steps import Step, steps_of
from quoting.core.guide.stripes import Stripe, stripes_of
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class UsedUp:
    """Where a ball of a colour is used up, the `number`th from 1 in the order they are taken."""

    colour: str
    number: int
    end: BallEnd


@dataclass(frozen=True, slots=True, kw_only=True)
class Guide:
    """What a maker works from. Steps are those of one blanket, balls and ends those of all.

    `handled` has what is done with the yarn of each pass. Balls that surely last are left out.
    Motifs and seams are told by themselves, not in the steps. `part_ends` are the ends of each part
    of one blanket, were no ball used up; `joined_ends` those that its joined balls leave besides.
    """

    quote: Quote
    steps: tuple[Step, ...]
    handled: tuple[Handling, ...]
    lengths: tuple[LengthSoFar, ...]
    used_up: tuple[UsedUp, ...]
    ends: tuple[LooseEnd, ...]
    motifs: tuple[MotifsToMake, ...] = ()
    seams: tuple[SeamLines, ...] = ()
    part_ends: tuple[PartEnds, ...] = ()
    joined_ends: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))


def guide_of(quote: Quote) -> Guide:
    """Return the guide of a quote, in time that is in proportion to its rows."""
    plan, estimate = quote.plan, quote.estimate
    handled = tuple(handlings(estimate, len(plan.passes)))
    return Guide(
        quote=quote,
        steps=tuple(steps_of(tuple(_told_in_steps(plan, handled)))),
        handled=handled,
        lengths=tuple(lengths_so_far(plan)),
        used_up=balls_used_up(quote),
        ends=loose_ends(estimate.strands),
        motifs=tuple(motifs_to_make(plan, estimate)),
        seams=tuple(seam_lines(plan)),
        part_ends=tuple(part_ends(plan, estimate)),
        joined_ends=ends_of_joins(estimate.strands),
    )


def _told_in_steps(plan: Plan, handled: Sequence[Handling]) -> Iterator[Stripe]:
    """Yield the stripes of all that is not told at once, as motifs and seams are."""
    for stripe in stripes_of(plan.passes, handled, counted=plan.counted is not None):
        if not plan.part_of(stripe.worked).at_once:
            yield stripe


def balls_used_up(quote: Quote) -> tuple[UsedUp, ...]:
    """Return where each ball that may end is used up, colour by colour."""
    return tuple(
        UsedUp(colour=colour.colour, number=number, end=end)
        for colour in quote.estimate.colours
        for number, end in enumerate(colour.ball_ends, 1)
        if end.soonest is not None
    )
