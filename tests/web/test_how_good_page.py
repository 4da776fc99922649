"""The page that says how good quotes were, its offers, and the spreadsheet for the accounts."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest

from quoting.core.making.log_lines import Doing, LogEntry, LogLine, Payment, Session, YarnUsed
from quoting.core.making.outcome import outcome_of
from quoting.core.workshop.ranges import Ranges
from quoting.store.workshops import current_workshop, save_workshop
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.store.finished import made_order
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import maker_in
from tests.workbook.recalculation import opened

PAGE = "/orders/how-good"


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as someone:
        yield someone


def told(hook: float, grams: float | None = None) -> list[LogLine]:
    """Return a log of minutes at the hook, on two days, and of grams of each colour."""
    half = Session(day=TODAY, doing=Doing.AT_THE_HOOK, minutes=hook / 2)
    lines: list[LogLine] = [half, half]
    if grams is not None:
        colours = ("oat", "teal", "rust")
        lines += [YarnUsed(day=TODAY, colour=c, rows=200, grams=grams) for c in colours]
    return lines


def words_of(maker: BookMaker, address: str = PAGE) -> str:
    return " ".join(maker.open(address).root.text.split())


def ranges_now(maker: BookMaker) -> Ranges:
    kept = current_workshop(maker.book)
    assert kept is not None
    return kept.workshop.ranges


def test_the_orders_page_leads_to_it_and_an_empty_book_says_what_will_be_there(
    maker: BookMaker,
) -> None:
    links = maker.open("/orders").root.all(lambda node: node.attributes.get("href") == PAGE)
    assert len(list(links)) == 1
    assert "No order is finished yet." in words_of(maker)


def test_one_order_has_no_spread_and_is_said_to_tell_little(maker: BookMaker) -> None:
    made_order(maker.book, *told(600))
    said = words_of(maker)
    assert "One says nothing yet of the next." in said
    assert "Single orders lie" not in said
    assert "in 1 of 1 order" in said
    assert "1 order did not tell all the yarn, and is left out" in said


def test_an_order_without_a_session_is_left_out_and_counted(maker: BookMaker) -> None:
    made_order(maker.book)
    made_order(maker.book, *told(600))
    said = words_of(maker)
    assert "1 order told no hours at the hook, and is left out" in said
    assert "1 finished order took" in said
    assert said.count("not told") >= 2


def test_several_orders_are_told_with_limits_groups_and_pictures(maker: BookMaker) -> None:
    for minutes in (640, 660, 700, 655):
        made_order(maker.book, *told(minutes, 190), order=sample_order(buyer="Rosalind Quill"))
    made_order(maker.book, *told(700, 190), order=sample_order(buyer="Imogen Marsh"))
    page = maker.open(PAGE)
    said = " ".join(page.root.text.split())
    assert "Over 5 finished orders your hours came to" in said
    assert "Over 5 finished orders your yarn came to" in said
    assert "80 × 100 cm" in said
    assert "half double crochet" in said or "hdc" in said
    pictures = list(page.root.all("svg"))
    assert [picture.attributes.get("role") for picture in pictures] == ["img", "img"]


def test_rows_that_a_log_leaves_out_are_told_by_the_plan_as_afterwards_tells_them(
    maker: BookMaker,
) -> None:
    """Of 105 rows and a round sixty were told: what the others took goes as these went."""
    line = Session(day=TODAY, doing=Doing.AT_THE_HOOK, minutes=500, first_row=1, last_row=60)
    made_order(maker.book, line)
    quote = sample_quote()
    wanted = outcome_of(quote, (LogEntry(id=1, at=maker.clock(), line=line),)).hours
    assert wanted is not None
    for _ in range(2):
        (row,) = maker.open(PAGE).table("Real hours")[1:]
        assert row[4].startswith(f"{wanted} ")
        assert row[4].endswith(", partly reckoned")
    assert "1 order did not tell every row: its hours are reckoned" in words_of(maker)


def test_a_range_that_is_proved_too_narrow_is_widened_by_a_button_as_a_new_version(
    maker: BookMaker,
) -> None:
    for minutes in (1900, 1950, 1850):
        made_order(maker.book, *told(minutes))
    page = maker.open(PAGE)
    assert "Too narrow:" in page.root.text
    button = next(page.root.all(lambda node: node.attributes.get("name") == "factor"))
    factor = button.attributes["value"] or ""
    reply = press(maker, "hours", factor)
    assert reply == f"{PAGE}?taken=hours"
    assert ranges_now(maker) == Ranges(hours=float(factor))
    assert f"{factor} times as wide as measured, which is what they ask" in words_of(maker)
    assert "version 2 of your workshop" in words_of(maker, f"{PAGE}?taken=hours")


def press(maker: BookMaker, key: str, factor: str, based_on: str = "1") -> str:
    fields = {"range": key, "factor": factor, "based_on": based_on}
    reply = maker.press(f"{PAGE}/widen", "/orders", **fields)
    return str(reply.location) if reply.status_code == 303 else f"{reply.status_code}"


@pytest.mark.parametrize(
    ("key", "factor", "based_on", "status"),
    [
        ("stitches", "1.5", "1", "400"),
        ("hours", "wide", "1", "422"),
        ("hours", "1e308", "1", "422"),
        ("hours", "1.5", "", "400"),
        ("hours", "0.5", "1", "422"),
        ("yarn", "inf", "1", "422"),
    ],
)
def test_a_factor_that_cannot_be_is_refused(
    maker: BookMaker, key: str, factor: str, based_on: str, status: str
) -> None:
    assert press(maker, key, factor, based_on) == status
    assert ranges_now(maker) == Ranges()


def test_a_factor_from_a_page_before_another_save_is_told_and_not_taken(maker: BookMaker) -> None:
    save_workshop(maker.book, sample_workshop(hours_per_week=9), now=maker.clock())
    assert press(maker, "hours", "1.5") == "422"
    assert ranges_now(maker) == Ranges()


def test_a_wider_range_is_told_where_the_order_is_answered() -> None:
    wide = maker_in(sample_workshop(ranges=Ranges(hours=1.4, yarn=1.25))).open().root.text
    plain = maker_in(sample_workshop()).open().root.text
    assert "The range is 1.4 times as wide as measured" in wide
    assert "1.25 times as far off as measured" in wide
    assert "as measured" not in plain


def test_the_accounts_of_a_year_have_its_orders_and_payments(maker: BookMaker) -> None:
    paid = Payment(day=TODAY, amount=Decimal("80.00"), currency="GBP")
    before = Payment(day=TODAY.replace(year=2025), amount=Decimal("20.00"), currency="GBP")
    made_order(maker.book, *told(600), paid, before)
    reply = maker.client.get("/orders/accounts.xlsx?year=2026")
    book = opened(reply.data, values=True)
    row = next(r for r in book["Orders"].iter_rows(values_only=True) if r[0] == "2026-001")
    assert row[3:5] == ("Rosalind Quill", "GBP")
    assert row[12] == 80
    amounts = [r[4] for r in book["Payments"].iter_rows(values_only=True) if r[1] == "2026-001"]
    assert amounts == [80]
    every = opened(maker.client.get("/orders/accounts.xlsx?year=").data, values=True)
    assert (
        len([r for r in every["Payments"].iter_rows(values_only=True) if r[1] == "2026-001"]) == 2
    )


@pytest.mark.parametrize("typed", ["next", "26", "20261", "1776", "٢٠٢٦"])
def test_what_is_no_year_is_told_beside_its_field_and_kept(maker: BookMaker, typed: str) -> None:
    reply = maker.client.get("/orders/accounts.xlsx", query_string={"year": typed})
    assert reply.status_code == 422
    assert "This is no year" in reply.text
    assert f'value="{typed}"' in reply.text
