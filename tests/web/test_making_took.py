"""Afterwards: what an order took beside what was estimated, and what the workshop learns of it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from io import BytesIO
from pathlib import Path

import openpyxl
import pytest

from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.workshop import Workshop
from quoting.store.orders import kept_order
from quoting.store.workshops import current_workshop
from tests.examples import TODAY, sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import DAY, agree, number_of, put_at, tell, write_line
from tests.web.pages import Page

ROWS = "40"


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order that is finished, with twice the time and a tenth more yarn."""
    address = agree(maker)
    quote = estimated(maker, address)
    rows = len(quote.plan.rows)
    (colour,) = quote.estimate.colours
    minutes = float(quote.estimate.hours.making) * 60 * 2
    tell(maker, address, rows=str(rows), minutes=f"{minutes:.0f}", day=DAY)
    write_line(maker, address, "yarn-taken", colour=colour.colour, grams="2000", day=DAY)
    grams = {"used__1__amount": f"{colour.grams * 1.1:.0f}", "used__1__ball_g": ""}
    tell(maker, address, ends="4", day=DAY, **grams)
    put_at(maker, address, "on-the-hook", "finished")
    return address


def workshop_of(maker: BookMaker) -> Workshop:
    kept = current_workshop(maker.book)
    assert kept is not None
    return kept.workshop


def estimated(maker: BookMaker, address: str) -> Quote:
    """Return what the order comes to by the workshop of now."""
    order = kept_order(maker.book, number_of(address)).content.order
    assert order is not None
    return quote_order(order, workshop_of(maker), today=TODAY)


def take(maker: BookMaker, address: str, *left_out: str, start: Page | None = None) -> int:
    """Take in what the page offers, but for some boxes."""
    page = start or maker.open(f"{address}/took")
    ticked = {name: text for name, text in page.typed("learnt").items() if name not in left_out}
    return maker.client.post(f"{address}/took", data=ticked).status_code


def test_before_it_is_finished_nothing_is_known_of_what_it_took(maker: BookMaker) -> None:
    address = agree(maker)
    page = maker.open(f"{address}/took").root.text
    assert "once the order is finished" in page
    assert "earned" not in page


def test_estimate_and_what_it_took_stand_beside_each_other(maker: BookMaker, address: str) -> None:
    page = maker.open(f"{address}/took")
    work = {row[0]: row[1:] for row in page.table("Work")}
    assert " more, " in work["At the hook"][2]
    assert work["Weaving in ends"][1] == "–"
    assert "An hour of it earned £" in page.root.text
    assert "No minutes were written down for weaving in ends" in page.root.text
    (line,) = (row for row in page.table("Colour") if row[0] != "Colour")
    assert line[3].endswith(" more, 10%")


def test_rows_that_were_not_written_down_are_said_to_be_reckoned_on_the_page_and_on_the_sheet(
    maker: BookMaker,
) -> None:
    address = agree(maker)
    rows = len(estimated(maker, address).plan.rows)
    tell(maker, address, rows="20", minutes="180", day=DAY)
    put_at(maker, address, "on-the-hook", "finished")
    said = f"{rows - 20} rows were not written down: they are reckoned at the pace of the others."
    assert said in maker.open(f"{address}/took").root.text
    reply = maker.client.get(f"{address}/took/workbook")
    sheet = openpyxl.load_workbook(BytesIO(reply.data))["Actuals"]
    assert said in [row[0].value for row in sheet.iter_rows()]


def test_where_all_rows_are_written_down_nothing_is_said_of_a_pace(
    maker: BookMaker, address: str
) -> None:
    assert "pace of the others" not in maker.open(f"{address}/took").root.text


def test_its_sessions_move_the_pace_and_the_next_estimate_of_the_same_order_accordingly(
    maker: BookMaker, address: str
) -> None:
    before, workshop = estimated(maker, address), workshop_of(maker)
    assert take(maker, address) == 303
    after, now = estimated(maker, address), workshop_of(maker)
    assert now.timings[: len(workshop.timings)] == workshop.timings
    (further,) = now.timings[len(workshop.timings) :]
    assert further.day == date(2026, 11, 24)
    assert after.estimate.hours.total > before.estimate.hours.total
    assert (
        after.price.earned_per_hour != before.price.earned_per_hour or after.price != before.price
    )
    assert "Taken in." in maker.open(f"{address}/took?taken=2").root.text


def test_what_was_left_out_is_offered_again_and_what_was_taken_is_not(
    maker: BookMaker, address: str
) -> None:
    names = [name for name in maker.open(f"{address}/took").typed("learnt") if "." in name]
    assert {name.split(".")[0] for name in names} == {"timing", "swatch"}
    take(maker, address, "swatch.1")
    offered = maker.open(f"{address}/took").typed("learnt")
    assert [name for name in offered if "." in name] == ["swatch.1"]
    take(maker, address)
    assert "nothing to take in" in maker.open(f"{address}/took").root.text


def test_a_page_from_before_a_change_of_the_workshop_takes_nothing_in(
    maker: BookMaker, address: str
) -> None:
    page = maker.open(f"{address}/took")
    take(maker, address, "swatch.1")
    assert take(maker, address, start=page) == 422
    assert len(workshop_of(maker).swatches) == 1


def test_a_page_from_before_a_further_line_takes_nothing_in(maker: BookMaker, address: str) -> None:
    page = maker.open(f"{address}/took")
    write_line(maker, address, "remark", text="Washed it twice.")
    assert take(maker, address, start=page) == 422
    assert len(workshop_of(maker).timings) == len(sample_workshop().timings)


def test_the_spreadsheet_has_what_it_took_filled_in(maker: BookMaker, address: str) -> None:
    reply = maker.client.get(f"{address}/took/workbook")
    assert reply.headers["Content-Disposition"].startswith('attachment; filename="what-it-took')
    sheet = openpyxl.load_workbook(BytesIO(reply.data), data_only=True)["Actuals"]
    lines = {row[0].value: [cell.value for cell in row[1:3]] for row in sheet.iter_rows()}
    stitching, took = lines["Stitching"]
    assert took > stitching
    page = maker.open(f"{address}/took").root.text
    assert f"An hour of it earned £{lines['An hour earned'][1]:.2f}" in page
