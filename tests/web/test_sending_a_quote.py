"""A quote is printed, saved as a PDF and copied as a message, from wherever the maker sees it."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from exports.papers import typesetter
from exports.papers.message import paper_text
from exports.papers.offers import given_paper
from quoting.core.quote.given_number import GivenNumber
from quoting.store.quotes import kept_quote
from quoting.store.workshops import save_workshop
from tests.examples import sample_workshop
from tests.papers.reading import words_of
from tests.programs import require_package
from tests.web.book_pages import BEGINNING, BookMaker, maker_with_book
from tests.web.conftest import Maker, maker_in
from tests.web.pages import Page

SIZE = {"blanket__width": "80 cm", "blanket__height": "100 cm"}
GIVEN = "/quotes/2026-001"
PDF, MESSAGE = "/quote/file.pdf", "/quote/message"


@pytest.fixture
def maker() -> Maker:
    """Return a maker without a book."""
    return maker_in(sample_workshop())


@pytest.fixture
def keeper(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as keeper:
        yield keeper


def message_of(page: Page) -> str:
    """Return the text to be copied."""
    return "".join(map(str, page.with_id("message").inside)).removeprefix("\n")


def sent_again(page: Page) -> dict[str, str]:
    """Return the fields that a page's bar sends."""
    return {n.attributes["name"]: n.attributes["value"] for n in page.root.all(is_sent)}


def is_sent(node: object) -> bool:
    attributes = getattr(node, "attributes", {})
    return attributes.get("type") == "hidden" and "name" in attributes


# -- the worktable -------------------------------------------------------------------------------


def test_the_worktable_gives_its_quote_as_a_pdf(maker: Maker) -> None:
    require_package("typst")
    reply = maker.client.post(PDF, data=maker.open("/").typed())
    assert (reply.status_code, reply.mimetype) == (200, "application/pdf")
    assert re.search(r'filename="quote-2026-[\w-]+\.pdf"', reply.headers["Content-Disposition"])
    assert reply.headers["Cache-Control"] == "no-store"
    assert "Cot blanket in moorland stripes" in words_of(reply.data)


def test_the_worktable_gives_its_quote_as_a_message(maker: Maker) -> None:
    page = maker.send(MESSAGE)
    assert "Cot blanket in moorland stripes\nQuote 2026-" in message_of(page)
    assert "Total: £" in message_of(page)


def test_the_page_for_the_buyer_has_both_and_sends_the_order_along(maker: Maker) -> None:
    page = maker.send("/quote", order__title="Moorland")
    buttons = {n.text: n.attributes.get("formaction") for n in page.root.all("button")}
    assert buttons == {"Print": None, "Save as PDF": PDF, "Copy as message": MESSAGE}
    again = Page(maker.client.post(MESSAGE, data=sent_again(page)).text)
    assert message_of(again) == message_of(page)
    assert message_of(page).startswith("Moorland\n")


def test_what_wants_a_script_is_hidden_without_one(maker: Maker) -> None:
    page = maker.send("/quote")
    hidden = [n.text for n in page.root.all("button") if "hidden" in n.attributes]
    assert hidden == ["Print"]
    assert "hidden" in page.with_id("message").attributes


@pytest.mark.parametrize("address", [PDF, MESSAGE])
def test_an_order_that_is_not_whole_is_shown_with_its_mistakes(maker: Maker, address: str) -> None:
    typed = maker.open("/").typed() | {"blanket.width": ""}
    reply = maker.client.post(address, data=typed)
    assert reply.status_code == 422
    assert "order" in {n.attributes.get("id") for n in Page(reply.text).root.all("form")}


@pytest.mark.parametrize("address", [PDF, MESSAGE])
def test_an_address_that_is_opened_anew_leads_to_the_order(maker: Maker, address: str) -> None:
    reply = maker.client.get(address)
    assert (reply.status_code, reply.location) == (302, "/")


def test_markup_in_a_name_is_no_markup_of_a_page(maker: Maker) -> None:
    name = "<b>Tam</b> </textarea><script>alert(1)</script>"
    for address in ("/quote", MESSAGE):
        page = maker.send(address, order__title=name)
        assert message_of(page).splitlines()[0] == name
        assert not [n for n in page.root.all("script") if "src" not in n.attributes]


def test_a_kept_order_is_sent_as_not_given_yet(keeper: BookMaker) -> None:
    fields = keeper.open(keeper.begin(**SIZE)).typed()
    assert "(not given yet)" in Page(keeper.client.post(MESSAGE, data=fields).text).root.text


# -- a quote that was given ----------------------------------------------------------------------


def test_a_given_quote_is_sent_as_it_was_given_whatever_has_changed(keeper: BookMaker) -> None:
    keeper.give(keeper.begin(**SIZE))
    frozen = kept_quote(keeper.book, GivenNumber(2026, 1)).frozen
    before = keeper.client.get(f"{GIVEN}/quote.pdf").data
    save_workshop(keeper.book, replace(sample_workshop(), name="Fen Throws"), now=BEGINNING)
    told = message_of(keeper.open(f"{GIVEN}/message"))
    assert told == paper_text(given_paper(frozen.offer, frozen.page))
    assert "Ottermoor Blankets" in told
    require_package("typst")
    reply = keeper.client.get(f"{GIVEN}/quote.pdf")
    assert (reply.data, reply.mimetype) == (before, "application/pdf")
    assert "Quote 2026-001 of 25 November 2026" in words_of(reply.data)


def test_nothing_is_worked_out_again_for_a_given_quote(
    keeper: BookMaker, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper.give(keeper.begin(**SIZE))

    def refuse(*_: object, **__: object) -> None:
        raise AssertionError("worked out again")

    monkeypatch.setattr("quoting.store.quote_content.quote_order", refuse)
    monkeypatch.setattr("exports.papers.pictures.draw_blanket", refuse)
    for name in ("message", "quote.pdf"):
        assert keeper.client.get(f"{GIVEN}/{name}").status_code in {200, 501}


def test_the_makers_page_has_the_ways_to_send_it_and_the_buyers_page_has_none(
    keeper: BookMaker,
) -> None:
    keeper.give(keeper.begin(**SIZE))
    page = keeper.open(GIVEN)
    links = {n.attributes["href"] for n in page.root.all("a")}
    assert {f"{GIVEN}/page", f"{GIVEN}/message"} <= links
    assert message_of(page) == message_of(keeper.open(f"{GIVEN}/message"))
    frozen = keeper.client.get(f"{GIVEN}/page").text
    for part in ("<script", "<form", "<button", "<textarea", "csrf"):
        assert part not in frozen, part


@pytest.mark.parametrize("name", ["quote.pdf", "message"])
def test_a_quote_that_is_not_there_is_not_sent(keeper: BookMaker, name: str) -> None:
    assert keeper.client.get(f"/quotes/2026-009/{name}").status_code == 404


# -- without a typesetter ------------------------------------------------------------------------


def test_without_a_typesetter_the_pages_say_what_to_install(
    maker: Maker, keeper: BookMaker, monkeypatch: pytest.MonkeyPatch
) -> None:
    typesetter.can_set.cache_clear()
    monkeypatch.setitem(sys.modules, "typst", None)
    try:
        keeper.give(keeper.begin(**SIZE))
        for page in (maker.send("/quote"), keeper.open(GIVEN)):
            assert "pip install typst" in page.root.text
            assert "Save as PDF" not in page.root.text
        assert "PDF" not in {n.text for n in maker.open("/").root.all("button")}
        reply = maker.client.post(PDF, data=maker.open("/").typed())
        assert reply.status_code == 501
        assert "pip install typst" in reply.text
        assert keeper.client.get(f"{GIVEN}/quote.pdf").status_code == 501
    finally:
        typesetter.can_set.cache_clear()
