"""Orders of a book: kept as they are typed, and nothing of them lost."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.order.stage import Stage
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import load_order_text, order_text
from quoting.store.order_list import OrderQuery, list_orders
from quoting.store.orders import asides_of, kept_order
from tests.examples import sample_order, sample_workshop
from tests.store.given import put_at
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import ORDER
from tests.web.pages import Page

SIZE = {"blanket__width": "80 cm", "blanket__height": "100 cm"}


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


def id_of(address: str) -> int:
    """Return the number of the order at an address."""
    return int(address.rsplit("/", 1)[1])


def test_the_first_page_of_a_book_is_its_list_of_orders(maker: BookMaker) -> None:
    assert maker.client.get("/").location == "/orders"
    assert "No orders yet" in maker.open("/orders").root.text


def test_a_new_order_is_kept_before_anything_is_typed(maker: BookMaker) -> None:
    address = maker.press("/orders/new", "/orders").location
    kept = kept_order(maker.book, id_of(address))
    assert (kept.stage, kept.content.title) == (Stage.ASKED, "Blanket")
    assert maker.open(address).typed()["order.title"] == "Blanket"


def test_what_is_saved_comes_back_as_it_was_typed_with_its_mistakes(maker: BookMaker) -> None:
    address = maker.begin(
        order__title="Moorland", order__buyer="Rosalind Quill", blanket__width="eighty"
    )
    typed = maker.open(address).typed()
    assert typed["blanket.width"] == "eighty"
    assert typed["order.buyer"] == "Rosalind Quill"
    kept = kept_order(maker.book, id_of(address)).content
    assert (kept.title, kept.figures, kept.order) == ("Moorland", None, None)


def test_a_whole_order_is_kept_with_the_figures_that_its_page_shows(maker: BookMaker) -> None:
    address = maker.begin(**SIZE, order__wanted_by="2027-03-20")
    kept = kept_order(maker.book, id_of(address)).content
    assert kept.figures is not None
    assert kept.order is not None
    assert str(kept.figures.price) in maker.open(address).root.text
    assert str(kept.wanted_by) == "2027-03-20"


def test_a_button_for_a_line_saves_what_it_did(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    fields = maker.open(address).typed()
    page = maker.client.post(address, data=fields | {"do": "add extras"})
    assert page.status_code == 200
    assert "extras.1.what" in kept_order(maker.book, id_of(address)).content.typed
    assert "extras.1.what" in maker.open(address).typed()


def test_a_save_as_one_types_says_when_it_was_and_needs_no_page(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    fields = maker.open(address).typed() | {"order.title": "Half ty"}
    said = maker.client.post(f"{address}/save", data=fields)
    assert "Saved at " in said.text
    assert said.headers["Cache-Control"] == "private, no-store"
    assert kept_order(maker.book, id_of(address)).content.title == "Half ty"


def test_of_two_saves_of_a_page_the_one_sent_later_stands(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    fields = maker.open(address).typed()
    for turn, title in (("2000.5", "Later"), ("1000.5", "Sooner")):
        maker.client.post(f"{address}/save", data=fields | {"order.title": title, "turn": turn})
    assert kept_order(maker.book, id_of(address)).content.title == "Later"


def test_a_late_save_from_another_page_is_told_and_loses_nothing(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    one, other = maker.open(address), maker.open(address)
    maker.save(address, one, order__title="From the desk")
    late = maker.save(address, other, order__title="From the sofa", order__notes="wool wash")
    assert "This order was changed on another page" in late.text
    assert "wool wash" in late.text
    assert kept_order(maker.book, id_of(address)).content.title == "From the desk"
    page = maker.open(address)
    assert "titled “From the sofa”" in page.root.text
    (aside,) = asides_of(maker.book, id_of(address))
    reply = maker.press(f"{address}/aside", address, do="begin", writer=aside.writer)
    own = kept_order(maker.book, id_of(reply.location)).content
    assert (own.title, own.typed["order.notes"]) == ("From the sofa", ("wool wash",))
    assert asides_of(maker.book, id_of(address)) == ()


def test_what_was_set_aside_can_be_thrown_away(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    one, other = maker.open(address), maker.open(address)
    maker.save(address, one, order__title="From the desk")
    maker.save(address, other, order__title="From the sofa")
    (aside,) = asides_of(maker.book, id_of(address))
    maker.press(f"{address}/aside", address, do="drop", writer=aside.writer)
    assert asides_of(maker.book, id_of(address)) == ()
    assert len(list_orders(maker.book, OrderQuery()).lines) == 1


def test_an_order_is_called_off_and_brought_back_to_its_stage(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    put_at(maker.book, id_of(address), Stage.AGREED)
    maker.press(f"{address}/stage", "/orders", stage="called-off")
    assert "This order was called off" in maker.open(address).root.text
    maker.press(f"{address}/bring-back", "/orders")
    assert kept_order(maker.book, id_of(address)).stage is Stage.AGREED


def test_a_stage_that_there_is_none_of_is_refused(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    assert maker.press(f"{address}/stage", address, stage="dreamt").status_code == 400
    assert kept_order(maker.book, id_of(address)).stage is Stage.ASKED


def test_a_copy_is_an_order_of_its_own(maker: BookMaker) -> None:
    address = maker.begin(**SIZE, order__title="Moorland")
    copy = maker.press(f"{address}/copy", address).location
    maker.save(copy, order__title="Seaside")
    assert kept_order(maker.book, id_of(address)).content.title == "Moorland"


def test_an_order_file_becomes_an_order_and_goes_out_as_one(maker: BookMaker) -> None:
    text = order_text(sample_order(), Vocabulary.US)
    address = maker.hand_in("/orders/read", "/orders", text).location
    sent = maker.client.post("/order-file", data=maker.open(address).typed())
    order = load_order_text(sent.text, sample_workshop())
    assert (order.title, order.buyer, order.extras) == (ORDER.title, ORDER.buyer, ORDER.extras)
    assert order.design.border == ORDER.design.border


def test_an_order_file_with_mistakes_begins_nothing(maker: BookMaker) -> None:
    reply = maker.hand_in("/orders/read", "/orders", "[order]\ntitle = 3\n")
    assert reply.status_code == 422
    assert list_orders(maker.book, OrderQuery()).lines == ()


def test_an_order_goes_to_sizes_and_comes_back_as_itself(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    sizes = maker.client.post("/sizes/of-order", data=maker.open(address).typed())
    assert f'data-home="{address}"' in sizes.text
    back = maker.client.post("/sizes/take", data=Page(sizes.text).typed())
    assert f'action="{address}"' in back.text
    assert len(list_orders(maker.book, OrderQuery()).lines) == 1


def test_an_order_that_is_not_there_is_told(maker: BookMaker) -> None:
    assert "There is no such order in the book" in maker.open("/orders/77").root.text
    assert maker.status == 404


def test_a_form_of_another_order_is_not_taken(maker: BookMaker) -> None:
    one, other = maker.begin(**SIZE), maker.begin(**SIZE)
    assert maker.client.post(f"{one}/save", data=maker.open(other).typed()).status_code == 400


@pytest.mark.parametrize("deed", ["save", "copy", "stage", "bring-back", "aside"])
def test_no_order_is_changed_by_opening_an_address(deed: str, maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    before = kept_order(maker.book, id_of(address))
    assert maker.client.get(f"{address}/{deed}").location == address
    assert kept_order(maker.book, id_of(address)) == before


@pytest.mark.parametrize("deed", ["/save", "/copy", "/stage", "/bring-back", "/aside", ""])
def test_no_order_is_changed_without_a_token(deed: str, maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    fields = maker.open(address).typed() | {"order.title": "Forged", "stage": "called-off"}
    del fields["csrf_token"]
    before = kept_order(maker.book, id_of(address))
    assert maker.client.post(f"{address}{deed}", data=fields).status_code in (400, 409)
    assert kept_order(maker.book, id_of(address)) == before
    assert len(list_orders(maker.book, OrderQuery()).lines) == 1
