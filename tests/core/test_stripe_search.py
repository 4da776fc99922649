"""Repeats that leave few ends: counted by working them, and against every repeat there is."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.weighing import stripe_search
from quoting.core.weighing.stripe_search import (
    LONGEST,
    LONGEST_EVER,
    RUN_GROWS,
    SHARE_DRIFT,
    TRIES_IN_ALL,
    Repeat,
    calmer_repeats,
    carries,
    cuts_of,
)

repeats = st.lists(st.sampled_from("abcd"), min_size=1, max_size=10)
limits = st.integers(0, 6)


def cuts_worked(repeat: list[str], carry_rows: int, rounds: int = 8) -> int:
    """Return the cuts of one round, as a maker finds them: which yarn hangs at which edge.

    Counted over the last rounds but one of a long blanket, in pairs, as an odd repeat begins at the
    other edge every second time.
    """
    hangs: dict[str, tuple[int, int]] = {}
    cuts = [0] * rounds
    for row in range(rounds * len(repeat)):
        colour = repeat[row % len(repeat)]
        begins, ends = row % 2, 1 - row % 2
        if colour in hangs:
            edge, left_at = hangs[colour]
            waited = row - left_at - 1
            cuts[row // len(repeat)] += bool(waited) and (edge != begins or waited > carry_rows)
        hangs[colour] = (ends, row)
    assert cuts[-1] == cuts[-2]
    return cuts[-1]


@given(repeats, limits)
def test_the_cuts_of_a_repeat_are_those_a_maker_finds_when_she_works_it(
    repeat: list[str], carry_rows: int
) -> None:
    assert cuts_of(repeat, carry_rows) == cuts_worked(repeat, carry_rows)


@pytest.mark.parametrize(
    ("colours", "rows", "uncut"),
    [(2, 1, False), (3, 1, True), (4, 1, False), (5, 1, True), (2, 2, True), (2, 3, False)],
)
def test_colours_of_so_many_rows_rotate_uncut_where_the_rows_between_are_even(
    colours: int,
    rows: int,
    uncut: bool,  # noqa: FBT001 - a parameter
) -> None:
    """Source: *For Dummies*, how to carry yarn; parity."""
    repeat = [colour for colour in "abcde"[:colours] for _ in range(rows)]
    assert (cuts_of(repeat, 4) == 0) is uncut


@pytest.mark.parametrize(("colours", "rows"), [(3, 3), (4, 2)])
def test_even_rows_between_are_cut_where_they_are_more_than_the_limit(
    colours: int, rows: int
) -> None:
    repeat = [colour for colour in "abcde"[:colours] for _ in range(rows)]
    assert cuts_of(repeat, 4) == colours
    assert cuts_of(repeat, 6) == 0


def test_the_next_row_is_never_cut_and_an_odd_wait_always_is() -> None:
    assert carries(1, 0)
    assert not carries(2, 100)
    assert carries(3, 2)
    assert not carries(3, 1)


@settings(max_examples=60)
@given(repeats, limits)
def test_a_calmer_repeat_keeps_the_colours_and_their_shares_and_halves_the_cuts(
    asked: list[str], carry_rows: int
) -> None:
    most = cuts_of(asked, carry_rows) / len(asked) / 2
    for repeat in calmer_repeats(asked, carry_rows):
        rows = list(repeat.colours)
        assert set(rows) == set(asked)
        for colour in set(asked):
            share, wanted = rows.count(colour) / len(rows), asked.count(colour) / len(asked)
            assert abs(share - wanted) <= SHARE_DRIFT * wanted + 1e-9
        assert repeat.cuts == cuts_worked(rows, carry_rows)
        assert repeat.cuts_a_row <= most
        assert runs_worked(rows) <= RUN_GROWS * runs_worked(asked)
        assert 2 <= len(rows) <= LONGEST
        assert all(rows != rows[:n] * (len(rows) // n) for n in range(1, len(rows)))


def runs_worked(repeat: list[str]) -> int:
    """Return the longest run of one colour, as seen in a repeat that is worked twice over."""
    if len(set(repeat)) == 1:
        return len(repeat)
    return max(len(list(run)) for _, run in itertools.groupby([*repeat, *repeat]))


def fewest_cuts_a_row(colours: str, carry_rows: int, longest: int) -> float:
    """Return the fewest cuts a row of every repeat of the colours in equal shares, runs of two."""
    return min(
        cuts_worked(list(rows), carry_rows) / len(rows)
        for length in range(len(colours), longest + 1, len(colours))
        for rows in set(itertools.permutations(sorted(colours * (length // len(colours)))))
        if runs_worked(list(rows)) <= RUN_GROWS
    )


@pytest.mark.parametrize(("colours", "carry_rows"), [("ab", 4), ("ab", 0), ("abcd", 4)])
def test_nothing_calmer_is_missed_among_all_short_repeats(colours: str, carry_rows: int) -> None:
    found = min(repeat.cuts_a_row for repeat in calmer_repeats(list(colours), carry_rows))
    assert found <= fewest_cuts_a_row(colours, carry_rows, 8)


def test_three_single_rows_are_calm_already_and_nothing_is_calmer() -> None:
    assert cuts_of("abc", 4) == 0
    assert all(repeat.cuts == 0 for repeat in calmer_repeats(list("abc"), 4))


def test_a_repeat_counts_its_changes_of_colour_and_its_cuts_for_each_row() -> None:
    repeat = Repeat(colours=("a", "a", "b", "a"), cuts=2)
    assert repeat.stripes == 2
    assert repeat.cuts_a_row == 0.5
    assert repeat.distance_from(["a", "b"]) == 0.75


@pytest.mark.parametrize("rows", [1, 7, 40, 1000])
def test_the_search_ends_after_so_many_rows_put_down_however_long_the_repeat(
    rows: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    put_down = 0
    overdue = stripe_search._Search._overdue

    def counted(self: stripe_search._Search, *args: object) -> int:
        nonlocal put_down
        put_down += 1
        return overdue(self, *args)  # type: ignore[arg-type]

    monkeypatch.setattr(stripe_search._Search, "_overdue", counted)
    asked = [colour for colour in "abcdefgh" for _ in range(rows)]
    found = calmer_repeats(asked, 4)
    assert 0 < put_down <= TRIES_IN_ALL
    assert all(len(repeat.colours) <= LONGEST_EVER for repeat in found)


def test_with_no_tries_nothing_is_found() -> None:
    assert calmer_repeats(list("ab"), 4, 0) == []
