"""Rows are folded into steps without loss, the longest repeats first, in work as their number."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.estimate.row_guide import Act
from quoting.core.guide import steps as folding
from quoting.core.guide.guide import guide_of
from quoting.core.guide.steps import LONGEST, agreements, steps_of
from quoting.core.guide.stripes import Stripe
from quoting.core.plan.passes import Edge, Pass, Work
from tests.examples import sample_design, sample_order, sample_quote, section, stripes

ACTS = st.sampled_from([None, Act.START, Act.CARRY_UP])
ENDINGS = st.sampled_from([None, Act.WAIT, Act.CUT])
TOKENS = st.tuples(st.sampled_from("abc"), ACTS, ENDINGS)


def some_stripes(tokens: list[tuple[str, Act | None, Act | None]]) -> list[Stripe]:
    """Return stripes of one row each, in these colours, with these acts."""
    return [
        Stripe(at=index, rows=1, worked=_row(index + 2, colour), begins=begins, ends=ends)
        for index, (colour, begins, ends) in enumerate(tokens)
    ]


def _row(number: int, colour: str) -> Pass:
    return Pass(
        work=Work.ROW,
        number=number,
        colour=colour,
        stitch="hdc",
        stitches={"hdc": 98},
        starts=Edge.START,
        ends=Edge.FAR,
        height_cm=1.0,
    )


def unfolded(stripes: list[Stripe]) -> list[tuple[str, Act | None, Act | None]]:
    """Work the steps of stripes, as each says how the first and the last repeat differ."""
    done = []
    for step in steps_of(stripes):
        for time in range(step.times):
            for part in step.parts:
                begins = part.begins if time == 0 else part.begins_again
                ends = part.ends_last if time == step.times - 1 else part.ends
                done.append((part.worked.colour, begins, ends))
    return done


@given(st.lists(TOKENS, min_size=1, max_size=60))
def test_steps_are_all_the_stripes_each_with_its_own_handling(
    tokens: list[tuple[str, Act | None, Act | None]],
) -> None:
    assert unfolded(some_stripes(tokens)) == tokens


@given(st.lists(st.sampled_from("ab"), min_size=1, max_size=40))
def test_how_far_each_place_agrees_with_the_beginning_is_as_counted(items: list[str]) -> None:
    def counted(place: int) -> int:
        pairs = zip(items, items[place:], strict=False)
        return next((at for at, (a, b) in enumerate(pairs) if a != b), len(items) - place)

    assert agreements(items) == [counted(place) for place in range(len(items))]


@pytest.mark.parametrize(
    ("colours", "lengths"),
    [
        ("abcabcabc", [(3, 3)]),
        ("abacabac", [(4, 2)]),
        ("ababcababcababc", [(5, 3)]),
        ("xabcabcaby", [(1, 1), (3, 2), (1, 1), (1, 1), (1, 1)]),
        ("abcd", [(1, 1)] * 4),
    ],
)
def test_the_repeat_that_covers_most_is_taken(colours: str, lengths: list[tuple[int, int]]) -> None:
    found = steps_of(some_stripes([(colour, None, None) for colour in colours]))
    assert [(len(step.parts), step.times) for step in found] == lengths


def test_stripes_whose_yarn_is_handled_otherwise_in_the_middle_are_not_folded_into_one() -> None:
    carried, cut = ("a", Act.CARRY_UP, Act.WAIT), ("a", Act.START, Act.CUT)
    other = ("b", None, None)
    tokens = [carried, other, carried, other, cut, other, carried, other]
    assert unfolded(some_stripes(tokens)) == tokens
    assert next(step.times for step in steps_of(some_stripes(tokens))) < 4


@pytest.mark.parametrize("length", [LONGEST, LONGEST + 1])
def test_repeats_of_up_to_the_longest_are_found(length: int) -> None:
    tokens = [(str(place), None, None) for place in range(length)] * 3
    found = list(steps_of(some_stripes(tokens)))
    assert (len(found) == 1) == (length <= LONGEST)
    assert unfolded(some_stripes(tokens)) == tokens


def looked_at(rows: int, monkeypatch: pytest.MonkeyPatch, tokens: str) -> int:
    """Return how many stripes are compared while so many are folded."""
    seen = 0

    def counting(items: Any) -> list[int]:
        nonlocal seen
        seen += len(items)
        return agreements(items)

    goes_on = folding._goes_on

    def counted(stripes: Any, works: list[Hashable], first: int, start: int, length: int) -> bool:
        nonlocal seen
        seen += length
        return goes_on(stripes, works, first, start, length)

    monkeypatch.setattr(folding, "agreements", counting)
    monkeypatch.setattr(folding, "_goes_on", counted)
    list(steps_of(some_stripes([(tokens[n % len(tokens)], None, None) for n in range(rows)])))
    monkeypatch.undo()
    return seen


@pytest.mark.parametrize("tokens", ["abc", "aab", "abaababaabaab", "abcdefghij" * 7 + "z"])
def test_the_work_is_in_proportion_to_the_rows(
    tokens: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    few, many = (looked_at(rows, monkeypatch, tokens) for rows in (300, 3_000))
    assert many <= 12 * few
    assert many <= 3_000 * (2 * LONGEST + 20)


def test_the_cot_blanket_is_told_in_four_steps_and_row_1_alone() -> None:
    steps = guide_of(sample_quote()).steps
    assert [(step.at, step.after, step.times) for step in steps] == [
        (0, 1, 1),
        (1, 2, 1),
        (2, 104, 34),
        (104, 105, 1),
    ]
    assert 50 in steps[2]
    assert 104 not in steps[2]


def test_rows_of_one_colour_are_one_step_but_row_1_which_is_worked_into_the_chain() -> None:
    plain = sample_design(
        first_rows=stripes("teal", rows=5), sections=(section("teal", rows=7, repeats=3),)
    )
    steps = guide_of(sample_quote(sample_order(design=plain))).steps
    assert [(step.at, step.after) for step in steps][:3] == [(0, 1), (1, 2), (2, 27)]
