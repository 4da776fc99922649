"""Whatever the maker works from or hands over is saved as a PDF that says what its page says."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.examples import sample_workshop
from tests.papers.reading import words_of
from tests.programs import require_package
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import Maker
from tests.web.making_pages import agree, number_of
from tests.web.paper_pages import papers, pay, write
from tests.web.test_card_of_choices import KEYS


@pytest.fixture
def keeper(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker with an agreed order in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as keeper:
        yield keeper


@pytest.fixture
def address(keeper: BookMaker) -> str:
    """Return an order that is agreed."""
    return agree(keeper, order__title="Moorland", order__buyer="Rosalind Quill")


@pytest.fixture(autouse=True)
def typesetter() -> None:
    """Leave the tests out where nothing sets a PDF."""
    require_package("typst")


def file_at(maker: Maker, address: str) -> str:
    """Return the words of the PDF at an address."""
    reply = maker.client.get(address)
    assert (reply.status_code, reply.mimetype) == (200, "application/pdf")
    return words_of(reply.data)


def file_of(maker: Maker, address: str, fields: dict[str, object]) -> str:
    """Return the words of the PDF that a form is answered with."""
    reply = maker.client.post(address, data=fields)
    assert (reply.status_code, reply.mimetype) == (200, "application/pdf")
    return words_of(reply.data)


def test_the_guide_of_a_kept_order(keeper: BookMaker, address: str) -> None:
    words = file_at(keeper, f"{address}/guide/file.pdf")
    assert "chain 102" in words
    assert "Working guide" in words


def test_the_guide_and_the_list_of_the_worktable(maker: Maker) -> None:
    fields = dict(maker.open().typed())
    assert "chain 100" in file_of(maker, "/guide/file.pdf", fields).casefold()
    assert "moor aran" in file_of(maker, "/shopping/file.pdf", fields)


@pytest.mark.parametrize("what", ["guide", "shopping"])
def test_an_order_that_is_not_whole_is_put_right_before_a_file_is_made(
    maker: Maker, what: str
) -> None:
    maker.send(f"/{what}/file.pdf", blanket__width="")
    assert maker.status == 422


@pytest.mark.parametrize("what", ["guide", "shopping"])
def test_such_an_address_opened_anew_leads_to_the_order(maker: Maker, what: str) -> None:
    assert maker.client.get(f"/{what}/file.pdf").location == "/"


def test_the_list_of_all_agreed_orders_and_of_one(keeper: BookMaker, address: str) -> None:
    for place in ("/orders/shopping/file.pdf", f"{address}/shopping/file.pdf"):
        assert "Moorland" in file_at(keeper, place)
    other = f"/orders/shopping/file.pdf?asked=yes&order={number_of(address) + 1}"
    assert keeper.client.get(other).status_code == 404


def test_a_receipt_as_a_file_and_as_a_message(keeper: BookMaker, address: str) -> None:
    pay(keeper, address, "50")
    write(keeper, address, "receipt", start=papers(keeper, address))
    receipt = "/papers/receipt/2026-001"
    assert "£50.00" in file_at(keeper, f"{receipt}/paper.pdf")
    message = keeper.open(f"{receipt}/message").with_id("message")
    assert "Received now, as a deposit: £50.00" in message.text
    bar = {b.text: b.attributes for b in keeper.open(receipt).root.all("button")}
    assert bar["Copy as message"]["formaction"] == f"{receipt}/message"


def test_a_card_of_choices_as_a_file_and_as_a_message(maker: Maker) -> None:
    fields: dict[str, object] = {**maker.open("/sizes").typed(), "choice": [KEYS[0], KEYS[2]]}
    assert "A choice for Rosalind Quill" in file_of(
        maker, "/sizes/card", {**fields, "alone": "pdf"}
    )
    reply = maker.client.post("/sizes/card", data={**fields, "alone": "message"})
    assert "A choice for Rosalind Quill" in reply.text
    assert "<textarea" in reply.text
