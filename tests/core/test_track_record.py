"""Finished orders together: in their time, by what they have in common, each currency by itself."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest

from exports.records.quote_record import quote_record
from exports.records.stated_figures import stated_figures
from quoting.core.making.case import Case
from quoting.core.making.log_lines import Doing, Session
from quoting.core.making.outcome import Outcome
from quoting.core.making.plain_outcome import plain_outcome
from quoting.core.making.stated import Stated
from quoting.core.making.track_record import track_record
from quoting.core.workshop.ranges import Ranges
from tests.core.test_plain_outcome import WHOLE, YARN, logged
from tests.examples import TODAY, sample_quote

STATED = stated_figures(quote_record(sample_quote()))
RANGES = Ranges()


def outcome(stated: Stated, minutes: float | None) -> Outcome:
    """Return what an order took that told so many minutes at the hook, or nothing."""
    told = [Session(day=TODAY, doing=Doing.AT_THE_HOOK, minutes=minutes)] if minutes else []
    found = plain_outcome(stated, logged(*told))
    assert found is not None
    return found


def case(
    number: int, minutes: float | None = 600, stated: Stated = STATED, buyer: str = ""
) -> Case:
    return Case(
        order_id=number,
        number=f"2026-{number:03}",
        agreed=TODAY,
        finished=TODAY - timedelta(days=number),
        handed_over=None,
        title="Cot blanket",
        buyer=buyer,
        stated=stated,
        outcome=outcome(stated, minutes),
    )


def test_no_orders_say_nothing() -> None:
    found = track_record((), RANGES)
    assert (found.hours, found.grams, found.by_size, found.currencies) == (None, None, (), ())


def test_orders_come_in_the_order_in_which_they_were_finished() -> None:
    found = track_record([case(1), case(3), case(2)], RANGES)
    assert [each.number for each in found.cases] == ["2026-003", "2026-002", "2026-001"]


def test_what_is_not_told_is_left_out_and_counted() -> None:
    found = track_record([case(1), case(2, minutes=None)], RANGES)
    assert found.hours is not None
    assert found.hours.bias.cases == 1
    assert (found.without_hours, found.without_grams) == (1, 2)
    assert found.grams is None


def test_hours_that_are_reckoned_for_rows_not_told_are_counted() -> None:
    partly = replace(case(1), outcome=replace(outcome(STATED, 600), projected=(4, 5)))
    untold = replace(case(3), outcome=replace(outcome(STATED, None), projected=(1, 2)))
    assert track_record([partly, case(2), untold], RANGES).partly_projected == 1


def test_yarn_is_told_where_every_colour_was() -> None:
    told = plain_outcome(STATED, logged(*WHOLE, *YARN))
    assert told is not None
    found = track_record([replace(case(1), outcome=told)], RANGES)
    assert found.grams is not None
    assert found.grams.bias.mean == pytest.approx(500.5 / STATED.grams - 1)
    assert found.grams.coverage is not None


def test_a_quote_from_before_ranges_of_yarn_were_kept_tells_its_bias_alone() -> None:
    before = tuple(replace(yarn, high_g=None) for yarn in STATED.yarn)
    told = plain_outcome(STATED, logged(*WHOLE, *YARN))
    assert told is not None
    older = replace(case(1), stated=replace(STATED, yarn=before), outcome=told)
    found = track_record([older], RANGES).grams
    assert found is not None
    assert (found.coverage, found.coverage_now, found.widening) == (None, None, None)


def test_a_quote_of_no_hours_or_no_yarn_tells_nothing_of_them() -> None:
    hours = dict.fromkeys(STATED.hours, Decimal(0))
    empty = case(1, stated=replace(STATED, hours=hours, yarn=()))
    assert (empty.hours, empty.grams) == (None, None)


def test_groups_weigh_by_the_hours_and_the_best_paid_comes_first() -> None:
    """By hand: an hour's mean earnings by the hours, not by the orders."""
    cases = [case(1, 600, buyer="Quill"), case(2, 1200, buyer="Quill"), case(3, 500, buyer="Marsh")]
    found = track_record(cases, RANGES).by_buyer
    assert [group.key for group in found] == ["Marsh", "Quill"]
    quill = found[1]
    (short, long) = cases[0].outcome, cases[1].outcome
    assert short.hours is not None
    assert long.hours is not None
    assert short.earned is not None
    assert long.earned is not None
    together = short.earned * short.hours + long.earned * long.hours
    assert quill.orders == 2
    assert quill.hours == short.hours + long.hours
    assert quill.earned == together / quill.hours
    assert quill.was_to_earn == STATED.earned


def test_currencies_are_never_mixed() -> None:
    euros = replace(STATED, currency="EUR")
    found = track_record([case(1), case(2, stated=euros), case(3)], RANGES)
    assert set(found.currencies) == {"EUR", "GBP"}
    for groups in (found.by_size, found.by_stitch, found.by_buyer):
        assert [(g.currency, g.orders) for g in groups] == [("EUR", 1), ("GBP", 2)]


def test_sizes_and_stitches_are_told_apart() -> None:
    wide = replace(STATED, width_cm=120.0)
    mesh = replace(STATED, stitch="mesh")
    found = track_record([case(1), case(2, stated=wide), case(3, stated=mesh)], RANGES)
    assert {g.key for g in found.by_size} == {(80, 100), (120.0, 100)}
    assert {g.key for g in found.by_stitch} == {"hdc", "mesh"}


def test_other_costs_have_the_overhead_of_the_hours_that_it_took() -> None:
    """£1.80 an hour over what was told, or over what was quoted where nothing was."""
    told, untold = case(1), case(2, minutes=None)
    assert told.outcome.hours is not None
    overhead = told.outcome.hours * Decimal("1.80")
    assert told.other_costs == told.outcome.other_costs + round(overhead, 2)
    assert untold.other_costs == untold.outcome.other_costs + round(
        STATED.all_hours * Decimal("1.80"), 2
    )


def test_what_an_hour_earned_is_what_the_accounts_come_to() -> None:
    found = case(1)
    hours, earned = found.outcome.hours, found.earned
    assert hours is not None
    assert earned is not None
    stated = found.stated
    kept = stated.total - stated.tax - stated.fees - found.outcome.yarn_cost - found.other_costs
    assert earned == round(kept / hours, 2)


def test_a_widening_is_of_the_ranges_that_the_workshop_has() -> None:
    slow = [case(number, 2 * 600 + number) for number in range(1, 4)]
    for slowly in slow:
        assert slowly.hours is not None
        assert slowly.hours.stated < slowly.hours.real
    first = track_record(slow, RANGES).hours
    assert first is not None
    assert first.widening is not None
    then = track_record(slow, Ranges(hours=first.widening.factor)).hours
    assert then is not None
    assert then.coverage_now is not None
    assert then.coverage_now.inside == 3
    assert first.coverage == then.coverage
