"""A buyer is forgotten on the order's page: what goes is said first, and what else there is."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.files.security_log import security_log_file, security_logged
from quoting.store.orders import kept_order
from quoting.store.quotes import quotes_of
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book

SIZE = {"blanket__width": "80 cm", "blanket__height": "100 cm"}
COLOURS = ("teal", "oat")


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


def give(maker: BookMaker, buyer: str, title: str) -> str:
    """Begin an order, give its quote, and return its address."""
    address = maker.begin(
        **SIZE, order__buyer=buyer, order__title=title, order__notes="12 Reed Lane"
    )
    fields = maker.open(address).typed()
    assert maker.client.post(f"{address}/give", data=fields).status_code == 303
    return address


def forget(maker: BookMaker, address: str, which: str = "one") -> str:
    """Press the button of the page, and return where it leads."""
    return maker.press(f"{address}/forget", f"{address}/forget", which=which).location


def test_what_goes_and_what_stays_is_said_before_anything_is_done(maker: BookMaker) -> None:
    address = give(maker, "Zephyrine Ückermann", "Zephyrine’s stripes")
    give(maker, "zephyrine uckermann", "Another")
    links = maker.open(address).root.all("a")
    assert f"{address}/forget" in [node.attributes["href"] for node in links]
    page = maker.open(f"{address}/forget")
    assert page.headings == [
        "Forget Zephyrine Ückermann", "What goes", "What stays", "What else there is"
    ]  # fmt: skip
    assert page.table("Title")[1:] == [
        ["1", "Zephyrine’s stripes", "(forgotten) stripes", "1"],
        ["2", "Another", "Another", "1"],
    ]
    assert "in the folder “book copies”" in page.root.text
    assert "after two weeks" in page.root.text
    assert "a short name or initials say" in page.root.text
    assert "In quotes and papers that were made it stays." in page.root.text
    assert "ask the authority or a licensed adviser" in page.root.text
    assert kept_order(maker.book, 1).content.buyer == "Zephyrine Ückermann"


def test_the_buyers_page_and_every_other_show_no_word_of_her_and_every_figure(
    maker: BookMaker,
) -> None:
    address = give(maker, "Zephyrine Ückermann", "Zephyrine’s stripes")
    (before,) = quotes_of(maker.book, 1)
    assert forget(maker, address) == f"{address}/forget/done"
    (after,) = quotes_of(maker.book, 1)
    assert "(forgotten) stripes" in after.frozen.page
    told = {"Zephyrine’s stripes": "(forgotten) stripes", "Zephyrine Ückermann": "(forgotten)"}
    expected = before.frozen.page
    for old, new in told.items():
        expected = expected.replace(old, new)
    assert after.frozen.page == expected
    given = f"/quotes/{after.number}"
    pages = [address, "/orders", f"{address}/forget", f"{address}/forget/done", given]
    for page in (*pages, f"{given}/page"):
        reply = maker.client.get(page)
        assert reply.status_code == 200, page
        assert "ephyrine" not in reply.text
        assert "Ückermann" not in reply.text
        assert "Reed Lane" not in reply.text


def test_a_buyer_named_as_colours_are_leaves_the_colours(maker: BookMaker) -> None:
    teal, oat = COLOURS
    address = give(maker, f"{teal} {oat}".title(), f"{teal} for {oat}")
    (before,) = quotes_of(maker.book, 1)
    forget(maker, address)
    (after,) = quotes_of(maker.book, 1)
    assert after.frozen.offer.colours == before.frozen.offer.colours
    page, was = after.frozen.page, before.frozen.page
    shown = was.count(f"> {oat}<") + was.count(f">{oat}<")
    assert shown
    assert page.count(f"> {oat}<") + page.count(f">{oat}<") == shown
    assert "(forgotten) for (forgotten)" in page


def test_all_of_her_orders_or_this_one_alone(maker: BookMaker) -> None:
    for title in ("First", "Second", "Third"):
        maker.begin(order__buyer="Maud Hollin", order__title=title)
    forget(maker, "/orders/1")
    buyers = [kept_order(maker.book, number).content.buyer for number in (1, 2, 3)]
    assert buyers == ["(forgotten)", "Maud Hollin", "Maud Hollin"]
    forget(maker, "/orders/3", which="all")
    assert kept_order(maker.book, 2).content.buyer == "(forgotten)"


def test_an_order_that_names_nobody_says_so(maker: BookMaker) -> None:
    maker.begin(order__title="First")
    assert maker.open("/orders/1/forget").headings == ["Nobody to forget"]
    hrefs = [node.attributes["href"] for node in maker.open("/orders/1").root.all("a")]
    assert "/orders/1/forget" not in hrefs
    assert maker.press("/orders/1/forget", "/orders").status_code == 422
    assert maker.client.get("/orders/9/forget").status_code == 404


def test_nobody_is_said_to_be_forgotten_who_is_not(maker: BookMaker) -> None:
    maker.begin(order__buyer="Maud Hollin")
    assert maker.client.get("/orders/1/forget/done").location == "/orders/1/forget"
    assert maker.client.get("/orders/9/forget/done").status_code == 404


def test_it_takes_the_token_of_a_form(maker: BookMaker) -> None:
    maker.begin(order__buyer="Maud Hollin")
    assert maker.client.post("/orders/1/forget", data={"which": "all"}).status_code == 409
    assert kept_order(maker.book, 1).content.buyer == "Maud Hollin"


def test_traces_that_could_not_be_swept_are_told(
    maker: BookMaker, monkeypatch: pytest.MonkeyPatch
) -> None:
    maker.begin(order__buyer="Maud Hollin")
    monkeypatch.setattr("quoting.store.forgetting.sweep", lambda _: False)
    page = maker.open(forget(maker, "/orders/1"))
    assert "Traces may be left in the book’s file" in page.root.text


def test_it_is_written_down_that_somebody_was_forgotten_and_not_who(maker: BookMaker) -> None:
    maker.begin(order__buyer="Maud Hollin")
    assert maker.book.path is not None
    with security_logged(maker.book.path):
        forget(maker, "/orders/1")
    text = security_log_file(maker.book.path).read_text("utf-8")
    assert text.endswith("Z a buyer was forgotten, from 127.0.0.1\n")


def test_no_byte_of_the_book_has_a_word_of_her_after_a_whole_day_at_the_pages(
    maker: BookMaker, tmp_path: Path
) -> None:
    """The law for all that the pages keep of an order, whatever comes to be kept."""
    address = give(maker, "Zephyrine Ückermann", "Zephyrine’s stripes")
    fields = maker.open(address).typed()
    for turn in range(8):
        maker.client.post(f"{address}/save", data=fields | {"blanket.width": f"{80 + turn} cm"})
    maker.client.post(address, data=maker.open(address).typed() | {"do": "add extras"})
    extra = maker.open(address).typed() | {"extras.1.what": "a tag for Zephyrine"}
    maker.client.post(address, data=extra | {"do": "remove extras.1"})
    give_again = maker.open(address).typed()
    maker.client.post(f"{address}/give", data=give_again)
    forget(maker, address)
    for file in tmp_path.iterdir():
        if file.is_file():
            held = file.read_bytes().lower()
            for word in ("zephyrine", "ückermann", "\\u00fcckermann", "uckermann", "reed lane"):
                assert word.encode() not in held, (file.name, word)
