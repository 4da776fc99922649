"""Cost lines: what each thing is counted in and charged at, case by case."""

from __future__ import annotations

from dataclasses import replace

from quoting.core.ground.money import product, round_money
from quoting.core.order.order import Extra, Terms
from quoting.core.price.cost_lines import LineKind, Unit
from quoting.core.workshop.selling import YarnCharged
from quoting.core.workshop.yarns import PutUp, Stock
from tests.core.priced_orders import PRICING, lines_of, money, quoted
from tests.examples import sample_design, sample_order, sample_quote, sample_workshop, sample_yarn


def test_each_line_is_quantity_times_rate_rounded_once() -> None:
    for line in quoted(terms=Terms(rush=0.1, discount=0.05)).lines:
        exact = line.quantity * line.rate
        assert abs(line.amount - exact) <= money("0.005"), line


def test_skeins_are_charged_whole_and_packs_as_packs() -> None:
    pack = PutUp(weight_g=100, length_m=200, price=money("8.00"), pack=2)
    quote = quoted(yarns=(sample_yarn(put_ups=(pack,), stock=()),))
    oat = lines_of(quote, LineKind.YARN)[0]
    assert (oat.unit, oat.quantity, oat.pack, oat.amount) == (
        Unit.PACK,
        money("2"),
        2,
        money("16.00"),
    )


def test_used_yarn_is_charged_by_the_gram_at_what_its_skeins_cost() -> None:
    quote = quoted(pricing=replace(PRICING, yarn_charged=YarnCharged.USED))
    teal = lines_of(quote, LineKind.YARN)[1]
    assert (teal.unit, teal.quantity, teal.rate) == (Unit.GRAM, money("168"), money("0.046"))
    assert teal.amount == money("7.73")


def test_stock_is_charged_at_the_cheapest_price_for_a_gram() -> None:
    """By hand: 17.00 for 400 g is 0.0425 a gram."""
    held = sample_yarn(stock=(Stock(colour="teal", weight_g=200),))
    teal = lines_of(quoted(yarns=(held,)), LineKind.YARN)[1]
    assert (teal.unit, teal.rate) == (Unit.GRAM, money("0.0425"))
    assert teal.quantity == 168


def test_half_a_penny_is_half_a_penny_where_the_price_of_a_gram_has_no_end() -> None:
    """By hand: 75 g at 1.55 for three balls of 50 g are 0.775, which rounds up to 0.78."""
    ball = PutUp(weight_g=50, length_m=100, price=money("1.55"), pack=3)
    assert product(75, ball.price_per_gram) == money("0.775")
    assert round_money(product(75, ball.price_per_gram), "GBP") == money("0.78")


def test_extras_and_packaging_are_per_blanket() -> None:
    quote = quoted(quantity=3)
    assert lines_of(quote, LineKind.EXTRA)[0].amount == money("9.60")
    assert lines_of(quote, LineKind.PACKAGING)[0].amount == money("3.30")


def test_an_extra_that_costs_nothing_is_still_listed() -> None:
    order = sample_order(extras=(Extra(what="Name label"),), design=sample_design())
    (label,) = lines_of(sample_quote(order), LineKind.EXTRA)
    assert (label.subject, label.amount) == ("Name label", money("0"))


def test_used_grams_are_those_from_stock_and_those_bought() -> None:
    pricing = replace(PRICING, yarn_charged=YarnCharged.USED)
    order = sample_order(design=sample_design(mix_lots=True))
    quote = sample_quote(order, sample_workshop(pricing=pricing))
    oat = [line.quantity for line in lines_of(quote, LineKind.YARN) if line.subject == "oat"]
    whole = round(quote.estimate.colours[0].grams)
    assert len(oat) == 2
    assert sum(oat) == whole
