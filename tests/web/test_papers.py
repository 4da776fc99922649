"""The papers of an order: a payment has a receipt, the rest a bill, the blanket a record."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.selling import Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from quoting.store.papers import papers_of
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import DAY, agree, number_of, put_at, write_line
from tests.web.pages import Page

OWN = OwnWords(contact="hello@ottermoor.example", address="Otter Lane\nOttermoor", care="By hand.")


def shop(**changes: object) -> Workshop:
    """Return the workshop of the scenario, whose maker says some things herself."""
    return sample_workshop(**({"own_words": OWN} | changes))


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    maker = maker_with_book(tmp_path / "book.db", shop())
    with maker.book:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order that is agreed."""
    return agree(maker, order__title="Moorland", order__buyer="Rosalind Quill")


def pay(maker: BookMaker, address: str, amount: str) -> None:
    """Write money down."""
    assert write_line(maker, address, "payment", amount=amount, day=DAY).status_code == 303


def papers(maker: BookMaker, address: str) -> Page:
    """Open the papers of an order."""
    return maker.open(f"{address}/papers")


def write(
    maker: BookMaker,
    address: str,
    kind: str,
    form: str = "",
    start: Page | None = None,
    **typed: str,
) -> str:
    """Press the button of a form of the page, and return where it leads."""
    fields = (start or papers(maker, address)).typed(form or kind)
    fields |= {f"{kind}.{name}": text for name, text in typed.items()}
    reply = maker.client.post(f"{address}/papers/{kind}", data=fields)
    assert reply.status_code == 303, reply.text
    return str(reply.location)


def words(page: Page) -> str:
    """Return what a paper says, its spaces as one."""
    return " ".join(page.root.text.split())


def amounts(page: Page) -> list[list[str]]:
    """Return the names and amounts of a paper."""
    rows = (list(row.all(lambda n: n.tag in {"th", "td"})) for row in page.root.all("tr"))
    return [[" ".join(cell.text.split()) for cell in row] for row in rows]


# -- receipts ------------------------------------------------------------------------------------


def test_a_deposit_that_was_written_down_has_a_receipt(maker: BookMaker, address: str) -> None:
    pay(maker, address, "50")
    page = papers(maker, address)
    assert page.table("Payment")[1][1] == "£50.00 received"
    line = next(
        name for name in page.root.all("form") if "receipt-" in name.attributes.get("id", "")
    )
    led = write(maker, address, "receipt", form=str(line.attributes["id"]))
    assert led == f"{address}/papers#receipt-2026-001"
    receipt = maker.open("/papers/receipt/2026-001")
    said = words(receipt)
    assert receipt.headings == ["Receipt 2026-001"]
    assert "Ottermoor Blankets Otter Lane Ottermoor hello@ottermoor.example" in said
    assert "Moorland" in said
    assert "2026-001 of 25 November 2026" in said
    assert "Rosalind Quill" in said
    assert ["Paid before", "£0.00"] in amounts(receipt)
    assert ["Received now, as a deposit", "£50.00"] in amounts(receipt)


def test_the_same_payment_has_one_receipt_however_often_it_is_asked(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    page = papers(maker, address)
    form = receipt_forms(page)[0]
    first = write(maker, address, "receipt", form=form, start=page)
    assert write(maker, address, "receipt", form=form, start=page) == first
    assert len(papers_of(maker.book, number_of(address))) == 1
    assert receipt_forms(papers(maker, address)) == []


def receipt_forms(page: Page) -> list[str]:
    """Return the names of the forms that write a receipt."""
    names = (str(form.attributes.get("id", "")) for form in page.root.all("form"))
    return [name for name in names if name.startswith("receipt-")]


def test_a_receipt_is_the_same_whatever_becomes_of_the_workshop_and_of_the_money(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    write(maker, address, "receipt", form=receipt_forms(papers(maker, address))[0])
    before = maker.client.get("/papers/receipt/2026-001").text
    pay(maker, address, "20")
    maker.save(address, order__title="Renamed")
    assert maker.client.get("/papers/receipt/2026-001").text == before


def test_a_receipt_of_a_payment_that_was_corrected_says_so_and_is_cancelled(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    write(maker, address, "receipt", form=receipt_forms(papers(maker, address))[0])
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
    write(maker, address, "receipt", form=receipt_forms(papers(maker, address))[0])
    assert "£55.00" in words(maker.open("/papers/receipt/2026-003"))
    states = [row[2] for row in papers(maker, address).table("Paper")[1:]]
    assert states == ["holds", "cancels 2026-001", "cancelled by 2026-002"]


def test_to_cancel_twice_makes_one_paper_and_what_cancels_is_not_cancelled(
    maker: BookMaker, address: str
) -> None:
    pay(maker, address, "50")
    write(maker, address, "receipt", form=receipt_forms(papers(maker, address))[0])
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
    rows = dict(row for row in amounts(bill) if len(row) == 2)
    assert rows["Received on 24 November 2026"] == rows["Paid in all"] == "£50.00"
    total, due = (float(rows[name].strip("£")) for name in ("Total", "Due in all"))
    assert due == total - 50
    assert {"The blanket", "Delivery", "Balance, due before it is sent"} <= rows.keys()
    assert "Please pay by 20 December 2026." in words(bill)


def test_a_further_bill_takes_the_place_of_the_one_before(maker: BookMaker, address: str) -> None:
    write(maker, address, "bill")
    write(maker, address, "bill")
    pay(maker, address, "50")
    write(maker, address, "bill")
    assert "bill 2026-001" in words(maker.open("/papers/bill/2026-002"))
    states = [row[2] for row in papers(maker, address).table("Paper")[1:]]
    assert states == ["holds", "followed by 2026-002"]


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
    maker = maker_with_book(tmp_path / "book.db", shop(tax=tax))
    with maker.book:
        address = agree(maker)
        write(maker, address, "bill")
        bill = maker.open("/papers/bill/2026-001")
        assert any(row[0] == "Tax of 20% within the total" for row in amounts(bill))
        assert "tax document" not in words(bill)
        assert "tax document" in words(papers(maker, address))


# -- batch records -------------------------------------------------------------------------------


def test_a_batch_record_names_the_lots_that_were_taken(maker: BookMaker, address: str) -> None:
    colours = colours_of(maker, address)
    write_line(maker, address, "yarn-taken", colour=colours[0], grams="200", lot="771", day=DAY)
    write_line(maker, address, "yarn-taken", colour=colours[0], grams="50.5", lot="771", day=DAY)
    write_line(maker, address, "yarn-taken", colour=colours[0], grams="100", lot="802", day=DAY)
    put_at(maker, address, "on-the-hook", "finished")
    led = write(maker, address, "batch", width="81 cm", height="99 cm", weight="612 g")
    assert led == f"{address}/papers#batch-2026-001"
    record = maker.open("/papers/batch/2026-001")
    assert record.table("Dye lot")[1:3] == [
        ["moor aran", colours[0], "771", "251 g"],
        ["moor aran", colours[0], "802", "100 g"],
    ]
    said = words(record)
    assert "81 × 99 cm, measured" in said
    assert "612 g, weighed" in said
    assert "By hand." in said


def colours_of(maker: BookMaker, address: str) -> list[str]:
    """Return the colours that a page of an order offers."""
    select = maker.open(f"{address}/making").with_id("yarn-taken.colour")
    return [option.attributes["value"] or "" for option in select.all("option")]


def test_care_card_and_label_are_made_from_the_record_and_bear_its_number(
    maker: BookMaker, address: str
) -> None:
    write(maker, address, "batch")
    card, label = (words(maker.open(f"/papers/{what}/2026-001")) for what in ("care-card", "label"))
    for said in (card, label):
        assert "Batch 2026-001" in said
        assert "moor aran 100 % wool" in said
        assert "Loose bedding" in said
    assert "Care By hand." in card
    assert "about 80.1 × 99.8 cm" in label or "about" in label


def test_without_words_of_her_own_the_card_says_what_is_usual(tmp_path: Path) -> None:
    maker = maker_with_book(tmp_path / "book.db", shop(own_words=OwnWords()))
    with maker.book:
        write(maker, agree(maker), "batch")
        said = words(maker.open("/papers/care-card/2026-001"))
        assert "Wash as the yarn’s label says" in said


def test_another_record_is_written_once_the_first_is_cancelled(
    maker: BookMaker, address: str
) -> None:
    page = papers(maker, address)
    write(maker, address, "batch", start=page)
    fields = page.typed("batch") | {"batch.weight": "600 g"}
    reply = maker.client.post(f"{address}/papers/batch", data=fields)
    assert reply.status_code == 422
    assert "Batch record 2026-001 says otherwise and holds" in reply.text
    maker.press("/papers/batch/2026-001/cancel", f"{address}/papers")
    write(maker, address, "batch", weight="600 g")
    assert "600 g, weighed" in words(maker.open("/papers/batch/2026-003"))
    assert maker.client.get("/papers/care-card/2026-002").status_code == 404


def test_what_is_wrong_with_a_measure_is_told_beside_it(maker: BookMaker, address: str) -> None:
    fields = papers(maker, address).typed("batch")
    fields |= {"batch.width": "8O cm", "batch.finished": "2027-01-01"}
    reply = maker.client.post(f"{address}/papers/batch", data=fields)
    page = Page(reply.text)
    assert reply.status_code == 422
    assert page.said_of("batch.width")
    assert page.typed("batch")["batch.width"] == "8O cm"
    fields |= {"batch.width": "80 cm"}
    page = Page(maker.client.post(f"{address}/papers/batch", data=fields).text)
    assert page.said_of("batch.height")
    fields |= {"batch.height": "100 cm"}
    page = Page(maker.client.post(f"{address}/papers/batch", data=fields).text)
    assert "still to come" in page.said_of("batch.finished")


# -- the way there, and what is in any script -----------------------------------------------------


def test_the_papers_are_a_link_away_from_the_order_and_from_its_making(
    maker: BookMaker, address: str
) -> None:
    for page in (address, f"{address}/making"):
        links = [node.attributes.get("href") for node in maker.open(page).root.all("a")]
        assert f"{address}/papers" in links


def test_an_order_that_is_not_agreed_has_no_papers_yet(maker: BookMaker) -> None:
    assert "Once it is agreed" in words(maker.open(f"{maker.begin()}/papers"))
    assert maker.client.get("/orders/99/papers").status_code == 404
    assert maker.client.get("/papers/bill/2026-001").status_code == 404
    assert maker.client.get("/papers/bill/2026-001/2").status_code == 404


def test_no_paper_is_made_by_opening_an_address_or_without_a_token(
    maker: BookMaker, address: str
) -> None:
    for kind in ("receipt", "bill", "batch"):
        assert maker.client.get(f"{address}/papers/{kind}").location == f"{address}/papers"
        assert maker.client.post(f"{address}/papers/{kind}").status_code == 409
    write(maker, address, "bill")
    assert maker.client.get("/papers/bill/2026-001/cancel").location == f"{address}/papers"
    assert maker.client.post("/papers/bill/2026-001/cancel").status_code == 409
    assert len(papers_of(maker.book, number_of(address))) == 1


def test_what_was_typed_is_there_once_more_after_a_restart(maker: BookMaker, address: str) -> None:
    stale = {"bill.pay_by": "2026-12-20", "csrf_token": "old"}
    page = Page(maker.client.post(f"{address}/papers/bill", data=stale).text)
    assert page.typed("bill")["bill.pay_by"] == "2026-12-20"
    assert "Once more, please." in words(page)


@pytest.mark.parametrize("name", ["نسيم", "שרה", "羊毛毯", "🧶 Wool", "<b>& #let x</b>"])
def test_a_name_in_any_script_is_printed_as_it_is(tmp_path: Path, name: str) -> None:
    maker = maker_with_book(tmp_path / "book.db", shop(own_words=replace(OWN, care=name)))
    with maker.book:
        address = agree(maker, order__title=name, order__buyer=name)
        pay(maker, address, "50")
        write(maker, address, "receipt", form=receipt_forms(papers(maker, address))[0])
        write(maker, address, "bill")
        write(maker, address, "batch")
        for sheet in ("receipt", "bill", "batch", "care-card", "label"):
            assert name in words(maker.open(f"/papers/{sheet}/2026-001")), sheet
        assert name in words(papers(maker, address))
