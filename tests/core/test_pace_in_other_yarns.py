"""Which timing a stitch in a yarn is reckoned from, and what is guessed by that."""

from __future__ import annotations

import math
from dataclasses import replace
from decimal import Decimal
from itertools import permutations
from typing import Any

import pytest

from quoting.core.estimate.chores import Part, Workload
from quoting.core.estimate.hours import Hours, work_hours
from quoting.core.estimate.stitching_time import StitchingTime, stitching_times
from quoting.core.order.design import ColourSource
from quoting.core.plan.gauge import Sureness
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.timings import TimedStitch, Timing
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import (
    WOOL,
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

ARAN, TOR, CHENILLE = WOOL, "tor aran", "fen chenille"
YARNS = (
    sample_yarn(),
    sample_yarn(name=TOR, stock=()),
    sample_yarn(name=CHENILLE, category=6, stock=()),
)
BOBBLE = Pattern(name="bobble", like=Stitch.DC)
MOSS = Pattern(name="moss", like=Stitch.SC)


def timing(stitch: str, yarn: str | None = None, minutes: float = 5.0, **changes: Any) -> Timing:
    return replace(Timing(stitch=stitch, stitches=100, minutes=minutes, yarn=yarn), **changes)


def shop(*timings: Timing, **changes: Any) -> Workshop:
    return sample_workshop(yarns=YARNS, patterns=(BOBBLE, MOSS), timings=timings, **changes)


def time_of(stitch: str, yarn: str, *timings: Timing) -> StitchingTime:
    (time,) = stitching_times({(yarn, stitch): 1000}, shop(*timings))
    return time


def hours_of(stitches: dict[tuple[str, str], int], *timings: Timing) -> Hours:
    work = Workload(
        stitches=stitches,
        turns=0,
        colour_changes=0,
        joins=0,
        ends=0,
        blankets=0,
        extras_minutes=0,
    )
    nothing = sample_minutes(photograph=(0.0,), pack=(0.0,), letters=(0.0,))
    return work_hours(work, shop(*timings, minutes=nothing))


@pytest.mark.parametrize(
    ("timings", "stitch", "yarn", "guessed"),
    [
        ([("hdc", ARAN)], "hdc", ARAN, []),
        ([("hdc", None)], "hdc", CHENILLE, []),
        ([("hdc", ARAN)], "hdc", TOR, [0.15]),
        ([("hdc", ARAN)], "hdc", CHENILLE, [0.50]),
        ([("hdc", ARAN)], "sc", TOR, [0.15, 0.15]),
        ([("dc", None)], "bobble", ARAN, [0.50]),
        ([("sc", None)], "bobble", ARAN, [0.50, 0.15]),
        ([("dc", ARAN)], "bobble", CHENILLE, [0.50, 0.50]),
        ([("bobble", None)], "dc", ARAN, [0.50]),
        ([("bobble", None)], "moss", ARAN, [0.50, 0.50, 0.15]),
    ],
)
def test_what_was_never_timed_is_a_guess_each(
    timings: list[tuple[str, str | None]], stitch: str, yarn: str, guessed: list[float]
) -> None:
    time = time_of(stitch, yarn, *(timing(name, in_yarn) for name, in_yarn in timings))
    assert [guess.limits for guess in time.guesses] == guessed
    assert time.sureness is (Sureness.ESTIMATED if guessed else Sureness.ONE_TIMING)


@pytest.mark.parametrize(
    ("timings", "stitch", "yarn", "basis"),
    [
        # in its own yarn before one that names none, that before another of its category
        ([("hdc", None), ("hdc", ARAN)], "hdc", ARAN, ("hdc", ARAN)),
        ([("hdc", TOR), ("hdc", None)], "hdc", ARAN, ("hdc", None)),
        ([("hdc", CHENILLE), ("hdc", TOR)], "hdc", ARAN, ("hdc", TOR)),
        # itself in whatever yarn before another stitch in its own
        ([("hdc", ARAN), ("sc", CHENILLE)], "hdc", CHENILLE, ("hdc", ARAN)),
        ([("hdc", TOR), ("sc", ARAN)], "hdc", ARAN, ("hdc", TOR)),
        ([("bobble", CHENILLE), ("dc", ARAN)], "bobble", ARAN, ("bobble", CHENILLE)),
        # a basic stitch before any other pattern
        ([("bobble", ARAN), ("sc", CHENILLE)], "dc", ARAN, ("sc", CHENILLE)),
        ([("moss", None), ("tr", None)], "sc", ARAN, ("tr", None)),
        # of two that serve as well, the nearest in time, then by name
        ([("sc", None), ("hdc", None)], "dc", ARAN, ("hdc", None)),
        ([("moss", None), ("bobble", None)], "hdc", ARAN, ("bobble", None)),
    ],
)
def test_a_stitch_rests_on_the_timing_that_leaves_least_to_guess(
    timings: list[tuple[str, str | None]],
    stitch: str,
    yarn: str,
    basis: tuple[str, str | None],
) -> None:
    for some in permutations(timings):
        time = time_of(stitch, yarn, *(timing(name, in_yarn) for name, in_yarn in some))
        assert time.basis == TimedStitch(stitch=basis[0], yarn=basis[1])


def test_the_order_of_the_timings_never_matters() -> None:
    """By hand: 300 sc in 12.5 min, so 1,000 hdc take 1,000 x 12.5/300 x 3/2 = 62.5 min, 1.04 h."""
    single = timing("sc", minutes=12.5, stitches=300)
    slow = timing("moss", minutes=15.6, stitches=300)
    for timings in permutations((single, slow)):
        assert hours_of({(ARAN, "hdc"): 1000}, *timings).total == Decimal("1.04")


def test_the_category_of_a_timing_in_another_yarn_tells_how_far_off_it_may_be() -> None:
    """By hand, 50 min: 30 % for the one timing and 15 % or 50 % for the yarn, in squares."""
    for yarn, off in ((TOR, 0.15), (CHENILLE, 0.50)):
        hours = hours_of({(yarn, "hdc"): 1000}, timing("hdc", ARAN))
        assert hours.span.half_width == pytest.approx(50 * math.hypot(0.30, off))


def test_one_guess_errs_together_and_two_in_squares() -> None:
    """By hand: 50 and 100/3 min in one timing; the yarn's 50 % of both, the ratio's 15 % of one."""
    hours = hours_of({(CHENILLE, "hdc"): 1000, (CHENILLE, "sc"): 1000}, timing("hdc", ARAN))
    both = 50 + 100 / 3
    wanted = math.hypot(0.30 * both, 0.50 * both, 0.15 * 100 / 3)
    assert hours.span.half_width == pytest.approx(wanted)


def test_a_second_yarn_makes_no_hours_surer() -> None:
    """All rest on one timing that names no yarn: split by yarn they are as far off together."""
    one = hours_of({(ARAN, "sc"): 2000}, timing("hdc"))
    two = hours_of({(ARAN, "sc"): 1000, (TOR, "sc"): 1000}, timing("hdc"))
    assert two.span == one.span


def test_two_yarns_timed_apart_err_apart() -> None:
    """By hand: 30 % of 50 min twice, in squares."""
    hours = hours_of(
        {(ARAN, "hdc"): 1000, (CHENILLE, "hdc"): 1000},
        timing("hdc", ARAN),
        timing("hdc", CHENILLE),
    )
    assert hours.span.half_width == pytest.approx(math.hypot(15, 15))


def two_yarns(*timings: Timing) -> Quote:
    """Return the quote of a blanket with every second row in the chenille."""
    design = sample_design(
        sections=(section("teal", "rust"),),
        first_rows=(),
        border=(),
        colours={"rust": ColourSource(yarn=CHENILLE, colour="rust")},
    )
    return sample_quote(sample_order(design=design), shop(*timings))


def test_each_row_takes_the_time_of_its_own_yarn() -> None:
    quote = two_yarns(timing("hdc", ARAN), timing("hdc", CHENILLE, minutes=10))
    minutes = {
        task.yarn: task.minutes / task.count
        for task in quote.estimate.hours.tasks
        if task.part is Part.STITCHING and task.what == "hdc"
    }
    assert minutes == pytest.approx({ARAN: 0.05, CHENILLE: 0.10})
    counts = {task.yarn: task.count for task in quote.estimate.hours.tasks if task.what == "hdc"}
    rows = quote.plan.rows_by_colour
    assert counts == {ARAN: rows["teal"] * quote.plan.stitches} | {
        CHENILLE: rows["rust"] * quote.plan.stitches
    }


def facts_of(quote: Quote, code: str) -> list[dict[str, object]]:
    return [dict(caution.facts) for caution in quote.cautions if caution.code == code]


def test_a_yarn_that_was_never_timed_is_said_with_the_one_that_was() -> None:
    quote = two_yarns(timing("hdc", ARAN))
    assert facts_of(quote, "other-thickness-pace") == [{"yarn": CHENILLE, "timed_in": ARAN}]
    assert facts_of(quote, "other-yarn-pace") == []


def test_timings_that_an_order_does_not_rest_on_are_not_warned_of() -> None:
    apart = [timing("tr", minutes=m) for m in (1, 9, 40, 2, 3)]
    slow = timing("bobble", minutes=99)
    codes = {caution.code for caution in two_yarns(timing("hdc"), *apart, slow).cautions}
    assert not codes & {"odd-pace", "few-timings", "more-timings"}
    assert "odd-pace" in {caution.code for caution in two_yarns(slow).cautions}


def test_work_whose_minutes_are_not_given_counts_for_nothing_and_is_named() -> None:
    order, some = sample_order(), sample_minutes(turn=None, wash=None, rip_back=None)
    quote = sample_quote(order, sample_workshop(minutes=some))
    assert quote.estimate.hours.not_given == ("rip_back", "turn", "wash")
    nought = sample_minutes(turn=(0.0,), wash=(0.0,), rip_back=0.0)
    counted = sample_quote(order, sample_workshop(minutes=nought))
    assert counted.estimate.hours.not_given == ()
    assert counted.estimate.hours.total == quote.estimate.hours.total


def test_only_work_that_the_order_has_is_missed() -> None:
    bare = Workload(
        stitches={},
        turns=0,
        colour_changes=0,
        joins=0,
        ends=2,
        blankets=1,
        extras_minutes=0,
    )
    nothing = sample_minutes(join=None, turn=None, change_colour=None, weave_in_end=None)
    assert work_hours(bare, sample_workshop(minutes=nothing)).not_given == ("weave_in_end",)


def test_a_range_is_promised_of_five_timings_and_no_fewer() -> None:
    work = {(ARAN, "hdc"): 1000}
    assert not hours_of(work, *[timing("hdc")] * 4).timed_enough
    assert hours_of(work, *[timing("hdc")] * 5).timed_enough
    assert not hours_of(work, *[timing("hdc")] * 5, timing("hdc", ARAN)).timed_enough
