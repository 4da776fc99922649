"""The clock of an order, started and stopped on its page: nothing typed is lost by it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from werkzeug.test import TestResponse

from quoting.core.making.log_lines import Session
from quoting.store.clocks import running_since
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import agree, lines_of, number_of, tell
from tests.web.pages import Page


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order that is agreed."""
    return agree(maker)


def press(maker: BookMaker, address: str, do: str, **typed: str) -> TestResponse:
    """Press a button of the clock, with something typed into the form round it."""
    fields = maker.open(f"{address}/making").typed("sitting") | typed
    return maker.client.post(f"{address}/making/clock", data=fields | {"do": do})


def test_a_clock_that_is_stopped_leaves_a_session_to_be_told_of(
    maker: BookMaker, address: str
) -> None:
    assert "The clock runs" in Page(press(maker, address, "start").text).root.text
    page = Page(press(maker, address, "stop").text)
    (timed,) = lines_of(maker, address)
    assert isinstance(timed, Session)
    assert timed.rows == 0
    assert page.typed("sitting")["minutes"] == f"{timed.minutes:g}"
    tell(maker, address, page, rows="7")
    (told,) = lines_of(maker, address)
    assert isinstance(told, Session)
    assert (told.started, told.minutes) == (timed.started, timed.minutes)
    assert (told.first_row, told.last_row) == (1, 7)


def test_what_was_typed_stays_when_the_clock_is_started_or_stopped(
    maker: BookMaker, address: str
) -> None:
    for do in ("start", "stop"):
        page = Page(press(maker, address, do, rows="9", ends="4").text)
        assert (page.typed("sitting")["rows"], page.typed("sitting")["ends"]) == ("9", "4")


def test_a_second_start_in_another_tab_finds_the_clock_running(
    maker: BookMaker, address: str
) -> None:
    press(maker, address, "start")
    since = running_since(maker.book, number_of(address))
    press(maker, address, "start")
    assert running_since(maker.book, number_of(address)) == since


def test_a_second_stop_writes_nothing_more(maker: BookMaker, address: str) -> None:
    press(maker, address, "start")
    press(maker, address, "stop")
    assert press(maker, address, "stop").status_code == 200
    assert len(lines_of(maker, address)) == 1


def test_a_page_that_was_closed_after_stopping_still_asks_how_far_it_was(
    maker: BookMaker, address: str
) -> None:
    press(maker, address, "start")
    press(maker, address, "stop")
    page = maker.open(f"{address}/making")
    assert "no rows are told of that yet" in page.root.text
    (link,) = (a for a in page.root.all("a") if a.text == "Tell them")
    tell(maker, address, maker.open(link.attributes["href"]), rows="7")
    (told,) = lines_of(maker, address)
    assert isinstance(told, Session)
    assert told.rows == 7
    assert "Tell them" not in maker.open(f"{address}/making").root.text


def test_a_session_that_a_clock_timed_is_not_told_of_without_its_minutes(
    maker: BookMaker, address: str
) -> None:
    press(maker, address, "start")
    page = Page(press(maker, address, "stop").text)
    refused = tell(maker, address, page, rows="7", minutes="")
    assert refused.status_code == 422
    assert "must be given" in Page(refused.text).said_of("minutes")


def test_a_clock_that_was_forgotten_goes_on_until_it_is_put_away(
    maker: BookMaker, address: str
) -> None:
    press(maker, address, "start")
    maker.clock.moment += timedelta(hours=40)
    refused = press(maker, address, "stop")
    assert refused.status_code == 422
    assert "the most that will do is 1,440" in Page(refused.text).said_of("minutes")
    assert "The clock runs" in refused.text
    page = Page(press(maker, address, "drop").text)
    assert "The clock runs" not in page.root.text
    assert lines_of(maker, address) == []


def test_an_address_that_takes_only_forms_leads_to_the_page(maker: BookMaker, address: str) -> None:
    for deed in ("clock", "hook", "lines/payment"):
        assert maker.client.get(f"{address}/making/{deed}").location == f"{address}/making"
