"""Agreed orders are made one after another, each on days of its own."""

from __future__ import annotations

from datetime import date

from quoting.core.ground.codes import CautionCode
from quoting.core.quote.quote import quote_order
from quoting.core.workshop.queue import NOTHING_AHEAD, Ahead, Queue, queue_orders
from tests.core.agreed_orders import TODAY, agreed, working
from tests.examples import sample_order, sample_quote, sample_workshop


def day(number: int) -> date:
    """Return a day of November or, past its 30th, of December 2026."""
    return date(2026, 11, number) if number <= 30 else date(2026, 12, number - 30)


def test_each_order_begins_the_day_after_the_last_is_made() -> None:
    """By hand: 5 h at 2 h a day are 26, 27 and 28 November; 4 h the next two days."""
    first, second = queue_orders([agreed(1, 5), agreed(2, 4)], working(), today=TODAY).turns
    assert (first.starts_on, first.made_by, first.ready_by) == (day(26), day(28), day(28))
    assert (second.starts_on, second.made_by) == (day(29), day(30))


def test_what_is_on_the_hook_comes_first_and_the_rest_as_it_was_agreed() -> None:
    orders = [agreed(1, 2), agreed(2, 2), agreed(3, 2, on_the_hook=True)]
    turns = queue_orders(orders, working(), today=TODAY).turns
    assert [turn.order.order_id for turn in turns] == [3, 1, 2]


def test_days_off_carry_no_work_and_drying_and_post_come_after() -> None:
    """By hand: of 26 to 29 November two are off, so that 4 h end on the 29th; 2 + 3 days more."""
    shop = working(days_off=(day(26), day(28)), drying_days=2, post_days=3)
    (turn,) = queue_orders([agreed(1, 4)], shop, today=TODAY).turns
    assert (turn.starts_on, turn.made_by, turn.ready_by) == (day(27), day(29), day(34))


def test_an_order_waits_for_yarn_that_is_bought_when_it_is_agreed() -> None:
    shop = working(yarn_arrives_days=5)
    bought = agreed(1, 2, yarn_bought=True, agreed_on=day(23))
    (turn,) = queue_orders([bought], shop, today=TODAY).turns
    assert turn.starts_on == day(29)
    (old,) = queue_orders(
        [agreed(1, 2, yarn_bought=True, agreed_on=day(2))], shop, today=TODAY
    ).turns
    assert old.starts_on == day(26)


def test_what_is_on_the_hook_has_its_yarn() -> None:
    shop = working(yarn_arrives_days=30)
    (turn,) = queue_orders(
        [agreed(1, 2, yarn_bought=True, on_the_hook=True)], shop, today=TODAY
    ).turns
    assert turn.starts_on == day(26)


def test_no_order_goes_ahead_of_one_that_waits_for_its_yarn() -> None:
    shop = working(yarn_arrives_days=5)
    orders = [agreed(1, 2, yarn_bought=True), agreed(2, 2)]
    first, second = queue_orders(orders, shop, today=TODAY).turns
    assert (first.starts_on, second.starts_on) == (day(31), day(32))


def test_hours_promised_outside_of_the_book_come_before_all() -> None:
    (turn,) = queue_orders([agreed(1, 2)], working(hours_promised=3), today=TODAY).turns
    assert turn.starts_on == day(28)


def test_of_an_order_that_is_begun_what_is_left_counts() -> None:
    orders = [agreed(1, 9, on_the_hook=True), agreed(2, 4)]
    queue = queue_orders(orders, working(), today=TODAY, left={1: 3.5, 7: 50})
    assert [turn.made_by for turn in queue.turns] == [day(27), day(29)]
    assert queue.ahead_of(2) == Ahead(orders=1, hours=3.5, made_by=day(27))


def test_an_order_that_is_not_agreed_has_no_turn() -> None:
    queue = queue_orders([agreed(1, hours=6)], sample_workshop(), today=TODAY)
    first = queue.turn_of(1)
    assert first is not None
    assert first.order.order_id == 1
    assert queue.turn_of(2) is None


def test_an_order_of_which_nothing_is_left_takes_no_day() -> None:
    done, next_ = queue_orders(
        [agreed(1, 0, on_the_hook=True), agreed(2, 2)], working(), today=TODAY
    ).turns
    assert (done.starts_on, done.made_by) == (TODAY, TODAY)
    assert next_.starts_on == day(26)


def test_a_turn_says_by_how_much_it_misses_the_days_that_were_told_and_asked_for() -> None:
    """By hand: 4 h end on the 27th, so that the 25th and 26th are missed and the 27th kept."""
    late = agreed(1, 4, promised_by=day(26), wanted_by=day(25))
    kept = agreed(1, 4, promised_by=day(27), wanted_by=day(27))
    (missed,) = queue_orders([late], working(), today=TODAY).turns
    (held,) = queue_orders([kept], working(), today=TODAY).turns
    assert (missed.days_past_promise, missed.days_past_wish) == (1, 2)
    assert (held.days_past_promise, held.days_past_wish) == (0, 0)
    (unasked,) = queue_orders([agreed(1, 4)], working(), today=TODAY).turns
    assert unasked.days_past_wish == 0


def test_before_a_new_order_comes_the_whole_queue_and_before_one_of_it_what_stands_there() -> None:
    queue = queue_orders([agreed(1, 5), agreed(2, 4)], working(), today=TODAY)
    assert queue.ahead_of(None) == Ahead(orders=2, hours=9, made_by=day(30))
    assert queue.ahead_of(7) == queue.ahead_of(None)
    assert queue.ahead_of(2) == Ahead(orders=1, hours=5, made_by=day(28))
    assert queue.ahead_of(1) == NOTHING_AHEAD
    assert Queue().ahead_of(None) == NOTHING_AHEAD


def test_a_quote_is_ready_after_what_is_ahead_of_it() -> None:
    """By hand: the queue ends on 10 December; then ten days of 12/7 h, two and three more."""
    order, ahead = sample_order(wanted_by=day(47)), Ahead(orders=1, hours=20, made_by=day(40))
    alone, after = (
        quote_order(order, sample_workshop(), today=TODAY, ahead=before)
        for before in (NOTHING_AHEAD, ahead)
    )
    assert (alone.ready_by, after.ready_by) == (day(45), day(55))
    late = [CautionCode.LATE in {c.code for c in quote.cautions} for quote in (alone, after)]
    assert late == [False, True]
    assert after.ahead == ahead


def test_a_queue_that_ends_while_the_yarn_travels_delays_nothing() -> None:
    soon = Ahead(orders=1, hours=2, made_by=day(29))
    quote = quote_order(sample_order(), sample_workshop(), today=TODAY, ahead=soon)
    assert quote.ready_by == sample_quote().ready_by
