"""What is said of the orders ahead and of late ones, whatever there is of them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.queue import Ahead, queue_orders
from quoting.wording import ahead_words, turn_words, weeks_description, wish_words
from tests.core.agreed_orders import TODAY, agreed, working
from tests.examples import sample_order, sample_workshop
from tests.wording.speeches import DE, GB


def quoted(ahead: Ahead, elsewhere: float = 0, wanted_by: date | None = None) -> Quote:
    shop = sample_workshop()
    shop = replace(shop, calendar=replace(shop.calendar, hours_promised=elsewhere))
    return quote_order(sample_order(wanted_by=wanted_by), shop, today=TODAY, ahead=ahead)


@pytest.mark.parametrize(
    ("ahead", "elsewhere", "said"),
    [
        (Ahead(), 0, ""),
        (Ahead(), 20, "It comes after 20 h promised elsewhere."),
        (
            Ahead(orders=1, hours=15.9, made_by=TODAY),
            0,
            "It comes after 1 order agreed before it (15.9 h at most).",
        ),
        (
            Ahead(orders=2, hours=54.04, made_by=TODAY),
            1.5,
            "It comes after 2 orders agreed before it (54 h at most) and 1.5 h promised elsewhere.",
        ),
    ],
)
def test_what_comes_before_is_told(ahead: Ahead, elsewhere: float, said: str) -> None:
    assert ahead_words(quoted(ahead, elsewhere), GB).replace("\u00a0", " ") == said


def test_hours_are_written_as_a_workshop_writes_them() -> None:
    said = ahead_words(quoted(Ahead(orders=1, hours=1015.9, made_by=TODAY)), DE)
    assert "1.015,9\u00a0h" in said


def test_a_wish_that_can_be_kept_is_told_and_any_other_left_to_its_caution() -> None:
    assert wish_words(quoted(Ahead()), GB) == ""
    ready = quoted(Ahead()).ready_by
    assert wish_words(quoted(Ahead(), wanted_by=ready), GB) == (
        f"Wanted by {GB.day(ready)}: it can be there in time."
    )
    assert wish_words(quoted(Ahead(), wanted_by=TODAY), GB) == ""


@pytest.mark.parametrize(
    ("promised", "wanted", "said"),
    [
        (26, None, "in time"),
        (26, 26, "in time"),
        (25, None, "1 day later than promised"),
        (30, 24, "2 days later than wanted"),
        (23, 25, "3 days later than promised and 1 day later than wanted"),
    ],
)
def test_how_late_an_order_is_is_told_in_days(promised: int, wanted: int | None, said: str) -> None:
    wish = None if wanted is None else date(2026, 11, wanted)
    order = agreed(1, 2, promised_by=date(2026, 11, promised), wanted_by=wish)
    (turn,) = queue_orders([order], working(), today=TODAY).turns
    assert turn_words(turn, GB) == said


def test_the_picture_is_told_to_whoever_does_not_see_it() -> None:
    assert "each of 1 order that was agreed" in weeks_description(1, GB)
    assert "each of 2 orders that were agreed" in weeks_description(2, GB)
