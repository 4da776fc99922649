"""Two names of a design that come from one colour of one yarn are one colour."""

from __future__ import annotations

import pytest

from quoting.core.order.design import ColourSource
from quoting.core.order.order import Extra, Order
from quoting.core.workshop.yarns import Stock
from tests.examples import (
    WOOL,
    band,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

OAT = ColourSource(yarn=WOOL, colour="oat")


def order(*colours: str, extras: tuple[Extra, ...] = (), **changes: object) -> Order:
    """Return an order of single rows in these colours; cream is the yarn's oat."""
    design = sample_design(
        first_rows=(),
        border=(band(colour="oat"),),
        colours={"cream": OAT},
        sections=(section(*colours, repeats=20),),
        **changes,
    )
    return sample_order(design=design, extras=extras)


def test_rows_of_both_names_are_one_run_of_one_strand() -> None:
    quote = sample_quote(order("cream", "oat"), sample_workshop(yarns=(sample_yarn(stock=()),)))
    assert quote.plan.rows_by_colour == {"cream": 40}
    assert {worked.colour for worked in quote.plan.passes} == {"cream"}
    joins = len(quote.estimate.colours[0].balls_m) - 1
    assert quote.estimate.ends == 2 * (1 + joins)


def test_the_first_name_in_the_order_worked_is_shown_and_the_order_keeps_both() -> None:
    first, other = sample_quote(order("teal", "oat", "cream")), sample_quote(order("cream", "oat"))
    assert [colour.colour for colour in first.estimate.colours] == ["teal", "oat"]
    assert [colour.colour for colour in other.estimate.colours] == ["cream"]
    named = [stripe.colour for stripe in first.order.design.body.sections[0].stripes]
    assert named == ["teal", "oat", "cream"]


def test_both_are_bought_together_as_one_name_would_be() -> None:
    two, one = (
        sample_quote(order("cream", "oat", "teal")),
        sample_quote(order("oat", "oat", "teal")),
    )
    assert [c.metres for c in two.estimate.colours] == [c.metres for c in one.estimate.colours]
    assert two.price.cost == one.price.cost


def test_a_lot_on_the_shelf_is_never_spent_twice() -> None:
    """Of a lot of 120 g, which is enough for either name alone, at most 120 g are taken."""
    held = Stock(colour="oat", weight_g=120, lot="771")
    workshop = sample_workshop(yarns=(sample_yarn(stock=(held,)),))
    quote = sample_quote(order("cream", "teal", "oat", "teal"), workshop)
    taken_g = [c.from_stock_g for c in quote.estimate.colours if c.source == OAT]
    assert len(taken_g) == 1
    assert sum(taken_g) <= held.weight_g


def test_an_extra_under_the_other_name_takes_its_yarn_with_the_blankets() -> None:
    fringe = Extra(what="Fringe", colour="cream", yarn_m=30)
    with_it, without = sample_quote(order("oat", extras=(fringe,))), sample_quote(order("oat"))
    (oat,), (plain,) = with_it.estimate.colours, without.estimate.colours
    assert (oat.colour, oat.yarn.extras_m) == ("oat", 30)
    assert oat.bare_m == pytest.approx(plain.bare_m + 30)
