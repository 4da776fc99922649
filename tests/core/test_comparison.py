"""One design over several sizes: each as if quoted alone, and what cannot be compared."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order, Terms
from quoting.core.order.resizing import Size, resize_order
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.comparison import MOST_SIZES, Comparison, compare_sizes, price_at
from quoting.core.workshop.selling import Target, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from tests.core.compared_sizes import BED, COT, DOLL, PRAM, SIZES, THROW, at, compared
from tests.examples import (
    COLOURS,
    TODAY,
    band,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    section,
)


def codes(comparison: Comparison) -> list[tuple[Size, str, str]]:
    return [(r.size, m.path, m.code) for r in comparison.refused for m in r.mistakes]


sections = st.lists(
    st.builds(
        lambda colours, rows, weight: section(*colours, rows=rows, share=weight),
        st.lists(st.sampled_from(list(COLOURS)), min_size=1, max_size=4),
        st.integers(1, 3),
        st.integers(1, 3),
    ),
    min_size=1,
    max_size=2,
).map(tuple)
terms = st.builds(Terms, discount=st.sampled_from([0.0, 0.1]), rush=st.sampled_from([0.0, 0.25]))
taxes = st.builds(
    Tax,
    registered=st.booleans(),
    rate=st.just(0.2),
    shown=st.sampled_from(TaxShown),
    on_delivery=st.booleans(),
)
orders = st.builds(
    lambda sections, **changes: sample_order(design=sample_design(sections=sections), **changes),
    sections,
    quantity=st.integers(1, 3),
    terms=terms,
)
workshops = st.builds(lambda tax: sample_workshop(tax=tax), taxes)
side_cm = st.sampled_from([2.0, 40.0, 62.5, 75.0, 90.0])
some_sizes = st.lists(
    st.builds(Size, width_cm=side_cm, height_cm=side_cm), min_size=1, max_size=3, unique=True
)
given_prices = st.decimals("1", "900", places=2)


@settings(max_examples=40)
@given(orders, workshops, some_sizes)
def test_each_size_is_as_if_it_were_quoted_alone(
    order: Order, workshop: Workshop, sizes: list[Size]
) -> None:
    found = compare_sizes(order, workshop, sizes, today=TODAY)
    for one in found.sizes:
        assert one.quote == quote_order(resize_order(order, one.size), workshop, today=TODAY)
    for refusal in found.refused:
        with pytest.raises(Refused) as caught:
            quote_order(resize_order(order, refusal.size), workshop, today=TODAY)
        assert caught.value.mistakes == refusal.mistakes
    answered = [one.size for one in found.sizes] + [refusal.size for refusal in found.refused]
    assert sorted(map(str, answered)) == sorted(map(str, sizes))


@settings(max_examples=40)
@given(orders, workshops, st.dictionaries(st.sampled_from(SIZES), given_prices, min_size=1))
def test_at_given_prices_each_size_is_sold_at_its_own_and_the_best_earns_most_an_hour(
    order: Order, workshop: Workshop, prices: dict[Size, Decimal]
) -> None:
    found = compare_sizes(order, workshop, list(prices), today=TODAY, prices=prices)
    for one in found.sizes:
        assert one.quote.price.listed == prices[one.size] * order.quantity
        priced = replace(order.terms, target=Target(given=prices[one.size]))
        alone = resize_order(replace(order, terms=priced), one.size)
        assert one.quote == quote_order(alone, workshop, today=TODAY)
    earned = [one.quote.price.earned_per_hour for one in found.sizes]
    assert found.best == earned.index(max(earned))


def test_the_sizes_come_back_in_the_order_asked_and_one_asked_twice_once() -> None:
    again = Size(width_cm=60, height_cm=75, label="pram")
    assert [one.size for one in compared(BED, PRAM, again, COT).sizes] == [BED, PRAM, COT]


def test_a_size_that_cannot_be_made_is_listed_with_the_reason_and_the_rest_are_compared() -> None:
    found = compared(PRAM, DOLL, COT)
    assert [one.size for one in found.sizes] == [PRAM, COT]
    assert codes(found) == [(DOLL, "blanket.height", "height-too-small")]


def test_where_no_size_can_be_made_none_is_best() -> None:
    found = compared(DOLL, prices=at("50", DOLL))
    assert found.sizes == ()
    assert (found.best, found.reason) == (None, None)


def test_a_size_without_a_price_is_listed_where_prices_are_given() -> None:
    found = compared(PRAM, COT, prices=at("200", PRAM))
    assert [one.size for one in found.sizes] == [PRAM]
    assert codes(found) == [(COT, "prices", "size-without-price")]


@pytest.mark.parametrize("price", ["0", "-1", "NaN", "Infinity", "0.004", "99999999999"])
def test_a_price_that_is_none_is_listed_at_its_size_and_the_rest_are_compared(price: str) -> None:
    found = compared(PRAM, COT, prices=at("200", PRAM) | at(price, COT))
    assert [one.size for one in found.sizes] == [PRAM]
    assert [refusal.size for refusal in found.refused] == [COT]


def test_a_price_for_a_size_that_is_not_compared_is_refused_with_its_number() -> None:
    with pytest.raises(Refused) as caught:
        compared(PRAM, COT, prices=at("200", PRAM, BED, COT, THROW))
    assert [(m.path, m.code, m.facts["read"]) for m in caught.value.mistakes] == [
        ("prices.2.size", "size-not-compared", "90x120cm"),
        ("prices.4.size", "size-not-compared", "120x150cm"),
    ]


def test_no_size_and_too_many_sizes_are_refused() -> None:
    many = [Size(width_cm=10 + n, height_cm=50) for n in range(MOST_SIZES + 1)]
    for sizes, code in (([], "missing"), (many, "too-many")):
        with pytest.raises(Refused) as caught:
            compare_sizes(sample_order(), sample_workshop(), sizes, today=TODAY)
        assert [(m.path, m.code) for m in caught.value.mistakes] == [("sizes", code)]


def test_what_is_wrong_with_the_order_itself_is_said_at_every_size() -> None:
    odd = sample_order(design=sample_design(sections=(section("mauve"),)))
    found = compared(PRAM, COT, order=odd)
    assert found.sizes == ()
    assert {code for _, _, code in codes(found)} == {"unknown-colour"}


def test_at_a_target_every_size_earns_about_the_same_and_none_is_named() -> None:
    found = compared()
    assert (found.best, found.reason) == (None, None)
    earned = [one.quote.price.earned_per_hour for one in found.sizes]
    assert max(earned) - min(earned) < Decimal("0.50")


def test_the_price_an_order_gives_is_for_its_own_size_and_no_other() -> None:
    given_200 = sample_order(terms=Terms(target=Target(given=Decimal(200)), rush=0.1))
    rushed = sample_order(terms=Terms(rush=0.1))
    kept, asked = (compared(order=o).sizes for o in (given_200, rushed))
    for one, at_target in zip(kept, asked, strict=True):
        expected = sample_quote(given_200) if one.size == COT else at_target.quote
        assert one.quote.price == expected.price


def test_a_margin_that_an_order_asks_is_kept_at_every_size() -> None:
    order = sample_order(terms=Terms(target=Target(margin=0.4)))
    assert {one.quote.price.target for one in compared(order=order).sizes} == {Target(margin=0.4)}


def test_the_price_of_an_area_is_that_of_one_blanket() -> None:
    (pair,) = compared(COT, order=sample_order(quantity=2)).sizes
    area = Decimal(str(pair.quote.plan.width_cm)) * Decimal(str(pair.quote.plan.height_cm))
    assert pair.price_per_100_cm2 == round(pair.quote.price.each * 100 / area, 2)
    # An inch is 2.54 cm exactly (NIST Handbook 44), so 100 square inches are 645.16 cm².
    assert pair.price_per_100_in2 == round(pair.quote.price.each * Decimal("645.16") / area, 2)
    assert pair.area_cm2 == pytest.approx(float(area))


@given(st.integers(1, 4), given_prices)
def test_a_price_moved_by_hand_keeps_the_identity(quantity: int, each: Decimal) -> None:
    rush = sample_order(quantity=quantity, terms=Terms(rush=0.3))
    price = price_at(sample_quote(rush), each)
    assert price.price == each * quantity
    assert price.total == price.cost + price.fees + price.tax + price.profit


def test_a_border_is_compared_with_its_size() -> None:
    """A border of ten rounds takes the body of a small size away, and that size is refused."""
    wide = sample_order(design=sample_design(border=(band("dc", rounds=10),)))
    found = compared(Size(width_cm=25, height_cm=25), COT, order=wide)
    assert [one.size for one in found.sizes] == [COT]
    assert len(found.refused) == 1
