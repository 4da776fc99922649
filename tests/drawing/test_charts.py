"""Charts: parts add up to their bar, a loss is shown as one, and nothing at all is no mishap."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exports.charts import Bar, Level, Part, StackedBar, bars, price_bar, stacked_bars
from quoting.core.order.order import Terms
from quoting.core.workshop.selling import Target
from quoting.wording import speech_of
from tests.drawing.pictures import SVG, of_class, sizes, words_of
from tests.examples import sample_order, sample_quote

WORDS = {"title": "Prices", "description": "What each price pays for."}


def stacked(*amounts: str, name: str = "80 × 100 cm") -> StackedBar:
    parts = tuple(
        Part(what=f"part {number}", amount=Decimal(amount), label=amount)
        for number, amount in enumerate(amounts)
    )
    return StackedBar(name=name, parts=parts, label="total")


def plain(amount: str, name: str = "80 × 100 cm") -> Bar:
    return Bar(name=name, amount=Decimal(amount), label=amount)


def chart(*some: StackedBar) -> ET.Element:
    return ET.fromstring(stacked_bars(some, **WORDS))


def boxes(picture: ET.Element) -> list[tuple[float, ...]]:
    return sizes(of_class(picture, "part"), "x", "width")


def zero_x(picture: ET.Element) -> float:
    found = re.match(r"M (\S+)", of_class(picture, "zero")[0].get("d") or "")
    assert found is not None
    return float(found[1])


@given(st.lists(st.integers(1, 100_000), min_size=1, max_size=8))
def test_the_parts_of_a_bar_lie_end_to_end_and_fill_it(cents: list[int]) -> None:
    picture = chart(stacked(*(str(Decimal(cent) / 100) for cent in cents)))
    x = zero_x(picture)
    for left, width in boxes(picture):
        assert left == pytest.approx(x, abs=1e-2)
        x = left + width
    assert x == pytest.approx(392, abs=1e-2)


def test_parts_are_as_wide_as_their_amounts() -> None:
    (_, one), (_, three) = boxes(chart(stacked("10", "30")))
    assert three == pytest.approx(3 * one, rel=1e-4)


def test_bars_of_one_chart_have_one_scale() -> None:
    (_, small), (_, large) = boxes(chart(stacked("20"), stacked("50")))
    assert large == pytest.approx(2.5 * small, rel=1e-4)


def test_a_loss_lies_left_of_the_line_and_the_rest_reaches_as_far_beyond_the_total() -> None:
    picture = chart(stacked("60", "60", "-20"))
    zero = zero_x(picture)
    (_, first), (second_left, second), (left, loss) = boxes(picture)
    assert left + loss == pytest.approx(zero, abs=1e-2)
    assert first + second - loss == pytest.approx(first / 60 * 100, rel=1e-3)
    assert second_left == pytest.approx(zero + first, abs=1e-2)


def test_parts_of_nothing_take_no_room_and_no_place_in_the_key() -> None:
    picture = chart(stacked("10", "0", "5"))
    assert len(boxes(picture)) == 2
    assert "part 1" not in words_of(picture)


@pytest.mark.parametrize("some", [(), (stacked(),), (stacked("0", "0"),)])
def test_a_chart_of_nothing_is_still_a_picture(some: tuple[StackedBar, ...]) -> None:
    assert chart(*some).get("role") == "img"
    assert "nan" not in stacked_bars(some, **WORDS)


def test_each_part_has_an_ink_of_its_own_that_is_there() -> None:
    picture = chart(stacked("1", "2", "3", "4", "5", "6", "7", "8"))
    fills = [part.get("fill") for part in of_class(picture, "part")]
    there = {f"url(#{pattern.get('id')})" for pattern in picture.iter(f"{SVG}pattern")}
    assert len(set(fills)) == 8
    assert set(fills) <= there


def test_a_part_keeps_its_ink_from_bar_to_bar() -> None:
    full, lacking = stacked("1", "2", "3"), stacked("1", "0", "3")
    fills = [part.get("fill") for part in of_class(chart(lacking, full), "part")]
    assert fills[0] == fills[2]
    assert fills[1] == fills[4]


def test_the_price_of_a_quote_is_charted_whole() -> None:
    quote = sample_quote()
    bar = price_bar("80 × 100 cm", quote.price, speech_of(quote.workshop))
    assert bar.total == quote.price.total
    assert bar.label == "£297.00"


def test_a_quote_at_a_loss_is_charted_whole() -> None:
    terms = Terms(target=Target(given=Decimal(100)))
    quote = sample_quote(sample_order(terms=terms))
    bar = price_bar("80 × 100 cm", quote.price, speech_of(quote.workshop))
    assert bar.lost == quote.price.profit < 0
    assert bar.total == quote.price.total


def test_plain_bars_are_as_long_as_their_amounts_and_losses_turn_left() -> None:
    picture = ET.fromstring(bars([plain("10"), plain("20"), plain("-5")], **WORDS))
    (ten_left, ten), (twenty_left, twenty), (loss_left, loss) = boxes(picture)
    assert twenty == pytest.approx(2 * ten, rel=1e-4)
    assert loss == pytest.approx(0.5 * ten, rel=1e-3)
    assert ten_left == twenty_left == pytest.approx(loss_left + loss, abs=1e-2)


def test_the_level_stands_at_its_amount_across_every_bar() -> None:
    level = Level(amount=Decimal(14), label="hourly pay")
    picture = ET.fromstring(bars([plain("7"), plain("3")], level=level, **WORDS))
    lines = of_class(picture, "level")
    ((left, half), _) = boxes(picture)
    assert len(lines) == 2
    for line in lines:
        x = float((line.get("d") or "").split()[1])
        assert x == pytest.approx(left + 2 * half, abs=1e-2)
    assert "hourly pay" in words_of(picture)


@pytest.mark.parametrize("amounts", [[], ["0"], ["0", "0"]])
def test_plain_bars_of_nothing_are_still_a_picture(amounts: list[str]) -> None:
    svg = bars([plain(amount) for amount in amounts], **WORDS)
    assert ET.fromstring(svg).get("role") == "img"
    assert all(width == 0 for _, width in boxes(ET.fromstring(svg)))


def test_names_in_charts_are_escaped_and_nothing_is_styled() -> None:
    name = "<script>&\"'"
    both = stacked_bars([stacked("1", name=name)], **WORDS) + bars([plain("1", name)], **WORDS)
    assert "<script" not in both
    assert not re.search(r"\sstyle=|href|\son\w+=", both)
    assert f"{name}, part 0: 1" in words_of(chart(stacked("1", name=name)))


def test_two_charts_on_a_page_share_no_id() -> None:
    one = ET.fromstring(bars([plain("1")], prefix="a", **WORDS))
    two = ET.fromstring(bars([plain("1")], prefix="b", **WORDS))
    ids = [{each.get("id") for each in picture.iter() if each.get("id")} for picture in (one, two)]
    assert ids[0]
    assert not ids[0] & ids[1]
