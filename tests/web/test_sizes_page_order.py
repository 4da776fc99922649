"""The order comes to the Sizes page from the worktable, and goes back."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_workshop
from tests.web.asked_sizes import SHOP, SIX, TYPED, ask, sizes_of
from tests.web.conftest import Maker
from tests.web.pages import Page


def test_the_worktables_own_order_is_compared_as_it_was_typed(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", order__title="Pram blanket", blanket__width="33 in")
    assert "Pram blanket" in page.root.text
    # An inch is 2.54 cm exactly (NIST Handbook 44).
    assert page.table("Size asked")[1][0] == "83.8 × 100 cm as ordered"
    assert "checked" in page.with_id("ordered.take").attributes
    assert sizes_of(page)[1:] == [size.name for size in SHOP.sizes[:6]]


def test_the_orders_own_size_is_asked_for_once_and_comes_first(maker: Maker) -> None:
    page = maker.open("/sizes")
    assert sizes_of(page) == [str(size) for size in SIX]
    assert page.table("Size asked")[1][0] == "Cot as ordered"
    offered = [label.text for label in page.with_id("order").all("label") if "Cot" in label.text]
    assert offered == ["Cot 80 × 100 cm"]


@pytest.mark.parametrize(
    ("width", "legend"), [("80 cm", "Other customary sizes"), ("81 cm", "Customary sizes")]
)
def test_other_sizes_are_so_called_beside_a_customary_one(
    maker: Maker, width: str, legend: str
) -> None:
    page = maker.send("/sizes/of-order", blanket__width=width)
    assert [node.text for node in page.root.all("legend")][2] == legend


def test_the_orders_own_price_stands_beside_its_own_size(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", price__given="215.50")
    assert page.with_id("ordered.price").attributes["value"] == "215.50"


def test_the_orders_own_size_may_be_left_out(maker: Maker) -> None:
    sent = maker.open("/sizes").typed()
    del sent["ordered.take"]
    page = Page(maker.client.post("/sizes", data=sent).text)
    assert sizes_of(page) == [str(size) for size in SIX[1:]]
    assert "as ordered" not in page.with_id("answer").text


def test_a_customary_size_is_ticked_again_when_it_is_no_more_the_orders_own(maker: Maker) -> None:
    sent = maker.open("/").typed() | maker.open("/sizes").typed() | {"blanket.width": "90 cm"}
    del sent["order_file"]
    page = Page(maker.client.post("/sizes/of-order", data=sent).text)
    assert sizes_of(page) == ["90 × 100 cm", *(size.name for size in SHOP.sizes[:6])]


def test_a_size_typed_that_becomes_the_orders_own_is_compared_once_at_its_price(
    maker: Maker,
) -> None:
    page = ask(maker, asks="prices", own__1__size="0.8 m x 1 m", own__1__price="233")
    (row,) = page.table("Size asked")[1:]
    assert row[0] == "Cot as ordered pays best"
    assert row[2] == "233.00"


def test_two_prices_for_the_orders_own_size_are_one_too_many(maker: Maker) -> None:
    typed = {"own__1__size": "80 x 100", "own__1__price": "233", "ordered__price": "240"}
    page = ask(maker, asks="prices", **typed)
    assert "is among the sizes already" in page.said_of("own.1.size")


def test_sizes_typed_before_come_along_to_another_order(maker: Maker) -> None:
    typed = {"asks": "prices", "own.1.size": "90x90", "own.1.price": "250"}
    sent = maker.open("/").typed() | {"order.title": "Pram blanket"} | typed
    page = Page(maker.client.post("/sizes/of-order", data=sent).text)
    assert "Pram blanket" in page.root.text
    assert page.typed().items() >= typed.items()
    assert [row[0] for row in page.table("Size asked")[1:]] == ["90 × 90 cm pays best"]


def test_an_order_with_a_mistake_stays_on_the_worktable(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", blanket__width="wide")
    assert maker.status == 422
    assert "cannot be read" in page.said_of("blanket.width")
    assert page.headings[0] == "Order"


def test_a_workshop_without_an_order_begins_with_a_plain_blanket() -> None:
    shop = replace(open_shop(sample_workshop(), today=lambda: TODAY), sample=None)
    page = Maker(create_app(shop).test_client()).open("/sizes")
    assert len(page.table("Size asked")) == 1 + len(SIX)
    assert 'width = "80 cm"' in page.typed()["order_file"]


def test_a_size_is_taken_to_the_worktable_with_its_price(maker: Maker) -> None:
    typed = ask(maker, "/sizes/take", asks="prices", take="130.0x160.0cm", **TYPED).typed()
    assert (typed["blanket.width"], typed["blanket.height"]) == ("130 cm", "160 cm")
    assert typed["price.given"] == "470"


def test_a_change_is_taken_to_the_worktable(maker: Maker) -> None:
    typed = ask(maker, "/sizes/take", budget="250", take="smaller-border").typed()
    assert not any(name.startswith("blanket.border") for name in typed)


def test_the_way_back_brings_the_order_unchanged(maker: Maker) -> None:
    before = maker.open("/").typed()
    after = ask(maker, "/sizes/take").typed()
    assert after == before | {"csrf_token": after["csrf_token"]}


def test_words_from_the_order_are_never_markup(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", order__title='<b>Bold</b> & "quoted"')
    assert '<b>Bold</b> & "quoted"' in page.root.text
    assert "Bold" in page.typed()["order_file"]


def test_notes_of_several_lines_come_through_a_browsers_line_ends(maker: Maker) -> None:
    sent = maker.send("/sizes/of-order", order__notes="No wool\r\nno fringe").typed()
    sent["order_file"] = sent["order_file"].replace("\n", "\r\n")
    table = Page(maker.client.post("/sizes/take", data=sent).text)
    assert table.typed()["order.notes"] == "No wool\nno fringe"


def test_the_comparison_is_saved_as_a_spreadsheet_under_the_orders_name(maker: Maker) -> None:
    reply = maker.client.post("/sizes/workbook", data=maker.open("/sizes").typed())
    assert reply.status_code == 200
    assert "sizes-cot-blanket-in-moorland-stripes.xlsx" in reply.headers["Content-Disposition"]
    assert reply.data.startswith(b"PK")


@pytest.mark.parametrize(
    ("address", "page"),
    [
        ("/sizes/of-order", "/sizes"),
        ("/sizes/take", "/sizes"),
        ("/calmer", "/"),
        ("/quote", "/"),
        ("/workshop/rates", "/workshop"),
        ("/workshop/pay", "/workshop"),
    ],
)
def test_the_address_of_an_answer_leads_to_its_page_when_it_is_opened_anew(
    maker: Maker, address: str, page: str
) -> None:
    assert maker.client.get(address).headers["Location"] == page
