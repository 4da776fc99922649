"""Yarn by colour: how much the stitches take, and how sure that is.

Errors combine as JCGM 100 has it: linearly for what shares one, in squares otherwise. Stitches on
one swatch share what it was read by; tension drifts with the whole blanket, and the label is one
for the yarn of a colour, however many swatches there are.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field
from statistics import NormalDist
from typing import NamedTuple, TypeVar

from quoting.core.order.design import first_names
from quoting.core.order.order import Order
from quoting.core.plan.gauge import BY_SWATCH, ESTIMATED_LIMITS, Z_95, Fabric, Gauge, Made
from quoting.core.plan.passes import Pass, Plan
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.workshop import Workshop

LABEL_ERROR = 0.02
"""Relative standard uncertainty of the length that a ball's label gives."""


class StitchIn(NamedTuple):
    """A stitch, `ch` too, as it is worked in a fabric."""

    stitch: str
    fabric: Fabric = BY_SWATCH

    def made(self, yarn: str) -> Made:
        """Return what has a gauge: it in a yarn."""
        return Made(yarn, self.stitch, self.fabric)


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourYarn:
    """One colour's stitches over all blankets, chains too, and the yarn they take.

    `sewn_m` is what is sewn with, part of `stitches_m`. `error` is the relative standard
    uncertainty of `stitches_m`, widened as the workshop has it; `chance` is what is in it for
    rounds whose colour chance decides. `extras_m` is what extras take. `borrowed` says that the
    yarn goes by the swatch of another.
    """

    colour: str
    counts: Mapping[StitchIn, int]
    stitches_m: float
    error: float
    extras_m: float = 0.0
    borrowed: bool = False
    sewn_m: float = 0.0
    chance: float = 0.0

    @property
    def limits(self) -> float:
        """The 95 % limits of what the work takes, either way, as a share of it."""
        return Z_95 * self.error


def pass_yarn_m(worked: Pass, yarn: str, gauges: Mapping[Made, Gauge]) -> float:
    """Return the yarn of one pass: its stitches and chains, each by its gauge, or what is sewn."""
    return worked.sewn_m + sum(
        count * gauges[Made(yarn, stitch, worked.fabric)].yarn_m
        for stitch, count in worked.stitches.items()
    )


def yarn_by_pass(plan: Plan, order: Order) -> list[float]:
    """Return the metres of each pass, in the order of the plan."""
    sources = {
        colour: order.design.source_of(colour).yarn for colour in {p.colour for p in plan.passes}
    }
    return [pass_yarn_m(p, sources[p.colour], plan.gauges) for p in plan.passes]


def yarn_by_colour(plan: Plan, order: Order, workshop: Workshop) -> tuple[ColourYarn, ...]:
    """Return the yarn of each colour, in the order the colours first come in the work."""
    taken: dict[str, _Taken] = {}
    for worked in plan.passes:
        times = plan.times(worked) * order.quantity
        taken.setdefault(worked.colour, _Taken()).work(worked, times)
    coloured = [(extra.colour, extra.yarn_m) for extra in order.extras if extra.colour is not None]
    names = first_names(order.design, [*taken, *(colour for colour, _ in coloured)])
    for colour, metres in coloured:
        if metres:
            mine = taken.setdefault(names[colour], _Taken())
            mine.extras_m += metres * order.quantity
    draws = sum(mine.draws for mine in taken.values())
    return tuple(
        _colour_yarn(colour, mine, _Drawing(order, plan, workshop, draws))
        for colour, mine in taken.items()
    )


@dataclass(slots=True)
class _Taken:
    """What a colour is taken for, over all blankets; of its stitches, which are `drawn`."""

    counts: dict[StitchIn, int] = field(default_factory=dict)
    sewn_m: float = 0.0
    extras_m: float = 0.0
    draws: int = 0
    drawn: dict[StitchIn, int] = field(default_factory=dict)

    def work(self, worked: Pass, times: int) -> None:
        """Take what a pass takes, so many times."""
        for stitch, count in worked.stitches.items():
            made = StitchIn(stitch, worked.fabric)
            self.counts[made] = self.counts.get(made, 0) + count * times
            if worked.drawn:
                self.drawn[made] = self.drawn.get(made, 0) + count * times
        self.sewn_m += worked.sewn_m * times
        self.draws += times * worked.drawn


class _Drawing(NamedTuple):
    """What the yarn of one colour is reckoned by, and all the `draws` of colours by chance."""

    order: Order
    plan: Plan
    workshop: Workshop
    draws: int


def _colour_yarn(colour: str, taken: _Taken, by: _Drawing) -> ColourYarn:
    yarn = by.order.design.source_of(colour).yarn
    gauges = {stitch: by.plan.gauges[stitch.made(yarn)] for stitch in taken.counts}
    metres = {stitch: count * gauges[stitch].yarn_m for stitch, count in taken.counts.items()}
    stitches_m = math.fsum((*metres.values(), taken.sewn_m))
    measured = relative_error(metres, gauges, by.workshop.habits.tension, sewn_m=taken.sewn_m)
    drawn_m = math.fsum(count * gauges[stitch].yarn_m for stitch, count in taken.drawn.items())
    chance = chance_error(taken.draws, by.draws) * drawn_m / stitches_m if drawn_m else 0.0
    widened = by.workshop.ranges.yarn
    return ColourYarn(
        colour=colour,
        counts=taken.counts,
        stitches_m=stitches_m,
        error=math.hypot(measured, chance) * widened,
        extras_m=taken.extras_m,
        borrowed=any(gauge.borrowed_limits for gauge in gauges.values()),
        sewn_m=taken.sewn_m,
        chance=chance * widened,
    )


def chance_error(draws: int, of_all: int) -> float:
    """Return the relative standard uncertainty of how often one of several colours is drawn.

    It is binomial: √((1/p - 1)/n) for a share p of n draws, √((k - 1)/n) for k colours alike.
    """
    return math.sqrt((of_all / draws - 1) / of_all)


K = TypeVar("K", bound=Hashable)


def relative_error(
    metres: Mapping[K, float], gauges: Mapping[K, Gauge], tension: float, *, sewn_m: float = 0.0
) -> float:
    """Return the relative standard uncertainty of a sum of metres, by stitch, all of one yarn.

    `tension` is the relative drift between swatch and blanket. What is sewn goes by a rule.
    """
    total = math.fsum((*metres.values(), sewn_m))
    if not total:
        return 0.0
    by_basis: dict[str, float] = {}
    guessed: dict[Hashable, float] = {"sewn": sewn_m * ESTIMATED_LIMITS / Z_95}
    borrowed = 0.0
    for stitch, length in metres.items():
        gauge = gauges[stitch]
        by_basis[gauge.basis] = by_basis.get(gauge.basis, 0.0) + length * gauge.basis_error
        guess = gauge.basis if gauge.one_guess else stitch
        guessed[guess] = guessed.get(guess, 0.0) + length * gauge.guess_limits / Z_95
        borrowed += length * gauge.borrowed_limits / Z_95
    known_by = math.hypot(*by_basis.values(), *guessed.values(), borrowed) / total
    return math.hypot(known_by, tension, LABEL_ERROR)


def reserve(error: float, habits: Habits) -> float:
    """Return the share to have on top, so that the yarn is enough with the wanted confidence."""
    if habits.allowance is not None:
        return habits.allowance
    return NormalDist().inv_cdf(habits.confidence) * error


def with_reserve(bare_m: float, extras_m: float, share: float) -> float:
    """Return metres with a share more of all but the extras, whose yarn is given."""
    return (bare_m - extras_m) * (1 + share) + extras_m
