"""One row by itself says which side faces, how it is turned to, and what its corners are."""

from __future__ import annotations

import pytest

from quoting.core.guide.guide import guide_of
from quoting.core.making.made_rows import made_rows
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from quoting.wording import speech_of
from quoting.wording.row_at_hand import RowAtHand, row_at_hand
from tests.examples import band, sample_design, sample_order, sample_quote, sample_workshop


def row(quote: Quote, number: int) -> RowAtHand:
    return row_at_hand(guide_of(quote), made_rows(quote), number, speech_of(quote.workshop))


@pytest.mark.parametrize(
    ("number", "side"),
    [
        (1, "Right side facing, from the right-hand edge."),
        (2, "Wrong side facing, from the left-hand edge."),
        (3, "Right side facing, from the right-hand edge."),
        (104, "Right side facing."),
    ],
)
def test_odd_rows_and_rounds_have_the_right_side_facing(number: int, side: str) -> None:
    assert row(sample_quote(), number).side == side


def test_a_left_handed_maker_begins_at_the_other_edge_of_the_same_side() -> None:
    quote = sample_quote(None, sample_workshop(habits=Habits(left_handed=True)))
    assert row(quote, 1).side == "Right side facing, from the left-hand edge."
    assert row(quote, 4).yarn == (
        "Carry it up at the right-hand edge; leave it waiting at the left-hand edge.",
    )


def test_row_1_has_its_chain_and_what_is_done_with_the_yarn_of_both() -> None:
    first = row(sample_quote(), 1)
    assert first.details == ("Chain 100 first.", "First hdc in the 3rd chain from the hook.")
    assert first.yarn == (
        "Start it at the left-hand edge.",
        "Leave it waiting at the left-hand edge.",
    )


@pytest.mark.parametrize(
    ("stitch", "turned", "begun"),
    [
        ("sc", "Turn and chain 1, not counted as a stitch.", "First sc in the 2nd chain"),
        (
            "dc",
            "Turn and chain 3, counted as the first stitch.",
            "First dc in the 4th chain from the hook, the 3 chains before it being the first",
        ),
    ],
)
def test_turning_chains_are_told_with_whether_they_count(
    stitch: str, turned: str, begun: str
) -> None:
    quote = sample_quote(sample_order(design=sample_design(stitch=stitch)))
    assert turned in row(quote, 2).details
    assert row(quote, 1).details[1].startswith(begun)


def test_a_round_has_its_sides_first_and_its_corners_always() -> None:
    quote = sample_quote(sample_order(design=sample_design(border=(band(rounds=2),))))
    rows = made_rows(quote).all
    first, second = row(quote, rows - 1), row(quote, rows)
    assert first.name == "Border round 1"
    assert "along the top and the bottom" in first.details[0]
    assert first.details[1] == "Chain 2 at each corner."
    assert second.details == ("(sc, ch 2, sc) in each corner space.",)


def test_of_several_blankets_it_says_which() -> None:
    quote = sample_quote(sample_order(quantity=2))
    assert row(quote, made_rows(quote).of_one + 1).name == "Row 1 of blanket 2"


def test_a_ball_is_told_where_it_may_end_and_nowhere_else() -> None:
    quote = sample_quote()
    assert row(quote, 58).balls == (
        "Skein 1 of oat may end about here; it is expected to in row 58.",
    )
    assert row(quote, 49).balls == ()
    assert row(quote, 104).balls == ("Skein 2 of oat may end about here; it should last.",)
