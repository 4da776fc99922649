"""A figure that is not as wished says so in its own place, and a wished one says nothing."""

from dataclasses import replace
from decimal import Decimal

from tests.examples import TODAY, sample_workshop
from tests.web.conftest import Maker, maker_in
from tests.web.test_worktable import QUOTE, SAY

READY = SAY.short_day(QUOTE.ready_by)


def test_an_hour_that_earns_too_little_names_the_pay_that_was_wanted(maker: Maker) -> None:
    pay = SAY.money(QUOTE.price.pay_per_hour)
    low = maker.send("/answer", price__given="150").figure("An hour earns")
    assert low.endswith(f"less than your {pay}")
    assert "less" not in maker.open().figure("An hour earns")


def test_a_day_that_is_too_late_names_the_one_that_was_wanted(maker: Maker) -> None:
    late = maker.send("/answer", order__wanted_by=TODAY.isoformat()).figure("Ready by")
    assert late == f"{READY} wanted {SAY.short_day(TODAY)}"
    assert maker.open().figure("Ready by") == READY
    in_time = maker.send("/answer", order__wanted_by=QUOTE.ready_by.isoformat())
    assert in_time.figure("Ready by") == READY


def test_a_price_under_the_minimum_charge_says_so() -> None:
    plain = sample_workshop()
    asks_more = replace(plain, pricing=replace(plain.pricing, minimum=Decimal(200)))
    low = maker_in(asks_more).send("/answer", price__given="150").figure("Price")
    assert low.endswith("less than your minimum charge, £200.00")
    assert "minimum" not in maker_in(asks_more).send("/answer", price__given="200").figure("Price")
