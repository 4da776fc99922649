"""A border with more or fewer stitches than the edge inside it tells how they are spread.

A side of n rounds has 4n - 1 stitches in a solid square of 3 a side, and 3n + (n - 1) stitches and
chains in clusters; of m motifs in a row it has m times that, and 2 at each join (common practice).
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from quoting.core.order.design import Corner
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Pattern
from quoting.wording import speech_of
from quoting.wording.guide import guide_paper
from quoting.wording.guide_corners import spread_words
from tests.constructed import constructed_quote, from_centre, motif_workshop, squares
from tests.examples import band, sample_design, sample_order, sample_quote, sample_workshop
from tests.guide.follower import listing
from tests.guide.squares_follower import lists

CHANGE = r"(\d+) times? (two in one|two together) along "


def first_round(quote: Quote) -> str:
    """Return what is told of the border's first round, stitches of a thousand and more plain."""
    told = lists(guide_paper(quote))
    steps = (told["Border"] if "Border" in told else told["Step by step"]).rows
    return next(step for step, *_ in steps if step.startswith("Border round 1")).replace(",", "")


def edge(step: str, where: str) -> int:
    """Return over how many stitches a side goes, by the words alone."""
    found = re.search(rf"(\d+) along {where}", step)
    assert found, step
    count = int(found[1])
    changed = re.search(f"{CHANGE}{where}", step)
    if changed is None:
        return count
    return count + int(changed[1]) * (1 if changed[2] == "two together" else -1)


@pytest.mark.parametrize("stitch", ["sc", "hdc", "dc"])
@pytest.mark.parametrize("counting", [Counting.SOLID, Counting.CLUSTERS])
def test_a_square_from_the_centre_tells_how_its_border_takes_up_its_sides(
    counting: Counting, stitch: str
) -> None:
    body = from_centre(counting, rounds=24)
    quote = constructed_quote(body, height_cm=60, border=(band(stitch, rounds=2),))
    n = len(quote.plan.rows)
    assert n == 24
    expected = 4 * n - 1 if counting is Counting.SOLID else 3 * n + (n - 1)
    step = first_round(quote)
    assert edge(step, "each side") == expected
    if "spread evenly" in step:
        assert ("chains counted as stitches" in step) is (counting is Counting.CLUSTERS)


def test_a_border_of_fewer_stitches_works_some_of_the_edge_together() -> None:
    step = first_round(constructed_quote(from_centre(rounds=24), height_cm=60))
    assert re.search(r"; \d+ times two together along each side spread evenly; chain 2 at", step)


def test_the_long_and_the_short_sides_of_a_rectangle_are_told_each() -> None:
    quote = constructed_quote(from_centre())
    counted = quote.plan.counted
    assert counted is not None
    step, short = first_round(quote), 4 * len(quote.plan.rows) - 1
    assert edge(step, "the top and the bottom") == short
    assert edge(step, "each side") == short + counted.extra


@pytest.mark.parametrize("counting", [Counting.SOLID, Counting.CLUSTERS])
def test_joined_motifs_are_taken_up_with_their_joins(counting: Counting) -> None:
    motif = replace(motif_workshop().motifs[0], counting=counting, one_side_cm=12)
    body, shop = squares(JoinMethod.WHIPSTITCH), motif_workshop(motif)
    quote = constructed_quote(body, shop, border=(band("hdc"),))
    step, of_one = first_round(quote), 19
    assert edge(step, "the top and the bottom") == 3 * of_one + 2 * 2
    assert edge(step, "each side") == 4 * of_one + 3 * 2
    assert "spread evenly" in step
    assert "2 stitches counted at each join" in step


@pytest.mark.parametrize("later", Corner)
def test_rounds_whose_corners_alone_make_them_longer_spread_nothing(later: Corner) -> None:
    bands = (band("sc", rounds=2), band("sc", corner=later, rounds=3))
    design = sample_design(border=bands)
    rounds = sample_quote(sample_order(design=design)).plan.rounds
    speech = speech_of(sample_workshop())
    assert [spread_words(worked, speech) for worked in rounds] == [""] * 5


def test_a_repeat_that_takes_more_than_the_corners_make_is_told_in_later_rounds() -> None:
    shells = Pattern(name="shells", like=Stitch.SC, multiple=8)
    shop = motif_workshop(patterns=(shells,))
    border = (band("dc"), band("shells", rounds=2))
    quote = constructed_quote(from_centre(rounds=24), shop, height_cm=60, border=border)
    first, second, third = quote.plan.rounds
    assert first.sides == (95,) * 4
    assert (second.sides, third.sides) == ((96,) * 4, (96,) * 4)
    rows = listing(guide_paper(quote), "Step by step").rows
    one, two, three = (step for step, _ in rows if step.startswith("Border"))
    assert "spread" not in one
    assert "; 1 time two together along each side, spread evenly; (" in two
    assert "; 2 times two together along each side, spread evenly; (" in three


def test_what_cannot_be_done_two_at_a_time_is_told_by_its_counts() -> None:
    worked = constructed_quote(from_centre(rounds=24), height_cm=60).plan.rounds[0]
    speech = speech_of(sample_workshop())
    thin = replace(worked, sides=(40,) * 4, edges=(95,) * 4)
    assert spread_words(thin, speech) == "40 over 95 stitches along each side, spread evenly"
    alone = replace(worked, sides=(95,), edges=(40,))
    assert spread_words(alone, speech) == "95 over 40 stitches, spread evenly"
