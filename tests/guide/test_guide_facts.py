"""What a guide tells beside its rows is what the estimate has: ends, balls, lengths, corners."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings

from quoting.core.estimate.strands import Why
from quoting.core.guide.guide import guide_of
from quoting.core.guide.lengths import MOST_TOLD
from quoting.core.order.design import Corner, Design
from quoting.core.plan.corners import Into
from quoting.core.plan.passes import Edge
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.yarns import PutUp
from quoting.wording import point_words, speech_of
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Sheet
from tests.core.random_strands import designs, habits
from tests.examples import (
    band,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)
from tests.guide.follower import all_blocks, listing

SMALL = PutUp(weight_g=20, length_m=40, price=Decimal("1.20"))
SMALL_BALLS = sample_workshop(yarns=(sample_yarn(put_ups=(SMALL,), stock=()),))


def told(quote: Quote, heading: str) -> tuple[tuple[str, ...], ...]:
    return listing(guide_paper(quote), heading).rows


@settings(max_examples=40)
@given(design=designs, how=habits)
def test_there_are_two_ends_for_each_strand_and_each_is_where_it_hangs(
    design: Design, how: Habits
) -> None:
    quote = sample_quote(sample_order(design=design, extras=()), replace(SMALL_BALLS, habits=how))
    ends, strands = guide_of(quote).ends, quote.estimate.strands
    assert len(ends) == 2 * len(strands) == quote.estimate.ends
    points = Counter((s.colour, point) for s in strands for point in (s.starts, s.ends))
    assert Counter((end.colour, end.where) for end in ends) == points
    assert sum(end.why is None for end in ends) == len(strands)


def test_ends_are_listed_edge_by_edge_from_the_chain_on() -> None:
    quote = sample_quote(None, SMALL_BALLS)
    rows = told(quote, "Ends to weave in")
    assert len(rows) == quote.estimate.ends
    ends = guide_of(quote).ends
    order = [(list(Edge).index(end.where.edge), end.where.pass_index) for end in ends]
    assert order == sorted(order)
    assert rows[0][0].startswith("Right-hand edge, row")
    assert any(where.startswith("Within row") for where, _ in rows)
    ran_out = sum(end.why is Why.RAN_OUT for end in ends)
    assert sum("used up" in which for _, which in rows) == ran_out > 0


@pytest.mark.parametrize("join", Join)
@pytest.mark.parametrize("quantity", [1, 3])
def test_balls_end_where_the_estimate_has_them_end(join: Join, quantity: int) -> None:
    workshop = replace(SMALL_BALLS, habits=Habits(join=join))
    quote = sample_quote(sample_order(quantity=quantity), workshop)
    rows = dict(told(quote, "Where skeins are used up"))
    for colour in quote.estimate.colours:
        for number, end in enumerate(colour.ball_ends, 1):
            said = rows.get(f"{colour.colour}, skein {number}")
            places = [p for p in (end.expected, end.soonest, end.latest) if p is not None]
            assert (said is None) == (not places)
            for point in places:
                assert said is not None
                assert point_words(point, quote.plan) in said
            if said is not None:
                assert ("lasts" in said or "should last" in said) == (len(places) < 3)


def test_a_blanket_whose_balls_all_last_tells_none() -> None:
    endless = PutUp(weight_g=10_000, length_m=20_000, price=Decimal(400))
    quote = sample_quote(None, sample_workshop(yarns=(sample_yarn(put_ups=(endless,), stock=()),)))
    headings = [getattr(block, "heading", "") for block in all_blocks(guide_paper(quote).blocks)]
    assert guide_of(quote).used_up == ()
    assert "Where skeins are used up" not in headings


@pytest.mark.parametrize("rows", [10, 60, 400])
def test_lengths_are_told_at_even_steps_and_at_the_end(rows: int) -> None:
    stripes = section("teal", "rust", repeats=rows // 2)
    quote = sample_quote(sample_order(design=sample_design(first_rows=(), sections=(stripes,))))
    *steps, last = guide_of(quote).lengths
    assert len(steps) <= MOST_TOLD
    assert last.length_cm == pytest.approx(quote.plan.height_cm)
    row_cm = quote.plan.rows[0].height_cm
    for one in steps:
        number = quote.plan.passes[one.at].number
        assert number % 5 == 0
        assert one.length_cm == pytest.approx(number * row_cm)
    said = told(quote, "Length on the hook")
    assert said[-1][1] == speech_of(quote.workshop).length(quote.plan.height_cm)


@pytest.mark.parametrize("first", Corner)
@pytest.mark.parametrize("later", Corner)
@pytest.mark.parametrize("stitch", ["sc", "hdc", "dc", "tr"])
def test_what_is_worked_at_corners_is_what_a_round_has_more(
    first: Corner, later: Corner, stitch: str
) -> None:
    bands = (band(stitch, corner=first, rounds=2), band("sc", corner=later, rounds=3))
    rounds = sample_quote(sample_order(design=sample_design(border=bands))).plan.rounds
    inside = 0
    for worked in rounds:
        corner = worked.corner
        assert corner is not None
        count = worked.stitches[worked.stitch]
        replaced = 0 if corner.into is Into.SPACE or not corner.stitches else 4
        along = inside or sum(worked.sides)
        assert count == along - replaced + 4 * corner.stitches
        assert worked.stitches.get("ch", 0) == 4 * corner.chains
        inside = count


@pytest.mark.parametrize(
    ("corner", "said"),
    [
        (Corner.CHAIN, ("chain 2 at each corner", "(sc, ch 2, sc) in each corner space")),
        (Corner.ONE_EXTRA, ("2 sc in one at each corner", "3 sc in each corner stitch")),
        (Corner.THREE_IN_ONE, ("3 sc in one at each corner", "3 sc in each corner stitch")),
    ],
)
def test_corners_of_single_crochet_are_told_as_the_trade_does(
    corner: Corner, said: tuple[str, str]
) -> None:
    """Common practice, no source: three in a corner, or one, two chains and one; 8 more a round."""
    quote = sample_quote(
        sample_order(design=sample_design(border=(band(corner=corner, rounds=2),)))
    )
    steps = [step for step, _ in told(quote, "Step by step") if step.startswith("Border")]
    for step, words in zip(steps, said, strict=True):
        assert f"; {words}." in step
    counts = [worked.stitches["sc"] for worked in quote.plan.rounds]
    assert counts[1] - counts[0] == 8


@pytest.mark.parametrize(
    ("stitch", "said"),
    [("dc", "(2 dc, ch 2, 2 dc)"), ("tr", "(3 tr, ch 2, 3 tr)")],
)
def test_taller_stitches_have_more_at_a_corner(stitch: str, said: str) -> None:
    """Common practice, no source."""
    quote = sample_quote(sample_order(design=sample_design(border=(band(stitch, rounds=2),))))
    assert f"{said} in each corner space" in told(quote, "Step by step")[-1][0]


def test_it_is_printed_on_what_its_makers_printer_holds() -> None:
    assert guide_paper(sample_quote()).sheet is Sheet.A4
    american = sample_quote(workshop=sample_workshop(locale="en_US"))
    assert guide_paper(american).sheet is Sheet.LETTER
