"""At a limit, just under it and just over it: every figure at which a caution begins to be given.

The limits themselves are common practice or the program's own; none has a source.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate.estimate import estimate_plan
from quoting.core.estimate.strands import Why
from quoting.core.order.in_rows import Section
from quoting.core.order.order import Order
from quoting.core.plan.plan import plan_order
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.swatches import Reading
from quoting.core.workshop.timings import Minutes, Timing
from quoting.core.workshop.yarns import PutUp
from tests.core.striped_orders import endless
from tests.examples import (
    band,
    changed_design,
    sample_design,
    sample_order,
    sample_quote,
    sample_swatch,
    sample_workshop,
    sample_yarn,
    section,
    stripes,
)

CENTIMETRE_ROWS = (
    sample_swatch(gauge=Reading(stitches=10, width_cm=8, rows=10, height_cm=10)),
    sample_swatch(stitch="sc", gauge=Reading(stitches=10, width_cm=8, rows=10, height_cm=8)),
)
"""Rows that are exactly a centimetre high, and a border stitch 0.8 cm wide: 1.25 to a row."""


def codes(quote: Quote) -> set[str]:
    return {caution.code for caution in quote.cautions}


def plain(*sections: Section, **design: Any) -> Order:
    """Return a narrow blanket of some stripes alone: no first rows, no border, no extras."""
    bare: dict[str, Any] = {"first_rows": (), "border": (), "width_cm": 30}
    return sample_order(
        design=sample_design(sections=sections, **bare | design), extras=(), for_baby=False
    )


# -- ends ------------------------------------------------------------------------------------------


def single_rows(rows: int) -> Order:
    """Return two colours row by row: every row of them is a strand, and has two ends."""
    odd = stripes("teal") if rows % 2 else ()
    return plain(section("teal", "rust", repeats=rows // 2), last_rows=odd)


@pytest.mark.parametrize(("rows", "ends", "told"), [(9, 18, False), (10, 20, True), (11, 22, True)])
def test_twenty_ends_are_many_and_eighteen_are_not(
    rows: int,
    ends: int,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    quote = sample_quote(single_rows(rows), endless())
    assert quote.estimate.ends == ends
    assert ("many-ends" in codes(quote)) is told


@pytest.mark.parametrize(("hours", "told"), [("9.99", True), ("10.00", True), ("10.01", False)])
def test_a_tenth_of_all_hours_in_weaving_is_much_and_less_is_not(
    hours: str,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    """Twenty ends of three minutes are an hour; letters bring the whole to ten of them."""
    minutes = Minutes(turn=(0.1,), weave_in_end=(3.0,))
    order = single_rows(10)
    without = sample_quote(order, endless(minutes=minutes)).estimate.hours.total
    letters = float((Decimal(hours) - without) * 60)
    quote = sample_quote(order, endless(minutes=replace(minutes, letters=(letters,))))
    assert quote.estimate.hours.total == Decimal(hours)
    assert ("many-ends" in codes(quote)) is told


@pytest.mark.parametrize(("repeats", "told"), [(3, False), (4, True)])
def test_three_cuts_at_the_wrong_edge_are_a_habit_and_two_are_not(
    repeats: int,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    quote = sample_quote(plain(section("teal", "rust", repeats=repeats)), endless())
    assert ("wrong-edge" in codes(quote)) is told


@pytest.mark.parametrize(("colours", "told"), [(2, False), (3, True)])
def test_three_yarns_that_wait_at_one_edge_tangle_and_two_do_not(
    colours: int,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    """In rows by twos every yarn waits at the start edge: the one just left, and all the others."""
    named = ("teal", "rust", "oat")[:colours]
    quote = sample_quote(plain(section(*named, rows=2, repeats=4)), endless())
    assert ("yarns-tangle" in codes(quote)) is told


def test_a_ball_used_up_in_the_last_five_rows_is_late_and_in_the_sixth_last_is_not() -> None:
    found: dict[int, bool] = {}
    order = plain(section("teal", repeats=40))
    (colour,) = sample_quote(order, endless()).estimate.colours
    for hundredth in range(75, 100):
        length_m = colour.metres * hundredth / 100
        ball = PutUp(weight_g=length_m / 2, length_m=length_m, price=Decimal(4))
        shop = sample_workshop(yarns=(sample_yarn(put_ups=(ball,), stock=()),))
        quote = sample_quote(order, shop)
        joins = [s.ends.pass_index for s in quote.estimate.strands if s.why is Why.RAN_OUT]
        if len(joins) == 1:
            from_last = len(quote.plan.passes) - joins[0]
            found[from_last] = "runs-out-late" in codes(quote)
    assert {row: found[row] for row in range(1, 9)} == {row: row <= 5 for row in range(1, 9)}


# -- pace ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("stitches", "minutes", "told"),
    [
        (499, 100, True),
        (500, 100, False),
        (501, 100, False),
        (349, 10, False),
        (350, 10, False),
        (351, 10, True),
    ],
)
def test_five_and_thirty_five_stitches_a_minute_are_still_believed(
    stitches: int,
    minutes: float,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    timing = Timing(stitch="hdc", stitches=stitches, minutes=minutes)
    assert ("odd-pace" in codes(sample_quote(None, sample_workshop(timings=(timing,))))) is told


# -- size ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("period", "told"), [(96, True), (97, False), (100, False), (103, False), (104, True)]
)
def test_three_per_cent_off_the_height_is_let_be_and_more_is_not(
    period: int,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    """Two repeats of rows of a centimetre, where two metres are asked."""
    order = plain(section("teal", "rust", rows=1), height_cm=200)
    (both,) = order.design.body.sections
    first, second = both.stripes
    long = replace(both, stripes=(replace(first, rows=period - 40), replace(second, rows=40)))
    design = changed_design(order.design, sections=(long,))
    quote = sample_quote(replace(order, design=design), sample_workshop(swatches=CENTIMETRE_ROWS))
    assert quote.plan.height_cm == 2 * period
    assert ("repeats-miss-height" in codes(quote)) is told


@pytest.mark.parametrize(
    ("ratio", "told"),
    [(1.124, True), (1.125, False), (1.25, False), (1.375, False), (1.376, True)],
)
def test_a_tenth_off_the_swatch_at_row_ends_is_let_be_and_more_is_not(
    ratio: float,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    edged = plain(section("teal"), border=(band(row_end_ratio=ratio),), height_cm=100)
    quote = sample_quote(edged, sample_workshop(swatches=CENTIMETRE_ROWS))
    assert ("row-ends-off" in codes(quote)) is told


@pytest.mark.parametrize(("longest_m", "told"), [(136.0, False), (137.5, False), (138.0, True)])
def test_labels_a_tenth_apart_are_let_be_and_more_is_not(
    longest_m: float,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    """Beside balls of 125 m to 100 g, in either order."""
    for lengths in ((125.0, longest_m), (longest_m, 125.0)):
        balls = tuple(PutUp(weight_g=100, length_m=each, price=Decimal(4)) for each in lengths)
        quote = sample_quote(None, sample_workshop(yarns=(sample_yarn(put_ups=balls, stock=()),)))
        assert ("labels-apart" in codes(quote)) is told


# -- carrying --------------------------------------------------------------------------------------


def carried(*, height_cm: float, rows: int = 4, **habits: Any) -> int:
    """Return how often a yarn is carried up, of five colours of single rows three times over."""
    five = section("oat", "teal", "rust", "plum", "moss", repeats=3)
    limits = Habits(carry_rows=rows, carry_height_cm=height_cm, **habits)
    order = plain(five)
    shop = endless(swatches=CENTIMETRE_ROWS, habits=limits)
    return estimate_plan(plan_order(order, shop), order, shop).carries


@pytest.mark.parametrize(("rows", "carries"), [(3, 0), (4, 10), (5, 10)])
def test_a_yarn_is_carried_over_as_many_rows_as_the_limit_and_no_more(
    rows: int, carries: int
) -> None:
    assert carried(rows=rows, height_cm=10) == carries


@pytest.mark.parametrize(("height_cm", "carries"), [(3.99, 0), (4.0, 10), (4.01, 10)])
def test_a_yarn_is_carried_as_high_as_the_limit_and_no_higher(
    height_cm: float, carries: int
) -> None:
    """Four rows of a centimetre lie between."""
    assert carried(height_cm=height_cm) == carries
