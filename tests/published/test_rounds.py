"""Rounds from a centre: how many stitches, how much yarn, what size.

G is geometry or counting; P is common practice, no source named; E a default from practice.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from quoting.core.estimate.strands import Why
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.motifs import EarlierSide, WeighedMotifs
from quoting.core.workshop.rounds import CORNERS, FLAT_FACTOR, Counting, Rounds
from quoting.core.workshop.stitches import Stitch
from tests.examples import sample_quote
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_motif,
    sample_squares,
    squares_order,
)

CLUSTERS = Rounds(counting=Counting.CLUSTERS, kind=Stitch.DC)
SOLID = Rounds(counting=Counting.SOLID, kind=Stitch.DC)
TWO_A_SIDE = replace(SOLID, first_side=2)
SINGLE = Rounds(counting=Counting.SOLID, kind=Stitch.SC)


def circle(kind: Stitch) -> Rounds:
    return Rounds(counting=Counting.CIRCLE, kind=kind)


def stitches(counted: Rounds, rounds: int = 4) -> list[int]:
    return [counted.round(number).stitches for number in range(1, rounds + 1)]


@pytest.mark.parametrize(
    ("counted", "first_rounds"),
    [
        pytest.param(CLUSTERS, [12, 24, 36, 48], id="P, G: 12k"),
        pytest.param(SOLID, [12, 28, 44, 60], id="P, G: 16k - 4"),
        pytest.param(TWO_A_SIDE, [8, 24, 40, 56], id="G: 16k - 8"),
        pytest.param(SINGLE, [8, 16, 24, 32], id="P, G: 8k"),
        pytest.param(circle(Stitch.SC), [6, 12, 18, 24], id="P: 6k"),
        pytest.param(circle(Stitch.HDC), [8, 16, 24, 32], id="P: 8k"),
        pytest.param(circle(Stitch.DC), [12, 24, 36, 48], id="P: 12k"),
        pytest.param(circle(Stitch.TR), [18, 36, 54, 72], id="P: 18k"),
    ],
)
def test_the_first_rounds_have_the_trades_stitches(
    counted: Rounds, first_rounds: list[int]
) -> None:
    """Rounds 1 to 3 as published (P); the fourth follows (G)."""
    assert stitches(counted) == first_rounds


@pytest.mark.parametrize("n", range(1, 46))
def test_so_many_rounds_have_so_many_stitches_together(n: int) -> None:
    """G: the sums of the series in closed form."""
    assert CLUSTERS.total(n) == 6 * n * (n + 1)
    assert SOLID.total(n) == 8 * n**2 + 4 * n
    assert TWO_A_SIDE.total(n) == 8 * n**2
    assert SINGLE.total(n) == 4 * n * (n + 1)
    for kind, more in ((Stitch.SC, 6), (Stitch.HDC, 8), (Stitch.DC, 12), (Stitch.TR, 18)):
        assert circle(kind).total(n) == more * n * (n + 1) // 2


def test_corners_and_the_spaces_between_clusters_are_chains() -> None:
    """P: 2 at each corner, 1 on a side; G: 4 spaces more a round. None in sc or in a circle."""
    assert [CLUSTERS.round(k).chains for k in (1, 2, 3, 4)] == [8, 12, 16, 20]
    assert {SOLID.round(k).chains for k in (1, 2, 3)} == {8}
    assert {SINGLE.round(k).chains + circle(Stitch.DC).round(k).chains for k in (1, 2)} == {0}


def test_a_rectangle_has_two_stitches_more_a_round_for_each_that_it_begins_on() -> None:
    """G: solid of 10 rounds on 20 stitches, clusters of 10 rounds with 5 more a long side."""
    assert replace(SOLID, extra=20).total(10) == 1240
    assert replace(CLUSTERS, extra=5).total(10) == 960


def test_five_rounds_of_clusters_share_the_yarn_by_their_size() -> None:
    """G, with a chain at a half (P): W = 26k + 2 and so 7.0, 13.5, 20.0, 26.5, 33.0 %."""
    units = [CLUSTERS.yarn_units(number) for number in range(1, 6)]
    assert units == [26 * k + 2 for k in range(1, 6)]
    shares = [100 * unit / sum(units) for unit in units]
    assert shares == pytest.approx([7.0, 13.5, 20.0, 26.5, 33.0], abs=0.05)


def test_five_equal_bands_from_the_centre_take_ever_more() -> None:
    """G: 45 rounds of clusters, 9 a band: 4.3, 12.2, 20.0, 27.8, 35.7 % of the stitches."""
    upto = [CLUSTERS.total(rounds) for rounds in range(0, 46, 9)]
    shares = [100 * (b - a) / upto[-1] for a, b in pairwise(upto)]
    assert shares == pytest.approx([4.3, 12.2, 20.0, 27.8, 35.7], abs=0.05)
    assert shares[-1] / shares[0] > 8


def test_five_bands_are_bought_by_what_they_take() -> None:
    """G: the yarn as the stitches, within what the chains between clusters shift: 0.1 %."""
    body = sample_centre(*FIVE, rounds_each=9, counting=Counting.CLUSTERS, rounds=45, starts_on=0)
    quote = sample_quote(centre_order(body=body), motif_workshop(sample_motif(timings=())))
    metres = {colour.colour: colour.yarn.stitches_m for colour in quote.estimate.colours}
    shares = [100 * metres[colour] / sum(metres.values()) for colour in FIVE]
    assert shares == pytest.approx([4.3, 12.2, 20.0, 27.8, 35.7], abs=0.11)


def test_stripes_of_two_rounds_leave_two_ends_each() -> None:
    """G: 45 rounds are 23 stripes, 23 strands and 46 ends, and two for each ball joined."""
    body = sample_centre("teal", "rust", rounds_each=2, rounds=45)
    estimate = sample_quote(centre_order(body=body), motif_workshop()).estimate
    assert estimate.ends - 2 * estimate.ended(Why.RAN_OUT) == 46


@pytest.mark.parametrize(
    ("colours", "ends"), [("ABCDE", 10), ("AABBC", 6), ("AAAAA", 2), ("ABABA", 10)]
)
def test_a_motif_leaves_two_ends_for_each_run_of_a_colour(colours: str, ends: int) -> None:
    """G: runs of equal colour, none carried."""
    named = dict(zip("ABCDE", FIVE, strict=True))
    body = sample_squares([named[colour] for colour in colours], columns=1, rows=1)
    quote = sample_quote(squares_order(body=body, border=()), motif_workshop())
    assert quote.estimate.ends == ends


def test_published_widths_grow_by_two_centimetres_a_round() -> None:
    """P: clusters of 5.5, 7.5, 9.5, 11.5, 13.5 cm after rounds 2 to 6; here from two of them."""
    motif = sample_motif(
        rounds=6, one_side_cm=13.5, earlier=EarlierSide(rounds=2, side_cm=5.5), timings=()
    )
    assert motif.growth_cm == 2.0
    for rounds, width_cm in zip(range(2, 7), (5.5, 7.5, 9.5, 11.5, 13.5), strict=True):
        body = sample_centre(counting=Counting.CLUSTERS, rounds=rounds, starts_on=0)
        plan = plan_order(centre_order(body=body), motif_workshop(motif))
        assert (plan.width_cm, plan.height_cm) == pytest.approx((width_cm, width_cm))


def test_a_rectangle_closes_on_the_size_asked() -> None:
    """G: 75 x 90 cm in dc at 17 stitches and 9 rows to 10 cm."""
    quote = sample_quote(centre_order(), motif_workshop())
    assert len(quote.plan.passes) == 34
    assert quote.plan.passes[0].stitches["dc"] == 12 + 2 * 26
    assert quote.plan.width_cm == pytest.approx(75.6, abs=0.05)
    assert quote.plan.height_cm == pytest.approx(90.8, abs=0.051)
    assert sum(worked.stitches["dc"] for worked in quote.plan.passes) == 11_152


def test_a_round_lies_flat_where_it_grows_as_its_outline_does() -> None:
    """G: of a square, a hexagon and a circle whose apothem grows by one."""
    assert FLAT_FACTOR[CORNERS[Counting.SOLID]] == 8
    assert FLAT_FACTOR[CORNERS[Counting.HEXAGON]] == pytest.approx(6.93, abs=0.002)
    assert FLAT_FACTOR[CORNERS[Counting.CIRCLE]] == pytest.approx(6.2832, abs=0.0001)


@pytest.mark.parametrize(("motifs", "per_cent"), [(1, 2.9), (5, 0.58)])
def test_a_scale_of_a_gram_weighs_five_motifs_well_enough(motifs: int, per_cent: float) -> None:
    """G: of 10 g each, a step of 1 g has the standard uncertainty 1/√12 g (JCGM 100, 4.3.7)."""
    weighed = WeighedMotifs(motifs=motifs, weight_g=10 * motifs)
    assert 100 * weighed.reading_error == pytest.approx(per_cent, abs=0.02)
