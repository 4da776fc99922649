"""The log of an order on its page: money, yarn, notes, and lines corrected or taken back."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from quoting.core.making.log_lines import Payment, Remark, RowsReached, Session, YarnTaken
from quoting.store.log import log_of
from quoting.store.shelf import lots_on_shelf
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import DAY, agree, lines_of, number_of, tell, write_line
from tests.web.pages import Page


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book, with 60 g of lot 771 of oat on the shelf."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order that is agreed."""
    return agree(maker)


def entry_of(maker: BookMaker, address: str) -> str:
    """Return where the last line of an order's log is corrected."""
    return f"{address}/making/{log_of(maker.book, number_of(address))[-1].id}"


def correct(maker: BookMaker, entry: str, **typed: str) -> Page:
    """Type into the form of a correction and save it."""
    fields = maker.open(entry).typed("correction")
    fields |= {name.replace("__", "."): text for name, text in typed.items()}
    reply = maker.client.post(entry, data=fields)
    maker.status = reply.status_code
    return Page(reply.text)


def test_a_payment_is_held_against_deposit_and_balance(maker: BookMaker, address: str) -> None:
    assert "nothing" not in maker.open(f"{address}/making").with_id("h-money").text
    assert write_line(maker, address, "payment", amount="50", day=DAY).status_code == 303
    (payment,) = lines_of(maker, address)
    assert isinstance(payment, Payment)
    assert (payment.amount, payment.currency) == (Decimal(50), "GBP")
    page = maker.open(f"{address}/making").root.text
    assert "£50.00 of £" in page
    assert "£50.00 received" in page


def test_the_same_money_on_the_same_day_is_asked_about_once_more(
    maker: BookMaker, address: str
) -> None:
    write_line(maker, address, "payment", amount="50", day=DAY)
    asked = write_line(maker, address, "payment", amount="50", day=DAY)
    assert asked.status_code == 422
    page = Page(asked.text)
    assert "Twice?" in page.root.text
    assert page.typed("payment")["payment.amount"] == "50"
    assert (
        write_line(maker, address, "payment", amount="50", day=DAY, again="yes").status_code == 303
    )
    assert len(lines_of(maker, address)) == 2


@pytest.mark.parametrize(
    ("amount", "said"),
    [
        ("-50.01", "more than came"),
        ("0", "must be given"),
        ("1.005", "finer than the smallest coin"),
        ("ten", "cannot be read as a number"),
        ("", "must be given"),
    ],
)
def test_money_that_cannot_be_is_told_beside_it(
    maker: BookMaker, address: str, amount: str, said: str
) -> None:
    write_line(maker, address, "payment", amount="50")
    refused = write_line(maker, address, "payment", amount=amount)
    assert refused.status_code == 422
    assert said in Page(refused.text).said_of("payment.amount")
    assert Page(refused.text).typed("payment")["payment.amount"] == amount


def test_money_is_paid_back_up_to_what_came(maker: BookMaker, address: str) -> None:
    write_line(maker, address, "payment", amount="50")
    write_line(maker, address, "payment", amount="-20")
    assert "£20.00 paid back" in maker.open(f"{address}/making").root.text


def test_yarn_from_the_shelf_goes_down_and_comes_back(maker: BookMaker, address: str) -> None:
    taken = {"colour": "oat", "lot": "771", "grams": "45", "from_shelf": "yes"}
    assert write_line(maker, address, "yarn-taken", **taken).status_code == 303
    assert [lot.grams for lot in lots_on_shelf(maker.book)] == [15]
    entry = entry_of(maker, address)
    correct(maker, entry, **{"yarn-taken__grams": "20"})
    assert [lot.grams for lot in lots_on_shelf(maker.book)] == [40]
    maker.press(f"{entry_of(maker, address)}/back", f"{address}/making")
    assert [lot.grams for lot in lots_on_shelf(maker.book)] == [60]
    assert lines_of(maker, address) == []


def test_the_shelf_is_offered_with_what_it_has_of_the_orders_colours(
    maker: BookMaker, address: str
) -> None:
    page = maker.open(f"{address}/making").root.text
    assert "On the shelf: oat, lot 771, 60 g." in page


def test_grams_beyond_the_lot_are_refused_and_nothing_is_taken(
    maker: BookMaker, address: str
) -> None:
    taken = {"colour": "oat", "lot": "771", "grams": "60.5", "from_shelf": "yes"}
    refused = write_line(maker, address, "yarn-taken", **taken)
    assert refused.status_code == 422
    assert "The shelf has 60 g of this lot" in Page(refused.text).said_of("yarn-taken.grams")
    assert [lot.grams for lot in lots_on_shelf(maker.book)] == [60]


def test_new_balls_are_written_down_with_their_lot_and_cost(maker: BookMaker, address: str) -> None:
    write_line(maker, address, "yarn-taken", colour="oat", grams="100", lot="802", cost="4.60")
    (got,) = lines_of(maker, address)
    assert isinstance(got, YarnTaken)
    assert (got.lot, got.cost, got.from_shelf) == ("802", Decimal("4.60"), False)
    assert "oat: 100 g got for it, lot 802, £4.60 paid" in maker.open(f"{address}/making").root.text


@pytest.mark.parametrize("grams", ["100 g", "0.1 kg", "100g"])
def test_a_weight_is_taken_with_its_unit(maker: BookMaker, address: str, grams: str) -> None:
    write_line(maker, address, "yarn-taken", colour="oat", grams=grams)
    (got,) = lines_of(maker, address)
    assert isinstance(got, YarnTaken)
    assert got.grams == 100
    refused = write_line(maker, address, "yarn-taken", colour="oat", grams="100 cm")
    assert "no unit that is known" in Page(refused.text).said_of("yarn-taken.grams")


def test_a_note_stays_as_it_was_typed(maker: BookMaker, address: str) -> None:
    write_line(maker, address, "remark", text="She likes <rust>.\nWider.")
    (remark,) = lines_of(maker, address)
    assert isinstance(remark, Remark)
    assert remark.text == "She likes <rust>.\nWider."
    assert "She likes <rust>." in maker.open(f"{address}/making").root.text


def test_a_correction_stands_in_the_place_of_the_line_which_stays_struck(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="21", minutes="30")
    (wrong,) = lines_of(maker, address)
    assert isinstance(wrong, Session)
    correct(maker, entry_of(maker, address), session__last_row="12", session__minutes="35")
    assert maker.status == 303
    assert lines_of(maker, address) == [replace(wrong, last_row=12, minutes=35)]
    page = maker.open(f"{address}/making")
    assert [line.text for line in page.root.all("s")] == ["At the hook, 30 min, rows 1 to 21"]
    assert page.labelled("Rows done").attributes["value"] == "12"


def test_a_correction_that_cannot_be_is_told_beside_its_field(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="21", minutes="30")
    page = correct(maker, entry_of(maker, address), session__last_row="9999", session__minutes="")
    assert maker.status == 422
    assert "must be given" in page.said_of("session.minutes")
    assert page.typed("correction")["session.last_row"] == "9999"


@pytest.mark.parametrize("began", ["0001-01-01T00:00:00+05:00", "2026-11-24T09:00:00", "early"])
def test_a_moment_that_no_clock_shows_is_refused_and_the_log_stays_readable(
    maker: BookMaker, address: str, began: str
) -> None:
    tell(maker, address, minutes="30")
    correct(maker, entry_of(maker, address), session__started=began)
    assert maker.status == 422
    maker.open(f"{address}/making")
    assert maker.status == 200


def test_what_is_taken_back_is_struck_and_cannot_be_corrected_any_more(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="21")
    entry = entry_of(maker, address)
    reply = maker.press(f"{entry}/back", f"{address}/making")
    assert reply.location == f"{address}/making#log"
    assert lines_of(maker, address) == []
    assert "Taken back" in maker.open(f"{address}/making").root.text
    for late in (maker.client.get(entry), maker.press(f"{entry}/back", f"{address}/making")):
        assert late.location == f"{address}/making#log"
    assert maker.client.get(f"{entry}/back").location == f"{address}/making#log"


def test_a_stage_is_no_line_to_correct_here(maker: BookMaker, address: str) -> None:
    entries = log_of(maker.book, number_of(address))
    assert maker.client.get(f"{address}/making/{entries[-1].id}").status_code == 404


def test_a_correction_from_before_a_restart_keeps_what_was_typed(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="21")
    entry = entry_of(maker, address)
    fields = maker.open(entry).typed("correction") | {"rows-reached.rows": "12"}
    stale = maker.client.post(entry, data=fields | {"csrf_token": "stale"})
    assert stale.status_code == 409
    fresh = Page(stale.text).typed("correction")
    assert fresh["rows-reached.rows"] == "12"
    maker.client.post(entry, data=fresh)
    (line,) = lines_of(maker, address)
    assert isinstance(line, RowsReached)
    assert line.rows == 12


def test_a_payment_from_before_a_restart_keeps_what_was_typed(
    maker: BookMaker, address: str
) -> None:
    fields = maker.open(f"{address}/making").typed("payment")
    fields |= {"payment.amount": "75", "csrf_token": "stale"}
    reply = maker.client.post(f"{address}/making/lines/payment", data=fields)
    assert reply.status_code == 409
    assert Page(reply.text).typed("payment")["payment.amount"] == "75"


def test_a_form_from_before_a_restart_whose_page_is_gone_says_so(
    maker: BookMaker, address: str
) -> None:
    asked = maker.begin()
    stage = log_of(maker.book, number_of(address))[-1].id
    replies = {
        f"{address}/making/{stage}": (404, "There is no such page."),
        "/orders/99/making": (404, "There is no such page."),
        f"{asked}/making/lines/payment": (422, "Once it is agreed"),
    }
    for form, (status, said) in replies.items():
        reply = maker.client.post(form, data={"csrf_token": "stale"})
        assert (reply.status_code, said in Page(reply.text).root.text) == (status, True)


def test_there_is_no_form_for_other_kinds_of_line(maker: BookMaker, address: str) -> None:
    token = maker.token(f"{address}/making")
    reply = maker.client.post(f"{address}/making/lines/moved", data={"csrf_token": token})
    assert reply.status_code == 404


def test_rows_that_two_sessions_tell_are_said_to_be_worked_again(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="21", minutes="30")
    tell(maker, address, rows="30", minutes="30")
    correct(maker, entry_of(maker, address), session__first_row="18")
    page = maker.open(f"{address}/making").root.text
    assert page.count("(rows 18 to 21 worked again)") == 1
