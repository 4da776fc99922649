"""Within a row is in it; at its edge is at the end of it; and of several blankets, of which."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.estimate.strands import Point
from quoting.core.plan.passes import Edge, Plan, Work
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits
from quoting.wording import edge_words, pass_words, point_words, speech_of
from quoting.wording.rows_and_edges import (
    at_edge_words,
    at_place_words,
    edges_explained,
    passes_label,
)
from quoting.wording.ticks import counted_ticks
from tests.constructed import constructed_quote, from_centre, squares
from tests.examples import sample_order, sample_workshop

SPEECH = speech_of(sample_workshop())


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_order(sample_order(), sample_workshop())


@pytest.mark.parametrize(
    ("index", "edge", "said"),
    [
        (3, Edge.WITHIN, "in row 3"),
        (3, Edge.START, "at the end of row 3"),
        (3, Edge.FAR, "at the end of row 3"),
        (0, Edge.FAR, "at the end of foundation chain"),
        (-1, Edge.WITHIN, "in border round 1"),
        (-1, Edge.START, "at the end of border round 1"),
    ],
)
def test_a_place_within_a_row_is_in_it_and_one_at_an_edge_at_its_end(
    index: int, edge: Edge, said: str, plan: Plan
) -> None:
    point = Point(blanket=0, pass_index=index % len(plan.passes), edge=edge)
    assert point_words(point, plan) == said


@pytest.mark.parametrize("blanket", [1, 2])
def test_a_place_in_a_later_blanket_says_in_which(blanket: int, plan: Plan) -> None:
    point = Point(blanket=blanket, pass_index=7, edge=Edge.WITHIN)
    assert point_words(point, plan) == f"in row 7 of blanket {blanket + 1}"
    assert point_words(point._replace(blanket=0), plan) == "in row 7"


@pytest.mark.parametrize(
    ("edge", "work", "where"),
    [
        (Edge.START, Work.ROW, "the right-hand edge"),
        (Edge.FAR, Work.ROW, "the left-hand edge"),
        (Edge.FAR, Work.ROUND, "the left-hand edge"),
        (Edge.WITHIN, Work.ROW, "within the row"),
        (Edge.WITHIN, Work.ROUND, "within the round"),
        (Edge.WITHIN, Work.CHAIN, "within the chain"),
    ],
)
def test_an_edge_is_named_and_a_place_between_edges_says_within_what(
    edge: Edge, work: Work, where: str
) -> None:
    at = f"at {where}" if edge is not Edge.WITHIN else where
    assert (edge_words(edge, work, SPEECH), at_edge_words(edge, work, SPEECH)) == (where, at)


@pytest.mark.parametrize("work", [Work.ROW, Work.ROUND])
def test_for_a_left_handed_maker_the_edges_change_their_names(work: Work) -> None:
    mirrored = replace(SPEECH, left_handed=True)
    for edge in (Edge.START, Edge.FAR):
        assert edge_words(edge, work, mirrored) == edge_words(edge.across, work, SPEECH)


def test_how_edges_are_told_is_said_of_her_own_hand() -> None:
    mirrored = edges_explained(replace(SPEECH, left_handed=True))
    assert "begins at the right-hand edge." in edges_explained(SPEECH)
    assert "begins at the left-hand edge, as you work left-handed." in mirrored


def test_a_workshops_habit_says_which_hand() -> None:
    left = sample_workshop(habits=Habits(left_handed=True))
    assert speech_of(left).left_handed
    assert not speech_of(sample_workshop()).left_handed


def test_rows_and_rounds_are_called_by_their_numbers_and_the_chain_by_none(plan: Plan) -> None:
    chain, first, second, last = (plan.passes[at] for at in (0, 1, 2, -1))
    assert [pass_words(each) for each in (chain, first, last)] == [
        "foundation chain",
        "row 1",
        "border round 1",
    ]
    assert passes_label((chain,)) == "Foundation chain"
    assert passes_label((first, second)) == "Rows 1–2"


def test_whether_it_is_in_rows_is_asked_of_its_rows_and_not_of_a_chain(plan: Plan) -> None:
    """What begins in a corner has rows and edges, but no chain before them."""
    bare = replace(plan, foundation_chain=0)
    worked = bare.rounds[0]
    assert at_place_words(worked.starts, worked, bare, SPEECH) == "at the left-hand edge"
    assert counted_ticks(bare) == ("row", "rows and rounds")
    of_rounds = [constructed_quote(body).plan for body in (from_centre(), squares())]
    assert [each.in_rows for each in (plan, bare, *of_rounds)] == [True, True, False, False]
