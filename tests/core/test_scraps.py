"""What is left of a ball in motifs and in rounds: kept, and joined only at the end."""

from __future__ import annotations

from dataclasses import replace

from quoting.core.estimate.ball_walk import ColourWalk, walk_colour
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.strands import Visit, Why, visits_by_colour
from quoting.core.plan.passes import Edge
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.yarns import Stock
from tests.examples import band, sample_order, sample_quote, sample_yarn
from tests.motif_examples import centre_order, motif_workshop, sample_squares, squares_order

TAIL_M = 0.5


def motif(yarn_m: float, *, part: int, copies: int) -> Visit:
    """Return the one round of a colour in each of so many motifs."""
    return Visit(
        pass_index=part,
        starts=Edge.START,
        ends=Edge.START,
        yarn_m=yarn_m,
        follows=False,
        carry_m=None,
        part=part,
        copies=copies,
        scraps_wait=True,
    )


def walked(*visits: Visit, balls_m: tuple[float, ...], join: Join = Join.ANYWHERE) -> ColourWalk:
    return walk_colour("oat", visits, Supply(balls_m=balls_m), tail_m=TAIL_M, join=join)


def balls(walk: ColourWalk) -> list[int]:
    return [strand.ball for strand in walk.strands]


def test_a_scrap_is_kept_for_a_smaller_motif() -> None:
    """Three motifs take 4 m and tails of 1 m each; of 13 m, 3 are left, enough for one of 2 m."""
    walk = walked(motif(4, part=0, copies=3), motif(2, part=1, copies=1), balls_m=(13.0, 13.0))
    assert balls(walk) == [0, 0, 1, 0]
    assert {strand.why for strand in walk.strands} == {Why.FINISHED}
    assert (walk.missing_m, walk.left_m) == (0.0, 8.0)


def test_scraps_are_joined_only_once_nothing_longer_is_left() -> None:
    """Two balls of 8 m make a motif of 4 m each; the third takes the 3 m of both, with a join."""
    walk = walked(motif(4, part=0, copies=3), balls_m=(8.0, 8.0))
    assert balls(walk) == [0, 1, 0, 1]
    assert [strand.why for strand in walk.strands][2:] == [Why.RAN_OUT, Why.FINISHED]
    assert walk.missing_m == 0.0
    assert [strand.yarn_m for strand in walk.strands] == [5.0, 5.0, 3.0, 3.0]


def test_with_joins_at_an_edge_a_scrap_waits_too() -> None:
    """A round is one pass, which no scrap is begun with that cannot finish it."""
    walk = walked(
        motif(4, part=0, copies=3),
        motif(2, part=1, copies=1),
        balls_m=(13.0, 13.0),
        join=Join.AT_AN_EDGE,
    )
    assert balls(walk) == [0, 0, 1, 0]
    assert not walk.long_pass


def test_each_copy_of_a_part_is_told_apart() -> None:
    walk = walked(motif(4, part=0, copies=2), balls_m=(20.0,))
    assert [strand.starts.copy for strand in walk.strands] == [0, 1]
    assert walk.strands[0].stretches is walk.strands[1].stretches


def test_a_border_after_motifs_is_worked_from_the_longest_balls_and_not_from_scraps() -> None:
    """Two balls of 8 m leave 3 m each of a motif; a border of 30 m takes the two of 20 m first."""
    border = motif(30, part=1, copies=1)
    walk = walked(motif(4, part=0, copies=2), border, balls_m=(8.0, 8.0, 20.0, 20.0))
    assert balls(walk) == [0, 1, 2, 3]
    assert walk.missing_m == 0.0


def test_a_ball_joined_within_a_strand_lasts_for_the_rest_of_it() -> None:
    """Of border rounds of 20 and 5 m, 19 come from one ball; two scraps of 4 m wait for others."""
    border = [motif(20, part=1, copies=1), replace(motif(5, part=1, copies=1), follows=True)]
    walk = walked(motif(4, part=0, copies=2), *border, balls_m=(9.0, 9.0, 20.0, 20.0))
    assert balls(walk) == [0, 1, 2, 3]
    assert [strand.yarn_m for strand in walk.strands] == [5.0, 5.0, 20.0, 7.0]


def test_a_scrap_too_short_for_a_round_is_kept_for_a_smaller_one() -> None:
    """Rounds of 4, 8 and 2 m cut in between: of 9 m, 4 are left, too short for 8, enough for 2."""
    lengths_m = (4.0, 8.0, 2.0)
    rounds = [
        replace(motif(length_m, part=0, copies=1), pass_index=number)
        for number, length_m in enumerate(lengths_m)
    ]
    walk = walked(*rounds, balls_m=(9.0, 9.0))
    assert balls(walk) == [0, 1, 0]
    in_rows = walked(*(replace(own, scraps_wait=False) for own in rounds), balls_m=(9.0, 9.0))
    assert balls(in_rows) == [0, 0, 1, 1]


def test_scraps_wait_in_rounds_and_in_motifs_and_not_in_rows() -> None:
    workshop = motif_workshop()
    orders = [sample_order(), centre_order(border=(band("sc"),)), squares_order()]
    plans = [plan_order(order, workshop) for order in orders]
    lines = [visits_by_colour(plan, Habits(), [1.0] * len(plan.passes)) for plan in plans]
    waits = [{own.scraps_wait for line in by.values() for own in line} for by in lines]
    assert waits == [{False}, {True}, {True}]


def test_what_is_on_the_shelf_is_used_first_though_it_is_short() -> None:
    """A lot of 3 m is too short for a motif of 4 m; unless joined at once it would stay there."""
    supply = Supply(balls_m=(3.0, 20.0), held=1)
    walk = walk_colour("oat", [motif(4, part=0, copies=2)], supply, tail_m=TAIL_M)
    assert balls(walk) == [0, 1, 1]
    assert walk.ball_used_m[0] == 3.0
    crumb = Supply(balls_m=(0.9, 8.0, 8.0), held=1)
    walk = walk_colour("oat", [motif(4, part=0, copies=2)], crumb, tail_m=TAIL_M)
    assert balls(walk) == [1, 2], "what its tails take up is no ball to wait for"


def test_a_short_lot_that_was_counted_on_is_told_and_charged() -> None:
    """A lot of 10 g, 20 m, is too short for a motif of 24 m; where it saves a ball it is used."""
    workshop = motif_workshop(yarns=(sample_yarn(stock=(Stock(colour="oat", weight_g=10),)),))
    counted_on = []
    for columns in range(2, 40):
        body = sample_squares(("oat",) * 5, columns=columns, rows=2)
        order = squares_order(body=body, border=(), mix_lots=True)
        oat = sample_quote(order, workshop).estimate.colours[0]
        if oat.choice.stock:
            counted_on.append(oat.from_stock_g)
    assert counted_on
    assert set(counted_on) == {10.0}
