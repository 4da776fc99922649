"""The sums of rounds and of motifs come out on a calculator fed with the figures shown."""

from __future__ import annotations

import re
from decimal import Decimal
from itertools import product

import pytest

from quoting.core.ground.measures import Units
from quoting.core.ground.money import round_half_up
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, MotifJoin
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.closing import closing_of
from quoting.core.workshop.rounds import Counting
from quoting.web.orders.centre_sums import growth_words, longer_words, rounds_sum
from quoting.web.orders.reckonings import task_sum
from quoting.web.orders.room_sums import times_sum
from quoting.web.orders.squares_sums import across_sums, across_words, join_yarn_words
from quoting.wording import off_sentence, off_words, speech_of
from tests.examples import TODAY
from tests.motif_examples import striped_centre
from tests.web.motif_orders import FEN, motif_workshop, order_of, squares_body

ROOM = re.compile(
    r"(?:\w+: )?\(?([\d.]+)(?: − 2 × ([\d.]+))?(?: ([−+]) ([\d.]+))?\)? / ([\d.]+) = "
    r"room for ([\d.]+)(?: rounds after the first)?"
)
GROWTH = re.compile(
    r"(\d+) × (\d+) \+ (\d+) × \d+ × \(\d+ − 1\) / 2 = ([\d,]+) in all: .* in round 1, "
    r"\3 more in each"
)
TIMES = re.compile(r"([\d.,]+) × ([\d.,]+)\s\w+ = ([\d.,]+)\s\w+")

SIZES = list(product([(60, 75), (91.44, 91.44), (130, 47)], Units))


def quoted(body: FromCentre | JoinedSquares, size: tuple[float, float], units: Units) -> Quote:
    width, height = size
    order = order_of(body, width_cm=width, height_cm=height)
    return quote_order(order, motif_workshop(units=units), today=TODAY)


def room_comes_out(said: str) -> bool:
    """Return whether a sum of room in a side comes out as it says."""
    found = ROOM.fullmatch(said)
    assert found, said
    side, depth, sign, more, each, room = found.groups()
    inside = Decimal(side) - 2 * Decimal(depth or 0)
    inside += Decimal(more or 0) * (-1 if sign == "−" else 1)
    return round_half_up(inside / Decimal(each), 1) == Decimal(room)


@pytest.mark.parametrize(("size", "units"), SIZES)
@pytest.mark.parametrize("shape", Counting)
def test_rounds_come_out_as_shown(shape: Counting, size: tuple[float, float], units: Units) -> None:
    quote = quoted(striped_centre(counting=shape), size, units)
    say = speech_of(quote.workshop)
    assert room_comes_out(rounds_sum(quote, say))
    found = GROWTH.fullmatch(growth_words(quote, say))
    assert found
    rounds, first, growth = (int(figure) for figure in found.groups()[:3])
    total = rounds * first + growth * rounds * (rounds - 1) // 2
    assert f"{total:,}" == found[4]
    assert total == sum(worked.stitches["dc"] for worked in quote.plan.rows)


@pytest.mark.parametrize(("size", "units"), SIZES)
@pytest.mark.parametrize("method", [JoinMethod.AS_YOU_GO, JoinMethod.FLAT_BRAID])
def test_motifs_across_and_down_come_out_as_shown(
    method: JoinMethod, size: tuple[float, float], units: Units
) -> None:
    quote = quoted(squares_body(join=MotifJoin(method=method, colour="oat")), size, units)
    say = speech_of(quote.workshop)
    assert all(room_comes_out(said) for said in across_sums(quote, say))
    assert ("of its join" in across_words(quote, say)) == (method is JoinMethod.FLAT_BRAID)
    assert bool(join_yarn_words(quote, say)) == (method is JoinMethod.FLAT_BRAID)


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize(("count", "each_cm"), [(157, 15.0), (11, 1.9047619), (3, 0.333333)])
def test_so_many_lengths_come_out_as_shown(count: int, each_cm: float, units: Units) -> None:
    said = times_sum(count, each_cm, speech_of(motif_workshop(units=units)))
    found = TIMES.fullmatch(said)
    assert found, said
    counted, each, total = (Decimal(figure.replace(",", "")) for figure in found.groups())
    assert round_half_up(counted * each, 1) == total


def test_a_square_is_longer_by_nothing() -> None:
    quote = quoted(striped_centre(), (60, 60), Units.METRIC)
    assert longer_words(quote, speech_of(quote.workshop)) == ""


def test_a_blanket_that_comes_out_as_asked_is_off_by_nothing() -> None:
    quote = quoted(
        squares_body(join=MotifJoin(), columns=2, rows=2), (32.5333, 32.5333), Units.METRIC
    )
    assert off_sentence(quote, speech_of(quote.workshop)) == ""


def test_a_circle_is_off_by_its_width_alone_wherever_that_is_told() -> None:
    quote = quoted(striped_centre(counting=Counting.CIRCLE), (60, 90), Units.METRIC)
    say = speech_of(quote.workshop)
    assert off_sentence(quote, say) == "That is 0.3\u00a0cm wider than asked."
    assert off_words(closing_of(quote), say) == "0.3\u00a0cm wider"


def test_the_minutes_of_rounds_worked_as_a_motif_come_out_as_shown() -> None:
    body = striped_centre(counting=Counting.CLUSTERS, motif=FEN.name)
    quote = quoted(body, (80, 80), Units.METRIC)
    (task,) = (task for task in quote.estimate.hours.tasks if task.what == FEN.name)
    found = TIMES.fullmatch(task_sum(task, speech_of(quote.workshop)))
    assert found
    count, each, minutes = (Decimal(figure.replace(",", "")) for figure in found.groups())
    assert round_half_up(count * each, 1) == minutes
