"""Squares joined: how many, how many edges, ends, stitches of seams and border.

G is geometry or counting; P is common practice, no source named; E a default from practice.
"""

from __future__ import annotations

import math

import pytest

from quoting.core.estimate.strands import Why
from quoting.core.order.joined_squares import JoinMethod, Layout, MotifJoin, Pool
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Plan, Work
from quoting.core.plan.plan import plan_order
from quoting.core.plan.squares.seams import CORNER_STITCHES, YARN_SEWN
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Reading
from quoting.core.workshop.timings import USUAL_MINUTES
from quoting.core.workshop.workshop import Workshop
from tests.examples import band, sample_quote, sample_swatch
from tests.motif_examples import (
    FIVE,
    motif_workshop,
    sample_motif,
    sample_squares,
    squares_order,
    tall_swatch,
)


def bordered_workshop() -> Workshop:
    """Return a workshop whose borders have 14 half double crochet to 10 cm, rounds of 0.9 cm."""
    gauge = Reading(stitches=14, width_cm=10, rows=10, height_cm=9)
    return motif_workshop(swatches=(sample_swatch(gauge=gauge), tall_swatch()))


def squares_plan(**changes: object) -> Plan:
    return plan_order(squares_order(**changes), motif_workshop())


def test_squares_close_on_the_size_asked() -> None:
    """G: 130 x 170 cm, a side of 15, a border of 2.7: 8 x 11 = 88, and 125.4 x 170.4 cm."""
    plan = plan_order(squares_order(), bordered_workshop())
    assert plan.border_depth_cm == pytest.approx(2.7)
    assert plan.grid is not None
    assert (plan.grid.columns, plan.grid.rows, plan.grid.count) == (8, 11, 88)
    assert (plan.width_cm, plan.height_cm) == pytest.approx((125.4, 170.4))


def test_squares_meet_at_edges_that_lie_on_lines() -> None:
    """G: R(C - 1) + C(R - 1) = 157, on (C - 1) + (R - 1) = 17 lines."""
    grid = squares_plan().grid
    assert grid is not None
    assert (grid.shared_edges, grid.seam_lines) == (157, 17)
    sides, outside = 4 * grid.count, 2 * (grid.columns + grid.rows)
    assert sides == 2 * grid.shared_edges + outside


@pytest.mark.parametrize(
    ("method", "ends"),
    [
        (JoinMethod.AS_YOU_GO, 880),
        (JoinMethod.CONTINUOUS, 88 * 8 + 2),
        (JoinMethod.SLIP_STITCH, 880 + 34),
        (JoinMethod.SINGLE_CROCHET, 880 + 34),
        (JoinMethod.WHIPSTITCH, 880 + 2 * 41),
        (JoinMethod.FLAT_BRAID, 880 + 2 * 88),
    ],
)
def test_a_join_leaves_ends_of_its_own(method: JoinMethod, ends: int) -> None:
    """G, needlefuls of 150 cm and 2.5 cm a cm (E): and two more for each ball that is joined."""
    body = sample_squares(method=method, columns=8, rows=11)
    estimate = sample_quote(squares_order(body=body, border=()), motif_workshop()).estimate
    assert estimate.ends - 2 * estimate.ended(Why.RAN_OUT) == ends


def test_a_border_of_one_colour_leaves_two_ends() -> None:
    """G: beside its joins."""
    body = sample_squares(columns=8, rows=11)
    estimate = sample_quote(squares_order(body=body), motif_workshop()).estimate
    assert estimate.ends - 2 * estimate.ended(Why.RAN_OUT) == 880 + 2


def test_a_crocheted_seam_has_the_stitches_of_a_side_and_two_an_edge() -> None:
    """G: solid squares of 5 rounds have 19 a side; 157 edges of 21 are 3,297 sc (two, P)."""
    motif = sample_motif(counting=Counting.SOLID)
    body = sample_squares(method=JoinMethod.SINGLE_CROCHET, columns=8, rows=11)
    plan = plan_order(squares_order(body=body, border=()), motif_workshop(motif))
    seams = plan.of_work(Work.SEAM)
    assert CORNER_STITCHES == 2
    assert sum(plan.times(seam) * seam.stitches["sc"] for seam in seams) == 3297
    assert sum(part.count for part in plan.parts if part.kind is PartKind.SEAM) == 17


def test_a_sewn_seam_takes_more_yarn_than_it_is_long() -> None:
    """E: 2.5 and 2.0 cm a cm; G: of 157 edges of 15 cm."""
    assert YARN_SEWN == {JoinMethod.WHIPSTITCH: 2.5, JoinMethod.MATTRESS: 2.0}
    for method, each_cm in YARN_SEWN.items():
        plan = squares_plan(body=sample_squares(method=method, columns=8, rows=11))
        sewn_m = sum(plan.times(seam) * seam.sewn_m for seam in plan.of_work(Work.SEAM))
        assert sewn_m == pytest.approx(157 * 15 * each_cm / 100)


def test_joins_lay_squares_apart_by_what_is_usual() -> None:
    """E: 0.3 cm for a ridge of single crochet, 1.2 cm for a braid, else nothing."""
    added = {method: MotifJoin(method=method, colour="oat").gap_cm for method in JoinMethod}
    assert {method: cm for method, cm in added.items() if cm} == {
        JoinMethod.SINGLE_CROCHET: 0.3,
        JoinMethod.FLAT_BRAID: 1.2,
    }


def test_joins_take_the_minutes_that_are_usual() -> None:
    """E: 1.0 and 0.8 an edge of 15 cm, 0.5 an edge of a braid, 0.12 and 0.18 a cm that is sewn."""
    edges, centimetres = 157, 157 * 15
    for method, minutes in (
        (JoinMethod.AS_YOU_GO, 1.0 * edges),
        (JoinMethod.CONTINUOUS, 0.8 * edges),
        (JoinMethod.FLAT_BRAID, 0.5 * edges),
        (JoinMethod.WHIPSTITCH, 0.12 * centimetres),
        (JoinMethod.MATTRESS, 0.18 * centimetres),
    ):
        plan = squares_plan(body=sample_squares(method=method, columns=8, rows=11))
        name = next(what for what in plan.chores if what.startswith(("join_", "sew_")))
        assert plan.chores[name] * USUAL_MINUTES[name][0] == pytest.approx(minutes)


def test_laying_out_takes_a_quarter_of_an_hour_and_a_third_of_a_minute_a_square() -> None:
    """E: 15 min and 0.3 a motif; blocking 1.2 a motif, where it is wanted."""
    plan = squares_plan(body=sample_squares(columns=8, rows=11, blocked=True))
    usual = {name: plan.chores[name] * USUAL_MINUTES[name][0] for name in plan.chores}
    assert usual["lay_out"] + usual["lay_out_motif"] == pytest.approx(15 + 0.3 * 88)
    assert usual["block_motif"] == pytest.approx(1.2 * 88)


@pytest.mark.parametrize("colours", [2, 4])
def test_a_pool_is_as_unsure_as_chance_leaves_it(colours: int) -> None:
    """G: the relative variance of a share of 1/k of n draws is (k - 1)/n, binomial."""
    pool = Pool(colours=FIVE[:colours], outer=("oat",))
    body = sample_squares(layouts=(), pool=pool, columns=4, rows=4)
    quote = sample_quote(squares_order(body=body, border=()), motif_workshop())
    draws = 16 * 4
    for colour in quote.estimate.colours:
        alone = 0.0 if colour.colour == "oat" else math.sqrt((colours - 1) / draws)
        assert colour.yarn.chance == pytest.approx(alone)


def test_a_border_of_squares_takes_the_stitches_of_their_edges() -> None:
    """P: clusters of 5 have 3 x 5 + 4 an edge, and 2 into each join: 790 round 8 x 11.

    G: as long as the outline, at 14 hdc to 10 cm, they would be 798.
    """
    body = sample_squares(columns=8, rows=11)
    plan = plan_order(squares_order(body=body, border=(band("hdc"),)), bordered_workshop())
    assert plan.rounds[0].stitches["hdc"] == 790
    assert pytest.approx(798) == 2 * (8 + 11) * 15 / (10 / 14)


def test_a_solid_square_has_a_stitch_less_than_four_a_round_along_its_edge() -> None:
    """G: 4n - 1 an edge with 3 a side in round 1; with 2 a side, 4n - 2."""
    for first_side, less in ((3, 1), (2, 2)):
        motif = sample_motif(counting=Counting.SOLID, first_side=first_side)
        edges = [motif.counted(Stitch.DC).sides(n)[0] for n in range(1, 10)]
        assert edges == [4 * n - less for n in range(1, 10)]


def test_shares_of_squares_are_whole_squares() -> None:
    """G: 2 : 1 of 88, the remainder to the larger fraction: 59 and 29."""
    layouts = (Layout(colours=FIVE, share=2), Layout(colours=FIVE[::-1], share=1))
    plan = squares_plan(body=sample_squares(layouts=layouts, columns=8, rows=11))
    assert [part.count for part in plan.parts if part.kind is PartKind.MOTIF] == [59, 29]
