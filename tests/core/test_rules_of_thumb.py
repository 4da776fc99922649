"""The trade's rules of thumb: what each asks for a size, and what an hour would earn by it."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.ground.money import round_money
from quoting.core.order.order import Terms
from quoting.core.order.resizing import Size, resize_order
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.comparison import Compared, Rule, RuleOfThumb
from quoting.core.workshop.selling import Target, Tax, TaxShown
from tests.core.compared_sizes import BED, COT, PRAM, THROW, compared
from tests.examples import TODAY, sample_design, sample_order, sample_workshop


def rules(one: Compared) -> dict[Rule, RuleOfThumb]:
    return {rule.rule: rule for rule in one.rules}


def test_three_times_the_materials_counts_what_one_blanket_takes() -> None:
    for quantity in (1, 2):
        (one,) = compared(COT, order=sample_order(quantity=quantity)).sizes
        price = one.quote.price
        materials = price.amount(LineKind.YARN) + price.amount(LineKind.EXTRA)
        asked = rules(one)[Rule.THREE_TIMES_MATERIALS].price
        assert asked == round_money(3 * materials / quantity, "GBP")


def test_by_area_and_by_skein_the_orders_own_size_costs_what_it_costs() -> None:
    (own,) = compared(COT).sizes
    for rule in (Rule.BY_AREA, Rule.BY_SKEIN):
        assert rules(own)[rule].price == own.quote.price.price
        assert rules(own)[rule].earned_per_hour == own.quote.price.earned_per_hour


def test_by_area_another_size_costs_in_proportion_to_what_comes_out() -> None:
    own, other = compared(COT, THROW).sizes
    asked = float(rules(other)[Rule.BY_AREA].price)
    assert asked / float(own.quote.price.each) == pytest.approx(
        other.area_cm2 / own.area_cm2, rel=1e-4
    )


def test_by_skein_another_size_costs_in_proportion_to_the_weight_of_its_balls() -> None:
    own, other = compared(COT, THROW).sizes

    def grams(one: Compared) -> float:
        return sum(c.choice.bought_g + 60 * len(c.choice.stock) for c in one.quote.estimate.colours)

    asked = float(rules(other)[Rule.BY_SKEIN].price)
    assert asked / float(own.quote.price.each) == pytest.approx(grams(other) / grams(own), rel=1e-4)


@pytest.mark.parametrize("shown", TaxShown)
@pytest.mark.parametrize("quantity", [1, 6])
def test_what_a_rule_would_pay_is_what_selling_at_its_price_pays(
    shown: TaxShown, quantity: int
) -> None:
    workshop = sample_workshop(tax=Tax(registered=True, rate=0.2, shown=shown))
    rushed = sample_order(quantity=quantity, terms=Terms(rush=0.5, discount=0.1))
    for one in compared(PRAM, BED, order=rushed, workshop=workshop).sizes:
        for rule in one.rules:
            plain = Terms(target=Target(given=rule.price))
            sold = resize_order(sample_order(quantity=quantity, terms=plain), one.size)
            earned = quote_order(sold, workshop, today=TODAY).price.earned_per_hour
            assert rule.earned_per_hour == earned


def test_a_rule_that_comes_to_less_than_a_penny_is_left_out_and_one_of_pence_is_not() -> None:
    """By hand: at 5p for 80 by 100 cm, a twentieth of the area is a quarter of a penny."""
    pence = sample_order(terms=Terms(target=Target(given=Decimal("0.05"))))
    small = Size(width_cm=20, height_cm=20)
    own, other = compared(COT, small, order=pence).sizes
    assert rules(own)[Rule.BY_AREA].price == Decimal("0.05")
    assert Rule.BY_AREA not in rules(other)
    assert Rule.THREE_TIMES_MATERIALS in rules(other)


def test_a_rule_that_asks_for_more_than_any_price_may_be_is_left_out_and_the_size_is_not() -> None:
    dear = sample_order(terms=Terms(target=Target(given=Decimal(900_000_000))))
    _, larger = compared(COT, BED, order=dear).sizes
    assert Rule.BY_AREA not in rules(larger)
    assert Rule.THREE_TIMES_MATERIALS in rules(larger)


def test_rules_are_there_even_where_the_orders_own_size_cannot_be_made() -> None:
    design = sample_design(width_cm=3, height_cm=3)
    (one,) = compared(COT, order=sample_order(design=design)).sizes
    assert set(rules(one)) == set(Rule)
