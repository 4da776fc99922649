"""One row at a time: where she is, the book says; a tick is written down once, and taken back."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.making.log_lines import RowsReached, Session
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import agree, lines_of, put_at, tell
from tests.web.pages import Page

ROW = "guide/row"


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order on the hook, of which nothing is done."""
    address = agree(maker)
    put_at(maker, address, "on-the-hook")
    return address


def shown(maker: BookMaker, address: str) -> Page:
    return maker.open(f"{address}/{ROW}")


def fields(page: Page, rows: str | None = None) -> dict[str, str]:
    """Return what the button sends, or the form of several rows."""
    return page.typed("tick") if rows is None else page.typed("several") | {"rows": rows}


def said(page: Page) -> str:
    return page.root.text


def tick(maker: BookMaker, address: str, rows: str | None = None, page: Page | None = None) -> Page:
    sent = fields(page or shown(maker, address), rows)
    reply = maker.client.post(f"{address}/{ROW}", data=sent, follow_redirects=True)
    return Page(reply.text)


def rows_told(maker: BookMaker, address: str) -> list[int]:
    return [line.rows for line in lines_of(maker, address) if isinstance(line, RowsReached)]


def test_the_first_row_is_shown_with_its_chain_and_where_it_begins(
    maker: BookMaker, address: str
) -> None:
    text = said(shown(maker, address))
    assert "Row 1" in text
    assert "oat" in text
    assert "Chain 102 first." in text
    assert "First hdc in the 3rd chain from the hook." in text
    assert "Right side facing, from the right-hand edge." in text


def test_done_writes_the_rows_reached_and_shows_the_next(maker: BookMaker, address: str) -> None:
    page = tick(maker, address)
    assert rows_told(maker, address) == [1]
    assert "Row 2" in said(page)
    assert "Wrong side facing, from the left-hand edge." in said(page)


def test_a_button_pressed_twice_writes_once(maker: BookMaker, address: str) -> None:
    page = shown(maker, address)
    tick(maker, address, page=page)
    again = tick(maker, address, page=page)
    assert rows_told(maker, address) == [1]
    assert "to correct" not in said(again)


def test_a_page_from_before_somebody_elses_line_is_told_and_writes_nothing(
    maker: BookMaker, address: str
) -> None:
    page = shown(maker, address)
    tell(maker, address, rows="30", minutes="60")
    again = tick(maker, address, page=page)
    assert rows_told(maker, address) == []
    assert "Row 31" in said(again)
    assert "Something was written down for this order since the page was opened" in said(again)
    assert "fewer" not in said(again)


def test_back_takes_the_last_tick_back_and_stays_in_the_log(maker: BookMaker, address: str) -> None:
    tick(maker, address)
    page = tick(maker, address)
    reply = maker.client.post(f"{address}/{ROW}/back", data=page.typed("back"))
    assert reply.status_code == 303
    assert rows_told(maker, address) == [1]
    assert "Row 2" in said(shown(maker, address))
    stale = maker.client.post(f"{address}/{ROW}/back", data=page.typed("back"))
    assert stale.status_code == 303
    assert rows_told(maker, address) == [1]


def test_there_is_no_way_back_over_what_was_told_elsewhere(maker: BookMaker, address: str) -> None:
    tell(maker, address, rows="30", minutes="60")
    buttons = [button.text for button in shown(maker, address).root.all("button")]
    assert "Done" in buttons
    assert "Back" not in buttons


def test_several_rows_are_told_at_once_and_no_fewer_than_are_done(
    maker: BookMaker, address: str
) -> None:
    tick(maker, address, "40")
    assert rows_told(maker, address) == [40]
    page = tick(maker, address, "12")
    assert rows_told(maker, address) == [40]
    assert "to correct" in said(page)
    assert page.labelled("Rows done").attributes["value"] == "12"
    page = tick(maker, address, "4000")
    assert rows_told(maker, address) == [40]


def test_after_the_last_row_all_are_done(maker: BookMaker, address: str) -> None:
    page = tick(maker, address, "104")
    assert "Row 105" in said(page)
    assert "All rows are done" in said(tick(maker, address, page=page))


def test_a_ball_that_may_end_is_told_in_the_rows_of_its_range(
    maker: BookMaker, address: str
) -> None:
    assert "may end about here" in said(tick(maker, address, "57"))
    assert "may end about here" not in said(tick(maker, address, "70"))


def test_where_she_is_comes_from_the_book_and_no_browser_keeps_the_page(
    maker: BookMaker, address: str
) -> None:
    reply = maker.client.get(f"{address}/{ROW}")
    assert "no-store" in reply.headers["Cache-Control"]
    tell(maker, address, rows="30", minutes="60")
    assert "Row 31" in said(shown(maker, address))


def test_an_order_that_is_not_on_the_hook_is_shown_and_not_ticked(maker: BookMaker) -> None:
    address = agree(maker)
    page = shown(maker, address)
    assert "Not on the hook" in said(page)
    tick_it = {"csrf_token": maker.token(f"{address}/making"), "seen": "0", "rows": "1"}
    maker.client.post(f"{address}/{ROW}", data=tick_it)
    assert lines_of(maker, address) == []


def test_opening_changes_nothing(maker: BookMaker, address: str) -> None:
    maker.client.get(f"{address}/{ROW}/back")
    shown(maker, address)
    assert lines_of(maker, address) == []


def test_rows_ticked_while_a_clock_runs_are_those_of_its_session(
    maker: BookMaker, address: str
) -> None:
    """So that ticks tell the pace, though they bear no minutes."""
    tick(maker, address, "10")
    making = f"{address}/making"
    maker.client.post(f"{making}/clock", data=maker.open(making).typed("sitting") | {"do": "start"})
    tick(maker, address, "14")
    reply = maker.client.post(
        f"{making}/clock", data=maker.open(making).typed("sitting") | {"do": "stop"}
    )
    tell(maker, address, Page(reply.text))
    (session,) = (line for line in lines_of(maker, address) if isinstance(line, Session))
    assert (session.first_row, session.last_row) == (11, 14)
