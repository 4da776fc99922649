"""The quote as a whole: its number, its days, and that nothing moves it."""

from __future__ import annotations

from datetime import date, timedelta
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Terms
from quoting.core.quote.quote import quote_order
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Target
from quoting.core.workshop.yarns import Stock
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop, sample_yarn


def test_the_same_order_on_the_same_day_is_the_same_quote() -> None:
    assert sample_quote() == sample_quote()


def test_a_number_begins_with_its_day_and_changes_with_the_offer() -> None:
    quote = sample_quote()
    dearer = sample_quote(sample_order(terms=Terms(target=Target(given=Decimal(400)))))
    assert quote.number.startswith("2026-1125-")
    assert quote.number == sample_quote().number
    assert dearer.number != quote.number


def test_a_quote_is_good_for_its_days() -> None:
    quote = sample_quote()
    assert (quote.day, quote.valid_until) == (TODAY, TODAY + timedelta(days=21))


def test_a_later_day_moves_only_the_days() -> None:
    later = quote_order(sample_order(), sample_workshop(), today=date(2026, 12, 23))
    assert later.price == sample_quote().price
    assert later.estimate == sample_quote().estimate
    assert later.ready_by == date(2026, 12, 23) + timedelta(
        days=20
    )  # the days off fall in the post


def test_the_lines_of_a_quote_are_those_of_its_price() -> None:
    assert sample_quote().lines == sample_quote().price.lines


def rate(**changes: object) -> ExchangeRate:
    values: dict[str, object] = {"currency": "EUR", "rate": Decimal("1.17"), "day": TODAY}
    return ExchangeRate(**(values | changes))  # type: ignore[arg-type]


def test_a_cushion_goes_on_top_and_the_sum_is_rounded_once() -> None:
    assert rate(cushion=0.02).convert(Decimal("100.00")) == Decimal("119.34")
    assert rate(currency="JPY", rate=Decimal("190.455")).convert(Decimal(100)) == 19046
    assert rate(currency="KWD", rate=Decimal("0.3895")).convert(Decimal("1.003")) == Decimal(
        "0.391"
    )


@pytest.mark.parametrize("bad", [{"rate": Decimal(0)}, {"rate": Decimal("NaN")}, {"cushion": -0.1}])
def test_a_rate_that_is_none_is_refused(bad: dict[str, object]) -> None:
    with pytest.raises(Refused):
        rate(**bad)


def test_a_blanket_from_stock_waits_for_no_yarn() -> None:
    stock = tuple(Stock(colour=colour, weight_g=500) for colour in ("oat", "teal", "rust"))
    held = sample_quote(workshop=sample_workshop(yarns=(sample_yarn(stock=stock),)))
    assert held.estimate.skeins == 0
    assert held.ready_by == sample_quote().ready_by - timedelta(days=5)
