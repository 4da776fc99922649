"""The list of orders, as links and forms that need no script."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from quoting.core.order.stage import Stage
from quoting.store.order_content import Figures, OrderContent
from quoting.store.orders import create_order
from tests.examples import sample_workshop
from tests.store.given import give
from tests.web.book_pages import BookMaker, maker_with_book

ORDERS = (
    ("Moorland", "Rosalind Quill", Stage.ASKED, None),
    ("Seaside", "Été Marsh", Stage.AGREED, "180.00"),
    ("Harbour <b>", "Rosalind Quill", Stage.AGREED, "95.50"),
    ("Orchard", "Tam Fell", Stage.CALLED_OFF, "1200.00"),
)


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker with four orders in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        for title, buyer, stage, price in ORDERS:
            figures = price and Figures(
                price=Decimal(price),
                currency="GBP",
                earned_per_hour=Decimal("13.20"),
                hours=Decimal("21.5"),
                ready_by=date(2027, 1, 9),
            )
            content = OrderContent(title=title, buyer=buyer, figures=figures or None)
            create_order(maker.book, content, now=maker.clock(), stage=stage)
        yield maker


def titles(maker: BookMaker, address: str) -> list[str]:
    """Return the titles that a list shows, from the top."""
    rows = maker.open(address).table("Title")
    return [row[2] for row in rows[1:]]


def links(maker: BookMaker, address: str) -> dict[str, str]:
    """Return where the links of a page lead, by their words."""
    page = maker.open(address)
    return {
        " ".join(link.text.split()): link.attributes["href"] or "" for link in page.root.all("a")
    }


def test_the_latest_order_comes_first(maker: BookMaker) -> None:
    assert titles(maker, "/orders") == ["Orchard", "Harbour <b>", "Seaside", "Moorland"]


def test_a_line_shows_what_decides(maker: BookMaker) -> None:
    row = maker.open("/orders?words=orchard").table("Title")[1]
    assert row[:8] == [
        "called off",
        "Tam Fell",
        "Orchard",
        "–",
        "–",
        "9 Jan 2027",
        "£1,200.00",
        "£13.20",
    ]


def test_a_heading_sorts_and_turns_round(maker: BookMaker) -> None:
    once = links(maker, "/orders")["Price"]
    assert titles(maker, once) == ["Orchard", "Seaside", "Harbour <b>", "Moorland"]
    twice = links(maker, once)["Price ↓"]
    assert titles(maker, twice) == ["Harbour <b>", "Seaside", "Orchard", "Moorland"]
    sorts = [head.attributes.get("aria-sort") for head in maker.open(twice).root.all("th")]
    assert sorts.count("ascending") == 1


def test_stages_are_counted_and_lead_to_their_orders(maker: BookMaker) -> None:
    shown = links(maker, "/orders")
    assert {"all 4", "asked 1", "agreed 2", "called off 1"} <= shown.keys()
    assert titles(maker, shown["agreed 2"]) == ["Harbour <b>", "Seaside"]


def test_words_are_looked_for_without_accents_and_beside_a_stage(maker: BookMaker) -> None:
    assert titles(maker, "/orders?words=ete") == ["Seaside"]
    assert titles(maker, "/orders?words=quill&stage=asked") == ["Moorland"]
    assert "No order is like that" in maker.open("/orders?words=nobody").root.text


def test_a_quote_stands_with_its_order_and_finds_it_by_its_number(maker: BookMaker) -> None:
    give(maker.book, 1)
    row = maker.open("/orders?words=2026-001").table("Title")[1]
    assert (row[2], row[3]) == ("Moorland", "2026-001")
    assert links(maker, "/orders")["2026-001"] == "/quotes/2026-001"
    assert "No order is like that" in maker.open("/orders?words=2026-002").root.text


def test_a_quote_that_waits_for_an_answer_past_its_last_day_is_marked(maker: BookMaker) -> None:
    give(maker.book, 1, day=date(2026, 1, 7))
    give(maker.book, 1, day=date(2026, 1, 8))
    row = maker.open("/orders?words=moorland").table("Title")[1]
    assert row[3].split() == ["2026-001/2", "ended"]


def test_a_long_list_is_shown_a_page_at_a_time(maker: BookMaker) -> None:
    for number in range(50):
        create_order(maker.book, OrderContent(title=f"Row {number}"), now=maker.clock())
    assert len(titles(maker, "/orders")) == 50
    rest = links(maker, "/orders")["Next page"]
    assert titles(maker, rest) == ["Orchard", "Harbour <b>", "Seaside", "Moorland"]
    assert "Page 2 of 2" in maker.open(rest).root.text


@pytest.mark.parametrize(
    "asked",
    [
        "by=nothing",
        "stage=dreamt",
        "way=sideways",
        "page=0",
        "page=99999999999",
        "page=-1",
        "page=²",
    ],
)
def test_what_an_address_cannot_mean_is_left_as_it_usually_is(asked: str, maker: BookMaker) -> None:
    assert len(titles(maker, f"/orders?{asked}")) == 4


def test_the_list_is_private_and_changed_by_forms_alone(maker: BookMaker) -> None:
    reply = maker.client.get("/orders")
    assert reply.headers["Cache-Control"] == "private, no-store"
    assert "<b>" not in reply.text
