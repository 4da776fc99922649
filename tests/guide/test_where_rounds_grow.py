"""A circle and a hexagon worked as their rows at hand say: every stitch inside, and no more."""

from __future__ import annotations

import re

import pytest

from quoting.core.guide.guide import guide_of
from quoting.core.making.made_rows import made_rows
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import Counting
from quoting.wording import speech_of
from quoting.wording.guide_rounds import rounds_sentences
from quoting.wording.row_at_hand import row_at_hand
from tests.constructed import constructed_quote, from_centre

STITCHES = ["sc", "hdc", "dc", "tr"]
ROUNDS = range(2, 30)


def quote_in(stitch: str, counting: Counting) -> Quote:
    return constructed_quote(from_centre(counting, rounds=30), stitch=stitch, border=())


def told(quote: Quote, number: int) -> str:
    """Return how a round is worked, as the row at hand tells it."""
    at_hand = row_at_hand(guide_of(quote), made_rows(quote), number, speech_of(quote.workshop))
    return at_hand.details[0]


def before(quote: Quote) -> list[str]:
    plan = quote.plan
    stitch = plan.rows[0].stitch
    return list(rounds_sentences(plan, stitch, quote.workshop, speech_of(quote.workshop)))


def made(words: str, inside: int) -> list[int]:
    """Return into how many stitches inside how many are worked, one number for each inside."""
    if found := re.match(r"(\d+) \S+ in each stitch", words):
        return [int(found[1])] * inside
    whole: list[int] = []
    for part in words.lower().rstrip(".").split("; "):
        again = re.fullmatch(r"\((.*)\) (\d+) times", part)
        run = again[1] if again else part
        one: list[int] = []
        for clause in run.split(", "):
            ones = re.match(r"one \S+ in (?:the|each of the) (?:first|next|last) ?(\d*)", clause)
            several = re.match(r"(\d+) \S+ in the next", clause)
            assert ones or several, clause
            one += [1] * int(ones[1] or 1) if ones else [int(several[1])]  # type: ignore[index]
        whole += one * (int(again[2]) if again else 1)
    return whole


@pytest.mark.parametrize("stitch", STITCHES)
def test_a_circle_is_worked_into_every_stitch_inside_and_comes_to_its_count(stitch: str) -> None:
    quote = quote_in(stitch, Counting.CIRCLE)
    for number in ROUNDS:
        inside, count = (quote.plan.rows[n].stitches[stitch] for n in (number - 2, number - 1))
        work = made(told(quote, number), inside)
        assert (len(work), sum(work)) == (inside, count)


@pytest.mark.parametrize("stitch", STITCHES)
def test_no_increase_of_a_circle_lies_over_one_of_the_round_inside(stitch: str) -> None:
    """After round 2, where all are two in one, and round 3, each moves half the way to the next."""
    quote = quote_in(stitch, Counting.CIRCLE)
    growth = quote.plan.rows[0].stitches[stitch]
    for number in range(5, 30):
        inner = made(told(quote, number - 1), growth * (number - 2))
        outer = made(told(quote, number), growth * (number - 1))
        over = [count for count in inner for _ in range(count)]
        assert not [n for n, count in enumerate(outer) if count > 1 and over[n] > 1]


@pytest.mark.parametrize("stitch", STITCHES)
def test_a_hexagon_is_worked_round_six_corners_and_comes_to_its_count(stitch: str) -> None:
    quote = quote_in(stitch, Counting.HEXAGON)
    for number in ROUNDS:
        words = told(quote, number)
        corner = int(words.split(maxsplit=1)[0])
        found = re.search(r"in (?:the (one)|each of the (\d+)) between two corners", words)
        between = int(found[2] or 1) if found else 0
        inside, count = (quote.plan.rows[n].stitches[stitch] for n in (number - 2, number - 1))
        assert 6 * (between + 1) == inside
        assert 6 * (between + corner) == count


@pytest.mark.parametrize(
    ("stitch", "first", "corner"),
    [
        ("sc", "6 sc in it, each of them one of the 6 corner stitches", "the second of the 2 is"),
        ("hdc", "12 hdc in it, every second of them one of the 6", "the middle one of the 3 is"),
        ("dc", "12 dc in it, every second of them one of the 6", "the middle one of the 3 is"),
        (
            "tr",
            "18 tr in it, every third of them one of the 6",
            "the second of the 4, in every other round the third, is",
        ),
    ],
)
def test_a_hexagon_says_where_its_corners_lie_and_where_they_go_on(
    stitch: str, first: str, corner: str
) -> None:
    """Common practice, no source: increases lie over one another at six corners."""
    quote = quote_in(stitch, Counting.HEXAGON)
    begun, later, *_ = before(quote)
    assert first in begun
    assert f"{corner} the corner stitch of the next round." in later


def test_of_four_at_a_corner_the_second_and_the_third_take_turns() -> None:
    quote = quote_in("tr", Counting.HEXAGON)
    assert "; the second of the 4 is the corner" in told(quote, 2)
    assert "; the third of the 4 is the corner" in told(quote, 3)


def test_a_circle_says_that_its_increases_move_from_round_to_round() -> None:
    """Common practice, no source: increases over one another would make corners."""
    text = " ".join(before(quote_in("dc", Counting.CIRCLE)))
    assert "12 times 2 dc in one, spread evenly: in round 2 in each stitch, in round 3" in text
    assert "Begin every other round with half of what lies between two of these" in text


def test_one_chain_that_begins_a_round_is_told_as_one() -> None:
    text = " ".join(before(quote_in("sc", Counting.HEXAGON)))
    assert "A round begins with 1 chain, which does not count as a stitch, and closes" in text
