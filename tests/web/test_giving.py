"""A quote is given from the worktable: numbered, frozen, and the same to the byte ever after."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from decimal import Decimal
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook

from quoting.core.order.stage import Stage
from quoting.core.quote.given_number import GivenNumber
from quoting.store.orders import kept_order
from quoting.store.quotes import kept_quote, quote_lines
from quoting.store.workshops import save_workshop
from tests.examples import sample_workshop
from tests.store.given import put_at
from tests.web.book_pages import BEGINNING, BookMaker, maker_with_book

SIZE = {"blanket__width": "80 cm", "blanket__height": "100 cm"}
FIRST = "/quotes/2026-001"


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


def id_of(address: str) -> int:
    return int(address.rsplit("/", 1)[1])


def dearer(maker: BookMaker) -> None:
    """Have an hour cost more from now on."""
    pay = replace(sample_workshop().pay, making_per_hour=Decimal("20.00"))
    save_workshop(maker.book, sample_workshop(pay=pay), now=BEGINNING)


def text_of(maker: BookMaker, address: str) -> str:
    return " ".join(maker.open(address).with_id("main").text.split())


# -- giving --------------------------------------------------------------------------------------


def test_a_whole_order_is_given_with_one_button_beside_its_figures(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    assert "Give this quote" in maker.open(address).root.text
    given = maker.give(address)
    assert (given.status_code, given.location) == (303, FIRST)
    assert kept_order(maker.book, id_of(address)).stage is Stage.QUOTED
    said = text_of(maker, FIRST)
    assert "Quote 2026-001" in said
    assert "version 1 of your workshop" in said


def test_what_is_typed_is_saved_before_it_is_given(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    maker.give(address, order__title="Moorland", order__buyer="Rosalind Quill")
    assert kept_order(maker.book, id_of(address)).content.title == "Moorland"
    frozen = kept_quote(maker.book, GivenNumber(2026, 1)).frozen
    assert (frozen.order.title, frozen.offer.buyer) == ("Moorland", "Rosalind Quill")


def test_the_number_is_the_one_given_wherever_it_stands(maker: BookMaker) -> None:
    maker.give(maker.begin(**SIZE))
    frozen = kept_quote(maker.book, GivenNumber(2026, 1)).frozen
    assert frozen.offer.number == frozen.results["quote"]["number"] == "2026-001"
    assert "with its number, 2026-001, by" in frozen.page
    assert "Quote 2026-001 of 25 November 2026" in frozen.page
    assert "not given" not in frozen.page
    assert frozen.reckoned_again().number == "2026-001"


def test_an_order_that_is_not_whole_is_not_given_and_keeps_what_was_typed(maker: BookMaker) -> None:
    address = maker.begin(blanket__width="80 cm")
    refused = maker.give(address, order__notes="wool wash")
    assert refused.status_code == 422
    assert "wool wash" in refused.text
    assert quote_lines(maker.book, id_of(address)) == ()


def test_a_second_press_of_the_button_gives_the_same_quote(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    page = maker.open(address)
    assert [maker.give(address, page).location for _ in range(2)] == [FIRST, FIRST]
    assert len(quote_lines(maker.book, id_of(address))) == 1


def test_a_quote_given_while_another_tab_changes_the_order_is_told_and_not_given(
    maker: BookMaker,
) -> None:
    address = maker.begin(**SIZE)
    one, other = maker.open(address), maker.open(address)
    maker.save(address, one, order__title="From the desk")
    late = maker.give(address, other, order__title="From the sofa")
    assert late.status_code == 422
    assert "This order was changed on another page" in late.text
    assert "From the sofa" in late.text
    assert quote_lines(maker.book, id_of(address)) == ()
    assert kept_order(maker.book, id_of(address)).content.title == "From the desk"


def test_an_order_without_work_to_do_is_not_quoted_and_the_way_on_is_told(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    page = maker.open(address)
    put_at(maker.book, id_of(address), Stage.FINISHED)
    assert "Give this quote" not in maker.open(address).root.text
    late = maker.give(address, page, order__title="Another")
    assert late.status_code == 422
    assert "Bring it back first" in late.text
    assert f'href="{address}"' in late.text


def test_an_order_that_is_not_given_says_so_where_its_number_would_stand(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    typed = maker.open(address).typed()
    page = maker.client.post("/quote", data=typed)
    assert "Quote (not given yet) of 25 November 2026" in page.text
    assert "it has no number, and cannot be accepted" in page.text
    book = load_workbook(BytesIO(maker.client.post("/workbook", data=typed).data))
    assert book.properties.title == "Costing of quote (not given yet)"


# -- the same ever after -------------------------------------------------------------------------


def test_a_quote_prints_the_same_to_the_byte_after_a_price_has_changed(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    maker.give(address)
    before = maker.client.get(f"{FIRST}/page")
    costing, results = (
        maker.client.get(f"{FIRST}/{of}") for of in ("costing.xlsx", "results.json")
    )
    dearer(maker)
    maker.save(address, order__title="Another title")
    after = maker.client.get(f"{FIRST}/page")
    assert after.data == before.data
    assert after.mimetype == "text/html"
    assert after.headers["Content-Security-Policy"]
    assert after.headers["Cache-Control"] == "private, no-store"
    assert maker.client.get(f"{FIRST}/results.json").data == results.data
    assert figures_in(maker.client.get(f"{FIRST}/costing.xlsx").data) == figures_in(costing.data)


def figures_in(content: bytes) -> list[list[object]]:
    book = load_workbook(BytesIO(content), data_only=True)
    assert book.properties.title == "Costing of quote 2026-001"
    return [[cell.value for cell in row] for sheet in book for row in sheet.iter_rows()]


def test_the_page_that_was_shown_and_the_page_that_was_given_differ_in_the_number_alone(
    maker: BookMaker,
) -> None:
    address = maker.begin(**SIZE)
    shown = maker.client.post("/quote", data=maker.open(address).typed()).text
    maker.give(address)
    given = maker.client.get(f"{FIRST}/page").text
    papers = (page[page.index("<main") :].splitlines() for page in (shown, given))
    pairs = zip(*papers, strict=True)
    assert all("2026-001" in after for before, after in pairs if before != after)


def test_the_figures_of_a_quote_go_out_as_they_were(maker: BookMaker) -> None:
    maker.give(maker.begin(**SIZE))
    reply = maker.client.get(f"{FIRST}/results.json")
    assert 'filename="quote-2026-001-blanket.json"' in reply.headers["Content-Disposition"]
    frozen = kept_quote(maker.book, GivenNumber(2026, 1)).frozen
    assert json.loads(reply.data) == frozen.results


# -- versions and days ---------------------------------------------------------------------------


def test_what_has_changed_is_told_and_given_as_the_next_version(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    maker.give(address)
    assert "Nothing: given today, it would say the same." in text_of(maker, FIRST)
    dearer(maker)
    maker.save(address, blanket__width="90 cm")
    said = text_of(maker, FIRST)
    assert "The order was changed. Your workshop was changed. Given today, it would come" in said
    table = maker.open(FIRST).table("What the buyer reads")
    assert "Total" in [row[0] for row in table]
    revision = str(kept_order(maker.book, id_of(address)).revision)
    given = maker.press(f"{address}/give-as-kept", FIRST, revision=revision)
    assert given.location == f"{FIRST}/2"
    assert "Quote 2026-001/2" in text_of(maker, given.location)
    assert f"{FIRST}/2" in maker.client.get(FIRST).text


def test_a_version_is_not_given_of_an_order_that_the_page_has_not_shown(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    maker.give(address)
    dearer(maker)
    shown = str(kept_order(maker.book, id_of(address)).revision)
    maker.save(address, blanket__width="90 cm")
    late = maker.press(f"{address}/give-as-kept", FIRST, revision=shown)
    assert late.status_code == 422
    assert "Look at the order as it is now" in late.text
    assert len(quote_lines(maker.book, id_of(address))) == 1


def test_the_worktable_lists_its_quotes_and_says_what_has_changed_since(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    assert "No quote was given yet" in text_of(maker, address)
    maker.give(address)
    assert "2026-001 25 November 2026 valid until" in text_of(maker, address)
    assert "was changed since" not in text_of(maker, address)
    maker.save(address, blanket__width="90 cm")
    assert "The order was changed since quote 2026-001 was given." in text_of(maker, address)


def test_numbers_begin_anew_with_the_year_of_her_calendar(tmp_path: Path) -> None:
    day = [date(2026, 12, 31)]
    with maker_with_book(tmp_path / "book.db", sample_workshop(), today=lambda: day[0]) as maker:
        first, second = maker.begin(**SIZE), maker.begin(**SIZE)
        assert maker.give(first).location == FIRST
        day[0] = date(2027, 1, 1)
        assert maker.give(second).location == "/quotes/2027-001"
        assert maker.give(first, order__title="Another").location == f"{FIRST}/2"


@pytest.mark.parametrize("address", ["/quotes/2026-009", "/quotes/2026-001/7", "/quotes/2026-000"])
def test_a_quote_that_there_is_not_is_no_page(maker: BookMaker, address: str) -> None:
    maker.give(maker.begin(**SIZE))
    assert maker.client.get(address).status_code == 404


def test_an_address_of_a_deed_leads_to_what_it_is_about(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    maker.give(address)
    assert maker.client.get(f"{FIRST}/accept").location == FIRST
    assert maker.client.get(f"{address}/give").location == address
