"""The hours that are left of an order, at the pace that it and the workshop tell."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from quoting.core.estimate.chores import Part
from quoting.core.estimate.pace import Session as TimedSession
from quoting.core.estimate.pace import pace_of
from quoting.core.making.hours_left import HoursLeft, hours_left, pooled_workshop
from quoting.core.making.log_lines import Doing, LogLine
from quoting.core.making.made_rows import made_rows
from quoting.core.making.rows_work import rows_work
from quoting.core.making.session_pace import session_timings
from quoting.core.order.order import Extra
from quoting.core.quote.quote import Quote
from quoting.core.workshop.calendar import WorkingCalendar
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Workshop
from tests.core.making.logs import DAY, hook, log, reached, spent, woven
from tests.examples import (
    TODAY,
    WOOL,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
)

QUOTE = sample_quote()
ROWS = made_rows(QUOTE).all
STITCHES = QUOTE.plan.stitches
NEXT_DAY = DAY + timedelta(days=1)


def left_of(quote: Quote, *lines: LogLine) -> HoursLeft:
    return hours_left(quote, log(*lines))


def timings(quote: Quote, *lines: LogLine, workshop: Workshop | None = None) -> tuple[Timing, ...]:
    return session_timings(quote, log(*lines), workshop)


def timed(*some: Timing) -> Quote:
    return sample_quote(workshop=sample_workshop(timings=some))


@pytest.mark.parametrize("quantity", [1, 2])
def test_before_anything_is_done_all_hours_are_left(quantity: int) -> None:
    quote = sample_quote(sample_order(quantity=quantity))
    left, stated = left_of(quote).hours, quote.estimate.hours
    assert [left.of(part) for part in Part] == [stated.of(part) for part in Part]
    assert (left.low, left.high) == (stated.low, stated.high)


def test_nothing_of_the_rows_is_left_when_all_are_done() -> None:
    left = left_of(QUOTE, reached(ROWS))
    assert left.of(Doing.AT_THE_HOOK) == 0
    assert left.of(Doing.WEAVING_IN) == QUOTE.estimate.hours.of(Part.WEAVING_IN)


def test_the_work_of_some_rows_and_of_the_others_is_all_of_it() -> None:
    quote = sample_quote(sample_order(quantity=3))
    work = rows_work(quote)
    first, rest = work.of(1, 150), work.of(151, work.rows.all)
    whole = work.of(1, work.rows.all)
    for stitch, count in whole.stitches.items():
        assert first.stitches.get(stitch, 0) + rest.stitches.get(stitch, 0) == count
    assert first.turns + rest.turns == whole.turns == 3 * (len(quote.plan.rows) - 1)
    assert first.colour_changes + rest.colour_changes == whole.colour_changes
    assert first.joins + rest.joins == whole.joins == len(work.joined_in)


def test_a_rows_work_by_hand() -> None:
    """Rows 2 and 3: teal after oat, rust after teal, each turned to with two chains."""
    load = rows_work(QUOTE).of(2, 3)
    assert load.stitches == {(WOOL, "hdc"): 2 * STITCHES, (WOOL, "ch"): 2 * 2}
    assert (load.turns, load.colour_changes, load.joins) == (2, 2, 0)


def test_a_session_is_a_timing_less_turns_and_changes_and_what_chains_take() -> None:
    """By hand: 2 turns of 0.1 min, 2 changes of 0.5; a chain takes a third of a hdc."""
    (timing,) = timings(QUOTE, hook(2, 3, 30))
    hdc, chains = 2 * STITCHES, 4
    assert timing.stitches == hdc
    assert timing.minutes == pytest.approx((30 - 1.2) * hdc / (hdc + chains / 3))
    assert (timing.stitch, timing.day, timing.hands_on, timing.rows) == ("hdc", DAY, False, 0)


def test_what_is_ripped_back_takes_its_part_of_a_session() -> None:
    quote = sample_quote(workshop=sample_workshop(minutes=sample_minutes(rip_back=0.25)))
    plain, with_ripping = timings(QUOTE, hook(2, 3, 30)), timings(quote, hook(2, 3, 30))
    assert with_ripping[0].minutes == pytest.approx(plain[0].minutes / 1.25)


def test_a_mixed_session_is_a_timing_of_each_stitch_in_the_expected_proportion() -> None:
    """By hand: the last row of hdc and the round of sc; a sc takes two thirds of a hdc."""
    hdc, sc = timings(QUOTE, hook(ROWS - 1, ROWS, 40))
    assert (hdc.stitch, sc.stitch) == ("hdc", "sc")
    assert hdc.minutes / hdc.stitches == pytest.approx(1.5 * sc.minutes / sc.stitches)


@pytest.mark.parametrize(
    "line",
    [
        hook(None, None, 60),
        hook(1, 90, 5),
        spent(Doing.WEAVING_IN, 30),
        spent(Doing.OFFICE, 30),
    ],
)
def test_minutes_that_tell_no_rows_or_less_than_the_turns_take_tell_no_pace(
    line: LogLine,
) -> None:
    assert timings(QUOTE, line) == ()
    assert left_of(QUOTE, line).workshop.timings == QUOTE.workshop.timings


def test_rows_past_the_last_are_not_counted() -> None:
    assert timings(QUOTE, hook(ROWS, ROWS + 50, 40))[0].stitches == QUOTE.plan.passes[
        -1
    ].stitches.get("sc")
    assert timings(QUOTE, hook(ROWS + 1, ROWS + 50, 40)) == ()


def test_a_session_is_pooled_with_a_timing_that_serves_for_all_yarns() -> None:
    (timing,) = timings(QUOTE, hook(2, 3, 30))
    assert QUOTE.workshop.timings[0].yarn is None
    assert timing.yarn is None


def test_a_session_is_pooled_with_the_timing_in_its_own_yarn_where_there_is_one() -> None:
    for_all = Timing(stitch="hdc", stitches=100, minutes=6)
    own = replace(for_all, yarn=WOOL)
    assert timings(timed(for_all, own), hook(2, 3, 30))[0].yarn == WOOL
    assert timings(timed(own), hook(2, 3, 30))[0].yarn == WOOL


def test_a_stitch_that_was_never_timed_gets_its_own_timing_in_its_yarn() -> None:
    quote = timed(Timing(stitch="dc", stitches=100, minutes=9))
    (timing,) = timings(quote, hook(2, 3, 30))
    assert (timing.stitch, timing.yarn) == ("hdc", WOOL)


def test_the_pooled_pace_is_that_of_all_stitches_over_all_minutes() -> None:
    """By hand: the workshop's 500 hdc in 27 min without turns, and the session's."""
    (told,) = timings(QUOTE, hook(2, 21, 300))
    pool = pace_of(
        [
            TimedSession(count=500, minutes=27),
            TimedSession(count=told.stitches, minutes=told.minutes),
        ]
    )
    left = left_of(QUOTE, hook(2, 21, 300))
    (hdc,) = [task for task in left.hours.tasks if task.what == "hdc"]
    assert hdc.minutes_each == pytest.approx(pool.minutes_each)
    assert hdc.readings == 2


def test_slow_sessions_leave_more_hours_and_quick_ones_fewer() -> None:
    usual = left_of(QUOTE, reached(20)).hours.total
    assert left_of(QUOTE, hook(1, 20, 250)).hours.total > usual
    assert left_of(QUOTE, hook(1, 20, 80)).hours.total < usual


def test_the_range_narrows_with_five_even_sessions() -> None:
    few = left_of(QUOTE, hook(1, 50, 270)).hours
    sessions = [hook(10 * n + 1, 10 * n + 10, 54 + 0.1 * n) for n in range(5)]
    many = left_of(QUOTE, *sessions).hours
    assert many.span.half_width < few.span.half_width


def test_of_finishing_and_the_office_what_was_told_is_taken_off() -> None:
    """By hand: 45 min of finishing, 75 in the office."""
    left = left_of(QUOTE, spent(Doing.FINISHING, 15), spent(Doing.OFFICE, 30))
    assert (left.of(Doing.FINISHING), left.of(Doing.OFFICE)) == (Decimal("0.50"), Decimal("0.75"))


def test_more_minutes_than_planned_leave_none_and_never_less() -> None:
    left = left_of(QUOTE, spent(Doing.FINISHING, 400), spent(Doing.OFFICE, 400))
    assert left.of(Doing.FINISHING) == left.of(Doing.OFFICE) == 0
    assert left.hours.low >= 0


def test_where_no_minutes_of_finishing_are_given_none_are_left() -> None:
    minutes = sample_minutes(start_and_finish=None, wash=None)
    order = sample_order(extras=(Extra(what="Gift box", cost=Decimal(3)),))
    quote = sample_quote(order, sample_workshop(minutes=minutes))
    left = left_of(quote, spent(Doing.FINISHING, 10))
    assert left.of(Doing.FINISHING) == 0
    assert set(left.hours.not_given) == {"start_and_finish", "wash"}


def test_ends_that_were_woven_in_are_not_left() -> None:
    """By hand: 4 of the ends at 2.5 minutes are woven in."""
    ends = QUOTE.estimate.ends
    left = left_of(QUOTE, woven(4))
    assert left.of(Doing.WEAVING_IN) == round(Decimal((ends - 4) * 2.5) / 60, 2)


def test_days_with_minutes_and_ends_tell_what_an_end_takes() -> None:
    """By hand: 20 min for 4 ends and 12 for 4, beside the 2.5 min that were set."""
    lines = (
        spent(Doing.WEAVING_IN, 12),
        spent(Doing.WEAVING_IN, 8),
        woven(3),
        woven(1),
        spent(Doing.WEAVING_IN, 12, NEXT_DAY),
        woven(4, NEXT_DAY),
    )
    workshop = pooled_workshop(QUOTE, log(*lines))
    assert workshop.minutes.weave_in_end == (2.5, 5, 3)


def test_days_with_only_one_of_them_tell_nothing_of_an_end() -> None:
    lines = (spent(Doing.WEAVING_IN, 20), woven(4, NEXT_DAY))
    assert pooled_workshop(QUOTE, log(*lines)).minutes == QUOTE.workshop.minutes


def test_ends_are_timed_even_where_the_workshop_never_did() -> None:
    quote = sample_quote(workshop=sample_workshop(minutes=sample_minutes(weave_in_end=None)))
    left = left_of(quote, spent(Doing.WEAVING_IN, 12), woven(4))
    assert left.of(Doing.WEAVING_IN) == round(Decimal((quote.estimate.ends - 4) * 3) / 60, 2)


def test_what_was_spent_is_told_beside_what_is_left() -> None:
    left = left_of(QUOTE, hook(1, 5, 30), spent(Doing.OFFICE, 20))
    assert left.spent == {Doing.AT_THE_HOOK: 30, Doing.OFFICE: 20}
    assert left.spent_minutes == 50


def test_it_is_ready_when_its_high_hours_are_worked_and_it_is_dry_and_sent() -> None:
    """By hand: at 12 hours a week, drying 2 days and post 3 after the last hour."""
    left = left_of(QUOTE, reached(80))
    days = math.ceil(left.hours.span.high / 60 / (12 / 7))
    assert left.ready_by(TODAY) == TODAY + timedelta(days=days + 5)


def test_orders_before_it_and_yarn_to_come_put_the_day_off() -> None:
    left = left_of(QUOTE, reached(ROWS))
    soon = left.ready_by(TODAY)
    turn = TODAY + timedelta(days=14)
    assert left.ready_by(TODAY, after=turn) == soon + timedelta(days=14)
    assert left.ready_by(TODAY, yarn_to_come=True) == soon + timedelta(days=5)


def test_hours_promised_to_others_are_not_before_an_order_on_the_hook() -> None:
    busy = WorkingCalendar(hours_promised=500)
    quote = sample_quote(workshop=sample_workshop(calendar=busy))
    assert left_of(quote, reached(ROWS)).ready_by(TODAY) < date(2026, 12, 10)
