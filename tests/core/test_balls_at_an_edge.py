"""Balls joined at an edge only: the fewest that the walk, with the reserve, gets through with."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.estimate.estimate import ColourEstimate, Estimate, estimate_plan
from quoting.core.estimate.skeins import UM_PER_M, target_um
from quoting.core.estimate.strands import Why
from quoting.core.order.design import Design
from quoting.core.order.order import Order
from quoting.core.plan.passes import Edge
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.swatches import Run
from quoting.core.workshop.yarns import PutUp, Stock
from tests.core.plain_yarn import put_up
from tests.core.test_strand_properties import designs
from tests.core.walk_by_hand import walked_by_hand
from tests.examples import (
    COLOURS,
    sample_design,
    sample_order,
    sample_swatch,
    sample_workshop,
    sample_yarn,
    section,
)

TAIL_M = 0.15


def estimated(
    order: Order,
    sold: Sequence[PutUp],
    *,
    stock: Sequence[Stock] = (),
    join: Join = Join.AT_AN_EDGE,
    allowance: float = 0.0,
    stitch_cm: float | None = None,
) -> Estimate:
    """Return the estimate with these balls; a stitch takes `stitch_cm`, if that is given."""
    changes = {}
    if stitch_cm is not None:
        run = Run(stitches=10, length_cm=10 * stitch_cm)
        changes["swatches"] = (sample_swatch(piece=None, run=run),)
    workshop = sample_workshop(
        habits=Habits(join=join, allowance=allowance),
        yarns=(sample_yarn(put_ups=tuple(sold), stock=tuple(stock)),),
        **changes,
    )
    return estimate_plan(plan_order(order, workshop), order, workshop)


def rows_of_teal(rows: int, stitches: int, **changes: object) -> Order:
    """Return an order of so many rows of one colour."""
    teal = section("teal", repeats=rows)
    design = sample_design(stitches=stitches, sections=(teal,), first_rows=(), border=())
    return sample_order(design=replace(design, **changes), extras=())


def teal_of(order: Order, *sold: PutUp, **changes: object) -> ColourEstimate:
    (teal,) = estimated(order, sold, **changes).colours
    return teal


def test_the_reserve_is_in_the_walk() -> None:
    """By hand: a row and its turning chains take 19.33 m, two and the tails 38.97 of a ball of 40.

    With 3.75 % more they take 40.42, so each row needs a ball of its own. The chain and row 1 take
    25.73 m, and no second row with them.
    """
    order = rows_of_teal(41, 96)
    small = put_up(20, 40, "2.00")
    row_m = 0.2 * 96 + 2 * 0.2 / 3
    assert 2 * row_m + 2 * TAIL_M <= 40 < 2 * 1.0375 * row_m + 2 * TAIL_M
    assert teal_of(order, small, stitch_cm=20).choice.skeins == 1 + 20
    assert teal_of(order, small, stitch_cm=20, allowance=0.0375).choice.skeins == 41


def test_a_ball_too_short_for_a_row_is_not_bought_where_a_longer_one_is_on_sale() -> None:
    """By hand: rows of 51 m are joined within from balls of 50 m, which are the cheaper."""
    order = rows_of_teal(6, 170)
    cheap, long = put_up(25, 50, "1.00"), put_up(50, 100, "2.50")
    teal = teal_of(order, cheap, long, stitch_cm=30)
    assert [some.put_up for some in teal.choice.bought] == [long]
    assert not teal.walk.long_pass
    alone = teal_of(order, cheap, stitch_cm=30)
    assert alone.walk.long_pass
    assert alone.walk.missing_m == 0


def test_the_chain_and_row_1_are_one_strand() -> None:
    """By hand: two rows and the chain leave 4.3 m of 50, and no second chain is begun with them."""
    order = replace(rows_of_teal(2, 96), quantity=2)
    estimate = estimated(order, [put_up(25, 50, "2.00")], stitch_cm=20)
    chains = [s for s in estimate.strands if s.starts.pass_index == 0]
    assert all(strand.stretches[1].pass_index == 1 for strand in chains)
    assert all(strand.stretches[1].ends == 1 for strand in chains)
    assert len({strand.ball for strand in chains}) == 2


def test_a_chain_and_row_1_longer_than_any_ball_are_joined_within_and_told() -> None:
    teal = teal_of(rows_of_teal(3, 96), put_up(11, 22, "1.00"), stitch_cm=20)
    first = teal.walk.strands[0]
    assert (first.starts.edge, first.ends.edge, first.why) == (
        Edge.FAR,
        Edge.WITHIN,
        Why.RAN_OUT,
    )
    assert teal.walk.long_pass


def test_a_lot_that_joins_rows_within_is_left_for_balls_that_finish_them() -> None:
    scraps = [Stock(colour="teal", weight_g=9, lot="A")] * 40
    teal = teal_of(rows_of_teal(6, 96), put_up(50, 100, "2.00"), stock=scraps, stitch_cm=20)
    assert (teal.choice.stock, teal.walk.long_pass) == ((), False)
    enough = [Stock(colour="teal", weight_g=80, lot="A")]
    kept = teal_of(rows_of_teal(6, 96), put_up(50, 100, "2.00"), stock=enough, stitch_cm=20)
    assert kept.choice.stock == tuple(enough)


lengths = st.sampled_from([20, 25, 34, 40, 50, 75, 100])
prices = st.integers(90, 110)
one_ball = st.builds(
    lambda length, heft, price, pack: put_up(
        length * heft, length, str(Decimal(pack * length * price) / 4000), pack
    ),
    lengths,
    st.sampled_from([0.48, 0.5, 0.5, 0.52]),
    prices,
    st.sampled_from([1, 1, 2]),
)
some_sold = st.lists(one_ball, min_size=1, max_size=3)
some_stock = st.lists(
    st.builds(
        Stock,
        colour=st.sampled_from(list(COLOURS)[:3]),
        weight_g=st.integers(3, 90),
        lot=st.sampled_from(["", "A", "B"]),
    ),
    max_size=3,
)
allowances = st.sampled_from([0.0, 0.02, 0.05, 0.08, 0.1, 0.15, 0.2, 0.22, 0.25, 0.26])
copies = st.integers(1, 2)


def ordered(design: Design, quantity: int, *, mix: bool) -> Order:
    return sample_order(design=replace(design, mix_lots=mix), extras=(), quantity=quantity)


@settings(max_examples=60)
@given(designs, copies, some_sold, allowances, allowances, st.sampled_from(Join), st.booleans())
def test_more_reserve_never_costs_less_and_of_one_ball_never_means_fewer(
    design: Design,
    quantity: int,
    sold: list[PutUp],
    one: float,
    other: float,
    join: Join,
    mix: bool,  # noqa: FBT001 - a parameter
) -> None:
    order = ordered(design, quantity, mix=mix)
    less, more = (
        estimated(order, sold, join=join, allowance=share).colours for share in sorted((one, other))
    )
    for before, after in zip(less, more, strict=True):
        assert before.choice.cost <= after.choice.cost
        if len(sold) == 1:
            assert before.choice.skeins <= after.choice.skeins


@settings(max_examples=60)
@given(designs, copies, some_sold, some_stock, st.sampled_from(Join), st.booleans(), st.randoms())
def test_the_order_of_the_file_never_matters(
    design: Design,
    quantity: int,
    sold: list[PutUp],
    stock: list[Stock],
    join: Join,
    mix: bool,  # noqa: FBT001 - a parameter
    dice: object,
) -> None:
    order = ordered(design, quantity, mix=mix)
    other_sold, other_stock = list(sold), list(stock)
    dice.shuffle(other_sold)
    dice.shuffle(other_stock)
    listed = estimated(order, sold, stock=stock, join=join)
    shuffled = estimated(order, other_sold, stock=other_stock, join=join)
    for one, other in zip(listed.colours, shuffled.colours, strict=True):
        assert one.choice.cost == other.choice.cost
        assert one.metres_left == pytest.approx(other.metres_left)
        assert one.grams == pytest.approx(other.grams)
        assert one.from_stock_g == pytest.approx(other.from_stock_g)


def serves(colour: ColourEstimate, balls_m: Sequence[float], full_m: float) -> bool:
    """Return whether hands get through with the balls at the reserve and with what is expected."""
    return not any(
        walked_by_hand(
            [visit.with_more(share) for visit in colour.visits],
            balls_m,
            tail_m=TAIL_M,
            blankets=colour.blankets,
            at_an_edge=True,
            full_m=full_m,
        ).missing
        for share in (colour.reserve, 0.0)
    )


def covers(
    sold: Sequence[PutUp], need_m: float, *, mix: bool, cheaper_than: Decimal
) -> Iterator[tuple[int, ...]]:
    """Yield the packs of each cover that costs less, however many balls that is."""
    most = [int(cheaper_than / one.price) for one in sold]
    kinds = [(one.weight_g, one.length_m) for one in sold]
    for counts in itertools.product(*(range(count + 1) for count in most)):
        cost = sum(n * one.price for n, one in zip(counts, sold, strict=True))
        taken = {kind for kind, n in zip(kinds, counts, strict=True) if n}
        brought = sum(
            n * one.pack * round((one.length_m - 2 * TAIL_M) * UM_PER_M)
            for n, one in zip(counts, sold, strict=True)
        )
        enough = brought >= target_um(need_m, TAIL_M)
        if cost < cheaper_than and enough and (mix or len(taken) == 1):
            yield counts


@settings(max_examples=40)
@given(st.integers(2, 14), st.integers(10, 60), some_sold, allowances, st.booleans())
def test_no_cheaper_cover_gets_through(
    rows: int,
    stitches: int,
    sold: list[PutUp],
    allowance: float,
    mix: bool,  # noqa: FBT001 - a parameter
) -> None:
    order = rows_of_teal(rows, stitches, mix_lots=mix)
    colour = teal_of(order, *sold, allowance=allowance, stitch_cm=20)
    full_m = max(one.length_m for one in sold)
    need_m = colour.bare_m * (1 + colour.reserve)
    assert serves(colour, colour.balls_m, full_m)
    for counts in covers(sold, need_m, mix=mix, cheaper_than=colour.choice.cost):
        balls_m = sorted(
            (
                one.length_m
                for n, one in zip(counts, sold, strict=True)
                for _ in range(n * one.pack)
            ),
            reverse=True,
        )
        assert not serves(colour, balls_m, full_m), (counts, colour.choice)


def test_what_a_set_joins_is_joined_at_edges() -> None:
    order = replace(rows_of_teal(30, 60), quantity=40)
    estimate = estimated(order, [put_up(50, 100, "2.00")], allowance=0.1, stitch_cm=10)
    assert all(strand.ends.edge is not Edge.WITHIN for strand in estimate.strands)
    (teal,) = estimate.colours
    assert teal.walk.missing_m == 0
    assert teal.choice.skeins >= 40 * 30 * 6 // 100
