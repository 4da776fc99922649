"""Strands with endless balls: where yarn is carried up, where it is cut, and how many wait."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from quoting.core.estimate.ball_walk import walk_colour
from quoting.core.estimate.estimate import estimate_plan
from quoting.core.estimate.strands import Carry, Strand, Why, most_waiting, visits_by_colour
from quoting.core.estimate.yarn_needed import yarn_by_pass
from quoting.core.plan.passes import Edge, Plan
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits
from tests.examples import (
    band,
    sample_design,
    sample_order,
    sample_workshop,
    section,
    stripes,
)

FIVE = ("oat", "teal", "rust", "plum", "moss")


def worked(habits: Habits | None = None, blankets: int = 1, **changes: Any) -> list[Strand]:
    """Return the strands of a design without first rows or border, unless told otherwise."""
    design = sample_design(**{"first_rows": (), "border": (), **changes})
    order = sample_order(design=design, extras=())
    plan = plan_order(order, sample_workshop())
    limits = habits or Habits()
    visits = visits_by_colour(plan, limits, yarn_by_pass(plan, order))
    walks = [
        walk_colour(colour, line, tail_m=0.15, blankets=blankets) for colour, line in visits.items()
    ]
    return [strand for walk in walks for strand in walk.strands]


def carries(strands: list[Strand]) -> int:
    return sum(len(strand.carries) for strand in strands)


def rotation(colours: int, rows: int) -> list[Strand]:
    return worked(sections=(section(*FIVE[:colours], rows=rows, repeats=6),))


def test_one_colour_is_one_strand_from_chain_to_border() -> None:
    (strand,) = worked(sections=(section("oat", repeats=9),), border=(band(),))
    assert strand.starts.edge is Edge.FAR  # where the chain begins
    assert (strand.why, strand.carries) == (Why.FINISHED, ())


def test_the_cot_blanket_needs_no_cut_at_all() -> None:
    order, workshop = sample_order(), sample_workshop()
    estimate = estimate_plan(plan_order(order, workshop), order, workshop)
    assert estimate.ended(Why.CUT) == 0
    assert (estimate.ended(Why.RAN_OUT), estimate.ends, estimate.carries) == (3, 12, 100)


def test_two_colours_in_single_rows_never_meet_and_are_cut_each_time() -> None:
    strands = rotation(2, 1)
    assert (len(strands), carries(strands)) == (12, 0)
    assert [strand.why for strand in strands].count(Why.CUT) == 10


def test_two_colours_in_stripes_of_two_rows_are_carried() -> None:
    strands = rotation(2, 2)
    assert (len(strands), carries(strands)) == (2, 10)


def test_a_carry_over_more_rows_than_the_limit_is_a_cut() -> None:
    six_between: dict[str, Any] = {
        "sections": (section("oat", "teal", "rust", "plum", rows=2, repeats=3),)
    }
    high = Habits(carry_rows=6, carry_height_cm=50)
    assert carries(worked(high, **six_between)) == 8
    assert carries(worked(Habits(carry_rows=5, carry_height_cm=50), **six_between)) == 0
    assert carries(worked(Habits(carry_rows=50, carry_height_cm=5), **six_between)) == 0


def test_a_carry_takes_a_tenth_more_yarn_than_it_climbs() -> None:
    """By hand: two rows of 0.95 cm, so 2 x 0.95 x 1.1 = 2.09 cm."""
    first = worked(sections=(section("teal", "rust", "oat", repeats=2),))[0].carries[0]
    assert first.yarn_m == pytest.approx(0.0209)
    assert (first.from_pass, first.to_pass, first.edge) == (1, 4, Edge.FAR)


def test_a_limit_met_exactly_still_carries() -> None:
    rows: dict[str, Any] = {"sections": (section("teal", "rust", "oat", repeats=4),)}
    assert carries(worked(Habits(carry_rows=2, carry_height_cm=1.9), **rows)) == 9
    assert carries(worked(Habits(carry_rows=2, carry_height_cm=1.89), **rows)) == 0


def test_a_border_counts_as_a_row_and_may_take_up_what_waits() -> None:
    (oat, rust) = worked(
        sections=(section("oat", "rust", rows=2, repeats=1),), border=(band(colour="oat"),)
    )
    assert (len(oat.carries), rust.why) == (1, Why.FINISHED)
    assert oat.carries[0].to_pass == 5


def test_between_border_rounds_every_colour_waits_at_the_right_place() -> None:
    rounds = tuple(band(colour=colour) for colour in ("teal", "rust", "teal", "rust"))
    strands = worked(sections=(section("oat", repeats=5),), border=rounds)
    assert (len(strands), carries(strands)) == (3, 2)


def test_nothing_is_carried_from_one_blanket_to_the_next() -> None:
    pair = worked(blankets=2, sections=(section("oat", "teal", rows=2, repeats=3),))
    assert [strand.starts.blanket for strand in pair] == [0, 1, 0, 1]
    assert all(strand.starts.blanket == strand.ends.blanket for strand in pair)


def test_a_yarn_whose_blanket_is_done_is_fastened_off_and_not_cut() -> None:
    of_one_colour = worked(blankets=3, sections=(section("oat", repeats=3),))
    assert [strand.why for strand in of_one_colour] == [Why.FINISHED] * 3
    striped = worked(blankets=2, sections=(section("oat", "teal", repeats=2),))
    assert [strand.why for strand in striped].count(Why.FINISHED) == 2 * 2
    assert [strand.why for strand in striped].count(Why.CUT) == 2 * 2


def test_a_first_row_moves_every_colour_to_the_other_edge() -> None:
    strands = worked(first_rows=stripes("oat"), sections=(section("teal", "rust", repeats=3),))
    assert len(strands) == 1 + 6


def test_yarns_that_meet_are_counted_at_each_edge() -> None:
    assert most_waiting(rotation(1, 1)) == 0
    assert most_waiting(rotation(2, 2)) == 2
    assert most_waiting(rotation(3, 1)) == 2
    assert most_waiting(rotation(3, 2)) == 3


def carried(*moves: tuple[int, int]) -> Strand:
    """Return a strand that is carried up the start edge, each time from a pass to a later one."""
    (strand,) = worked(sections=(section("oat", repeats=2),))
    ups = tuple(Carry(left, taken, Edge.START, 0.02) for left, taken in moves)
    return replace(strand, carries=ups)


def test_a_yarn_that_is_taken_up_waits_no_longer() -> None:
    first, second, third = carried((0, 2), (2, 4), (4, 6)), carried((3, 5)), carried((5, 7))
    assert most_waiting([first]) == 1
    assert most_waiting([first, second]) == 2
    assert most_waiting([first, second, third]) == 2


def test_two_blankets_alike_have_no_more_yarns_waiting_than_one() -> None:
    def waiting(blankets: int) -> int:
        return most_waiting(
            worked(blankets=blankets, sections=(section("teal", "rust", "oat", repeats=5),))
        )

    assert waiting(2) == waiting(1) == 2


def test_the_pieces_of_an_order_are_worked_one_after_the_other() -> None:
    order, workshop = sample_order(quantity=3), sample_workshop()
    plan: Plan = plan_order(order, workshop)
    strands = estimate_plan(plan, order, workshop).strands
    starts = [(s.starts.blanket, s.starts.pass_index) for s in strands]
    assert starts == sorted(starts)
    assert {blanket for blanket, _ in starts} == {0, 1, 2}
