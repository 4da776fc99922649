"""Carrying yarn up the side: which stripes can be worked without a cut."""

from __future__ import annotations

import pytest

from quoting.core.estimate.estimate import Estimate, estimate_plan
from quoting.core.estimate.strands import Why
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits
from tests.examples import sample_design, sample_order, sample_workshop, section

COLOURS = ("oat", "teal", "rust", "plum", "moss")


def worked(colours: int, rows: int, habits: Habits) -> Estimate:
    """Return the estimate of so many colours, each of so many rows, in turn."""
    design = sample_design(
        first_rows=(), border=(), sections=(section(*COLOURS[:colours], rows=rows, repeats=3),)
    )
    order, workshop = sample_order(design=design), sample_workshop(habits=habits)
    return estimate_plan(plan_order(order, workshop), order, workshop)


WIDE = Habits(carry_rows=6, carry_height_cm=10)


@pytest.mark.parametrize(
    ("colours", "rows", "carried"),
    [
        (2, 1, False),
        (3, 1, True),
        (4, 1, False),
        (5, 1, True),
        (2, 2, True),
        (2, 3, False),
        (3, 3, True),
        (4, 2, True),
    ],
)
def test_yarn_waits_at_the_right_edge_only_over_an_even_number_of_rows(
    colours: int,
    rows: int,
    carried: bool,  # noqa: FBT001 - a parameter
) -> None:
    """For Dummies (Wiley), how to carry yarn; parity: (k - 1) n rows between must be even."""
    found = worked(colours, rows, WIDE)
    assert found.carries == (2 * colours if carried else 0)
    assert found.ended(Why.CUT) == (0 if carried else 2 * colours)


@pytest.mark.parametrize(("colours", "rows"), [(3, 3), (4, 2)])
def test_six_rows_are_further_than_yarn_is_usually_carried(colours: int, rows: int) -> None:
    """Common practice, no source: the default limit is four rows."""
    assert worked(colours, rows, Habits()).carries == 0


def test_four_rows_are_not() -> None:
    """Common practice, no source."""
    assert worked(5, 1, Habits()).carries == 10


def test_a_tail_is_a_hands_breadth_and_a_half() -> None:
    """Common practice, no source: 15 cm (6 in)."""
    assert Habits().tail_cm == 15
    assert Habits().tail_m == pytest.approx(0.15)
