"""Which of several quotes pays best for an hour, and what lets it.

The hours are what the maker has too few of, so the best is the one that earns most for each
(contribution per unit of the limiting factor, cost accounting).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from enum import StrEnum

from quoting.core.estimate.chores import Part
from quoting.core.ground.money import MINUTES_PER_HOUR, exact
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote

BLOCK_MOTIF = "block_motif"
"""The name of the minutes of blocking a motif."""


class Reason(StrEnum):
    """What lets the best size pay better than the others."""

    ENDS = "ends"
    SKEIN_STEPS = "skein-steps"
    FIXED_HOURS = "fixed-hours"
    PRICE = "price"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shares:
    """What makes up an hour's earnings, all for one hour at the stitches.

    `brought` is the money brought in after all costs but pay and the yarn left over, which costs
    `unused`; `ends` and `fixed` are the hours of weaving in, and of finishing and office.
    """

    brought: Decimal
    unused: Decimal
    ends: Decimal
    fixed: Decimal

    @property
    def earned(self) -> Decimal:
        """What an hour earns."""
        return (self.brought - self.unused) / (1 + self.ends + self.fixed)


def best_of(earned_per_hour: Sequence[Decimal]) -> int:
    """Return the index of the most that is earned for an hour; of equals, the first."""
    return max(range(len(earned_per_hour)), key=lambda n: (earned_per_hour[n], -n))


def why_best(quotes: Sequence[Quote], best: int) -> Reason:
    """Return which of ends, skein steps and fixed hours lets the best quote earn more.

    It is the one that would cost the best most, were it as it is with the others on average.
    Where none would, or the money it brings in would cost it more than all three, it is the price.
    """
    found = [_shares(quote) for quote in quotes]
    own, others = found[best], [shares for n, shares in enumerate(found) if n != best]
    shares = [each for each in others if each is not None]
    if own is None or not shares:
        return Reason.PRICE
    usual = _mean(shares)
    spared = {
        Reason.ENDS: own.earned - replace(own, ends=usual.ends).earned,
        Reason.SKEIN_STEPS: own.earned - replace(own, unused=usual.unused).earned,
        Reason.FIXED_HOURS: own.earned - replace(own, fixed=usual.fixed).earned,
    }
    by_price = own.earned - replace(own, brought=usual.brought).earned
    reason = max(spared, key=lambda reason: spared[reason])
    return reason if spared[reason] > 0 and sum(spared.values()) >= by_price else Reason.PRICE


def _shares(quote: Quote) -> _Shares | None:
    """Return what makes up a quote's earnings; None where the stitches take no time to speak of."""
    hours, price = quote.estimate.hours, quote.price
    ends = hours.of(Part.WEAVING_IN)
    fixed = hours.of(Part.FINISHING) + hours.of(Part.OFFICE) - _blocking_motifs(quote)
    worked = hours.total - ends - fixed
    if worked <= 0:
        return None
    unused = _unused_yarn(quote) * price.amount(LineKind.YARN)
    own = price.profit + price.own_pay
    return _Shares(
        brought=(own + unused) / worked,
        unused=unused / worked,
        ends=ends / worked,
        fixed=fixed / worked,
    )


def _blocking_motifs(quote: Quote) -> Decimal:
    """Return the hours of finishing that go by motifs: not every size takes them alike."""
    tasks = (task for task in quote.estimate.hours.tasks if task.what == BLOCK_MOTIF)
    return exact(math.fsum(task.minutes for task in tasks)) / MINUTES_PER_HOUR


def _unused_yarn(quote: Quote) -> Decimal:
    """Return the share of all the yarn that is expected to be left."""
    left = quote.estimate.metres_left
    held = sum(sum(colour.balls_m) for colour in quote.estimate.colours)
    return exact(left / held) if held else Decimal(0)


def _mean(shares: Sequence[_Shares]) -> _Shares:
    def mean(values: Sequence[Decimal]) -> Decimal:
        return sum(values, Decimal(0)) / len(values)

    return _Shares(
        brought=mean([each.brought for each in shares]),
        unused=mean([each.unused for each in shares]),
        ends=mean([each.ends for each in shares]),
        fixed=mean([each.fixed for each in shares]),
    )
