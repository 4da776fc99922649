"""The receipts and bills of an order, from the deposit to what is due before it is sent."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.workshop.selling import Tax, TaxShown
from quoting.store.papers import papers_of
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import agree, number_of
from tests.web.pages import Page
from tests.web.paper_pages import amounts, papers, pay, receipt_forms, shop, words, write


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", shop()) as maker:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order that is agreed."""
    return agree(maker, order__title="Moorland", order__buyer="Rosalind Quill")


# -- receipts ------------------------------------------------------------------------------------


def test_a_deposit_that_was_written_down_has_a_receipt(maker: BookMaker, address: str) -> None:
    pay(maker, address, "50")
    page = papers(maker, address)
    assert page.table("Payment")[1][1] == "£50.00 received"
    led = write(maker, address, "receipt", start=page)
    assert led == f"{address}/papers#receipt-2026-001"
    receipt = maker.open("/papers/receipt/2026-001")
    said = words(receipt)
    assert receipt.headings == ["Receipt 2026-001"]
    assert "Ottermoor Blankets Otter Lane Ottermoor hello@ottermoor.example" in said
    assert "Moorland" in said
    assert "2026-001 of 25 November 2026" in said
    assert "Rosalind Quill" in said
    assert amounts(receipt)["Paid before"] == "£0.00"
    assert amounts(receipt)["Received now, as a deposit"] == "£50.00"


def test_the_same_payment_has_one_receipt_however_often_it_is_asked(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    page = papers(maker, address)
    first = write(maker, address, "receipt", start=page)
    assert write(maker, address, "receipt", start=page) == first
    assert len(papers_of(maker.book, number_of(address))) == 1
    assert receipt_forms(papers(maker, address)) == []


def test_a_receipt_is_the_same_whatever_becomes_of_the_workshop_and_of_the_money(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    write(maker, address, "receipt")
    before = maker.client.get("/papers/receipt/2026-001").text
    pay(maker, address, "20")
    maker.save(address, order__title="Renamed")
    assert maker.client.get("/papers/receipt/2026-001").text == before


def test_a_receipt_of_a_payment_that_was_corrected_says_so_and_is_cancelled(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    write(maker, address, "receipt")
    links = [
        node.attributes["href"] or "" for node in maker.open(f"{address}/making").root.all("a")
    ]
    correction = next(link for link in links if link.startswith(f"{address}/making/"))
    fields = maker.open(correction).typed("correction") | {"payment.amount": "55"}
    assert maker.client.post(correction, data=fields).status_code == 303
    page = papers(maker, address)
    assert "its payment was corrected since: cancel it" in words(page)
    led = maker.press("/papers/receipt/2026-001/cancel", f"{address}/papers").location
    assert led == f"{address}/papers#receipt-2026-002"
    cancelling = maker.open("/papers/receipt/2026-002")
    assert cancelling.headings == ["Receipt 2026-002, which cancels receipt 2026-001"]
    assert "Receipt 2026-001 no longer holds." in words(cancelling)
    write(maker, address, "receipt")
    assert "£55.00" in words(maker.open("/papers/receipt/2026-003"))
    states = [row[1] for row in papers(maker, address).table("Paper")[1:]]
    assert states == [
        "25 Nov 2026 holds",
        "25 Nov 2026 cancels 2026-001",
        "25 Nov 2026 cancelled by 2026-002",
    ]


def test_to_cancel_twice_makes_one_paper_and_what_cancels_is_not_cancelled(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    write(maker, address, "receipt")
    for _ in range(2):
        maker.press("/papers/receipt/2026-001/cancel", f"{address}/papers")
    assert len(papers_of(maker.book, number_of(address))) == 2
    refused = maker.press("/papers/receipt/2026-002/cancel", f"{address}/papers")
    assert refused.status_code == 422
    assert "This paper cancels 2026-001" in refused.text


def test_a_page_from_before_a_further_line_makes_nothing(maker: BookMaker, address: str) -> None:
    pay(maker, address, "50")
    page = papers(maker, address)
    pay(maker, address, "20")
    fields = page.typed(receipt_forms(page)[0])
    reply = maker.client.post(f"{address}/papers/receipt", data=fields)
    assert reply.status_code == 422
    assert "Something was written down for this order since" in reply.text
    assert papers_of(maker.book, number_of(address)) == ()


# -- bills ---------------------------------------------------------------------------------------


def test_a_bill_says_what_was_offered_what_is_paid_and_what_is_due(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    write(maker, address, "bill", pay_by="2026-12-20")
    bill = maker.open("/papers/bill/2026-001")
    rows = amounts(bill)
    assert rows["Received on 24 November 2026"] == rows["Paid in all"] == "£50.00"
    total, due = (float(rows[name].strip("£")) for name in ("Total", "To pay in all"))
    assert due == total - 50
    assert {
        "The blanket",
        "Delivery",
        "Due before it is sent",
        "Due since you accepted",
    } <= rows.keys()
    assert "Please pay by 20 December 2026." in words(bill)


def test_a_further_bill_takes_the_place_of_the_one_before(maker: BookMaker, address: str) -> None:
    write(maker, address, "bill")
    write(maker, address, "bill")
    pay(maker, address, "50")
    write(maker, address, "bill")
    assert "bill 2026-001" in words(maker.open("/papers/bill/2026-002"))
    states = [row[1] for row in papers(maker, address).table("Paper")[1:]]
    assert states == ["25 Nov 2026 holds", "25 Nov 2026 followed by 2026-002"]
    maker.press("/papers/bill/2026-002/cancel", f"{address}/papers")
    states = [row[1] for row in papers(maker, address).table("Paper")[1:]]
    assert states == [
        "25 Nov 2026 cancels 2026-002",
        "25 Nov 2026 cancelled by 2026-003",
        "25 Nov 2026 holds",
    ]


def test_a_day_that_is_past_is_told_beside_its_field(maker: BookMaker, address: str) -> None:
    fields = papers(maker, address).typed("bill") | {"bill.pay_by": "2026-11-01"}
    reply = maker.client.post(f"{address}/papers/bill", data=fields)
    assert reply.status_code == 422
    page = Page(reply.text)
    assert "is past" in page.said_of("bill.pay_by")
    assert page.typed("bill")["bill.pay_by"] == "2026-11-01"


def test_where_all_is_paid_there_is_nothing_to_bill(maker: BookMaker, address: str) -> None:
    page = papers(maker, address)
    total = amounts_due(page)
    pay(maker, address, total)
    assert "All is paid" in words(papers(maker, address))
    fields = page.typed("bill") | {"seen": papers(maker, address).typed("batch")["seen"]}
    reply = maker.client.post(f"{address}/papers/bill", data=fields)
    assert reply.status_code == 422
    assert "Nothing is due" in reply.text


def amounts_due(page: Page) -> str:
    """Return what a page of papers says is still to be paid."""
    return words(page).split(" still to be paid")[0].rsplit("£", 1)[1]


def test_a_registered_maker_tells_the_tax_of_the_offer(tmp_path: Path) -> None:
    tax = Tax(registered=True, rate=0.2, shown=TaxShown.INCLUDED)
    with maker_with_book(tmp_path / "book.db", shop(tax=tax)) as maker:
        address = agree(maker)
        write(maker, address, "bill")
        bill = maker.open("/papers/bill/2026-001")
        assert "Tax of 20% within the total" in amounts(bill)
        assert "tax document" not in words(bill)
        assert "tax document" in words(papers(maker, address))
