"""Stripes that are worked once each, fit to the length: by hand, and against every other split."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.order.in_rows import Section, StopAt, Stripe
from quoting.core.plan.fitted import fitted_rows
from quoting.core.plan.rows.stripes import Striping, stripe_body
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.weighing.calmer_stripes import calmer_stripes
from tests.examples import (
    TODAY,
    rows_of,
    sample_design,
    sample_order,
    sample_quote,
    section,
    stripes,
)

FIVE = ("teal", "rust", "oat", "teal", "rust")


def fitted(*parts: tuple[str, int], share: float | None = None) -> Section:
    """Return a section of stripes with rows in proportion."""
    worked = tuple(Stripe(colour=colour, rows=rows) for colour, rows in parts)
    return Section(stripes=worked, share=share, fitted=True)


def striped(height_cm: float, *sections: Section, **changes: Any) -> Striping:
    """Return the rows of a body, each 1 cm high."""
    design = sample_design(**{"first_rows": (), "sections": sections, **changes})
    return stripe_body(rows_of(design), design, height_cm, lambda _: 1.0)


def bands(striping: Striping) -> list[tuple[str, int]]:
    """Return the runs of one colour, bottom up."""
    return [(c, len(list(run))) for c, run in groupby(row.colour for row in striping.rows)]


def test_five_equal_stripes_are_shared_over_the_rows_without_a_miss_that_adds_up() -> None:
    """By hand: 103 / 5 = 20.6, so that they end at 20.6, 41.2, 61.8, 82.4 and 103 rows."""
    found = striped(103, fitted(*((colour, 1) for colour in FIVE)))
    assert bands(found) == list(zip(FIVE, (21, 20, 21, 20, 21), strict=True))
    assert found.repeats == (1,)


def test_rows_are_proportions_of_stripes_that_are_fit() -> None:
    """By hand: 1 : 2 : 1 of 100 rows, whether written as 1, 2, 1 or as 10, 20, 10."""
    for times in (1, 10):
        found = striped(100, fitted(("teal", times), ("rust", 2 * times), ("oat", times)))
        assert bands(found) == [("teal", 25), ("rust", 50), ("oat", 25)]


def test_rows_worked_once_and_exact_repeats_leave_the_rest_to_be_fit() -> None:
    """By hand: 40 cm less 2 rows at each end and 3 repeats of 2 leave 30 cm, halved."""
    found = striped(
        40,
        section("teal", rows=2, repeats=3),
        fitted(("rust", 1), ("teal", 1)),
        first_rows=stripes("oat", rows=2),
        last_rows=stripes("oat", rows=2),
    )
    assert bands(found) == [("oat", 2), ("teal", 6), ("rust", 15), ("teal", 15), ("oat", 2)]


@pytest.mark.parametrize("stop_at", StopAt)
def test_what_whole_repeats_miss_of_their_share_is_made_up_by_what_is_fit(stop_at: StopAt) -> None:
    """By hand: half of 43 cm is 4 repeats of 5, which leaves 23 rows."""
    found = striped(
        43, section("oat", rows=5, share=1), fitted(("rust", 1), share=1), stop_at=stop_at
    )
    assert bands(found) == [("oat", 20), ("rust", 23)]


def test_two_sections_that_are_fit_share_by_what_they_were_given() -> None:
    found = striped(40, fitted(("oat", 7), share=1), fitted(("rust", 1), ("teal", 1), share=3))
    assert bands(found) == [("oat", 10), ("rust", 15), ("teal", 15)]


def test_stripes_that_are_fit_to_no_share_have_a_row_each() -> None:
    found = striped(12, fitted(("oat", 1), ("rust", 3), share=0), section("teal", share=1))
    assert bands(found) == [("oat", 1), ("rust", 1), ("teal", 10)]


def test_a_stripe_that_would_come_to_less_than_a_row_has_one_and_the_others_the_rest() -> None:
    """By hand: 1 in 1,000 of 41 rows is none; 40 are left."""
    assert bands(striped(41, fitted(("oat", 1), ("rust", 999)))) == [("oat", 1), ("rust", 40)]


def test_a_height_too_low_for_a_row_of_each_stripe_is_refused_with_the_least() -> None:
    assert len(striped(5, fitted(*((colour, 9) for colour in FIVE))).rows) == 5
    with pytest.raises(Refused, match="height-too-small") as refused:
        striped(4.9, fitted(*((colour, 9) for colour in FIVE)))
    assert refused.value.mistakes[0].facts["smallest_body_cm"] == 5


def test_stripes_that_are_fit_have_no_repeats_of_their_own() -> None:
    with pytest.raises(Refused, match="fitted-and-repeats"):
        Section(stripes=stripes("oat"), repeats=2, fitted=True)


stripe_parts = st.lists(st.tuples(st.integers(1, 60), st.floats(0.3, 3)), min_size=1, max_size=40)


@given(stripe_parts, st.floats(1, 20))
def test_fitted_stripes_end_within_half_a_row_of_where_they_should(
    parts: Sequence[tuple[int, float]], times: float
) -> None:
    """Also of different heights: the whole misses the room by half of the last stripe's row."""
    rows, heights = zip(*parts, strict=True)
    room = times * sum(heights)
    found = fitted_rows(rows, heights, room)
    assert min(found) >= 1
    filled = sum(n * height for n, height in zip(found, heights, strict=True))
    if all(n > 1 for n in found):
        assert abs(filled - room) <= heights[-1] / 2 + 1e-6


@given(st.lists(st.integers(1, 60), min_size=1, max_size=40), st.integers(0, 400))
def test_of_one_height_the_rows_fill_the_room_and_keep_their_order_of_size(
    rows: Sequence[int], more: int
) -> None:
    found = fitted_rows(rows, [1.0] * len(rows), len(rows) + more)
    assert sum(found) == len(rows) + more
    for mine, his in zip(rows, found, strict=True):
        for other, others in zip(rows, found, strict=True):
            assert mine > other or his <= others + 1


def test_stripes_that_are_fit_have_their_colours_where_they_were_put() -> None:
    """However many their ends: no calmer order of the colours is offered."""
    many = fitted(*((colour, 1) for colour in ("teal", "rust", "oat", "rust") * 16))
    quote = sample_quote(sample_order(design=sample_design(sections=(many,))))
    assert quote.estimate.ends >= MANY_ENDS
    assert calmer_stripes(quote, today=TODAY) == ()
