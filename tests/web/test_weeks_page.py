"""The weeks ahead: who is made when, what is late, and which hours are free."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from quoting.core.making.log_lines import RowsReached
from quoting.core.order.stage import Stage
from quoting.core.quote.quote import quote_order
from quoting.store.log import add_line
from quoting.store.orders import create_order
from tests.core.agreed_orders import working
from tests.examples import TODAY, sample_order
from tests.store.agreements import agree
from tests.store.contents import whole
from tests.store.moments import NOW, later
from tests.web.book_pages import BookMaker, maker_with_book

SHOP = working(2, drying_days=2, post_days=3, days_off=(date(2026, 11, 27),))


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker of two hours a day, with nothing agreed."""
    with maker_with_book(tmp_path / "book.db", SHOP) as maker:
        yield maker


def hours() -> float:
    """Return the most hours that the sample order may take."""
    return float(quote_order(sample_order(), SHOP, today=TODAY).estimate.hours.high)


def test_a_book_in_which_nothing_is_agreed_says_so(maker: BookMaker) -> None:
    page = maker.open("/orders/weeks")
    assert "No order waits for its turn" in page.root.text
    assert not list(page.root.all("svg"))
    assert maker.client.get("/orders/weeks").headers["Cache-Control"] == "private, no-store"


def test_the_orders_page_leads_to_the_weeks(maker: BookMaker) -> None:
    links = [link.attributes["href"] for link in maker.open("/orders").root.all("a")]
    assert "/orders/weeks" in links


def test_each_order_has_its_turn_in_the_table(maker: BookMaker) -> None:
    """By hand: 15.90 h at 2 h a day take 8 days; the 27th is off.

    The one on the hook is made on 26 and 28 November to 4 December, the other on the 8 days after.
    """
    assert 14 < hours() <= 16
    late = sample_order(title="Bench cover", buyer="Tam Fell", wanted_by=date(2026, 12, 10))
    agree(maker.book, late, SHOP, now=NOW)
    begun = sample_order(title="Cot blanket", buyer="Maud Hollin", wanted_by=None)
    agree(maker.book, begun, SHOP, now=later(hours=1), stage=Stage.ON_THE_HOOK)
    heads, first, second = maker.open("/orders/weeks").table("In time")
    assert heads[:4] == ["Order", "Buyer", "Stage", "Hours, at most"]
    assert first[0:3] == ["Cot blanket", "Maud Hollin", "on the hook"]
    assert first[4:7] == ["26 Nov 2026", "4 Dec 2026", "9 Dec 2026"]
    assert first[8:] == ["–", "in time"]
    assert second[0:3] == ["Bench cover", "Tam Fell", "agreed"]
    assert second[4:9] == [
        "5 Dec 2026", "12 Dec 2026", "17 Dec 2026", "9 Dec 2026", "10 Dec 2026"
    ]  # fmt: skip
    assert second[9] == "8 days later than promised and 7 days later than wanted"


def test_the_weeks_tell_which_hours_are_free(maker: BookMaker) -> None:
    """By hand: from Thursday on three days are left of this week, one being off: 6 h."""
    agree(maker.book, sample_order(), SHOP, now=NOW)
    rows = maker.open("/orders/weeks").table("Free")
    assert len(rows) == 13
    assert rows[1] == ["23 Nov 2026", "1", "6", "6", "0"]
    assert rows[2][:3] == ["30 Nov 2026", "–", "14"]
    assert float(rows[2][3]) == pytest.approx(hours() - 6, abs=0.06)
    assert rows[3] == ["7 Dec 2026", "–", "14", "0", "14"]


def test_the_picture_says_who_is_made_when(maker: BookMaker) -> None:
    agree(maker.book, sample_order(title="A <b> & c"), SHOP, now=NOW)
    reply = maker.client.get("/orders/weeks").text
    assert "<b>" not in reply
    drawn = ET.fromstring(reply[reply.index("<svg") : reply.index("</svg>") + len("</svg>")])
    assert drawn.get("role") == "img"
    assert "A <b> & c" in "".join(drawn.itertext())


def test_what_was_agreed_by_no_quote_is_told_apart(maker: BookMaker) -> None:
    create_order(maker.book, whole(title="Old one"), now=NOW, stage=Stage.AGREED)
    page = maker.open("/orders/weeks")
    assert "Agreed, but by no quote" in page.headings
    assert "Old one" in page.root.text
    assert "No order waits for its turn" in page.root.text


def test_hours_promised_elsewhere_come_before_all(tmp_path: Path) -> None:
    promised = replace(SHOP, calendar=replace(SHOP.calendar, hours_promised=3.0))
    with maker_with_book(tmp_path / "elsewhere.db", promised) as maker:
        assert "3 hours are promised elsewhere" in maker.open("/orders/weeks").root.text
        agree(maker.book, sample_order(), promised, now=NOW)
        page = maker.open("/orders/weeks")
        assert "Before them come 3 hours promised elsewhere" in page.root.text
        assert page.table("In time")[1][4] == "29 Nov 2026"


def test_the_turns_are_those_of_the_day_that_the_page_is_opened(maker: BookMaker) -> None:
    agree(maker.book, sample_order(), SHOP, now=later(days=-60))
    assert maker.open("/orders/weeks").table("In time")[1][4] == "26 Nov 2026"


def test_what_is_done_of_an_order_on_the_hook_no_longer_holds_up_the_others(
    maker: BookMaker,
) -> None:
    begun = agree(maker.book, sample_order(), SHOP, now=NOW, stage=Stage.ON_THE_HOOK)
    agree(maker.book, sample_order(title="Bench cover"), SHOP, now=later(hours=1))
    whole_hours, whole_turn = turns_of(maker)
    add_line(maker.book, begun, RowsReached(day=TODAY, rows=20), now=later(hours=2))
    some_hours, some_turn = turns_of(maker)
    assert some_hours < whole_hours
    assert some_turn < whole_turn
    add_line(maker.book, begun, RowsReached(day=TODAY, rows=40), now=later(hours=3))
    assert turns_of(maker)[0] < some_hours


def test_the_page_of_an_order_being_made_tells_the_day_of_its_turn(tmp_path: Path) -> None:
    """Each takes 15.90 h, at 2.1 h a day whole days of its own, and waits for its yarn."""
    shop = working(2.1, hours_promised=3, yarn_arrives_days=40, drying_days=2, post_days=3)
    with maker_with_book(tmp_path / "book.db", shop) as maker:
        orders = [
            agree(maker.book, sample_order(), shop, now=later(hours=number), stage=stage)
            for number, stage in enumerate((Stage.ON_THE_HOOK, Stage.ON_THE_HOOK, Stage.AGREED))
        ]
        turns = [row[6] for row in maker.open("/orders/weeks").table("In time")[1:]]
        told = [maker.open(f"/orders/{order}/making").root.text for order in orders]
        for turn, text in zip(turns, told, strict=True):
            day = datetime.strptime(turn, "%d %b %Y").replace(tzinfo=UTC)
            assert f"ready by {day.day} {day:%B %Y}" in text


def turns_of(maker: BookMaker) -> tuple[float, date]:
    """Return the hours of the first order, and the day on which the second is made."""
    _, first, second = maker.open("/orders/weeks").table("In time")
    made = datetime.strptime(second[5], "%d %b %Y").replace(tzinfo=UTC)
    return float(first[3]), made.date()
