"""Yarn by colour: how much the stitches take, and how sure that is.

Errors combine as JCGM 100 has it: linearly for what shares one, in squares otherwise. Stitches on
one swatch share what it was read by; tension drifts with the whole blanket, and the label is one
for the yarn of a colour, however many swatches there are.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from statistics import NormalDist

from quoting.core.order.design import first_names
from quoting.core.order.order import Order
from quoting.core.plan.gauge import Z_95, Gauge
from quoting.core.plan.passes import Pass, Plan
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.workshop import Workshop

LABEL_ERROR = 0.02
"""Relative standard uncertainty of the length that a ball's label gives."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourYarn:
    """One colour's stitches over all blankets, chains too, and the yarn they take.

    `error` is the relative standard uncertainty of `stitches_m`, widened as the workshop has it.
    `extras_m` is what extras take.
    `borrowed` says that the yarn goes by the swatch of another.
    """

    colour: str
    counts: Mapping[str, int]
    stitches_m: float
    error: float
    extras_m: float = 0.0
    borrowed: bool = False

    @property
    def limits(self) -> float:
        """The 95 % limits of what the work takes, either way, as a share of it."""
        return Z_95 * self.error


def pass_yarn_m(worked: Pass, yarn: str, gauges: Mapping[tuple[str, str], Gauge]) -> float:
    """Return the yarn of one row or round: its stitches and chains, each by its own gauge."""
    return sum(count * gauges[yarn, stitch].yarn_m for stitch, count in worked.stitches.items())


def yarn_by_pass(plan: Plan, order: Order) -> list[float]:
    """Return the metres of each pass, in the order of the plan."""
    sources = {
        colour: order.design.source_of(colour).yarn for colour in {p.colour for p in plan.passes}
    }
    return [pass_yarn_m(p, sources[p.colour], plan.gauges) for p in plan.passes]


def yarn_by_colour(plan: Plan, order: Order, workshop: Workshop) -> tuple[ColourYarn, ...]:
    """Return the yarn of each colour, in the order the colours first come in the work."""
    counts: dict[str, dict[str, int]] = {}
    for worked in plan.passes:
        mine = counts.setdefault(worked.colour, {})
        for stitch, count in worked.stitches.items():
            mine[stitch] = mine.get(stitch, 0) + count * order.quantity
    extras: dict[str, float] = {}
    coloured = [(extra.colour, extra.yarn_m) for extra in order.extras if extra.colour is not None]
    names = first_names(order.design, [*counts, *(colour for colour, _ in coloured)])
    for colour, metres in coloured:
        name = names[colour]
        extras[name] = extras.get(name, 0.0) + metres * order.quantity
    return tuple(
        _colour_yarn(colour, counts.get(colour, {}), extras.get(colour, 0.0), plan, order, workshop)
        for colour in dict.fromkeys([*counts, *(c for c, metres in extras.items() if metres)])
    )


def _colour_yarn(
    colour: str,
    counts: Mapping[str, int],
    extras_m: float,
    plan: Plan,
    order: Order,
    workshop: Workshop,
) -> ColourYarn:
    yarn = order.design.source_of(colour).yarn
    gauges = {stitch: plan.gauges[yarn, stitch] for stitch in counts}
    metres = {stitch: count * gauges[stitch].yarn_m for stitch, count in counts.items()}
    measured = relative_error(metres, gauges, workshop.habits.tension)
    return ColourYarn(
        colour=colour,
        counts=counts,
        stitches_m=math.fsum(metres.values()),
        error=measured * workshop.ranges.yarn,
        extras_m=extras_m,
        borrowed=any(gauge.borrowed_limits for gauge in gauges.values()),
    )


def relative_error(
    metres: Mapping[str, float], gauges: Mapping[str, Gauge], tension: float
) -> float:
    """Return the relative standard uncertainty of a sum of metres by stitch, all of one yarn.

    `tension` is the relative drift between swatch and blanket.
    """
    total = math.fsum(metres.values())
    if not total:
        return 0.0
    by_basis: dict[str, float] = {}
    guesses, borrowed = [], 0.0
    for stitch, length in metres.items():
        gauge = gauges[stitch]
        error = length * gauge.basis_error
        by_basis[gauge.basis] = by_basis.get(gauge.basis, 0.0) + error
        guesses.append(length * gauge.guess_limits / Z_95)
        borrowed += length * gauge.borrowed_limits / Z_95
    known_by = math.hypot(*by_basis.values(), *guesses, borrowed) / total
    return math.hypot(known_by, tension, LABEL_ERROR)


def reserve(error: float, habits: Habits) -> float:
    """Return the share to have on top, so that the yarn is enough with the wanted confidence."""
    if habits.allowance is not None:
        return habits.allowance
    return NormalDist().inv_cdf(habits.confidence) * error


def with_reserve(bare_m: float, extras_m: float, share: float) -> float:
    """Return metres with a share more of all but the extras, whose yarn is given."""
    return (bare_m - extras_m) * (1 + share) + extras_m
