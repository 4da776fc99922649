"""A budget: what it buys at each size, and what would bring the price down."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core import budget as budget_module
from quoting.core.budget import (
    RECOLOURED,
    BudgetAnswer,
    Change,
    Saving,
    each_for_total,
    savings,
    within_budget,
)
from quoting.core.comparison import price_at
from quoting.core.currencies import minor_digits
from quoting.core.errors import Refused
from quoting.core.order import Order, Terms
from quoting.core.quote import Quote, quote_order
from quoting.core.resizing import Size
from quoting.core.terms import MOST_MONEY, Delivery, Fee, FeeBase, Pricing, Target, Tax, TaxShown
from quoting.core.workshop import Workshop
from tests.examples import (
    COLOURS,
    LARGE,
    TODAY,
    WOOL,
    band,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

PRAM, COT, BED = (
    Size(width_cm=width, height_cm=height) for width, height in ((60, 75), (80, 100), (90, 120))
)
SIZES = (COT, PRAM, BED)
EACH_A_ROW = ("teal", "rust", "oat", "plum")


def answer(
    budget: str, *, order: Order | None = None, workshop: Workshop | None = None
) -> BudgetAnswer:
    return within_budget(
        order or sample_order(),
        workshop or sample_workshop(),
        SIZES,
        budget=Decimal(budget),
        today=TODAY,
    )


def saved(order: Order | None = None, workshop: Workshop | None = None) -> dict[Change, Saving]:
    quote = sample_quote(order, workshop)
    return {saving.change: saving for saving in savings(quote, today=TODAY)}


taxes = st.builds(
    Tax,
    registered=st.booleans(),
    rate=st.sampled_from([0.05, 0.081, 0.2, 0.255]),
    shown=st.sampled_from(TaxShown),
    on_delivery=st.booleans(),
)
fees = st.lists(
    st.builds(
        Fee,
        name=st.just("Card payment"),
        rate=st.sampled_from([0.015, 0.3]),
        fixed=st.sampled_from([Decimal(0), Decimal(2)]),
        on=st.sampled_from(FeeBase),
    ),
    max_size=1,
).map(tuple)
workshops = st.builds(
    lambda currency, tax, fees, charged: sample_workshop(
        currency=currency,
        tax=tax,
        fees=fees,
        delivery=Delivery(charged=charged, paid=Decimal(4)),
        pricing=Pricing(target=Target(margin=0.15)),
    ),
    st.sampled_from(["GBP", "JPY", "KWD"]),
    taxes,
    fees,
    st.sampled_from([Decimal(0), Decimal(5), Decimal("7.5")]),
)
budgets = st.decimals("0.001", "2000", places=3)
small = sample_design(width_cm=20, height_cm=20)


@settings(max_examples=150)
@given(workshops, budgets, st.integers(1, 4))
def test_the_most_that_a_budget_buys_never_costs_more_than_the_budget(
    workshop: Workshop, budget: Decimal, quantity: int
) -> None:
    order = sample_order(design=small, extras=(), quantity=quantity, terms=Terms(rush=0.2))
    quote = quote_order(order, workshop, today=TODAY)
    each = each_for_total(quote, budget)
    penny = Decimal(1).scaleb(-minor_digits(workshop.currency))
    if each is not None:
        assert price_at(quote, each).total <= budget
    more = price_at(quote, (each or 0) + penny)
    assert more.total > budget - penny


@settings(max_examples=25)
@given(workshops, st.decimals("20", "600", places=2), st.integers(1, 3))
def test_every_size_is_judged_by_its_total_and_by_the_hour(
    workshop: Workshop, budget: Decimal, quantity: int
) -> None:
    found = within_budget(
        sample_order(quantity=quantity), workshop, SIZES, budget=budget, today=TODAY
    )
    pay = workshop.pay.making_per_hour
    for fit in found.fits:
        assert fit.fits == (fit.compared.quote.price.total <= budget)
        bought = fit.at_budget
        assert bought is None or bought.total <= budget
        assert fit.pays_the_hour == (bought is not None and bought.earned_per_hour >= pay)
    paying = [fit.compared.area_cm2 for fit in found.fits if fit.pays_the_hour]
    assert (found.largest is None) == (not paying)
    if found.largest is not None:
        assert found.fits[found.largest].compared.area_cm2 == max(paying)


def test_the_largest_that_pays_the_hour_need_not_fit_at_the_target() -> None:
    """285 is short of what the cot blanket must cost at the target, and still pays its hour."""
    found = answer("285")
    by_size = {str(fit.compared.size): fit for fit in found.fits}
    cot = by_size["80x100cm"]
    assert not cot.fits
    assert cot.pays_the_hour
    assert by_size["60x75cm"].fits
    assert not by_size["90x120cm"].pays_the_hour
    assert found.largest is not None
    assert found.fits[found.largest] is cot


def test_a_total_that_is_just_the_budget_fits() -> None:
    total = sample_quote().price.total
    assert answer(str(total)).fits[0].fits
    assert not answer(str(total - Decimal("0.01"))).fits[0].fits


def test_a_budget_that_delivery_takes_whole_buys_nothing() -> None:
    found = answer("5.00")
    assert [fit.at_budget for fit in found.fits] == [None] * 3
    assert found.largest is None


def test_a_budget_pays_for_all_of_several_alike() -> None:
    pair = answer("500", order=sample_order(quantity=2)).fits[0].at_budget
    assert pair is not None
    assert (pair.quantity, pair.total) == (2, Decimal("499.99") + Decimal("0.01"))
    assert pair.each == Decimal("247.50")


@pytest.mark.parametrize(
    ("budget", "code"),
    [
        (Decimal(0), "not-above"),
        (Decimal(-1), "not-above"),
        (Decimal("NaN"), "not-above"),
        (Decimal("Infinity"), "not-above"),
        (Decimal(MOST_MONEY) + 1, "too-large"),
    ],
)
def test_a_budget_that_is_none_is_refused(budget: Decimal, code: str) -> None:
    with pytest.raises(Refused) as caught:
        answer(str(budget))
    (mistake,) = caught.value.mistakes
    assert (mistake.place, mistake.code) == ("budget", code)


def test_the_largest_budget_buys_everything() -> None:
    found = answer(str(MOST_MONEY))
    assert all(fit.fits and fit.pays_the_hour for fit in found.fits)


def test_a_size_that_cannot_be_made_is_listed_and_the_rest_are_judged() -> None:
    tiny = Size(width_cm=2, height_cm=2)
    found = within_budget(
        sample_order(), sample_workshop(), (tiny, COT), budget=Decimal(300), today=TODAY
    )
    assert [fit.compared.size for fit in found.fits] == [COT]
    assert [refusal.size for refusal in found.comparison.refused] == [tiny]


def test_a_price_that_the_order_gives_says_nothing_of_a_budget() -> None:
    given_price = sample_order(terms=Terms(target=Target(given=Decimal(10))))
    plain = answer("250")
    found = answer("250", order=given_price)
    assert [fit.fits for fit in found.fits] == [fit.fits for fit in plain.fits]
    assert [s.saved for s in found.savings] == [s.saved for s in plain.savings]


def test_every_saving_is_the_difference_of_two_totals_the_largest_first() -> None:
    quote = sample_quote(sample_order(design=sample_design(sections=(section(*EACH_A_ROW),))))
    found = savings(quote, today=TODAY)
    assert len(found) >= 3
    for saving in found:
        again = quote_order(saving.quote.order, quote.workshop, today=TODAY)
        assert again == saving.quote
        assert saving.saved == quote.price.total - again.price.total > 0
    assert [s.saved for s in found] == sorted((s.saved for s in found), reverse=True)
    assert len({saving.change for saving in found}) == len(found)


def test_a_colour_less_is_nowhere_in_the_blanket_any_more() -> None:
    design = sample_design(sections=(section(*EACH_A_ROW),), border=(band(colour="plum"),))
    saving = saved(sample_order(design=design))[Change.FEWER_COLOURS]
    colours = {worked.colour for worked in saving.quote.plan.passes}
    assert saving.subject in EACH_A_ROW
    assert saving.subject not in colours
    assert len(colours) == 3


def test_of_all_colours_the_one_that_saves_most_is_left_out() -> None:
    order = sample_order(design=sample_design(sections=(section(*EACH_A_ROW),)))
    total = sample_quote(order).price.total
    best = saved(order)[Change.FEWER_COLOURS].saved
    for colour in EACH_A_ROW:
        for other in EACH_A_ROW:
            sewn = [other if c == colour else c for c in EACH_A_ROW]
            kept = replace(order.design, sections=(section(*sewn),))
            kept = replace(kept, first_rows=section(other if colour == "oat" else "oat").stripes)
            kept = replace(kept, border=(band(colour=other if colour == "oat" else "oat"),))
            less = quote_order(replace(order, design=kept), sample_workshop(), today=TODAY)
            assert total - less.price.total <= best


def test_stripes_that_carry_save_the_weaving_in() -> None:
    order = sample_order(design=sample_design(sections=(section(*EACH_A_ROW),)))
    saving = saved(order)[Change.CALMER_STRIPES]
    ends = sample_quote(order).estimate.ends
    assert 2 * saving.quote.estimate.ends <= ends
    assert saving.quote.plan.rows_by_colour.keys() == set(EACH_A_ROW)


def test_a_smaller_border_is_one_round_less_at_the_outside() -> None:
    wide = sample_design(border=(band(rounds=2), band(colour="moss", rounds=3)))
    saving = saved(sample_order(design=wide))[Change.SMALLER_BORDER]
    assert saving.quote.order.design.border == (band(rounds=2), band(colour="moss", rounds=2))
    assert len(saving.quote.plan.rounds) == 4


def test_a_border_of_one_round_can_be_left_out_and_none_cannot() -> None:
    assert saved()[Change.SMALLER_BORDER].quote.order.design.border == ()
    assert Change.SMALLER_BORDER not in saved(sample_order(design=sample_design(border=())))


def test_another_yarn_is_named_where_it_is_cheaper_and_has_the_colours() -> None:
    cheap = sample_yarn(
        name="barn acrylic", put_ups=(replace(LARGE, price=Decimal("4.00")),), stock=()
    )
    bare = replace(cheap, name="bare acrylic", colours={"oat": COLOURS["oat"]})
    dear = replace(cheap, name="fell silk", put_ups=(replace(LARGE, price=Decimal(90)),))
    swatches = sample_workshop().swatches
    shelf = sample_workshop(
        yarns=(sample_yarn(), bare, dear, cheap),
        swatches=(*swatches, *(replace(s, yarn=cheap.name) for s in swatches)),
    )
    saving = saved(workshop=shelf)[Change.OTHER_YARN]
    assert saving.subject == "barn acrylic"
    assert saving.quote.order.design.yarn == "barn acrylic"


def test_mixed_balls_are_offered_only_where_they_are_not_mixed_yet() -> None:
    assert saved()[Change.MIXED_BALLS].quote.order.design.mix_lots
    assert Change.MIXED_BALLS not in saved(sample_order(design=sample_design(mix_lots=True)))


def test_the_savings_of_several_alike_are_those_of_all_of_them() -> None:
    six = sample_order(quantity=6)
    saving = saved(six)[Change.SMALLER_BORDER]
    assert saving.quote.order.quantity == 6
    assert saving.saved == sample_quote(six).price.total - saving.quote.price.total


def test_one_colour_in_one_yarn_without_a_border_cannot_be_had_cheaper() -> None:
    plain = sample_design(
        sections=(section("oat"),), border=(), first_rows=(), mix_lots=True, yarn=WOOL
    )
    assert saved(sample_order(design=plain)) == {}


def test_however_many_the_colours_only_so_many_designs_are_quoted(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    names = [f"dye {number}" for number in range(20)]
    dyed = sample_workshop(yarns=(sample_yarn(colours=dict.fromkeys(names, "#777777"), stock=()),))
    design = sample_design(
        sections=(section(*names),), first_rows=(), border=(), colours={}, height_cm=60
    )
    quote = sample_quote(sample_order(design=design), dyed)
    tried: list[Order] = []

    def counted(order: Order, workshop: Workshop, *, today: date) -> Quote:
        tried.append(order)
        return quote_order(order, workshop, today=today)

    monkeypatch.setattr(budget_module, "quote_order", counted)
    savings(quote, today=TODAY)
    assert RECOLOURED <= len(tried) <= RECOLOURED + 10
