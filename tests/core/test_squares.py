"""Squares joined: what is refused, what their size, yarn and border rest on, what is said."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate.pace_guesses import Unknown
from quoting.core.estimate.strands import Why
from quoting.core.ground.codes import CautionCode
from quoting.core.ground.errors import Refused
from quoting.core.order.joined_squares import JoinMethod, MotifJoin, Pool
from quoting.core.plan.gauge import Fabric, Made, Sureness
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.motifs import EarlierSide
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.yarns import PutUp
from tests.examples import WOOL, band, sample_quote, sample_yarn
from tests.motif_examples import (
    FIVE,
    SQUARE,
    motif_workshop,
    sample_motif,
    sample_squares,
    squares_order,
)

OAT_LAST = ("teal", "oat")


def codes(refused: pytest.ExceptionInfo[Refused]) -> list[tuple[str, str]]:
    return [(str(mistake.place), mistake.code.value) for mistake in refused.value.mistakes]


@pytest.mark.parametrize(("rounds", "side_cm"), [(2, 15.0), (2, 16.0), (4, 3.0), (3, 7.0)], ids=str)
def test_a_side_after_an_earlier_round_leaves_the_first_round_some_size(
    rounds: int, side_cm: float
) -> None:
    """Of 15 cm after five rounds: one that shrinks or stands still; one that began from nothing.

    From 7 cm after round 3 to 15 cm, a round adds 4 cm, and round 1 would be -1 cm wide.
    """
    with pytest.raises(Refused) as refused:
        sample_motif(earlier=EarlierSide(rounds=rounds, side_cm=side_cm))
    assert codes(refused) == [("earlier.side", "sides-do-not-fit")]


def test_an_earlier_round_comes_before_the_last() -> None:
    with pytest.raises(Refused) as refused:
        sample_motif(earlier=EarlierSide(rounds=5, side_cm=9))
    assert codes(refused) == [("earlier.rounds", "not-earlier")]


def test_a_motif_grows_by_its_swatch_only_where_that_leaves_a_first_round() -> None:
    """Rows of 1.11 cm: seven rounds leave 1.7 cm to the first, less than one; so 15/7 each."""
    workshop = motif_workshop(sample_motif(rounds=7, timings=()))
    body = sample_squares(("teal",) * 7, columns=2, rows=2)
    plan = plan_order(squares_order(body=body), workshop)
    assert [worked.height_cm for worked in plan.rows] == pytest.approx([15 / 7 / 2] * 7)


def test_fewer_rounds_than_were_measured_are_smaller_by_the_rows_of_the_swatch() -> None:
    body = sample_squares(FIVE[:4], rounds=4, columns=1, rows=1)
    plan = plan_order(squares_order(body=body, border=()), motif_workshop())
    assert plan.width_cm == pytest.approx(15 - 2 * 10 / 9)


def test_other_rounds_than_were_weighed_and_timed_are_estimated() -> None:
    """Their yarn by the rounds that were weighed, ten in a hundred less sure; so their time."""
    body = sample_squares(FIVE[:4], rounds=4, columns=1, rows=1)
    quote = sample_quote(squares_order(body=body, border=()), motif_workshop())
    gauge = quote.plan.gauges[Made(WOOL, "dc", Fabric(SQUARE))]
    assert (gauge.sureness, gauge.guess_limits) == (Sureness.ESTIMATED, 0.10)
    metres = sum(colour.yarn.stitches_m for colour in quote.estimate.colours)
    assert metres == pytest.approx(24 * (1 - 132 / 400))
    (task,) = (task for task in quote.estimate.hours.tasks if task.what == SQUARE)
    assert [guess.unknown for guess in task.guesses] == [Unknown.ROUNDS]


def test_a_round_that_was_unravelled_is_measured_in_a_smaller_motif_too() -> None:
    """Of a larger one only the rounds beyond it are estimated."""
    motif = sample_motif(weighed=None, rounds_m=(2.0, 3.0, 5.0, 6.0, 8.0))
    for rounds, sure in ((4, [True] * 4), (6, [True] * 5 + [False])):
        body = sample_squares(("teal",) * rounds, rounds=rounds, columns=1, rows=1)
        plan = plan_order(squares_order(body=body, border=()), motif_workshop(motif))
        gauges = [plan.gauges[Made(WOOL, "dc", worked.fabric)] for worked in plan.rows]
        assert [gauge.sureness is Sureness.MEASURED for gauge in gauges] == sure


@pytest.mark.parametrize(
    ("measured", "named"),
    [({}, "motif"), ({"weighed": None, "rounds_m": (2.0, 3.0, 5.0, 6.0, 8.0)}, "unravelled")],
)
def test_rounds_beyond_the_motif_are_told_by_how_it_was_measured(
    measured: dict[str, Any], named: str
) -> None:
    body = sample_squares(("teal",) * 6, rounds=6, columns=1, rows=1)
    workshop = motif_workshop(sample_motif(**measured))
    quote = sample_quote(squares_order(body=body, border=()), workshop)
    told = [each.facts for each in quote.cautions if each.code is CautionCode.ESTIMATED_YARN]
    assert {named: SQUARE} in told


def test_unravelled_rounds_share_what_was_weighed() -> None:
    motif = sample_motif(rounds_m=(1.0, 2.0, 3.0, 4.0, 5.0))
    order = squares_order(body=sample_squares(columns=1, rows=1), border=())
    estimate = sample_quote(order, motif_workshop(motif)).estimate
    metres = [colour.yarn.stitches_m for colour in estimate.colours]
    assert metres == pytest.approx([24 * part / 15 for part in (1, 2, 3, 4, 5)])


def test_only_squares_are_joined_in_columns_and_rows() -> None:
    workshop = motif_workshop(sample_motif(counting=Counting.CIRCLE))
    with pytest.raises(Refused) as refused:
        plan_order(squares_order(), workshop)
    assert codes(refused) == [("blanket.squares.motif", "motif-not-square")]


def test_the_last_round_of_all_is_one_strand_only_beside_another() -> None:
    body = sample_squares(("oat",), rounds=1, method=JoinMethod.CONTINUOUS)
    with pytest.raises(Refused) as refused:
        plan_order(squares_order(body=body), motif_workshop())
    assert codes(refused) == [("blanket.squares.join.method", "all-rounds-at-once")]


def test_one_square_alone_is_finished_though_the_join_would_be_continuous() -> None:
    body = sample_squares(OAT_LAST, rounds=2, method=JoinMethod.CONTINUOUS, columns=1, rows=1)
    plan = plan_order(squares_order(body=body, border=()), motif_workshop())
    assert [worked.colour for worked in plan.rows] == [*OAT_LAST]


@pytest.mark.parametrize(
    ("columns", "rows", "join"),
    [
        (100, 60, MotifJoin()),
        (70, 70, MotifJoin()),
        (40, 60, MotifJoin(method=JoinMethod.WHIPSTITCH, colour="oat", needleful_cm=10)),
    ],
)
def test_more_squares_than_one_answer_can_walk_are_refused_with_how_many_will_do(
    columns: int, rows: int, join: MotifJoin
) -> None:
    """6,000 squares; 24,500 rounds; and 17,775 needlefuls beside 12,000 rounds."""
    body = sample_squares(columns=columns, rows=rows, join=join)
    with pytest.raises(Refused) as refused:
        plan_order(squares_order(body=body), motif_workshop())
    (mistake,) = refused.value.mistakes
    assert (str(mistake.place), mistake.code) == ("blanket.squares.columns", "too-many-squares")
    assert 0 < mistake.facts["limit"] < mistake.facts["read"] == columns * rows


def test_a_border_of_another_width_is_as_long_as_its_squares() -> None:
    """2 x (8 + 11) x 15 cm at 0.8 cm a stitch; 790 of them would be 632 cm round 570."""
    plan = plan_order(squares_order(), motif_workshop())
    assert plan.rounds[0].stitches["hdc"] == pytest.approx(570 / 0.8, abs=2)


def test_chance_concerns_only_what_is_drawn() -> None:
    """Teal is in the pool and in the border: the border's metres are as sure as any."""
    pool = Pool(colours=("teal", "rust"), outer=("oat",))
    body = sample_squares(layouts=(), pool=pool, columns=4, rows=4)
    order = squares_order(body=body, border=(band("dc", "teal"),))
    teal, rust, oat = sample_quote(order, motif_workshop()).estimate.colours
    alone = math.sqrt(1 / (16 * 4))
    assert (rust.yarn.chance, oat.yarn.chance) == pytest.approx((alone, 0.0))
    border_m = teal.yarn.stitches_m - rust.yarn.stitches_m
    assert border_m > 0
    drawn_m = rust.yarn.stitches_m
    assert teal.yarn.chance == pytest.approx(alone * drawn_m / teal.yarn.stitches_m)


def test_more_outer_rounds_than_a_motif_has_are_refused() -> None:
    pool = Pool(colours=("teal",), outer=FIVE)
    with pytest.raises(Refused) as refused:
        plan_order(squares_order(body=sample_squares(layouts=(), pool=pool)), motif_workshop())
    assert codes(refused) == [("blanket.squares.pool.outer", "no-round-to-mix")]


def test_every_layout_of_too_few_or_too_many_colours_is_told() -> None:
    body = sample_squares(FIVE[:2], FIVE, (*FIVE, "oat"))
    with pytest.raises(Refused) as refused:
        plan_order(squares_order(body=body), motif_workshop())
    assert codes(refused) == [
        ("blanket.squares.layouts.1.colours", "colours-not-rounds"),
        ("blanket.squares.layouts.3.colours", "colours-not-rounds"),
    ]


def test_squares_are_not_told_how_stripes_in_rows_save_ends() -> None:
    """No colour of a square waits at an edge, and no seam is cut for lying at the wrong one."""
    body = sample_squares(join=MotifJoin(method=JoinMethod.SINGLE_CROCHET, colour="slate"))
    quote = sample_quote(squares_order(body=body), motif_workshop())
    said = {caution.code.value: caution for caution in quote.cautions}
    assert said["many-ends"].facts["uncut"] is None
    assert "wrong-edge" not in said


def test_the_strands_of_a_square_are_fastened_off_with_it() -> None:
    """One is cut only where its colour comes again within the square."""
    body = sample_squares(("teal", "rust", "teal", "rust", "oat"), columns=3, rows=2)
    estimate = sample_quote(squares_order(body=body, border=()), motif_workshop()).estimate
    assert (estimate.ended(Why.CUT), estimate.ended(Why.FINISHED)) == (2 * 6, 3 * 6)


def test_a_ball_that_ends_in_one_of_many_squares_ends_late_only_in_the_last() -> None:
    """Two balls make six squares each, and what is left of them the thirteenth, with a join.

    After the last one in teal there are still 13 to be made in rust.
    """
    ball = PutUp(weight_g=80, length_m=6 * 24.3 + 13, price=Decimal(4))
    workshop = motif_workshop(
        yarns=(sample_yarn(put_ups=(ball,), stock=()),), habits=Habits(allowance=0.0)
    )
    body = sample_squares(("teal",) * 5, ("rust",) * 5, columns=13, rows=2)
    quote = sample_quote(squares_order(body=body, border=()), workshop)
    assert quote.estimate.ended(Why.RAN_OUT) == 2
    (late,) = (c for c in quote.cautions if c.code.value == "runs-out-late")
    assert late.facts == {"colour": "rust", "last_rounds": 5}
