"""The guide of a piece from the centre, followed by its words, gives the plan's rounds and yarn."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.estimate.row_guide import Act
from quoting.core.guide.guide import guide_of
from quoting.core.order.design import EndsBecome
from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.rounds import Counting
from quoting.wording import speech_of
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Paper, Words
from tests.constructed import constructed_quote, from_centre, motif_workshop
from tests.examples import band
from tests.guide.follower import acts_of, all_blocks, handled, listing, read_stripes

NUMBER = r"([\d,]+)"


@dataclass(frozen=True)
class Round:
    """A round of the body as it was worked, and whether its yarn was begun and let go there."""

    number: int
    colour: str
    count: int
    begins: str
    ends: str


def follow(paper: Paper) -> Iterator[Round]:
    """Work the rounds of the body."""
    for step, _ in listing(paper, "Step by step").rows:
        if not step.startswith("Border"):
            yield from worked(step)


def worked(step: str) -> Iterator[Round]:
    sentence, _, yarn = step.removesuffix(".").partition(". ")
    found = re.fullmatch(r"Rounds? (\d+)(?: to (\d+))?(?:, |: )(.*)", sentence)
    assert found, step
    first, last = int(found[1]), int(found[2] or found[1])
    counts = re.search(
        rf"{NUMBER} dc(?: in {NUMBER} clusters)?(?: in round \d+, (\d+) dc more in each)?", found[3]
    )
    assert counts, step
    begun, more = int(counts[1].replace(",", "")), int(counts[3] or 0)
    stripes, times = _stripes(found[3])
    told = list(handled(yarn[:1].lower() + yarn[1:], stripes, times))  # type: ignore[arg-type]
    number = first
    for time in range(times):
        for stripe, clauses in zip(stripes, told, strict=True):
            rounds = stripe.rows or last - first + 1
            acts = {act for clause in clauses for act, _ in acts_of(clause, time, times)}
            for row in range(rounds):
                yield Round(
                    number,
                    stripe.colour,
                    begun + more * (number - first),
                    "".join(sorted(acts & {"start", "carry-up"})) if row == 0 else "",
                    "".join(sorted(acts & {"cut", "wait", "fasten-off"}))
                    if row == rounds - 1
                    else "",
                )
                number += 1
    assert number == last + 1


def _stripes(work: str) -> tuple[list[object], int]:
    """Read the colours of a step, whose counts are read by themselves."""
    told = work.partition("; ")[0].replace("round", "row")
    if re.search(r", [\d,]+ times$", told):
        return read_stripes(f"{told}; 1 dc each row")  # type: ignore[return-value]
    colour = work.partition(": ")[0]
    return read_stripes(f"{colour}: 1 dc")  # type: ignore[return-value]


def check(quote: Quote) -> None:
    done = list(follow(guide_paper(quote)))
    rows = quote.plan.rows
    assert [(r.number, r.colour, r.count) for r in done] == [
        (worked.number, worked.colour, worked.stitches["dc"]) for worked in rows
    ]
    acts = [(h.begins, h.ends) for h in guide_of(quote).handled[: len(rows)]]
    assert [(r.begins, r.ends) for r in done] == [
        (begins.value if begins else "", ends.value if ends else "") for begins, ends in acts
    ]


STRIPES = st.lists(
    st.builds(
        RoundStripe,
        colour=st.sampled_from(["teal", "rust", "oat"]),
        rounds=st.integers(1, 3),
    ),
    min_size=1,
    max_size=4,
)


@settings(max_examples=60)
@given(
    counting=st.sampled_from(Counting),
    stripes=STRIPES,
    rounds=st.integers(1, 40),
    extra=st.integers(0, 30),
    carries=st.booleans(),
)
def test_a_random_piece_is_worked_as_it_was_planned(
    *, counting: Counting, stripes: list[RoundStripe], rounds: int, extra: int, carries: bool
) -> None:
    longer = None if counting.goes_by_width else extra
    body = FromCentre(counting=counting, stripes=tuple(stripes), rounds=rounds, starts_on=longer)
    check(constructed_quote(body, motif_workshop(habits=Habits(carry_in_rounds=carries))))


def test_rounds_of_one_colour_are_one_line_however_many() -> None:
    plain = from_centre(stripes=(RoundStripe(colour="teal"),), rounds=200, starts_on=15)
    quote = constructed_quote(plain, border=())
    check(quote)
    assert [step for step, _ in listing(guide_paper(quote), "Step by step").rows] == [
        "Round 1, teal: 42 dc. Start it in the middle.",
        "Rounds 2 to 200, teal: 58 dc in round 2, 16 dc more in each round after it. Fasten it off "
        "at the join.",
    ]


def before(quote: Quote) -> str:
    texts = [b.texts for b in all_blocks(guide_paper(quote).blocks) if isinstance(b, Words)]
    return " ".join(texts[0])


@pytest.mark.parametrize(
    ("counting", "side", "said"),
    [
        (Counting.SOLID, 60, "; 12 dc in it, chain 2 after every 3 of them."),
        (Counting.SOLID, 60, "one dc in each stitch, (2 dc, ch 2, 2 dc) in each corner space."),
        (Counting.CLUSTERS, 60, "; 4 clusters of 3 dc in it, chain 2 after each."),
        (Counting.CLUSTERS, 60, "(3 dc, ch 2, 3 dc) in each corner space, 3 dc in each space"),
        (Counting.CIRCLE, 60, "12 dc more than the one inside it, made by 12 times 2 dc in one"),
        (Counting.HEXAGON, 60, "12 dc in it, every second of them one of the 6 corner stitches."),
        (Counting.HEXAGON, 60, "between two corners, 3 dc in each corner stitch; the middle one"),
        (Counting.SOLID, 75, "dc along each side of the chain and 6 round each end"),
        (Counting.CLUSTERS, 75, "clusters of 3 dc along each side of the chain and 2 at each end"),
    ],
)
def test_the_first_round_and_those_after_it_are_told_as_the_trade_does(
    counting: Counting, side: float, said: str
) -> None:
    """Common practice, no source: how rounds begin, and what goes into their corners."""
    quote = constructed_quote(from_centre(counting), height_cm=side)
    assert said in before(quote)


@pytest.mark.parametrize(
    ("counting", "of"), [(Counting.SOLID, "dc"), (Counting.CLUSTERS, "cluster")]
)
def test_the_sides_of_a_rectangle_s_first_round_are_told_between_its_corners(
    counting: Counting, of: str
) -> None:
    quote = constructed_quote(from_centre(counting), height_cm=75)
    counted = quote.plan.counted
    assert counted is not None
    sides = re.search(
        rf"(\d+) {of}s? between two of them on a short side, (\d+) {of}s? on a long", before(quote)
    )
    assert sides, before(quote)
    short, long = int(sides[1]), int(sides[2])
    assert long - short == counted.extra
    first = counted.round(1)
    assert 2 * (short + long) == (first.stitches if of == "dc" else first.stitches // 3)


@pytest.mark.parametrize("stitch", ["sc", "hdc", "dc", "tr"])
@pytest.mark.parametrize("counting", [Counting.SOLID, Counting.HEXAGON])
def test_corners_have_as_many_more_as_a_round_grows_by(stitch: str, counting: Counting) -> None:
    quote = constructed_quote(from_centre(counting), stitch=stitch, height_cm=60)
    counted = quote.plan.counted
    assert counted is not None
    text = before(quote)
    space = re.search(r"\((\d*) ?\S+, ch 2, (\d*) ?\S+\) in each corner space", text)
    one = re.search(r"(\d+) \S+ in each corner stitch", text)
    if space:
        each = int(space[1] or 1) + int(space[2] or 1)
    else:
        assert one, text
        each = int(one[1]) - 1
    assert each * counted.corners == counted.growth


def test_round_a_circle_the_border_tells_how_its_stitches_are_spread() -> None:
    quote = constructed_quote(from_centre(Counting.CIRCLE), border=(band(stitch="dc", rounds=2),))
    rows = [step for step, _ in listing(guide_paper(quote), "Step by step").rows]
    counts = [worked.stitches["dc"] for worked in (quote.plan.rows[-1], *quote.plan.rounds)]
    borders = [step for step in rows if step.startswith("Border round")]
    for step, (inside, count) in zip(borders, pairwise(counts), strict=True):
        more = count - inside
        said = f"{more} times two in one, spread evenly" if more else "one in each stitch"
        assert f"{count} dc; {said}." in step


@pytest.mark.parametrize("turned", [True, False])
def test_whether_the_work_is_turned_is_told(*, turned: bool) -> None:
    text = before(constructed_quote(from_centre(turned=turned)))
    assert ("Turn the work after each round." in text) is turned
    assert ("Do not turn the work between rounds" in text) is not turned


def test_a_square_is_measured_across_and_a_rectangle_along_its_short_side() -> None:
    square = guide_paper(constructed_quote(from_centre(), height_cm=60))
    assert listing(square, "Width on the hook").heads == ("After", "Width")
    long = constructed_quote(from_centre())
    told = listing(guide_paper(long), "Short side on the hook").rows
    assert told[-1][1] == speech_of(long.workshop).length(long.plan.width_cm)
    assert long.plan.width_cm < long.plan.height_cm


@pytest.mark.parametrize("become", EndsBecome)
def test_ends_of_rounds_are_told_by_what_becomes_of_them(become: EndsBecome) -> None:
    quote = constructed_quote(from_centre(), ends=become)
    paper = guide_paper(quote)
    over = become is EndsBecome.WORKED_OVER
    rows = listing(paper, "Ends to work over" if over else "Ends to weave in").rows
    assert len(rows) == quote.estimate.ends
    assert not [which for _, which in rows if "weave it in" in which]
    said = [b.texts for b in all_blocks(paper.blocks) if isinstance(b, Words)]
    told = " ".join(text for texts in said for text in texts)
    assert "fringe" not in told
    assert "Leave the ends" not in told


def test_a_colour_that_rests_is_cut_unless_it_is_carried_from_round_to_round() -> None:
    plain = guide_of(constructed_quote(from_centre()))
    assert Act.CARRY_UP not in {handling.begins for handling in plain.handled}
    shop = motif_workshop(habits=Habits(carry_in_rounds=True))
    carried = guide_of(constructed_quote(from_centre(), shop))
    assert Act.CARRY_UP in {handling.begins for handling in carried.handled}
