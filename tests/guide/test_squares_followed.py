"""The guide of joined squares, followed by its words alone, gives the plan's stitches and ends."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.guide.guide import guide_of
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.yarns import PutUp
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Words
from tests.constructed import SUN, constructed_quote, motif_workshop, squares
from tests.examples import band, sample_yarn
from tests.guide.follower import all_blocks
from tests.guide.squares_follower import ends_told, lists, stitched

COLOURS = st.sampled_from(["teal", "rust", "plum", "moss", "oat"])
BALL = PutUp(weight_g=30, length_m=60, price=Decimal("1.70"))
ROUNDS = 3


@st.composite
def joined(draw: st.DrawFn) -> JoinedSquares:
    """Draw a few motifs of three rounds in a few layouts, joined in any way."""
    method = draw(st.sampled_from(list(JoinMethod)))
    colour = draw(COLOURS)
    layouts = []
    for _ in range(draw(st.integers(1, 3))):
        colours = [draw(COLOURS) for _ in range(ROUNDS)]
        if method is JoinMethod.CONTINUOUS:
            colours[-1] = colour
        layouts.append(Layout(colours=tuple(colours), share=draw(st.integers(1, 3))))
    return squares(
        layouts=tuple(layouts),
        join=MotifJoin(method=method, colour=colour),
        columns=draw(st.integers(1, 5)),
        rows=draw(st.integers(1, 5)),
    )


def check(quote: Quote) -> None:
    paper = guide_paper(quote)
    planned: Counter[tuple[str, str]] = Counter()
    for worked in quote.plan.passes:
        for stitch, count in worked.stitches.items():
            name = {"slip": "sl st", "slip stitch": "sl st"}.get(stitch, stitch)
            planned[worked.colour, name] += count * quote.plan.times(worked)
    assert stitched(paper) == +planned
    assert ends_told(paper) == Counter({c.colour: c.ends for c in quote.estimate.colours if c.ends})


@settings(max_examples=60)
@given(
    body=joined(),
    counting=st.sampled_from([Counting.CLUSTERS, Counting.SOLID]),
    rounds=st.integers(0, 2),
    carries=st.booleans(),
)
def test_a_random_order_of_squares_is_worked_as_it_was_planned(
    *, body: JoinedSquares, counting: Counting, rounds: int, carries: bool
) -> None:
    motif = replace(SUN, rounds=ROUNDS, one_side_cm=9, counting=counting)
    shop = motif_workshop(
        motif,
        yarns=(sample_yarn(put_ups=(BALL,), stock=()),),
        habits=Habits(carry_in_rounds=carries),
    )
    border = (band("hdc", rounds=rounds),) if rounds else ()
    check(constructed_quote(body, shop, border=border))


@pytest.mark.parametrize("method", JoinMethod)
def test_ends_of_many_motifs_are_told_in_a_few_lines(method: JoinMethod) -> None:
    quote = constructed_quote(squares(method, columns=20, rows=20))
    check(quote)
    listing = lists(guide_paper(quote))["Ends to weave in"]
    assert quote.estimate.ends > 2_000
    assert len(listing.rows) <= 6


def test_each_row_of_the_plan_of_layouts_is_told_once() -> None:
    quote = constructed_quote(squares(columns=4, rows=6))
    grid = quote.plan.grid
    assert grid is not None
    told = {
        int(number): layouts.split()
        for numbers, layouts in lists(guide_paper(quote))["Where each lies"].rows
        for number in numbers.split(", ")
    }
    assert told == {
        row + 1: [str(grid.layout_at(column, row) + 1) for column in range(4)] for row in range(6)
    }


def test_of_one_layout_there_is_no_plan_to_lay_out() -> None:
    alike = squares(layouts=(Layout(colours=("teal", "rust", "plum", "moss", "oat")),))
    told = lists(guide_paper(constructed_quote(alike)))
    assert "Where each lies" not in told
    assert told["Motifs to make"].rows[0][0].startswith("Make 12: round 1 teal, round 2 rust, ")


def test_yarn_and_side_of_a_motif_are_told_round_by_round() -> None:
    """60 g of five at 2 m a gram are 24 m each, shared by 28, 54, 80, 106 and 132 of 400 units."""
    quote = constructed_quote(squares())
    rows = lists(guide_paper(quote))["A motif, round by round"].rows
    assert [yarn for *_, yarn in rows] == [
        f"{said}\u00a0m" for said in ("1.68", "3.24", "4.8", "6.36", "7.92")
    ]
    assert rows[-1][1] == "15\u00a0cm"
    assert rows[1][0] == "Round 2: 24 dc in 8 clusters, 12 chains."


def test_the_edging_of_a_braid_is_told_with_its_loops() -> None:
    quote = constructed_quote(squares(JoinMethod.FLAT_BRAID))
    blocks = all_blocks(guide_paper(quote).blocks)
    said = " ".join(text for b in blocks if isinstance(b, Words) for text in b.texts)
    assert "sc in every second stitch or chain, a loop of 3 chains after each" in said
    ((edged,),) = lists(guide_paper(quote))["Edgings"].rows
    assert edged.endswith("40 sc and 120 chains each.")


def test_seams_are_told_by_how_many_edges_each_joins() -> None:
    quote = constructed_quote(squares(JoinMethod.SINGLE_CROCHET, columns=8, rows=11))
    assert [said for (said,) in lists(guide_paper(quote))["Seams"].rows] == [
        "Seams 1 to 7, between columns: oat, 11 edges and 231 sc each.",
        "Seams 8 to 17, between rows: oat, 8 edges and 168 sc each.",
    ]
    lines = guide_of(quote).seams
    assert sum(each.count * each.edges for each in lines) == 157


@pytest.mark.parametrize("become", [EndsBecome.ENCLOSED, EndsBecome.FRINGE])
def test_ends_of_motifs_and_seams_lie_within_and_are_woven_in_all_the_same(
    become: EndsBecome,
) -> None:
    quote = constructed_quote(squares(JoinMethod.SLIP_STITCH), ends=become)
    check(quote)
    listing = lists(guide_paper(quote))["Ends to weave in"]
    assert {"4 motifs of layout 1", "8 motifs of layout 2", "Border"} <= {
        where for where, _ in listing.rows
    }
