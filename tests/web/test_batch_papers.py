"""The batch record of an order, the card and the label made from it, and the way to all papers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from quoting.core.workshop.own_words import OwnWords
from quoting.store.papers import papers_of
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import DAY, agree, number_of, put_at, write_line
from tests.web.pages import Page
from tests.web.paper_pages import OWN, papers, pay, shop, words, write


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", shop()) as maker:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order that is agreed."""
    return agree(maker, order__title="Moorland", order__buyer="Rosalind Quill")


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
    assert "about 80 × 100 cm" in label


def test_without_words_of_her_own_the_card_says_what_is_usual(tmp_path: Path) -> None:
    with maker_with_book(tmp_path / "book.db", shop(own_words=OwnWords())) as maker:
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
    assert "Width and length go together" in page.root.text
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
    pay(maker, address, "50")
    (link,) = (a for a in maker.open(f"{address}/making").root.all("a") if a.text == "Receipt")
    assert link.attributes["href"] == f"{address}/papers#h-receipts"


def test_each_sheet_is_sent_as_a_pdf_named_after_the_order(maker: BookMaker, address: str) -> None:
    pytest.importorskip("typst")
    write(maker, address, "batch")
    for what in ("batch", "care-card", "label"):
        reply = maker.client.get(f"/papers/{what}/2026-001/paper.pdf")
        assert reply.data.startswith(b"%PDF-"), what
        assert f'filename="{what}-2026-001-moorland.pdf"' in reply.headers["Content-Disposition"]


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
    with maker_with_book(tmp_path / "book.db", shop(own_words=replace(OWN, care=name))) as maker:
        address = agree(maker, order__title=name, order__buyer=name)
        pay(maker, address, "50")
        write(maker, address, "receipt")
        write(maker, address, "bill")
        write(maker, address, "batch")
        for what in ("receipt", "bill", "batch", "care-card", "label"):
            assert name in words(maker.open(f"/papers/{what}/2026-001")), what
        assert name in words(papers(maker, address))
