"""A left-handed maker's drawing is the mirror image of a right-handed one's."""

from __future__ import annotations

from decimal import Decimal

import pytest

from exports.drawing.layout import lay_out
from quoting.core.plan.passes import Edge
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.yarns import PutUp
from tests.drawing.pictures import drawn, of_class, words_of
from tests.examples import sample_quote, sample_workshop, sample_yarn

SMALL = PutUp(weight_g=20, length_m=40, price=Decimal("1.20"))


def quote_of_a_hand(*, left_handed: bool) -> Quote:
    yarn = sample_yarn(put_ups=(SMALL,), stock=())
    return sample_quote(
        None, sample_workshop(yarns=(yarn,), habits=Habits(left_handed=left_handed))
    )


RIGHT, LEFT = (quote_of_a_hand(left_handed=left) for left in (False, True))


def test_nothing_but_the_hand_differs_in_what_it_takes() -> None:
    assert LEFT.estimate.strands == RIGHT.estimate.strands
    assert (LEFT.number, LEFT.price, LEFT.plan) == (RIGHT.number, RIGHT.price, RIGHT.plan)


@pytest.mark.parametrize("edge", [Edge.START, Edge.FAR])
def test_tails_hang_on_the_other_side(edge: Edge) -> None:
    right, left = lay_out(RIGHT.plan), lay_out(LEFT.plan, mirrored=True)
    assert left.edge_x(edge, 60) == right.edge_x(edge.across, 60)
    assert left.side(edge) == -right.side(edge)


@pytest.mark.parametrize("share", [0.0, 0.2, 0.6, 1.0])
def test_what_is_worked_from_the_right_is_worked_from_the_left(share: float) -> None:
    right, left = lay_out(RIGHT.plan), lay_out(LEFT.plan, mirrored=True)
    both = right.blanket.left + right.blanket.right
    for index in range(1, len(RIGHT.plan.passes)):
        (x, y), (mirrored_x, mirrored_y) = right.point(index, share), left.point(index, share)
        assert (x + mirrored_x, y) == (pytest.approx(both), mirrored_y)


def test_both_have_every_tail_and_carry_and_the_names_of_both_edges() -> None:
    for quote in (RIGHT, LEFT):
        picture = drawn(quote)
        assert len(of_class(picture, "tail")) == quote.estimate.ends
        assert len(of_class(picture, "carry")) == quote.estimate.carries
        words = words_of(picture)
        assert words.index("left-hand") < words.index("right-hand")
