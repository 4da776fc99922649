"""What was told of one yarn over all its colours: what it took, and what was planned of it."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.yarn_needed import StitchIn
from quoting.core.making.log_lines import LogEntry, YarnUsed
from quoting.core.making.made_rows import made_rows
from quoting.core.making.planned_yarn import PlannedYarn, planned_yarn
from quoting.core.making.progress import of_colour
from quoting.core.making.yarn_left import yarn_use
from quoting.core.making.yarn_use import YarnUse
from quoting.core.quote.quote import Quote

SCALE_STEP_G = 1.0
"""What a kitchen scale shows, by which yarn is taken to be weighed: common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnTold:
    """What was told of one yarn, until when, and of which stitches.

    `use` is without what extras were given; `all_m` is what all its colours were planned to take,
    also those that nothing was told of.
    """

    use: YarnUse
    all_m: float
    grams: float
    day: date
    stitches: tuple[StitchIn, ...]

    @property
    def share(self) -> float:
        """How much of the work in this yarn was told of, from 0 to 1."""
        return self.use.planned_m / self.all_m

    @property
    def unsure_by(self) -> float:
        """The step of the scale as a part of all that was told."""
        return SCALE_STEP_G / self.grams


def colours_by_yarn(quote: Quote) -> Mapping[str, Sequence[ColourEstimate]]:
    """Return the colours of each yarn of a quote."""
    by_yarn: dict[str, list[ColourEstimate]] = {}
    for colour in quote.estimate.colours:
        by_yarn.setdefault(colour.source.yarn, []).append(colour)
    return by_yarn


def yarn_told(
    quote: Quote, entries: tuple[LogEntry, ...], colours: Sequence[ColourEstimate]
) -> YarnTold | None:
    """Return what was told of the colours of one yarn; None where that is nothing."""
    rows, uses, lines, all_m = made_rows(quote), list[YarnUse](), list[YarnUsed](), 0.0
    stitches: dict[StitchIn, None] = {}
    for colour in colours:
        own = of_colour(quote, entries, YarnUsed, colour.colour)
        planned = planned_yarn(colour, rows)
        all_m += planned.reach_m[-1]
        use = _in_stitches(planned, *yarn_use(colour, planned, own))
        if use.planned_m and use.used_m:
            uses.append(use)
            lines += own
            stitches |= dict.fromkeys(colour.yarn.counts)
    if not uses:
        return None
    return YarnTold(
        use=YarnUse(
            used_m=math.fsum(use.used_m for use in uses),
            planned_m=math.fsum(use.planned_m for use in uses),
        ),
        all_m=all_m,
        grams=math.fsum(line.used_g for line in lines),
        day=max(line.day for line in lines),
        stitches=tuple(stitches),
    )


def _in_stitches(planned: PlannedYarn, use: YarnUse, upto: int) -> YarnUse:
    """Return the yarn without that of extras, which is told of with the last of a colour's rows."""
    if planned.left_m(upto):
        return use
    return replace(use, used_m=max(0.0, use.used_m - planned.extras_m))
