"""What a blanket closes on, and how far each side is off."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.order.resizing import Size
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.closing import APART_CM, Closing, Counted, closing_of
from quoting.core.workshop.rounds import Counting
from tests.examples import TODAY, sample_quote
from tests.motif_examples import (
    centre_order,
    motif_workshop,
    sample_centre,
    sample_squares,
    squares_order,
)

WORKSHOP = motif_workshop()


def test_rows_close_on_stitches_and_rows() -> None:
    counts = closing_of(sample_quote()).counts
    assert counts == {Counted.STITCHES: 98, Counted.ROWS: 103, Counted.BORDER_ROUNDS: 1}


def test_squares_close_on_columns_and_rows_and_are_off_by_unlike_amounts() -> None:
    """125.4 × 170.4 cm with a border of 2.7 (constructions, section 3); here it is of 2.85."""
    closing = closing_of(quote_order(squares_order(), WORKSHOP, today=TODAY))
    assert closing.counts == {
        Counted.COLUMNS: 8,
        Counted.MOTIF_ROWS: 11,
        Counted.MOTIFS: 88,
        Counted.BORDER_ROUNDS: 3,
    }
    assert closing.off_width_cm == pytest.approx(-4.3)
    assert closing.off_height_cm == pytest.approx(0.7)
    assert closing.meets_one_side_at_most


def test_squares_that_a_border_can_bring_to_both_sides_are_not_told_apart() -> None:
    body = replace(sample_squares(), columns=8, rows=11)
    order = squares_order(body=body, width_cm=126, height_cm=171)
    assert not closing_of(quote_order(order, WORKSHOP, today=TODAY)).meets_one_side_at_most


def test_only_whole_motifs_are_told_apart() -> None:
    closing = Closing(counts={}, off_width_cm=0.0, off_height_cm=2 * APART_CM)
    assert not closing.meets_one_side_at_most
    assert replace(closing, whole_motifs=True).meets_one_side_at_most


def test_a_piece_from_the_centre_closes_on_rounds_and_what_it_is_longer_by() -> None:
    closing = closing_of(quote_order(centre_order(), WORKSHOP, today=TODAY))
    assert closing.counts == {Counted.ROUNDS: 34, Counted.STARTS_ON: 26}


def test_it_may_be_held_against_another_size_than_its_own_order_asks() -> None:
    quote = sample_quote()
    closing = closing_of(quote, Size(width_cm=79, height_cm=100))
    assert closing.off_width_cm == pytest.approx(quote.plan.width_cm - 79)


def test_what_goes_by_its_width_alone_is_not_held_against_a_length() -> None:
    bodies = {shape: sample_centre(counting=shape) for shape in Counting}
    asked = {
        shape: closing_of(quote_order(centre_order(body=body), WORKSHOP, today=TODAY)).by_width
        for shape, body in bodies.items()
    }
    assert [shape for shape, by_width in asked.items() if by_width] == [
        Counting.CIRCLE,
        Counting.HEXAGON,
    ]
    assert not closing_of(quote_order(squares_order(), WORKSHOP, today=TODAY)).by_width
