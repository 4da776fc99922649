"""A slip of the hand in a swatch or a yarn ends in a refusal, not in endless work."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.in_rows import Section, Stripe
from quoting.core.order.order import Extra, Terms
from quoting.core.plan.passes import Edge
from quoting.core.quote.quote import quote_order
from quoting.core.workshop.habits import Join
from quoting.core.workshop.selling import Target
from quoting.core.workshop.yarns import MOST_MIXTURES, MOST_PUT_UPS, MOST_STOCK, PutUp, Stock, Yarn
from tests.examples import sample_design, sample_order, sample_workshop, sample_yarn

TODAY = date(2026, 11, 25)


def refused_code(workshop) -> str:
    with pytest.raises(Refused) as refused:
        quote_order(sample_order(), workshop, today=TODAY)
    (mistake,) = refused.value.mistakes
    return mistake.code


def with_gauge(**sides):
    workshop = sample_workshop()
    swatch = workshop.swatches[0]
    return replace(workshop, swatches=(replace(swatch, gauge=replace(swatch.gauge, **sides)),))


def test_stitches_a_micrometre_wide_are_too_many_for_a_row():
    assert refused_code(with_gauge(stitches=10_000, width_cm=1)) == "too-many-stitches"


def test_rows_a_micrometre_high_are_too_many_for_a_blanket():
    assert refused_code(with_gauge(rows=10_000, height_cm=1)) == "too-many-rows"


def test_a_ball_that_weighs_next_to_nothing_is_told_and_not_bought_by_the_million():
    workshop = sample_workshop()
    yarn = workshop.yarns[0]
    light = tuple(replace(put_up, weight_g=0.1, length_m=10_000) for put_up in yarn.put_ups)
    assert refused_code(replace(workshop, yarns=(replace(yarn, put_ups=light),))) == (
        "too-many-balls"
    )


def test_more_blankets_than_one_answer_can_follow_are_refused_with_how_many_it_can():
    with pytest.raises(Refused) as refused:
        quote_order(sample_order(quantity=1000), sample_workshop(), today=TODAY)
    (mistake,) = refused.value.mistakes
    assert (mistake.path, mistake.code) == ("order.quantity", "too-large")
    most = mistake.facts["limit"]
    assert quote_order(sample_order(quantity=most), sample_workshop(), today=TODAY)


def test_yarn_is_bought_for_a_fringe_that_scraps_at_the_edge_would_not_make():
    workshop = sample_workshop()
    habits = replace(workshop.habits, join=Join.AT_AN_EDGE, allowance=0.0)
    short = PutUp(weight_g=20, length_m=35, price=Decimal(2))
    workshop = replace(workshop, habits=habits, yarns=(sample_yarn(put_ups=(short,), stock=()),))
    fringe = Extra(what="Fringe", colour="teal", yarn_m=30)
    estimate = quote_order(sample_order(extras=(fringe,)), workshop, today=TODAY).estimate
    (teal,) = (colour for colour in estimate.colours if colour.colour == "teal")
    assert teal.walk.left_m >= 30


def shelf(weights) -> Yarn:
    return sample_yarn(stock=tuple(Stock(colour="oat", weight_g=w, lot="771") for w in weights))


def test_part_balls_that_can_be_mixed_in_too_many_ways_are_refused():
    """Fourteen weights, a ball of each, can be taken in 2 to the 14th ways beside two put-ups."""
    assert 2 * 2**14 <= MOST_MIXTURES < 2 * 2**15
    assert shelf(range(10, 24))
    with pytest.raises(Refused) as refused:
        shelf(range(10, 25))
    assert [m.code for m in refused.value.mistakes] == ["too-many-weights"]
    with pytest.raises(Refused, match="too-many-weights"):
        shelf([*range(10, 20)] * 2)
    assert shelf([100] * MOST_STOCK)
    with pytest.raises(Refused):
        shelf([100] * (MOST_STOCK + 1))


def test_a_yarn_sold_in_too_many_ways_is_refused() -> None:
    sold = [PutUp(weight_g=n, length_m=2 * n, price=Decimal(n)) for n in range(1, MOST_PUT_UPS + 2)]
    assert sample_yarn(put_ups=tuple(sold[1:]))
    with pytest.raises(Refused) as refused:
        sample_yarn(put_ups=tuple(sold))
    assert [(m.path, m.code) for m in refused.value.mistakes] == [("put_ups", "too-many")]


def test_a_price_beyond_all_reckoning_is_refused_at_its_target():
    workshop = sample_workshop()
    pay = replace(workshop.pay, making_per_hour=Decimal(10**9))
    order = sample_order(terms=Terms(target=Target(margin=0.99999999)))
    with pytest.raises(Refused) as refused:
        quote_order(order, replace(workshop, pay=pay, fees=()), today=TODAY)
    (mistake,) = refused.value.mistakes
    assert (mistake.path, mistake.code) == ("price.margin", "price-too-large")


def test_a_number_that_is_none_however_it_was_made_is_refused():
    with pytest.raises(Refused, match="not-finite"):
        PutUp(weight_g=100, length_m=200, price=Decimal("sNaN"))


def test_a_row_waits_for_the_larger_ball_that_can_finish_it() -> None:
    workshop = sample_workshop()
    habits = replace(workshop.habits, join=Join.AT_AN_EDGE, allowance=0.0)
    sold = (
        PutUp(weight_g=100, length_m=200, price=Decimal("4.60")),
        PutUp(weight_g=20, length_m=40, price=Decimal("1.00")),
    )
    workshop = replace(workshop, habits=habits, yarns=(sample_yarn(put_ups=sold, stock=()),))
    design = sample_design(
        stitches=500,
        sections=(Section(stripes=(Stripe(colour="teal", rows=7),), repeats=1),),
        first_rows=(),
        border=(),
        mix_lots=True,
    )
    estimate = quote_order(sample_order(design=design, extras=()), workshop, today=TODAY).estimate
    assert not any(colour.walk.long_pass for colour in estimate.colours)
    assert all(strand.ends.edge is not Edge.WITHIN for strand in estimate.strands)
