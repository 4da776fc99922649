"""Orders of a maker whose true pace is a tenth slower than her timings, made up from a seed.

The quotes are the program's own; what they took is drawn round a tenth more.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from random import Random

import pytest

from quoting.core.making.bias import bias_of
from quoting.core.making.coverage import coverage_at, stated_coverage
from quoting.core.making.outturn import Outturn
from quoting.core.making.widening import Method, widening_of
from quoting.core.workshop.ranges import Ranges
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Workshop
from tests.examples import (
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
)

SLOWER = 0.10
DIFFERS = 0.04
"""By how much single orders differ from that, as a standard deviation."""

SIZES = [(width, width * 1.2) for width in range(50, 100, 5)]
SESSIONS = (27.1, 27.9, 27.5, 27.2, 27.8, 27.4)


def steady() -> Workshop:
    """Return the workshop of a maker whose timings agree so well that her ranges are narrow."""
    timings = [
        Timing(stitch=stitch, stitches=500, minutes=minutes, rows=5)
        for stitch in ("hdc", "sc")
        for minutes in SESSIONS
    ]
    each = dict.fromkeys(
        ("weave_in_end", "wash", "start_and_finish", "letters", "pack"), (10.0,) * 6
    )
    return sample_workshop(timings=tuple(timings), minutes=sample_minutes(**each))


@cache
def quoted(ranges: Ranges) -> tuple[Outturn, ...]:
    """Return the hours of every size as quoted by the maker with these ranges, as if they held."""
    shop = replace(steady(), ranges=ranges)
    designs = [sample_design(width_cm=width, height_cm=height) for width, height in SIZES]
    every = [sample_quote(sample_order(design=each), shop).estimate.hours for each in designs]
    return tuple(
        Outturn(
            stated=float(hours.total),
            real=float(hours.total),
            half_width=hours.span.half_width / 60,
            widened_by=hours.widened_by,
        )
        for hours in every
    )


def orders_made(random: Random, ranges: Ranges, how_many: int = 100) -> list[Outturn]:
    """Return what so many orders were quoted at and really took."""
    held = [quoted(ranges)[number % len(SIZES)] for number in range(how_many)]
    return [replace(one, real=one.stated * random.gauss(1 + SLOWER, DIFFERS)) for one in held]


@pytest.fixture
def made() -> list[Outturn]:
    return orders_made(Random(2026), Ranges())


def test_the_bias_is_shown_within_its_own_limits(made: Sequence[Outturn]) -> None:
    found = bias_of(made)
    assert found.is_shown
    assert found.low is not None
    assert found.high is not None
    assert found.low < SLOWER < found.high
    assert found.spread == pytest.approx(DIFFERS, rel=0.25)


def test_the_limits_hold_the_true_bias_of_19_hundreds_in_20() -> None:
    random, held = Random(7), 0
    for _ in range(400):
        found = bias_of(orders_made(random, Ranges()))
        held += (found.low or 0) <= SLOWER <= (found.high or 0)
    assert held / 400 == pytest.approx(0.95, abs=0.035)


def test_the_ranges_are_proved_too_narrow_and_widened_ones_hold_95_of_the_100(
    made: Sequence[Outturn],
) -> None:
    widening = widening_of(made, 1.0)
    assert stated_coverage(made).is_too_narrow
    assert widening is not None
    assert widening.is_needed
    assert widening.method is Method.ORDER_STATISTIC
    assert coverage_at(made, widening.factor).inside >= 95


def test_a_quote_that_is_widened_so_holds_95_of_the_next_100_on_the_whole() -> None:
    """Each factor is of a hundred orders, and is held against the hundred after them."""
    random, inside, rounds = Random(23), 0, 200
    for _ in range(rounds):
        widening = widening_of(orders_made(random, Ranges()), 1.0)
        assert widening is not None
        inside += coverage_at(orders_made(random, Ranges()), widening.factor).inside
    assert inside / rounds >= 94.5


def test_a_workshop_that_takes_the_factor_over_quotes_ranges_as_much_wider(
    made: Sequence[Outturn],
) -> None:
    widening = widening_of(made, 1.0)
    assert widening is not None
    wider = quoted(Ranges(hours=widening.factor))
    for before, after in zip(quoted(Ranges()), wider, strict=True):
        assert before.half_width is not None
        assert after.stated == before.stated
        assert after.half_width == pytest.approx(before.half_width * widening.factor)
    later = [replace(after, real=one.real) for after, one in zip(wider * 10, made, strict=True)]
    assert stated_coverage(later).inside >= 95


def test_the_few_hold_the_next_order_too() -> None:
    random, inside, rounds = Random(5), 0, 1000
    for _ in range(rounds):
        first = orders_made(random, Ranges(), 6)
        widening = widening_of(first, 1.0)
        assert widening is not None
        (after,) = orders_made(random, Ranges(), 1)
        inside += after.would_be_inside(widening.factor)
    assert inside / rounds >= 0.95
