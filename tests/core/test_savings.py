"""What would bring a price down: each change quoted anew, and what it saves."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from quoting.core.order.design import EndsBecome
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing import budget as budget_module
from quoting.core.weighing.budget import RECOLOURED, Change, Saving, savings
from quoting.core.workshop.queue import Ahead
from quoting.core.workshop.workshop import Workshop
from tests.examples import (
    COLOURS,
    LARGE,
    TODAY,
    WOOL,
    band,
    changed_design,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
    stripes,
)

EACH_A_ROW = ("teal", "rust", "oat", "plum")


def saved(order: Order | None = None, workshop: Workshop | None = None) -> dict[Change, Saving]:
    quote = sample_quote(order, workshop)
    return {saving.change: saving for saving in savings(quote, today=TODAY)}


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


def test_doing_without_a_colour_leaves_every_other_where_it_is() -> None:
    design = sample_design(
        first_rows=stripes("moss"),
        sections=(section("teal", "rust", share=1),),
        last_rows=stripes("slate"),
        border=(band(colour="oat"), band(colour="plum")),
    )
    saving = saved(sample_order(design=design))[Change.FEWER_COLOURS]
    less = saving.quote.order.design
    (other,) = {"teal", "rust"} - {saving.subject}
    assert [stripe.colour for stripe in less.body.sections[0].stripes] == [other, other]
    assert [b.colour for b in less.border] == ["oat", "plum"]
    assert (less.body.first_rows, less.body.last_rows) == (
        design.body.first_rows,
        design.body.last_rows,
    )


def test_of_all_colours_the_one_that_saves_most_is_left_out() -> None:
    order = sample_order(design=sample_design(sections=(section(*EACH_A_ROW),)))
    total = sample_quote(order).price.total
    best = saved(order)[Change.FEWER_COLOURS].saved
    for colour in EACH_A_ROW:
        for other in EACH_A_ROW:
            sewn = [other if c == colour else c for c in EACH_A_ROW]
            kept = changed_design(order.design, sections=(section(*sewn),))
            kept = changed_design(
                kept, first_rows=section(other if colour == "oat" else "oat").stripes
            )
            kept = replace(kept, border=(band(colour=other if colour == "oat" else "oat"),))
            less = quote_order(replace(order, design=kept), sample_workshop(), today=TODAY)
            assert total - less.price.total <= best


def test_stripes_that_carry_save_the_weaving_in() -> None:
    order = sample_order(design=sample_design(sections=(section(*EACH_A_ROW),)))
    saving = saved(order)[Change.CALMER_STRIPES]
    ends = sample_quote(order).estimate.ends
    assert 2 * saving.quote.estimate.ends <= ends
    assert saving.quote.plan.rows_by_colour.keys() == set(EACH_A_ROW)


def test_many_ends_may_be_worked_over_where_they_are_woven_in() -> None:
    many = sample_design(sections=(section(*EACH_A_ROW),))
    saving = saved(sample_order(design=many))[Change.ENDS_WORKED_OVER]
    assert saving.quote.order.design.ends is EndsBecome.WORKED_OVER
    assert saving.quote.estimate.ends == sample_quote(sample_order(design=many)).estimate.ends
    over = replace(many, ends=EndsBecome.WORKED_OVER)
    assert Change.ENDS_WORKED_OVER not in saved(sample_order(design=over))
    assert Change.ENDS_WORKED_OVER not in saved(), "few ends are no matter"


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


@pytest.mark.parametrize(("quantity", "most"), [(1, RECOLOURED), (600, 6)])
def test_however_many_the_colours_and_the_rows_only_so_many_designs_are_quoted(
    monkeypatch: pytest.MonkeyPatch, quantity: int, most: int
) -> None:
    """Sixty-one passes for 600 blankets are the work of 61 × (1 + 599/50) = 792: six in 5,000."""
    names = [f"dye {number}" for number in range(20)]
    dyed = sample_workshop(yarns=(sample_yarn(colours=dict.fromkeys(names, "#777777"), stock=()),))
    design = sample_design(
        sections=(section(*names),), first_rows=(), border=(), colours={}, height_cm=60
    )
    quote = sample_quote(sample_order(design=design, quantity=quantity), dyed)
    tried: list[Order] = []

    def counted(order: Order, workshop: Workshop, *, today: date, ahead: Ahead) -> Quote:
        tried.append(order)
        return quote_order(order, workshop, today=today, ahead=ahead)

    monkeypatch.setattr(budget_module, "quote_order", counted)
    savings(quote, today=TODAY)
    assert most <= len(tried) <= most + 10
