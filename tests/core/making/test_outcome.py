"""Afterwards: what an order took beside what was stated, and what an hour earned."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.ground.money import exact, round_money
from quoting.core.making.log_lines import Doing, LogLine
from quoting.core.making.made_rows import made_rows
from quoting.core.making.outcome import ColourOutcome, Outcome, WorkOutcome, outcome_of
from quoting.core.making.planned_yarn import planned_yarn
from quoting.core.order.order import Extra
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import YarnCharged
from tests.core.making.logs import hook, log, spent, taken, used
from tests.examples import sample_order, sample_quote, sample_workshop

QUOTE = sample_quote()
ROWS = made_rows(QUOTE).all


def outcome(*lines: LogLine, quote: Quote = QUOTE) -> Outcome:
    return outcome_of(quote, log(*lines))


def work(doing: Doing, *lines: LogLine) -> WorkOutcome:
    return next(part for part in outcome(*lines).work if part.doing is doing)


def colour(name: str, *lines: LogLine, quote: Quote = QUOTE) -> ColourOutcome:
    return next(some for some in outcome(*lines, quote=quote).colours if some.colour == name)


def test_what_no_line_tells_is_not_known() -> None:
    nothing = outcome()
    assert all(part.took is None for part in nothing.work)
    assert all(some.took_g is None and some.cost is None for some in nothing.colours)
    assert (nothing.hours, nothing.earned, nothing.took_g) == (None, None, None)
    assert (nothing.hours_share, nothing.in_range) == (None, None)


def test_what_was_stated_is_that_of_the_quote() -> None:
    stated, hours = outcome(), QUOTE.estimate.hours
    assert sum(part.expected for part in stated.work) == hours.total == stated.expected_hours
    assert (stated.low_hours, stated.high_hours) == (hours.low, hours.high)
    assert stated.earned_expected == QUOTE.price.earned_per_hour
    assert stated.expected_g == pytest.approx(QUOTE.estimate.grams)


def test_each_kind_of_work_has_its_difference_in_hours_and_as_a_share() -> None:
    """By hand: office work of 75 min took 90."""
    office = work(Doing.OFFICE, spent(Doing.OFFICE, 60), spent(Doing.OFFICE, 30))
    assert (office.expected, office.took) == (Decimal("1.25"), Decimal("1.50"))
    assert office.difference == Decimal("0.25")
    assert office.share == pytest.approx(0.20)


def test_without_any_told_there_is_no_difference() -> None:
    office = work(Doing.OFFICE)
    assert (office.difference, office.share) == (None, None)
    assert (colour("teal").difference_g, colour("teal").share) == (None, None)


def test_of_work_that_no_session_told_the_estimate_stands_in_and_is_named() -> None:
    """By hand: 11 h at the hook and the estimate's 2.50 h of everything else."""
    some = outcome(hook(1, ROWS, 660))
    assert some.hours == Decimal("13.50")
    assert some.stood_in == (Doing.WEAVING_IN, Doing.FINISHING, Doing.OFFICE)
    assert some.hours_share == pytest.approx(13.50 / 13.04 - 1)
    assert some.in_range is True


def test_hours_beyond_the_range_are_told_to_be() -> None:
    assert outcome(hook(1, ROWS, 1400)).in_range is False


def test_without_the_hours_at_the_hook_the_whole_is_not_known() -> None:
    assert outcome(spent(Doing.OFFICE, 60)).hours is None


def test_rows_that_no_session_told_are_reckoned_at_the_pace_of_the_others() -> None:
    """By hand: rows 2 to 41 are 40 of equal length; rows 42 to 81 are as many more."""
    some = work(Doing.AT_THE_HOOK, hook(2, 41, 240), hook(1, 1, 12), hook(82, ROWS, 150))
    whole = work(Doing.AT_THE_HOOK, hook(2, 81, 480), hook(1, 1, 12), hook(82, ROWS, 150))
    assert some.took is not None
    assert whole.took == Decimal("10.70")
    assert float(some.took) == pytest.approx(10.70, rel=0.02)


@pytest.mark.parametrize(
    ("lines", "projected"),
    [
        ((hook(1, 10, 60), hook(15, ROWS - 1, 600)), (11, 12, 13, 14, ROWS)),
        ((hook(1, ROWS, 600),), ()),
        ((hook(1, 40, 240), hook(None, None, 360)), ()),
        ((hook(ROWS + 1, ROWS + 9, 60),), ()),
        ((spent(Doing.OFFICE, 60),), ()),
    ],
)
def test_rows_that_are_reckoned_at_the_pace_of_others_are_named(
    lines: tuple[LogLine, ...], projected: tuple[int, ...]
) -> None:
    assert outcome(*lines).projected == projected


def test_rows_worked_twice_took_both_times() -> None:
    twice = work(Doing.AT_THE_HOOK, hook(1, ROWS, 600), hook(50, 60, 60))
    assert twice.took == Decimal("11.00")


def test_minutes_that_tell_no_rows_may_be_those_of_any() -> None:
    assert work(Doing.AT_THE_HOOK, hook(1, 40, 240), hook(None, None, 360)).took == 10


def test_rows_past_the_last_tell_of_no_others() -> None:
    assert work(Doing.AT_THE_HOOK, hook(ROWS + 1, ROWS + 9, 60)).took == 1


def test_each_colour_has_its_grams_and_their_difference() -> None:
    """By hand: teal was to take 167.9 g and took 180."""
    teal = colour("teal", used("teal", 100, 60), used("teal", 80, ROWS))
    assert teal.took_g == pytest.approx(180)
    assert teal.difference_g == pytest.approx(180 - teal.expected_g)
    assert teal.share == pytest.approx(180 / teal.expected_g - 1)


def test_of_rows_after_the_last_line_the_yarn_goes_as_what_was_told() -> None:
    """Up to row 52 a tenth more than planned was used: so of the whole it is a tenth more."""
    estimate = next(some for some in QUOTE.estimate.colours if some.colour == "teal")
    planned_g = planned_yarn(estimate, made_rows(QUOTE)).reach_m[52] / estimate.metres_per_gram
    some = colour("teal", used("teal", 1.1 * planned_g, 52))
    assert some.took_g == pytest.approx(1.1 * estimate.grams)


def test_yarn_of_extras_is_added_where_the_last_line_came_before_it() -> None:
    tassels = Extra(what="Tassels", cost=Decimal(0), colour="teal", yarn_m=40)
    quote = sample_quote(sample_order(extras=(tassels,)))
    before, after = (
        colour("teal", used("teal", 90, rows), quote=quote).took_g for rows in (50, ROWS)
    )
    plain = colour("teal", used("teal", 90, 50)).took_g
    assert before == pytest.approx((plain or 0) + 20)
    assert after == pytest.approx(90)


def test_all_grams_are_known_where_each_colours_are() -> None:
    lines = [used(some, 200, ROWS) for some in ("oat", "teal", "rust")]
    assert outcome(*lines).took_g == pytest.approx(600)
    assert outcome(*lines[:2]).took_g is None


def test_yarn_costs_what_was_paid_for_it() -> None:
    teal = colour("teal", taken("teal", 200, cost=Decimal("11.50")), used("teal", 150, ROWS))
    assert (teal.expected_cost, teal.cost) == (Decimal("9.20"), Decimal("11.50"))


def test_what_was_taken_without_a_price_costs_the_cheapest_gram() -> None:
    """By hand: 100 g at 17.00 for 400 g are 4.25, beside the 5.00 paid."""
    lines = (taken("teal", 100, cost=Decimal("5.00")), taken("teal", 100, from_shelf=True))
    assert colour("teal", *lines).cost == Decimal("9.25")


def test_balls_that_are_bought_whole_cost_the_same_whatever_is_used_of_them() -> None:
    """By hand: two balls at 4.60, as in the costing."""
    for grams in (150, 200):
        teal = colour("teal", taken("teal", 200), used("teal", grams, ROWS))
        assert (teal.cost, teal.expected_cost) == (None, Decimal("9.20"))
    assert outcome(used("teal", 200, ROWS)).yarn_cost == Decimal("32.20")


def test_where_yarn_is_charged_by_the_gram_its_cost_goes_with_the_grams() -> None:
    quote = charging(YarnCharged.USED)
    teal = colour("teal", taken("teal", 200), used("teal", 200, ROWS), quote=quote)
    share = exact(200.0) / exact(teal.expected_g)
    assert teal.cost == round_money(teal.expected_cost * share, "GBP")
    assert teal.cost > teal.expected_cost


def test_where_the_price_carries_only_the_yarn_used_so_does_its_cost() -> None:
    """By hand: three quarters of what was paid."""
    quote = charging(YarnCharged.USED)
    lines = (taken("teal", 200, cost=Decimal("10.00")), used("teal", 150, ROWS))
    assert colour("teal", *lines, quote=quote).cost == Decimal("7.50")


def test_as_planned_an_hour_earns_what_was_said_or_as_near_as_hundredths_of_hours_are() -> None:
    hours = QUOTE.estimate.hours
    minutes = {doing: 60 * float(sum(hours.of(part) for part in doing.parts)) for doing in Doing}
    lines: list[LogLine] = [spent(doing, minutes[doing]) for doing in Doing]
    assert outcome(*lines).earned == QUOTE.price.earned_per_hour


def test_what_an_hour_earned_by_hand() -> None:
    """297 less fees of 4.86 less 32.20 of yarn less 8.75 less 1.80 an hour, over 15.00 hours.

    Hours: 12.50 at the hook and 2.50 as expected; (292.14 - 32.20 - 8.75 - 27.00) / 15 = 14.946.
    """
    some = outcome(hook(1, ROWS, 750))
    assert some.revenue == Decimal("292.14")
    assert (some.yarn_cost, some.other_costs) == (Decimal("32.20"), Decimal("8.75"))
    assert some.earned == Decimal("14.95")


def test_dearer_yarn_earns_less() -> None:
    lines = (hook(1, ROWS, 750), taken("teal", 300, cost=Decimal("60.00")))
    assert (outcome(*lines).earned or 0) < (outcome(lines[0]).earned or 0)


def charging(charged: YarnCharged) -> Quote:
    """Return the sample's quote, its yarn charged so."""
    workshop = sample_workshop()
    pricing = replace(workshop.pricing, yarn_charged=charged)
    return sample_quote(workshop=replace(workshop, pricing=pricing))
