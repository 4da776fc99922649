"""How many stitches each round of a border has, at all three kinds of corner."""

from __future__ import annotations

import pytest

from quoting.core.order.design import Corner
from quoting.core.plan.border import (
    Rim,
    RowEnds,
    border_cautions,
    border_depth_cm,
    border_rounds,
    growth,
    ratio_is_off,
    row_end_ratio,
)
from quoting.core.plan.gauge import Gauge
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Pattern
from tests.examples import (
    band,
    edging,
    plain_gauge,
    rim,
    sample_design,
    sample_order,
    sample_workshop,
)

SC = plain_gauge(Stitch.SC, 0.8, 0.8)
DC = plain_gauge(Stitch.DC, 0.8, 1.6)


def body(rows: int = 10, across: int = 20, gauge: Gauge = SC, last: int | None = None) -> Rim:
    return rim(first_row=across, last_row=last or across, row_gauges=[gauge] * rows)


@pytest.mark.parametrize(
    ("corner", "counts", "chains"),
    [
        (Corner.CHAIN, [60, 68, 76], 8),
        (Corner.ONE_EXTRA, [64, 72, 80], 0),
        (Corner.THREE_IN_ONE, [68, 76, 84], 0),
    ],
)
def test_rounds_grow_by_the_habit_at_the_corner(
    corner: Corner, counts: list[int], chains: int
) -> None:
    rounds = border_rounds([edging(SC, rounds=3, corner=corner)], body())
    assert [one.stitches for one in rounds] == counts
    assert {one.chains for one in rounds} == {chains}


def test_a_body_wider_at_one_end_has_its_own_stitches_along_each() -> None:
    (first,) = border_rounds([edging(SC)], body(last=26))
    assert first.stitches == 20 + 26 + 2 * 10


def test_a_side_comes_to_whole_stitches_once_not_row_by_row() -> None:
    tall = plain_gauge(Stitch.HDC, 0.8, 1.0)
    (first,) = border_rounds([edging(SC)], body(rows=9, gauge=tall))
    assert first.stitches == 2 * 20 + 2 * 11  # 9 x 1.25 = 11.25


def test_the_makers_own_ratio_holds_for_the_first_round_only() -> None:
    rounds = border_rounds([edging(SC, row_end_ratio=2.0, rounds=2)], body())
    assert [one.stitches for one in rounds] == [2 * 20 + 2 * 20, 2 * 20 + 2 * 20 + 8]


@pytest.mark.parametrize(
    ("tall", "more"), [(0.4, 8), (0.8, 8), (1.0, 12), (1.2, 12), (1.6, 16), (2.4, 24)]
)
def test_a_round_without_chains_grows_with_its_height_to_the_nearest_four(
    tall: float, more: int
) -> None:
    """By geometry, 8 x height / width; and never less than 8."""
    assert growth(Corner.ONE_EXTRA, plain_gauge(Stitch.SC, 0.8, tall)) == more
    assert growth(Corner.THREE_IN_ONE, plain_gauge(Stitch.SC, 0.8, tall)) == more


@pytest.mark.parametrize(
    ("kind", "more"), [(Stitch.SC, 8), (Stitch.HDC, 8), (Stitch.DC, 16), (Stitch.TR, 24)]
)
def test_a_round_over_chains_grows_by_its_kind_however_tall_it_is(kind: Stitch, more: int) -> None:
    """Common practice, no source: one, one, two or three stitches on each side of the chains."""
    assert growth(Corner.CHAIN, plain_gauge(kind, 0.8, 0.4)) == more
    assert growth(Corner.CHAIN, plain_gauge(kind, 0.8, 4.0)) == more


@pytest.mark.parametrize(
    ("kind", "more"), [(Stitch.SC, 8), (Stitch.HDC, 12), (Stitch.DC, 16), (Stitch.TR, 24)]
)
def test_an_unmeasured_round_grows_by_the_trades_heights(kind: Stitch, more: int) -> None:
    rough = plain_gauge(kind, 1, 1, swatched=False)
    assert growth(Corner.THREE_IN_ONE, rough) == more


def test_a_measured_border_stitch_counts_row_ends_by_its_width() -> None:
    assert row_end_ratio(RowEnds([DC]), SC) == pytest.approx(2.0)
    assert row_end_ratio(RowEnds([SC, SC, DC]), SC) == pytest.approx(4 / 3)


def test_the_border_is_as_deep_as_its_rounds_are_high() -> None:
    assert border_depth_cm([edging(SC, rounds=2), edging(DC)]) == pytest.approx(0.8 * 2 + 1.6)
    assert border_depth_cm([]) == 0


def test_a_second_band_goes_on_from_the_first() -> None:
    rounds = border_rounds([edging(SC), edging(DC, colour="rust")], body())
    assert [(one.colour, one.stitches) for one in rounds] == [("oat", 60), ("rust", 76)]


def test_a_ratio_is_off_beyond_a_tenth_of_the_measured_one() -> None:
    assert not ratio_is_off(1.09, 1.0)
    assert ratio_is_off(1.11, 1.0)
    assert ratio_is_off(0.89, 1.0)
    assert not ratio_is_off(3.29, 3.0)
    assert ratio_is_off(0.44, 0.5)


def test_a_ratio_that_is_off_is_told_with_both_figures() -> None:
    def cautions(ratio: float) -> list[tuple[str, object]]:
        design = sample_design(border=(band(row_end_ratio=ratio),))
        plan = plan_order(sample_order(design=design), sample_workshop())
        return [(one.code, one.facts.get("measured")) for one in plan.cautions]

    assert cautions(1.0) == [("row-ends-off", pytest.approx(1.1875))]
    assert cautions(1.2) == []


def test_a_blanket_without_a_border_has_no_rounds() -> None:
    plan = plan_order(sample_order(design=sample_design(border=())), sample_workshop())
    assert plan.rounds == ()
    assert plan.border_depth_cm == 0


WIDE = plain_gauge(Stitch.DC, 1.5, 1.5)
NARROW = plain_gauge(Stitch.SC, 0.6, 0.6)


def test_a_border_goes_by_length_along_rows_of_much_wider_stitches() -> None:
    """By hand: a square of 60 blocks, 90 cm each way, has 150 single crochet of 0.6 on a side."""
    square = body(rows=60, across=60, gauge=WIDE)
    rounds = border_rounds([edging(NARROW, rounds=2)], square)
    assert [one.stitches for one in rounds] == [600, 608]


@pytest.mark.parametrize(
    ("width_cm", "along"), [(0.88, 20), (0.8801, 18), (0.72, 20), (0.7199, 22)]
)
def test_a_border_has_a_stitch_in_each_where_widths_are_a_tenth_apart_at_most(
    width_cm: float, along: int
) -> None:
    (first,) = border_rounds([edging(plain_gauge(Stitch.SC, width_cm, 0.8))], body(rows=1))
    assert first.stitches == 2 * along + 2


def test_each_end_of_the_body_is_bordered_by_the_stitches_of_its_own_row() -> None:
    """By hand: 20 of 0.8 cm along one end, and along the other 30 of 1.6, so 60."""
    rows = [SC, plain_gauge(Stitch.SC, 1.6, 0.8)]
    (first,) = border_rounds([edging(SC)], rim(first_row=20, last_row=30, row_gauges=rows))
    assert first.stitches == 20 + 60 + 2 * 2


def test_an_edging_closes_on_its_repeat_along_every_side() -> None:
    """By hand: sides of 20 and 10 stitches are 3 and 2 repeats of six: 18 and 12."""
    (first,) = border_rounds([edging(SC, multiple=6)], body())
    assert first.stitches == 2 * 18 + 2 * 12
    (more,) = border_rounds([edging(SC, multiple=6, plus=1)], body())
    assert more.stitches == 2 * 19 + 2 * 13  # of 13 and 19, the larger is as near to 20


def test_later_rounds_of_an_edging_keep_whole_repeats_beside_what_lies_flat() -> None:
    """By hand: 20, 22, 24 and 26 come to 18, 24, 24, 24; 10, 12, 14 and 16 to 12, 12, 12, 18."""
    rounds = border_rounds([edging(SC, multiple=6, rounds=4)], body())
    assert [one.stitches for one in rounds] == [60, 72, 72, 84]


def test_corners_of_an_edging_are_beside_its_repeats() -> None:
    edged = edging(SC, multiple=6, corner=Corner.THREE_IN_ONE, rounds=2)
    assert [one.stitches for one in border_rounds([edged], body())] == [60 + 8, 72 + 8]


def test_a_plain_round_inside_an_edging_is_as_it_would_be_without() -> None:
    """By hand: round 2 lies flat with 22 and 12 along the sides: 24 and 12 in repeats of six."""
    rounds = border_rounds([edging(SC), edging(SC, multiple=6)], body())
    assert [one.stitches for one in rounds] == [60, 72]


def test_an_edging_of_the_workshops_pattern_closes_on_the_patterns_repeat() -> None:
    shell = Pattern(name="shell edging", like=Stitch.SC, multiple=6)
    plan = plan_order(
        sample_order(design=sample_design(border=(band("shell edging"),))),
        sample_workshop(patterns=(shell,)),
    )
    assert plan.rounds[0].stitches["shell edging"] == 2 * 96 + 2 * 120  # 98 and 122


@pytest.mark.parametrize(
    ("kind", "tall", "told"),
    [
        (Stitch.HDC, 1.0, [("corners-cup", 8, 12)]),
        (Stitch.HDC, 0.9, []),
        (Stitch.SC, 0.8, []),
        (Stitch.DC, 1.6, []),
        (Stitch.DC, 1.2, [("corners-ruffle", 16, 12)]),
    ],
)
def test_corner_chains_that_do_not_lie_flat_are_told_with_the_growth_that_would(
    kind: Stitch, tall: float, told: list[tuple[str, int, int]]
) -> None:
    """By geometry, 8 x height / width to the nearest four: 8 x 1.0 / 0.8 = 10 comes to 12."""

    def cautions(rounds: int) -> list[tuple[str, object, object]]:
        edged = edging(plain_gauge(kind, 0.8, tall), rounds=rounds)
        found = border_cautions([edged], body())
        return [(one.code, one.facts["more"], one.facts["flat"]) for one in found]

    assert cautions(2) == told
    assert cautions(1) == []


def test_other_corners_grow_as_they_lie_flat_and_are_not_told() -> None:
    edged = edging(plain_gauge(Stitch.HDC, 0.8, 1.2), rounds=3, corner=Corner.ONE_EXTRA)
    assert list(border_cautions([edged], body())) == []
    assert list(border_cautions([], body())) == []
