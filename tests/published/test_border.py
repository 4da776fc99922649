"""Borders: stitches at row ends and at corners."""

from __future__ import annotations

import pytest

from quoting.core.order.design import Corner
from quoting.core.plan.border import border_rounds
from quoting.core.workshop.stitches import Stitch
from quoting.wording import speech_of
from quoting.wording.guide_corners import corner_words
from tests.examples import edging, plain_gauge, rim, sample_workshop

SC = plain_gauge(Stitch.SC, 0.8, 0.8)


@pytest.mark.parametrize(
    ("kind", "ends"), [(Stitch.SC, 100), (Stitch.HDC, 150), (Stitch.DC, 200), (Stitch.TR, 300)]
)
def test_a_hundred_row_ends_take_the_trades_stitches(kind: Stitch, ends: int) -> None:
    """Common practice, no source (tr from geometry); where nothing was measured."""
    rough = plain_gauge(Stitch.SC, 1, 1, swatched=False)
    rows = [plain_gauge(kind, 1, 1, swatched=False)] * 100
    (first,) = border_rounds([edging(rough)], rim(first_row=1, last_row=1, row_gauges=rows))
    assert (first.stitches - 2) // 2 == ends


def test_a_square_of_single_crochet_grows_by_eight() -> None:
    """Common practice, 3 in each corner: 4, 12, 20, 28; and geometry, 8 x height / width."""
    dot = rim(first_row=1, last_row=1, row_gauges=[SC])
    rounds = border_rounds([edging(SC, rounds=3, corner=Corner.THREE_IN_ONE)], dot)
    assert [one.stitches for one in rounds] == [12, 20, 28]


def test_three_in_one_at_each_corner_are_told_where_a_round_has_eight_more() -> None:
    """Common practice, no source: 3 sc in a corner are 2 more in each of 4, so 8 more a round."""
    dot = rim(first_row=1, last_row=1, row_gauges=[SC])
    asked = edging(SC, rounds=3, corner=Corner.THREE_IN_ONE)
    speech = speech_of(sample_workshop())
    for worked in border_rounds([asked], dot):
        assert corner_words(worked.corner, "sc", speech).startswith("3 sc in ")


@pytest.mark.parametrize(
    ("corner", "first"),
    [(Corner.CHAIN, 840), (Corner.ONE_EXTRA, 844), (Corner.THREE_IN_ONE, 848)],
)
def test_a_border_round_a_blanket_of_double_crochet(corner: Corner, first: int) -> None:
    """Geometry: 120 stitches, 150 rows of dc at 2 per row end; corner habits, common practice."""
    rows = [plain_gauge(Stitch.DC, 0.8, 1.6)] * 150
    body = rim(first_row=120, last_row=120, row_gauges=rows)
    rounds = border_rounds([edging(SC, rounds=3, corner=corner)], body)
    assert [one.stitches for one in rounds] == [first, first + 8, first + 16]
