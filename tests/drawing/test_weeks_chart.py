"""The picture of the weeks: a bar over the days of making, with days off, promises and wishes."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Sequence
from datetime import date, timedelta

import pytest

from exports.charts import weeks_chart
from quoting.core.workshop.queue import AgreedOrder, queue_orders
from quoting.core.workshop.workshop import Workshop
from quoting.wording import speech_of
from tests.core.agreed_orders import TODAY, agreed, working
from tests.drawing.pictures import of_class, sizes

MONDAY = date(2026, 11, 23)
A_DAY = 384 / (12 * 7)
"""Twelve weeks are as wide as the chart, but for 8 at either side."""


def drawn(orders: Sequence[AgreedOrder], workshop: Workshop) -> ET.Element:
    queue = queue_orders(orders, workshop, today=TODAY)
    return ET.fromstring(weeks_chart(queue.turns, workshop, speech_of(workshop), today=TODAY))


def in_rows(picture: ET.Element, class_: str) -> list[ET.Element]:
    """Return the marks of a class, but for the sample in the key."""
    key = set(of_class(of_class(picture, "key")[0], class_))
    return [mark for mark in of_class(picture, class_) if mark not in key]


def said_in(picture: ET.Element) -> list[str]:
    return [each.text for each in picture.iter() if each.text]


def key_of(picture: ET.Element) -> list[str]:
    return said_in(of_class(picture, "key")[0])


def begins(mark: ET.Element) -> float:
    """Return how many days after the first Monday a path begins."""
    found = re.match(r"M (\S+)", mark.get("d") or "")
    assert found is not None
    return (float(found[1]) - 8) / A_DAY


def spans(picture: ET.Element, class_: str) -> list[tuple[float, float]]:
    """Return where boxes begin and how long they are, in days from the first Monday."""
    return [
        (pytest.approx((x - 8) / A_DAY, abs=0.01), pytest.approx(width / A_DAY, abs=0.01))
        for x, width in sizes(in_rows(picture, class_), "x", "width")
    ]


def test_a_bar_is_over_the_days_of_making() -> None:
    """26 November is the third day after Monday the 23rd; 6 h at 2 h a day are three days."""
    picture = drawn([agreed(1, 6), agreed(2, 2)], working())
    assert spans(picture, "making") == [(3, 3), (6, 1)]


def test_a_bar_is_open_where_days_are_off_and_they_are_marked() -> None:
    off = (date(2026, 11, 27), date(2026, 11, 28), TODAY + timedelta(days=900))
    picture = drawn([agreed(1, 6)], working(days_off=off))
    assert spans(picture, "making") == [(3, 1), (6, 2)]
    assert spans(picture, "off") == [(4, 2)]


def test_drying_and_post_go_on_to_the_day_that_it_is_ready() -> None:
    picture = drawn([agreed(1, 2)], working(drying_days=2, post_days=3))
    (travel,) = in_rows(picture, "travel")
    assert begins(travel) == pytest.approx(4, abs=0.01)
    assert in_rows(drawn([agreed(1, 2)], working()), "travel") == []


def test_marks_stand_at_the_end_of_the_days_told_and_asked_for() -> None:
    order = agreed(1, 2, promised_by=date(2026, 12, 1), wanted_by=date(2026, 12, 6))
    picture = drawn([order], working())
    assert [begins(mark) for mark in in_rows(picture, "promised")] == pytest.approx([9], abs=0.01)
    assert [begins(mark) for mark in in_rows(picture, "wanted")] == pytest.approx([14], abs=0.01)
    assert [begins(mark) for mark in in_rows(picture, "today")] == pytest.approx([3], abs=0.01)


def test_days_beyond_the_picture_have_no_mark_and_its_bars_end_at_its_side() -> None:
    order = agreed(1, 10_000, promised_by=date(2026, 11, 2), wanted_by=date(2050, 1, 1))
    picture = drawn([order], working())
    assert in_rows(picture, "promised") == in_rows(picture, "wanted") == []
    ((x, width),) = sizes(in_rows(picture, "making"), "x", "width")
    assert x + width == pytest.approx(392, abs=0.01)
    assert in_rows(picture, "travel") == []


def test_the_key_names_what_is_there_alone() -> None:
    picture = drawn([agreed(1, 2)], working())
    assert key_of(picture) == ["agreed", "drying and delivery", "promised", "today"]
    both = [agreed(1, 2, on_the_hook=True, wanted_by=TODAY), agreed(2, 2)]
    full = drawn(both, working(days_off=(date(2026, 12, 1),)))
    assert {"on the hook", "agreed", "wanted", "days off"} <= set(key_of(full))


def test_a_long_title_leaves_room_for_the_day() -> None:
    title = "Sofa throw in moorland stripes with a deep border, for the window seat"
    picture = drawn([agreed(1, 2, title=title)], working())
    said = said_in(picture)
    (shown,) = [words for words in said if words.endswith("…")]
    assert title.startswith(shown[:-1])
    assert len(shown) > 20
    assert f"{title}: ready 26 Nov 2026" in said


def test_of_very_many_orders_the_first_are_drawn() -> None:
    picture = drawn([agreed(number, 2) for number in range(1, 100)], working())
    assert len(of_class(picture, "bar")) == 40
    assert "A bar for each of 40 orders" in "".join(picture.itertext())


def test_a_picture_of_nothing_is_one_of_twelve_weeks() -> None:
    assert of_class(drawn([], working()), "bar") == []
